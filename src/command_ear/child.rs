//! The child process: reads sound, says what it heard. It holds the recognition library, whose core aborts the process on an inner
//! contradiction; nothing of the session is lost with it.

use super::decide::is_open;
use super::decoder::SpeechModel;
use super::ear::Ear;
use super::embedding::{SecondEar, WordSpotter};
use super::listener::Listener;
use super::path::Tuning;
use super::templates::{EnrolledVoice, Weigher};
use super::trace::Trace;
use super::why::Considered;
use super::wire::{self, GrammarOrder, HeardReport, Sound, kind};
use super::{CommandEarError, HeardPhrase, Path};
use std::cell::RefCell;
use std::io::{self, BufReader, BufWriter, Read, Write};
use std::path::Path as FilePath;
use std::process::ExitCode;
use std::rc::Rc;

/// The environment variable that lets the recogniser's library write to standard error.
pub(crate) const LOG_VARIABLE: &str = "TIDECOUNT_LOG";

/// The environment variable that tells the child who started it.
pub(crate) const PARENT_VARIABLE: &str = "TIDECOUNT_PARENT";

/// Whoever started this process is gone already.
#[must_use]
pub fn is_orphan() -> bool {
    #[cfg(unix)]
    {
        let parent = std::env::var(PARENT_VARIABLE).ok().and_then(|id| id.parse::<u32>().ok());
        parent.is_some_and(|id| id != std::os::unix::process::parent_id())
    }
    #[cfg(not(unix))]
    false
}

/// Runs the recogniser on standard input and output until the input ends; `wire.rs` tells the protocol. `load` loads the
/// model; it is told whether the library may write to standard error. `second_ear`: the folder of the network that hears beside it, or alone
/// where the model recognises nothing; none for the one that comes with the program.
#[must_use]
pub fn serve<M: SpeechModel>(load: impl FnOnce(bool) -> Result<M, CommandEarError>, second_ear: Option<&FilePath>) -> ExitCode {
    let mut input = BufReader::with_capacity(1 << 16, io::stdin().lock());
    let mut output = BufWriter::new(io::stdout().lock());
    match run(load, second_ear, &mut input, &mut output) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            // The parent may be gone already; then nobody is left to be told.
            let _ = wire::write_frame(&mut output, kind::ERROR, error.0.as_bytes()).and_then(|()| output.flush());
            ExitCode::FAILURE
        }
    }
}

fn torn(error: &io::Error) -> CommandEarError {
    CommandEarError(format!("the recogniser's pipe broke: {error}"))
}

fn senseless(what: u8) -> CommandEarError {
    CommandEarError(format!("the recogniser was sent something it cannot read, kind {:?}", char::from(what)))
}

fn run<M: SpeechModel>(
    load: impl FnOnce(bool) -> Result<M, CommandEarError>,
    second_ear: Option<&FilePath>,
    input: &mut BufReader<impl Read>,
    output: &mut impl Write,
) -> Result<(), CommandEarError> {
    let model = load(std::env::var_os(LOG_VARIABLE).is_some())?;
    let second_ear = SecondEar::from_folder(second_ear)?.map(|ear| Rc::new(RefCell::new(ear)) as Rc<RefCell<dyn WordSpotter>>);
    let mut service = Service {
        model,
        ear: Ear::new(),
        trace: Trace::from_environment(),
        main_generation: 0,
        fast_generation: 0,
        tells_why: false,
        own: Rc::default(),
        second_ear,
    };
    wire::write_frame(output, kind::READY, &[]).and_then(|()| output.flush()).map_err(|e| torn(&e))?;
    while let Some((what, body)) = wire::read_frame(input).map_err(|e| torn(&e))? {
        for (what, body) in service.answer(what, &body)? {
            wire::write_frame(output, what, &body).map_err(|e| torn(&e))?;
        }
        // While more has come already, the answers may gather.
        if input.buffer().is_empty() {
            output.flush().map_err(|e| torn(&e))?;
        }
    }
    Ok(())
}

struct Service<M: SpeechModel> {
    model: M,
    ear: Ear<M::Decoder>,
    trace: Trace,
    main_generation: u64,
    fast_generation: u64,
    /// The parent wants to know what is considered.
    tells_why: bool,
    /// The client's own voice, once the parent sent it.
    own: Rc<RefCell<Option<Weigher>>>,
    /// Shared by both paths; none where it is left out.
    second_ear: Option<Rc<RefCell<dyn WordSpotter>>>,
}

impl<M: SpeechModel> Service<M> {
    fn answer(&mut self, what: u8, body: &[u8]) -> Result<Vec<(u8, Vec<u8>)>, CommandEarError> {
        match what {
            kind::GRAMMAR => {
                let order: GrammarOrder = serde_json::from_slice(body).map_err(|_| senseless(what))?;
                let (path, tuning, generation) = if order.fast {
                    (Path::Fast, Tuning::FAST, &mut self.fast_generation)
                } else {
                    (Path::Main, Tuning::MAIN, &mut self.main_generation)
                };
                let tuning = if self.model.recognises() { tuning } else { tuning.of_second_ear_alone() };
                *generation = order.generation;
                self.tells_why |= order.why;
                // What any word may follow is found by what the decoder knows of the other phrases.
                let mut whole: Vec<String> = order.choices.concat().into_iter().filter(|wording| !is_open(wording)).collect();
                let known = |phrase: &String| phrase.split(' ').all(|word| self.model.knows(word)) && !whole.contains(phrase);
                let near: Vec<String> = order.near.into_iter().filter(known).collect();
                whole.extend(near);
                let listener = self.model.decoder(&whole).map(|decoder| {
                    Listener::new(decoder, &order.choices, tuning)
                        .with_own_voice(Rc::clone(&self.own))
                        .with_second_ear(self.second_ear.clone(), self.trace.is_wanted())
                        .with_lists(order.list_from)
                        .with_urgent(order.urgent)
                });
                self.ear.listen(path, listener);
                Ok(Vec::new())
            }
            kind::OWN_VOICE => {
                let own = EnrolledVoice::from_bytes(body).ok_or_else(|| senseless(what))?;
                *self.own.borrow_mut() = (!own.words.is_empty()).then(|| Weigher::new(own));
                Ok(Vec::new())
            }
            kind::WORDS => {
                let words: Vec<String> = serde_json::from_slice(body).map_err(|_| senseless(what))?;
                let unknown: Vec<&String> = words.iter().filter(|w| !self.model.knows(w)).collect();
                Ok(vec![(kind::UNKNOWN_WORDS, json(&unknown)?)])
            }
            kind::SOUND => {
                let sound = Sound::from_body(body).ok_or_else(|| senseless(what))?;
                let heard = self.ear.hear(sound.start_s, &sound.samples, sound.main, sound.own_db);
                self.report(heard, sound.number)
            }
            kind::FINISH => {
                let (number, _) = wire::number_and_instant(body).ok_or_else(|| senseless(what))?;
                let heard = self.ear.finish();
                let answers = self.report(heard, number);
                self.trace.finish();
                answers
            }
            _ => Err(senseless(what)),
        }
    }

    fn report(&mut self, heard: Vec<HeardPhrase>, number: u64) -> Result<Vec<(u8, Vec<u8>)>, CommandEarError> {
        let mut answers = Vec::new();
        let considered = self.ear.take_candidates();
        self.trace.write(&considered);
        for (path, candidate) in considered.into_iter().filter(|_| self.tells_why) {
            answers.push((kind::CONSIDERED, json(&Considered::new(path == Path::Fast, candidate))?));
        }
        for phrase in heard {
            let fast = phrase.path == Path::Fast;
            let report = HeardReport {
                fast,
                generation: if fast { self.fast_generation } else { self.main_generation },
                text: phrase.text,
                start_s: phrase.start_s,
                end_s: phrase.end_s,
                decided_s: phrase.decided_s,
                confidence: phrase.confidence,
            };
            answers.push((kind::HEARD, json(&report)?));
        }
        answers.push((kind::DONE, wire::done_body(number, self.ear.settled_s())));
        Ok(answers)
    }
}

fn json(value: &impl serde::Serialize) -> Result<Vec<u8>, CommandEarError> {
    serde_json::to_vec(value).map_err(|e| CommandEarError(format!("the recogniser could not write its answer: {e}")))
}
