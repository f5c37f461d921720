//! Vowels of known pitch, onset and offset: a glottal pulse train through formants.
//!
//! The pulse is A. E. Rosenberg's (JASA 49, 1971, 583-590, his shape C: opening (1 - cos)/2 over 40 % of the period,
//! closing cos over 16 %), differentiated for the sound's leaving at the lips; the formants are D. H. Klatt's two-pole
//! resonators (JASA 67, 1980, 971-995).

use std::f64::consts::PI;

/// Formant frequencies and bandwidths, Hz; round figures near G. E. Peterson and H. L. Barney, JASA 24 (1952) 175-184.
pub const AH: [(f64, f64); 3] = [(730.0, 80.0), (1090.0, 90.0), (2440.0, 120.0)];
pub const EE: [(f64, f64); 3] = [(270.0, 60.0), (2290.0, 100.0), (3010.0, 120.0)];
pub const OO: [(f64, f64); 3] = [(300.0, 60.0), (870.0, 90.0), (2240.0, 120.0)];

/// A repeatable source of noise, -1 to 1.
pub struct Noise(pub u64);

impl Noise {
    pub fn next(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1u64 << 52) as f64 - 1.0
    }
}

struct Resonator {
    a: f64,
    b: f64,
    c: f64,
    y1: f64,
    y2: f64,
}

impl Resonator {
    fn new(f_hz: f64, width_hz: f64, rate_hz: f64) -> Self {
        let c = -(-2.0 * PI * width_hz / rate_hz).exp();
        let b = 2.0 * (-PI * width_hz / rate_hz).exp() * (2.0 * PI * f_hz / rate_hz).cos();
        Self { a: 1.0 - b - c, b, c, y1: 0.0, y2: 0.0 }
    }

    fn step(&mut self, x: f64) -> f64 {
        let y = self.a * x + self.b * self.y1 + self.c * self.y2;
        self.y2 = self.y1;
        self.y1 = y;
        y
    }
}

/// A vowel to be made.
pub struct Vowel {
    pub formants: [(f64, f64); 3],
    /// Instants of onset and offset in the recording, s.
    pub onset_s: f64,
    pub offset_s: f64,
    pub total_s: f64,
    /// F0 at a time since the onset, Hz.
    pub f0_hz: fn(f64) -> f64,
    /// Random change of each period, share.
    pub jitter: f64,
    /// Level of the vowel, dB (root mean square 1 is 0 dB).
    pub level_db: f64,
    /// Breath noise through the same formants, as a share of the pulses' strength.
    pub breath: f64,
    /// Level of white room noise, dB.
    pub room_db: f64,
}

impl Default for Vowel {
    fn default() -> Self {
        Self {
            formants: AH,
            onset_s: 0.7,
            offset_s: 2.9,
            total_s: 3.6,
            f0_hz: |_| 120.0,
            jitter: 0.005,
            level_db: -26.0,
            breath: 0.02,
            room_db: -75.0,
        }
    }
}

/// Rosenberg's pulse over one period, `phase` 0 to 1.
fn glottal_flow(phase: f64) -> f64 {
    match phase {
        p if p < 0.4 => 0.5 * (1.0 - (PI * p / 0.4).cos()),
        p if p < 0.56 => (PI * (p - 0.4) / 0.32).cos(),
        _ => 0.0,
    }
}

impl Vowel {
    /// The recording at `rate_hz`. Computed at a multiple of at least 48 kHz and averaged down, so that pulses fall
    /// between samples as they do in nature.
    pub fn sound(&self, rate_hz: u32) -> Vec<f32> {
        let times = 48_000u32.div_ceil(rate_hz) as usize;
        let fast = f64::from(rate_hz) * times as f64;
        let mut resonators: Vec<Resonator> = self.formants.iter().map(|(f, w)| Resonator::new(*f, *w, fast)).collect();
        let mut noise = Noise(0x9E37_79B9_7F4A_7C15);
        let (from, to) = ((self.onset_s * fast) as usize, (self.offset_s * fast) as usize);
        let (mut phase, mut stretch, mut before) = (0.0, 1.0, 0.0);
        let mut fine = vec![0.0; (self.total_s * fast) as usize];
        for (k, slot) in fine.iter_mut().enumerate().take(to).skip(from) {
            let since_s = (k - from) as f64 / fast;
            let step = (self.f0_hz)(since_s) * stretch / fast;
            phase += step;
            if phase >= 1.0 {
                phase -= 1.0;
                stretch = 1.0 + self.jitter * noise.next();
            }
            let flow = glottal_flow(phase);
            let source = (flow - before) / step + self.breath * 20.0 * noise.next();
            before = flow;
            *slot = resonators.iter_mut().fold(source, |x, r| r.step(x));
        }
        let power = fine.iter().map(|x| x * x).sum::<f64>() / (to - from).max(1) as f64;
        let gain = 10f64.powf(self.level_db / 20.0) / power.sqrt().max(1e-12);
        let room = 10f64.powf(self.room_db / 20.0) * 3f64.sqrt();
        // Fades of 5 ms, as a voice does not begin within one sample.
        let fade = 0.005 * fast;
        for (k, slot) in fine.iter_mut().enumerate().take(to).skip(from) {
            *slot *= gain * (((k - from) as f64 / fade).min((to - k) as f64 / fade)).min(1.0);
        }
        fine.chunks(times).map(|c| (c.iter().sum::<f64>() / times as f64 + room * noise.next()) as f32).collect()
    }
}
