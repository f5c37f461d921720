//! `tidecount hear` on recordings: what the ears find in them, as a table, as JSON lines and as frames.

use crate::hear::args::HearArgs;
use crate::hear::lines::{FRAMES_HEAD, Found, LevelLine, TABLE_HEAD, frame_row, shown};
use crate::hear::out::{reader_left, unwritten};
use crate::hear::phrases::{PhraseEar, phrase_ear};
use audio::AudioError;
use audio::decode::SoundReader;
use command_ear::Mode;
use files::error::Failure;
use hear::voice_file::FILE_SETTINGS;
use hear::{Held, VoiceEar, VoiceEvent, VoiceOutput, VoiceTask};
use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::Path;

/// Rates under this carry too little of a voice, Hz.
const LOWEST_RATE_HZ: u32 = 4000;
/// Rates over this are none of sound in air; a damaged header has them, Hz.
const HIGHEST_RATE_HZ: u32 = 768_000;

/// Hears the recordings and writes what was found to `out`; those that cannot be heard are named on `err`. True if all
/// were heard.
///
/// # Errors
/// The arguments cannot be served together, the commands cannot be listened for, or the result cannot be written.
pub fn run(args: &HearArgs, out: &mut impl Write, err: &mut impl Write) -> Result<bool, Failure> {
    if let Some(csv) = &args.frames {
        check_frames(csv, args)?;
    }
    let mut phrases = phrase_ear(args, Mode::Offline)?;
    let mut all = true;
    for (number, file) in args.files.iter().enumerate() {
        let written = match hear(file, args, phrases.as_mut()) {
            Ok(found) if args.json => found.iter().try_for_each(|found| found.write_json(out)),
            Ok(found) => write_table(out, file, &found, number == 0, phrases.is_some()),
            Err(error) => {
                all = false;
                // Where even that cannot be written, the exit code alone remains.
                let _ = writeln!(err, "tidecount: {error}");
                continue;
            }
        };
        match written.and_then(|()| out.flush()) {
            Err(error) if reader_left(&error) => return Ok(all),
            outcome => outcome.map_err(|error| unwritten(&error))?,
        }
    }
    Ok(all)
}

fn check_frames(csv: &Path, args: &HearArgs) -> Result<(), Failure> {
    if args.files.len() != 1 {
        return Err(Failure::Options(format!(
            "--frames takes one recording at a time, and {} were named; run `tidecount hear` once for each",
            args.files.len()
        )));
    }
    let same = |file: &std::path::PathBuf| file.canonicalize().is_ok_and(|file| csv.canonicalize().is_ok_and(|csv| csv == file));
    if args.files.iter().any(same) {
        return Err(Failure::file(csv, "this is the recording itself; give --frames another name"));
    }
    Ok(())
}

/// What is heard in one recording, in order of time. It is read piece by piece: an hour takes no more memory than a minute.
///
/// # Errors
/// It cannot be read as sound, its rate is not one of sound, the recogniser died on it, or the frames cannot be written.
fn hear(file: &Path, args: &HearArgs, mut phrases: Option<&mut PhraseEar>) -> Result<Vec<Found>, Failure> {
    let name = file.display().to_string();
    let mut sound = SoundReader::open(file)?;
    let rate_hz = sound.rate_hz();
    if !(LOWEST_RATE_HZ..=HIGHEST_RATE_HZ).contains(&rate_hz) {
        let what = if rate_hz < LOWEST_RATE_HZ { "too few for a voice" } else { "more than any recording of sound" };
        return Err(AudioError::File(format!("{name}: has {rate_hz} samples a second, {what}. Record it at 8000 to 48000.")).into());
    }
    let mut csv = args.frames.as_deref().map(FramesFile::create).transpose()?;
    let mut ear = VoiceEar::new(rate_hz);
    ear.set_task(VoiceTask::Hold(FILE_SETTINGS));
    let mut meters = args.levels.then(|| LevelLine::meters(rate_hz));
    let (mut found, mut holds) = (Vec::new(), Vec::new());
    let mut keep = |output| match output {
        VoiceOutput::Frame(frame) => {
            if let Some(csv) = &mut csv {
                csv.write(&frame_row(&frame));
            }
        }
        VoiceOutput::Event(VoiceEvent::Offset(held)) => {
            // Its sound is not kept, or the memory would grow with every hold.
            let Held { mut hold, steady } = held;
            hold.quality = steady.filter(|_| args.voice).map(|steady| steady.quality());
            holds.push(hold);
        }
        VoiceOutput::Event(_) => {}
    };
    if let Some(phrases) = phrases.as_deref_mut() {
        phrases.begin(rate_hz)?;
    }
    while let Some(samples) = sound.read() {
        ear.push(samples, false, &mut keep);
        if let Some(meters) = &mut meters {
            meters.iter_mut().for_each(|(_, meter)| samples.iter().for_each(|x| meter.push(*x)));
        }
        if let Some(phrases) = phrases.as_deref_mut() {
            phrases.push(samples);
        }
    }
    ear.finish(&mut keep);
    for hold in holds {
        found.push(Found::hold(&name, &hold, ear.auto_gain_found()));
    }
    if let Some(csv) = csv {
        csv.close()?;
    }
    if let Some(phrases) = phrases {
        let heard = phrases.end().map_err(|error| Failure::file(file, error))?;
        found.extend(heard.iter().map(|phrase| Found::command(&name, phrase)));
        found.extend(phrases.considered().into_iter().map(|considered| Found::considered(&name, considered)));
    }
    found.sort_by(|a, b| a.start_s().total_cmp(&b.start_s()));
    found.extend(meters.into_iter().flatten().filter_map(|(weighting, meter)| Found::level(&name, weighting, &meter)));
    Ok(found)
}

fn write_table(out: &mut impl Write, file: &Path, found: &[Found], first: bool, commands: bool) -> std::io::Result<()> {
    if !first {
        writeln!(out)?;
    }
    writeln!(out, "{}", shown(&file.display().to_string()))?;
    if found.is_empty() {
        return writeln!(out, "  no held vowel{}", if commands { " and no command" } else { "" });
    }
    writeln!(out, "{TABLE_HEAD}")?;
    found.iter().try_for_each(|found| writeln!(out, "{}", found.row()))
}

/// The CSV file of frames, written as they come; the first fault is kept for the end.
struct FramesFile<'a> {
    path: &'a Path,
    out: BufWriter<File>,
    fault: Option<std::io::Error>,
}

impl<'a> FramesFile<'a> {
    fn create(path: &'a Path) -> Result<Self, Failure> {
        let out = disk::private::create(path).map_err(|error| Self::failed(path, &error))?;
        let mut this = Self { path, out: BufWriter::new(out), fault: None };
        this.write(FRAMES_HEAD);
        Ok(this)
    }

    fn failed(path: &Path, error: &std::io::Error) -> Failure {
        Failure::file(path, format!("cannot be written ({error}). Name a file in a folder you may write to."))
    }

    fn write(&mut self, row: &str) {
        if self.fault.is_none() {
            self.fault = writeln!(self.out, "{row}").err();
        }
    }

    fn close(mut self) -> Result<(), Failure> {
        self.fault.take().map_or_else(|| self.out.flush(), Err).map_err(|error| Self::failed(self.path, &error))
    }
}
