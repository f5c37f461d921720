//! Drawings with their key figures beside them.

use serde::Serialize;

use super::breaks::Breaks;
use super::terms::{Terms, Verdict, percent, verdict};
use crate::calendar::{CalendarWords, calendar};
use crate::chart::{ChartWords, printed_chart};
use crate::error::ReportError;
use crate::number::number;
use crate::time_axis::Axis;
use progress::{DayAdherence, Measure, Picture, PlanBasis, Series};
use routine::find;

/// Heights of a chart where there is one, two, three, four of them; tenths of a millimetre.
const HEIGHTS: [i32; 4] = [560, 450, 360, 300];

/// A drawing and what it tells in figures.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Panel {
    pub title: String,
    /// Drawn in greys; its text is short labels.
    pub svg: String,
    /// The drawing in words.
    pub described: String,
    pub figures: Vec<KeyFigure>,
    /// How to read it; none where the page has one key for all.
    pub key: Option<String>,
}

/// "Now: 14.1 s".
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct KeyFigure {
    pub label: String,
    pub value: String,
}

/// What the adherence of the window says in whole numbers.
pub(super) struct Done {
    pub planned_days: u32,
    /// Days with any practice; of the planned ones where days were planned.
    pub practised_days: u32,
    pub all_days: u32,
}

pub(super) fn done(picture: &Picture) -> Done {
    let days = &picture.adherence.days;
    let count = |keep: &dyn Fn(&DayAdherence) -> bool| u32::try_from(days.iter().filter(|day| keep(day)).count()).unwrap_or(u32::MAX);
    let planned = |day: &DayAdherence| day.basis == PlanBasis::Planned && day.planned > 0 && !(day.open && day.practices == 0);
    let planned_days = count(&planned);
    let all_days = count(&|day| day.practices > 0);
    Done {
        planned_days,
        practised_days: if planned_days > 0 { count(&|day| planned(day) && day.practices > 0) } else { all_days },
        all_days,
    }
}

/// The adherence calendar.
pub(super) fn adherence(picture: &Picture, axis: Axis, terms: &Terms<'_>) -> Result<Panel, ReportError> {
    let mut stops: Vec<_> = picture.safety_stops.iter().map(|stop| stop.day).collect();
    stops.dedup();
    let words = CalendarWords {
        weekdays: terms.weekdays(),
        stops: terms.plain("report-calendar-stops-shown"),
        percent: terms.plain("report-calendar-percent-shown"),
        tick: &|day, months| terms.tick(day, months),
    };
    let svg = calendar(axis, &picture.adherence, &stops, &words)?;
    let (whole, counts) = (&picture.adherence, done(picture));
    let span = terms.span(picture.window.from, picture.window.to);
    let given = |name: &'static str, n: u32| (name, n.into());
    let key = if counts.planned_days > 0 { "report-calendar-described-planned-shown" } else { "report-calendar-described-unplanned-shown" };
    let described = terms.text(
        key,
        &[
            ("span", span.into()),
            given("days", counts.practised_days),
            given("planned", counts.planned_days),
            given("done", whole.done),
            given("prescribed", whole.prescribed),
        ],
    );
    let figure = |label: &str, value: String| KeyFigure { label: terms.plain(&format!("report-figure-{label}-shown")), value };
    let pct = percent(whole.done, whole.prescribed);
    let mut figures = Vec::new();
    if whole.prescribed > 0 {
        let value = terms
            .text("report-figure-done-value-shown", &[given("done", whole.done), given("prescribed", whole.prescribed), given("pct", pct)]);
        figures.push(figure("done", value));
    }
    figures.push(figure(
        "days",
        if counts.planned_days > 0 {
            terms.text("report-figure-days-planned-shown", &[given("days", counts.practised_days), given("planned", counts.planned_days)])
        } else {
            terms.text("report-figure-days-value-shown", &[given("days", counts.all_days)])
        },
    ));
    figures.push(figure("practices", picture.practices.len().to_string()));
    let minutes: Vec<f64> = picture.practices.iter().map(|practice| practice.minutes).collect();
    if let Some(minutes) = progress::median(&minutes) {
        figures.push(figure("minutes", terms.text("report-figure-minutes-value-shown", &[("minutes", number(minutes, 0).into())])));
    }
    let longest = longest_gap(picture);
    if longest > 0 {
        figures.push(figure("longest-gap", terms.text("report-figure-longest-gap-value-shown", &[given("days", longest)])));
    }
    let key = if stops.is_empty() { "report-calendar-key-shown" } else { "report-calendar-key-stops-shown" };
    Ok(Panel { title: terms.plain("report-calendar-title-shown"), svg, described, figures, key: Some(terms.plain(key)) })
}

/// Most days in a row without practice, from the first practice to the end of the window; today does not count while it is open.
fn longest_gap(picture: &Picture) -> u32 {
    let (mut longest, mut run) = (0, 0);
    for day in &picture.adherence.days {
        run = if day.practices > 0 || day.open { 0 } else { run + 1 };
        longest = longest.max(run);
    }
    longest
}

/// The series that stand on the first page: hold time, level, pitch range, and one more; four at most, each the one with most
/// trials of its kind.
pub(super) fn chosen(picture: &Picture) -> Vec<&Series> {
    let shown = |series: &&Series| series.segments.iter().any(|segment| segment.days.iter().any(|day| picture.window.has(day.day)));
    let is_glide = |series: &Series| find(&series.exercise).is_some_and(|entry| entry.glide);
    let most = |keep: &dyn Fn(&Series) -> bool| {
        picture.series.iter().filter(shown).filter(|series| keep(series)).max_by_key(|series| series.counted)
    };
    // A glide is as long as it is; how long a vowel is held is the measure.
    let hold = most(&|series| series.measure == Measure::HoldS && !is_glide(series));
    let level = hold.and_then(|hold| most(&|series| series.measure == Measure::LevelDb && series.exercise == hold.exercise));
    let level = level.or_else(|| most(&|series| series.measure == Measure::LevelDb && !is_glide(series)));
    let range = most(&|series| series.measure == Measure::F0SpanSt && is_glide(series));
    let range = range.or_else(|| most(&|series| series.measure == Measure::F0SpanSt));
    let mut all: Vec<&Series> = [hold, level, range].into_iter().flatten().collect();
    // What is spoken in daily life is what practice is for; then whatever else has most trials.
    let further =
        [Measure::TalkLevelDb, Measure::PhraseLevelDb, Measure::HoldS, Measure::SyllableRateHz, Measure::NamedCount, Measure::LevelDb];
    for measure in further {
        let next = most(&|series| series.measure == measure && !all.iter().any(|known| std::ptr::eq(*known, series)));
        if let Some(series) = next.filter(|_| all.len() < HEIGHTS.len()) {
            all.push(series);
        }
    }
    all
}

/// The charts of these series.
pub(super) fn charts(
    picture: &Picture,
    series: &[&Series],
    breaks: &Breaks<'_>,
    axis: Axis,
    terms: &Terms<'_>,
) -> Result<Vec<Panel>, ReportError> {
    let height = HEIGHTS.get(series.len().saturating_sub(1)).copied().unwrap_or(300);
    // Goals stand over them, and what was left out and why needs its room below.
    let height = if picture.goals.is_empty() { height } else { height * 4 / 5 };
    let mut panels = Vec::new();
    for series in series {
        let words = ChartWords {
            tick: &|day, months| terms.tick(day, months),
            gap: &|days| terms.text("report-gap-shown", &[("days", days.into())]),
            break_number: &|broken| breaks.number(broken),
            unit: &|part| terms.unit_of(part),
        };
        if let Some(svg) = printed_chart(axis, series, height, &words)? {
            let (figures, described) = told(picture, series, terms);
            panels.push(Panel { title: title(series, terms), svg, described, figures, key: None });
        }
    }
    Ok(panels)
}

/// "Long ah: level, dB SPL, A-weighted, 30 cm".
fn title(series: &Series, terms: &Terms<'_>) -> String {
    let mut unit = terms.unit_of(series);
    if let Some(last) = series.segments.last().filter(|_| series.measure.is_level()) {
        unit = format!("{unit}, {}", terms.level_terms(&last.conditions));
    }
    let names = |key: &str| {
        terms.text(
            key,
            &[
                ("exercise", terms.exercise(&series.exercise).into()),
                ("measure", terms.measure(series.measure).into()),
                ("unit", unit.clone().into()),
            ],
        )
    };
    names(if unit.is_empty() { "report-panel-bare-shown" } else { "report-panel-shown" })
}

/// The key figures of the last stretch, and the chart in words.
fn told(picture: &Picture, series: &Series, terms: &Terms<'_>) -> (Vec<KeyFigure>, String) {
    let measure = series.measure;
    let figure = |label: &str, value: String| KeyFigure { label: terms.plain(&format!("report-figure-{label}-shown")), value };
    let few = || terms.plain("report-figure-few-shown");
    let Some(last) = series.segments.last() else { return (Vec::new(), String::new()) };
    let decimals = measure.decimals();
    let first = last.baseline.as_ref().map(|baseline| {
        let value = terms.value(measure, baseline.median);
        match baseline.interval {
            Some(interval) => {
                terms.text("report-cell-median-shown", &[("value", value.into()), ("interval", terms.interval(interval, decimals).into())])
            }
            None => value,
        }
    });
    let now = last.change.and_then(|change| change.latest).map(|latest| terms.value(measure, latest));
    let now = now.or_else(|| last.weeks.last().map(|week| terms.value(measure, week.median)));
    let mdc = last.change.map(|change| terms.value(measure, change.mdc95));
    let (change_text, described_change) = match verdict(last) {
        Verdict::Early => (few(), String::new()),
        Verdict::Within(by) | Verdict::Beyond(by) => {
            let change = terms.change(measure, by);
            let key =
                if matches!(verdict(last), Verdict::Beyond(_)) { "report-verdict-beyond-shown" } else { "report-verdict-within-shown" };
            let described = terms.text(
                "report-described-verdict-shown",
                &[("change", change.clone().into()), ("mdc", mdc.clone().unwrap_or_default().into())],
            );
            (terms.text(key, &[("change", change.into())]), described)
        }
    };
    let slope = last.slope.map(|slope| terms.slope(measure, &slope, true));
    let discarded: u32 = series.discarded.iter().map(|(_, n)| n).sum();
    let trials = if discarded > 0 {
        terms.text("report-figure-trials-left-shown", &[("n", series.counted.into()), ("left", discarded.into())])
    } else {
        terms.text("report-figure-trials-value-shown", &[("n", series.counted.into())])
    };
    let described = {
        let part = |key: &str, value: &Option<String>| {
            value.as_ref().map(|value| terms.text(key, &[("value", value.clone().into())])).unwrap_or_default()
        };
        let broken = series
            .segments
            .iter()
            .filter_map(|segment| segment.broken_by.as_ref())
            .filter(|broken| picture.window.has(broken.after))
            .count();
        let parted = if broken > 0 { terms.text("report-described-parted-shown", &[("n", broken.into())]) } else { String::new() };
        terms.text(
            "report-chart-described-shown",
            &[
                ("name", title(series, terms).into()),
                ("span", terms.span(picture.window.from, picture.window.to).into()),
                ("first", part("report-described-first-shown", &first).into()),
                ("now", part("report-described-now-shown", &now).into()),
                ("verdict", described_change.into()),
                ("parted", parted.into()),
            ],
        )
    };
    // Figures of a broken series are those of its last stretch, which is told.
    let since =
        last.broken_by.as_ref().filter(|broken| picture.window.has(broken.after)).map(|broken| figure("since", terms.date(broken.after)));
    let figures = vec![
        figure("first", first.unwrap_or_else(few)),
        figure("now", now.unwrap_or_else(few)),
        figure("change", change_text),
        figure("counts", mdc.map_or_else(few, |mdc| terms.text("report-figure-counts-value-shown", &[("value", mdc.into())]))),
        figure("slope", slope.unwrap_or_else(few)),
        figure("trials", trials),
    ];
    (since.into_iter().chain(figures).collect(), described)
}
