//! The live page: what matters now, followed by any number of browsers.
//!
//! `state` is what stands on it, `hub` keeps the newest of it and wakes whoever watches, `routes` are what is answered, `page` the page
//! itself. The sound thread only ever puts a new value down; readers come when they can and get the newest.

mod hub;
mod page;
mod routes;
mod state;

pub use hub::{LiveHub, Reader, Refused};
pub use live::observe::Asked;
pub use page::LiveWords;
pub use routes::routes;
pub use screen::Offer;
pub use state::{
    Bar, BarKind, ByPage, Doing, DoneRow, Figure, Meter, Mood, MoodName, Note, Offers, Phase, Picture, Row, Said, Section, Stage, Who,
};
