//! Waiting for a practice, one stretch after another, with practices between them.

use std::path::PathBuf;

use jiff::ZonedDateTime;

use crate::attend::devices::Devices;
use crate::attend::party::AttendParty;
pub use crate::attend::party::Waited;
use crate::clock::Clock;
use crate::conductor::Conductor;
use crate::follow::{ScreenFollower, SharedScreen};
use crate::give_way::GivesWay;
use crate::machine::Machine;
use crate::observe::Observer;
use crate::speech::Speech;
use crate::stage::Stage;
use attend::{Event, Household};
use audio::AudioIo;
use command_ear::Models;
use files::error::Failure;
use speak::{Words, voice_of};

/// What does not change while it waits.
pub struct House {
    pub household: Household,
    pub words: Words,
    pub model: Models,
    pub voice: Option<String>,
    pub data: PathBuf,
    /// The program that runs as the recogniser's process; none for the running one, which a test is not.
    pub recogniser: Option<PathBuf>,
    /// The time of day at the first sample; none: the clock on the wall.
    pub begins_at: Option<ZonedDateTime>,
}

/// Makes a follower of one stretch of waiting.
pub type MakeFollower = Box<dyn Fn() -> Result<Box<dyn Observer>, Failure> + Send>;

/// An attendant with ears and a voice.
pub struct Waiting {
    conductor: Conductor<AttendParty>,
    /// The page that it is shown on.
    page: Option<MakeFollower>,
}

impl Waiting {
    /// # Errors
    /// The voice cannot be used.
    pub fn new(house: House, devices: Devices) -> Result<Self, Failure> {
        let House { household, words, model, voice, data, recogniser, begins_at } = house;
        let (hears_itself, offline) = (devices.hears_itself(), devices.is_offline());
        let voice = voice_of(voice.as_deref(), words.language());
        let machine = Machine { model, recogniser, voice, data, hears_itself, offline };
        let rate_hz = devices.speaker_rate_hz();
        let talker = machine.talker(rate_hz, Vec::new())?;
        let stage = Stage {
            clock: Clock::Seconds(0.0),
            // "Stop" is the only thing that is heard over our own voice, and no line of an attendant says it.
            speech: Speech::new(talker, rate_hz, Vec::new()),
            words,
            observers: Vec::new(),
            path: None,
            blocks: 0,
            gives_way: GivesWay::default(),
        };
        let party = AttendParty::new(household, machine, begins_at, devices);
        Ok(Self { conductor: Conductor::new(stage, party), page: None })
    }

    /// The time of day now.
    #[must_use]
    pub fn now(&self) -> ZonedDateTime {
        self.conductor.party.time_of_day(self.now_s())
    }

    /// Seconds since the beginning, those of practices included, on the clock of events.
    #[must_use]
    pub fn now_s(&self) -> f64 {
        self.conductor.stage.now_s()
    }

    /// Who lives here.
    #[must_use]
    pub fn household(&self) -> &Household {
        &self.conductor.party.household
    }

    /// The words that it speaks with.
    #[must_use]
    pub fn words(&self) -> &Words {
        &self.conductor.stage.words
    }

    /// What its ears and its voice are built with.
    #[must_use]
    pub fn machine(&self) -> &Machine {
        &self.conductor.party.machine
    }

    /// Its microphone and loudspeaker.
    pub fn devices(&mut self) -> &mut Devices {
        &mut self.conductor.party.devices
    }

    /// Its microphone was found to let nothing through while nobody speaks.
    #[must_use]
    pub fn mic_gates(&self) -> bool {
        self.conductor.party.mic_gates()
    }

    /// Shows the waiting elsewhere, too: `page` makes a follower for each stretch of waiting.
    pub fn show_on(&mut self, page: MakeFollower) {
        self.page = Some(page);
    }

    /// Time that passed without a block, s.
    pub fn pass(&mut self, passed_s: f64) {
        self.conductor.stage.clock.skip(passed_s);
        self.conductor.stage.speech.skip(passed_s);
    }

    /// Tells the attendant something from outside.
    pub fn tell(&mut self, event: Event) {
        self.conductor.party.let_attendant_act(&mut self.conductor.stage, event);
    }

    /// Waits until a practice is asked for or it is over. `interrupted` is asked once a block.
    ///
    /// # Errors
    /// The recogniser cannot be started at the very beginning.
    pub fn wait(&mut self, screen: SharedScreen, interrupted: impl Fn() -> bool) -> Result<Waited, Failure> {
        let Conductor { stage, party, .. } = &mut self.conductor;
        stage.observers = vec![Box::new(ScreenFollower::new(screen, stage.words.clone()))];
        if let Some(page) = &self.page {
            stage.observers.push(page()?);
        }
        party.open(stage)?;
        self.conductor.run(interrupted)?;
        let Conductor { stage, party, .. } = &mut self.conductor;
        let waited = party.close_ears(stage);
        stage.observers.clear();
        Ok(waited)
    }
}

#[cfg(test)]
#[path = "tests/waiting.rs"]
mod tests;
