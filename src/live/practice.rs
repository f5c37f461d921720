//! One practice: builds the parts round the engine and leads it to its end.

use std::collections::BTreeMap;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use jiff::ZonedDateTime;

use super::enrol;
use crate::follow::{ScreenFollower, SharedScreen};
use crate::grammar::{self, fast_grammar};
use crate::journal_keeper::{JournalKeeper, SessionFacts, SharedKept, lock};
use crate::levels::Levels;
use crate::observe::{Beginning, Observer};
use crate::pipeline::{Parts, Pipeline};
use crate::sound::{self, SoundWish};
use crate::summary;
use crate::talk::{PcmTalker, SystemTalker, Talker};
use audio::echo::{AutoCanceller, NoCancel};
use audio::{self, AudioIo, EchoCanceller};
use command_ear::{ChildRecogniser, Choice, Grammar, Lexicon, Mode, Options};
use files::error::Failure;
use files::ramps::stages_and_unfinished;
use files::spoken::spoken_form;
use record::{Source, Store, Unfinished};
use routine::{Prescription, Work, fresh_first};
use screen::{Keys, restore_terminal};
use session::{Arg, Engine, Line, SessionContext, listening};
use speak::{LineCache, Renderer, SYSTEM_VOICE, SystemSpeaker, Words, choose_voice};

/// Everything a practice is made of besides its devices.
pub struct Practice {
    pub prescription: Prescription,
    pub routine_text: String,
    pub words: Words,
    pub model: PathBuf,
    pub lexicon: Lexicon,
    /// What we play comes back through the microphone.
    pub hears_itself: bool,
    pub voice: Option<String>,
    pub source: Source,
    pub client: String,
    pub data: PathBuf,
    pub journal: Option<PathBuf>,
    /// What levels mean.
    pub levels: Levels,
    /// The program that runs as the recogniser's process; none for the running one, which a test is not.
    pub recogniser: Option<PathBuf>,
}

/// How a practice ended.
pub struct Outcome {
    kept: SharedKept,
    /// Why it had to end, where it was not led to its end.
    fault: Option<String>,
    names: Vec<(String, String)>,
}

impl Practice {
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
        mut io: Box<dyn AudioIo>,
        screen: SharedScreen,
        mut observers: Vec<Box<dyn Observer>>,
    ) -> Result<Outcome, Failure> {
        let offline = io.is_offline();
        let mut store = Store::open(&self.data)?;
        observers.extend(sound::tidied(&mut store, self.source, &now));
        let (text, within) = (&self.routine_text, Unfinished::OFFERED_WITHIN);
        let unfinished = stages_and_unfinished(&mut self.prescription, text, &store, &self.client, self.source, &now, within)?;
        let start = self.start(&store, &now, unfinished.as_ref())?;
        self.make_ready(&store, unfinished.as_ref())?;
        let mut commands = ChildRecogniser::start(&Options {
            model: self.model.clone(),
            program: self.recogniser.clone(),
            fast: fast_grammar(&self.words),
            mode: if offline { Mode::Offline } else { Mode::Live },
        })?;
        self.try_grammars(&mut commands)?;
        // A replay knows nothing of the client: the same sound gives the same journal.
        if self.source == Source::Live {
            let own = enrol::store::own_voice(&store, &self.client)?;
            if !own.words.is_empty() {
                commands.weigh_in(&own);
            }
        }
        // A replay knows nothing of the client.
        let present = unfinished.as_ref().map(|unfinished| unfinished.session);
        let usual = if self.source == Source::Live { store.usual_voices(&self.client, present)? } else { BTreeMap::new() };
        let beginning = Beginning { routine: &self.prescription.routine, usual: &usual, class: false };
        observers.iter_mut().for_each(|observer| observer.begins(&beginning));
        let talker = self.talker(io.speaker_rate_hz(), offline)?;
        let names = self.names();
        let facts = SessionFacts {
            client: self.client,
            routine_title: self.prescription.routine.title.clone(),
            routine_text: self.routine_text,
            source: self.source,
            started_at: now,
            lines: self.journal,
        };
        let wish = SoundWish::of(&store, &facts)?;
        let (keeper, kept) = JournalKeeper::new(store, facts, unfinished)?;
        observers.push(Box::new(keeper));
        observers.extend(wish.map(|wish| wish.keeper(&self.data, io.mic_rate_hz(), kept.clone(), offline)));
        observers.push(Box::new(ScreenFollower::new(screen)));
        let echo: Box<dyn EchoCanceller> = if self.hears_itself { Box::new(AutoCanceller::new()) } else { Box::new(NoCancel) };
        let parts = Parts {
            engine: Engine::new(self.prescription.routine, start),
            words: self.words,
            talker,
            commands: Box::new(commands),
            echo,
            observers,
            levels: self.levels,
            keys: if offline { None } else { Keys::open() },
        };
        let mut pipeline = Pipeline::new(parts, io.mic_rate_hz(), io.speaker_rate_hz())?;
        let fault = until_interrupted(move |interrupted| pipeline.run(io.as_mut(), || interrupted.load(Ordering::Relaxed)))?;
        Ok(Outcome { kept, fault, names })
    }

    /// What the engine must know of earlier sessions. A recording or a rehearsal knows nothing of the client's: a "yes"
    /// in a recording is nobody's agreement, and the same sound must give the same journal.
    fn start(&self, store: &Store, now: &ZonedDateTime, unfinished: Option<&Unfinished>) -> Result<SessionContext, Failure> {
        let resume_from = unfinished.map(|unfinished| unfinished.position);
        let resume_done = unfinished.map(|unfinished| unfinished.steps_done.clone()).unwrap_or_default();
        let resume_counts = unfinished.map(|unfinished| unfinished.counts.clone()).unwrap_or_default();
        let resume_loud_s = unfinished.map_or(0.0, |unfinished| unfinished.loud_s);
        let resumed_agreed = unfinished.map(|unfinished| unfinished.agreed.clone()).unwrap_or_default();
        if self.source != Source::Live {
            return Ok(SessionContext {
                first_session: resume_from.is_none(),
                agreed: resumed_agreed,
                resume_from,
                resume_done,
                resume_counts,
                resume_loud_s,
                ..SessionContext::default()
            });
        }
        let known = store.exercises_begun(&self.client)?;
        let sound = store.sound_to_ask(&self.client, now)?;
        let mut agreed = store.agreed(&self.client)?;
        agreed.extend(resumed_agreed);
        Ok(SessionContext {
            first_session: known.is_empty(),
            agreed,
            known,
            resume_from,
            resume_done,
            resume_counts,
            resume_loud_s,
            past: store.past(&self.client, now, unfinished.map(|unfinished| unfinished.session))?,
            habits: store.habits(&self.client)?,
            practice_week: store.practice_week(&self.client, now)?,
            sound_days: sound.map(|question| question.days),
            sound_again: sound.is_some_and(|question| question.again),
            class: false,
        })
    }

    /// What only the client's own record can settle: questions that were not asked lately come first, and sips are for the client
    /// alone for whom they were enabled.
    fn make_ready(&mut self, store: &Store, unfinished: Option<&Unfinished>) -> Result<(), Failure> {
        // An interrupted practice asks what it would have asked.
        let asked = if self.source == Source::Live && unfinished.is_none() { store.asked(&self.client)? } else { BTreeMap::new() };
        let own_sips = self.prescription.client.as_ref() == Some(&self.client);
        for step in &mut self.prescription.routine.steps {
            match &mut step.work {
                Work::Question { items, .. } => fresh_first(items, &asked, |item| &item.clue),
                Work::Naming { items, .. } => fresh_first(items, &asked, |item| &item.category),
                Work::Repeated { sip_every, .. } if sip_every.is_some() && !own_sips => {
                    eprintln!(
                        "Sips are left out: the routine enables them for {:?}, not for {:?}.",
                        self.prescription.client.as_deref().unwrap_or_default(),
                        self.client
                    );
                    *sip_every = None;
                }
                _ => {}
            }
        }
        Ok(())
    }

    /// Every grammar of the session is tried before it begins, so that no state finds a word missing later.
    pub fn try_grammars(&self, commands: &mut ChildRecogniser) -> Result<(), Failure> {
        use command_ear::CommandRecogniser;
        for (state, list) in listening::ALL {
            let firm = state.starts_with("class");
            let listening =
                session::Listening { commands: list.to_vec(), answers: Vec::new(), voice: hear::VoiceTask::Idle, list: false, firm };
            let grammar = grammar::main_grammar(&self.words, &listening);
            if !grammar.choices.is_empty() {
                commands.listen_for(&grammar)?;
            }
        }
        for step in &self.prescription.routine.steps {
            let answers: Vec<&String> = match &step.work {
                Work::Question { items, .. } => items.iter().flat_map(|item| item.answers.iter().chain(&item.near)).collect(),
                Work::Naming { items, .. } => items.iter().flat_map(|item| &item.members).collect(),
                _ => continue,
            };
            let choices =
                answers.into_iter().map(|answer| Choice { tag: answer.clone(), wordings: answer.split('|').map(spoken_form).collect() });
            self.lexicon.validate(&Grammar { choices: choices.collect(), list_from: None })?;
        }
        Ok(())
    }

    pub fn talker(&self, rate_hz: u32, offline: bool) -> Result<Box<dyn Talker>, Failure> {
        if self.voice.as_deref() == Some(SYSTEM_VOICE) {
            if offline {
                return Err(Failure::Options(
                    "--voice system speaks through the system's own loudspeaker and cannot be written to a file or hurried; use --voice espeak-ng here".into(),
                ));
            }
            for key in SystemSpeaker::limits() {
                eprintln!("{}", self.words.text(&Line { key: (*key).to_owned(), args: Vec::new() })?);
            }
            return Ok(Box::new(SystemTalker::new(SystemSpeaker::open()?)));
        }
        let voice = choose_voice(self.voice.as_deref())?;
        let cache = LineCache::new(Some(self.data.join("voice-cache")), rate_hz);
        let mut renderer = if offline { Renderer::offline(voice, cache) } else { Renderer::live(voice, cache)? };
        if !offline {
            renderer.prerender(self.lines_to_come());
        }
        Ok(Box::new(PcmTalker::new(renderer, rate_hz)))
    }

    /// The lines that this routine will need, the counts first: they must be there on the beat.
    fn lines_to_come(&self) -> Vec<String> {
        let mut lines: Vec<Line> = Vec::new();
        let plain = |key: String| Line { key, args: Vec::new() };
        for step in &self.prescription.routine.steps {
            let longest = match &step.work {
                Work::Timed { phases, .. } => phases.iter().map(|phase| phase.length_s).fold(0.0, f64::max),
                Work::Paced { phases, .. } => phases.iter().map(|phase| f64::from(phase.counts)).fold(0.0, f64::max),
                _ => 0.0,
            };
            for n in 1..=longest as u32 {
                lines.push(Line { key: "count".into(), args: vec![("n", Arg::Number(f64::from(n)))] });
            }
            if let Work::Paced { phases, .. } = &step.work {
                lines.extend(phases.iter().map(|phase| plain(format!("paced-{}", phase.name))));
                lines.extend(["paced-last-round", "paced-over"].map(|key| plain(key.into())));
            }
            let id = &step.exercise.id;
            if let Work::Timed { phases, .. } = &step.work {
                lines.extend(phases.iter().map(|phase| plain(format!("ex-{id}-phase-{}", phase.name))));
                lines.push(plain("posture-over".into()));
            }
            lines.extend(["cue", "short", "instruction"].map(|part| plain(format!("ex-{id}-{part}"))));
        }
        let fixed = ["stopped", "paused", "resting", "going-on", "help", "help-go-on", "voice-again", "ask-ready-again", "trial-over"];
        lines.extend(fixed.map(|key| plain(key.into())));
        let mut texts: Vec<String> = lines.iter().filter_map(|line| self.words.text(line).ok()).collect();
        let mut seen = std::collections::BTreeSet::new();
        texts.retain(|text| seen.insert(text.clone()));
        texts
    }

    /// What each exercise is called in the summary.
    fn names(&self) -> Vec<(String, String)> {
        let name = |id: &str| self.words.text(&Line { key: format!("ex-{id}-name"), args: Vec::new() }).unwrap_or_else(|_| id.to_owned());
        self.prescription.routine.steps.iter().map(|step| (step.exercise.id.clone(), name(&step.exercise.id))).collect()
    }
}

impl Outcome {
    /// The summary table, and what went wrong on the way.
    pub fn report(&self, screen: &SharedScreen) {
        screen.finish();
        let kept = lock(&self.kept);
        let name = |id: &str| self.names.iter().find(|(known, _)| known == id).map_or_else(|| id.to_owned(), |(_, name)| name.clone());
        // A reader that went away (`| head`) is no reason to break off.
        let _ = writeln!(std::io::stdout(), "\n{}", summary::table(&kept.entries, &name));
        for failure in &kept.failures {
            eprintln!("The journal has a gap: {failure}");
        }
        kept.notes.iter().for_each(|note| eprintln!("{note}"));
        if let Some(fault) = &self.fault {
            eprintln!("{fault}");
        }
    }

    /// Every fact of the session, an interrupted one's that was gone on with included.
    #[must_use]
    pub fn entries(&self) -> Vec<session::Entry> {
        lock(&self.kept).entries.clone()
    }

    /// Success unless something failed; being ended by Ctrl-C or by the client is no failure.
    pub fn exit_code(&self) -> ExitCode {
        if self.fault.is_none() && lock(&self.kept).failures.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
    }
}

/// Runs the sound loop on a thread of its own while this one waits for its end or for Ctrl-C; a second Ctrl-C does not wait.
pub fn until_interrupted(
    lead: impl FnOnce(Arc<AtomicBool>) -> Result<(), audio::AudioError> + Send + 'static,
) -> Result<Option<String>, Failure> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(1)
        .enable_all()
        .build()
        .map_err(|why| Failure::Again(format!("the program cannot start its threads: {why}; close other programs and try again")))?;
    let interrupted = Arc::new(AtomicBool::new(false));
    let flag = interrupted.clone();
    runtime.block_on(async move {
        let mut led = tokio::task::spawn_blocking(move || lead(flag));
        loop {
            tokio::select! {
                ended = &mut led => return match ended {
                    Ok(outcome) => Ok(outcome.err().map(|error| error.to_string())),
                    Err(panic) => Ok(Some(format!("the practice was cut short: {panic}. What was measured is saved."))),
                },
                signal = tokio::signal::ctrl_c() => {
                    if signal.is_err() || interrupted.swap(true, Ordering::Relaxed) {
                        restore_terminal();
                        std::process::exit(130);
                    }
                }
            }
        }
    })
}
