//! Learning how a client says the commands.

pub mod dialogue;
pub mod enrolment;
pub mod event;
pub mod pipeline;
pub mod store;
pub mod words;
