//! What a step has several of: phases, questions, word packs, stages.

use toml_edit::{Item, Table};

use crate::set_up::field_labels::{label, number_hint};
use crate::set_up::toml_rows::{rows, typed, typed_lines};
use crate::web::pages::{Action, Choice, Field, Group, Kind, Texts};
use routine::{CatalogueEntry, built_in_packs, limit_of};
use session::Arg;

/// Its phases, or the catalogue's where it names none.
pub fn phases(prefix: &str, index: usize, step: &Table, entry: &CatalogueEntry, (heading, texts): (&str, Texts<'_>)) -> Vec<Group> {
    let usual = entry.phase_lengths();
    let given = rows(step.get("phases"));
    let written = !given.is_empty();
    let shown: Vec<(String, String)> = if written {
        given.iter().map(|row| (typed(row.get("name")), typed(row.get("length_s")))).collect()
    } else {
        usual.iter().map(|(name, _)| ((*name).to_owned(), String::new())).collect()
    };
    let named = |name: &str| texts.s(&format!("ex-{}-phase-{name}", entry.id));
    let group = |(row, (name, length)): (usize, (String, String))| {
        let id = |field: &str| format!("{prefix}-phase-{row}-{field}");
        let mut choices: Vec<Choice> = entry.phase_names().map(|known| Choice::new(known, named(known))).collect();
        if !choices.iter().any(|choice| choice.value == name) {
            choices.push(Choice::new(name.clone(), name.clone()));
        }
        let usual_s = usual.iter().find(|(known, _)| *known == name).map(|(_, length_s)| length_s.to_string());
        let hint = number_hint(Some(entry), "phase_s", usual_s.as_deref(), texts);
        let of = texts.number("page-phase-number", "n", row as f64 + 1.0);
        Group {
            legend: of.clone(),
            fields: vec![
                Field::new(id("name"), texts.s("page-field-phase-name"), Kind::Choice(choices), name),
                Field::new(id("length_s"), texts.s("page-field-phase-length"), Kind::Number, length).hint(hint),
            ],
            remove: Some(
                Action::new(format!("remove-phase.{index}.{row}"), texts.s("page-remove")).of(format!("{of}, {heading}")).then_at(prefix),
            ),
        }
    };
    shown.into_iter().enumerate().map(group).collect()
}

/// Its questions with clue, answers, hint and fact.
pub fn questions(prefix: &str, index: usize, step: &Table, (heading, texts): (&str, Texts<'_>)) -> Vec<Group> {
    let group = |(row, table): (usize, &dyn toml_edit::TableLike)| {
        let line = |field: &str| {
            Field::new(
                format!("{prefix}-question-{row}-{field}"),
                texts.s(&format!("page-field-question-{field}")),
                Kind::Line,
                typed(table.get(field)),
            )
        };
        let lines = |field: &str| {
            let id = format!("{prefix}-question-{row}-{field}");
            let label = texts.s(&format!("page-field-question-{field}"));
            Field::new(id, label, Kind::Lines(3), typed_lines(table.get(field))).hint(texts.s("page-hint-a-line-each"))
        };
        let of = texts.number("page-question-number", "n", row as f64 + 1.0);
        Group {
            legend: of.clone(),
            fields: vec![line("clue"), lines("answers"), lines("near"), line("hint"), line("fact")],
            remove: Some(
                Action::new(format!("remove-question.{index}.{row}"), texts.s("page-remove"))
                    .of(format!("{of}, {heading}"))
                    .then_at(prefix),
            ),
        }
    };
    rows(step.get("questions")).into_iter().enumerate().map(group).collect()
}

/// Built-in packs of the right sort to be ticked, and others by their file.
pub fn packs(prefix: &str, step: &Table, entry: &CatalogueEntry, texts: Texts<'_>) -> Group {
    let chosen: Vec<String> = step
        .get("packs")
        .and_then(Item::as_array)
        .map_or(Vec::new(), |packs| packs.iter().filter_map(|pack| pack.as_str().map(str::to_owned)).collect());
    let of_kind = |(name, text): &(String, String)| {
        let category = text
            .lines()
            .any(|line| line.split_once('=').is_some_and(|(key, value)| key.trim() == "kind" && value.contains("\"category\"")));
        (category == entry.naming).then(|| name.clone())
    };
    let known: Vec<String> = built_in_packs().iter().filter_map(of_kind).collect();
    let mut fields: Vec<Field> = known
        .iter()
        .map(|name| {
            let on = if chosen.contains(name) { "on" } else { "" };
            Field::new(format!("{prefix}-pack-{name}"), texts.s(&format!("page-pack-{name}")), Kind::Check, on)
        })
        .collect();
    let others: Vec<&str> = chosen.iter().filter(|pack| !known.contains(pack)).map(String::as_str).collect();
    let id = format!("{prefix}-packs-other");
    fields.push(Field::new(id, texts.s("page-field-packs-other"), Kind::Line, others.join(", ")).hint(texts.s("page-hint-packs-other")));
    Group { legend: texts.s("page-packs-choose"), fields, remove: None }
}

/// The stages of a dose that grows.
pub fn stages(
    prefix: &str,
    index: usize,
    ramp: &dyn toml_edit::TableLike,
    entry: &CatalogueEntry,
    (heading, texts): (&str, Texts<'_>),
) -> Vec<Group> {
    let days = Field::new(format!("{prefix}-ramp-days"), texts.s("page-field-ramp-days"), Kind::Number, typed(ramp.get("days")))
        .hint(number_hint(None, "days", Some("3"), texts));
    let all = Group {
        legend: texts.s("page-ramp-when"),
        fields: vec![days],
        remove: Some(Action::new(format!("no-grow.{index}"), texts.s("page-ramp-remove")).of(heading).then_at(prefix)),
    };
    // Phases of a stage stand in the file alone; what has one phase is told by its hold.
    let one_phase = entry.phase_lengths().len() == 1;
    let shown: Vec<&str> =
        entry.stage_fields().iter().copied().filter(|field| *field != "phases" && (*field != "hold_s" || one_phase)).collect();
    let stage = |(row, table): (usize, &dyn toml_edit::TableLike)| {
        let fields = shown.iter().map(|field| {
            let limit = if *field == "hold_s" { "phase_s" } else { field };
            let hint = limit_of(Some(entry), limit).map(|limit| {
                texts.with("page-hint-limits", vec![("from", Arg::Text(limit.min.to_string())), ("to", Arg::Text(limit.max.to_string()))])
            });
            Field::new(format!("{prefix}-stage-{row}-{field}"), label(field, texts), Kind::Number, typed(table.get(field)))
                .hint(hint.unwrap_or_default())
        });
        let of = texts.number("page-stage-number", "n", row as f64 + 1.0);
        Group {
            legend: of.clone(),
            fields: fields.collect(),
            remove: Some(
                Action::new(format!("remove-stage.{index}.{row}"), texts.s("page-remove")).of(format!("{of}, {heading}")).then_at(prefix),
            ),
        }
    };
    std::iter::once(all).chain(rows(ramp.get("stages")).into_iter().enumerate().map(stage)).collect()
}
