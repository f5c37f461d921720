//! What a level refers to.

use crate::reason::{FrequencyWeighting, TimeWeighting};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What gave a level its scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum LevelCalibration {
    /// Nothing: the level is dB re full scale, relative.
    #[default]
    None,
    /// A calibration that no longer holds: relative.
    Void,
    /// A sound level meter: dB SPL.
    Meter,
    /// A source of known level: dB SPL.
    Source,
    /// A phone's number: dB SPL, rough.
    Rough,
}

impl LevelCalibration {
    /// Every state.
    pub const ALL: [Self; 5] = [Self::None, Self::Void, Self::Meter, Self::Source, Self::Rough];

    /// The word for it in the journal and in every export.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::None => "none",
            Self::Void => "void",
            Self::Meter => "meter",
            Self::Source => "source",
            Self::Rough => "rough",
        }
    }

    /// True where levels are dB SPL.
    #[must_use]
    pub fn is_spl(self) -> bool {
        matches!(self, Self::Meter | Self::Source | Self::Rough)
    }
}

/// What a level refers to, besides its weighting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct LevelTerms {
    /// "energy-mean": the equivalent level over the voiced frames, without Fast or Slow.
    pub time_weighting: TimeWeighting,
    /// Distance from the mouth for which the level holds, cm: 30 where calibrated; otherwise where the microphone stands, and
    /// `null` where nobody said.
    pub distance_cm: Option<f64>,
    pub calibration: LevelCalibration,
    /// The microphone changes its own volume: the level can be compared with nothing.
    pub auto_gain: bool,
    /// Seconds of it that were clipped; the true level is higher.
    pub clipped_s: f64,
}

impl Default for LevelTerms {
    fn default() -> Self {
        Self {
            time_weighting: TimeWeighting::EnergyMean,
            distance_cm: None,
            calibration: LevelCalibration::None,
            auto_gain: false,
            clipped_s: 0.0,
        }
    }
}

/// The level of a trial with all that it refers to, as it stands in its fact.
#[derive(Debug, Clone, Copy)]
pub struct LevelOf<'a> {
    pub mean_db: f64,
    pub weighting: &'a FrequencyWeighting,
    /// As an older version said it, before there were terms.
    pub calibrated: bool,
    /// None in journals of before they were kept.
    pub terms: Option<&'a LevelTerms>,
}
