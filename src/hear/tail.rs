//! Where a voice ended and only its echo in the room went on.
//!
//! An echo keeps the period of the voice that made it, so the pitch search follows it down. It falls evenly and fast: by
//! 60 dB in the reverberation time (ISO 3382), which is 0.3 to 1.2 s in rooms people live in, so by 50 dB a second and more;
//! and it keeps the pitch it was made with. A voice that fades does so more slowly, or its pitch moves as it lets go.

use super::interval::semitones;
use super::steadiness::{RunFrame, percentile};

/// A fall of at least this much over [`STEP`] frames is an echo's, dB.
const FALL_DB: f64 = 3.5;
/// 0.1 s.
const STEP: usize = 10;
/// Frames in which a fluctuating echo may seem to stand still.
const STANDS: usize = 8;
/// The whole fall, from the voice to where nothing is heard any more, is more than this, dB.
const WHOLE_DB: f64 = 14.0;
/// The voice has surely ended where the level lies this far under it, dB.
const UNDER_VOICE_DB: f64 = 6.0;
/// The mean fall, dB a second.
const STEEPNESS_DB_PER_S: f64 = 50.0;
/// From the 10th to the 90th percentile the pitch of an echo moves no further, semitones.
const PITCH_ST: f64 = 0.5;
/// Shorter tails are how any voice ends, s: a gentle release lasts 0.1 to 0.15 s, and cutting it wrongs the voice by as
/// much as a small room's echo wrongs it the other way.
const SHORTEST_S: f64 = 0.18;

/// The instant at which the last echo in the frames of a hold begins, s; nothing where there is none.
pub(crate) fn tail_from_s(frames: &[RunFrame]) -> Option<f64> {
    let last = frames.iter().rposition(|f| f.f0_hz > 0.0)?;
    let level = |k: usize| frames.get(k).map_or(0.0, |f| f.level_db);
    let mut begins = last;
    let mut k = last;
    while k >= STEP && k + STANDS >= begins {
        if level(k - STEP) - level(k) > FALL_DB {
            begins = k;
        }
        k -= 1;
    }
    let before = begins.saturating_sub(2 * STEP)..begins.saturating_sub(STEP - 2).max(1);
    let count = before.len().max(1) as f64;
    let voice_db = before.map(level).sum::<f64>() / count;
    if voice_db - level(last) < WHOLE_DB {
        return None;
    }
    let ended = (begins.saturating_sub(STEP)..=last).rev().find(|k| level(*k) > voice_db - UNDER_VOICE_DB)?;
    let (ended_s, last_s) = (frames.get(ended)?.t_s, frames.get(last)?.t_s);
    let steep = (level(ended) - level(last)) / (last_s - ended_s).max(0.01) > STEEPNESS_DB_PER_S;
    let voiced = frames.get(ended..=last)?.iter().filter(|f| f.f0_hz > 0.0);
    let mut pitch: Vec<f64> = voiced.map(|f| semitones(f.f0_hz, 1.0)).collect();
    let moves_st = percentile(&mut pitch, 0.9) - percentile(&mut pitch, 0.1);
    (last_s - ended_s > SHORTEST_S && steep && moves_st < PITCH_ST).then_some(ended_s)
}
