//! Three cancellers on one aligned reference; the best one is heard.

use super::adaptive::AdaptiveCanceller;
use super::delay::DelayFinder;
use super::judge::{Judge, Ringing, db, power};
use super::kalman::KalmanCanceller;
use super::linear::LinearCanceller;
use super::reference::Reference;
use super::track::{LEAD, Move, Tracker};
use crate::{ECHO_RATE_HZ, EchoCanceller, EchoState};

const BLOCK: usize = ECHO_RATE_HZ as usize / 100;
/// Longest echo that the linear filter follows, s: the lead of the reference and the room.
const TAIL_S: f64 = 0.3;
/// Mean power of a block above which something is being played (−60 dBFS).
const PLAYING: f64 = 1e-6;
/// Blocks after playback in which its echo may still come: the longest delay (0.55 s) and the room.
const AFTERMATH: u32 = 100;
/// Blocks of playback between two looks for the echo.
const LOOK_EVERY: u32 = 25;
/// Reduction in dB from which on the linear filter is heard, whatever the other achieves: it leaves words unharmed.
const GOOD_DB: f64 = 12.0;
/// Below this it is given up if the other achieves so much more.
const POOR_DB: f64 = 9.0;
const MORE_DB: f64 = 6.0;
/// The Kalman filter is heard even if it takes away so much less than the linear one: it does a word less harm.
const WORTH_DB: f64 = 3.0;
/// A microphone block with a sample this large is clipped.
const CLIPPED: f32 = 0.99;
/// Share of blocks clipped by our own playback from which on nobody can be heard over it.
const TOO_MUCH_CLIPPED: f64 = 0.02;
/// What is left of our own voice may be this loud before a soft voice (−40 dBFS) is lost in it, dB re full scale.
const LEFT_TOO_LOUD_DB: f64 = -36.0;
/// Blocks of playback before the loudspeaker is judged: 6 s.
const JUDGED_AFTER: u32 = 600;

/// Which canceller is heard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    Linear,
    Kalman,
    Adaptive,
}

/// Finds delay and clock difference, runs libspeexdsp's linear filter, [`KalmanCanceller`] and [`AdaptiveCanceller`] side by side
/// while something is played, and gives out what spares a word most: the Kalman filter's result, while that one still learns the
/// linear one's, and where both achieve too little (a delay that has just moved) the adaptive one's.
pub struct AutoCanceller {
    reference: Option<Reference>,
    finder: DelayFinder,
    tracker: Tracker,
    linear: Option<LinearCanceller>,
    kalman: KalmanCanceller,
    adaptive: Box<dyn EchoCanceller>,
    of_linear: Judge,
    of_kalman: Judge,
    of_adaptive: Judge,
    of_none: Judge,
    ringing: Ringing,
    engine: Engine,
    aligned: Vec<f32>,
    by_linear: Vec<f32>,
    by_kalman: Vec<f32>,
    by_adaptive: Vec<f32>,
    /// Microphone blocks since the beginning.
    blocks: u64,
    since_played: u32,
    to_look: u32,
    hinted: bool,
    own: EchoState,
    judged: u32,
    clipped: f64,
    playing: f64,
}

impl AutoCanceller {
    /// A canceller that has learned nothing yet; the first sentence teaches it.
    #[must_use]
    pub fn new() -> Self {
        Self::with_adaptive(Box::new(AdaptiveCanceller::new()))
    }

    /// With another canceller in the place of the adaptive one.
    pub(super) fn with_adaptive(adaptive: Box<dyn EchoCanceller>) -> Self {
        Self {
            reference: Reference::new(BLOCK).map_err(|error| tracing::error!(%error)).ok(),
            finder: DelayFinder::new(ECHO_RATE_HZ),
            tracker: Tracker::default(),
            linear: LinearCanceller::new(ECHO_RATE_HZ, BLOCK, TAIL_S),
            kalman: KalmanCanceller::new(ECHO_RATE_HZ, BLOCK, TAIL_S),
            adaptive,
            of_linear: Judge::default(),
            of_kalman: Judge::default(),
            of_adaptive: Judge::default(),
            of_none: Judge::default(),
            ringing: Ringing::default(),
            engine: Engine::Adaptive,
            aligned: vec![0.0; BLOCK],
            by_linear: vec![0.0; BLOCK],
            by_kalman: vec![0.0; BLOCK],
            by_adaptive: vec![0.0; BLOCK],
            blocks: 0,
            since_played: AFTERMATH,
            to_look: LOOK_EVERY,
            hinted: false,
            own: EchoState::default(),
            judged: 0,
            clipped: 0.0,
            playing: 0.0,
        }
    }

    /// Which canceller is heard now.
    #[must_use]
    pub fn engine(&self) -> Engine {
        self.engine
    }

    /// Difference of the two clocks found so far, parts per million.
    #[must_use]
    pub fn drift_ppm(&self) -> f64 {
        self.tracker.drift_ppm()
    }

    /// Looks where the echo is, and moves the reference there.
    fn align(&mut self, played: &[f32], mic: &[f32], playing: bool) {
        let Some(reference) = &mut self.reference else { return };
        self.finder.push(played, mic);
        self.to_look = self.to_look.saturating_sub(u32::from(playing));
        if self.to_look > 0 {
            return;
        }
        self.to_look = LOOK_EVERY;
        let (now_s, delay) = (self.blocks as f64 / 100.0, reference.delay());
        let Some(peak) = self.finder.estimate(self.tracker.near(now_s)) else { return };
        tracing::debug!(now_s, delay, lag = peak.lag, strength = peak.strength, "looked");
        let first = !self.tracker.is_locked();
        match self.tracker.follow(now_s, delay, peak) {
            Move::Stay => {}
            Move::Stretch { ppm } => reference.set_drift(ppm),
            Move::Jump(frames) => {
                tracing::info!(frames, "the echo lies elsewhere");
                reference.move_by(frames);
                if first {
                    self.of_linear.forget();
                }
            }
        }
    }

    fn choose(&mut self) {
        let Some(moving) = self.of_linear.reduction_db() else { return };
        let adaptive = self.of_adaptive.reduction_db().unwrap_or(0.0);
        let kalman = self.of_kalman.reduction_db().unwrap_or(0.0);
        let linear = moving.max(kalman);
        let stays = match self.engine {
            Engine::Linear | Engine::Kalman => linear >= POOR_DB || linear >= adaptive - MORE_DB,
            Engine::Adaptive => linear > GOOD_DB || linear > adaptive - 1.0,
        };
        self.engine = match stays {
            false => Engine::Adaptive,
            true if kalman > moving - WORTH_DB => Engine::Kalman,
            true => Engine::Linear,
        };
    }

    /// The judge of what is heard.
    fn judge(&self) -> &Judge {
        match self.engine {
            Engine::Linear => &self.of_linear,
            Engine::Kalman => &self.of_kalman,
            Engine::Adaptive => &self.of_adaptive,
        }
    }

    /// Whether a soft voice has a chance over our own.
    fn judge_loudness(&mut self, mic_peak: f32, sounding: f64) {
        /// Weight of the newest block; an average over some 3 s of playback.
        const NEWEST: f64 = 1.0 / 300.0;
        self.clipped += (f64::from(u8::from(mic_peak >= CLIPPED)) - self.clipped) * NEWEST;
        self.playing += (sounding - self.playing) * NEWEST;
        self.judged = self.judged.saturating_add(1);
        if self.judged >= JUDGED_AFTER
            && let Some(left_db) = self.judge().left_db()
        {
            let margin = if self.own.drowns { 4.0 } else { 0.0 };
            // What is loud while we play is ours only where our echo has been found: somebody may talk, and a loudspeaker may be unheard.
            self.own.drowns =
                self.tracker.is_locked() && (self.clipped > TOO_MUCH_CLIPPED || db(self.playing) + left_db > LEFT_TOO_LOUD_DB - margin);
        }
    }
}

impl Default for AutoCanceller {
    fn default() -> Self {
        Self::new()
    }
}

impl EchoCanceller for AutoCanceller {
    fn cancel(&mut self, played: &[f32], mic: &mut [f32]) {
        self.blocks += 1;
        let Some(reference) = &mut self.reference else { return };
        if played.len() != BLOCK || mic.len() != BLOCK {
            tracing::error!(played = played.len(), mic = mic.len(), "a block for the echo canceller is not 10 ms long");
            return;
        }
        reference.push(played);
        reference.take(&mut self.aligned);
        self.since_played = if power(played) >= PLAYING { 0 } else { self.since_played.saturating_add(1) };
        (self.own.left_db, self.own.raw_db) = (f64::NEG_INFINITY, f64::NEG_INFINITY);
        if self.since_played >= AFTERMATH {
            return;
        }
        let sounding = power(&self.aligned);
        self.align(played, mic, sounding >= PLAYING);
        self.by_linear.copy_from_slice(mic);
        match &mut self.linear {
            Some(linear) => linear.cancel(&self.aligned, &mut self.by_linear),
            None => self.engine = Engine::Adaptive,
        }
        self.by_kalman.copy_from_slice(mic);
        self.kalman.cancel(&self.aligned, &mut self.by_kalman);
        self.by_adaptive.copy_from_slice(mic);
        self.adaptive.cancel(&self.aligned, &mut self.by_adaptive);
        let (raw, ringing) = (power(mic), self.ringing.next(sounding));
        self.of_linear.take(ringing, raw, power(&self.by_linear));
        self.of_kalman.take(ringing, raw, power(&self.by_kalman));
        self.of_adaptive.take(ringing, raw, power(&self.by_adaptive));
        self.of_none.take(ringing, raw, raw);
        self.choose();
        let mic_peak = mic.iter().fold(0.0_f32, |peak, s| peak.max(s.abs()));
        mic.copy_from_slice(match self.engine {
            Engine::Linear => &self.by_linear,
            Engine::Kalman => &self.by_kalman,
            Engine::Adaptive => &self.by_adaptive,
        });
        // Not learned yet: as loud as what was played.
        self.own.left_db = db(ringing) + self.judge().left_db().unwrap_or(0.0);
        self.own.raw_db = db(ringing) + self.of_none.left_db().unwrap_or(0.0);
        self.own.aligned = self.tracker.is_aligned();
        self.own.reduction_db = self.judge().reduction_db();
        if sounding >= PLAYING {
            self.judge_loudness(mic_peak, sounding);
        }
    }

    fn hint_delay(&mut self, delay_s: f64) {
        if self.hinted || self.tracker.is_locked() {
            return;
        }
        if let Some(reference) = &mut self.reference {
            // The tracker finds what is missing in either direction.
            reference.move_by((delay_s * f64::from(ECHO_RATE_HZ) - LEAD).round().max(0.0) as i64);
            self.hinted = true;
        }
    }

    fn echo_state(&self) -> EchoState {
        self.own
    }
}
