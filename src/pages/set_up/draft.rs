//! A routine's file while it is being changed by a form. Text in, text out: no file is touched here.

use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, Value};

use crate::set_up::draft_word::take_word;
use crate::set_up::fields::Fields;
use crate::set_up::step_actions::act_on_step;
use crate::set_up::step_draft::take_step;
use crate::set_up::step_fields::entry_of;
use crate::set_up::toml_rows::{forget_places, inline, number_of, push_row, remove_row, rows_mut, set, set_list, text_of};
use routine::{AFTER_A_PRACTICE, DraftStep, Weekday, find};

/// The fields of a routine that are numbers.
pub const TOP_NUMBERS: [&str; 3] = ["feedback_every", "loud_limit_s", "agreement_months"];
pub const TOP_TEXTS: [&str; 3] = ["title", "client", "cue_words"];
pub const PATIENCE: [&str; 3] = ["ask_again_after_s", "asks", "give_up_after_s"];
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
        take_word(root, "", form);
        take_looking_back(root, form);
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

/// A box that is not checked is not sent, so the title says that the form was.
fn take_looking_back(root: &mut Table, form: &Fields) {
    if form.get("title").is_none() {
        return;
    }
    let chosen: Vec<&str> =
        AFTER_A_PRACTICE.iter().map(|rating| rating.name()).filter(|name| form.on(&format!("ratings-{name}"))).collect();
    let written = ratings_of(root);
    // The file's own order is the order in which they are asked.
    let same = written.len() == chosen.len() && chosen.iter().all(|name| written.contains(name));
    if !same {
        set_list(root, "ratings", chosen.into_iter().map(Value::from).collect(), false);
    }
    let weekly = root.get("weekly_questions").and_then(Item::as_bool).unwrap_or(false);
    let asked = form.on("weekly_questions");
    if weekly != asked {
        set(root, "weekly_questions", asked.then(|| Value::from(true)));
    }
}

/// What the file has rated.
pub fn ratings_of(root: &Table) -> Vec<&str> {
    let list = root.get("ratings").and_then(Item::as_array);
    list.map_or(Vec::new(), |list| list.iter().filter_map(Value::as_str).collect())
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

#[cfg(test)]
#[path = "tests/draft.rs"]
mod tests;
