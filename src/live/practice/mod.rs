//! One practice, or one class: the engine as a party to the loop.

mod class_keeper;
mod context;
mod lead;
mod measures;
mod outcome;
mod party;
mod to_come;
mod understood;

pub use class_keeper::ClassKeeper;
pub use lead::{ClassGiven, Practice};
pub use outcome::Outcome;
pub use understood::said_to;
