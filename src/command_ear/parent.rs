//! The parent's side: what the session holds.

use super::batch::{Batch, Batcher, GAP_S};
use super::level::Meter;
use super::lexicon::unknown_words;
use super::supervise::{self, Leash, Order, Recipe, Report};
use super::wire::{self, GrammarOrder, HeardReport, Sound, kind};
use super::{CommandEarError, CommandEvent, CommandRecogniser, Considered, EnrolledVoice, Grammar, HeardPhrase, Lexicon, Models, Path};
use std::collections::{HashMap, VecDeque};
use std::path::PathBuf;
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::time::Duration;

/// Whether the caller may be kept waiting.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// [`CommandRecogniser::poll`] gives what there is and never waits.
    Live,
    /// [`CommandRecogniser::poll`] waits for every full batch (30 ms) pushed so far that could lead to an event: the same sound gives the
    /// same events at the same polls, on any machine.
    Offline,
}

/// How to start the command ear.
#[derive(Debug, Clone)]
pub struct Options {
    /// The files that it hears with.
    pub model: Models,
    /// The program that runs as the child with `__recogniser [--model DIR] [--second-ear DIR]`; None for the running one.
    pub program: Option<PathBuf>,
    /// What the fast path listens for, always; few and short phrases. May be empty.
    pub fast: Grammar,
    pub mode: Mode,
}

/// In live mode, a child that leaves this much sound unanswered is taken for hung, s.
const HUNG_S: f64 = 8.0;
/// Longest wait for one answer where waiting is allowed; long, since a crowded machine may leave the child without a turn for many seconds.
const PATIENCE: Duration = Duration::from_secs(60);

/// A [`CommandRecogniser`] in a supervised child process.
pub struct ChildRecogniser {
    lexicon: Lexicon,
    mode: Mode,
    orders: Sender<Order>,
    reports: Receiver<Report>,
    keeper: Option<std::thread::JoinHandle<()>>,
    pid: u32,
    leash: Leash,
    batcher: Batcher,
    own_db: f32,
    unanswered: VecDeque<OnItsWay>,
    /// The same meter on the same sound as in the child: an utterance opens only where this says loud.
    meter: Meter,
    /// False after a restart, where the child's meter began anew.
    meters_agree: bool,
    /// An utterance was open at the last answer.
    open: bool,
    sent: u64,
    /// Clock at the end of the last batch sent, s.
    sent_until_s: f64,
    /// All sound before this was dealt with, s.
    settled_s: f64,
    main: Listening,
    fast: Listening,
    ready: bool,
    kill_sent: bool,
    failed: Option<String>,
    last_error: Option<String>,
    unknown: Option<Vec<String>>,
    events: Vec<CommandEvent>,
    wants_why: bool,
    considered: Vec<Considered>,
}

/// A frame that awaits its answer.
#[derive(Debug)]
struct OnItsWay {
    number: u64,
    /// Clock at its end, s.
    end_s: f64,
    /// It may open an utterance, or end one.
    eventful: bool,
}

/// Frames that may be on their way at a time in offline mode (1 s): bounds what is lost where the child dies.
const AHEAD: usize = 33;

/// What a path listens for.
#[derive(Debug, Default)]
struct Listening {
    generation: u64,
    choices: Vec<Vec<String>>,
    tags: HashMap<String, String>,
}

impl ChildRecogniser {
    /// Checks the model, starts the child and waits until it has loaded the model (some tenths of a second).
    ///
    /// # Errors
    /// Model or fast grammar are not usable, or the child does not start. The text names what and what to do.
    pub fn start(options: &Options) -> Result<Self, CommandEarError> {
        let lexicon = Lexicon::of(&options.model)?;
        let program = match &options.program {
            Some(program) => program.clone(),
            None => own_program()?,
        };
        let (orders, inbox) = channel();
        let (outbox, reports) = channel();
        let recipe = Recipe { program, model: options.model.clone() };
        let (pid, leash, keeper) = supervise::start(recipe, orders.clone(), inbox, outbox)?;
        let mut ear = Self {
            lexicon,
            mode: options.mode,
            orders,
            reports,
            keeper: Some(keeper),
            pid,
            leash,
            batcher: Batcher::default(),
            own_db: f32::NEG_INFINITY,
            unanswered: VecDeque::new(),
            meter: Meter::default(),
            meters_agree: true,
            open: false,
            sent: 0,
            sent_until_s: 0.0,
            settled_s: 0.0,
            main: Listening::default(),
            fast: Listening::default(),
            ready: false,
            kill_sent: false,
            failed: None,
            last_error: None,
            unknown: None,
            events: Vec::new(),
            wants_why: false,
            considered: Vec::new(),
        };
        ear.wait_until(|ear| ear.ready || ear.last_error.is_some());
        if let Some(message) = ear.last_error.take().or_else(|| ear.failed.take()) {
            return Err(CommandEarError(message));
        }
        if !ear.ready {
            return Err(CommandEarError(format!(
                "{}: the recogniser did not load this model within {} s; use a smaller model",
                options.model.shown(),
                PATIENCE.as_secs()
            )));
        }
        ear.events.clear();
        ear.listen(Path::Fast, &options.fast)?;
        Ok(ear)
    }

    /// The words that can be recognised.
    #[must_use]
    pub fn lexicon(&self) -> &Lexicon {
        &self.lexicon
    }

    /// Process id of the child that runs now.
    #[must_use]
    pub fn child_id(&self) -> u32 {
        self.pid
    }

    /// Lets a client's own way of saying the commands weigh in from now on; one without words takes it back.
    pub fn weigh_in(&mut self, own: &EnrolledVoice) {
        self.flush();
        self.order(Order::EnrolledVoice { body: own.to_bytes() });
    }

    /// The sound is over: waits, decides on what is still open, and gives the last events.
    pub fn finish(&mut self) -> Vec<CommandEvent> {
        self.ask_to_finish();
        self.wait_until(|ear| ear.unanswered.is_empty());
        std::mem::take(&mut self.events)
    }

    fn ask_to_finish(&mut self) {
        self.flush();
        self.sent += 1;
        let (number, body) = (self.sent, self.sent.to_le_bytes().to_vec());
        let end_s = self.unanswered.back().map_or(self.settled_s, |u| u.end_s);
        self.unanswered.push_back(OnItsWay { number, end_s, eventful: true });
        self.order(Order::Frame { kind: kind::FINISH, body, number: Some(number) });
    }

    fn listen(&mut self, path: Path, grammar: &Grammar) -> Result<(), CommandEarError> {
        if let Some(message) = &self.failed {
            return Err(CommandEarError(message.clone()));
        }
        self.lexicon.validate(grammar)?;
        self.ask_for_unlisted(grammar)?;
        let mut tags = HashMap::new();
        let mut choices = Vec::new();
        for choice in &grammar.choices {
            // A wording that two choices share belongs to the first.
            let own: Vec<String> = choice.wordings.iter().filter(|w| !tags.contains_key(*w)).cloned().collect();
            tags.extend(own.iter().map(|w| (w.clone(), choice.tag.clone())));
            choices.push(own);
        }
        self.flush();
        let fast = path == Path::Fast;
        let listening = if fast { &mut self.fast } else { &mut self.main };
        listening.tags = tags;
        if listening.choices == choices {
            return Ok(());
        }
        let number = |tag: &String| grammar.choices.iter().position(|choice| choice.tag == *tag);
        let urgent = grammar.urgent.iter().filter_map(number).collect();
        listening.generation += 1;
        listening.choices.clone_from(&choices);
        let order = GrammarOrder {
            fast,
            generation: listening.generation,
            choices,
            list_from: grammar.list_from,
            near: grammar.near.clone(),
            urgent,
            why: self.wants_why,
        };
        let body = serde_json::to_vec(&order).map_err(|e| CommandEarError(format!("the commands cannot be written down: {e}")))?;
        self.order(Order::Grammar { fast, body });
        Ok(())
    }

    /// From the next [`CommandRecogniser::listen_for`] on everything that is considered is kept for [`ChildRecogniser::take_considered`].
    pub fn tell_why(&mut self) {
        self.wants_why = true;
    }

    /// What was considered since the last call, as far as its answers were polled for.
    pub fn take_considered(&mut self) -> Vec<Considered> {
        std::mem::take(&mut self.considered)
    }

    /// Where the model has no word list, the child tells whether it knows the words.
    fn ask_for_unlisted(&mut self, grammar: &Grammar) -> Result<(), CommandEarError> {
        for choice in &grammar.choices {
            for wording in &choice.wordings {
                let words: Vec<&str> = wording.split(' ').filter(|w| self.lexicon.knows(w).is_none()).collect();
                if words.is_empty() {
                    continue;
                }
                let body = serde_json::to_vec(&words).unwrap_or_default();
                self.unknown = None;
                self.order(Order::Frame { kind: kind::WORDS, body, number: None });
                self.wait_until(|ear| ear.unknown.is_some());
                match self.unknown.take() {
                    Some(unknown) if unknown.is_empty() => {}
                    Some(unknown) => {
                        let unknown: Vec<&str> = unknown.iter().map(String::as_str).collect();
                        return Err(unknown_words(&choice.tag, wording, &unknown));
                    }
                    None => {
                        return Err(CommandEarError(format!(
                            "command {:?}: the recogniser did not say whether it knows {wording:?}; try again",
                            choice.tag
                        )));
                    }
                }
            }
        }
        Ok(())
    }

    fn order(&mut self, order: Order) {
        // Fails only after the keeper gave up, and its last report says so.
        let _ = self.orders.send(order);
    }

    fn flush(&mut self) {
        if let Some(batch) = self.batcher.flush() {
            self.send(batch);
        }
    }

    fn send(&mut self, batch: Batch) {
        if self.failed.is_some() {
            return;
        }
        self.sent += 1;
        let sound = Sound { number: self.sent, start_s: batch.start_s, main: batch.main, own_db: batch.own_db, samples: batch.samples };
        let end_s = sound.start_s + super::path::seconds(sound.samples.len());
        if self.unanswered.is_empty() && self.sent == 1 {
            self.settled_s = sound.start_s;
        }
        if sound.start_s < self.sent_until_s - GAP_S {
            self.meter = Meter::default();
        }
        self.sent_until_s = end_s;
        let eventful = self.meter.measure(&sound.samples, sound.own_db).loud || !self.meters_agree;
        self.unanswered.push_back(OnItsWay { number: self.sent, end_s, eventful });
        let (number, body) = (Some(self.sent), sound.to_body());
        self.order(Order::Frame { kind: kind::SOUND, body, number });
    }

    /// Takes reports until `enough`, or patience ends, which is treated as a hung child.
    fn wait_until(&mut self, enough: impl Fn(&Self) -> bool) {
        while !enough(self) && self.failed.is_none() {
            match self.reports.recv_timeout(PATIENCE) {
                Ok(report) => self.take(report),
                Err(RecvTimeoutError::Timeout) if self.kill_sent || !self.ready => return,
                Err(RecvTimeoutError::Timeout) => self.kill(),
                Err(RecvTimeoutError::Disconnected) => {
                    self.fail("the recogniser's keeper ended; restart the program".to_owned());
                }
            }
        }
    }

    fn kill(&mut self) {
        self.kill_sent = true;
        self.leash.kill();
    }

    fn fail(&mut self, message: String) {
        if self.failed.is_none() {
            self.unanswered.clear();
            self.failed = Some(message.clone());
            self.events.push(CommandEvent::Failed { message });
        }
    }

    /// Takes frames up to `number` off the list; gives the clock at the end of the last of them, s.
    fn strike_off(&mut self, number: u64) -> Option<f64> {
        let mut until_s = None;
        while let Some(first) = self.unanswered.front().filter(|u| u.number <= number) {
            until_s = Some(first.end_s);
            self.unanswered.pop_front();
        }
        until_s
    }

    fn take(&mut self, report: Report) {
        match report {
            Report::Frame { kind: kind::READY, .. } => self.ready = true,
            Report::Frame { kind: kind::ERROR, body } => self.last_error = Some(String::from_utf8_lossy(&body).into_owned()),
            Report::Frame { kind: kind::UNKNOWN_WORDS, body } => self.unknown = serde_json::from_slice(&body).ok(),
            Report::Frame { kind: kind::DONE, body } => {
                if let Some((number, Some(settled_s))) = wire::number_and_instant(&body) {
                    if let Some(until_s) = self.strike_off(number) {
                        self.open = settled_s < until_s - 1e-6;
                    }
                    self.settled_s = settled_s;
                }
            }
            Report::Frame { kind: kind::HEARD, body } => {
                if let Ok(heard) = serde_json::from_slice::<HeardReport>(&body) {
                    self.take_heard(heard);
                }
            }
            Report::Frame { kind: kind::CONSIDERED, body } => self.considered.extend(serde_json::from_slice::<Considered>(&body).ok()),
            Report::Frame { .. } => {}
            Report::Restarted { number, pid } => {
                let until_s = self.strike_off(number).unwrap_or(self.settled_s);
                self.meters_agree = false;
                (self.pid, self.ready, self.kill_sent) = (pid, false, false);
                self.events.push(CommandEvent::Restarted { lost_s: (until_s - self.settled_s).max(0.0) });
                self.settled_s = until_s;
            }
            Report::Failed { message } => self.fail(message),
        }
    }

    fn take_heard(&mut self, heard: HeardReport) {
        let listening = if heard.fast { &self.fast } else { &self.main };
        if heard.generation != listening.generation {
            return;
        }
        let Some(tag) = listening.tags.get(&heard.text).cloned() else { return };
        let path = heard.path();
        let HeardReport { text, start_s, end_s, decided_s, confidence, .. } = heard;
        self.events.push(CommandEvent::Heard(HeardPhrase { tag, text, start_s, end_s, decided_s, confidence, path }));
    }
}

impl CommandRecogniser for ChildRecogniser {
    /// As the trait says; the same wordings again change nothing and drop nothing.
    fn listen_for(&mut self, grammar: &Grammar) -> Result<(), CommandEarError> {
        self.listen(Path::Main, grammar)
    }

    fn listen_for_fast(&mut self, grammar: &Grammar) -> Result<(), CommandEarError> {
        self.listen(Path::Fast, grammar)
    }

    fn weigh_in(&mut self, own: &EnrolledVoice) {
        ChildRecogniser::weigh_in(self, own);
    }

    fn pause(&mut self) {
        self.ask_to_finish();
    }

    fn expect_own_voice(&mut self, level_db: f64) {
        self.own_db = level_db as f32;
    }

    fn push(&mut self, start_s: f64, block: &[f32], main: bool) {
        for batch in self.batcher.push(start_s, block, main, self.own_db) {
            self.send(batch);
        }
        let behind_s = match (self.unanswered.front(), self.unanswered.back()) {
            (Some(first), Some(last)) => last.end_s - first.end_s,
            _ => 0.0,
        };
        if self.mode == Mode::Live && self.ready && !self.kill_sent && behind_s > HUNG_S {
            self.kill();
        }
    }

    fn poll(&mut self) -> Vec<CommandEvent> {
        while let Ok(report) = self.reports.try_recv() {
            self.take(report);
        }
        if self.mode == Mode::Offline {
            let calm = |ear: &Self| !ear.open && ear.unanswered.len() < AHEAD && ear.unanswered.iter().all(|u| !u.eventful);
            self.wait_until(|ear| ear.unanswered.is_empty() || calm(ear));
        }
        std::mem::take(&mut self.events)
    }
}

impl Drop for ChildRecogniser {
    fn drop(&mut self) {
        self.order(Order::Quit);
        self.leash.let_go();
        if let Some(keeper) = self.keeper.take() {
            // It panics never; if it did, there is nothing to save.
            let _ = keeper.join();
        }
    }
}

/// The running program. One that was replaced by an upgrade while it ran is still there for the system, though not under its name.
fn own_program() -> Result<PathBuf, CommandEarError> {
    let named = std::env::current_exe()
        .map_err(|e| CommandEarError(format!("the program cannot find its own file: {e}; start it by its full path")))?;
    let itself = PathBuf::from("/proc/self/exe");
    Ok(if !named.exists() && itself.exists() { itself } else { named })
}
