//! Builds a practice or a class round the engine and leads it to its end.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::atomic::Ordering;

use crate::conductor::Conductor;
use crate::enrol;
use crate::follow::{ScreenFollower, SharedScreen};
use crate::grammar::{self, fast_grammar};
use crate::interrupt::until_interrupted;
use crate::journal_keeper::{JournalKeeper, SessionFacts};
use crate::levels::Levels;
use crate::machine::Machine;
use crate::note_writer::NoteWriter;
use crate::observe::{Beginning, Observer};
use crate::page_talker::PageTalker;
use crate::practice::outcome::Outcome;
use crate::practice::party::PracticeParty;
use crate::practice::to_come::lines_to_come;
use crate::practice::understood::{said_to, understood};
use crate::sound::{self, SoundWish};
use crate::talk::Talker;
use audio::{self, AudioIo};
use command_ear::{ChildRecogniser, Choice, CommandRecogniser, Grammar, Lexicon, Models};
use files::error::{Failure, tell};
use files::load::{self, Loaded};
use files::ramps::stages_and_unfinished;
use files::spoken::spoken_form;
use jiff::ZonedDateTime;
use record::{Source, Store, Unfinished};
use routine::{Participant, Prescription, Work};
use screen::Keys;
use session::{Engine, Line, SessionContext, Understood, listening};
use speak::{SYSTEM_VOICE, SystemSpeaker, Words, voice_of};

/// Everything a practice is made of besides its devices.
pub struct Practice {
    pub prescription: Prescription,
    pub routine_text: String,
    pub words: Words,
    pub model: Models,
    pub lexicon: Lexicon,
    /// What we play comes back through the microphone.
    pub hears_itself: bool,
    pub voice: Option<String>,
    pub source: Source,
    pub client: String,
    pub data: PathBuf,
    pub journal: Option<PathBuf>,
    /// Whom to call in an emergency, as it is dialled.
    pub emergency_number: Option<String>,
    /// Of a baseline or a re-test: its name. None: a practice.
    pub protocol: Option<String>,
    /// What levels mean.
    pub levels: Levels,
    /// Nothing is said aloud: every line stands on the page for as long as it takes to be read.
    pub by_page: bool,
    /// The program that runs as the recogniser's process; none for the running one, which a test is not.
    pub recogniser: Option<PathBuf>,
    /// The microphone was found to let nothing through while nobody speaks: its silence says little.
    pub mic_gates: bool,
}

impl Practice {
    /// A practice of what was loaded, with the usual voice, relative levels and no journal of its own.
    #[must_use]
    pub fn of(loaded: Loaded, source: Source, client: String, data: PathBuf) -> Self {
        let Loaded { words, model, lexicon, prescription, routine_text } = loaded;
        Self {
            prescription,
            routine_text,
            words,
            model,
            lexicon,
            hears_itself: false,
            voice: None,
            source,
            client,
            data,
            journal: None,
            emergency_number: None,
            protocol: None,
            levels: Levels::default(),
            by_page: false,
            recogniser: None,
            mic_gates: false,
        }
    }

    /// Leads it. Blocks until it is over; Ctrl-C ends it cleanly.
    ///
    /// # Errors
    /// A part cannot be built. Faults after the begin are in the outcome, for then there is something to report.
    pub fn lead(self, io: Box<dyn AudioIo>, screen: SharedScreen, observers: Vec<Box<dyn Observer>>) -> Result<Outcome, Failure> {
        self.lead_at(ZonedDateTime::now(), io, screen, observers)
    }

    /// As [`Practice::lead`], begun at `now`.
    ///
    /// # Errors
    /// As [`Practice::lead`].
    pub fn lead_at(
        mut self,
        now: ZonedDateTime,
        io: Box<dyn AudioIo>,
        screen: SharedScreen,
        mut observers: Vec<Box<dyn Observer>>,
    ) -> Result<Outcome, Failure> {
        self.words = said_to(self.words, &self.model);
        let mut store = Store::open(&self.data)?;
        observers.extend(sound::tidied(&mut store, self.source, &now));
        observers.extend(self.unheard());
        let (text, within) = (&self.routine_text, Unfinished::OFFERED_WITHIN);
        let unfinished = stages_and_unfinished(&mut self.prescription, text, &store, &self.client, self.source, &now, within)?;
        let context = self.context(&store, &now, unfinished.as_ref())?;
        self.make_ready(&store, unfinished.as_ref())?;
        let mut parts = self.parts(io.as_ref())?;
        // A replay knows nothing of the client: the same sound gives the same journal.
        let mut usual = BTreeMap::new();
        if self.source == Source::Live {
            let own = enrol::store::own_voice(&store, &self.client)?;
            if !own.words.is_empty() {
                parts.commands.weigh_in(&own);
            }
            usual = store.usual_voices(&self.client, unfinished.as_ref().map(|unfinished| unfinished.session))?;
        }
        let beginning = Beginning { routine: &self.prescription.routine, usual: &usual, class: false, by_page: self.by_page };
        observers.iter_mut().for_each(|observer| observer.begins(&beginning));
        let words = self.words.clone();
        let facts = SessionFacts {
            client: self.client.clone(),
            routine_title: self.prescription.routine.title.clone(),
            routine_text: self.routine_text.clone(),
            source: self.source,
            protocol: self.protocol.clone(),
            started_at: now,
            lines: self.journal.clone(),
        };
        let wish = SoundWish::of(&store, &facts)?;
        let (keeper, kept) = JournalKeeper::new(store, facts, unfinished)?;
        observers.push(Box::new(keeper));
        observers.extend(wish.map(|wish| wish.keeper(&self.data, io.mic_rate_hz(), kept.clone(), io.is_offline(), self.words.clone())));
        observers.push(Box::new(ScreenFollower::new(screen, self.words.clone())));
        let fault = lead_to_end(self.conductor(parts, context, io, observers)?)?;
        Ok(Outcome { kept, fault, words })
    }

    /// Leads a class: the same engine with nobody in it, nobody measured, and no journal. Gives why it had to end, where it was not led to
    /// its end.
    ///
    /// # Errors
    /// A part cannot be built.
    pub fn lead_class(
        self,
        class: ClassGiven,
        io: Box<dyn AudioIo>,
        screen: SharedScreen,
        mut observers: Vec<Box<dyn Observer>>,
    ) -> Result<Option<String>, Failure> {
        let parts = self.parts(io.as_ref())?;
        observers.extend(self.unheard());
        let beginning = Beginning { routine: &self.prescription.routine, usual: &BTreeMap::new(), class: true, by_page: false };
        observers.iter_mut().for_each(|observer| observer.begins(&beginning));
        observers.push(Box::new(ScreenFollower::new(screen, self.words.clone())));
        let ClassGiven { participants, names_aloud } = class;
        let context = SessionContext { class: true, participants, names_aloud, ..SessionContext::default() };
        lead_to_end(self.conductor(parts, context, io, observers)?)
    }

    /// Tells whoever follows what is not heard by voice: any command, or the answers of word games where there are some.
    fn unheard(&self) -> Option<Box<dyn Observer>> {
        let answers = |work: &Work| matches!(work, Work::Question { .. } | Work::Naming { .. });
        match understood(&self.model) {
            Understood::Words => None,
            Understood::Commands => {
                let asks = self.prescription.routine.steps.iter().any(|step| answers(&step.work));
                asks.then(|| sound::told_once(&self.words, "ear-commands-shown"))
            }
            Understood::Nothing => Some(sound::told_once(&self.words, "ear-none-shown")),
        }
    }

    /// The ears and the voice.
    fn parts(&self, io: &dyn AudioIo) -> Result<Parts, Failure> {
        let machine = Machine {
            model: self.model.clone(),
            recogniser: self.recogniser.clone(),
            voice: voice_of(self.voice.as_deref(), self.words.language()),
            data: self.data.clone(),
            hears_itself: self.hears_itself,
            offline: io.is_offline(),
        };
        let mut commands = machine.recogniser(fast_grammar(&self.words))?;
        self.try_grammars(&mut commands)?;
        if self.by_page {
            return Ok(Parts { machine, commands, talker: Box::new(PageTalker::default()) });
        }
        if !machine.offline && self.voice.as_deref() == Some(SYSTEM_VOICE) {
            for key in SystemSpeaker::limits() {
                tell(&self.words.text(&Line { key: (*key).to_owned(), args: Vec::new() })?);
            }
        }
        let to_come = if machine.offline { Vec::new() } else { lines_to_come(&self.prescription.routine, &self.words) };
        let talker = machine.talker(io.speaker_rate_hz(), to_come)?;
        Ok(Parts { machine, commands, talker })
    }

    fn conductor(
        self,
        parts: Parts,
        context: SessionContext,
        io: Box<dyn AudioIo>,
        observers: Vec<Box<dyn Observer>>,
    ) -> Result<Conductor<PracticeParty>, Failure> {
        let Parts { machine, commands, talker } = parts;
        let mut stage = machine.stage(self.words, talker, commands, io.as_ref(), observers)?;
        stage.gives_way.never = context.class;
        let keys = if machine.offline { None } else { Keys::open() };
        let writer = context.writes_down.then(|| load::writing_model(&self.data)).flatten();
        let writer = writer.map(|model| NoteWriter::new(model, self.recogniser.clone(), io.mic_rate_hz()));
        let engine = Engine::new(self.prescription.routine, context);
        let mut party = PracticeParty::new(io, engine, self.levels, keys, &stage.words);
        if let Some(writer) = writer {
            party.write_down(writer);
        }
        if self.mic_gates {
            party.expect_gate();
        }
        Ok(Conductor::new(stage, party))
    }

    /// Every grammar of the session is tried before it begins, so that no state finds a word missing later.
    ///
    /// # Errors
    /// A word that the model does not know.
    fn try_grammars(&self, commands: &mut ChildRecogniser) -> Result<(), Failure> {
        for (state, list) in listening::ALL {
            let multiword_only = state.starts_with("class");
            let listening = session::Listening {
                commands: listening::with_safety(list),
                answers: Vec::new(),
                worded: Vec::new(),
                voice: hear::VoiceTask::Idle,
                list: false,
                multiword_only,
            };
            let grammar = grammar::main_grammar(&self.words, &listening);
            if !grammar.choices.is_empty() {
                commands.listen_for(&grammar)?;
            }
        }
        for worded in [listening::numbers(), listening::missed_reasons()] {
            let choices = worded.into_iter().map(|key| Choice { wordings: self.words.wordings_of(&key), tag: key });
            self.lexicon.validate(&Grammar { choices: choices.collect(), ..Grammar::default() })?;
        }
        for step in &self.prescription.routine.steps {
            let answers: Vec<&String> = match &step.work {
                Work::Question { items, .. } => items.iter().flat_map(|item| item.answers.iter().chain(&item.near)).collect(),
                Work::Naming { items, .. } => items.iter().flat_map(|item| &item.members).collect(),
                _ => continue,
            };
            let choices =
                answers.into_iter().map(|answer| Choice { tag: answer.clone(), wordings: answer.split('|').map(spoken_form).collect() });
            self.lexicon.validate(&Grammar { choices: choices.collect(), ..Grammar::default() })?;
        }
        Ok(())
    }
}

/// Who belongs to a class that is to be led; by default nobody is known.
#[derive(Debug, Clone, Default)]
pub struct ClassGiven {
    pub participants: Vec<Participant>,
    /// Who leaves an exercise out is said as well as shown.
    pub names_aloud: bool,
}

/// What is built before anybody is told of the practice.
struct Parts {
    machine: Machine,
    commands: ChildRecogniser,
    talker: Box<dyn Talker>,
}

fn lead_to_end(mut conductor: Conductor<PracticeParty>) -> Result<Option<String>, Failure> {
    until_interrupted(move |interrupted| conductor.lead(|| interrupted.load(Ordering::Relaxed)))
}
