//! Whether a TOML tree has the shape of the schema. What does not fit is named and cut out, so that the rest can be
//! looked at as well.

use serde_json::Value;
use toml::Spanned;
use toml::de::{DeArray, DeTable, DeValue};

use super::fault::{FaultKind, Finder, suggestion};

/// Cuts out of the table what the schema does not know, naming each.
pub(super) fn fit_table(table: &mut DeTable<'_>, at: std::ops::Range<usize>, schema: &Value, place: &str, faults: &mut Finder<'_>) {
    let Some(known) = schema["properties"].as_object() else { return };
    for required in schema["required"].as_array().into_iter().flatten().filter_map(Value::as_str) {
        if !table.contains_key(required) {
            faults.add(
                FaultKind::Missing,
                at.clone(),
                format!("{place} has no `{required}`"),
                format!("Add a line `{required} = {}`.", example(&known[required])),
            );
        }
    }
    for (key, mut value) in std::mem::replace(table, DeTable::new()) {
        let name: &str = key.get_ref();
        if let Some(schema) = known.get(name) {
            if fits(&mut value, schema, name, faults) {
                table.insert(key, value);
            }
        } else {
            let what = format!("{place} knows no key `{}`", printable(name));
            faults.add(FaultKind::UnknownKey, key.span(), what, suggestion(name, known.keys().map(String::as_str)));
        }
    }
}

/// False, with a fault, where the value is of the wrong type. Items of a list that do not fit are cut out.
fn fits(value: &mut Spanned<DeValue<'_>>, schema: &Value, name: &str, faults: &mut Finder<'_>) -> bool {
    let span = value.span();
    let wanted = schema["type"].as_str().unwrap_or("");
    let found = kind(value.get_ref());
    let fit = match (value.get_mut(), wanted) {
        (DeValue::Integer(number), "integer" | "number") => {
            if i64::from_str_radix(number.as_str(), number.radix()).is_ok() {
                return true;
            }
            faults.add(FaultKind::OutOfRange, span, format!("`{name}` is too large a number"), "Give a smaller one.");
            return false;
        }
        (DeValue::Float(_), "number") | (DeValue::String(_), "string") | (DeValue::Boolean(_), "boolean") => true,
        (DeValue::Table(table), "object") => {
            fit_table(table, span.clone(), schema, &format!("`{name}`"), faults);
            true
        }
        (DeValue::Array(items), "array") => {
            let all = std::mem::replace(items, DeArray::new());
            *items = all
                .into_iter()
                .filter_map(|mut item| fits(&mut item, &schema["items"], name, faults).then_some(item))
                .collect::<DeArray<'_>>();
            true
        }
        _ => false,
    };
    if !fit {
        faults.add(
            FaultKind::WrongType,
            span,
            format!("`{name}` is {found}, but must be {}", wanted_kind(wanted)),
            format!("Write it as in `{name} = {}`.", example(schema)),
        );
    }
    fit
}

fn kind(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "a text",
        DeValue::Integer(_) => "a whole number",
        DeValue::Float(_) => "a number with a point",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date or time",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}

fn wanted_kind(schema_type: &str) -> &'static str {
    match schema_type {
        "integer" => "a whole number",
        "number" => "a number",
        "string" => "a text in quotes",
        "boolean" => "true or false",
        "array" => "a list",
        _ => "a table",
    }
}

/// How a value of that type is written.
fn example(schema: &Value) -> String {
    if let Some(example) = schema["examples"].get(0) {
        return example.to_string();
    }
    let by_type = match schema["type"].as_str() {
        Some("integer") => "3",
        Some("number") => "10",
        Some("string") => "\"text\"",
        Some("boolean") => "true",
        Some("array") if schema["items"]["type"] == "object" => "[{ … }, { … }]",
        Some("array") => "[…, …]",
        _ => "{ … }",
    };
    by_type.to_owned()
}

/// Control characters made visible.
pub fn printable(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { c.escape_default().to_string() } else { c.to_string() }).collect()
}
