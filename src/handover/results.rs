//! What goes back to the clinician: practices, their journals as they stand in the record. No sound, no enrolled voice.

use super::error::HandoverError;
use super::goal::{self, HandedGoal};
use super::keys::{SecretKey, bytes_of};
use super::kind::Kind;
use super::names::client_name;
use super::seal::{Opened, seal};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

/// One part of a practice: from a start of the sample clock to its end or interruption.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandedPart {
    /// Local time of day, RFC 9557.
    pub started_at: String,
    /// The entries, byte for byte as they stand in the record.
    pub entries: Vec<Box<RawValue>>,
}

/// One practice.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandedSession {
    /// Its number in the home computer's record.
    pub number: i64,
    /// The package that was in force; none before the first.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub package: Option<String>,
    /// Local time of day, RFC 9557.
    pub started_at: String,
    /// When and how it ended; none where it was interrupted and may yet be gone on with.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ended_at: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub end_reason: Option<String>,
    pub routine_title: String,
    /// The routine as it was followed.
    pub routine_text: String,
    /// Name and version of the program that led it.
    pub software: String,
    pub parts: Vec<HandedPart>,
}

/// Everything that goes back.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Results {
    /// The package whose reply key seals them.
    pub package: String,
    /// The client's short name.
    pub client: String,
    pub made_at: Timestamp,
    pub sessions: Vec<HandedSession>,
    /// The client's goals with what was said of them at home; older versions refuse results that have any.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub goals: Vec<HandedGoal>,
}

impl Results {
    /// The sealed file.
    ///
    /// # Errors
    /// Too much for one file, or something that cannot be handed over.
    pub fn seal(&self, reply_key: &SecretKey) -> Result<String, HandoverError> {
        self.check()?;
        let content = serde_json::to_string_pretty(self).map_err(|error| HandoverError::Content(error.to_string()))?;
        let sealed = seal(Kind::Results, &(content + "\n"), reply_key);
        if sealed.len() > super::MAX_SEALED_BYTES { Err(HandoverError::TooLarge) } else { Ok(sealed) }
    }

    /// What stood under a seal that fits. Whether the entries are entries is for the record to say.
    ///
    /// # Errors
    /// It is not what results hold.
    pub fn read(opened: &Opened) -> Result<Self, HandoverError> {
        let results: Self = serde_json::from_str(&opened.content).map_err(|error| HandoverError::Content(error.to_string()))?;
        results.check().map(|()| results)
    }

    fn check(&self) -> Result<(), HandoverError> {
        client_name(&self.client)?;
        goal::check(&self.goals)?;
        let content = |text: &str| Err(HandoverError::Content(text.to_owned()));
        if bytes_of::<8>(&self.package).is_none() {
            return content("it names no package");
        }
        for session in &self.sessions {
            if session.ended_at.is_some() != session.end_reason.is_some() {
                return content("a practice has an end without a reason, or a reason without an end");
            }
            if session.parts.is_empty() {
                return content("a practice has no parts");
            }
        }
        Ok(())
    }
}

#[cfg(test)]
#[path = "tests/results.rs"]
mod tests;
