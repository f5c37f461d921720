//! The file of a class: who belongs to it, and what each of them leaves out or does seated.
//!
//! A name here is whatever the class calls somebody, or a number. Why somebody leaves something out is for the clinician alone: it is
//! neither shown nor said nor kept.

use std::collections::BTreeSet;
use std::ops::Range;
use std::sync::LazyLock;

use schemars::JsonSchema;
use serde::Deserialize;

use super::catalogue::{catalogue, find};
use super::fault::{FaultKind, Faults, Finder, suggestion};
use super::file::At;
use super::placed::Posture;
use super::text::{self, Hearing, SaidBy};
use super::{read, schema};

/// Participants of one class; a guard against slips, no source.
const MAX_PARTICIPANTS: usize = 40;
/// A longer name is not read from across a room, characters.
const MAX_NAME_CHARS: usize = 24;
/// Numbers that stand on a badge.
const NUMBERS: std::ops::RangeInclusive<i64> = 1..=99;

/// A class as its file tells it. Never empty.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ClassList {
    /// What the class is called in the record.
    pub title: String,
    pub participants: Vec<Participant>,
}

/// Somebody who belongs to a class.
#[derive(Debug, Clone, PartialEq)]
pub struct Participant {
    pub called: Called,
    /// Ids of exercises.
    pub leaves_out: BTreeSet<String>,
    /// Ids of exercises that they do on a chair while others stand.
    pub seated: BTreeSet<String>,
    /// Why, for the clinician.
    pub reason: Option<String>,
    /// What is listened for besides the answers to a roll call; none where the recogniser does not know the name.
    pub heard: Option<HeardAs>,
}

/// How somebody is called.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Called {
    Name(String),
    Number(u32),
}

/// What is said of somebody in a roll call, wordings parted by `|`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeardAs {
    pub here: String,
    pub not_here: String,
}

impl std::fmt::Display for Called {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Name(name) => f.write_str(name),
            Self::Number(number) => write!(f, "{number}"),
        }
    }
}

/// A tidecount class: who belongs to it.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ClassFile {
    /// What the class is called in the record, such as "Thursday class".
    #[schemars(required)]
    title: Option<At<String>>,
    /// Those who belong to it.
    #[schemars(required)]
    participant: Option<At<Vec<At<ParticipantFile>>>>,
}

/// Somebody who belongs to it: a `name` or a `number`.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ParticipantFile {
    /// What the class calls them. No real name is needed.
    name: Option<At<String>>,
    /// A number, in place of a name.
    number: Option<At<i64>>,
    /// Exercises that they leave out.
    leaves_out: Option<At<Vec<At<String>>>>,
    /// Exercises that they do on a chair while others stand.
    seated: Option<At<Vec<At<String>>>>,
    /// Why, for the clinician alone. It is printed before the class, and neither shown nor said nor kept.
    reason: Option<At<String>>,
}

static SCHEMA: LazyLock<serde_json::Value> = LazyLock::new(schema::of_type::<ClassFile>);

/// Checks the bytes of a class file; `name` stands for the file's name in faults.
///
/// # Errors
/// All faults of the file.
pub fn check_class(name: &str, bytes: &[u8], hearing: Hearing<'_>) -> Result<ClassList, Faults> {
    if bytes.len() > read::MAX_FILE_BYTES {
        return Err(Faults::of_file(name, "the file is too large for a class", "Check that it is the right file."));
    }
    let (text, broken) = read::text_of(bytes);
    let mut faults = Finder::new(&text);
    if let Some((line, _)) = broken {
        let span = text.find(char::REPLACEMENT_CHARACTER).map_or(0..0, |at| at..at);
        faults.add(FaultKind::UnreadableText, span, format!("this is not UTF-8 text, in line {line}"), "Save the file as UTF-8.");
    }
    let file: ClassFile = read::typed_file(&text, &SCHEMA, ("the class", "participant"), &mut faults);
    let list = build(&file, hearing, &mut faults);
    if faults.list.is_empty() { Ok(list) } else { Err(Faults::new(name, &text, faults.list)) }
}

fn build(file: &ClassFile, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> ClassList {
    if let Some(title) = &file.title {
        text::check(title, "title", SaidBy::Nobody, hearing, faults);
    }
    let mut list =
        ClassList { title: file.title.as_ref().map(|at| at.value.trim().to_owned()).unwrap_or_default(), ..ClassList::default() };
    let Some(typed) = &file.participant else { return list };
    if typed.value.is_empty() || typed.value.len() > MAX_PARTICIPANTS {
        let what = format!("the class has {} participants, not 1 to {MAX_PARTICIPANTS}", typed.value.len());
        faults.add(FaultKind::OutOfRange, typed.span.clone(), what, "Write a `[[participant]]` for each who takes part.");
    }
    for one in &typed.value {
        let Some((called, at)) = called(&one.value, &one.span, hearing, faults) else { continue };
        if list.participants.iter().any(|other| likeness(&other.called) == likeness(&called)) {
            let what = format!("two participants are called {called}");
            faults.add(FaultKind::Twice, at, what, "Call one of them otherwise, so that each can be told from the other.");
        }
        if let Some(reason) = &one.value.reason {
            text::check(reason, "reason", SaidBy::Nobody, hearing, faults);
        }
        let leaves_out = exercises(one.value.leaves_out.as_ref(), "leaves_out", faults);
        let seated = exercises(one.value.seated.as_ref(), "seated", faults);
        find_clashes(&one.value, faults);
        let reason = one.value.reason.as_ref().map(|at| at.value.trim().to_owned());
        list.participants.push(Participant { called, leaves_out, seated, reason, heard: None });
    }
    list
}

/// "plum" and "Plum" are one name.
fn likeness(called: &Called) -> String {
    called.to_string().to_lowercase()
}

/// How this one is called, and where that stands.
fn called(file: &ParticipantFile, at: &Range<usize>, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<(Called, Range<usize>)> {
    match (&file.name, &file.number) {
        (Some(name), None) => {
            text::check(name, "name", SaidBy::Tool, hearing, faults);
            let text = name.value.trim();
            if text.chars().count() > MAX_NAME_CHARS {
                let what = format!("`name` has {} characters, more than {MAX_NAME_CHARS}", text.chars().count());
                faults.add(FaultKind::OutOfRange, name.span.clone(), what, "Write a first name, or give a number.");
            }
            Some((Called::Name(text.to_owned()), name.span.clone()))
        }
        (None, Some(number)) => {
            if !NUMBERS.contains(&number.value) {
                let what = format!("`number` is {}, not {} to {}", number.value, NUMBERS.start(), NUMBERS.end());
                faults.add(FaultKind::OutOfRange, number.span.clone(), what, "Give one of those, such as the one on their badge.");
                return None;
            }
            Some((Called::Number(u32::try_from(number.value).ok()?), number.span.clone()))
        }
        (Some(_), Some(number)) => {
            faults.add(FaultKind::Twice, number.span.clone(), "this participant has a name and a number", "Keep one of the two.");
            None
        }
        (None, None) => {
            faults.add(
                FaultKind::Missing,
                at.clone(),
                "this participant has neither `name` nor `number`",
                "Add a line `name = \"Plum\"` or `number = 7`.",
            );
            None
        }
    }
}

fn exercises(typed: Option<&At<Vec<At<String>>>>, key: &str, faults: &mut Finder<'_>) -> BTreeSet<String> {
    let mut ids = BTreeSet::new();
    for id in typed.iter().flat_map(|list| &list.value) {
        let Some(entry) = find(&id.value) else {
            let what = format!("`{key}`: there is no exercise `{}`", super::shape::printable(&id.value));
            let known = catalogue().iter().map(|entry| entry.id.as_str());
            faults.add(FaultKind::UnknownExercise, id.span.clone(), what, suggestion(&id.value, known));
            continue;
        };
        if key == "seated" && !entry.postures.is_empty() && !entry.postures.contains(&Posture::Sitting) {
            let what = format!("`seated`: {} cannot be done on a chair", entry.id);
            faults.add(FaultKind::NotForThisExercise, id.span.clone(), what, "Write it under `leaves_out`.");
            continue;
        }
        if !ids.insert(id.value.clone()) {
            faults.add(FaultKind::Twice, id.span.clone(), format!("`{key}` names {} twice", id.value), "Keep one of the two.");
        }
    }
    ids
}

/// Nobody does seated what they leave out.
fn find_clashes(file: &ParticipantFile, faults: &mut Finder<'_>) {
    let left_out = |id: &str| file.leaves_out.iter().flat_map(|list| &list.value).any(|other| other.value == id);
    for id in file.seated.iter().flat_map(|list| &list.value).filter(|id| left_out(&id.value)) {
        let what = format!("{} stands under `leaves_out` and under `seated`", super::shape::printable(&id.value));
        faults.add(FaultKind::Twice, id.span.clone(), what, "Keep one of the two.");
    }
}

#[cfg(test)]
#[path = "tests/class.rs"]
mod tests;
