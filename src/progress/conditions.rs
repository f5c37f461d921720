//! What a trial was made under.

use model::{Fact, FrequencyWeighting, LevelCalibration, Measure, TimeWeighting};
use serde::Serialize;

/// The microphone of a practice, as the sound system knows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Microphone {
    /// The sound system, "PulseAudio".
    pub system: String,
    /// Its name there.
    pub name: String,
    pub rate_hz: u32,
    /// Its gain as the sound system tells it, "unknown" where it does not.
    pub gain: String,
}

/// What a trial was made under.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Conditions {
    /// Frequency weighting of the level, "A"; none where no level was taken.
    pub level_weighting: Option<FrequencyWeighting>,
    /// Time weighting of the level, "energy-mean".
    pub time_weighting: Option<TimeWeighting>,
    /// Distance from the mouth for which the level holds, cm; none where nobody said.
    pub distance_cm: Option<f64>,
    pub calibration: LevelCalibration,
    /// The calibration in words, as it stood when the practice began; two that differ are two calibrations.
    pub calibration_note: Option<String>,
    /// None in practices of before the microphone was kept.
    pub microphone: Option<Microphone>,
    /// The microphone changed its own volume.
    pub auto_gain: bool,
    /// Seconds of it that were clipped.
    pub clipped_s: f64,
    /// Seconds of it under the tool's own voice.
    pub masked_s: f64,
    /// Breaks in the voice that were bridged.
    pub breaks: u32,
    /// The room was so loud that the figures are doubtful.
    pub in_noise: bool,
    /// How far it stood over the room where that was too little, dB.
    pub over_room_db: Option<f64>,
}

impl Conditions {
    /// Those that a trial's own fact tells, beside what is known of the microphone of its part.
    #[must_use]
    pub fn of(fact: &Fact, calibration_note: Option<&str>, microphone: Option<&Microphone>) -> Self {
        let level = fact.level();
        let terms = level.and_then(|level| level.terms);
        Self {
            level_weighting: level.map(|level| level.weighting.clone()),
            time_weighting: terms.map(|terms| terms.time_weighting.clone()),
            distance_cm: terms.and_then(|terms| terms.distance_cm),
            calibration: terms.map(|terms| terms.calibration).unwrap_or_default(),
            calibration_note: calibration_note.map(str::to_owned),
            microphone: microphone.cloned(),
            auto_gain: terms.is_some_and(|terms| terms.auto_gain),
            clipped_s: terms.map_or(0.0, |terms| terms.clipped_s),
            masked_s: Measure::MaskedS.measured(fact).unwrap_or(0.0),
            breaks: if let Fact::HoldMeasured { breaks, .. } = fact { *breaks } else { 0 },
            in_noise: false,
            over_room_db: None,
        }
    }
}
