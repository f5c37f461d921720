//! Jitter and shimmer of a row of pulses, as Praat's voice report defines them: periods of 0.1 to 20 ms, neighbours that differ
//! by no more than a factor of 1.3 (periods) and 1.6 (amplitudes); other neighbours are left out.

use super::Sound;
use std::f64::consts::PI;

const SHORTEST_S: f64 = 0.0001;
const LONGEST_S: f64 = 0.02;
const PERIOD_FACTOR: f64 = 1.3;
const AMPLITUDE_FACTOR: f64 = 1.6;
/// The amplitude of a period is taken about its pulse, this part of the period to either side.
const ABOUT: f64 = 0.2;

pub(super) struct Jitter {
    pub local_pct: f64,
    pub rap_pct: f64,
    pub ppq5_pct: f64,
}

pub(super) struct Shimmer {
    pub local_pct: f64,
    pub local_db: f64,
    pub apq3_pct: f64,
    pub apq11_pct: f64,
}

fn is_period(length_s: f64) -> bool {
    (SHORTEST_S..=LONGEST_S).contains(&length_s)
}

/// Whether each of some periods is one, and each like its neighbour.
fn even(periods_s: &[f64]) -> bool {
    periods_s.iter().all(|p| is_period(*p)) && alike(periods_s, PERIOD_FACTOR)
}

fn alike(values: &[f64], factor: f64) -> bool {
    values.windows(2).all(|pair| matches!(pair, [a, b] if a.max(*b) <= factor * a.min(*b)))
}

/// Mean over the runs of `count` values that are `fit` of how far the middle one lies from the run's mean; NaN for none.
fn mean_deviation(values: &[f64], count: usize, fit: impl Fn(&[f64]) -> bool) -> f64 {
    let deviations = values.windows(count).filter(|run| fit(run)).map(|run| {
        let mean = run.iter().sum::<f64>() / count as f64;
        run.get(count / 2).map_or(0.0, |middle| (middle - mean).abs())
    });
    mean(deviations)
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), x| (sum + x, count + 1.0));
    if count > 0.0 { sum / count } else { f64::NAN }
}

/// Jitter of pulses at these instants.
pub(super) fn jitter(pulses_s: &[f64]) -> Jitter {
    let periods: Vec<f64> = pulses_s.windows(2).filter_map(|pair| Some(pair.get(1)? - pair.first()?)).collect();
    // A period counts for the mean if it is like at least one of its neighbours.
    let counted = periods.iter().enumerate().filter(|(k, period)| {
        let like = |other: Option<&f64>| other.is_none_or(|other| alike(&[**period, *other], PERIOD_FACTOR));
        is_period(**period) && (like(k.checked_sub(1).and_then(|k| periods.get(k))) || like(periods.get(k + 1)))
    });
    let mean_s = mean(counted.map(|(_, period)| *period));
    let local = mean(periods.windows(2).filter(|run| even(run)).map(|run| match run {
        [a, b] => (a - b).abs(),
        _ => 0.0,
    }));
    let share = |value: f64| 100.0 * value / mean_s;
    Jitter {
        local_pct: share(local),
        rap_pct: share(mean_deviation(&periods, 3, even)),
        ppq5_pct: share(mean_deviation(&periods, 5, even)),
    }
}

/// Shimmer of a sound whose periods are marked by these instants.
pub(super) fn shimmer(sound: &Sound, pulses_s: &[f64]) -> Shimmer {
    let mut amplitudes: Vec<(f64, f64)> = Vec::with_capacity(pulses_s.len());
    for run in pulses_s.windows(3) {
        let [before, here, after] = run else { continue };
        let (left_s, right_s) = (here - before, after - here);
        if even(&[left_s, right_s])
            && let Some(amplitude) = amplitude(sound, *here, ABOUT * left_s, ABOUT * right_s)
        {
            amplitudes.push((*here, amplitude));
        }
    }
    let sizes: Vec<f64> = amplitudes.iter().map(|a| a.1).collect();
    let mean_size = mean(sizes.iter().take(sizes.len().saturating_sub(1)).copied());
    // Runs of neighbours: amplitudes that are a period apart each and alike.
    let runs = |count: usize| {
        amplitudes.windows(count).filter(|run| {
            let neighbours = run.windows(2).all(|pair| matches!(pair, [a, b] if is_period(b.0 - a.0)));
            let values: Vec<f64> = run.iter().map(|a| a.1).collect();
            neighbours && alike(&values, AMPLITUDE_FACTOR)
        })
    };
    let deviation = |count: usize| {
        mean(runs(count).map(|run| {
            let middle = run.get(count / 2).map_or(0.0, |a| a.1);
            (middle - run.iter().map(|a| a.1).sum::<f64>() / count as f64).abs()
        }))
    };
    let pairs = |change: fn(f64, f64) -> f64| {
        mean(runs(2).map(|run| match run {
            [a, b] => change(a.1, b.1),
            _ => 0.0,
        }))
    };
    Shimmer {
        local_pct: 100.0 * pairs(|a, b| (a - b).abs()) / mean_size,
        local_db: pairs(|a, b| (20.0 * (a / b).log10()).abs()),
        apq3_pct: 100.0 * deviation(3) / mean_size,
        apq11_pct: 100.0 * deviation(11) / mean_size,
    }
}

/// Root mean square about an instant under a Hann window with halves of these lengths.
fn amplitude(sound: &Sound, t_s: f64, left_s: f64, right_s: f64) -> Option<f64> {
    let (from, to) = (sound.place(t_s - left_s).ceil() as i64, sound.place(t_s + right_s).floor() as i64);
    let (mut sum, mut weight) = (0.0, 0.0);
    for k in from..=to {
        let away_s = sound.from_s + k as f64 / sound.rate_hz - t_s;
        let window = 0.5 + 0.5 * (PI * away_s / if away_s < 0.0 { left_s } else { right_s }).cos();
        sum += (sound.at(k)? * window).powi(2);
        weight += window * window;
    }
    (weight > 0.0 && sum > 0.0).then(|| (sum / weight).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn periods_in_turn_of_two_lengths_have_known_jitter() {
        // 10 and 10.2 ms in turn: each differs from the next by 0.2 of 10.1 ms; from the mean of three by 2/3 of that, and from
        // the mean of five by 0.4 or 0.6 of 0.2 ms ... a, b, a, b, a: the middle a lies 0.4 * 0.2 ms off.
        let mut t_s = 0.0;
        let pulses: Vec<f64> = (0..101)
            .map(|k| {
                let here = t_s;
                t_s += if k % 2 == 0 { 0.010 } else { 0.0102 };
                here
            })
            .collect();
        let jitter = jitter(&pulses);
        assert!((jitter.local_pct - 100.0 * 0.0002 / 0.0101).abs() < 0.001, "{}", jitter.local_pct);
        assert!((jitter.rap_pct - 100.0 * (2.0 / 3.0 * 0.0002) / 0.0101).abs() < 0.001, "{}", jitter.rap_pct);
        assert!((jitter.ppq5_pct - 100.0 * (0.4 * 0.0002) / 0.0101).abs() < 0.001, "{}", jitter.ppq5_pct);
    }

    #[test]
    fn amplitudes_in_turn_of_two_sizes_have_known_shimmer() {
        // A pulse every 10 ms, of size 1 and 0.9 in turn: 20 lg(1 / 0.9) = 0.915 dB; 0.1 of a mean of 0.95.
        let mut samples = vec![0.0; 16_000];
        let pulses: Vec<f64> = (1..99).map(|k| f64::from(k) * 0.01).collect();
        for (k, t_s) in pulses.iter().enumerate() {
            samples[(t_s * 16_000.0).round() as usize] = if k % 2 == 0 { 1.0 } else { 0.9 };
        }
        let shimmer = shimmer(&Sound { samples, rate_hz: 16_000.0, from_s: 0.0 }, &pulses);
        assert!((shimmer.local_db - 0.915).abs() < 0.001, "{}", shimmer.local_db);
        assert!((shimmer.local_pct - 10.53).abs() < 0.1, "{}", shimmer.local_pct);
        assert!((shimmer.apq3_pct - 7.02).abs() < 0.1, "{}", shimmer.apq3_pct);
    }

    #[test]
    fn nothing_gives_no_figure() {
        assert!(jitter(&[]).local_pct.is_nan() && jitter(&[0.1, 0.2]).rap_pct.is_nan());
        let silence = Sound { samples: vec![0.0; 100], rate_hz: 8000.0, from_s: 0.0 };
        assert!(shimmer(&silence, &[0.001, 0.005, 0.009]).local_db.is_nan());
    }
}
