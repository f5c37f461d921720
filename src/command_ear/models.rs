//! Which files hear the commands: a recognition model, a second ear, both or neither.

use std::path::PathBuf;

/// Which second ear hears beside the recogniser.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum SecondEarFiles {
    /// The one that comes with the program; English.
    #[default]
    Usual,
    /// None: there is no network for this language.
    None,
}

/// What hears the commands.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Models {
    /// A folder in the Vosk layout; none where the language has no model: then no word is recognised, and commands come from keys and pages.
    pub vosk: Option<PathBuf>,
    pub second_ear: SecondEarFiles,
}

impl Models {
    /// Nothing that hears commands.
    #[must_use]
    pub fn none() -> Self {
        Self { vosk: None, second_ear: SecondEarFiles::None }
    }

    /// The model as errors name it.
    #[must_use]
    pub(crate) fn shown(&self) -> String {
        self.vosk.as_deref().map_or_else(|| "of no language".into(), |folder| folder.display().to_string())
    }

    /// Commands can be heard at all.
    #[must_use]
    pub fn hears(&self) -> bool {
        self.vosk.is_some()
    }
}

/// The English model or a user's own, with the usual second ear.
impl From<PathBuf> for Models {
    fn from(vosk: PathBuf) -> Self {
        Self { vosk: Some(vosk), second_ear: SecondEarFiles::Usual }
    }
}
