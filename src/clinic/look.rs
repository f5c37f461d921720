//! A clinician looked at a client; a client is forgotten.

use super::engine::{Engine, list, one};
use super::error::ClinicError;
use super::refresh;
use super::store::Clinic;
use super::typed::Columns;
use super::value::values;
use super::view::SeenEvent;
use jiff::ZonedDateTime;

impl Clinic {
    /// Notes that somebody looked at this client now; gives what has been seen thereby.
    ///
    /// # Errors
    /// There is no such client, or the database refuses.
    pub fn seen(&mut self, client: i64, now: &ZonedDateTime, note: Option<&str>) -> Result<Vec<SeenEvent>, ClinicError> {
        self.change(|engine| {
            refresh::lock(engine, client)?;
            let sql = format!(
                "SELECT {} FROM event e WHERE e.client = $1 AND e.look IS NULL ORDER BY e.day, e.session, e.seq",
                SeenEvent::of("e")
            );
            let seen = list(engine, &sql, &values![client], SeenEvent::read)?;
            let look = one(
                engine,
                "INSERT INTO look (client, at, note) VALUES ($1, $2, $3) RETURNING id",
                &values![client, now.to_string(), note],
                |row| row.int(0),
            )?;
            engine.run("UPDATE event SET look = $2 WHERE client = $1 AND look IS NULL", &values![client, look])?;
            refresh::refresh(engine, client, refresh::News::Seen)?;
            Ok(seen)
        })
    }

    /// Removes all that is kept of a client. Their packages are remembered by chance numbers alone, so that neither they nor
    /// results sealed for them come back.
    ///
    /// # Errors
    /// There is no such client, or the database refuses; then all is as before.
    pub fn forget(&mut self, client: i64) -> Result<(), ClinicError> {
        self.change(|engine| {
            refresh::lock(engine, client)?;
            forget(engine, client)
        })?;
        self.engine.tidy()
    }
}

fn forget(engine: &mut dyn Engine, client: i64) -> Result<(), ClinicError> {
    engine.run("INSERT INTO forgotten (package, reply_key) SELECT id, reply_key FROM package WHERE client = $1", &values![client])?;
    for sql in [
        "DELETE FROM trial WHERE session IN (SELECT id FROM session WHERE client = $1)",
        "DELETE FROM step WHERE session IN (SELECT id FROM session WHERE client = $1)",
        "DELETE FROM event WHERE client = $1",
        "DELETE FROM look WHERE client = $1",
        "DELETE FROM session WHERE client = $1",
        "DELETE FROM routine WHERE client = $1",
        "DELETE FROM condition WHERE client = $1",
        "DELETE FROM day WHERE client = $1",
        "DELETE FROM measure WHERE client = $1",
        "DELETE FROM digest WHERE client = $1",
        "DELETE FROM arrival WHERE client = $1",
        "DELETE FROM package WHERE client = $1",
        "DELETE FROM client WHERE id = $1",
    ] {
        engine.run(sql, &values![client])?;
    }
    Ok(())
}
