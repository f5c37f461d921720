//! Where the cautions come from, and which of them matter every time (`catalogue/cautions.toml`).

use std::sync::LazyLock;

use serde::Deserialize;

use super::dose_status::DoseStatus;

/// A group of people who should leave an exercise out, unless their own clinician says otherwise.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exclusion {
    /// As in `not_for` of an exercise; its words are the message `notfor-KEY`.
    pub key: String,
    /// What was read; none for common practice.
    pub source: Option<String>,
    pub status: DoseStatus,
}

/// What to look out for in an exercise.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Caution {
    /// As in `cautions` of an exercise; its words are the message `caution-KEY`.
    pub key: String,
    /// What was read; none for common practice.
    pub source: Option<String>,
    pub status: DoseStatus,
    /// Matters at each practice: its exercises have `ex-ID-care`, which is said every time.
    #[serde(default)]
    pub every_time: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    exclusion: Vec<Exclusion>,
    caution: Vec<Caution>,
}

const TEXT: &str = include_str!("catalogue/cautions.toml");

static FILE: LazyLock<Option<File>> = LazyLock::new(|| toml::from_str(TEXT).ok());

/// All groups of people, in the order of the file.
#[must_use]
pub fn exclusions() -> &'static [Exclusion] {
    FILE.as_ref().map_or(&[], |file| &file.exclusion)
}

/// All cautions, in the order of the file.
#[must_use]
pub fn cautions() -> &'static [Caution] {
    FILE.as_ref().map_or(&[], |file| &file.caution)
}

/// Where a key comes from, in words: the source and how well it is known.
#[must_use]
pub fn origin(source: Option<&str>, status: DoseStatus) -> String {
    match source {
        Some(source) => format!("{source} [{status}]"),
        None => format!("[{status}]"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue;
    use std::collections::BTreeSet;

    fn set<'a>(keys: impl Iterator<Item = &'a String>) -> BTreeSet<&'a str> {
        keys.map(String::as_str).collect()
    }

    #[test]
    fn every_key_in_use_stands_in_the_file_once_and_none_besides() {
        let file = toml::from_str::<File>(TEXT).expect("cautions.toml");
        let known = set(file.exclusion.iter().map(|exclusion| &exclusion.key));
        assert_eq!(known.len(), file.exclusion.len(), "twice");
        assert_eq!(set(catalogue().iter().flat_map(|entry| &entry.not_for)), known);
        let known = set(file.caution.iter().map(|caution| &caution.key));
        assert_eq!(known.len(), file.caution.len(), "twice");
        let mut used = set(catalogue().iter().flat_map(|entry| &entry.cautions));
        // What stands in place of "sit-upright" for who stands.
        used.insert("stand-safely");
        assert_eq!(used, known);
    }

    #[test]
    fn each_has_a_source_or_says_that_it_has_none() {
        let all = exclusions().iter().map(|exclusion| (&exclusion.key, &exclusion.source, exclusion.status));
        let all: Vec<_> = all.chain(cautions().iter().map(|caution| (&caution.key, &caution.source, caution.status))).collect();
        assert!(all.len() > 50);
        for (key, source, status) in all {
            assert_eq!(source.is_none(), status == DoseStatus::CommonPractice, "{key}");
            assert!(source.as_ref().is_none_or(|source| source.len() > 10), "{key}");
        }
    }
}
