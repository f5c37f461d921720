//! The words a model knows, and the check of a grammar against them.

use super::decide::{UNKNOWN, is_open};
use super::{CommandEarError, Grammar, Models};
use std::collections::HashSet;
use std::path::{Path, PathBuf};

/// A model folder in the Vosk layout, found complete, and its words.
#[derive(Debug, Clone)]
pub struct Lexicon {
    folder: PathBuf,
    /// None where the model has no list of its own: then only the recogniser can tell.
    words: Option<HashSet<String>>,
}

impl Lexicon {
    /// Looks at the model folder and reads `graph/words.txt` (or `words.txt` in the flat layout), one word and its
    /// number on a line.
    ///
    /// # Errors
    /// The folder or a needed file is missing, cannot be read, or the model's grammar cannot be changed at run time. The text
    /// names the folder, what is wrong and what to do.
    pub fn open(model: &Path) -> Result<Self, CommandEarError> {
        const REMEDY: &str = "give the folder of a complete Vosk model, such as models/en of this program";
        let shown = model.display();
        if !model.is_dir() {
            return Err(CommandEarError(format!("{shown}: there is no such folder with a recognition model; {REMEDY}")));
        }
        let any = |paths: &[&str]| paths.iter().map(|p| model.join(p)).find(|p| p.is_file());
        if let Some(fixed) = any(&["graph/HCLG.fst", "HCLG.fst"]) {
            return Err(CommandEarError(format!(
                "{}: this model has a fixed grammar, so it cannot listen for commands alone; use a model with HCLr.fst and Gr.fst (a \"small\" one)",
                fixed.display()
            )));
        }
        for needed in [
            &["am/final.mdl", "final.mdl"],
            &["conf/mfcc.conf", "mfcc.conf"],
            &["graph/HCLr.fst", "HCLr.fst"],
            &["graph/Gr.fst", "Gr.fst"],
            &["graph/disambig_tid.int", "disambig_tid.int"],
        ] {
            if any(needed).is_none() {
                return Err(CommandEarError(format!("{shown}: the recognition model lacks the file {}; {REMEDY}", needed[0])));
            }
        }
        let words = match any(&["graph/words.txt", "words.txt"]) {
            None => None,
            Some(list) => {
                let text = std::fs::read_to_string(&list)
                    .map_err(|e| CommandEarError(format!("{}: the model's word list cannot be read: {e}; {REMEDY}", list.display())))?;
                let words: HashSet<String> = text.lines().filter_map(|l| l.split_whitespace().next()).map(str::to_owned).collect();
                if !words.contains(UNKNOWN) {
                    return Err(CommandEarError(format!(
                        "{}: the model has no word {UNKNOWN}, so it would take any sound for a command; use a model that has one",
                        list.display()
                    )));
                }
                Some(words)
            }
        };
        Ok(Self { folder: model.to_owned(), words })
    }

    /// The words of a model; where there is none, every word will do, for none is recognised.
    ///
    /// # Errors
    /// As [`Lexicon::open`].
    pub fn of(models: &Models) -> Result<Self, CommandEarError> {
        models.vosk.as_deref().map_or_else(|| Ok(Self { folder: PathBuf::new(), words: None }), Self::open)
    }

    /// The model folder.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Whether the word can be recognised; None where the model has no word list and only the recogniser can tell.
    #[must_use]
    pub fn knows(&self, word: &str) -> Option<bool> {
        self.words.as_ref().map(|words| is_plain(word) && words.contains(word))
    }

    /// Checks every wording of a grammar: lower-case words parted by single spaces, and all of them in the lexicon, where there is a list.
    ///
    /// # Errors
    /// The first wording that cannot be listened for; the text names choice, wording, words and remedy.
    pub fn validate(&self, grammar: &Grammar) -> Result<(), CommandEarError> {
        for choice in &grammar.choices {
            if choice.wordings.is_empty() {
                return Err(CommandEarError(format!("command {:?}: it has no wording; give at least one", choice.tag)));
            }
            for wording in &choice.wordings {
                check_shape(&choice.tag, wording)?;
                let unknown: Vec<&str> = wording.split(' ').filter(|w| *w != UNKNOWN && self.knows(w) == Some(false)).collect();
                if !unknown.is_empty() {
                    return Err(unknown_words(&choice.tag, wording, &unknown));
                }
            }
        }
        Ok(())
    }
}

/// The error for words that the model does not know.
pub(crate) fn unknown_words(tag: &str, wording: &str, unknown: &[&str]) -> CommandEarError {
    let list = unknown.iter().map(|w| format!("{w:?}")).collect::<Vec<_>>().join(", ");
    CommandEarError(format!(
        "command {tag:?}: in the wording {wording:?} the recogniser does not know {list}; use everyday words of the model's language, numbers spelled out"
    ))
}

/// Letters and apostrophes: never a symbol of the model, a quote or a bracket.
fn is_plain(word: &str) -> bool {
    word.chars().all(|c| c == '\'' || (c.is_alphabetic() && !c.is_uppercase())) && word.chars().any(char::is_alphabetic)
}

fn check_shape(tag: &str, wording: &str) -> Result<(), CommandEarError> {
    let wrong = |what: &str| Err(CommandEarError(format!("command {tag:?}: the wording {wording:?} {what}")));
    if wording.trim().is_empty() {
        return wrong("is empty; write what is to be said");
    }
    // Behind a beginning of at least two words, which is no other speech by chance.
    let open = wording.strip_suffix(UNKNOWN).filter(|beginning| is_open(wording) && beginning.split_whitespace().count() >= 2);
    let wording = open.map_or(wording, str::trim_end);
    if wording.contains(UNKNOWN) {
        return wrong("holds [unk], which stands for all other speech and is always listened for; leave it out");
    }
    if wording.chars().any(char::is_uppercase) {
        return wrong("has capital letters; write it in lower case");
    }
    if wording.split(' ').any(str::is_empty) {
        return wrong("has spaces to spare; part words by one space");
    }
    if let Some(word) = wording.split(' ').find(|w| !is_plain(w)) {
        return wrong(&format!("holds {word:?}, which is no word; use letters and apostrophes only, numbers spelled out"));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Choice;

    fn model() -> PathBuf {
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/en")
    }

    fn grammar(tag: &str, wording: &str) -> Grammar {
        Grammar { choices: vec![Choice { tag: tag.into(), wordings: vec![wording.into()] }], ..Grammar::default() }
    }

    #[test]
    fn takes_words_of_the_model() {
        let lexicon = Lexicon::open(&model()).unwrap();
        for wording in ["stop", "go on", "i'm ready", "start for [unk]"] {
            assert!(lexicon.validate(&grammar("t", wording)).is_ok(), "{wording}");
        }
    }

    #[test]
    fn refuses_what_cannot_be_said_naming_it() {
        let lexicon = Lexicon::open(&model()).unwrap();
        for (wording, named) in [
            ("", "is empty"),
            ("  ", "is empty"),
            ("Stop", "capital"),
            ("go  on", "spaces"),
            (" stop", "spaces"),
            ("[unk]", "[unk]"),
            ("stop [unk]", "[unk]"),
            ("stop\"", "\"stop\\\"\""),
            ("stop\",\"go", "no word"),
            ("stop\n", "no word"),
            ("stop\\", "no word"),
            ("<eps>", "no word"),
            ("7 times", "\"7\""),
            ("'", "no word"),
            ("stop the flumbergast", "\"flumbergast\""),
        ] {
            let error = lexicon.validate(&grammar("skip-it", wording)).unwrap_err().0;
            assert!(error.contains(named) && error.contains("skip-it"), "{wording:?}: {error}");
        }
        let none = Grammar { choices: vec![Choice { tag: "skip-it".into(), wordings: vec![] }], ..Grammar::default() };
        assert!(lexicon.validate(&none).unwrap_err().0.contains("no wording"));
    }

    #[test]
    fn a_missing_or_incomplete_model_is_named() {
        let folder = tempfile::tempdir().unwrap();
        let missing = folder.path().join("nowhere");
        assert!(Lexicon::open(&missing).unwrap_err().0.contains("nowhere"));
        let error = Lexicon::open(folder.path()).unwrap_err().0;
        assert!(error.contains("am/final.mdl") && error.contains("models/en"), "{error}");
        for file in ["am/final.mdl", "conf/mfcc.conf", "graph/HCLr.fst", "graph/Gr.fst", "graph/disambig_tid.int"] {
            let path = folder.path().join(file);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, "").unwrap();
        }
        assert_eq!(Lexicon::open(folder.path()).unwrap().knows("stop"), None);
        std::fs::write(folder.path().join("graph/words.txt"), "<eps> 0\nstop 1\n").unwrap();
        assert!(Lexicon::open(folder.path()).unwrap_err().0.contains("[unk]"));
        std::fs::write(folder.path().join("graph/HCLG.fst"), "").unwrap();
        assert!(Lexicon::open(folder.path()).unwrap_err().0.contains("fixed grammar"));
    }
}
