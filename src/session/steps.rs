//! From step to step, set to set, repetition to repetition.

use super::aims::Aims;
use super::asking::Asking;
use super::closing::{cut_short, leave_unfinished, summarise};
use super::ladder;
use super::limits::Gate;
use super::naming::NamingRun;
use super::next::{Ask, NextAction, Speaking};
use super::outlet::line;
use super::paced::PacedRun;
use super::posture::PostureRun;
use super::practice::{Practice, is_loud};
use super::question::QuestionRun;
use super::rapid::RapidRun;
use super::reading::ReadingRun;
use super::repeated::RepeatedRun;
use super::resting::Resting;
use super::state::{Move, State};
use super::talking::TalkRun;
use super::voiced::VoicedRun;
use super::{class, knocking, listening, naming, paced, posture, question, rapid, reading, repeated, rising, talking, voiced};
use model::{Arg, Command, Fact, HoldSettings, Line, LineId, StepReason, VoiceTask};

use routine::{Posture, Step, Work, find};

/// Between an exercise's instruction and its first repetition, s.
const SETTLE_S: f64 = 1.0;
/// A hum or two after loud work, and a quiet breath, s; common practice, no source.
const WIND_DOWN_S: f64 = 15.0;
/// A shorter rest than this is over before it is told, s.
const WORTH_SAYING_S: f64 = 4.0;

/// Names the next step that is to be done, and says how it goes.
pub(super) fn begin_step(practice: &mut Practice) -> Speaking {
    practice.started = true;
    while passes_over(practice) {
        practice.here.step += 1;
    }
    if practice.gate() == Gate::Over {
        return time_is_over(practice);
    }
    let Some(step) = practice.step().cloned() else { return summarise(practice, "completed") };
    if let Some(speaking) = rising::before(practice, &step) {
        return speaking;
    }
    practice.is_placed(step.posture);
    // A step that was left and come back to continues where it was.
    let done = practice.repetitions_done().min(practice.prescribed().saturating_sub(1));
    practice.stand_after(done);
    practice.trials.clear();
    practice.aims = Aims::default();
    practice.in_step = true;
    practice.record(Fact::StepBegun { exercise: step.exercise.id.clone(), ramp_stage: step.ramp_stage });
    practice.listen(listening::READY, VoiceTask::Idle);
    let name = Arg::Message(practice.exercise_key("name"));
    practice.say(if practice.here.step == 1 { "step-first" } else { "step-next" }, &[("name", name)]);
    let known = done > 0 || practice.context.known.contains(&step.exercise.id);
    practice.name_aside();
    let last = say_instruction(practice, &step, known);
    practice.show_prompt(line(practice.exercise_key("short")), &[Command::Skip, Command::Stop]);
    practice.context.known.insert(step.exercise.id.clone());
    practice.after(last, SETTLE_S, NextAction::BeginSet)
}

/// How it goes, how often, what to aim at, and what to bear in mind; returns the last line.
fn say_instruction(practice: &mut Practice, step: &Step, known: bool) -> LineId {
    if known && step.posture == Some(Posture::Standing) {
        practice.say("posture-standing", &[]);
    }
    let instruction = if known { practice.exercise_key("short") } else { practice.instruction_key() };
    let mut last = practice.say(&instruction, &[]);
    if let Some(dose) = dose_line(step) {
        last = practice.say_line(dose, None);
    }
    if let Work::Voiced { target_s: Some(target_s), .. } = step.work
        && !practice.context.class
    {
        last = practice.say("goal", &[("seconds", Arg::Number(target_s))]);
    }
    if (is_loud(step) || matches!(step.work, Work::ReadAloud { .. } | Work::Talk { .. }))
        && let Some(words) = practice.routine.cue_words.clone()
    {
        last = practice.say("cue-words", &[("words", Arg::Text(words))]);
    }
    // What matters every time is said every time; in a class its clinician says it.
    if !practice.context.class && find(&step.exercise.id).is_some_and(routine::CatalogueEntry::has_care) {
        last = practice.say(&practice.exercise_key("care"), &[]);
    }
    if let Work::Repeated { setting: Some(setting), .. } = &step.work {
        last = practice.say("setting", &[("setting", Arg::Text(setting.clone()))]);
    }
    if !known && !practice.context.class && knocking::will_do(step) {
        last = practice.say("knock-will-do", &[]);
    }
    if matches!(step.work, Work::Repeated { sip_every: Some(_), .. }) {
        last = practice.say("sip-rules-now", &[]);
    }
    last
}

/// The step is left out, done already, or asks for voice where that is enough for today.
fn passes_over(practice: &mut Practice) -> bool {
    let index = practice.step_index();
    let Some(step) = practice.routine.steps.get(index) else { return false };
    if practice.left_out.contains(&index) || practice.steps_done.contains(&index) {
        return true;
    }
    if matches!(step.work, Work::Voiced { target_s, .. } if practice.is_loud_enough(target_s)) {
        let exercise = step.exercise.id.clone();
        practice.left_out.insert(index);
        practice.record(Fact::StepLeftOut { exercise, reason: StepReason::LoudLimit });
        return true;
    }
    if let Gate::Enough(reason) = practice.gate() {
        let exercise = step.exercise.id.clone();
        practice.left_out.insert(index);
        practice.say(enough_key(&reason), &[("name", Arg::Message(format!("ex-{exercise}-name")))]);
        practice.record(Fact::StepLeftOut { exercise, reason });
        return true;
    }
    false
}

/// What is said where an exercise has reached its limit.
fn enough_key(reason: &StepReason) -> &'static str {
    if *reason == StepReason::DayLimit { "enough-today" } else { "enough-now" }
}

/// That was enough of this exercise: the step ends here, kept as far as it went.
fn leave_enough(practice: &mut Practice, reason: StepReason) -> Move {
    let (key, name) = (enough_key(&reason), practice.exercise_key("name"));
    leave_unfinished(practice, reason);
    let last = practice.say(key, &[("name", Arg::Message(name))]);
    practice.listen(listening::READY, VoiceTask::Idle);
    next_step(practice, last).into()
}

/// That was long enough: the practice ends here, kept as far as it went.
fn time_is_over(practice: &mut Practice) -> Speaking {
    leave_unfinished(practice, StepReason::TimeLimit);
    practice.say("long-enough", &[]);
    summarise(practice, "time limit")
}

/// A rest that what comes next needs; behind it, it goes on with `then`.
fn rest_first(practice: &mut Practice, rest_s: f64, then: NextAction) -> Move {
    practice.resume_target = then;
    if rest_s >= WORTH_SAYING_S {
        practice.say("rest-first", &[("seconds", Arg::Number(rest_s.ceil()))]);
    }
    Resting::new(practice, 0.0).into()
}

/// "Three times", "Nine rounds; I count"; nothing where it goes without saying.
fn dose_line(step: &Step) -> Option<Line> {
    let key = match step.work {
        Work::Voiced { .. } | Work::Timed { .. } | Work::Repeated { .. } | Work::Rapid { .. } => "dose-times",
        Work::Paced { .. } => "dose-rounds",
        Work::ReadAloud { .. } => "dose-phrases",
        Work::Talk { .. } => "dose-talks",
        Work::Question { .. } => "dose-questions",
        Work::Naming { .. } => "dose-categories",
        Work::Rest { .. } => return None,
    };
    let args = vec![("repetitions", Arg::Number(f64::from(step.repetitions))), ("sets", Arg::Number(f64::from(step.sets)))];
    Some(Line { key: key.into(), args })
}

pub(super) fn begin_set(practice: &mut Practice) -> Move {
    let Some(step) = practice.step() else { return summarise(practice, "completed").into() };
    if let Gate::Rest(rest_s) = practice.gate() {
        return rest_first(practice, rest_s, NextAction::BeginSet);
    }
    if step.exercise.waits_for_ready || practice.context.class {
        Asking::new(practice, Ask::Position).into()
    } else {
        Move::Go(NextAction::BeginRepetition)
    }
}

/// Gives the cue of one repetition.
pub(super) fn begin_repetition(practice: &mut Practice, state: &State) -> Move {
    let Some(step) = practice.step() else { return summarise(practice, "completed").into() };
    match practice.gate() {
        Gate::Open => {}
        Gate::Rest(rest_s) => return rest_first(practice, rest_s, NextAction::BeginRepetition),
        Gate::Enough(reason) => return leave_enough(practice, reason),
        Gate::Over => return time_is_over(practice).into(),
    }
    match step.work {
        Work::Voiced { target_s, .. } if practice.is_loud_enough(target_s) => leave_loud(practice, state),
        Work::Voiced { .. } => voiced::cue(practice).into(),
        Work::Timed { .. } => posture::cue(practice).into(),
        Work::Paced { .. } => paced::cue(practice).into(),
        Work::Repeated { .. } => repeated::cue(practice).into(),
        Work::ReadAloud { .. } => reading::cue(practice).into(),
        Work::Talk { .. } => talking::cue(practice).into(),
        Work::Rapid { .. } => rapid::cue(practice).into(),
        Work::Question { .. } => question::cue(practice).into(),
        Work::Naming { .. } => naming::cue(practice).into(),
        Work::Rest { length_s: None } => Asking::new(practice, Ask::RestOver).into(),
        Work::Rest { length_s: Some(length_s) } => {
            practice.resume_target = NextAction::AfterRepetition;
            Resting::new(practice, length_s).into()
        }
    }
}

/// The cue has been said: what is timed begins.
pub(super) fn perform(practice: &mut Practice) -> Move {
    let Some(work) = practice.step().map(|step| step.work.clone()) else { return Move::Stay };
    if practice.context.class
        && let Some(state) = class::perform(practice, &work)
    {
        return Move::Become(state);
    }
    let state = match work {
        Work::Voiced { max_break_s, min_hold_s: min_s, glide, .. } => {
            State::Voiced(VoicedRun::open(practice, HoldSettings { min_s, max_break_s, glide }))
        }
        Work::Timed { phases, count_every_s, count_last_s } => {
            State::Posture(PostureRun::start(practice, phases, count_every_s, count_last_s))
        }
        Work::Paced { .. } => match PacedRun::start(practice) {
            Some(run) => State::Paced(run),
            None => return Move::Stay,
        },
        Work::Repeated { .. } => State::Repeated(RepeatedRun::open(practice)),
        Work::ReadAloud { .. } => State::Reading(ReadingRun::open(practice)),
        Work::Talk { .. } => State::Talking(TalkRun::open(practice)),
        Work::Rapid { .. } => State::Rapid(RapidRun::open(practice)),
        Work::Question { think_s, .. } => State::Question(QuestionRun::open(practice, think_s)),
        Work::Naming { .. } => match NamingRun::open(practice) {
            Some(run) => State::Naming(run),
            None => return Move::Stay,
        },
        Work::Rest { .. } => return Move::Go(NextAction::EndStep),
    };
    Move::Become(state)
}

/// A sip of water. Whoever interrupts it need not take it.
pub(super) fn offer_sip(practice: &mut Practice) -> Move {
    let asking = Asking::new(practice, Ask::Sip);
    practice.resume_target = NextAction::AfterRepetition;
    asking.into()
}

/// To the next repetition, the next set or the end of the step, with the rest that lies between.
pub(super) fn after_repetition(practice: &mut Practice) -> Move {
    let Some(step) = practice.step().cloned() else { return summarise(practice, "completed").into() };
    if practice.trials.rest_due {
        practice.trials.rest_due = false;
        return Asking::new(practice, Ask::OfferRest).into();
    }
    if matches!(step.work, Work::Rest { .. }) {
        practice.repetition_complete();
    }
    // The count of what was done says what comes, so that coming by here twice changes nothing.
    let done = practice.repetitions_done();
    if done >= practice.prescribed() {
        return end_step(practice);
    }
    practice.stand_after(done);
    let (rest_s, then) = match practice.here.repetition {
        1 => (step.set_rest_s, NextAction::BeginSet),
        _ => (step.rest_s, NextAction::BeginRepetition),
    };
    practice.resume_target = then;
    if rest_s > 0.0 { Resting::new(practice, rest_s).into() } else { Move::Go(then) }
}

pub(super) fn end_step(practice: &mut Practice) -> Move {
    let fact = Fact::StepDone {
        exercise: practice.exercise_id(),
        repetitions_done: practice.repetitions_done(),
        repetitions_prescribed: practice.prescribed(),
    };
    if practice.steps_done.insert(practice.step_index()) {
        practice.record(fact);
    }
    let last = ladder::say_result(practice).unwrap_or_else(|| practice.say_step_result());
    if wants_wind_down(practice) {
        let last = practice.say("wind-down", &[]);
        let mut speaking = next_step(practice, last);
        speaking.pause_s = WIND_DOWN_S;
        return speaking.into();
    }
    next_step(practice, last).into()
}

/// The loud work of this practice lies behind, and the routine has no wind-down of its own.
fn wants_wind_down(practice: &Practice) -> bool {
    let to_come = practice.routine.steps.iter().enumerate().skip(practice.step_index() + 1);
    let led = to_come.filter(|(index, _)| !practice.left_out.contains(index)).map(|(_, step)| step);
    practice.is_loud() && !practice.context.class && led.clone().all(|step| !matches!(step.work, Work::Voiced { .. }))
}

/// That was enough loud voice: the step ends here, kept as far as it went.
fn leave_loud(practice: &mut Practice, state: &State) -> Move {
    practice.record(Fact::LoudLimitReached { loud_s: practice.loud_s, limit_s: practice.routine.loud_limit_s });
    cut_short(practice, state, StepReason::LoudLimit);
    let last = practice.say("loud-enough", &[]);
    practice.listen(listening::READY, VoiceTask::Idle);
    next_step(practice, last).into()
}

/// Leaves the step for the next one, behind `last`.
pub(super) fn next_step(practice: &mut Practice, last: LineId) -> Speaking {
    practice.stand_before_next_step();
    practice.in_step = false;
    practice.after(last, SETTLE_S, NextAction::BeginStep)
}
