//! The dialogue of an enrolment, pure: events in, effects out. It reads no clock and no device.

mod turns;

use crate::enrol::event::{EnrolEffect, EnrolEvent, Learnt};
pub use crate::enrol::words::TAKES;
use crate::enrol::words::{Progress, view_of};
use command_ear::{ACT_CONFIDENCE, ASK_CONFIDENCE};
use routine::NoAnswer;
use session::{Arg, Command, Line, LineId, Patience, Silence, View, listening};

/// As in a session.
const PATIENCE: NoAnswer = NoAnswer { ask_again_after_s: 12.0, asks: 2, give_up_after_s: 600.0 };
/// After "stop", silence of this length ends it, s.
const HALT_S: f64 = 10.0;

#[derive(Debug, Clone, Copy, PartialEq)]
enum State {
    Consent {
        doubtful_yes: bool,
    },
    /// Waiting for the word of this number.
    Word(usize),
    /// After "stop": the word it was at.
    Halted(usize),
    Closing,
    Over,
}

/// The machine.
pub struct Dialogue {
    state: State,
    words: Vec<Progress>,
    patience: Patience,
    now_s: f64,
    next_line: u64,
    /// Lines not yet ended.
    speaking: u32,
    /// Awaiting the client since the last line ended.
    listening: bool,
    /// What the recogniser was sure of since the last take.
    heard: Option<Command>,
    /// It was said before, and the client was told.
    told_of: Option<Command>,
    /// The last round: only what is doubtful.
    last_round: bool,
    out: Vec<EnrolEffect>,
}

impl Dialogue {
    /// `words`: the commands in the order in which they are asked for, each with what is to be said.
    #[must_use]
    pub fn new(words: Vec<(Command, String)>) -> Self {
        Self {
            state: State::Consent { doubtful_yes: false },
            words: words.into_iter().map(|(command, wording)| Progress::new(command, wording)).collect(),
            patience: Patience::new(0.0),
            now_s: 0.0,
            next_line: 0,
            speaking: 0,
            listening: false,
            heard: None,
            told_of: None,
            last_round: false,
            out: Vec::new(),
        }
    }

    /// Begins; the first effects.
    pub fn begin(&mut self) -> Vec<EnrolEffect> {
        for key in ["enrol-welcome", "enrol-what-is-kept", "you-can-stop", "enrol-ask-consent"] {
            self.say(key, Vec::new());
        }
        self.show(View {
            heading: Some(plain("enrol-heading-consent")),
            prompt: Some(plain("enrol-ask-consent-shown")),
            can_say: vec![Command::Yes, Command::No],
            ..View::default()
        });
        std::mem::take(&mut self.out)
    }

    /// How each word stands that was said at all.
    #[must_use]
    pub fn learnt(&self) -> Vec<Learnt> {
        self.words.iter().filter(|word| word.kept).map(Progress::learnt).collect()
    }

    /// One event.
    pub fn on(&mut self, event: EnrolEvent) -> Vec<EnrolEffect> {
        match event {
            EnrolEvent::Tick { at_s, speaking } => self.tick(at_s, speaking),
            EnrolEvent::LineEnded { at_s, .. } => {
                self.now_s = at_s;
                self.speaking = self.speaking.saturating_sub(1);
                if self.speaking == 0 {
                    self.all_said();
                }
            }
            EnrolEvent::Command { at_s, command, confidence } => {
                self.now_s = at_s;
                self.command(command, confidence);
            }
            EnrolEvent::Found { at_s, found } => {
                self.now_s = at_s;
                if let (State::Word(index), true) = (self.state, self.listening) {
                    self.found(index, found);
                }
            }
            EnrolEvent::Interrupt { at_s } => {
                self.now_s = at_s;
                self.keep_unfinished();
                self.state = State::Over;
                self.out.push(EnrolEffect::Finish);
            }
        }
        std::mem::take(&mut self.out)
    }

    fn tick(&mut self, at_s: f64, speaking: bool) {
        self.now_s = at_s;
        if !self.listening || speaking {
            if speaking {
                self.patience.heard(at_s);
            }
            return;
        }
        if let State::Halted(_) = self.state {
            if self.patience.quiet_for_s(at_s) >= HALT_S {
                self.close();
            }
            return;
        }
        match self.patience.look(at_s, PATIENCE) {
            Silence::Wait | Silence::StillHere => {}
            Silence::AskAgain(_) => self.ask_again("enrol-say-again"),
            Silence::WaitForReady => self.ask_again("enrol-wait"),
            Silence::GiveUp => self.give_up(),
        }
    }

    fn ask_again(&mut self, key: &str) {
        match self.state {
            State::Consent { .. } => self.say("enrol-ask-consent-again", Vec::new()),
            State::Word(index) => self.say_word(key, index),
            _ => {}
        }
    }

    fn give_up(&mut self) {
        if let State::Consent { .. } = self.state {
            self.end_with("enrol-no-answer");
        } else {
            self.close();
        }
    }

    /// The last line has ended: now it is the client's turn.
    fn all_said(&mut self) {
        self.patience.spoke(self.now_s);
        match self.state {
            State::Consent { .. } => self.listen(vec![Command::Yes, Command::No], false),
            State::Word(index) => {
                self.heard = None;
                self.out.push(EnrolEffect::Tone);
                let asked = self.words.get(index).map(|word| word.command);
                // Every word is listened for: what another one was taken for is worth knowing.
                let all = self.words.iter().map(|word| word.command);
                let apart = |command: &Command| asked.is_none_or(|asked| !too_near(asked, *command));
                self.listen(all.filter(apart).filter(|command| !listening::ALWAYS.contains(command)).collect(), true);
            }
            State::Halted(_) => self.listen(vec![Command::GoOn, Command::Finish], false),
            State::Closing => {
                self.state = State::Over;
                self.out.push(EnrolEffect::Finish);
            }
            State::Over => {}
        }
    }

    fn command(&mut self, command: Command, confidence: f64) {
        if confidence < ASK_CONFIDENCE {
            return;
        }
        let sure = confidence >= ACT_CONFIDENCE;
        match self.state {
            State::Consent { doubtful_yes } => match command {
                Command::Yes if sure || doubtful_yes => self.agreed(),
                Command::Yes => {
                    self.state = State::Consent { doubtful_yes: true };
                    self.say("enrol-was-that-yes", Vec::new());
                }
                Command::No | Command::Stop | Command::Finish => self.refused(),
                _ => {}
            },
            State::Word(index) => {
                let asked = self.words.get(index).map(|word| word.command);
                let halts = matches!(command, Command::Stop | Command::Pause) || (command == Command::Finish && sure);
                // While "stop" itself is learnt, saying it is the exercise, and the model takes "pause" for it.
                if asked == Some(command) || (asked == Some(Command::Stop) && command == Command::Pause) {
                    self.heard = Some(command);
                } else if halts {
                    self.halt(index);
                } else if sure {
                    self.heard = Some(command);
                }
            }
            State::Halted(index) => match command {
                Command::GoOn => {
                    self.state = State::Word(index);
                    self.say("enrol-going-on", Vec::new());
                    self.say_word("enrol-say", index);
                }
                Command::Stop | Command::Finish => self.close(),
                _ => {}
            },
            State::Closing | State::Over => {}
        }
    }

    fn agreed(&mut self) {
        self.out.push(EnrolEffect::Agreed);
        self.say("enrol-agreed", Vec::new());
        match self.words.is_empty() {
            true => self.close(),
            false => self.turn_to(0, "enrol-say"),
        }
    }

    fn refused(&mut self) {
        self.hush();
        self.end_with("enrol-not-agreed");
    }

    fn halt(&mut self, index: usize) {
        self.hush();
        self.keep_unfinished();
        self.state = State::Halted(index);
        self.say("enrol-halted", Vec::new());
        let view = View { prompt: Some(plain("enrol-halted-shown")), can_say: vec![Command::GoOn], ..View::default() };
        self.show(view);
    }

    /// Says how it stands, and ends.
    fn close(&mut self) {
        self.keep_unfinished();
        let learnt = self.learnt();
        let doubtful: Vec<&str> = learnt.iter().filter(|word| word.doubtful).map(|word| word.wording.as_str()).collect();
        let surer = learnt.len() - doubtful.len();
        let (count, names) = (doubtful.len(), doubtful.join(", "));
        self.state = State::Closing;
        self.say("enrol-learnt", vec![("surer", Arg::Number(surer as f64))]);
        if count > 0 {
            self.say("enrol-doubtful", vec![("doubtful", Arg::Number(count as f64)), ("names", Arg::Text(names))]);
        }
        if !learnt.is_empty() {
            self.say("enrol-thanks", Vec::new());
        }
    }

    fn end_with(&mut self, key: &str) {
        self.state = State::Closing;
        self.say(key, Vec::new());
    }

    fn listen(&mut self, commands: Vec<Command>, takes: bool) {
        self.listening = true;
        self.out.push(EnrolEffect::Listen { commands, takes });
    }

    fn hush(&mut self) {
        if self.speaking > 0 {
            self.out.push(EnrolEffect::Hush);
        }
    }

    fn say_word(&mut self, key: &str, index: usize) {
        self.say_with(key, index, None);
    }

    fn say_with(&mut self, key: &str, index: usize, other: Option<Command>) {
        let Some(word) = self.words.get(index) else { return };
        let mut args = vec![("word", Arg::Text(word.wording.clone()))];
        let named = other.and_then(|other| self.words.iter().find(|word| word.command == other));
        args.extend(named.map(|word| ("other", Arg::Text(word.wording.clone()))));
        let view = view_of(word, index, self.words.len());
        self.say(key, args);
        self.show(view);
    }

    fn say(&mut self, key: &str, args: Vec<(&'static str, Arg)>) {
        if self.listening {
            self.listening = false;
            self.out.push(EnrolEffect::Listen { commands: Vec::new(), takes: false });
        }
        let id = LineId(self.next_line);
        self.next_line += 1;
        self.speaking += 1;
        self.out.push(EnrolEffect::Say { id, line: Line { key: key.to_owned(), args } });
    }

    fn show(&mut self, view: View) {
        self.out.push(EnrolEffect::Show(view));
    }
}

fn plain(key: &str) -> Line {
    Line { key: key.to_owned(), args: Vec::new() }
}

/// Pairs that the recogniser takes for each other (see `session::listening`): beside one the other is not listened for.
fn too_near(asked: Command, other: Command) -> bool {
    let pair = |a, b| (asked == a && other == b) || (asked == b && other == a);
    pair(Command::GoOn, Command::Done) || pair(Command::GoOn, Command::No) || pair(Command::GoBack, Command::No)
}

#[cfg(test)]
#[path = "tests/dialogue.rs"]
mod tests;
