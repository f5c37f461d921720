//! Options that several commands share. Each stands here once, with its help and its default.

mod place;
mod sound;

pub use place::{DataFolder, GlobalDataFolder};
pub use sound::{ALOUD, Fast, Microphone, Model, Sound, SoundPath, Voice, distance};
