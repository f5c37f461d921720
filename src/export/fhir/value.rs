//! The value and the components of a trial's observation.

use serde_json::{Map, Value};

use super::build::{absent, note, plain, quantity};
use super::codes::Codes;
use crate::trial::{Level, Trial};
use model::{Fact, FrequencyWeighting, Measure, TrialKind, Unit};

/// What an observation is about: its code, and `value[x]` or why there is none, under its key.
pub(super) struct Main {
    pub code: &'static str,
    pub key: &'static str,
    pub value: Value,
}

/// Seconds.
fn s(value: f64) -> Value {
    quantity(value, "s", "s")
}

fn measured(measure: Measure, fact: &Fact) -> Option<Main> {
    let code = measure.declared().term.code;
    let value = measure.of(fact)?;
    Some(match measure.declared().unit {
        _ if !value.is_finite() => Main { code, key: "dataAbsentReason", value: not_measured() },
        Unit::Count => Main { code, key: "valueInteger", value: whole(value) },
        unit => Main { code, key: "valueQuantity", value: quantity(value, unit.written(), unit.ucum()) },
    })
}

/// A count as FHIR takes it.
fn whole(count: f64) -> Value {
    // Saturates.
    (count as u32).into()
}

fn not_measured() -> Value {
    absent("unknown", "Unknown", "It could not be measured.")
}

/// What an observation of such a trial is of; of a question it is whether it was answered.
fn main_measure(kind: TrialKind) -> Option<Measure> {
    match kind {
        TrialKind::Hold => Some(Measure::HoldS),
        TrialKind::Posture => Some(Measure::PostureS),
        TrialKind::Round => Some(Measure::RoundS),
        TrialKind::Repetition => Some(Measure::RepetitionS),
        TrialKind::Phrase => Some(Measure::PhraseS),
        TrialKind::Talk => Some(Measure::TalkS),
        TrialKind::Syllables => Some(Measure::SyllableRateHz),
        TrialKind::Category => Some(Measure::NamedCount),
        TrialKind::Question => None,
    }
}

/// The main value of a trial; none for what is no trial.
pub(super) fn main_value(fact: &Fact) -> Option<Main> {
    match fact {
        Fact::QuestionAnswered { correct, .. } => Some(Main { code: "question-answered", key: "valueBoolean", value: (*correct).into() }),
        _ => measured(main_measure(fact.trial()?.kind)?, fact),
    }
}

/// The components in the making.
struct Components<'a> {
    codes: &'a Codes,
    list: Vec<Value>,
}

impl Components<'_> {
    fn put(&mut self, code: &str, key: &str, value: Value) {
        let mut component = Map::new();
        component.insert("code".into(), self.codes.own(code));
        component.insert(key.to_owned(), value);
        self.list.push(Value::Object(component));
    }

    /// A figure; one that could not be had says so.
    fn figure(&mut self, code: &str, value: f64, unit: &str, ucum: &str) {
        if value.is_finite() {
            self.put(code, "valueQuantity", quantity(value, unit, ucum));
        } else {
            self.put(code, "dataAbsentReason", not_measured());
        }
    }

    /// A measure, where the practice kept it; older ones may not.
    fn measure(&mut self, measure: Measure, fact: &Fact) {
        if let Some(Main { code, key, value }) = measured(measure, fact) {
            self.put(code, key, value);
        }
    }

    fn text(&mut self, code: &str, text: &str) {
        self.put(code, "valueString", plain(text).into());
    }

    fn integer(&mut self, code: &str, value: u32) {
        self.put(code, "valueInteger", value.into());
    }

    fn code(&mut self, code: &str, value: &str) {
        let value = self.codes.own(value);
        self.put(code, "valueCodeableConcept", value);
    }
}

/// Every component: the exercise, the conditions, the further figures.
pub(super) fn components(trial: &Trial<'_>, exercise: Value, codes: &Codes) -> Vec<Value> {
    let mut all = Components { codes, list: Vec::new() };
    all.put("exercise", "valueCodeableConcept", exercise);
    if let Some(at) = trial.position {
        all.integer("set", at.set);
        all.integer("repetition", at.repetition);
    }
    if let Some(why) = trial.discard {
        all.code("discarded-for", &format!("discard-{}", why.name()));
    }
    if let Some(why) = trial.level_discard.filter(|_| trial.counts()) {
        all.code("level-discarded-for", &format!("discard-{}", why.name()));
    }
    let fact = &trial.kept.entry.fact;
    texts(&mut all, fact);
    for measure in Measure::of_kind(trial.kind).filter(|measure| Some(*measure) != main_measure(trial.kind)) {
        match fact.level() {
            Some(of) if measure.is_level() => level(&mut all, trial, of.weighting),
            _ => all.measure(measure, fact),
        }
    }
    if let Some(over_room_db) = trial.over_room_db {
        all.figure("over-room", over_room_db, "dB", "dB");
    }
    all.list
}

/// What a trial tells besides its figures.
fn texts(all: &mut Components<'_>, fact: &Fact) {
    match fact {
        Fact::RepetitionDone { ended_by, .. } => all.text("ended-by", ended_by),
        Fact::Talked { prompt: Some(prompt), .. } => all.text("prompt", prompt),
        Fact::PhraseRead { phrase, .. } => all.text("phrase", phrase),
        Fact::QuestionAnswered { clue, answer, hint_given, .. } => {
            all.text("clue", clue);
            if let Some(answer) = answer {
                all.text("answer", answer);
            }
            all.put("hint-given", "valueBoolean", (*hint_given).into());
        }
        Fact::CategoryNamed { category, named, .. } => {
            all.text("category", category);
            if !named.is_empty() {
                all.text("named", &named.join(", "));
            }
        }
        _ => {}
    }
}

/// The level on the scale that it has, with everything that it refers to.
fn level(all: &mut Components<'_>, trial: &Trial<'_>, weighting: &FrequencyWeighting) {
    match trial.level() {
        Level::Spl(db) => all.figure("mean-level", db, "dB SPL", "dB[SPL]"),
        Level::Relative(db) => all.figure("relative-level", db, "dB re full scale", "dB"),
        Level::None if trial.auto_gain() => {
            all.put("mean-level", "dataAbsentReason", absent("unsupported", "Unsupported", "The microphone changed its own volume."));
        }
        Level::None => all.put("mean-level", "dataAbsentReason", not_measured()),
    }
    match weighting {
        FrequencyWeighting::A => all.code("level-weighting", "weighting-a"),
        FrequencyWeighting::C => all.code("level-weighting", "weighting-c"),
        FrequencyWeighting::Z => all.code("level-weighting", "weighting-z"),
        FrequencyWeighting::Other(other) => all.text("level-weighting", other),
    }
    if let Some(terms) = trial.level_terms() {
        all.text("level-time-weighting", &terms.time_weighting);
        match terms.distance_cm {
            Some(cm) => all.figure("microphone-distance", cm, "cm", "cm"),
            None => all.put(
                "microphone-distance",
                "dataAbsentReason",
                absent("unknown", "Unknown", "Nobody said how far the microphone stood."),
            ),
        }
        all.code("level-calibration", &format!("calibration-{}", terms.calibration.name()));
        if terms.clipped_s > 0.0 {
            all.put("clipped-time", "valueQuantity", s(terms.clipped_s));
        }
    }
}

/// The notes of a trial: why it, or its level, does not count, in words.
pub(super) fn notes(trial: &Trial<'_>) -> Vec<Value> {
    let whole = trial.discard.map(|why| format!("Discarded: {}", why.words()));
    let level = trial.level_discard.filter(|_| trial.counts()).map(|why| format!("Its level is discarded: {}", why.words()));
    whole.into_iter().chain(level).map(|text| note(&text)).collect()
}
