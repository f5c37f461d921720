//! Published doses as templates for a step, those that disagree beside each other, each with its source.
//!
//! Most are made from the catalogue's own doses, so that no number stands in two places; doses that grow and the
//! disagreements stand in the files under `templates/`.

use std::sync::LazyLock;

use serde::Deserialize;

use super::catalogue::{CatalogueEntry, Range, UsualDose};
use super::dose_status::DoseStatus;
use super::limits::limit_of;
use super::prescribed::Timing;
use super::safe::safe_dose;

/// A published dose, with what of it a step can carry.
#[derive(Debug, Clone, PartialEq)]
pub struct Template {
    pub dose: &'static UsualDose,
    /// Fields of the step with their values; of a published range the catalogue's
    /// default where it lies within, else its low end. `hold_s` stands for the
    /// length of the longest phases. Empty: the source gives no number that a step could carry.
    pub numbers: Vec<(&'static str, f64)>,
    /// Why it cannot be taken: what lies outside the limits of the exercise, and their reason.
    pub beyond: Option<String>,
}

/// A published way to grow.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RampTemplate {
    /// The exercise's id.
    pub exercise: String,
    /// The dose in words.
    pub text: String,
    pub rest_s: Option<f64>,
    pub days: u32,
    pub stages: Vec<RampStage>,
    pub who: String,
    pub source: String,
    pub status: DoseStatus,
    pub note: String,
}

/// The numbers of one stage, as a routine's `ramp` has them.
#[derive(Debug, Clone, Copy, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RampStage {
    pub repetitions: Option<u32>,
    /// Seconds.
    pub hold_s: Option<f64>,
}

/// A question on which two sources disagree.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Disagreement {
    /// Ids of the exercises it is about.
    pub exercises: Vec<String>,
    pub asks: String,
    pub one: String,
    pub one_source: String,
    pub one_status: DoseStatus,
    pub other: String,
    pub other_source: String,
    pub other_status: DoseStatus,
    /// What is done about it here.
    pub here: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Ramps {
    ramp: Vec<RampTemplate>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Disagreements {
    disagreement: Vec<Disagreement>,
}

const RAMPS_TEXT: &str = include_str!("templates/ramps.toml");
const DISAGREEMENTS_TEXT: &str = include_str!("templates/disagreements.toml");

// Embedded with the program; that they can be read is tested.
static RAMPS: LazyLock<Vec<RampTemplate>> = LazyLock::new(|| toml::from_str::<Ramps>(RAMPS_TEXT).map_or(Vec::new(), |file| file.ramp));
static DISAGREEMENTS: LazyLock<Vec<Disagreement>> =
    LazyLock::new(|| toml::from_str::<Disagreements>(DISAGREEMENTS_TEXT).map_or(Vec::new(), |file| file.disagreement));

/// The published way to grow of an exercise.
#[must_use]
pub fn ramp_template(exercise: &str) -> Option<&'static RampTemplate> {
    RAMPS.iter().find(|ramp| ramp.exercise == exercise)
}

/// Where sources disagree about an exercise.
pub fn disagreements(exercise: &str) -> impl Iterator<Item = &'static Disagreement> {
    DISAGREEMENTS.iter().filter(move |disagreement| disagreement.exercises.iter().any(|id| id == exercise))
}

/// The templates of an exercise, in the catalogue's order.
#[must_use]
pub fn templates(entry: &'static CatalogueEntry) -> Vec<Template> {
    entry.usual_doses.iter().map(|dose| template(entry, dose)).collect()
}

fn template(entry: &'static CatalogueEntry, dose: &'static UsualDose) -> Template {
    let hold = match entry.timing {
        Timing::Voiced => Some("target_s"),
        Timing::Timed if entry.has_one_length() => Some("hold_s"),
        _ => None,
    };
    let fields = [
        (Some("repetitions"), dose.repetitions),
        (hold, dose.hold_s),
        (Some("in"), dose.counts_in),
        (Some("out"), dose.counts_out),
        (Some("next_cue_after_s"), dose.every_s),
        (Some("rest_s"), dose.rest_s),
    ];
    let suited = entry.dose_fields();
    let suits = |field: &str| suited.contains(&field) || field == "hold_s";
    let all = fields.into_iter().filter_map(|(field, value)| Some((field.filter(|field| suits(field))?, value?)));
    let mut numbers: Vec<(&'static str, f64)> = all.map(|(field, value)| (field, within(entry, field, value))).collect();
    if numbers.iter().all(|(field, _)| *field == "rest_s") || holds_otherwise(entry, dose) {
        numbers.clear();
    }
    rest_enough(entry, &mut numbers);
    let beyond = numbers.iter().find_map(|(field, value)| {
        let limit = limit_of(Some(entry), limit_name(field)).filter(|limit| !limit.allows(*value))?;
        Some(format!("{field} {value} is outside {} to {}: {}", limit.min, limit.max, limit.why))
    });
    Template { dose, numbers, beyond }
}

/// The published holds are far from those that the step would get, and no single number can change that.
fn holds_otherwise(entry: &CatalogueEntry, dose: &UsualDose) -> bool {
    let default_s: f64 = entry.phase_lengths().iter().map(|(_, length_s)| *length_s).sum();
    // A tenth: 63 s with a smile are still the published 60.
    let far = |hold_s: Range| default_s < hold_s.low() || default_s > hold_s.high() * 1.1;
    entry.timing == Timing::Timed && !entry.has_one_length() && dose.hold_s.is_some_and(far)
}

/// A source that gives a hold and no rest gets the shortest rest that needs no word.
fn rest_enough(entry: &CatalogueEntry, numbers: &mut Vec<(&'static str, f64)>) {
    let of = |numbers: &[(&str, f64)], field: &str| numbers.iter().find(|(name, _)| *name == field).map(|(_, value)| *value);
    let share = safe_dose(&entry.id).and_then(|safe| safe.rest_per_hold.as_ref()).map(|share| share.in_force(false));
    let (Some(share), Some(hold_s)) = (share, of(numbers, "hold_s")) else { return };
    let default_s = entry.dose.rest_s.as_ref().map_or(0.0, |at| at.value);
    if of(numbers, "rest_s").is_none() && default_s < share * hold_s {
        numbers.push(("rest_s", (share * hold_s).ceil()));
    }
}

/// Of a range the catalogue's default where it lies within, for that starts low; else the low end.
fn within(entry: &CatalogueEntry, field: &str, value: Range) -> f64 {
    let longest = || entry.phase_lengths().iter().map(|(_, length_s)| *length_s).max_by(f64::total_cmp);
    let default = match field {
        "hold_s" => longest(),
        _ => entry.dose.numbers().into_iter().find(|(name, ..)| *name == field).map(|(_, value, _)| value),
    };
    default.filter(|default| (value.low()..=value.high()).contains(default)).unwrap_or(value.low())
}

/// The limit that a number of a template has.
#[must_use]
pub fn limit_name(field: &str) -> &str {
    if field == "hold_s" { "phase_s" } else { field }
}

/// The dose with the largest published number of this kind, and that number: what a larger one has to be asked about.
/// Published ones count where there are any; else common practice.
#[must_use]
pub fn largest_usual(entry: &'static CatalogueEntry, number: impl Fn(&UsualDose) -> Option<Range>) -> Option<(&'static UsualDose, f64)> {
    let of = |published: bool| {
        let doses = entry.usual_doses.iter().filter(move |dose| (dose.status != DoseStatus::CommonPractice) == published);
        doses.filter_map(|dose| Some((dose, number(dose)?.high()))).max_by(|one, other| one.1.total_cmp(&other.1))
    };
    of(true).or_else(|| of(false))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Hearing, catalogue, check_text, find};

    #[test]
    fn the_files_can_be_read_and_name_exercises() {
        let ramps = toml::from_str::<Ramps>(RAMPS_TEXT).expect("ramps.toml").ramp;
        let disagreements = toml::from_str::<Disagreements>(DISAGREEMENTS_TEXT).expect("disagreements.toml").disagreement;
        assert!(ramps.len() >= 4 && disagreements.len() >= 6);
        let ids = ramps.iter().map(|ramp| &ramp.exercise).chain(disagreements.iter().flat_map(|both| &both.exercises));
        for id in ids {
            assert!(find(id).is_some(), "{id}");
        }
    }

    /// The check reads a ramp template as a routine has it, so it judges it as any dose.
    #[test]
    fn ramp_templates_keep_the_limits() {
        for ramp in RAMPS.iter() {
            let stage = |stage: &RampStage| {
                let repetitions = stage.repetitions.map(|n| format!("repetitions = {n}"));
                let hold_s = stage.hold_s.map(|s| format!("hold_s = {s}"));
                format!("{{ {} }}", repetitions.into_iter().chain(hold_s).collect::<Vec<_>>().join(", "))
            };
            let stages = ramp.stages.iter().map(stage).collect::<Vec<_>>().join(", ");
            let text = format!(
                "title = \"x\"\n[[step]]\nexercise = \"{}\"\ncautions_acknowledged = true\nrest_s = {}\nramp = {{ days = {}, stages = [{stages}] }}\n",
                ramp.exercise,
                ramp.rest_s.unwrap_or(0.0),
                ramp.days
            );
            let read = check_text("x", &text, Hearing { commands: &[], knows_word: None, ..Hearing::default() });
            assert!(read.is_ok_and(|read| read.ramps.len() == 1 && read.ramps[0].stages.len() == ramp.stages.len()), "{}", ramp.exercise);
        }
    }

    #[test]
    fn a_dose_beyond_the_limits_is_shown_and_says_why_it_cannot_be_taken() {
        let tongue_hold = templates(find("tongue-hold-swallow").expect("known"));
        let beyond: Vec<_> = tongue_hold.iter().filter_map(|template| template.beyond.as_deref()).collect();
        assert_eq!(beyond.len(), 1);
        assert!(beyond[0].contains("repetitions 240 is outside 1 to 10") && beyond[0].contains("Oh et al. 2012"), "{beyond:?}");
        for template in catalogue().iter().flat_map(templates) {
            assert!(template.numbers.iter().all(|(_, value)| value.is_finite()));
        }
    }
}
