//! Where series are broken, numbered over all charts of the page.

use super::terms::{Terms, printable};
use crate::progress::{Break, BreakReason, Picture, Series};

/// The breaks of the charts, oldest first; one that several charts share stands once.
pub(super) struct Breaks<'a> {
    all: Vec<&'a Break>,
}

impl<'a> Breaks<'a> {
    /// Of these series, within the picture's window.
    pub fn of(picture: &'a Picture, series: &[&'a Series]) -> Self {
        let mut all: Vec<&Break> = series.iter().flat_map(|series| &series.segments).filter_map(|segment| segment.broken_by.as_ref()).filter(|broken| picture.window.has(broken.after)).collect();
        all.sort_by_key(|broken| (broken.after, broken.before));
        let mut once: Vec<&Break> = Vec::new();
        for broken in all {
            if !once.iter().any(|known| same(known, broken)) {
                once.push(broken);
            }
        }
        Self { all: once }
    }

    /// Its number on the page, from 1.
    pub fn number(&self, broken: &Break) -> Option<usize> {
        self.all.iter().position(|known| same(known, broken)).map(|index| index + 1)
    }

    pub fn len(&self) -> usize {
        self.all.len()
    }

    /// Each in words, "2: 14 Oct to 3 Nov, 20 days without a trial".
    pub fn lines(&self, terms: &Terms<'_>) -> Vec<String> {
        let line = |(n, broken): (usize, &&Break)| {
            let why = broken.reasons.iter().map(|reason| words(reason, terms)).collect::<Vec<_>>().join("; ");
            let when = terms.span(broken.before, broken.after);
            terms.text("report-break-shown", &[("number", (n + 1).to_string().into()), ("when", when.into()), ("why", why.into())])
        };
        self.all.iter().enumerate().map(line).collect()
    }
}

fn same(one: &Break, other: &Break) -> bool {
    one == other
}

/// Why, in words.
fn words(reason: &BreakReason, terms: &Terms<'_>) -> String {
    let changed = |what: &str, from: &str, to: &str| {
        terms.text(&format!("report-break-{what}-shown"), &[("from", printable(from).into()), ("to", printable(to).into())])
    };
    match reason {
        BreakReason::Gap { days } => terms.text("report-break-gap-shown", &[("days", (*days).into())]),
        BreakReason::Microphone { from, to } => changed("microphone", from, to),
        BreakReason::Gain { from, to } => changed("gain", from, to),
        BreakReason::Calibration { from, to } => changed("calibration", from, to),
        BreakReason::Weighting { from, to } => changed("weighting", from, to),
        BreakReason::Distance { from, to } => changed("distance", from, to),
    }
}
