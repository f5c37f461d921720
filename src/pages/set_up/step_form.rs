//! One step of a routine as the fields of a form.

use toml_edit::{Item, Table};

use crate::set_up::draft_word::word_fields;
use crate::set_up::field_labels::{label, number_hint};
use crate::set_up::step_fields::{asks_acknowledgement, entry_of, number_fields};
use crate::set_up::step_groups::{packs, phases, questions, stages};
use crate::set_up::toml_rows::{typed, typed_lines};
use crate::web::pages::{Action, Choice, DoseOffer, Field, Group, Kind, StepForm, Texts};
use routine::{CatalogueEntry, Posture, Timing, catalogue, disagreements, limit_of, ramp_template, templates};

/// The step with this number, from 0, of so many.
pub fn step_form(index: usize, step: &Table, count: usize, texts: Texts<'_>) -> StepForm {
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
    if let [usual, _, ..] = &entry.postures[..] {
        let named = |posture: &Posture| texts.s(&format!("page-posture-{}", posture.name()));
        let mut choices = vec![Choice::new("", texts.text("page-posture-usual", "posture", &named(usual)))];
        choices.extend(entry.postures.iter().map(|posture| Choice::new(posture.name(), named(posture))));
        let typed = typed(step.get("posture"));
        if !typed.is_empty() && choices.iter().all(|choice| choice.value != typed) {
            // What the file says stays until something else is chosen; the check names it.
            choices.push(Choice::new(typed.clone(), typed.clone()));
        }
        all.push(Field::new(format!("{prefix}-posture"), label("posture", texts), Kind::Choice(choices), typed));
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
            "rungs" => {
                let stands = typed_lines(step.get(name)).replace('\n', ", ");
                all.push(Field::new(id, label(name, texts), Kind::Line, stands).hint(texts.s("page-hint-rungs")));
            }
            "setting" => all.push(Field::new(id, label(name, texts), Kind::Line, typed(step.get(name))).hint(texts.s("page-hint-setting"))),
            "syllables" => {
                let hint = defaults.get(name).map(|usual| texts.text("page-hint-default", "value", usual)).unwrap_or_default();
                all.push(Field::new(id, label(name, texts), Kind::Line, typed(step.get(name))).hint(hint));
            }
            "phrases" => {
                all.push(Field::new(id, label(name, texts), Kind::Lines(6), typed_lines(step.get(name))).hint(texts.s("page-hint-phrases")))
            }
            "prompts" => {
                all.push(Field::new(id, label(name, texts), Kind::Lines(4), typed_lines(step.get(name))).hint(texts.s("page-hint-prompts")))
            }
            "passage" => {
                all.push(Field::new(id, label(name, texts), Kind::Lines(8), typed(step.get(name))).hint(texts.s("page-hint-passage")))
            }
            _ => {}
        }
    }
    all.extend(word_fields(step, &format!("{prefix}-"), texts));
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
