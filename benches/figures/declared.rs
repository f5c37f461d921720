//! `benches/figures.toml`: what each figure is, its limit, and the value on record.

use crate::interval::wilson_pct;
use serde::Deserialize;
use std::collections::BTreeSet;

/// The whole file.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct File {
    /// The kind of machine that every value on record was taken on.
    pub machine: String,
    /// Its cores: a run on a machine with more or fewer cannot go on record.
    pub cores: u32,
    /// Commits from before the program was split into crates: values taken on them are to be taken again.
    pub before_split: Vec<String>,
    /// Figures by what they are about, in the order of the page.
    pub section: Vec<Section>,
}

/// Figures that stand in one table of `docs/performance.md`.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Section {
    /// Names the table's place on the page.
    pub id: String,
    /// What takes these figures, unless one names its own.
    pub command: String,
    /// The figures.
    pub figures: Vec<Declared>,
}

/// Which way a figure gets better.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Better {
    /// As delays, errors and memory do.
    Less,
    /// As hits and speed do.
    More,
}

/// One figure.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Declared {
    /// Words parted by dots, the coarsest first.
    pub id: String,
    /// What is measured, for people.
    pub what: String,
    /// The unit of `value`, `limit` and `tolerance`. Empty: a bare number, 1 for yes.
    pub unit: String,
    /// Which way is better.
    pub better: Better,
    /// At most, or at least, this.
    pub limit: Option<f64>,
    /// A new value that is worse by no more than this counts as the same.
    pub tolerance: f64,
    /// What takes it, where it is not the section's command.
    pub command: Option<String>,
    /// The value on record. None: it has not been taken yet, or only by something that is not committed.
    pub value: Option<f64>,
    /// How many recordings, words, runs … the value on record is taken from.
    pub sample: Option<u64>,
    /// The commit that the value on record belongs to.
    pub commit: Option<String>,
}

/// What is wrong with the file.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// It is no TOML, or a field is missing or unknown.
    #[error(transparent)]
    Toml(#[from] toml::de::Error),
    /// Two figures have one id.
    #[error("two figures are called {0:?}; give one of them another id")]
    Twice(String),
    /// A value without its commit, or a commit without its value.
    #[error("{0}: a value and its commit go together; give both or neither")]
    NoCommit(String),
    /// A tolerance that no value can lie in.
    #[error("{0}: the tolerance must be 0 or more")]
    Tolerance(String),
}

impl File {
    /// Reads and checks the file's text.
    ///
    /// # Errors
    /// It is not well formed, or a figure contradicts itself.
    pub fn read(text: &str) -> Result<Self, FileError> {
        let file: Self = toml::from_str(text)?;
        let mut ids = BTreeSet::new();
        for figure in file.figures() {
            if !ids.insert(figure.id.as_str()) {
                return Err(FileError::Twice(figure.id.clone()));
            }
            if figure.value.is_some() != figure.commit.is_some() {
                return Err(FileError::NoCommit(figure.id.clone()));
            }
            if figure.tolerance.is_nan() || figure.tolerance < 0.0 {
                return Err(FileError::Tolerance(figure.id.clone()));
            }
        }
        Ok(file)
    }

    /// All figures, in order.
    pub fn figures(&self) -> impl Iterator<Item = &Declared> {
        self.section.iter().flat_map(|section| &section.figures)
    }

    /// The figure with this id.
    pub fn figure(&self, id: &str) -> Option<&Declared> {
        self.figures().find(|figure| figure.id == id)
    }

    /// Whether the commit is one from before the split into crates.
    pub fn is_before_split(&self, commit: &str) -> bool {
        self.before_split.iter().any(|old| old == commit)
    }
}

impl Declared {
    /// Whether a value keeps the limit; none where there is no limit.
    pub fn keeps_limit(&self, value: f64) -> Option<bool> {
        let limit = self.limit?;
        Some(match self.better {
            Better::Less => value <= limit,
            Better::More => value >= limit,
        })
    }

    /// By how much `new` is worse than `old`, in the figure's unit; below 0 where it is better.
    pub fn worse_by(&self, old: f64, new: f64) -> f64 {
        match self.better {
            Better::Less => new - old,
            Better::More => old - new,
        }
    }

    /// A value with its unit and sample; of a share, also the 95 % interval.
    pub fn shown(&self, value: f64, sample: Option<u64>) -> String {
        let mut text = number(value);
        if !self.unit.is_empty() {
            text = format!("{text} {}", self.unit);
        }
        let Some(sample) = sample else { return text };
        match wilson_pct(value, sample).filter(|_| self.unit == "%") {
            Some((from, to)) => format!("{text} (of {sample}; {} to {})", number(from), number(to)),
            None => format!("{text} (of {sample})"),
        }
    }

    /// The limit with its sign; empty where there is none.
    pub fn shown_limit(&self) -> String {
        let sign = match self.better {
            Better::Less => "≤",
            Better::More => "≥",
        };
        self.limit.map_or_else(String::new, |limit| format!("{sign} {}", self.shown(limit, None)))
    }
}

/// A number with three digits that count; whole numbers as they are.
pub fn number(value: f64) -> String {
    if value.fract() == 0.0 || !value.is_finite() {
        return format!("{value}");
    }
    let digits = 2 - value.abs().log10().floor() as i32;
    let rounded = format!("{value:.*}", usize::try_from(digits.clamp(0, 9)).unwrap_or(0));
    if rounded.contains('.') { rounded.trim_end_matches('0').trim_end_matches('.').to_owned() } else { rounded }
}
