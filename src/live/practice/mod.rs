//! One practice, or one class: the engine as a party to the loop.

mod context;
mod lead;
mod measures;
mod outcome;
mod party;
mod to_come;

pub use lead::Practice;
pub use outcome::Outcome;
