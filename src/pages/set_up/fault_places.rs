//! Where a fault of the file is told on the form, and in which words.

use crate::set_up::places::Places;
use crate::web::pages::{FaultTold, Field, RoutineForm, Texts};
use routine::Faults;

/// Puts each fault beside its field, and into the summary with a link.
pub fn place(form: &mut RoutineForm, faults: &Faults, text: &str, texts: Texts<'_>) {
    let places = Places::of(text);
    let shown: Vec<String> = fields_mut(form).map(|field| field.id.clone()).collect();
    for fault in &faults.list {
        let at = places.field_of(fault, &|id| shown.iter().any(|known| known == id));
        let told = fault_told(fault, texts);
        let place = at.as_deref().and_then(step_of);
        let summary = match place.and_then(|index| form.steps.get(index)) {
            Some(step) => FaultTold { what: format!("{}: {}", step.heading, told.what), why: told.why.clone() },
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
fn fault_told(fault: &routine::Fault, texts: Texts<'_>) -> FaultTold {
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
        routine::FaultKind::NeedsClinicianWord => in_words(&fault.remedy, texts),
        routine::FaultKind::Missing if fault.what.contains("`clinician_word`") => texts.s("page-remedy-word-empty"),
        routine::FaultKind::WrongType => texts.s("page-remedy-type"),
        _ => fault.remedy.clone(),
    };
    FaultTold { what: in_labels(&format!("{}.", capital(&fault.what)), texts), why: in_labels(&remedy, texts) }
}

/// A remedy that ends with what to write into the file: the form has fields for that.
pub(super) fn in_words(remedy: &str, texts: Texts<'_>) -> String {
    let Some((before, rest)) = remedy.split_once(", or add what the client's own clinician said") else { return remedy.to_owned() };
    let reason = rest.split_once("}`. ").map_or("", |(_, reason)| reason);
    let whole = rest.starts_with(" at the top");
    format!("{before}. {} {reason}", texts.s(if whole { "page-remedy-word-whole" } else { "page-remedy-word" }))
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
pub const FIELDS: [&str; 53] = [
    "title",
    "client",
    "cue_words",
    "agreement_months",
    "feedback_every",
    "loud_limit_s",
    "ratings",
    "weekly_questions",
    "ask_again_after_s",
    "asks",
    "give_up_after_s",
    "plan",
    "at",
    "days",
    "step",
    "exercise",
    "cautions_acknowledged",
    "posture",
    "clinician_word",
    "who",
    "why",
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
    "rungs",
    "step_db",
    "step_st",
    "setting",
    "prompts",
    "passage",
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

/// Every field of the form.
pub fn fields_mut(form: &mut RoutineForm) -> impl Iterator<Item = &mut Field> {
    let of_steps = form.steps.iter_mut().flat_map(|step| {
        let grouped = step.groups.iter_mut().flat_map(|(_, groups)| groups).flat_map(|group| &mut group.fields);
        step.fields.iter_mut().chain(grouped)
    });
    let plan = form.plan.iter_mut().flat_map(|group| &mut group.fields);
    form.top.iter_mut().chain(plan).chain(form.patience.iter_mut()).chain(of_steps)
}
