//! `tidecount hear`: what the ears make of recordings and of the microphone.

pub mod command;
pub mod evaluate;
pub mod files;
pub mod lines;
pub(in crate::app) mod live;
pub(in crate::app) mod phrases;
