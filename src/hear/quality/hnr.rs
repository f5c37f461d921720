//! Ratio of harmonics to noise by cross-correlation (Boersma 1993, IFA Proceedings 17, 97), as Praat's "To Harmonicity (cc):
//! 0.01, 75, 0.1, 1.0" and the mean of the frames that are not silent.

use super::Sound;
use std::f64::consts::PI;

const STEP_S: f64 = 0.01;
const FLOOR_HZ: f64 = 75.0;
/// A frame is silent where its peak is under this share of the whole sound's, and surely sounding over twice that.
const SILENCE: f64 = 0.1;
/// Samples on either side that the interpolation between lags looks at.
const DEPTH: i64 = 30;
/// The ratio ends here, dB.
const MOST_DB: f64 = 150.0;

/// HNR of a stretch, dB; NaN where nothing sounds.
pub(super) fn hnr_db(sound: &Sound) -> f64 {
    let x = &sound.samples;
    let period = (sound.rate_hz / FLOOR_HZ).floor() as usize;
    // The window is one period of the lowest voice, even in length.
    let window = (period / 2).saturating_sub(1) * 2;
    let most_lag = period + 2;
    let span = window + most_lag;
    if x.len() < span + 2 || window < 8 {
        return f64::NAN;
    }
    let mean = x.iter().sum::<f64>() / x.len() as f64;
    let global_peak = x.iter().fold(0.0, |peak: f64, v| peak.max((v - mean).abs()));
    let duration_s = x.len() as f64 / sound.rate_hz;
    let reach_s = 2.0 / FLOOR_HZ;
    let count = ((duration_s - reach_s) / STEP_S).floor().max(0.0) as usize + 1;
    let first_s = duration_s / 2.0 - (count as f64 - 1.0) * STEP_S / 2.0;
    let (mut sum, mut sounding) = (0.0, 0.0);
    let mut r = vec![0.0; most_lag + 1];
    for frame in 0..count {
        let centre = (first_s + frame as f64 * STEP_S) * sound.rate_hz;
        let middle = (centre - 0.5).floor().max(0.0) as usize;
        let near = x.get(middle.saturating_sub(period)..(middle + period + 1).min(x.len())).unwrap_or(&[]);
        let local_mean = near.iter().sum::<f64>() / near.len().max(1) as f64;
        let start = (centre - 0.5 - reach_s / 2.0 * sound.rate_hz).floor().max(0.0) as usize;
        let Some(stretch) = x.get(start..(start + span).min(x.len())) else { continue };
        if stretch.len() < span {
            continue;
        }
        let around = x.get(middle.saturating_sub(period / 2 + 1)..(middle + period / 2 + 2).min(x.len())).unwrap_or(&[]);
        let peak = around.iter().fold(0.0, |peak: f64, v| peak.max((v - local_mean).abs()));
        correlate(stretch, local_mean, window, &mut r);
        let Some(strength) = best(&r) else { continue };
        let silence = (2.0 - peak / global_peak.max(1e-30) / SILENCE).max(0.0);
        if silence > strength {
            continue;
        }
        sum += ratio_db(strength);
        sounding += 1.0;
    }
    if sounding > 0.0 { sum / sounding } else { f64::NAN }
}

fn ratio_db(strength: f64) -> f64 {
    if strength <= 1e-15 {
        -MOST_DB
    } else if strength > 1.0 - 1e-15 {
        MOST_DB
    } else {
        10.0 * (strength / (1.0 - strength)).log10()
    }
}

/// Normalised cross-correlation of the first `window` samples with those some lags later.
fn correlate(stretch: &[f64], mean: f64, window: usize, r: &mut [f64]) {
    let centred: Vec<f64> = stretch.iter().map(|x| x - mean).collect();
    let power = |from: usize| centred.iter().skip(from).take(window).map(|x| x * x).sum::<f64>();
    let here = power(0);
    let mut there = here;
    for (lag, slot) in r.iter_mut().enumerate() {
        if lag > 0 {
            let gone = centred.get(lag - 1).copied().unwrap_or(0.0);
            let come = centred.get(lag + window - 1).copied().unwrap_or(0.0);
            there += come * come - gone * gone;
        }
        let product: f64 = centred.iter().take(window).zip(centred.iter().skip(lag)).map(|(a, b)| a * b).sum();
        *slot = product / (here * there).sqrt().max(1e-300);
    }
}

/// The highest peak between lags, interpolated; over 1, which interpolation can give, it counts inversely.
fn best(r: &[f64]) -> Option<f64> {
    let at = |k: i64| usize::try_from(k.abs()).ok().and_then(|k| r.get(k)).copied();
    let mut best: Option<f64> = None;
    for k in 2..r.len() as i64 - 1 {
        let (Some(left), Some(top), Some(right)) = (at(k - 1), at(k), at(k + 1)) else { continue };
        // Interpolation adds little: what lies far under the best cannot win.
        if top <= 0.0 || top <= left || top < right || best.is_some_and(|b| top < b - 0.2) {
            continue;
        }
        let strength = highest(&at, k);
        let strength = if strength > 1.0 { 1.0 / strength } else { strength };
        best = Some(best.map_or(strength, |b| b.max(strength)));
    }
    best
}

/// The top of the curve through the values near `k`, by golden section on a sinc interpolation.
fn highest(at: &impl Fn(i64) -> Option<f64>, k: i64) -> f64 {
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    let (mut low, mut high) = (k as f64 - 1.0, k as f64 + 1.0);
    let (mut a, mut b) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut value_a, mut value_b) = (sinc(at, a), sinc(at, b));
    for _ in 0..20 {
        if value_a > value_b {
            (high, b, value_b) = (b, a, value_a);
            a = high - GOLDEN * (high - low);
            value_a = sinc(at, a);
        } else {
            (low, a, value_a) = (a, b, value_b);
            b = low + GOLDEN * (high - low);
            value_b = sinc(at, b);
        }
    }
    value_a.max(value_b)
}

/// The value between samples, by a sinc under a raised cosine. A correlation is the same on both sides of lag 0.
fn sinc(at: &impl Fn(i64) -> Option<f64>, x: f64) -> f64 {
    let below = x.floor() as i64;
    if (x - below as f64).abs() < 1e-12 {
        return at(below).unwrap_or(0.0);
    }
    // As many on the left as on the right, and none beyond the last lag.
    let depth = (1..=DEPTH).take_while(|n| at(below + n).is_some()).last().unwrap_or(1);
    let first = below - depth + 1;
    // The sine only changes its sign from place to place, and the cosine of the window turns by the same angle each time.
    let mut away = x - first as f64;
    let mut sine = (PI * away).sin() / PI;
    let turn = PI / (depth as f64 + 0.5);
    let (step_sin, step_cos) = turn.sin_cos();
    let (mut window_sin, mut window_cos) = (turn * away).sin_cos();
    let mut sum = 0.0;
    for n in first..=below + depth {
        sum += at(n).unwrap_or(0.0) * sine / away * (0.5 + 0.5 * window_cos);
        sine = -sine;
        away -= 1.0;
        (window_sin, window_cos) = (window_sin * step_cos - window_cos * step_sin, window_cos * step_cos + window_sin * step_sin);
    }
    sum
}
