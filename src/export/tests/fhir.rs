//! The bundle, against the official JSON Schema and by what it says. The full validation is `tests/checks/fhir/validate.sh`.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use super::*;
use crate::samples::{ROUTINE, two_evenings};
use crate::{Outline, Practice};
use model::{KeptPractice, Source};
use session::{Arg, Line};
use speak::Words;

fn bundle_of(practices: &[KeptPractice], kind: BundleKind) -> Value {
    let words = Words::english().expect("words");
    let say =
        |key: &str, given: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: given.to_vec() }).unwrap_or_default();
    let heads: Vec<_> = practices.iter().map(|kept| kept.head.clone()).collect();
    let mut export = FhirExport::begin(Vec::new(), kind, "grandpa", &heads, "2026-10-27T09:00:00.000+01:00", &say).expect("begins");
    let outline = Outline::of(ROUTINE);
    for kept in practices {
        export.practice(&Practice::of(kept, &outline, false)).expect("writes");
    }
    for state in crate::samples::goals() {
        export.goal(&crate::GoalOn { client: "grandpa", state: &state, on: jiff::civil::date(2026, 11, 30) }).expect("writes");
    }
    serde_json::from_slice(&export.finish().expect("ends")).expect("JSON")
}

fn bundle() -> Value {
    bundle_of(&two_evenings(), BundleKind::Collection)
}

fn resources<'a>(bundle: &'a Value, kind: &str) -> Vec<&'a Value> {
    bundle["entry"]
        .as_array()
        .expect("entries")
        .iter()
        .map(|entry| &entry["resource"])
        .filter(|resource| resource["resourceType"] == kind)
        .collect()
}

/// Own code of a CodeableConcept.
fn code(concept: &Value) -> &str {
    let coding = concept["coding"].as_array().and_then(|codings| codings.iter().find(|coding| coding["system"] == SYSTEM));
    coding.and_then(|coding| coding["code"].as_str()).unwrap_or_default()
}

fn component<'a>(observation: &'a Value, wanted: &str) -> Option<&'a Value> {
    observation["component"].as_array()?.iter().find(|component| code(&component["code"]) == wanted)
}

/// fhir.schema.json of FHIR R4 (4.0), the slice for these resources: tests/checks/fhir/slice_schema.py.
#[test]
fn the_bundle_is_valid_against_the_official_json_schema() {
    let schema: Value = serde_json::from_str(include_str!("../../../tests/checks/fhir/fhir.schema.slice.json")).expect("JSON");
    let validator = jsonschema::draft6::new(&schema).expect("a valid schema");
    for bundle in [bundle(), bundle_of(&two_evenings(), BundleKind::Transaction)] {
        // One by one first: a fault inside a bundle of alternatives is told badly.
        for entry in bundle["entry"].as_array().expect("entries") {
            let resource = &entry["resource"];
            assert!(validator.is_valid(resource), "{resource:#}");
        }
        assert!(validator.is_valid(&bundle));
    }
    let mut bad = bundle();
    bad["entry"][0]["resource"]["names"] = "x".into();
    assert!(!validator.is_valid(&bad), "it can fail");
}

#[test]
fn every_reference_leads_to_a_resource_and_every_code_stands_in_the_code_system() {
    let bundle = bundle();
    let urls: BTreeSet<&str> =
        bundle["entry"].as_array().expect("entries").iter().map(|entry| entry["fullUrl"].as_str().expect("a URL")).collect();
    let codes: BTreeMap<&str, &str> = resources(&bundle, "CodeSystem")[0]["concept"]
        .as_array()
        .expect("concepts")
        .iter()
        .map(|concept| (concept["code"].as_str().expect("a code"), concept["display"].as_str().expect("a display")))
        .collect();
    fn walk(value: &Value, see: &mut impl FnMut(&serde_json::Map<String, Value>)) {
        match value {
            Value::Object(map) => {
                see(map);
                map.values().for_each(|inner| walk(inner, see));
            }
            Value::Array(list) => list.iter().for_each(|inner| walk(inner, see)),
            _ => {}
        }
    }
    let (mut references, mut own) = (0, 0);
    walk(&bundle, &mut |map| {
        if let Some(reference) = map.get("reference").and_then(Value::as_str) {
            references += 1;
            assert!(urls.contains(reference), "{reference} leads nowhere");
        }
        if map.get("system").is_some_and(|system| system == SYSTEM) && map.contains_key("code") {
            own += 1;
            let (code, display) = (map["code"].as_str().expect("a code"), map["display"].as_str());
            assert_eq!(codes.get(code).copied(), display, "{code}");
        }
    });
    assert!(references > 50 && own > 100, "{references}, {own}");
    assert_eq!(urls.len(), bundle["entry"].as_array().expect("entries").len(), "no resource stands twice");
}

#[test]
fn a_trial_is_an_observation_with_ucum_units_and_conditions() {
    let bundle = bundle();
    let holds: Vec<&Value> = resources(&bundle, "Observation").into_iter().filter(|one| code(&one["code"]) == "hold-duration").collect();
    assert_eq!(holds.len(), 5 + 1);
    let first = holds[0];
    assert_eq!(first["valueQuantity"], serde_json::json!({"value": 8.25, "unit": "s", "system": "http://unitsofmeasure.org", "code": "s"}));
    assert_eq!(
        first["effectivePeriod"],
        serde_json::json!({"start": "2026-10-22T18:30:25.250+02:00", "end": "2026-10-22T18:30:33.500+02:00"})
    );
    let level = component(first, "mean-level").expect("a level");
    assert_eq!((level["valueQuantity"]["value"].as_f64(), level["valueQuantity"]["code"].as_str()), (Some(74.2), Some("dB[SPL]")));
    assert_eq!(code(&component(first, "level-calibration").expect("its calibration")["valueCodeableConcept"]), "calibration-meter");
    assert_eq!(component(first, "microphone-distance").expect("a distance")["valueQuantity"]["value"].as_f64(), Some(30.0));
    // In noise and cut off: kept, and said why they do not count.
    assert_eq!(code(&component(holds[1], "discarded-for").expect("a reason")["valueCodeableConcept"]), "discard-in-noise");
    assert_eq!(code(&component(holds[2], "discarded-for").expect("a reason")["valueCodeableConcept"]), "discard-cut-off");
    assert!(holds[2]["note"][0]["text"].as_str().is_some_and(|text| text.contains("cut off")));
    // The microphone changed its volume: no level at all.
    assert!(
        component(holds[3], "mean-level")
            .is_some_and(|level| level.get("valueQuantity").is_none() && level.get("dataAbsentReason").is_some())
    );
    // The device carries the calibration.
    let metric = resources(&bundle, "DeviceMetric")
        .into_iter()
        .find(|metric| first["device"]["reference"].as_str().is_some_and(|url| url.ends_with(metric["id"].as_str().unwrap_or("-"))));
    assert_eq!(metric.expect("the metric")["calibration"][0]["state"], "calibrated");
}

#[test]
fn a_level_that_is_not_calibrated_is_nowhere_given_as_sound_pressure() {
    let bundle = bundle();
    for observation in resources(&bundle, "Observation") {
        let Some(calibration) = component(observation, "level-calibration") else { continue };
        let calibrated = !matches!(code(&calibration["valueCodeableConcept"]), "calibration-none" | "calibration-void");
        let text = observation.to_string();
        assert!(calibrated || !text.contains("dB[SPL]"), "{text}");
        assert!(!calibrated || component(observation, "relative-level").is_none());
    }
    let phrase = resources(&bundle, "Observation").into_iter().find(|one| code(&one["code"]) == "phrase-duration").expect("the phrase");
    assert_eq!(component(phrase, "relative-level").expect("a level")["valueQuantity"]["code"], "dB");
    assert!(component(phrase, "f0-median").expect("a pitch").get("dataAbsentReason").is_some(), "what was not measured says so");
}

#[test]
fn the_best_of_three_has_its_trials_as_members() {
    let bundle = bundle();
    let bests: Vec<&Value> = resources(&bundle, "Observation").into_iter().filter(|one| code(&one["code"]) == "best-of-three").collect();
    let best = bests[0];
    assert_eq!(best["valueQuantity"]["value"].as_f64(), Some(8.75));
    assert_eq!(best["hasMember"].as_array().map(Vec::len), Some(2));
    assert_eq!(component(best, "trials-made").expect("how many")["valueInteger"], 4);
    let glide = bests[1];
    assert_eq!((glide["valueQuantity"]["value"].as_f64(), glide["valueQuantity"]["code"].as_str()), (Some(1.25), Some("{semitone}")));
}

#[test]
fn practices_and_steps_are_procedures_with_status_and_reason() {
    let bundle = bundle();
    let procedures = resources(&bundle, "Procedure");
    let told: Vec<(&str, &str, &str)> =
        procedures.iter().map(|one| (code(&one["code"]), one["status"].as_str().unwrap_or_default(), code(&one["statusReason"]))).collect();
    assert_eq!(
        told[..6],
        [
            ("practice", "stopped", "reason-finished"),
            ("exercise-long-ah", "completed", ""),
            ("exercise-glide-up", "stopped", "reason-skipped"),
            ("exercise-functional-phrases", "completed", ""),
            ("exercise-shoulder-rolls", "stopped", "reason-dizzy"),
            ("exercise-rest", "not-done", "reason-finished"),
        ]
    );
    assert_eq!(told[6], ("practice", "stopped", "reason-interrupted"));
    assert!(procedures[1]["partOf"][0]["reference"].as_str().is_some_and(|url| url.ends_with(procedures[0]["id"].as_str().unwrap_or("-"))));
    let symptom = resources(&bundle, "Observation").into_iter().find(|one| code(&one["code"]) == "symptom-reported").expect("the symptom");
    assert_eq!(code(&symptom["valueCodeableConcept"]), "symptom-dizzy");
}

#[test]
fn the_routine_is_a_plan_with_an_order_for_each_exercise() {
    let bundle = bundle();
    let plans = resources(&bundle, "CarePlan");
    assert_eq!((plans.len(), plans[0]["status"].as_str(), plans[0]["activity"].as_array().map(Vec::len)), (1, Some("active"), Some(5)));
    assert_eq!(plans[0]["period"]["start"], "2026-10-22T18:30:05.250+02:00");
    let orders = resources(&bundle, "ServiceRequest");
    let first = orders[0];
    assert_eq!((first["intent"].as_str(), code(&first["code"])), (Some("order"), "exercise-long-ah"));
    assert_eq!(first["quantityQuantity"]["value"].as_f64(), Some(3.0));
    let repeat = &first["occurrenceTiming"]["repeat"];
    assert_eq!(
        (repeat["dayOfWeek"].clone(), repeat["timeOfDay"].clone()),
        (serde_json::json!(["mon", "thu"]), serde_json::json!(["18:30:00"]))
    );
    assert!(first["orderDetail"][0]["text"].as_str().is_some_and(|dose| dose.contains('8')), "{first}");
}

#[test]
fn a_second_export_brings_the_same_identifiers_and_other_clients_others() {
    let ids = |bundle: &Value| -> Vec<String> {
        bundle["entry"].as_array().expect("entries").iter().map(|entry| entry["fullUrl"].to_string()).collect()
    };
    let (one, again) = (bundle(), bundle_of(&two_evenings(), BundleKind::Transaction));
    assert_eq!(ids(&one), ids(&again));
    let more = ids(&bundle_of(&two_evenings()[..1], BundleKind::Collection));
    assert!(more.iter().all(|id| ids(&one).contains(id)), "an earlier export is part of a later one");
    let mut elsewhere = two_evenings();
    for kept in &mut elsewhere {
        kept.head.started_at = kept.head.started_at.checked_add(jiff::SignedDuration::from_millis(1)).expect("a time");
    }
    let elsewhere = ids(&bundle_of(&elsewhere, BundleKind::Collection));
    let shared: Vec<&String> = elsewhere.iter().filter(|id| ids(&one).contains(id)).collect();
    assert_eq!(shared.len(), 2, "program and code system alone are the same in another household with a client of that name");
    assert_eq!(again["entry"][0]["request"]["method"], "PUT");
    assert!(one["entry"][0].get("request").is_none());
}

#[test]
fn what_no_person_made_is_marked_as_test_data() {
    let mut rehearsed = two_evenings();
    for kept in &mut rehearsed {
        kept.head.source = Source::Rehearsal;
    }
    let bundle = bundle_of(&rehearsed, BundleKind::Collection);
    let marked = |resource: &&Value| resource["meta"]["security"][0]["code"] == "HTEST";
    assert!(resources(&bundle, "Observation").iter().all(marked) && resources(&bundle, "Procedure").iter().all(marked));
    assert!(!resources(&self::bundle(), "Observation").iter().any(marked));
}

#[test]
fn names_and_texts_from_outside_stay_text() {
    let mut practices = two_evenings();
    for kept in &mut practices {
        kept.head.routine_title = "<script>\"&\u{1}".into();
    }
    let bundle = bundle_of(&practices, BundleKind::Collection);
    let div = resources(&bundle, "CarePlan")[0]["text"]["div"].as_str().expect("a text").to_owned();
    assert!(div.contains("&lt;script&gt;") && !div.contains("<script>") && !div.contains('\u{1}'), "{div}");
}

#[test]
fn a_goal_has_its_target_its_day_and_how_it_stands() {
    let bundle = bundle();
    let goals = resources(&bundle, "Goal");
    let [measured, daily] = goals[..] else { panic!("two goals: {goals:#?}") };
    let target = &measured["target"][0];
    assert_eq!((code(&target["measure"]), target["dueDate"].as_str()), (model::Measure::HoldS.declared().term.code, Some("2027-01-31")));
    assert_eq!(target["detailQuantity"]["value"], 12.0);
    assert_eq!((target["detailQuantity"]["comparator"].as_str(), target["detailQuantity"]["code"].as_str()), (Some(">="), Some("s")));
    let status = |goal: &Value| (goal["lifecycleStatus"].clone(), goal["achievementStatus"]["coding"][0]["code"].clone());
    assert_eq!(status(measured), ("active".into(), "not-achieved".into()));
    assert_eq!(status(daily), ("completed".into(), "achieved".into()));
    assert!(daily["target"][0]["measure"].is_null(), "people judge it");
    assert_eq!(bundle, self::bundle(), "the same at each export");
}
