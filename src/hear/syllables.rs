//! Syllable nuclei: the peaks of the level that are voiced and parted by dips.
//!
//! After N. H. de Jong and T. Wempe, "Praat script to detect syllable nuclei and measure speech rate automatically",
//! Behavior Research Methods 41 (2009) 385-390: a peak counts if the level dips before and after it and it is voiced.

use super::steadiness::{RunFrame, percentile};

/// Least dip between two nuclei, dB (2 dB in the source for undisturbed sound, 4 dB for noisy; between them here).
const DIP_DB: f64 = 3.0;
/// Peaks this far under the loud ones are none (25 dB under the maximum in the source).
const UNDER_LOUD_DB: f64 = 25.0;

/// Peaks nearer than this belong to one syllable, s: the release of a stop and its vowel. The fastest syllables people
/// repeat are about 8 a second (common practice, no source).
const APART_S: f64 = 0.08;

/// Times of the nuclei, s.
pub(crate) fn nuclei_s(frames: &[RunFrame]) -> Vec<f64> {
    let level: Vec<f64> = (0..frames.len())
        .map(|k| {
            let near = &frames[k.saturating_sub(1)..(k + 2).min(frames.len())];
            near.iter().map(|f| f.level_db).sum::<f64>() / near.len() as f64
        })
        .collect();
    let loud = percentile(&mut level.clone(), 0.95);
    let mut nuclei: Vec<(f64, f64)> = Vec::new();
    let Some(first) = level.first() else { return Vec::new() };
    let (mut low, mut peak, mut peak_at, mut rising) = (*first, *first, 0, true);
    let mut close = |at: usize, height: f64| {
        // Its own voicing: what is heard of a stop's release lies just before the voice.
        let near = &frames[at.saturating_sub(1)..(at + 2).min(frames.len())];
        if !near.iter().any(|f| f.f0_hz > 0.0) || height <= loud - UNDER_LOUD_DB {
            return;
        }
        match nuclei.last_mut() {
            Some(last) if frames[at].t_s - last.0 < APART_S => {
                if height > last.1 {
                    *last = (frames[at].t_s, height);
                }
            }
            _ => nuclei.push((frames[at].t_s, height)),
        }
    };
    for (k, here) in level.iter().copied().enumerate() {
        if rising {
            if here > peak {
                (peak, peak_at) = (here, k);
            } else if here < peak - DIP_DB {
                close(peak_at, peak);
                (rising, low) = (false, here);
            }
        } else if here < low {
            low = here;
        } else if here > low + DIP_DB {
            (rising, peak, peak_at) = (true, here, k);
        }
    }
    if rising && peak > low + DIP_DB {
        close(peak_at, peak);
    }
    nuclei.into_iter().map(|nucleus| nucleus.0).collect()
}

/// Syllables per second, (count - 1) / time from first to last nucleus, and the coefficient of variation of the
/// intervals, percent. 0 where there are too few.
pub(crate) fn rate_and_irregularity(nuclei: &[f64]) -> (f64, f64) {
    let (Some(first), Some(last)) = (nuclei.first(), nuclei.last()) else { return (0.0, 0.0) };
    let count = nuclei.len() as f64 - 1.0;
    if count < 1.0 || last <= first {
        return (0.0, 0.0);
    }
    let mean = (last - first) / count;
    let variance = nuclei.windows(2).map(|w| (w[1] - w[0] - mean).powi(2)).sum::<f64>() / (count - 1.0).max(1.0);
    let irregularity = if count < 2.0 { 0.0 } else { 100.0 * variance.sqrt() / mean };
    (1.0 / mean, irregularity)
}
