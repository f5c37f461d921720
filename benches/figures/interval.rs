//! How far a share that was counted may be from the true one.

/// Standard deviations of a normal distribution within which 95 % lie.
const Z: f64 = 1.96;

/// The 95 % interval of a share in percent that was counted among `sample`, by E. B. Wilson, "Probable inference, the law of succession,
/// and statistical inference", J. Am. Stat. Assoc. 22 (1927) 209-212. Each recording counts as drawn by itself, which flatters where one
/// speaker gives many. None for no sample, and for a percentage that is no number of recordings among so many.
pub fn wilson_pct(share_pct: f64, sample: u64) -> Option<(f64, f64)> {
    /// Values on record are rounded to 0.1 %.
    const ROUNDED: f64 = 0.0005;
    let (share, count) = (share_pct / 100.0, sample as f64);
    let part = (share * count).round();
    let counted = (share * count - part).abs() <= ROUNDED * count + 1e-9 && (part > 0.0 || share == 0.0);
    if sample == 0 || !(0.0..=100.0).contains(&share_pct) || !counted {
        return None;
    }
    let widened = 1.0 + Z * Z / count;
    let middle = share + Z * Z / (2.0 * count);
    let reach = Z * (share * (1.0 - share) / count + Z * Z / (4.0 * count * count)).sqrt();
    Some((100.0 * ((middle - reach) / widened).max(0.0), 100.0 * ((middle + reach) / widened).min(1.0)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Stat. Med. 17 (1998) 857-872, table I, method 3
    /// (score without continuity correction); values from memory.
    #[test]
    fn intervals_are_those_of_the_published_table() {
        for (part, whole, from, to) in [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611), (1, 29, 0.0061, 0.1718)]
        {
            let (low, high) = wilson_pct(100.0 * f64::from(part) / f64::from(whole), whole as u64).unwrap();
            assert!((low - 100.0 * from).abs() < 0.01 && (high - 100.0 * to).abs() < 0.01, "{part} of {whole}: {low} to {high}");
        }
        assert_eq!([wilson_pct(50.0, 0), wilson_pct(f64::NAN, 3), wilson_pct(101.0, 3)], [None; 3]);
        assert!(wilson_pct(95.6, 542).is_some() && wilson_pct(0.0023, 53).is_none(), "a jitter in % is no share of the recordings");
    }
}
