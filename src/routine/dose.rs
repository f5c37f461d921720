//! From a step as typed to a step with every default filled in, within its limits.

use std::ops::Range;

use super::catalogue::CatalogueEntry;
use super::fault::{FaultKind, Finder, suggestion};
use super::file::{At, StepFile};
use super::limits::limit_of;
use super::pack;
use super::posture;
use super::prescribed::{CountedPhase, Ladder, Phase, QuestionItem, Step, Timing, Work};
use super::text::{self, Hearing, SaidBy};
use model::{Climbs, Rung};

/// A posture of more phases is a slip of the keyboard; no source.
const MAX_PHASES: usize = 12;
/// A ladder of more steps is a slip of the keyboard; no source.
const MAX_RUNGS: usize = 12;

/// The step, or none where it is too faulty; every fault is noted.
pub(super) fn build(typed: &At<StepFile>, entry: &CatalogueEntry, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<Step> {
    let (step, id) = (&typed.value, entry.id.as_str());
    let place = step.exercise.as_ref().map_or(typed.span.clone(), |exercise| exercise.span.clone());
    let suited = entry.dose_fields();
    for (field, span) in step.present().into_iter().filter(|(field, _)| !suited.contains(field)) {
        let remedy = match field {
            "sip_every" | "sips_enabled_by_clinician" if entry.timing == Timing::Repeated => {
                "Take it out: this exercise is done without anything in the mouth.".to_owned()
            }
            _ => format!("Take it out; `{id}` has: {}.", suited.join(", ")),
        };
        faults.add(FaultKind::NotForThisExercise, span, format!("`{field}` does not belong to `{id}`"), remedy);
    }
    for (field, value, span) in step.numbers().into_iter().filter(|(field, ..)| suited.contains(field) || *field == "phase_s") {
        check_number(field, value, span, Some(entry), faults);
    }
    if entry.needs_agreement && !step.cautions_acknowledged.as_ref().is_some_and(|at| at.value) {
        let place = step.cautions_acknowledged.as_ref().map_or(place.clone(), |at| at.span.clone());
        faults.add(
            FaultKind::MissingAcknowledgement,
            place,
            format!("missing caution acknowledgement for `{id}`"),
            format!(
                "Read its cautions with `tidecount exercises {id}`; if the client's clinician agrees, add `cautions_acknowledged = true`."
            ),
        );
    }
    for field in entry.required_fields() {
        let packs_will_do = *field == "questions" && step.packs.is_some();
        if !packs_will_do && !step.present().iter().any(|(present, _)| present == field) {
            let example = match *field {
                "phrases" => "phrases = [\"Good morning\"]",
                "packs" => "packs = [\"categories\"]",
                "setting" => "setting = \"two turns of the dial\"",
                _ => "packs = [\"opposites\"]` or `questions = [{ clue = \"…\", answers = [\"…\"] }]",
            };
            faults.add(FaultKind::Missing, place.clone(), format!("`{id}` has no `{field}`"), format!("Add some, as in `{example}`."));
        }
    }
    let default = &entry.dose;
    let work = work_of(step, entry, &place, hearing, faults)?;
    let items = match &work {
        Work::ReadAloud { phrases, .. } => Some((phrases.len(), "phrases")),
        Work::Question { items, .. } => Some((items.len(), "questions")),
        Work::Naming { items, .. } => Some((items.len(), "categories")),
        _ => None,
    };
    let mut repetitions = count(&step.repetitions, &default.repetitions);
    if let Some((items, name)) = items {
        let items = u32::try_from(items).unwrap_or(u32::MAX);
        if let Some(asked) = step.repetitions.as_ref().filter(|asked| asked.value > i64::from(items)) {
            let what = format!("`repetitions` asks for {} {name}, but there are {items}", asked.value);
            faults.add(FaultKind::OutOfRange, asked.span.clone(), what, format!("Give at most {items}, or add {name}."));
        }
        let listed = step.phrases.as_ref().map(|at| &at.span).or(step.questions.as_ref().map(|at| &at.span));
        if let (None, Some(packs), false) = (&step.repetitions, &step.packs, entry.naming) {
            faults.add(
                FaultKind::Missing,
                packs.span.clone(),
                "`packs` names more questions than one practice asks",
                "Add `repetitions = 4`, or how many are to be asked each time.",
            );
        }
        if let (None, Some(listed), 1..) = (&step.repetitions, listed, items) {
            check_number("repetitions", f64::from(items), listed.clone(), Some(entry), faults);
        }
        repetitions = repetitions.or(Some(items));
    }
    let posture = posture::of_step(step, entry, faults);
    let built = Step {
        exercise: entry.exercise_in(posture),
        posture,
        sets: count(&step.sets, &default.sets).unwrap_or(1),
        repetitions: repetitions.unwrap_or(1),
        rest_s: number(&step.rest_s, &default.rest_s).unwrap_or(0.0),
        set_rest_s: number(&step.set_rest_s, &default.set_rest_s).unwrap_or(0.0),
        work,
        ramp_stage: None,
    };
    check_voice_total(&built, step, &place, faults);
    Some(built)
}

/// Notes a number out of its limits, with the limit's reason.
pub(super) fn check_number(field: &str, value: f64, span: Range<usize>, entry: Option<&CatalogueEntry>, faults: &mut Finder<'_>) {
    let Some(limit) = limit_of(entry, field).filter(|limit| !limit.allows(value)) else { return };
    let name = if field == "phase_s" { "length_s" } else { field };
    let of = entry.map_or(String::new(), |entry| format!(" of `{}`", entry.id));
    faults.add(
        FaultKind::OutOfRange,
        span,
        format!("`{name}`{of} is {value}, outside {} to {}", limit.min, limit.max),
        format!("Give a value between them. Why this limit: {}.", limit.why),
    );
}

/// Loud holds add up; the reason stands with the limit.
fn check_voice_total(built: &Step, step: &StepFile, place: &Range<usize>, faults: &mut Finder<'_>) {
    let Work::Voiced { target_s: Some(target_s), .. } = built.work else { return };
    let total_s = target_s * f64::from(built.sets) * f64::from(built.repetitions);
    let Some(limit) = limit_of(None, "voice_total_s").filter(|limit| total_s.is_finite() && !limit.allows(total_s)) else { return };
    let place = step.repetitions.as_ref().map_or(place.clone(), |at| at.span.clone());
    faults.add(
        FaultKind::OutOfRange,
        place,
        format!("the holds of `{}` add up to {total_s} s, more than {} s", built.exercise.id, limit.max),
        format!("Ask for fewer or shorter holds. Why this limit: {}.", limit.why),
    );
}

fn work_of(step: &StepFile, entry: &CatalogueEntry, place: &Range<usize>, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<Work> {
    let default = &entry.dose;
    Some(match entry.timing {
        Timing::Voiced => voiced(step, entry, faults)?,
        Timing::Timed => Work::Timed {
            phases: phases(step, entry, faults),
            count_every_s: count(&step.count_every_s, &default.count_every_s)?,
            count_last_s: count(&step.count_last_s, &default.count_last_s)?,
        },
        Timing::Paced => Work::Paced {
            phases: vec![
                CountedPhase { name: "in".to_owned(), counts: count(&step.counts_in, &default.counts_in)? },
                CountedPhase { name: "out".to_owned(), counts: count(&step.counts_out, &default.counts_out)? },
            ],
            beat_s: number(&step.beat_s, &default.beat_s)?,
        },
        Timing::Repeated => Work::Repeated {
            next_cue_after_s: number(&step.next_cue_after_s, &default.next_cue_after_s),
            sip_every: sips(step, entry, faults),
            setting: setting(step, entry, hearing, faults),
        },
        Timing::ReadAloud => Work::ReadAloud {
            phrases: phrases(step, entry, place, hearing, faults),
            melody: entry.melody,
            beat_s: number(&step.beat_s, &default.beat_s),
        },
        Timing::Talk => talk(step, entry, hearing, faults)?,
        Timing::Rapid => {
            if let Some(syllables) = &step.syllables {
                text::check(syllables, "syllables", SaidBy::Both, hearing, faults);
            }
            let syllables = step.syllables.as_ref().or(default.syllables.as_ref())?;
            Work::Rapid { syllables: syllables.value.clone(), length_s: number(&step.length_s, &default.length_s)? }
        }
        Timing::Question if entry.naming => Work::Naming {
            items: pack::of_step(step.packs.as_ref(), hearing, faults).1,
            length_s: number(&step.length_s, &default.length_s)?,
        },
        Timing::Question => {
            Work::Question { items: questions(step, place, hearing, faults), think_s: number(&step.think_s, &default.think_s)? }
        }
        Timing::Rest => Work::Rest { length_s: number(&step.length_s, &default.length_s) },
    })
}

fn voiced(step: &StepFile, entry: &CatalogueEntry, faults: &mut Finder<'_>) -> Option<Work> {
    let default = &entry.dose;
    let target_s = number(&step.target_s, &default.target_s);
    let min_hold_s = number(&step.min_hold_s, &default.min_hold_s)?;
    if let (Some(target_s), Some(place)) = (target_s, step.min_hold_s.as_ref().or(step.target_s.as_ref()))
        && min_hold_s > target_s
    {
        faults.add(
            FaultKind::OutOfRange,
            place.span.clone(),
            format!("`min_hold_s` is {min_hold_s}, longer than the goal of {target_s} s"),
            "Give a shorter `min_hold_s`, so that reaching the goal counts.",
        );
    }
    let mut cues_at_s: Vec<f64> = list(&step.cues_at_s, &default.cues_at_s).iter().map(|at| at.value).collect();
    cues_at_s.sort_by(f64::total_cmp);
    cues_at_s.dedup();
    Some(Work::Voiced {
        target_s,
        max_break_s: number(&step.max_break_s, &default.max_break_s)?,
        min_hold_s,
        glide: entry.glide,
        cues_at_s,
        ladder: ladder(step, entry, faults),
    })
}

/// The steps of a ladder and how large they are meant to be.
fn ladder(step: &StepFile, entry: &CatalogueEntry, faults: &mut Finder<'_>) -> Option<Ladder> {
    let (climbs, default) = (entry.climbs?, &entry.dose);
    let goal = match climbs {
        Climbs::Level => number(&step.step_db, &default.step_db)?,
        Climbs::Pitch => number(&step.step_st, &default.step_st)?,
    };
    let words = [Rung::Low, Rung::Middle, Rung::High].map(|rung| rung.word(climbs));
    let given = list(&step.rungs, &default.rungs);
    let rungs: Vec<Rung> = given
        .iter()
        .filter_map(|at| {
            let rung = Rung::of_word(&at.value, climbs);
            if rung.is_none() {
                let what = format!("`{}` has no step \"{}\"", entry.id, super::shape::printable(&at.value));
                faults.add(FaultKind::UnknownName, at.span.clone(), what, suggestion(&at.value, words.into_iter()));
            }
            rung
        })
        .collect();
    if let Some(typed) = &step.rungs {
        if given.len() < 2 || given.len() > MAX_RUNGS {
            let what = format!("`rungs` has {} steps", given.len());
            faults.add(FaultKind::OutOfRange, typed.span.clone(), what, format!("Give 2 to {MAX_RUNGS} of {}.", words.join(", ")));
        }
        for two in given.windows(2).filter(|two| two[0].value == two[1].value) {
            let what = format!("\"{}\" follows itself, which is no step", super::shape::printable(&two[1].value));
            faults.add(FaultKind::OutOfRange, two[1].span.clone(), what, "Take one of them out.");
        }
    }
    (rungs.len() >= 2).then_some(Ladder { climbs, rungs, goal })
}

/// What the clinician has set.
fn setting(step: &StepFile, entry: &CatalogueEntry, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<String> {
    let typed = step.setting.as_ref().filter(|_| entry.needs_setting)?;
    text::check(typed, "setting", SaidBy::Tool, hearing, faults);
    Some(typed.value.clone())
}

fn phases(step: &StepFile, entry: &CatalogueEntry, faults: &mut Finder<'_>) -> Vec<Phase> {
    if let Some(given) = &step.phases {
        if given.value.is_empty() {
            faults.add(FaultKind::Missing, given.span.clone(), "`phases` is empty", "Give at least one phase, or leave the key out.");
        }
        if given.value.len() > MAX_PHASES {
            let what = format!("there are {} phases, more than {MAX_PHASES}", given.value.len());
            faults.add(FaultKind::OutOfRange, given.span.clone(), what, "Use `repetitions` for what comes back.");
        }
        for name in given.value.iter().filter_map(|phase| phase.value.name.as_ref()) {
            if !entry.phase_names().any(|known| known == name.value) {
                faults.add(
                    FaultKind::UnknownName,
                    name.span.clone(),
                    format!("`{}` has no phase \"{}\"", entry.id, super::shape::printable(&name.value)),
                    suggestion(&name.value, entry.phase_names()),
                );
            }
        }
    }
    list(&step.phases, &entry.dose.phases)
        .iter()
        .filter_map(|phase| Some(Phase { name: phase.value.name.as_ref()?.value.clone(), length_s: phase.value.length_s.as_ref()?.value }))
        .collect()
}

fn sips(step: &StepFile, entry: &CatalogueEntry, faults: &mut Finder<'_>) -> Option<u32> {
    let every = step.sip_every.as_ref().filter(|_| entry.sips)?;
    if !step.sips_enabled_by_clinician.as_ref().is_some_and(|at| at.value) {
        faults.add(
            FaultKind::NotAllowed,
            every.span.clone(),
            "`sip_every` offers water, which only a clinician may enable",
            "If the client's clinician has enabled sips, add `sips_enabled_by_clinician = true`; otherwise take `sip_every` out.",
        );
    }
    u32::try_from(every.value).ok()
}

fn phrases(step: &StepFile, entry: &CatalogueEntry, place: &Range<usize>, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Vec<String> {
    let given = list(&step.phrases, &entry.dose.phrases);
    if given.is_empty() && step.phrases.is_some() {
        let place = step.phrases.as_ref().map_or(place.clone(), |at| at.span.clone());
        faults.add(FaultKind::Missing, place, "`phrases` is empty", "Give at least one phrase.");
    }
    for phrase in given {
        text::check(phrase, "phrases", SaidBy::Both, hearing, faults);
    }
    given.iter().map(|phrase| phrase.value.clone()).collect()
}

fn talk(step: &StepFile, entry: &CatalogueEntry, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<Work> {
    let default = &entry.dose;
    if let Some(passage) = &step.passage {
        text::check_passage(passage, faults);
    }
    let prompts = list(&step.prompts, &None);
    if let Some(given) = step.prompts.as_ref().filter(|given| given.value.is_empty()) {
        faults.add(FaultKind::Missing, given.span.clone(), "`prompts` is empty", "Give at least one prompt, or leave the key out.");
    }
    for prompt in prompts {
        text::check(prompt, "prompts", SaidBy::Tool, hearing, faults);
    }
    Some(Work::Talk {
        passage: step.passage.as_ref().or(default.passage.as_ref()).map(|passage| passage.value.clone()),
        prompts: prompts.iter().map(|prompt| prompt.value.clone()).collect(),
        length_s: number(&step.length_s, &default.length_s)?,
    })
}

fn questions(step: &StepFile, place: &Range<usize>, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Vec<QuestionItem> {
    let given = list(&step.questions, &None);
    if given.is_empty() && step.questions.is_some() {
        let place = step.questions.as_ref().map_or(place.clone(), |at| at.span.clone());
        faults.add(FaultKind::Missing, place, "`questions` is empty", "Give at least one question.");
    }
    let mut items: Vec<QuestionItem> = given.iter().filter_map(|question| pack::question(&question.value, hearing, faults)).collect();
    items.extend(pack::of_step(step.packs.as_ref(), hearing, faults).0);
    items
}

fn number(given: &Option<At<f64>>, default: &Option<At<f64>>) -> Option<f64> {
    given.as_ref().or(default.as_ref()).map(|at| at.value)
}

fn count(given: &Option<At<i64>>, default: &Option<At<i64>>) -> Option<u32> {
    // A value that does not fit was refused by its limits.
    given.as_ref().or(default.as_ref()).map(|at| u32::try_from(at.value).unwrap_or(1))
}

fn list<'a, T>(given: &'a Option<At<Vec<At<T>>>>, default: &'a Option<At<Vec<At<T>>>>) -> &'a [At<T>] {
    given.as_ref().or(default.as_ref()).map_or(&[], |at| &at.value)
}
