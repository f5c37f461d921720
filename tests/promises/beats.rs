//! Promise: counts begin on the beat, within 20 ms, also over minutes; "slower" changes the next round.
//!
//! Measured in the sound that was played, against a grid that begins with the first count heard.

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, err, journal, number, of_kind, out, output, read_wav};
use serde_json::Value;

/// Issue 3: within 20 ms on the sample clock.
const WITHIN_S: f64 = 0.02;
/// Audible: above this, re the loudest 5 ms of all.
const AUDIBLE_DB: f64 = -40.0;
/// Silence that parts one count from the next, s; closures inside a word are shorter.
const PAUSE_S: f64 = 0.15;

const ROUTINE: &str = r#"
title = "Counting"
[[step]]
exercise = "nasal-breathing"
repetitions = 10
in = 3
out = 8
[[step]]
exercise = "lip-press-smile"
repetitions = 1
count_last_s = 5
phases = [{ name = "press", length_s = 9 }, { name = "tighter", length_s = 7 }]
"#;

/// Says "slower" in the second round's breath out.
const CLIENT: &str = r#"
seed = 2
reaction_s = [1.0, 1.5]
voice = { name = "rms", speed = 0.9, level_db = -26.0 }
[[rule]]
on = "ask-ready*"
does = [{ say = "ready" }]
[[rule]]
on = "paced-out"
nth = [2]
reaction_s = [0.05, 0.1]
does = [{ say = "slower" }]
"#;

/// When sound begins after a pause, s, to 1 ms.
fn onsets(rate_hz: u32, samples: &[f32]) -> Vec<f64> {
    let step = (rate_hz / 1000) as usize;
    let power: Vec<f64> = samples.chunks(step).map(|c| c.iter().map(|x| f64::from(*x).powi(2)).sum::<f64>() / c.len() as f64).collect();
    // Over 5 ms, so that one period of a low voice is inside.
    let level: Vec<f64> = (0..power.len()).map(|i| power[i..(i + 5).min(power.len())].iter().sum::<f64>() / 5.0).collect();
    let floor = level.iter().copied().fold(0.0, f64::max) * 10f64.powf(AUDIBLE_DB / 10.0);
    let mut quiet_ms = usize::MAX / 2;
    let mut found = Vec::new();
    for (i, power) in power.iter().enumerate() {
        if *power > floor {
            if quiet_ms as f64 / 1000.0 >= PAUSE_S {
                found.push(i as f64 / 1000.0);
            }
            quiet_ms = 0;
        } else {
            quiet_ms += 1;
        }
    }
    found
}

/// The onset nearest to a beat.
fn off_s(onsets: &[f64], beat_s: f64) -> f64 {
    onsets.iter().map(|onset| onset - beat_s).min_by(|a, b| a.abs().total_cmp(&b.abs())).expect("sound")
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn every_count_of_minutes_begins_on_its_beat_and_slower_is_slower() {
    let place = Place::new();
    let routine = place.write("routine.toml", ROUTINE);
    let truth = place.rehearse(&routine, CLIENT);
    let wav = Tape::of(&truth, 16_000).write(&place.path("client.wav"), 1);
    let (lines, speaker) = (place.path("journal.jsonl"), place.path("speaker.wav"));
    let mut command = place.replay(&routine, &wav, "data");
    let done = output(command.arg("--journal").arg(&lines).arg("--speaker").arg(&speaker));
    assert!(done.status.success(), "{}{}", out(&done), err(&done));
    let entries = journal(&lines);
    let (rate_hz, sound) = read_wav(&speaker);
    let onsets = onsets(rate_hz, &sound);

    let rounds = of_kind(&entries, "round_paced");
    let beats_s: Vec<f64> = rounds.iter().map(|round| number(round, "beat_s")).collect();
    let slower: Vec<f64> = [1.0; 2].into_iter().chain([1.2; 8]).collect();
    assert!(beats_s.iter().zip(&slower).all(|(a, b)| (a - b).abs() < 1e-9) && beats_s.len() == slower.len(), "{beats_s:?}");

    // Each round from its own begin; all rounds but the last (which is announced) follow each other on one grid.
    let first_s = number(rounds[0], "at_s") - number(rounds[0], "duration_s");
    let mut round_s = first_s + off_s(&onsets, first_s);
    assert!((round_s - first_s).abs() <= WITHIN_S, "the journal's begin {first_s}, the sound's {round_s}");
    let mut worst_s = 0.0_f64;
    for (index, beat_s) in slower.iter().enumerate() {
        if index + 1 == slower.len() {
            round_s += 2.0 * beat_s;
        }
        for beat in 0..11 {
            let at_s = round_s + f64::from(beat) * beat_s;
            let off_s = off_s(&onsets, at_s);
            worst_s = worst_s.max(off_s.abs());
            assert!(off_s.abs() <= WITHIN_S, "round {}, count {}: {off_s:+.3} s", index + 1, beat + 1);
        }
        round_s += 11.0 * beat_s;
    }
    let minutes = (round_s - first_s) / 60.0;
    assert!(minutes > 2.0, "{minutes}");
    println!("worst count of {minutes:.1} min: {:.1} ms off", worst_s * 1000.0);

    posture(&entries, &onsets);
}

/// Nothing is said off the seconds of the posture, and all counts are there.
fn posture(entries: &[Value], onsets: &[f64]) {
    let held = of_kind(entries, "posture_held")[0];
    let begin_s = number(held, "at_s") - number(held, "duration_s");
    assert_eq!(number(held, "duration_s"), 16.0);
    let begin_s = begin_s + off_s(onsets, begin_s);
    let inside: Vec<f64> = onsets.iter().map(|onset| onset - begin_s).filter(|at| (-0.1..=16.1).contains(at)).collect();
    let on_beat: Vec<u32> = inside.iter().filter(|at| (*at - at.round()).abs() <= WITHIN_S).map(|at| at.round() as u32).collect();
    // "Hold", the last five of nine seconds, "tighter", the last five of seven (the second that "tighter" still takes may
    // go uncounted), the end.
    for beat in [0, 4, 5, 6, 7, 8, 9, 12, 13, 14, 15, 16] {
        assert!(on_beat.contains(&beat), "nothing begins at {beat} s: {inside:?}");
    }
    assert_eq!(inside.len(), on_beat.len(), "{inside:?}");
}

/// Breathing against the beat for seven minutes, the longest that one practice may ask for without a clinician's word: 30 rounds of 11 slow
/// counts in the sound that was played. A clock that drifts by one part in 20,000 would be found.
#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn seven_minutes_of_breathing_stay_on_the_beat() {
    const ROUNDS: u32 = 30;
    const BEAT_S: f64 = 1.25;
    let routine_of = |rounds: u32| {
        format!(
            "title = \"Counting\"\n[[step]]\nexercise = \"nasal-breathing\"\nrepetitions = {rounds}\nin = 3\nout = 8\nbeat_s = {BEAT_S:.2}\n"
        )
    };
    let client = "seed = 2\nreaction_s = [3.0, 3.5]\nvoice = { name = \"rms\", speed = 0.9, level_db = -26.0 }\n[[rule]]\non = \"ask-ready*\"\ndoes = [{ say = \"i'm ready\" }]\n";
    let place = Place::new();
    // The short practice tells when "ready" must be said in the long one: up to there they are the same.
    let truth = place.rehearse(&place.write("short.toml", &routine_of(1)), client);
    let wav = Tape::of(&truth, 16_000).write(&place.path("client.wav"), 1);
    let (lines, speaker) = (place.path("journal.jsonl"), place.path("speaker.wav"));
    let mut command = place.replay(&place.write("long.toml", &routine_of(ROUNDS)), &wav, "data");
    let done = output(command.arg("--journal").arg(&lines).arg("--speaker").arg(&speaker));
    assert!(done.status.success(), "{}{}", out(&done), err(&done));
    let entries = journal(&lines);
    let (rate_hz, sound) = read_wav(&speaker);
    let onsets = onsets(rate_hz, &sound);
    let rounds = of_kind(&entries, "round_paced");
    assert_eq!(rounds.len(), ROUNDS as usize);
    let first_s = number(rounds[0], "at_s") - number(rounds[0], "duration_s");
    let begin_s = first_s + off_s(&onsets, first_s);
    // The last round is announced in two beats of quiet.
    let worst_s = (0..(ROUNDS - 1) * 11).map(|count| off_s(&onsets, begin_s + f64::from(count) * BEAT_S).abs()).fold(0.0, f64::max);
    assert!(worst_s <= WITHIN_S, "worst count {:.1} ms off", worst_s * 1000.0);
    println!("worst count of seven minutes: {:.1} ms off", worst_s * 1000.0);
}
