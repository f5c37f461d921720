//! One path of the command ear: takes up an utterance when the sound rises above the room, decides when it falls again.
//!
//! The decoder's partial results lag about 0.3 s behind the sound, because the network looks ahead and works in blocks. So a
//! short quiet after something loud asks for the final result at once (a *trial*). If that is no command, the speaker
//! may only have paused: the sound so far is decoded anew and listening goes on, until a longer quiet ends the utterance.

use super::decide::{PhraseBook, Phrase, Rules, Stability, UNKNOWN, Word, judge, known_text};
use super::decoder::Decoder;
use super::level::Level;
use super::templates::{GUESS_CONFIDENCE, Weigher};
use super::{ASK_CONFIDENCE, RATE_HZ};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;

/// How a path decides. Values chosen on odd-numbered recordings, see `benches/command_ear.rs`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tuning {
    /// Quiet after which a sure phrase is taken, s.
    pub trial_quiet_s: f64,
    /// Confidence it needs then, 0 to 1; at the end of the utterance `rules.min_confidence` is enough.
    pub trial_confidence: f64,
    /// Quiet that ends the utterance, s; longer than a pause between the words of a phrase.
    pub end_quiet_s: f64,
    /// Where the level does not fall (noise): a partial phrase that stands this long, with no word after it, is tried, s.
    pub stands_s: f64,
    /// What a phrase must fulfil.
    pub rules: Rules,
}

impl Tuning {
    /// The grammar of the state.
    pub const MAIN: Self = Self {
        trial_quiet_s: 0.24,
        trial_confidence: 0.8,
        end_quiet_s: 0.66,
        stands_s: 0.36,
        rules: Rules { min_confidence: ASK_CONFIDENCE, min_loud_s: 0.12, max_word_s: 1.5, alone_s: 0.2 },
    };
    /// Stop and its like: sooner, and closer to other sound, since it must get through.
    pub const FAST: Self = Self {
        trial_quiet_s: 0.12,
        trial_confidence: 0.8,
        end_quiet_s: 0.48,
        stands_s: 0.24,
        rules: Rules { min_confidence: ASK_CONFIDENCE, min_loud_s: 0.12, max_word_s: 1.5, alone_s: 0.1 },
    };
}

/// Sound kept from before an utterance, s.
const BEFORE_S: f64 = 0.36;
/// An utterance without a known word is cut at this length, s: trials stay cheap, and long vowels and talk are shed.
const LONGEST_UNKNOWN_S: f64 = 4.0;
/// Any utterance is cut at this length, s.
const LONGEST_S: f64 = 8.0;
/// Sound carried over such a cut, s.
const OVERLAP_S: f64 = 1.2;
/// Partial results are looked at this often, s: the network gives new ones every 0.12 s.
const LOOK_EVERY_S: f64 = 0.12;

/// A phrase with its times on the caller's clock.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Decided {
    pub phrase: Phrase,
    pub decided_s: f64,
}

/// An utterance being heard.
#[derive(Debug)]
struct Utterance {
    /// Clock at its first sample, s.
    start_s: f64,
    sound: Vec<i16>,
    /// Level less floor of each batch, and the batch's end in s from the start.
    levels: Vec<(f64, f64)>,
    mid_sound: bool,
    stability: Stability,
    looked_s: f64,
    /// Quiet since the last loud batch, s.
    quiet_s: f64,
    /// A trial was made in this quiet.
    tried_quiet: bool,
    /// A trial was made of this standing partial.
    tried_text: String,
    /// A known word stands in the last partial.
    has_known: bool,
}

/// One path.
pub(crate) struct Listener<D> {
    decoder: D,
    book: PhraseBook,
    tuning: Tuning,
    before: VecDeque<(Vec<i16>, Level)>,
    before_len: usize,
    utterance: Option<Utterance>,
    /// The client's own way of saying the commands, shared by both paths; none before it is known.
    own: Rc<RefCell<Option<Weigher>>>,
}

impl<D: Decoder> Listener<D> {
    pub fn new(decoder: D, choices: &[Vec<String>], tuning: Tuning) -> Self {
        Self { decoder, book: PhraseBook::new(choices), tuning, before: VecDeque::new(), before_len: 0, utterance: None, own: Rc::default() }
    }

    /// Lets the client's own voice weigh in.
    pub fn with_own_voice(mut self, own: Rc<RefCell<Option<Weigher>>>) -> Self {
        self.own = own;
        self
    }

    /// Clock from which sound still matters, if an utterance is open.
    pub fn open_since_s(&self) -> Option<f64> {
        self.utterance.as_ref().map(|u| u.start_s)
    }

    /// Takes a batch that begins at `start_s` and follows the last one without a gap.
    pub fn hear(&mut self, start_s: f64, samples: &[i16], level: Level) -> Option<Decided> {
        let Some(utterance) = self.utterance.as_mut() else {
            self.before.push_back((samples.to_vec(), level));
            self.before_len += samples.len();
            while seconds(self.before_len) > BEFORE_S {
                let Some((dropped, _)) = self.before.pop_front() else { break };
                self.before_len -= dropped.len();
            }
            if level.loud {
                return self.take_up(start_s + seconds(samples.len()));
            }
            return None;
        };
        utterance.sound.extend_from_slice(samples);
        utterance.note(level);
        if level.loud {
            utterance.quiet_s = 0.0;
            utterance.tried_quiet = false;
        } else {
            utterance.quiet_s += seconds(samples.len());
        }
        let over = self.decoder.accept(samples);
        self.consider(over)
    }

    /// Sound ends here (file over, path closed): decides on what there is.
    pub fn finish(&mut self) -> Option<Decided> {
        let decided = self.utterance.is_some().then(|| self.end()).flatten();
        self.forget();
        decided
    }

    /// Drops everything half heard.
    pub fn forget(&mut self) {
        self.utterance = None;
        self.before.clear();
        self.before_len = 0;
        self.decoder.restart();
    }

    /// Opens an utterance with the sound kept from before it, which ends at `now_s`.
    fn take_up(&mut self, now_s: f64) -> Option<Decided> {
        let quiet: usize = self.before.iter().filter(|(_, l)| !l.loud).map(|(s, _)| s.len()).sum();
        let mut utterance = Utterance::new(now_s - seconds(self.before_len), seconds(quiet) < 0.09);
        for (samples, level) in self.before.drain(..) {
            utterance.sound.extend_from_slice(&samples);
            utterance.note(level);
        }
        self.before_len = 0;
        self.decoder.restart();
        let over = self.decoder.accept(&utterance.sound);
        self.utterance = Some(utterance);
        self.consider(over)
    }

    /// Looks whether it is time to decide.
    fn consider(&mut self, over: bool) -> Option<Decided> {
        let tuning = self.tuning;
        let utterance = self.utterance.as_mut()?;
        let now_s = utterance.heard_s();
        let mut stands = false;
        if now_s - utterance.looked_s >= LOOK_EVERY_S - 1e-6 {
            utterance.looked_s = now_s;
            let words = self.decoder.partial();
            let text = known_text(&words);
            utterance.has_known = !text.is_empty();
            let stood_s = utterance.stability.stands_for_s(&text, now_s);
            let since_word_s = words.last().map_or(0.0, |w| now_s - w.end_s);
            stands = stood_s.min(since_word_s) >= tuning.stands_s
                && words.last().is_some_and(|w| w.text != UNKNOWN)
                && self.book.is_phrase(&text)
                && utterance.tried_text != text;
            if stands {
                utterance.tried_text = text;
            }
        }
        if over || utterance.quiet_s >= tuning.end_quiet_s {
            let decided = self.end();
            self.forget();
            return decided;
        }
        let fell = utterance.quiet_s >= tuning.trial_quiet_s && !utterance.tried_quiet;
        if fell {
            utterance.tried_quiet = true;
        }
        if fell || stands {
            return self.trial();
        }
        if now_s > LONGEST_S || (now_s > LONGEST_UNKNOWN_S && !utterance.has_known) {
            self.shed();
        }
        None
    }

    /// The utterance is over: a phrase of enough confidence is reported.
    fn end(&mut self) -> Option<Decided> {
        let words = self.decoder.finish();
        self.decide(&words, &self.tuning.rules, true)
    }

    /// Judges the words; where the client's own voice is known it weighs in. `over`: nothing more is said.
    fn decide(&self, words: &[Word], rules: &Rules, over: bool) -> Option<Decided> {
        let utterance = self.utterance.as_ref()?;
        match self.own.borrow_mut().as_mut() {
            Some(own) if !utterance.mid_sound => utterance.weigh(words, &self.book, rules, own, over),
            _ => utterance.judge(words, &self.book, rules),
        }
    }

    /// Asks for the final result now. A sure phrase that cannot go on is taken; else the sound so far is decoded anew.
    fn trial(&mut self) -> Option<Decided> {
        let words = self.decoder.finish();
        let rules = Rules { min_confidence: self.tuning.trial_confidence, ..self.tuning.rules };
        if let Some(decided) = self.decide(&words, &rules, false)
            && !self.book.may_mean_more(&decided.phrase.text)
        {
            self.forget();
            return Some(decided);
        }
        self.decoder.restart();
        self.decoder.accept(&self.utterance.as_ref()?.sound);
        None
    }

    /// Keeps only the end of an utterance grown too long.
    fn shed(&mut self) {
        let Some(old) = self.utterance.take() else { return };
        let from = old.sound.len().saturating_sub((OVERLAP_S * f64::from(RATE_HZ)) as usize);
        let cut_s = seconds(from);
        let mut new = Utterance::new(old.start_s + cut_s, true);
        new.sound = old.sound.get(from..).unwrap_or_default().to_vec();
        new.levels = old.levels.iter().filter(|l| l.0 > cut_s).map(|l| (l.0 - cut_s, l.1)).collect();
        (new.quiet_s, new.tried_quiet) = (old.quiet_s, old.tried_quiet);
        self.decoder.restart();
        self.decoder.accept(&new.sound);
        self.utterance = Some(new);
    }
}

impl Utterance {
    fn new(start_s: f64, mid_sound: bool) -> Self {
        Self {
            start_s,
            sound: Vec::new(),
            levels: Vec::new(),
            mid_sound,
            stability: Stability::default(),
            looked_s: 0.0,
            quiet_s: 0.0,
            tried_quiet: false,
            tried_text: String::new(),
            has_known: false,
        }
    }

    fn heard_s(&self) -> f64 {
        seconds(self.sound.len())
    }

    /// Remembers the level of the batch just added to `sound`.
    fn note(&mut self, level: Level) {
        self.levels.push((self.heard_s(), level.level_db - level.floor_db));
    }

    /// The phrase in `words`, if it stands out from the room, on the caller's clock.
    fn judge(&self, words: &[Word], book: &PhraseBook, rules: &Rules) -> Option<Decided> {
        /// A phrase must be so much above the floor, dB.
        const STANDS_OUT_DB: f64 = 6.0;
        /// The decoder's times may be off by this much, s.
        const SLACK_S: f64 = 0.15;
        let mut phrase = judge(words, book, rules, self.mid_sound)?;
        let (from_s, to_s) = (phrase.start_s - SLACK_S, phrase.end_s + SLACK_S);
        let (mut loud_s, mut last_s) = (0.0, 0.0);
        for &(end_s, above_db) in &self.levels {
            if end_s > from_s && last_s < to_s && above_db >= STANDS_OUT_DB {
                loud_s += end_s - last_s;
            }
            last_s = end_s;
        }
        if loud_s < rules.min_loud_s {
            return None;
        }
        phrase.start_s += self.start_s;
        phrase.end_s += self.start_s;
        Some(Decided { phrase, decided_s: self.start_s + self.heard_s() })
    }

    /// As [`Utterance::judge`], with the client's own voice beside the recogniser, also where that is unsure or heard nothing.
    fn weigh(&self, words: &[Word], book: &PhraseBook, rules: &Rules, own: &mut Weigher, over: bool) -> Option<Decided> {
        let guess = self.judge(words, book, &Rules { min_confidence: GUESS_CONFIDENCE, ..*rules }).map(|decided| Phrase {
            start_s: decided.phrase.start_s - self.start_s,
            end_s: decided.phrase.end_s - self.start_s,
            ..decided.phrase
        });
        let mut phrase = own.weigh(guess, over, &self.sound, &self.levels, book).filter(|p| p.confidence >= rules.min_confidence)?;
        phrase.start_s += self.start_s;
        phrase.end_s += self.start_s;
        Some(Decided { phrase, decided_s: self.start_s + self.heard_s() })
    }
}

#[cfg(test)]
#[path = "tests/listener.rs"]
mod tests;

/// Length of so many samples, s.
pub(crate) fn seconds(samples: usize) -> f64 {
    samples as f64 / f64::from(RATE_HZ)
}
