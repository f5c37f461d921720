//! Published values by age and sex, to set beside a baseline; never a diagnosis.

use super::dose_status::DoseStatus;
use serde::Deserialize;
use std::sync::LazyLock;

/// Whose values a norm gives, as its study named them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sex {
    Woman,
    Man,
}

/// What one group of people was measured to do.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Norm {
    /// Kebab-case exercise, and the measure's name in exports.
    pub exercise: String,
    pub measure: String,
    /// None: women and men together.
    pub sex: Option<Sex>,
    /// From and to, years, both among them.
    pub ages: [u32; 2],
    /// The value in words, with its unit.
    pub text: String,
    pub who: String,
    pub source: String,
    pub status: DoseStatus,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    norm: Vec<Norm>,
}

const TEXT: &str = include_str!("catalogue/norms.toml");

// A test reads it with its error; a norm less is no reason to end a practice.
static NORMS: LazyLock<Option<File>> = LazyLock::new(|| toml::from_str(TEXT).ok());

/// Every published value there is.
#[must_use]
pub fn norms() -> &'static [Norm] {
    NORMS.as_ref().map_or(&[], |file| &file.norm)
}

/// Those for a person of this age, years, and sex. Without an age there are none; without a sex, those of either.
#[must_use]
pub fn norms_for(exercise: &str, measure: &str, age: Option<u32>, sex: Option<Sex>) -> Vec<&'static Norm> {
    let Some(age) = age else { return Vec::new() };
    let suits = |norm: &&Norm| {
        norm.exercise == exercise
            && norm.measure == measure
            && (norm.ages[0]..=norm.ages[1]).contains(&age)
            && (norm.sex.is_none() || sex.is_none() || norm.sex == sex)
    };
    norms().iter().filter(suits).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_are_of_exercises_that_there_are_and_of_people_like_the_one_who_is_measured() {
        let all = toml::from_str::<File>(TEXT).expect("the file is in order").norm;
        assert_eq!(all, norms());
        for norm in &all {
            assert!(super::super::find(&norm.exercise).is_some() && norm.ages[0] <= norm.ages[1], "{norm:?}");
        }
        let of = |age, sex| norms_for("long-ah", "hold-s", age, sex).iter().map(|norm| norm.text.as_str()).collect::<Vec<_>>();
        assert_eq!(
            of(Some(74), Some(Sex::Woman)),
            ["mean 21.0 s (standard error 0.9)", "mean 23.0 s (standard error 1.1)", "median 12 s"],
            "sources that disagree both stand"
        );
        assert!(of(Some(30), Some(Sex::Man)).is_empty() && of(None, Some(Sex::Man)).is_empty());
        assert!(of(Some(74), None).len() > 3);
    }
}
