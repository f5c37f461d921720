//! tidecount leads a voice, breathing and swallow practice hands-free and times it from the sound itself.
//!
//! The rooms and who may know whom (imports run one way):
//! `app → screen, report, export, clinic, rehearse → record → progress → session → routine` and `app → hear, speak → audio`.
//! `session`, `routine` and the arithmetic in `hear` know neither tokio, files nor devices.

pub mod app;
pub mod attend;
pub mod audio;
pub mod clinic;
#[cfg(test)]
mod counting;
pub mod export;
pub mod handover;
pub mod hear;
pub mod progress;
pub mod record;
pub mod rehearse;
pub mod report;
pub mod routine;
pub mod screen;
pub mod session;
pub mod speak;
