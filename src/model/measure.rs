//! Every measured figure, declared once: of which trials, its field in the journal, unit and meaning.
//!
//! What is written anywhere of a figure is read from here: the progress arithmetic and the clinic's database by [`Measure::of`], the
//! tables by column and meaning, FHIR by term. `tests/measure.rs` fails for a figure of the journal that is not declared. How one is
//! added: DEVELOPERS.md, "A new measure".

use crate::fact::Fact;
use crate::trial::TrialKind;
use crate::unit::Unit;
use serde::Serialize;

/// A term of the code system that goes with the FHIR export.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Term {
    pub code: &'static str,
    pub display: &'static str,
    pub definition: &'static str,
}

/// All that is said of a measure.
#[derive(Debug, Clone, Copy)]
pub struct Declared {
    /// Kebab-case name, as it is written in exports, "hold-s".
    pub id: &'static str,
    /// The trials that have it.
    pub kind: TrialKind,
    /// Its field in the journal.
    pub field: &'static str,
    pub unit: Unit,
    /// Decimals that the measurement bears when it is printed.
    pub decimals: usize,
    /// Its column in the table of the trials.
    pub column: &'static str,
    /// What it is, for the data dictionary.
    pub meaning: &'static str,
    pub term: Term,
    of: fn(&Fact) -> Option<f64>,
}

macro_rules! measures {
    ($($(#[$about:meta])* $Measure:ident $id:literal of $kind:ident: $field:literal, $unit:ident, $decimals:literal;
        column $column:literal: $meaning:literal; term $code:literal, $display:literal: $definition:literal;
        $Fact:ident { $($part:ident),+ } => $value:expr;)+) => {
        /// What is measured of a trial.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
        pub enum Measure {
            $($(#[$about])* #[serde(rename = $id)] $Measure,)+
        }

        impl Measure {
            /// Every measure, those of one kind of trial together.
            pub const ALL: &[Self] = &[$(Self::$Measure,)+];

            /// All that is said of it.
            #[must_use]
            pub const fn declared(self) -> &'static Declared {
                match self {
                    $(Self::$Measure => &Declared {
                        id: $id,
                        kind: TrialKind::$kind,
                        field: $field,
                        unit: Unit::$unit,
                        decimals: $decimals,
                        column: $column,
                        meaning: $meaning,
                        term: Term { code: $code, display: $display, definition: $definition },
                        of: |fact| match fact {
                            Fact::$Fact { $($part,)+ .. } => $value,
                            _ => None,
                        },
                    },)+
                }
            }
        }
    };
}

measures! {
    /// From voice onset to offset, s.
    HoldS "hold-s" of Hold: "duration_s", Second, 1;
        column "duration_s": "Time from voice onset to voice offset";
        term "hold-duration", "Duration of a held sound": "Time from voice onset to voice offset of one trial";
        HoldMeasured { duration_s } => Some(*duration_s);
    /// Median of the fundamental frequency of a hold, Hz.
    F0MedianHz "f0-median-hz" of Hold: "f0_median_hz", Hertz, 0;
        column "f0_median_hz": "Median fundamental frequency";
        term "f0-median", "Median fundamental frequency": "Median fundamental frequency of the trial";
        HoldMeasured { f0_median_hz } => Some(positive(*f0_median_hz));
    /// 5th to 95th percentile of the fundamental frequency within a hold or glide, semitones.
    F0SpanSt "f0-span-st" of Hold: "f0_span_st", Semitone, 1;
        column "f0_span_st": "Span of the fundamental frequency within the trial";
        term "f0-span", "Span of fundamental frequency": "Span of the fundamental frequency within the trial";
        HoldMeasured { f0_median_hz, f0_span_st } => (*f0_median_hz > 0.0).then_some(*f0_span_st);
    /// Standard deviation of the fundamental frequency about its median within a hold, semitones.
    F0SdSt "f0-sd-st" of Hold: "f0_sd_st", Semitone, 2;
        column "f0_sd_st": "Standard deviation of the fundamental frequency about its median";
        term "f0-sd", "Standard deviation of fundamental frequency":
            "Standard deviation of the fundamental frequency about its median";
        HoldMeasured { f0_median_hz, f0_sd_st } => f0_sd_st.filter(|_| *f0_median_hz > 0.0);
    /// Energy mean of the level over a hold, dB; what it refers to stands in the conditions.
    LevelDb "level-db" of Hold: "level_mean_db", Decibel, 1;
        column "level_mean_db_fs": "Mean level of the trial, on the scale that its terms tell";
        term "mean-level", "Mean level":
            "Mean sound pressure level of the voice by a calibrated microphone, at the stated distance and with the stated weightings";
        HoldMeasured { level_mean_db } => Some(*level_mean_db);
    /// Level at the beginning of a hold less that at its end, along its slope, dB.
    LevelFallDb "level-fall-db" of Hold: "level_fall_db", Decibel, 1;
        column "level_fall_db": "Fall of the level from the beginning to the end of the trial";
        term "level-fall", "Fall of level": "Fall of the level from the beginning to the end of the trial";
        HoldMeasured { level_fall_db } => Some(*level_fall_db);
    /// Regression slope of the level over a hold, dB/s.
    LevelSlopeDbPerS "level-slope-db-per-s" of Hold: "level_slope_db_per_s", DecibelPerSecond, 2;
        column "level_slope_db_per_s": "Slope of the level over the trial; negative where the voice fades";
        term "level-slope", "Slope of level": "Slope of the level over the trial";
        HoldMeasured { level_slope_db_per_s } => *level_slope_db_per_s;
    /// From step to step of a ladder of loudness, dB, in the direction that was asked for.
    StepDb "step-db" of Hold: "step_db", Decibel, 1;
        column "step_db": "Change of level from the step before, in the direction that was asked for";
        term "loudness-step", "Step of loudness": "Change of level from the step before, in the direction that was asked for";
        HoldMeasured { climb } => climb.map(|climb| climb.step_db);
    /// From step to step of a ladder of pitch, semitones, in the direction that was asked for.
    StepSt "step-st" of Hold: "step_st", Semitone, 1;
        column "step_st": "Change of pitch from the step before, in the direction that was asked for";
        term "pitch-step", "Step of pitch": "Change of fundamental frequency from the step before, in the direction that was asked for";
        HoldMeasured { climb } => climb.map(|climb| climb.step_st);
    /// Breaks of a hold that were bridged, a count.
    Breaks "breaks" of Hold: "breaks", Count, 0;
        column "breaks": "Short breaks of the voice that did not end the hold";
        term "breaks", "Breaks": "Short breaks of the voice that did not end the trial";
        HoldMeasured { breaks } => Some(f64::from(*breaks));
    /// Seconds of a hold under the tool's own voice.
    MaskedS "masked-s" of Hold: "masked_s", Second, 1;
        column "masked_s": "Time of the trial that overlapped the tool's own voice and was not measured";
        term "masked-time", "Time masked": "Time of the trial that overlapped the program's own voice and was not measured";
        HoldMeasured { masked_s } => Some(*masked_s);
    /// Smoothed cepstral peak prominence, dB. A quality figure.
    CppsDb "cpps-db" of Hold: "cpps_db", Decibel, 1;
        column "cpps_db": "Smoothed cepstral peak prominence; a louder voice alone raises it";
        term "cpps", "Smoothed cepstral peak prominence": "Smoothed cepstral peak prominence; a louder voice alone raises it";
        HoldMeasured { quality } => quality.map(|quality| quality.cpps_db);
    /// Jitter (local), %. A quality figure.
    JitterPct "jitter-pct" of Hold: "jitter_local_pct", Percent, 2;
        column "jitter_local_pct": "Jitter, local";
        term "jitter-local", "Jitter, local": "Mean difference of neighbouring periods over the mean period";
        HoldMeasured { quality } => quality.map(|quality| quality.jitter_local_pct);
    /// Jitter (relative average perturbation), %. A quality figure.
    JitterRapPct "jitter-rap-pct" of Hold: "jitter_rap_pct", Percent, 2;
        column "jitter_rap_pct": "Jitter, relative average perturbation over three periods";
        term "jitter-rap", "Jitter, rap": "Relative average perturbation over three periods";
        HoldMeasured { quality } => quality.map(|quality| quality.jitter_rap_pct);
    /// Jitter (five-point), %. A quality figure.
    JitterPpq5Pct "jitter-ppq5-pct" of Hold: "jitter_ppq5_pct", Percent, 2;
        column "jitter_ppq5_pct": "Jitter, five-point period perturbation quotient";
        term "jitter-ppq5", "Jitter, ppq5": "Five-point period perturbation quotient";
        HoldMeasured { quality } => quality.map(|quality| quality.jitter_ppq5_pct);
    /// Shimmer (local), %. A quality figure.
    ShimmerPct "shimmer-pct" of Hold: "shimmer_local_pct", Percent, 2;
        column "shimmer_local_pct": "Shimmer, local";
        term "shimmer-local", "Shimmer, local": "Mean difference of the amplitudes of neighbouring periods over the mean amplitude";
        HoldMeasured { quality } => quality.map(|quality| quality.shimmer_local_pct);
    /// Shimmer (local), dB. A quality figure.
    ShimmerDb "shimmer-db" of Hold: "shimmer_local_db", Decibel, 2;
        column "shimmer_local_db": "Shimmer, local, in decibels";
        term "shimmer-local-db", "Shimmer, local, dB": "Mean size of the ratio of neighbouring amplitudes in decibels";
        HoldMeasured { quality } => quality.map(|quality| quality.shimmer_local_db);
    /// Shimmer (three-point), %. A quality figure.
    ShimmerApq3Pct "shimmer-apq3-pct" of Hold: "shimmer_apq3_pct", Percent, 2;
        column "shimmer_apq3_pct": "Shimmer, three-point amplitude perturbation quotient";
        term "shimmer-apq3", "Shimmer, apq3": "Three-point amplitude perturbation quotient";
        HoldMeasured { quality } => quality.map(|quality| quality.shimmer_apq3_pct);
    /// Shimmer (eleven-point), %. A quality figure.
    ShimmerApq11Pct "shimmer-apq11-pct" of Hold: "shimmer_apq11_pct", Percent, 2;
        column "shimmer_apq11_pct": "Shimmer, eleven-point amplitude perturbation quotient";
        term "shimmer-apq11", "Shimmer, apq11": "Eleven-point amplitude perturbation quotient";
        HoldMeasured { quality } => quality.map(|quality| quality.shimmer_apq11_pct);
    /// Harmonics to noise, dB. A quality figure.
    HnrDb "hnr-db" of Hold: "hnr_db", Decibel, 1;
        column "hnr_db": "Harmonics-to-noise ratio";
        term "hnr", "Harmonics-to-noise ratio": "Harmonics-to-noise ratio";
        HoldMeasured { quality } => quality.map(|quality| quality.hnr_db);
    /// Time for which a posture was held, s.
    PostureS "posture-s" of Posture: "duration_s", Second, 1;
        column "duration_s": "Time for which the posture was held";
        term "posture-duration", "Duration of a held posture": "Time for which a posture was held, counted aloud by the program";
        PostureHeld { duration_s } => Some(*duration_s);
    /// Time for which a posture should have been held, s.
    PrescribedS "prescribed-s" of Posture: "prescribed_s", Second, 1;
        column "prescribed_s": "The prescribed duration of a posture";
        term "prescribed-duration", "Prescribed duration": "The prescribed duration of the posture";
        PostureHeld { prescribed_s } => Some(*prescribed_s);
    /// Time of a paced cycle, s.
    RoundS "round-s" of Round: "duration_s", Second, 1;
        column "duration_s": "Time of one paced cycle";
        term "round-duration", "Duration of a paced round": "Time of one paced cycle of counts";
        RoundPaced { duration_s } => Some(*duration_s);
    /// Time from count to count, s.
    BeatS "beat-s" of Round: "beat_s", Second, 1;
        column "beat_s": "Seconds from count to count of a paced round";
        term "beat", "Beat": "Time from count to count";
        RoundPaced { beat_s } => Some(*beat_s);
    /// Time of a self-paced repetition, s.
    RepetitionS "repetition-s" of Repetition: "duration_s", Second, 1;
        column "duration_s": "Time of one self-paced repetition";
        term "repetition-duration", "Duration of a repetition": "Time of one self-paced repetition";
        RepetitionDone { duration_s } => Some(*duration_s);
    /// Time for which a phrase was read, s.
    PhraseS "phrase-s" of Phrase: "duration_s", Second, 1;
        column "duration_s": "Time for which a phrase was read aloud";
        term "phrase-duration", "Duration of a phrase": "Time for which a phrase was read aloud";
        PhraseRead { duration_s } => Some(*duration_s);
    /// Median of the fundamental frequency of a phrase read aloud, Hz.
    PhraseF0Hz "phrase-f0-hz" of Phrase: "f0_median_hz", Hertz, 0;
        column "f0_median_hz": "Median fundamental frequency";
        term "f0-median", "Median fundamental frequency": "Median fundamental frequency of the trial";
        PhraseRead { f0_median_hz } => Some(positive(*f0_median_hz));
    /// 5th to 95th percentile of the fundamental frequency within a phrase read aloud, semitones.
    PhraseSpanSt "phrase-span-st" of Phrase: "f0_span_st", Semitone, 1;
        column "f0_span_st": "Span of the fundamental frequency within the trial";
        term "f0-span", "Span of fundamental frequency": "Span of the fundamental frequency within the trial";
        PhraseRead { prosody } => prosody.map(|prosody| prosody.f0_span_st);
    /// The last fifth of the voice of a phrase over the rest, semitones: above 0 where it rises at the end.
    PhraseFinalSt "phrase-final-st" of Phrase: "f0_final_st", Semitone, 1;
        column "f0_final_st": "Fundamental frequency of the last fifth of the voice over that of the rest";
        term "f0-final", "Final movement of pitch": "Fundamental frequency of the last fifth of the voice over that of the rest";
        PhraseRead { prosody } => prosody.map(|prosody| prosody.f0_final_st);
    /// Syllables of a phrase read aloud, 1/s.
    PhraseRateHz "phrase-rate-hz" of Phrase: "syllable_rate_hz", SyllablePerSecond, 1;
        column "phrase_rate_per_s": "Syllables per second of a phrase read aloud";
        term "speech-rate", "Speech rate": "Syllables per second of a phrase read aloud";
        PhraseRead { prosody } => prosody.map(|prosody| prosody.syllable_rate_hz);
    /// Energy mean of the level over a phrase read aloud, dB.
    PhraseLevelDb "phrase-level-db" of Phrase: "level_mean_db", Decibel, 1;
        column "level_mean_db_fs": "Mean level of the trial, on the scale that its terms tell";
        term "mean-level", "Mean level":
            "Mean sound pressure level of the voice by a calibrated microphone, at the stated distance and with the stated weightings";
        PhraseRead { level_mean_db } => Some(*level_mean_db);
    /// Energy mean of the level over a talk or a passage, without its pauses, dB.
    TalkLevelDb "talk-level-db" of Talk: "level_mean_db", Decibel, 1;
        column "level_mean_db_fs": "Mean level of the trial, on the scale that its terms tell";
        term "mean-level", "Mean level":
            "Mean sound pressure level of the voice by a calibrated microphone, at the stated distance and with the stated weightings";
        Talked { level_mean_db } => Some(*level_mean_db);
    /// Median of the fundamental frequency of a talk or a passage, Hz.
    TalkF0Hz "talk-f0-hz" of Talk: "f0_median_hz", Hertz, 0;
        column "f0_median_hz": "Median fundamental frequency";
        term "f0-median", "Median fundamental frequency": "Median fundamental frequency of the trial";
        Talked { f0_median_hz } => Some(positive(*f0_median_hz));
    /// Time from the first word of a talk or a passage to the last, s.
    TalkS "talk-s" of Talk: "duration_s", Second, 1;
        column "duration_s": "Time from the first word to the last";
        term "talk-duration", "Duration of talk": "Time from the first word to the last of a talk or of a passage read aloud";
        Talked { duration_s } => Some(*duration_s);
    /// That time without the pauses, s.
    SpeakingS "speaking-s" of Talk: "speaking_s", Second, 1;
        column "speaking_s": "Time of a talk or a passage without its pauses of 0.25 s and more";
        term "speaking-time", "Speaking time": "Time of a talk or a passage without its pauses of 0.25 s and more";
        Talked { speaking_s } => Some(*speaking_s);
    /// Share of the pauses in a talk or a passage, %.
    PauseSharePct "pause-share-pct" of Talk: "pause_share_pct", Percent, 0;
        column "pause_share_pct": "Share of the time of a talk or a passage that is pauses of 0.25 s and more";
        term "pause-share", "Share of pauses": "Share of the time of a talk or a passage that is pauses of 0.25 s and more";
        Talked { pause_share_pct } => Some(*pause_share_pct);
    /// Pauses in a talk or a passage, a count.
    Pauses "pauses" of Talk: "pauses", Count, 0;
        column "pauses": "Pauses of 0.25 s and more in a talk or a passage";
        term "pauses", "Pauses": "Pauses of 0.25 s and more in a talk or a passage";
        Talked { pauses } => Some(f64::from(*pauses));
    /// Rapid syllables, 1/s.
    SyllableRateHz "syllable-rate-hz" of Syllables: "rate_hz", SyllablePerSecond, 1;
        column "syllable_rate_per_s": "Syllables per second";
        term "syllable-rate", "Syllable rate": "Syllables repeated as fast as possible, per second";
        SyllablesCounted { rate_hz } => Some(positive(*rate_hz));
    /// Rapid syllables, a count.
    SyllableCount "syllable-count" of Syllables: "syllables", Count, 0;
        column "syllables": "Syllables counted";
        term "syllables", "Syllables": "Syllables counted";
        SyllablesCounted { syllables } => Some(f64::from(*syllables));
    /// Time of rapid syllables, s.
    SyllablesS "syllables-s" of Syllables: "duration_s", Second, 1;
        column "duration_s": "Duration of the trial";
        term "duration", "Duration": "Duration of the trial";
        SyllablesCounted { duration_s } => Some(*duration_s);
    /// Coefficient of variation of the intervals between rapid syllables, %.
    SyllableIrregularityPct "syllable-irregularity-pct" of Syllables: "irregularity_pct", Percent, 1;
        column "syllable_irregularity_pct": "Coefficient of variation of the intervals between syllables";
        term "syllable-irregularity", "Irregularity of syllables": "Coefficient of variation of the intervals between syllables";
        SyllablesCounted { irregularity_pct } => Some(positive(*irregularity_pct));
    /// Time from a word question to its answer, s.
    ThinkingS "thinking-s" of Question: "duration_s", Second, 1;
        column "duration_s": "Time from the question to the answer";
        term "thinking-time", "Time of thinking": "Time from the question to the answer";
        QuestionAnswered { duration_s } => Some(*duration_s);
    /// Members of a category named in the time given, a count.
    NamedCount "named-count" of Category: "named", Count, 0;
        column "named_count": "How many they are";
        term "category-count", "Members of a category named": "How many members of a category were named and heard";
        CategoryNamed { named } => Some(named.len() as f64);
    /// Time given for naming members of a category, s.
    CategoryS "category-s" of Category: "duration_s", Second, 1;
        column "duration_s": "Duration of the trial";
        term "duration", "Duration": "Duration of the trial";
        CategoryNamed { duration_s } => Some(*duration_s);
}

/// A figure that is written as 0 where it could not be had.
fn positive(value: f64) -> f64 {
    if value > 0.0 { value } else { f64::NAN }
}

impl Measure {
    /// Those that are followed over time, in the order in which they are shown.
    pub const FOLLOWED: [Self; 22] = [
        Self::HoldS,
        Self::LevelDb,
        Self::F0MedianHz,
        Self::F0SpanSt,
        Self::F0SdSt,
        Self::LevelSlopeDbPerS,
        Self::StepDb,
        Self::StepSt,
        Self::PhraseLevelDb,
        Self::PhraseF0Hz,
        Self::PhraseSpanSt,
        Self::PhraseRateHz,
        Self::TalkLevelDb,
        Self::TalkF0Hz,
        Self::PauseSharePct,
        Self::SyllableRateHz,
        Self::SyllableIrregularityPct,
        Self::NamedCount,
        Self::CppsDb,
        Self::HnrDb,
        Self::JitterPct,
        Self::ShimmerPct,
    ];

    /// Those that trials of this kind have.
    pub fn of_kind(kind: TrialKind) -> impl Iterator<Item = Self> {
        Self::ALL.iter().copied().filter(move |measure| measure.declared().kind == kind)
    }

    /// Those of them that are followed over time, in the order in which they are shown.
    pub fn followed(kind: TrialKind) -> impl Iterator<Item = Self> {
        Self::FOLLOWED.into_iter().filter(move |measure| measure.declared().kind == kind)
    }

    /// Its value in a fact: none where the fact does not tell it, NaN where it could not be measured.
    #[must_use]
    pub fn of(self, fact: &Fact) -> Option<f64> {
        (self.declared().of)(fact)
    }

    /// Its value in a fact, where it was measured.
    #[must_use]
    pub fn measured(self, fact: &Fact) -> Option<f64> {
        self.of(fact).filter(|value| value.is_finite())
    }

    /// Kebab-case name, as it is written in exports, "hold-s".
    #[must_use]
    pub fn id(self) -> &'static str {
        self.declared().id
    }

    /// The measure of that name.
    #[must_use]
    pub fn of_id(id: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|measure| measure.id() == id)
    }

    /// The unit as it is printed; empty for a count.
    #[must_use]
    pub fn unit(self) -> &'static str {
        self.declared().unit.printed()
    }

    /// Decimals that the measurement bears when it is printed.
    #[must_use]
    pub fn decimals(self) -> usize {
        self.declared().decimals
    }

    /// Its values mean something only beside others on the same scale of levels.
    #[must_use]
    pub fn is_level(self) -> bool {
        matches!(self, Self::LevelDb | Self::PhraseLevelDb | Self::TalkLevelDb)
    }

    /// A voice quality figure, for the clinician's page alone.
    #[must_use]
    pub fn is_quality(self) -> bool {
        matches!(
            self,
            Self::CppsDb
                | Self::HnrDb
                | Self::JitterPct
                | Self::JitterRapPct
                | Self::JitterPpq5Pct
                | Self::ShimmerPct
                | Self::ShimmerDb
                | Self::ShimmerApq3Pct
                | Self::ShimmerApq11Pct
        )
    }
}

#[cfg(test)]
#[path = "tests/measure.rs"]
mod tests;
