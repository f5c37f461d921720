//! Which fields a step of a routine's file has.

use toml_edit::{Item, Table};

use routine::{CatalogueEntry, find};

/// Fields of a step that have a form of their own.
const NO_NUMBERS: [&str; 11] =
    ["rungs", "setting", "phases", "phrases", "prompts", "passage", "syllables", "questions", "packs", "ramp", "cues_at_s"];

/// The numbers of an exercise's dose.
pub fn number_fields(entry: &CatalogueEntry) -> Vec<&'static str> {
    entry.dose_fields().into_iter().filter(|field| !NO_NUMBERS.contains(field) && *field != "sips_enabled_by_clinician").collect()
}

/// The exercise of a step, where the catalogue knows it.
pub fn entry_of(step: &Table) -> Option<&'static CatalogueEntry> {
    step.get("exercise").and_then(Item::as_str).and_then(find)
}

/// The cautions of a step can be agreed to here.
pub fn asks_acknowledgement(step: &Table, entry: &CatalogueEntry) -> bool {
    entry.needs_agreement || step.contains_key("cautions_acknowledged")
}
