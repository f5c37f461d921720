//! The clinician's word for a dose beyond what needs none.

use std::collections::BTreeMap;

use super::fault::{FaultKind, Finder};
use super::file::{At, ClinicianWordFile, RoutineFile};
use super::text::{self, Hearing, SaidBy};

/// Who said it, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ClinicianWord {
    pub who: String,
    pub why: String,
}

/// The clinician's words that a routine holds.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ClinicianWords {
    /// For the practice as a whole: its length, how often a day, loud time.
    pub whole: Option<ClinicianWord>,
    /// For an exercise, wherever it stands in the routine; by id.
    pub exercises: BTreeMap<String, ClinicianWord>,
}

impl ClinicianWords {
    /// Whether a clinician has spoken for this exercise.
    #[must_use]
    pub fn lift(&self, exercise: &str) -> bool {
        self.exercises.contains_key(exercise)
    }

    /// No word at all.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.whole.is_none() && self.exercises.is_empty()
    }
}

/// The words of a file; every fault is noted.
pub(super) fn read(file: &RoutineFile, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> ClinicianWords {
    let whole = file.clinician_word.as_ref().and_then(|word| one(word, hearing, faults));
    let mut exercises = BTreeMap::new();
    for step in file.step.iter().flat_map(|steps| &steps.value) {
        let word = step.value.clinician_word.as_ref().and_then(|word| one(word, hearing, faults));
        if let (Some(word), Some(exercise)) = (word, &step.value.exercise) {
            exercises.entry(exercise.value.clone()).or_insert(word);
        }
    }
    ClinicianWords { whole, exercises }
}

fn one(word: &At<ClinicianWordFile>, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<ClinicianWord> {
    let said = [("who", &word.value.who), ("why", &word.value.why)].map(|(name, said)| {
        let said = said.as_ref()?;
        let before = faults.list.len();
        text::check(said, name, SaidBy::Nobody, hearing, faults);
        (faults.list.len() == before).then(|| said.value.trim().to_owned())
    });
    match said {
        [Some(who), Some(why)] => Some(ClinicianWord { who, why }),
        _ => {
            if word.value.who.is_none() && word.value.why.is_none() {
                faults.add(FaultKind::Missing, word.span.clone(), "`clinician_word` says nothing", "Write who said it and why.");
            }
            None
        }
    }
}
