//! The clinic database of one desk: a SQLite file.

use super::engine::Engine;
use super::error::ClinicError;
use super::schema::{self, SQLITE};
use super::value::{Row, Value};
use record::{KeptLike, RecordError};
use rusqlite::types::{ToSqlOutput, ValueRef};
use rusqlite::{Connection, ErrorCode, OpenFlags, params_from_iter};
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::time::Duration;

/// Marks the file as ours in SQLite's header: "TIDC". The record of practices has another mark.
const APPLICATION_ID: i64 = 0x5449_4443;
/// How long to wait for another program. A large import of another desk lasts seconds.
const BUSY: Duration = Duration::from_secs(20);
/// Statements kept ready.
const STATEMENTS: usize = 100;

/// An open file.
#[derive(Debug)]
pub struct Sqlite {
    connection: Connection,
    key: KeptLike,
    path: PathBuf,
    place: Rc<str>,
}

/// How SQLite's own words become ours.
fn wrap(place: &str, error: &rusqlite::Error) -> ClinicError {
    let (place, cause) = (place.to_owned(), error.to_string());
    match error.sqlite_error_code() {
        Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => ClinicError::Busy { place },
        Some(ErrorCode::NotADatabase | ErrorCode::DatabaseCorrupt) => ClinicError::Damaged { place, cause },
        Some(
            ErrorCode::DiskFull | ErrorCode::ReadOnly | ErrorCode::PermissionDenied | ErrorCode::CannotOpen | ErrorCode::SystemIoFailure,
        ) => ClinicError::Unwritable { place, cause },
        _ => ClinicError::Refused { place, cause },
    }
}

impl Sqlite {
    /// Opens the file, creating or migrating it. One that is damaged, foreign or newer is left as it is.
    ///
    /// # Errors
    /// As said; or it is missing and `create` is false.
    pub fn open(path: &Path, create: bool) -> Result<Self, ClinicError> {
        let place = path.display().to_string();
        let is_there = std::fs::metadata(path).is_ok_and(|data| data.len() > 0);
        let mut key = None;
        if is_there {
            key = Some(inspect(path)?);
        } else if !create {
            return Err(ClinicError::Absent { place });
        } else {
            private(path).map_err(|error| ClinicError::Unwritable { place: place.clone(), cause: error.to_string() })?;
        }
        let key = match key {
            Some(key) => key,
            // Of a new file, where a passphrase is given.
            None => KeptLike::of(path).map_err(|error| locked(&place, &error))?,
        };
        let open = || -> Result<Connection, rusqlite::Error> {
            let mut connection = key.connect(path, OpenFlags::SQLITE_OPEN_READ_WRITE)?;
            connection.busy_timeout(BUSY)?;
            connection.set_prepared_statement_cache_capacity(STATEMENTS);
            // A view never waits for an import.
            switch_to_wal(&connection)?;
            connection.pragma_update(None, "foreign_keys", true)?;
            // A removed client leaves no readable traces in free pages.
            connection.pragma_update(None, "secure_delete", true)?;
            connection.pragma_update(None, "cache_size", -65_536)?;
            migrate(&mut connection)?;
            Ok(connection)
        };
        let connection = open().map_err(|error| wrap(&place, &error))?;
        Ok(Self { connection, key, path: path.to_path_buf(), place: place.into() })
    }

    fn wrapped(&self, error: &rusqlite::Error) -> ClinicError {
        wrap(&self.place, error)
    }
}

/// Why the key of a file cannot be had.
fn locked(place: &str, error: &RecordError) -> ClinicError {
    match error {
        RecordError::Damaged { cause, .. } => ClinicError::Foreign { place: place.to_owned(), cause: cause.clone() },
        RecordError::WrongPassphrase { .. } => ClinicError::Passphrase {
            place: place.to_owned(),
            cause: "it does not open with this passphrase: it is another one, or this is no clinic database of tidecount".to_owned(),
        },
        RecordError::Locked { .. } => ClinicError::Passphrase {
            place: place.to_owned(),
            cause: "it is encrypted, or no database: give the passphrase of the record in TIDECOUNT_PASSPHRASE or TIDECOUNT_PASSPHRASE_FILE, or at a terminal".to_owned(),
        },
        other => ClinicError::Passphrase { place: place.to_owned(), cause: other.to_string() },
    }
}

/// A new file for its owner alone, and its folder where that is missing.
fn private(path: &Path) -> std::io::Result<()> {
    if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        disk::private::folder(folder)?;
    }
    disk::private::append(path, false).map(|_| ())
}

/// Looks at the file through a connection that cannot write.
fn inspect(path: &Path) -> Result<KeptLike, ClinicError> {
    let place = path.display().to_string();
    let key = KeptLike::of(path).map_err(|error| locked(&place, &error))?;
    let wrap = |error: rusqlite::Error| match error.sqlite_error_code() {
        Some(ErrorCode::NotADatabase) => ClinicError::Foreign { place: place.clone(), cause: "it is no SQLite file".to_owned() },
        _ => wrap(&place, &error),
    };
    let connection = key.connect_to_look(path).map_err(wrap)?;
    connection.busy_timeout(BUSY).map_err(wrap)?;
    let number = |pragma: &str| connection.pragma_query_value(None, pragma, |row| row.get::<_, i64>(0)).map_err(wrap);
    let (version, id) = (number("user_version")?, number("application_id")?);
    let tables: i64 = connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0)).map_err(wrap)?;
    if id != APPLICATION_ID && (tables > 0 || version != 0) {
        let cause = if id == 0x5449_4445 { "it is the record of practices of one computer" } else { "it is a database of another program" };
        return Err(ClinicError::Foreign { place, cause: cause.to_owned() });
    }
    let known = schema::known();
    if version > known {
        return Err(ClinicError::Newer { place, found: version, known });
    }
    drop(connection);
    Ok(key)
}

/// SQLite does not wait by itself where two programs switch a new file at the same instant.
fn switch_to_wal(connection: &Connection) -> Result<(), rusqlite::Error> {
    let mut tries = 0;
    loop {
        let done = connection.pragma_update_and_check(None, "journal_mode", "wal", |row| row.get::<_, String>(0));
        match done {
            Err(error) if error.sqlite_error_code() == Some(ErrorCode::DatabaseBusy) && tries < 100 => {
                tries += 1;
                std::thread::sleep(BUSY / 100);
            }
            other => return other.map(|_| ()),
        }
    }
}

fn migrate(connection: &mut Connection) -> Result<(), rusqlite::Error> {
    // Nothing is written where nothing is to be done, so that a full disk hinders nobody from looking.
    if connection.pragma_query_value(None, "user_version", |row| row.get::<_, i64>(0))? == schema::known() {
        return Ok(());
    }
    // The write lock first, so that of two programs the second finds the work done.
    let change = connection.transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)?;
    let version: i64 = change.pragma_query_value(None, "user_version", |row| row.get(0))?;
    let done = usize::try_from(version).unwrap_or(0);
    for sql in SQLITE.iter().skip(done) {
        change.execute_batch(sql)?;
    }
    if done < SQLITE.len() {
        change.pragma_update(None, "application_id", APPLICATION_ID)?;
        change.pragma_update(None, "user_version", schema::known())?;
    }
    change.commit()
}

impl rusqlite::ToSql for Value {
    fn to_sql(&self) -> Result<ToSqlOutput<'_>, rusqlite::Error> {
        Ok(ToSqlOutput::Borrowed(match self {
            Self::Null => ValueRef::Null,
            Self::Int(value) => ValueRef::Integer(*value),
            Self::Real(value) => ValueRef::Real(*value),
            Self::Text(value) => ValueRef::Text(value.as_bytes()),
            Self::Blob(value) => ValueRef::Blob(value),
        }))
    }
}

impl From<ValueRef<'_>> for Value {
    fn from(value: ValueRef<'_>) -> Self {
        match value {
            ValueRef::Null => Self::Null,
            ValueRef::Integer(value) => Self::Int(value),
            ValueRef::Real(value) => Self::Real(value),
            ValueRef::Text(value) => Self::Text(String::from_utf8_lossy(value).into_owned()),
            ValueRef::Blob(value) => Self::Blob(value.to_vec()),
        }
    }
}

/// SQLite numbers its values with `?1`; no text in our statements holds a `$`.
fn numbered(sql: &str) -> String {
    sql.replace('$', "?")
}

impl Engine for Sqlite {
    fn place(&self) -> &str {
        &self.place
    }

    fn begin(&mut self) -> Result<(), ClinicError> {
        self.connection.execute_batch("BEGIN IMMEDIATE").map_err(|error| self.wrapped(&error))
    }

    fn commit(&mut self) -> Result<(), ClinicError> {
        self.connection.execute_batch("COMMIT").map_err(|error| self.wrapped(&error))
    }

    fn rollback(&mut self) {
        // Some failures have undone it already; then there is nothing to undo.
        let _ = self.connection.execute_batch("ROLLBACK");
    }

    fn run(&mut self, sql: &str, values: &[Value]) -> Result<u64, ClinicError> {
        let run = || self.connection.prepare_cached(&numbered(sql))?.execute(params_from_iter(values));
        run().map(|rows| rows as u64).map_err(|error| self.wrapped(&error))
    }

    fn each(&mut self, sql: &str, values: &[Value], take: &mut dyn FnMut(&Row) -> Result<(), ClinicError>) -> Result<(), ClinicError> {
        let wrapped = |error: rusqlite::Error| wrap(&self.place, &error);
        let mut statement = self.connection.prepare_cached(&numbered(sql)).map_err(wrapped)?;
        let columns = statement.column_count();
        let mut rows = statement.query(params_from_iter(values)).map_err(wrapped)?;
        while let Some(row) = rows.next().map_err(wrapped)? {
            let values = (0..columns).map(|column| row.get_ref(column).map(Value::from)).collect::<Result<_, _>>().map_err(wrapped)?;
            take(&Row::new(&self.place, values))?;
        }
        Ok(())
    }

    fn add(&mut self, table: &str, columns: &[&str], rows: &[Vec<Value>]) -> Result<(), ClinicError> {
        if rows.is_empty() {
            return Ok(());
        }
        let places: Vec<String> = (1..=columns.len()).map(|number| format!("?{number}")).collect();
        let sql = format!("INSERT INTO {table} ({}) VALUES ({})", columns.join(", "), places.join(", "));
        let add = || {
            let mut statement = self.connection.prepare_cached(&sql)?;
            rows.iter().try_for_each(|row| statement.execute(params_from_iter(row)).map(|_| ()))
        };
        add().map_err(|error| self.wrapped(&error))
    }

    fn lock_rows(&self) -> &'static str {
        // The whole file is this transaction's already.
        ""
    }

    fn explain(&mut self, sql: &str) -> Result<String, ClinicError> {
        let explain = || -> Result<Vec<String>, rusqlite::Error> {
            let mut statement = self.connection.prepare(&format!("EXPLAIN QUERY PLAN {}", numbered(sql)))?;
            let values = vec![rusqlite::types::Value::Integer(1); statement.parameter_count()];
            statement.query_map(params_from_iter(values), |row| row.get::<_, String>(3))?.collect()
        };
        explain().map(|lines| lines.join("\n")).map_err(|error| self.wrapped(&error))
    }

    fn reconnect(&mut self) -> bool {
        false
    }

    fn backup(&mut self, to: &Path) -> Result<(), ClinicError> {
        let unwritable = |cause: String| ClinicError::NoCopy { path: to.display().to_string(), cause };
        if to.symlink_metadata().is_ok() {
            return Err(unwritable("there is a file of that name already, and it was left as it is".to_owned()));
        }
        private(to).map_err(|error| unwritable(error.to_string()))?;
        let copy = || -> Result<(), rusqlite::Error> {
            // Encrypted with the same key where this file is; an empty key means none.
            self.connection.execute("ATTACH DATABASE ?1 AS copy KEY ?2", (to.to_string_lossy(), self.key.spec().as_str()))?;
            let fill = || {
                // One snapshot for all tables.
                self.connection.execute_batch("BEGIN")?;
                self.connection.query_row("SELECT sqlcipher_export('copy')", [], |_| Ok(()))?;
                let marks =
                    format!("PRAGMA copy.user_version = {}; PRAGMA copy.application_id = {APPLICATION_ID}; COMMIT", schema::known());
                self.connection.execute_batch(&marks)
            };
            let filled: Result<(), rusqlite::Error> = fill();
            if filled.is_err() {
                // Nothing to undo where it was undone already.
                let _ = self.connection.execute_batch("ROLLBACK");
            }
            let detached = self.connection.execute_batch("DETACH copy");
            filled.and(detached)
        };
        copy().map_err(|error| {
            // Half a copy is none.
            let _ = std::fs::remove_file(to);
            unwritable(error.to_string())
        })
    }

    fn tidy(&mut self) -> Result<(), ClinicError> {
        // Free pages are overwritten (secure_delete); what the log beside the file still holds goes with this.
        self.connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(())).map_err(|error| self.wrapped(&error))
    }

    fn size_bytes(&mut self) -> Result<i64, ClinicError> {
        let size = |path: &Path| std::fs::metadata(path).map_or(0, |data| i64::try_from(data.len()).unwrap_or(i64::MAX));
        Ok(size(&self.path))
    }
}
