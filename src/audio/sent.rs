//! What a loudspeaker really made of what it was given.

/// What became of the block that was written last. Frames are the loudspeaker's.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sent {
    /// Silence that the device played, or will play, between the block before and this one.
    pub silence_before: usize,
    /// So many frames of the block, from its beginning, are played; none where it was left out.
    pub kept: usize,
    /// The device began anew: nothing is known of how what was written before lies to this.
    pub anew: bool,
}

impl Sent {
    /// All of a block of so many frames, right after the one before.
    #[must_use]
    pub fn whole(frames: usize) -> Self {
        Self { silence_before: 0, kept: frames, anew: false }
    }

    /// Nothing of it.
    #[must_use]
    pub fn nothing() -> Self {
        Self { silence_before: 0, kept: 0, anew: false }
    }
}
