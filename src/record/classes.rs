//! Classes that were led from a list: who was there and what was led. Nothing in it is measured, and nothing of it is ever changed: of a
//! participant, and of a step that was led once more, the last row counts.

use super::error::RecordError;
use super::store::Store;
use super::time;
use jiff::ZonedDateTime;
use model::Source;
use rusqlite::{Row, params};

/// A class about to be led.
#[derive(Debug, Clone)]
pub struct NewClass<'a> {
    /// What the list is called.
    pub title: &'a str,
    pub routine_title: &'a str,
    pub source: Source,
    /// Name and version of this program.
    pub software: &'a str,
    /// Local time of day at the first sample.
    pub started_at: &'a ZonedDateTime,
    /// As the class calls them.
    pub participants: &'a [String],
}

/// Numbers the classes of one record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct ClassId(pub i64);

/// One exercise that was led, as far as it went.
#[derive(Debug, Clone, PartialEq)]
pub struct LedStep {
    /// Its place in the routine, from 1.
    pub step: u32,
    pub exercise: String,
    /// Planned.
    pub sets: u32,
    /// All sets together.
    pub repetitions_done: u32,
    pub repetitions_planned: u32,
    /// On the sample clock of the class, s.
    pub from_s: f64,
    pub until_s: f64,
}

/// A class as it is kept.
#[derive(Debug, Clone, PartialEq)]
pub struct LedClass {
    pub id: ClassId,
    pub title: String,
    pub routine: String,
    pub source: Source,
    pub started_at: ZonedDateTime,
    /// In the order of the list; none where nobody said whether they were there.
    pub attendance: Vec<(String, Option<bool>)>,
    /// In the order of the routine.
    pub led: Vec<LedStep>,
}

impl Store {
    /// Begins the record of a class, with nothing said of anybody.
    ///
    /// # Errors
    /// The database refuses.
    pub fn begin_class(&mut self, new: &NewClass<'_>) -> Result<ClassId, RecordError> {
        self.change(|tx| {
            tx.execute(
                "INSERT INTO class (title, routine_title, source, software, started_at) VALUES (?1, ?2, ?3, ?4, ?5)",
                params![new.title, new.routine_title, new.source.as_str(), new.software, new.started_at.to_string()],
            )?;
            let class = tx.last_insert_rowid();
            for participant in new.participants {
                tx.execute(
                    "INSERT INTO class_attendance (class, participant, present, at_s) VALUES (?1, ?2, NULL, 0)",
                    params![class, participant],
                )?;
            }
            Ok(ClassId(class))
        })
    }

    /// Keeps whether somebody is there; none takes back what was said.
    ///
    /// # Errors
    /// The database refuses.
    pub fn note_attendance(&mut self, class: ClassId, participant: &str, present: Option<bool>, at_s: f64) -> Result<(), RecordError> {
        self.change(|tx| {
            tx.execute(
                "INSERT INTO class_attendance (class, participant, present, at_s) VALUES (?1, ?2, ?3, ?4)",
                params![class.0, participant, present, at_s],
            )
        })?;
        Ok(())
    }

    /// Keeps what was led of an exercise.
    ///
    /// # Errors
    /// The database refuses.
    pub fn note_led(&mut self, class: ClassId, led: &LedStep) -> Result<(), RecordError> {
        self.change(|tx| {
            tx.execute(
                "INSERT INTO class_led (class, step, exercise, sets, repetitions_done, repetitions_planned, from_s, until_s)
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
                params![class.0, led.step, led.exercise, led.sets, led.repetitions_done, led.repetitions_planned, led.from_s, led.until_s],
            )
        })?;
        Ok(())
    }

    /// The latest classes, newest first, at most `limit`.
    ///
    /// # Errors
    /// The database refuses, or holds something that cannot be read.
    pub fn classes(&self, limit: u32) -> Result<Vec<LedClass>, RecordError> {
        self.read(|db| {
            let mut classes: Vec<LedClass> = db
                .prepare("SELECT id, title, routine_title, source, started_at FROM class ORDER BY id DESC LIMIT ?1")?
                .query_map([limit], class)?
                .collect::<Result<_, _>>()?;
            // The place on the list is that of the first row, what counts is in the last.
            let mut attendance = db.prepare(
                "SELECT participant, present FROM class_attendance a WHERE class = ?1
                 AND number = (SELECT max(number) FROM class_attendance WHERE class = a.class AND participant = a.participant)
                 ORDER BY (SELECT min(number) FROM class_attendance WHERE class = a.class AND participant = a.participant)",
            )?;
            let mut led = db.prepare(
                "SELECT step, exercise, sets, repetitions_done, repetitions_planned, from_s, until_s FROM class_led l WHERE class = ?1
                 AND number = (SELECT max(number) FROM class_led WHERE class = l.class AND step = l.step) ORDER BY step",
            )?;
            for class in &mut classes {
                class.attendance = attendance.query_map([class.id.0], |row| Ok((row.get(0)?, row.get(1)?)))?.collect::<Result<_, _>>()?;
                class.led = led.query_map([class.id.0], led_step)?.collect::<Result<_, _>>()?;
            }
            Ok(classes)
        })
    }
}

fn class(row: &Row<'_>) -> Result<LedClass, rusqlite::Error> {
    let unreadable = |column: usize, text: &str| {
        rusqlite::Error::FromSqlConversionFailure(column, rusqlite::types::Type::Text, format!("cannot read {text:?}").into())
    };
    let (source, started): (String, String) = (row.get(3)?, row.get(4)?);
    Ok(LedClass {
        id: ClassId(row.get(0)?),
        title: row.get(1)?,
        routine: row.get(2)?,
        source: Source::from_word(&source).ok_or_else(|| unreadable(3, &source))?,
        started_at: time::read(&started).ok_or_else(|| unreadable(4, &started))?,
        attendance: Vec::new(),
        led: Vec::new(),
    })
}

fn led_step(row: &Row<'_>) -> Result<LedStep, rusqlite::Error> {
    Ok(LedStep {
        step: row.get(0)?,
        exercise: row.get(1)?,
        sets: row.get(2)?,
        repetitions_done: row.get(3)?,
        repetitions_planned: row.get(4)?,
        from_s: row.get(5)?,
        until_s: row.get(6)?,
    })
}

#[cfg(test)]
#[path = "tests/classes.rs"]
mod tests;
