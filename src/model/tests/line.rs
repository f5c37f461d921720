use super::*;
use crate::Fact;
use crate::entries::{any_entry, at, begun, hold};
use proptest::prelude::*;

#[test]
fn a_line_reads_from_left_to_right_with_rounded_values() {
    let line = entry_line(&hold(40.300_04, at(1, 1, 2), "long-ah", 12.400_01, true)).expect("a line");
    assert_eq!(
        line,
        "{\"at_s\":40.3,\"kind\":\"hold_measured\",\"step\":1,\"set\":1,\"repetition\":2,\"exercise\":\"long-ah\",\
         \"onset_s\":27.9,\"offset_s\":40.3,\"duration_s\":12.4,\"f0_median_hz\":182.35,\"f0_span_st\":0.55,\
         \"level_mean_db\":-24.13,\"level_fall_db\":3.46,\"level_weighting\":\"A\",\"level_calibrated\":false,\
         \"breaks\":1,\"masked_s\":0.0,\"complete\":true}"
    );
}

#[test]
fn a_time_that_is_no_number_is_refused_by_name() {
    let mut entry = begun();
    entry.at_s = f64::NAN;
    let text = entry_line(&entry).expect_err("refuses").to_string();
    assert!(text.contains("session_begun") && text.contains("at_s"), "{text}");
    entry.at_s = 1.0;
    entry.fact = Fact::Rested { duration_s: f64::INFINITY };
    assert!(entry_line(&entry).is_err());
}

#[test]
fn the_published_schema_is_the_generated_one() {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/journal.schema.json");
    let generated = format!("{:#}\n", journal_schema());
    if std::env::var_os("UPDATE_SCHEMAS").is_some() {
        std::fs::write(&path, &generated).expect("writes the schema");
    }
    let stored = std::fs::read_to_string(&path).expect("docs/journal.schema.json is there");
    assert_eq!(stored, generated, "run the tests once with UPDATE_SCHEMAS=1");
}

#[test]
fn the_schema_refuses_what_is_not_a_journal_line() {
    let validator = jsonschema::validator_for(&journal_schema()).expect("a valid schema");
    let good = serde_json::json!({"at_s": 1.5, "kind": "rested", "step": 1, "set": 1, "repetition": 1, "duration_s": 5.0});
    assert!(validator.is_valid(&good));
    let with = |key: &str, value: Value| {
        let mut line = good.clone();
        line[key] = value;
        line
    };
    let mut half_place = good.clone();
    half_place.as_object_mut().expect("an object").shift_remove("set");
    for bad in
        [with("kind", "rest".into()), with("duration_s", Value::Null), with("durations", 1.into()), with("at_s", "1".into()), half_place]
    {
        assert!(!validator.is_valid(&bad), "{bad}");
    }
}

#[test]
fn a_partial_last_line_is_told_and_a_broken_line_before_is_refused_with_its_number() {
    let whole = journal_text(&[begun(), hold(9.0, at(1, 1, 1), "long-ah", 4.0, true)]).expect("a text");
    let cut = whole.get(..whole.len() - 30).expect("long enough");
    let journal = read_journal("a.jsonl", cut).expect("reads");
    assert_eq!(journal.entries, [begun()]);
    assert!(journal.partial.is_some_and(|text| text.starts_with("{\"at_s\":9.0")));

    let text = read_journal("a.jsonl", &format!("{{\"at_s\":\n{whole}")).expect_err("refuses").to_string();
    assert!(text.starts_with("a.jsonl, line 1:"), "{text}");
}

proptest! {
    #[test]
    fn every_line_is_valid_json_of_the_schema_and_comes_back_the_same(entry in any_entry()) {
        let validator = jsonschema::validator_for(&journal_schema()).expect("a valid schema");
        let line = entry_line(&entry).expect("a line");
        prop_assert!(!line.contains('\n'));
        let value: Value = serde_json::from_str(&line).expect("valid JSON");
        if let Err(error) = validator.validate(&value) {
            return Err(TestCaseError::fail(format!("{error} in {line}")));
        }
        let back = parse_line(&line).expect("reads");
        prop_assert_eq!(back.position, entry.position);
        prop_assert_eq!(entry_line(&back).expect("a line"), line);
    }
}
