//! The second ear: a pretrained speech embedding with a head of our own, which says of a short stretch of sound which phrase it may be.
//!
//! It hears all of a word at once and knows nothing of phones, so it errs elsewhere than the recogniser. It is asked only where the recogniser
//! found nothing, or where there is none, in what the level gate shows to be short ([`window`]); [`mel`] makes the picture, [`network`] the probabilities, [`opinion`] what they say of the phrases
//! listened for, and [`super::cues`] weighs that. How the network was made: `models/second-ear/README.md`.

mod folder;
mod mel;
mod network;
mod opinion;
mod window;

pub(crate) use folder::{CLASSES, FOLDER_VARIABLE, NETWORK, Said, is_whole, phrases_of, places, said_by_environment};
pub(crate) use network::SecondEar;
pub(crate) use opinion::{Classes, Opinion};
pub(crate) use window::{Stretch, WINDOW};

/// Says what a window of sound may be.
pub(crate) trait WordSpotter {
    /// The phrases it tells apart, spoken forms, in the order of [`WordSpotter::hear`]. What is more stands for anything else.
    fn phrases(&self) -> &[String];
    /// The probability of each phrase and, behind them, of anything else, 0 to 1. `window`: [`WINDOW`] samples at [`crate::RATE_HZ`].
    /// Nothing where it cannot say.
    fn hear(&mut self, window: &[i16]) -> Vec<f64>;
}
