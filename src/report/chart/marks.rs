//! What is drawn of a series, and where: days from the left of the axis, values on the field.

use progress::{Break, BreakReason, Segment, Series, WeekMedian};

use super::scale::Scale;
use crate::time_axis::Axis;

/// Everything on the field of one chart.
pub(super) struct Marks<'a> {
    pub scale: Scale,
    pub stretches: Vec<Stretch<'a>>,
}

/// A stretch within which values may be compared.
pub(super) struct Stretch<'a> {
    pub reference: Option<Reference>,
    pub parting: Option<Parting<'a>>,
    pub days: Vec<Day>,
    pub weeks: Vec<Week>,
    /// The trend, from (day, value) to (day, value).
    pub trend: Option<[(f64, f64); 2]>,
}

/// Baseline and smallest change, as far as the stretch reaches.
pub(super) struct Reference {
    pub from: f64,
    pub to: f64,
    pub median: f64,
    /// Of the median.
    pub interval: Option<(f64, f64)>,
    /// Lowest and highest trial of the baseline.
    pub trials: (f64, f64),
    /// Less and more than these is a change, where that shows on the field.
    pub limits: Vec<f64>,
}

/// What parts a stretch from the one before it.
pub(super) struct Parting<'a> {
    pub broken: &'a Break,
    /// From the day after the last of the one to the first of the other.
    pub from: f64,
    pub to: f64,
    /// Days without a trial, where there are many.
    pub gap_days: Option<u32>,
    /// Something else than a gap parts them.
    pub other: bool,
}

/// The trials of one day.
pub(super) struct Day {
    /// The middle of the day.
    pub at: f64,
    pub trials: Vec<f64>,
    pub median: f64,
}

impl Day {
    /// Lowest and highest trial.
    pub fn range(&self) -> (f64, f64) {
        self.trials.iter().fold((self.median, self.median), |(low, high), value| (low.min(*value), high.max(*value)))
    }
}

/// The median of one week, in the middle of its days.
pub(super) struct Week {
    pub at: f64,
    pub median: f64,
    pub interval: Option<(f64, f64)>,
}

impl<'a> Marks<'a> {
    /// None where the series has nothing to draw in the window.
    pub fn of(axis: Axis, series: &'a Series, lines: f64) -> Option<Self> {
        let scale = Scale::of(axis.window, series, lines)?;
        let stretches = series.segments.iter().map(|segment| stretch(axis, &scale, segment)).collect();
        Some(Self { scale, stretches })
    }
}

fn stretch<'a>(axis: Axis, scale: &Scale, segment: &'a Segment) -> Stretch<'a> {
    let shown = || segment.days.iter().filter(|day| axis.window.has(day.day));
    let days: Vec<Day> = shown().map(|day| Day { at: axis.at(day.day) + 0.5, trials: day.trials.clone(), median: day.median }).collect();
    let span = days.first().zip(days.last()).map(|(first, last)| (first.at - 0.5, last.at + 0.5));
    Stretch {
        reference: span.and_then(|span| reference(scale, segment, span)),
        parting: segment.broken_by.as_ref().filter(|broken| axis.window.has(broken.after)).map(|broken| parting(axis, broken)),
        weeks: segment.weeks.iter().filter_map(|week| week_of(axis, segment, week)).collect(),
        trend: trend(segment, &days),
        days,
    }
}

fn reference(scale: &Scale, segment: &Segment, (from, to): (f64, f64)) -> Option<Reference> {
    let baseline = segment.baseline.as_ref()?;
    let limits = segment.change.as_ref().map_or(Vec::new(), |change| {
        let both = [baseline.median - change.mdc95, baseline.median + change.mdc95];
        both.into_iter().filter(|limit| scale.has(*limit)).collect()
    });
    Some(Reference {
        from,
        to,
        median: baseline.median,
        interval: baseline.interval.map(|interval| (interval.low, interval.high)),
        trials: (baseline.low, baseline.high),
        limits,
    })
}

fn parting(axis: Axis, broken: &Break) -> Parting<'_> {
    let from = (axis.at(broken.before) + 1.0).max(0.0);
    let gap_days = broken.reasons.iter().find_map(|reason| if let BreakReason::Gap { days } = reason { Some(*days) } else { None });
    Parting { broken, from, to: axis.at(broken.after).max(from), gap_days, other: gap_days.is_none() || broken.reasons.len() > 1 }
}

fn week_of(axis: Axis, segment: &Segment, week: &WeekMedian) -> Option<Week> {
    let from = axis.at(week.monday);
    let days = segment.days.iter().filter(|day| axis.window.has(day.day)).map(|day| axis.at(day.day));
    let days: Vec<f64> = days.filter(|at| (from..from + 7.0).contains(at)).collect();
    let (first, last) = (days.first()?, days.last()?);
    Some(Week {
        at: (first + last) / 2.0 + 0.5,
        median: week.median,
        interval: week.interval.map(|interval| (interval.low, interval.high)),
    })
}

fn trend(segment: &Segment, days: &[Day]) -> Option<[(f64, f64); 2]> {
    let (slope, end) = (segment.slope.as_ref()?, days.last()?.at);
    // The line's first day lies so far before the stretch's last.
    let span_days = f64::from(slope.span_days);
    let first = slope.at_start;
    Some([(end - span_days, first), (end, first + slope.per_week * span_days / 7.0)])
}
