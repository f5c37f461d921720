//! `tidecount enrol`: learns how a client says the commands.

use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::atomic::Ordering;
use std::sync::{Arc, Mutex, PoisonError};

use jiff::ZonedDateTime;

use super::dialogue::Dialogue;
use super::event::Learnt;
use super::pipeline::{EnrolParts, EnrolPipeline};
use super::store;
use super::words;
use crate::app::error::AppError;
use crate::app::follow::{ScreenFollower, SharedScreen};
use crate::app::grammar::{fast_grammar, main_grammar};
use crate::app::load;
use crate::app::observe::Observer;
use crate::app::practise::until_interrupted;
use crate::app::talk::{PcmTalker, SystemTalker, Talker};
use audio::echo::{AutoCanceller, NoCancel};
use audio::file::names_file;
use audio::{self, AudioIo, EchoCanceller};
use command_ear::{ChildRecogniser, CommandRecogniser, Mode, Options};
use hear::VoiceTask;
use record::{Source, Store, data_folder};
use screen::TerminalScreen;
use session::{Arg, Line, Listening};
use speak::{LineCache, Renderer, SYSTEM_VOICE, SystemSpeaker, Words, choose_voice};

/// Learns how you say the commands, led by voice; what is kept can be shown and forgotten.
#[derive(Debug, Clone, clap::Args)]
pub struct EnrolArgs {
    /// Whose voice; the name that the routine or `practise --client` has.
    #[arg(long, value_name = "NAME", default_value = "client")]
    pub client: String,
    /// Microphone: `default`, a name from `tidecount devices`, or a recording.
    #[arg(long, default_value = "default", value_name = "default|NAME|FILE.wav")]
    pub mic: String,
    /// Loudspeaker: `default`, a name, a WAV file to write, or `none`. With a recording as microphone: none.
    #[arg(long, value_name = "default|NAME|FILE.wav|none")]
    pub speaker: Option<String>,
    /// Voice: `espeak-ng[:VARIANT]`, `piper[:FILE.onnx]` or `system`. Default: Piper where installed, else espeak-ng.
    #[arg(long, value_name = "NAME")]
    pub voice: Option<String>,
    /// Recognition model, a folder in the Vosk layout. Default: the built-in English model.
    #[arg(long, value_name = "DIR")]
    pub model: Option<PathBuf>,
    /// Where the record is kept. Default: $TIDECOUNT_DATA, else the user's data folder.
    #[arg(long, value_name = "DIR")]
    pub data: Option<PathBuf>,
    /// Shows what is kept of the client's voice, and does nothing else.
    #[arg(long, conflicts_with = "forget")]
    pub show: bool,
    /// Deletes what is kept of the client's voice, and does nothing else.
    #[arg(long)]
    pub forget: bool,
}

/// Runs the command. A recording as microphone is heard as fast as the machine allows.
///
/// # Errors
/// Devices, model, voice or record cannot be used.
pub fn run(args: &EnrolArgs) -> Result<ExitCode, AppError> {
    let words = Words::english()?;
    let data = data_folder(args.data.as_deref())?;
    if args.show || args.forget {
        return show_or_forget(args, &words, &data);
    }
    let recording = names_file(&args.mic);
    let speaker = args.speaker.clone().unwrap_or_else(|| if recording { "none".into() } else { "default".into() });
    let written = names_file(&speaker) || speaker == "none";
    let io = audio::open(&args.mic, &speaker, recording && written)?;
    let enrolment = Enrolment {
        words,
        model: load::model_folder(args.model.as_deref())?,
        hears_itself: !recording && !written,
        voice: args.voice.clone(),
        source: if recording { Source::Replay } else { Source::Live },
        client: args.client.clone(),
        data,
        recogniser: None,
    };
    let screen = SharedScreen::new(TerminalScreen::stdout());
    let (learnt, fault) = enrolment.lead(io, screen.clone(), Vec::new())?;
    screen.finish();
    print!("\n{}", summary(&Words::english()?, &args.client, &learnt)?);
    if let Some(fault) = fault {
        eprintln!("{fault}");
        return Ok(ExitCode::FAILURE);
    }
    Ok(ExitCode::SUCCESS)
}

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
    ) -> Result<(Vec<Learnt>, Option<String>), AppError> {
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
    ) -> Result<(Vec<Learnt>, Option<String>), AppError> {
        let mut pipeline = self.pipeline(io.as_ref(), screen, observers)?;
        let fault = pipeline.run(io.as_mut(), stopped).err().map(|error| error.to_string());
        Ok((pipeline.dialogue().learnt(), fault))
    }

    fn pipeline(self, io: &dyn AudioIo, screen: SharedScreen, mut observers: Vec<Box<dyn Observer>>) -> Result<EnrolPipeline, AppError> {
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

    fn talker(&self, rate_hz: u32, offline: bool) -> Result<Box<dyn Talker>, AppError> {
        if self.voice.as_deref() == Some(SYSTEM_VOICE) {
            if offline {
                return Err(AppError::Usage("--voice system cannot be written to a file or hurried; use --voice espeak-ng here".into()));
            }
            return Ok(Box::new(SystemTalker::new(SystemSpeaker::open()?)));
        }
        let voice = choose_voice(self.voice.as_deref())?;
        let cache = LineCache::new(Some(self.data.join("voice-cache")), rate_hz);
        let renderer = if offline { Renderer::offline(voice, cache) } else { Renderer::live(voice, cache)? };
        Ok(Box::new(PcmTalker::new(renderer, rate_hz)))
    }
}

fn show_or_forget(args: &EnrolArgs, words: &Words, data: &std::path::Path) -> Result<ExitCode, AppError> {
    let client = ("client", Arg::Text(args.client.clone()));
    let text = |key: &str, args: Vec<(&'static str, Arg)>| words.text(&Line { key: key.to_owned(), args });
    let store = Store::open_existing(data)?;
    let mut out = std::io::stdout().lock();
    let kept = store.as_ref().map(|store| store.own_words(&args.client)).transpose()?.unwrap_or_default();
    let shown = match store {
        Some(mut store) if args.forget => {
            let forgotten = store.forget_own_voice(&args.client)?;
            text("enrol-forgotten", vec![("words", Arg::Number(forgotten as f64)), client])?
        }
        _ if kept.is_empty() => text("enrol-none-kept", vec![client])?,
        _ => {
            let rows = kept.iter().map(|word| {
                let day = word.said_at.get(..10).unwrap_or_default();
                let bytes: usize = word.takes.iter().map(Vec::len).sum();
                format!("\n  {:<12} {} takes, {day}, {bytes} bytes of figures", word.wording, word.takes.len())
            });
            text("enrol-summary-head", vec![client])? + &rows.collect::<String>()
        }
    };
    // A reader that went away (`| head`) is no fault of ours.
    let _ = writeln!(out, "{shown}");
    Ok(ExitCode::SUCCESS)
}

/// What is left on the terminal.
fn summary(words: &Words, client: &str, learnt: &[Learnt]) -> Result<String, AppError> {
    let text = |key: &str, args: Vec<(&'static str, Arg)>| words.text(&Line { key: key.to_owned(), args });
    let client = ("client", Arg::Text(client.to_owned()));
    if learnt.is_empty() {
        return Ok(text("enrol-none-kept", vec![client])? + "\n");
    }
    let mut shown = text("enrol-summary-head", vec![client])? + "\n";
    for word in learnt {
        let how = text(if word.doubtful { "enrol-summary-doubtful" } else { "enrol-summary-surer" }, Vec::new())?;
        shown += &format!("  {:<12} {}/{}  {how}\n", word.wording, word.takes, super::dialogue::TAKES);
    }
    Ok(shown)
}
