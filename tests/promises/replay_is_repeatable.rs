//! Promise: the same recording gives the same journal and the same sound every time, at any rate, hurried or not.

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, err, journal, number, of_kind, out, output};
use serde_json::Value;

const ROUTINE: &str = r#"
title = "Short practice"
[[step]]
exercise = "long-ah"
repetitions = 2
target_s = 2
rest_s = 3
[[step]]
exercise = "rest"
length_s = 2
"#;

const CLIENT: &str = r#"
seed = 5
reaction_s = [1.0, 1.5]
voice = { name = "rms", speed = 0.9, level_db = -26.0 }
[[rule]]
on = "ask-ready*"
does = [{ say = "ready" }]
[[rule]]
on = "ex-long-ah-cue"
nth = [1]
does = [{ hold = { f0_hz = 118.0, length_s = 2.6 } }]
[[rule]]
on = "ex-long-ah-cue"
does = [{ hold = { f0_hz = 131.0, length_s = 3.4 } }]
"#;

#[test]
fn the_same_recording_gives_the_same_journal_and_sound_and_agrees_at_every_rate() {
    let place = Place::new();
    let routine = place.write("routine.toml", ROUTINE);
    let truth = place.rehearse(&routine, CLIENT);
    let held = of_kind(&truth, "held");
    assert_eq!(held.len(), 2, "{truth:?}");

    let run = |wav: &std::path::Path, data: &str, name: &str| {
        let (lines, speaker) = (place.path(&format!("{name}.jsonl")), place.path(&format!("{name}.wav")));
        let mut command = place.replay(&routine, wav, data);
        let done = output(command.arg("--journal").arg(&lines).arg("--speaker").arg(&speaker));
        assert!(done.status.success(), "{name}: {}{}", out(&done), err(&done));
        agrees(&journal(&lines), &held, name);
        (std::fs::read(&lines).unwrap(), std::fs::read(&speaker).unwrap())
    };

    let wav = Tape::of(&truth, 16_000).write(&place.path("client.wav"), 1);
    let first = run(&wav, "a", "first");
    for (data, name) in [("a", "second in the same folder"), ("b", "in a fresh folder")] {
        let again = run(&wav, data, name);
        assert!(again.0 == first.0, "{name}: another journal:\n{}", String::from_utf8_lossy(&again.0));
        assert!(again.1 == first.1, "{name}: another sound");
    }
    // 22.05 kHz has no whole number of frames in 10 ms.
    for (rate_hz, channels) in [(8_000, 1), (22_050, 1), (44_100, 2), (48_000, 1)] {
        let name = format!("at {rate_hz} Hz");
        let wav = Tape::of(&truth, rate_hz).write(&place.path(&format!("{name} client.wav")), channels);
        let other = run(&wav, "rates", &name);
        assert_eq!(shape(&other.0), shape(&first.0), "{name}");
    }
}

#[test]
fn in_real_time_it_is_the_same_as_hurried() {
    let place = Place::new();
    let routine = place.write("routine.toml", "title = \"A rest\"\n[[step]]\nexercise = \"rest\"\nlength_s = 1\n");
    let truth = place.rehearse(&routine, CLIENT);
    let wav = Tape::of(&truth, 16_000).write(&place.path("client.wav"), 1);
    let mut journals = Vec::new();
    for fast in [true, false] {
        let lines = place.path(&format!("{fast}.jsonl"));
        let mut command = if fast { place.replay(&routine, &wav, "fast") } else { program::tidecount(["practise"]) };
        if !fast {
            command.arg(&routine).arg("--mic").arg(&wav).arg("--data").arg(place.path("real"));
        }
        let done = output(command.arg("--journal").arg(&lines));
        assert!(done.status.success(), "{}{}", out(&done), err(&done));
        journals.push(std::fs::read_to_string(&lines).unwrap());
    }
    assert!(journals[0].contains("\"completed\""), "{}", journals[0]);
    assert_eq!(journals[0], journals[1]);
}

/// What was measured is what the client did; the routine was led to its end.
fn agrees(entries: &[Value], held: &[&Value], name: &str) {
    let measured = of_kind(entries, "hold_measured");
    assert_eq!(measured.len(), held.len(), "{name}: {entries:#?}");
    for (measured, truth) in measured.iter().zip(held) {
        for field in ["onset_s", "offset_s"] {
            let off_s = number(measured, field) - number(truth, field);
            assert!(off_s.abs() <= 0.03, "{name}: {field} off by {off_s:.3} s: {measured}");
        }
        let ratio = number(measured, "f0_median_hz") / number(truth, "f0_hz");
        assert!((ratio - 1.0).abs() < 0.01, "{name}: {measured}");
    }
    let ended = entries.last().expect("entries");
    assert_eq!((ended["kind"].as_str(), ended["reason"].as_str()), (Some("session_ended"), Some("completed")), "{name}: {ended}");
}

/// Kinds and places, without times.
fn shape(journal: &[u8]) -> Vec<String> {
    let text = String::from_utf8_lossy(journal);
    let entries = text.lines().map(|line| serde_json::from_str::<Value>(line).expect("JSON"));
    entries.map(|e| format!("{} {} {} {} {}", e["kind"], e["step"], e["set"], e["repetition"], e["command"])).collect()
}
