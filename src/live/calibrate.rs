//! Calibrating a microphone, step by step, whoever asks for it: `tidecount calibrate` or the page.

use std::ops::ControlFlow;
use std::sync::{Mutex, PoisonError};

use jiff::ZonedDateTime;

use crate::capture::capture;
use crate::levels;
use audio::{AudioError, AudioIo};
use files::calibrations::{Calibration, Device};
use files::error::Failure;
use hear::VoiceEar;
use hear::calibration::{DOUBTFUL_SPREAD_DB, Heard, Known, LevelReading, Method, READINGS_PER_S, evaluate, offset_db};
use hear::clipping::ClipFinder;
use hear::level::power_db;
use hear::weighting::{Weighting, WeightingFilter};

/// Quiet before the sound, s, and the sound itself, s.
pub const QUIET_S: u64 = 4;
pub const SOUND_S: u64 = 8;

/// What is kept of a sound of known level.
pub fn calibration(known: &Known, distance_cm: f64, heard: &Heard, device: Device) -> Calibration {
    let tenth = |x: f64| (x * 100.0).round() / 100.0;
    Calibration {
        device,
        method: known.method,
        known_db: known.level_db,
        weighting: known.weighting,
        known_at_cm: known.at_cm.unwrap_or(distance_cm),
        distance_cm,
        offset_db: tenth(offset_db(known, distance_cm, heard)),
        spread_db: tenth(heard.spread_db),
        over_room_db: tenth(heard.over_room_db()),
        date: ZonedDateTime::now().date().to_string(),
        void: None,
    }
}

/// What to know about it besides.
pub fn warnings(known: &Known, heard: &Heard, device: &Device) -> Vec<String> {
    let mut all = Vec::new();
    if known.method == Method::Phone {
        all.push(
            "a phone's number is rough (off by 3 dB and more); every level will be marked so. A sound level meter does better.".into(),
        );
    }
    if heard.spread_db > DOUBTFUL_SPREAD_DB {
        all.push(format!(
            "the sound wandered; a glance at a meter may lie {:.1} dB off. A steadier sound does better.",
            heard.uncertainty_db()
        ));
    }
    if known.weighting != Weighting::A {
        all.push(format!(
            "levels in practice are A-weighted; with the reading in dB({}) that is right for a microphone with an even response.",
            known.weighting.letter()
        ));
    }
    if device.gain == crate::mic_gain::UNKNOWN && device.system != levels::RECORDING {
        all.push("this system does not tell the microphone's gain; calibrate again whenever it is turned.".into());
    }
    if device.system == levels::RECORDING {
        all.push(format!(
            "it holds for recordings made with \"{}\" at {} Hz, at the same gain, which a recording does not tell.",
            device.name, device.rate_hz
        ));
    }
    all
}

/// What was heard so far.
pub struct Listened {
    filter: WeightingFilter,
    clips: ClipFinder,
    ear: VoiceEar,
    readings: Vec<LevelReading>,
    energy: f64,
    count: usize,
    clipped: bool,
    per_reading: usize,
    /// Told each second: which, and the level, dB re full scale.
    shows: Option<fn(u64, f64)>,
    interrupted: bool,
}

impl Listened {
    pub fn new(weighting: Weighting, rate_hz: u32, shows: Option<fn(u64, f64)>) -> Self {
        Self {
            filter: WeightingFilter::new(weighting, f64::from(rate_hz)),
            clips: ClipFinder::new(f64::from(rate_hz)),
            ear: VoiceEar::new(rate_hz),
            readings: Vec::new(),
            energy: 0.0,
            count: 0,
            clipped: false,
            per_reading: rate_hz as usize / READINGS_PER_S,
            shows,
            interrupted: false,
        }
    }

    fn push(&mut self, samples: &[f32]) {
        self.ear.push(samples, false, &mut |_| {});
        for sample in samples {
            let y = self.filter.step(if sample.is_finite() { *sample } else { 0.0 });
            self.clipped |= self.clips.push(*sample);
            self.energy += y * y;
            self.count += 1;
            if self.count == self.per_reading {
                self.readings.push(LevelReading { level_db: power_db(self.energy / self.count as f64), clipped: self.clipped });
                (self.energy, self.count, self.clipped) = (0.0, 0, false);
                self.show();
            }
        }
    }

    fn show(&self) {
        if let (Some(show), Some(reading)) = (self.shows, self.readings.last())
            && self.readings.len().is_multiple_of(READINGS_PER_S)
        {
            show((self.readings.len() / READINGS_PER_S) as u64, reading.level_db);
        }
    }

    /// Seconds heard, and the latest level, dB re full scale.
    pub fn latest(&self) -> (f64, Option<f64>) {
        (self.readings.len() as f64 / READINGS_PER_S as f64, self.readings.last().map(|reading| reading.level_db))
    }

    /// It was broken off.
    pub fn interrupted(&self) -> bool {
        self.interrupted
    }

    /// Judges what was heard.
    ///
    /// # Errors
    /// It is not fit to calibrate with.
    pub fn judge(&mut self, quiet_needed: bool) -> Result<Heard, Failure> {
        if self.ear.auto_gain_found() {
            return Err(Failure::Again(
                "your microphone changes its own volume, so no calibration would hold; turn off \"automatic gain\" in the system's microphone settings and calibrate again".into(),
            ));
        }
        // The filter settles in the first tenth of a second.
        evaluate(self.readings.get(1..).unwrap_or(&[]), quiet_needed)
            .map_err(|why| Failure::Again(format!("nothing was calibrated: {why}")))
    }
}

/// Listens for the set time, or to the end of a recording.
pub fn listen(io: &mut dyn AudioIo, live: bool, listened: &Mutex<Listened>, interrupted: impl Fn() -> bool) -> Result<(), AudioError> {
    let mut blocks = 0;
    capture(io, |mic, _| {
        let mut listened = listened.lock().unwrap_or_else(PoisonError::into_inner);
        if live && blocks >= (QUIET_S + SOUND_S) * 100 {
            return ControlFlow::Break(());
        }
        if interrupted() {
            listened.interrupted = true;
            return ControlFlow::Break(());
        }
        listened.push(mic);
        blocks += 1;
        ControlFlow::Continue(())
    })?;
    io.finish()
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    /// A quiet room, then a 1 kHz tone of this level (a sine of amplitude 1 is -3 dB).
    fn listened(level_db: f64, gain: f32) -> Listened {
        let mut listened = Listened::new(Weighting::A, 16_000, None);
        let amplitude = 10f64.powf((level_db + 3.01) / 20.0);
        let sound: Vec<f32> = (0..160_000)
            .map(|k| {
                let t = f64::from(k) / 16_000.0;
                let tone = if (4.0..9.0).contains(&t) { amplitude * (2.0 * PI * 1000.0 * t).sin() } else { 0.0 };
                ((tone + 1e-4 * (2.0 * PI * 777.0 * t).sin()) as f32 * gain).clamp(-1.0, 1.0)
            })
            .collect();
        listened.push(&sound);
        listened
    }

    #[test]
    fn a_tone_of_94_db_gives_the_microphones_offset() {
        let heard = listened(-26.0, 1.0).judge(true).unwrap();
        assert!((heard.level_db + 26.0).abs() < 0.05 && heard.spread_db < 0.1, "{heard:?}");
        let known = Known { method: Method::Source, level_db: 94.0, weighting: Weighting::A, at_cm: None };
        let device = Device { system: "ALSA".into(), name: "mic".into(), rate_hz: 16_000, gain: "unknown".into() };
        let kept = calibration(&known, 30.0, &heard, device.clone());
        assert!((kept.offset_db - 120.0).abs() < 0.05 && (kept.reported_offset_db() - 120.0).abs() < 0.05, "{kept:?}");
        assert_eq!(warnings(&known, &heard, &device).len(), 1, "the gain is not known");
    }

    #[test]
    fn clipped_and_missing_sound_is_refused() {
        assert!(listened(-3.0, 4.0).judge(true).unwrap_err().to_string().contains("clipped"));
        assert!(listened(-90.0, 1.0).judge(true).unwrap_err().to_string().contains("nothing was calibrated"));
    }
}
