//! One attempt of a measured exercise, with the conditions it was made under.

use jiff::{ZonedDateTime, civil::Date};
use model::{LevelCalibration, Position};
use serde::Serialize;

/// What can be followed over time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Measure {
    /// From voice onset to offset, s.
    HoldS,
    /// Energy mean of the level over a hold, dB; what it refers to stands in the conditions.
    LevelDb,
    /// Median of the fundamental frequency of a hold, Hz.
    F0MedianHz,
    /// 5th to 95th percentile of the fundamental frequency within a hold or glide, semitones.
    F0SpanSt,
    /// Standard deviation of the fundamental frequency about its median within a hold, semitones.
    F0SdSt,
    /// Regression slope of the level over a hold, dB/s.
    LevelSlopeDbPerS,
    /// Energy mean of the level over a phrase read aloud, dB.
    PhraseLevelDb,
    /// Median of the fundamental frequency of a phrase read aloud, Hz.
    PhraseF0Hz,
    /// Rapid syllables, 1/s.
    SyllableRateHz,
    /// Coefficient of variation of the intervals between rapid syllables, %.
    SyllableIrregularityPct,
    /// Members of a category named in the time given, a count.
    NamedCount,
    /// Smoothed cepstral peak prominence, dB. A quality figure.
    CppsDb,
    /// Harmonics to noise, dB. A quality figure.
    HnrDb,
    /// Jitter (local), %. A quality figure.
    JitterPct,
    /// Shimmer (local), %. A quality figure.
    ShimmerPct,
}

impl Measure {
    /// Every measure, in the order in which they are shown.
    pub const ALL: [Self; 15] = [
        Self::HoldS,
        Self::LevelDb,
        Self::F0MedianHz,
        Self::F0SpanSt,
        Self::F0SdSt,
        Self::LevelSlopeDbPerS,
        Self::PhraseLevelDb,
        Self::PhraseF0Hz,
        Self::SyllableRateHz,
        Self::SyllableIrregularityPct,
        Self::NamedCount,
        Self::CppsDb,
        Self::HnrDb,
        Self::JitterPct,
        Self::ShimmerPct,
    ];

    /// Kebab-case name, as it is written in exports, "hold-s".
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::HoldS => "hold-s",
            Self::LevelDb => "level-db",
            Self::F0MedianHz => "f0-median-hz",
            Self::F0SpanSt => "f0-span-st",
            Self::F0SdSt => "f0-sd-st",
            Self::LevelSlopeDbPerS => "level-slope-db-per-s",
            Self::PhraseLevelDb => "phrase-level-db",
            Self::PhraseF0Hz => "phrase-f0-hz",
            Self::SyllableRateHz => "syllable-rate-hz",
            Self::SyllableIrregularityPct => "syllable-irregularity-pct",
            Self::NamedCount => "named-count",
            Self::CppsDb => "cpps-db",
            Self::HnrDb => "hnr-db",
            Self::JitterPct => "jitter-pct",
            Self::ShimmerPct => "shimmer-pct",
        }
    }

    /// The unit as it is printed; empty for a count.
    #[must_use]
    pub fn unit(self) -> &'static str {
        match self {
            Self::HoldS => "s",
            Self::LevelDb | Self::PhraseLevelDb | Self::CppsDb | Self::HnrDb => "dB",
            Self::F0MedianHz | Self::PhraseF0Hz => "Hz",
            Self::F0SpanSt | Self::F0SdSt => "st",
            Self::LevelSlopeDbPerS => "dB/s",
            Self::SyllableRateHz => "/s",
            Self::SyllableIrregularityPct | Self::JitterPct | Self::ShimmerPct => "%",
            Self::NamedCount => "",
        }
    }

    /// Decimals that the measurement bears when it is printed.
    #[must_use]
    pub fn decimals(self) -> usize {
        match self {
            Self::F0MedianHz | Self::PhraseF0Hz | Self::NamedCount => 0,
            Self::F0SdSt | Self::LevelSlopeDbPerS | Self::JitterPct | Self::ShimmerPct => 2,
            _ => 1,
        }
    }

    /// Its values mean something only beside others on the same scale of levels.
    #[must_use]
    pub fn is_level(self) -> bool {
        matches!(self, Self::LevelDb | Self::PhraseLevelDb)
    }

    /// A voice quality figure, for the clinician's page alone.
    #[must_use]
    pub fn is_quality(self) -> bool {
        matches!(self, Self::CppsDb | Self::HnrDb | Self::JitterPct | Self::ShimmerPct)
    }
}

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
    pub level_weighting: Option<String>,
    /// Time weighting of the level, "energy-mean".
    pub time_weighting: Option<String>,
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

/// One measured value of a trial. Always finite.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Value {
    pub measure: Measure,
    pub value: f64,
    /// Why it stands in no figure; none where it counts.
    pub discard: Option<Discard>,
}

/// One attempt of a measured exercise.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Trial {
    /// When it was made, in the zone of its part.
    pub when: ZonedDateTime,
    /// The client's civil day: the day on which its part of the practice began, so that a practice over midnight stays one.
    pub day: Date,
    /// The practice's number in this record, and the entry's in it.
    pub session: i64,
    pub seq: i64,
    pub exercise: String,
    pub position: Option<Position>,
    /// What was measured; what could not be is not here.
    pub values: Vec<Value>,
    pub conditions: Conditions,
    /// False where a command cut it off.
    pub complete: bool,
    /// How long it took, s.
    pub duration_s: f64,
    /// Its practice's date cannot be believed.
    pub misdated: bool,
}

impl Trial {
    /// The value of a measure, whether it counts or not.
    #[must_use]
    pub fn value(&self, measure: Measure) -> Option<&Value> {
        self.values.iter().find(|value| value.measure == measure)
    }

    /// The value of a measure, if it counts.
    #[must_use]
    pub fn counted(&self, measure: Measure) -> Option<f64> {
        self.value(measure).filter(|value| value.discard.is_none()).map(|value| value.value)
    }
}
