//! A language pack: everything that depends on the language, in one folder. Three are built in; others are read from a folder.

use super::WordsError;
use serde::Deserialize;
use std::path::{Path, PathBuf};
use std::sync::{Arc, LazyLock, OnceLock};

#[derive(rust_embed::RustEmbed)]
#[folder = "words/en"]
struct English;

#[derive(rust_embed::RustEmbed)]
#[folder = "words/de"]
struct German;

#[derive(rust_embed::RustEmbed)]
#[folder = "words/es"]
struct Spanish;

/// What a pack says of itself.
pub const PACK_FILE: &str = "pack.toml";

/// The folder of a pack in which its word games are.
pub const GAMES_FOLDER: &str = "games";

/// A file of a pack is words, not a book: larger ones are refused, bytes.
const MAX_FILE_BYTES: u64 = 1_000_000;

/// Which way the language is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Direction {
    Ltr,
    Rtl,
}

impl Direction {
    /// As HTML has it in `dir`.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Ltr => "ltr",
            Self::Rtl => "rtl",
        }
    }
}

/// What hears the commands of a language where the user names no model.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CommandsBy {
    /// The recognition model of the program, `models/TAG`, with the second ear beside it.
    Vosk,
    /// The second ear of the language alone: `models/second-ear/TAG` of the program, or the folder `second-ear` of a pack.
    SecondEar,
    /// Nothing: keys and pages give the commands.
    None,
}

/// `pack.toml`.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
struct PackFile {
    /// BCP 47: "de", "pt-BR".
    tag: String,
    /// As its speakers call it: "Deutsch".
    name: String,
    #[serde(default = "ltr")]
    direction: Direction,
    /// The mark between whole and part of a number.
    #[serde(default = "point")]
    decimal: char,
    /// Nouns begin with a capital, so that a sentence in the midst of another keeps its first letter.
    #[serde(default)]
    capital_nouns: bool,
    /// Voices of espeak-ng, the best first.
    voices: Vec<String>,
    /// How the names of Piper's voices of this language begin.
    #[serde(default)]
    piper: Option<String>,
    #[serde(default = "by_nothing")]
    commands: CommandsBy,
}

fn ltr() -> Direction {
    Direction::Ltr
}

fn point() -> char {
    '.'
}

fn by_nothing() -> CommandsBy {
    CommandsBy::None
}

/// A language that can be spoken, shown and printed.
#[derive(Debug, PartialEq, Eq)]
pub struct Language {
    /// BCP 47: "de".
    pub tag: String,
    /// As its speakers call it.
    pub name: String,
    pub direction: Direction,
    /// The mark between whole and part of a number, `.` or `,`.
    pub decimal: char,
    /// Nouns begin with a capital.
    pub capital_nouns: bool,
    /// Voices of espeak-ng, the best first.
    pub voices: Vec<String>,
    /// How the names of Piper's voices of this language begin; none where there are none.
    pub piper: Option<String>,
    pub commands: CommandsBy,
    /// Each `*.ftl` of the folder: name and text, by name.
    pub files: Vec<(String, String)>,
    /// The folder that it was read from; none for a language that is built in.
    pub folder: Option<PathBuf>,
    /// Each `games/*.toml` of the folder, a word pack: name without its ending and text, by name.
    pub games: Vec<(String, String)>,
}

static BUILT_IN: LazyLock<Result<Vec<Arc<Language>>, WordsError>> = LazyLock::new(|| {
    let all = [embedded::<English>("en"), embedded::<German>("de"), embedded::<Spanish>("es")];
    all.into_iter().map(|language| language.map(Arc::new)).collect()
});

static USUAL: OnceLock<Arc<Language>> = OnceLock::new();

fn embedded<Folder: rust_embed::RustEmbed>(folder: &str) -> Result<Language, WordsError> {
    let text = |name: &str| Folder::get(name).map(|file| String::from_utf8_lossy(&file.data).into_owned());
    let about = text(PACK_FILE).ok_or_else(|| no_pack_file(&format!("words/{folder}")))?;
    let files = Folder::iter().filter(|name| name.ends_with(".ftl")).filter_map(|name| Some((name.to_string(), text(&name)?)));
    let games = Folder::iter().filter_map(|name| Some((name.strip_prefix("games/")?.strip_suffix(".toml")?.to_owned(), text(&name)?)));
    Language::of(&format!("words/{folder}/{PACK_FILE}"), &about, files.collect()).map(|language| language.with_games(games.collect()))
}

fn no_pack_file(folder: &str) -> WordsError {
    WordsError::NoPack {
        file: format!("{folder}/{PACK_FILE}"),
        line: 1,
        why: "there is no such file; write one as docs/languages.md shows".into(),
    }
}

impl Language {
    /// The languages that come with the program, English first.
    ///
    /// # Errors
    /// A pack that is built in is damaged.
    pub fn built_in() -> Result<&'static [Arc<Self>], WordsError> {
        BUILT_IN.as_ref().map(Vec::as_slice).map_err(Clone::clone)
    }

    /// The built-in language of this tag. "de-AT" finds "de".
    ///
    /// # Errors
    /// There is none; the text names those there are.
    pub fn find(tag: &str) -> Result<Arc<Self>, WordsError> {
        let all = Self::built_in()?;
        let plain = tag.to_lowercase().replace('_', "-");
        let main = plain.split('-').next().unwrap_or_default();
        let exact = all.iter().find(|language| language.tag.to_lowercase() == plain);
        exact.or_else(|| all.iter().find(|language| language.tag == main)).cloned().ok_or_else(|| WordsError::NoLanguage {
            tag: tag.escape_debug().to_string(),
            there_are: all.iter().map(|language| format!("{} ({})", language.tag, language.name)).collect::<Vec<_>>().join(", "),
        })
    }

    /// Reads a pack from its folder. What its words lack is found by [`super::check::faults`], not here.
    ///
    /// # Errors
    /// Folder or `pack.toml` cannot be read, or a line of it is none it may have.
    pub fn open(folder: &Path) -> Result<Self, WordsError> {
        let shown = folder.display().to_string();
        let unreadable = |file: &str, why: &dyn std::fmt::Display| WordsError::NoPack {
            file: file.to_owned(),
            line: 1,
            why: format!("cannot be read: {why}; give the folder of a language pack, as docs/languages.md shows"),
        };
        let read = |path: &Path| -> Result<String, WordsError> {
            let name = path.display().to_string();
            let size = std::fs::metadata(path).map_err(|why| unreadable(&name, &why))?.len();
            if size > MAX_FILE_BYTES {
                return Err(unreadable(&name, &format!("it has more than {MAX_FILE_BYTES} bytes")));
            }
            std::fs::read_to_string(path).map_err(|why| unreadable(&name, &why))
        };
        let about = folder.join(PACK_FILE);
        if folder.is_dir() && !about.exists() {
            return Err(no_pack_file(&shown));
        }
        let about_text = read(&about)?;
        let all = |folder: &Path, ending: &str| -> Result<Vec<(String, String)>, WordsError> {
            let shown = folder.display().to_string();
            let mut found = Vec::new();
            for entry in std::fs::read_dir(folder).map_err(|why| unreadable(&shown, &why))? {
                let path = entry.map_err(|why| unreadable(&shown, &why))?.path();
                if path.extension().is_some_and(|its| its == ending) {
                    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
                    found.push((name, read(&path)?));
                }
            }
            Ok(found)
        };
        let games = folder.join(GAMES_FOLDER);
        let games = if games.exists() { all(&games, "toml")? } else { Vec::new() };
        let games = games.into_iter().map(|(name, text)| (name.trim_end_matches(".toml").to_owned(), text)).collect();
        let language = Self::of(&about.display().to_string(), &about_text, all(folder, "ftl")?)?.with_games(games);
        Ok(Self { folder: Some(folder.to_owned()), ..language })
    }

    fn with_games(mut self, mut games: Vec<(String, String)>) -> Self {
        games.sort();
        self.games = games;
        self
    }

    /// A pack from the text of its `pack.toml` and its other files.
    pub(super) fn of(name: &str, about: &str, mut files: Vec<(String, String)>) -> Result<Self, WordsError> {
        let fault = |line: usize, why: String| WordsError::NoPack { file: name.to_owned(), line, why };
        let pack: PackFile = toml::from_str(about).map_err(|why| {
            let line = why.span().map_or(1, |span| 1 + about.bytes().take(span.start).filter(|&byte| byte == b'\n').count());
            fault(line, format!("{}; see docs/languages.md", why.message().split_whitespace().collect::<Vec<_>>().join(" ")))
        })?;
        let line_of = |key: &str| 1 + about.lines().position(|line| line.trim_start().starts_with(key)).unwrap_or(0);
        if pack.tag.parse::<unic_langid::LanguageIdentifier>().is_err() {
            return Err(fault(line_of("tag"), format!("{:?} is no tag of a language; write one as \"de\" or \"pt-BR\"", pack.tag)));
        }
        if !matches!(pack.decimal, '.' | ',' | '\u{66b}') {
            return Err(fault(line_of("decimal"), "the decimal mark is \".\" or \",\" (or \"\u{66b}\")".into()));
        }
        if pack.voices.is_empty() {
            return Err(fault(line_of("voices"), "name at least one voice; `espeak-ng --voices` lists those there are".into()));
        }
        files.sort();
        let PackFile { tag, name, direction, decimal, capital_nouns, voices, piper, commands } = pack;
        Ok(Self { tag, name, direction, decimal, capital_nouns, voices, piper, commands, files, folder: None, games: Vec::new() })
    }

    /// Makes this the language of whatever names none; for the beginning of the program, once. A second call changes nothing.
    pub fn choose(language: Arc<Self>) {
        let _ = USUAL.set(language);
    }

    /// The language that was chosen for the whole program; none where nobody chose.
    #[must_use]
    pub fn chosen() -> Option<Arc<Self>> {
        USUAL.get().cloned()
    }

    /// The chosen language; else the one of this tag, where one is given; else English.
    ///
    /// # Errors
    /// There is no such language.
    pub fn of_tag(tag: Option<&str>) -> Result<Arc<Self>, WordsError> {
        match (Self::chosen(), tag) {
            (Some(chosen), _) => Ok(chosen),
            (None, tag) => Self::find(tag.unwrap_or("en")),
        }
    }
}
