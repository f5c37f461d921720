//! What is kept of a sustained vowel.

use crate::fact::Fact;
use crate::level::LevelTerms;
use crate::reason::FrequencyWeighting;
use crate::voice::Hold;

impl Hold {
    /// The fact that tells of it. Its level is relative: who knows a calibration puts it on a scale.
    #[must_use]
    pub fn fact(&self, exercise: String, complete: bool) -> Fact {
        Fact::HoldMeasured {
            exercise,
            onset_s: self.onset_s,
            offset_s: self.offset_s,
            duration_s: self.duration_s,
            f0_median_hz: self.f0_median_hz,
            f0_span_st: self.f0_span_st,
            level_mean_db: self.level_mean_db,
            level_fall_db: self.level_fall_db,
            level_weighting: FrequencyWeighting::A,
            level_calibrated: false,
            f0_sd_st: Some(self.f0_sd_st).filter(|x| x.is_finite()),
            level_slope_db_per_s: Some(self.level_slope_db_per_s).filter(|x| x.is_finite()),
            level_terms: Some(LevelTerms { clipped_s: self.clipped_s, ..LevelTerms::default() }),
            quality: None,
            climb: None,
            breaks: self.breaks,
            masked_s: self.masked_s,
            complete,
        }
    }
}
