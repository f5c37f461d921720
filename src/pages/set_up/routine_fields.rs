//! A routine's file as the fields of a form, each with its limits, its default and its faults.

use toml_edit::{Item, Table};

use crate::set_up::draft::{PATIENCE, RoutineDraft, TOP_NUMBERS, TOP_TEXTS, ratings_of};
use crate::set_up::draft_word::word_fields;
use crate::set_up::fault_places::place;
use crate::set_up::field_labels::{label, number_hint};
use crate::set_up::step_form::step_form;
use crate::set_up::toml_rows::{rows, typed};
use crate::web::pages::{Action, Choice, Field, Group, Kind, RoutineForm, Texts};
use routine::{AFTER_A_PRACTICE, Faults, Weekday, catalogue, limit_of};
use session::Rating;

/// The form of a draft. `file`, `to`, `base` and the like are for the caller to fill in.
pub fn form_of(draft: &RoutineDraft, faults: Option<&Faults>, texts: Texts<'_>) -> RoutineForm {
    let text = draft.text();
    let mut form = RoutineForm {
        top: top_fields(draft.root(), texts),
        plan: plan_groups(draft.root(), texts),
        patience: patience_fields(draft.root(), texts),
        steps: draft.steps().iter().enumerate().map(|(index, step)| step_form(index, step, draft.steps().len(), texts)).collect(),
        add: Some(adding(texts)),
        ..RoutineForm::default()
    };
    if let Some(faults) = faults {
        place(&mut form, faults, &text, texts);
    }
    form.draft = text;
    form
}

fn top_fields(root: &Table, texts: Texts<'_>) -> Vec<Field> {
    let text = |name: &&str| {
        let hint = texts.s(&format!("page-hint-{name}"));
        Field::new(*name, label(name, texts), Kind::Line, typed(root.get(name))).hint(hint)
    };
    let usual = |name: &str| match name {
        "feedback_every" => "5".to_owned(),
        "agreement_months" => "6".to_owned(),
        _ => limit_of(None, "voice_total_s").map_or(String::new(), |limit| limit.max.to_string()),
    };
    let number = |name: &&str| {
        Field::new(*name, label(name, texts), Kind::Number, typed(root.get(name))).hint(number_hint(None, name, Some(&usual(name)), texts))
    };
    let written = ratings_of(root);
    let rating = |rating: &Rating| {
        let on = if written.contains(&rating.name()) { "on" } else { "" };
        Field::new(format!("ratings-{}", rating.name()), texts.s(&format!("page-rating-{}", rating.name())), Kind::Check, on)
    };
    let weekly = if root.get("weekly_questions").and_then(Item::as_bool) == Some(true) { "on" } else { "" };
    let weekly = Field::new("weekly_questions", label("weekly_questions", texts), Kind::Check, weekly);
    let asked = AFTER_A_PRACTICE.iter().map(rating).chain([weekly]);
    let all = TOP_TEXTS.iter().map(text).chain(TOP_NUMBERS.iter().map(number)).chain(asked);
    all.chain(word_fields(root, "", texts)).collect()
}

fn patience_fields(root: &Table, texts: Texts<'_>) -> Vec<Field> {
    let table = root.get("no_answer").and_then(Item::as_table_like);
    let usual = ["12", "2", "600"];
    let fields = PATIENCE.iter().zip(usual).map(|(name, usual)| {
        let value = typed(table.and_then(|table| table.get(name)));
        Field::new(format!("no_answer-{name}"), label(name, texts), Kind::Number, value).hint(number_hint(None, name, Some(usual), texts))
    });
    fields.collect()
}

fn plan_groups(root: &Table, texts: Texts<'_>) -> Vec<Group> {
    let group = |(index, row): (usize, &dyn toml_edit::TableLike)| {
        let days: Option<Vec<&str>> =
            row.get("days").and_then(Item::as_array).map(|days| days.iter().filter_map(|day| day.as_str()).collect());
        let mut fields = vec![
            Field::new(format!("plan-{index}-at"), label("at", texts), Kind::Line, typed(row.get("at"))).hint(texts.s("page-hint-at")),
        ];
        fields.extend(Weekday::ALL.iter().map(|day| {
            let on = days.as_ref().is_none_or(|days| days.contains(&day.name()));
            Field::new(format!("plan-{index}-{}", day.name()), texts.s(day.key()), Kind::Check, if on { "on" } else { "" })
        }));
        let of = texts.number("page-routine-plan-number", "n", index as f64 + 1.0);
        Group {
            legend: of.clone(),
            fields,
            remove: Some(Action::new(format!("remove-plan.{index}"), texts.s("page-remove")).of(of).then_at("plan")),
        }
    };
    rows(root.get("plan")).into_iter().enumerate().map(group).collect()
}

fn adding(texts: Texts<'_>) -> Field {
    let choices = catalogue().iter().map(|entry| Choice {
        value: entry.id.clone(),
        label: texts.s(&format!("ex-{}-name", entry.id)),
        group: Some(entry.group.to_owned()),
    });
    Field::new("add", texts.s("page-field-add"), Kind::Choice(choices.collect()), "")
}

#[cfg(test)]
#[path = "tests/routine_fields.rs"]
mod tests;
