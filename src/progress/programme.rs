//! What changed in what was prescribed.

use super::practised::{Practice, Practised};
use super::prescribed::{RoutineLife, dose_words, routines};
use super::window::Window;
use jiff::civil::Date;
use model::Climbs;
use routine::{Ladder, PlannedTime, Prescription, Step, Work};
use serde::Serialize;
use std::collections::BTreeMap;

/// What stands in place of a text whose steps cannot be made out any more.
const UNREADABLE: &str = "cannot be compared";

/// One thing that changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "what")]
pub enum ProgrammeItem {
    /// A routine that was not practised before.
    RoutineBegun {
        exercises: Vec<String>,
    },
    /// It is practised no more: another took its place.
    RoutineReplaced {
        by: String,
    },
    ExerciseAdded {
        exercise: String,
        dose: String,
    },
    ExerciseRemoved {
        exercise: String,
        dose: String,
    },
    /// One field of an exercise's dose: "repetitions", "target_s"; values as they stand in a routine file.
    DoseChanged {
        exercise: String,
        field: String,
        from: String,
        to: String,
    },
    /// A dose that grows reached its next stage, or was set back.
    StageChanged {
        exercise: String,
        from: u32,
        to: u32,
        dose: String,
    },
    OrderChanged,
    /// The days and times: "mon wed 18:30".
    PlanChanged {
        from: String,
        to: String,
    },
    /// A setting of the whole routine, "feedback_every".
    SettingChanged {
        field: String,
        from: String,
        to: String,
    },
}

/// What changed in one routine from one practice to the next.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ProgrammeChange {
    /// The first day on which it was practised so.
    pub day: Date,
    pub session: i64,
    pub routine_title: String,
    pub items: Vec<ProgrammeItem>,
}

/// The changes in the window, oldest first.
#[must_use]
pub fn changes(practised: &Practised, window: Window) -> Vec<ProgrammeChange> {
    of_routines(&routines(practised), window)
}

pub(super) fn of_routines(lives: &[RoutineLife<'_>], window: Window) -> Vec<ProgrammeChange> {
    let mut changes: Vec<ProgrammeChange> = Vec::new();
    for life in lives {
        let mut add = |day: Date, practice: &Practice, items: Vec<ProgrammeItem>| {
            if !items.is_empty() && window.has(day) {
                changes.push(ProgrammeChange { day, session: practice.session, routine_title: life.title.to_owned(), items });
            }
        };
        if let Some(first) = life.versions.first() {
            let exercises = first
                .prescription
                .iter()
                .flat_map(|prescription| &prescription.routine.steps)
                .map(|step| step.exercise.id.clone())
                .collect();
            add(first.from, first.practice, vec![ProgrammeItem::RoutineBegun { exercises }]);
        }
        for (before, after) in life.versions.iter().zip(life.versions.iter().skip(1)) {
            let items = match (&before.prescription, &after.prescription) {
                (Some(old), Some(new)) => differences(old, new),
                _ => {
                    vec![ProgrammeItem::SettingChanged { field: "text".to_owned(), from: UNREADABLE.to_owned(), to: UNREADABLE.to_owned() }]
                }
            };
            add(after.from, after.practice, items);
        }
        for (practice, items) in stages(life) {
            add(practice.day, practice, items);
        }
        if let (Some((day, by)), Some(last)) = (life.replaced, life.practices.last()) {
            add(day, last, vec![ProgrammeItem::RoutineReplaced { by: by.to_owned() }]);
        }
    }
    changes.sort_by_key(|change| (change.day, change.session));
    changes
}

/// The practices in which a growing dose stood at another stage than in the one before with the same text.
fn stages<'a>(life: &RoutineLife<'a>) -> Vec<(&'a Practice, Vec<ProgrammeItem>)> {
    let mut found = Vec::new();
    let mut known: BTreeMap<u32, u32> = BTreeMap::new();
    let mut text = 0;
    for (practice, place, version) in life.with_versions() {
        if std::mem::replace(&mut text, place) != place {
            known.clear();
        }
        let mut items = Vec::new();
        for result in &practice.steps {
            let Some(to) = result.ramp_stage else { continue };
            if let Some(from) = known.insert(result.step, to).filter(|from| *from != to) {
                let dose = version.and_then(|version| version.step(result.step, to)).map(dose_words).unwrap_or_default();
                items.push(ProgrammeItem::StageChanged { exercise: result.exercise.clone(), from, to, dose });
            }
        }
        if !items.is_empty() {
            found.push((practice, items));
        }
    }
    found
}

/// What differs between two texts of a routine. The second of two steps with the same exercise is compared with the second.
fn differences(old: &Prescription, new: &Prescription) -> Vec<ProgrammeItem> {
    let mut items = Vec::new();
    let (old_steps, new_steps) = (numbered(old), numbered(new));
    for (key, step) in &old_steps {
        if !new_steps.iter().any(|(other, _)| other == key) {
            items.push(ProgrammeItem::ExerciseRemoved { exercise: step.exercise.id.clone(), dose: dose_words(step) });
        }
    }
    for (index, (key, step)) in new_steps.iter().enumerate() {
        let Some((place, before)) =
            old_steps.iter().enumerate().find(|(_, (other, _))| other == key).map(|(place, (_, before))| (place, before))
        else {
            items.push(ProgrammeItem::ExerciseAdded { exercise: step.exercise.id.clone(), dose: dose_words(step) });
            continue;
        };
        let mut fields = fields_of(before);
        fields.push(("ramp", ramp_words(old, place)));
        let mut now = fields_of(step);
        now.push(("ramp", ramp_words(new, index)));
        for ((field, from), (_, to)) in fields.into_iter().zip(now).filter(|((_, from), (_, to))| from != to) {
            items.push(ProgrammeItem::DoseChanged { exercise: step.exercise.id.clone(), field: field.to_owned(), from, to });
        }
    }
    let order = |steps: &[(Key, &Step)], other: &[(Key, &Step)]| -> Vec<Key> {
        steps.iter().map(|(key, _)| key.clone()).filter(|key| other.iter().any(|(known, _)| known == key)).collect()
    };
    if order(&old_steps, &new_steps) != order(&new_steps, &old_steps) {
        items.push(ProgrammeItem::OrderChanged);
    }
    let (from, to) = (plan_words(old), plan_words(new));
    if from != to {
        items.push(ProgrammeItem::PlanChanged { from, to });
    }
    let settings = settings_of(old).into_iter().zip(settings_of(new)).filter(|((_, from), (_, to))| from != to);
    items.extend(settings.map(|((field, from), (_, to))| ProgrammeItem::SettingChanged { field: field.to_owned(), from, to }));
    items
}

/// An exercise and how many of it stand before.
type Key = (String, usize);

fn numbered(prescription: &Prescription) -> Vec<(Key, &Step)> {
    let mut steps: Vec<(Key, &Step)> = Vec::new();
    for step in &prescription.routine.steps {
        let before = steps.iter().filter(|((id, _), _)| *id == step.exercise.id).count();
        steps.push(((step.exercise.id.clone(), before), step));
    }
    steps
}

fn plan_words(prescription: &Prescription) -> String {
    let time = |time: &PlannedTime| {
        let days: Vec<&str> = time.days.iter().map(|day| day.name().get(..3).unwrap_or_default()).collect();
        let days = if days.len() == 7 { "daily".to_owned() } else { days.join(" ") };
        format!("{days} {}", time.at_text())
    };
    let times: Vec<String> = prescription.plan.iter().map(time).collect();
    if times.is_empty() { "no days".to_owned() } else { times.join(", ") }
}

fn settings_of(prescription: &Prescription) -> Vec<(&'static str, String)> {
    let routine = &prescription.routine;
    vec![
        ("cue_words", routine.cue_words.clone().unwrap_or_default()),
        ("feedback_every", routine.feedback_every.to_string()),
        ("loud_limit_s", routine.loud_limit_s.to_string()),
        ("agreement_months", prescription.agreement_months.to_string()),
        ("ask_again_after_s", routine.no_answer.ask_again_after_s.to_string()),
        ("asks", routine.no_answer.asks.to_string()),
        ("give_up_after_s", routine.no_answer.give_up_after_s.to_string()),
        ("language", prescription.language.clone()),
        ("ratings", routine.looking_back.ratings.iter().map(|rating| rating.name()).collect::<Vec<_>>().join(", ")),
        ("weekly_questions", if routine.looking_back.weekly { "yes" } else { "no" }.to_owned()),
    ]
}

/// The stages of the step at a place, from 0; empty where its dose does not grow.
fn ramp_words(prescription: &Prescription, place: usize) -> String {
    let ramp = prescription.ramps.iter().find(|ramp| usize::try_from(ramp.step).is_ok_and(|step| step == place + 1));
    ramp.map_or_else(String::new, |ramp| {
        let stages: Vec<String> = ramp.stages.iter().map(dose_words).collect();
        format!("{} days each: {}", ramp.days, stages.join("; "))
    })
}

/// The fields of a step's dose in a fixed order, named as in a routine file. Two steps of one exercise have the same fields.
fn fields_of(step: &Step) -> Vec<(&'static str, String)> {
    let or_none = |value: Option<String>| value.unwrap_or_else(|| "none".to_owned());
    let mut fields = vec![
        ("sets", step.sets.to_string()),
        ("repetitions", step.repetitions.to_string()),
        ("rest_s", step.rest_s.to_string()),
        ("set_rest_s", step.set_rest_s.to_string()),
        ("posture", or_none(step.posture.map(|posture| posture.name().to_owned()))),
    ];
    match &step.work {
        Work::Voiced { target_s, max_break_s, min_hold_s, cues_at_s, ladder, glide: _ } => {
            let cues: Vec<String> = cues_at_s.iter().map(f64::to_string).collect();
            fields.push(("target_s", or_none(target_s.map(|target| target.to_string()))));
            fields.push(("max_break_s", max_break_s.to_string()));
            fields.push(("min_hold_s", min_hold_s.to_string()));
            fields.push(("cues_at_s", cues.join(", ")));
            if let Some(Ladder { climbs, rungs, goal }) = ladder {
                fields.push(("rungs", rungs.iter().map(|rung| rung.word(*climbs)).collect::<Vec<_>>().join(", ")));
                fields.push((if *climbs == Climbs::Level { "step_db" } else { "step_st" }, goal.to_string()));
            }
        }
        Work::Timed { phases, count_every_s, count_last_s } => {
            let phases: Vec<String> = phases.iter().map(|phase| format!("{} {} s", phase.name, phase.length_s)).collect();
            fields.push(("phases", phases.join(", ")));
            fields.push(("count_every_s", count_every_s.to_string()));
            fields.push(("count_last_s", count_last_s.to_string()));
        }
        Work::Paced { phases, beat_s } => {
            let counts: Vec<String> = phases.iter().map(|phase| format!("{} {}", phase.name, phase.counts)).collect();
            fields.push(("counts", counts.join(", ")));
            fields.push(("beat_s", beat_s.to_string()));
        }
        Work::Repeated { next_cue_after_s, sip_every, setting } => {
            fields.push(("next_cue_after_s", or_none(next_cue_after_s.map(|after| after.to_string()))));
            fields.push(("sip_every", or_none(sip_every.map(|every| every.to_string()))));
            fields.extend(setting.clone().map(|setting| ("setting", setting)));
        }
        Work::ReadAloud { phrases, beat_s, melody: _ } => {
            fields.push(("phrases", phrases.join(" / ")));
            fields.extend(beat_s.map(|beat_s| ("beat_s", beat_s.to_string())));
        }
        Work::Talk { passage, prompts, length_s } => {
            if let Some(passage) = passage {
                fields.push(("passage", passage.clone()));
            }
            fields.push(("prompts", prompts.join(" / ")));
            fields.push(("length_s", length_s.to_string()));
        }
        Work::Rapid { syllables, length_s } => {
            fields.push(("syllables", syllables.clone()));
            fields.push(("length_s", length_s.to_string()));
        }
        Work::Question { items, think_s } => {
            fields.push(("questions", items.len().to_string()));
            fields.push(("think_s", think_s.to_string()));
        }
        Work::Naming { items, length_s } => {
            fields.push(("categories", items.len().to_string()));
            fields.push(("length_s", length_s.to_string()));
        }
        Work::Rest { length_s } => fields.push(("length_s", or_none(length_s.map(|length| length.to_string())))),
    }
    fields
}

#[cfg(test)]
#[path = "tests/programme.rs"]
mod tests;
