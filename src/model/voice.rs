//! What the voice ear hears and measures, as plain data.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// One look at the voice, every 10 ms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VoiceFrame {
    /// Centre of the frame, s on the sample clock.
    pub t_s: f64,
    /// A-weighted level, dB re full scale (relative until calibrated).
    pub level_db: f64,
    /// Fundamental frequency, 60 to 800 Hz; 0 where unvoiced.
    pub f0_hz: f64,
    /// How periodic the frame is, 0 to 1.
    pub periodicity: f64,
    /// Decision: voiced or not.
    pub voiced: bool,
    /// The frame overlaps what we played ourselves.
    pub masked: bool,
}

/// A sustained vowel from onset to offset.
#[derive(Debug, Clone, PartialEq)]
pub struct Hold {
    /// First instant of voicing, s.
    pub onset_s: f64,
    /// Last instant of voicing, s.
    pub offset_s: f64,
    /// `offset_s - onset_s`, bridged breaks included.
    pub duration_s: f64,
    /// Time of the first frame at which the tracker was sure of the hold, s.
    pub sure_s: f64,
    /// Median F0 of the voiced frames, Hz.
    pub f0_median_hz: f64,
    /// 5th to 95th percentile of F0, semitones.
    pub f0_span_st: f64,
    /// Standard deviation of F0 about its median, semitones.
    pub f0_sd_st: f64,
    /// Energy mean of the level over voiced frames, dB re full scale, A-weighted.
    pub level_mean_db: f64,
    /// Regression slope of the level, dB/s; negative where the voice fades.
    pub level_slope_db_per_s: f64,
    /// Level at the start less level at the end along that slope, dB: the fall over the hold.
    pub level_fall_db: f64,
    /// Median of the level over the room's, dB; 99 where nothing was known of the room. Under [`LOUD_ROOM_DB`] the
    /// room was too loud to measure well.
    pub over_room_db: f64,
    /// Number of bridged breaks.
    pub breaks: u32,
    /// Seconds of the hold that overlap our own playback.
    pub masked_s: f64,
    /// Seconds of clipped frames in the hold.
    pub clipped_s: f64,
    /// What was worked out of it, by whoever has the time.
    pub quality: Option<VoiceQuality>,
}

/// A stretch of speech between pauses (reading aloud, syllables).
#[derive(Debug, Clone, PartialEq)]
pub struct Utterance {
    /// First instant of sound above the room, s.
    pub onset_s: f64,
    /// Last instant, s.
    pub offset_s: f64,
    /// `offset_s - onset_s`.
    pub duration_s: f64,
    /// Energy mean of the level, dB re full scale, A-weighted.
    pub level_mean_db: f64,
    /// Median F0 of voiced frames, Hz; 0 where none.
    pub f0_median_hz: f64,
    /// 5th to 95th percentile of F0, semitones; NaN where too little was voiced.
    pub f0_span_st: f64,
    /// Median F0 of the last fifth of the voiced frames over that of the rest, semitones: above 0 where the voice rises at the end.
    /// NaN where too little was voiced.
    pub f0_final_st: f64,
    /// Syllable nuclei counted.
    pub syllables: u32,
    /// Syllables per second, (count - 1) / time from first to last nucleus; 0 under two.
    pub syllable_rate_hz: f64,
    /// Coefficient of variation of the intervals between nuclei, percent; 0 under three.
    pub syllable_irregularity_pct: f64,
}

/// How a phrase was intoned and how fast it was said. A figure that could not be had is NaN (`null` in the journal).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Prosody {
    /// 5th to 95th percentile of F0, semitones.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub f0_span_st: f64,
    /// The last fifth of the voice over the rest, semitones: above 0 where it rises at the end.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub f0_final_st: f64,
    /// Syllables per second.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub syllable_rate_hz: f64,
}

impl Utterance {
    /// How it was intoned and how fast it was said.
    #[must_use]
    pub fn prosody(&self) -> Prosody {
        let rate_hz = self.syllable_rate_hz;
        Prosody {
            f0_span_st: self.f0_span_st,
            f0_final_st: self.f0_final_st,
            syllable_rate_hz: if rate_hz > 0.0 { rate_hz } else { f64::NAN },
        }
    }
}

/// What the voice ear is to look for now. Frames are given in any case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum VoiceTask {
    /// Frames only.
    Idle,
    /// Sustained vowels.
    Hold(HoldSettings),
    /// Stretches of speech, ended by `end_pause_s` of quiet.
    Speech { end_pause_s: f64 },
}

/// How a hold is told from everything else.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoldSettings {
    /// Voicing must last this long before it is a hold, s. Shorter things (cough, word) are none.
    pub min_s: f64,
    /// Breaks up to this long do not end the hold, s.
    pub max_break_s: f64,
    /// True where the pitch is meant to move (glides): the steadiness test is eased.
    pub glide: bool,
}

/// A voice less than this over the room cannot be measured well, dB: the room adds 0.4 dB to its level at 10 dB, and
/// onsets and offsets drown from there on.
pub const LOUD_ROOM_DB: f64 = 10.0;

/// What can be said of a voice. A figure that could not be had is NaN (`null` in the journal).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct VoiceQuality {
    /// The part that was judged, s on the sample clock.
    pub from_s: f64,
    pub to_s: f64,
    /// Smoothed cepstral peak prominence, dB.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub cpps_db: f64,
    /// Mean difference of neighbouring periods over the mean period, percent.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub jitter_local_pct: f64,
    /// The same against the mean of three, percent.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub jitter_rap_pct: f64,
    /// The same against the mean of five, percent.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub jitter_ppq5_pct: f64,
    /// Mean difference of the amplitudes of neighbouring periods over the mean amplitude, percent.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub shimmer_local_pct: f64,
    /// Mean size of 20 lg of the ratio of neighbouring amplitudes, dB.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub shimmer_local_db: f64,
    /// Against the mean of three, percent.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub shimmer_apq3_pct: f64,
    /// Against the mean of eleven, percent.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub shimmer_apq11_pct: f64,
    /// Harmonics to noise, dB, by cross-correlation.
    #[serde(with = "crate::measured")]
    #[schemars(with = "Option<f64>")]
    pub hnr_db: f64,
}
