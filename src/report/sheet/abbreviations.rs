//! What the abbreviations of a page mean, each in one plain line, and only those that stand on it.

use super::terms::Terms;
use crate::chart::is_relative;
use crate::handout::Say;
use progress::{Conditions, Measure, Picture, Series};

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
    let measured = series.iter().flat_map(|series| series.segments.iter().map(|segment| (series.measure, &segment.conditions)));
    of_measured(&measured.collect::<Vec<_>>(), terms)
}

/// As [`unit_lines`], for the figures of baseline and re-test.
pub(super) fn of_baselines(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let figures = picture.baselines.iter().flat_map(|all| &all.figures);
    let readings = figures.flat_map(|figure| std::iter::once(&figure.first).chain(figure.latest.iter().map(|(_, latest)| latest)));
    of_measured(&readings.map(|reading| (reading.measure, &reading.conditions)).collect::<Vec<_>>(), terms)
}

fn of_measured(all: &[(Measure, &Conditions)], terms: &Terms<'_>) -> Vec<String> {
    let measured = |wanted: &[Measure]| all.iter().any(|(measure, _)| wanted.contains(measure));
    let levels = || all.iter().filter(|(measure, _)| measure.is_level()).map(|(_, conditions)| *conditions);
    let relative = |conditions: &Conditions| is_relative(conditions.calibration);
    let there = [
        ("spl", levels().any(|conditions| !relative(conditions))),
        ("relative", levels().any(relative)),
        ("weighted", levels().any(|conditions| conditions.level_weighting.as_deref() == Some("A"))),
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
