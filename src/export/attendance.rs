//! Who was in a class, as a table. It stands beside the tables of practices, which hold no class.

use jiff::ZonedDateTime;
use model::Source;

use super::table::{Column, Holds, Row, Table};

/// One row for each participant of each class.
pub static ATTENDANCE: Table = Table {
    name: "attendance",
    meaning: "One row for each participant of each class that was led from a list",
    key: &["class", "participant"],
    columns: &[
        Column::required("class", Holds::Integer, "The number of the class in this record"),
        Column::required("started_at", Holds::Time, "When it began"),
        Column::required("title", Holds::Text, "What the list of the class is called"),
        Column::required("routine", Holds::Text, "What was led"),
        Column::required("source", Holds::One(&["live", "replay", "rehearsal"]), "Where its sound came from"),
        Column::required("participant", Holds::Text, "As the class calls them"),
        Column::new("present", Holds::Boolean, "", "Whether they were there; empty where nobody said so"),
    ],
};

/// A class that was led.
#[derive(Debug, Clone, Copy)]
pub struct ClassHead<'a> {
    pub number: i64,
    pub started_at: &'a ZonedDateTime,
    pub title: &'a str,
    pub routine: &'a str,
    pub source: Source,
}

/// The row of one participant.
#[must_use]
pub fn attendance_row(class: &ClassHead<'_>, participant: &str, present: Option<bool>) -> Row {
    let mut row = Row::of(&ATTENDANCE);
    row.integer("class", class.number);
    row.time("started_at", class.started_at);
    row.text("title", class.title);
    row.text("routine", class.routine);
    row.word("source", class.source.as_str());
    row.text("participant", participant);
    if let Some(present) = present {
        row.boolean("present", present);
    }
    row
}
