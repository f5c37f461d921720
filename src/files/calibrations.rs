//! Calibrations of microphones: one TOML file in the data folder, which a person can read.

use std::io::Write;
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use crate::error::Failure;
use hear::calibration::{Method, REPORTED_CM, reported_offset_db};
use hear::weighting::Weighting;

/// The file in the data folder.
pub const FILE_NAME: &str = "calibrations.toml";

const HEAD: &str = "# Calibrations of microphones, written by `tidecount calibrate`. offset_db: dB SPL at the microphone less dB re full\n\
                    # scale. Each holds for its device, rate, gain and distance alone.\n\n";

/// A microphone as it stands now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Device {
    /// The sound system, "PulseAudio" or "ALSA"; "recording" for files.
    pub system: String,
    /// Its name in that system; for files the folder or the recorder's name.
    pub name: String,
    pub rate_hz: u32,
    /// See [`super::mic_gain`].
    pub gain: String,
}

/// One calibration.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Calibration {
    #[serde(flatten)]
    pub device: Device,
    pub method: Method,
    /// The level that was known, dB, its weighting, and how far from the source it was measured, cm.
    pub known_db: f64,
    pub weighting: Weighting,
    pub known_at_cm: f64,
    /// From the mouth to the microphone, cm.
    pub distance_cm: f64,
    /// dB SPL at the microphone less dB re full scale.
    pub offset_db: f64,
    /// What the sound wandered by, and how far it stood over the room, dB.
    pub spread_db: f64,
    pub over_room_db: f64,
    /// Local date, ISO 8601.
    pub date: String,
    /// Why and when it ceased to hold; none while it does.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub void: Option<String>,
}

impl Calibration {
    /// What is added to dB re full scale to get dB SPL at 30 cm.
    #[must_use]
    pub fn reported_offset_db(&self) -> f64 {
        reported_offset_db(self.offset_db, self.distance_cm)
    }

    /// Why it does not hold for the microphone as it stands; nothing where it does. `distance_cm`: none where nobody said
    /// that the microphone stands elsewhere now.
    #[must_use]
    pub fn broken_by(&self, now: &Device, distance_cm: Option<f64>) -> Option<String> {
        if now.rate_hz != self.device.rate_hz {
            return Some(format!("it runs at {} Hz, and was calibrated at {} Hz", now.rate_hz, self.device.rate_hz));
        }
        if now.gain != self.device.gain {
            return Some(format!("its gain is {}, and was {}", now.gain, self.device.gain));
        }
        // Half a centimetre at 30 is 0.14 dB: nobody measures nearer than that.
        distance_cm
            .filter(|now_cm| (now_cm - self.distance_cm).abs() > 0.5)
            .map(|now_cm| format!("it stands {now_cm} cm from the mouth, and stood at {} cm", self.distance_cm))
    }

    /// One line for a person.
    #[must_use]
    pub fn line(&self) -> String {
        let how = match self.method {
            Method::Meter => "sound level meter",
            Method::Source => "known source",
            Method::Phone => "a phone's number: ROUGH",
        };
        let state = self.void.as_ref().map_or_else(String::new, |why| format!("\n    no longer valid: {why}"));
        format!(
            "{} ({}, {} Hz, gain {}): {} by {how}, {:.1} dB({}) at {} cm; microphone at {} cm; 0 dB full scale is {:.1} dB SPL at {REPORTED_CM} cm; the sound wandered by {:.1} dB{state}",
            self.device.name,
            self.device.system,
            self.device.rate_hz,
            self.device.gain,
            self.date,
            self.known_db,
            self.weighting.letter(),
            self.known_at_cm,
            self.distance_cm,
            self.reported_offset_db(),
            self.spread_db
        )
    }
}

#[derive(Debug, Clone, Default, Serialize, Deserialize)]
struct Contents {
    #[serde(default)]
    calibration: Vec<Calibration>,
}

/// The file with all calibrations.
#[derive(Debug)]
pub struct CalibrationStore {
    path: PathBuf,
    contents: Contents,
}

impl CalibrationStore {
    /// Reads what is there; nothing is created.
    ///
    /// # Errors
    /// The file is there and cannot be read or understood. It is left as it is.
    pub fn open(folder: &Path) -> Result<Self, Failure> {
        let path = folder.join(FILE_NAME);
        let contents = match std::fs::read_to_string(&path) {
            Ok(text) => toml::from_str(&text).map_err(|why| {
                Failure::file(
                    &path,
                    format!("cannot be understood: {}. Correct it, or delete it and calibrate again", why.to_string().trim()),
                )
            })?,
            Err(error) if matches!(error.kind(), std::io::ErrorKind::NotFound | std::io::ErrorKind::NotADirectory) => Contents::default(),
            Err(error) => return Err(Failure::file(path, format!("cannot be read ({error}); make sure you may read it"))),
        };
        Ok(Self { path, contents })
    }

    /// All, in the order in which they were made.
    #[must_use]
    pub fn all(&self) -> &[Calibration] {
        &self.contents.calibration
    }

    /// That of a device, valid or not.
    #[must_use]
    pub fn of(&self, system: &str, name: &str) -> Option<&Calibration> {
        self.contents.calibration.iter().find(|c| c.device.system == system && c.device.name == name)
    }

    /// Keeps one in place of the device's earlier one.
    ///
    /// # Errors
    /// The file cannot be written.
    pub fn keep(&mut self, calibration: Calibration) -> Result<(), Failure> {
        let same = |c: &Calibration| c.device.system == calibration.device.system && c.device.name == calibration.device.name;
        self.contents.calibration.retain(|c| !same(c));
        self.contents.calibration.push(calibration);
        self.write()
    }

    /// Marks a device's calibration as no longer valid.
    ///
    /// # Errors
    /// The file cannot be written.
    pub fn void(&mut self, system: &str, name: &str, why: &str) -> Result<(), Failure> {
        for calibration in &mut self.contents.calibration {
            if calibration.device.system == system && calibration.device.name == name {
                calibration.void = Some(why.to_owned());
            }
        }
        self.write()
    }

    /// Removes every calibration of devices of that name; gives their number.
    ///
    /// # Errors
    /// The file cannot be written.
    pub fn forget(&mut self, name: &str) -> Result<usize, Failure> {
        let before = self.contents.calibration.len();
        self.contents.calibration.retain(|c| c.device.name != name);
        let gone = before - self.contents.calibration.len();
        if gone > 0 {
            self.write()?;
        }
        Ok(gone)
    }

    /// Beside it first, then in its place: a crash leaves the old file or the new one.
    fn write(&self) -> Result<(), Failure> {
        let failed = |why: String| {
            Failure::file(&self.path, format!("cannot be written ({why}); name a folder that you may write to with --data DIR"))
        };
        let text = toml::to_string(&self.contents).map_err(|why| failed(why.to_string()))?;
        let folder = self.path.parent().unwrap_or_else(|| Path::new("."));
        record::create_folder(folder)?;
        let new = self.path.with_extension("toml.new");
        let done = disk::private::create(&new)
            .and_then(|mut file| file.write_all(format!("{HEAD}{text}").as_bytes()).and_then(|()| file.sync_all()))
            .and_then(|()| std::fs::rename(&new, &self.path));
        done.map_err(|error| failed(error.to_string()))
    }
}

#[cfg(test)]
#[path = "tests/calibrations.rs"]
mod tests;
