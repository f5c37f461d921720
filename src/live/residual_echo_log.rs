//! How much of the last seconds may have been the echo of our own voice.

use std::collections::VecDeque;

/// How long it is remembered, blocks of 10 ms: longer than a phrase and the time to decide on it.
const REMEMBERED: usize = 1_000;
/// The recogniser's times may be off by this much, s.
const SLACK_S: f64 = 0.1;
/// A phrase must be so much over what is expected to be left of our own voice, dB. Chosen on rehearsed scenes, see
/// `benches/own_voice.rs`.
const EXCEEDS_DB: f64 = 4.0;

#[derive(Debug, Clone, Copy)]
struct Block {
    start_s: f64,
    /// Mean squares: what came out of the canceller, and what of our own voice is expected in it.
    cleaned: f64,
    left: f64,
    /// The same where the canceller did not know where the echo is.
    raw: f64,
}

/// Levels of the last seconds after the echo canceller.
#[derive(Debug, Default)]
pub struct ResidualEchoLog {
    blocks: VecDeque<Block>,
}

impl ResidualEchoLog {
    /// One block from `start_s` on; `left_db`: level expected to be left of our own voice, `raw_db`: its level before the
    /// canceller, −∞ for none.
    pub fn take(&mut self, start_s: f64, cleaned: &[f32], left_db: f64, raw_db: f64) {
        if self.blocks.len() == REMEMBERED {
            self.blocks.pop_front();
        }
        let power = cleaned.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / cleaned.len().max(1) as f64;
        let [left, raw] = [left_db, raw_db].map(|db| 10f64.powf(db / 10.0));
        self.blocks.push_back(Block { start_s, cleaned: power, left, raw });
    }

    /// Forgets everything: the clock jumped.
    pub fn clear(&mut self) {
        self.blocks.clear();
    }

    /// Whether the sound from `start_s` to `end_s` is louder than our own voice can be there. `aligned`: the canceller's last
    /// look, which is after the phrase, found the echo in its place.
    pub fn exceeds_residual_echo(&self, start_s: f64, end_s: f64, aligned: bool) -> bool {
        self.over_residual_echo_db(start_s, end_s, aligned) >= EXCEEDS_DB
    }

    /// By how much it is louder, dB; ∞ where nothing of our own voice is expected.
    pub fn over_residual_echo_db(&self, start_s: f64, end_s: f64, aligned: bool) -> f64 {
        let (from_s, to_s) = (start_s - SLACK_S, end_s + SLACK_S);
        let (mut cleaned, mut left) = (0.0, 0.0);
        for block in self.blocks.iter().filter(|block| (from_s..to_s).contains(&block.start_s)) {
            cleaned += block.cleaned;
            left += if aligned { block.left } else { block.raw };
        }
        if left > 0.0 { 10.0 * (cleaned / left).log10() } else { f64::INFINITY }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A second of sound at one level, in which what is left of our own voice has another.
    fn log(cleaned_db: f64, left_db: f64) -> ResidualEchoLog {
        let mut log = ResidualEchoLog::default();
        let sample = 10f64.powf(cleaned_db / 20.0) as f32;
        for n in 0..100 {
            log.take(f64::from(n) * 0.01, &[sample; 160], left_db, left_db + 20.0);
        }
        log
    }

    #[test]
    fn a_phrase_must_be_louder_than_what_is_left() {
        assert!(log(-30.0, -40.0).exceeds_residual_echo(0.3, 0.6, true));
        assert!(!log(-38.0, -40.0).exceeds_residual_echo(0.3, 0.6, true));
        assert!(!log(-30.0, -40.0).exceeds_residual_echo(0.3, 0.6, false), "all of the echo may be left");
        assert!(log(-60.0, f64::NEG_INFINITY).exceeds_residual_echo(0.3, 0.6, true), "nothing was played");
    }

    #[test]
    fn what_is_not_remembered_is_not_held_against_a_phrase() {
        let mut cleared = log(-60.0, -20.0);
        cleared.clear();
        assert!(cleared.exceeds_residual_echo(0.3, 0.6, true));
        assert!(log(-60.0, -20.0).exceeds_residual_echo(7.0, 7.5, true));
    }

    #[test]
    fn it_does_not_grow() {
        let mut log = ResidualEchoLog::default();
        (0..5_000).for_each(|n| log.take(f64::from(n) * 0.01, &[0.0; 160], -50.0, -30.0));
        assert_eq!(log.blocks.len(), REMEMBERED);
    }
}
