//! The parts that every session is built from: recogniser, echo canceller, voice.

use std::path::{Path, PathBuf};

use crate::clock::Clock;
use crate::command_path::CommandPath;
use crate::give_way::GivesWay;
use crate::observe::Observer;
use crate::speech::Speech;
use crate::stage::{Stage, live_phrases};
use crate::talk::{PcmTalker, SystemTalker, Talker};
use audio::echo::{AutoCanceller, NoCancel};
use audio::{AudioError, AudioIo, EchoCanceller};
use command_ear::{ChildRecogniser, CommandEarError, CommandRecogniser, Grammar, Mode, Models, Options};
use files::error::Failure;
use speak::{LineCache, Renderer, SYSTEM_VOICE, SystemSpeaker, Words, choose_voice};

/// What the parts are built with.
#[derive(Debug, Clone)]
pub struct Machine {
    pub model: Models,
    /// The program that runs as the recogniser's process; none for the running one, which a test is not.
    pub recogniser: Option<PathBuf>,
    pub voice: Option<String>,
    /// The folder of the record, which keeps what was rendered.
    pub data: PathBuf,
    /// What we play comes back through the microphone.
    pub hears_itself: bool,
    /// As fast as the machine allows: the recogniser and the voice are waited for.
    pub offline: bool,
}

impl Machine {
    /// The recogniser's process; `fast` is what its fast path listens for.
    ///
    /// # Errors
    /// The model cannot be used.
    pub fn recogniser(&self, fast: Grammar) -> Result<ChildRecogniser, CommandEarError> {
        ChildRecogniser::start(&Options {
            model: self.model.clone(),
            program: self.recogniser.clone(),
            fast,
            mode: if self.offline { Mode::Offline } else { Mode::Live },
        })
    }

    /// From the raw microphone to what was said.
    ///
    /// # Errors
    /// A rate that cannot be resampled to the command path's.
    pub fn command_path(
        &self,
        commands: impl CommandRecogniser + 'static,
        mic_rate_hz: u32,
        speaker_rate_hz: u32,
    ) -> Result<CommandPath, AudioError> {
        let echo: Box<dyn EchoCanceller> = if self.hears_itself { Box::new(AutoCanceller::new()) } else { Box::new(NoCancel) };
        CommandPath::new(echo, Box::new(commands), mic_rate_hz, speaker_rate_hz)
    }

    /// All of it for one session on these devices, at its first block.
    ///
    /// # Errors
    /// A rate of the devices that cannot be resampled to the command path's.
    pub fn stage(
        &self,
        words: Words,
        talker: Box<dyn Talker>,
        commands: impl CommandRecogniser + 'static,
        io: &dyn AudioIo,
        observers: Vec<Box<dyn Observer>>,
    ) -> Result<Stage, AudioError> {
        let (mic_rate_hz, speaker_rate_hz) = (io.mic_rate_hz(), io.speaker_rate_hz());
        Ok(Stage {
            clock: Clock::of_frames(mic_rate_hz),
            speech: Speech::new(talker, speaker_rate_hz, live_phrases(&words)),
            words,
            observers,
            path: Some(self.command_path(commands, mic_rate_hz, speaker_rate_hz)?),
            blocks: 0,
            gives_way: GivesWay::default(),
        })
    }

    /// The voice. `to_come`: lines that a live voice renders ahead.
    ///
    /// # Errors
    /// There is no such voice, or it cannot be used here.
    pub fn talker(&self, rate_hz: u32, to_come: Vec<String>) -> Result<Box<dyn Talker>, Failure> {
        talker(self.voice.as_deref(), &self.data, rate_hz, self.offline, to_come)
    }
}

/// A voice for a loudspeaker of this rate. `data`: the folder of the record, which keeps what was rendered.
///
/// # Errors
/// There is no such voice, or it cannot be used here.
pub fn talker(voice: Option<&str>, data: &Path, rate_hz: u32, offline: bool, to_come: Vec<String>) -> Result<Box<dyn Talker>, Failure> {
    if voice == Some(SYSTEM_VOICE) {
        if offline {
            return Err(Failure::Options(
                "--voice system speaks through the system's own loudspeaker and cannot be written to a file or hurried; use --voice espeak-ng here".into(),
            ));
        }
        return Ok(Box::new(SystemTalker::new(SystemSpeaker::open()?)));
    }
    let voice = choose_voice(voice)?;
    let cache = LineCache::new(Some(data.join("voice-cache")), rate_hz);
    let mut renderer = if offline { Renderer::offline(voice, cache) } else { Renderer::live(voice, cache)? };
    if !offline && !to_come.is_empty() {
        renderer.prerender(to_come);
    }
    Ok(Box::new(PcmTalker::new(renderer, rate_hz)))
}
