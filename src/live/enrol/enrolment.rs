//! One enrolment: builds the parts round the dialogue and leads it to its end.

use std::path::PathBuf;
use std::sync::atomic::Ordering;
use std::sync::{Arc, Mutex, PoisonError};

use jiff::ZonedDateTime;

use crate::conductor::Conductor;
use crate::enrol::dialogue::Dialogue;
use crate::enrol::event::Learnt;
use crate::enrol::party::EnrolParty;
use crate::enrol::store;
use crate::enrol::words;
use crate::follow::{ScreenFollower, SharedScreen};
use crate::grammar::{fast_grammar, main_grammar};
use crate::interrupt::until_interrupted;
use crate::machine::Machine;
use crate::observe::Observer;
use audio::AudioIo;
use command_ear::{CommandRecogniser, Models};
use files::error::Failure;
use hear::VoiceTask;
use record::{Source, Store};
use session::Listening;
use speak::{Words, voice_of};

/// Everything an enrolment is made of besides its devices.
pub struct Enrolment {
    pub words: Words,
    pub model: Models,
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
        io: Box<dyn AudioIo>,
        screen: SharedScreen,
        observers: Vec<Box<dyn Observer>>,
    ) -> Result<(Vec<Learnt>, Option<String>), Failure> {
        let mut conductor = self.conductor(io, screen, observers)?;
        let learnt = Arc::new(Mutex::new(Vec::new()));
        let result = Arc::clone(&learnt);
        let fault = until_interrupted(move |interrupted| {
            let outcome = conductor.lead(|| interrupted.load(Ordering::Relaxed));
            *result.lock().unwrap_or_else(PoisonError::into_inner) = conductor.party.learnt();
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
        io: Box<dyn AudioIo>,
        screen: SharedScreen,
        observers: Vec<Box<dyn Observer>>,
        stopped: impl Fn() -> bool,
    ) -> Result<(Vec<Learnt>, Option<String>), Failure> {
        let mut conductor = self.conductor(io, screen, observers)?;
        let fault = conductor.lead(stopped).err().map(|error| error.to_string());
        Ok((conductor.party.learnt(), fault))
    }

    fn conductor(
        self,
        io: Box<dyn AudioIo>,
        screen: SharedScreen,
        mut observers: Vec<Box<dyn Observer>>,
    ) -> Result<Conductor<EnrolParty>, Failure> {
        let to_learn = words::to_learn(&self.words);
        let machine = Machine {
            model: self.model,
            recogniser: self.recogniser,
            voice: voice_of(self.voice.as_deref(), self.words.language()),
            data: self.data,
            hears_itself: self.hears_itself,
            offline: io.is_offline(),
        };
        let mut commands = machine.recogniser(fast_grammar(&self.words))?;
        // Words that this model does not know are told before anything is said.
        let all = Listening {
            commands: to_learn.iter().map(|word| word.0).collect(),
            answers: Vec::new(),
            worded: Vec::new(),
            voice: VoiceTask::Idle,
            list: false,
            multiword_only: false,
        };
        commands.listen_for(&main_grammar(&self.words, &all))?;
        let speaker_rate_hz = io.speaker_rate_hz();
        let talker = machine.talker(speaker_rate_hz, Vec::new())?;
        let mut store = Store::open(&machine.data)?;
        let (client, source, wordings) = (self.client, self.source, to_learn.clone());
        let agreed_at = ZonedDateTime::now().to_string();
        let keep = Box::new(move |command, takes: &[_]| {
            let wording = wordings.iter().find(|word| word.0 == command).map(|word| word.1.clone()).unwrap_or_default();
            let kept = store::keep(&mut store, &client, command, &wording, takes, &agreed_at, source);
            kept.and_then(|()| store::own_voice(&store, &client)).map_err(|why| why.to_string())
        });
        observers.push(Box::new(ScreenFollower::new(screen, self.words.clone())));
        let stage = machine.stage(self.words, talker, commands, io.as_ref(), observers)?;
        Ok(Conductor::new(stage, EnrolParty::new(io, Dialogue::new(to_learn), keep)?))
    }
}
