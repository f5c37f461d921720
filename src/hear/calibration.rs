//! From dB re full scale to sound pressure level: what a calibration is, how one is made from a sound of known level, and
//! what distance does to a level. Arithmetic alone; where calibrations are kept is the application's business.
//!
//! L = L_fs + K, where K belongs to one microphone at one gain (design). K comes from one steady sound whose level at a known
//! distance somebody else has measured.

use super::level::{SILENCE_DB, db_power, power_db};
use super::weighting::Weighting;
use serde::{Deserialize, Serialize};

/// Levels are given for this distance from the mouth, cm (common practice in voice assessment: Švec and Granqvist 2018,
/// JSLHR 61, 441).
pub const REPORTED_CM: f64 = 30.0;
/// Level readings a second that [`evaluate`] takes.
pub const READINGS_PER_S: usize = 10;
/// The sound must last this long, s: a Slow reading needs three of its time constants to come within 0.2 dB.
pub const SHORTEST_S: f64 = 3.0;
/// Voice less than this over the room is no measurement, dB (Šrámková et al. 2015, JASA, asks for 10 dB as well).
pub const LEAST_OVER_ROOM_DB: f64 = 10.0;
/// A sound that wanders by more than this between its 5th and 95th percentile cannot be compared with one reading, dB
/// (common practice, no source).
pub const MOST_SPREAD_DB: f64 = 6.0;
/// Beyond this the reading is uncertain and that is told, dB (common practice, no source).
pub const DOUBTFUL_SPREAD_DB: f64 = 3.0;
/// Levels a person or a calibrator makes; others are slips of the keyboard, dB.
pub const BELIEVABLE_DB: std::ops::RangeInclusive<f64> = 30.0..=130.0;
/// Distances between mouth and microphone that make sense, cm.
pub const BELIEVABLE_CM: std::ops::RangeInclusive<f64> = 1.0..=500.0;

/// What gave the known level.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Method {
    /// A sound level meter.
    Meter,
    /// A source of known level, such as an acoustic calibrator.
    Source,
    /// A phone's number: rough, and marked so everywhere (uncalibrated phones are off by about 3 dB and more).
    Phone,
}

/// The level that somebody else measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Known {
    pub method: Method,
    /// What it showed, dB.
    pub level_db: f64,
    /// The frequency weighting it was set to.
    pub weighting: Weighting,
    /// How far from the source it stood, cm; none: as far as the microphone.
    pub at_cm: Option<f64>,
}

/// `level_db` at `from_cm` from a small source is this at `to_cm`: L - 20 lg(to / from), in the free field.
#[must_use]
pub fn at_distance(level_db: f64, from_cm: f64, to_cm: f64) -> f64 {
    level_db - 20.0 * (to_cm / from_cm).log10()
}

/// The level of a sound without the room that was measured with it, dB: 10 lg(10^(L/10) - 10^(N/10)).
#[must_use]
pub fn without_room(level_db: f64, room_db: f64) -> f64 {
    power_db((db_power(level_db) - db_power(room_db)).max(0.0))
}

/// What was heard of the known sound, levels in dB re full scale with the known level's weighting.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heard {
    /// Energy mean of the sound, the room taken out.
    pub level_db: f64,
    /// Energy mean of the room.
    pub room_db: f64,
    /// 5th to 95th percentile of the Slow-like level of the sound.
    pub spread_db: f64,
    /// How long the sound was, s.
    pub length_s: f64,
}

impl Heard {
    /// The sound over the room, dB.
    #[must_use]
    pub fn over_room_db(&self) -> f64 {
        self.level_db - self.room_db
    }

    /// Half of what the sound wandered by: how far a single glance at a meter may lie off, dB.
    #[must_use]
    pub fn uncertainty_db(&self) -> f64 {
        self.spread_db / 2.0
    }
}

/// Why a sound cannot calibrate; the text says what to do.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum Unfit {
    #[error(
        "nothing stood out of the room for {SHORTEST_S:.0} seconds; make one steady sound for at least five, with some seconds of quiet before it"
    )]
    NoSound,
    #[error("the room was not heard: there was sound from the very beginning; keep quiet for the first three seconds")]
    NoQuiet,
    #[error(
        "the sound was only {0:.0} dB over the room, and {LEAST_OVER_ROOM_DB:.0} are needed; come nearer, be louder, or make the room quieter"
    )]
    RoomTooLoud(f64),
    #[error(
        "the sound wandered by {0:.1} dB, and at most {MOST_SPREAD_DB:.0} can be compared with one reading; hold one steady tone or vowel"
    )]
    Unsteady(f64),
    #[error("the sound was clipped: it was too loud for the microphone's gain; turn the gain down and calibrate again")]
    Clipped,
}

/// One reading of the level, [`READINGS_PER_S`] a second.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LevelReading {
    /// Energy mean since the last reading, dB re full scale.
    pub level_db: f64,
    /// Something in it was clipped.
    pub clipped: bool,
}

/// A stretch counts as sound from so far over the room on, dB.
const STANDS_OUT_DB: f64 = 6.0;
/// Readings at both ends of the sound that are left out: it swells and dies away there.
const EDGE: usize = READINGS_PER_S / 2;
/// Readings of the room needed.
const LEAST_QUIET: usize = READINGS_PER_S / 2;
/// A source that sounds throughout is louder than this, dB re full scale; fainter sound is a room (common practice, no source).
const FAINTEST_SOURCE_DB: f64 = -60.0;
/// Dips as short as this do not end the sound, readings: a voice's breath does.
const DIP: usize = 2;

/// Finds the steady sound in a stretch of level readings and judges it. The room is the quietest tenth. `quiet_needed`: false
/// for a source in a coupler, which shuts the room out; it may then sound from the beginning to the end, and nothing is known
/// of the room.
///
/// # Errors
/// The sound is not fit to calibrate with.
pub fn evaluate(readings: &[LevelReading], quiet_needed: bool) -> Result<Heard, Unfit> {
    let mut sorted: Vec<f64> = readings.iter().map(|r| r.level_db).collect();
    sorted.sort_by(f64::total_cmp);
    let quietest = sorted.get(..sorted.len().div_ceil(10).max(LEAST_QUIET.min(sorted.len()))).unwrap_or(&[]);
    let room_db = energy_mean_db(quietest);
    let loud_db = sorted.get(sorted.len().saturating_sub(sorted.len() / 10 + 1)).copied().unwrap_or(room_db);
    let stands_out = loud_db - room_db >= STANDS_OUT_DB;
    let long_enough = readings.len() as f64 >= SHORTEST_S * READINGS_PER_S as f64;
    if !stands_out && (quiet_needed || room_db < FAINTEST_SOURCE_DB) {
        return Err(if long_enough { Unfit::NoQuiet } else { Unfit::NoSound });
    }
    let limit_db = room_db + STANDS_OUT_DB.max((loud_db - room_db) / 2.0);
    let (sound, room_db) = if stands_out { (longest_over(readings, limit_db), room_db) } else { (readings, SILENCE_DB) };
    if (sound.len() as f64) < SHORTEST_S * READINGS_PER_S as f64 {
        return Err(Unfit::NoSound);
    }
    let inner = sound.get(EDGE..sound.len() - EDGE).unwrap_or(sound);
    if inner.iter().any(|r| r.clipped) {
        return Err(Unfit::Clipped);
    }
    let levels: Vec<f64> = inner.iter().map(|r| r.level_db).collect();
    let spread_db = spread_of_seconds(&levels);
    let total_db = energy_mean_db(&levels);
    if total_db - room_db < LEAST_OVER_ROOM_DB {
        return Err(Unfit::RoomTooLoud((total_db - room_db).max(0.0)));
    }
    if spread_db > MOST_SPREAD_DB {
        return Err(Unfit::Unsteady(spread_db));
    }
    Ok(Heard { level_db: without_room(total_db, room_db), room_db, spread_db, length_s: sound.len() as f64 / READINGS_PER_S as f64 })
}

fn longest_over(readings: &[LevelReading], limit_db: f64) -> &[LevelReading] {
    let (mut best, mut from, mut last) = (0..0, None, 0);
    for (k, reading) in readings.iter().enumerate() {
        if reading.level_db < limit_db {
            if k > last + DIP {
                from = None;
            }
            continue;
        }
        let start = *from.get_or_insert(k);
        last = k;
        if k + 1 - start > best.len() {
            best = start..k + 1;
        }
    }
    readings.get(best).unwrap_or(&[])
}

/// 5th to 95th percentile of means over one second, as a meter set to Slow would wander.
fn spread_of_seconds(levels_db: &[f64]) -> f64 {
    let mut means: Vec<f64> = levels_db.windows(READINGS_PER_S.min(levels_db.len().max(1))).map(energy_mean_db).collect();
    super::steadiness::percentile(&mut means, 0.95) - super::steadiness::percentile(&mut means, 0.05)
}

fn energy_mean_db(levels_db: &[f64]) -> f64 {
    power_db(levels_db.iter().map(|db| db_power(*db)).sum::<f64>() / levels_db.len().max(1) as f64)
}

/// K: what is added to dB re full scale to get dB SPL at the microphone. `mic_cm`: from the source to the microphone.
#[must_use]
pub fn offset_db(known: &Known, mic_cm: f64, heard: &Heard) -> f64 {
    at_distance(known.level_db, known.at_cm.unwrap_or(mic_cm), mic_cm) - heard.level_db
}

/// What is added to a level re full scale to get dB SPL at [`REPORTED_CM`] from the mouth, where the microphone is `mic_cm` away.
#[must_use]
pub fn reported_offset_db(offset_db: f64, mic_cm: f64) -> f64 {
    offset_db + at_distance(0.0, mic_cm, REPORTED_CM)
}

#[cfg(test)]
#[path = "tests/calibration.rs"]
mod tests;
