//! Promises of this room that need several of its parts.

mod counting;
mod mixing;
