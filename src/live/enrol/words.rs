//! The words of an enrolment: their order, and how each stands.

use crate::enrol::event::Learnt;
use command_ear::templates::{Take, TakeFault};
use session::{Arg, Command, Line, View};
use speak::Words;

/// Sayings of each word.
pub const TAKES: usize = 3;

/// The order in which they are asked for: what must get through first, then what is said most.
const ORDER: [Command; 20] = [
    Command::Stop,
    Command::Ready,
    Command::Yes,
    Command::No,
    Command::Pause,
    Command::GoOn,
    Command::Help,
    Command::Hurts,
    Command::Dizzy,
    Command::Done,
    Command::Again,
    Command::Rest,
    Command::HowLong,
    Command::Skip,
    Command::Louder,
    Command::Softer,
    Command::Slower,
    Command::Faster,
    Command::GoBack,
    Command::Finish,
];

/// The commands in that order, each with the wording that is shown for it.
#[must_use]
pub fn to_learn(words: &Words) -> Vec<(Command, String)> {
    ORDER.into_iter().filter_map(|command| Some((command, words.wordings(command).into_iter().next()?))).collect()
}

/// One word under way.
#[derive(Debug, Clone)]
pub struct Progress {
    pub command: Command,
    pub wording: String,
    pub takes: Vec<Take>,
    /// The take that the next one replaces, once all are there.
    pub worst: Option<usize>,
    /// Useless sayings in this turn.
    pub faults: u32,
    pub retries: u32,
    pub doubtful: bool,
    /// It was handed over to be kept.
    pub kept: bool,
}

impl Progress {
    pub fn new(command: Command, wording: String) -> Self {
        Self { command, wording, takes: Vec::new(), worst: None, faults: 0, retries: 0, doubtful: false, kept: false }
    }

    /// Takes a good saying: a further one, or one in place of the worst.
    pub fn take(&mut self, take: Take) {
        self.faults = 0;
        match self.worst.take().filter(|_| self.takes.len() >= TAKES).and_then(|worst| self.takes.get_mut(worst)) {
            Some(worst) => *worst = take,
            None => self.takes.push(take),
        }
    }

    pub fn learnt(&self) -> Learnt {
        Learnt {
            command: self.command,
            wording: self.wording.clone(),
            takes: self.takes.len(),
            doubtful: self.doubtful || self.takes.len() < TAKES,
        }
    }
}

/// The message that asks kindly again.
pub fn fault_key(fault: TakeFault) -> &'static str {
    match fault {
        TakeFault::TooSoft => "enrol-too-soft",
        TakeFault::TooNoisy => "enrol-too-noisy",
        TakeFault::Clipped => "enrol-clipped",
        TakeFault::TooLong => "enrol-too-long",
        TakeFault::TooShort => "enrol-too-short",
        TakeFault::InTwo => "enrol-in-two",
        TakeFault::TooEarly => "enrol-too-early",
    }
}

/// What the screen shows while a word is awaited.
pub fn view_of(word: &Progress, index: usize, words: usize) -> View {
    let number = |n: usize| Arg::Number(n as f64);
    View {
        heading: Some(Line { key: "enrol-heading".into(), args: vec![("number", number(index + 1)), ("words", number(words))] }),
        prompt: Some(Line { key: "enrol-shown".into(), args: vec![("word", Arg::Text(word.wording.clone()))] }),
        figure: format!("{}/{TAKES}", word.takes.len().min(TAKES)),
        can_say: vec![Command::Skip, Command::Stop],
        ..View::default()
    }
}
