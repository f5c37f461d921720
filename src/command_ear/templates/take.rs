//! One saying of a command: cut out of the sound around it, judged, and kept as a picture of half decibels.

use super::mel::{BANDS, Bands, HOP};
use crate::RATE_HZ;
use crate::path::seconds;

/// A batch stands out from the room from here on, dB; the listener's own measure.
const STANDS_OUT_DB: f64 = 6.0;
/// Sound kept on either side of what stands out, s: soft beginnings and ends of words.
const AROUND_S: f64 = 0.09;
/// What stands out for a shorter time is a click and no part of a word, s.
const CLICK_S: f64 = 0.05;
/// A quiet of this length between two loud stretches parts them, s. Longer than the closure of a "p" or "t".
const PARTS_S: f64 = 0.3;
/// The picture's zero, dB: what is kept is `2 · (energy + OFFSET_DB)` in a byte.
const OFFSET_DB: f32 = 80.0;
/// Longest and shortest word or phrase, s.
const LONGEST_S: f64 = 2.4;
const SHORTEST_S: f64 = 0.1;
/// It must rise so much over the room, dB: under that the room is heard more than the word.
const LEAST_ABOVE_DB: f64 = 12.0;
/// A room louder than this is to blame where a word does not stand out; a quieter one is not, dB re full scale.
const NOISY_FLOOR_DB: f64 = -50.0;
/// So many samples at full scale are no accident.
const CLIPPED_SAMPLES: usize = 8;

/// The picture of one saying: strength of 23 bands of pitch every 10 ms, and of the room before it.
#[derive(Debug, Clone, PartialEq)]
pub struct Take {
    /// Half decibels.
    pub(super) frames: Vec<[u8; BANDS]>,
    pub(super) noise: [u8; BANDS],
}

/// Why a saying is no use as an example.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TakeFault {
    /// It hardly rises over a quiet room.
    TooSoft,
    /// It hardly rises over a noisy room.
    TooNoisy,
    /// The microphone's range was exceeded.
    Clipped,
    TooLong,
    TooShort,
    /// Two stretches of sound with a pause between them.
    InTwo,
    /// It had begun before we listened.
    TooEarly,
}

/// What was cut from an utterance.
#[derive(Debug, Clone, PartialEq)]
pub struct Cut {
    pub take: Take,
    /// How far the loudest 30 ms rise over the room, dB.
    pub above_db: f64,
    /// First and last instant that stands out, s from the first sample.
    pub start_s: f64,
    pub end_s: f64,
    /// Stretches parted by a pause.
    pub parts: usize,
    pub clipped: bool,
}

impl Cut {
    /// Cuts what stands out of `samples`. `levels` holds for each batch its end in s from the first sample and how far it rises over the
    /// room in dB. None where nothing stands out.
    #[must_use]
    pub(crate) fn of(samples: &[i16], levels: &[(f64, f64)], mel: &mut super::Mel) -> Option<Self> {
        let parts = loud_parts(levels);
        let (start_s, end_s) = (parts.first()?.0, parts.last()?.1);
        let at = |s: f64| ((s * f64::from(RATE_HZ)).max(0.0) as usize).min(samples.len());
        let word = samples.get(at(start_s - AROUND_S)..at(end_s + AROUND_S))?;
        let before = samples.get(..at(start_s - AROUND_S)).unwrap_or_default();
        let after = samples.get(at(end_s + AROUND_S)..).unwrap_or_default();
        let energies = mel.0.energies(word);
        let noise = noise(&mel.0.energies(before), &mel.0.energies(after), &energies);
        let take = Take { frames: energies.iter().map(halves).collect(), noise: halves(&noise) };
        if take.frames.is_empty() {
            return None;
        }
        let above_db = levels.iter().map(|l| l.1).fold(f64::NEG_INFINITY, f64::max);
        let clipped = word.iter().filter(|x| x.unsigned_abs() >= 32_700).count() >= CLIPPED_SAMPLES;
        Some(Self { take, above_db, start_s, end_s, parts: parts.len(), clipped })
    }

    /// How long it stands out, s.
    #[must_use]
    pub fn length_s(&self) -> f64 {
        self.end_s - self.start_s
    }

    /// What is wrong with it as an example of `wording`; `floor_db` is the room's level, dB re full scale.
    #[must_use]
    pub fn fault(&self, wording: &str, floor_db: f64) -> Option<TakeFault> {
        let words = wording.split(' ').count();
        Some(if self.clipped {
            TakeFault::Clipped
        } else if self.above_db < LEAST_ABOVE_DB {
            if floor_db > NOISY_FLOOR_DB { TakeFault::TooNoisy } else { TakeFault::TooSoft }
        } else if self.parts > words {
            TakeFault::InTwo
        } else if self.length_s() > LONGEST_S {
            TakeFault::TooLong
        } else if self.length_s() < SHORTEST_S {
            TakeFault::TooShort
        } else {
            return None;
        })
    }
}

impl Take {
    /// Length of the picture, s.
    #[must_use]
    pub fn length_s(&self) -> f64 {
        seconds(self.frames.len() * HOP)
    }

    /// As bytes: the noise, then frame by frame.
    #[must_use]
    pub fn to_bytes(&self) -> Vec<u8> {
        self.noise.iter().chain(self.frames.iter().flatten()).copied().collect()
    }

    /// From [`Take::to_bytes`]; None where the length does not fit.
    #[must_use]
    pub fn from_bytes(bytes: &[u8]) -> Option<Self> {
        let (frames, rest) = bytes.as_chunks::<BANDS>();
        let (noise, frames) = frames.split_first()?;
        (rest.is_empty() && !frames.is_empty()).then(|| Self { frames: frames.to_vec(), noise: *noise })
    }
}

/// Stretches that stand out, clicks left out, s.
fn loud_parts(levels: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut parts: Vec<(f64, f64)> = Vec::new();
    let mut last_s = 0.0;
    for &(end_s, above_db) in levels {
        if above_db >= STANDS_OUT_DB {
            match parts.last_mut() {
                Some(part) if last_s - part.1 < PARTS_S => part.1 = end_s,
                _ => parts.push((last_s, end_s)),
            }
        }
        last_s = end_s;
    }
    parts.retain(|part| part.1 - part.0 > CLICK_S);
    parts
}

/// The room's bands: the mean beside the word, or where there is nothing beside it the least within it.
fn noise(before: &[Bands], after: &[Bands], within: &[Bands]) -> Bands {
    let mut noise = [0.0; BANDS];
    let beside = before.len() + after.len();
    for (band, to) in noise.iter_mut().enumerate() {
        let of = |frames: &[Bands]| frames.iter().filter_map(|f| f.get(band).copied()).collect::<Vec<f32>>();
        *to = if beside > 0 {
            (of(before).iter().sum::<f32>() + of(after).iter().sum::<f32>()) / beside as f32
        } else {
            of(within).into_iter().fold(f32::INFINITY, f32::min)
        };
    }
    noise
}

fn halves(bands: &Bands) -> [u8; BANDS] {
    bands.map(|db| (2.0 * (db + OFFSET_DB)).round().clamp(0.0, 255.0) as u8)
}
