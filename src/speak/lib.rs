//! Lines in, samples out: voices, their cache, the scheduling of counts; and the words that are said.
//!
//! A line goes this way: [`Words`] turns it into text, a [`Renderer`] (a [`Voice`] behind a [`LineCache`]) turns the
//! text into samples at the loudspeaker's rate, and the [`Mixer`] puts the samples on the sample clock.

mod cache;
mod finish;
mod mixer;
mod renderer;
mod resample;
pub mod voice;
pub mod words;

pub use cache::LineCache;
pub use finish::{ACTIVE_LEVEL_DBFS, AUDIBLE_BELOW_ACTIVE_DB, PEAK_LIMIT_DBFS, active_level_dbfs, finish};
pub use mixer::{MixEvent, Mixer};
pub use renderer::{Rendered, Renderer};
pub use resample::resample;
pub use voice::{EspeakOptions, EspeakVoice, PiperVoice, SYSTEM_VOICE, SystemEvent, SystemSpeaker, choose_voice, voice_of};
pub use words::{Language, Words, WordsError, live_words};

use std::sync::Arc;

/// Why nothing can be spoken. The text names what is wrong and what to do.
#[derive(Debug, thiserror::Error)]
#[error("{0}")]
pub struct SpeakError(pub String);

/// A rendered line: mono, -1 to 1, silence before the first audible sample trimmed.
#[derive(Debug, Clone)]
pub struct Pcm {
    pub rate_hz: u32,
    pub samples: Arc<[f32]>,
}

impl Pcm {
    /// Length, s; 0 where the rate is 0.
    #[must_use]
    pub fn duration_s(&self) -> f64 {
        if self.rate_hz == 0 { 0.0 } else { self.samples.len() as f64 / f64::from(self.rate_hz) }
    }
}

/// Renders text to samples, the same samples each time for the same text.
pub trait Voice: Send {
    /// Names voice, version and settings; keys the cache.
    fn id(&self) -> String;
    /// # Errors
    /// The voice's program fails or gives no sound.
    fn render(&mut self, text: &str) -> Result<Pcm, SpeakError>;
    /// Speaks slower (above 1) or faster (below 1) by this factor than now, within what can be understood. A voice that cannot
    /// stays as it is. Changes [`Voice::id`].
    fn change_rate(&mut self, _factor: f64) {}
}

#[cfg(test)]
mod tests;

#[cfg(test)]
#[global_allocator]
static ALLOCATOR: foreign::counting::Counting = foreign::counting::Counting;
