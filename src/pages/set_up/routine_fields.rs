//! A routine's file as the fields of a form, each with its limits, its default and its faults.

use toml_edit::{Item, Table};

use crate::set_up::draft::{PATIENCE, RoutineDraft, TOP_NUMBERS, TOP_TEXTS, asks_acknowledgement, entry_of, number_fields};
use crate::set_up::places::Places;
use crate::set_up::toml_rows::{rows, typed, typed_lines};
use crate::web::pages::{Action, Choice, DoseOffer, Field, Group, Kind, RoutineForm, StepForm, Texts};
use routine::{CatalogueEntry, Faults, Timing, Weekday, built_in_packs, catalogue, disagreements, limit_of, ramp_template, templates};
use session::Arg;

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

/// Puts each fault beside its field, and into the summary with a link.
fn place(form: &mut RoutineForm, faults: &Faults, text: &str, texts: Texts<'_>) {
    let places = Places::of(text);
    let shown: Vec<String> = fields_mut(form).map(|field| field.id.clone()).collect();
    for fault in &faults.list {
        let at = places.field_of(fault, &|id| shown.iter().any(|known| known == id));
        let told = in_labels(&fault_text(fault, texts), texts);
        let place = at.as_deref().and_then(|at| step_of(at));
        let summary = match place.and_then(|index| form.steps.get(index)) {
            Some(step) => format!("{}: {told}", step.heading),
            None => told.clone(),
        };
        form.faults.push((at.clone(), summary));
        match &at {
            Some(at) if at.ends_with("-fault") => {
                if let Some(step) = step_of(at).and_then(|index| form.steps.get_mut(index)) {
                    step.faults.push(told);
                }
            }
            Some(at) => {
                if let Some(field) = fields_mut(form).find(|field| field.id == *at) {
                    field.faults.push(told);
                }
            }
            None => {}
        }
    }
}

/// What is wrong and what to do, for somebody who has the form before them.
fn fault_text(fault: &routine::Fault, texts: Texts<'_>) -> String {
    let capital = |text: &str| {
        let mut chars = text.chars();
        chars.next().map_or(String::new(), |first| first.to_uppercase().chain(chars).collect())
    };
    let remedy = match fault.kind {
        routine::FaultKind::MissingAcknowledgement => texts.s("page-remedy-acknowledge"),
        routine::FaultKind::NotAllowed if fault.what.contains("to whom") => texts.s("page-remedy-sips-client"),
        routine::FaultKind::NotAllowed => texts.s("page-remedy-sips"),
        routine::FaultKind::Missing if fault.what.contains("has no `questions`") => texts.s("page-remedy-questions"),
        routine::FaultKind::Missing if fault.what.contains("has no `phrases`") => texts.s("page-remedy-phrases"),
        routine::FaultKind::Missing if fault.what.contains("has no `packs`") => texts.s("page-remedy-packs"),
        routine::FaultKind::Missing if fault.what.contains("has no `title`") => texts.s("page-remedy-title"),
        routine::FaultKind::Missing if fault.what.contains("has no `step`") => texts.s("page-remedy-steps"),
        routine::FaultKind::WrongType => texts.s("page-remedy-type"),
        _ => fault.remedy.clone(),
    };
    format!("{}. {remedy}", capital(&fault.what))
}

/// Keys of the file between backticks as they are called on the form.
fn in_labels(text: &str, texts: Texts<'_>) -> String {
    let parts = text.split('`').enumerate().map(|(n, part)| {
        if n % 2 == 0 {
            return part.to_owned();
        }
        match label_key(part) {
            Some(key) => format!("“{}”", texts.s(&key)),
            None => format!("“{part}”"),
        }
    });
    parts.collect()
}

fn label_key(field: &str) -> Option<String> {
    if routine::find(field).is_some() {
        return Some(format!("ex-{field}-name"));
    }
    FIELDS.contains(&field).then(|| format!("page-field-{field}"))
}

/// Every key of a routine's file that the form has a name for.
pub const FIELDS: [&str; 40] = [
    "title",
    "client",
    "cue_words",
    "feedback_every",
    "loud_limit_s",
    "ask_again_after_s",
    "asks",
    "give_up_after_s",
    "plan",
    "at",
    "days",
    "step",
    "exercise",
    "cautions_acknowledged",
    "sets",
    "repetitions",
    "rest_s",
    "set_rest_s",
    "target_s",
    "max_break_s",
    "min_hold_s",
    "cues_at_s",
    "phases",
    "count_every_s",
    "count_last_s",
    "in",
    "out",
    "beat_s",
    "next_cue_after_s",
    "sip_every",
    "sips_enabled_by_clinician",
    "phrases",
    "syllables",
    "length_s",
    "questions",
    "packs",
    "think_s",
    "ramp",
    "stages",
    "hold_s",
];

fn step_of(id: &str) -> Option<usize> {
    id.strip_prefix("step-")?.split('-').next()?.parse().ok()
}

fn fields_mut(form: &mut RoutineForm) -> impl Iterator<Item = &mut Field> {
    let of_steps = form.steps.iter_mut().flat_map(|step| {
        let grouped = step.groups.iter_mut().flat_map(|(_, groups)| groups).flat_map(|group| &mut group.fields);
        step.fields.iter_mut().chain(grouped)
    });
    let plan = form.plan.iter_mut().flat_map(|group| &mut group.fields);
    form.top.iter_mut().chain(plan).chain(form.patience.iter_mut()).chain(of_steps)
}

/// "1 to 10. Left empty: 3."
fn number_hint(entry: Option<&CatalogueEntry>, field: &str, usual: Option<&str>, texts: Texts<'_>) -> String {
    let limit = limit_of(entry, field).map(|limit| {
        texts.with("page-hint-limits", vec![("from", Arg::Text(limit.min.to_string())), ("to", Arg::Text(limit.max.to_string()))])
    });
    let usual = match usual {
        Some(usual) => Some(texts.text("page-hint-default", "value", usual)),
        None => Some(texts.s("page-hint-optional")),
    };
    limit.into_iter().chain(usual).collect::<Vec<_>>().join(" ")
}

fn label(field: &str, texts: Texts<'_>) -> String {
    texts.s(&format!("page-field-{field}"))
}

fn top_fields(root: &Table, texts: Texts<'_>) -> Vec<Field> {
    let text = |name: &&str| {
        let hint = texts.s(&format!("page-hint-{name}"));
        Field::new(*name, label(name, texts), Kind::Line, typed(root.get(name))).hint(hint)
    };
    let usual = |name: &str| {
        if name == "feedback_every" {
            "5".to_owned()
        } else {
            limit_of(None, "voice_total_s").map_or(String::new(), |limit| limit.max.to_string())
        }
    };
    let number = |name: &&str| {
        Field::new(*name, label(name, texts), Kind::Number, typed(root.get(name))).hint(number_hint(None, name, Some(&usual(name)), texts))
    };
    TOP_TEXTS.iter().map(text).chain(TOP_NUMBERS.iter().map(number)).collect()
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

fn step_form(index: usize, step: &Table, count: usize, texts: Texts<'_>) -> StepForm {
    let prefix = format!("step-{index}");
    let entry = entry_of(step);
    let name = entry.map_or_else(|| typed(step.get("exercise")), |entry| texts.s(&format!("ex-{}-name", entry.id)));
    let heading = format!("{}. {name}", index + 1);
    let go = |value: &str, key: &str, to: usize| {
        Action::new(format!("{value}.{index}"), texts.s(key)).of(heading.clone()).then_at(format!("step-{to}"))
    };
    let mut moves = Vec::new();
    if index > 0 {
        moves.push(go("up", "page-step-earlier", index - 1));
    }
    if index + 1 < count {
        moves.push(go("down", "page-step-later", index + 1));
    }
    moves.push(Action { then_at: Some("steps".to_owned()), ..go("remove", "page-step-remove", index) });
    let mut form = StepForm { index, heading: heading.clone(), moves, ..StepForm::default() };
    // A hidden field tells that the step was on the form, so that an unchecked box is one.
    let Some(entry) = entry else {
        let choices = catalogue().iter().map(|entry| Choice {
            value: entry.id.clone(),
            label: texts.s(&format!("ex-{}-name", entry.id)),
            group: Some(entry.group.to_owned()),
        });
        let mut choices: Vec<Choice> = choices.collect();
        choices.insert(0, Choice::new(typed(step.get("exercise")), name));
        form.fields =
            vec![Field::new(format!("{prefix}-exercise"), label("exercise", texts), Kind::Choice(choices), typed(step.get("exercise")))];
        return form;
    };
    form.purpose = texts.s(&format!("ex-{}-purpose", entry.id));
    form.cautions = entry.cautions.iter().map(|key| texts.s(&format!("caution-{key}"))).collect();
    form.not_for = entry.not_for.iter().map(|key| texts.s(&format!("notfor-{key}"))).collect();
    form.fields = fields(&prefix, step, entry, texts);
    form.groups = groups(&prefix, index, step, entry, (&heading, texts));
    form.whys = whys(entry, texts);
    form.doses = doses(index, entry, (&heading, texts));
    form.disagreements = disagreements(&entry.id)
        .map(|both| {
            format!(
                "{} {} ({}; {}). {} ({}; {}). {}",
                both.asks, both.one, both.one_source, both.one_status, both.other, both.other_source, both.other_status, both.here
            )
        })
        .collect();
    form.more = more(index, step, entry, (&heading, texts));
    form
}

fn fields(prefix: &str, step: &Table, entry: &CatalogueEntry, texts: Texts<'_>) -> Vec<Field> {
    let mut all = Vec::new();
    let check = |name: &str| {
        let on = step.get(name).and_then(Item::as_bool).unwrap_or(false);
        Field::new(format!("{prefix}-{name}"), label(name, texts), Kind::Check, if on { "on" } else { "" })
    };
    if asks_acknowledgement(step, entry) {
        all.push(check("cautions_acknowledged").hint(texts.s("page-hint-acknowledge")));
    }
    let defaults = entry.defaults();
    for name in number_fields(entry) {
        let hint = number_hint(Some(entry), name, defaults.get(name).map(String::as_str), texts);
        all.push(Field::new(format!("{prefix}-{name}"), label(name, texts), Kind::Number, typed(step.get(name))).hint(hint));
    }
    for name in entry.dose_fields() {
        let id = format!("{prefix}-{name}");
        match name {
            "sips_enabled_by_clinician" => all.push(check(name)),
            "cues_at_s" => all.push(Field::new(id, label(name, texts), Kind::Line, typed(step.get(name))).hint(texts.s("page-hint-cues"))),
            "syllables" => {
                let hint = defaults.get(name).map(|usual| texts.text("page-hint-default", "value", usual)).unwrap_or_default();
                all.push(Field::new(id, label(name, texts), Kind::Line, typed(step.get(name))).hint(hint));
            }
            "phrases" => {
                all.push(Field::new(id, label(name, texts), Kind::Lines(6), typed_lines(step.get(name))).hint(texts.s("page-hint-phrases")))
            }
            _ => {}
        }
    }
    all
}

fn groups(
    prefix: &str,
    index: usize,
    step: &Table,
    entry: &CatalogueEntry,
    (heading, texts): (&str, Texts<'_>),
) -> Vec<(String, Vec<Group>)> {
    let suits = |field: &str| entry.dose_fields().contains(&field);
    let mut all = Vec::new();
    if suits("phases") {
        all.push((label("phases", texts), phases(prefix, index, step, entry, (heading, texts))));
    }
    if suits("questions") {
        all.push((label("questions", texts), questions(prefix, index, step, (heading, texts))));
    }
    if suits("packs") {
        all.push((label("packs", texts), vec![packs(prefix, step, entry, texts)]));
    }
    if let Some(ramp) = step.get("ramp").and_then(Item::as_table_like) {
        all.push((label("ramp", texts), stages(prefix, index, ramp, entry, (heading, texts))));
    }
    all
}

fn phases(prefix: &str, index: usize, step: &Table, entry: &CatalogueEntry, (heading, texts): (&str, Texts<'_>)) -> Vec<Group> {
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

fn questions(prefix: &str, index: usize, step: &Table, (heading, texts): (&str, Texts<'_>)) -> Vec<Group> {
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
fn packs(prefix: &str, step: &Table, entry: &CatalogueEntry, texts: Texts<'_>) -> Group {
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

fn stages(
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

fn whys(entry: &CatalogueEntry, texts: Texts<'_>) -> Vec<String> {
    let mut limited: Vec<(&str, &str)> = number_fields(entry).into_iter().map(|field| (field, field)).collect();
    if entry.timing == Timing::Timed {
        limited.push(("page-field-phase-length", "phase_s"));
    }
    let why = |(name, limit): (&str, &str)| {
        let limit = limit_of(Some(entry), limit)?;
        let name = if name.starts_with("page-") { texts.s(name) } else { label(name, texts) };
        Some(format!("{name}: {} to {}. {}", limit.min, limit.max, limit.why))
    };
    limited.into_iter().filter_map(why).collect()
}

fn doses(index: usize, entry: &'static CatalogueEntry, (heading, texts): (&str, Texts<'_>)) -> Vec<DoseOffer> {
    let source = |text: &str, source: &str, status: &str| {
        if source == "common practice" { format!("{text} [{status}]") } else { format!("{text}; {source} [{status}]") }
    };
    let anchor = format!("step-{index}");
    let mut offers: Vec<DoseOffer> = templates(entry)
        .iter()
        .enumerate()
        .map(|(number, template)| {
            let told =
                format!("{}. {}", source(&template.dose.text, &template.dose.source, &template.dose.status.to_string()), template.dose.who);
            let takes = template.beyond.is_none() && !template.numbers.is_empty();
            let taken_as = match &template.beyond {
                Some(beyond) => texts.text("page-dose-beyond", "why", beyond),
                None if template.numbers.is_empty() => texts.s("page-dose-no-number"),
                None => texts.text("page-dose-taken-as", "dose", &files::dose_words::numbers_in_words(&template.numbers)),
            };
            let take = takes.then(|| {
                Action::new(format!("dose.{index}.{number}"), texts.s("page-dose-take"))
                    .of(format!("{}, {heading}", template.dose.text))
                    .then_at(&anchor)
            });
            DoseOffer { told, taken_as, take }
        })
        .collect();
    if let Some(ramp) = ramp_template(&entry.id) {
        let told = format!("{}. {}", source(&ramp.text, &ramp.source, &ramp.status.to_string()), ramp.who);
        let take = Action::new(format!("ramp.{index}"), texts.s("page-dose-take")).of(format!("{}, {heading}", ramp.text)).then_at(&anchor);
        offers.push(DoseOffer { told, taken_as: ramp.note.clone(), take: Some(take) });
    }
    offers
}

fn more(index: usize, step: &Table, entry: &CatalogueEntry, (heading, texts): (&str, Texts<'_>)) -> Vec<Action> {
    let suits = |field: &str| entry.dose_fields().contains(&field);
    let action =
        |value: &str, key: &str| Action::new(format!("{value}.{index}"), texts.s(key)).of(heading).then_at(format!("step-{index}"));
    let mut all = Vec::new();
    if suits("phases") {
        all.push(action("add-phase", "page-add-phase"));
    }
    if suits("questions") {
        all.push(action("add-question", "page-add-question"));
    }
    if step.contains_key("ramp") {
        all.push(action("add-stage", "page-add-stage"));
    } else if suits("ramp") {
        all.push(action("grow", "page-grow"));
    }
    all
}

#[cfg(test)]
#[path = "tests/routine_fields.rs"]
mod tests;
