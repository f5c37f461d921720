//! What the abbreviations of a page mean, each in one plain line, and only those that stand on it.

use super::terms::Terms;
use crate::chart::is_relative;
use crate::handout::Say;
use progress::{Measure, Segment, Series};

/// Lines for the units and measures of these series.
#[must_use]
pub fn unit_lines(series: &[&Series], say: Say<'_>) -> Vec<String> {
    of(series, &Terms::new(say))
}

/// As [`unit_lines`], with what a change counts from.
pub(super) fn with_change(series: &[&Series], terms: &Terms<'_>) -> Vec<String> {
    std::iter::once(terms.plain("report-abbreviation-mdc-shown")).chain(of(series, terms)).collect()
}

/// As [`unit_lines`].
pub(super) fn of(series: &[&Series], terms: &Terms<'_>) -> Vec<String> {
    let measured = |wanted: &[Measure]| series.iter().any(|series| wanted.contains(&series.measure));
    let levels = || series.iter().filter(|series| series.measure.is_level()).flat_map(|series| &series.segments);
    let relative = |segment: &Segment| is_relative(segment.conditions.calibration);
    let there = [
        ("spl", levels().any(|segment| !relative(segment))),
        ("relative", levels().any(relative)),
        ("weighted", levels().any(|segment| segment.conditions.level_weighting.as_deref() == Some("A"))),
        ("st", measured(&[Measure::F0SpanSt, Measure::F0SdSt, Measure::StepSt, Measure::PhraseSpanSt])),
        ("f0", measured(&[Measure::F0MedianHz, Measure::PhraseF0Hz, Measure::TalkF0Hz, Measure::F0SdSt])),
        ("hz", measured(&[Measure::F0MedianHz, Measure::PhraseF0Hz, Measure::TalkF0Hz])),
        ("sd", measured(&[Measure::F0SdSt])),
        ("cpps", measured(&[Measure::CppsDb])),
        ("hnr", measured(&[Measure::HnrDb])),
        ("jitter", measured(&[Measure::JitterPct])),
        ("shimmer", measured(&[Measure::ShimmerPct])),
    ];
    there.into_iter().filter(|(_, there)| *there).map(|(name, _)| terms.plain(&format!("report-abbreviation-{name}-shown"))).collect()
}
