//! What two sayings are compared by: cepstra over a common floor, and dynamic time warping between them.
//!
//! The room's noise is dealt with by *noise masking* (Klatt, "A digital filter bank for spectral matching", ICASSP 1976): before two
//! pictures are compared, what lies under the noise of either is lifted to the louder of the two floors in both, so that only
//! what can be heard in both counts. Cepstra 1 to 10 with the usual sine lifter of 22 (Young et al., "The HTK Book", 5.6;
//! from memory), mean and spread over the word made equal (Viikki and Laurila, "Cepstral domain segmental feature vector normalization",
//! Speech Communication 25, 1998), and their slopes over five frames.
//!
//! The constants were chosen on every other speaker of the Speech Commands test part (`benches/enrol/reference/likeness.py`, "odd"): of 508 other words 2 %
//! were taken at 81 % of the speakers' own, against 19 % before the spread was made equal and 72 % with 12 cepstra and -35 dB.

use super::mel::BANDS;
use super::take::Take;

/// Cepstra.
const CEPSTRA: usize = 10;
/// Cepstra, loudness, and the slopes of both.
const SIZE: usize = 2 * (CEPSTRA + 1);
const LIFTER: f32 = 22.0;
/// The floor lies so much over the noise's mean, dB, and never deeper than this under the word's loud frames.
const OVER_NOISE_DB: f32 = 4.0;
const DEEPEST_DB: f32 = -30.0;
/// What each quantity's spread is brought to, and what is added to it first, so that a quantity that hardly moves is not blown up.
const SPREAD: f32 = 5.0;
const LEAST_SPREAD: f32 = 0.5;
/// Weights of loudness (dB) before its spread is made equal, and of slopes (per frame).
const LOUDNESS_WEIGHT: f32 = 0.35;
const SLOPE_WEIGHT: f32 = 1.6;
/// Widest warp: so far off the straight line, as a share of the length.
const WIDEST_WARP: f32 = 0.3;
/// Words whose lengths differ by more than this factor are not the same.
const LENGTHS_FACTOR: f32 = 1.7;

/// One frame.
pub(super) type Point = [f32; SIZE];

/// The noise of a take, dB re its own loud frames.
pub(super) fn floor_of(take: &Take) -> [f32; BANDS] {
    let peak = peak_db(take);
    take.noise.map(|n| (f32::from(n) / 2.0 - peak + OVER_NOISE_DB).max(DEEPEST_DB))
}

/// The louder of two floors.
pub(super) fn common_floor(a: &[f32; BANDS], b: &[f32; BANDS]) -> [f32; BANDS] {
    let mut floor = *a;
    floor.iter_mut().zip(b).for_each(|(x, &y)| *x = x.max(y));
    floor
}

/// Level of the loud frames: nine tenths are softer, dB on the take's own scale.
fn peak_db(take: &Take) -> f32 {
    let mut levels: Vec<f32> = take.frames.iter().map(|f| f.iter().map(|&b| f32::from(b) / 2.0).fold(0.0, f32::max)).collect();
    levels.sort_by(f32::total_cmp);
    levels.get(levels.len() * 9 / 10).or(levels.last()).copied().unwrap_or(0.0)
}

/// Tables that every pattern needs.
pub(super) struct Transform {
    /// Liftered cosines: cepstrum by band.
    cosines: [[f32; BANDS]; CEPSTRA],
}

impl Transform {
    pub fn new() -> Self {
        let mut cosines = [[0.0; BANDS]; CEPSTRA];
        for (k, row) in cosines.iter_mut().enumerate() {
            let n = (k + 1) as f32;
            let lifter = 1.0 + LIFTER / 2.0 * (std::f32::consts::PI * n / LIFTER).sin();
            for (j, cosine) in row.iter_mut().enumerate() {
                let arc = std::f32::consts::PI * n * (j as f32 + 0.5) / BANDS as f32;
                // Natural logarithms of power instead of dB: ln 10 / 10.
                *cosine = (2.0 / BANDS as f32).sqrt() * arc.cos() * lifter * std::f32::consts::LN_10 / 10.0;
            }
        }
        Self { cosines }
    }

    /// The take over a floor (dB re its loud frames).
    pub fn pattern(&self, take: &Take, floor: &[f32; BANDS]) -> Vec<Point> {
        let peak = peak_db(take);
        let mut points: Vec<Point> = take.frames.iter().map(|frame| self.point(frame, peak, floor)).collect();
        make_equal(&mut points);
        add_slopes(&mut points);
        points
    }

    fn point(&self, frame: &[u8; BANDS], peak: f32, floor: &[f32; BANDS]) -> Point {
        let mut bands = [0.0; BANDS];
        for ((to, &from), &least) in bands.iter_mut().zip(frame).zip(floor) {
            *to = (f32::from(from) / 2.0 - peak).max(least);
        }
        let mut point = [0.0; SIZE];
        for (to, row) in point.iter_mut().zip(&self.cosines) {
            *to = row.iter().zip(&bands).map(|(c, b)| c * b).sum();
        }
        if let Some(loudness) = point.get_mut(CEPSTRA) {
            *loudness = LOUDNESS_WEIGHT * bands.iter().sum::<f32>() / BANDS as f32;
        }
        point
    }
}

/// Makes mean and spread of each quantity equal: microphone, room, noise and the person's long-term timbre go with them.
fn make_equal(points: &mut [Point]) {
    let count = points.len().max(1) as f32;
    let (mut mean, mut spread) = ([0.0; SIZE], [0.0; SIZE]);
    for point in points.iter() {
        mean.iter_mut().zip(point).for_each(|(m, x)| *m += x / count);
    }
    for point in points.iter() {
        spread.iter_mut().zip(point).zip(&mean).for_each(|((s, x), m)| *s += (x - m) * (x - m) / count);
    }
    for point in points {
        for ((x, m), s) in point.iter_mut().zip(&mean).zip(&spread) {
            *x = (*x - m) / (s.sqrt() + LEAST_SPREAD) * SPREAD;
        }
    }
}

/// Slopes by regression over two frames either side.
fn add_slopes(points: &mut [Point]) {
    let statics: Vec<Point> = points.to_vec();
    let last = statics.len().saturating_sub(1);
    for (i, point) in points.iter_mut().enumerate() {
        let at = |offset: isize| statics.get(i.saturating_add_signed(offset).min(last));
        let (Some(a), Some(b), Some(c), Some(d)) = (at(-2), at(-1), at(1), at(2)) else { continue };
        let (_, slopes) = point.split_at_mut(CEPSTRA + 1);
        for ((((to, a), b), c), d) in slopes.iter_mut().zip(a).zip(b).zip(c).zip(d) {
            *to = SLOPE_WEIGHT * (2.0 * (d - a) + (c - b)) / 10.0;
        }
    }
}

/// Room for the warping, kept from one comparison to the next.
#[derive(Default)]
pub(super) struct Warp {
    above: Vec<f32>,
    row: Vec<f32>,
}

impl Warp {
    /// Mean distance along the best path (symmetric steps, diagonal counted twice; Sakoe and Chiba, IEEE Trans. ASSP 26, 1978);
    /// infinite where the lengths differ too much.
    pub fn distance(&mut self, a: &[Point], b: &[Point]) -> f32 {
        let (n, m) = (a.len() as f32, b.len() as f32);
        if a.is_empty() || b.is_empty() || n > m * LENGTHS_FACTOR || m > n * LENGTHS_FACTOR {
            return f32::INFINITY;
        }
        let reach = (WIDEST_WARP * n.max(m)).max((n - m).abs() * 0.5 + 4.0);
        self.above.clear();
        self.above.resize(b.len(), f32::INFINITY);
        self.row.clear();
        self.row.resize(b.len(), f32::INFINITY);
        for (i, x) in a.iter().enumerate() {
            let middle = i as f32 * m / n;
            let from = (middle - reach).max(0.0) as usize;
            let to = ((middle + reach) as usize).min(b.len().saturating_sub(1));
            let mut corner = if i == 0 && from == 0 {
                0.0
            } else {
                from.checked_sub(1).and_then(|j| self.above.get(j)).copied().unwrap_or(f32::INFINITY)
            };
            let mut left = f32::INFINITY;
            self.row.fill(f32::INFINITY);
            let cells = self.row.iter_mut().zip(&self.above).zip(b).skip(from).take(to + 1 - from.min(to));
            for ((cell, &above), y) in cells {
                let d = x.iter().zip(y).map(|(p, q)| (p - q) * (p - q)).sum::<f32>().sqrt();
                *cell = (corner + 2.0 * d).min(above + d).min(left + d);
                corner = above;
                left = *cell;
            }
            std::mem::swap(&mut self.row, &mut self.above);
        }
        self.above.last().copied().unwrap_or(f32::INFINITY) / (n + m)
    }
}
