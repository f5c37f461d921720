//! `tidecount practise`: leads one routine from greeting to summary.

use std::path::PathBuf;
use std::process::ExitCode;

use audio;
use audio::file::names_file;
use files::error::Failure;
use files::load;
use files::load::Loaded;
use handover::Settings;
use live::follow::SharedScreen;
use live::levels::{self, Levels};
use pages::follow::server::{self, ScreenArgs};
use record::{Source, data_folder};
use screen::TerminalScreen;

use live::practice::Practice;

/// Leads a routine, hands-free.
#[derive(Debug, Clone, clap::Args)]
pub struct PractiseArgs {
    /// The routine, a TOML file; `tidecount routine check` finds its faults.
    pub routine: PathBuf,
    /// Microphone: `default`, a name from `tidecount devices`, or a recording.
    #[arg(long, default_value = "default", value_name = "default|NAME|FILE.wav")]
    pub mic: String,
    /// Loudspeaker: `default`, a name, a WAV file to write, or `none`. With a recording as microphone: none.
    #[arg(long, value_name = "default|NAME|FILE.wav|none")]
    pub speaker: Option<String>,
    /// Voice: `espeak-ng[:VARIANT]`, `piper[:FILE.onnx]` or `system`. Default: Piper where installed, else espeak-ng.
    #[arg(long, value_name = "NAME")]
    pub voice: Option<String>,
    /// Writes the journal to this file too, one JSON object a line.
    #[arg(long, value_name = "FILE.jsonl")]
    pub journal: Option<PathBuf>,
    /// With a recording: as fast as the machine allows instead of in real time.
    #[arg(long)]
    pub fast: bool,
    /// Recognition model, a folder in the Vosk layout. Default: the built-in English model.
    #[arg(long, value_name = "DIR")]
    pub model: Option<PathBuf>,
    /// Where the record is kept. Default: $TIDECOUNT_DATA, else the user's data folder.
    #[arg(long, value_name = "DIR")]
    pub data: Option<PathBuf>,
    /// How far the microphone stands from the mouth today, if not where it was calibrated.
    #[arg(long, value_name = "CM", value_parser = crate::calibrate::distance)]
    pub distance_cm: Option<f64>,
    /// With a recording: the recorder it was made with, as `tidecount calibrate` was told. Default: its folder.
    #[arg(long, value_name = "NAME")]
    pub recorded_with: Option<String>,
    /// Who practises. Default: the routine's `client`, else "client".
    #[arg(long, value_name = "NAME")]
    pub client: Option<String>,
    #[command(flatten)]
    pub screen: ScreenArgs,
}

/// Runs the command.
///
/// # Errors
/// Routine, devices, model, voice or record cannot be used; nothing has been led then.
pub fn run(args: &PractiseArgs) -> Result<ExitCode, Failure> {
    let recording = names_file(&args.mic);
    if args.fast && !recording {
        return Err(Failure::Options(
            "--fast needs a recording: name a file with --mic FILE.wav; a live microphone runs in real time".into(),
        ));
    }
    let speaker = args.speaker.clone().unwrap_or_else(|| if recording { "none".into() } else { "default".into() });
    let Loaded { words, model, lexicon, mut prescription, routine_text } = load::all(&args.routine, args.model.as_deref())?;
    let io = audio::open(&args.mic, &speaker, args.fast)?;
    let client = args.client.clone().or_else(|| prescription.client.clone()).unwrap_or_else(|| "client".into());
    let data = data_folder(args.data.as_deref())?;
    // A replay knows nothing of the client.
    let settings = if recording { Settings::default() } else { files::packages::settings::of(&data, &client) };
    if let Some(every) = settings.feedback_every {
        prescription.routine.feedback_every = every;
    }
    let device = levels::device(&args.mic, io.mic_rate_hz(), args.recorded_with.as_deref())?;
    let levels = Levels::of(&data, &device, args.distance_cm)?;
    let practice = Practice {
        prescription,
        routine_text,
        words,
        model,
        lexicon,
        // Nothing that we play can be in a recording, nor in a microphone when we play nothing.
        hears_itself: !recording && !names_file(&speaker) && speaker != "none",
        voice: args.voice.clone().or(settings.voice),
        source: if recording { Source::Replay } else { Source::Live },
        client,
        data,
        journal: args.journal.clone(),
        levels,
        recogniser: None,
    };
    let pages = server::open(&args.screen)?;
    let screen = SharedScreen::new(TerminalScreen::stdout());
    let outcome = practice.lead(io, screen.clone(), server::followers(pages.as_ref())?)?;
    outcome.report(&screen);
    if let Some(pages) = pages {
        pages.finish();
    }
    Ok(outcome.exit_code())
}
