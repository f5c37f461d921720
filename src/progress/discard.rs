//! Why a value that was taken stands in no figure.

use super::conditions::Conditions;
use model::Measure;
use serde::Serialize;

/// A hold of which the tool's own voice covered more than this share is not measured; own choice, no source.
const MASKED_SHARE: f64 = 0.25;

/// Why a value that was taken stands in no figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Discard {
    /// A command cut the trial off: it has no whole length.
    CutOff,
    /// The voice hardly stood over the room.
    InNoise,
    /// The tool's own voice lay over much of it.
    Masked,
    /// The microphone changed its own volume: the level compares with nothing.
    AutoGain,
    /// Clipped: the true level is higher, nobody knows by how much.
    Clipped,
    /// The clock was wrong: nobody knows when it was.
    Misdated,
}

impl Discard {
    /// Every reason.
    pub const ALL: [Self; 6] = [Self::CutOff, Self::InNoise, Self::Masked, Self::AutoGain, Self::Clipped, Self::Misdated];

    /// Why a value of this measure stands in no figure; none where it counts. A value that the room, the tool's voice or a
    /// command spoilt counts in no measure; what spoils only the level leaves the others alone.
    #[must_use]
    pub fn of(measure: Measure, conditions: &Conditions, complete: bool, duration_s: f64) -> Option<Self> {
        let of_level = measure.is_level() || measure == Measure::LevelSlopeDbPerS;
        if !complete {
            Some(Self::CutOff)
        } else if conditions.in_noise {
            Some(Self::InNoise)
        } else if conditions.masked_s > MASKED_SHARE * duration_s {
            Some(Self::Masked)
        } else if of_level && conditions.auto_gain {
            Some(Self::AutoGain)
        } else if of_level && conditions.clipped_s > 0.0 {
            Some(Self::Clipped)
        } else {
            None
        }
    }

    /// The word for it in every export.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::CutOff => "cut-off",
            Self::InNoise => "in-noise",
            Self::Masked => "masked",
            Self::AutoGain => "auto-gain",
            Self::Clipped => "clipped",
            Self::Misdated => "misdated",
        }
    }

    /// A few plain words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::CutOff => "cut off by a command",
            Self::InNoise => "the room was too loud",
            Self::Masked => "the tool spoke over it",
            Self::AutoGain => "the microphone changed its own volume",
            Self::Clipped => "clipped",
            Self::Misdated => "the clock was wrong",
        }
    }
}
