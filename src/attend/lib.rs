//! Waiting for a practice: who lives in the house, what is planned when, the spoken start, and what a carer is told.
//!
//! Pure as the engine is: events in, effects out, no clock, file or device. The seconds in events are those of the sample clock;
//! the time of day comes with the ticks.

mod ask;
pub mod attendant;
pub mod clock;
pub mod event;
pub mod household;
mod invite;
mod listen;
mod notice;
mod obey;
mod told;

#[cfg(test)]
mod tests;

pub use attendant::Attendant;
pub use clock::Moment;
pub use event::{Effect, Event, Hearing, Keeping, Said, View};
pub use household::{HouseRoutine, Household, Person, Pronoun};
pub use told::{End, Practised, Today, Unwell};
