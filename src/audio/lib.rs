//! Devices, streams, rings, the sample clock, resampling, echo cancelling and WAV files.
//!
//! [`open`] joins one microphone (device or recording) and one loudspeaker (device, WAV file or none).

mod callback;
mod clock;
pub mod convolve;
pub mod decode;
pub mod devices;
pub mod echo;
pub mod file;
mod fill;
pub mod gate;
mod host;
mod io;
mod live_mic;
mod live_speaker;
mod mend;
mod port;
mod presence;
pub mod resample;
mod sent;
mod stream;

pub use io::{Joined, MicSource, SpeakerSink, open};
pub use live_mic::LiveMic;
pub use live_speaker::LiveSpeaker;
pub use sent::Sent;

/// Why sound could not be had. Each kind says what the caller can do.
#[derive(Debug, thiserror::Error)]
pub enum AudioError {
    /// No device of that name, or none at all. The text names those that exist.
    #[error("{0}")]
    NoDevice(String),
    /// A device went away or refused; rebuilding the stream may help.
    #[error("{0}")]
    Device(String),
    /// A file cannot be read as sound or written. The text names file and remedy.
    #[error("{0}")]
    File(String),
}

/// What one [`AudioIo::read`] brought besides the samples.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Captured {
    /// Frames the device lost just before this block. They count as time that passed.
    pub lost_frames: u64,
    /// True from the block on in which a recording has ended, and where there is no microphone at all: blocks are silence then, which says nothing.
    pub ended: bool,
    /// The microphone is not there: the block is silence that keeps time in its place, and says nothing.
    pub away: bool,
}

/// One microphone and one loudspeaker moved forward together in blocks of 10 ms.
///
/// Called by the sound thread only, strictly alternating `read` and `write`. Never called from a device callback.
/// Both rates are multiples of 100 Hz, so that a block is a whole number of frames (`rate / 100`), mono, -1 to 1.
pub trait AudioIo: Send {
    /// Microphone frames per second. This is the session's clock.
    fn mic_rate_hz(&self) -> u32;
    /// Loudspeaker frames per second.
    fn speaker_rate_hz(&self) -> u32;
    /// Waits for and fills one block of the raw microphone. `mic.len()` is `mic_rate_hz / 100`.
    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError>;
    /// Hands over the block to play. `speaker.len()` is `speaker_rate_hz / 100`.
    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError>;
    /// What became of the block that was written last; none where it is always all of it, as in a file.
    fn sent(&self) -> Option<Sent> {
        None
    }
    /// Seconds between handing a block to `write` and its frames leaving for the loudspeaker (ring and device buffer).
    fn playback_delay_s(&self) -> f64;
    /// True where the run may go faster than the clock on the wall and the recogniser must be waited for.
    fn is_offline(&self) -> bool;
    /// From now on a device that goes away is waited for without end: its microphone gives silence in real time, marked as
    /// [`Captured::away`], and its loudspeaker drops what it is given. Without this, reading and writing fail after some seconds.
    fn outlast(&mut self) {}
    /// The exact name of the microphone that is heard now, which may come back as another one; none of a recording, or while it is away.
    fn microphone(&self) -> Option<&str> {
        None
    }
    /// The loudspeaker is not there now.
    fn is_speaker_away(&self) -> bool {
        false
    }
    /// Called once at the end, so that files are closed properly and what is queued is played out.
    fn finish(&mut self) -> Result<(), AudioError>;
    /// What went wrong with the devices so far; all zero for files.
    fn health(&self) -> Health {
        Health::default()
    }
}

/// Faults of the devices since they were opened. None of them ends a run.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Health {
    /// Over- and underruns that the sound system reported.
    pub xruns: u64,
    /// Other errors that the sound system reported.
    pub errors: u64,
    /// Microphone frames that never arrived.
    pub lost_frames: u64,
    /// Loudspeaker frames that were due while none was ready; they were played as silence.
    pub starved_frames: u64,
    /// Blocks of 10 ms left out or put in to follow the difference of the two devices' clocks.
    pub blocks_dropped: u64,
    pub blocks_inserted: u64,
    /// Times a stream was built anew after its device went away.
    pub rebuilds: u64,
}

impl std::ops::Add for Health {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            xruns: self.xruns + other.xruns,
            errors: self.errors + other.errors,
            lost_frames: self.lost_frames + other.lost_frames,
            starved_frames: self.starved_frames + other.starved_frames,
            blocks_dropped: self.blocks_dropped + other.blocks_dropped,
            blocks_inserted: self.blocks_inserted + other.blocks_inserted,
            rebuilds: self.rebuilds + other.rebuilds,
        }
    }
}

/// Takes what we played out of what the microphone heard, for the command path alone.
///
/// Works at [`ECHO_RATE_HZ`] on blocks of 10 ms. Called by the sound thread; the AEC3 port allocates
/// within a block and gives it back, the others take nothing once they are warm.
pub trait EchoCanceller: Send {
    /// `played`: the frames handed to the loudspeaker just before this block; `mic`: the raw microphone, replaced by the
    /// result.
    fn cancel(&mut self, played: &[f32], mic: &mut [f32]);
    /// The sound system's word on how long after being handed over a block is played, s. Only where to begin looking.
    fn hint_delay(&mut self, _delay_s: f64) {}
    /// What is known of the echo in the block cancelled last.
    fn echo_state(&self) -> EchoState {
        EchoState::default()
    }
}

/// The echo of what we play, as an [`EchoCanceller`] knows it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EchoState {
    /// Level that is expected to be left of it in this block, dB re full scale; −∞ where nothing is played.
    pub left_db: f64,
    /// Level that is expected of it in the microphone itself, dB re full scale; −∞ where nothing is played.
    pub raw_db: f64,
    /// The canceller knows where the echo is. Where not, as after a buffer was lost, all of it may be left.
    pub aligned: bool,
    /// What the canceller takes away now, dB; none before it has heard enough.
    pub reduction_db: Option<f64>,
    /// The loudspeaker is so loud, or distorts so much, that a soft voice cannot be heard over it.
    pub drowns: bool,
}

impl Default for EchoState {
    fn default() -> Self {
        Self { left_db: f64::NEG_INFINITY, raw_db: f64::NEG_INFINITY, aligned: false, reduction_db: None, drowns: false }
    }
}

/// Rate of the command path: recogniser and echo canceller.
pub const ECHO_RATE_HZ: u32 = 16_000;

#[cfg(test)]
#[global_allocator]
static ALLOCATOR: foreign::counting::Counting = foreign::counting::Counting;
