//! Goals and how they stand: whole for the clinician and the terminal, in plain words for the client.

use jiff::civil::Date;
use serde::Serialize;

use super::table::Table;
use super::terms::{Terms, printable_to};
use crate::handout::Say;
use progress::{Direction, Goal, GoalState, MarkKind, Measure, NotMet, Standing, TooEarly};

/// Most characters of a goal's words; the record keeps no more.
const LONGEST: usize = 200;
/// So many goals stand on page one; the table has all.
const ON_FRONT: usize = 3;

/// Goals as they are told.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Goals {
    pub title: String,
    /// One for each goal.
    pub lines: Vec<String>,
    /// How they are judged.
    pub rule: String,
}

/// Goals for the clinician, whole.
#[must_use]
pub fn goal_lines(goals: &[GoalState], say: Say<'_>) -> Goals {
    of(goals, &Terms::new(say))
}

/// As [`goal_lines`].
pub(super) fn of(goals: &[GoalState], terms: &Terms<'_>) -> Goals {
    Goals {
        title: terms.plain("report-goals-shown"),
        lines: goals.iter().map(|state| line(state, terms)).collect(),
        rule: rule(goals, terms),
    }
}

/// As many as page one has room for; none where there are no goals.
pub(super) fn on_front(goals: &[GoalState], terms: &Terms<'_>) -> Option<Goals> {
    let mut told = of(goals, terms);
    if told.lines.len() > ON_FRONT + 1 {
        let more = told.lines.split_off(ON_FRONT).len();
        told.lines.push(terms.text("report-more-shown", &[("n", more.into())]));
    }
    (!goals.is_empty()).then_some(told)
}

/// The rule in one line; what is of no goal here is not told.
fn rule(goals: &[GoalState], terms: &Terms<'_>) -> String {
    let (measured, by_hand): (Vec<_>, Vec<_>) = goals.iter().partition(|state| state.goal.aim.is_some());
    let part = |there: bool, name: &str| there.then(|| terms.plain(&format!("report-goals-rule-{name}-shown")));
    [part(!measured.is_empty(), "measured"), part(!by_hand.is_empty(), "by-hand")].into_iter().flatten().collect::<Vec<_>>().join(" ")
}

/// "“Read a page.” Long ah, hold time at least 14.5 s by 1 Feb 2027: met; now 14.7 s."
fn line(state: &GoalState, terms: &Terms<'_>) -> String {
    let mut given = vec![("words", words(&state.goal).into()), ("due", terms.date(state.goal.due).into())];
    given.push(("state", standing(state, terms).into()));
    let Some(target) = target(&state.goal, terms) else { return terms.text("report-goal-by-hand-shown", &given) };
    given.push(("target", target.into()));
    match typical(state, terms) {
        Some(now) => {
            given.push(("now", now.into()));
            terms.text("report-goal-now-shown", &given)
        }
        None => terms.text("report-goal-shown", &given),
    }
}

pub(super) fn words(goal: &Goal) -> String {
    printable_to(&goal.words, LONGEST)
}

/// "Long ah, hold time at least 14.5 s"; none for an activity.
fn target(goal: &Goal, terms: &Terms<'_>) -> Option<String> {
    let aim = goal.aim.as_ref()?;
    let key = match aim.direction {
        Direction::AtLeast => "report-goal-at-least-shown",
        Direction::AtMost => "report-goal-at-most-shown",
    };
    let given = [
        ("exercise", terms.exercise(&aim.exercise).into()),
        ("measure", terms.measure(aim.measure).into()),
        ("value", value(aim.measure, aim.target, terms).into()),
    ];
    Some(terms.text(key, &given))
}

fn typical(state: &GoalState, terms: &Terms<'_>) -> Option<String> {
    state.goal.aim.as_ref().zip(state.typical).map(|(aim, typical)| value(aim.measure, typical, terms))
}

/// A goal's level is always a sound pressure level.
fn value(measure: Measure, value: f64, terms: &Terms<'_>) -> String {
    if !measure.is_level() {
        return terms.value(measure, value);
    }
    let given = [("value", crate::number::number(value, measure.decimals()).into()), ("unit", terms.plain("report-unit-spl-shown").into())];
    terms.text("report-value-shown", &given)
}

/// "met", "not met: …", "too early to say: …".
fn standing(state: &GoalState, terms: &Terms<'_>) -> String {
    let mark = state.goal.marks.iter().rev().find(|mark| mark.kind != MarkKind::Removed);
    let by = |name: &str| match mark {
        Some(mark) => terms.text(
            &format!("report-goal-{name}-marked-shown"),
            &[("by", printable_to(&mark.by, 60).into()), ("date", terms.date(mark.on).into())],
        ),
        None => terms.plain(&format!("report-goal-{name}-shown")),
    };
    let name = match state.standing {
        Standing::Met => return by("met"),
        Standing::NotMet(NotMet::Marked) => return by("not-met"),
        Standing::NotMet(NotMet::Short) => "short",
        Standing::NotMet(NotMet::WithinScatter) => "within-scatter",
        Standing::TooEarly(TooEarly::NoTrials) => "no-trials",
        Standing::TooEarly(TooEarly::FewDays) => "few-days",
        Standing::TooEarly(TooEarly::NotCalibrated) => "not-calibrated",
        Standing::TooEarly(TooEarly::BeforeDue) => "before-due",
        Standing::TooEarly(TooEarly::NotMarked) => "not-marked",
    };
    terms.plain(&format!("report-goal-{name}-shown"))
}

/// Every goal, a row each.
pub(super) fn table(goals: &[GoalState], terms: &Terms<'_>) -> Option<Table> {
    let heads = ["goal", "target", "set", "due", "now", "state"];
    let none = || terms.plain("report-cell-none-shown");
    let row = |state: &GoalState| {
        let goal = &state.goal;
        let set = [("date", terms.date(goal.set_on).into()), ("by", printable_to(&goal.set_by, 60).into())];
        vec![
            words(goal),
            target(goal, terms).unwrap_or_else(|| terms.plain("report-goal-activity-shown")),
            terms.text("report-goal-set-shown", &set),
            terms.date(goal.due),
            typical(state, terms).unwrap_or_else(none),
            standing(state, terms),
        ]
    };
    (!goals.is_empty()).then(|| Table {
        title: terms.plain("report-goals-shown"),
        note: rule(goals, terms),
        head: heads.iter().map(|head| terms.plain(&format!("report-head-goal-{head}-shown"))).collect(),
        grows: heads.iter().map(|head| ["goal", "target", "state"].contains(head)).collect(),
        rows: goals.iter().map(row).collect(),
        wraps: true,
    })
}

/// In plain words for the client's page: what is met, what is not, and of what it is too early to say.
pub(super) fn for_client(goals: &[GoalState], today: Date, terms: &Terms<'_>) -> Vec<String> {
    let line = |state: &GoalState| {
        let name = match state.standing {
            Standing::Met => "met",
            Standing::NotMet(_) => "not-met",
            Standing::TooEarly(_) if today < state.goal.due => "time-left",
            Standing::TooEarly(_) => "too-early",
        };
        let given = [("words", words(&state.goal).into()), ("due", terms.date(state.goal.due).into())];
        terms.text(&format!("report-client-goal-{name}-shown"), &given)
    };
    goals.iter().map(line).collect()
}
