//! A hold and a stretch of speech as the voice ear gives them, for tests without sound.

use hear::{Hold, Utterance};

pub fn hold(onset_s: f64, duration_s: f64) -> Hold {
    Hold {
        onset_s,
        offset_s: onset_s + duration_s,
        duration_s,
        sure_s: onset_s + 0.3,
        f0_median_hz: 118.0,
        f0_span_st: 0.6,
        f0_sd_st: 0.2,
        level_mean_db: -28.0,
        level_slope_db_per_s: -0.2,
        level_fall_db: 1.4,
        breaks: 0,
        over_room_db: 40.0,
        masked_s: 0.0,
        clipped_s: 0.0,
        quality: None,
    }
}

pub fn utterance(onset_s: f64, duration_s: f64, syllables: u32) -> Utterance {
    Utterance {
        f0_span_st: f64::NAN,
        f0_final_st: f64::NAN,
        onset_s,
        offset_s: onset_s + duration_s,
        duration_s,
        level_mean_db: -30.0,
        f0_median_hz: 120.0,
        syllables,
        syllable_rate_hz: f64::from(syllables) / duration_s,
        syllable_irregularity_pct: 5.0,
    }
}
