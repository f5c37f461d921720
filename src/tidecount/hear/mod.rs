//! `tidecount hear`: what the ears make of recordings and of the microphone.

pub mod args;
pub mod command;
pub mod considered;
pub mod evaluate;
pub mod lines;
pub mod microphone;
pub mod out;
pub mod phrases;
pub mod recordings;
pub mod rounded;
