//! A class: the same engine with nobody in it.

use std::sync::atomic::Ordering;

use crate::follow::{ScreenFollower, SharedScreen};
use crate::grammar::fast_grammar;
use crate::observe::{Beginning, Observer};
use crate::pipeline::{Parts, Pipeline};
use crate::practice::{Practice, until_interrupted};
use audio::echo::{AutoCanceller, NoCancel};
use audio::{self, EchoCanceller};
use command_ear::{ChildRecogniser, Mode, Options};
use files::error::Failure;
use screen::Keys;
use session::{Engine, SessionContext};

impl Practice {
    /// Leads a class; why it had to end, where it was not led to its end.
    ///
    /// # Errors
    /// A part cannot be built.
    pub fn lead_class(
        self,
        mut io: Box<dyn audio::AudioIo>,
        screen: SharedScreen,
        mut observers: Vec<Box<dyn Observer>>,
    ) -> Result<Option<String>, Failure> {
        let offline = io.is_offline();
        let mut commands = ChildRecogniser::start(&Options {
            model: self.model.clone(),
            program: self.recogniser.clone(),
            fast: fast_grammar(&self.words),
            mode: if offline { Mode::Offline } else { Mode::Live },
        })?;
        self.try_grammars(&mut commands)?;
        let talker = self.talker(io.speaker_rate_hz(), offline)?;
        let echo: Box<dyn EchoCanceller> = if self.hears_itself { Box::new(AutoCanceller::new()) } else { Box::new(NoCancel) };
        let usual = std::collections::BTreeMap::new();
        let beginning = Beginning { routine: &self.prescription.routine, usual: &usual, class: true };
        observers.iter_mut().for_each(|observer| observer.begins(&beginning));
        observers.push(Box::new(ScreenFollower::new(screen)));
        let parts = Parts {
            engine: Engine::new(self.prescription.routine, SessionContext { class: true, ..SessionContext::default() }),
            words: self.words,
            talker,
            commands: Box::new(commands),
            echo,
            observers,
            levels: self.levels,
            keys: if offline { None } else { Keys::open() },
        };
        let mut pipeline = Pipeline::new(parts, io.mic_rate_hz(), io.speaker_rate_hz())?;
        until_interrupted(move |interrupted| pipeline.run(io.as_mut(), || interrupted.load(Ordering::Relaxed)))
    }
}
