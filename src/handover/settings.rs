//! What a clinician sets for a client besides the routines.

use super::error::HandoverError;
use serde::{Deserialize, Serialize};

/// The file in a taken package that holds the settings.
pub(super) const FILE_NAME: &str = "settings.toml";

/// Settings of one client. What is left out is as usual.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Settings {
    /// The voice: `espeak-ng`, `espeak-ng:VARIANT`, `piper` or `system`. Never a path.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub voice: Option<String>,
    /// The number is told after each n-th trial, whatever the routines say; 0: only when asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub feedback_every: Option<u32>,
    /// How the household speaks of the client.
    #[serde(default, skip_serializing_if = "Household::is_empty")]
    pub household: Household,
}

/// How the household speaks of a client.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Household {
    /// "he", "she" or "they".
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pronoun: Option<String>,
    /// What the client is called aloud, "Grandpa".
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub call_names: Vec<String>,
}

impl Household {
    fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// Guards against slips, no source.
const MAX_FEEDBACK_EVERY: u32 = 100;
const MAX_CALL_NAMES: usize = 5;

impl Settings {
    /// # Errors
    /// A value that cannot be used, or that could lead to a file of the other computer.
    pub fn check(&self) -> Result<(), HandoverError> {
        let content = |text: String| Err(HandoverError::Content(text));
        if let Some(voice) = &self.voice {
            let variant = voice.strip_prefix("espeak-ng:");
            let plain =
                |text: &str| (1..=20).contains(&text.len()) && text.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '+' | '-'));
            if !(matches!(voice.as_str(), "espeak-ng" | "piper" | "system")
                || variant.is_some_and(|text| plain(text) && !text.starts_with('-')))
            {
                return content(format!("{voice:?} is not one of the voices `espeak-ng`, `espeak-ng:VARIANT`, `piper` and `system`"));
            }
        }
        if self.feedback_every.is_some_and(|every| every > MAX_FEEDBACK_EVERY) {
            return content(format!("feedback after every n-th trial can be 0 to {MAX_FEEDBACK_EVERY}"));
        }
        if let Some(pronoun) = self.household.pronoun.as_deref().filter(|pronoun| !matches!(*pronoun, "he" | "she" | "they")) {
            return content(format!("the pronoun {pronoun:?} is none of `he`, `she` and `they`"));
        }
        let names = &self.household.call_names;
        let speakable = |name: &String| {
            name.chars().any(char::is_alphabetic)
                && name.chars().count() <= 40
                && name.chars().all(|c| c.is_alphanumeric() || matches!(c, ' ' | '-' | '\'' | '.'))
        };
        match names.iter().find(|name| !speakable(name)) {
            Some(name) => content(format!("the call name {name:?} cannot be said: use up to 40 letters")),
            None if names.len() > MAX_CALL_NAMES => content(format!("there are more than {MAX_CALL_NAMES} call names")),
            None => Ok(()),
        }
    }

    /// The text of `settings.toml`.
    #[must_use]
    pub fn to_toml(&self) -> String {
        let head = "# Set by the clinician; comes anew with each package.\n";
        format!("{head}{}", toml::to_string(self).unwrap_or_default())
    }

    /// Reads `settings.toml`.
    ///
    /// # Errors
    /// It is not what a package brings.
    pub fn from_toml(text: &str) -> Result<Self, HandoverError> {
        let settings: Self = toml::from_str(text).map_err(|error| HandoverError::Content(error.message().to_owned()))?;
        settings.check().map(|()| settings)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn with_voice(voice: &str) -> Settings {
        Settings { voice: Some(voice.to_owned()), ..Settings::default() }
    }

    #[test]
    fn settings_go_through_their_file() {
        let household = Household { pronoun: Some("he".into()), call_names: vec!["Grandpa".into(), "Opa Jo".into()] };
        for settings in [Settings::default(), Settings { feedback_every: Some(0), household, ..with_voice("espeak-ng:en-gb+f3") }] {
            assert_eq!(Settings::from_toml(&settings.to_toml()), Ok(settings));
        }
    }

    #[test]
    fn a_voice_is_a_name_and_never_a_path() {
        for voice in ["espeak-ng", "espeak-ng:en-us", "piper", "system"] {
            assert_eq!(with_voice(voice).check(), Ok(()), "{voice}");
        }
        for voice in ["", "piper:/tmp/x.onnx", "espeak-ng:", "espeak-ng:../x", "espeak-ng:-w", "espeak-ng:a b", "sh"] {
            assert!(with_voice(voice).check().is_err(), "{voice}");
        }
    }

    #[test]
    fn what_cannot_be_said_or_used_is_refused() {
        let named = |name: &str| Settings { household: Household { pronoun: None, call_names: vec![name.into()] }, ..Settings::default() };
        for bad in
            [named(""), named("a\nb"), named("…"), named(&"a".repeat(41)), Settings { feedback_every: Some(101), ..Settings::default() }]
        {
            assert!(bad.check().is_err(), "{bad:?}");
        }
        assert!(Settings::from_toml("voice = 3").is_err() && Settings::from_toml("colour = \"red\"").is_err());
    }
}
