//! `tidecount practise`: leads one routine from greeting to summary.

use std::path::PathBuf;
use std::process::ExitCode;

use crate::options::{DataFolder, Fast, Screen, Sound, distance};
use files::error::Failure;
use files::households;
use files::load::{self, Loaded};
use handover::Settings;
use live::follow::SharedScreen;
use live::levels::{self, Levels};
use pages::follow::server;
use record::Source;
use screen::TerminalScreen;

use live::practice::{Practice, said_to};

/// Lead a routine, hands-free
#[derive(Debug, Clone, clap::Args)]
pub struct PractiseArgs {
    /// Routine to lead, a TOML file; `tidecount routine check` finds its faults
    pub routine: PathBuf,
    #[command(flatten)]
    pub leading: Leading,
}

/// How something is led, whatever it is.
#[derive(Debug, Clone, clap::Args)]
pub struct Leading {
    #[command(flatten)]
    pub sound: Sound,
    #[command(flatten)]
    pub fast: Fast,
    #[command(flatten)]
    pub data: DataFolder,
    /// Also write the journal to this file, one JSON object a line
    #[arg(long, value_name = "FILE.jsonl")]
    pub journal: Option<PathBuf>,
    /// Say how far the microphone stands from the mouth today [default: as far as when it was calibrated]
    #[arg(long, value_name = "CM", value_parser = distance)]
    pub distance_cm: Option<f64>,
    /// Name the recorder a recording was made with, as for `tidecount calibrate` [default: the recording's folder]
    #[arg(long, value_name = "NAME")]
    pub recorded_with: Option<String>,
    /// Keep the practice under this client [default: the routine's `client`, else "client"]
    #[arg(long, value_name = "NAME")]
    pub client: Option<String>,
    /// Lead by the page alone, for somebody who cannot hear: nothing is said aloud and no loudspeaker is needed
    #[arg(long, conflicts_with_all = ["speaker", "voice"])]
    pub by_page: bool,
    #[command(flatten)]
    pub screen: Screen,
}

/// Runs the command.
///
/// # Errors
/// Routine, devices, model, voice or record cannot be used; nothing has been led then.
pub fn run(args: &PractiseArgs) -> Result<ExitCode, Failure> {
    let loaded = load::all(&args.routine, args.leading.sound.meant().model.as_deref())?;
    lead(&args.leading, loaded, None)
}

/// Leads what was loaded; `protocol` is the name of a baseline's.
///
/// # Errors
/// As [`run`].
pub fn lead(args: &Leading, mut loaded: Loaded, protocol: Option<&str>) -> Result<ExitCode, Failure> {
    let data = args.data.folder()?;
    let household = households::usual(&data);
    let mut sound = args.sound.meant().at_home(Some(&households::devices(&household)));
    let fast = args.fast.with(&sound)?;
    let client = args.client.clone().or_else(|| loaded.prescription.client.clone()).unwrap_or_else(|| "client".into());
    // Whoever names a loudspeaker or a voice wants to hear it.
    let by_page = args.by_page || (!sound.recording && !args.sound.names_voice() && households::by_page(&household, &client));
    if by_page {
        sound.play_nowhere();
    }
    let io = audio::open(&sound.mic, &sound.speaker, fast)?;
    // A replay knows nothing of the client.
    let settings = if sound.recording { Settings::default() } else { files::packages::settings::of(&data, &client) };
    if let Some(every) = settings.feedback_every.filter(|_| protocol.is_none()) {
        loaded.prescription.routine.feedback_every = every;
    }
    let device = levels::device(&sound.mic, io.mic_rate_hz(), args.recorded_with.as_deref())?;
    let levels = Levels::of(&data, &device, args.distance_cm)?;
    let source = if sound.recording { Source::Replay } else { Source::Live };
    let words = said_to(loaded.words.clone(), &loaded.model);
    let practice = Practice {
        hears_itself: sound.hears_itself,
        voice: sound.voice.or(settings.voice),
        journal: args.journal.clone(),
        levels,
        protocol: protocol.map(str::to_owned),
        by_page,
        emergency_number: households::emergency_number(&household),
        ..Practice::of(loaded, source, client, data)
    };
    let pages = server::open(args.screen.wanted_or(by_page)?, &words)?;
    let screen = SharedScreen::new(TerminalScreen::stdout());
    let outcome = practice.lead(io, screen.clone(), server::followers(pages.as_ref()))?;
    outcome.report(&screen);
    if let Some(pages) = pages {
        pages.finish();
    }
    Ok(outcome.exit_code())
}
