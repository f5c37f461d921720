//! Makes what a voice gives into a line: silence at both ends cut, every line equally loud, no peak near full scale.

use super::Pcm;

/// Active level every line is brought to, dB re a full-scale square wave. Common practice, no source: leaves speech,
/// whose peaks stand 12 to 18 dB over its active level, just under full scale.
pub const ACTIVE_LEVEL_DBFS: f64 = -20.0;
/// No sample of a line is above this, dB re full scale.
pub const PEAK_LIMIT_DBFS: f64 = -1.0;
/// A line begins at its first sample within so many dB of the active level: the weak start of an "f" still counts,
/// the synthesiser's noise does not. Chosen here, no source.
pub const AUDIBLE_BELOW_ACTIVE_DB: f64 = 30.0;

/// Kept before the first audible sample and used to ramp up, s: short against the 20 ms a count may be off its beat.
const LEAD_IN_S: f64 = 0.002;
/// Kept after the last audible sample and used to ramp down, s.
const LEAD_OUT_S: f64 = 0.020;
/// Above this the peak limit bends the samples instead of scaling the line, dB re full scale.
const KNEE_DBFS: f64 = -4.0;

/// From ITU-T P.56, method B (from memory): time constant of each of the two smoothing filters of the envelope, s.
const P56_TIME_CONSTANT_S: f64 = 0.03;
/// From ITU-T P.56, method B (from memory): speech is active while the envelope is within this of the active level, dB.
const P56_MARGIN_DB: f64 = 15.9;

fn amplitude(db: f64) -> f64 {
    10f64.powf(db / 20.0)
}

/// Active speech level, dB re a full-scale square wave; none where there is no sound.
///
/// After ITU-T P.56 method B without its hangover, which would count the silence behind a single word as speech.
#[must_use]
pub fn active_level_dbfs(samples: &[f32], rate_hz: u32) -> Option<f64> {
    active_rms(samples, rate_hz).map(|rms| 20.0 * rms.log10())
}

fn active_rms(samples: &[f32], rate_hz: u32) -> Option<f64> {
    if samples.is_empty() || rate_hz == 0 {
        return None;
    }
    let keep = (-1.0 / (P56_TIME_CONSTANT_S * f64::from(rate_hz))).exp();
    let (mut first, mut second) = (0.0f64, 0.0f64);
    let envelope: Vec<f64> = samples
        .iter()
        .map(|&x| {
            first = keep * first + (1.0 - keep) * f64::from(x).abs();
            second = keep * second + (1.0 - keep) * first;
            second
        })
        .collect();
    let mut rms = (samples.iter().map(|&x| f64::from(x).powi(2)).sum::<f64>() / samples.len() as f64).sqrt();
    // Each round leaves out more of the pauses; the level at which nothing more is left out is the active level.
    for _ in 0..30 {
        let threshold = rms * amplitude(-P56_MARGIN_DB);
        let (sum, count) = envelope
            .iter()
            .zip(samples)
            .filter(|(level, _)| **level >= threshold)
            .fold((0.0f64, 0usize), |(sum, count), (_, &x)| (sum + f64::from(x).powi(2), count + 1));
        if count == 0 {
            break;
        }
        let next = (sum / count as f64).sqrt();
        let settled = (next - rms).abs() < rms * 1e-6;
        rms = next;
        if settled {
            break;
        }
    }
    (rms.is_finite() && rms > 1e-6).then_some(rms)
}

/// Cuts silence at both ends, brings the line to [`ACTIVE_LEVEL_DBFS`] and limits its peaks. None where nothing is audible.
///
/// The first audible sample (see [`AUDIBLE_BELOW_ACTIVE_DB`]) comes 2 ms after the first sample, behind a ramp without a
/// click. Samples are rounded to 16 bits, so that a line read from the cache is the line that was rendered.
#[must_use]
pub fn finish(raw: &Pcm) -> Option<Pcm> {
    let rate = f64::from(raw.rate_hz);
    let rms = active_rms(&raw.samples, raw.rate_hz)?;
    let threshold = (rms * amplitude(-AUDIBLE_BELOW_ACTIVE_DB)) as f32;
    let first = raw.samples.iter().position(|x| x.abs() > threshold)?;
    let last = raw.samples.iter().rposition(|x| x.abs() > threshold)?;
    let (lead_in, lead_out) = ((LEAD_IN_S * rate) as usize, (LEAD_OUT_S * rate) as usize);
    let begin = first.saturating_sub(lead_in);
    let end = (last + 1 + lead_out).min(raw.samples.len());

    let cut = raw.samples.get(begin..end)?;
    // Measured again: the envelope falls slowly, so that some of the silence that is now gone was counted as speech.
    let gain = (amplitude(ACTIVE_LEVEL_DBFS) / active_rms(cut, raw.rate_hz)?) as f32;
    let mut samples: Vec<f32> = cut.iter().map(|x| x * gain).collect();
    let ramp_up = (first - begin).max(1);
    for (i, x) in samples.iter_mut().take(ramp_up).enumerate() {
        *x *= (i + 1) as f32 / (ramp_up + 1) as f32;
    }
    let ramp_down = (end - 1 - last).max(1);
    for (i, x) in samples.iter_mut().rev().take(ramp_down).enumerate() {
        *x *= (i + 1) as f32 / (ramp_down + 1) as f32;
    }
    limit_peaks(&mut samples);
    for x in &mut samples {
        *x = (*x * 32_768.0).round() / 32_768.0;
    }
    Some(Pcm { rate_hz: raw.rate_hz, samples: samples.into() })
}

/// Bends what is above the knee so that nothing passes [`PEAK_LIMIT_DBFS`]; what is below stays as it is.
pub(super) fn limit_peaks(samples: &mut [f32]) {
    let knee = amplitude(KNEE_DBFS) as f32;
    let ceiling = amplitude(PEAK_LIMIT_DBFS) as f32 - 1.0 / 32_768.0;
    let room = ceiling - knee;
    for x in samples {
        let over = x.abs() - knee;
        if over > 0.0 {
            *x = x.signum() * (knee + room * (over / room).tanh());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const RATE_HZ: u32 = 22_050;

    fn tone(before_s: f64, length_s: f64, after_s: f64, level: f32) -> Pcm {
        let rate = f64::from(RATE_HZ);
        let silence = |s: f64| vec![0.0f32; (s * rate) as usize];
        let mut samples = silence(before_s);
        samples.extend((0..(length_s * rate) as usize).map(|i| level * ((i as f64 * 220.0 * std::f64::consts::TAU / rate).sin() as f32)));
        samples.extend(silence(after_s));
        Pcm { rate_hz: RATE_HZ, samples: samples.into() }
    }

    /// A sine of amplitude a has an RMS of a/sqrt(2): 3.01 dB below a square wave of the same amplitude.
    #[test]
    fn the_level_of_a_sine_is_known_and_silence_around_it_does_not_count() {
        let long = tone(2.0, 2.0, 2.0, 0.5);
        let level = active_level_dbfs(&long.samples, RATE_HZ).unwrap();
        // The envelope takes about 0.1 s of 2 s to fall: that much silence is counted, 0.2 dB.
        assert!((level - (-6.02 - 3.01)).abs() < 0.3, "{level}");
        assert!(active_level_dbfs(&[0.0; 1000], RATE_HZ).is_none());
        assert!(active_level_dbfs(&[], RATE_HZ).is_none());
    }

    #[test]
    fn silence_is_cut_and_the_line_begins_within_the_lead_in() {
        for level in [0.9, 0.01] {
            let line = finish(&tone(0.7, 1.0, 0.9, level)).unwrap();
            assert!((line.duration_s() - 1.022).abs() < 0.004, "{}", line.duration_s());
            let onset = line.samples.iter().position(|x| x.abs() > 0.01).unwrap();
            assert!(onset as f64 / f64::from(RATE_HZ) < 0.004, "{onset}");
            assert!(line.samples[0].abs() < 0.01, "starts with a click");
            let level = active_level_dbfs(&line.samples, RATE_HZ).unwrap();
            assert!((level - ACTIVE_LEVEL_DBFS).abs() < 0.3, "{level}");
        }
    }

    #[test]
    fn peaks_stay_under_the_limit() {
        // Sparse clicks over a soft tone: far more crest than speech has.
        let mut samples = tone(0.0, 1.0, 0.0, 0.02).samples.to_vec();
        for i in (0..samples.len()).step_by(2205) {
            samples[i] = 1.0;
        }
        let line = finish(&Pcm { rate_hz: RATE_HZ, samples: samples.into() }).unwrap();
        let peak = line.samples.iter().fold(0.0f32, |p, x| p.max(x.abs()));
        assert!(f64::from(peak) <= amplitude(PEAK_LIMIT_DBFS), "{peak}");
    }

    #[test]
    fn silence_gives_no_line() {
        assert!(finish(&Pcm { rate_hz: RATE_HZ, samples: vec![0.0; 500].into() }).is_none());
        assert!(finish(&Pcm { rate_hz: RATE_HZ, samples: Vec::new().into() }).is_none());
    }
}
