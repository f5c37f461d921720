//! Promise: the report is two minutes' reading for a clinician and one plain page for the client; every figure carries its
//! conditions; nothing in a name or note is markup; the pages are tagged.

mod command;
mod pages;
mod told;

#[path = "../../support/invented.rs"]
mod invented;

use files::reports::gather;
use invented::{Life, keep};
use jiff::civil::{Date, date};
use model::{MissedReason, RatedOver, Rating, SignAnswer, SwallowSign};
use progress::{
    Aim, BaselineFigure, Baselines, BreakReason, ClockJump, Compared, Conditions, DaysMissed, Direction, Goal, GoalState, Mark, MarkKind,
    Measure, Moment, NotMet, Note, NoteKind, Picture, PlanBasis, Practised, ProgrammeChange, ProgrammeItem, Rated, Reading, SignAnswered,
    Standing, Taken, TooEarly, Window,
};
use record::{NewGoal, Store};
use report::sheet::{About, Sheet, sheet};
use report::to_html;
use session::{Arg, Line};
use speak::Words;
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::path::Path;
use std::process::{Command, Output};

const TODAY: Date = date(2026, 11, 22);

fn words() -> Words {
    Words::english().expect("the catalogue")
}

fn practised(life: &Life) -> Practised {
    let folder = tempfile::tempdir().expect("a folder");
    keep(folder.path(), std::slice::from_ref(life));
    Store::open(folder.path()).expect("a record").practised(life.client, TODAY).expect("read")
}

fn report(life: &Life, weeks: u32) -> Sheet {
    gather(&practised(life), &Practised::default(), weeks, TODAY, &words()).expect("a report")
}

fn pdf(sheet: &Sheet) -> lopdf::Document {
    lopdf::Document::load_mem(&print::report_pdf(sheet).expect("a PDF")).expect("an independent reader takes it")
}

/// Letters and digits of a page: lines are broken anywhere.
fn page(pdf: &lopdf::Document, number: u32) -> String {
    squeezed(&pdf.extract_text(&[number]).expect("text in the PDF is text"))
}

fn squeezed(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

/// Every length of life that a page must bear.
fn lives() -> Vec<(&'static str, Life, u32)> {
    let others =
        &["shoulder-rolls", "neck-turns", "neck-tilts", "jaw-opening", "effortful-swallow", "tongue-hold-swallow", "lip-press-smile"];
    vec![
        ("eventful", Life::eventful(), 12),
        ("shown", Life::shown(), 12),
        ("one practice", Life { first: TODAY, days: 1, diligence: 1.0, ..Life::weeks(1) }, 12),
        ("nothing for three weeks", Life { days: 63, ..Life::weeks(12) }, 3),
        ("idle of late", Life { days: 63, ..Life::weeks(12) }, 12),
        ("not calibrated", Life { calibrated: None, ..Life::weeks(12) }, 12),
        (
            "many exercises",
            Life { client: "Somebody with a name that is longer than most names ever are", also: others, ..Life::eventful() },
            12,
        ),
    ]
}

/// The sheet of a picture. A missing message would leave a blank on the page.
fn worded(name: &str, picture: &Picture) -> Sheet {
    let words = words();
    let missing = RefCell::new(BTreeSet::new());
    let say = |key: &str, given: &[(&'static str, Arg)]| {
        words.text(&Line { key: key.to_owned(), args: given.to_vec() }).unwrap_or_else(|why| {
            // These are asked for by names out of the record; what has no words of its own is shown as it stands there.
            if !["report-field-", "report-scale-"].iter().any(|open| key.starts_with(open)) {
                missing.borrow_mut().insert(why.to_string());
            }
            String::new()
        })
    };
    let about = About { made: TODAY, last_practice: Some(TODAY), software: "tidecount" };
    let sheet = sheet(picture, &about, &say).expect("a report");
    assert!(missing.borrow().is_empty(), "{name}: {:?}", missing.borrow());
    let front = (&sheet.front.glance, &sheet.front.breaks, &sheet.front.columns);
    let all = serde_json::to_string(&(front, &sheet.tables, &sheet.client.voice, &sheet.client.goals, &sheet.chart)).expect("text");
    for broken in ["{ $", "NaN", "inf ", "null"] {
        assert!(!all.contains(broken), "{name}: {broken} in {all}");
    }
    sheet
}
