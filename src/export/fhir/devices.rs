//! The program and the microphone.

use std::io::{self, Write};

use serde_json::{Value, json};

use super::build::{narrative, plain, reference};
use super::bundle::FhirExport;
use crate::export::ids::uuid;
use crate::export::trial::{calibrated, calibration_name};
use crate::session::LevelCalibration;

impl<W: Write> FhirExport<'_, W> {
    /// The program that led a practice, "tidecount 0.1.0".
    pub(super) fn program(&mut self, software: &str) -> io::Result<String> {
        let id = uuid(&["program", software]);
        if !self.knows(&id) {
            let (name, version) = software.rsplit_once(' ').unwrap_or((software, "unknown"));
            let device = json!({
                "resourceType": "Device",
                "id": id,
                "text": narrative(&format!("The program {software}")),
                "deviceName": [{"name": plain(name), "type": "model-name"}],
                "type": self.codes.own("program"),
                "version": [{"value": plain(version)}],
            });
            self.write(device)?;
        }
        Ok(id)
    }

    /// The microphone, by what was noted of it; its name is known only where it was calibrated.
    pub(super) fn microphone(&mut self, noted: Option<&str>) -> io::Result<String> {
        let id = uuid(&["microphone", &self.patient, noted.unwrap_or_default()]);
        if !self.knows(&id) {
            let note = noted.unwrap_or("Nothing was noted of this microphone: it was not calibrated.");
            let device = json!({
                "resourceType": "Device",
                "id": id,
                "text": narrative(&format!("Microphone. {note}")),
                "type": self.codes.own("microphone"),
                "note": [{"text": plain(note)}],
            });
            self.write(device)?;
        }
        Ok(id)
    }

    /// The microphone as what measures levels, with the state of its calibration.
    pub(super) fn level_metric(&mut self, noted: Option<&str>, calibration: LevelCalibration, software: &str) -> io::Result<String> {
        let (source, parent) = (self.microphone(noted)?, self.program(software)?);
        let id = uuid(&["level metric", &source, &parent, calibration_name(calibration)]);
        if !self.knows(&id) {
            let state = match calibration {
                LevelCalibration::None => "not-calibrated",
                LevelCalibration::Void => "calibration-required",
                _ => "calibrated",
            };
            let scale = if calibrated(calibration) { "dB SPL" } else { "dB re full scale, relative" };
            let metric: Value = json!({
                "resourceType": "DeviceMetric",
                "id": id,
                "text": narrative(&format!("Level of the voice, {scale}; calibration: {}", calibration_name(calibration))),
                "type": self.codes.own("level-metric"),
                "source": reference(&source),
                "parent": reference(&parent),
                "category": "measurement",
                "calibration": [{"type": "offset", "state": state}],
            });
            self.write(metric)?;
        }
        Ok(id)
    }
}
