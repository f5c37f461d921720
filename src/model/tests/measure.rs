use super::*;
use crate::{Entry, FactKind, journal_schema};
use serde_json::Value;
use std::collections::BTreeSet;

/// The places on the sample clock, which every trial has and nobody measures, and what was asked for.
const PLACES: [&str; 6] = ["onset_s", "offset_s", "from_s", "to_s", "goal_db", "goal_st"];

fn is_number(property: &Value) -> bool {
    let is = |word: &Value| matches!(word.as_str(), Some("number" | "integer"));
    let found = &property["type"];
    is(found) || found.as_array().is_some_and(|words| words.iter().any(is))
}

fn numbers(schema: &Value) -> BTreeSet<String> {
    let properties = schema["properties"].as_object().expect("properties");
    properties.iter().filter(|(_, property)| is_number(property)).map(|(name, _)| name.clone()).collect()
}

/// A figure that somebody adds to a trial's fact and forgets to declare is found here.
#[test]
fn every_number_of_a_trial_in_the_journal_is_declared() {
    let schema = journal_schema();
    let part = |name: &str| numbers(&schema["$defs"][name]);
    for kind in TrialKind::ALL {
        let fact = fact_of(kind);
        let all = schema["oneOf"].as_array().expect("kinds");
        let own = all.iter().find(|one| one["properties"]["kind"]["const"] == fact.name()).expect("the kind's schema");
        let mut told = numbers(own);
        match kind {
            TrialKind::Hold => told.extend(part("VoiceQuality").into_iter().chain(part("Climb"))),
            TrialKind::Phrase => told.extend(part("Prosody")),
            _ => {}
        }
        let declared: BTreeSet<String> = Measure::of_kind(kind).map(|measure| measure.declared().field.to_owned()).collect();
        let missing: Vec<&String> = told.iter().filter(|name| !PLACES.contains(&name.as_str()) && !declared.contains(*name)).collect();
        assert!(missing.is_empty(), "{}: {missing:?} stand in no row of measure.rs", kind.name());
        // What is declared is in the journal; what was named is a list there.
        let unknown: Vec<&String> = declared.iter().filter(|name| *name != "named" && !told.contains(*name)).collect();
        assert!(unknown.is_empty(), "{}: {unknown:?} are no fields of the journal", kind.name());
    }
}

fn fact_of(kind: TrialKind) -> FactKind {
    match kind {
        TrialKind::Hold => FactKind::HoldMeasured,
        TrialKind::Posture => FactKind::PostureHeld,
        TrialKind::Round => FactKind::RoundPaced,
        TrialKind::Repetition => FactKind::RepetitionDone,
        TrialKind::Phrase => FactKind::PhraseRead,
        TrialKind::Talk => FactKind::Talked,
        TrialKind::Syllables => FactKind::SyllablesCounted,
        TrialKind::Question => FactKind::QuestionAnswered,
        TrialKind::Category => FactKind::CategoryNamed,
    }
}

#[test]
fn each_is_read_from_its_own_field() {
    let line = r#"{"at_s":9.0,"kind":"hold_measured","exercise":"long-ah","onset_s":1.0,"offset_s":9.0,"duration_s":1,"f0_median_hz":2,
        "f0_span_st":3,"level_mean_db":5,"level_fall_db":6,"level_weighting":"A","level_calibrated":false,"f0_sd_st":4,
        "level_slope_db_per_s":7,"quality":{"from_s":0,"to_s":0,"cpps_db":12,"jitter_local_pct":13,"jitter_rap_pct":14,"jitter_ppq5_pct":15,
        "shimmer_local_pct":16,"shimmer_local_db":17,"shimmer_apq3_pct":18,"shimmer_apq11_pct":19,"hnr_db":20},"climb":{"rung":"high","from":"middle",
        "step_db":8,"step_st":9,"goal_db":5,"goal_st":null},"breaks":10,"masked_s":11,"complete":true}"#;
    let entry: Entry = serde_json::from_str(line).expect("an entry");
    let read: Vec<f64> = Measure::of_kind(TrialKind::Hold).filter_map(|measure| measure.measured(&entry.fact)).collect();
    assert_eq!(read, (1..=20).map(f64::from).collect::<Vec<f64>>());
    assert_eq!(Fact::read(FactKind::HoldMeasured, line).expect("reads"), entry.fact);
    assert!(Measure::of_kind(TrialKind::Phrase).all(|measure| measure.of(&entry.fact).is_none()));
}

#[test]
fn units_are_those_of_the_names_and_names_are_told_once() {
    for measure in Measure::ALL {
        let declared = measure.declared();
        let named = Unit::of_name(declared.field).unwrap_or(Unit::Count);
        assert_eq!(named.kept_decimals(), declared.unit.kept_decimals(), "{}", declared.field);
        assert_eq!(Measure::of_id(declared.id), Some(*measure));
        assert_eq!(serde_json::to_value(measure).expect("writes"), declared.id);
    }
    let ids: BTreeSet<&str> = Measure::ALL.iter().map(|measure| measure.id()).collect();
    assert_eq!(ids.len(), Measure::ALL.len());
}
