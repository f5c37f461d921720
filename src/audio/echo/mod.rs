//! Taking what we played out of what the microphone heard, for the command path.
//!
//! [`AutoCanceller`] is what a practice uses: it finds how late and how fast the microphone hears what is played
//! (`delay`, `track`, `reference`), runs two cancellers behind one trait on the same block and gives out the one that
//! does better by what it measures (`judge`).

mod adaptive;
mod auto;
mod delay;
mod judge;
mod linear;
mod reference;
mod track;

pub use adaptive::AdaptiveCanceller;
pub use auto::{AutoCanceller, Engine};
pub use linear::LinearCanceller;

use super::EchoCanceller;

/// Leaves the microphone as it is: where nothing is played aloud, or the gate alone is wanted.
#[derive(Debug, Clone, Copy, Default)]
pub struct NoCancel;

impl EchoCanceller for NoCancel {
    fn cancel(&mut self, _played: &[f32], _mic: &mut [f32]) {}
}
