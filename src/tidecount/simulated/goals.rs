//! What a simulated client wants to reach.

use std::path::Path;

use jiff::civil::Date;

use files::error::Failure;
use model::Measure;
use progress::{Aim, Direction, Mark, MarkKind};
use record::{NewGoal, Store};

/// Who agreed to everything.
pub const CLINICIAN: &str = "the simulated clinician";

/// One goal that is measured, and one of daily life.
///
/// # Errors
/// The record cannot be used.
pub fn set(data: &Path, name: &str, first: Date, today: Date) -> Result<(), Failure> {
    let mut store = Store::open(data)?;
    let aim = Aim { exercise: "long-ah".to_owned(), measure: Measure::HoldS, direction: Direction::AtLeast, target: 12.0 };
    let by = CLINICIAN;
    store.add_goal(
        name,
        &NewGoal { words: "I want the breath for a whole verse.", aim: Some(aim), set_on: first, due: today, set_by: by },
    )?;
    let daily = NewGoal { words: "I want to order my own coffee.", aim: None, set_on: first, due: today, set_by: by };
    store.add_goal(name, &daily)?;
    Ok(())
}

/// The goal of daily life is marked as met.
///
/// # Errors
/// As [`set`].
pub fn mark(data: &Path, name: &str, today: Date) -> Result<(), Failure> {
    let mut store = Store::open(data)?;
    if let Some(daily) = store.goals(name)?.iter().find(|goal| goal.aim.is_none()) {
        store.mark_goal(name, daily.id, &Mark { kind: MarkKind::Met, on: today, by: CLINICIAN.to_owned() })?;
    }
    Ok(())
}
