//! The second page: tables and conditions, and every list whole.

use serde::Serialize;

use super::abbreviations;
use super::baselines;
use super::breaks::Breaks;
use super::conditions::{self, Condition};
use super::dose;
use super::front::{Column, columns};
use super::goals;
use super::moments;
use super::panels;
use super::ratings;
use super::table::Table;
use super::terms::{Terms, Verdict, percent, verdict};
use crate::number::number;
use progress::{Picture, Segment, Series};

/// The second page; it flows over more where there is much.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Tables {
    pub title: String,
    pub tables: Vec<Table>,
    pub conditions_title: String,
    pub conditions: Vec<Condition>,
    /// The lists of page one and its breaks, whole: whichever had no room there.
    pub lists: Vec<Column>,
}

pub(super) fn tables(picture: &Picture, terms: &Terms<'_>) -> Tables {
    let chosen = panels::chosen(picture);
    let tables = [
        goals::table(&picture.goals, terms),
        baselines::table(picture, terms),
        ratings::table(&picture.ratings, terms),
        moments::table(picture, terms),
        dose::by_group(picture, terms),
        dose::by_day(picture, terms),
        measures(&chosen, picture, terms),
        weeks(picture, &chosen, terms),
    ];
    let mut lists: Vec<Column> = columns(picture, terms)
        .into_iter()
        .zip(["report-all-left-out-shown", "report-all-events-shown", "report-all-programme-shown"])
        .map(|(column, key)| Column { title: terms.plain(key), ..column })
        .collect();
    lists.push(Column {
        title: terms.plain("report-all-breaks-shown"),
        items: Breaks::of(picture, &chosen).lines(terms),
        none: String::new(),
    });
    Tables {
        title: terms.plain("report-tables-title-shown"),
        tables: tables.into_iter().flatten().collect(),
        conditions_title: terms.plain("report-conditions-title-shown"),
        conditions: conditions::conditions(picture, terms),
        lists,
    }
}

fn none(terms: &Terms<'_>) -> String {
    terms.plain("report-cell-none-shown")
}

/// A row for each stretch, quality figures last.
fn measures(chosen: &[&Series], picture: &Picture, terms: &Terms<'_>) -> Option<Table> {
    let heads = ["measure", "stretch", "first", "latest", "change", "mdc", "slope", "trials"];
    let (quality, voice): (Vec<&Series>, Vec<&Series>) = picture.series.iter().partition(|series| series.measure.is_quality());
    let mut rows = Vec::new();
    for series in voice.iter().chain(&quality) {
        let shown: Vec<&Segment> =
            series.segments.iter().filter(|segment| segment.days.iter().any(|day| picture.window.has(day.day))).collect();
        let last = shown.len().saturating_sub(1);
        // What is in a chart is told for every stretch; of the rest the last one is enough for a page, exports hold all.
        let from = if chosen.iter().any(|chosen| std::ptr::eq(*chosen, *series)) { 0 } else { last };
        for (n, segment) in shown.into_iter().enumerate().skip(from) {
            rows.push(measure_row(series, segment, n == last, picture, terms));
        }
    }
    let mut notes = vec![terms.plain("report-table-measures-note-shown"), terms.plain("report-table-star-shown")];
    notes.extend((!quality.is_empty()).then(|| terms.plain("report-table-quality-note-shown")));
    let glossed = abbreviations::of(&picture.series.iter().collect::<Vec<_>>(), terms);
    notes.extend((!glossed.is_empty()).then(|| format!("{}.", glossed.join("; "))));
    (!rows.is_empty()).then(|| Table {
        title: terms.plain("report-table-measures-shown"),
        note: notes.join(" "),
        head: heads.iter().map(|head| terms.plain(&format!("report-head-{head}-shown"))).collect(),
        grows: (0..heads.len()).map(|n| n == 0).collect(),
        rows,
        wraps: false,
    })
}

fn measure_row(series: &Series, segment: &Segment, is_last: bool, picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let (measure, decimals) = (series.measure, series.measure.decimals());
    let unit = terms.unit(measure, segment.conditions.calibration);
    let names =
        [("exercise", terms.exercise(&series.exercise).into()), ("measure", terms.measure(measure).into()), ("unit", unit.clone().into())];
    let name = terms.text(if unit.is_empty() { "report-panel-bare-shown" } else { "report-panel-shown" }, &names);
    let bare = |value: f64| terms.figure(number(value, decimals));
    let days: Vec<_> = segment.days.iter().filter(|day| picture.window.has(day.day)).collect();
    let stretch =
        days.first().zip(days.last()).map_or_else(String::new, |(first, last)| terms.span_within(first.day, last.day, picture.window));
    let first = segment.baseline.as_ref().map(|baseline| match baseline.interval {
        Some(interval) => terms.text(
            "report-cell-median-shown",
            &[("value", bare(baseline.median).into()), ("interval", terms.interval(interval, decimals).into())],
        ),
        None => bare(baseline.median),
    });
    let latest = segment.change.and_then(|change| change.latest).or_else(|| segment.weeks.last().map(|week| week.median)).map(bare);
    let change = match verdict(segment) {
        Verdict::Early => None,
        Verdict::Within(by) => Some(terms.figure(super::terms::signed(by, decimals))),
        Verdict::Beyond(by) => Some(terms.text("report-cell-beyond-shown", &[("change", super::terms::signed(by, decimals).into())])),
    };
    let trials: usize = days.iter().map(|day| day.trials.len()).sum();
    // What stands in no figure belongs to the series, not to a stretch of it; it is told once.
    let left: u32 = series.discarded.iter().map(|(_, n)| n).sum();
    vec![
        name,
        stretch,
        first.unwrap_or_else(|| none(terms)),
        latest.unwrap_or_else(|| none(terms)),
        change.unwrap_or_else(|| none(terms)),
        segment.change.map_or_else(|| none(terms), |change| bare(change.mdc95)),
        segment.slope.map_or_else(|| none(terms), |slope| terms.slope(measure, &slope, false)),
        if is_last && left > 0 {
            terms.text("report-cell-trials-shown", &[("n", trials.into()), ("left", left.into())])
        } else {
            trials.to_string()
        },
    ]
}

/// Adherence and the charted measures, week by week.
fn weeks(picture: &Picture, chosen: &[&Series], terms: &Terms<'_>) -> Option<Table> {
    let mut head: Vec<String> = ["week", "days", "done"].map(|head| terms.plain(&format!("report-head-{head}-shown"))).to_vec();
    head.extend(chosen.iter().map(|series| {
        let unit = series.measure.unit();
        let names = [
            ("exercise", terms.exercise(&series.exercise).into()),
            ("measure", terms.measure(series.measure).into()),
            ("unit", unit.into()),
        ];
        terms.text(if unit.is_empty() { "report-panel-bare-shown" } else { "report-panel-shown" }, &names)
    }));
    let mut rows = Vec::new();
    for week in &picture.adherence.weeks {
        let medians: Vec<Vec<String>> = chosen.iter().map(|series| week_medians(series, week.monday, terms)).collect();
        let lines = medians.iter().map(Vec::len).max().unwrap_or(0).max(1);
        for line in 0..lines {
            let mut row = vec![terms.date(week.monday)];
            if line == 0 {
                row.push(match week.days_planned {
                    0 => week.days_practised.to_string(),
                    planned => terms.text("report-cell-of-shown", &[("a", week.days_practised.into()), ("b", planned.into())]),
                });
                row.push(match week.prescribed {
                    0 => none(terms),
                    prescribed => terms.text(
                        "report-cell-percent-shown",
                        &[("done", week.done.into()), ("prescribed", prescribed.into()), ("pct", percent(week.done, prescribed).into())],
                    ),
                });
            } else {
                row.extend([String::new(), String::new()]);
            }
            row.extend(
                medians.iter().map(|cells| cells.get(line).cloned().unwrap_or_else(|| if line == 0 { none(terms) } else { String::new() })),
            );
            rows.push(row);
        }
    }
    (!rows.is_empty()).then(|| Table {
        title: terms.plain("report-table-weeks-shown"),
        note: terms.plain("report-table-weeks-note-shown"),
        grows: (0..head.len()).map(|n| n >= 3).collect(),
        head,
        rows,
        wraps: false,
    })
}

/// The week's medians, one for each stretch that reaches into it.
fn week_medians(series: &Series, monday: jiff::civil::Date, terms: &Terms<'_>) -> Vec<String> {
    let decimals = series.measure.decimals();
    let weeks = series.segments.iter().flat_map(|segment| segment.weeks.iter().filter(|week| week.monday == monday));
    let cell = |week: &progress::WeekMedian| {
        let value = terms.figure(number(week.median, decimals));
        match week.interval {
            Some(interval) => {
                terms.text("report-cell-median-shown", &[("value", value.into()), ("interval", terms.interval(interval, decimals).into())])
            }
            None => value,
        }
    };
    weeks.map(cell).collect()
}
