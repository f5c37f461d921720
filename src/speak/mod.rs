//! Lines in, samples out: voices, their cache, the scheduling of counts; and the words that are said.

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

/// Renders text to samples, the same samples each time for the same text.
pub trait Voice: Send {
    /// Names voice, version and settings; keys the cache.
    fn id(&self) -> String;
    /// # Errors
    /// The voice's program fails or gives no sound.
    fn render(&mut self, text: &str) -> Result<Pcm, SpeakError>;
}
