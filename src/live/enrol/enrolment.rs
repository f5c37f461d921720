//! One enrolment: builds the parts round the dialogue and leads it to its end.

use std::path::PathBuf;
use std::sync::atomic::Ordering;
use std::sync::{Arc, Mutex, PoisonError};

use jiff::ZonedDateTime;

use crate::enrol::dialogue::Dialogue;
use crate::enrol::event::Learnt;
use crate::enrol::pipeline::{EnrolParts, EnrolPipeline};
use crate::enrol::store;
use crate::enrol::words;
use crate::follow::{ScreenFollower, SharedScreen};
use crate::grammar::{fast_grammar, main_grammar};
use crate::observe::Observer;
use crate::practice::until_interrupted;
use crate::talk::{PcmTalker, SystemTalker, Talker};
use audio::echo::{AutoCanceller, NoCancel};
use audio::{self, AudioIo, EchoCanceller};
use command_ear::{ChildRecogniser, CommandRecogniser, Mode, Options};
use files::error::Failure;
use hear::VoiceTask;
use record::{Source, Store};
use session::Listening;
use speak::{LineCache, Renderer, SYSTEM_VOICE, SystemSpeaker, Words, choose_voice};

/// Everything an enrolment is made of besides its devices.
pub struct Enrolment {
    pub words: Words,
    pub model: PathBuf,
    /// What we play comes back through the microphone.
    pub hears_itself: bool,
    pub voice: Option<String>,
    pub source: Source,
    pub client: String,
    pub data: PathBuf,
    /// The program that runs as the recogniser's process; none for the running one, which a test is not.
    pub recogniser: Option<PathBuf>,
}

impl Enrolment {
    /// Leads it. Blocks until it is over; Ctrl-C ends it with what is done kept. Gives how the words stand, and why it broke off if it did.
    ///
    /// # Errors
    /// A part cannot be built; nothing was led then.
    pub fn lead(
        self,
        mut io: Box<dyn AudioIo>,
        screen: SharedScreen,
        observers: Vec<Box<dyn Observer>>,
    ) -> Result<(Vec<Learnt>, Option<String>), Failure> {
        let mut pipeline = self.pipeline(io.as_ref(), screen, observers)?;
        let learnt = Arc::new(Mutex::new(Vec::new()));
        let result = Arc::clone(&learnt);
        let fault = until_interrupted(move |interrupted| {
            let outcome = pipeline.run(io.as_mut(), || interrupted.load(Ordering::Relaxed));
            *result.lock().unwrap_or_else(PoisonError::into_inner) = pipeline.dialogue().learnt();
            outcome
        })?;
        let learnt = std::mem::take(&mut *learnt.lock().unwrap_or_else(PoisonError::into_inner));
        Ok((learnt, fault))
    }

    /// As [`Enrolment::lead`], ended with what is done kept when `stopped` says so.
    ///
    /// # Errors
    /// As [`Enrolment::lead`].
    pub fn lead_until(
        self,
        mut io: Box<dyn AudioIo>,
        screen: SharedScreen,
        observers: Vec<Box<dyn Observer>>,
        stopped: impl Fn() -> bool,
    ) -> Result<(Vec<Learnt>, Option<String>), Failure> {
        let mut pipeline = self.pipeline(io.as_ref(), screen, observers)?;
        let fault = pipeline.run(io.as_mut(), stopped).err().map(|error| error.to_string());
        Ok((pipeline.dialogue().learnt(), fault))
    }

    fn pipeline(self, io: &dyn AudioIo, screen: SharedScreen, mut observers: Vec<Box<dyn Observer>>) -> Result<EnrolPipeline, Failure> {
        let offline = io.is_offline();
        let to_learn = words::to_learn(&self.words);
        let mode = if offline { Mode::Offline } else { Mode::Live };
        let fast = fast_grammar(&self.words);
        let mut commands = ChildRecogniser::start(&Options { model: self.model.clone(), program: self.recogniser.clone(), fast, mode })?;
        // Words that this model does not know are told before anything is said.
        let all = Listening {
            commands: to_learn.iter().map(|word| word.0).collect(),
            answers: Vec::new(),
            voice: VoiceTask::Idle,
            list: false,
            firm: false,
        };
        commands.listen_for(&main_grammar(&self.words, &all))?;
        let talker = self.talker(io.speaker_rate_hz(), offline)?;
        let mut store = Store::open(&self.data)?;
        let (client, source, wordings) = (self.client.clone(), self.source, to_learn.clone());
        let agreed_at = ZonedDateTime::now().to_string();
        let keep = Box::new(move |command, takes: &[_]| {
            let wording = wordings.iter().find(|word| word.0 == command).map(|word| word.1.clone()).unwrap_or_default();
            let kept = store::keep(&mut store, &client, command, &wording, takes, &agreed_at, source);
            kept.and_then(|()| store::own_voice(&store, &client)).map_err(|why| why.to_string())
        });
        observers.push(Box::new(ScreenFollower::new(screen)));
        let echo: Box<dyn EchoCanceller> = if self.hears_itself { Box::new(AutoCanceller::new()) } else { Box::new(NoCancel) };
        let parts = EnrolParts { dialogue: Dialogue::new(to_learn), words: self.words, talker, commands, echo, observers, keep };
        Ok(EnrolPipeline::new(parts, io.mic_rate_hz(), io.speaker_rate_hz())?)
    }

    fn talker(&self, rate_hz: u32, offline: bool) -> Result<Box<dyn Talker>, Failure> {
        if self.voice.as_deref() == Some(SYSTEM_VOICE) {
            if offline {
                return Err(Failure::Options("--voice system cannot be written to a file or hurried; use --voice espeak-ng here".into()));
            }
            return Ok(Box::new(SystemTalker::new(SystemSpeaker::open()?)));
        }
        let voice = choose_voice(self.voice.as_deref())?;
        let cache = LineCache::new(Some(self.data.join("voice-cache")), rate_hz);
        let renderer = if offline { Renderer::offline(voice, cache) } else { Renderer::live(voice, cache)? };
        Ok(Box::new(PcmTalker::new(renderer, rate_hz)))
    }
}
