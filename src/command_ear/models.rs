//! Which files hear the commands: a recognition model, a second ear, both or neither.

use super::CommandEarError;
use super::embedding::{CLASSES, NETWORK, Said, is_whole, phrases_of, places, said_by_environment};
use std::path::{Path, PathBuf};

/// The folder of a language pack in which its second ear is.
pub const SECOND_EAR_FOLDER: &str = "second-ear";

/// Which second ear hears beside the recogniser, or alone where there is none.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum SecondEarFiles {
    /// The one that comes with the program; English.
    #[default]
    Usual,
    /// The one of another language, in this folder.
    Folder(PathBuf),
    /// None: there is no network for this language.
    None,
}

impl SecondEarFiles {
    /// The one that comes with the program for a language other than English: `models/second-ear/TAG`; or what the environment says.
    ///
    /// # Errors
    /// None of the places holds one; they are all named.
    pub fn of_language(tag: &str) -> Result<Self, CommandEarError> {
        Self::by_environment().map_or_else(|| Self::among(tag, &places(Some(tag))), Ok)
    }

    /// The one of a language pack, in its folder [`SECOND_EAR_FOLDER`], or what the environment says. A pack without a network has none, and keys lead.
    #[must_use]
    pub fn of_pack(pack: &Path) -> Self {
        Self::by_environment().unwrap_or_else(|| Self::in_pack(pack))
    }

    /// The phrases that it tells apart, where it is in a folder of its own; no other one is asked for them.
    ///
    /// # Errors
    /// The list of them cannot be read. The text names the file and what to do.
    pub fn phrases(&self) -> Result<Vec<String>, CommandEarError> {
        let Self::Folder(folder) = self else { return Ok(Vec::new()) };
        phrases_of(folder).map_err(|why| {
            let file = folder.join(CLASSES);
            CommandEarError(format!("{}: the second ear's list of phrases cannot be read: {why}; put it beside {NETWORK}", file.display()))
        })
    }

    fn by_environment() -> Option<Self> {
        match said_by_environment() {
            Said::Nothing => None,
            Said::LeaveOut => Some(Self::None),
            Said::Folder(folder) => Some(Self::Folder(folder)),
        }
    }

    fn among(tag: &str, places: &[PathBuf]) -> Result<Self, CommandEarError> {
        places.iter().find(|place| is_whole(place)).map(|place| Self::Folder(place.clone())).ok_or_else(|| {
            let list: Vec<String> = places.iter().map(|place| place.join(NETWORK).display().to_string()).collect();
            CommandEarError(format!(
                "there is no second ear for {tag:?} in {}; unpack the program's folder models/second-ear anew, or name a Vosk model with --model DIR",
                list.join(", ")
            ))
        })
    }

    fn in_pack(pack: &Path) -> Self {
        let folder = pack.join(SECOND_EAR_FOLDER);
        if is_whole(&folder) { Self::Folder(folder) } else { Self::None }
    }
}

/// What hears the commands.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Models {
    /// A folder in the Vosk layout; none where the language has no model: then no word is recognised, and commands come from the second ear, or
    /// from keys and pages.
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
        match (&self.vosk, &self.second_ear) {
            (Some(folder), _) | (None, SecondEarFiles::Folder(folder)) => folder.display().to_string(),
            (None, _) => "of no language".into(),
        }
    }

    /// Commands can be heard at all.
    #[must_use]
    pub fn hears(&self) -> bool {
        self.vosk.is_some() || self.second_ear != SecondEarFiles::None
    }

    /// Any word of the language can be heard, not only the phrases that a second ear has learnt.
    #[must_use]
    pub fn recognises(&self) -> bool {
        self.vosk.is_some()
    }
}

/// The English model or a user's own, with the usual second ear.
impl From<PathBuf> for Models {
    fn from(vosk: PathBuf) -> Self {
        Self { vosk: Some(vosk), second_ear: SecondEarFiles::Usual }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn with_network(folder: &Path) -> PathBuf {
        std::fs::create_dir_all(folder).unwrap();
        std::fs::write(folder.join(NETWORK), "").unwrap();
        folder.to_owned()
    }

    #[test]
    fn the_first_place_with_a_network_is_taken_and_a_missing_one_named_with_the_remedy() {
        let dir = tempfile::tempdir().unwrap();
        let places = [dir.path().join("a"), dir.path().join("b")];
        let error = SecondEarFiles::among("de", &places).unwrap_err().0;
        assert!(["\"de\"", NETWORK, "--model", "models/second-ear"].iter().all(|part| error.contains(part)), "{error}");
        assert!(places.iter().all(|place| error.contains(&place.display().to_string())), "{error}");
        let second = with_network(&places[1]);
        assert_eq!(SecondEarFiles::among("de", &places).unwrap(), SecondEarFiles::Folder(second));
    }

    #[test]
    fn a_pack_without_a_network_has_no_ear_and_one_with_it_tells_its_phrases() {
        let dir = tempfile::tempdir().unwrap();
        assert_eq!(SecondEarFiles::in_pack(dir.path()), SecondEarFiles::None);
        let folder = with_network(&dir.path().join(SECOND_EAR_FOLDER));
        let ear = SecondEarFiles::in_pack(dir.path());
        assert!(ear.phrases().unwrap_err().0.contains(CLASSES));
        std::fs::write(folder.join(CLASSES), "pare\nsí\n(other)\n").unwrap();
        assert_eq!(ear.phrases().unwrap(), ["pare", "sí"]);
    }

    #[test]
    fn either_ear_hears_commands_and_only_a_model_recognises_words() {
        let of = |vosk: Option<&str>, second_ear| Models { vosk: vosk.map(PathBuf::from), second_ear };
        let folder = || SecondEarFiles::Folder("x".into());
        let said = |models: Models| (models.hears(), models.recognises());
        assert_eq!(said(of(Some("m"), SecondEarFiles::None)), (true, true));
        assert_eq!(said(of(Some("m"), folder())), (true, true));
        assert_eq!(said(of(None, folder())), (true, false));
        assert_eq!(said(Models::none()), (false, false));
    }
}
