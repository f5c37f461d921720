//! The pure engine: a deterministic state machine, events in, effects out.
//!
//! No I/O, no threads, no clock but the events', no randomness without a seed.

mod event;

pub use event::*;
