//! What the buttons of one step do to its table: phases, questions, doses and growing doses.

use toml_edit::{ArrayOfTables, InlineTable, Item, Table, Value};

use crate::set_up::toml_rows::{inline, number_of, push_row, remove_row, rows, rows_mut, set};
use routine::{CatalogueEntry, Timing, ramp_template, templates};

/// What a button of one step asks for. False: the button is none of these.
pub fn act_on_step(step: &mut Table, entry: &'static CatalogueEntry, (verb, two): (&str, Option<usize>)) -> bool {
    let fields = entry.dose_fields();
    match (verb, two) {
        ("add-phase" | "remove-phase", _) if !fields.contains(&"phases") => return false,
        ("add-question", _) if !fields.contains(&"questions") => return false,
        ("grow" | "ramp", _) if !fields.contains(&"ramp") => return false,
        ("add-phase", _) => {
            whole_phases(step, entry);
            let name = entry.phase_names().next().unwrap_or_default();
            push_row(step, "phases", inline([("name", Value::from(name)), ("length_s", Value::from(5_i64))]));
        }
        ("remove-phase", Some(row)) => {
            whole_phases(step, entry);
            remove_row(step, "phases", row);
        }
        ("add-question", _) => add_question(step),
        ("remove-question", Some(row)) => remove_row(step, "questions", row),
        ("grow", _) => grow(step, entry),
        ("no-grow", _) => {
            step.remove("ramp");
        }
        ("add-stage", _) => add_stage(step),
        ("remove-stage", Some(row)) => {
            if let Some(ramp) = step.get_mut("ramp").and_then(Item::as_table_like_mut) {
                remove_row(ramp, "stages", row);
            }
        }
        ("dose", Some(number)) => take_dose(step, entry, number),
        ("ramp", _) => take_ramp_template(step, entry),
        _ => return false,
    }
    true
}

/// Writes the phases out where the catalogue's are meant, so that one can be changed.
fn whole_phases(step: &mut Table, entry: &CatalogueEntry) {
    if step.contains_key("phases") {
        return;
    }
    for (name, length_s) in entry.phase_lengths() {
        let mut row = inline([("name", Value::from(name))]);
        if let Some(length) = number_of(&length_s.to_string()) {
            row.insert("length_s", length);
        }
        push_row(step, "phases", row);
    }
}

fn add_question(step: &mut Table) {
    if step.get("questions").is_none() {
        step.insert("questions", Item::ArrayOfTables(ArrayOfTables::new()));
    }
    push_row(step, "questions", inline([("clue", Value::from("")), ("answers", Value::Array(toml_edit::Array::new()))]));
}

/// The field in which a dose grows at first, and where it stands now.
fn growing_field(step: &Table, entry: &CatalogueEntry) -> Option<(&'static str, f64)> {
    let fields = entry.stage_fields();
    let longest = || entry.phase_lengths().iter().map(|(_, length_s)| *length_s).max_by(f64::total_cmp);
    if entry.timing == Timing::Timed && entry.phase_lengths().len() == 1 {
        let given = rows(step.get("phases")).first().and_then(|row| row.get("length_s")).and_then(as_number);
        return given.or_else(longest).map(|length_s| ("hold_s", length_s));
    }
    let field = ["target_s", "out", "length_s", "repetitions"]
        .into_iter()
        .find(|field| fields.contains(field) && (*field != "target_s" || step.contains_key("target_s")))?;
    let usual = || entry.defaults().get(field).and_then(|text| text.parse().ok());
    step.get(field).and_then(as_number).or_else(usual).map(|value| (field, value))
}

fn as_number(item: &Item) -> Option<f64> {
    item.as_float().or_else(|| item.as_integer().map(|whole| whole as f64))
}

fn stage(field: &'static str, value: f64) -> InlineTable {
    inline(number_of(&value.to_string()).map(|value| (field, value)))
}

fn grow(step: &mut Table, entry: &CatalogueEntry) {
    let Some((field, value)) = growing_field(step, entry).filter(|_| step.get("ramp").is_none()) else { return };
    put_ramp(step, 3, [stage(field, value), stage(field, value + 1.0)]);
}

fn put_ramp(step: &mut Table, days: i64, stages: impl IntoIterator<Item = InlineTable>) {
    let mut ramp = Table::new();
    ramp.insert("days", toml_edit::value(days));
    for stage in stages {
        push_row(&mut ramp, "stages", stage);
    }
    step.insert("ramp", Item::Table(ramp));
}

fn add_stage(step: &mut Table) {
    let Some(ramp) = step.get_mut("ramp").and_then(Item::as_table_like_mut) else { return };
    let last: Option<Vec<(String, Value)>> = rows(ramp.get("stages"))
        .last()
        .map(|last| last.iter().filter_map(|(key, item)| Some((key.to_owned(), item.as_value()?.clone()))).collect());
    let mut row = InlineTable::new();
    for (key, value) in last.unwrap_or_default() {
        // One more than before: two stages that ask for the same are a fault.
        let more = match &value {
            Value::Integer(number) => Value::from(number.value() + 1),
            Value::Float(number) => Value::from(number.value() + 1.0),
            other => other.clone(),
        };
        row.insert(key, more);
    }
    push_row(ramp, "stages", row);
}

fn take_dose(step: &mut Table, entry: &'static CatalogueEntry, number: usize) {
    let all = templates(entry);
    let Some(template) = all.get(number).filter(|template| template.beyond.is_none()) else { return };
    for (field, value) in &template.numbers {
        let value = number_of(&value.to_string());
        if *field == "hold_s" {
            set_hold(step, entry, value);
        } else {
            set(step, field, value);
        }
    }
}

/// The longest phases get this length.
fn set_hold(step: &mut Table, entry: &CatalogueEntry, length: Option<Value>) {
    step.remove("phases");
    whole_phases(step, entry);
    let longest = entry.phase_lengths().iter().map(|(_, length_s)| *length_s).fold(0.0, f64::max);
    for row in rows_mut(step.get_mut("phases")) {
        if row.get("length_s").and_then(as_number).is_some_and(|length_s| length_s >= longest) {
            set(row, "length_s", length.clone());
        }
    }
}

fn take_ramp_template(step: &mut Table, entry: &CatalogueEntry) {
    let Some(ramp) = ramp_template(&entry.id) else { return };
    if let Some(rest_s) = ramp.rest_s {
        set(step, "rest_s", number_of(&rest_s.to_string()));
    }
    let stages = ramp.stages.iter().map(|stage| {
        let repetitions = stage.repetitions.map(|n| ("repetitions", Value::from(i64::from(n))));
        let hold_s = stage.hold_s.and_then(|hold_s| Some(("hold_s", number_of(&hold_s.to_string())?)));
        inline(repetitions.into_iter().chain(hold_s))
    });
    put_ramp(step, i64::from(ramp.days), stages);
}
