//! Waiting for a practice: who lives in the house, what is planned when, the spoken start, and what a carer is told.
//!
//! It may not touch a clock, a file or a device: events in, effects out, as in the engine. The seconds in events are those of the
//! sample clock; the time of day comes with the ticks. Start at [`Attendant::on`] (`door`), then read `attendant` (what it knows and
//! where it stands), `tick` and `obey` (what it does by itself, and when spoken to); `household` reads who lives in the house.

mod ask;
pub mod attendant;
pub mod clock;
mod door;
pub mod event;
mod home;
pub mod household;
mod invite;
mod listen;
mod notice;
mod notices;
mod obey;
mod said;
mod sayable;
mod tick;
mod told;

#[cfg(test)]
mod tests;

pub use attendant::Attendant;
pub use clock::Moment;
pub use event::{Effect, Event, Hearing, Keeping, View};
pub use home::{Home, QuietHours};
pub use household::{HouseRoutine, Household, Person, Pronoun};
pub use said::Said;
pub use told::{End, Practised, Today, Unwell};
