//! One entry as one line of JSON: flat, rounded, finite; and back again.

use crate::entry::Entry;
use crate::unit::Unit;
use serde_json::{Map, Number, Value};

/// The keys that come first, so that a line reads from left to right: when, what, where.
const FIRST_KEYS: [&str; 5] = ["at_s", "kind", "step", "set", "repetition"];

/// Decimals kept of a number, by the unit at the end of its name.
fn decimals(key: &str) -> i32 {
    Unit::of_name(key).unwrap_or(Unit::Second).kept_decimals()
}

/// Why a journal's line cannot be written or read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LineError {
    /// A line of a journal cannot be understood.
    #[error("{place}, line {line}: this is not a journal entry ({cause}). Remove the line or take the file from a backup")]
    BadLine { place: String, line: usize, cause: String },
    /// A number that must be finite is not; the entry was not kept.
    #[error("an entry of kind {kind} was not kept: {field} is not a finite number. Please report this fault of tidecount")]
    NotFinite { kind: String, field: String },
}

/// One entry as a flat JSON object without line break. The same entry always gives the same bytes.
///
/// # Errors
/// A number that must be finite (a time, a confidence) is not. Measured values that could not be had are written as `null`.
pub fn entry_line(entry: &Entry) -> Result<String, LineError> {
    let bad = |field: &str| LineError::NotFinite { kind: entry.fact.kind().name().to_owned(), field: field.to_owned() };
    if !entry.at_s.is_finite() {
        return Err(bad("at_s"));
    }
    let Ok(Value::Object(mut values)) = serde_json::to_value(entry) else {
        return Err(bad("entry"));
    };
    let mut line = Map::new();
    for key in FIRST_KEYS {
        if let Some(value) = values.shift_remove(key) {
            line.insert(key.to_owned(), rounded(key, value));
        }
    }
    for (key, value) in values {
        // serde_json turns NaN and infinity into null; where the schema knows no null that is a fault, not a value.
        line.insert(key.clone(), rounded(&key, value));
    }
    let line = Value::Object(line).to_string();
    match serde_json::from_str::<Entry>(&line) {
        Ok(_) => Ok(line),
        Err(error) => Err(bad(&error.to_string())),
    }
}

fn rounded(key: &str, value: Value) -> Value {
    if let Value::Object(values) = value {
        return Value::Object(values.into_iter().map(|(key, value)| (key.clone(), rounded(&key, value))).collect());
    }
    let Value::Number(number) = &value else { return value };
    if !number.is_f64() {
        return value;
    }
    let scale = 10_f64.powi(decimals(key));
    let Some(exact) = number.as_f64() else { return value };
    // Adding zero turns -0.0 into 0.0.
    let short = (exact * scale).round() / scale + 0.0;
    Number::from_f64(short).map_or(value, Value::Number)
}

/// Reads one line.
///
/// # Errors
/// The text is not an entry; the message says why.
pub fn parse_line(line: &str) -> Result<Entry, String> {
    serde_json::from_str(line).map_err(|error| error.to_string())
}

/// What was read from a JSON Lines journal.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct JournalText {
    /// Every whole line, in order.
    pub entries: Vec<Entry>,
    /// A last line without its line break that is no entry: the process was killed while writing it.
    pub partial: Option<String>,
}

/// Reads the text of a JSON Lines journal. A partial last line is told, not refused. `place` names the file in errors.
///
/// # Errors
/// Any other line is not an entry.
pub fn read_journal(place: &str, text: &str) -> Result<JournalText, LineError> {
    let mut journal = JournalText::default();
    for (index, line) in text.split_inclusive('\n').enumerate() {
        let whole = line.ends_with('\n');
        match parse_line(line.trim_end_matches(['\n', '\r'])) {
            Ok(entry) => journal.entries.push(entry),
            Err(_) if !whole => journal.partial = Some(line.to_owned()),
            Err(cause) => return Err(LineError::BadLine { place: place.to_owned(), line: index + 1, cause }),
        }
    }
    Ok(journal)
}

/// The text of a JSON Lines journal with these entries.
///
/// # Errors
/// As for a single entry: a time that is not finite.
pub fn journal_text(entries: &[Entry]) -> Result<String, LineError> {
    let mut text = String::new();
    for entry in entries {
        text.push_str(&entry_line(entry)?);
        text.push('\n');
    }
    Ok(text)
}

/// The JSON Schema (2020-12) of one line of the journal. `docs/journal.schema.json` holds the same.
#[must_use]
pub fn journal_schema() -> Value {
    let mut schema = schemars::schema_for!(Entry);
    schema.insert("title".to_owned(), "One line of a tidecount journal".into());
    // No other keys, so that a misspelt one is found; and a place in the routine is whole or absent.
    schema.insert("unevaluatedProperties".to_owned(), false.into());
    schema.insert(
        "dependentRequired".to_owned(),
        serde_json::json!({"step": ["set", "repetition"], "set": ["step", "repetition"], "repetition": ["step", "set"]}),
    );
    schema.to_value()
}

#[cfg(test)]
#[path = "tests/line.rs"]
mod tests;
