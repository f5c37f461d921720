//! What a symptom leaves out for the rest of the day: exercises that ask the same of the body.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use serde::Deserialize;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    /// Ids of exercises by body part or burden.
    strains: BTreeMap<String, BTreeSet<String>>,
    symptom: Vec<LeftOut>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LeftOut {
    /// As the journal writes it.
    symptom: String,
    /// Strains that are left out whatever was under way.
    #[serde(default)]
    always: Vec<String>,
    /// Strains that are left out where the exercise under way belongs to them.
    #[serde(default)]
    of_the_exercise: Vec<String>,
}

const TEXT: &str = include_str!("catalogue/strains.toml");

static FILE: LazyLock<Option<File>> = LazyLock::new(|| toml::from_str(TEXT).ok());

/// Ids of the exercises that `symptom` leaves out for the rest of the day, said during `exercise` (or after it; none: before any).
/// The exercise itself is always among them. Empty for a symptom that leaves nothing out, such as a call for help.
#[must_use]
pub fn left_out_by(symptom: &str, exercise: Option<&str>) -> BTreeSet<&'static str> {
    let Some(file) = FILE.as_ref() else { return BTreeSet::new() };
    let Some(rule) = file.symptom.iter().find(|rule| rule.symptom == symptom) else { return BTreeSet::new() };
    let has =
        |strain: &String| exercise.is_some_and(|exercise| file.strains.get(strain).is_some_and(|exercises| exercises.contains(exercise)));
    let strains = rule.always.iter().chain(rule.of_the_exercise.iter().filter(|strain| has(strain)));
    let members = strains.filter_map(|strain| file.strains.get(strain)).flatten().map(String::as_str);
    members.chain(exercise.and_then(|exercise| crate::find(exercise).map(|entry| entry.id.as_str()))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_exercise_and_strain_that_is_named_is_there() {
        let file = FILE.as_ref().expect("the file is in order");
        for id in file.strains.values().flatten() {
            assert!(crate::find(id).is_some(), "{id}");
        }
        for strain in file.symptom.iter().flat_map(|rule| rule.always.iter().chain(&rule.of_the_exercise)) {
            assert!(file.strains.contains_key(strain), "{strain}");
        }
    }

    /// Nothing that holds, presses, lies or breathes on purpose is forgotten: whoever adds an exercise says what it asks of the body.
    #[test]
    fn every_exercise_but_the_quiet_ones_strains_something() {
        let file = FILE.as_ref().expect("the file is in order");
        let quiet = ["word-questions", "category-naming", "rest"];
        for entry in crate::catalogue().iter() {
            let strains = file.strains.values().any(|exercises| exercises.contains(&entry.id));
            assert_ne!(strains, quiet.contains(&entry.id.as_str()), "{}", entry.id);
        }
        let guarded = crate::catalogue().iter().filter(|entry| entry.postures.contains(&crate::Posture::Lying));
        for entry in guarded {
            assert!(file.strains.get("lying").is_some_and(|lying| lying.contains(&entry.id)), "{}", entry.id);
        }
    }

    #[test]
    fn a_symptom_leaves_out_what_is_like_what_was_under_way() {
        let dizzy = left_out_by("dizzy", Some("functional-phrases"));
        assert!(dizzy.contains("neck-turns") && dizzy.contains("nasal-breathing") && dizzy.contains("functional-phrases"));
        assert!(!dizzy.contains("shoulder-rolls") && !dizzy.contains("word-questions"));
        let neck = left_out_by("pain", Some("neck-turns"));
        assert!(
            neck.contains("chin-tuck-ball") && neck.contains("neck-tilts") && !neck.contains("jaw-opening") && !neck.contains("long-ah")
        );
        assert!(left_out_by("pain", None).is_empty() && left_out_by("help", Some("long-ah")).is_empty());
        assert_eq!(left_out_by("choking", None), BTreeSet::from(["effortful-swallow", "mid-swallow-hold", "tongue-hold-swallow"]));
    }
}
