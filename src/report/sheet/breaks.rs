//! Where series are broken, numbered over all charts of the page.

use jiff::civil::Date;

use super::terms::{Terms, printable};
use progress::{Break, BreakReason, Picture, Series};

/// One place where something is broken, and everything that broke there.
struct Place<'a> {
    before: Date,
    after: Date,
    reasons: Vec<&'a BreakReason>,
}

/// The breaks of the charts, oldest first; one that several charts share stands once.
pub(super) struct Breaks<'a> {
    places: Vec<Place<'a>>,
}

impl<'a> Breaks<'a> {
    /// Of these series, within the picture's window.
    pub fn of(picture: &Picture, series: &[&'a Series]) -> Self {
        let all = series.iter().flat_map(|series| &series.segments).filter_map(|segment| segment.broken_by.as_ref());
        let mut places: Vec<Place<'a>> = Vec::new();
        for broken in all.filter(|broken| picture.window.has(broken.after)) {
            let known = places.iter().position(|place| is_at(place, broken));
            let place = match known.and_then(|index| places.get_mut(index)) {
                Some(place) => place,
                None => {
                    places.push(Place { before: broken.before, after: broken.after, reasons: Vec::new() });
                    let Some(new) = places.last_mut() else { continue };
                    new
                }
            };
            for reason in &broken.reasons {
                if !place.reasons.contains(&reason) {
                    place.reasons.push(reason);
                }
            }
        }
        places.sort_by_key(|place| (place.after, place.before));
        Self { places }
    }

    /// Its number on the page, from 1.
    pub fn number(&self, broken: &Break) -> Option<usize> {
        self.places.iter().position(|place| is_at(place, broken)).map(|index| index + 1)
    }

    pub fn len(&self) -> usize {
        self.places.len()
    }

    /// Each in words, "2: 14 Oct to 3 Nov, 20 days without a trial".
    pub fn lines(&self, terms: &Terms<'_>) -> Vec<String> {
        let line = |(n, place): (usize, &Place<'_>)| {
            let why = place.reasons.iter().map(|reason| words(reason, terms)).collect::<Vec<_>>().join("; ");
            let when = terms.span(place.before, place.after);
            terms.text("report-break-shown", &[("number", (n + 1).to_string().into()), ("when", when.into()), ("why", why.into())])
        };
        self.places.iter().enumerate().map(line).collect()
    }
}

fn is_at(place: &Place<'_>, broken: &Break) -> bool {
    (place.before, place.after) == (broken.before, broken.after)
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
        BreakReason::Calibration { from, to } => match (terms.calibration_named(from), terms.calibration_named(to)) {
            (Some(from), Some(to)) => changed("calibration", &from, &to),
            _ => terms.plain("report-break-calibration-other-shown"),
        },
        BreakReason::Weighting { from, to } => changed("weighting", from, to),
        BreakReason::Distance { from, to } => changed("distance", from, to),
    }
}
