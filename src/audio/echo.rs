//! Taking what we played out of what the microphone heard, for the command path.

use super::{AudioError, ECHO_RATE_HZ, EchoCanceller};
use super::speex::Speex;
use sonora::{AudioProcessing, Config, StreamConfig};

/// Leaves the microphone as it is: where nothing is played aloud, or the gate alone is wanted.
#[derive(Debug, Clone, Copy, Default)]
pub struct NoCancel;

impl EchoCanceller for NoCancel {
    fn cancel(&mut self, _played: &[f32], _mic: &mut [f32]) {}
}

/// The `sonora` library's echo canceller; its noise suppression and gain control stay off, for both change level.
///
/// It finds the delay between the two signals by itself, up to about 330 ms, and follows clocks that drift apart.
pub struct AdaptiveCanceller {
    processing: AudioProcessing,
    scratch: Vec<f32>,
}

impl AdaptiveCanceller {
    /// A canceller that has learned nothing yet; it needs about two seconds of playback.
    #[must_use]
    pub fn new() -> Self {
        let stream = StreamConfig::new(ECHO_RATE_HZ, 1);
        let config = Config { echo_canceller: Some(sonora::config::EchoCanceller::default()), ..Config::default() };
        let processing = AudioProcessing::builder().config(config).capture_config(stream).render_config(stream).build();
        Self { processing, scratch: vec![0.0; stream.num_frames()] }
    }

    fn process(&mut self, played: &[f32], mic: &mut [f32]) -> Result<(), AudioError> {
        let failed = |e| AudioError::Device(format!("the echo canceller refused a block: {e:?}"));
        self.processing.process_render_f32(&[played], &mut [&mut self.scratch]).map_err(failed)?;
        self.processing.process_capture_f32(&[mic], &mut [&mut self.scratch]).map_err(failed)?;
        mic.copy_from_slice(&self.scratch);
        Ok(())
    }
}

impl Default for AdaptiveCanceller {
    fn default() -> Self {
        Self::new()
    }
}

impl EchoCanceller for AdaptiveCanceller {
    fn cancel(&mut self, played: &[f32], mic: &mut [f32]) {
        if played.len() != self.scratch.len() || mic.len() != self.scratch.len() {
            tracing::error!(played = played.len(), mic = mic.len(), "a block for the echo canceller is not 10 ms long");
            return;
        }
        if let Err(error) = self.process(played, mic) {
            // The raw microphone goes on; the gate still guards it.
            tracing::error!(%error);
        }
    }
}

/// Longest echo that the linear filter follows, s: the delay left after alignment plus the room.
const TAIL_S: f64 = 0.3;
/// Mean power of a block above which something is being played (−60 dBFS).
const PLAYING: f64 = 1e-6;
/// Blocks of playback per judgement: 5 s.
const WINDOW: u32 = 500;
/// Reduction in dB that the linear filter must reach.
const ENOUGH_DB: f64 = 10.0;
/// Judgements in a row that must find too little; a person who talks all through one does not count as failure.
const FAILURES: u32 = 2;
/// Power of the microphone over that of its quietest second without playback, from which on there is an echo worth
/// judging by (10 dB).
const OVER_NOISE: f64 = 10.0;
/// Blocks after playback that may still hold its echo.
const AFTERMATH: u32 = 50;

/// Runs libspeexdsp's linear filter, which leaves the person's words unharmed while both devices share a clock, and
/// changes over to [`AdaptiveCanceller`] for good where it achieves too little: clocks that drift, a distorting
/// loudspeaker.
pub struct AutoCanceller {
    /// None once it has failed.
    linear: Option<Speex>,
    adaptive: AdaptiveCanceller,
    judge: Judge,
}

impl AutoCanceller {
    /// A canceller that has learned nothing yet; it needs three to five seconds of playback.
    #[must_use]
    pub fn new() -> Self {
        Self {
            linear: Speex::new(ECHO_RATE_HZ, (ECHO_RATE_HZ / 100) as usize, TAIL_S),
            adaptive: AdaptiveCanceller::new(),
            judge: Judge::default(),
        }
    }

    /// Whether the linear filter was given up.
    #[must_use]
    pub fn has_fallen_back(&self) -> bool {
        self.linear.is_none()
    }
}

impl Default for AutoCanceller {
    fn default() -> Self {
        Self::new()
    }
}

impl EchoCanceller for AutoCanceller {
    fn cancel(&mut self, played: &[f32], mic: &mut [f32]) {
        let Some(linear) = &mut self.linear else {
            return self.adaptive.cancel(played, mic);
        };
        let before = power(mic);
        linear.cancel(played, mic);
        if self.judge.has_failed(power(played), before, power(mic)) {
            tracing::info!("the linear echo canceller achieves too little here; changing over");
            self.linear = None;
        }
    }
}

fn power(block: &[f32]) -> f64 {
    block.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / block.len().max(1) as f64
}

/// Watches how much a canceller achieves while something is played.
#[derive(Debug)]
struct Judge {
    blocks: u32,
    before: f64,
    after: f64,
    /// Power of the quietest second without playback; unknown at first, and then any echo counts as heard.
    noise: Option<f64>,
    second: (u32, f64),
    since_played: u32,
    /// The first window is for learning.
    windows: u32,
    failures: u32,
}

impl Default for Judge {
    fn default() -> Self {
        Self { blocks: 0, before: 0.0, after: 0.0, noise: None, second: (0, 0.0), since_played: 0, windows: 0, failures: 0 }
    }
}

impl Judge {
    /// Takes the mean powers of one block; true once the canceller has failed.
    fn has_failed(&mut self, played: f64, before: f64, after: f64) -> bool {
        if played < PLAYING {
            self.since_played = self.since_played.saturating_add(1);
            if self.since_played > AFTERMATH {
                self.second = (self.second.0 + 1, self.second.1 + before);
            }
            if self.second.0 == 100 {
                let mean = self.second.1 / 100.0;
                self.noise = Some(self.noise.map_or(mean, |n| n.min(mean)));
                self.second = (0, 0.0);
            }
            return false;
        }
        self.since_played = 0;
        self.blocks += 1;
        self.before += before;
        self.after += after;
        if self.blocks < WINDOW {
            return false;
        }
        let mean = self.before / f64::from(self.blocks);
        let echo_heard = self.noise.is_none_or(|n| mean > n * OVER_NOISE);
        let reduction_db = 10.0 * (self.before / self.after.max(f64::MIN_POSITIVE)).log10();
        if echo_heard && self.windows > 0 {
            self.failures = if reduction_db < ENOUGH_DB { self.failures + 1 } else { 0 };
        }
        self.windows += 1;
        (self.blocks, self.before, self.after) = (0, 0.0, 0.0);
        self.failures >= FAILURES
    }
}
