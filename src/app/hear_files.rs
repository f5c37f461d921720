//! `tidecount hear` on recordings: what the voice ear finds in them, as a table, as JSON lines and as frames.

use crate::audio::AudioError;
use crate::audio::decode::decode;
use crate::hear::{Hold, VoiceFrame, analyse_voice};
use serde::Serialize;
use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::{Path, PathBuf};

/// Rates under this carry too little of a voice, Hz.
const LOWEST_RATE_HZ: u32 = 4000;

/// Arguments of `tidecount hear`.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct HearArgs {
    /// Recordings to hear (WAV, AIFF or FLAC). Without any: a live meter of the microphone
    #[arg(value_name = "FILE")]
    pub files: Vec<PathBuf>,
    /// One JSON object per line instead of a table
    #[arg(long)]
    pub json: bool,
    /// Write time, F0, level and voicing of every 10 ms to this CSV file (one recording at a time)
    #[arg(long, value_name = "FILE.csv")]
    pub frames: Option<PathBuf>,
    /// Spoken commands to listen for, parted by commas
    #[arg(long, value_name = "WORDS")]
    pub commands: Option<String>,
    /// Folder of another Vosk model
    #[arg(long, value_name = "DIR")]
    pub model: Option<PathBuf>,
}

/// Why `tidecount hear` could not do what was asked. The text names the file and the remedy.
#[derive(Debug, thiserror::Error)]
pub enum HearError {
    #[error(transparent)]
    Sound(#[from] AudioError),
    /// The arguments cannot be served together.
    #[error("{0}")]
    Arguments(String),
    /// The result cannot be written.
    #[error("{0}")]
    Write(String),
}

/// A hold as it stands in a line of output; units are in the names.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HoldLine {
    pub kind: &'static str,
    pub file: String,
    pub onset_s: f64,
    pub offset_s: f64,
    pub duration_s: f64,
    pub f0_median_hz: f64,
    pub f0_span_st: f64,
    pub f0_sd_st: f64,
    pub level_mean_db: f64,
    pub level_fall_db: f64,
    pub level_slope_db_per_s: f64,
    /// "A": A-weighted after IEC 61672-1.
    pub level_weighting: &'static str,
    /// False: dB re full scale (root mean square 1 is 0 dB), not sound pressure level.
    pub level_calibrated: bool,
    pub breaks: u32,
    pub clipped_s: f64,
}

impl HoldLine {
    /// The line for a hold found in `file`.
    pub fn new(file: &Path, hold: &Hold) -> Self {
        Self {
            kind: "voiced",
            file: file.display().to_string(),
            onset_s: rounded(hold.onset_s, 4),
            offset_s: rounded(hold.offset_s, 4),
            duration_s: rounded(hold.duration_s, 4),
            f0_median_hz: rounded(hold.f0_median_hz, 2),
            f0_span_st: rounded(hold.f0_span_st, 3),
            f0_sd_st: rounded(hold.f0_sd_st, 3),
            level_mean_db: rounded(hold.level_mean_db, 2),
            level_fall_db: rounded(hold.level_fall_db, 2),
            level_slope_db_per_s: rounded(hold.level_slope_db_per_s, 3),
            level_weighting: "A",
            level_calibrated: false,
            breaks: hold.breaks,
            clipped_s: rounded(hold.clipped_s, 2),
        }
    }
}

fn rounded(value: f64, digits: i32) -> f64 {
    let scale = 10f64.powi(digits);
    // Adding 0 turns -0 into 0.
    (value * scale).round() / scale + 0.0
}

/// Hears the recordings for their voiced holds and writes what was found to `out`. Spoken commands are not part of it.
///
/// # Errors
/// An unreadable file, `--frames` with several files, or a result that cannot be written. Files before the faulty one
/// have been reported by then.
pub fn run(args: &HearArgs, out: &mut impl Write) -> Result<(), HearError> {
    if args.frames.is_some() && args.files.len() != 1 {
        return Err(HearError::Arguments(format!(
            "--frames takes one recording at a time, and {} were named. Run `tidecount hear` once for each.",
            args.files.len()
        )));
    }
    for (number, file) in args.files.iter().enumerate() {
        let (frames, holds) = hear_file(file)?;
        if let Some(csv) = &args.frames {
            write_frames(csv, &frames)?;
        }
        let written = if args.json { write_json(out, file, &holds) } else { write_table(out, file, &holds, number == 0) };
        written.and_then(|()| out.flush()).map_err(|e| HearError::Write(format!("the result cannot be written ({e}).")))?;
    }
    Ok(())
}

/// Frames and holds of one recording.
///
/// # Errors
/// The file cannot be read as sound or its rate is under 4 kHz.
pub fn hear_file(file: &Path) -> Result<(Vec<VoiceFrame>, Vec<Hold>), HearError> {
    let sound = decode(file)?;
    if sound.rate_hz < LOWEST_RATE_HZ {
        return Err(HearError::Sound(AudioError::File(format!(
            "{}: has {} samples a second, too few for a voice. Record it at 8000 to 48000.",
            file.display(),
            sound.rate_hz
        ))));
    }
    Ok(analyse_voice(&sound.samples, sound.rate_hz))
}

fn write_json(out: &mut impl Write, file: &Path, holds: &[Hold]) -> std::io::Result<()> {
    for hold in holds {
        serde_json::to_writer(&mut *out, &HoldLine::new(file, hold))?;
        writeln!(out)?;
    }
    Ok(())
}

fn write_table(out: &mut impl Write, file: &Path, holds: &[Hold], first: bool) -> std::io::Result<()> {
    if !first {
        writeln!(out)?;
    }
    writeln!(out, "{}", file.display())?;
    if holds.is_empty() {
        return writeln!(out, "  no held vowel");
    }
    writeln!(out, "  onset s  offset s  duration s  F0 Hz  span st  level dB(A) re full scale  fall dB  breaks")?;
    for hold in holds {
        writeln!(
            out,
            "  {:>7.2}  {:>8.2}  {:>10.2}  {:>5.0}  {:>7.1}  {:>26.1}  {:>7.1}  {:>6}",
            hold.onset_s,
            hold.offset_s,
            hold.duration_s,
            hold.f0_median_hz,
            hold.f0_span_st,
            rounded(hold.level_mean_db, 1),
            rounded(hold.level_fall_db, 1),
            hold.breaks
        )?;
    }
    Ok(())
}

/// Writes `t_s,f0_hz,level_db,voiced` for every frame; F0 is 0 where unvoiced.
///
/// # Errors
/// The file cannot be written.
pub fn write_frames(path: &Path, frames: &[VoiceFrame]) -> Result<(), HearError> {
    let fail = |e: std::io::Error| {
        HearError::Write(format!("{}: cannot be written ({e}). Name a file in a folder you may write to.", path.display()))
    };
    let mut out = BufWriter::new(File::create(path).map_err(fail)?);
    writeln!(out, "t_s,f0_hz,level_db,voiced").map_err(fail)?;
    for frame in frames {
        let level_db = rounded(frame.level_db, 2);
        writeln!(out, "{:.2},{:.2},{level_db:.2},{}", frame.t_s, frame.f0_hz, u8::from(frame.voiced)).map_err(fail)?;
    }
    out.flush().map_err(fail)
}
