//! One word after the other: what was said for it, whether its takes hold together, and which word comes next.

use super::{Dialogue, State};
use crate::enrol::event::EnrolEffect;
use crate::enrol::words::{Progress, TAKES, fault_key};
use command_ear::templates::{Doubt, EnrolledVoice, Found, Matcher, OwnWord};
use session::Command;

/// A doubtful word is asked for again so often at once, and once more at the end.
const RETRIES: u32 = 1;
/// After so many useless sayings in a row a word is left for another day.
const FAULTS: u32 = 4;

impl Dialogue {
    /// Something was said for the word of this number.
    pub(super) fn found(&mut self, index: usize, found: Found) {
        self.patience.heard(self.now_s);
        let Some(word) = self.words.get_mut(index) else { return };
        let fault = match &found.said {
            Ok(cut) => cut.fault(&word.wording, found.floor_db),
            Err(fault) => Some(*fault),
        };
        if let Some(fault) = fault {
            word.faults += 1;
            if word.faults >= FAULTS {
                return self.leave(index, "enrol-leave-for-now");
            }
            return self.say_word(fault_key(fault), index);
        }
        if let Some(other) = self.heard.take().filter(|other| *other != word.command)
            && !self.sounded_like(index, other)
        {
            return;
        }
        let (Ok(cut), Some(word)) = (found.said, self.words.get_mut(index)) else { return };
        self.told_of = None;
        word.take(cut.take);
        if word.takes.len() < TAKES {
            let key = if word.takes.len() + 1 == TAKES { "enrol-last-time" } else { "enrol-once-more" };
            return self.say_word(key, index);
        }
        self.judge(index);
    }

    /// The recogniser is sure of another word than the one asked for: it is told once, then believed to be this client's way of saying
    /// it, or, if it is "skip", obeyed. True if the take counts.
    fn sounded_like(&mut self, index: usize, other: Command) -> bool {
        if self.told_of != Some(other) {
            self.told_of = Some(other);
            let key = if other == Command::Skip { "enrol-leave-out" } else { "enrol-sounded-like" };
            self.say_with(key, index, Some(other));
            return false;
        }
        if other == Command::Skip {
            self.leave(index, "enrol-left-out");
            return false;
        }
        true
    }

    /// All takes are there: do they hold together, and apart from the other words?
    fn judge(&mut self, index: usize) {
        let doubt = Matcher::new(&self.own_voice()).doubt(index);
        let other = match doubt {
            Some(Doubt::Near { word, .. }) => self.words.get(word).map(|word| word.command),
            _ => None,
        };
        let Some(word) = self.words.get_mut(index) else { return };
        word.doubtful = doubt.is_some();
        if let Some(Doubt::Unlike { take } | Doubt::Near { take, .. }) = doubt {
            word.worst = Some(take);
            if word.retries < RETRIES {
                word.retries += 1;
                return match other {
                    Some(other) => self.say_with("enrol-near", index, Some(other)),
                    None => self.say_word("enrol-unlike", index),
                };
            }
        }
        self.keep(index);
        self.next(index);
    }

    fn own_voice(&self) -> EnrolledVoice {
        let word = |word: &Progress| OwnWord { wording: word.wording.clone(), costly: word.command.is_costly(), takes: word.takes.clone() };
        EnrolledVoice { words: self.words.iter().map(word).collect() }
    }

    fn keep(&mut self, index: usize) {
        let Some(word) = self.words.get_mut(index) else { return };
        word.kept = true;
        self.out.push(EnrolEffect::Keep { command: word.command, takes: word.takes.clone() });
    }

    /// Two takes of the word under way are of use, too.
    pub(super) fn keep_unfinished(&mut self) {
        if let State::Word(index) = self.state
            && self.words.get(index).is_some_and(|word| !word.kept && word.takes.len() >= 2)
        {
            self.keep(index);
        }
    }

    fn leave(&mut self, index: usize, key: &str) {
        self.told_of = None;
        self.keep_unfinished();
        self.say(key, Vec::new());
        self.next(index);
    }

    /// The next word; after the last the doubtful ones once more.
    fn next(&mut self, index: usize) {
        let doubtful = |word: &Progress| word.kept && word.doubtful && word.retries <= RETRIES;
        if !self.last_round && index + 1 < self.words.len() {
            return self.turn_to(index + 1, "enrol-say-next");
        }
        let from = if self.last_round { index + 1 } else { 0 };
        self.last_round = true;
        match self.words.iter().enumerate().skip(from).find(|(_, word)| doubtful(word)).map(|(i, _)| i) {
            Some(again) => {
                if let Some(word) = self.words.get_mut(again) {
                    // One more, and no second chance after it.
                    word.retries = RETRIES + 1;
                }
                self.turn_to(again, "enrol-doubtful-again");
            }
            None => self.close(),
        }
    }

    pub(super) fn turn_to(&mut self, index: usize, key: &str) {
        self.state = State::Word(index);
        self.told_of = None;
        if let Some(word) = self.words.get_mut(index) {
            word.faults = 0;
        }
        self.say_word(key, index);
    }
}
