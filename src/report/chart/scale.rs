//! The scale of a chart: from where to where, which lines are labelled, and how relative levels stand beside calibrated ones.

use crate::number::number;
use progress::{Measure, Segment, Series, Window, median};
use session::LevelCalibration;

/// Lines that are labelled, about so many.
const LINES: f64 = 4.0;

/// The scale of one chart.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Scale {
    pub low: f64,
    pub high: f64,
    pub ticks: Vec<f64>,
    /// What is added to the values of each segment so that relative levels stand on the field of the calibrated ones.
    pub shifts: Vec<f64>,
    /// The second scale, for relative levels: the first less this.
    pub second: Option<f64>,
}

impl Scale {
    /// None where nothing lies in the window.
    pub fn of(window: Window, series: &Series) -> Option<Self> {
        let in_window = |segment: &Segment| -> Vec<f64> {
            segment.days.iter().filter(|day| window.has(day.day)).flat_map(|day| day.trials.iter().copied()).collect()
        };
        let values: Vec<(bool, Vec<f64>)> = series
            .segments
            .iter()
            .map(|segment| (series.measure.is_level() && is_relative(segment.conditions.calibration), in_window(segment)))
            .collect();
        let of = |relative: bool| {
            median(&values.iter().filter(|(is, _)| *is == relative).flat_map(|(_, values)| values.iter().copied()).collect::<Vec<_>>())
        };
        // Both scales have the same distance between lines; only their numbers differ.
        let second = of(false).zip(of(true)).map(|(absolute, relative)| ((absolute - relative) / 5.0).round() * 5.0);
        let shifts: Vec<f64> = values.iter().map(|(relative, _)| if *relative { second.unwrap_or(0.0) } else { 0.0 }).collect();
        let mut all: Vec<f64> = Vec::new();
        for ((segment, shift), (_, values)) in series.segments.iter().zip(&shifts).zip(&values) {
            all.extend(values.iter().map(|value| value + shift));
            if let (false, Some(baseline), Some(change)) = (values.is_empty(), &segment.baseline, &segment.change) {
                all.extend([baseline.median - change.mdc95 + shift, baseline.median + change.mdc95 + shift]);
            }
        }
        let lowest = all.iter().copied().reduce(f64::min)?;
        let highest = all.iter().copied().reduce(f64::max)?;
        let (low, high, ticks) = nice(lowest, highest, series.measure);
        Some(Self { low, high, ticks, shifts, second })
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
pub(crate) fn is_relative(calibration: LevelCalibration) -> bool {
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

fn nice(lowest: f64, highest: f64, measure: Measure) -> (f64, f64, Vec<f64>) {
    let lowest = if from_zero(measure) { 0.0 } else { lowest };
    let spare = ((least_span(measure) - (highest - lowest)) / 2.0).max(0.0);
    let (low, high) = if from_zero(measure) { (0.0, highest + 2.0 * spare) } else { (lowest - spare, highest + spare) };
    let rough = (high - low) / LINES;
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
        let (low, high, ticks) = nice(11.8, 14.2, Measure::HoldS);
        assert!(low == 0.0 && high >= 14.2 && ticks.len() >= 3, "{low} {high} {ticks:?}");
        let (low, high, ticks) = nice(-31.0, -30.0, Measure::LevelDb);
        assert!(low <= -36.0 && high >= -25.0 && (3..=8).contains(&ticks.len()), "{low} {high} {ticks:?}");
    }
}
