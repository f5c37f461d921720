//! Goals of a client. A goal is never changed: what is said of it later is a mark of its own, and removing it is such a mark.

use super::clients::client_row;
use super::error::RecordError;
use super::store::Store;
use jiff::civil::Date;
use model::Measure;
use progress::{Aim, Direction, Goal, Mark, MarkKind};
use rusqlite::types::Type;
use rusqlite::{Connection, OptionalExtension, Row, Transaction, params};

/// Longest text of a goal, characters: two sentences that fit on every page.
pub const MOST_GOAL_CHARS: usize = 200;
/// Longest name of who set or marked it, characters.
const MOST_NAME_CHARS: usize = 60;

/// A goal to be kept.
#[derive(Debug, Clone, PartialEq)]
pub struct NewGoal<'a> {
    pub words: &'a str,
    /// None for an activity.
    pub aim: Option<Aim>,
    pub set_on: Date,
    pub due: Date,
    pub set_by: &'a str,
}

impl Store {
    /// Keeps a goal; gives its number.
    ///
    /// # Errors
    /// A text is empty, too long or not on one line, the target is no number, the day lies before the one on which it is set; or
    /// the database refuses.
    pub fn add_goal(&mut self, client: &str, goal: &NewGoal<'_>) -> Result<i64, RecordError> {
        let words = said("the goal", goal.words, MOST_GOAL_CHARS)?;
        let set_by = said("who set it", goal.set_by, MOST_NAME_CHARS)?;
        if goal.due < goal.set_on {
            return Err(RecordError::Goal(format!("a goal cannot be due on {}, before it is set: give a later day", goal.due)));
        }
        if goal.aim.as_ref().is_some_and(|aim| !aim.target.is_finite()) {
            return Err(RecordError::Goal("the target is no number: give one, in the unit of the measure".to_owned()));
        }
        self.change(|tx| {
            let client = client_row(tx, client)?;
            insert(tx, client, &NewGoal { words: &words, set_by: &set_by, ..goal.clone() }, None)
        })
    }

    /// Keeps what a person says of a goal.
    ///
    /// # Errors
    /// The client has no such goal or it was removed; it has a measure, and only the figures say whether it is met; the name is
    /// empty or too long; or the database refuses.
    pub fn mark_goal(&mut self, client: &str, id: i64, mark: &Mark) -> Result<(), RecordError> {
        let by = said("who says so", &mark.by, MOST_NAME_CHARS)?;
        let goal = self.goals(client)?.into_iter().find(|goal| goal.id == id && goal.stands_on(Date::MAX));
        let Some(goal) = goal else {
            return Err(RecordError::Goal(format!("{client} has no goal {id}: `tidecount goal list` shows the numbers")));
        };
        if goal.aim.is_some() && mark.kind != MarkKind::Removed {
            return Err(RecordError::Goal(format!(
                "goal {id} has a measure, and the figures alone say whether it is met: nothing was marked. Look at it with `tidecount goal list`, or remove it and add one without a measure"
            )));
        }
        self.change(|tx| insert_mark(tx, id, &Mark { by, ..mark.clone() }))
    }

    /// Takes goals with their marks as another computer has them: what is not here yet is added, and nothing is changed.
    ///
    /// # Errors
    /// The database refuses.
    pub fn receive_goals(&mut self, client: &str, goals: &[Goal]) -> Result<(), RecordError> {
        self.change(|tx| {
            let client = client_row(tx, client)?;
            take_goals(tx, client, goals, None)
        })
    }

    /// Every goal of a client in the order in which they were set, those that were removed among them.
    ///
    /// # Errors
    /// The database refuses, or holds something that cannot be read.
    pub fn goals(&self, client: &str) -> Result<Vec<Goal>, RecordError> {
        self.read(|db| {
            let id: Option<i64> = db.query_row("SELECT id FROM client WHERE name = ?1", [client], |row| row.get(0)).optional()?;
            id.map_or_else(|| Ok(Vec::new()), |id| goals_of(db, id))
        })
    }
}

/// Every goal of a client's row. Marks that came from another computer are put in by their day.
fn goals_of(db: &Connection, client: i64) -> Result<Vec<Goal>, rusqlite::Error> {
    let mut goals: Vec<Goal> = db
        .prepare("SELECT id, words, set_on, due, set_by, exercise, measure, direction, target FROM goal WHERE client = ?1 ORDER BY id")?
        .query_map([client], goal)?
        .collect::<Result<_, _>>()?;
    let mut marks = db.prepare("SELECT kind, marked_on, marked_by FROM goal_mark WHERE goal = ?1 ORDER BY marked_on, number")?;
    for goal in &mut goals {
        goal.marks = marks.query_map([goal.id], mark)?.collect::<Result<_, _>>()?;
    }
    Ok(goals)
}

fn insert(tx: &Transaction<'_>, client: i64, goal: &NewGoal<'_>, package: Option<&str>) -> Result<i64, rusqlite::Error> {
    let aim = goal.aim.as_ref();
    tx.execute(
        "INSERT INTO goal (client, words, exercise, measure, direction, target, set_on, due, set_by, package)
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
        params![
            client,
            goal.words,
            aim.map(|aim| &aim.exercise),
            aim.map(|aim| aim.measure.id()),
            aim.map(|aim| aim.direction.name()),
            aim.map(|aim| aim.target),
            goal.set_on.to_string(),
            goal.due.to_string(),
            goal.set_by,
            package
        ],
    )?;
    Ok(tx.last_insert_rowid())
}

fn insert_mark(tx: &Transaction<'_>, goal: i64, mark: &Mark) -> Result<(), rusqlite::Error> {
    tx.execute(
        "INSERT INTO goal_mark (goal, kind, marked_on, marked_by) VALUES (?1, ?2, ?3, ?4)",
        params![goal, mark.kind.name(), mark.on.to_string(), mark.by],
    )
    .map(|_| ())
}

/// Adds what is not here yet. A package tells all goals of the clinician: one that an earlier package brought and this one does not
/// have is removed.
pub(super) fn take_goals(tx: &Transaction<'_>, client: i64, goals: &[Goal], package: Option<&str>) -> Result<(), rusqlite::Error> {
    let here = goals_of(tx, client)?;
    let same = |one: &Goal, other: &Goal| {
        (&one.words, &one.aim, one.set_on, one.due, &one.set_by) == (&other.words, &other.aim, other.set_on, other.due, &other.set_by)
    };
    for goal in goals {
        let known = here.iter().find(|known| same(known, goal));
        let id = match known {
            Some(known) => known.id,
            None => {
                let new = NewGoal { words: &goal.words, aim: goal.aim.clone(), set_on: goal.set_on, due: goal.due, set_by: &goal.set_by };
                insert(tx, client, &new, package)?
            }
        };
        for mark in goal.marks.iter().filter(|mark| known.is_none_or(|known| !known.marks.contains(mark))) {
            insert_mark(tx, id, mark)?;
        }
    }
    let Some(package) = package else { return Ok(()) };
    let brought: Vec<i64> = tx
        .prepare("SELECT id FROM goal WHERE client = ?1 AND package IS NOT NULL")?
        .query_map([client], |row| row.get(0))?
        .collect::<Result<_, _>>()?;
    let taken_on: String = tx.query_row(
        "SELECT substr(taken_at, 1, 10) FROM package_taken WHERE client = ?1 ORDER BY number DESC LIMIT 1",
        [client],
        |row| row.get(0),
    )?;
    let gone = |known: &&Goal| brought.contains(&known.id) && known.stands_on(Date::MAX) && !goals.iter().any(|goal| same(known, goal));
    for known in here.iter().filter(gone) {
        let on = taken_on.parse().unwrap_or(known.set_on);
        insert_mark(tx, known.id, &Mark { kind: MarkKind::Removed, on, by: format!("package {package}") })?;
    }
    Ok(())
}

fn goal(row: &Row<'_>) -> Result<Goal, rusqlite::Error> {
    let exercise: Option<String> = row.get(5)?;
    let aim = exercise
        .map(|exercise| {
            Ok::<Aim, rusqlite::Error>(Aim {
                exercise,
                measure: word(row, 6, Measure::of_id)?,
                direction: word(row, 7, Direction::of_name)?,
                target: row.get(8)?,
            })
        })
        .transpose()?;
    Ok(Goal {
        id: row.get(0)?,
        words: row.get(1)?,
        aim,
        set_on: word(row, 2, |text| text.parse().ok())?,
        due: word(row, 3, |text| text.parse().ok())?,
        set_by: row.get(4)?,
        marks: Vec::new(),
    })
}

fn mark(row: &Row<'_>) -> Result<Mark, rusqlite::Error> {
    Ok(Mark { kind: word(row, 0, MarkKind::of_name)?, on: word(row, 1, |text| text.parse().ok())?, by: row.get(2)? })
}

/// A text that stands for something.
fn word<T>(row: &Row<'_>, column: usize, read: impl Fn(&str) -> Option<T>) -> Result<T, rusqlite::Error> {
    let text: String = row.get(column)?;
    read(&text).ok_or_else(|| rusqlite::Error::FromSqlConversionFailure(column, Type::Text, format!("cannot read {text:?}").into()))
}

/// One line of text that says something.
fn said(what: &str, text: &str, most: usize) -> Result<String, RecordError> {
    let text = text.trim();
    let length = text.chars().count();
    if length == 0 || length > most || text.chars().any(char::is_control) {
        return Err(RecordError::Goal(format!("{what} has to be 1 to {most} characters on one line; this has {length}")));
    }
    Ok(text.to_owned())
}

#[cfg(test)]
#[path = "tests/goals.rs"]
mod tests;
