//! A routine's file while it is being changed by a form. Text in, text out: no file is touched here.

use toml_edit::{ArrayOfTables, DocumentMut, InlineTable, Item, Table, Value};

use crate::set_up::fields::Fields;
use crate::set_up::toml_rows::{forget_places, inline, lines_of, number_of, push_row, remove_row, rows, rows_mut, set, set_list, text_of};
use routine::{self, CatalogueEntry, DraftStep, Timing, Weekday, find, ramp_template, templates};

/// The fields of a routine that are numbers.
pub const TOP_NUMBERS: [&str; 2] = ["feedback_every", "loud_limit_s"];
pub const TOP_TEXTS: [&str; 3] = ["title", "client", "cue_words"];
pub const PATIENCE: [&str; 3] = ["ask_again_after_s", "asks", "give_up_after_s"];
/// Fields of a step that have a form of their own.
const NO_NUMBERS: [&str; 7] = ["phases", "phrases", "syllables", "questions", "packs", "ramp", "cues_at_s"];

/// The numbers of an exercise's dose.
pub fn number_fields(entry: &CatalogueEntry) -> Vec<&'static str> {
    entry.dose_fields().into_iter().filter(|field| !NO_NUMBERS.contains(field) && *field != "sips_enabled_by_clinician").collect()
}

/// The file, parsed so that what is not touched stays as it is written.
#[derive(Debug, Clone)]
pub struct RoutineDraft {
    document: DocumentMut,
}

impl RoutineDraft {
    /// # Errors
    /// The text is no TOML; the message says where.
    pub fn parse(text: &str) -> Result<Self, String> {
        let mut document: DocumentMut = text.parse().map_err(|error: toml_edit::TomlError| error.to_string())?;
        // Steps may be written as a list of inline tables; to be moved about they must be tables.
        if document.get("step").is_some_and(|item| item.as_array().is_some()) {
            let tables = document.remove("step").map(Item::into_array_of_tables);
            match tables {
                Some(Ok(mut tables)) => {
                    forget_places(&mut tables);
                    document.insert("step", Item::ArrayOfTables(tables));
                }
                Some(Err(item)) => {
                    document.insert("step", item);
                }
                None => {}
            }
        }
        Ok(Self { document })
    }

    /// The file's text.
    pub fn text(&self) -> String {
        self.document.to_string()
    }

    pub fn root(&self) -> &Table {
        self.document.as_table()
    }

    pub fn steps(&self) -> Vec<&Table> {
        self.document.get("step").and_then(Item::as_array_of_tables).map_or(Vec::new(), |tables| tables.iter().collect())
    }

    fn steps_mut(&mut self) -> Option<&mut ArrayOfTables> {
        if self.document.get("step").and_then(Item::as_array_of_tables).is_none() {
            self.document.insert("step", Item::ArrayOfTables(ArrayOfTables::new()));
        }
        self.document.get_mut("step").and_then(Item::as_array_of_tables_mut)
    }

    fn step_mut(&mut self, index: usize) -> Option<&mut Table> {
        self.document.get_mut("step").and_then(Item::as_array_of_tables_mut)?.get_mut(index)
    }

    /// Takes over what was typed. Fields that the form did not hold stay as they are.
    pub fn take(&mut self, form: &Fields) {
        let root = self.document.as_table_mut();
        for name in TOP_TEXTS {
            if let Some(value) = form.get(name) {
                set(root, name, text_of(value));
            }
        }
        for name in TOP_NUMBERS {
            if let Some(value) = form.get(name) {
                set(root, name, number_of(value));
            }
        }
        take_patience(root, form);
        take_plan(root, form);
        let count = self.steps().len();
        for index in 0..count {
            if let Some(step) = self.step_mut(index) {
                take_step(step, index, form);
            }
        }
    }

    /// Does what a button asks for. False: the button is none of these.
    pub fn act(&mut self, action: &str, form: &Fields, words: routine::Lookup<'_>) -> bool {
        let mut parts = action.split('.');
        let verb = parts.next().unwrap_or_default();
        let mut number = || parts.next().and_then(|part| part.parse::<usize>().ok());
        let (one, two) = (number(), number());
        match (verb, one, two) {
            ("add-step", ..) => self.add_step(form.text("add"), words),
            ("up", Some(index), _) => self.move_step(index, index.wrapping_sub(1)),
            ("down", Some(index), _) => self.move_step(index, index + 1),
            ("remove", Some(index), _) => {
                if let Some(steps) = self.steps_mut().filter(|steps| index < steps.len()) {
                    steps.remove(index);
                }
            }
            ("add-plan", ..) => push_row(self.document.as_table_mut(), "plan", inline([("at", Value::from("18:30"))])),
            ("remove-plan", Some(index), _) => remove_row(self.document.as_table_mut(), "plan", index),
            (_, Some(index), _) => {
                let Some(step) = self.step_mut(index) else { return false };
                let Some(entry) = entry_of(step) else { return false };
                return act_on_step(step, entry, (verb, two));
            }
            _ => return false,
        }
        true
    }

    fn add_step(&mut self, id: &str, words: routine::Lookup<'_>) {
        let Some(entry) = find(id) else { return };
        // The catalogue's own writer gives the comments as well: purpose, cautions, who should leave it out.
        let text = routine::Draft { steps: vec![DraftStep::new(entry)], ..routine::Draft::default() }.to_toml(words);
        let Ok(mut written) = text.parse::<DocumentMut>() else { return };
        let Some(mut step) =
            written.get_mut("step").and_then(Item::as_array_of_tables_mut).filter(|steps| !steps.is_empty()).map(|steps| steps.remove(0))
        else {
            return;
        };
        step.set_position(None);
        if let Some(steps) = self.steps_mut() {
            steps.push(step);
        }
    }

    fn move_step(&mut self, from: usize, to: usize) {
        let Some(steps) = self.steps_mut() else { return };
        if from < steps.len() && to < steps.len() {
            let step = steps.remove(from);
            steps.insert(to, step);
            forget_places(steps);
        }
    }
}

/// The exercise of a step, where the catalogue knows it.
pub fn entry_of(step: &Table) -> Option<&'static CatalogueEntry> {
    step.get("exercise").and_then(Item::as_str).and_then(find)
}

/// The cautions of a step can be agreed to here.
pub fn asks_acknowledgement(step: &Table, entry: &CatalogueEntry) -> bool {
    entry.needs_agreement || step.contains_key("cautions_acknowledged")
}

fn take_patience(root: &mut Table, form: &Fields) {
    let typed: Vec<(&str, Option<Value>)> =
        PATIENCE.iter().filter_map(|name| Some((*name, number_of(form.get(&format!("no_answer-{name}"))?)))).collect();
    if !root.contains_key("no_answer") && typed.iter().any(|(_, value)| value.is_some()) {
        root.insert("no_answer", Item::Table(Table::new()));
    }
    let Some(table) = root.get_mut("no_answer").and_then(Item::as_table_like_mut) else { return };
    for (name, value) in typed {
        set(table, name, value);
    }
}

fn take_plan(root: &mut Table, form: &Fields) {
    for (index, row) in rows_mut(root.get_mut("plan")).into_iter().enumerate() {
        let Some(at) = form.get(&format!("plan-{index}-at")) else { continue };
        set(row, "at", text_of(at));
        let days: Vec<Value> =
            Weekday::ALL.iter().filter(|day| form.on(&format!("plan-{index}-{}", day.name()))).map(|day| Value::from(day.name())).collect();
        // Every day is what a plan without days means.
        let all = days.len() == Weekday::ALL.len();
        set_list(row, "days", if all { Vec::new() } else { days }, false);
    }
}

fn take_step(step: &mut Table, index: usize, form: &Fields) {
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
    if let Some(value) = form.get(&name("phrases")) {
        set_list(step, "phrases", lines_of(value), true);
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

/// What a button of one step asks for. False: the button is none of these.
fn act_on_step(step: &mut Table, entry: &'static CatalogueEntry, (verb, two): (&str, Option<usize>)) -> bool {
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

#[cfg(test)]
#[path = "tests/draft.rs"]
mod tests;
