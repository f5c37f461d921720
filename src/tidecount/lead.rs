//! `tidecount lead`: counts, paces and keeps time for a class while its clinician demonstrates. Nobody is measured and no
//! record is kept.

use std::path::PathBuf;
use std::process::ExitCode;

use audio;
use audio::file::names_file;
use files::error::Failure;
use files::load::{self, Loaded};
use live::follow::SharedScreen;
use live::levels::Levels;
use live::practice::Practice;
use pages::follow::server::{self, ScreenArgs};
use record::{Source, data_folder};
use screen::TerminalScreen;
use session::Line;
use speak::Words;

/// Leads a class: counts, paces and keeps time while the clinician demonstrates.
///
/// Nobody is measured and nothing is recorded. Moved on by the clinician's voice ("here we go", "next exercise", "once more",
/// "everyone rest", "slow down", "a little louder", "stop", "pause") or by keys, among them those of a page-turner: space or page down goes on,
/// page up repeats, full stop pauses, escape stops, s leaves an exercise out, r rests, + - loudness, < > pace, q ends.
#[derive(Debug, Clone, clap::Args)]
pub struct LeadArgs {
    /// The routine, a TOML file.
    pub routine: PathBuf,
    /// Microphone: `default`, a name from `tidecount devices`, a recording, or `none` to lead by keys alone.
    #[arg(long, default_value = "default", value_name = "default|NAME|FILE.wav|none")]
    pub mic: String,
    /// Loudspeaker: `default`, a name, or a WAV file to write.
    #[arg(long, default_value = "default", value_name = "default|NAME|FILE.wav")]
    pub speaker: String,
    /// Voice: `espeak-ng[:VARIANT]`, `piper[:FILE.onnx]` or `system`.
    #[arg(long, value_name = "NAME")]
    pub voice: Option<String>,
    /// With a recording: as fast as the machine allows instead of in real time.
    #[arg(long)]
    pub fast: bool,
    /// Recognition model, a folder in the Vosk layout. Default: the built-in English model.
    #[arg(long, value_name = "DIR")]
    pub model: Option<PathBuf>,
    /// Where rendered lines are kept. Default: $TIDECOUNT_DATA, else the user's data folder.
    #[arg(long, value_name = "DIR")]
    pub data: Option<PathBuf>,
    #[command(flatten)]
    pub screen: ScreenArgs,
}

/// Runs the command.
///
/// # Errors
/// Routine, devices, model or voice cannot be used.
pub fn run(args: &LeadArgs) -> Result<ExitCode, Failure> {
    let recording = names_file(&args.mic);
    if args.fast && !recording {
        return Err(Failure::Options("--fast needs a recording: name a file with --mic FILE.wav".into()));
    }
    let Loaded { words, model, lexicon, prescription, routine_text } = load::all(&args.routine, args.model.as_deref())?;
    print_cautions(&words, &prescription.routine);
    let io = audio::open(&args.mic, &args.speaker, args.fast)?;
    let practice = Practice {
        prescription,
        routine_text,
        words,
        model,
        lexicon,
        hears_itself: !recording && args.mic != "none" && !names_file(&args.speaker) && args.speaker != "none",
        voice: args.voice.clone(),
        source: if recording { Source::Replay } else { Source::Live },
        client: "class".into(),
        data: data_folder(args.data.as_deref())?,
        journal: None,
        levels: Levels::default(),
        recogniser: None,
    };
    let pages = server::open(&args.screen)?;
    let screen = SharedScreen::new(TerminalScreen::stdout());
    let fault = practice.lead_class(io, screen.clone(), server::followers(pages.as_ref())?)?;
    screen.finish();
    if let Some(pages) = pages {
        pages.finish();
    }
    Ok(match fault {
        Some(fault) => {
            eprintln!("{fault}");
            ExitCode::FAILURE
        }
        None => ExitCode::SUCCESS,
    })
}

/// The clinician reads the cautions; the class hears one sentence.
fn print_cautions(words: &Words, routine: &routine::Routine) {
    let text = |key: String| words.text(&Line { key, args: Vec::new() }).unwrap_or_default();
    println!("Before you begin: who in the class should leave what out?\n");
    for step in &routine.steps {
        let Some(entry) = routine::find(&step.exercise.id) else { continue };
        if entry.cautions.is_empty() && entry.not_for.is_empty() {
            continue;
        }
        println!("{}", text(format!("ex-{}-name", entry.id)));
        for caution in &entry.cautions {
            println!("  - {}", text(format!("caution-{caution}")));
        }
        for group in &entry.not_for {
            println!("  not for: {}", text(format!("notfor-{group}")));
        }
    }
    println!();
}
