//! Promise: a practice that hears nothing at all says so, aloud and on the screen, with what to do; once, and again when it hears.

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, err, journal, of_kind, out, output};

const RATE_HZ: u32 = 16_000;
const ROUTINE: &str = "title = \"Shoulders\"\n[[step]]\nexercise = \"shoulder-rolls\"\nrepetitions = 1\nnext_cue_after_s = 4\n";
const NOTHING: &str = "I hear nothing at all";
const BACK: &str = "I can hear you now.";

/// When each line with these words was said, s.
fn said_s(text: &str, words: &str) -> Vec<f64> {
    let of_line = |line: &str| line.split_whitespace().next().and_then(|at| at.parse().ok());
    text.lines().filter(|line| line.contains("  T  ") && line.to_lowercase().contains(&words.to_lowercase())).filter_map(of_line).collect()
}

#[test]
fn a_microphone_that_gives_nothing_is_told_within_fifteen_seconds_of_waiting_and_told_when_it_is_back() {
    let place = Place::new();
    let routine = place.write("routine.toml", ROUTINE);
    let mut tape = Tape::new(RATE_HZ, 110.0);
    tape.say_every(75.0, 105.0, 4.3, "ready");
    tape.mute(0.0, 70.0);
    let wav = tape.write(&place.path("client.wav"), 1);
    let lines = place.path("journal.jsonl");
    let done = output(place.replay(&routine, &wav, "data").arg("--journal").arg(&lines));
    let text = out(&done);
    assert!(done.status.success(), "{text}{}", err(&done));
    let (asked, told, back) = (said_s(&text, "say ready"), said_s(&text, NOTHING), said_s(&text, BACK));
    assert_eq!((told.len(), back.len()), (1, 1), "{text}");
    // The line that asks takes some seconds to be said.
    assert!(told[0] > asked[0] && told[0] - asked[0] < 25.0, "{text}");
    assert!((70.0..72.0).contains(&back[0]), "{text}");
    assert!(!text.contains("Take your time"), "nobody is asked again who cannot be heard: {text}");
    // On the screen at once, with what to do.
    assert!(text.lines().any(|line| line.contains("  -  ") && line.contains("switched on and plugged in")), "{text}");
    let entries = journal(&lines);
    let troubles: Vec<_> = of_kind(&entries, "troubled").iter().map(|entry| entry["trouble"].clone()).collect();
    assert_eq!(troubles, ["microphone-silent"]);
    assert_eq!(entries.last().map(|entry| entry["reason"].clone()), Some("completed".into()), "{text}");
}

#[test]
fn a_microphone_that_is_silent_between_words_is_not_told_of() {
    let place = Place::new();
    let routine = place.write("routine.toml", ROUTINE);
    let mut tape = Tape::new(RATE_HZ, 80.0);
    tape.say_every(1.0, 75.0, 7.3, "ready");
    tape.gate();
    let wav = tape.write(&place.path("client.wav"), 1);
    let text = out(&output(&mut place.replay(&routine, &wav, "data")));
    assert!(!text.contains(NOTHING) && text.contains("1 of 1 exercises done"), "{text}");
}
