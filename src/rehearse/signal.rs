//! What every generator of sound here shares.

/// Lowest and highest sample rate of every generator here, Hz.
pub const RATES_HZ: std::ops::RangeInclusive<u32> = 8_000..=48_000;

/// Amplitude ratio of a level difference in dB.
pub(crate) fn gain(db: f64) -> f64 {
    10f64.powf(db / 20.0)
}
