//! Microphone and loudspeaker as they were chosen on a page, and a line to try them with.

use audio::{AudioError, AudioIo};
use files::error::Failure;
use live::machine;
use live::talk::{TalkEvent, Talker};
use live::tone::Tone;
use session::LineId;

/// The chosen devices.
#[derive(Debug, Clone)]
pub struct Devices {
    pub mic: String,
    pub speaker: String,
    pub voice: Option<String>,
    pub data: std::path::PathBuf,
}

impl Devices {
    /// Opens them. A recording that nothing is played to is heard as fast as the machine allows.
    ///
    /// # Errors
    /// There is no such device or file, or it cannot be used.
    pub fn open(&self) -> Result<Box<dyn AudioIo>, AudioError> {
        let silent = self.speaker == "none" || audio::file::names_file(&self.speaker);
        audio::open(&self.mic, &self.speaker, audio::file::names_file(&self.mic) && silent)
    }

    pub fn plays(&self) -> bool {
        self.speaker != "none"
    }
}

/// A tone, where one was asked for, and then one line.
pub struct TestLine {
    talker: Box<dyn Talker>,
    line: String,
    rate_hz: f64,
    tone: Option<Tone>,
    asked: bool,
    over: bool,
}

impl TestLine {
    /// # Errors
    /// There is no such voice, or it cannot be used here.
    pub fn new(devices: &Devices, io: &dyn AudioIo, line: &str, tone: Option<Tone>) -> Result<Self, Failure> {
        let rate_hz = io.speaker_rate_hz();
        let talker = machine::talker(devices.voice.as_deref(), &devices.data, rate_hz, io.is_offline(), Vec::new())?;
        Ok(Self { talker, line: line.to_owned(), rate_hz: f64::from(rate_hz), tone, asked: false, over: false })
    }

    pub fn is_over(&self) -> bool {
        self.over
    }

    /// Fills the next block.
    ///
    /// # Errors
    /// The voice failed.
    pub fn fill(&mut self, speaker: &mut [f32]) -> Result<(), Failure> {
        if self.tone.is_none() && !self.asked {
            self.asked = true;
            self.talker.say(LineId(1), &self.line, None);
        }
        let mut events = Vec::new();
        self.talker.block(speaker, &mut events);
        for event in events {
            match event {
                TalkEvent::Ended { .. } => self.over = true,
                TalkEvent::Failed { why, .. } => return Err(why.into()),
                TalkEvent::Began { .. } => {}
            }
        }
        if let Some(mut tone) = self.tone {
            self.tone = tone.add_to(speaker, self.rate_hz).then_some(tone);
        }
        Ok(())
    }
}
