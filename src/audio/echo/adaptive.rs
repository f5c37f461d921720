//! The `sonora` library's echo canceller, a port of WebRTC's AEC3.

use crate::{AudioError, ECHO_RATE_HZ, EchoCanceller};
use sonora::{AudioProcessing, Config, StreamConfig};

/// Suppresses what is left of the echo band by band: survives a loudspeaker that distorts and a delay that moves, and
/// takes some of a person's voice with it. Noise suppression and gain control stay off, for both change level.
///
/// It finds the delay between the two signals by itself, up to about 330 ms.
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
