//! Goals as the record keeps them, and as they travel.

use handover::{HandedAim, HandedGoal, HandedMark, HandoverError};
use model::Measure;
use progress::{Aim, Direction, Goal, Mark, MarkKind};

/// Goals for a file.
#[must_use]
pub fn handed(goals: &[Goal]) -> Vec<HandedGoal> {
    let aim = |aim: &Aim| HandedAim {
        exercise: aim.exercise.clone(),
        measure: aim.measure.id().to_owned(),
        direction: aim.direction.name().to_owned(),
        target: aim.target,
    };
    let mark = |mark: &Mark| HandedMark { kind: mark.kind.name().to_owned(), on: mark.on, by: mark.by.clone() };
    let one = |goal: &Goal| HandedGoal {
        words: goal.words.clone(),
        aim: goal.aim.as_ref().map(aim),
        set_on: goal.set_on,
        due: goal.due,
        set_by: goal.set_by.clone(),
        marks: goal.marks.iter().map(mark).collect(),
    };
    goals.iter().map(one).collect()
}

/// Goals from a file.
///
/// # Errors
/// A measure, direction or mark is none that this version knows.
pub fn taken(goals: &[HandedGoal]) -> Result<Vec<Goal>, HandoverError> {
    let unknown =
        |what: &str, word: &str| HandoverError::Content(format!("a goal in it names the {what} {word:?}, which is not known here"));
    let aim = |aim: &HandedAim| {
        Ok::<Aim, HandoverError>(Aim {
            exercise: aim.exercise.clone(),
            measure: Measure::of_id(&aim.measure).ok_or_else(|| unknown("measure", &aim.measure))?,
            direction: Direction::of_name(&aim.direction).ok_or_else(|| unknown("direction", &aim.direction))?,
            target: aim.target,
        })
    };
    let mark = |mark: &HandedMark| {
        let kind = MarkKind::of_name(&mark.kind).ok_or_else(|| unknown("mark", &mark.kind))?;
        Ok::<Mark, HandoverError>(Mark { kind, on: mark.on, by: mark.by.clone() })
    };
    let one = |goal: &HandedGoal| {
        Ok(Goal {
            id: 0,
            words: goal.words.clone(),
            aim: goal.aim.as_ref().map(aim).transpose()?,
            set_on: goal.set_on,
            due: goal.due,
            set_by: goal.set_by.clone(),
            marks: goal.marks.iter().map(mark).collect::<Result<_, HandoverError>>()?,
        })
    };
    goals.iter().map(one).collect()
}
