//! Before the first step: the greeting, cautions, agreement, and going on with an interrupted session.

use super::context::Understood;
use super::halting;
use super::listening;
use super::next::{NextAction, Speaking};
use super::outlet::{count, line};
use super::practice::Practice;
use super::state::Move;
use model::{AgreementAnswer, Arg, Command, Effect, Fact, Line, Position, StepReason, Symptom, VoiceTask};
use routine::{Step, dose_band};

/// A breath between two things said, s.
const BREATH_S: f64 = 0.4;
/// A room full of people needs a louder voice, dB, and a slower one. Older listeners in noise want speech 15 dB over it
/// (trade notes 5.3); what the loudspeaker can give is for the clinician to set, this is a step in that direction.
const CLASS_LOUDER_DB: f64 = 4.0;
const CLASS_SLOWER: f64 = 1.15;

pub(super) fn greet(practice: &mut Practice) -> Speaking {
    if practice.context.class {
        return greet_class(practice);
    }
    practice.listen(listening::READY, VoiceTask::Idle);
    let minutes = (practice.routine.planned_duration_s() / 60.0).round().max(1.0);
    let (title, steps) = (Arg::Text(practice.routine.title.clone()), count(practice.routine.steps.len()));
    let mut last = practice.say("greeting", &[("title", title), ("steps", steps.clone()), ("minutes", Arg::Number(minutes))]);
    practice.show_prompt(Line { key: "greeting-shown".into(), args: vec![("steps", steps)] }, &[Command::Stop]);
    if practice.context.first_session {
        last = practice.say("aid-notice", &[]);
    }
    // A second ear alone may miss "stop" over our own sentence, so nobody is promised to be heard at any time.
    if practice.context.understood != Understood::Words {
        last = practice.say("stop-by-hand", &[]);
    } else if practice.context.first_session {
        last = practice.say("you-can-stop", &[]);
    }
    let then = if practice.context.resume_from.is_some() { NextAction::AskResume } else { NextAction::Cautions };
    practice.after(last, BREATH_S, then)
}

fn greet_class(practice: &mut Practice) -> Speaking {
    practice.effect(Effect::Volume { change_db: CLASS_LOUDER_DB });
    practice.effect(Effect::SpeechRate { factor: CLASS_SLOWER });
    practice.listen(listening::READY, VoiceTask::Idle);
    let args = [("title", Arg::Text(practice.routine.title.clone())), ("steps", Arg::Number(practice.routine.steps.len() as f64))];
    let last = practice.say("class-greeting", &args);
    practice.show_prompt(line("class-shown"), &[Command::Stop, Command::Pause]);
    practice.after(last, BREATH_S, NextAction::Cautions)
}

/// The answer to "go on from where you were?".
pub(super) fn resume(practice: &mut Practice, go_on: bool) -> Move {
    practice.effect(Effect::Resume(go_on));
    let Some(from) = practice.context.resume_from.take().filter(|_| go_on) else {
        practice.leave_behind();
        return cautions(practice);
    };
    practice.take_up();
    practice.here = from;
    practice.here.step = practice.here.step.clamp(1, u32::try_from(practice.routine.steps.len()).unwrap_or(u32::MAX));
    // Repetitions before the break were done and are on record.
    practice.counts = practice.context.resume_counts.iter().map(|(&step, &done)| (index_of(step), done)).collect();
    practice.loud_s = practice.context.resume_loud_s;
    let before =
        practice.step().map_or(0, |step| (from.set.max(1) - 1).saturating_mul(step.repetitions).saturating_add(from.repetition.max(1) - 1));
    practice.counts.insert(practice.step_index(), before);
    // A step that was stopped or left out lies behind us too, but was not done.
    practice.steps_done = practice.context.resume_done.iter().map(|&step| index_of(step)).collect();
    end_what_was_done(practice);
    practice.placed_before();
    let name = practice.exercise_key("name");
    practice.record(Fact::SessionResumed { from: practice.exercise_id() });
    if let Some(ending) = unwell_earlier(practice) {
        return ending.into();
    }
    leave_out_unagreed(practice, |_| true);
    let last = practice.say("resumed", &[("name", Arg::Message(name))]);
    practice.after(last, BREATH_S, NextAction::BeginStep).into()
}

/// The index from 0 of a step that is counted from 1.
fn index_of(step: u32) -> usize {
    (step.max(1) - 1) as usize
}

/// A step whose last repetition was made just before the break is done, too.
fn end_what_was_done(practice: &mut Practice) {
    for index in 0..practice.step_index() {
        let Some(step) = practice.routine.steps.get(index) else { continue };
        let (prescribed, done) = (step.sets.saturating_mul(step.repetitions), practice.counts.get(&index).copied().unwrap_or(0));
        if done >= prescribed && practice.steps_done.insert(index) {
            let fact = Fact::StepDone { exercise: step.exercise.id.clone(), repetitions_done: done, repetitions_prescribed: prescribed };
            let at = Position { step: u32::try_from(index + 1).unwrap_or(u32::MAX), set: step.sets, repetition: step.repetitions };
            practice.record_of(Some(at), fact);
        }
    }
}

/// The session stands in the journal from here on; then what this client should hear before it starts.
pub(super) fn cautions(practice: &mut Practice) -> Move {
    if !practice.begun {
        practice.begun = true;
        practice.record(Fact::SessionBegun {
            routine: practice.routine.title.clone(),
            steps: u32::try_from(practice.routine.steps.len()).unwrap_or(u32::MAX),
            software: concat!("tidecount ", env!("CARGO_PKG_VERSION")).to_owned(),
        });
    }
    if practice.context.class {
        return Move::Go(NextAction::RollCall);
    }
    if practice.practised_enough() {
        let last = practice.say("practices-enough", &[("practices", Arg::Number(f64::from(practice.context.today.practices)))]);
        return practice.after(last, BREATH_S, NextAction::End("day limit")).into();
    }
    if let Some(ending) = unwell_earlier(practice) {
        return ending.into();
    }
    Move::Go(NextAction::CautionOfNext)
}

/// The cautions of the next exercise that needs a clinician's agreement, which is then asked for; behind the last, the start. What
/// every exercise wants borne in mind is said at the exercise.
pub(super) fn caution_of_next(practice: &mut Practice) -> Move {
    let Some((step, id)) = next_to_caution(practice) else {
        let all = !practice.routine.steps.is_empty() && practice.left_out.len() == practice.routine.steps.len();
        if !all {
            return Move::Go(NextAction::AskStart);
        }
        let last = practice.say("agreement-missing-all", &[]);
        return practice.after(last, BREATH_S, NextAction::End("no-agreement")).into();
    };
    practice.listen(listening::READY, VoiceTask::Idle);
    if !std::mem::replace(&mut practice.safety_announced, true) {
        practice.say("cautions-first", &[]);
    }
    let last = practice.say(&format!("ex-{id}-before"), &[]);
    let shown = Line { key: "cautions-shown".into(), args: vec![("name", Arg::Message(format!("ex-{id}-name")))] };
    practice.show_prompt(shown, &[Command::Stop]);
    let agreed = practice.context.agreed.contains(&id);
    let then = if agreed { NextAction::CautionHeard(step) } else { NextAction::AskAgreement(step) };
    let speaking = practice.after(last, BREATH_S, then);
    // Whoever stops it among these cautions hears them again: none may go unsaid.
    practice.resume_target = NextAction::CautionOfNext;
    speaking.into()
}

/// The first step, by index from 0, whose exercise still needs an answer, or is new to the client although a clinician has agreed to it;
/// and the exercise's id.
fn next_to_caution(practice: &Practice) -> Option<(usize, String)> {
    let context = &practice.context;
    let to_caution = |(index, step): &(usize, &Step)| {
        let id = &step.exercise.id;
        let is_new = !context.known.contains(id) && !practice.cautioned.contains(id);
        step.exercise.needs_agreement && !practice.left_out.contains(index) && (!context.agreed.contains(id) || is_new)
    };
    practice.routine.steps.iter().enumerate().find(to_caution).map(|(index, step)| (index, step.exercise.id.clone()))
}

pub(super) fn caution_heard(practice: &mut Practice, step: usize) -> Move {
    practice.cautioned.extend(practice.routine.steps.get(step).map(|step| step.exercise.id.clone()));
    Move::Go(NextAction::CautionOfNext)
}

/// What the client said earlier today holds for the rest of the day: after chest pain there is no practice, after the others not
/// what is like it. None: it can begin.
fn unwell_earlier(practice: &mut Practice) -> Option<Speaking> {
    let is_grave = |(symptom, _): &(Symptom, Option<String>)| matches!(symptom, Symptom::ChestPain | Symptom::Breathless);
    if practice.context.today.unwell.iter().any(is_grave) {
        let last = practice.say("unwell-earlier-no-practice", &[]);
        return Some(practice.after(last, BREATH_S, NextAction::End("unwell")));
    }
    if !halting::leave_out_what_upset_before(practice) {
        return None;
    }
    let all = practice.left_out.len() == practice.routine.steps.len();
    let last = practice.say(if all { "unwell-earlier-all" } else { "unwell-earlier" }, &[]);
    all.then(|| practice.after(last, BREATH_S, NextAction::End("unwell")))
}

/// The clinician in the room knows each exercise's cautions (they are printed for them); the class hears the common one.
pub(super) fn safety_of_class(practice: &mut Practice) -> Speaking {
    let last = practice.say("class-safety", &[]);
    let speaking = practice.after(last, BREATH_S, NextAction::AskStart);
    practice.resume_target = NextAction::Cautions;
    speaking
}

/// What was answered, or not, to whether a clinician has agreed to the exercise of this step. Nothing but a yes is one.
pub(super) fn agreement(practice: &mut Practice, step: usize, answer: AgreementAnswer) -> Move {
    let Some(asked) = practice.routine.steps.get(step).cloned() else {
        let last = practice.say("agreement-no", &[]);
        return practice.after(last, BREATH_S, NextAction::CautionOfNext).into();
    };
    practice.agreements_asked += 1;
    let id = asked.exercise.id.clone();
    let given = answer == AgreementAnswer::Yes;
    // The largest of its steps: what is agreed to covers them all.
    let steps = practice.routine.steps.iter().filter(|step| step.exercise.id == id);
    let dose_band = steps.map(dose_band).max();
    practice.record(Fact::Agreement {
        given,
        exercises: vec![id.clone()],
        answer: Some(answer.clone()),
        dose_band,
        posture: asked.posture.map(|posture| posture.name().to_owned()),
    });
    practice.cautioned.insert(id.clone());
    if given {
        practice.context.agreed.insert(id);
    } else {
        leave_out_unagreed(practice, |step| step.exercise.id == id);
    }
    // The next exercise by its name tells that the yes was heard.
    if given && next_to_caution(practice).is_some() {
        return Move::Go(NextAction::CautionOfNext);
    }
    let key = match answer {
        AgreementAnswer::Yes => "agreement-yes",
        AgreementAnswer::No => "agreement-no",
        _ => "agreement-not-sure",
    };
    let last = practice.say(key, &[("name", Arg::Message(format!("ex-{}-name", asked.exercise.id)))]);
    practice.after(last, BREATH_S, NextAction::CautionOfNext).into()
}

/// Marks the steps that have no agreement, and says so in the journal.
fn leave_out_unagreed(practice: &mut Practice, which: impl Fn(&Step) -> bool) {
    for index in 0..practice.routine.steps.len() {
        let Some(step) = practice.routine.steps.get(index) else { continue };
        let agreed = !step.exercise.needs_agreement || practice.context.agreed.contains(&step.exercise.id);
        if !agreed && which(step) && practice.left_out.insert(index) {
            let exercise = step.exercise.id.clone();
            practice.record(Fact::StepLeftOut { exercise, reason: StepReason::NoSpokenAgreement });
        }
    }
}

/// What was answered, or not, to whether recordings may be kept. Silence is no yes, and no "no" either: it is asked again next time.
pub(super) fn sound_answered(practice: &mut Practice, given: Option<bool>) -> Speaking {
    let days = practice.context.sound_days.take().unwrap_or_default();
    practice.record(Fact::SoundConsent { given, days });
    practice.context.keeps_sound = given.unwrap_or(practice.context.keeps_sound);
    let key = match given {
        Some(true) => "sound-agreed",
        None if practice.context.sound_again => "sound-unanswered",
        _ => "sound-not-agreed",
    };
    let last = practice.say(key, &[("days", Arg::Number(f64::from(days)))]);
    practice.after(last, BREATH_S, NextAction::AskStart)
}
