//! Tables, their columns and cells. What is said of a column here is what the data dictionary says of it.

use std::io::Write;

use jiff::ZonedDateTime;

use super::moment::iso;
use model::{Measure, Unit};

/// What the cells of a column hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Holds {
    /// Free text.
    Text,
    /// Texts parted by ` | `.
    Texts,
    /// A UUID.
    Uuid,
    Integer,
    Decimal,
    /// `true` or `false`.
    Boolean,
    /// ISO 8601, a day without a time.
    Date,
    /// ISO 8601 with milliseconds and the offset from UTC.
    Time,
    /// One of these words.
    One(&'static [&'static str]),
}

/// What parts the texts of a cell that holds several.
pub const BETWEEN: &str = " | ";

/// One column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    pub name: &'static str,
    pub meaning: &'static str,
    /// UCUM code; empty where it has none.
    pub unit: &'static str,
    pub holds: Holds,
    /// Never empty.
    pub required: bool,
}

impl Column {
    pub(super) const fn new(name: &'static str, holds: Holds, unit: &'static str, meaning: &'static str) -> Self {
        Self { name, meaning, unit, holds, required: false }
    }

    /// The column of a measure, as it is declared.
    pub(super) const fn of(measure: Measure) -> Self {
        let declared = measure.declared();
        let holds = if matches!(declared.unit, Unit::Count) { Holds::Integer } else { Holds::Decimal };
        Self::new(declared.column, holds, declared.unit.ucum(), declared.meaning)
    }

    pub(super) const fn required(name: &'static str, holds: Holds, meaning: &'static str) -> Self {
        Self { name, meaning, unit: "", holds, required: true }
    }
}

/// One table, one file.
#[derive(Debug, PartialEq)]
pub struct Table {
    pub name: &'static str,
    /// What one row is.
    pub meaning: &'static str,
    pub columns: &'static [Column],
    /// The columns that name a row.
    pub key: &'static [&'static str],
}

impl Table {
    /// The file's name in a folder.
    #[must_use]
    pub fn file(&self) -> String {
        format!("{}.csv", self.name)
    }

    #[must_use]
    pub fn column(&self, name: &str) -> Option<&'static Column> {
        self.columns.iter().find(|column| column.name == name)
    }
}

/// One row in the making. A cell that is not set is empty: not measured, or it does not apply.
pub struct Row {
    table: &'static Table,
    cells: Vec<String>,
}

impl Row {
    #[must_use]
    pub fn of(table: &'static Table) -> Self {
        Self { table, cells: vec![String::new(); table.columns.len()] }
    }

    fn put(&mut self, name: &str, cell: String) {
        let place = self.table.columns.iter().position(|column| column.name == name);
        debug_assert!(place.is_some(), "{} has no column {name}", self.table.name);
        if let Some(cell_there) = place.and_then(|place| self.cells.get_mut(place)) {
            *cell_there = cell;
        }
    }

    /// A text from outside: typed, heard, or a device's name.
    pub fn text(&mut self, name: &str, text: &str) {
        self.put(name, harmless(text));
    }

    /// A text from outside, where there is one.
    pub fn text_if(&mut self, name: &str, text: Option<&str>) {
        if let Some(text) = text {
            self.text(name, text);
        }
    }

    /// A word of this program's own.
    pub fn word(&mut self, name: &str, word: &str) {
        self.put(name, word.to_owned());
    }

    /// A number; one that is not finite was not measured.
    pub fn number(&mut self, name: &str, value: f64) {
        if value.is_finite() {
            self.put(name, value.to_string());
        }
    }

    pub fn number_if(&mut self, name: &str, value: Option<f64>) {
        self.number(name, value.unwrap_or(f64::NAN));
    }

    pub fn integer(&mut self, name: &str, value: impl Into<i64>) {
        self.put(name, value.into().to_string());
    }

    pub fn integer_if(&mut self, name: &str, value: Option<u32>) {
        if let Some(value) = value {
            self.integer(name, value);
        }
    }

    pub fn boolean(&mut self, name: &str, value: bool) {
        self.put(name, value.to_string());
    }

    pub fn time(&mut self, name: &str, time: &ZonedDateTime) {
        self.put(name, iso(time));
    }

    pub fn time_if(&mut self, name: &str, time: Option<&ZonedDateTime>) {
        if let Some(time) = time {
            self.time(name, time);
        }
    }

    /// The cells in the table's order.
    #[must_use]
    pub fn cells(&self) -> &[String] {
        &self.cells
    }
}

/// A text as it can stand in a cell: what a spreadsheet would take for a formula gets an apostrophe before it, and control
/// characters (a line break apart) become blanks. The first characters are those of the OWASP page "CSV Injection" (from memory).
#[must_use]
pub fn harmless(text: &str) -> String {
    let clean: String = text.chars().map(|c| if c.is_control() && c != '\n' { ' ' } else { c }).collect();
    let first = clean.trim_start().chars().next();
    if first.is_some_and(|first| "=+-@＝＋－＠".contains(first)) { format!("'{clean}") } else { clean }
}

/// Writes one table as RFC 4180 asks: commas, CRLF, quotes where they are needed, a header line; UTF-8.
pub struct Writer<W: Write> {
    csv: csv::Writer<W>,
}

impl<W: Write> Writer<W> {
    /// Begins with the header line.
    ///
    /// # Errors
    /// It cannot be written.
    pub fn new(table: &Table, to: W) -> Result<Self, csv::Error> {
        let mut csv = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(to);
        csv.write_record(table.columns.iter().map(|column| column.name))?;
        Ok(Self { csv })
    }

    /// # Errors
    /// It cannot be written.
    pub fn row(&mut self, row: &Row) -> Result<(), csv::Error> {
        self.csv.write_record(row.cells())
    }

    /// # Errors
    /// It cannot be written.
    pub fn finish(mut self) -> Result<(), csv::Error> {
        Ok(self.csv.flush()?)
    }
}
