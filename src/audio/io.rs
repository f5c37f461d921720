//! Joins any microphone with any loudspeaker into one [`AudioIo`].

use std::time::{Duration, Instant};

use super::file::{FileMic, WavSpeaker, names_file, same_file};
use super::{AudioError, AudioIo, Captured, Health, LiveMic, LiveSpeaker, Sent};

/// Where microphone frames come from, in blocks of 10 ms.
pub trait MicSource: Send {
    /// Frames per second, a multiple of 100.
    fn rate_hz(&self) -> u32;
    /// Waits for and fills one block of `rate_hz / 100` frames.
    ///
    /// # Errors
    /// The device went away and stayed away.
    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError>;
    /// From now on a device that goes away is waited for without end; see [`AudioIo::outlast`].
    fn outlast(&mut self) {}
    /// The exact name of the device that is heard now; none of a recording, or while it is away.
    fn device(&self) -> Option<&str> {
        None
    }
    /// Faults so far.
    fn health(&self) -> Health {
        Health::default()
    }
}

/// Where loudspeaker frames go to, in blocks of 10 ms.
pub trait SpeakerSink: Send {
    /// Frames per second, a multiple of 100.
    fn rate_hz(&self) -> u32;
    /// Takes one block of `rate_hz / 100` frames.
    ///
    /// # Errors
    /// The device went away and stayed away, or the file cannot be written.
    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError>;
    /// See [`AudioIo::sent`].
    fn sent(&self) -> Option<Sent> {
        None
    }
    /// Seconds from [`SpeakerSink::write`] to the loudspeaker.
    fn delay_s(&self) -> f64;
    /// So many seconds of the microphone were lost; a recording takes them as silence to stay in step.
    ///
    /// # Errors
    /// The file cannot be written.
    fn skip(&mut self, _lost_s: f64) -> Result<(), AudioError> {
        Ok(())
    }
    /// Plays out or closes what was taken.
    ///
    /// # Errors
    /// The file cannot be closed properly.
    fn finish(&mut self) -> Result<(), AudioError>;
    /// From now on a device that goes away is waited for without end; see [`AudioIo::outlast`].
    fn outlast(&mut self) {}
    /// The device is not there now, and what is written is dropped.
    fn is_away(&self) -> bool {
        false
    }
    /// Faults so far.
    fn health(&self) -> Health {
        Health::default()
    }
}

/// A microphone and a loudspeaker moved forward together.
pub struct Joined {
    mic: Box<dyn MicSource>,
    speaker: Box<dyn SpeakerSink>,
    offline: bool,
}

impl Joined {
    /// `offline`: neither side is bound to real time; see [`AudioIo::is_offline`].
    #[must_use]
    pub fn new(mic: Box<dyn MicSource>, speaker: Box<dyn SpeakerSink>, offline: bool) -> Self {
        Self { mic, speaker, offline }
    }
}

impl AudioIo for Joined {
    fn mic_rate_hz(&self) -> u32 {
        self.mic.rate_hz()
    }
    fn speaker_rate_hz(&self) -> u32 {
        self.speaker.rate_hz()
    }
    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        let captured = self.mic.read(mic)?;
        if captured.lost_frames > 0 {
            self.speaker.skip(captured.lost_frames as f64 / f64::from(self.mic.rate_hz()))?;
        }
        Ok(captured)
    }
    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError> {
        self.speaker.write(speaker)
    }
    fn sent(&self) -> Option<Sent> {
        self.speaker.sent()
    }
    fn playback_delay_s(&self) -> f64 {
        self.speaker.delay_s()
    }
    fn is_offline(&self) -> bool {
        self.offline
    }
    fn outlast(&mut self) {
        self.mic.outlast();
        self.speaker.outlast();
    }
    fn microphone(&self) -> Option<&str> {
        self.mic.device()
    }
    fn is_speaker_away(&self) -> bool {
        self.speaker.is_away()
    }
    fn finish(&mut self) -> Result<(), AudioError> {
        self.speaker.finish()
    }
    fn health(&self) -> Health {
        self.mic.health() + self.speaker.health()
    }
}

/// A loudspeaker that is not there.
struct Silent {
    rate_hz: u32,
}

impl SpeakerSink for Silent {
    fn rate_hz(&self) -> u32 {
        self.rate_hz
    }
    fn write(&mut self, _speaker: &[f32]) -> Result<(), AudioError> {
        Ok(())
    }
    fn delay_s(&self) -> f64 {
        0.0
    }
    fn finish(&mut self) -> Result<(), AudioError> {
        Ok(())
    }
}

/// A microphone that is not there: silence in real time, for whoever leads by keys alone.
#[derive(Default)]
struct QuietMic {
    began: Option<Instant>,
    blocks: u32,
}

impl MicSource for QuietMic {
    fn rate_hz(&self) -> u32 {
        48_000
    }
    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        let began = *self.began.get_or_insert_with(Instant::now);
        self.blocks += 1;
        std::thread::sleep((Duration::from_millis(10) * self.blocks).saturating_sub(began.elapsed()));
        mic.fill(0.0);
        Ok(Captured { ended: true, ..Captured::default() })
    }
}

/// Opens microphone and loudspeaker by what the user wrote.
///
/// `mic`: `default`, the name of a device, a recording, or `none` for silence in real time. `speaker`: `default`, the name of a device, a WAV file to
/// write (at the microphone's rate), or `none`. What ends in `.wav` or `.flac` or exists as a file is a file.
/// `fast`: as fast as the machine allows instead of in real time; only where no device is used.
///
/// # Errors
/// No such device (the text names those there are), a device that refuses, a file that cannot be read or written,
/// or `fast` with a device.
pub fn open(mic: &str, speaker: &str, fast: bool) -> Result<Box<dyn AudioIo>, AudioError> {
    let mic_is_file = names_file(mic);
    let speaker_is_file = names_file(speaker);
    let speaker_is_device = !speaker_is_file && speaker != "none";
    if fast && !mic_is_file {
        return Err(AudioError::Device(format!(
            "a microphone cannot run faster than time: leave out --fast, or give a recording instead of \"{mic}\" as --mic"
        )));
    }
    if fast && speaker_is_device {
        return Err(AudioError::Device(format!(
            "a loudspeaker cannot run faster than time: leave out --fast, or give a WAV file or \"none\" instead of \"{speaker}\" as --speaker"
        )));
    }
    if mic_is_file && speaker_is_file && same_file(mic, speaker) {
        return Err(AudioError::File(format!("{speaker} is the recording that is being read: give --speaker another name")));
    }
    let mic: Box<dyn MicSource> = if mic_is_file {
        Box::new(FileMic::open(mic.as_ref(), fast)?)
    } else if mic == "none" {
        Box::new(QuietMic::default())
    } else {
        Box::new(LiveMic::open(mic)?)
    };
    let speaker: Box<dyn SpeakerSink> = if speaker_is_file {
        Box::new(WavSpeaker::create(speaker.as_ref(), mic.rate_hz())?)
    } else if speaker_is_device {
        Box::new(LiveSpeaker::open(speaker)?)
    } else {
        Box::new(Silent { rate_hz: mic.rate_hz() })
    };
    Ok(Box::new(Joined::new(mic, speaker, mic_is_file && !speaker_is_device)))
}
