//! Leads people through sound: the one loop from a block of the microphone to a block for the loudspeaker, and who takes part in it.
//! It reads no arguments and shows no pages. Start at `pipeline.rs`.

pub mod attend;
pub mod calibrate;
pub mod class;
pub mod command_path;
pub mod enrol;
pub mod follow;
pub mod grammar;
pub mod journal_keeper;
pub mod levels;
pub mod meter;
pub mod mic_gain;
pub mod observe;
pub mod own_voice_log;
pub mod pipeline;
pub mod practice;
pub mod quality_desk;
pub mod rehearsal;
pub mod residual_gate;
pub mod sound;
pub mod summary;
pub mod talk;
