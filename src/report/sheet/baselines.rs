//! Baseline and re-test beside practice: each figure with its trials, how it differs from the first beside the person's own scatter,
//! what practice gives, and what is published.

use jiff::civil::Date;

use super::abbreviations;
use super::conditions::calibration;
use super::table::Table;
use super::terms::{Terms, printable};
use crate::number::number;
use progress::{BaselineFigure, Baselines, Compared, Conditions, Picture, Reading, Taken};
use routine::{DoseStatus, Norm, norms};

/// The table; none where no baseline was led.
pub(super) fn table(picture: &Picture, terms: &Terms<'_>) -> Option<Table> {
    let all = picture.baselines.as_ref()?;
    let explained = abbreviations::of_baselines(picture, terms);
    let heads = ["what", "first", "latest", "change", "practice", "published"];
    let row = |figure: &BaselineFigure| {
        vec![
            name(&figure.first, terms),
            value(&figure.first, terms),
            figure.latest.as_ref().map_or_else(|| none(terms), |(_, latest)| value(latest, terms)),
            figure.compared.map_or_else(|| none(terms), |how| against(&figure.first, &how, terms)),
            practised(&figure.first, picture, terms).unwrap_or_else(|| none(terms)),
            published(&figure.first, terms),
        ]
    };
    Some(Table {
        title: terms.plain("report-baseline-shown"),
        note: if explained.is_empty() { note(all, terms) } else { format!("{} {}.", note(all, terms), explained.join("; ")) },
        head: heads.iter().map(|head| terms.plain(&format!("report-head-baseline-{head}-shown"))).collect(),
        grows: heads.iter().map(|head| ["what", "first", "latest", "change"].contains(head)).collect(),
        rows: all.figures.iter().map(row).collect(),
        wraps: true,
    })
}

/// A line for each figure, for a text.
pub(super) fn lines(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let line = |figure: &BaselineFigure| {
        let given = [
            ("name", name(&figure.first, terms).into()),
            ("date", terms.date(figure.first_on).into()),
            ("value", value(&figure.first, terms).into()),
        ];
        let first = terms.text("report-baseline-line-shown", &given);
        let Some((day, latest)) = &figure.latest else { return first };
        let change = figure.compared.map_or_else(|| none(terms), |how| against(&figure.first, &how, terms));
        let given =
            [("first", first.into()), ("date", terms.date(*day).into()), ("value", value(latest, terms).into()), ("change", change.into())];
        terms.text("report-baseline-retest-shown", &given)
    };
    picture.baselines.iter().flat_map(|all| &all.figures).map(line).collect()
}

fn none(terms: &Terms<'_>) -> String {
    terms.plain("report-cell-none-shown")
}

fn name(reading: &Reading, terms: &Terms<'_>) -> String {
    let unit = terms.unit(reading.measure, reading.conditions.calibration);
    let given = [
        ("exercise", terms.exercise(&reading.exercise).into()),
        ("measure", terms.measure(reading.measure).into()),
        ("unit", unit.clone().into()),
    ];
    terms.text(if unit.is_empty() { "report-panel-bare-shown" } else { "report-panel-shown" }, &given)
}

/// "11.0, best of 9.5, 11.0, 10.0 (1 more did not count)"
fn value(reading: &Reading, terms: &Terms<'_>) -> String {
    let bare = |value: f64| number(value, reading.measure.decimals());
    let trials: Vec<String> = reading.trials.iter().map(|trial| bare(*trial)).collect();
    let given = [("value", bare(reading.value).into()), ("trials", trials.join(", ").into())];
    let told = match (reading.taken, trials.len()) {
        (_, 1) => bare(reading.value),
        (Taken::Best, _) => terms.text("report-baseline-best-shown", &given),
        (Taken::Median, _) => terms.text("report-baseline-middle-shown", &given),
    };
    match reading.discarded {
        0 => told,
        n => terms.text("report-baseline-left-shown", &[("told", told.into()), ("n", n.into())]),
    }
}

fn against(first: &Reading, how: &Compared, terms: &Terms<'_>) -> String {
    let (key, difference, mdc95) = match *how {
        Compared::OtherConditions => return terms.plain("report-baseline-other-shown"),
        Compared::ScatterUnknown { difference } => ("report-baseline-unknown-shown", difference, f64::NAN),
        Compared::Within { difference, mdc95 } => ("report-baseline-within-shown", difference, mdc95),
        Compared::Beyond { difference, mdc95 } => ("report-baseline-beyond-shown", difference, mdc95),
    };
    let bare = |value: f64| number(value, first.measure.decimals());
    let change = super::terms::signed(difference, first.measure.decimals());
    terms.text(key, &[("change", change.into()), ("mdc", bare(mdc95).into())])
}

/// What practice of the same exercise gives of late, where it is on the same scale.
fn practised(reading: &Reading, picture: &Picture, terms: &Terms<'_>) -> Option<String> {
    let of_this = picture.series.iter().find(|series| series.exercise == reading.exercise && series.measure == reading.measure)?;
    let last = of_this.segments.last()?;
    if reading.measure.is_level() && last.conditions.calibration != reading.conditions.calibration {
        return None;
    }
    let now = last.change.and_then(|change| change.latest).or_else(|| last.weeks.last().map(|week| week.median))?;
    Some(terms.text("report-baseline-practice-shown", &[("value", number(now, reading.measure.decimals()).into())]))
}

fn of_reading(reading: &Reading) -> impl Iterator<Item = &'static Norm> {
    norms().iter().filter(move |norm| norm.exercise == reading.exercise && norm.measure == reading.measure.id())
}

/// Whether there is any; the values need the width of the page.
fn published(reading: &Reading, terms: &Terms<'_>) -> String {
    let known = of_reading(reading).next().is_some();
    terms.plain(if known { "report-baseline-norm-below-shown" } else { "report-baseline-no-norm-shown" })
}

/// "Published, Long ah: hold time, s: healthy women …: mean 21.0 s; … (Maslan et al. 2011 …)"; none where none is known.
fn published_whole(reading: &Reading, terms: &Terms<'_>) -> Option<String> {
    let mut sources: Vec<(String, Vec<String>)> = Vec::new();
    for norm in of_reading(reading) {
        let key = match norm.status {
            DoseStatus::Seen => "report-baseline-source-seen-shown",
            DoseStatus::SeenSecondHand => "report-baseline-source-second-hand-shown",
            DoseStatus::FromMemory => "report-baseline-source-memory-shown",
            DoseStatus::CommonPractice => "report-baseline-source-common-practice-shown",
        };
        let source = terms.text(key, &[("source", norm.source.as_str().into())]);
        let value = terms.text("report-baseline-norm-shown", &[("who", norm.who.as_str().into()), ("text", norm.text.as_str().into())]);
        match sources.iter_mut().find(|(known, _)| *known == source) {
            Some((_, values)) => values.push(value),
            None => sources.push((source, vec![value])),
        }
    }
    let one = |(source, values): (String, Vec<String>)| {
        terms.text("report-baseline-of-source-shown", &[("list", values.join("; ").into()), ("source", source.into())])
    };
    let list: Vec<String> = sources.into_iter().map(one).collect();
    let given = [("name", name(reading, terms).into()), ("list", list.join("; ").into())];
    (!list.is_empty()).then(|| terms.text("report-baseline-published-shown", &given))
}

/// When and under which conditions; where the published values come from; how a difference is judged.
fn note(all: &Baselines, terms: &Terms<'_>) -> String {
    let led: Vec<String> = all
        .led
        .iter()
        .map(|(day, whole)| {
            let key = if *whole { "report-baseline-led-shown" } else { "report-baseline-led-part-shown" };
            terms.text(key, &[("date", terms.date(*day).into())])
        })
        .collect();
    let mut notes = vec![terms.text("report-baseline-days-shown", &[("list", led.join(", ").into())])];
    let readings = all.figures.iter().flat_map(|figure| {
        std::iter::once((figure.first_on, &figure.first)).chain(figure.latest.as_ref().map(|(day, latest)| (*day, latest)))
    });
    let mut told: Vec<Date> = Vec::new();
    for (day, reading) in readings.filter(|(_, reading)| reading.measure.is_level()) {
        if !told.contains(&day) {
            told.push(day);
            notes.push(conditions(day, &reading.conditions, terms));
        }
    }
    notes.extend(all.figures.iter().filter_map(|figure| published_whole(&figure.first, terms)));
    notes.push(terms.plain("report-baseline-note-shown"));
    notes.join(" ")
}

fn conditions(day: Date, of: &Conditions, terms: &Terms<'_>) -> String {
    let microphone =
        of.microphone.as_ref().map_or_else(|| terms.plain("report-baseline-microphone-unknown-shown"), |known| printable(&known.name));
    let level = format!("{}, {}", terms.level_terms(of), calibration(of.calibration, terms));
    let given = [("date", terms.date(day).into()), ("microphone", microphone.into()), ("level", level.into())];
    terms.text("report-baseline-conditions-shown", &given)
}
