//! The capture half of the loop: blocks of the microphone where nothing is said and nobody is led.

use std::ops::ControlFlow;

use crate::clock::block_frames;
use audio::{AudioError, AudioIo, Captured};

/// Hands over block by block, until `take` breaks off or a recording ends; the loudspeaker stays silent meanwhile. The devices stay open.
///
/// # Errors
/// Microphone or loudspeaker failed for good.
pub fn capture(io: &mut dyn AudioIo, mut take: impl FnMut(&[f32], Captured) -> ControlFlow<()>) -> Result<(), AudioError> {
    let mut mic = vec![0.0; block_frames(io.mic_rate_hz())];
    let silence = vec![0.0; block_frames(io.speaker_rate_hz())];
    loop {
        let captured = io.read(&mut mic)?;
        if captured.ended || take(&mic, captured).is_break() {
            return Ok(());
        }
        io.write(&silence)?;
    }
}
