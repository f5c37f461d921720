//! Finds clipped sound: at full scale, and below it, where a preamplifier before the converter was overdriven.
//!
//! A clipped wave has flat tops, cut off at one level. Smooth waves have level tops as well, so three things are asked
//! together: a run of samples that hardly differ; steps into and out of it far steeper than a smooth top of that length
//! allows; and several such runs within a quarter second at the same level, with nothing above it. A voice's own peaks
//! differ from period to period by its shimmer, by percents.

use std::collections::VecDeque;

/// Samples of a run differ by no more than this share of its level.
const FLAT: f32 = 0.004;
/// Least length of a run, s, and samples.
const LEAST_S: f64 = 0.000_18;
const LEAST: u32 = 3;
/// A smooth top is a parabola or, at its flattest, a curve of fourth order. The steps at the ends of a clipped top are this
/// many times a parabola's; a fourth-order top has up to 5.
const STEEPER: f32 = 6.0;
/// Steps under this are the converter's, twice the step of 16 bits at full scale.
const LEAST_DIFFERENCE: f32 = 6e-5;
/// Softer tops than this are no clipping of a voice; a preamplifier with less headroom is broken (common practice, no source).
const LEAST_LEVEL: f32 = 0.05;
/// From here on a run of two equal samples is clipped: full scale.
const FULL_SCALE: f32 = 0.999;
/// So many tops within this time, all within this share of one level.
const TOPS: usize = 4;
const WITHIN_S: f64 = 0.25;
const SAME: f32 = 0.006;

/// Follows a stream of samples.
#[derive(Debug, Clone)]
pub struct ClipFinder {
    least: u32,
    window: u64,
    at: u64,
    before: f32,
    run: Run,
    /// Flat tops lately, above and below zero.
    tops: [VecDeque<Top>; 2],
    /// Highest samples of either sign: the window under way and the one before.
    highest: [[f32; 2]; 2],
    /// Clipping seen in this stretch goes on until here.
    until: u64,
}

#[derive(Debug, Clone, Copy, Default)]
struct Run {
    length: u32,
    low: f32,
    high: f32,
    /// Step from the sample before into the run, towards zero positive.
    step_in: f32,
}

#[derive(Debug, Clone, Copy)]
struct Top {
    at: u64,
    level: f32,
}

impl ClipFinder {
    /// For sound at `rate_hz`.
    #[must_use]
    pub fn new(rate_hz: f64) -> Self {
        Self {
            least: ((LEAST_S * rate_hz).ceil() as u32).max(LEAST),
            window: (WITHIN_S * rate_hz) as u64,
            at: 0,
            before: 0.0,
            run: Run::default(),
            tops: [VecDeque::with_capacity(TOPS + 1), VecDeque::with_capacity(TOPS + 1)],
            highest: [[0.0; 2]; 2],
            until: 0,
        }
    }

    /// Takes one sample, -1 to 1. True while the sound is clipped: the sample belongs to a flat top or follows one by less than
    /// a few milliseconds, in a stretch in which the same level was cut off several times.
    pub fn push(&mut self, sample: f32) -> bool {
        let size = sample.abs();
        let sign = usize::from(sample < 0.0);
        if let Some(highest) = self.highest.first_mut().and_then(|now| now.get_mut(sign)) {
            *highest = highest.max(size);
        }
        let continues = self.run.length > 0
            && (sample < 0.0) == (self.before < 0.0)
            && self.run.high.max(size) - self.run.low.min(size) <= FLAT * self.run.high.max(size);
        if continues {
            self.run.length += 1;
            self.run.low = self.run.low.min(size);
            self.run.high = self.run.high.max(size);
        } else {
            self.close(size, sign);
            // A step across zero is steeper still.
            let from = if (sample < 0.0) == (self.before < 0.0) { self.before.abs() } else { -self.before.abs() };
            self.run = Run { length: 1, low: size, high: size, step_in: size - from };
        }
        self.before = sample;
        self.at += 1;
        if self.at.is_multiple_of(self.window.max(1)) {
            self.highest[1] = self.highest[0];
            self.highest[0] = [0.0; 2];
        }
        self.at <= self.until
    }

    /// The run is over; `size` and `sign` are the sample's that ended it.
    fn close(&mut self, size: f32, sign: usize) {
        let run = self.run;
        let run_sign = usize::from(self.before < 0.0);
        if run.length < 2 || run.high < LEAST_LEVEL {
            return;
        }
        let step_out = run.low - if sign == run_sign { size } else { -size };
        let difference = (run.high - run.low).max(LEAST_DIFFERENCE);
        let half = (run.length - 1) as f32 / 2.0;
        let smooth = run.length as f32 / (half * half);
        let cut = run.length >= self.least && run.step_in.min(step_out) >= STEEPER * smooth * difference;
        let full = run.low >= FULL_SCALE && run.high - run.low <= LEAST_DIFFERENCE;
        if !cut && !full {
            return;
        }
        let (from, at) = (self.at.saturating_sub(self.window), self.at);
        let highest = self.highest.iter().filter_map(|window| window.get(run_sign)).fold(0f32, |a, b| a.max(*b));
        let Some(tops) = self.tops.get_mut(run_sign) else { return };
        while tops.front().is_some_and(|top| top.at < from) || tops.len() >= TOPS {
            tops.pop_front();
        }
        tops.push_back(Top { at, level: run.high });
        let (low, high) = tops.iter().fold((f32::MAX, 0f32), |(low, high), top| (low.min(top.level), high.max(top.level)));
        if tops.len() >= TOPS && high - low <= SAME * high && highest <= high * (1.0 + SAME) {
            self.until = at + self.window / 50;
        }
    }
}

#[cfg(test)]
#[path = "tests/clipping.rs"]
mod tests;
