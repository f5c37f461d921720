//! The machine: its states, what they share, and the one door in.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::{
    Arg, Command, Effect, Entry, Event, Fact, Habits, Line, LineId, Listening, PastResults, Position, Response, Trouble, View, listening,
    naming::NamingRun,
    paced::PacedRun,
    patience::{Patience, Silence},
    posture::PostureRun,
    question::QuestionRun,
    rapid::RapidRun,
    reading::ReadingRun,
    repeated::RepeatedRun,
    talk::FOR_SPEECH,
    tiring::Trial,
    voiced::VoicedRun,
};
use model::VoiceTask;
use routine::{Routine, Step};

/// What the engine must know besides the routine.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Start {
    /// No session of this client is on record: the aid notice and all cautions are said.
    pub first_session: bool,
    /// Exercises a clinician has agreed to, by the client's earlier "yes".
    pub agreed: BTreeSet<String>,
    /// Exercises this client has done before: the short instruction will do.
    pub known: BTreeSet<String>,
    /// An interrupted session of this routine can be gone on with from here.
    pub resume_from: Option<Position>,
    /// Steps of that session that were done to the end, counted from 1 as in [`Position`].
    pub resume_done: BTreeSet<u32>,
    /// Repetitions of that session that were completed, by step counted from 1: the dose goes on, it does not begin anew.
    pub resume_counts: BTreeMap<u32, u32>,
    /// Loud holds of that session so far, s.
    pub resume_loud_s: f64,
    /// The client's own past.
    pub past: PastResults,
    /// How long this person usually takes.
    pub habits: Habits,
    /// Whole weeks since this client's first practice: feedback on results fades with them.
    pub practice_week: u32,
    /// The page asks to keep the sound of practices for so many days, and the client has not answered yet.
    pub sound_days: Option<u32>,
    /// The client said yes to that a while ago, and is asked whether it is still right.
    pub sound_again: bool,
    /// A clinician leads a class: nobody is measured or hurried, nothing moves on by a voice in the room alone.
    pub class: bool,
}

/// What comes after the lines under way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Then {
    AskResume,
    Cautions,
    AskAgreement,
    AskStart,
    BeginStep,
    BeginSet,
    BeginRepetition,
    /// The cue of a repetition has been said; what it times begins.
    Perform,
    AfterRepetition,
    /// What was being asked is open again.
    Ask(Ask),
    Halted(Halt),
    End(&'static str),
}

/// What it waits to hear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Ask {
    /// "yes" or "no": go on from where the last session broke off?
    Resume,
    /// "yes": a clinician has agreed.
    Agreement,
    /// "yes" or "no": may the sound of practices be kept?
    Sound,
    /// "ready": the session may start.
    Start,
    /// "ready": in position for the next set.
    Position,
    /// "ready": the rest without a length is over.
    RestOver,
    /// "ready" or "done": the sip is swallowed.
    Sip,
    /// "yes", "no" or "finish": holds have become shorter or softer; a rest?
    OfferRest,
    /// "yes" or "no": was that this command?
    Confirm(Command),
    /// Nothing needs to be said: the session ends unless "go on" is heard.
    FinishUnlessTakenBack,
}

/// Why it stands still.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Halt {
    Stopped,
    Paused,
    Resting,
    Helped,
    /// The exercise is over for today.
    Unwell,
}

/// Where the session stands. Each state owns its data.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum State {
    /// Lines are being said; after the last one and a pause it goes on.
    Speaking {
        last: LineId,
        ended_s: Option<f64>,
        pause_s: f64,
        then: Then,
    },
    Asking {
        ask: Ask,
        patience: Patience,
    },
    Resting {
        began_s: f64,
        until_s: f64,
    },
    Halted {
        halt: Halt,
        since_s: f64,
        told: bool,
        patience: Patience,
    },
    Voiced(VoicedRun),
    Posture(PostureRun),
    Paced(PacedRun),
    Repeated(RepeatedRun),
    Reading(ReadingRun),
    Rapid(RapidRun),
    Question(QuestionRun),
    Naming(NamingRun),
    Ended,
}

/// Seconds of silence after "stop" before it says how to go on (design: "silent at once; then after a second").
const STOP_SILENCE_S: f64 = 1.0;
/// Seconds in which an announced end can be taken back.
const TAKE_BACK_S: f64 = 6.0;

/// Leads one session of one routine.
#[derive(Debug, Clone)]
pub struct Engine {
    pub(super) routine: Routine,
    pub(super) start: Start,
    pub(super) now_s: f64,
    pub(super) began_s: f64,
    pub(super) state: State,
    pub(super) here: Position,
    /// The session stands in the journal.
    pub(super) begun: bool,
    /// The client has said "ready" to the first step: the cautions lie behind, and steps can be moved about in.
    pub(super) started: bool,
    /// True while `here` lies inside a step that has begun.
    pub(super) in_step: bool,
    /// Where "go on" leads.
    pub(super) go_on: Then,
    /// Steps left out for want of agreement, by index from 0.
    pub(super) left_out: BTreeSet<usize>,
    /// Steps done to the end, by index from 0.
    pub(super) steps_done: BTreeSet<usize>,
    /// Repetitions completed, by index of the step from 0. A step that is come back to goes on where it was: the dose is
    /// never exceeded.
    pub(super) counts: BTreeMap<usize, u32>,
    /// Voiced trials of this step.
    pub(super) trials: Vec<Trial>,
    /// Trials since a result was last told.
    pub(super) trials_untold: u32,
    /// Holds or level fall: a rest is to be offered behind this trial.
    pub(super) rest_due: bool,
    pub(super) rest_offered_in_step: bool,
    /// Loud holds of this practice together, s.
    pub(super) loud_s: f64,
    /// A hold that a command cut off: the voice ear gives its figures a moment later, when the state has moved on.
    pub(super) cut_hold: Option<(String, Position)>,
    /// Factor on the routine's count interval, by "slower" and "faster".
    pub(super) pace: f64,
    /// When our last line ended, s.
    pub(super) last_spoke_s: f64,
    /// When the last command was heard, s.
    pub(super) command_at_s: f64,
    /// Ends of what was said in the room and held no word that is listened for, of the last minute, s.
    pub(super) talk_s: VecDeque<f64>,
    /// When it was the client's turn to read, think or repeat syllables, s.
    pub(super) turn_began_s: f64,
    /// Somebody has been talking since, s.
    pub(super) talk_since_s: Option<f64>,
    /// The sort of question asked last: a new sort is announced.
    pub(super) kind_asked: Option<routine::PackKind>,
    /// The last thing that was announced, for "again".
    pub(super) last_said: Option<Line>,
    /// Troubles that stand in the journal, and those of them that are still to be told.
    pub(super) troubles_known: BTreeSet<Trouble>,
    pub(super) troubles_to_tell: Vec<Trouble>,
    listening: Option<Listening>,
    /// Facts that become true a moment from now, by an end that has been scheduled already.
    due: Vec<Entry>,
    next_line: u64,
    /// Lines of ours under way.
    speaking: BTreeSet<LineId>,
    view: View,
    out: Vec<Effect>,
}

impl Engine {
    /// A session about to begin; it greets at the first tick.
    pub fn new(routine: Routine, start: Start) -> Self {
        Self {
            routine,
            start,
            now_s: 0.0,
            began_s: 0.0,
            state: State::Speaking { last: LineId(0), ended_s: None, pause_s: 0.0, then: Then::AskStart },
            here: Position { step: 1, set: 1, repetition: 1 },
            begun: false,
            started: false,
            in_step: false,
            go_on: Then::AskStart,
            left_out: BTreeSet::new(),
            steps_done: BTreeSet::new(),
            counts: BTreeMap::new(),
            trials: Vec::new(),
            trials_untold: 0,
            rest_due: false,
            rest_offered_in_step: false,
            loud_s: 0.0,
            cut_hold: None,
            pace: 1.0,
            last_spoke_s: 0.0,
            command_at_s: f64::NEG_INFINITY,
            talk_s: VecDeque::new(),
            turn_began_s: 0.0,
            talk_since_s: None,
            kind_asked: None,
            last_said: None,
            troubles_known: BTreeSet::new(),
            troubles_to_tell: Vec::new(),
            listening: None,
            due: Vec::new(),
            next_line: 0,
            speaking: BTreeSet::new(),
            view: View::default(),
            out: Vec::new(),
        }
    }

    /// A clinician leads a class.
    #[must_use]
    pub fn leads_class(&self) -> bool {
        self.start.class
    }

    /// True once `Effect::Finish` has been given; later events do nothing.
    pub fn is_over(&self) -> bool {
        self.state == State::Ended
    }

    /// Takes one event and says what is to be done about it. Total: no order of events can make it fail.
    pub fn on(&mut self, event: Event) -> Vec<Effect> {
        if self.is_over() {
            return Vec::new();
        }
        let first = self.next_line == 0;
        self.now_s = self.now_s.max(event.at_s());
        if first {
            self.began_s = self.now_s;
            self.greet();
        }
        self.record_due(false);
        match event {
            Event::Tick { .. } => self.tick(),
            Event::Command { command, confidence, text, .. } => self.command(command, confidence, text),
            Event::Answer { text, .. } => self.answer(&text),
            Event::Onset { onset_s, .. } => self.voice_began(onset_s),
            Event::Offset { hold, .. } => self.voice_ended(&hold),
            Event::SpeechBegan { onset_s, .. } => self.speech_began(onset_s),
            Event::Spoken { utterance, .. } => self.spoken(&utterance),
            Event::RoomLoud { loud, room_db, .. } => self.room_loud(loud, room_db),
            Event::LineBegan { .. } => {}
            Event::Trouble { trouble, .. } => self.troubled(trouble),
            Event::LineEnded { line, .. } => self.line_ended(line),
            Event::Interrupt { .. } => {
                self.out.push(Effect::Hush);
                self.cut_short("interrupted");
                self.end("interrupted");
            }
        }
        self.tell_troubles();
        std::mem::take(&mut self.out)
    }

    fn tick(&mut self) {
        match self.state.clone() {
            State::Speaking { ended_s: Some(ended_s), pause_s, then, .. } => {
                if self.now_s >= ended_s + pause_s {
                    self.proceed(then);
                }
            }
            State::Speaking { .. } | State::Ended => {}
            State::Asking { ask, .. } => self.tick_asking(ask),
            State::Resting { began_s, until_s } => self.tick_resting(began_s, until_s),
            State::Halted { halt, since_s, told, .. } => self.tick_halted(halt, since_s, told),
            State::Voiced(run) => self.tick_voiced(run),
            State::Posture(run) => self.tick_posture(run),
            State::Paced(run) => self.tick_paced(run),
            State::Repeated(run) => self.tick_repeated(run),
            State::Reading(run) => self.tick_reading(run),
            State::Rapid(_) => self.tick_rapid(),
            State::Question(run) => self.tick_question(run),
            State::Naming(run) => self.tick_naming(run),
        }
    }

    fn tick_asking(&mut self, ask: Ask) {
        if self.is_speaking() {
            return;
        }
        if ask == Ask::FinishUnlessTakenBack {
            if let State::Asking { patience, .. } = &self.state
                && patience.quiet_for_s(self.now_s) >= TAKE_BACK_S
            {
                self.finish();
            }
            return;
        }
        match self.silence() {
            Silence::Wait => {}
            Silence::AskAgain(n) => self.ask_again(ask, n),
            Silence::WaitForReady => self.asked_in_vain(ask),
            Silence::StillHere if ask == Ask::Sip => self.remind("ask-sip-again", &[]),
            Silence::StillHere => self.remind("wait-for-ready", &[]),
            Silence::GiveUp => self.give_up(),
        }
    }

    fn tick_resting(&mut self, began_s: f64, until_s: f64) {
        self.show_figure(&format!("{:.0}", (until_s - self.now_s).max(0.0).ceil()));
        if self.now_s >= until_s {
            self.record(Fact::Rested { duration_s: self.now_s - began_s });
            self.proceed(self.go_on);
        }
    }

    fn tick_halted(&mut self, halt: Halt, since_s: f64, told: bool) {
        if !told {
            if self.now_s >= since_s + STOP_SILENCE_S && !self.is_speaking() {
                self.tell_halted(halt);
            }
            return;
        }
        if self.is_speaking() {
            return;
        }
        match self.silence() {
            Silence::Wait => {}
            Silence::AskAgain(_) | Silence::WaitForReady | Silence::StillHere => self.remind("halted-reminder", &[]),
            Silence::GiveUp => self.give_up(),
        }
    }

    /// What the silence of the present state means; states without patience wait for ever.
    pub(super) fn silence(&mut self) -> Silence {
        // A class is its clinician's to lead.
        if self.start.class {
            return Silence::Wait;
        }
        let (now_s, mut limits) = (self.now_s, self.routine.no_answer);
        if let Some(response) = self.response() {
            limits.ask_again_after_s = self.start.habits.wait_s(response, limits.ask_again_after_s);
            // Nobody who still answers is given up.
            limits.give_up_after_s = limits.give_up_after_s.max(limits.ask_again_after_s * f64::from(limits.asks.saturating_add(2)));
        }
        self.patience().map_or(Silence::Wait, |patience| patience.look(now_s, limits))
    }

    /// What is waited for now.
    fn response(&self) -> Option<Response> {
        Some(match &self.state {
            State::Asking { ask: Ask::Position | Ask::RestOver, .. } => Response::Position,
            State::Asking { ask: Ask::FinishUnlessTakenBack, .. } => return None,
            State::Asking { ask: Ask::Sip, .. } | State::Repeated(_) => Response::Done,
            State::Asking { .. } => Response::Answer,
            State::Voiced(_) | State::Reading(_) | State::Rapid(_) => Response::Voice,
            State::Question(_) => Response::Question,
            _ => return None,
        })
    }

    /// The client has just done what was waited for: learns how long that took. Call before the state changes.
    pub(super) fn responded(&mut self) {
        let now_s = self.now_s;
        if self.start.class || self.is_speaking() {
            return;
        }
        let Some(to) = self.response() else { return };
        let after_s = match &self.state {
            State::Question(run) => Some(run.thought_s(now_s)),
            _ => self.patience().and_then(|patience| patience.response_s(now_s)),
        };
        if let Some(after_s) = after_s {
            self.start.habits.add(to, after_s);
            self.record(Fact::ResponseTimed { to, after_s });
        }
    }

    /// The patience of the present state, where it has one.
    pub(super) fn patience(&mut self) -> Option<&mut Patience> {
        match &mut self.state {
            State::Asking { patience, .. } | State::Halted { patience, .. } => Some(patience),
            State::Voiced(run) => Some(&mut run.patience),
            State::Repeated(run) => Some(&mut run.patience),
            State::Reading(run) => Some(&mut run.patience),
            State::Rapid(run) => Some(&mut run.patience),
            _ => None,
        }
    }

    fn line_ended(&mut self, line: LineId) {
        self.speaking.remove(&line);
        let now_s = self.now_s;
        self.last_spoke_s = now_s;
        match &mut self.state {
            State::Speaking { last, ended_s, .. } if *last == line => *ended_s = Some(now_s),
            State::Question(run) => run.spoke(now_s),
            _ => {
                if self.speaking.is_empty()
                    && let Some(patience) = self.patience()
                {
                    patience.spoke(now_s);
                }
            }
        }
    }

    // What the states share.

    /// True while a line of ours is queued or playing.
    pub(super) fn is_speaking(&self) -> bool {
        !self.speaking.is_empty()
    }

    /// Queues a line behind those under way.
    pub(super) fn say(&mut self, key: &str, args: &[(&'static str, Arg)]) -> LineId {
        self.say_line(Line { key: key.to_owned(), args: args.to_vec() }, None)
    }

    /// Says a line that begins exactly on a beat.
    pub(super) fn say_on_beat(&mut self, key: &str, args: &[(&'static str, Arg)], beat_s: f64) -> LineId {
        self.say_line(Line { key: key.to_owned(), args: args.to_vec() }, Some(beat_s))
    }

    pub(super) fn say_line(&mut self, line: Line, on_beat_s: Option<f64>) -> LineId {
        self.next_line += 1;
        let id = LineId(self.next_line);
        self.speaking.insert(id);
        if on_beat_s.is_none() {
            self.last_said = Some(line.clone());
        }
        self.out.push(Effect::Say { id, line, on_beat_s });
        id
    }

    /// Goes on with `then` when `last` has been said and `pause_s` has passed.
    pub(super) fn after(&mut self, last: LineId, pause_s: f64, then: Then) {
        self.state = State::Speaking { last, ended_s: None, pause_s, then };
        self.go_on = match then {
            Then::Perform => Then::BeginRepetition,
            // Where "go on" leads from there is kept.
            Then::Halted(_) => self.go_on,
            other => other,
        };
    }

    /// A kind reminder in a state that goes on waiting.
    pub(super) fn remind(&mut self, key: &str, args: &[(&'static str, Arg)]) {
        self.say(key, args);
    }

    /// Where commands are heard and nothing is measured, the voice ear tells of talk.
    pub(super) fn listen(&mut self, commands: &[Command], voice: VoiceTask) {
        let voice = if voice == VoiceTask::Idle && !commands.is_empty() { FOR_SPEECH } else { voice };
        self.listen_with(commands, Vec::new(), voice);
    }

    pub(super) fn listen_with(&mut self, commands: &[Command], answers: Vec<String>, voice: VoiceTask) {
        let listening = if self.start.class {
            let commands = listening::of_class(commands).to_vec();
            Listening { commands, answers: Vec::new(), voice: VoiceTask::Idle, list: false, firm: true }
        } else {
            // Where a category is named, and nowhere else: a command is never part of a list.
            let list = !answers.is_empty() && matches!(self.step().map(|step| &step.work), Some(routine::Work::Naming { .. }));
            Listening { commands: commands.to_vec(), answers, voice, list, firm: false }
        };
        if self.listening.as_ref() != Some(&listening) {
            // Another task begins a new stretch.
            if self.listening.as_ref().is_some_and(|before| before.voice != listening.voice) {
                self.talk_since_s = None;
            }
            self.listening = Some(listening.clone());
            self.out.push(Effect::Listen(listening));
        }
    }

    /// Keeps a fact that is true from `at_s` on, at most a look-ahead from now.
    pub(super) fn record_at(&mut self, at_s: f64, fact: Fact) {
        let position = self.in_step.then_some(self.here);
        self.due.push(Entry { at_s, fact, position });
    }

    /// Facts whose time has come; all of them where something else is written, so that the journal's order holds.
    pub(super) fn record_due(&mut self, all: bool) {
        let now_s = self.now_s;
        for mut entry in self.due.extract_if(.., |entry| all || entry.at_s <= now_s) {
            entry.at_s = entry.at_s.min(now_s);
            self.out.push(Effect::Record(entry));
        }
    }

    pub(super) fn record(&mut self, fact: Fact) {
        self.record_due(true);
        let position = self.in_step.then_some(self.here);
        self.out.push(Effect::Record(Entry { at_s: self.now_s, fact, position }));
    }

    pub(super) fn hush(&mut self) {
        self.out.push(Effect::Hush);
    }

    pub(super) fn effect(&mut self, effect: Effect) {
        self.out.push(effect);
    }

    /// Shows a view if it differs from what stands there.
    pub(super) fn show(&mut self, view: View) {
        if self.view != view {
            self.view = view.clone();
            self.out.push(Effect::Show(view));
        }
    }

    /// Changes the large figure alone.
    pub(super) fn show_figure(&mut self, figure: &str) {
        if self.view.figure != figure {
            let view = View { figure: figure.to_owned(), ..self.view.clone() };
            self.show(view);
        }
    }

    /// Changes the prompt and what can be said; the figure goes.
    pub(super) fn show_prompt(&mut self, prompt: Line, can_say: &[Command]) {
        self.show_prompt_with(prompt, can_say, "");
    }

    pub(super) fn show_prompt_with(&mut self, prompt: Line, can_say: &[Command], figure: &str) {
        let can_say = if self.start.class { listening::shown_to_class(can_say) } else { can_say.to_vec() };
        let view = View { heading: self.heading(), prompt: Some(prompt), figure: figure.to_owned(), can_say };
        self.show(view);
    }

    fn heading(&self) -> Option<Line> {
        let step = self.step()?;
        let name = Arg::Message(format!("ex-{}-name", step.exercise.id));
        if !self.in_step {
            return Some(Line { key: "heading-session".into(), args: vec![("title", Arg::Text(self.routine.title.clone()))] });
        }
        Some(Line {
            key: if step.sets > 1 { "heading-set" } else { "heading-step" }.into(),
            args: vec![
                ("name", name),
                ("repetition", Arg::Number(f64::from(self.here.repetition))),
                ("repetitions", Arg::Number(f64::from(step.repetitions))),
                ("set", Arg::Number(f64::from(self.here.set))),
                ("sets", Arg::Number(f64::from(step.sets))),
            ],
        })
    }

    /// The step `here` points at; none behind the last.
    pub(super) fn step(&self) -> Option<&Step> {
        self.routine.steps.get(self.step_index())
    }

    /// `here.step` counted from 0.
    pub(super) fn step_index(&self) -> usize {
        (self.here.step.max(1) - 1) as usize
    }

    pub(super) fn exercise_id(&self) -> String {
        self.step().map(|step| step.exercise.id.clone()).unwrap_or_default()
    }

    /// A message of the present exercise: `ex-ID-PART`.
    pub(super) fn exercise_key(&self, part: &str) -> String {
        format!("ex-{}-{part}", self.exercise_id())
    }

    /// Repetitions completed in the present step.
    pub(super) fn repetitions_done(&self) -> u32 {
        self.counts.get(&self.step_index()).copied().unwrap_or(0)
    }

    /// Which repetition of the step this is, all sets together, from 0.
    pub(super) fn turn(&self) -> usize {
        let repetitions = self.step().map_or(1, |step| step.repetitions);
        (self.here.set.saturating_sub(1) * repetitions + self.here.repetition.saturating_sub(1)) as usize
    }

    /// Levels of this practice can be compared with each other.
    pub(super) fn levels_compare(&self) -> bool {
        !self.troubles_known.contains(&Trouble::MicrophoneGain) && !self.troubles_known.contains(&Trouble::RoomTooLoud)
    }

    /// Repetitions prescribed in the present step, all sets together.
    pub(super) fn prescribed(&self) -> u32 {
        self.step().map_or(0, |step| step.sets.saturating_mul(step.repetitions))
    }
}
