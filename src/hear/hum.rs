//! A hum that was there before anybody made a sound belongs to the room.
//!
//! Mains hum and fans have a period as clear as a voice's. What tells them apart from a voice: they sound from the very
//! beginning, they are dull, and they are steadier than any voice.

use super::interval::semitones;
use super::steadiness::RunFrame;

/// A hum sounds from here on at the latest, s.
const BEGINS_BEFORE_S: f64 = 0.5;
/// It is known after this many frames: 0.45 s, before anything can be a hold.
const FRAMES: usize = 45;
/// Looked for this long, s.
const LOOKED_FOR_S: f64 = 3.0;
/// A-weighting takes more than this off a hum of up to 120 Hz and its overtones, dB; of recorded vowels 99 %
/// lose less than 10 dB.
const WEIGHTED_AWAY_DB: f64 = 11.0;
/// Recorded vowels keep pitch within 0.2 semitones and level within 0.9 dB over 0.8 s in 1 % of cases or less; a hum keeps
/// both far better.
const WITHIN_ST: f64 = 0.25;
const WITHIN_DB: f64 = 1.2;
/// Sound that stays this near to the hum is the hum, semitones and dB.
const SAME_ST: f64 = 0.5;
const SAME_DB: f64 = 3.0;

/// Learns a hum at the beginning and tells it from then on.
#[derive(Debug, Clone, Default)]
pub(crate) struct Hum {
    /// Pitch, semitones, and level of the run of voicing that began with the recording.
    run: Vec<(f64, f64)>,
    over: bool,
    known: Option<(f64, f64)>,
}

impl Hum {
    /// Whether the frame is nothing but the room's hum.
    pub fn is_hum(&mut self, frame: &RunFrame) -> bool {
        let here = (semitones(frame.f0_hz.max(1.0), 1.0), frame.level_db);
        if let Some((pitch_st, level_db)) = &mut self.known {
            let same = frame.f0_hz > 0.0 && (here.0 - *pitch_st).abs() < SAME_ST && (here.1 - *level_db).abs() < SAME_DB;
            if same {
                *level_db += 0.02 * (here.1 - *level_db);
            }
            return same;
        }
        if self.over {
            return false;
        }
        let dull = frame.power_db - frame.level_db > WEIGHTED_AWAY_DB;
        if frame.f0_hz > 0.0 && dull && !frame.masked && !frame.lost {
            self.run.push(here);
            self.learn();
        } else {
            self.run.clear();
        }
        self.over = frame.t_s > LOOKED_FOR_S || (self.run.is_empty() && frame.t_s > BEGINS_BEFORE_S);
        self.known.is_some()
    }

    fn learn(&mut self) {
        let Some(newest) = self.run.len().checked_sub(FRAMES).and_then(|from| self.run.get(from..)) else { return };
        let range = |pick: fn(&(f64, f64)) -> f64| {
            let (low, high) = newest.iter().map(pick).fold((f64::MAX, f64::MIN), |(low, high), x| (low.min(x), high.max(x)));
            high - low
        };
        if range(|f| f.0) < WITHIN_ST && range(|f| f.1) < WITHIN_DB {
            self.known = newest.last().copied();
            self.run = Vec::new();
        }
    }
}
