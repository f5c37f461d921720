//! How well commands are heard: counts on recordings of people and on synthetic voices, through the same child process as in a session.
//!
//! `cargo bench --bench command_ear -- people [odd|even|all [both|main|fast [LABEL]]]` runs over the recordings in `../shared/data` (read from `index.tsv` there; skipped
//! where they are missing), `-- voices` over the voices of the programs flite and espeak-ng, `-- clip FILE PHRASE,PHRASE…` over one file.
//! Thresholds are chosen on odd-numbered recordings of each set and label; the figures to quote are the even ones'.

#[path = "command_ear/people.rs"]
mod people;
#[path = "command_ear/sound.rs"]
mod sound;
#[path = "command_ear/voices.rs"]
mod voices;

use command_ear::{ChildRecogniser, Choice, CommandEvent, CommandRecogniser, Grammar, HeardPhrase, Mode, Options};
use std::path::Path;

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|a| a != "--bench").collect();
    match arguments.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        ["people"] => people::run(people::Half::Even, "both", ""),
        ["people", half] => people::run(people::Half::named(half), "both", ""),
        ["people", half, path] => people::run(people::Half::named(half), path, ""),
        ["people", half, path, label] => people::run(people::Half::named(half), path, label),
        ["voices"] => voices::run(),
        ["clip", file, phrases] => {
            let phrases: Vec<&str> = phrases.split(',').collect();
            let mut ear = ear(&phrases, &["stop"]);
            let sound = sound::read(Path::new(file)).unwrap_or_else(|e| panic!("{file}: {e}"));
            for heard in hear(&mut ear, &sound::between_pauses(&sound, 0.5, 1.5), true) {
                println!("{heard:?}");
            }
        }
        _ => {
            people::run(people::Half::Even, "both", "");
            voices::run();
        }
    }
}

/// Every phrase its own choice.
fn grammar(phrases: &[&str]) -> Grammar {
    Grammar {
        choices: phrases.iter().map(|p| Choice { tag: (*p).to_owned(), wordings: vec![(*p).to_owned()] }).collect(),
        ..Grammar::default()
    }
}

/// All phrases are wordings of one choice.
fn one_choice(phrases: &[&str]) -> Grammar {
    Grammar {
        choices: vec![Choice { tag: phrases[0].to_owned(), wordings: phrases.iter().map(|p| (*p).to_owned()).collect() }],
        ..Grammar::default()
    }
}

fn ear(main: &[&str], fast: &[&str]) -> ChildRecogniser {
    // Wordings of one choice: the fast path need not wait for "please".
    let fast = if fast.is_empty() { Grammar::default() } else { one_choice(fast) };
    let options = Options {
        model: Path::new(env!("CARGO_MANIFEST_DIR")).join("models/en").into(),
        program: Some(env!("CARGO_BIN_EXE_tidecount").into()),
        fast,
        mode: Mode::Offline,
    };
    let begun = std::time::Instant::now();
    let mut ear = ChildRecogniser::start(&options).unwrap_or_else(|e| panic!("{e}"));
    println!("child started and model loaded in {:.2} s", begun.elapsed().as_secs_f64());
    ear.listen_for(&grammar(main)).unwrap_or_else(|e| panic!("{e}"));
    ear
}

/// Feeds one sound from time 0 on.
fn hear(ear: &mut ChildRecogniser, sound: &[f32], main: bool) -> Vec<HeardPhrase> {
    ear.push(0.0, sound, main);
    ear.finish()
        .into_iter()
        .filter_map(|e| match e {
            CommandEvent::Heard(heard) => Some(heard),
            CommandEvent::Restarted { .. } | CommandEvent::Failed { .. } => {
                println!("  the recogniser died: {e:?}");
                None
            }
        })
        .collect()
}
