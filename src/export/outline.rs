//! What a stored routine text prescribes, as far as it can still be understood.

use routine::{Hearing, Prescription, check_text};

/// A routine as it was prescribed.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    /// The whole; none where the text names what is not here (a word pack in a file of its own) or comes from another version.
    pub prescription: Option<Prescription>,
    /// The exercises in their order, also where the doses cannot be read.
    pub exercises: Vec<String>,
}

impl Outline {
    /// Reads a routine text; nothing in it is a fault here.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let prescription = check_text("", text, Hearing::default()).ok();
        let exercises = match &prescription {
            Some(known) => known.routine.steps.iter().map(|step| step.exercise.id.clone()).collect(),
            None => named_in(text),
        };
        Self { prescription, exercises }
    }

    /// Repetitions of the step of that number, from 1, over all sets; of a dose that grows, at that stage.
    #[must_use]
    pub fn repetitions(&self, step: u32, ramp_stage: Option<u32>) -> Option<u32> {
        let prescription = self.prescription.as_ref()?;
        let index = |from_one: u32| usize::try_from(from_one).ok().and_then(|number| number.checked_sub(1));
        let stages = prescription.ramps.iter().find(|ramp| ramp.step == step).map(|ramp| &ramp.stages);
        let step = match stages.zip(ramp_stage) {
            Some((stages, stage)) => stages.get(index(stage)?)?,
            None => prescription.routine.steps.get(index(step)?)?,
        };
        Some(step.sets.saturating_mul(step.repetitions))
    }
}

fn named_in(text: &str) -> Vec<String> {
    let table: toml::Table = text.parse().unwrap_or_default();
    let steps = table.get("step").and_then(toml::Value::as_array).map(Vec::as_slice).unwrap_or_default();
    let names: Option<Vec<String>> = steps.iter().map(|step| step.get("exercise")?.as_str().map(str::to_owned)).collect();
    // Where one is missing the numbers of the others would be wrong.
    names.unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_routine_that_can_no_longer_be_checked_still_names_its_exercises() {
        let whole = Outline::of("title = \"Evening\"\n[[step]]\nexercise = \"long-ah\"\n");
        assert!(whole.prescription.is_some());
        let foreign = Outline::of("title = \"Evening\"\n[[step]]\nexercise = \"long-ah\"\n[[step]]\nexercise = \"of-tomorrow\"\n");
        assert_eq!((foreign.prescription, foreign.exercises), (None, vec!["long-ah".to_owned(), "of-tomorrow".to_owned()]));
        assert!(Outline::of("no toml at all [").exercises.is_empty());
    }
}
