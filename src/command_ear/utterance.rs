//! One utterance while it is heard: its sound, its levels, and what they say of a phrase in it.

use super::RATE_HZ;
use super::cues::{Candidate, Cues};
use super::decide::{Phrase, Refusal, Stability, UNKNOWN, Word};
use super::level::Level;
use super::path::{Decided, Tuning, seconds};

/// Of what was heard before a cut so much is kept, s.
const EARLIER_S: f64 = 8.0;

/// An utterance being heard.
#[derive(Debug)]
pub(crate) struct Utterance {
    /// Clock at its first sample, s.
    pub start_s: f64,
    pub sound: Vec<i16>,
    /// Level less floor of each batch, and the batch's end in s from the start.
    pub levels: Vec<(f64, f64)>,
    pub mid_sound: bool,
    /// See [`Cues::talk`].
    pub talk: f64,
    pub stability: Stability,
    pub looked_s: f64,
    /// Quiet since the last loud batch, s.
    pub quiet_s: f64,
    /// A trial was made in this quiet.
    pub tried_quiet: bool,
    /// A trial was made of this standing partial.
    pub tried_text: String,
    /// Our own voice may be in it.
    pub over_own_voice: bool,
    /// A known word stands in the last partial.
    pub has_known: bool,
    /// What was heard of it before it was cut, as an utterance of its own.
    earlier: Option<Box<Self>>,
}

impl Utterance {
    pub fn new(start_s: f64, mid_sound: bool, talk: f64) -> Self {
        Self {
            start_s,
            sound: Vec::new(),
            levels: Vec::new(),
            mid_sound,
            talk,
            stability: Stability::default(),
            looked_s: 0.0,
            quiet_s: 0.0,
            tried_quiet: false,
            tried_text: String::new(),
            over_own_voice: false,
            has_known: false,
            earlier: None,
        }
    }

    /// Cuts it down to its last `kept` samples; what went before is remembered for [`Utterance::whole`].
    pub fn cut(self, kept: usize) -> Self {
        let (quiet_s, tried_quiet, over_own_voice) = (self.quiet_s, self.tried_quiet, self.over_own_voice);
        let mut earlier = self.whole().unwrap_or(self);
        let mut later = earlier.split_off(earlier.sound.len().saturating_sub(kept));
        (later.quiet_s, later.tried_quiet, later.over_own_voice) = (quiet_s, tried_quiet, over_own_voice);
        let longest = (EARLIER_S * f64::from(RATE_HZ)) as usize;
        let head = earlier.split_off(earlier.sound.len().saturating_sub(longest));
        // All of it is known from its beginning, unless some had to go.
        let mid_sound = !earlier.sound.is_empty() || earlier.mid_sound;
        later.earlier = Some(Box::new(Self { mid_sound, ..head }));
        later
    }

    /// Some of it was cut off: it is the end of something longer.
    pub fn was_cut(&self) -> bool {
        self.earlier.is_some()
    }

    /// The utterance as it was before it was cut; none where it is whole.
    pub fn whole(&self) -> Option<Self> {
        let earlier = self.earlier.as_ref()?;
        let by_s = earlier.heard_s();
        let mut whole = Self::new(earlier.start_s, earlier.mid_sound, earlier.talk);
        whole.sound = [earlier.sound.as_slice(), &self.sound].concat();
        whole.levels = earlier.levels.iter().copied().chain(self.levels.iter().map(|l| (l.0 + by_s, l.1))).collect();
        Some(whole)
    }

    /// Takes everything from this sample on into an utterance of its own, which begins in the middle of sound.
    fn split_off(&mut self, from: usize) -> Self {
        let cut_s = seconds(from);
        let mut later = Self::new(self.start_s + cut_s, true, self.talk);
        later.sound = self.sound.split_off(from);
        later.levels = self.levels.iter().filter(|l| l.0 > cut_s + 1e-9).map(|l| (l.0 - cut_s, l.1)).collect();
        self.levels.retain(|l| l.0 <= cut_s + 1e-9);
        later
    }

    pub fn heard_s(&self) -> f64 {
        seconds(self.sound.len())
    }

    /// Remembers the level of the batch just added to `sound`.
    pub fn note(&mut self, level: Level) {
        self.levels.push((self.heard_s(), level.level_db - level.floor_db));
    }

    /// Time between two instants that the sound stands out from the room, s.
    pub fn loud_s(&self, from_s: f64, to_s: f64) -> f64 {
        /// So much above the floor, dB.
        const STANDS_OUT_DB: f64 = 6.0;
        let (mut loud_s, mut last_s) = (0.0, 0.0);
        for &(end_s, above_db) in &self.levels {
            if end_s > from_s && last_s < to_s && above_db >= STANDS_OUT_DB {
                loud_s += end_s - last_s;
            }
            last_s = end_s;
        }
        loud_s
    }

    /// The words without those unknown ones that do not stand out: what the decoder makes of the room, or of what is left of our own
    /// voice, is no speech beside a command.
    pub fn standing_out(&self, words: &[Word]) -> Vec<Word> {
        /// The decoder's times may be off by this much, s; not more, or a loud word beside would count for this one.
        const SLACK_S: f64 = 0.05;
        /// It must stand out for so long, s.
        const LEAST_S: f64 = 0.05;
        let stands_out = |w: &&Word| w.text != UNKNOWN || self.loud_s(w.start_s - SLACK_S, w.end_s + SLACK_S) >= LEAST_S;
        words.iter().filter(stands_out).cloned().collect()
    }

    /// Words that were no command, on the caller's clock.
    pub fn refused(&self, refusal: Refusal) -> Candidate {
        let Refusal { heard, why } = refusal;
        Candidate {
            text: heard.text,
            start_s: heard.start_s + self.start_s,
            end_s: heard.end_s + self.start_s,
            decided_s: self.start_s + self.heard_s(),
            cues: Cues { first: heard.confidence, talk: self.talk, ..Cues::default() },
            weighed: false,
            verdict: Some(why),
        }
    }

    /// The phrase on the caller's clock with its sureness, if it stands out from the room.
    pub fn weigh(&self, mut phrase: Phrase, mut cues: Cues, tuning: &Tuning) -> Option<(Decided, Candidate)> {
        /// The decoder's times may be off by this much, s.
        const SLACK_S: f64 = 0.15;
        /// A word's sound goes beyond the decoder's times by up to this much: they are peaks of its network, s.
        const REACH_S: f64 = 0.25;
        let near_s = self.loud_s(phrase.start_s - SLACK_S, phrase.end_s + SLACK_S);
        if near_s < tuning.rules.min_loud_s {
            return None;
        }
        if tuning.minds_context {
            let own_s = self.loud_s(phrase.start_s - REACH_S, phrase.end_s + REACH_S);
            let earlier_s = self.earlier.as_ref().map_or(0.0, |earlier| earlier.loud_s(0.0, earlier.heard_s()));
            cues.elsewhere_s = (earlier_s + self.loud_s(0.0, self.heard_s()) - own_s).max(0.0);
            cues.talk = self.talk;
        }
        let inside = self.levels.iter().filter(|l| l.0 > phrase.start_s - SLACK_S && l.0 < phrase.end_s + SLACK_S);
        cues.above_db = inside.map(|l| l.1).fold(0.0, f64::max);
        phrase.confidence = cues.sureness();
        phrase.start_s += self.start_s;
        phrase.end_s += self.start_s;
        let decided_s = self.start_s + self.heard_s();
        let candidate = Candidate {
            text: phrase.text.clone(),
            start_s: phrase.start_s,
            end_s: phrase.end_s,
            decided_s,
            cues,
            weighed: true,
            verdict: None,
        };
        Some((Decided { phrase, decided_s }, candidate))
    }
}
