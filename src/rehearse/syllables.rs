//! Trains of syllables (pa-ta-ka) with known nuclei: a closure, a burst and a short "ah" each.

use super::body::scaled;
use super::error::RehearseError;
use super::noise::Gauss;
use super::vowel::resonate;
use super::vowel::{Vowel, VowelSpec};

/// What train to make.
#[derive(Debug, Clone, PartialEq)]
pub struct SyllableSpec {
    /// Consonants in turn, out of p, t and k: "ptk".
    pub consonants: String,
    /// Syllables per second, 0.5 to 10.
    pub rate_hz: f64,
    /// 1 to 300.
    pub count: u32,
    /// SD of the intervals over their mean, percent, 0 to 40.
    pub irregularity_pct: f64,
    pub f0_hz: f64,
    /// RMS of the vowels, dB re full scale.
    pub level_db: f64,
    pub seed: u64,
}

/// Samples and the truth about them.
#[derive(Debug, Clone, PartialEq)]
pub struct SyllableTrain {
    pub samples: Vec<f32>,
    /// Onset of each vowel (first glottal closure), s from the start of the samples.
    pub vowel_onsets_s: Vec<f64>,
    /// First burst, s.
    pub onset_s: f64,
    /// End of the last vowel, s.
    pub offset_s: f64,
}

impl SyllableSpec {
    /// Makes the train.
    ///
    /// # Errors
    /// A value outside its range, a consonant other than p, t, k.
    pub fn render(&self, sample_rate_hz: u32) -> Result<SyllableTrain, RehearseError> {
        let fault = |what: String| Err(RehearseError(format!("syllables: {what}")));
        if self.consonants.is_empty() || self.consonants.chars().any(|c| !"ptk".contains(c)) {
            return fault(format!("the consonants \"{}\" must be made of p, t and k", self.consonants));
        }
        if !(0.5..=10.0).contains(&self.rate_hz) || !(1..=300).contains(&self.count) || !(0.0..=40.0).contains(&self.irregularity_pct) {
            return fault("rate 0.5 to 10 per second, count 1 to 300, irregularity 0 to 40 percent".into());
        }
        let rate = f64::from(sample_rate_hz);
        let mut gauss = Gauss::new(self.seed);
        let interval = 1.0 / self.rate_hz;
        // A syllable's thirds: closure, burst and aspiration up to 50 ms, vowel at most 0.25 s (common practice, no source).
        let vowel_s = (0.5 * interval).clamp(0.05, 0.25);
        let voice_onset_s = (0.15 * interval).clamp(0.01, 0.05);
        let mut train = SyllableTrain { samples: Vec::new(), vowel_onsets_s: Vec::new(), onset_s: 0.02, offset_s: 0.0 };
        let mut burst_s = train.onset_s;
        for (n, consonant) in self.consonants.chars().cycle().take(self.count as usize).enumerate() {
            let seed = self.seed.wrapping_mul(31).wrapping_add(n as u64);
            let vowel = VowelSpec {
                level_db: self.level_db,
                attack_s: 0.02,
                release_s: 0.03,
                jitter_pct: 0.8,
                shimmer_pct: 4.0,
                seed,
                ..VowelSpec::steady(Vowel::A, self.f0_hz, vowel_s)
            }
            .render(sample_rate_hz)?;
            let onset_s = burst_s + voice_onset_s;
            mix(&mut train.samples, &burst(consonant, rate, self.level_db - 6.0, seed), burst_s, rate);
            mix(&mut train.samples, &vowel.samples, onset_s - vowel.onset_s, rate);
            train.vowel_onsets_s.push(onset_s);
            train.offset_s = onset_s + vowel.offset_s - vowel.onset_s;
            let deviation = (self.irregularity_pct / 100.0 * gauss.draw()).clamp(-0.35, 1.0);
            burst_s += interval * (1.0 + deviation);
        }
        Ok(train)
    }
}

/// A release of 12 ms: low and flat for p, high for t, in the middle for k (loci as commonly described, no source).
fn burst(consonant: char, rate_hz: f64, level_db: f64, seed: u64) -> Vec<f32> {
    let mut gauss = Gauss::new(seed ^ 0xb0);
    let mut x: Vec<f64> = (0..(0.012 * rate_hz) as usize).map(|i| gauss.draw() * (-(i as f64) / (0.004 * rate_hz)).exp()).collect();
    let (centre, width): (f64, f64) = match consonant {
        'p' => (800.0, 1_200.0),
        't' => (3_500.0, 1_500.0),
        _ => (1_800.0, 700.0),
    };
    resonate(&mut x, centre.min(0.4 * rate_hz), width, rate_hz);
    scaled(&x, rate_hz, level_db)
}

fn mix(out: &mut Vec<f32>, x: &[f32], at_s: f64, rate_hz: f64) {
    let at = (at_s * rate_hz).round().max(0.0) as usize;
    if out.len() < at + x.len() {
        out.resize(at + x.len(), 0.0);
    }
    out.iter_mut().skip(at).zip(x).for_each(|(o, v)| *o += v);
}
