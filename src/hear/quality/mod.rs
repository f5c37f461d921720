//! Figures of voice quality for the clinician's page: smoothed cepstral peak prominence, jitter, shimmer and the ratio of
//! harmonics to noise, over the steady part of a hold. Defined as Praat defines them, with the settings said at each, and
//! compared with Praat on recordings (`tests/checks/praat/quality.py`). They diagnose nothing, and a louder voice alone makes
//! all of them better (docs/measuring.md).

mod cpps;
mod hnr;
mod perturbation;
mod pulses;
mod resample;

use super::steadiness::RunFrame;
use model::VoiceQuality;

/// Seconds left out at both ends of a hold, where a voice sets in and lets go (common practice, no source).
pub const EDGE_S: f64 = 0.2;
/// Less than this is not judged, s: some fifty periods of a low voice (common practice, no source).
pub const LEAST_S: f64 = 0.5;
/// At most so much of a hold is judged, its last seconds.
pub const MOST_S: f64 = 30.0;
/// Sound kept on both sides of the judged part, s: windows reach out of it.
const MARGIN_S: f64 = 0.05;

/// The steady part of a hold, with its sound: kept until its quality has been worked out, and never stored.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SteadyPart {
    /// What is judged, s on the sample clock.
    pub from_s: f64,
    pub to_s: f64,
    /// Centre and F0 of the voiced frames of the unbroken stretch about it, s and Hz.
    pub track: Vec<(f64, f64)>,
    /// The sound about it and where it begins.
    pub samples: Vec<f32>,
    pub samples_from_s: f64,
    pub rate_hz: f64,
}

impl SteadyPart {
    /// The longest stretch of a hold's frames that is voiced without a break, not under our own playback and not lost, less its
    /// edges; nothing where too little is left. Its sound is still to be filled in.
    pub(crate) fn find(frames: &[RunFrame]) -> Option<Self> {
        let fit = |frame: &RunFrame| frame.f0_hz > 0.0 && !frame.masked && !frame.lost;
        let longest = frames.chunk_by(|a, b| fit(a) == fit(b)).filter(|run| run.first().is_some_and(fit)).max_by_key(|run| run.len())?;
        let (first, last) = (longest.first()?, longest.last()?);
        let to_s = last.t_s - EDGE_S;
        let from_s = (first.t_s + EDGE_S).max(to_s - MOST_S);
        if to_s - from_s < LEAST_S {
            return None;
        }
        let track = longest.iter().filter(|f| f.t_s >= from_s - EDGE_S).map(|f| (f.t_s, f.f0_hz)).collect();
        Some(Self { from_s, to_s, track, ..Self::default() })
    }

    /// From where to where sound is needed, s.
    pub(crate) fn wanted_s(&self) -> (f64, f64) {
        (self.from_s - MARGIN_S, self.to_s + MARGIN_S)
    }

    /// A steady part of a recording that is known to be voiced throughout; `track`: centre and F0 of its frames.
    #[must_use]
    pub fn of_recording(samples: &[f32], rate_hz: f64, from_s: f64, to_s: f64, track: Vec<(f64, f64)>) -> Self {
        let from = ((from_s - MARGIN_S).max(0.0) * rate_hz) as usize;
        let to = (((to_s + MARGIN_S) * rate_hz) as usize).min(samples.len());
        let samples = samples.get(from..to).unwrap_or(&[]).to_vec();
        Self { from_s, to_s, track, samples, samples_from_s: from as f64 / rate_hz, rate_hz }
    }

    /// Works the figures out. Takes some tens of milliseconds for ten seconds of voice: not on the thread that moves sound.
    #[must_use]
    pub fn quality(&self) -> VoiceQuality {
        let sound =
            Sound { samples: self.samples.iter().map(|x| f64::from(*x)).collect(), rate_hz: self.rate_hz, from_s: self.samples_from_s };
        let pulses = pulses::find(&sound, &self.track);
        let inside: Vec<f64> = pulses.into_iter().filter(|t| *t >= self.from_s && *t <= self.to_s).collect();
        let jitter = perturbation::jitter(&inside);
        let shimmer = perturbation::shimmer(&sound, &inside);
        let part = sound.part(self.from_s, self.to_s);
        VoiceQuality {
            from_s: self.from_s,
            to_s: self.to_s,
            cpps_db: cpps::cpps_db(&part),
            jitter_local_pct: jitter.local_pct,
            jitter_rap_pct: jitter.rap_pct,
            jitter_ppq5_pct: jitter.ppq5_pct,
            shimmer_local_pct: shimmer.local_pct,
            shimmer_local_db: shimmer.local_db,
            shimmer_apq3_pct: shimmer.apq3_pct,
            shimmer_apq11_pct: shimmer.apq11_pct,
            hnr_db: hnr::hnr_db(&part),
        }
    }
}

/// Samples with a clock: the sample `k` stands at `from_s + k / rate_hz`.
#[derive(Debug, Clone)]
struct Sound {
    samples: Vec<f64>,
    rate_hz: f64,
    from_s: f64,
}

impl Sound {
    fn at(&self, index: i64) -> Option<f64> {
        usize::try_from(index).ok().and_then(|k| self.samples.get(k)).copied()
    }

    /// The place of an instant, in samples.
    fn place(&self, t_s: f64) -> f64 {
        (t_s - self.from_s) * self.rate_hz
    }

    fn part(&self, from_s: f64, to_s: f64) -> Self {
        let from = self.place(from_s).round().max(0.0) as usize;
        let to = (self.place(to_s).round().max(0.0) as usize).min(self.samples.len());
        let samples = self.samples.get(from..to).unwrap_or(&[]).to_vec();
        Self { samples, rate_hz: self.rate_hz, from_s: self.from_s + from as f64 / self.rate_hz }
    }
}

/// The newest sound, kept in memory that is taken once: as much as a hold's judged part can need.
#[derive(Debug, Clone)]
pub(crate) struct Tape {
    rate_hz: f64,
    ring: Vec<f32>,
    end: u64,
}

/// Sound after the judged part that has come by the time a hold is known to be over, s: its longest break and the windows.
const AFTER_S: f64 = 5.0;

impl Tape {
    pub fn new(rate_hz: f64) -> Self {
        Self { rate_hz, ring: vec![0.0; ((MOST_S + AFTER_S) * rate_hz) as usize + 1], end: 0 }
    }

    pub fn push(&mut self, sample: f32) {
        let at = (self.end % self.ring.len().max(1) as u64) as usize;
        if let Some(slot) = self.ring.get_mut(at) {
            *slot = sample;
        }
        self.end += 1;
    }

    /// Puts the sound of a steady part into it. `passed_over_s`: seconds of the clock that brought no samples. What the ring has
    /// lost already is left out, and the part begins later.
    pub fn fill(&self, part: &mut SteadyPart, passed_over_s: f64) {
        let (from_s, to_s) = part.wanted_s();
        let place = |t_s: f64| ((t_s - passed_over_s) * self.rate_hz).round().max(0.0) as u64;
        let oldest = self.end.saturating_sub(self.ring.len() as u64);
        let from = place(from_s).max(oldest);
        let to = place(to_s).min(self.end);
        let length = self.ring.len().max(1) as u64;
        part.samples = (from..to).filter_map(|k| self.ring.get((k % length) as usize)).copied().collect();
        part.samples_from_s = from as f64 / self.rate_hz + passed_over_s;
        part.from_s = part.from_s.max(part.samples_from_s);
        part.rate_hz = self.rate_hz;
    }
}

#[cfg(test)]
#[path = "../tests/quality.rs"]
mod tests;
