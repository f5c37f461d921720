//! The set-up pages: what is known about each goes in, a page comes out. No page here reads a file, a clock or the record.

mod calibration;
mod caseload;
mod cautions;
mod chart;
mod enrolment;
mod form;
mod history;
mod listening;
mod microphone;
mod practice;
mod progress;
mod routine_form;
mod routine_view;
mod routines;
mod sound;
mod start;

pub use calibration::{CalibrationStage, CalibrationView, KeptCalibration, calibration};
pub use caseload::{CaseRow, CaseloadView, ReasonTold, SheetTable, SheetView, caseload, sheet};
pub use cautions::{AgreedBy, CautionsView, GuardedExercise, cautions};
pub use chart::{Chart, SeriesPoint, Stretch, chart};
pub use enrolment::{EnrolmentView, KeptWord, enrolment};
pub use form::{Action, Choice, Field, Group, Kind};
pub use history::{HistoryRow, HistoryView, history};
pub use listening::{Listening, listening};
pub use microphone::{DeviceChoice, MicrophoneView, Verdict, microphone};
pub use practice::{FactRow, PracticeView, practice};
pub use progress::{CalendarDay, DayMark, ProgressView, Series, progress};
pub use routine_form::{DoseOffer, RoutineForm, StepForm, routine_form, routine_text};
pub use routine_view::{Chooser, RoutineView, StepView, routine_view};
pub use routines::{RoutineRow, RoutinesView, routines};
pub use sound::{SoundView, StoredSound, sound};
pub use start::{Standing, StartItem, StartView, start};

use maud::{Markup, html};

use super::layout::{NavItem, PageFrame, page};
use session::{Arg, Line};

/// The words of the pages, looked up by their keys.
#[derive(Clone, Copy)]
pub struct Texts<'a>(pub &'a dyn Fn(&Line) -> String);

impl Texts<'_> {
    /// The message of this key, which takes no arguments.
    #[must_use]
    pub fn s(&self, key: &str) -> String {
        self.with(key, Vec::new())
    }

    /// The message with its arguments.
    #[must_use]
    pub fn with(&self, key: &str, args: Vec<(&'static str, Arg)>) -> String {
        (self.0)(&Line { key: key.to_owned(), args })
    }

    /// The message with one text put in.
    #[must_use]
    pub fn text(&self, key: &str, name: &'static str, text: &str) -> String {
        self.with(key, vec![(name, Arg::Text(text.to_owned()))])
    }

    /// The message with one number put in.
    #[must_use]
    pub fn number(&self, key: &str, name: &'static str, number: f64) -> String {
        self.with(key, vec![(name, Arg::Number(number))])
    }
}

/// The set-up pages in the order in which a household is set up: path and key of the name.
pub const NAV: [(&str, &str); 9] = [
    ("/setup", "page-nav-start"),
    ("/microphone", "page-nav-microphone"),
    ("/calibration", "page-nav-calibration"),
    ("/routines", "page-nav-routines"),
    ("/cautions", "page-nav-cautions"),
    ("/own-voice", "page-nav-enrolment"),
    ("/history", "page-nav-history"),
    ("/progress", "page-nav-progress"),
    ("/sound", "page-nav-sound"),
];

/// The page of a clinic, where there is one.
pub const CASELOAD_NAV: (&str, &str) = ("/caseload", "page-nav-caseload");

/// A whole set-up page among those of `nav`. `here` is the path of the entry in the list of pages that it belongs to.
#[must_use]
pub fn framed(texts: Texts<'_>, nav: &[NavItem], here: &str, title: &str, main: &Markup) -> Markup {
    let frame = PageFrame {
        title,
        language: "en",
        skip: &texts.s("page-skip"),
        nav_label: &texts.s("page-nav-label"),
        nav,
        here,
        scripts: &["pages.js"],
        kind: "setup",
    };
    page(&frame, main)
}

/// A page that says what went wrong and what to do.
#[must_use]
pub fn trouble(texts: Texts<'_>, what: &str) -> Markup {
    html! {
        h1 { (texts.s("page-trouble-title")) }
        p class="lead" { (what) }
        p { a href="/setup" { (texts.s("page-back-to-start")) } }
    }
}
