//! When the microphone holds what we play, and which ear must not act on it.

use crate::clock::BLOCK_S;
use audio::gate::{DEFAULT_TAIL_S, Gate};

/// With an echo canceller that works, the main path opens so soon after our own voice, s: an answer may come at once.
const SHORT_TAIL_S: f64 = 0.1;
/// An echo canceller that takes away so much works, dB.
const WORKS_DB: f64 = 10.0;

/// What is played, as the microphone has it. Times are seconds on the sample clock.
#[derive(Debug)]
pub struct Playback {
    /// Everything we play: what the voice ear must mark.
    playback_mask: Gate,
    /// What the main path may not act on. Counts on the beat are short and follow each other without a pause, so they leave it open
    /// where the echo canceller takes them out, or the client could never say "slower".
    main_path: Gate,
    /// The fast path is closed until then: a line names what it listens for.
    fast_closed_until_s: f64,
    /// The last line is heard until then; infinite while one is given out.
    heard_until_s: f64,
}

impl Default for Playback {
    fn default() -> Self {
        Self { playback_mask: Gate::default(), main_path: Gate::default(), fast_closed_until_s: 0.0, heard_until_s: f64::NEG_INFINITY }
    }
}

/// When a line began or ended: in the block that began at `block_s`, heard `delay_s` after it was handed over.
#[derive(Debug, Clone, Copy)]
pub struct Handed {
    pub block_s: f64,
    pub delay_s: f64,
}

impl Playback {
    /// A line begins. `leaves_open`: the main path goes on listening.
    pub fn began(&mut self, at: Handed, leaves_open: bool) {
        self.playback_mask.line_began(at.block_s, at.delay_s);
        self.heard_until_s = f64::INFINITY;
        if !leaves_open {
            self.main_path.line_began(at.block_s, at.delay_s);
        }
    }

    /// Nothing more is played.
    pub fn fell_silent(&mut self, at: Handed) {
        self.playback_mask.line_ended(at.block_s + BLOCK_S, at.delay_s);
        self.heard_until_s = at.block_s + BLOCK_S + at.delay_s;
    }

    /// Nothing more is played that the main path may not act on.
    pub fn main_path_may_open(&mut self, at: Handed) {
        self.main_path.line_ended(at.block_s + BLOCK_S, at.delay_s);
    }

    /// A line begins that names what the fast path listens for.
    pub fn close_fast_path(&mut self) {
        self.fast_closed_until_s = f64::INFINITY;
    }

    /// Such a line has ended.
    pub fn fast_path_may_open(&mut self, at: Handed) {
        if self.fast_closed_until_s.is_infinite() {
            self.fast_closed_until_s = at.block_s + at.delay_s + DEFAULT_TAIL_S;
        }
    }

    /// Follows the echo canceller: where it takes away `reduction_db`, little of the room's echo is left.
    pub fn set_reduction_db(&mut self, reduction_db: Option<f64>) {
        self.main_path.set_tail_s(if reduction_db.is_some_and(|db| db >= WORKS_DB) { SHORT_TAIL_S } else { DEFAULT_TAIL_S });
    }

    /// The microphone holds our own voice at this time.
    #[must_use]
    pub fn masks(&self, at_s: f64) -> bool {
        self.playback_mask.masks(at_s)
    }

    /// The main path may act on what the microphone hears at this time.
    #[must_use]
    pub fn main_path_is_open(&self, at_s: f64) -> bool {
        self.main_path.is_open(at_s)
    }

    /// No line is given out or heard at this time.
    #[must_use]
    pub fn is_silent(&self, at_s: f64) -> bool {
        self.playback_mask.is_open(at_s)
    }

    /// The fast path may act on what began at this time.
    #[must_use]
    pub fn fast_path_is_open(&self, start_s: f64) -> bool {
        start_s >= self.fast_closed_until_s
    }

    /// Until when our voice is heard, but for the room; infinite while something is given out.
    #[must_use]
    pub fn heard_until_s(&self) -> f64 {
        self.heard_until_s
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AT: Handed = Handed { block_s: 1.0, delay_s: 0.05 };

    #[test]
    fn a_count_on_the_beat_is_masked_and_leaves_the_main_path_open() {
        let mut playback = Playback::default();
        playback.began(AT, true);
        assert!(playback.masks(1.1) && playback.main_path_is_open(1.1) && !playback.is_silent(1.1));
        playback.began(Handed { block_s: 2.0, ..AT }, false);
        assert!(!playback.main_path_is_open(2.1));
    }

    #[test]
    fn the_main_path_opens_sooner_where_the_echo_is_taken_away_and_the_mask_does_not() {
        for (reduction_db, opens_s) in [(None, 0.3), (Some(9.0), 0.3), (Some(20.0), 0.1)] {
            let mut playback = Playback::default();
            playback.set_reduction_db(reduction_db);
            playback.began(AT, false);
            playback.fell_silent(AT);
            playback.main_path_may_open(AT);
            let ended_s = AT.block_s + BLOCK_S + AT.delay_s;
            assert!(!playback.main_path_is_open(ended_s + opens_s - 0.01) && playback.main_path_is_open(ended_s + opens_s + 0.01));
            assert!(playback.masks(ended_s + 0.29) && playback.is_silent(ended_s + 0.31));
            assert_eq!(playback.heard_until_s(), ended_s);
        }
    }

    #[test]
    fn a_line_that_names_a_live_word_closes_the_fast_path() {
        let mut playback = Playback::default();
        assert!(playback.fast_path_is_open(0.0));
        playback.close_fast_path();
        assert!(!playback.fast_path_is_open(100.0));
        playback.fast_path_may_open(AT);
        assert!(!playback.fast_path_is_open(1.3) && playback.fast_path_is_open(1.4));
    }
}
