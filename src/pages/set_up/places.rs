//! Which field of the form a fault of the file belongs to.

use std::ops::Range;

use toml_edit::{Document, Item, TableLike};

use crate::set_up::toml_rows::rows;
use routine::{Fault, FaultKind};

/// Where a field's value stands in the text.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Place {
    span: Range<usize>,
    /// The id of the field.
    id: String,
}

/// Where everything stands in a file's text.
#[derive(Debug, Default)]
pub struct Places {
    leaves: Vec<Place>,
    /// Where each step begins.
    steps: Vec<usize>,
}

impl Places {
    /// Nothing is known of a text that is no TOML.
    pub fn of(text: &str) -> Self {
        let mut places = Self::default();
        let Ok(document) = Document::parse(text) else { return places };
        let root = document.as_table();
        for (key, item) in root.iter() {
            match key {
                "step" => {}
                "clinician_word" => {
                    places.leaf(key.to_owned(), root.key(key).and_then(toml_edit::Key::span), item);
                    places.table(key, item.as_table_like());
                }
                "no_answer" => places.table("no_answer", item.as_table_like()),
                "plan" => places.rows("plan", item),
                _ => places.leaf(key.to_owned(), root.key(key).and_then(toml_edit::Key::span), item),
            }
        }
        for (index, step) in rows(root.get("step")).into_iter().enumerate() {
            places.step(index, step);
        }
        places
    }

    fn leaf(&mut self, id: String, key: Option<Range<usize>>, item: &Item) {
        let spans = key.into_iter().chain(item.span());
        self.leaves.extend(spans.map(|span| Place { span, id: id.clone() }));
    }

    fn table(&mut self, prefix: &str, table: Option<&dyn TableLike>) {
        for (key, item) in table.into_iter().flat_map(TableLike::iter) {
            let of_key = table.and_then(|table| table.key(key)).and_then(toml_edit::Key::span);
            self.leaf(format!("{prefix}-{key}"), of_key, item);
        }
    }

    fn rows(&mut self, prefix: &str, item: &Item) {
        for (index, row) in rows(Some(item)).into_iter().enumerate() {
            self.table(&format!("{prefix}-{index}"), Some(row));
        }
    }

    fn step(&mut self, index: usize, step: &dyn TableLike) {
        let prefix = format!("step-{index}");
        let mut begins = usize::MAX;
        for (key, item) in step.iter() {
            let of_key = step.key(key).and_then(toml_edit::Key::span);
            begins =
                begins.min(of_key.as_ref().map_or(usize::MAX, |span| span.start)).min(item.span().map_or(usize::MAX, |span| span.start));
            match key {
                "clinician_word" => self.table(&format!("{prefix}-clinician_word"), item.as_table_like()),
                "phases" => self.rows(&format!("{prefix}-phase"), item),
                "questions" => self.rows(&format!("{prefix}-question"), item),
                "packs" => self.leaf(format!("{prefix}-packs-other"), of_key.clone(), item),
                "ramp" => {
                    if let Some(ramp) = item.as_table_like() {
                        for (key, item) in ramp.iter() {
                            match key {
                                "stages" => self.rows(&format!("{prefix}-stage"), item),
                                _ => self.leaf(format!("{prefix}-ramp-{key}"), None, item),
                            }
                        }
                    }
                }
                _ => {}
            }
            // The whole list too, for what concerns all of it.
            self.leaf(format!("{prefix}-{key}"), of_key, item);
        }
        self.steps.push(if begins == usize::MAX { self.steps.last().copied().unwrap_or(0) } else { begins });
    }

    /// The field that holds this place, the innermost; it may be one that the form does not show.
    fn field_at(&self, at: usize) -> Option<&str> {
        let holding = self.leaves.iter().filter(|place| place.span.start <= at && at <= place.span.end);
        holding.min_by_key(|place| place.span.len()).map(|place| place.id.as_str())
    }

    fn step_at(&self, at: usize) -> Option<usize> {
        self.steps.iter().rposition(|begins| *begins <= at)
    }

    /// The field of the form to which a fault belongs: the one at its place, else the one it names; else its step. None: it
    /// belongs to the file as a whole.
    pub fn field_of(&self, fault: &Fault, shown: &dyn Fn(&str) -> bool) -> Option<String> {
        let at = fault.span.start;
        if let Some(field) = self.field_at(at).filter(|field| shown(field)) {
            return Some(field.to_owned());
        }
        let step = self.step_at(at);
        let acknowledge = (fault.kind == FaultKind::MissingAcknowledgement).then_some("cautions_acknowledged");
        let named = acknowledge.into_iter().chain(named_in(&fault.what));
        let prefix = step.map_or(String::new(), |step| format!("step-{step}-"));
        for name in named {
            let candidates = [format!("{prefix}{name}"), format!("{prefix}{name}-other"), format!("{prefix}{name}-who"), name.to_owned()];
            if let Some(field) = candidates.into_iter().find(|field| shown(field)) {
                return Some(field);
            }
        }
        step.map(|step| format!("step-{step}-fault"))
    }
}

/// The names between backticks.
fn named_in(text: &str) -> Vec<&str> {
    text.split('`').skip(1).step_by(2).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use routine::{Hearing, check_text};

    const BAD: &str = r#"title = "Evening"
[no_answer]
asks = 99
[[step]]
exercise = "long-ah"
repetitions = 99
[[step]]
exercise = "lip-press-smile"
phases = [{ name = "press", length_s = 400 }]
[[step]]
exercise = "functional-phrases"
[[step]]
exercise = "effortful-swallow"
[step.ramp]
stages = [{ repetitions = 3 }, { repetitions = 999 }]
"#;

    #[test]
    fn each_fault_finds_its_field() {
        let faults = check_text("x", BAD, Hearing::default()).expect_err("faults");
        let places = Places::of(BAD);
        // What the form does not show: the exercise itself, and names that are no fields.
        let shown = |id: &str| !id.ends_with("-exercise") && !id.contains("functional-phrases") && !id.contains("effortful-swallow");
        let found: Vec<String> = faults.list.iter().filter_map(|fault| places.field_of(fault, &shown)).collect();
        for field in ["no_answer-asks", "step-0-repetitions", "step-1-phase-0-length_s", "step-2-phrases", "step-3-stage-1-repetitions"] {
            assert!(found.iter().any(|id| id == field), "{field}: {found:?} {faults}");
        }
        // What is missing as a whole: the acknowledgement has no place of its own yet.
        assert!(found.iter().any(|id| id.starts_with("step-3")), "{found:?}");
    }

    #[test]
    fn a_text_that_is_no_toml_has_no_places() {
        assert!(Places::of("title = ").leaves.is_empty());
    }
}
