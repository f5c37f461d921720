//! A new run against the values on record: what got worse, what misses its limit, and what was not measured at all.

use crate::declared::{Declared, File, number};
use crate::taken::{Run, Value};
use std::fmt::Write;

/// What became of one figure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outcome {
    /// Not worse by more than its tolerance, and within its limit if it has one.
    Good,
    /// Better by more than its tolerance, and within its limit if it has one.
    Better,
    /// Nothing on record to compare with; within its limit if it has one.
    First,
    /// Worse by more than its tolerance.
    Worse,
    /// Misses its limit, and did not on record.
    Misses,
    /// Misses its limit, as the value on record does.
    StillMisses,
    /// Taken from another number of recordings, words or runs than the value on record.
    OtherSample,
    /// Not in the run, or the bench found nothing to measure.
    Missing,
}

impl Outcome {
    /// Whether it fails the comparison. A limit that was missed before fails it too, unless that is `known`.
    pub fn fails(self, known: bool) -> bool {
        match self {
            Self::Good | Self::Better | Self::First => false,
            Self::StillMisses => !known,
            Self::Worse | Self::Misses | Self::OtherSample | Self::Missing => true,
        }
    }
}

/// A figure, what it was and what it is.
#[derive(Debug, Clone, Copy)]
pub struct Compared<'a> {
    /// The figure.
    pub figure: &'a Declared,
    /// What takes it.
    pub command: &'a str,
    /// Its value in the run.
    pub now: Option<Value>,
    /// What became of it.
    pub outcome: Outcome,
}

/// Everything that was compared.
#[derive(Debug)]
pub struct Comparison<'a> {
    /// In the order of the file.
    pub figures: Vec<Compared<'a>>,
    /// Ids of the run that `benches/figures.toml` does not know.
    pub unknown: Vec<String>,
    /// Cores of the run's machine where they are not those of the values on record.
    pub other_cores: Option<u32>,
}

/// Compares a run with the file. `only`: figures whose ids begin so; all where none is named.
pub fn compare<'a>(file: &'a File, run: &Run, only: &[String]) -> Comparison<'a> {
    let wanted = |id: &str| only.is_empty() || only.iter().any(|start| id == start || id.starts_with(&format!("{start}.")));
    let figures = file.section.iter().flat_map(|section| section.figures.iter().map(move |figure| (section, figure)));
    Comparison {
        figures: figures
            .filter(|(_, figure)| wanted(&figure.id))
            .map(|(section, figure)| {
                let now = run.values.get(&figure.id).copied();
                let command = figure.command.as_ref().unwrap_or(&section.command);
                Compared { figure, command, now, outcome: outcome(figure, now) }
            })
            .collect(),
        unknown: run.values.keys().filter(|id| wanted(id) && file.figure(id).is_none()).cloned().collect(),
        other_cores: run.cores.filter(|cores| *cores != file.cores),
    }
}

fn outcome(figure: &Declared, now: Option<Value>) -> Outcome {
    let Some(now) = now.filter(|now| !now.is_of_nothing()) else { return Outcome::Missing };
    let misses = figure.keeps_limit(now.value) == Some(false);
    let Some(old) = figure.value else { return if misses { Outcome::Misses } else { Outcome::First } };
    if figure.sample.is_some() && now.sample != figure.sample {
        return Outcome::OtherSample;
    }
    // A hair's breadth for numbers that were rounded when they were put on record.
    let hair = 1e-9 * old.abs().max(1.0);
    let worse_by = figure.worse_by(old, now.value);
    match (worse_by > figure.tolerance + hair, misses, figure.keeps_limit(old)) {
        (true, _, _) => Outcome::Worse,
        (false, true, Some(false)) => Outcome::StillMisses,
        (false, true, _) => Outcome::Misses,
        (false, false, _) if worse_by < -(figure.tolerance + hair) => Outcome::Better,
        (false, false, _) => Outcome::Good,
    }
}

impl Comparison<'_> {
    /// Whether something got worse, misses its limit, is missing or unknown. `known`: limits that were missed before do not count.
    pub fn fails(&self, known: bool) -> bool {
        !self.unknown.is_empty() || self.figures.iter().any(|compared| compared.outcome.fails(known))
    }

    /// What to tell: one line for each figure that is not as it was, worst first, then how many are.
    pub fn text(&self) -> String {
        let mut text = String::new();
        if let Some(cores) = self.other_cores {
            let _ = writeln!(
                text,
                "This run is from a machine with another number of cores ({cores}): figures by the clock cannot be compared."
            );
        }
        for (outcome, word) in [
            (Outcome::Worse, "worse"),
            (Outcome::Misses, "misses its limit"),
            (Outcome::StillMisses, "still misses its limit"),
            (Outcome::OtherSample, "another sample"),
            (Outcome::Missing, "missing"),
            (Outcome::Better, "better"),
            (Outcome::First, "first value"),
        ] {
            for compared in self.figures.iter().filter(|compared| compared.outcome == outcome) {
                let _ = writeln!(text, "{word}: {}", compared.text());
            }
        }
        for id in &self.unknown {
            let _ = writeln!(text, "unknown: {id} is not in benches/figures.toml; add it there");
        }
        let count = |outcome: Outcome| self.figures.iter().filter(|compared| compared.outcome == outcome).count();
        let _ = writeln!(
            text,
            "{} figures: {} as before, {} better, {} worse, {} newly miss their limit, {} still do, {} missing, {} of another sample, {} taken for the first time, {} unknown",
            self.figures.len(),
            count(Outcome::Good),
            count(Outcome::Better),
            count(Outcome::Worse),
            count(Outcome::Misses),
            count(Outcome::StillMisses),
            count(Outcome::Missing),
            count(Outcome::OtherSample),
            count(Outcome::First),
            self.unknown.len()
        );
        text
    }
}

impl Compared<'_> {
    fn text(&self) -> String {
        let figure = self.figure;
        let now = self.now.map_or_else(|| "not measured".to_owned(), |now| figure.shown(now.value, now.sample));
        let was = figure.value.map_or_else(
            || "nothing on record".to_owned(),
            |value| format!("was {} on {}", figure.shown(value, figure.sample), figure.commit.as_deref().unwrap_or("?")),
        );
        let limit = figure.limit.map_or_else(String::new, |_| format!(", limit {}", figure.shown_limit()));
        format!("{} ({}): {now}, {was}{limit}, tolerance {}; `{}`", figure.id, figure.what, number(figure.tolerance), self.command)
    }
}
