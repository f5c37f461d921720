mod client;
mod demo;
mod habit;
mod household;
mod io;
mod praat;
mod room;
mod sounds;
mod vowel;

/// RMS, dB re full scale.
fn level_db(x: &[f32]) -> f64 {
    let power = x.iter().map(|v| f64::from(*v) * f64::from(*v)).sum::<f64>() / x.len().max(1) as f64;
    10.0 * power.max(1e-20).log10()
}

/// The samples between two instants.
fn part(x: &[f32], rate_hz: u32, from_s: f64, to_s: f64) -> &[f32] {
    let at = |t: f64| ((t * f64::from(rate_hz)).round().max(0.0) as usize).min(x.len());
    &x[at(from_s)..at(to_s)]
}

/// First and last instant at which 2 ms are above `floor_db`, s.
fn sounding(x: &[f32], rate_hz: u32, floor_db: f64) -> (f64, f64) {
    let n = (rate_hz / 500) as usize;
    let loud: Vec<usize> = (0..x.len().saturating_sub(n)).filter(|i| level_db(&x[*i..i + n]) > floor_db).collect();
    let at = |i: usize| (i as f64 + n as f64 / 2.0) / f64::from(rate_hz);
    (at(loud[0]), at(loud[loud.len() - 1]))
}

/// F0 by the highest peak of the normalised autocorrelation between 60 and 800 Hz, refined by a parabola; Hz.
fn autocorrelation_f0(x: &[f32], rate_hz: u32) -> f64 {
    let rate = f64::from(rate_hz);
    let r = |lag: usize| -> f64 {
        let (a, b) = (&x[..x.len() - lag], &x[lag..]);
        let dot: f64 = a.iter().zip(b).map(|(p, q)| f64::from(*p) * f64::from(*q)).sum();
        let power = |s: &[f32]| s.iter().map(|v| f64::from(*v) * f64::from(*v)).sum::<f64>();
        dot / (power(a) * power(b)).sqrt().max(1e-12)
    };
    let values: Vec<f64> = (0..=(rate / 55.0) as usize).map(r).collect();
    let from = (rate / 800.0) as usize;
    let best = values.iter().skip(from).copied().fold(f64::MIN, f64::max);
    // The first lag that is a peak and nearly as good: multiples of the period are as good as the period itself.
    let peak = (from.max(1)..values.len() - 1)
        .find(|&i| values[i] > 0.97 * best && values[i] >= values[i - 1] && values[i] >= values[i + 1])
        .unwrap_or(from.max(1));
    let (a, b, c) = (values[peak - 1], values[peak], values[peak + 1]);
    rate / (peak as f64 + 0.5 * (a - c) / (a - 2.0 * b + c))
}
