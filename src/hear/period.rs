//! The period about an instant, from two periods of sound.
//!
//! The search in [`super::pitch`] sees 50 ms and so the mean of several periods. Where F0 moves, the period about the
//! frame's centre is nearer to what the vocal folds do there: the normalised cross-correlation of two neighbouring
//! stretches, as in D. Talkin, "A robust algorithm for pitch tracking (RAPT)", in Speech Coding and Synthesis (1995).

use super::history::History;

/// Looked for this far about the period that is known roughly.
const REACH: f64 = 0.08;
/// Each of the two stretches has at least this length, s.
const LEAST_S: f64 = 0.006;
/// The stretches must be this alike for the period to be believed.
const ALIKE: f64 = 0.8;

/// How long before a frame's centre sound must be kept, s: a period of the lowest voice and its reach.
pub(crate) const REACH_S: f64 = 0.025;

/// F0 about the sample `centre`, Hz, given that it is near `f0_hz`; that where nothing better is found.
pub(crate) fn refined_hz(sound: &History<f32>, centre: i64, f0_hz: f64, rate_hz: f64, scratch: &mut Vec<f32>) -> f64 {
    let period = rate_hz / f0_hz;
    let (shortest, longest) = ((period * (1.0 - REACH)).floor() as usize, (period * (1.0 + REACH)).ceil() as usize);
    let width = (period.max(LEAST_S * rate_hz)).round() as usize;
    let whole = longest + width + 2;
    scratch.resize(whole, 0.0);
    let from = centre - (whole / 2) as i64;
    sound.copy_to(from, scratch);
    let mean = scratch.iter().sum::<f32>() / whole as f32;
    scratch.iter_mut().for_each(|x| *x -= mean);
    let alike = |lag: usize| {
        // Both stretches lie about the centre whatever the lag.
        let at = (whole - (width + lag)) / 2;
        let (Some(a), Some(b)) = (scratch.get(at..at + width), scratch.get(at + lag..at + lag + width)) else { return 0.0 };
        let (mut both, mut early, mut late) = (0.0f32, 0.0f32, 0.0f32);
        for (x, y) in a.iter().zip(b) {
            both += x * y;
            early += x * x;
            late += y * y;
        }
        f64::from(both) / f64::from(early * late).sqrt().max(1e-12)
    };
    let (mut best, mut height) = (0, ALIKE);
    let mut sides = (0.0, 0.0);
    let mut last = 0.0;
    for lag in shortest.max(2)..=longest {
        let here = alike(lag);
        if best + 1 == lag && best > 0 {
            sides.1 = here;
        }
        if here > height {
            (best, height) = (lag, here);
            sides.0 = last;
        }
        last = here;
    }
    // A peak at the edge is none.
    if best <= shortest.max(2) || best >= longest {
        return f0_hz;
    }
    let bend = sides.0 - 2.0 * height + sides.1;
    let shift = if bend < 0.0 { (0.5 * (sides.0 - sides.1) / bend).clamp(-0.5, 0.5) } else { 0.0 };
    rate_hz / (best as f64 + shift)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::TAU;

    #[test]
    fn a_moving_pitch_is_found_where_it_is() {
        // A glide of an octave a second: 100 to 200 Hz, with overtones. The phase is the integral of F0.
        const RATE: f64 = 16_000.0;
        let mut sound = History::new();
        for k in 0..16_000 {
            let t = k as f64 / RATE;
            let phase = 100.0 * (2f64.powf(t) - 1.0) / 2f64.ln();
            sound.push((1..6).map(|h| (TAU * phase * f64::from(h)).cos() / f64::from(h)).sum::<f64>() as f32);
        }
        for t in [0.2, 0.5, 0.8] {
            let truth = 100.0 * 2f64.powf(t);
            // Begun 3 % off.
            let found = refined_hz(&sound, (t * RATE) as i64, truth * 1.03, RATE, &mut Vec::new());
            assert!((1200.0 * (found / truth).log2()).abs() < 4.0, "{t}: {found} for {truth}");
        }
    }
}
