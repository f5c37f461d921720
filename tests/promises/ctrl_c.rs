//! Promise: Ctrl-C ends a practice cleanly, with everything kept.

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, journal, of_kind, read_wav, wait_for_lines};
use std::os::unix::process::CommandExt;
use std::process::{Command, Stdio};

const ROUTINE: &str = "title = \"Shoulders\"\n[[step]]\nexercise = \"shoulder-rolls\"\nrepetitions = 20\nnext_cue_after_s = 4\n";

#[test]
fn ctrl_c_ends_cleanly_with_everything_kept() {
    let place = Place::new();
    let routine = place.write("routine.toml", ROUTINE);
    let mut tape = Tape::new(16_000, 60.0);
    tape.say_every(15.0, 50.0, 4.3, "ready");
    let wav = tape.write(&place.path("client.wav"), 1);
    let (lines, speaker) = (place.path("journal.jsonl"), place.path("speaker.wav"));
    let mut command = place.replay(&routine, &wav, "data");
    // A terminal sends Ctrl-C to the program and to its recogniser: to the whole group.
    command.arg("--journal").arg(&lines).arg("--speaker").arg(&speaker).process_group(0);
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("starts");
    wait_for_lines(&lines, 5, &mut child);
    let sent = Command::new("sh").arg("-c").arg(format!("kill -INT -{}", child.id())).status().expect("a shell");
    assert!(sent.success());
    let done = child.wait_with_output().expect("ends");
    let (out, err) = (program::out(&done), program::err(&done));
    assert_eq!(done.status.code(), Some(0), "{out}{err}");
    assert_eq!(err, "");
    assert!(out.contains("Shoulder rolls") && out.contains("interrupted"), "the summary: {out}");

    let entries = journal(&lines);
    let ended = entries.last().expect("entries");
    assert_eq!((ended["kind"].as_str(), ended["reason"].as_str()), (Some("session_ended"), Some("interrupted")), "{ended}");
    let stopped = of_kind(&entries, "step_stopped");
    assert_eq!(stopped.len(), 1, "{entries:#?}");
    assert_eq!(stopped[0]["repetitions_done"].as_u64(), Some(of_kind(&entries, "repetition_done").len() as u64));

    // The sound is whole: as long as the practice was.
    let (rate_hz, sound) = read_wav(&speaker);
    let length_s = sound.len() as f64 / f64::from(rate_hz);
    let ended_s = ended["at_s"].as_f64().expect("a time");
    assert!((length_s - ended_s).abs() < 0.1, "{length_s} s of sound, ended at {ended_s} s");
    assert!(sound.iter().any(|x| x.abs() > 0.05));

    // It has ended, so the next one begins anew.
    let mut next = place.replay(&routine, &wav, "data");
    let mut next = next.arg("--journal").arg(place.path("next.jsonl")).stdout(Stdio::null()).spawn().expect("starts");
    wait_for_lines(&place.path("next.jsonl"), 1, &mut next);
    next.kill().expect("kills");
    next.wait().expect("is gone");
    assert_eq!(journal(&place.path("next.jsonl"))[0]["kind"], "session_begun");
}
