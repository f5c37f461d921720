//! Pieces of resources.

use model::Arg;
use serde_json::{Map, Value, json};

/// Puts a message of the catalogue of words into words; an empty text where it is missing.
pub type Say<'a> = &'a dyn Fn(&str, &[(&'static str, Arg)]) -> String;

/// A reference to another resource of the bundle.
pub(super) fn reference(id: &str) -> Value {
    json!({"reference": urn(id)})
}

/// The full URL of a resource.
pub(super) fn urn(id: &str) -> String {
    format!("urn:uuid:{id}")
}

/// A CodeableConcept of one coding.
pub(super) fn concept(system: &str, code: &str, display: &str, text: Option<&str>) -> Value {
    let mut value = json!({"coding": [{"system": system, "code": code, "display": display}]});
    if let (Some(text), Value::Object(map)) = (text, &mut value) {
        map.insert("text".into(), text.into());
    }
    value
}

/// A quantity with a UCUM code.
pub(super) fn quantity(value: f64, unit: &str, ucum: &str) -> Value {
    json!({"value": value, "unit": unit, "system": "http://unitsofmeasure.org", "code": ucum})
}

/// Why there is no value.
pub(super) fn absent(code: &str, display: &str, why: &str) -> Value {
    concept("http://terminology.hl7.org/CodeSystem/data-absent-reason", code, display, Some(why))
}

/// The text that a person reads where the codes are not known.
pub(super) fn narrative(text: &str) -> Value {
    json!({"status": "generated", "div": format!("<div xmlns=\"http://www.w3.org/1999/xhtml\">{}</div>", escaped(text))})
}

/// The category of all observations here.
pub(super) fn therapy() -> Value {
    json!([concept("http://terminology.hl7.org/CodeSystem/observation-category", "therapy", "Therapy", None)])
}

/// A text that FHIR takes: it may not be empty, and holds no control character but tab and line breaks.
pub(super) fn plain(text: &str) -> String {
    let clean: String = text.chars().map(|c| if c.is_control() && !matches!(c, '\t' | '\n' | '\r') { ' ' } else { c }).collect();
    let clean = clean.trim();
    if clean.is_empty() { "-".to_owned() } else { clean.to_owned() }
}

/// A note, which is Markdown: nothing in it may be taken for a tag.
pub(super) fn note(text: &str) -> Value {
    json!({"text": plain(text).replace('&', "&amp;").replace('<', "&lt;")})
}

fn escaped(text: &str) -> String {
    plain(text).replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// Puts a value in, where there is one.
pub(super) fn put(map: &mut Map<String, Value>, key: &str, value: Option<Value>) {
    if let Some(value) = value {
        map.insert(key.to_owned(), value);
    }
}
