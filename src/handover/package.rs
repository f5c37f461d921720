//! What a client package holds.

use super::error::HandoverError;
use super::goal::{self, HandedGoal};
use super::keys::{Fingerprint, SecretKey};
use super::kind::Kind;
use super::names::{client_name, file_name};
use super::seal::{Opened, seal};
use super::settings::Settings;
use jiff::Timestamp;
use routine::find;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// Most routines and word packs together.
pub const MAX_TEXT_FILES: usize = 60;
/// Longest note, characters.
const MAX_NOTE_CHARS: usize = 2000;

/// One file with its whole text.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TextFile {
    pub name: String,
    pub text: String,
}

/// An exercise that needs agreement, and a clinician's yes to it for this client.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AgreedExercise {
    /// The exercise's id.
    pub exercise: String,
    pub agreed_at: Timestamp,
    /// Fingerprint of the clinician's key.
    pub by: String,
}

/// Everything that goes to the home computer.
#[derive(Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Package {
    /// 16 hexadecimal digits, by chance.
    pub id: String,
    pub made_at: Timestamp,
    /// The client's short name on both computers.
    pub client: String,
    /// A word to the household.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    pub settings: Settings,
    pub routines: Vec<TextFile>,
    #[serde(default)]
    pub packs: Vec<TextFile>,
    #[serde(default)]
    pub agreed: Vec<AgreedExercise>,
    /// Older versions refuse a package that has any.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub goals: Vec<HandedGoal>,
    /// The secret key with which the home computer seals its results; 64 hexadecimal digits.
    reply_key: String,
}

/// The reply key is secret.
impl std::fmt::Debug for Package {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Package {} for {:?}", self.id, self.client)
    }
}

impl Package {
    /// A package without routines yet.
    #[must_use]
    pub fn new(id: &str, made_at: Timestamp, client: &str, reply_key: &SecretKey) -> Self {
        Self {
            id: id.to_owned(),
            made_at,
            client: client.to_owned(),
            note: None,
            settings: Settings::default(),
            routines: Vec::new(),
            packs: Vec::new(),
            agreed: Vec::new(),
            goals: Vec::new(),
            reply_key: reply_key.to_hex(),
        }
    }

    /// The sealed file.
    ///
    /// # Errors
    /// Something in it cannot be handed over.
    pub fn seal(&self, key: &SecretKey) -> Result<String, HandoverError> {
        self.check(key.public().fingerprint())?;
        let content = serde_json::to_string_pretty(self).map_err(|error| HandoverError::Content(error.to_string()))?;
        let sealed = seal(Kind::Package, &(content + "\n"), key);
        if sealed.len() > super::MAX_SEALED_BYTES { Err(HandoverError::TooLarge) } else { Ok(sealed) }
    }

    /// What stood under a seal that fits.
    ///
    /// # Errors
    /// It is not what a package holds; a name leads elsewhere; an agreement is of somebody else.
    pub fn read(opened: &Opened) -> Result<Self, HandoverError> {
        let package: Self = serde_json::from_str(&opened.content).map_err(|error| HandoverError::Content(error.to_string()))?;
        package.check(opened.by.fingerprint())?;
        Ok(package)
    }

    /// The key with which results are sealed.
    ///
    /// # Errors
    /// It is no key.
    pub fn reply_key(&self) -> Result<SecretKey, HandoverError> {
        SecretKey::from_hex(&self.reply_key).ok_or_else(|| HandoverError::Content("its reply key is no key".to_owned()))
    }

    fn check(&self, by: Fingerprint) -> Result<(), HandoverError> {
        let content = |text: &str| Err(HandoverError::Content(text.to_owned()));
        if super::keys::bytes_of::<8>(&self.id).is_none() {
            return content("its number is not 16 hexadecimal digits");
        }
        client_name(&self.client)?;
        self.settings.check()?;
        goal::check(&self.goals)?;
        self.reply_key()?;
        if let Some(note) = &self.note
            && (note.chars().count() > MAX_NOTE_CHARS || note.chars().any(|c| c.is_control() && c != '\n'))
        {
            return content("its note is longer than 2000 characters or holds characters that cannot be shown");
        }
        if self.routines.is_empty() {
            return content("it holds no routine");
        }
        if self.routines.len() + self.packs.len() > MAX_TEXT_FILES {
            return content("it holds more than 60 files");
        }
        let mut names = BTreeSet::new();
        for file in self.routines.iter().chain(&self.packs) {
            file_name(&file.name)?;
            if !names.insert(file.name.to_lowercase()) {
                return Err(HandoverError::Content(format!("two of its files are called {:?}", file.name)));
            }
        }
        let by = by.to_string();
        for agreed in &self.agreed {
            if agreed.by != by {
                return content("an agreement in it was given with another key than the one that sealed it");
            }
            if !find(&agreed.exercise).is_some_and(|entry| entry.needs_agreement) {
                return Err(HandoverError::Content(format!("it agrees to {:?}, which is no exercise that needs it", agreed.exercise)));
            }
        }
        Ok(())
    }
}

#[cfg(test)]
#[path = "tests/package.rs"]
mod tests;
