//! The spoken answer about sound, into its row.

use rusqlite::{Connection, params};

/// Notes the spoken answer to the question that stands: the first, or whether it is still right.
pub(super) fn answered(db: &Connection, client: &str, yes: bool, days: u32, at: &str) -> Result<(), rusqlite::Error> {
    const LAST: &str = "withdrawn_at IS NULL AND days = ?3 AND number = (SELECT max(s.number) FROM sound_consent s JOIN client c ON c.id = s.client WHERE c.name = ?1)";
    let first = db.execute(
        &format!("UPDATE sound_consent SET by_voice = ?2, by_voice_at = ?4 WHERE by_voice IS NULL AND {LAST}"),
        params![client, yes, days, at],
    )?;
    if first == 0 {
        let sql = if yes { "by_voice_at = ?4" } else { "withdrawn_at = ?4, withdrawn_by = 'voice'" };
        db.execute(&format!("UPDATE sound_consent SET {sql} WHERE by_voice = 1 AND ?2 = ?2 AND {LAST}"), params![client, yes, days, at])?;
    }
    Ok(())
}
