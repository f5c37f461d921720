//! What was left out and why, stop events and notes, what changed in the programme: alike ones told once with their number.

use std::collections::BTreeMap;

use jiff::civil::Date;
use model::StepReason;

use super::terms::{Given, Terms, printable};
use progress::{NoteKind, Picture, ProgrammeItem};

/// Alike events told once: what, how often, when last.
struct Told<K> {
    what: K,
    n: u32,
    last: Date,
}

/// Gathers alike ones; those of late first.
fn gathered<K: PartialEq>(all: impl Iterator<Item = (K, Date)>) -> Vec<Told<K>> {
    let mut told: Vec<Told<K>> = Vec::new();
    for (what, day) in all {
        match told.iter_mut().find(|known| known.what == what) {
            Some(known) => {
                known.n += 1;
                known.last = known.last.max(day);
            }
            None => told.push(Told { what, n: 1, last: day }),
        }
    }
    told.sort_by_key(|event| std::cmp::Reverse(event.last));
    told
}

/// "Head lift: not agreed to aloud; 12 times, last on 24 Nov".
pub(super) fn left_out(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let all = picture.left_out.iter().map(|step| ((step.exercise.as_str(), step.reason.as_str()), step.day));
    let line = |told: Told<(&str, &str)>| {
        let (exercise, reason) = told.what;
        let mut given = when(terms, told.n, told.last);
        given.extend([("exercise", terms.exercise(exercise).into()), ("why", terms.why(reason).into())]);
        terms.text("report-left-out-shown", &given)
    };
    gathered(all).into_iter().map(line).collect()
}

/// The exercises that wait for the clinician's word, by name, the longest waiting first: nobody said that they had agreed, and it has not
/// been led since.
pub(super) fn unsettled(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let waiting = picture.left_out.iter().filter(|step| step.reason == StepReason::NoSpokenAgreement);
    let mut last: BTreeMap<&str, (Date, Date)> = BTreeMap::new();
    for step in waiting {
        let days = last.entry(step.exercise.as_str()).or_insert((step.day, step.day));
        *days = (days.0.min(step.day), days.1.max(step.day));
    }
    let led_since = |exercise: &str, day: Date| {
        let led = picture.practices.iter().filter(|practice| practice.day > day).flat_map(|practice| &practice.steps);
        led.into_iter().any(|step| step.exercise == exercise)
    };
    let mut open: Vec<(Date, &str)> = last
        .into_iter()
        .filter(|(exercise, (_, day))| !led_since(exercise, *day))
        .map(|(exercise, (first, _))| (first, exercise))
        .collect();
    open.sort_unstable();
    open.into_iter().map(|(_, exercise)| terms.exercise(exercise)).collect()
}

/// "Stop, dizzy, in Long ah; on 24 Nov."
pub(super) fn stops(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let stops = picture.safety_stops.iter().map(|stop| ((stop.reason.as_str(), stop.exercise.as_deref(), stop.after.as_deref()), stop.day));
    let stop = |told: Told<(&str, Option<&str>, Option<&str>)>| {
        let (reason, exercise, after) = told.what;
        let mut given = when(terms, told.n, told.last);
        given.push(("why", terms.why(reason).into()));
        let key = match (exercise, after) {
            (Some(exercise), _) => {
                given.push(("where", terms.exercise(exercise).into()));
                "report-stop-shown"
            }
            (None, Some(before)) => {
                given.push(("where", terms.exercise(before).into()));
                "report-stop-after-shown"
            }
            (None, None) => "report-stop-outside-shown",
        };
        terms.text(key, &given)
    };
    gathered(stops).into_iter().map(stop).collect()
}

/// "wet voice, chest infection (2×)": warning signs about swallowing; what was only doubted says so.
pub(super) fn sign_names(picture: &Picture, terms: &Terms<'_>) -> Vec<(String, u32)> {
    let name = |sign: &progress::Sign| match sign.yes {
        0 => (terms.text("report-sign-unsure-shown", &[("what", terms.why(&sign.sign).into())]), sign.not_sure),
        yes => (terms.why(&sign.sign), yes),
    };
    picture.signs.iter().map(name).collect()
}

/// "Swallowing, wet voice: yes 2×, not sure 1×; last on 24 Nov."
pub(super) fn signs(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let line = |sign: &progress::Sign| {
        let given: [(&'static str, Given); 4] = [
            ("what", terms.why(&sign.sign).into()),
            ("yes", sign.yes.into()),
            ("unsure", sign.not_sure.into()),
            ("last", terms.date(sign.last).into()),
        ];
        terms.text("report-sign-shown", &given)
    };
    picture.signs.iter().map(line).collect()
}

/// "Planned days missed, as the client said: too tired (3×), forgot."
pub(super) fn missed(picture: &Picture, terms: &Terms<'_>) -> Option<String> {
    let list: Vec<(String, u32)> = picture.missed_for.iter().map(|missed| (terms.why(&missed.reason), missed.days)).collect();
    (!list.is_empty()).then(|| terms.text("report-missed-shown", &[("list", terms.counted(&list).into())]))
}

/// Stop events first, then warning signs, why days were missed, and notes.
pub(super) fn stops_and_notes(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let mut lines = stops(picture, terms);
    lines.extend(signs(picture, terms));
    lines.extend(missed(picture, terms));
    if !picture.clock_jumps.is_empty() {
        lines.push(terms.text("report-note-clock-shown", &[("n", picture.clock_jumps.len().into())]));
    }
    let notes = picture.notes.iter().map(|note| ((note.kind, note.exercise.as_deref(), alike(note.kind, &note.text)), note.day));
    let note = |told: Told<(NoteKind, Option<&str>, &str)>| {
        let (kind, exercise, text) = told.what;
        let what = note_words(kind, text, terms);
        let what = match exercise {
            Some(exercise) => terms.text("report-note-in-shown", &[("what", what.into()), ("exercise", terms.exercise(exercise).into())]),
            None => what,
        };
        let mut given = when(terms, told.n, told.last);
        given.push(("what", what.into()));
        terms.text("report-note-shown", &given)
    };
    lines.extend(gathered(notes).into_iter().map(note));
    lines
}

/// "dizzy (2×), pain": the stop events by their reasons.
pub(super) fn stop_reasons(picture: &Picture, terms: &Terms<'_>) -> Vec<(String, u32)> {
    let all = picture.safety_stops.iter().map(|stop| (terms.why(&stop.reason), stop.day));
    gathered(all).into_iter().map(|told| (told.what, told.n)).collect()
}

/// What makes two notes of a kind the same: figures differ each time and stand in the practice itself.
fn alike(kind: NoteKind, text: &str) -> &str {
    match kind {
        NoteKind::Fall => text.split(' ').next().unwrap_or(text),
        NoteKind::SoundLost | NoteKind::LoudLimit => "",
        _ => text,
    }
}

fn note_words(kind: NoteKind, text: &str, terms: &Terms<'_>) -> String {
    let of = |name: &str, given: &[(&'static str, Given)]| terms.text(&format!("report-note-{name}-shown"), given);
    match kind {
        NoteKind::Trouble => of("trouble", &[("why", terms.why(text).into())]),
        // The record's sentence ends with a full stop; the line goes on.
        NoteKind::CalibrationVoid => of("calibration-void", &[("text", long(text).into())]),
        NoteKind::LoudLimit => of("loud-limit", &[]),
        NoteKind::Fall => of("fall", &[("text", terms.why(text).into())]),
        NoteKind::SoundLost => of("sound-lost", &[]),
        NoteKind::EndedEarly => of("ended-early", &[("why", terms.why(text).into())]),
    }
}

/// Its first sentence, which says what holds no longer; the remedy was for the day.
fn long(text: &str) -> String {
    let first = text.split_inclusive(". ").next().unwrap_or(text).trim_end_matches([' ', '.']);
    first.split(|c: char| c.is_whitespace() || c.is_control()).filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

fn when(terms: &Terms<'_>, n: u32, last: Date) -> Vec<(&'static str, Given)> {
    vec![("n", n.into()), ("last", terms.date(last).into())]
}

/// What changed, of late first.
pub(super) fn programme(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let line = |change: &progress::ProgrammeChange| {
        let list = change.items.iter().map(|item| item_words(item, terms)).collect::<Vec<_>>().join("; ");
        terms.text(
            "report-programme-shown",
            &[("date", terms.date(change.day).into()), ("routine", printable(&change.routine_title).into()), ("list", list.into())],
        )
    };
    picture.programme.iter().rev().filter(|change| !change.items.is_empty()).map(line).collect()
}

fn item_words(item: &ProgrammeItem, terms: &Terms<'_>) -> String {
    let of = |name: &str, given: &[(&'static str, Given)]| terms.text(&format!("report-change-{name}-shown"), given);
    let named = |id: &str| ("exercise", Given::Text(terms.exercise(id)));
    let from_to = |from: &str, to: &str| [("from", Given::Text(printable(from))), ("to", Given::Text(printable(to)))];
    match item {
        ProgrammeItem::RoutineBegun { exercises } => of("routine-begun", &[("n", exercises.len().into())]),
        ProgrammeItem::RoutineReplaced { by } => of("routine-replaced", &[("by", printable(by).into())]),
        ProgrammeItem::ExerciseAdded { exercise, dose } => of("added", &[named(exercise), ("dose", printable(dose).into())]),
        ProgrammeItem::ExerciseRemoved { exercise, .. } => of("removed", &[named(exercise)]),
        ProgrammeItem::DoseChanged { exercise, field, from, to } => {
            let [from, to] = from_to(from, to);
            of("dose", &[named(exercise), ("field", terms.field(field).into()), from, to])
        }
        ProgrammeItem::StageChanged { exercise, from, to, dose } => {
            of("stage", &[named(exercise), ("from", (*from).into()), ("to", (*to).into()), ("dose", printable(dose).into())])
        }
        ProgrammeItem::OrderChanged => of("order", &[]),
        ProgrammeItem::PlanChanged { from, to } => of("plan", &from_to(from, to)),
        ProgrammeItem::SettingChanged { field, from, to } => {
            let [from, to] = from_to(from, to);
            of("setting", &[("field", terms.field(field).into()), from, to])
        }
    }
}
