//! Seeded noise: white, pink and the sound of a kitchen, endless, in blocks of any size.

use super::signal::gain;
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};
use std::f64::consts::PI;

/// Normal deviates (Box & Muller 1958) from a seed.
pub(crate) struct Gauss {
    rng: StdRng,
    spare: Option<f64>,
}

impl Gauss {
    pub(crate) fn new(seed: u64) -> Self {
        Self { rng: StdRng::seed_from_u64(seed), spare: None }
    }

    /// Mean 0, SD 1.
    pub(crate) fn draw(&mut self) -> f64 {
        if let Some(v) = self.spare.take() {
            return v;
        }
        let u: f64 = 1.0 - self.rng.random::<f64>();
        let angle = 2.0 * PI * self.rng.random::<f64>();
        let radius = (-2.0 * u.ln()).sqrt();
        self.spare = Some(radius * angle.sin());
        radius * angle.cos()
    }

    /// Mean 0, SD 1, nearly normal (sum of four uniform numbers; no tail beyond 3.5 SD), several times as fast.
    fn draw_roughly(&mut self) -> f64 {
        let bits: u64 = self.rng.random();
        let sum: u64 = (0..4).map(|n| (bits >> (16 * n)) & 0xffff).sum();
        // Four uniform numbers of width w have SD w·√(4/12).
        (sum as f64 - 2.0 * 65_535.0) / (65_536.0 / 3f64.sqrt())
    }

    /// Uniform from `low` to `high`.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.rng.random::<f64>()
    }
}

/// What the room sounds like when nobody speaks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Deserialize, serde::Serialize)]
#[serde(rename_all = "lowercase")]
pub enum NoiseKind {
    White,
    /// Falls by 3 dB per octave.
    Pink,
    /// Pink, a refrigerator's hum (100 Hz and its multiples) and a dish now and then.
    Kitchen,
}

/// Pinking filter as a sum of one-pole low-passes, `(pole at 44.1 kHz, weight)`: the widely used coefficients of P. Kellet,
/// from memory. The poles are moved so that each keeps its corner frequency at other rates.
const PINK: [(f64, f64); 6] = [
    (0.998_86, 0.055_517_9),
    (0.993_32, 0.075_075_9),
    (0.969_00, 0.153_852_0),
    (0.866_50, 0.310_485_6),
    (0.550_00, 0.532_952_2),
    (-0.761_6, -0.016_898_0),
];
/// Weight of the unfiltered noise beside them.
const PINK_DIRECT: f64 = 0.536_2;
/// Mean time between two dishes, s.
const DISH_EVERY_S: f64 = 9.0;

/// An endless stream of noise at one level.
pub struct NoiseSource {
    kind: NoiseKind,
    rate_hz: f64,
    gauss: Gauss,
    rms: f64,
    filters: Vec<(f64, f64, f64)>,
    pink_scale: f64,
    hum_phase: f64,
    next_dish: f64,
    dish: Option<Dish>,
}

/// A damped pair of partials.
struct Dish {
    t_s: f64,
    f_hz: f64,
    amplitude: f64,
}

impl NoiseSource {
    /// `level_db`: RMS, dB re full scale (of the steady part: dishes come on top); -200 or less is silence.
    #[must_use]
    pub fn new(kind: NoiseKind, level_db: f64, rate_hz: u32, seed: u64) -> Self {
        let rate = f64::from(rate_hz);
        let filters: Vec<(f64, f64, f64)> = PINK
            .iter()
            .map(|&(pole, weight)| {
                if pole <= 0.0 {
                    return (pole, weight, 0.0);
                }
                let moved = pole.powf(44_100.0 / rate);
                (moved, weight * (1.0 - moved) / (1.0 - pole), 0.0)
            })
            .collect();
        // Variance of the sum of filters driven by unit white noise: Σ Σ w_i w_j / (1 − p_i p_j) with the direct path as pole 0.
        let all: Vec<(f64, f64)> = filters.iter().map(|f| (f.0, f.1)).chain([(0.0, PINK_DIRECT)]).collect();
        let variance: f64 = all.iter().flat_map(|a| all.iter().map(move |b| a.1 * b.1 / (1.0 - a.0 * b.0))).sum();
        let mut gauss = Gauss::new(seed);
        let next_dish = gauss.between(0.3, 1.7) * DISH_EVERY_S;
        Self {
            kind,
            rate_hz: rate,
            gauss,
            rms: if level_db <= -200.0 { 0.0 } else { gain(level_db) },
            filters,
            pink_scale: 1.0 / variance.sqrt(),
            hum_phase: 0.0,
            next_dish,
            dish: None,
        }
    }

    /// Adds the next samples to `out`.
    pub fn add_to(&mut self, out: &mut [f32]) {
        if self.rms == 0.0 {
            return;
        }
        for v in out {
            let x = match self.kind {
                NoiseKind::White => self.gauss.draw_roughly(),
                NoiseKind::Pink => self.pink(),
                NoiseKind::Kitchen => 0.9 * self.pink() + self.hum() + self.clink(),
            };
            *v += (x * self.rms) as f32;
        }
    }

    fn pink(&mut self) -> f64 {
        let white = self.gauss.draw_roughly();
        let mut sum = PINK_DIRECT * white;
        for (pole, weight, state) in &mut self.filters {
            *state = *pole * *state + *weight * white;
            sum += *state;
        }
        sum * self.pink_scale
    }

    /// RMS √(1 − 0.9²), so that hum and pink together have RMS 1.
    fn hum(&mut self) -> f64 {
        self.hum_phase = (self.hum_phase + 100.0 / self.rate_hz).fract();
        let p = 2.0 * PI * self.hum_phase;
        // Partials 1, 1/2, 1/4: power (1 + 1/4 + 1/16) / 2.
        let wave = p.sin() + 0.5 * (2.0 * p).sin() + 0.25 * (3.0 * p).sin();
        wave * (0.19f64 / (0.5 * (1.0 + 0.25 + 0.0625))).sqrt()
    }

    fn clink(&mut self) -> f64 {
        let step = 1.0 / self.rate_hz;
        self.next_dish -= step;
        if self.next_dish <= 0.0 {
            self.next_dish = self.gauss.between(0.3, 1.7) * DISH_EVERY_S;
            let f_hz = self.gauss.between(1_500.0, 3_200.0);
            self.dish = Some(Dish { t_s: 0.0, f_hz, amplitude: self.gauss.between(5.0, 15.0) });
        }
        let Some(dish) = &mut self.dish else { return 0.0 };
        dish.t_s += step;
        let p = 2.0 * PI * dish.f_hz * dish.t_s;
        let y = dish.amplitude * (-dish.t_s / 0.03).exp() * (p.sin() + 0.5 * (1.83 * p).sin());
        if dish.t_s > 0.4 {
            self.dish = None;
        }
        y
    }
}
