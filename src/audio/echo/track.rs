//! Keeps the reference where the echo is: jumps to it, and follows two clocks that run apart.

use super::delay::Peak;
use std::collections::VecDeque;

/// A peak this strong may be an echo; chance gives about 4.
const STRONG: f64 = 5.0;
/// A path not followed so far must be seen so often in so many looks …
const SEEN: usize = 3;
const LOOKS: usize = 6;
/// … or once, if it is as strong as this.
const STRIKING: f64 = 12.0;
/// The reference is held this far ahead of the first strong path, frames (10 ms): weaker paths may come before it.
pub(super) const LEAD: f64 = 160.0;
/// Where the path is found between these lags at first, the reference stays where it is, frames (3 to 60 ms): each jump
/// makes the cancellers learn anew.
const FITS: std::ops::RangeInclusive<f64> = 48.0..=960.0;
/// A reference further off its place than this is put there at once, frames (6 ms).
const JUMP: f64 = 96.0;
/// How far a path may have moved since it was last seen, frames, and frames more for each second since.
const NEAR: f64 = 6.0;
const NEAR_PER_S: f64 = 10.0;
const NEAR_MOST: f64 = 60.0;
/// Peaks within this many frames are the same path; 500 ppm move it by 2 from look to look.
const SAME: f64 = 8.0;
/// Time over which the clocks' difference is fitted, s of playback.
const MEMORY_S: f64 = 16.0;
/// Looks in that time, four a second, with some to spare.
const MOST_PEAKS: usize = 80;
/// Least time and number of peaks for such a fit.
const FIT_S: f64 = 3.0;
const FIT_PEAKS: usize = 8;
/// The middle part of the slopes that must agree in sign for a drift to be believed.
const AGREEING: (f64, f64) = (0.2, 0.8);
/// Differences smaller than this are no drift, parts per million: the filter follows them by itself.
const STEADY_PPM: f64 = 4.0;
/// Pull that brings a drifting reference back to its place, parts per million for each frame it is off.
const PULL_PPM: f64 = 16.0;
const PULL_MAX_PPM: f64 = 150.0;
const FRAMES_PER_S: f64 = 16_000.0;

/// What to do with the reference.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Move {
    Stay,
    /// Give out what is so many frames older.
    Jump(i64),
    /// Read so much faster than the microphone.
    Stretch {
        ppm: f64,
    },
}

/// Decides from one peak to the next.
#[derive(Debug)]
pub(super) struct Tracker {
    /// Whole delays of the last strong peaks, frames.
    candidates: VecDeque<f64>,
    /// Where the path that is followed was last seen: time in s, whole delay in frames.
    seen: Option<(f64, f64)>,
    /// Times (s) and delays after handing over (frames) since the last jump.
    past: VecDeque<(f64, f64)>,
    locked: bool,
    /// The last look found the echo where it is followed.
    aligned: bool,
    /// Frames by which the reference is held ahead of the path.
    lead: f64,
    /// The clocks' difference by the last fit.
    drift_ppm: f64,
    /// Slopes between all pairs of the past; kept, so that a fit takes no memory.
    slopes: Vec<f64>,
}

impl Default for Tracker {
    fn default() -> Self {
        Self {
            candidates: VecDeque::with_capacity(LOOKS + 1),
            seen: None,
            past: VecDeque::with_capacity(MOST_PEAKS + 1),
            locked: false,
            aligned: false,
            lead: 0.0,
            drift_ppm: 0.0,
            slopes: Vec::with_capacity((MOST_PEAKS + 1) * MOST_PEAKS / 2),
        }
    }
}

impl Tracker {
    /// The echo was found at least once.
    pub fn is_locked(&self) -> bool {
        self.locked
    }

    /// The last look found the echo where the reference is.
    pub fn is_aligned(&self) -> bool {
        self.aligned
    }

    /// Difference of the two clocks found so far, parts per million.
    pub fn drift_ppm(&self) -> f64 {
        self.drift_ppm
    }

    /// Where the path that is followed should be found, and how far off it may be, frames after handing over.
    pub fn near(&self, at_s: f64) -> Option<(f64, f64)> {
        let (seen_s, whole) = self.seen?;
        let moved = -self.drift_ppm * 1e-6 * FRAMES_PER_S * (at_s - seen_s);
        Some((whole + moved, (NEAR + NEAR_PER_S * (at_s - seen_s)).min(NEAR_MOST)))
    }

    /// `at_s`: seconds of microphone sound. `delay`: frames from handing a block over to giving it out as reference.
    /// `peak`: the echo in what was handed over.
    pub fn follow(&mut self, at_s: f64, delay: f64, peak: Peak) -> Move {
        let whole = peak.lag;
        let ahead = whole - delay;
        let followed = self.near(at_s).is_some_and(|(lag, radius)| (whole - lag).abs() <= radius);
        if peak.strength < STRONG {
            self.aligned = false;
            return Move::Stay;
        }
        if self.candidates.len() == LOOKS {
            self.candidates.pop_front();
        }
        self.candidates.push_back(whole);
        let seen = self.candidates.iter().filter(|before| (whole - **before).abs() < SAME).count();
        self.aligned = followed;
        if !followed && seen < SEEN && peak.strength < STRIKING {
            return Move::Stay;
        }
        if !followed || (ahead - self.lead).abs() > JUMP {
            self.past.clear();
            self.candidates.clear();
            self.seen = Some((at_s, whole));
            if !self.locked {
                self.locked = true;
                self.lead = if FITS.contains(&ahead) { ahead } else { LEAD };
            }
            let off = (ahead - self.lead).round();
            self.aligned = off == 0.0;
            return if off == 0.0 { Move::Stay } else { Move::Jump(off as i64) };
        }
        self.seen = Some((at_s, whole));
        self.past.push_back((at_s, whole));
        while self.past.len() > MOST_PEAKS || self.past.front().is_some_and(|(t, _)| *t < at_s - MEMORY_S) {
            self.past.pop_front();
        }
        if let Some(ppm) = self.fitted() {
            self.drift_ppm = ppm;
        }
        if self.drift_ppm == 0.0 {
            return Move::Stretch { ppm: 0.0 };
        }
        let pull = ((self.lead - ahead) * PULL_PPM).clamp(-PULL_MAX_PPM, PULL_MAX_PPM);
        Move::Stretch { ppm: self.drift_ppm + pull }
    }

    /// The median of the slopes between all pairs of delays (Theil 1950, Sen 1968), which single false peaks do not
    /// move; zero where it is not worth following.
    fn fitted(&mut self) -> Option<f64> {
        let (first, last) = (self.past.front()?.0, self.past.back()?.0);
        if self.past.len() < FIT_PEAKS || last - first < FIT_S {
            return None;
        }
        let slopes = &mut self.slopes;
        slopes.clear();
        for (i, a) in self.past.iter().enumerate() {
            slopes.extend(self.past.iter().skip(i + 1).filter(|b| b.0 - a.0 > 0.5).map(|b| (b.1 - a.1) / (b.0 - a.0)));
        }
        slopes.sort_unstable_by(f64::total_cmp);
        let at = |share: f64| slopes.get((slopes.len() as f64 * share) as usize).copied();
        if at(AGREEING.0)? * at(AGREEING.1)? <= 0.0 {
            return Some(0.0);
        }
        // The microphone hears ever later frames the sooner they come: a falling delay means reading faster.
        let ppm = -at(0.5)? / FRAMES_PER_S * 1e6;
        Some(if ppm.abs() < STEADY_PPM { 0.0 } else { ppm })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A reference under the tracker's hand, and an echo whose clock drifts; gives the greatest offset in frames from
    /// `from_s` on.
    fn worst_offset(start: f64, drift_ppm: f64, step_at: Option<(f64, f64)>, from_s: f64) -> f64 {
        let mut tracker = Tracker::default();
        let (mut delay, mut ppm, mut worst) = (0.0_f64, 0.0, 0.0_f64);
        for n in 0..160 {
            let at_s = f64::from(n) * 0.25;
            let step = step_at.map_or(0.0, |(t, frames)| if at_s >= t { frames } else { 0.0 });
            let echo = start + step - drift_ppm * 1e-6 * FRAMES_PER_S * at_s;
            let noise = f64::from(n * 7 % 5 - 2) * 0.02;
            let peak = Peak { lag: echo + noise, strength: 10.0 };
            match tracker.follow(at_s, delay, peak) {
                Move::Stay => {}
                Move::Jump(frames) => delay += frames as f64,
                Move::Stretch { ppm: new } => ppm = new,
            }
            delay -= ppm * 1e-6 * FRAMES_PER_S * 0.25;
            if at_s >= from_s {
                worst = worst.max((echo - delay - tracker.lead).abs());
            }
        }
        worst
    }

    #[test]
    fn it_jumps_to_any_delay_and_stays_where_clocks_agree() {
        for start in [320.0, 1_600.0, 6_400.0, 8_000.0] {
            assert!(worst_offset(start, 0.0, None, 1.0) <= 1.0, "{start}");
        }
    }

    #[test]
    fn it_follows_clocks_that_run_apart() {
        for drift_ppm in [-500.0, -100.0, 50.0, 100.0, 500.0] {
            let worst = worst_offset(1_600.0, drift_ppm, None, 15.0);
            assert!(worst < 4.0, "{drift_ppm} ppm: {worst} frames off");
        }
    }

    #[test]
    fn a_lost_buffer_is_jumped_over() {
        assert!(worst_offset(1_600.0, 0.0, Some((10.0, 160.0)), 11.0) <= 1.0);
        assert!(worst_offset(1_600.0, 100.0, Some((10.0, -480.0)), 20.0) <= 2.0);
    }

    #[test]
    fn chance_peaks_move_nothing() {
        let mut tracker = Tracker::default();
        for n in 0..50 {
            let peak = Peak { lag: f64::from(n * 977 % 8_000), strength: if n % 2 == 0 { 4.5 } else { 7.0 } };
            assert_eq!(tracker.follow(f64::from(n) * 0.25, 0.0, peak), Move::Stay);
        }
    }
}
