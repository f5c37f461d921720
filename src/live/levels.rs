//! What levels mean in this practice: gives every level its calibration, distance and doubts before anybody sees it.

use std::path::Path;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::Duration;

use crate::mic_gain;
use audio::devices;
use audio::file::names_file;
use files::calibrations::{Calibration, CalibrationStore, Device};
use files::error::Failure;
use hear::calibration::{Method, REPORTED_CM};
use session::{Arg, Fact, LevelCalibration, LevelTerms};
use speak::Words;

/// What the sound system of recordings is called.
pub const RECORDING: &str = "recording";
/// How often a microphone's gain is looked at.
const LOOK_EVERY: Duration = Duration::from_secs(5);

/// The microphone that `--mic` names, as it stands now. A recording's is called by `recorded_with`, or by its folder: what lies
/// together is taken to come from one recorder.
///
/// # Errors
/// There is no such microphone.
pub fn device(mic: &str, rate_hz: u32, recorded_with: Option<&str>) -> Result<Device, Failure> {
    if names_file(mic) {
        let path = std::fs::canonicalize(mic).unwrap_or_else(|_| mic.into());
        let folder = path.parent().unwrap_or_else(|| Path::new("/")).display().to_string();
        let name = recorded_with.map_or(folder, str::to_owned);
        return Ok(Device { system: RECORDING.into(), name, rate_hz, gain: mic_gain::UNKNOWN.into() });
    }
    let (system, name) = devices::microphone(mic)?;
    let gain = mic_gain::gain_of(&system, &name);
    Ok(Device { system, name, rate_hz, gain })
}

/// What a level means at this moment.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct LevelScale {
    /// To be added to dB re full scale.
    pub offset_db: f64,
    pub calibration: LevelCalibration,
    /// The microphone changes its own volume: nothing can be compared.
    pub auto_gain: bool,
}

impl LevelScale {
    /// dB SPL, not relative.
    #[must_use]
    pub fn is_spl(&self) -> bool {
        !matches!(self.calibration, LevelCalibration::None | LevelCalibration::Void)
    }
}

/// The scale of levels. The default is none: relative.
#[derive(Debug, Default)]
pub struct Levels {
    calibration: Option<Calibration>,
    void: bool,
    /// From the mouth to the microphone, cm, where somebody said so.
    distance_cm: Option<f64>,
    auto_gain: bool,
    /// What changed, from the thread that looks at the gain.
    changes: Option<Receiver<String>>,
    /// To be told and kept as soon as there is a journal: what, and the words.
    notes: Vec<(String, String)>,
    /// Where a calibration that ceases to hold is marked so.
    store: Option<CalibrationStore>,
    /// The live microphone. A recording's is not kept: its name may be a folder.
    microphone: Option<Device>,
    /// That microphone has been kept.
    is_kept: bool,
}

impl Levels {
    /// Looks up what was calibrated and whether it still holds for the microphone as it stands. One that does not is marked void.
    ///
    /// # Errors
    /// The file of calibrations cannot be read or written.
    pub fn of(folder: &Path, device: &Device, distance_cm: Option<f64>) -> Result<Self, Failure> {
        let store = CalibrationStore::open(folder)?;
        let microphone = (device.system != RECORDING).then(|| device.clone());
        let mut levels = Self { distance_cm, microphone, ..Self::default() };
        if let Some(kept) = store.of(&device.system, &device.name).cloned() {
            levels.store = Some(store);
            let mut broken = kept.void.clone().map_or_else(|| kept.broken_by(device, distance_cm), Some);
            if kept.void.is_none() && device.gain == mic_gain::UNKNOWN && kept.device.gain != mic_gain::UNKNOWN {
                // It may be as it was; so this practice cannot use it, and the next may.
                levels.store = None;
                broken = Some(format!("its gain cannot be read now, and was {}", kept.device.gain));
            }
            let is_live = device.system != RECORDING;
            levels.notes.push(("calibration".into(), kept.line()));
            levels.calibration = Some(kept);
            if let Some(why) = broken {
                levels.notes.clear();
                levels.void_for(&why)?;
            } else if is_live && device.gain != mic_gain::UNKNOWN {
                levels.changes = watch(device.clone());
            }
        } else if let Some(other) = store.all().iter().rev().find(|c| c.device.system == device.system && device.system != RECORDING) {
            let calibrated = other.device.name.clone();
            levels.is_another(&calibrated, &device.name);
        }
        Ok(levels)
    }

    /// What was calibrated is not what is heard.
    fn is_another(&mut self, calibrated: &str, name: &str) {
        self.void = true;
        let told = format!("\"{calibrated}\" was calibrated, and this microphone is \"{name}\": its levels are relative. {REMEDY}");
        self.notes.push(("calibration-void".into(), told));
    }

    /// A microphone that went away has come back, perhaps as another one. Then its levels are relative from here on, and it is kept, so that
    /// nothing is compared across the change; the first one's calibration still holds for the next practice.
    pub fn hears_with(&mut self, name: &str) {
        let Some(known) = self.microphone.as_mut().filter(|known| known.name != name) else { return };
        (known.name, known.gain, self.is_kept, self.changes) = (name.to_owned(), mic_gain::UNKNOWN.to_owned(), false, None);
        if let Some(kept) = self.calibration.take() {
            self.is_another(&kept.device.name, name);
        }
    }

    fn void_for(&mut self, why: &str) -> Result<(), Failure> {
        let Some(kept) = self.calibration.take() else { return Ok(()) };
        self.void = true;
        self.notes.push((
            "calibration-void".into(),
            format!(
                "The calibration of \"{}\" of {} no longer holds: {why}. Levels are relative from here on. {REMEDY}",
                kept.device.name, kept.date
            ),
        ));
        match (&mut self.store, &kept.void) {
            (Some(store), None) => store.void(&kept.device.system, &kept.device.name, why),
            _ => Ok(()),
        }
    }

    /// The microphone changes its own volume: every level from here on is marked.
    pub fn set_auto_gain(&mut self) {
        self.auto_gain = true;
    }

    /// The microphone, to be kept at the begin of a live practice and where another one takes its place: with that the levels mean
    /// something else.
    pub fn microphone_used(&mut self) -> Option<Fact> {
        let Device { system, name, rate_hz, gain } = self.microphone.clone().filter(|_| !self.is_kept)?;
        self.is_kept = true;
        Some(Fact::MicrophoneUsed { system, name, rate_hz, gain })
    }

    /// What is to be told now, each once: what kind of note, and the words.
    pub fn notes(&mut self) -> Vec<(String, String)> {
        let change = match self.changes.as_ref().map(Receiver::try_recv) {
            Some(Ok(change)) => Some(change),
            Some(Err(TryRecvError::Disconnected)) => {
                self.changes = None;
                None
            }
            _ => None,
        };
        if let Some(why) = change {
            // The practice goes on without the mark in the file; the next one finds the change again.
            if let Err(error) = self.void_for(&why) {
                self.notes.push(("calibration-void".into(), error.to_string()));
            }
        }
        std::mem::take(&mut self.notes)
    }

    /// What levels mean now.
    #[must_use]
    pub fn scale(&self) -> LevelScale {
        let none = if self.void { LevelCalibration::Void } else { LevelCalibration::None };
        let (offset_db, calibration) =
            self.calibration.as_ref().map_or((0.0, none), |kept| (kept.reported_offset_db(), named(kept.method)));
        LevelScale { offset_db, calibration, auto_gain: self.auto_gain }
    }

    /// Puts the level of a fact on the scale that holds now and says what it refers to.
    pub fn apply_calibration(&self, fact: &mut Fact) {
        let (Fact::HoldMeasured { level_mean_db, level_calibrated, level_terms, .. }
        | Fact::PhraseRead { level_mean_db, level_calibrated, level_terms, .. }
        | Fact::Talked { level_mean_db, level_calibrated, level_terms, .. }) = fact
        else {
            return;
        };
        let terms = level_terms.get_or_insert_with(LevelTerms::default);
        terms.auto_gain = self.auto_gain;
        terms.distance_cm = self.distance_cm;
        terms.calibration = if self.void { LevelCalibration::Void } else { LevelCalibration::None };
        if let Some(kept) = &self.calibration {
            *level_mean_db += kept.reported_offset_db();
            *level_calibrated = true;
            terms.distance_cm = Some(REPORTED_CM);
            terms.calibration = named(kept.method);
        }
    }
}

fn named(method: Method) -> LevelCalibration {
    match method {
        Method::Meter => LevelCalibration::Meter,
        Method::Source => LevelCalibration::Source,
        Method::Phone => LevelCalibration::Rough,
    }
}

const REMEDY: &str = "To calibrate: tidecount calibrate --meter";

/// Looks at the gain now and then, beside everything else; ends when nobody listens or when it has changed.
fn watch(device: Device) -> Option<Receiver<String>> {
    let (tell, changes) = channel();
    // Held by nobody: it ends with the process at the latest, and sleeps meanwhile.
    let look = move || {
        loop {
            std::thread::sleep(LOOK_EVERY);
            let gain = mic_gain::gain_of(&device.system, &device.name);
            // Where the sound system does not answer for a moment, nothing is known to have changed.
            let changed = gain != mic_gain::UNKNOWN && gain != device.gain;
            if changed {
                let _ = tell.send(format!("its gain is {gain}, and was {}", device.gain));
                return;
            }
        }
    };
    std::thread::Builder::new().name("microphone gain".to_owned()).spawn(look).ok().map(|_| changes)
}

/// A level with its unit, as it is shown: "72 dB(A) SPL at 30 cm", "-29 dB(A) relative".
#[must_use]
pub fn in_words(words: &Words, level_db: f64, weighting: &str, terms: Option<&LevelTerms>) -> String {
    let calibration = terms.map_or(LevelCalibration::None, |terms| terms.calibration);
    let scale = match calibration {
        LevelCalibration::None | LevelCalibration::Void => "level-relative-shown",
        LevelCalibration::Meter | LevelCalibration::Source => "level-spl-shown",
        LevelCalibration::Rough => "level-rough-shown",
    };
    let figure = if level_db.is_finite() { format!("{level_db:.0}") } else { words.shown("level-none-shown", Vec::new()) };
    let level = words.shown(scale, vec![("db", Arg::Text(figure)), ("weighting", Arg::Text(weighting.to_owned()))]);
    match terms {
        Some(terms) if terms.auto_gain => words.shown("level-auto-gain-shown", vec![("level", Arg::Text(level))]),
        Some(terms) if terms.clipped_s > 0.0 => words.shown("level-clipped-shown", vec![("level", Arg::Text(level))]),
        _ => level,
    }
}

#[cfg(test)]
#[path = "tests/levels.rs"]
mod tests;
