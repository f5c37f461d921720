//! Promise: Ctrl-C, a closed terminal and the end of the system end a practice cleanly, with everything kept; a reader of its output that
//! goes away ends nothing; and its recogniser never outlives it.

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, journal, of_kind, out, output, read_wav, tidecount, wait_for_lines};
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

/// TERM is what a system that shuts down sends, HUP a terminal that is closed, and that often twice.
#[test]
fn a_closed_terminal_and_a_system_that_shuts_down_end_it_as_ctrl_c_does_and_all_tell_the_same() {
    for signals in [&["TERM"][..], &["HUP", "HUP"]] {
        let place = Place::new();
        let routine = place.write("routine.toml", ROUTINE);
        let mut tape = Tape::new(16_000, 60.0);
        tape.say_every(15.0, 50.0, 4.3, "ready");
        let wav = tape.write(&place.path("client.wav"), 1);
        let lines = place.path("journal.jsonl");
        let mut command = place.replay(&routine, &wav, "data");
        command.arg("--journal").arg(&lines);
        let mut child = hung_up_on(&command).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("starts");
        wait_for_lines(&lines, 5, &mut child);
        for signal in signals {
            send(signal, child.id());
        }
        let done = child.wait_with_output().expect("ends");
        assert_eq!((done.status.code(), program::err(&done)), (Some(0), String::new()), "{signals:?}");
        let entries = journal(&lines);
        let ended = entries.last().expect("entries");
        assert_eq!(
            (ended["kind"].as_str(), ended["reason"].as_str()),
            (Some("session_ended"), Some("interrupted")),
            "{signals:?}: {ended}"
        );
        // One truth: the screen, the history and the export tell what the trials tell.
        let (repetitions, stopped) = (of_kind(&entries, "repetition_done").len(), of_kind(&entries, "step_stopped"));
        assert_eq!(stopped[0]["repetitions_done"].as_u64(), Some(repetitions as u64));
        assert!(out(&done).contains(&format!("{repetitions}/20")), "{}", out(&done));
        let listed = out(&output(tidecount(["history", "--data"]).arg(place.path("data"))));
        assert!(listed.contains("0 of 1 exercises") && listed.contains("ended: interrupted"), "{listed}");
    }
}

/// The same command, whatever these tests were started with: under `nohup` a closed terminal would rightly end nothing.
fn hung_up_on(command: &Command) -> Command {
    let mut with_default = Command::new("env");
    with_default.arg("--default-signal=HUP").arg(command.get_program()).args(command.get_args());
    for (name, value) in command.get_envs() {
        match value {
            Some(value) => with_default.env(name, value),
            None => with_default.env_remove(name),
        };
    }
    with_default
}

fn send(signal: &str, pid: u32) {
    assert!(Command::new("kill").arg(format!("-{signal}")).arg(pid.to_string()).status().expect("kill").success());
}

#[test]
fn a_reader_of_its_output_that_goes_away_ends_nothing() {
    let place = Place::new();
    let routine = place.write("routine.toml", &ROUTINE.replace("repetitions = 20", "repetitions = 2"));
    let mut tape = Tape::new(16_000, 60.0);
    tape.say_every(15.0, 50.0, 4.3, "ready");
    let wav = tape.write(&place.path("client.wav"), 1);
    let lines = place.path("journal.jsonl");
    let mut command = place.replay(&routine, &wav, "data");
    let mut child = command.arg("--journal").arg(&lines).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("starts");
    drop((child.stdout.take(), child.stderr.take()));
    assert_eq!(child.wait().expect("ends").code(), Some(0));
    assert_eq!(journal(&lines).last().expect("entries")["reason"], "completed");
}

/// It stands still, so that it cannot see its pipe being closed: the system ends it all the same.
#[cfg(target_os = "linux")]
#[test]
fn the_recogniser_never_outlives_the_program() {
    let place = Place::new();
    let routine = place.write("routine.toml", ROUTINE);
    let wav = Tape::new(16_000, 60.0).write(&place.path("client.wav"), 1);
    let lines = place.path("journal.jsonl");
    let mut command = tidecount(["practise"]);
    command.arg(&routine).arg("--mic").arg(&wav).arg("--data").arg(place.path("data")).arg("--journal").arg(&lines);
    let mut child = command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().expect("starts");
    wait_for_lines(&lines, 1, &mut child);
    let threads = std::fs::read_dir(format!("/proc/{}/task", child.id())).expect("it runs").flatten();
    let lists = threads.filter_map(|thread| std::fs::read_to_string(thread.path().join("children")).ok());
    let recogniser: u32 = lists.collect::<String>().split_whitespace().next().and_then(|pid| pid.parse().ok()).expect("its recogniser");
    send("STOP", recogniser);
    child.kill().expect("kills");
    child.wait().expect("is gone");
    let runs = || {
        let status = std::fs::read_to_string(format!("/proc/{recogniser}/status")).unwrap_or_default();
        status.lines().any(|line| line.starts_with("State:") && !line.contains('Z'))
    };
    for _ in 0..1_000 {
        if !runs() {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    send("KILL", recogniser);
    panic!("it stands there for ever");
}
