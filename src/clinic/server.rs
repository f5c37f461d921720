//! The clinic database of several desks: PostgreSQL.

use super::engine::Engine;
use super::error::ClinicError;
use super::schema::{self, POSTGRES};
use super::server_address::Server;
use super::value::{Row, Value};
use native_tls::{Certificate, TlsConnector};
use postgres::binary_copy::BinaryCopyInWriter;
use postgres::error::SqlState;
use postgres::fallible_iterator::FallibleIterator;
use postgres::types::private::BytesMut;
use postgres::types::{FromSql, IsNull, ToSql, Type, to_sql_checked};
use postgres::{Client, Statement};
use postgres_native_tls::MakeTlsConnector;
use std::collections::HashMap;
use std::path::Path;
use std::rc::Rc;

/// All tables stand in a schema of their own, so that a database may hold other things besides.
const SCHEMA: &str = "tidecount_clinic";
/// Two desks that make the tables at the same instant take turns: the number of this lock is "TIDC".
const MAKING: i64 = 0x5449_4443;

/// An open connection.
pub struct Postgres {
    client: Client,
    server: Server,
    place: Rc<str>,
    ready: HashMap<String, Statement>,
}

impl std::fmt::Debug for Postgres {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Postgres({})", self.place)
    }
}

/// How the server's words become ours. They never hold the password.
fn wrap(place: &str, error: &postgres::Error) -> ClinicError {
    let place = place.to_owned();
    let Some(db) = error.as_db_error() else {
        let mut cause = error.to_string();
        if let Some(source) = std::error::Error::source(error) {
            cause = format!("{cause}: {source}");
        }
        let is_lost = error.is_closed() || std::error::Error::source(error).is_some_and(|source| source.is::<std::io::Error>());
        return if is_lost { ClinicError::Lost { place, cause } } else { ClinicError::Refused { place, cause } };
    };
    let cause = db.message().to_owned();
    let code = db.code();
    if [SqlState::T_R_SERIALIZATION_FAILURE, SqlState::T_R_DEADLOCK_DETECTED].contains(code) {
        ClinicError::Conflict { place, cause }
    } else if *code == SqlState::LOCK_NOT_AVAILABLE {
        ClinicError::Busy { place }
    } else if [
        SqlState::ADMIN_SHUTDOWN,
        SqlState::CRASH_SHUTDOWN,
        SqlState::CANNOT_CONNECT_NOW,
        SqlState::IDLE_IN_TRANSACTION_SESSION_TIMEOUT,
    ]
    .contains(code)
    {
        ClinicError::Lost { place, cause }
    } else if [SqlState::DISK_FULL, SqlState::INSUFFICIENT_PRIVILEGE, SqlState::READ_ONLY_SQL_TRANSACTION].contains(code) {
        ClinicError::Unwritable { place, cause }
    } else {
        ClinicError::Refused { place, cause }
    }
}

fn connect(server: &Server) -> Result<Client, ClinicError> {
    let place = server.shown.clone();
    let lost = |cause: String| ClinicError::Lost { place: place.clone(), cause };
    let mut builder = TlsConnector::builder();
    if let Some(path) = &server.root {
        let unusable = |cause: String| ClinicError::Address { cause: format!("the certificate {}: {cause}", path.display()) };
        let pem = std::fs::read(path).map_err(|error| unusable(error.to_string()))?;
        builder.add_root_certificate(Certificate::from_pem(&pem).map_err(|error| unusable(error.to_string()))?);
    }
    let tls = builder.build().map_err(|error| lost(error.to_string()))?;
    let mut client = server.config.connect(MakeTlsConnector::new(tls)).map_err(|error| match error.as_db_error() {
        Some(db) => lost(db.message().to_owned()),
        None => {
            let cause = std::error::Error::source(&error).map_or_else(|| error.to_string(), |source| format!("{error}: {source}"));
            lost(cause)
        }
    })?;
    // A desk that waits longer for another is told so.
    let set_up = format!("SET search_path TO {SCHEMA}; SET lock_timeout = '20s'; SET client_min_messages = warning");
    client.batch_execute(&set_up).map_err(|error| wrap(&place, &error))?;
    Ok(client)
}

impl Postgres {
    /// Connects, and makes or migrates the tables. What is foreign or newer is left as it is.
    ///
    /// # Errors
    /// The server cannot be reached or refuses, or as said; or there are no tables and `create` is false.
    pub fn open(server: &Server, create: bool) -> Result<Self, ClinicError> {
        let place: Rc<str> = server.shown.as_str().into();
        let mut this = Self { client: connect(server)?, server: server.clone(), place, ready: HashMap::new() };
        let found = this.found()?;
        match found {
            Some(version) if version == schema::known() => {}
            None if !create => return Err(ClinicError::Absent { place: this.place.to_string() }),
            _ => {
                this.begin()?;
                let made = this.make();
                if made.is_err() {
                    this.rollback();
                }
                made?;
                this.commit()?;
            }
        }
        Ok(this)
    }

    fn wrapped(&self, error: &postgres::Error) -> ClinicError {
        wrap(&self.place, error)
    }

    /// The form of our tables; none where there are none yet.
    fn found(&mut self) -> Result<Option<i64>, ClinicError> {
        let place = self.place.to_string();
        let foreign = |cause: &str| ClinicError::Foreign { place: place.clone(), cause: cause.to_owned() };
        let mut number = |sql: &str| -> Result<Option<i64>, ClinicError> {
            let row = self.client.query_opt(sql, &[]).map_err(|error| wrap(&place, &error))?;
            row.map(|row| row.try_get(0)).transpose().map_err(|error| wrap(&place, &error))
        };
        let encoding = number("SELECT 1::bigint WHERE current_setting('server_encoding') = 'UTF8'")?;
        if encoding.is_none() {
            return Err(foreign("it does not keep texts as UTF-8: make one with `createdb --encoding=UTF8 --template=template0`"));
        }
        let tables = number(&format!("SELECT count(*) FROM pg_tables WHERE schemaname = '{SCHEMA}'"))?.unwrap_or(0);
        if tables == 0 {
            return Ok(None);
        }
        if number(&format!("SELECT 1::bigint FROM pg_tables WHERE schemaname = '{SCHEMA}' AND tablename = 'about'"))?.is_none() {
            return Err(foreign(&format!("its schema {SCHEMA} is of another program")));
        }
        let ours = number(&format!("SELECT form FROM {SCHEMA}.about WHERE application = 'tidecount clinic'"));
        let version = ours.ok().flatten().ok_or_else(|| foreign(&format!("its schema {SCHEMA} is of another program")))?;
        let known = schema::known();
        if version > known {
            return Err(ClinicError::Newer { place: place.clone(), found: version, known });
        }
        Ok(Some(version))
    }

    fn make(&mut self) -> Result<(), ClinicError> {
        self.client.execute("SELECT pg_advisory_xact_lock($1)", &[&MAKING]).map_err(|error| self.wrapped(&error))?;
        // Of two desks the second finds the work done.
        let done = usize::try_from(self.found()?.unwrap_or(0)).unwrap_or(0);
        if done == 0 {
            self.client.batch_execute(&format!("CREATE SCHEMA IF NOT EXISTS {SCHEMA}")).map_err(|error| self.wrapped(&error))?;
        }
        for sql in POSTGRES.iter().skip(done) {
            self.client.batch_execute(sql).map_err(|error| self.wrapped(&error))?;
        }
        let sql = "UPDATE about SET form = $1";
        self.client.execute(sql, &[&schema::known()]).map_err(|error| self.wrapped(&error))?;
        Ok(())
    }

    /// Asked for once, used as often as wanted.
    fn statement(&mut self, sql: &str) -> Result<Statement, ClinicError> {
        if let Some(statement) = self.ready.get(sql) {
            return Ok(statement.clone());
        }
        let statement = self.client.prepare(sql).map_err(|error| self.wrapped(&error))?;
        self.ready.insert(sql.to_owned(), statement.clone());
        Ok(statement)
    }
}

impl ToSql for Value {
    fn to_sql(&self, ty: &Type, out: &mut BytesMut) -> Result<IsNull, Box<dyn std::error::Error + Sync + Send>> {
        match self {
            Self::Null => Ok(IsNull::Yes),
            Self::Int(value) if *ty == Type::INT2 => i16::try_from(*value)?.to_sql(ty, out),
            Self::Int(value) if *ty == Type::INT4 => i32::try_from(*value)?.to_sql(ty, out),
            #[allow(clippy::cast_precision_loss, reason = "a whole number where a real one is asked for")]
            Self::Int(value) if *ty == Type::FLOAT8 => (*value as f64).to_sql(ty, out),
            Self::Int(value) if *ty == Type::INT8 => value.to_sql(ty, out),
            Self::Real(value) if *ty == Type::FLOAT8 => value.to_sql(ty, out),
            #[allow(clippy::cast_possible_truncation, reason = "the column is that short")]
            Self::Real(value) if *ty == Type::FLOAT4 => (*value as f32).to_sql(ty, out),
            Self::Text(value) if <&str as ToSql>::accepts(ty) => value.as_str().to_sql(ty, out),
            Self::Blob(value) if *ty == Type::BYTEA => value.as_slice().to_sql(ty, out),
            _ => Err(format!("a value does not fit a column of type {ty}").into()),
        }
    }

    fn accepts(_: &Type) -> bool {
        true
    }

    to_sql_checked!();
}

impl<'a> FromSql<'a> for Value {
    fn from_sql(ty: &Type, raw: &'a [u8]) -> Result<Self, Box<dyn std::error::Error + Sync + Send>> {
        Ok(match *ty {
            Type::INT2 => Self::Int(i16::from_sql(ty, raw)?.into()),
            Type::INT4 => Self::Int(i32::from_sql(ty, raw)?.into()),
            Type::INT8 => Self::Int(i64::from_sql(ty, raw)?),
            Type::BOOL => Self::Int(bool::from_sql(ty, raw)?.into()),
            Type::FLOAT4 => Self::Real(f32::from_sql(ty, raw)?.into()),
            Type::FLOAT8 => Self::Real(f64::from_sql(ty, raw)?),
            Type::BYTEA => Self::Blob(raw.to_vec()),
            _ => Self::Text(String::from_sql(ty, raw)?),
        })
    }

    fn from_sql_null(_: &Type) -> Result<Self, Box<dyn std::error::Error + Sync + Send>> {
        Ok(Self::Null)
    }

    fn accepts(ty: &Type) -> bool {
        [Type::INT2, Type::INT4, Type::INT8, Type::BOOL, Type::FLOAT4, Type::FLOAT8, Type::BYTEA].contains(ty)
            || <String as FromSql<'_>>::accepts(ty)
    }
}

impl Engine for Postgres {
    fn place(&self) -> &str {
        &self.place
    }

    fn begin(&mut self) -> Result<(), ClinicError> {
        self.client.batch_execute("BEGIN").map_err(|error| self.wrapped(&error))
    }

    fn commit(&mut self) -> Result<(), ClinicError> {
        self.client.batch_execute("COMMIT").map_err(|error| self.wrapped(&error))
    }

    fn rollback(&mut self) {
        // A connection that is gone has undone it already.
        let _ = self.client.batch_execute("ROLLBACK");
    }

    fn run(&mut self, sql: &str, values: &[Value]) -> Result<u64, ClinicError> {
        let statement = self.statement(sql)?;
        let values: Vec<&(dyn ToSql + Sync)> = values.iter().map(|value| value as _).collect();
        self.client.execute(&statement, &values).map_err(|error| self.wrapped(&error))
    }

    fn each(&mut self, sql: &str, values: &[Value], take: &mut dyn FnMut(&Row) -> Result<(), ClinicError>) -> Result<(), ClinicError> {
        let statement = self.statement(sql)?;
        let place = self.place.clone();
        let wrapped = |error: postgres::Error| wrap(&place, &error);
        let mut rows = self.client.query_raw(&statement, values).map_err(wrapped)?;
        while let Some(row) = rows.next().map_err(wrapped)? {
            let values = (0..row.len()).map(|column| row.try_get(column)).collect::<Result<_, _>>().map_err(wrapped)?;
            take(&Row::new(&place, values))?;
        }
        Ok(())
    }

    fn add(&mut self, table: &str, columns: &[&str], rows: &[Vec<Value>]) -> Result<(), ClinicError> {
        if rows.is_empty() {
            return Ok(());
        }
        let columns = columns.join(", ");
        let types: Vec<Type> = self
            .statement(&format!("SELECT {columns} FROM {table} LIMIT 0"))?
            .columns()
            .iter()
            .map(|column| column.type_().clone())
            .collect();
        let place = self.place.clone();
        let wrapped = |error: postgres::Error| wrap(&place, &error);
        // One stream instead of a question and an answer for each row.
        let writer = self.client.copy_in(&format!("COPY {table} ({columns}) FROM STDIN BINARY")).map_err(wrapped)?;
        let mut writer = BinaryCopyInWriter::new(writer, &types);
        for row in rows {
            writer.write_raw(row).map_err(wrapped)?;
        }
        writer.finish().map(|_| ()).map_err(wrapped)
    }

    fn lock_rows(&self) -> &'static str {
        " FOR UPDATE"
    }

    fn explain(&mut self, sql: &str) -> Result<String, ClinicError> {
        // The numbers of values do not matter for the plan of the few statements that are asked about.
        let sql = format!("EXPLAIN {}", (1..10).rev().fold(sql.to_owned(), |sql, number| sql.replace(&format!("${number}"), "1")));
        let rows = self.client.query(&sql, &[]).map_err(|error| self.wrapped(&error))?;
        Ok(rows.iter().filter_map(|row| row.try_get::<_, String>(0).ok()).collect::<Vec<_>>().join("\n"))
    }

    fn reconnect(&mut self) -> bool {
        match connect(&self.server) {
            Ok(client) => {
                self.client = client;
                self.ready.clear();
                true
            }
            Err(_) => false,
        }
    }

    fn backup(&mut self, _: &Path) -> Result<(), ClinicError> {
        Err(ClinicError::Refused {
            place: self.place.to_string(),
            cause: "a database on a server is backed up with PostgreSQL's own tools: pg_dump --schema=tidecount_clinic".to_owned(),
        })
    }

    fn tidy(&mut self) -> Result<(), ClinicError> {
        let tables = ["trial", "step", "event", "session", "routine", "condition", "day", "measure", "digest", "client"];
        self.client.batch_execute(&format!("VACUUM {}", tables.join(", "))).map_err(|error| self.wrapped(&error))
    }

    fn size_bytes(&mut self) -> Result<i64, ClinicError> {
        let sql = format!(
            "SELECT coalesce(sum(pg_total_relation_size(c.oid)), 0)::bigint FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace WHERE n.nspname = '{SCHEMA}' AND c.relkind = 'r'"
        );
        self.client.query_one(&sql, &[]).and_then(|row| row.try_get(0)).map_err(|error| self.wrapped(&error))
    }
}
