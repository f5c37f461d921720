//! That something is wrong, as it is kept: what was said, and the exercise that it came from.

use super::practice::Practice;
use model::{Command, Fact, Symptom};

/// The exercise under way, or else the one led last.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct CameFrom {
    exercise: Option<String>,
    before: Option<String>,
}

impl CameFrom {
    pub fn now(practice: &Practice) -> Self {
        let exercise = practice.in_step.then(|| practice.exercise_id());
        let before = if exercise.is_none() { practice.exercise_before() } else { None };
        Self { exercise, before }
    }

    pub fn either(&self) -> Option<&str> {
        self.exercise.as_deref().or(self.before.as_deref())
    }
}

pub(super) fn record_safety_stop(practice: &mut Practice, symptom: &Symptom, from: &CameFrom) {
    let (exercise, exercise_before) = (from.exercise.clone(), from.before.clone());
    practice.record(Fact::SafetyStop { exercise, exercise_before, reason: symptom.clone() });
}

/// What is wrong, where a word says so; a call for help says nothing of it.
pub(super) fn symptom_of(command: Command) -> Option<Symptom> {
    Some(match command {
        Command::Dizzy => Symptom::Dizzy,
        Command::Hurts => Symptom::Pain,
        Command::ChestPain => Symptom::ChestPain,
        Command::CantBreathe => Symptom::Breathless,
        Command::Choking => Symptom::Choking,
        Command::FeelSick => Symptom::Sick,
        _ => return None,
    })
}
