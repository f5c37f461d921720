//! What both databases must be able to do. All statements stand once, over this trait.
//!
//! Statements are written in the SQL that both understand, with `$1`, `$2`… for values.

use super::error::ClinicError;
use super::value::{Row, Value};

/// A database with the tables of the clinic. One transaction at a time.
pub trait Engine: std::fmt::Debug {
    /// The file, or the address without its password.
    fn place(&self) -> &str;

    /// Begins a transaction that will write.
    ///
    /// # Errors
    /// Another program does not let go, or the server is gone.
    fn begin(&mut self) -> Result<(), ClinicError>;

    /// Makes it last.
    ///
    /// # Errors
    /// It was not made to last; nothing of it is there.
    fn commit(&mut self) -> Result<(), ClinicError>;

    /// Undoes it. A connection that is gone has undone it already.
    fn rollback(&mut self);

    /// Runs a statement; gives how many rows it changed.
    ///
    /// # Errors
    /// The database refuses.
    fn run(&mut self, sql: &str, values: &[Value]) -> Result<u64, ClinicError>;

    /// Reads rows one by one.
    ///
    /// # Errors
    /// The database refuses, or `take` does.
    fn each(&mut self, sql: &str, values: &[Value], take: &mut dyn FnMut(&Row) -> Result<(), ClinicError>) -> Result<(), ClinicError>;

    /// Adds many rows to a table at once.
    ///
    /// # Errors
    /// The database refuses.
    fn add(&mut self, table: &str, columns: &[&str], rows: &[Vec<Value>]) -> Result<(), ClinicError>;

    /// What to put behind a SELECT so that its rows are this transaction's until it ends.
    fn lock_rows(&self) -> &'static str;

    /// The words with which the database says how it would find the rows; for benchmarks.
    ///
    /// # Errors
    /// The database refuses.
    fn explain(&mut self, sql: &str) -> Result<String, ClinicError>;

    /// Connects anew after the connection broke; true where that is possible and done.
    fn reconnect(&mut self) -> bool;

    /// Writes a whole copy beside, while others go on.
    ///
    /// # Errors
    /// It cannot be written, or this kind of database has its own tools for that.
    fn backup(&mut self, to: &std::path::Path) -> Result<(), ClinicError>;

    /// What was removed leaves no readable trace where the database can see to that at once.
    ///
    /// # Errors
    /// The database refuses.
    fn tidy(&mut self) -> Result<(), ClinicError>;

    /// Bytes that the database takes.
    ///
    /// # Errors
    /// The database refuses.
    fn size_bytes(&mut self) -> Result<i64, ClinicError>;
}

/// Reads rows into a list.
///
/// # Errors
/// As [`Engine::each`].
pub(super) fn list<T>(
    engine: &mut dyn Engine,
    sql: &str,
    values: &[Value],
    mut read: impl FnMut(&Row) -> Result<T, ClinicError>,
) -> Result<Vec<T>, ClinicError> {
    let mut all = Vec::new();
    engine.each(sql, values, &mut |row| {
        all.push(read(row)?);
        Ok(())
    })?;
    Ok(all)
}

/// Reads the first row, if there is one.
///
/// # Errors
/// As [`Engine::each`].
pub(super) fn one<T>(
    engine: &mut dyn Engine,
    sql: &str,
    values: &[Value],
    read: impl FnMut(&Row) -> Result<T, ClinicError>,
) -> Result<Option<T>, ClinicError> {
    list(engine, sql, values, read).map(|rows| rows.into_iter().next())
}
