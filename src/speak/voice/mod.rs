//! The voices: programs that render to samples, and the system's own speech service.

mod child;
mod choose;
mod espeak;
mod piper;
mod sound;
mod system;

pub use choose::{choose_voice, voice_of};
pub use espeak::{EspeakOptions, EspeakVoice};
pub use piper::{PIPER_VOICE_ENV, PiperVoice};
pub use system::{SYSTEM_VOICE, SystemEvent, SystemSpeaker};
