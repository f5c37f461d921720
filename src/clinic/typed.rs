//! Rows by name: a struct whose fields are the columns, so that what is selected, read and written cannot fall out of step.

use super::engine::Engine;
use super::error::ClinicError;
use super::facts::EventKind;
use super::value::{Row, Value};
use jiff::civil::Date;
use jiff::{Timestamp, ZonedDateTime};
use model::{FrequencyWeighting, LevelCalibration, StepReason, TimeWeighting};

/// What a column can be read as.
pub(super) trait Cell: Sized {
    /// # Errors
    /// What stands there is something else.
    fn read(row: &Row, column: usize) -> Result<Self, ClinicError>;
}

macro_rules! cells {
    ($($Type:ty: $read:expr;)+) => {
        $(impl Cell for $Type {
            fn read(row: &Row, column: usize) -> Result<Self, ClinicError> {
                let read: fn(&Row, usize) -> Result<Self, ClinicError> = $read;
                read(row, column)
            }
        })+
    };
}

cells! {
    i64: Row::int;
    u32: Row::count;
    bool: Row::flag;
    f64: Row::real;
    String: Row::text;
    Date: Row::parsed;
    Timestamp: Row::parsed;
    ZonedDateTime: Row::parsed;
    StepReason: |row, column| row.text(column).map(Self::from);
    FrequencyWeighting: |row, column| row.text(column).map(Self::from);
    TimeWeighting: |row, column| row.text(column).map(Self::from);
    EventKind: |row, column| Ok(EventKind::of_word(&row.text(column)?).unwrap_or(EventKind::Trouble));
    LevelCalibration: |row, column| {
        let word = row.text(column)?;
        Ok(Self::ALL.into_iter().find(|one| one.name() == word).unwrap_or_default())
    };
}

impl<T: Cell> Cell for Option<T> {
    fn read(row: &Row, column: usize) -> Result<Self, ClinicError> {
        if row.is_null(column) { Ok(None) } else { T::read(row, column).map(Some) }
    }
}

/// A struct whose fields are columns.
pub(super) trait Columns: Sized {
    /// Their names, in the order of the fields.
    const NAMES: &'static [&'static str];

    /// Reads them, the first at that place of the row.
    ///
    /// # Errors
    /// What stands in one is something else.
    fn read_from(row: &Row, first: usize) -> Result<Self, ClinicError>;

    /// What is to be written, in the same order.
    fn values(self) -> Vec<Value>;

    /// As a SELECT names them, of the table called so.
    fn of(table: &str) -> String {
        Self::NAMES.iter().map(|name| format!("{table}.{name}")).collect::<Vec<_>>().join(", ")
    }

    /// Reads a row that begins with them.
    ///
    /// # Errors
    /// As [`Columns::read_from`].
    fn read(row: &Row) -> Result<Self, ClinicError> {
        Self::read_from(row, 0)
    }
}

/// Adds rows to the table called so.
///
/// # Errors
/// The database refuses.
pub(super) fn add<R: Columns>(engine: &mut dyn Engine, table: &str, rows: impl IntoIterator<Item = R>) -> Result<(), ClinicError> {
    let rows: Vec<Vec<Value>> = rows.into_iter().map(R::values).collect();
    engine.add(table, R::NAMES, &rows)
}

/// `columns! { struct DayRow { day: Date, sessions: u32 } }`: a struct and its [`Columns`].
macro_rules! columns {
    ($(#[$about:meta])* $vis:vis struct $Row:ident { $($(#[$of:meta])* $column:ident: $Type:ty,)+ }) => {
        $(#[$about])*
        #[derive(Debug, Clone, PartialEq)]
        $vis struct $Row { $($(#[$of])* pub $column: $Type,)+ }

        impl $crate::typed::Columns for $Row {
            const NAMES: &'static [&'static str] = &[$(stringify!($column),)+];

            fn read_from(row: &$crate::Row, first: usize) -> Result<Self, $crate::ClinicError> {
                let mut next = first..;
                let mut place = || next.next().unwrap_or(usize::MAX);
                Ok(Self { $($column: $crate::typed::Cell::read(row, place())?,)+ })
            }

            fn values(self) -> Vec<$crate::Value> {
                vec![$($crate::Value::from(self.$column),)+]
            }
        }
    };
}
pub(super) use columns;
