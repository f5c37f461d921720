//! Promise: a programme is written by answering questions and says what was answered; plans and ramps are checked and
//! stepped as their rules say; the handout holds all of it.

mod doses;
mod handout;
mod new_routine;
mod stages;

use std::path::{Path, PathBuf};

use ::routine::{Fault, FaultKind, Hearing, Prescription, Weekday, Work, catalogue, check_text, find, ramp_template, safe_dose, templates};
use files::load;
use files::ramps::{stages_and_unfinished, take_stages};
use record::{NewSession, Source, Store};
use report::{Handout, handout, to_text};
use session::{Arg, Entry, Fact, Line, Position};
use speak::Words;
use tidecount::routine;
use tidecount::routine::new::write_programme;
use tidecount::terminal::ask::{AskError, Plain};

const NOTHING_LISTENED_FOR: Hearing<'_> = Hearing { commands: &[], knows_word: None, pack_file: None, language: None, games: &[] };

fn checked(text: &str) -> Prescription {
    check_text("routine.toml", text, NOTHING_LISTENED_FOR).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

/// The text has exactly this one fault.
#[track_caller]
fn only(text: &str, kind: FaultKind, line: usize, what: &str, remedy: &str) {
    let found: Vec<Fault> = check_text("routine.toml", text, NOTHING_LISTENED_FOR).err().map_or(Vec::new(), |faults| faults.list);
    let [fault] = &found[..] else { panic!("{found:#?}") };
    assert_eq!((fault.kind, fault.line), (kind, line), "{fault:#?}");
    assert!(fault.what.contains(what), "{}", fault.what);
    assert!(fault.remedy.contains(remedy), "{}", fault.remedy);
}

fn planned(plan: &str) -> String {
    format!("title = \"Evening\"\nplan = {plan}\n[[step]]\nexercise = \"rest\"\n")
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn words() -> Words {
    Words::english().expect("the catalogue of words")
}

fn look_up<'a>(words: &'a Words) -> impl Fn(&str) -> Option<String> + 'a {
    |key| words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok()
}

fn print_templates(exercise: Option<&str>) -> String {
    let (words, mut out) = (words(), Vec::new());
    assert!(routine::templates::run(exercise, &look_up(&words), &mut out).expect("printed"));
    String::from_utf8(out).expect("text")
}

/// The step of a ramp; its `stages` stand in line 5.
fn ramped(exercise: &str, ramp: &str) -> String {
    format!("title = \"x\"\n[[step]]\nexercise = \"{exercise}\"\ncautions_acknowledged = true\nramp = {ramp}\n")
}
