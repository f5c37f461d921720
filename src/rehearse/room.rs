//! The room: what of client, loudspeaker and household reaches the microphone.

use super::error::RehearseError;
use super::noise::{Gauss, NoiseKind, NoiseSource};
use super::signal::{RATES_HZ, gain};
use audio::convolve::Convolver;
use std::f64::consts::PI;

/// Time from the direct sound to the first reflection, s (a table top 0.7 m below; common practice, no source).
const FIRST_REFLECTION_S: f64 = 0.004;
/// Tails are cut where they have fallen by this much of the 60 dB of the reverberation time.
const TAIL_CUT: f64 = 0.9;

/// What the loudspeaker does on its way to the microphone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Echo {
    /// Device and air, s; 0 to 0.5.
    pub delay_s: f64,
    /// Level at the microphone re what was played, dB, for sound within the band below the onset of distortion.
    pub level_db: f64,
    /// Band of the small loudspeaker, Hz, second-order (Butterworth) slopes.
    pub low_hz: f64,
    pub high_hz: f64,
    /// Soft clipping `tanh(drive · x) / drive`: 0 is linear, 1 is a small loudspeaker at its limit.
    pub drive: f64,
}

/// A room with a client, a loudspeaker, a microphone and a noise floor.
#[derive(Debug, Clone, PartialEq)]
pub struct RoomSpec {
    pub rate_hz: u32,
    /// Reverberation time T60, s; 0.05 to 2.
    pub rt60_s: f64,
    /// Direct over reverberant sound of the client, dB. The direct sound passes unchanged.
    pub direct_to_reverberant_db: f64,
    /// None: headphones.
    pub echo: Option<Echo>,
    pub noise: NoiseKind,
    /// RMS of the noise floor at the microphone, dB re full scale.
    pub noise_db: f64,
    pub seed: u64,
}

impl RoomSpec {
    /// A furnished living room, microphone on the table, small loudspeaker beside it (common practice, no source).
    #[must_use]
    pub fn living_room(rate_hz: u32) -> Self {
        Self {
            rate_hz,
            rt60_s: 0.3,
            direct_to_reverberant_db: 6.0,
            echo: Some(Echo { delay_s: 0.03, level_db: -12.0, low_hz: 250.0, high_hz: 9_000.0, drive: 0.5 }),
            noise: NoiseKind::Pink,
            noise_db: -62.0,
            seed: 1,
        }
    }
}

/// Moves all sound forward in blocks of 10 ms.
pub struct Room {
    block: usize,
    voice: Convolver,
    echo: Option<EchoPath>,
    noise: NoiseSource,
}

struct EchoPath {
    drive: f32,
    filters: [Biquad; 2],
    response: Convolver,
    buffer: Vec<f32>,
}

impl Room {
    /// # Errors
    /// A value outside its range, or a rate that has no whole number of frames in 10 ms.
    pub fn new(spec: &RoomSpec) -> Result<Self, RehearseError> {
        let fault = |what: String| Err(RehearseError(format!("room: {what}")));
        let rate = f64::from(spec.rate_hz);
        if !RATES_HZ.contains(&spec.rate_hz) || !spec.rate_hz.is_multiple_of(100) {
            return fault(format!("{} Hz must be a multiple of 100 from 8000 to 48000 Hz", spec.rate_hz));
        }
        if !(0.05..=2.0).contains(&spec.rt60_s) {
            return fault(format!("a reverberation time of {} s must be from 0.05 to 2 s", spec.rt60_s));
        }
        if !spec.direct_to_reverberant_db.is_finite() || !spec.noise_db.is_finite() {
            return fault("levels must be finite numbers".into());
        }
        let block = (spec.rate_hz / 100) as usize;
        let direct = response(spec.rt60_s, spec.direct_to_reverberant_db, rate, &mut Gauss::new(spec.seed));
        let echo = match &spec.echo {
            None => None,
            Some(e) => {
                if !(0.0..=0.5).contains(&e.delay_s) || !(-120.0..=20.0).contains(&e.level_db) || !(0.0..=10.0).contains(&e.drive) {
                    return fault(format!("{e:?}: delay 0 to 0.5 s, level -120 to 20 dB, drive 0 to 10"));
                }
                if !(20.0..e.high_hz).contains(&e.low_hz) {
                    return fault(format!("the loudspeaker's band {} to {} Hz is empty or begins below 20 Hz", e.low_hz, e.high_hz));
                }
                // The loudspeaker stands nearer than the mouth: another response, as lively.
                let mut tail = response(spec.rt60_s, spec.direct_to_reverberant_db, rate, &mut Gauss::new(spec.seed ^ 0x5eed));
                let energy: f64 = tail.iter().map(|v| f64::from(*v) * f64::from(*v)).sum();
                let scale = (gain(e.level_db) / energy.sqrt()) as f32;
                tail.iter_mut().for_each(|v| *v *= scale);
                let mut delayed = vec![0.0; (e.delay_s * rate).round() as usize];
                delayed.append(&mut tail);
                let high = e.high_hz.min(0.45 * rate);
                Some(EchoPath {
                    drive: e.drive as f32,
                    filters: [Biquad::high_pass(e.low_hz, rate), Biquad::low_pass(high, rate)],
                    response: Convolver::new(&delayed, block),
                    buffer: vec![0.0; block],
                })
            }
        };
        Ok(Self {
            block,
            voice: Convolver::new(&direct, block),
            echo,
            noise: NoiseSource::new(spec.noise, spec.noise_db, spec.rate_hz, spec.seed ^ 0x0015e),
        })
    }

    /// Frames in one block.
    #[must_use]
    pub fn block_frames(&self) -> usize {
        self.block
    }

    /// What the microphone hears while the loudspeaker gets and the client gives these blocks; clipped at full scale as
    /// a microphone would. Slices of another length than [`Room::block_frames`] leave `mic` silent.
    pub fn step(&mut self, loudspeaker: &[f32], client: &[f32], mic: &mut [f32]) {
        mic.fill(0.0);
        if [loudspeaker.len(), client.len(), mic.len()] != [self.block; 3] {
            debug_assert!(false, "blocks must have {} frames", self.block);
            return;
        }
        self.voice.add(client, mic);
        if let Some(echo) = &mut self.echo {
            for (y, &x) in echo.buffer.iter_mut().zip(loudspeaker) {
                let pushed = if echo.drive > 0.0 { (echo.drive * x).tanh() / echo.drive } else { x };
                *y = echo.filters.iter_mut().fold(pushed, |v, f| f.step(v));
            }
            echo.response.add(&echo.buffer, mic);
        }
        self.noise.add_to(mic);
        mic.iter_mut().for_each(|v| *v = v.clamp(-1.0, 1.0));
    }
}

/// Direct sound of 1 and an exponentially decaying tail of normal noise (Moorer 1979's model of late reverberation,
/// Computer Music Journal 3(2):13, from memory), scaled so that its energy lies `ratio_db` below the direct sound.
pub(super) fn response(rt60_s: f64, ratio_db: f64, rate_hz: f64, gauss: &mut Gauss) -> Vec<f32> {
    let start = (FIRST_REFLECTION_S * rate_hz) as usize;
    let len = (rt60_s * TAIL_CUT * rate_hz) as usize;
    // 60 dB in rt60: amplitude e^(-3 ln10 t / T60).
    let fall = 3.0 * 10f64.ln() / (rt60_s * rate_hz);
    let tail: Vec<f64> = (0..len).map(|i| if i < start { 0.0 } else { gauss.draw() * (-fall * i as f64).exp() }).collect();
    let energy: f64 = tail.iter().map(|v| v * v).sum();
    let scale = if energy > 0.0 { gain(-ratio_db) / energy.sqrt() } else { 0.0 };
    std::iter::once(1.0f32).chain(tail.iter().skip(1).map(|v| (v * scale) as f32)).collect()
}

/// Second-order Butterworth section by the bilinear transform (R. Bristow-Johnson's cookbook formulas, from memory).
struct Biquad {
    b: [f32; 3],
    a: [f32; 2],
    x: [f32; 2],
    y: [f32; 2],
}

impl Biquad {
    fn new(f_hz: f64, rate_hz: f64, high: bool) -> Self {
        let w = 2.0 * PI * f_hz / rate_hz;
        let alpha = w.sin() / 2f64.sqrt();
        let a0 = 1.0 + alpha;
        let edge = if high { (1.0 + w.cos()) / 2.0 } else { (1.0 - w.cos()) / 2.0 };
        let middle = if high { -2.0 * edge } else { 2.0 * edge };
        Self {
            b: [edge, middle, edge].map(|v| (v / a0) as f32),
            a: [-2.0 * w.cos(), 1.0 - alpha].map(|v| (v / a0) as f32),
            x: [0.0; 2],
            y: [0.0; 2],
        }
    }

    fn high_pass(f_hz: f64, rate_hz: f64) -> Self {
        Self::new(f_hz, rate_hz, true)
    }

    fn low_pass(f_hz: f64, rate_hz: f64) -> Self {
        Self::new(f_hz, rate_hz, false)
    }

    fn step(&mut self, x: f32) -> f32 {
        let y = self.b[0] * x + self.b[1] * self.x[0] + self.b[2] * self.x[1] - self.a[0] * self.y[0] - self.a[1] * self.y[1];
        // What has died away is silence, so that the convolution may rest.
        let y = if y.abs() < 1e-9 { 0.0 } else { y };
        self.x = [x, self.x[0]];
        self.y = [y, self.y[0]];
        y
    }
}
