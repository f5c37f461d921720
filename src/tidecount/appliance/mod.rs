//! `tidecount appliance`: a computer is set up for a home, step by step. `steps.rs` asks, `draft.rs` keeps the household file as it grows
//! (pure), `sounds.rs` tries devices, `autostart.rs` speaks to the service manager.

pub mod autostart;
pub mod command;
pub mod draft;
pub mod sounds;
pub mod steps;
