//! The clinician's first page.

use serde::Serialize;

use super::abbreviations;
use super::about::About;
use super::breaks::Breaks;
use super::events;
use super::goals::{self, Goals};
use super::panels::{self, Panel};
use super::terms::{Terms, Verdict, percent, printable, verdict};
use crate::chart::is_relative;
use crate::drawing::printed_axis;
use crate::error::ReportError;
use progress::{Picture, Series, SpokenFor};

/// The first page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Front {
    pub title: String,
    pub period: String,
    pub made: String,
    pub glance_title: String,
    pub glance: Vec<String>,
    /// None where none are set.
    pub goals: Option<Goals>,
    /// None where nothing was practised or planned.
    pub calendar: Option<Panel>,
    pub charts: Vec<Panel>,
    /// How to read the charts; none where there are none.
    pub key: Option<Key>,
    /// What the numbers in the charts stand for.
    pub breaks_title: String,
    pub breaks: Vec<String>,
    /// "2 more in the tables", for 1, 2, … that have no room on the page.
    pub more: Vec<String>,
    pub columns: Vec<Column>,
    pub foot: String,
}

/// What the signs in the charts mean.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    pub title: String,
    pub signs: Vec<Sign>,
    /// What a mark at an interval means.
    pub loose: String,
    /// Each abbreviation on the page in one plain line.
    pub abbreviations: Vec<String>,
}

/// One sign and its meaning.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sign {
    /// 12 × 8, drawn as in the charts.
    pub svg: String,
    pub text: String,
}

/// The signs as the charts draw them.
const SIGNS: [(&str, &str); 6] = [
    (
        "trial",
        r##"<circle cx="3" cy="5" r="1.3" fill="none" stroke="#767676" stroke-width="0.6"/><circle cx="8" cy="3" r="1.3" fill="none" stroke="#767676" stroke-width="0.6"/>"##,
    ),
    ("median", r##"<path d="M6 0.5V7.5M4.6 0.5h2.8M4.6 7.5h2.8" stroke="#000" stroke-width="1"/><path d="M6 1.2L8.8 4L6 6.8L3.2 4z"/>"##),
    ("baseline", r##"<rect x="0" y="1.5" width="12" height="5" fill="#cdcdcd"/><path d="M0 4h12" stroke="#767676" stroke-width="0.8"/>"##),
    ("mdc", r##"<path d="M0 4h12" stroke="#404040" stroke-width="0.9" stroke-dasharray="3.2 1.2"/>"##),
    (
        "gap",
        r##"<rect x="2" y="0" width="8" height="8" fill="#e8e8e8"/><path d="M2 0v8M10 0v8" stroke="#404040" stroke-width="0.8" stroke-dasharray="1.6 1.6"/>"##,
    ),
    ("break", r##"<path d="M5 0v8M7 0v8" stroke="#000" stroke-width="0.8"/>"##),
];

/// A list with its heading.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Column {
    pub title: String,
    pub items: Vec<String>,
    /// What stands there where the list is empty.
    pub none: String,
}

pub(super) fn front(picture: &Picture, about: &About<'_>, terms: &Terms<'_>) -> Result<Front, ReportError> {
    let axis = printed_axis(picture.window);
    let chosen = panels::chosen(picture);
    let breaks = Breaks::of(picture, &chosen);
    let calendar = if picture.adherence.days.is_empty() { None } else { Some(panels::adherence(picture, axis, terms)?) };
    let charts = panels::charts(picture, &chosen, &breaks, axis, terms)?;
    let columns = columns(picture, terms);
    let longest = columns.iter().map(|column| column.items.len()).chain([breaks.len()]).max().unwrap_or(0);
    let span = terms.span(picture.window.from, picture.window.to);
    Ok(Front {
        title: terms.text("report-title-shown", &[("client", terms.name(&picture.client))]),
        period: terms.text("report-period-shown", &[("span", span.into()), ("weeks", axis.weeks().into())]),
        made: terms.text("report-made-shown", &[("date", terms.date(about.made).into()), ("software", printable(about.software).into())]),
        glance_title: terms.plain("report-glance-shown"),
        glance: glance(picture, about, &chosen, &breaks, terms),
        goals: goals::on_front(&picture.goals, terms),
        calendar,
        key: (!charts.is_empty()).then(|| key(&chosen, terms)),
        charts,
        breaks_title: terms.plain("report-breaks-shown"),
        breaks: breaks.lines(terms),
        more: (1..=longest).map(|n| terms.text("report-more-shown", &[("n", n.into())])).collect(),
        columns,
        foot: terms.plain("report-foot-shown"),
    })
}

fn key(chosen: &[&Series], terms: &Terms<'_>) -> Key {
    let of = |name: &str| terms.plain(&format!("report-key-{name}-shown"));
    let sign = |(name, drawn): (&str, &str)| {
        let svg = format!(r#"<svg xmlns="http://www.w3.org/2000/svg" width="12" height="8" viewBox="0 0 12 8">{drawn}</svg>"#);
        Sign { svg, text: of(name) }
    };
    Key {
        title: terms.plain("report-key-shown"),
        signs: SIGNS.into_iter().map(sign).collect(),
        loose: of("loose"),
        abbreviations: abbreviations::with_change(chosen, terms),
    }
}

/// The three lists, whole; who sets the page shows as many as have room.
pub(super) fn columns(picture: &Picture, terms: &Terms<'_>) -> Vec<Column> {
    let column = |name: &str, items: Vec<String>| Column {
        title: terms.plain(&format!("report-{name}-title-shown")),
        items,
        none: terms.plain(&format!("report-{name}-none-shown")),
    };
    vec![
        column("left-out", events::left_out(picture, terms)),
        column("events", events::stops_and_notes(picture, terms)),
        column("programme", events::programme(picture, terms)),
    ]
}

/// The page in a few sentences.
fn glance(picture: &Picture, about: &About<'_>, chosen: &[&Series], breaks: &Breaks<'_>, terms: &Terms<'_>) -> Vec<String> {
    // What was wrong, and what waits for the clinician's word, comes before everything else.
    let mut lines = Vec::new();
    let reasons = events::stop_reasons(picture, terms);
    if !reasons.is_empty() {
        let stops = [("n", picture.safety_stops.len().into()), ("list", terms.counted(&reasons).into())];
        lines.push(terms.text("report-glance-stops-shown", &stops));
    }
    let signs = events::sign_names(picture, terms);
    if !signs.is_empty() {
        lines.push(terms.text("report-glance-signs-shown", &[("list", terms.counted(&signs).into())]));
    }
    let unsettled = events::unsettled(picture, terms);
    if !unsettled.is_empty() {
        let waiting = [("n", unsettled.len().into()), ("list", unsettled.join(", ").into())];
        lines.push(terms.text("report-glance-unsettled-shown", &waiting));
    }
    lines.push(adherence(picture, about, terms));
    if !picture.practices.is_empty() {
        if reasons.is_empty() {
            lines.push(terms.plain("report-glance-stops-none-shown"));
        }
        lines.extend(measured(chosen, terms));
    }
    lines.extend(picture.spoken_for.iter().map(|word| spoken_for(word, terms)));
    if breaks.len() > 0 {
        lines.push(terms.text("report-glance-breaks-shown", &[("n", breaks.len().into())]));
    }
    lines.extend(levels(picture, terms, "report-levels-mixed-shown"));
    lines
}

/// A dose beyond what needs no word: who spoke for it, and why.
fn spoken_for(word: &SpokenFor, terms: &Terms<'_>) -> String {
    let (who, why) = (printable(&word.who), printable(&word.why));
    let routine = ("routine", printable(&word.routine_title).into());
    match &word.exercise {
        Some(exercise) => {
            let exercise = ("exercise", terms.exercise(exercise).into());
            terms.text("report-glance-word-shown", &[routine, exercise, ("who", who.into()), ("why", why.into())])
        }
        None => terms.text("report-glance-word-whole-shown", &[routine, ("who", who.into()), ("why", why.into())]),
    }
}

pub(super) fn adherence(picture: &Picture, about: &About<'_>, terms: &Terms<'_>) -> String {
    let (whole, counts) = (&picture.adherence, panels::done(picture));
    let Some(last) = picture.practices.iter().map(|practice| practice.day).max() else {
        let mut ends = vec![("from", terms.date(picture.window.from).into()), ("to", terms.date(picture.window.to).into())];
        let Some(last) = about.last_practice else { return terms.text("report-glance-nothing-shown", &ends) };
        ends.push(("last", terms.date(last).into()));
        return terms.text("report-glance-nothing-last-shown", &ends);
    };
    let key = match (counts.planned_days, whole.prescribed) {
        // Nothing that is counted: rests alone.
        (0, 0) => "report-glance-unplanned-bare-shown",
        (0, _) => "report-glance-unplanned-shown",
        (_, 0) => "report-glance-planned-bare-shown",
        _ => "report-glance-planned-shown",
    };
    terms.text(
        key,
        &[
            ("done", whole.done.into()),
            ("prescribed", whole.prescribed.into()),
            ("pct", percent(whole.done, whole.prescribed).into()),
            ("days", counts.practised_days.into()),
            ("planned", counts.planned_days.into()),
            ("last", terms.date(last).into()),
        ],
    )
}

/// What changed by more than it scatters, what did not, and of what nobody can tell yet.
fn measured(chosen: &[&Series], terms: &Terms<'_>) -> Vec<String> {
    if chosen.is_empty() {
        return vec![terms.plain("report-glance-unmeasured-shown")];
    }
    let (mut beyond, mut within, mut early) = (Vec::new(), Vec::new(), Vec::new());
    for series in chosen {
        let name = terms.series(series);
        match series.segments.last().map_or(Verdict::Early, verdict) {
            Verdict::Beyond(by) => {
                let change = terms.change(series.measure, by);
                beyond.push(terms.text("report-changed-shown", &[("name", name.into()), ("change", change.into())]));
            }
            Verdict::Within(_) => within.push(name),
            Verdict::Early => early.push(name),
        }
    }
    let line = |key: &str, names: Vec<String>| (!names.is_empty()).then(|| terms.text(key, &[("list", names.join("; ").into())]));
    [line("report-glance-beyond-shown", beyond), line("report-glance-within-shown", within), line("report-glance-early-shown", early)]
        .into_iter()
        .flatten()
        .collect()
}

/// What the levels stand on; `mixed`: what is said where they stand on several things.
pub(super) fn levels(picture: &Picture, terms: &Terms<'_>, mixed: &str) -> Option<String> {
    let segments: Vec<_> = picture.series.iter().filter(|series| series.measure.is_level()).flat_map(|series| &series.segments).collect();
    let last = segments.last()?;
    let relative = segments.iter().filter(|segment| is_relative(segment.conditions.calibration)).count();
    Some(match relative {
        0 => {
            let unit = terms.unit(progress::Measure::LevelDb, last.conditions.calibration);
            terms.text("report-levels-calibrated-shown", &[("unit", unit.into()), ("terms", terms.level_terms(&last.conditions).into())])
        }
        n if n == segments.len() => terms.plain("report-levels-relative-shown"),
        _ => terms.plain(mixed),
    })
}
