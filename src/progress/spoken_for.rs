//! Doses that go beyond what needs no word, and who spoke for them.

use super::prescribed::RoutineLife;
use serde::Serialize;

/// A clinician's word in a routine that is in force.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SpokenFor {
    pub routine_title: String,
    /// None: the practice as a whole.
    pub exercise: Option<String>,
    pub who: String,
    pub why: String,
}

/// Of each routine that is still practised the words of its latest text, the practice as a whole first.
pub(super) fn spoken_for(lives: &[RoutineLife<'_>]) -> Vec<SpokenFor> {
    let mut all = Vec::new();
    for life in lives.iter().filter(|life| life.replaced.is_none()) {
        let Some(prescription) = life.versions.last().and_then(|version| version.prescription.as_ref()) else { continue };
        let words = &prescription.routine.clinician;
        let exercises = words.exercises.iter().map(|(exercise, word)| (Some(exercise.clone()), word));
        all.extend(words.whole.iter().map(|word| (None, word)).chain(exercises).map(|(exercise, word)| SpokenFor {
            routine_title: life.title.to_owned(),
            exercise,
            who: word.who.clone(),
            why: word.why.clone(),
        }));
    }
    all
}
