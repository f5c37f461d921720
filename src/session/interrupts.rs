//! What can be said at any time, and standing still.

use super::engine::{Ask, Engine, Halt, State, Then};
use super::patience::Patience;
use super::{Arg, Command, Effect, Fact, Line, listening};
use model::VoiceTask;
use routine::Work;

/// Below this confidence nothing is done; from here on a harmless command is taken (model card: what is heard under
/// 0.5 is mostly something else).
const HEARD_AT_ALL: f64 = 0.5;
/// From here on a costly command is taken without asking (model card: advised threshold 0.8).
const SURE: f64 = 0.8;
/// In a room full of talk only a key is surer than this.
const CERTAIN: f64 = 1.0;
/// How much "louder" and "softer" change the voice, dB.
const VOLUME_STEP_DB: f64 = 4.0;
/// How much "slower" and "faster" change the beat: design's example goes from 1.0 s to 1.2 s.
const PACE_STEP: f64 = 1.2;
/// The beat stays within these factors of what the routine says.
const PACE_RANGE: (f64, f64) = (0.6, 2.0);

impl Engine {
    pub(super) fn command(&mut self, command: Command, confidence: f64, text: String) {
        if confidence < HEARD_AT_ALL {
            return;
        }
        let now_s = self.now_s;
        let moves = matches!(command, Command::Skip | Command::GoBack);
        if moves && !self.started {
            return;
        }
        // Many voices: only what is surely meant moves a class.
        if self.start.class && confidence < SURE && !matches!(command, Command::Stop | Command::Pause) {
            return;
        }
        self.command_at_s = now_s;
        // "Finish" can be taken back for a while anyhow.
        let doubtful = confidence < SURE || (moves && confidence < CERTAIN && self.is_talkative());
        if command.is_costly() && doubtful {
            if let State::Asking { ask: Ask::Confirm(_), .. } = self.state {
                return;
            }
            self.cut_repetition();
            self.hush();
            self.ask(Ask::Confirm(command));
            return;
        }
        self.record(Fact::CommandHeard { command, text, confidence });
        self.obey(command);
        // Whoever speaks is there: the silence counts anew.
        if let Some(patience) = self.patience() {
            patience.heard(now_s);
        }
    }

    fn obey(&mut self, command: Command) {
        match command {
            Command::Stop => self.halt(Halt::Stopped),
            Command::Pause => self.halt(Halt::Paused),
            Command::Rest => self.halt(Halt::Resting),
            Command::Help => {
                self.record_unwell("help");
                self.halt(Halt::Helped);
            }
            Command::Dizzy => self.unwell("dizzy", "unwell-dizzy"),
            Command::Hurts => self.unwell("pain", "unwell-pain"),
            Command::Louder => self.volume(VOLUME_STEP_DB),
            Command::Softer => self.volume(-VOLUME_STEP_DB),
            Command::Slower => self.change_pace(PACE_STEP),
            Command::Faster => self.change_pace(1.0 / PACE_STEP),
            Command::HowLong => self.how_long(),
            Command::Skip => self.skip(),
            Command::GoBack => self.go_back(),
            Command::Again => self.again(),
            Command::Finish => self.finish(),
            Command::Why => self.tell_why(),
            Command::HowDid => self.tell_how_it_went(),
            Command::Hint => self.give_hint("question-hint-asked"),
            Command::Yes | Command::No => self.yes_or_no(command == Command::Yes),
            Command::Ready | Command::Done | Command::GoOn => self.go_ahead(command),
        }
    }

    fn yes_or_no(&mut self, yes: bool) {
        let State::Asking { ask, .. } = self.state else { return };
        self.responded();
        match ask {
            Ask::OfferRest => self.rest_taken(yes),
            Ask::Resume => self.resume(yes),
            Ask::Agreement => self.agreement(yes),
            Ask::Sound => self.sound_answered(Some(yes)),
            Ask::Confirm(command) if yes => self.obey(command),
            Ask::Confirm(_) => self.proceed(self.go_on),
            _ => {}
        }
    }

    /// "ready", "done", "go on": the same wish, to go ahead from where it stands.
    fn go_ahead(&mut self, command: Command) {
        let waits = match &self.state {
            State::Asking { ask, .. } => {
                !matches!(ask, Ask::FinishUnlessTakenBack | Ask::Confirm(_) | Ask::Agreement | Ask::Sound | Ask::Resume)
            }
            _ => false,
        };
        if waits {
            self.responded();
        }
        match &self.state {
            State::Asking { ask, .. } => match ask {
                Ask::Start => self.proceed(Then::BeginStep),
                Ask::Position => self.begin_repetition(),
                Ask::RestOver => {
                    self.repetition_complete();
                    self.end_step();
                }
                Ask::Sip => self.proceed(Then::AfterRepetition),
                Ask::OfferRest => self.rest_taken(false),
                Ask::FinishUnlessTakenBack if command == Command::GoOn => self.proceed(self.go_on),
                _ => {}
            },
            State::Resting { began_s, .. } => {
                let began_s = *began_s;
                self.record(Fact::Rested { duration_s: self.now_s - began_s });
                self.proceed(self.go_on);
            }
            State::Halted { .. } => {
                self.listen(listening::READY, VoiceTask::Idle);
                let last = self.say("going-on", &[]);
                let then = self.go_on;
                self.after(last, 0.2, then);
            }
            _ if self.start.class => self.move_on(),
            State::Voiced(run) if run.patience.is_waiting() => self.begin_repetition(),
            State::Reading(run) if run.patience.is_waiting() => self.begin_repetition(),
            State::Rapid(run) if run.patience.is_waiting() => self.begin_repetition(),
            State::Repeated(run) => {
                if command == Command::Done {
                    self.repeated_done("done");
                } else if run.patience.is_waiting() {
                    self.begin_repetition();
                }
            }
            _ => {}
        }
    }

    // Standing still.

    /// Silence at once; a second later it says how to go on.
    fn halt(&mut self, halt: Halt) {
        self.cut_repetition();
        self.hush();
        if self.in_step && !matches!(self.go_on, Then::BeginStep | Then::BeginSet | Then::AfterRepetition | Then::Ask(_)) {
            self.go_on = Then::BeginRepetition;
        }
        self.halted(halt);
    }

    pub(super) fn halted(&mut self, halt: Halt) {
        self.listen(listening::HALTED, VoiceTask::Idle);
        let now_s = self.now_s;
        self.state = State::Halted { halt, since_s: now_s, told: false, patience: Patience::new(now_s) };
        self.show_prompt(Line { key: halt.shown_key().into(), args: Vec::new() }, halt.can_say());
    }

    pub(super) fn tell_halted(&mut self, halt: Halt) {
        match halt {
            Halt::Resting if self.start.class => self.remind("class-resting", &[]),
            _ if self.start.class => self.remind("class-halted", &[]),
            Halt::Stopped => self.remind("stopped", &[]),
            Halt::Paused => self.remind("paused", &[]),
            Halt::Resting => self.remind("resting", &[]),
            Halt::Unwell => self.remind("unwell-go-on", &[]),
            Halt::Helped => {
                self.say("help", &[]);
                if self.in_step {
                    let instruction = self.exercise_key("instruction");
                    self.say(&instruction, &[]);
                }
                self.remind("help-go-on", &[]);
            }
        }
        if let State::Halted { told, .. } = &mut self.state {
            *told = true;
        }
    }

    fn record_unwell(&mut self, reason: &str) {
        let exercise = self.in_step.then(|| self.exercise_id());
        self.record(Fact::SafetyStop { exercise, reason: reason.to_owned() });
    }

    /// The exercise is left for today; says what to do.
    fn unwell(&mut self, reason: &str, key: &str) {
        if self.start.class {
            self.record_unwell(reason);
            self.halt(Halt::Stopped);
            self.say("class-unwell", &[]);
            return;
        }
        self.hush();
        self.record_unwell(reason);
        let mut go_on = self.go_on;
        if self.in_step {
            let name = self.exercise_key("name");
            self.cut_short(reason);
            self.say("unwell-leave", &[("name", Arg::Message(name))]);
            self.here.step += 1;
            self.here.set = 1;
            self.here.repetition = 1;
            go_on = Then::BeginStep;
        }
        let last = self.say(key, &[]);
        self.listen(listening::HALTED, VoiceTask::Idle);
        self.after(last, 0.4, Then::Halted(Halt::Unwell));
        self.go_on = go_on;
    }

    /// Writes down what a command cut off, so that nothing measured is lost.
    pub(super) fn cut_repetition(&mut self) {
        match self.state.clone() {
            State::Voiced(run) => self.cut_voiced(&run),
            State::Posture(run) => self.record_cut_posture(&run),
            State::Paced(run) => self.record_cut_round(&run),
            State::Naming(run) => self.record_cut_naming(&run),
            _ => {}
        }
        if matches!(
            self.state,
            State::Voiced(_)
                | State::Posture(_)
                | State::Paced(_)
                | State::Repeated(_)
                | State::Reading(_)
                | State::Rapid(_)
                | State::Question(_)
                | State::Naming(_)
        ) {
            self.go_on = Then::BeginRepetition;
        }
    }

    // Small wishes that leave what runs alone.

    fn volume(&mut self, change_db: f64) {
        self.effect(Effect::Volume { change_db });
        self.acknowledge("volume-changed", &[]);
    }

    fn change_pace(&mut self, factor: f64) {
        // A posture's seconds are real ones.
        if matches!(self.state, State::Posture(_)) {
            self.acknowledge("pace-stays", &[]);
            return;
        }
        if !(self.in_step && matches!(self.step().map(|step| &step.work), Some(Work::Paced { .. }))) {
            self.effect(Effect::SpeechRate { factor });
            self.acknowledge("speech-rate-changed", &[]);
            return;
        }
        self.pace = (self.pace * factor).clamp(PACE_RANGE.0, PACE_RANGE.1);
        // The counts themselves are the answer: the next round comes on the new beat.
        if !matches!(self.state, State::Paced(_)) {
            self.acknowledge("pace-changed", &[]);
        }
    }

    /// Answers at once where the body is not busy with our counts.
    fn acknowledge(&mut self, key: &str, args: &[(&'static str, Arg)]) {
        if matches!(self.state, State::Posture(_) | State::Paced(_) | State::Speaking { .. }) {
            return;
        }
        self.remind(key, args);
    }

    fn how_long(&mut self) {
        match &self.state {
            State::Posture(run) => {
                let left_s = (run.ends_s() - self.now_s).max(0.0).round();
                self.say("seconds-to-go", &[("seconds", Arg::Number(left_s))]);
            }
            State::Paced(_) => {
                let rounds = self.step().map_or(0, |step| step.repetitions.saturating_sub(self.here.repetition));
                self.say("rounds-to-go", &[("rounds", Arg::Number(f64::from(rounds)))]);
            }
            _ => match self.trials.last().copied() {
                Some(trial) if self.in_step => self.remind("held", &[("seconds", Arg::Number(tenth(trial.duration_s)))]),
                _ => {
                    let left = self.minutes_left();
                    self.remind("minutes-left", &[("minutes", Arg::Number(left))]);
                }
            },
        }
    }

    fn minutes_left(&self) -> f64 {
        let left_s: f64 = self
            .routine
            .steps
            .iter()
            .enumerate()
            .skip(self.step_index())
            .filter(|(index, _)| !self.left_out.contains(index))
            .map(|(_, step)| step.planned_duration_s())
            .sum();
        (left_s / 60.0).round().max(1.0)
    }

    // Moving about.

    fn skip(&mut self) {
        if !self.started || self.step().is_none() {
            return;
        }
        self.hush();
        let name = self.exercise_key("name");
        self.cut_short("skipped");
        self.listen(listening::READY, VoiceTask::Idle);
        let last = self.say("skipped", &[("name", Arg::Message(name))]);
        self.next_step(Some(last));
    }

    /// To the exercise before, or to the begin of this one. A dose that was done is not done twice.
    fn go_back(&mut self) {
        if !self.started {
            return;
        }
        self.hush();
        let nothing_done = self.repetitions_done() == 0 || !self.in_step;
        self.cut_short("went back");
        let mut done_before = None;
        if nothing_done && self.here.step > 1 {
            let before = (1..self.here.step).rev().find(|step| !self.left_out.contains(&((step - 1) as usize)));
            match before {
                Some(step) if self.steps_done.contains(&((step - 1) as usize)) => done_before = Some(step),
                Some(step) => self.here.step = step,
                None => {}
            }
        }
        self.listen(listening::READY, VoiceTask::Idle);
        let last = if let Some(step) = done_before {
            let id = self.routine.steps.get((step - 1) as usize).map(|step| step.exercise.id.clone()).unwrap_or_default();
            self.say("went-back-done", &[("name", Arg::Message(format!("ex-{id}-name")))])
        } else {
            let name = self.exercise_key("name");
            self.say("went-back", &[("name", Arg::Message(name))])
        };
        self.after(last, 0.2, Then::BeginStep);
    }

    /// What the present exercise is for; then it goes on where it was.
    fn tell_why(&mut self) {
        if !self.in_step {
            self.remind("why-practice", &[]);
            return;
        }
        let purpose = self.exercise_key("purpose");
        match &self.state {
            State::Speaking { then, .. } => {
                let then = *then;
                self.hush();
                let last = self.say(&purpose, &[]);
                self.after(last, 0.4, then);
            }
            _ => self.remind(&purpose, &[]),
        }
    }

    /// The repetition under way once more; where none is, what was said last.
    fn again(&mut self) {
        if self.start.class && self.started && !matches!(self.state, State::Asking { .. } | State::Halted { .. }) {
            self.once_more();
            return;
        }
        match &self.state {
            State::Asking { ask, .. } => {
                let ask = *ask;
                self.ask(ask);
            }
            State::Resting { .. } => {
                // What was done counts: once more is the next one, now. A dose is not exceeded.
                self.hush();
                let then = self.go_on;
                self.proceed(then);
            }
            State::Halted { .. } => {
                self.listen(listening::READY, VoiceTask::Idle);
                let then = self.go_on;
                self.proceed(then);
            }
            State::Speaking { then, .. } => {
                let then = *then;
                if let Some(line) = self.last_said.clone() {
                    self.hush();
                    let last = self.say_line(line, None);
                    self.after(last, 0.2, then);
                }
            }
            State::Ended => {}
            _ => {
                self.cut_repetition();
                self.hush();
                self.begin_repetition();
            }
        }
    }

    /// Asks to be sure; said twice, or not taken back, it ends, and the step under way is kept as ended early.
    pub(super) fn finish(&mut self) {
        if matches!(self.state, State::Asking { ask: Ask::FinishUnlessTakenBack, .. }) {
            self.cut_short("finished early");
            self.summarise("finished");
            return;
        }
        self.hush();
        self.cut_repetition();
        self.ask(Ask::FinishUnlessTakenBack);
    }
}

impl Halt {
    fn shown_key(self) -> &'static str {
        match self {
            Halt::Stopped => "stopped-shown",
            Halt::Paused => "paused-shown",
            Halt::Resting => "resting-shown",
            Halt::Helped => "help-shown",
            Halt::Unwell => "unwell-shown",
        }
    }

    fn can_say(self) -> &'static [Command] {
        match self {
            Halt::Resting => &[Command::Ready, Command::Finish],
            _ => &[Command::GoOn, Command::Skip, Command::Finish],
        }
    }
}

/// Seconds to one decimal, as they are said.
pub(super) fn tenth(seconds: f64) -> f64 {
    (seconds * 10.0).round() / 10.0
}
