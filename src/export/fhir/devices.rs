//! The program and the microphone.

use std::io::{self, Write};

use serde_json::{Map, Value, json};

use super::build::{narrative, note, plain, reference};
use super::bundle::FhirExport;
use crate::ids::uuid;
use crate::trial::Mic;
use model::LevelCalibration;

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

    /// The microphone, by its name and calibration, as far as they were kept.
    pub(super) fn microphone(&mut self, mic: Mic<'_>) -> io::Result<String> {
        let used = mic.used.map(|(system, name, rate_hz, gain)| format!("{name} ({system}, {rate_hz} Hz, gain {gain})"));
        let id = uuid(&["microphone", &self.patient, used.as_deref().unwrap_or_default(), mic.note.unwrap_or_default()]);
        if !self.knows(&id) {
            let notes: Vec<String> = used.iter().cloned().chain(mic.note.map(str::to_owned)).collect();
            let notes =
                if notes.is_empty() { vec!["Nothing was kept of this microphone; it was not calibrated.".to_owned()] } else { notes };
            let mut device = Map::new();
            device.insert("resourceType".into(), "Device".into());
            device.insert("id".into(), id.as_str().into());
            device.insert("text".into(), narrative(&format!("Microphone. {}", notes.join(". "))));
            if let Some((_, name, ..)) = mic.used {
                device.insert("deviceName".into(), json!([{"name": plain(name), "type": "user-friendly-name"}]));
            }
            device.insert("type".into(), self.codes.own("microphone"));
            device.insert("note".into(), notes.iter().map(|text| note(text)).collect::<Vec<_>>().into());
            self.write(Value::Object(device))?;
        }
        Ok(id)
    }

    /// The microphone as what measures levels, with the state of its calibration.
    pub(super) fn level_metric(&mut self, mic: Mic<'_>, calibration: LevelCalibration, software: &str) -> io::Result<String> {
        let (source, parent) = (self.microphone(mic)?, self.program(software)?);
        let id = uuid(&["level metric", &source, &parent, calibration.name()]);
        if !self.knows(&id) {
            let state = match calibration {
                LevelCalibration::None => "not-calibrated",
                LevelCalibration::Void => "calibration-required",
                _ => "calibrated",
            };
            let scale = if calibration.is_spl() { "dB SPL" } else { "dB re full scale, relative" };
            let metric: Value = json!({
                "resourceType": "DeviceMetric",
                "id": id,
                "text": narrative(&format!("Level of the voice, {scale}; calibration: {}", calibration.name())),
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
