//! Writes down what was told: the whole vocabulary of a model, no list of phrases. One sound, then the process ends.

use std::io::{Read, Write};
use std::path::Path;
use std::process::ExitCode;

use command_ear::RATE_HZ;
use vosk::{CompleteResult, DecodingState, LogLevel, Model, Recognizer};

/// Samples that are handed over together: a second.
const PIECE: usize = RATE_HZ as usize;
/// What a model writes for sound that is no word.
const NO_WORD: &str = "[unk]";

/// Reads samples, 16 bit at [`RATE_HZ`], from standard input until it ends, and writes the words to standard output. `model` is a folder
/// in the Vosk layout whose graph holds a whole vocabulary.
#[must_use]
pub fn write_down_main(model: &Path) -> ExitCode {
    // Where the system does not end it with its parent, it ends with the next read.
    let _ = foreign::parent::end_with_parent();
    if command_ear::child::is_orphan() {
        return ExitCode::FAILURE;
    }
    vosk::set_log_level(LogLevel::Error);
    let mut bytes = Vec::new();
    if std::io::stdin().lock().read_to_end(&mut bytes).is_err() {
        return ExitCode::FAILURE;
    }
    let (samples, _) = bytes.as_chunks();
    let samples: Vec<i16> = samples.iter().map(|sample| i16::from_le_bytes(*sample)).collect();
    let Some(text) = written(model, &samples) else { return ExitCode::FAILURE };
    match std::io::stdout().lock().write_all(text.as_bytes()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::FAILURE,
    }
}

/// None where the model cannot be used.
fn written(model: &Path, samples: &[i16]) -> Option<String> {
    let model = Model::new(model.to_str()?)?;
    let mut recogniser = Recognizer::new(&model, RATE_HZ as f32)?;
    let mut told = Vec::new();
    for piece in samples.chunks(PIECE) {
        if let Ok(DecodingState::Finalized) = recogniser.accept_waveform(piece) {
            told.extend(text_of(&recogniser.result()));
        }
    }
    told.extend(text_of(&recogniser.final_result()));
    Some(told.join(" "))
}

fn text_of(result: &CompleteResult<'_>) -> Option<String> {
    let CompleteResult::Single(result) = result else { return None };
    let words: Vec<&str> = result.text.split_whitespace().filter(|word| *word != NO_WORD).collect();
    (!words.is_empty()).then(|| words.join(" "))
}
