//! Asks the computer. Nothing is changed but what every start changes: the record is opened, and expired sound in it goes.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use jiff::ZonedDateTime;

use super::facts::{Clock, Facts, Folder, House, Listened, Played, Private, Record, StartPhrase, Trouble};
use crate::options::SoundPath;
use attend::{Household, Said};
use audio::AudioError;
use audio::file::names_file;
use command_ear::{Choice, Grammar, Lexicon, Models};
use files::error::Failure;
use files::households::{read_household, wordings};
use files::load::models;
use live::machine::Machine;
use record::Store;
use session::Line;
use speak::{SYSTEM_VOICE, SystemSpeaker, Words, choose_voice, voice_of};

/// A line that is rendered, not played, to try the voice.
const LINE: &str = "page-spoken-test";
/// Folders in the data folder lie no deeper.
const DEEPEST: u32 = 4;

/// What is looked at.
pub struct Wanted {
    pub sound: SoundPath,
    pub data: PathBuf,
    pub household: PathBuf,
}

/// Looks at everything.
///
/// # Errors
/// The words of the program cannot be read.
pub fn gather(wanted: &Wanted, now: &ZonedDateTime) -> Result<Facts, Failure> {
    let words = Words::usual()?;
    let (house, household) = house(&wanted.household, wanted.sound.model.as_deref(), &words);
    let sound = wanted.sound.clone().at_home(household.as_ref().map(|household| &household.home));
    let (record, record_doubts) = record(&wanted.data, now);
    Ok(Facts {
        version: env!("CARGO_PKG_VERSION"),
        system: system(),
        microphone: listen(&sound.mic).map_err(private),
        loudspeaker: play(&sound.speaker),
        clock: Clock { year: now.year(), synchronised: synchronised(), record_doubts },
        room_bytes: room_bytes(&wanted.data),
        model: model(&sound, &wanted.data, &words),
        voice: voice(sound.voice.as_deref(), &words),
        folder: folder(&wanted.data),
        record,
        household: house,
    })
}

fn private(why: impl std::fmt::Display) -> Trouble {
    Private(why.to_string())
}

fn system() -> String {
    let release = std::fs::read_to_string("/etc/os-release").unwrap_or_default();
    let name = release.lines().find_map(|line| line.strip_prefix("PRETTY_NAME=")).map(|name| name.trim_matches('"'));
    format!("{}, {}", name.unwrap_or(std::env::consts::OS), std::env::consts::ARCH)
}

/// One second of the microphone; nothing of it is kept.
fn listen(name: &str) -> Result<Listened, AudioError> {
    let mut io = audio::open(name, "none", names_file(name))?;
    let rate_hz = io.mic_rate_hz();
    let (mut block, nothing) = (vec![0.0_f32; (rate_hz / 100) as usize], vec![0.0; (io.speaker_rate_hz() / 100) as usize]);
    let (mut samples, mut lost_frames) = (Vec::with_capacity(rate_hz as usize), 0);
    for _ in 0..100 {
        lost_frames += io.read(&mut block)?.lost_frames;
        samples.extend_from_slice(&block);
        io.write(&nothing)?;
    }
    io.finish()?;
    let first = samples.first().copied().unwrap_or_default();
    let peak = samples.iter().fold(0.0_f64, |peak, sample| peak.max(f64::from(sample.abs())));
    let power = samples.iter().map(|sample| f64::from(*sample).powi(2)).sum::<f64>() / samples.len().max(1) as f64;
    Ok(Listened {
        device: Private(name.to_owned()),
        rate_hz,
        peak_dbfs: 20.0 * peak.log10(),
        rms_dbfs: 10.0 * power.log10(),
        constant: samples.iter().all(|sample| sample.to_bits() == first.to_bits()),
        lost_frames,
    })
}

/// Half a second of silence; a file that would be written is left alone.
fn play(name: &str) -> Played {
    if name == "none" || names_file(name) {
        return Played::NotTried;
    }
    match audio::devices::try_loudspeaker(name) {
        Ok(trial) if trial.problems.is_empty() => Played::Works { device: Private(name.to_owned()), rate_hz: trial.rate_hz },
        Ok(trial) => Played::Fails(Private(format!("{name}: {}", trial.problems.join("; ")))),
        Err(why) => Played::Fails(private(why)),
    }
}

/// None where there is nobody to ask.
fn synchronised() -> Option<bool> {
    let asked = Command::new("timedatectl").args(["show", "--property=NTPSynchronized", "--value"]).stderr(Stdio::null()).output().ok()?;
    match String::from_utf8_lossy(&asked.stdout).trim() {
        "yes" => Some(true),
        "no" => Some(false),
        _ => None,
    }
}

fn model(sound: &SoundPath, data: &Path, words: &Words) -> Result<(), Trouble> {
    let machine = Machine {
        model: models(sound.model.as_deref(), words.language()).map_err(private)?,
        recogniser: None,
        voice: None,
        data: data.to_owned(),
        hears_itself: false,
        offline: true,
    };
    machine.recogniser(Grammar::default()).map(drop).map_err(private)
}

fn voice(name: Option<&str>, words: &Words) -> Result<(Private, Option<f64>), Trouble> {
    if name == Some(SYSTEM_VOICE) {
        return SystemSpeaker::open().map(|_| (Private(SYSTEM_VOICE.to_owned()), None)).map_err(private);
    }
    let mut voice = choose_voice(voice_of(name, words.language()).as_deref()).map_err(private)?;
    let line = words.text(&Line { key: LINE.to_owned(), args: Vec::new() }).map_err(private)?;
    let pcm = voice.render(&line).map_err(private)?;
    Ok((Private(voice.id()), Some(pcm.duration_s())))
}

fn house(path: &Path, model: Option<&Path>, words: &Words) -> (House, Option<Household>) {
    if !path.exists() {
        return (House::None, None);
    }
    let (model, lexicon) = match models(model, words.language()).and_then(|model| Ok((Lexicon::of(&model)?, model))) {
        Ok((lexicon, model)) => (model, lexicon),
        Err(why) => return (House::Unknown(private(why)), None),
    };
    match read_household(path, words, &lexicon) {
        Ok(household) => {
            let planned = household.persons.iter().flat_map(|person| &person.routines).flat_map(|routine| &routine.plan);
            let planned = planned.map(|planned| planned.days.len()).sum();
            let start_phrase = start_phrase(&model, &lexicon, &starts(&household, words));
            (House::Read { persons: household.persons.len(), planned, start_phrase }, Some(household))
        }
        Err(Failure::Routine(faults)) => (House::Faults { count: faults.list.len(), told: private(faults) }, None),
        Err(why) => (House::Faults { count: 1, told: private(why) }, None),
    }
}

/// Whether all that starts a practice can be heard with these files: by a recogniser that knows the words, or by a second ear that learnt one wording
/// of each.
fn start_phrase(model: &Models, lexicon: &Lexicon, starts: &Grammar) -> StartPhrase {
    if model.recognises() {
        return lexicon.validate(starts).map_or_else(|why| StartPhrase::Unknown(private(why)), |()| StartPhrase::Heard);
    }
    let learnt = model.second_ear.phrases().unwrap_or_default();
    let hears = |choice: &Choice| choice.wordings.iter().any(|wording| learnt.contains(wording));
    match model.hears() && starts.choices.iter().all(hears) {
        true => StartPhrase::Heard,
        false => StartPhrase::NotInThisLanguage { commands: model.hears() },
    }
}

/// All that starts a practice.
fn starts(household: &Household, words: &Words) -> Grammar {
    let starts = |said: &Said| matches!(said, Said::StartMine | Said::StartFor(_) | Said::StartCalled(_));
    let said = household.everything().into_iter().filter(starts).enumerate();
    Grammar {
        choices: said.map(|(n, said)| Choice { tag: n.to_string(), wordings: wordings(words, household, &said) }).collect(),
        ..Grammar::default()
    }
}

/// The record, and whether its entries disagree with the clock.
fn record(data: &Path, now: &ZonedDateTime) -> (Record, bool) {
    let checked = match Store::check(data, now) {
        Ok(Some(checked)) => checked,
        Ok(None) => return (Record::None, false),
        Err(why) => return (Record::Fails(private(why)), false),
    };
    let doubts = Store::open_existing(data).ok().flatten().and_then(|store| store.clock_note(now).ok().flatten()).is_some();
    let faults = checked.faults.into_iter().map(Private).collect();
    (Record::Looked { practices: checked.practices, encrypted: checked.encrypted, faults }, doubts)
}

/// The folder itself, or the nearest one above it that is there.
#[cfg(unix)]
fn nearest(path: &Path) -> &Path {
    path.ancestors().find(|above| above.exists()).unwrap_or(Path::new("/"))
}

#[cfg(unix)]
fn room_bytes(data: &Path) -> Result<u64, Trouble> {
    let room = rustix::fs::statvfs(nearest(data)).map_err(private)?;
    Ok(room.f_bavail.saturating_mul(room.f_frsize))
}

#[cfg(not(unix))]
fn room_bytes(_data: &Path) -> Result<u64, Trouble> {
    Err(Private("this system cannot be asked".to_owned()))
}

#[cfg(unix)]
fn folder(data: &Path) -> Folder {
    use std::os::unix::fs::PermissionsExt;
    let path = Private(data.display().to_string());
    match std::fs::metadata(data) {
        Err(why) if why.kind() == std::io::ErrorKind::NotFound => Folder::Missing(path),
        Err(why) => Folder::Unknown(Private(format!("{}: {why}", data.display()))),
        Ok(found) => Folder::There {
            path,
            writable: found.is_dir() && rustix::fs::access(data, rustix::fs::Access::WRITE_OK).is_ok(),
            open_to_others: found.permissions().mode() & 0o077 != 0,
            files_open_to_others: open_files(data, DEEPEST),
        },
    }
}

#[cfg(not(unix))]
fn folder(data: &Path) -> Folder {
    let path = Private(data.display().to_string());
    match std::fs::metadata(data) {
        Err(why) if why.kind() == std::io::ErrorKind::NotFound => Folder::Missing(path),
        _ => Folder::Unknown(Private("this system cannot be asked".to_owned())),
    }
}

/// Files in a folder whose mode lets others in. Links are not followed.
#[cfg(unix)]
fn open_files(folder: &Path, deepest: u32) -> usize {
    use std::os::unix::fs::PermissionsExt;
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let open = |entry: std::fs::DirEntry| match entry.metadata() {
        Ok(found) if found.is_dir() && deepest > 0 => open_files(&entry.path(), deepest - 1),
        Ok(found) if found.is_file() => usize::from(found.permissions().mode() & 0o077 != 0),
        _ => 0,
    };
    entries.map(open).sum()
}

#[cfg(test)]
#[path = "tests/gather.rs"]
mod tests;
