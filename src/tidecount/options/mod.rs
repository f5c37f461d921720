//! Options that several commands share. Each stands here once, with its help and its default.

mod place;
mod screen;
mod sound;

pub(crate) use place::kept_in;
pub use place::{DataFolder, GlobalDataFolder};
pub use screen::Screen;
pub use sound::{ALOUD, Fast, Microphone, Model, Sound, SoundPath, Voice, distance};
