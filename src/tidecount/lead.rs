//! `tidecount lead`: counts, paces and keeps time for a class while its clinician demonstrates. Nobody is measured. With the list of a
//! class, who was there and what was led is kept, and nothing else.

use std::collections::BTreeSet;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

use crate::options::{ALOUD, DataFolder, Fast, Screen, Sound, kept_in};
use files::classes::read_class;
use files::error::{Failure, tell};
use files::load;
use jiff::ZonedDateTime;
use live::follow::SharedScreen;
use live::practice::{ClassGiven, ClassKeeper, Practice};
use pages::follow::server;
use record::Source;
use routine::ClassList;
use screen::{TerminalScreen, fitted_to_terminal};
use session::Line;
use speak::Words;

/// Lead a class: count, pace and keep time while the clinician demonstrates
///
/// Nobody is measured. Without --class nothing is recorded; with it, who was there and what was led. The clinician moves the class on by voice ("here we go", "next exercise",
/// "once more", "everyone rest", "slow down", "a little louder", "stop", "pause") or by keys, which a page-turner has, too:
/// space or page down goes on, page up repeats, full stop pauses, escape stops, s skips an exercise, r rests, + and - change
/// the loudness, < and > the pace, q ends.
#[derive(Debug, Clone, clap::Args)]
#[command(mut_arg("mic", |mic| mic.value_name("default|NAME|FILE.wav|none")
    .help("Listen to a microphone from `tidecount devices`, to a recording, or to `none` and lead by keys alone")))]
#[command(mut_arg("speaker", |speaker| speaker.help(ALOUD)))]
#[command(mut_arg("data", |data| data.help(kept_in!("Keep spoken lines in this folder"))))]
pub struct LeadArgs {
    /// Routine to lead, a TOML file
    pub routine: PathBuf,
    /// Lead the class of this TOML file: ask who is here, show who leaves what out, keep who was there and what was led
    #[arg(long, value_name = "FILE.toml")]
    pub class: Option<PathBuf>,
    /// Also say aloud who leaves an exercise out or does it seated
    #[arg(long, requires = "class")]
    pub say_names: bool,
    #[command(flatten)]
    pub sound: Sound,
    #[command(flatten)]
    pub fast: Fast,
    #[command(flatten)]
    pub data: DataFolder,
    #[command(flatten)]
    pub screen: Screen,
}

/// Runs the command.
///
/// # Errors
/// Routine, devices, model or voice cannot be used.
pub fn run(args: &LeadArgs) -> Result<ExitCode, Failure> {
    let sound = args.sound.meant_aloud();
    let fast = args.fast.with(&sound)?;
    let loaded = load::all(&args.routine, sound.model.as_deref())?;
    let list = args.class.as_deref().map(|file| read_class(file, &loaded.words, &loaded.lexicon)).transpose()?;
    print_cautions(&loaded.words, &loaded.prescription.routine, list.as_ref());
    let io = audio::open(&sound.mic, &sound.speaker, fast)?;
    let source = if sound.recording { Source::Replay } else { Source::Live };
    let data = args.data.folder()?;
    let title = &loaded.prescription.routine.title;
    let keeper = list.as_ref().map(|list| ClassKeeper::begin(list, title, source, &data, &ZonedDateTime::now())).transpose()?;
    let given = ClassGiven { participants: list.map(|list| list.participants).unwrap_or_default(), names_aloud: args.say_names };
    let keys = loaded.words.text(&Line { key: "class-keys-shown".into(), args: Vec::new() })?;
    let words = loaded.words.clone();
    let practice = Practice { hears_itself: sound.hears_itself, voice: sound.voice, ..Practice::of(loaded, source, "class".into(), data) };
    let pages = server::open(args.screen.wanted()?, &words)?;
    let screen = SharedScreen::new(TerminalScreen::stdout().with_keys(keys));
    let mut observers = server::followers(pages.as_ref());
    if let Some(keeper) = keeper {
        observers.push(Box::new(keeper));
    }
    let fault = practice.lead_class(given, io, screen.clone(), observers)?;
    screen.finish();
    if let Some(pages) = pages {
        pages.finish();
    }
    Ok(match fault {
        Some(fault) => {
            tell(&fault);
            ExitCode::FAILURE
        }
        None => ExitCode::SUCCESS,
    })
}

/// The clinician reads the cautions, and why somebody leaves something out; the class hears one sentence.
fn print_cautions(words: &Words, routine: &routine::Routine, list: Option<&ClassList>) {
    let text = |key: String| words.text(&Line { key, args: Vec::new() }).unwrap_or_default();
    let mut told = "Before you begin: should anyone in the class leave something out?\n\n".to_owned();
    for step in &routine.steps {
        let Some(entry) = routine::find(&step.exercise.id) else { continue };
        if entry.cautions.is_empty() && entry.not_for.is_empty() {
            continue;
        }
        told += &format!("{}\n", text(format!("ex-{}-name", entry.id)));
        for caution in &entry.cautions {
            told += &format!("  - {}\n", text(format!("caution-{caution}")));
        }
        for group in &entry.not_for {
            told += &format!("  not for: {}\n", text(format!("notfor-{group}")));
        }
    }
    if let Some(list) = list {
        told += &model::visible(&otherwise(list, routine, &|id| text(format!("ex-{id}-name"))));
    }
    // Where nobody reads it the class is led all the same.
    let _ = writeln!(std::io::stdout(), "{}", fitted_to_terminal(&told));
}

/// Who does something of this routine otherwise, each with their reason.
fn otherwise(list: &ClassList, routine: &routine::Routine, name: &dyn Fn(&str) -> String) -> String {
    let named = |ids: &BTreeSet<String>| {
        let mut names: Vec<String> = Vec::new();
        for step in routine.steps.iter().filter(|step| ids.contains(&step.exercise.id)) {
            let name = name(&step.exercise.id);
            if !names.contains(&name) {
                names.push(name);
            }
        }
        names.join(", ")
    };
    let mut text = String::new();
    for participant in &list.participants {
        let parts = [("leaves out", named(&participant.leaves_out)), ("seated for", named(&participant.seated))];
        let said: Vec<String> = parts.iter().filter(|part| !part.1.is_empty()).map(|(does, names)| format!("{does} {names}")).collect();
        if said.is_empty() {
            continue;
        }
        let reason = participant.reason.as_ref().map(|reason| format!(" ({reason})")).unwrap_or_default();
        text += &format!("  {}: {}{reason}\n", participant.called, said.join("; "));
    }
    if text.is_empty() { text } else { format!("\nOf {}:\n{text}", list.title) }
}

#[cfg(test)]
#[path = "tests/lead.rs"]
mod tests;
