//! A neural voice, if the client has one: the `piper` text-to-speech program and a voice file.
//!
//! Debian's package `piper` is a program for mice, so the program on the path is asked what it is. A voice is a file
//! `NAME.onnx` with its settings `NAME.onnx.json` beside it, in the folder `voices` of tidecount's data folder
//! (`~/.local/share/tidecount/voices` on Linux), or named by `TIDECOUNT_PIPER_VOICE`.

use super::child::{self, ChildError};
use super::sound;
use crate::{Pcm, SpeakError, Voice, finish};
use std::ffi::{OsStr, OsString};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Names a voice file outside the folder.
pub const PIPER_VOICE_ENV: &str = "TIDECOUNT_PIPER_VOICE";

const PROGRAM: &str = "piper";
/// It loads its voice anew for each line, and a weak computer takes its time.
const LIMIT: Duration = Duration::from_secs(60);

/// Renders by running `piper`.
#[derive(Debug)]
pub struct PiperVoice {
    program: OsString,
    file: PathBuf,
    rate_hz: u32,
    id: String,
    /// Lengthens every sound; 1: the voice's own speed.
    length_scale: f64,
}

impl PiperVoice {
    /// # Errors
    /// The program is missing or another one, or the voice file or its settings cannot be read.
    pub fn new(file: &Path) -> Result<Self, SpeakError> {
        Self::with_program(OsStr::new(PROGRAM), file)
    }

    fn with_program(program: &OsStr, file: &Path) -> Result<Self, SpeakError> {
        if !is_speech_program(program) {
            return Err(SpeakError(format!(
                "there is no text-to-speech program {PROGRAM} on the path (Debian's package of that name is a program for mice); \
                 install it, or use --voice espeak-ng"
            )));
        }
        let unusable = |file: &Path, why: String| SpeakError(format!("the voice file {} cannot be used: {why}", file.display()));
        let bytes = std::fs::metadata(file).map_err(|why| unusable(file, why.to_string()))?.len();
        let mut settings_file = file.as_os_str().to_owned();
        settings_file.push(".json");
        let settings_file = PathBuf::from(settings_file);
        let settings: serde_json::Value = std::fs::read(&settings_file)
            .map_err(|why| why.to_string())
            .and_then(|bytes| serde_json::from_slice(&bytes).map_err(|why| why.to_string()))
            .map_err(|why| unusable(&settings_file, why))?;
        let rate_hz = settings
            .pointer("/audio/sample_rate")
            .and_then(serde_json::Value::as_u64)
            .and_then(|rate| u32::try_from(rate).ok())
            .filter(|rate| (4_000..=192_000).contains(rate))
            .ok_or_else(|| unusable(&settings_file, "it gives no audio.sample_rate from 4000 to 192000".into()))?;
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        let id = format!("{PROGRAM} {name} {bytes} bytes {rate_hz} Hz line 1");
        Ok(Self { program: program.into(), file: file.into(), rate_hz, id, length_scale: 1.0 })
    }

    /// The voice files there are: the one in [`PIPER_VOICE_ENV`] first, then those of the folder, by name.
    #[must_use]
    pub fn installed() -> Vec<PathBuf> {
        let mut files: Vec<PathBuf> = std::env::var_os(PIPER_VOICE_ENV).map(PathBuf::from).into_iter().collect();
        files.extend(Self::folder().map(|folder| onnx_files(&folder)).unwrap_or_default());
        files
    }

    /// Where voice files are looked for.
    #[must_use]
    pub fn folder() -> Option<PathBuf> {
        directories::ProjectDirs::from("", "", "tidecount").map(|dirs| dirs.data_dir().join("voices"))
    }
}

fn onnx_files(folder: &Path) -> Vec<PathBuf> {
    let mut files: Vec<PathBuf> =
        std::fs::read_dir(folder).map(|entries| entries.flatten().map(|entry| entry.path()).collect()).unwrap_or_default();
    files.retain(|path| path.extension().is_some_and(|e| e == "onnx"));
    files.sort();
    files
}

/// Its help names the options that are used here; a program for mice has none of them.
fn is_speech_program(program: &OsStr) -> bool {
    let says = |bytes: Vec<u8>| {
        let help = String::from_utf8_lossy(&bytes).replace('_', "-");
        help.contains("--model") && help.contains("--output-raw")
    };
    match child::run(OsStr::new("sh"), &[OsStr::new("-c"), OsStr::new("exec \"$0\" --help 2>&1"), program], "", LIMIT) {
        Ok(help) => says(help),
        // Some write their help and fail; their last line is not enough to know them by.
        Err(_) => false,
    }
}

impl Voice for PiperVoice {
    fn id(&self) -> String {
        format!("{} length {:.2}", self.id, self.length_scale)
    }

    fn render(&mut self, text: &str) -> Result<Pcm, SpeakError> {
        // One line in, one line out. Without its noise the same text gives the same samples.
        let one_line = text.split_whitespace().collect::<Vec<_>>().join(" ");
        let length_scale = format!("{:.2}", self.length_scale);
        let arguments = [
            OsStr::new("--length_scale"),
            OsStr::new(&length_scale),
            OsStr::new("--model"),
            self.file.as_os_str(),
            OsStr::new("--output_raw"),
            OsStr::new("--noise_scale"),
            OsStr::new("0"),
            OsStr::new("--noise_w"),
            OsStr::new("0"),
        ];
        let bytes = child::run(&self.program, &arguments, &(one_line + "\n"), LIMIT)
            .map_err(|why: ChildError| SpeakError(format!("the voice {PROGRAM} does not work: {why}; use --voice espeak-ng meanwhile")))?;
        finish(&sound::from_s16le(&bytes, self.rate_hz))
            .ok_or_else(|| SpeakError(format!("the voice {PROGRAM} gives no sound for {text:?}")))
    }

    fn change_rate(&mut self, factor: f64) {
        let wanted = self.length_scale * factor;
        if wanted.is_finite() {
            self.length_scale = wanted.clamp(0.7, 1.6);
        }
    }
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;
    use std::os::unix::fs::PermissionsExt;

    fn program(folder: &Path, script: &str) -> PathBuf {
        let path = folder.join("piper");
        std::fs::write(&path, format!("#!/bin/sh\n{script}\n")).unwrap();
        std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o755)).unwrap();
        path
    }

    fn voice_file(folder: &Path, settings: &str) -> PathBuf {
        let file = folder.join("en-calm.onnx");
        std::fs::write(&file, b"weights").unwrap();
        std::fs::write(folder.join("en-calm.onnx.json"), settings).unwrap();
        file
    }

    const SPEAKS: &str = "case \"$1\" in --help) echo 'usage: --model M --output_raw';; \
        *) cat >/dev/null; i=0; while [ $i -lt 2000 ]; do printf '\\000\\100\\000\\300'; i=$((i+1)); done;; esac";

    #[test]
    fn raw_samples_are_taken_at_the_rate_of_the_settings() {
        let folder = tempfile::tempdir().unwrap();
        let program = program(folder.path(), SPEAKS);
        let file = voice_file(folder.path(), r#"{"audio":{"sample_rate":16000}}"#);
        let mut voice = PiperVoice::with_program(program.as_os_str(), &file).unwrap();
        let line = voice.render("one\ntwo").unwrap();
        assert_eq!((line.rate_hz, line.samples.len()), (16_000, 4000));
        assert!(voice.id().contains("en-calm.onnx"));
        assert_eq!(onnx_files(folder.path()), [file]);
    }

    #[test]
    fn the_program_for_mice_and_broken_settings_are_told() {
        let folder = tempfile::tempdir().unwrap();
        let mouse = program(folder.path(), "echo 'usage: configures your mouse'");
        let file = voice_file(folder.path(), "{}");
        let wrong = PiperVoice::with_program(mouse.as_os_str(), &file).unwrap_err().0;
        assert!(wrong.contains("mice") && wrong.contains("espeak-ng"), "{wrong}");
        let right = program(folder.path(), SPEAKS);
        let settings = PiperVoice::with_program(right.as_os_str(), &file).unwrap_err().0;
        assert!(settings.contains("en-calm.onnx.json") && settings.contains("sample_rate"), "{settings}");
        let nowhere = PiperVoice::with_program(right.as_os_str(), &folder.path().join("none.onnx")).unwrap_err().0;
        assert!(nowhere.contains("none.onnx"), "{nowhere}");
    }
}
