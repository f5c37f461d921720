//! A tune: a pitch that goes from note to note, as no held vowel does.

use super::interval::semitones;
use super::steadiness::RunFrame;

/// A note is at least this long, frames, and keeps its pitch within so much, semitones.
const NOTE: usize = 8;
const NOTE_WITHIN_ST: f64 = 0.6;
/// Between two notes there may be this many frames.
const BETWEEN: usize = 2;
/// The smallest step that counts, semitones. Octaves are slips of the pitch search or a voice that breaks.
const STEP_ST: f64 = 1.5;
/// So many steps within so many frames are a tune; a voice that breaks does so once or twice.
const STEPS: usize = 3;
const STEPS_WITHIN: usize = 400;
/// So many leaps from one frame to the next within a second: several instruments at once, or an engine.
const LEAPS: usize = 12;
const LEAPS_WITHIN: usize = 100;

/// Follows a hold and finds out that it is a tune.
#[derive(Debug, Clone, Default)]
pub(crate) struct Tune {
    /// Places in the run of the last steps and leaps, oldest first.
    steps: Vec<usize>,
    leaps: Vec<usize>,
}

impl Tune {
    pub fn clear(&mut self) {
        self.steps.clear();
        self.leaps.clear();
    }

    /// Looks at the newest frame of the run; where it has turned out to be a tune, gives the place of its first step.
    pub fn look(&mut self, run: &[RunFrame]) -> Option<usize> {
        let end = run.len();
        if let [.., a, b] = run
            && a.f0_hz > 0.0
            && b.f0_hz > 0.0
            && folded_st(a.f0_hz, b.f0_hz) > STEP_ST
        {
            self.leaps.push(end - 1);
        }
        let apart = self.steps.last().is_none_or(|last| last + NOTE <= end - 1);
        if apart && let Some(from) = end.checked_sub(2 * NOTE + BETWEEN) {
            let (before, after) = (run.get(from..from + NOTE)?, run.get(end - NOTE..)?);
            if let (Some(a), Some(b)) = (note_hz(before), note_hz(after))
                && folded_st(a, b) > STEP_ST
            {
                self.steps.push(end - 1);
            }
        }
        self.steps.retain(|at| at + STEPS_WITHIN > end);
        self.leaps.retain(|at| at + LEAPS_WITHIN > end);
        let first = |places: &[usize], enough: usize| (places.len() >= enough).then(|| places.first().copied()).flatten();
        let (step, leap) = (first(&self.steps, STEPS), first(&self.leaps, LEAPS));
        step.map(|at| at - NOTE - BETWEEN).or(leap)
    }
}

/// The pitch of frames that are one note.
fn note_hz(frames: &[RunFrame]) -> Option<f64> {
    let (low, high) = frames.iter().fold((f64::MAX, 0.0f64), |(low, high), f| (low.min(f.f0_hz), high.max(f.f0_hz)));
    (low > 0.0 && semitones(high, low) < NOTE_WITHIN_ST).then(|| (low * high).sqrt())
}

/// The interval between two pitches, octaves taken out: 0 to 6 semitones.
fn folded_st(a_hz: f64, b_hz: f64) -> f64 {
    let st = semitones(a_hz, b_hz).abs();
    (st - 12.0 * (st / 12.0).round()).abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ends(pitch: impl Fn(usize) -> f64) -> Option<usize> {
        let (mut tune, mut run) = (Tune::default(), Vec::new());
        (0..600).find_map(|k| {
            run.push(RunFrame { t_s: k as f64 / 100.0, f0_hz: pitch(k), ..RunFrame::default() });
            tune.look(&run)
        })
    }

    #[test]
    fn notes_are_a_tune_and_a_voice_is_none() {
        // Half a second each: c, d, e, f.
        let notes = [261.63, 293.66, 329.63, 349.23];
        let at = ends(|k| notes[k / 50 % 4]);
        assert!(at.is_some_and(|at| at.abs_diff(50) < 4), "{at:?}");
        // A voice with a tremor of 1 semitone, one that falls by an octave in 6 s, and one that breaks once.
        assert_eq!(ends(|k| 120.0 * 2f64.powf((k as f64 * 0.35).sin() / 12.0)), None);
        assert_eq!(ends(|k| 240.0 * 2f64.powf(-(k as f64) / 600.0)), None);
        assert_eq!(ends(|k| if k < 300 { 180.0 } else { 240.0 }), None);
        // Octave slips.
        assert_eq!(ends(|k| if k % 5 == 0 { 90.0 } else { 180.0 }), None);
    }
}
