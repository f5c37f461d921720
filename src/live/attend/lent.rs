//! What a practice gets of the attendant's devices while it is led: a recording and a written file that go on where they are.

use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use audio::file::{FileMic, WavSpeaker};
use audio::{AudioError, Captured, MicSource, SpeakerSink};

/// Used by the attendant and by a practice in turn.
pub type Shared<T> = Arc<Mutex<T>>;

/// Locks a shared device; a panic elsewhere does not lose it.
pub fn lock<T>(shared: &Shared<T>) -> std::sync::MutexGuard<'_, T> {
    shared.lock().unwrap_or_else(PoisonError::into_inner)
}

/// A recording's microphone; it goes on where it was.
pub struct LentMic {
    pub file: Shared<FileMic>,
    /// Counts the frames that are read.
    pub read: Arc<AtomicU64>,
}

impl MicSource for LentMic {
    fn rate_hz(&self) -> u32 {
        lock(&self.file).rate_hz()
    }
    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        self.read.fetch_add(mic.len() as u64, Ordering::Relaxed);
        lock(&self.file).read(mic)
    }
}

/// A written file's loudspeaker, or none.
pub struct LentSpeaker {
    pub file: Option<Shared<WavSpeaker>>,
    pub rate_hz: u32,
}

impl SpeakerSink for LentSpeaker {
    fn rate_hz(&self) -> u32 {
        self.rate_hz
    }
    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError> {
        self.file.as_ref().map_or(Ok(()), |file| lock(file).write(speaker))
    }
    fn delay_s(&self) -> f64 {
        0.0
    }
    fn skip(&mut self, lost_s: f64) -> Result<(), AudioError> {
        self.file.as_ref().map_or(Ok(()), |file| lock(file).skip(lost_s))
    }
    /// The file goes on after the practice.
    fn finish(&mut self) -> Result<(), AudioError> {
        Ok(())
    }
}
