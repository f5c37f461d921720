//! The value and the components of a trial's observation.

use serde_json::{Map, Value};

use super::build::{absent, note, plain, quantity};
use super::codes::Codes;
use crate::trial::{Level, Trial, calibration_name, discard_name, positive};
use model::Fact;

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

fn measured(code: &'static str, value: f64, unit: &str, ucum: &str) -> Main {
    if value.is_finite() {
        Main { code, key: "valueQuantity", value: quantity(value, unit, ucum) }
    } else {
        Main { code, key: "dataAbsentReason", value: not_measured() }
    }
}

fn not_measured() -> Value {
    absent("unknown", "Unknown", "It could not be measured.")
}

/// The main value of a trial; none for what is no trial.
pub(super) fn main_value(fact: &Fact) -> Option<Main> {
    Some(match fact {
        Fact::HoldMeasured { duration_s, .. } => measured("hold-duration", *duration_s, "s", "s"),
        Fact::PostureHeld { duration_s, .. } => measured("posture-duration", *duration_s, "s", "s"),
        Fact::RoundPaced { duration_s, .. } => measured("round-duration", *duration_s, "s", "s"),
        Fact::RepetitionDone { duration_s, .. } => measured("repetition-duration", *duration_s, "s", "s"),
        Fact::PhraseRead { duration_s, .. } => measured("phrase-duration", *duration_s, "s", "s"),
        Fact::SyllablesCounted { rate_hz, .. } => measured("syllable-rate", positive(*rate_hz), "syllable/s", "{syllable}/s"),
        Fact::QuestionAnswered { correct, .. } => Main { code: "question-answered", key: "valueBoolean", value: (*correct).into() },
        Fact::CategoryNamed { named, .. } => Main { code: "category-count", key: "valueInteger", value: named.len().into() },
        _ => return None,
    })
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

    /// A figure that older practices do not have.
    fn figure_if(&mut self, code: &str, value: Option<f64>, unit: &str, ucum: &str) {
        if let Some(value) = value {
            self.figure(code, value, unit, ucum);
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
        all.code("discarded-for", &format!("discard-{}", discard_name(why)));
    }
    if let Some(why) = trial.level_discard.filter(|_| trial.counts()) {
        all.code("level-discarded-for", &format!("discard-{}", discard_name(why)));
    }
    match &trial.kept.entry.fact {
        Fact::HoldMeasured {
            f0_median_hz,
            f0_span_st,
            f0_sd_st,
            level_fall_db,
            level_slope_db_per_s,
            level_weighting,
            quality,
            breaks,
            masked_s,
            ..
        } => {
            all.figure("f0-median", positive(*f0_median_hz), "Hz", "Hz");
            // Without a pitch they are written as 0.
            if *f0_median_hz > 0.0 {
                all.figure("f0-span", *f0_span_st, "semitone", "{semitone}");
                all.figure_if("f0-sd", *f0_sd_st, "semitone", "{semitone}");
            }
            level(&mut all, trial, level_weighting);
            all.figure("level-fall", *level_fall_db, "dB", "dB");
            all.figure_if("level-slope", *level_slope_db_per_s, "dB/s", "dB/s");
            all.integer("breaks", *breaks);
            all.put("masked-time", "valueQuantity", s(*masked_s));
            if let Some(quality) = quality {
                all.figure("cpps", quality.cpps_db, "dB", "dB");
                all.figure("jitter-local", quality.jitter_local_pct, "%", "%");
                all.figure("jitter-rap", quality.jitter_rap_pct, "%", "%");
                all.figure("jitter-ppq5", quality.jitter_ppq5_pct, "%", "%");
                all.figure("shimmer-local", quality.shimmer_local_pct, "%", "%");
                all.figure("shimmer-local-db", quality.shimmer_local_db, "dB", "dB");
                all.figure("shimmer-apq3", quality.shimmer_apq3_pct, "%", "%");
                all.figure("shimmer-apq11", quality.shimmer_apq11_pct, "%", "%");
                all.figure("hnr", quality.hnr_db, "dB", "dB");
            }
        }
        Fact::PostureHeld { prescribed_s, .. } => all.figure("prescribed-duration", *prescribed_s, "s", "s"),
        Fact::RoundPaced { beat_s, .. } => all.figure("beat", *beat_s, "s", "s"),
        Fact::RepetitionDone { ended_by, .. } => all.text("ended-by", ended_by),
        Fact::PhraseRead { phrase, f0_median_hz, level_weighting, .. } => {
            all.text("phrase", phrase);
            all.figure("f0-median", positive(*f0_median_hz), "Hz", "Hz");
            level(&mut all, trial, level_weighting);
        }
        Fact::SyllablesCounted { syllables, duration_s, irregularity_pct, .. } => {
            all.integer("syllables", *syllables);
            all.figure("duration", *duration_s, "s", "s");
            all.figure("syllable-irregularity", positive(*irregularity_pct), "%", "%");
        }
        Fact::QuestionAnswered { clue, answer, hint_given, duration_s, .. } => {
            all.text("clue", clue);
            if let Some(answer) = answer {
                all.text("answer", answer);
            }
            all.put("hint-given", "valueBoolean", (*hint_given).into());
            all.figure("thinking-time", *duration_s, "s", "s");
        }
        Fact::CategoryNamed { category, named, duration_s, .. } => {
            all.text("category", category);
            if !named.is_empty() {
                all.text("named", &named.join(", "));
            }
            all.figure("duration", *duration_s, "s", "s");
        }
        _ => {}
    }
    if let Some(over_room_db) = trial.over_room_db {
        all.figure("over-room", over_room_db, "dB", "dB");
    }
    all.list
}

/// The level on the scale that it has, with everything that it refers to.
fn level(all: &mut Components<'_>, trial: &Trial<'_>, weighting: &str) {
    match trial.level() {
        Level::Spl(db) => all.figure("mean-level", db, "dB SPL", "dB[SPL]"),
        Level::Relative(db) => all.figure("relative-level", db, "dB re full scale", "dB"),
        Level::None if trial.auto_gain() => {
            all.put("mean-level", "dataAbsentReason", absent("unsupported", "Unsupported", "The microphone changed its own volume."));
        }
        Level::None => all.put("mean-level", "dataAbsentReason", not_measured()),
    }
    match weighting {
        "A" => all.code("level-weighting", "weighting-a"),
        "C" => all.code("level-weighting", "weighting-c"),
        "Z" => all.code("level-weighting", "weighting-z"),
        other => all.text("level-weighting", other),
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
        all.code("level-calibration", &format!("calibration-{}", calibration_name(terms.calibration)));
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
