//! The client's own page: plain words in large type. It tells what is, judges nothing, and cheers nothing that is scatter.

use jiff::civil::Date;
use serde::Serialize;

use super::goals;
use super::moments;
use super::panels;
use super::terms::{Terms, Verdict, verdict};
use crate::circles::circles;
use crate::error::ReportError;
use progress::{BreakReason, Measure, Picture, ProgrammeItem, Series};

/// Weeks that are shown as circles.
const WEEKS: usize = 4;
/// Changes of the programme that are told.
const CHANGES: usize = 3;

/// The page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ClientPage {
    pub title: String,
    pub span: String,
    pub practised: String,
    pub weeks_title: String,
    pub weeks_key: String,
    pub weeks_described: String,
    /// Circles for the days of the last weeks; none where there was no practice.
    pub weeks_svg: Option<String>,
    pub goals_title: String,
    pub goals: Vec<String>,
    pub voice_title: String,
    pub voice: Vec<String>,
    pub moments_title: String,
    /// Moments when the voice did what was wanted, the latest first.
    pub moments: Vec<String>,
    pub programme_title: String,
    pub programme: Vec<String>,
    pub care: String,
    pub foot: String,
}

/// A week's name, "16 Nov", and its days from Monday: practised or not; none for days that are still to come or lie before the
/// first practice.
type Week = (String, Vec<Option<bool>>);

pub(super) fn page(picture: &Picture, terms: &Terms<'_>) -> Result<ClientPage, ReportError> {
    let counts = panels::done(picture);
    let practised = match (picture.practices.is_empty(), counts.planned_days) {
        (true, _) => terms.plain("report-client-nothing-shown"),
        (false, 0) => terms.text("report-client-days-shown", &[("days", counts.all_days.into())]),
        (false, planned) => {
            terms.text("report-client-days-planned-shown", &[("days", counts.all_days.into()), ("planned", planned.into())])
        }
    };
    let weeks = weeks(picture, terms);
    let described = |(name, days): &Week| {
        let days = days.iter().filter(|day| **day == Some(true)).count();
        terms.text("report-client-week-described-shown", &[("day", name.clone().into()), ("days", days.into())])
    };
    let list = weeks.iter().map(described).collect::<Vec<_>>().join(", ");
    let weeks_svg = if weeks.is_empty() { None } else { Some(circles(&terms.weekdays(), &weeks)?) };
    Ok(ClientPage {
        title: terms.text("report-client-title-shown", &[("client", terms.name(&picture.client))]),
        span: terms.text("report-client-span-shown", &[("span", terms.span(picture.window.from, picture.window.to).into())]),
        practised,
        weeks_title: terms.text("report-client-weeks-shown", &[("weeks", weeks.len().into())]),
        weeks_key: terms.plain("report-client-weeks-key-shown"),
        weeks_described: terms.text("report-client-weeks-described-shown", &[("list", list.into())]),
        weeks_svg,
        goals_title: terms.plain("report-client-goals-shown"),
        goals: goals::for_client(&picture.goals, picture.window.to, terms),
        voice_title: terms.plain("report-client-voice-shown"),
        voice: voice(picture, terms),
        moments_title: terms.plain("report-client-moments-shown"),
        moments: moments::for_client(picture, terms),
        programme_title: terms.plain("report-client-programme-shown"),
        programme: programme(picture, terms),
        care: terms.plain("report-client-care-shown"),
        foot: terms.plain("report-client-foot-shown"),
    })
}

/// The last weeks; nothing where there is no practice in the window.
fn weeks(picture: &Picture, terms: &Terms<'_>) -> Vec<Week> {
    if picture.practices.is_empty() {
        return Vec::new();
    }
    let all = &picture.adherence.weeks;
    let week = |monday: Date| {
        let day_of = |n: i64| monday.checked_add(jiff::Span::new().days(n)).ok();
        let days = (0..7).map(|n| {
            let day = day_of(n)?;
            picture.adherence.days.iter().find(|known| known.day == day).map(|known| known.practices > 0)
        });
        (terms.day_month(monday), days.collect())
    };
    all.iter().skip(all.len().saturating_sub(WEEKS)).map(|known| week(known.monday)).collect()
}

/// One sentence for each of the charted measures that a person can feel.
fn voice(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let chosen = panels::chosen(picture);
    // How loud one vowel was is of no interest beside how loud daily speech was.
    let speaks = chosen.iter().any(|series| matches!(series.measure, Measure::PhraseLevelDb | Measure::TalkLevelDb));
    let told = chosen.iter().filter(|series| !(speaks && series.measure == Measure::LevelDb));
    let mut lines: Vec<String> = told.filter_map(|series| sentence(series, terms)).take(3).collect();
    let breaks = chosen.iter().filter_map(|series| series.segments.last()?.broken_by.as_ref());
    let changed = breaks.filter(|broken| {
        picture.window.has(broken.after) && broken.reasons.iter().any(|reason| !matches!(reason, BreakReason::Gap { .. }))
    });
    if let Some(day) = changed.map(|broken| broken.after).max().filter(|_| !lines.is_empty()) {
        lines.push(terms.text("report-client-microphone-shown", &[("date", terms.date(day).into())]));
    }
    lines
}

/// Fewer trials do not tell what is usual; common practice, no source.
const ENOUGH_TRIALS: usize = 5;

fn sentence(series: &Series, terms: &Terms<'_>) -> Option<String> {
    let about = match series.measure {
        Measure::HoldS => "hold",
        Measure::LevelDb => "vowel",
        Measure::PhraseLevelDb | Measure::TalkLevelDb => "level",
        Measure::F0SpanSt => "range",
        _ => return None,
    };
    let last = series.segments.last()?;
    let trials: usize = last.days.iter().map(|day| day.trials.len()).sum();
    let how = match verdict(last) {
        Verdict::Early if series.measure == Measure::HoldS && trials < ENOUGH_TRIALS => "first",
        Verdict::Early => "early",
        Verdict::Within(_) => "same",
        Verdict::Beyond(by) if by > 0.0 => "more",
        Verdict::Beyond(_) => "less",
    };
    let whole = |value: Option<f64>| value.map(|value| format!("{value:.0}")).unwrap_or_default();
    let now = last.change.and_then(|change| change.latest).or_else(|| last.weeks.last().map(|week| week.median));
    let first = last.baseline.as_ref().map(|baseline| baseline.median);
    let given = [("exercise", terms.exercise(&series.exercise).into()), ("now", whole(now).into()), ("first", whole(first).into())];
    Some(terms.text(&format!("report-client-{about}-{how}-shown"), &given))
}

/// The latest changes, each once.
fn programme(picture: &Picture, terms: &Terms<'_>) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for item in picture.programme.iter().rev().flat_map(|change| &change.items) {
        let (name, exercise, to) = match item {
            ProgrammeItem::ExerciseAdded { exercise, .. } => ("added", Some(exercise), None),
            ProgrammeItem::ExerciseRemoved { exercise, .. } => ("removed", Some(exercise), None),
            ProgrammeItem::DoseChanged { exercise, field, to, .. } => match (field.as_str(), to.parse::<f64>()) {
                ("repetitions", Ok(_)) => ("repetitions", Some(exercise), Some(to)),
                ("target_s", Ok(_)) => ("target-s", Some(exercise), Some(to)),
                ("hold_s", Ok(_)) => ("hold-s", Some(exercise), Some(to)),
                _ => ("dose", Some(exercise), None),
            },
            ProgrammeItem::StageChanged { exercise, .. } => ("dose", Some(exercise), None),
            ProgrammeItem::PlanChanged { .. } => ("plan", None, None),
            _ => continue,
        };
        let exercise = exercise.map(|exercise| ("exercise", terms.exercise(exercise).into()));
        let given: Vec<_> = exercise.into_iter().chain(to.map(|to| ("to", to.clone().into()))).collect();
        let line = terms.text(&format!("report-client-change-{name}-shown"), &given);
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    lines.truncate(CHANGES);
    lines
}
