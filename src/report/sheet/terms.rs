//! Dates, figures, names and reasons in words.

use jiff::civil::Date;

use crate::chart::is_relative;
use crate::handout::Say;
use crate::number::number;
use progress::{Change, Conditions, Interval, Measure, Segment, Series, Slope, Window};
use session::{Arg, LevelCalibration};

/// A value for a message.
pub(super) enum Given {
    Text(String),
    Number(f64),
}

impl From<String> for Given {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<&str> for Given {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<u32> for Given {
    fn from(number: u32) -> Self {
        Self::Number(f64::from(number))
    }
}

impl From<usize> for Given {
    fn from(number: usize) -> Self {
        Self::Number(number as f64)
    }
}

/// The catalogue of words, as the report asks it.
pub(super) struct Terms<'a> {
    say: Say<'a>,
    /// Days as 2026-11-22: for text that is read by programs, too.
    iso: bool,
}

impl<'a> Terms<'a> {
    /// Days in words.
    pub fn new(say: Say<'a>) -> Self {
        Self { say, iso: false }
    }

    /// Days as ISO 8601 has them.
    pub fn with_iso_days(say: Say<'a>) -> Self {
        Self { say, iso: true }
    }
}

impl Terms<'_> {
    /// A message with its arguments.
    pub fn text(&self, key: &str, given: &[(&'static str, Given)]) -> String {
        let of = |given: &Given| match given {
            Given::Text(text) => Arg::Text(text.clone()),
            Given::Number(number) => Arg::Number(*number),
        };
        (self.say)(key, &given.iter().map(|(name, value)| (*name, of(value))).collect::<Vec<_>>())
    }

    /// A message without arguments.
    pub fn plain(&self, key: &str) -> String {
        self.text(key, &[])
    }

    /// A figure that stands in a cell by itself, with the language's decimal mark.
    pub fn figure(&self, value: String) -> String {
        let written = self.text("report-figure-shown", &[("value", value.clone().into())]);
        if written.is_empty() { value } else { written }
    }

    /// A client's name as it may be printed.
    pub fn name(&self, client: &str) -> Given {
        Given::Text(printable(client))
    }

    /// "3 Sep 2026".
    pub fn date(&self, day: Date) -> String {
        if self.iso {
            return day.to_string();
        }
        self.text(
            "report-date-shown",
            &[("day", day.day().to_string().into()), ("month", self.month(day).into()), ("year", day.year().to_string().into())],
        )
    }

    /// "3 Sep".
    pub fn day_month(&self, day: Date) -> String {
        if self.iso {
            return day.to_string();
        }
        self.text("report-day-month-shown", &[("day", day.day().to_string().into()), ("month", self.month(day).into())])
    }

    fn month(&self, day: Date) -> String {
        self.plain(&format!("report-month-{}-shown", day.month()))
    }

    /// Below the drawings: a day, or the month where only its beginning is labelled.
    pub fn tick(&self, day: Date, months: bool) -> String {
        if months {
            self.text("report-month-year-shown", &[("month", self.month(day).into()), ("year", day.year().to_string().into())])
        } else {
            self.day_month(day)
        }
    }

    /// "3 Sep 2026 to 24 Nov 2026"; a single day once.
    pub fn span(&self, from: Date, to: Date) -> String {
        if from == to {
            return self.date(from);
        }
        let first = if from.year() == to.year() { self.day_month(from) } else { self.date(from) };
        self.text("report-span-shown", &[("from", first.into()), ("to", self.date(to).into())])
    }

    /// "3 Sep to 24 Nov": a stretch of a window whose year the page tells already.
    pub fn span_within(&self, from: Date, to: Date, window: Window) -> String {
        if from == to || window.from.year() != window.to.year() {
            return self.span(from, to);
        }
        self.text("report-span-shown", &[("from", self.day_month(from).into()), ("to", self.day_month(to).into())])
    }

    /// Monday to Sunday.
    pub fn weekdays(&self) -> Vec<String> {
        (1..=7).map(|n| self.plain(&format!("report-weekday-{n}-shown"))).collect()
    }

    /// The exercise's name; its id where the catalogue no longer has it.
    pub fn exercise(&self, id: &str) -> String {
        Some(self.plain(&format!("ex-{id}-name"))).filter(|name| !name.is_empty()).unwrap_or_else(|| printable(id))
    }

    pub fn measure(&self, measure: Measure) -> String {
        self.plain(&format!("report-measure-{}-shown", measure.id()))
    }

    /// A reason as the record has it, in words where there are some.
    pub fn why(&self, reason: &str) -> String {
        if let Some(end) = reason.strip_prefix("not reached: ") {
            return self.text("report-why-not-reached-shown", &[("why", self.why(end).into())]);
        }
        Some(self.plain(&format!("report-why-{}-shown", slug(reason))))
            .filter(|words| !words.is_empty())
            .unwrap_or_else(|| printable(reason))
    }

    /// What a level stands on, by its short name in the record; none where it is told at length.
    pub fn calibration_named(&self, name: &str) -> Option<String> {
        Some(self.plain(&format!("report-scale-{}-shown", slug(name)))).filter(|words| !words.is_empty())
    }

    /// A field of a routine file in words: "target_s" is "target s"; what has words of its own is called by them.
    pub fn field(&self, field: &str) -> String {
        let name = self.plain(&format!("report-field-{}-shown", field.replace('_', "-")));
        if name.is_empty() { printable(&field.replace('_', " ")) } else { name }
    }

    /// "Long ah, hold time".
    pub fn series(&self, series: &Series) -> String {
        self.text(
            "report-series-shown",
            &[("exercise", self.exercise(&series.exercise).into()), ("measure", self.measure(series.measure).into())],
        )
    }

    /// The unit of a stretch, "dB SPL", "dB, relative", "s".
    pub fn unit(&self, measure: Measure, calibration: LevelCalibration) -> String {
        match (measure.is_level(), calibration) {
            (false, _) if measure == Measure::NamedCount => self.plain("report-unit-words-shown"),
            (false, _) => measure.unit().to_owned(),
            (true, LevelCalibration::Meter | LevelCalibration::Source) => self.plain("report-unit-spl-shown"),
            (true, LevelCalibration::Rough) => self.plain("report-unit-rough-shown"),
            (true, LevelCalibration::None | LevelCalibration::Void) => self.plain("report-unit-relative-shown"),
        }
    }

    /// The unit of a whole series; both where its stretches differ.
    pub fn unit_of(&self, series: &Series) -> String {
        let relative = |segment: &Segment| is_relative(segment.conditions.calibration);
        let last = series.segments.last().map_or(LevelCalibration::None, |segment| segment.conditions.calibration);
        if series.measure.is_level() && series.segments.iter().any(relative) && !series.segments.iter().all(relative) {
            return self.plain("report-unit-mixed-shown");
        }
        self.unit(series.measure, last)
    }

    /// "A-weighted, 30 cm": what a level refers to.
    pub fn level_terms(&self, conditions: &Conditions) -> String {
        let weighting = conditions
            .level_weighting
            .as_ref()
            .map(|weighting| self.text("report-weighted-shown", &[("weighting", printable(weighting).into())]));
        let distance = match conditions.distance_cm {
            Some(cm) => self.text("report-at-cm-shown", &[("cm", number(cm, usize::from(cm.fract() != 0.0)).into())]),
            None => self.plain("report-distance-unknown-shown"),
        };
        weighting.into_iter().chain([distance]).collect::<Vec<_>>().join(", ")
    }

    /// A value with the unit of its measure; levels without saying what they refer to.
    pub fn value(&self, measure: Measure, value: f64) -> String {
        self.with_unit(measure, number(value, measure.decimals()))
    }

    /// A change with its sign and unit.
    pub fn change(&self, measure: Measure, change: f64) -> String {
        self.with_unit(measure, signed(change, measure.decimals()))
    }

    fn with_unit(&self, measure: Measure, value: String) -> String {
        if measure.unit().is_empty() {
            return value;
        }
        self.text("report-value-shown", &[("value", value.into()), ("unit", measure.unit().into())])
    }

    /// A trend with its interval, "+0.12 s (+0.02 to +0.21)".
    pub fn slope(&self, measure: Measure, slope: &Slope, unit: bool) -> String {
        // A week's part of a change is smaller than the change.
        let decimals = measure.decimals() + 1;
        let ends = [("low", signed(slope.interval.low, decimals).into()), ("high", signed(slope.interval.high, decimals).into())];
        let interval = self.text("report-interval-shown", &ends);
        let slope = signed(slope.per_week, decimals);
        let slope = if unit { self.with_unit(measure, slope) } else { slope };
        self.text("report-cell-slope-shown", &[("slope", slope.into()), ("interval", interval.into())])
    }

    /// "11.8 to 13.1"; marked where it covers less than was wanted.
    pub fn interval(&self, interval: Interval, decimals: usize) -> String {
        let plain = self.text(
            "report-interval-shown",
            &[("low", number(interval.low, decimals).into()), ("high", number(interval.high, decimals).into())],
        );
        if interval.reaches() { plain } else { self.text("report-cell-loose-shown", &[("interval", plain.into())]) }
    }

    /// "dizzy (2×), pain": what came how often.
    pub fn counted(&self, what: &[(String, u32)]) -> String {
        let one = |(what, n): &(String, u32)| match n {
            1 => what.clone(),
            n => self.text("report-counted-shown", &[("what", what.clone().into()), ("n", (*n).into())]),
        };
        what.iter().map(one).collect::<Vec<_>>().join(", ")
    }
}

/// A name as part of a message's key: letters and digits, parted by single dashes.
fn slug(name: &str) -> String {
    let dashed: String = name.to_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
    dashed.split('-').filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-")
}

/// What is known of a stretch's change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Verdict {
    Early,
    Within(f64),
    Beyond(f64),
}

/// Whether the last stretch changed by more than its own scatter.
pub(super) fn verdict(segment: &Segment) -> Verdict {
    match segment.change {
        Some(Change { from_baseline: Some(by), exceeds_95: Some(true), .. }) => Verdict::Beyond(by),
        Some(Change { from_baseline: Some(by), exceeds_95: Some(false), .. }) => Verdict::Within(by),
        _ => Verdict::Early,
    }
}

/// As [`number`], with a plus sign.
pub(super) fn signed(value: f64, decimals: usize) -> String {
    let text = number(value, decimals);
    let has_sign = text.starts_with('\u{2212}') || text.chars().all(|c| matches!(c, '0' | '.'));
    if has_sign { text } else { format!("+{text}") }
}

/// Text from names and devices on one line, and no longer than a page bears.
pub(super) fn printable(text: &str) -> String {
    printable_to(text, 80)
}

/// The same, with room for so many characters.
pub(super) fn printable_to(text: &str, longest: usize) -> String {
    let text = text.split(|c: char| c.is_whitespace() || c.is_control()).filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ");
    if text.chars().count() <= longest { text } else { text.chars().take(longest - 1).chain(['…']).collect() }
}

/// Whole per cent; what is not whole is never told as whole, and what is something never as nothing.
pub(super) fn percent(done: u32, prescribed: u32) -> u32 {
    let exact = f64::from(done) / f64::from(prescribed.max(1)) * 100.0;
    match exact.round() as u32 {
        100 if done < prescribed => 99,
        0 if done > 0 => 1,
        rounded => rounded,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_have_true_signs_and_do_not_round_to_more_than_they_are() {
        assert_eq!((number(-1.25, 1).as_str(), number(-0.04, 1).as_str(), signed(0.0, 1).as_str()), ("\u{2212}1.2", "0.0", "0.0"));
        assert_eq!((signed(1.26, 1).as_str(), signed(-3.0, 0).as_str()), ("+1.3", "\u{2212}3"));
        assert_eq!((percent(999, 1000), percent(1, 1000), percent(0, 10), percent(0, 0), percent(1, 2)), (99, 1, 0, 0, 50));
        assert_eq!(printable("a\n\tb \u{7} c"), "a b c");
        assert_eq!(printable(&"x".repeat(200)).chars().count(), 80);
    }
}
