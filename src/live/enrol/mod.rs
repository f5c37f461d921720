//! Learning how a client says the commands.

pub mod dialogue;
pub mod enrolment;
pub mod event;
pub mod party;
pub mod store;
pub mod words;
