//! Whether the sound of a client's practices may be kept: only where the page and the client's voice both say so.

use super::clients::client_row;
use super::error::RecordError;
use super::sound_answer::answered;
use super::store::Store;
use super::time;
use jiff::{ToSpan, ZonedDateTime};
use rusqlite::{Connection, OptionalExtension, params};

/// How long sound is kept where nobody says otherwise, days. Common practice, no source.
pub const SOUND_DAYS: u32 = 30;
/// The longest that can be asked for, days.
pub const MOST_SOUND_DAYS: u32 = 3650;

/// The voice is asked again whether sound may still be kept after so many days. Common practice, no source.
const ASKED_AGAIN_DAYS: i64 = 30;

/// What is to be asked aloud.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SoundQuestion {
    pub days: u32,
    /// The voice said yes before.
    pub again: bool,
}

/// How a client's wish stands. Times of day are RFC 9557 texts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SoundConsent {
    /// Never asked for: no sound is kept.
    Never,
    /// Asked for on the page; the voice is asked at the begin of the next practice. No sound is kept yet.
    Asked { days: u32, by_page_at: String },
    /// The voice said no; it is asked again when the page asks anew. No sound is kept.
    Refused { days: u32, by_page_at: String, by_voice_at: String },
    /// Both said yes: sound is kept for so many days.
    Given { days: u32, by_page_at: String, by_voice_at: String },
    /// Taken back: no sound is kept.
    Withdrawn { at: String, by: SoundSide },
}

/// Who said it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SoundSide {
    Page,
    Voice,
    /// `tidecount record sound off`.
    Command,
}

impl SoundSide {
    /// The word kept in the record.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Page => "page",
            Self::Voice => "voice",
            Self::Command => "command",
        }
    }
}

impl Store {
    /// How this client's wish stands.
    ///
    /// # Errors
    /// The database refuses.
    pub fn sound_consent(&self, client: &str) -> Result<SoundConsent, RecordError> {
        self.read(|db| state(db, client))
    }

    /// The page asks that the sound of this client's practices be kept for so many days (1 to 3650). Where just that is allowed already,
    /// nothing changes; otherwise the voice has to say yes, again where it had said it to another length.
    ///
    /// # Errors
    /// The number of days is out of range, or the database refuses.
    pub fn sound_wish(&mut self, client: &str, days: u32, now: &ZonedDateTime) -> Result<SoundConsent, RecordError> {
        if !(1..=MOST_SOUND_DAYS).contains(&days) {
            return Err(RecordError::SoundDays { days });
        }
        self.change(|tx| {
            let stands = matches!(state(tx, client)?, SoundConsent::Given { days: known, .. } | SoundConsent::Asked { days: known, .. } if known == days);
            if !stands {
                let id = client_row(tx, client)?;
                tx.execute("INSERT INTO sound_consent (client, days, by_page_at) VALUES (?1, ?2, ?3)", params![id, days, now.to_string()])?;
            }
            state(tx, client)
        })
    }

    /// What the voice is to be asked at the begin of a practice: whether sound may be kept, where the page asks and the voice has not
    /// answered; whether it still may, where the voice's yes is older than thirty days. That is also how the voice takes it back.
    ///
    /// # Errors
    /// The database refuses.
    pub fn sound_to_ask(&self, client: &str, now: &ZonedDateTime) -> Result<Option<SoundQuestion>, RecordError> {
        Ok(match self.sound_consent(client)? {
            SoundConsent::Asked { days, .. } => Some(SoundQuestion { days, again: false }),
            SoundConsent::Given { days, by_voice_at, .. } => {
                let stale =
                    time::read(&by_voice_at).and_then(|said| said.checked_add(ASKED_AGAIN_DAYS.days()).ok()).is_none_or(|end| end <= *now);
                stale.then_some(SoundQuestion { days, again: true })
            }
            _ => None,
        })
    }

    /// For how many days sound may be kept; none where it may not be kept at all.
    ///
    /// # Errors
    /// The database refuses.
    pub fn sound_allowed(&self, client: &str) -> Result<Option<u32>, RecordError> {
        Ok(match self.sound_consent(client)? {
            SoundConsent::Given { days, .. } => Some(days),
            _ => None,
        })
    }

    /// The client's spoken answer. A yes to another number of days than the page asks for now is no yes. The journal of a live practice does
    /// this by itself with [`model::Fact::SoundConsent`].
    ///
    /// # Errors
    /// The database refuses.
    pub fn sound_consent_by_voice(&mut self, client: &str, yes: bool, days: u32, now: &ZonedDateTime) -> Result<SoundConsent, RecordError> {
        self.change(|tx| {
            answered(tx, client, yes, days, &now.to_string())?;
            state(tx, client)
        })
    }

    /// Takes the consent back: from now on no sound is kept. What is stored goes when it expires, or at once with
    /// [`Store::delete_sounds`].
    ///
    /// # Errors
    /// The database refuses.
    pub fn withdraw_sound(&mut self, client: &str, by: SoundSide, now: &ZonedDateTime) -> Result<SoundConsent, RecordError> {
        self.change(|tx| {
            tx.execute(
                "UPDATE sound_consent SET withdrawn_at = ?2, withdrawn_by = ?3 WHERE withdrawn_at IS NULL
                 AND number = (SELECT max(s.number) FROM sound_consent s JOIN client c ON c.id = s.client WHERE c.name = ?1)",
                params![client, now.to_string(), by.as_str()],
            )?;
            state(tx, client)
        })
    }
}

type Row = (u32, String, Option<(String, bool)>, Option<(String, String)>);

fn state(db: &Connection, client: &str) -> Result<SoundConsent, rusqlite::Error> {
    let row: Option<Row> = db
        .query_row(
            "SELECT s.days, s.by_page_at, s.by_voice_at, s.by_voice, s.withdrawn_at, s.withdrawn_by FROM sound_consent s
             JOIN client c ON c.id = s.client WHERE c.name = ?1 ORDER BY s.number DESC LIMIT 1",
            [client],
            |row| {
                let (voice_at, voice): (Option<String>, Option<bool>) = (row.get(2)?, row.get(3)?);
                let (gone_at, gone_by): (Option<String>, Option<String>) = (row.get(4)?, row.get(5)?);
                Ok((row.get(0)?, row.get(1)?, voice_at.zip(voice), gone_at.zip(gone_by)))
            },
        )
        .optional()?;
    Ok(match row {
        None => SoundConsent::Never,
        Some((.., Some((at, by)))) => {
            let by = [SoundSide::Page, SoundSide::Voice].into_iter().find(|side| side.as_str() == by).unwrap_or(SoundSide::Command);
            SoundConsent::Withdrawn { at, by }
        }
        Some((days, by_page_at, None, None)) => SoundConsent::Asked { days, by_page_at },
        Some((days, by_page_at, Some((by_voice_at, true)), None)) => SoundConsent::Given { days, by_page_at, by_voice_at },
        Some((days, by_page_at, Some((by_voice_at, false)), None)) => SoundConsent::Refused { days, by_page_at, by_voice_at },
    })
}

#[cfg(test)]
#[path = "tests/sound_consent.rs"]
mod tests;
