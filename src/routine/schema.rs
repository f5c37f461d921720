//! The published JSON Schema of a routine file, made from the types it is read into and from the catalogue.

use std::sync::LazyLock;

use schemars::JsonSchema;
use schemars::generate::SchemaSettings;
use serde_json::{Map, Value, json};

use super::bounds::{LANGUAGES, MAX_STAGES, MAX_STEPS};
use super::catalogue::{CatalogueEntry, catalogue};
use super::file::RoutineFile;
use super::limits::limit_of;
use super::looking_back::AFTER_A_PRACTICE;

/// The types alone, everything in line, without `null`: TOML has none.
static OF_FILE: LazyLock<Value> = LazyLock::new(of_type::<RoutineFile>);

/// The schema of a type that a file is read into, everything in line, without `null`.
pub fn of_type<T: JsonSchema>() -> Value {
    let settings = SchemaSettings::draft2020_12().with(|settings| settings.inline_subschemas = true);
    let mut schema = settings.into_generator().into_root_schema_for::<T>().to_value();
    without_null(&mut schema);
    schema
}

pub(super) fn of_file() -> &'static Value {
    &OF_FILE
}

/// JSON Schema (draft 2020-12) of a routine, stored as `docs/routine.schema.json`.
///
/// Beyond the types it knows, for each exercise, which fields belong to it, their limits, and whether the cautions
/// must be acknowledged. What it cannot say (command wordings in texts, the lexicon) `routine check` says.
#[must_use]
pub fn schema() -> Value {
    let types = of_file();
    let mut schema = json!({ "$schema": types["$schema"], "title": "tidecount routine", "description": types["description"] });
    for key in ["type", "required", "properties", "additionalProperties"] {
        schema[key] = types[key].clone();
    }
    for field in ["feedback_every", "loud_limit_s", "agreement_months"] {
        add_limit(&mut schema["properties"][field], None, field);
    }
    for field in ["ask_again_after_s", "asks", "give_up_after_s"] {
        add_limit(&mut schema["properties"]["no_answer"]["properties"][field], None, field);
    }
    schema["properties"]["title"]["minLength"] = json!(1);
    schema["properties"]["language"]["examples"] = json!(LANGUAGES);
    let plan = &mut schema["properties"]["plan"];
    plan["minItems"] = json!(1);
    let planned = &mut plan["items"]["properties"];
    planned["days"]["minItems"] = json!(1);
    planned["days"]["uniqueItems"] = json!(true);
    planned["days"]["items"]["enum"] = super::Weekday::ALL.iter().map(|day| day.name()).collect();
    planned["at"]["pattern"] = json!("^([01]?[0-9]|2[0-3]):[0-5][0-9]$");
    let ratings = &mut schema["properties"]["ratings"];
    ratings["minItems"] = json!(1);
    ratings["uniqueItems"] = json!(true);
    ratings["items"]["enum"] = AFTER_A_PRACTICE.iter().map(|rating| rating.name()).collect();
    let steps = &mut schema["properties"]["step"];
    steps["minItems"] = json!(1);
    steps["maxItems"] = json!(MAX_STEPS);
    let step = &mut steps["items"];
    let ids: Vec<_> = catalogue().iter().map(|entry| entry.id.as_str()).collect();
    step["properties"]["exercise"]["enum"] = json!(ids);
    for list in ["phrases", "questions", "packs", "phases"] {
        step["properties"][list]["minItems"] = json!(1);
    }
    step["allOf"] = catalogue().iter().map(rule_of).collect();
    schema
}

/// "If it is this exercise, then these fields with these limits."
fn rule_of(entry: &CatalogueEntry) -> Value {
    let mut properties = Map::new();
    for field in entry.dose_fields() {
        let mut limits = json!({});
        match field {
            "phases" => {
                limits["items"]["properties"]["name"]["enum"] = entry.phase_names().collect();
                add_limit(&mut limits["items"]["properties"]["length_s"], Some(entry), "phase_s");
            }
            "ramp" => {
                add_limit(&mut limits["properties"]["days"], None, "days");
                let stages = &mut limits["properties"]["stages"];
                stages["minItems"] = json!(2);
                stages["maxItems"] = json!(MAX_STAGES);
                stages["items"] = stage_rule(entry);
            }
            "cues_at_s" => add_limit(&mut limits["items"], Some(entry), field),
            _ => add_limit(&mut limits, Some(entry), field),
        }
        properties.insert(field.to_owned(), if limits == json!({}) { json!(true) } else { limits });
    }
    let mut allowed: Vec<_> = entry.dose_fields();
    allowed.extend(["exercise", "cautions_acknowledged", "clinician_word"]);
    if entry.postures.len() > 1 {
        allowed.push("posture");
        properties.insert("posture".to_owned(), json!({ "enum": entry.postures }));
    }
    let mut required: Vec<_> = entry.required_fields().to_vec();
    let asks = required.contains(&"questions");
    if asks {
        required.clear();
    }
    if entry.needs_agreement {
        required.push("cautions_acknowledged");
        properties.insert("cautions_acknowledged".to_owned(), json!({ "const": true }));
    }
    let mut rule = json!({ "properties": properties, "propertyNames": { "enum": allowed } });
    if !required.is_empty() {
        rule["required"] = json!(required);
    }
    if asks {
        rule["anyOf"] = json!([{ "required": ["questions"] }, { "required": ["packs"] }]);
    }
    if entry.sips {
        rule["dependentSchemas"] = json!({ "sip_every": {
            "required": ["sips_enabled_by_clinician"],
            "properties": { "sips_enabled_by_clinician": { "const": true } }
        } });
    }
    json!({ "if": { "properties": { "exercise": { "const": entry.id } }, "required": ["exercise"] }, "then": rule })
}

/// The fields of one stage with their limits.
fn stage_rule(entry: &CatalogueEntry) -> Value {
    let fields = entry.stage_fields();
    let mut properties = Map::new();
    for field in fields {
        let mut limits = json!({});
        match *field {
            "phases" => {
                limits["items"]["properties"]["name"]["enum"] = entry.phase_names().collect();
                add_limit(&mut limits["items"]["properties"]["length_s"], Some(entry), "phase_s");
            }
            "hold_s" => add_limit(&mut limits, Some(entry), "phase_s"),
            _ => add_limit(&mut limits, Some(entry), field),
        }
        properties.insert((*field).to_owned(), limits);
    }
    json!({ "properties": properties, "propertyNames": { "enum": fields }, "minProperties": 1 })
}

fn add_limit(schema: &mut Value, entry: Option<&CatalogueEntry>, field: &str) {
    if let Some(limit) = limit_of(entry, field) {
        schema["minimum"] = number(limit.min);
        schema["maximum"] = number(limit.max);
    }
}

/// 3 rather than 3.0.
fn number(value: f64) -> Value {
    #[allow(clippy::cast_possible_truncation, reason = "only whole values within i32 are cast")]
    if value.fract() == 0.0 && value.abs() < f64::from(i32::MAX) { json!(value as i64) } else { json!(value) }
}

/// Optional fields are made by schemars as "this or null"; in TOML a field is there or not.
fn without_null(schema: &mut Value) {
    match schema {
        Value::Object(map) => {
            if let Some(Value::Array(types)) = map.get_mut("type") {
                types.retain(|name| name != "null");
                if let [only] = &types[..] {
                    let only = only.clone();
                    map.insert("type".to_owned(), only);
                }
            }
            if let Some(Value::Array(mut choices)) = map.remove("anyOf") {
                choices.retain(|choice| choice["type"] != "null");
                if let (1, Some(Value::Object(only))) = (choices.len(), choices.pop()) {
                    for (key, value) in only {
                        map.entry(key).or_insert(value);
                    }
                }
            }
            map.remove("default");
            map.remove("format");
            map.values_mut().for_each(without_null);
        }
        Value::Array(items) => items.iter_mut().for_each(without_null),
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The lists in `file.rs` and `dose.rs` are written by hand; the schema is not.
    #[test]
    fn every_field_of_a_step_belongs_to_some_exercise() {
        let step = &of_file()["properties"]["step"]["items"]["properties"];
        let fields: Vec<_> = step.as_object().expect("object").keys().cloned().collect();
        assert!(fields.len() > 20);
        for field in &fields {
            let common = ["exercise", "cautions_acknowledged", "clinician_word", "posture"].contains(&field.as_str());
            assert!(common || catalogue().iter().any(|entry| entry.dose_fields().contains(&field.as_str())), "{field}");
        }
        for entry in catalogue() {
            for field in entry.dose_fields() {
                assert!(fields.iter().any(|known| known == field), "{field}");
            }
        }
    }

    #[test]
    fn every_number_of_a_step_has_a_limit() {
        let step = &of_file()["properties"]["step"]["items"]["properties"];
        for (field, schema) in step.as_object().expect("object") {
            if matches!(schema["type"].as_str(), Some("integer" | "number")) {
                assert!(limit_of(None, field).is_some(), "{field}");
            }
        }
    }
}
