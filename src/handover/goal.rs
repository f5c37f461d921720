//! Goals on their way between clinician and home, as text that either side checks before it keeps it.

use super::error::HandoverError;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// Guards against what no record would keep.
const MOST_GOALS: usize = 100;
const MOST_MARKS: usize = 200;
const MOST_WORDS: usize = 200;
const MOST_NAME: usize = 60;

/// A client's goal.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandedGoal {
    /// The client's own.
    pub words: String,
    /// None for an activity.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub aim: Option<HandedAim>,
    pub set_on: Date,
    pub due: Date,
    pub set_by: String,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub marks: Vec<HandedMark>,
}

/// What it is measured by, in the words of the record.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandedAim {
    pub exercise: String,
    /// "hold-s"
    pub measure: String,
    /// "at-least" or "at-most"
    pub direction: String,
    pub target: f64,
}

/// What a person said of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandedMark {
    /// "met", "not-met" or "removed"
    pub kind: String,
    pub on: Date,
    pub by: String,
}

/// # Errors
/// There are more than anybody has, a text is too long or cannot be shown, or a goal is due before it was set.
pub(super) fn check(goals: &[HandedGoal]) -> Result<(), HandoverError> {
    let content = |text: &str| Err(HandoverError::Content(text.to_owned()));
    let shown = |text: &str, most: usize| (1..=most).contains(&text.chars().count()) && !text.chars().any(char::is_control);
    if goals.len() > MOST_GOALS || goals.iter().any(|goal| goal.marks.len() > MOST_MARKS) {
        return content("it holds more goals or marks than anybody has");
    }
    for goal in goals {
        let names = std::iter::once(&goal.set_by).chain(goal.marks.iter().map(|mark| &mark.by));
        if !shown(&goal.words, MOST_WORDS) || !names.into_iter().all(|name| shown(name, MOST_NAME)) {
            return content("a goal in it has a text that is empty, too long, or cannot be shown");
        }
        if goal.due < goal.set_on {
            return content("a goal in it is due before it was set");
        }
    }
    Ok(())
}

#[cfg(test)]
#[path = "tests/goal.rs"]
mod tests;
