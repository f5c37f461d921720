//! Checks of the voice ear that take more than one of its parts.

mod allocating;
mod holds;
mod knocks;
mod praat;
mod rates;
mod speech;
mod streaming;
pub(crate) mod synth;
mod trouble;
mod weighting;
