//! Blocks of the microphone where nobody is led: a device tried, a sound calibrated, a meter.

use std::ops::ControlFlow;

use crate::clock::block_frames;
use audio::{AudioError, AudioIo, Captured};

/// 10 ms of the raw microphone, and how late what is played now will be heard, s.
#[derive(Debug, Clone, Copy)]
pub struct Heard<'a> {
    pub mic: &'a [f32],
    pub captured: Captured,
    pub delay_s: f64,
}

/// Hands over block by block, until `take` breaks off or a recording ends; the loudspeaker stays silent meanwhile. The devices stay open.
///
/// # Errors
/// Microphone or loudspeaker failed for good.
pub fn capture(io: &mut dyn AudioIo, mut take: impl FnMut(&[f32], Captured) -> ControlFlow<()>) -> Result<(), AudioError> {
    exchange(io, |heard, _| Ok(take(heard.mic, heard.captured)))
}

/// As [`capture`], and `take` may also fill the block that is played then; it comes silent.
///
/// # Errors
/// Microphone or loudspeaker failed for good, or `take` did.
pub fn exchange<E: From<AudioError>>(
    io: &mut dyn AudioIo,
    mut take: impl FnMut(Heard<'_>, &mut [f32]) -> Result<ControlFlow<()>, E>,
) -> Result<(), E> {
    let mut mic = vec![0.0; block_frames(io.mic_rate_hz())];
    let mut speaker = vec![0.0; block_frames(io.speaker_rate_hz())];
    loop {
        let captured = io.read(&mut mic)?;
        speaker.fill(0.0);
        let delay_s = io.playback_delay_s();
        if captured.ended || take(Heard { mic: &mic, captured, delay_s }, &mut speaker)?.is_break() {
            return Ok(());
        }
        io.write(&speaker)?;
    }
}
