//! The catalogue of exercises: data read from the files beside this one, embedded in the program.
//!
//! The words (names, purposes, instructions, cautions) are messages named after the ids and keys here.

use std::collections::BTreeMap;
use std::fmt;
use std::sync::LazyLock;

use serde::Deserialize;

use super::caution;
use super::dose_status::DoseStatus;
use super::file::StepFile;
use super::limit::Limit;
use super::placed::Posture;
use super::prescribed::{Exercise, Timing};
use model::Climbs;

/// The files of the catalogue, each with the heading of its exercises. A new one is added here.
const FILES: [(&str, &str); 5] = [
    ("Voice", include_str!("voice.toml")),
    ("Swallowing", include_str!("swallow.toml")),
    ("Head and neck", include_str!("head-and-neck.toml")),
    ("Face, tongue and jaw", include_str!("face-and-tongue.toml")),
    ("Breathing and speech", include_str!("breathing-and-speech.toml")),
];

/// One exercise as the catalogue knows it.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CatalogueEntry {
    /// Kebab-case, "long-ah".
    pub id: String,
    /// The heading it stands under in a list.
    #[serde(skip)]
    pub group: &'static str,
    pub timing: Timing,
    /// Waits for "ready" before the first repetition of a set.
    #[serde(default)]
    pub waits_for_ready: bool,
    /// Left out unless a clinician has agreed.
    #[serde(default)]
    pub needs_agreement: bool,
    /// Voiced only: the pitch is meant to move.
    #[serde(default)]
    pub glide: bool,
    /// Voiced only: the pitch is meant to be high, so it is the pitch that is shown.
    #[serde(default)]
    pub high: bool,
    /// Voiced only: soft to medium on purpose, as a wind-down or a comfortable vowel; its seconds are no loud voice.
    #[serde(default)]
    pub soft: bool,
    /// Voiced only: each hold is a step of a ladder of this.
    #[serde(default)]
    pub climbs: Option<Climbs>,
    /// Read aloud only: rising at the end where a phrase is a question, falling elsewhere.
    #[serde(default)]
    pub melody: bool,
    /// Repeated only: done with what a clinician has set for this client, and never without.
    #[serde(default)]
    pub needs_setting: bool,
    /// Question only: members of a category are named.
    #[serde(default)]
    pub naming: bool,
    /// Repeated only: sips of water may be offered between repetitions, if a clinician enabled them.
    #[serde(default)]
    pub sips: bool,
    /// It is meant to help swallowing: whoever does it is asked for warning signs once a week, where the routine asks anything.
    #[serde(default)]
    pub for_swallowing: bool,
    /// In which postures it may be done, the usual one first; empty where any will do. For one that may be done standing as well as
    /// sitting, `ex-ID-standing` says how.
    #[serde(default)]
    pub postures: Vec<Posture>,
    /// Keys of the cautions, messages `caution-KEY`.
    pub cautions: Vec<String>,
    /// Keys of those who should not do it, messages `notfor-KEY`.
    pub not_for: Vec<String>,
    /// What a routine gets that says nothing else.
    pub(super) dose: StepFile,
    /// Limits narrower than the general ones, by field.
    #[serde(default)]
    pub limits: BTreeMap<String, Limit>,
    /// Doses from practice and from publications, several on purpose: they disagree.
    pub usual_doses: Vec<UsualDose>,
}

impl CatalogueEntry {
    /// What the engine needs of it.
    #[must_use]
    pub fn exercise(&self) -> Exercise {
        Exercise {
            id: self.id.clone(),
            timing: self.timing,
            cautions: self.cautions.clone(),
            needs_agreement: self.needs_agreement,
            waits_for_ready: self.waits_for_ready,
        }
    }

    /// Something about it matters at each practice: `ex-ID-care` says it.
    #[must_use]
    pub fn has_care(&self) -> bool {
        caution::cautions().iter().any(|caution| caution.every_time && self.cautions.contains(&caution.key))
    }

    /// The same, done in this posture: who stands is not told to sit.
    pub(super) fn exercise_in(&self, posture: Option<Posture>) -> Exercise {
        let mut exercise = self.exercise();
        if posture == Some(Posture::Standing) {
            for caution in exercise.cautions.iter_mut().filter(|caution| *caution == "sit-upright") {
                *caution = "stand-safely".to_owned();
            }
        }
        exercise
    }

    /// What a step gets that leaves a field out, as text; fields without a default are not listed.
    #[must_use]
    pub fn defaults(&self) -> BTreeMap<&'static str, String> {
        let numbers = self.dose.numbers().into_iter().filter(|(field, ..)| *field != "phase_s");
        let mut all: BTreeMap<_, _> = numbers.map(|(field, value, _)| (field, value.to_string())).collect();
        let phases = self.dose.phases.as_ref().map_or(&[][..], |phases| &phases.value).iter().filter_map(|phase| {
            let (name, length_s) = (phase.value.name.as_ref()?, phase.value.length_s.as_ref()?);
            Some(format!("{} {} s", name.value, length_s.value))
        });
        let phases = phases.collect::<Vec<_>>().join(", ");
        if !phases.is_empty() {
            all.insert("phases", phases);
        }
        if let Some(phrases) = &self.dose.phrases {
            all.insert("phrases", phrases.value.iter().map(|phrase| phrase.value.as_str()).collect::<Vec<_>>().join(" / "));
        }
        if let Some(rungs) = &self.dose.rungs {
            all.insert("rungs", rungs.value.iter().map(|rung| rung.value.as_str()).collect::<Vec<_>>().join(", "));
        }
        if self.dose.passage.is_some() {
            all.insert("passage", "a fable of about 140 words".to_owned());
        }
        if let Some(syllables) = &self.dose.syllables {
            all.insert("syllables", syllables.value.clone());
        }
        all
    }

    /// The passage that is read where a routine gives none; none for other exercises.
    #[must_use]
    pub fn passage(&self) -> Option<&str> {
        self.dose.passage.as_ref().map(|passage| passage.value.as_str())
    }

    /// The phrases that are read aloud where a routine brings none; empty where it must.
    #[must_use]
    pub fn phrases(&self) -> Vec<String> {
        self.dose.phrases.iter().flat_map(|list| &list.value).map(|phrase| phrase.value.clone()).collect()
    }

    /// A timed exercise whose dose one length tells: of a single phase, or of the same length to either side.
    #[must_use]
    pub fn has_one_length(&self) -> bool {
        let lengths = self.phase_lengths();
        let longest = lengths.iter().map(|(_, length_s)| *length_s).fold(0.0, f64::max);
        lengths.len() == 1 || lengths.iter().filter(|(_, length_s)| *length_s >= longest).count() > 1
    }

    /// Names and default lengths, s, of the phases of a timed exercise; empty for all others.
    #[must_use]
    pub fn phase_lengths(&self) -> Vec<(&str, f64)> {
        let phases = self.dose.phases.as_ref().map_or(&[][..], |phases| &phases.value);
        phases.iter().filter_map(|phase| Some((phase.value.name.as_ref()?.value.as_str(), phase.value.length_s.as_ref()?.value))).collect()
    }

    /// Names of the phases of a timed exercise, in their usual order; empty for all others.
    pub fn phase_names(&self) -> impl Iterator<Item = &str> + Clone {
        let phases = self.dose.phases.as_ref().map_or(&[][..], |phases| &phases.value);
        phases.iter().filter_map(|phase| phase.value.name.as_ref()).map(|name| name.value.as_str())
    }
}

/// A dose somebody uses or has published.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct UsualDose {
    /// The dose in words.
    pub text: String,
    pub repetitions: Option<Range>,
    pub hold_s: Option<Range>,
    pub rest_s: Option<Range>,
    /// One repetition every so many seconds.
    pub every_s: Option<Range>,
    /// Counts in and out of a paced exercise.
    #[serde(rename = "in")]
    pub counts_in: Option<Range>,
    #[serde(rename = "out")]
    pub counts_out: Option<Range>,
    pub session_min: Option<Range>,
    pub sets_per_day: Option<Range>,
    pub days_per_week: Option<Range>,
    pub weeks: Option<Range>,
    /// The people it was used with.
    pub who: String,
    /// Where it stands.
    pub source: String,
    pub status: DoseStatus,
    /// What to know about it.
    pub note: Option<String>,
}

/// A number, or from-to.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(untagged)]
pub enum Range {
    One(f64),
    FromTo([f64; 2]),
}

impl Range {
    /// The smaller end.
    #[must_use]
    pub fn low(self) -> f64 {
        match self {
            Self::One(value) | Self::FromTo([value, _]) => value,
        }
    }

    /// The larger end.
    #[must_use]
    pub fn high(self) -> f64 {
        match self {
            Self::One(value) | Self::FromTo([_, value]) => value,
        }
    }
}

impl fmt::Display for Range {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::One(value) => write!(f, "{value}"),
            Self::FromTo([from, to]) => write!(f, "{from}-{to}"),
        }
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    exercise: Vec<CatalogueEntry>,
}

static CATALOGUE: LazyLock<Vec<CatalogueEntry>> = LazyLock::new(|| {
    // Embedded with the program; that each file can be read is tested.
    let files = FILES.iter().filter_map(|(group, text)| Some((*group, toml::from_str::<File>(text).ok()?)));
    files.flat_map(|(group, file)| file.exercise.into_iter().map(move |entry| CatalogueEntry { group, ..entry })).collect()
});

/// All exercises.
#[must_use]
pub fn catalogue() -> &'static [CatalogueEntry] {
    &CATALOGUE
}

/// The exercise of that id.
#[must_use]
pub fn find(id: &str) -> Option<&'static CatalogueEntry> {
    CATALOGUE.iter().find(|entry| entry.id == id)
}

/// The exercise is voiced softly on purpose, as a wind-down: its seconds are no loud voice.
#[must_use]
pub fn is_soft(id: &str) -> bool {
    find(id).is_some_and(|entry| entry.soft)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::limit_of;
    use std::collections::BTreeSet;

    #[test]
    fn every_file_of_the_catalogue_can_be_read() {
        for (name, text) in FILES {
            let read = toml::from_str::<File>(text);
            assert!(read.is_ok(), "{name}: {}", read.err().map_or(String::new(), |e| e.to_string()));
        }
    }

    #[test]
    fn ids_are_unique_and_fields_suit_the_timing() {
        let ids: BTreeSet<_> = catalogue().iter().map(|entry| &entry.id).collect();
        assert_eq!(ids.len(), catalogue().len());
        for entry in catalogue() {
            assert!(!entry.usual_doses.is_empty(), "{}", entry.id);
            assert!(!entry.glide || entry.timing == Timing::Voiced, "{}", entry.id);
            assert!(!entry.soft || entry.timing == Timing::Voiced, "{}", entry.id);
            assert!(!entry.sips || entry.timing == Timing::Repeated, "{}", entry.id);
            assert!(!entry.needs_setting || (entry.timing == Timing::Repeated && entry.needs_agreement), "{}", entry.id);
            assert!(!entry.melody || entry.timing == Timing::ReadAloud, "{}", entry.id);
            assert!(entry.climbs.is_none() || (entry.timing == Timing::Voiced && entry.dose.rungs.is_some()), "{}", entry.id);
            assert!(!entry.needs_agreement || !entry.cautions.is_empty(), "{}", entry.id);
            for (field, _) in entry.dose.present() {
                assert!(entry.dose_fields().contains(&field), "{}: {field}", entry.id);
            }
            for field in entry.limits.keys() {
                assert!(limit_of(None, field).is_some(), "{}: {field}", entry.id);
            }
        }
    }

    /// The exercises that safety keeps behind a clinician's agreement: swallows, head lifts, chin tucks, neck, jaw.
    #[test]
    fn exercises_that_can_harm_need_agreement() {
        for entry in catalogue() {
            let guarded = ["swallow", "head-lift", "chin-tuck", "neck", "jaw"].iter().any(|part| entry.id.contains(part));
            assert!(!guarded || entry.needs_agreement, "{}", entry.id);
        }
    }
}
