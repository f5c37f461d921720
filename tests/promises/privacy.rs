//! Promise: what is kept is for its owner alone: files 0600 and folders 0700, whatever was there and whatever the system's habit is; with a
//! notice where something was open. What is shown of names on a terminal cannot turn or hide anything. (Modes of single files:
//! `src/disk/tests/private.rs`; the pages: `src/pages/web/tests/guard.rs`.)
#![cfg(unix)]

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, err, out, output, tidecount};
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};
use std::process::Command;

fn mode(path: &Path) -> u32 {
    std::fs::symlink_metadata(path).unwrap().permissions().mode() & 0o7777
}

fn open_to_all(path: &Path) {
    let mode = if path.is_dir() { 0o755 } else { 0o644 };
    std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode)).unwrap();
}

/// Everything below a folder, itself included, that others may read.
fn open_ones(folder: &Path) -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> = (mode(folder) & 0o077 != 0).then(|| folder.to_path_buf()).into_iter().collect();
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        if entry.path().is_dir() {
            found.extend(open_ones(&entry.path()));
        } else if mode(&entry.path()) & 0o077 != 0 {
            found.push(entry.path());
        }
    }
    found
}

/// With the habit of most systems, which lets others read what is made.
fn usual(command: &Command) -> Command {
    let mut shell = Command::new("sh");
    shell.args(["-c", "umask 022; exec \"$0\" \"$@\""]).arg(command.get_program()).args(command.get_args());
    for (name, value) in command.get_envs() {
        match value {
            Some(value) => shell.env(name, value),
            None => shell.env_remove(name),
        };
    }
    shell.current_dir(env!("CARGO_MANIFEST_DIR")).stdin(std::process::Stdio::null());
    shell
}

#[test]
fn whatever_is_written_is_for_its_owner_alone() {
    let place = Place::new();
    let (data, away) = (place.path("data"), place.path("away"));
    for folder in [data.join("voice-cache"), data.join("clients/grandpa"), away.clone()] {
        std::fs::create_dir_all(folder).unwrap();
    }
    // As an older program or another umask left them.
    for name in ["household.toml", "practice.sqlite.lock", "voice-cache/1.wav", "clients/grandpa/notes.toml"] {
        std::fs::write(data.join(name), "").unwrap();
        open_to_all(&data.join(name));
    }
    for name in ["", "voice-cache", "clients", "clients/grandpa"] {
        open_to_all(&data.join(name));
    }
    let routine = place.write("routine.toml", "title = \"A rest\"\n[[step]]\nexercise = \"rest\"\nlength_s = 1\n");
    let wav = Tape::new(16_000, 3.0).write(&place.path("client.wav"), 1);
    let mut practise = place.replay(&routine, &wav, "data");
    practise.args(["--client", "grandpa"]).arg("--journal").arg(away.join("j.jsonl")).arg("--speaker").arg(away.join("tool.wav"));
    let done = output(&mut usual(&practise));
    assert_eq!(err(&done).matches("Now only you can").count(), 1, "one notice: {}", err(&done));
    assert!(data.join("practice.sqlite").exists() && away.join("tool.wav").exists());
    assert_eq!(open_ones(&data), Vec::<PathBuf>::new());

    let run = |args: &[&str], named: &str| {
        let mut command = tidecount(args);
        command.arg(away.join(named)).arg("--data").arg(&data);
        let done = output(&mut usual(&command));
        assert!(done.status.success(), "{args:?}: {}{}", out(&done), err(&done));
        assert!(!err(&done).contains("Now only you can"), "nothing was open any more: {}", err(&done));
    };
    run(&["record", "backup"], "stick.backup");
    run(&["export", "json", "--out"], "all.jsonl");
    let left = open_ones(&away);
    assert_eq!(left, std::slice::from_ref(&away), "only the folder that was there before");
}

#[test]
fn a_name_that_turns_the_text_around_it_is_written_out() {
    let place = Place::new();
    let routine = place.write("routine.toml", "title = \"A rest\"\n[[step]]\nexercise = \"rest\"\nlength_s = 1\n");
    let wav = Tape::new(16_000, 3.0).write(&place.path("client.wav"), 1);
    let name = "gran\u{202e}apd\u{200b}";
    let mut practise = place.replay(&routine, &wav, "data");
    practise.args(["--client", name]);
    let done = output(&mut practise);
    let ask = |args: &[&str]| {
        let done = output(tidecount(args).arg("--data").arg(place.path("data")));
        format!("{}{}", out(&done), err(&done))
    };
    for text in [
        format!("{}{}", out(&done), err(&done)),
        ask(&["history"]),
        ask(&["record", "sound", "list", name]),
        ask(&["goal", "list", "--client", name]),
        ask(&["export", "json", "--client", "nobody"]),
    ] {
        assert!(!text.contains(['\u{202e}', '\u{200b}']), "{text:?}");
    }
    assert!(ask(&["history"]).contains("gran\\u{202e}apd\\u{200b}"), "{}", ask(&["history"]));
    // A program gets the name as it is.
    assert!(ask(&["history", "--json"]).contains(name));
}
