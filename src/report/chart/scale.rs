//! The scale of a chart: from where to where, which lines are labelled, and which values share it.

use crate::number::number;
use progress::{Measure, Segment, Series, Window};
use session::LevelCalibration;

/// Lines that are labelled, about so many.
pub(super) const LINES: f64 = 4.0;

/// The scale of one chart.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Scale {
    pub low: f64,
    pub high: f64,
    pub ticks: Vec<f64>,
}

/// A series in parts of which each has one unit: relative levels and calibrated ones never share a field, for on two axes a calibration
/// would look like a fall. The later part comes last; a series of one kind is one part.
#[must_use]
pub fn by_scale(series: &Series) -> Vec<Series> {
    let relative = |segment: &Segment| series.measure.is_level() && is_relative(segment.conditions.calibration);
    let of = |wanted: bool| Series {
        segments: series.segments.iter().filter(|segment| relative(segment) == wanted).cloned().collect(),
        ..series.clone()
    };
    let latest = series.segments.last().is_some_and(relative);
    [!latest, latest].map(of).into_iter().filter(|part| !part.segments.is_empty()).collect()
}

impl Scale {
    /// With about so many labelled lines. None where nothing lies in the window.
    pub fn of(window: Window, series: &Series, lines: f64) -> Option<Self> {
        let mut all: Vec<f64> = Vec::new();
        for segment in &series.segments {
            let shown = segment.days.iter().filter(|day| window.has(day.day)).flat_map(|day| day.trials.iter().copied());
            let values: Vec<f64> = shown.collect();
            if let (false, Some(baseline), Some(change)) = (values.is_empty(), &segment.baseline, &segment.change) {
                all.extend([baseline.median - change.mdc95, baseline.median + change.mdc95]);
            }
            all.extend(values);
        }
        let lowest = all.iter().copied().reduce(f64::min)?;
        let highest = all.iter().copied().reduce(f64::max)?;
        let (low, high, ticks) = nice(lowest, highest, series.measure, lines);
        Some(Self { low, high, ticks })
    }

    /// How far up the field a value stands, 0 to 1.
    pub fn share(&self, value: f64) -> f64 {
        ((value - self.low) / (self.high - self.low)).clamp(0.0, 1.0)
    }

    /// The value shows on the field.
    pub fn has(&self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }
}

/// What stands at a labelled line: whole numbers plain, others with one decimal.
pub(super) fn tick_label(value: f64) -> String {
    number(value, usize::from(value.fract() != 0.0))
}

/// Not dB SPL.
#[must_use]
pub fn is_relative(calibration: LevelCalibration) -> bool {
    matches!(calibration, LevelCalibration::None | LevelCalibration::Void)
}

/// The least that a field shows from below to above, so that small scatter does not look large.
fn least_span(measure: Measure) -> f64 {
    match measure {
        Measure::LevelDb | Measure::PhraseLevelDb | Measure::TalkLevelDb => 12.0,
        Measure::F0SpanSt | Measure::PhraseSpanSt | Measure::StepDb | Measure::StepSt => 6.0,
        Measure::F0MedianHz | Measure::PhraseF0Hz | Measure::TalkF0Hz => 40.0,
        Measure::HoldS => 5.0,
        Measure::NamedCount => 5.0,
        Measure::SyllableRateHz | Measure::PhraseRateHz => 3.0,
        _ => 1.0,
    }
}

/// Lengths and counts begin at 0: half the height is half the length.
fn from_zero(measure: Measure) -> bool {
    matches!(
        measure,
        Measure::HoldS | Measure::F0SpanSt | Measure::PhraseSpanSt | Measure::NamedCount | Measure::SyllableRateHz | Measure::PhraseRateHz
    )
}

fn nice(lowest: f64, highest: f64, measure: Measure, lines: f64) -> (f64, f64, Vec<f64>) {
    let lowest = if from_zero(measure) { 0.0 } else { lowest };
    let spare = ((least_span(measure) - (highest - lowest)) / 2.0).max(0.0);
    let (low, high) = if from_zero(measure) { (0.0, highest + 2.0 * spare) } else { (lowest - spare, highest + spare) };
    let rough = (high - low) / lines;
    let power = 10_f64.powf(rough.log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|of| of * power).find(|step| *step >= rough * 0.99).unwrap_or(rough);
    let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
    let count = ((high - low) / step).round() as usize;
    let ticks = (0..=count).map(|n| low + n as f64 * step).collect();
    (low, high, ticks)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_hold_all_values_and_do_not_magnify_small_scatter() {
        let (low, high, ticks) = nice(11.8, 14.2, Measure::HoldS, LINES);
        assert!(low == 0.0 && high >= 14.2 && ticks.len() >= 3, "{low} {high} {ticks:?}");
        let (low, high, ticks) = nice(-31.0, -30.0, Measure::LevelDb, LINES);
        assert!(low <= -36.0 && high >= -25.0 && (3..=8).contains(&ticks.len()), "{low} {high} {ticks:?}");
    }
}
