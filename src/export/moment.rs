//! When things were: entries by part, and moments of a part as times of day.

use jiff::{Span, ZonedDateTime};
use model::{KeptEntry, KeptPractice};

/// A moment of a practice.
#[derive(Debug, Clone, PartialEq)]
pub struct Moment {
    /// The part, counted from 1.
    pub part: u32,
    /// Seconds on the sample clock of that part.
    pub at_s: f64,
    /// Local time of day there.
    pub time: ZonedDateTime,
}

/// The reason of a practice or step that nobody ended.
pub const INTERRUPTED: &str = "interrupted";

pub(super) fn entries(kept: &KeptPractice) -> impl Iterator<Item = (u32, &KeptEntry)> {
    (1..).zip(&kept.parts).flat_map(|(number, part)| part.entries.iter().map(move |entry| (number, entry)))
}

/// The moment `at_s` of a part; none where there is no such part or time.
pub(super) fn moment(kept: &KeptPractice, part: u32, at_s: f64) -> Option<Moment> {
    let started = &kept.parts.get(usize::try_from(part).ok()?.checked_sub(1)?)?.started_at;
    let span = Span::new().try_milliseconds((at_s * 1000.0).round() as i64).ok()?;
    Some(Moment { part, at_s, time: started.checked_add(span).ok()? })
}

/// ISO 8601 with milliseconds and the offset from UTC, which every format here understands.
#[must_use]
pub fn iso(time: &ZonedDateTime) -> String {
    time.strftime("%Y-%m-%dT%H:%M:%S%.3f%:z").to_string()
}
