//! Tells a held vowel from speech, coughs and noises that are voiced as well, by how little it changes.

use super::bands::{BANDS, distance};
use super::interval::semitones;

/// What is kept of each frame of a run of voicing.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct RunFrame {
    pub t_s: f64,
    pub level_db: f64,
    /// Power in the band in which periods are looked for, dB.
    pub power_db: f64,
    /// Level over the room's, dB; large while the room is not known.
    pub over_room_db: f64,
    /// 0 where unvoiced.
    pub f0_hz: f64,
    pub periodicity: f64,
    pub shape: [f32; BANDS],
    pub masked: bool,
    pub clipped: bool,
    /// Some of its samples were lost.
    pub lost: bool,
}

/// How much a stretch of frames moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Steadiness {
    /// Mean change of the colour over 100 ms, dB.
    pub flux_db: f64,
    /// Mean distance of the colour from its mean over the stretch, dB.
    pub spread_db: f64,
    /// 10th to 90th percentile of F0, semitones.
    pub pitch_st: f64,
    /// The same after the straight line through it is taken off: what is left of a glide is little.
    pub waver_st: f64,
    /// Both with slips to a subharmonic taken back ([`without_slip`]): what counts where the pitch is meant to stay.
    pub mended_pitch_st: f64,
    pub mended_waver_st: f64,
    /// Share of voiced frames.
    pub voiced: f64,
    /// Mean periodicity of voiced frames.
    pub periodicity: f64,
    /// How regularly F0 swings at the rate of a tremor, 0 to 1.
    pub tremor: f64,
}

/// The value below which a share of the values lies; 0 for none. Sorts in place.
pub(crate) fn percentile(values: &mut [f64], share: f64) -> f64 {
    statistics::quantile(values, share).unwrap_or(0.0)
}

/// The mean colour of the voiced frames.
pub(crate) fn mean_shape(frames: &[RunFrame]) -> [f32; BANDS] {
    let mut mean = [0f32; BANDS];
    let mut count = 0.0;
    for frame in frames.iter().filter(|f| f.f0_hz > 0.0) {
        count += 1.0;
        mean.iter_mut().zip(&frame.shape).for_each(|(m, s)| *m += (s - *m) / count);
    }
    mean
}

/// Memory for the values that are sorted or gone through: it is kept, so that frames take none.
#[derive(Debug, Clone, Default)]
pub(crate) struct Scratch(Vec<f64>);

impl Scratch {
    /// For so many values.
    pub fn with_room(values: usize) -> Self {
        Self(Vec::with_capacity(values))
    }

    /// The values, gathered.
    fn gather(&mut self, values: impl Iterator<Item = f64>) -> &mut [f64] {
        self.0.clear();
        self.0.extend(values);
        &mut self.0
    }

    /// [`percentile`] of values that need not be gathered beforehand.
    pub fn percentile(&mut self, values: impl Iterator<Item = f64>, share: f64) -> f64 {
        percentile(self.gather(values), share)
    }

    /// From the 10th to the 90th percentile.
    fn middle_span(&mut self, values: impl Iterator<Item = f64>) -> f64 {
        let values = self.gather(values);
        percentile(values, 0.9) - percentile(values, 0.1)
    }
}

impl Steadiness {
    pub fn of(frames: &[RunFrame], scratch: &mut Scratch) -> Self {
        let voiced = || frames.iter().filter(|f| f.f0_hz > 0.0);
        let found = voiced().count();
        let count = found.max(1) as f64;
        let mean = mean_shape(frames);
        let spread_db = voiced().map(|f| distance(&f.shape, &mean)).sum::<f64>() / count;
        const APART: usize = 10;
        let pairs = frames.iter().zip(frames.iter().skip(APART)).filter(|(a, b)| a.f0_hz > 0.0 && b.f0_hz > 0.0);
        let (sum, pairs) = pairs.fold((0.0, 0.0), |(s, n), (a, b)| (s + distance(&a.shape, &b.shape), n + 1.0));
        let line = regression(voiced().map(|f| (f.t_s, semitones(f.f0_hz, 1.0))));
        let median_st = scratch.percentile(voiced().map(|f| semitones(f.f0_hz, 1.0)), 0.5);
        let mended = |f: &RunFrame| without_slip(semitones(f.f0_hz, 1.0), median_st);
        let mended_line = regression(voiced().map(|f| (f.t_s, mended(f))));
        Self {
            flux_db: if pairs > 0.0 { sum / pairs } else { 99.0 },
            spread_db,
            pitch_st: scratch.middle_span(voiced().map(|f| semitones(f.f0_hz, 1.0))),
            waver_st: scratch.middle_span(voiced().map(|f| semitones(f.f0_hz, 1.0) - line * f.t_s)),
            mended_pitch_st: scratch.middle_span(voiced().map(mended)),
            mended_waver_st: scratch.middle_span(voiced().map(|f| mended(f) - mended_line * f.t_s)),
            voiced: found as f64 / frames.len().max(1) as f64,
            periodicity: voiced().map(|f| f.periodicity).sum::<f64>() / count,
            tremor: tremor(frames, line, scratch),
        }
    }

    /// Whether this is how a held vowel behaves. `glide`: the pitch is meant to move.
    pub fn is_hold(&self, glide: bool) -> bool {
        let (pitch_limit, waver_limit, flux_limit): (f64, f64, f64) = if glide { (20.0, 4.0, 5.0) } else { (6.0, 2.5, 4.2) };
        // A trembling voice swings far, and its overtones through the formants with it, but evenly: speech does not.
        let trembles = self.tremor > 0.8 && self.voiced > 0.95;
        let (waver_limit, flux_limit) = if trembles { (waver_limit.max(5.5), 6.0) } else { (waver_limit, flux_limit) };
        let (pitch_st, waver_st) = if glide {
            (self.pitch_st, self.waver_st)
        } else {
            (self.pitch_st.min(self.mended_pitch_st), self.waver_st.min(self.mended_waver_st))
        };
        self.voiced > 0.85
            && self.flux_db < flux_limit
            && self.spread_db < 5.0
            && pitch_st < pitch_limit.max(waver_limit + 1.0)
            && waver_st < waver_limit
    }
}

/// The pitch without a slip to the subharmonic of two or three periods, or back from it: a rough voice repeats itself after two or three
/// of its periods as well as after one, and the path through the candidates may go to and fro between them (ratios 2, 3 and 3:2).
fn without_slip(pitch_st: f64, median_st: f64) -> f64 {
    /// So near to the ratio, semitones.
    const WITHIN_ST: f64 = 0.7;
    let away = (pitch_st - median_st).abs();
    let slipped = [12.0, 19.02, 7.02].iter().any(|ratio| (away - ratio).abs() < WITHIN_ST);
    if slipped { median_st } else { pitch_st }
}

/// Slowest and fastest swing of a voice's tremor looked for, frames: 3.3 to 10 Hz. (Pathological tremor lies at 4 to 8 Hz,
/// vibrato at 4.5 to 6.5 Hz: from memory.)
const TREMOR_FRAMES: std::ops::RangeInclusive<usize> = 10..=30;

/// How regularly F0 swings: the autocorrelation of its contour, less the line of `slope_st` a second, at the best lag of
/// [`TREMOR_FRAMES`]; 0 where half that lag does not turn it about.
fn tremor(frames: &[RunFrame], slope_st: f64, scratch: &mut Scratch) -> f64 {
    let mut last = 0.0;
    let contour = scratch.gather(frames.iter().map(|f| {
        if f.f0_hz > 0.0 {
            last = semitones(f.f0_hz, 1.0) - slope_st * f.t_s;
        }
        last
    }));
    let mean = contour.iter().sum::<f64>() / contour.len().max(1) as f64;
    contour.iter_mut().for_each(|x| *x -= mean);
    let at = |lag: usize| {
        let (mut both, mut early, mut late) = (0.0, 0.0, 0.0);
        for (a, b) in contour.iter().zip(contour.iter().skip(lag)) {
            (both, early, late) = (both + a * b, early + a * a, late + b * b);
        }
        both / (early * late).sqrt().max(1e-9)
    };
    TREMOR_FRAMES.filter(|lag| contour.len() >= 2 * lag && at(lag / 2) < -0.4).map(at).fold(0.0, f64::max)
}

/// Least squares slope of y over x; 0 where it is not defined.
pub(crate) fn regression(points: impl Iterator<Item = (f64, f64)> + Clone) -> f64 {
    let n = points.clone().count() as f64;
    if n < 2.0 {
        return 0.0;
    }
    let mean_x = points.clone().map(|p| p.0).sum::<f64>() / n;
    let mean_y = points.clone().map(|p| p.1).sum::<f64>() / n;
    let (xy, xx) = points.fold((0.0, 0.0), |(xy, xx), (x, y)| (xy + (x - mean_x) * (y - mean_y), xx + (x - mean_x).powi(2)));
    if xx > 0.0 { xy / xx } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 0.6 s with the F0 given for each frame, all else steady.
    fn is_hold(f0_hz: impl Fn(usize) -> f64, glide: bool) -> bool {
        let frame =
            |k: usize| RunFrame { t_s: k as f64 / 100.0, level_db: -30.0, f0_hz: f0_hz(k), periodicity: 0.9, ..RunFrame::default() };
        let frames: Vec<RunFrame> = (0..60).map(frame).collect();
        Steadiness::of(&frames, &mut Scratch::default()).is_hold(glide)
    }

    /// Now and then, unevenly: an even swing is a tremor.
    fn jumps(k: usize) -> bool {
        [8..15, 19..22, 38..50].iter().any(|span| span.contains(&k))
    }

    #[test]
    fn slips_to_a_subharmonic_are_no_wandering_pitch_and_other_jumps_are() {
        for ratio in [1.5, 2.0, 3.0] {
            assert!(is_hold(|k| if jumps(k) { 156.0 / ratio } else { 156.0 }, false), "{ratio}");
        }
        assert!(!is_hold(|k| if jumps(k) { 156.0 / 1.26 } else { 156.0 }, false), "a third");
        assert!(!is_hold(|k| if jumps(k) { 156.0 / 1.5 } else { 156.0 }, true), "where the pitch may glide nothing is taken back");
        assert!(is_hold(|k| 150.0 + 0.5 * k as f64, true));
    }
}
