//! Goals in the client's own words, with what they are measured by and how they stand: as a row of a table, and as a line of JSON.

use std::io::{self, Write};

use jiff::civil::Date;
use serde_json::{Value, json};

use super::table::Holds::{Date as Day, Decimal, Integer, One, Text};
use super::table::{Column, Row, Table};
use model::Measure;
use progress::{GoalState, Mark, MarkKind, NotMet, Standing, TooEarly};

const DIRECTIONS: &[&str] = &["at-least", "at-most"];
const STATES: &[&str] = &["met", "not-met", "too-early"];
const WHYS: &[&str] = &["short", "within-scatter", "marked", "no-trials", "few-days", "not-calibrated", "before-due", "not-marked"];
const MARKS: &[&str] = &["met", "not-met"];

/// One row for each goal.
pub static GOALS: Table = Table {
    name: "goals",
    meaning: "One row for each goal that stands on the last day of the export",
    key: &["client", "goal"],
    columns: &[
        Column::required("client", Text, "Short name of the client"),
        Column::required("goal", Integer, "Number of the goal in this record"),
        Column::required("words", Text, "The goal in the client's own words"),
        Column::new("exercise", Text, "", "The exercise it is measured by; empty for an activity of daily life, which people judge"),
        Column::new("measure", Text, "", "The measure, by its name in the reports"),
        Column::new("direction", One(DIRECTIONS), "", "Which side of the target is the good one"),
        Column::new("target", Decimal, "", "The target, in the unit of the column unit; a level is a sound pressure level"),
        Column::new("now", Decimal, "", "Median of the latest days, as the goal is judged by it, in the same unit"),
        Column::new("unit", Text, "", "Unit of target and now, UCUM"),
        Column::required("set_on", Day, "When it was set"),
        Column::required("set_by", Text, "By whom"),
        Column::required("due", Day, "By when it is to be met"),
        Column::required("state", One(STATES), "How it stands on the day of state_on, by the arithmetic or as a person said"),
        Column::new("why", One(WHYS), "", "Why it is not met, or why it is too early to say"),
        Column::required("state_on", Day, "The day for which it was judged"),
        Column::new("marked", One(MARKS), "", "What a person said of it last"),
        Column::new("marked_on", Day, "", "When a person said it"),
        Column::new("marked_by", Text, "", "Who said it"),
    ],
};

/// A client's goal on a day.
#[derive(Debug, Clone, Copy)]
pub struct GoalOn<'a> {
    pub client: &'a str,
    pub state: &'a GoalState,
    /// The day for which it was judged.
    pub on: Date,
}

impl GoalOn<'_> {
    /// What a person said last, up to that day.
    pub(super) fn mark(&self) -> Option<&Mark> {
        self.state.goal.mark_on(self.on).filter(|mark| mark.kind != MarkKind::Removed)
    }
}

/// UCUM code of a goal's measure.
pub(super) fn unit(measure: Measure) -> &'static str {
    if measure.is_level() { "dB[SPL]" } else { measure.declared().unit.ucum() }
}

/// How a goal stands, and why.
pub(super) fn standing(state: Standing) -> (&'static str, Option<&'static str>) {
    match state {
        Standing::Met => ("met", None),
        Standing::NotMet(why) => (
            "not-met",
            Some(match why {
                NotMet::Short => "short",
                NotMet::WithinScatter => "within-scatter",
                NotMet::Marked => "marked",
            }),
        ),
        Standing::TooEarly(why) => (
            "too-early",
            Some(match why {
                TooEarly::NoTrials => "no-trials",
                TooEarly::FewDays => "few-days",
                TooEarly::NotCalibrated => "not-calibrated",
                TooEarly::BeforeDue => "before-due",
                TooEarly::NotMarked => "not-marked",
            }),
        ),
    }
}

/// The row of one goal.
#[must_use]
pub fn goal_row(goal: &GoalOn<'_>) -> Row {
    let GoalOn { client, state, on } = goal;
    let mut row = Row::of(&GOALS);
    row.text("client", client);
    row.integer("goal", state.goal.id);
    row.text("words", &state.goal.words);
    if let Some(aim) = &state.goal.aim {
        row.text("exercise", &aim.exercise);
        row.word("measure", aim.measure.id());
        row.word("direction", aim.direction.name());
        row.number("target", aim.target);
        row.number_if("now", state.typical);
        row.word("unit", unit(aim.measure));
    }
    row.word("set_on", &state.goal.set_on.to_string());
    row.text("set_by", &state.goal.set_by);
    row.word("due", &state.goal.due.to_string());
    let (stands, why) = standing(state.standing);
    row.word("state", stands);
    row.word("why", why.unwrap_or_default());
    row.word("state_on", &on.to_string());
    if let Some(mark) = goal.mark() {
        row.word("marked", mark.kind.name());
        row.word("marked_on", &mark.on.to_string());
        row.text("marked_by", &mark.by);
    }
    row
}

/// Writes one goal as a line of JSON.
///
/// # Errors
/// It cannot be written.
pub fn write_goal(goal: &GoalOn<'_>, to: &mut dyn Write) -> io::Result<()> {
    let GoalOn { client, state, on } = goal;
    let (stands, why) = standing(state.standing);
    let aim = state.goal.aim.as_ref().map(|aim| {
        json!({
            "exercise": aim.exercise, "measure": aim.measure.id(), "direction": aim.direction.name(), "target": aim.target,
            "now": state.typical, "unit": unit(aim.measure),
        })
    });
    let marks: Vec<Value> = state
        .goal
        .marks
        .iter()
        .filter(|mark| mark.on <= *on)
        .map(|mark| json!({"kind": mark.kind.name(), "on": mark.on.to_string(), "by": mark.by}))
        .collect();
    let line = json!({
        "line": "goal",
        "client": client,
        "goal": state.goal.id,
        "words": state.goal.words,
        "aim": aim,
        "set_on": state.goal.set_on.to_string(),
        "set_by": state.goal.set_by,
        "due": state.goal.due.to_string(),
        "state": stands,
        "why": why,
        "state_on": on.to_string(),
        "marks": marks,
    });
    writeln!(to, "{line}")
}

/// The schema of that line.
pub(super) fn goal_schema() -> Value {
    let text = json!({"type": "string"});
    let day = json!({"type": "string", "format": "date"});
    let object = |properties: Value| {
        let required: Vec<String> = properties.as_object().map(|all| all.keys().cloned().collect()).unwrap_or_default();
        json!({"type": "object", "properties": properties, "required": required, "additionalProperties": false})
    };
    let aim = object(json!({
        "exercise": text, "measure": text, "direction": {"enum": DIRECTIONS}, "target": {"type": "number"},
        "now": {"type": ["number", "null"], "description": "Median of the latest days, as the goal is judged by it."},
        "unit": {"type": "string", "description": "Of target and now, UCUM; a level is a sound pressure level."},
    }));
    let mut goal = object(json!({
        "line": {"const": "goal"},
        "client": text,
        "goal": {"type": "integer", "description": "Its number in this record."},
        "words": {"type": "string", "description": "The client's own words."},
        "aim": {"description": "Null for an activity of daily life, which people judge.", "anyOf": [{"type": "null"}, aim]},
        "set_on": day, "set_by": text, "due": day,
        "state": {"enum": STATES},
        "why": {"enum": WHYS.iter().map(|why| Value::from(*why)).chain([Value::Null]).collect::<Vec<_>>()},
        "state_on": {"type": "string", "format": "date", "description": "The day for which it was judged."},
        "marks": {"type": "array", "items": object(json!({"kind": {"enum": ["met", "not-met", "removed"]}, "on": day, "by": text}))},
    }));
    if let Value::Object(map) = &mut goal {
        map.insert("title".into(), "One goal".into());
    }
    goal
}
