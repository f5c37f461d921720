//! From greeting to summary, step by step.

use super::engine::{Ask, Engine, State, Then};
use super::patience::Patience;
use super::voiced::LOUD_LIMIT;
use super::{Arg, Command, Effect, Entry, Fact, Line, LineId, Position, listening};
use model::VoiceTask;
use routine::{Step, Work};

/// What is said and shown to ask, what is listened for, what is shown as sayable.
type Question = (&'static str, Vec<(&'static str, Arg)>, &'static [Command], &'static [Command]);

/// A breath between two things said, s.
const BREATH_S: f64 = 0.4;
/// Between an exercise's instruction and its first repetition, s.
const SETTLE_S: f64 = 1.0;

impl Engine {
    pub(super) fn greet(&mut self) {
        if self.start.class {
            self.greet_class();
            return;
        }
        self.listen(listening::READY, VoiceTask::Idle);
        let minutes = (self.routine.planned_duration_s() / 60.0).round().max(1.0);
        let mut last = self.say(
            "greeting",
            &[
                ("title", Arg::Text(self.routine.title.clone())),
                ("steps", Arg::Number(count(self.routine.steps.len()))),
                ("minutes", Arg::Number(minutes)),
            ],
        );
        self.show_prompt(
            Line { key: "greeting-shown".into(), args: vec![("steps", Arg::Number(count(self.routine.steps.len())))] },
            &[Command::Stop],
        );
        if self.start.first_session {
            self.say("aid-notice", &[]);
            last = self.say("you-can-stop", &[]);
        }
        let then = if self.start.resume_from.is_some() { Then::AskResume } else { Then::Cautions };
        self.after(last, BREATH_S, then);
    }

    /// Takes the step that `then` names.
    pub(super) fn proceed(&mut self, then: Then) {
        match then {
            Then::AskResume => self.ask(Ask::Resume),
            Then::Cautions => self.cautions(),
            Then::AskAgreement => self.ask(Ask::Agreement),
            Then::AskStart => self.ask(if self.start.sound_days.is_some() && !self.start.class { Ask::Sound } else { Ask::Start }),
            Then::BeginStep => self.begin_step(),
            Then::BeginSet => self.begin_set(),
            Then::BeginRepetition => self.begin_repetition(),
            Then::Perform => self.perform(),
            Then::AfterRepetition => self.after_repetition(),
            Then::Ask(ask) => self.ask(ask),
            Then::Halted(halt) => self.halted(halt),
            Then::End(reason) => self.end(reason),
        }
    }

    // Before the first step.

    fn begin_session(&mut self) {
        let fact = Fact::SessionBegun {
            routine: self.routine.title.clone(),
            steps: u32::try_from(self.routine.steps.len()).unwrap_or(u32::MAX),
            software: concat!("tidecount ", env!("CARGO_PKG_VERSION")).to_owned(),
        };
        self.record(fact);
    }

    /// The answer to "go on from where you were?".
    pub(super) fn resume(&mut self, go_on: bool) {
        self.effect(Effect::Resume(go_on));
        let Some(from) = self.start.resume_from.take().filter(|_| go_on) else {
            self.cautions();
            return;
        };
        self.here = from;
        self.here.step = self.here.step.clamp(1, u32::try_from(self.routine.steps.len()).unwrap_or(u32::MAX));
        // Repetitions before the break were done and are on record.
        self.counts = self.start.resume_counts.iter().map(|(&step, &done)| ((step.max(1) - 1) as usize, done)).collect();
        self.loud_s = self.start.resume_loud_s;
        let before =
            self.step().map_or(0, |step| (from.set.max(1) - 1).saturating_mul(step.repetitions).saturating_add(from.repetition.max(1) - 1));
        self.counts.insert(self.step_index(), before);
        // A step that was stopped or left out lies behind us too, but was not done.
        self.steps_done = self.start.resume_done.iter().map(|&step| (step.max(1) - 1) as usize).collect();
        self.end_what_was_done();
        let key = self.exercise_key("name");
        self.record(Fact::SessionResumed { from: self.exercise_id() });
        self.leave_out_quietly();
        let last = self.say("resumed", &[("name", Arg::Message(key))]);
        self.after(last, BREATH_S, Then::BeginStep);
    }

    /// A step whose last repetition was made just before the break is done, too.
    fn end_what_was_done(&mut self) {
        for index in 0..self.step_index() {
            let Some(step) = self.routine.steps.get(index) else { continue };
            let (prescribed, done) = (step.sets.saturating_mul(step.repetitions), self.counts.get(&index).copied().unwrap_or(0));
            if done >= prescribed && self.steps_done.insert(index) {
                let fact =
                    Fact::StepDone { exercise: step.exercise.id.clone(), repetitions_done: done, repetitions_prescribed: prescribed };
                let at = Position { step: u32::try_from(index + 1).unwrap_or(u32::MAX), set: step.sets, repetition: step.repetitions };
                self.effect(Effect::Record(Entry { at_s: self.now_s, fact, position: Some(at) }));
            }
        }
    }

    /// Exercises of this routine that still need a "yes".
    fn unagreed(&self) -> Vec<&Step> {
        let agreed = &self.start.agreed;
        self.routine.steps.iter().filter(|step| step.exercise.needs_agreement && !agreed.contains(&step.exercise.id)).collect()
    }

    fn cautions(&mut self) {
        if !self.begun {
            self.begun = true;
            self.begin_session();
        }
        if self.start.class {
            self.safety_of_class();
            return;
        }
        let unagreed = self.unagreed();
        let asks = !unagreed.is_empty();
        // An exercise that is new to this client brings its cautions, also where a clinician has agreed to it in writing.
        let is_new = |step: &&Step| self.start.first_session || !self.start.known.contains(&step.exercise.id) || unagreed.contains(step);
        let of: Vec<&Step> = self.routine.steps.iter().filter(is_new).collect();
        let mut keys: Vec<String> = Vec::new();
        for key in of.iter().flat_map(|step| &step.exercise.cautions) {
            let key = format!("caution-{key}");
            if !keys.contains(&key) {
                keys.push(key);
            }
        }
        if keys.is_empty() {
            self.proceed(if asks { Then::AskAgreement } else { Then::AskStart });
            return;
        }
        let mut last = self.say("cautions-first", &[]);
        for key in keys {
            last = self.say(&key, &[]);
        }
        self.show_prompt(Line { key: "cautions-shown".into(), args: Vec::new() }, &[Command::Stop]);
        self.after(last, BREATH_S, if asks { Then::AskAgreement } else { Then::AskStart });
        // Whoever stops it among the cautions hears them from the first again: none may go unsaid.
        self.go_on = Then::Cautions;
    }

    /// What was answered, or not, to whether a clinician has agreed.
    pub(super) fn agreement(&mut self, given: bool) {
        let mut exercises: Vec<String> = self.unagreed().iter().map(|step| step.exercise.id.clone()).collect();
        exercises.sort();
        exercises.dedup();
        self.record(Fact::Agreement { given, exercises: exercises.clone() });
        if given {
            self.start.agreed.extend(exercises);
            let last = self.say("agreement-noted", &[]);
            self.after(last, BREATH_S, Then::AskStart);
            return;
        }
        self.leave_out_quietly();
        let last = self.say("agreement-missing", &[("steps", Arg::Number(count(self.left_out.len())))]);
        let all = self.left_out.len() == self.routine.steps.len();
        self.after(last, BREATH_S, if all { Then::End("no-agreement") } else { Then::AskStart });
    }

    /// What was answered, or not, to whether the sound may be kept. Silence is no yes, and no "no" either: it is asked next time again.
    pub(super) fn sound_answered(&mut self, given: Option<bool>) {
        let days = self.start.sound_days.take().unwrap_or_default();
        self.record(Fact::SoundConsent { given, days });
        let key = match given {
            Some(true) => "sound-agreed",
            None if self.start.sound_again => "sound-unanswered",
            _ => "sound-not-agreed",
        };
        let last = self.say(key, &[("days", Arg::Number(f64::from(days)))]);
        self.after(last, BREATH_S, Then::AskStart);
    }

    /// Marks the steps that have no agreement, and says so in the journal.
    fn leave_out_quietly(&mut self) {
        let agreed = self.start.agreed.clone();
        for index in 0..self.routine.steps.len() {
            let Some(step) = self.routine.steps.get(index) else { continue };
            if step.exercise.needs_agreement && !agreed.contains(&step.exercise.id) && self.left_out.insert(index) {
                let exercise = step.exercise.id.clone();
                self.record(Fact::StepLeftOut { exercise, reason: "no spoken agreement".into() });
            }
        }
    }

    // Asking.

    pub(super) fn ask(&mut self, ask: Ask) {
        let (key, args, commands, can_say): Question = match ask {
            Ask::Resume => ("ask-resume", vec![], listening::YES_NO, &[Command::Yes, Command::No]),
            Ask::Agreement => ("ask-agreement", vec![], listening::YES_NO, &[Command::Yes, Command::No]),
            Ask::Sound => {
                let days = Arg::Number(f64::from(self.start.sound_days.unwrap_or_default()));
                (
                    if self.start.sound_again { "ask-sound-again" } else { "ask-sound" },
                    vec![("days", days)],
                    listening::YES_NO,
                    &[Command::Yes, Command::No],
                )
            }
            Ask::Start => ("ask-ready", vec![], listening::READY, &[Command::Ready, Command::Stop]),
            Ask::Position => ("ask-position", vec![], listening::READY, &[Command::Ready, Command::Skip, Command::Stop]),
            Ask::RestOver => ("ask-rest-over", vec![], listening::READY, &[Command::Ready, Command::Stop]),
            Ask::Sip => ("ask-sip", vec![], listening::REPEATED, &[Command::Done, Command::Stop]),
            Ask::OfferRest => ("offer-rest", vec![], listening::OFFER, &[Command::Yes, Command::No, Command::Finish]),
            Ask::Confirm(command) => {
                ("ask-confirm", vec![("command", Arg::Message(command.name_key()))], listening::YES_NO, &[Command::Yes, Command::No])
            }
            Ask::FinishUnlessTakenBack => ("finishing", vec![], listening::FINISHING, &[Command::GoOn]),
        };
        let key = match ask {
            Ask::Start if self.start.class => "class-start",
            Ask::Position if self.start.class => "class-position",
            Ask::RestOver if self.start.class => "class-rest-over",
            Ask::Sip if self.start.class => "class-sip",
            Ask::Start if self.start.first_session => "ask-ready-first",
            _ => key,
        };
        self.listen(commands, VoiceTask::Idle);
        self.say(key, &args);
        self.show_prompt(Line { key: format!("{key}-shown"), args }, can_say);
        if !matches!(ask, Ask::Confirm(_) | Ask::FinishUnlessTakenBack | Ask::OfferRest) {
            self.go_on = Then::Ask(ask);
        }
        self.state = State::Asking { ask, patience: Patience::new(self.now_s) };
    }

    /// Nobody answered; asks once more.
    pub(super) fn ask_again(&mut self, ask: Ask, time: u32) {
        let key = match (ask, time) {
            (Ask::Resume | Ask::Agreement | Ask::Sound | Ask::Confirm(_) | Ask::OfferRest, _) => "ask-yes-no-again",
            // Nothing is said to a person with water in the mouth but once, late.
            (Ask::Sip, 1) => return,
            (Ask::Sip, _) => "ask-sip-again",
            _ if self.was_unclear() => "ready-not-understood",
            (_, 1) => "ask-ready-again",
            _ => "ask-ready-once-more",
        };
        self.remind(key, &[]);
    }

    /// All asking was in vain: takes silence for "no" where that is the careful answer, else waits for "ready".
    pub(super) fn asked_in_vain(&mut self, ask: Ask) {
        match ask {
            Ask::Resume => self.resume(false),
            Ask::Agreement => self.agreement(false),
            Ask::Sound => self.sound_answered(None),
            Ask::Confirm(_) => self.proceed(self.go_on),
            Ask::OfferRest => self.rest_taken(true),
            _ => self.remind("wait-for-ready", &[]),
        }
    }

    /// Nobody has answered for so long that it ends.
    pub(super) fn give_up(&mut self) {
        let asked = self.patience().map_or(0, |patience| patience.asked());
        self.record(Fact::NoAnswer { asked });
        self.cut_short("no answer");
        let last = self.say("gave-up", &[]);
        self.after(last, 0.0, Then::End("no-answer"));
    }

    // Steps.

    fn begin_step(&mut self) {
        self.started = true;
        while self.passes_over() {
            self.here.step += 1;
        }
        let Some(step) = self.step().cloned() else {
            self.summarise("completed");
            return;
        };
        // A step that was left and come back to goes on where it was.
        let done = self.repetitions_done().min(self.prescribed().saturating_sub(1));
        let repetitions = step.repetitions.max(1);
        self.here.set = done / repetitions + 1;
        self.here.repetition = done % repetitions + 1;
        let resumed = done > 0;
        self.trials.clear();
        self.rest_due = false;
        self.rest_offered_in_step = false;
        self.in_step = true;
        self.record(Fact::StepBegun { exercise: step.exercise.id.clone(), ramp_stage: step.ramp_stage });
        self.listen(listening::READY, VoiceTask::Idle);
        let name = Arg::Message(self.exercise_key("name"));
        self.say(if self.here.step == 1 { "step-first" } else { "step-next" }, &[("name", name)]);
        let known = resumed || self.start.known.contains(&step.exercise.id);
        let instruction = self.exercise_key(if known { "short" } else { "instruction" });
        let mut last = self.say(&instruction, &[]);
        if let Some(line) = self.dose_line(&step) {
            last = self.say_line(line, None);
        }
        if let Work::Voiced { target_s: Some(target_s), .. } = step.work
            && !self.start.class
        {
            last = self.say("goal", &[("seconds", Arg::Number(target_s))]);
        }
        if let Work::Voiced { .. } | Work::ReadAloud { .. } = step.work
            && let Some(words) = self.routine.cue_words.clone()
        {
            last = self.say("cue-words", &[("words", Arg::Text(words))]);
        }
        if matches!(step.work, Work::Repeated { sip_every: Some(_), .. }) {
            last = self.say("sip-rules-now", &[]);
        }
        self.show_prompt(Line { key: self.exercise_key("short"), args: Vec::new() }, &[Command::Skip, Command::Stop]);
        self.start.known.insert(step.exercise.id.clone());
        self.after(last, SETTLE_S, Then::BeginSet);
    }

    /// The step is left out, done already, or asks for voice where that is enough for today.
    fn passes_over(&mut self) -> bool {
        let index = self.step_index();
        let Some(step) = self.routine.steps.get(index) else { return false };
        if self.left_out.contains(&index) || self.steps_done.contains(&index) {
            return true;
        }
        if matches!(step.work, Work::Voiced { target_s, .. } if self.is_loud_enough(target_s)) {
            let exercise = step.exercise.id.clone();
            self.left_out.insert(index);
            self.record(Fact::StepLeftOut { exercise, reason: LOUD_LIMIT.into() });
            return true;
        }
        false
    }

    /// "Three times", "Nine rounds; I count"; nothing where it goes without saying.
    fn dose_line(&self, step: &Step) -> Option<Line> {
        let key = match step.work {
            Work::Voiced { .. } | Work::Timed { .. } | Work::Repeated { .. } | Work::Rapid { .. } => "dose-times",
            Work::Paced { .. } => "dose-rounds",
            Work::ReadAloud { .. } => "dose-phrases",
            Work::Question { .. } => "dose-questions",
            Work::Naming { .. } => "dose-categories",
            Work::Rest { .. } => return None,
        };
        let args = vec![("repetitions", Arg::Number(f64::from(step.repetitions))), ("sets", Arg::Number(f64::from(step.sets)))];
        Some(Line { key: key.into(), args })
    }

    fn begin_set(&mut self) {
        let Some(step) = self.step() else {
            self.summarise("completed");
            return;
        };
        if step.exercise.waits_for_ready || self.start.class { self.ask(Ask::Position) } else { self.begin_repetition() }
    }

    /// Gives the cue of one repetition.
    pub(super) fn begin_repetition(&mut self) {
        let Some(step) = self.step().cloned() else {
            self.summarise("completed");
            return;
        };
        match step.work {
            Work::Voiced { target_s, .. } if self.is_loud_enough(target_s) => self.leave_loud(),
            Work::Voiced { .. } => self.cue_voiced(),
            Work::Timed { .. } => self.cue_posture(),
            Work::Paced { .. } => self.cue_paced(),
            Work::Repeated { .. } => self.cue_repeated(),
            Work::ReadAloud { phrases } => self.cue_reading(&phrases),
            Work::Rapid { .. } => self.cue_rapid(),
            Work::Question { items, .. } => self.cue_question(&items),
            Work::Naming { .. } => self.cue_naming(),
            Work::Rest { length_s } => self.begin_rest_step(length_s),
        }
    }

    /// The cue has been said: what is timed begins.
    fn perform(&mut self) {
        let Some(step) = self.step().cloned() else { return };
        if self.start.class && self.perform_in_class(&step.work) {
            return;
        }
        match step.work {
            Work::Voiced { max_break_s, min_hold_s, glide, .. } => self.open_voiced(max_break_s, min_hold_s, glide),
            Work::Timed { .. } => self.start_posture(),
            Work::Paced { .. } => self.start_paced(),
            Work::Repeated { .. } => self.open_repeated(),
            Work::ReadAloud { .. } => self.open_reading(),
            Work::Rapid { .. } => self.open_rapid(),
            Work::Question { .. } => self.open_question(),
            Work::Naming { .. } => self.open_naming(),
            Work::Rest { .. } => self.end_step(),
        }
    }

    /// Says which repetition comes, from the second on, and then its cue; returns the last line.
    pub(super) fn say_cue(&mut self) -> LineId {
        let Some(step) = self.step() else { return LineId(0) };
        let (repetition, repetitions) = (self.here.repetition, step.repetitions);
        if repetitions > 1 && repetition == repetitions {
            self.say("repetition-last", &[]);
        } else if repetition > 1 {
            self.say("repetition-number", &[("n", Arg::Number(f64::from(repetition)))]);
        }
        // An explicit cue before each trial: people with Parkinson's raise their voice when told to (Ho et al. 1999). The
        // first one follows the step's own words directly.
        if repetition > 1
            && matches!(self.step().map(|step| &step.work), Some(Work::Voiced { .. }))
            && let Some(words) = self.routine.cue_words.clone()
        {
            self.say("cue-words-again", &[("words", Arg::Text(words))]);
        }
        let cue = self.exercise_key("cue");
        self.say(&cue, &[])
    }

    fn begin_rest_step(&mut self, length_s: Option<f64>) {
        match length_s {
            None => self.ask(Ask::RestOver),
            Some(length_s) => {
                self.go_on = Then::AfterRepetition;
                self.rest_for(length_s);
            }
        }
    }

    pub(super) fn rest_for(&mut self, length_s: f64) {
        self.listen(listening::READY, VoiceTask::Idle);
        self.show_prompt(Line { key: "resting-shown".into(), args: Vec::new() }, &[Command::Ready, Command::Stop]);
        self.state = State::Resting { began_s: self.now_s, until_s: self.now_s + length_s };
    }

    /// One repetition is complete: counts it and goes to the next, the next set or the end of the step.
    pub(super) fn repetition_complete(&mut self) {
        let most = self.prescribed();
        let done = self.counts.entry(self.step_index()).or_insert(0);
        *done = (*done + 1).min(most);
        self.go_on = Then::AfterRepetition;
    }

    fn after_repetition(&mut self) {
        let Some(step) = self.step().cloned() else {
            self.summarise("completed");
            return;
        };
        if self.rest_due {
            self.offer_rest();
            return;
        }
        if matches!(step.work, Work::Rest { .. }) {
            self.repetition_complete();
        }
        // The count of what was done says what comes, so that coming by here twice changes nothing.
        let (done, repetitions) = (self.repetitions_done(), step.repetitions.max(1));
        if done >= self.prescribed() {
            self.end_step();
            return;
        }
        self.here.set = done / repetitions + 1;
        self.here.repetition = done % repetitions + 1;
        let rest_s = if self.here.repetition == 1 {
            self.go_on = Then::BeginSet;
            step.set_rest_s
        } else {
            self.go_on = Then::BeginRepetition;
            step.rest_s
        };
        if rest_s > 0.0 { self.rest_for(rest_s) } else { self.proceed(self.go_on) }
    }

    pub(super) fn end_step(&mut self) {
        let fact = Fact::StepDone {
            exercise: self.exercise_id(),
            repetitions_done: self.repetitions_done(),
            repetitions_prescribed: self.prescribed(),
        };
        if self.steps_done.insert(self.step_index()) {
            self.record(fact);
        }
        let last = self.say_step_result();
        self.next_step(last);
    }

    /// Leaves the step for the next one, behind `last` if something is being said.
    pub(super) fn next_step(&mut self, last: Option<LineId>) {
        self.here.step += 1;
        self.here.set = 1;
        self.here.repetition = 1;
        self.in_step = false;
        match last {
            Some(last) => self.after(last, SETTLE_S, Then::BeginStep),
            None => self.begin_step(),
        }
    }

    /// Where a step is under way, writes that it was left unfinished.
    pub(super) fn cut_short(&mut self, reason: &str) {
        self.cut_repetition();
        if self.in_step {
            let (exercise, repetitions_done, repetitions_prescribed) = (self.exercise_id(), self.repetitions_done(), self.prescribed());
            if repetitions_done < repetitions_prescribed {
                self.record(Fact::StepStopped { exercise, reason: reason.to_owned(), repetitions_done, repetitions_prescribed });
            } else if self.steps_done.insert(self.step_index()) {
                // The last repetition was made; only its end had not been told.
                self.record(Fact::StepDone { exercise, repetitions_done, repetitions_prescribed });
            }
            self.in_step = false;
        }
    }

    /// Says what was done and ends.
    pub(super) fn summarise(&mut self, reason: &'static str) {
        self.in_step = false;
        let (done, all) = (self.steps_done.len(), self.routine.steps.len());
        self.listen(&[], VoiceTask::Idle);
        if self.start.class {
            let last = self.say("class-over", &[]);
            self.after(last, BREATH_S, Then::End(reason));
            return;
        }
        let args =
            [("done", Arg::Number(count(done))), ("all", Arg::Number(count(all))), ("left", Arg::Number(count(all - done.min(all))))];
        let undone: Vec<String> = self.undone().iter().map(|step| format!("ex-{}-name", step.exercise.id)).collect();
        let last = match undone.as_slice() {
            [] => self.say("summary-all", &args),
            [one] if done > 0 => self.say("summary-all-but", &[args[0].clone(), args[1].clone(), ("name", Arg::Message(one.clone()))]),
            _ => self.say("summary-part", &args),
        };
        self.show_prompt(Line { key: "summary-shown".into(), args: args.to_vec() }, &[]);
        self.after(last, BREATH_S, Then::End(reason));
    }

    /// The steps that were not done to their end.
    fn undone(&self) -> Vec<&Step> {
        self.routine.steps.iter().enumerate().filter(|(index, _)| !self.steps_done.contains(index)).map(|(_, step)| step).collect()
    }

    pub(super) fn end(&mut self, reason: &str) {
        self.in_step = false;
        let fact = Fact::SessionEnded {
            reason: reason.to_owned(),
            steps_done: u32::try_from(self.steps_done.len()).unwrap_or(u32::MAX),
            steps_prescribed: u32::try_from(self.routine.steps.len()).unwrap_or(u32::MAX),
            duration_s: self.now_s - self.began_s,
        };
        self.record(fact);
        self.effect(Effect::Finish);
        self.state = State::Ended;
    }
}

/// A count as a message argument.
fn count(n: usize) -> f64 {
    f64::from(u32::try_from(n).unwrap_or(u32::MAX))
}
