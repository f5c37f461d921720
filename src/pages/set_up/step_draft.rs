//! Takes what was typed about one step over into its table. Fields that the form did not hold stay as they are.

use toml_edit::{Item, Table, Value};

use crate::set_up::draft_word::take_word;
use crate::set_up::fields::Fields;
use crate::set_up::step_fields::{asks_acknowledgement, entry_of, number_fields};
use crate::set_up::toml_rows::{inline, lines_of, number_of, push_row, rows_mut, set, set_list, text_of};
use routine::CatalogueEntry;

/// Everything that the form held about this step.
pub fn take_step(step: &mut Table, index: usize, form: &Fields) {
    let name = |field: &str| format!("step-{index}-{field}");
    if form.get(&name("here")).is_none() {
        return;
    }
    if let Some(id) = form.get(&name("exercise")) {
        set(step, "exercise", text_of(id));
    }
    let Some(entry) = entry_of(step) else { return };
    if asks_acknowledgement(step, entry) {
        set_check(step, "cautions_acknowledged", form.on(&name("cautions_acknowledged")));
    }
    for field in number_fields(entry) {
        if let Some(value) = form.get(&name(field)) {
            set(step, field, number_of(value));
        }
    }
    if let Some(posture) = form.get(&name("posture")) {
        set(step, "posture", text_of(posture));
    }
    take_word(step, &name(""), form);
    let fields = entry.dose_fields();
    if fields.contains(&"sips_enabled_by_clinician") {
        set_check(step, "sips_enabled_by_clinician", form.on(&name("sips_enabled_by_clinician")));
    }
    if let Some(value) = form.get(&name("cues_at_s")) {
        let cues = value.split([',', ' ', ';']).filter_map(number_of).collect();
        set_list(step, "cues_at_s", cues, false);
    }
    if let Some(value) = form.get(&name("syllables")) {
        set(step, "syllables", text_of(value));
    }
    if let Some(value) = form.get(&name("setting")) {
        set(step, "setting", text_of(value));
    }
    if let Some(value) = form.get(&name("rungs")) {
        let rungs = value.split([',', ' ', ';']).filter(|rung| !rung.is_empty()).filter_map(text_of).collect();
        set_list(step, "rungs", rungs, false);
    }
    if let Some(value) = form.get(&name("phrases")) {
        set_list(step, "phrases", lines_of(value), true);
    }
    if let Some(value) = form.get(&name("prompts")) {
        set_list(step, "prompts", lines_of(value), true);
    }
    if let Some(value) = form.get(&name("passage")) {
        // A routine's text stands on one line.
        set(step, "passage", text_of(&value.split_whitespace().collect::<Vec<_>>().join(" ")));
    }
    if let Some(others) = form.get(&name("packs-other")) {
        take_packs(step, &name("pack-"), others, form);
    }
    take_phases(step, entry, index, form);
    take_questions(step, index, form);
    take_ramp(step, index, form);
}

fn set_check(step: &mut Table, key: &str, on: bool) {
    let stands = step.get(key).and_then(Item::as_bool);
    if on != stands.unwrap_or(false) {
        set(step, key, on.then(|| Value::from(true)));
    }
}

fn take_packs(step: &mut Table, prefix: &str, others: &str, form: &Fields) {
    let mut chosen: Vec<String> = form.beginning(prefix).map(|name| name.trim_start_matches(prefix).to_owned()).collect();
    chosen.extend(others.split([',', '\n']).map(str::trim).filter(|other| !other.is_empty()).map(str::to_owned));
    // Those that stay keep their order.
    let before: Vec<String> = step
        .get("packs")
        .and_then(Item::as_array)
        .map_or(Vec::new(), |array| array.iter().filter_map(|value| value.as_str().map(str::to_owned)).collect());
    let mut packs: Vec<String> = before.into_iter().filter(|pack| chosen.contains(pack)).collect();
    packs.extend(chosen.into_iter().filter(|pack| !packs.contains(pack)).collect::<Vec<_>>());
    set_list(step, "packs", packs.into_iter().map(Value::from).collect(), false);
}

fn take_phases(step: &mut Table, entry: &CatalogueEntry, index: usize, form: &Fields) {
    let typed: Vec<(String, String)> = (0..)
        .map_while(|row| {
            let length = form.get(&format!("step-{index}-phase-{row}-length_s"))?;
            Some((form.text(&format!("step-{index}-phase-{row}-name")).to_owned(), length.trim().to_owned()))
        })
        .collect();
    if typed.is_empty() {
        return;
    }
    if typed.iter().all(|(_, length)| length.is_empty()) {
        step.remove("phases");
        return;
    }
    let usual = entry.phase_lengths();
    let length = |name: &str, typed: &str| {
        number_of(typed)
            .or_else(|| usual.iter().find(|(known, _)| *known == name).and_then(|(_, length_s)| number_of(&length_s.to_string())))
    };
    if !step.contains_key("phases") {
        let same = |(name, typed): &(String, String)| {
            usual
                .iter()
                .any(|(known, usual_s)| known == name && number_of(typed).is_some_and(|value| number_text(&value) == usual_s.to_string()))
        };
        if typed.len() == usual.len() && typed.iter().all(same) {
            return;
        }
        for (name, typed) in &typed {
            let mut row = inline([("name", Value::from(name.as_str()))]);
            if let Some(length) = length(name, typed) {
                row.insert("length_s", length);
            }
            push_row(step, "phases", row);
        }
        return;
    }
    for (row, (name, typed)) in rows_mut(step.get_mut("phases")).into_iter().zip(&typed) {
        set(row, "name", text_of(name));
        set(row, "length_s", length(name, typed));
    }
}

fn number_text(value: &Value) -> String {
    value.as_float().or_else(|| value.as_integer().map(|whole| whole as f64)).map_or(String::new(), |number| number.to_string())
}

fn take_questions(step: &mut Table, index: usize, form: &Fields) {
    for (row, table) in rows_mut(step.get_mut("questions")).into_iter().enumerate() {
        let name = |field: &str| format!("step-{index}-question-{row}-{field}");
        for field in ["clue", "hint", "fact"] {
            if let Some(value) = form.get(&name(field)) {
                set(table, field, text_of(value));
            }
        }
        for field in ["answers", "near"] {
            if let Some(value) = form.get(&name(field)) {
                set_list(table, field, lines_of(value), false);
            }
        }
    }
}

fn take_ramp(step: &mut Table, index: usize, form: &Fields) {
    let Some(ramp) = step.get_mut("ramp").and_then(Item::as_table_like_mut) else { return };
    if let Some(days) = form.get(&format!("step-{index}-ramp-days")) {
        set(ramp, "days", number_of(days));
    }
    for (row, stage) in rows_mut(ramp.get_mut("stages")).into_iter().enumerate() {
        let prefix = format!("step-{index}-stage-{row}-");
        for name in form.beginning(&prefix) {
            let field = name.trim_start_matches(prefix.as_str());
            set(stage, field, number_of(form.text(name)));
        }
    }
}
