//! Promises of this room that need several of its parts.

mod allocating;
mod counting;
mod mixing;
