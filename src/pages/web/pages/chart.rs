//! One series as a drawing: each day's trials from lowest to highest with their median, the baseline, the trend, and every break.
//!
//! Drawn in lines and shapes that differ in form, never in colour alone; presentation attributes and classes only, for the page
//! lets no style into an element.

use maud::{Markup, html};

/// One day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeriesPoint {
    /// Days since the first day that is drawn.
    pub x: f64,
    pub median: f64,
    pub low: f64,
    pub high: f64,
}

/// A stretch within which values may be compared.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Stretch {
    pub points: Vec<SeriesPoint>,
    /// The baseline's median and its lowest and highest trial.
    pub baseline: Option<(f64, f64, f64)>,
    /// The trend: from (x, y) to (x, y).
    pub trend: Option<((f64, f64), (f64, f64))>,
    /// It may not be joined to the one before: where that is drawn.
    pub break_x: Option<f64>,
}

/// What is drawn.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Chart {
    /// What a screen reader says in its place.
    pub told: String,
    pub unit: String,
    pub decimals: usize,
    pub stretches: Vec<Stretch>,
    /// Days since the first, with the words under them.
    pub ticks: Vec<(f64, String)>,
    /// The last day that is drawn.
    pub last_x: f64,
}

const WIDTH: f64 = 900.0;
const HEIGHT: f64 = 320.0;
const LEFT: f64 = 70.0;
const RIGHT: f64 = 20.0;
const TOP: f64 = 20.0;
const BOTTOM: f64 = 50.0;

/// Round steps that part the range into three to seven.
fn step(range: f64) -> f64 {
    let rough = (range / 4.0).max(1e-9);
    let power = 10f64.powf(rough.log10().floor());
    [1.0, 2.0, 5.0, 10.0].into_iter().map(|factor| factor * power).find(|step| *step >= rough).unwrap_or(power)
}

struct Scale {
    low: f64,
    high: f64,
    last_x: f64,
    step: f64,
}

impl Scale {
    fn of(chart: &Chart) -> Option<Self> {
        let values = chart.stretches.iter().flat_map(|stretch| {
            let points = stretch.points.iter().flat_map(|point| [point.low, point.high]);
            let baseline = stretch.baseline.into_iter().flat_map(|(_, low, high)| [low, high]);
            let trend = stretch.trend.into_iter().flat_map(|(from, to)| [from.1, to.1]);
            points.chain(baseline).chain(trend)
        });
        let (low, high) = values
            .filter(|value| value.is_finite())
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)));
        if low > high {
            return None;
        }
        let step = step((high - low).max(1e-3));
        let (low, high) = ((low / step).floor() * step, (high / step).ceil() * step);
        Some(Self { low, high: if high > low { high } else { low + step }, last_x: chart.last_x.max(1.0), step })
    }

    fn x(&self, day: f64) -> f64 {
        LEFT + 12.0 + day / self.last_x * (WIDTH - LEFT - RIGHT - 24.0)
    }

    fn y(&self, value: f64) -> f64 {
        TOP + (self.high - value) / (self.high - self.low) * (HEIGHT - TOP - BOTTOM)
    }

    fn lines(&self) -> Vec<f64> {
        let count = ((self.high - self.low) / self.step).round() as usize;
        (0..=count.min(20)).map(|n| self.low + n as f64 * self.step).collect()
    }
}

fn px(value: f64) -> String {
    format!("{value:.1}")
}

/// The drawing; nothing where there is nothing to draw.
#[must_use]
pub fn chart(chart: &Chart) -> Markup {
    let Some(scale) = Scale::of(chart) else { return html! {} };
    let (bottom, right) = (HEIGHT - BOTTOM, WIDTH - RIGHT);
    let decimals = if scale.step < 0.1 { 2 } else { usize::from(scale.step < 1.0) };
    html! {
        svg class="chart" viewBox=(format!("0 0 {WIDTH} {HEIGHT}")) role="img" aria-label=(chart.told) {
            @for value in scale.lines() {
                line class="grid" x1=(px(LEFT)) x2=(px(right)) y1=(px(scale.y(value))) y2=(px(scale.y(value))) {}
                text class="tick" x=(px(LEFT - 8.0)) y=(px(scale.y(value) + 5.0)) text-anchor="end" { (format!("{value:.decimals$}")) }
            }
            text class="unit" x="4" y=(px(TOP - 4.0)) { (chart.unit) }
            @for (day, words) in &chart.ticks {
                line class="tickmark" x1=(px(scale.x(*day))) x2=(px(scale.x(*day))) y1=(px(bottom)) y2=(px(bottom + 6.0)) {}
                text class="tick" x=(px(scale.x(*day))) y=(px(bottom + 24.0)) text-anchor="middle" { (words) }
            }
            line class="axis" x1=(px(LEFT)) x2=(px(right)) y1=(px(bottom)) y2=(px(bottom)) {}
            @for stretch in &chart.stretches { (draw(stretch, &scale)) }
        }
    }
}

fn draw(stretch: &Stretch, scale: &Scale) -> Markup {
    let (first, last) = (stretch.points.first().map_or(0.0, |point| point.x), stretch.points.last().map_or(0.0, |point| point.x));
    let path: Vec<String> = stretch.points.iter().map(|point| format!("{},{}", px(scale.x(point.x)), px(scale.y(point.median)))).collect();
    html! {
        @if let Some((median, low, high)) = stretch.baseline {
            rect class="baseline" x=(px(scale.x(first) - 6.0)) width=(px(scale.x(last) - scale.x(first) + 12.0)) y=(px(scale.y(high))) height=(px((scale.y(low) - scale.y(high)).max(1.0))) {}
            line class="baseline" x1=(px(scale.x(first) - 6.0)) x2=(px(scale.x(last) + 6.0)) y1=(px(scale.y(median))) y2=(px(scale.y(median))) {}
        }
        @if let Some(x) = stretch.break_x {
            line class="break" x1=(px(scale.x(x))) x2=(px(scale.x(x))) y1=(px(TOP)) y2=(px(HEIGHT - BOTTOM)) {}
        }
        @if let Some((from, to)) = stretch.trend {
            line class="trend" x1=(px(scale.x(from.0))) y1=(px(scale.y(from.1))) x2=(px(scale.x(to.0))) y2=(px(scale.y(to.1))) {}
        }
        polyline class="medians" points=(path.join(" ")) {}
        @for point in &stretch.points {
            line class="range" x1=(px(scale.x(point.x))) x2=(px(scale.x(point.x))) y1=(px(scale.y(point.high))) y2=(px(scale.y(point.low))) {}
            circle class="median" cx=(px(scale.x(point.x))) cy=(px(scale.y(point.median))) r="5" {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_few() {
        for (range, wanted) in [(10.0, 5.0), (1.0, 0.5), (37.0, 10.0), (0.8, 0.2)] {
            assert!((step(range) - wanted).abs() < 1e-12, "{range}: {}", step(range));
        }
    }

    #[test]
    fn every_day_is_drawn_within_the_frame_and_nothing_carries_a_style() {
        let points = (0..20).map(|n| SeriesPoint { x: f64::from(n), median: 10.0 + f64::from(n), low: 8.0, high: 40.0 }).collect();
        let drawn =
            chart(&Chart { last_x: 19.0, stretches: vec![Stretch { points, ..Stretch::default() }], ..Chart::default() }).into_string();
        assert_eq!(drawn.matches("<circle").count(), 20);
        assert!(!drawn.contains("style="));
        for attribute in ["cx", "x1", "x2"] {
            let name = format!(" {attribute}=\"");
            let values = drawn.split(&name).skip(1).filter_map(|rest| rest.split('"').next()?.parse::<f64>().ok());
            assert!(values.into_iter().all(|x| (0.0..=WIDTH).contains(&x)), "{attribute}");
        }
    }

    #[test]
    fn nothing_and_one_value_are_no_trouble() {
        assert_eq!(chart(&Chart::default()).into_string(), "");
        let points = vec![SeriesPoint { x: 0.0, median: 5.0, low: 5.0, high: 5.0 }];
        let drawn = chart(&Chart { stretches: vec![Stretch { points, ..Stretch::default() }], ..Chart::default() }).into_string();
        assert!(drawn.contains("<circle") && !drawn.contains("NaN") && !drawn.contains("inf"), "{drawn}");
    }
}
