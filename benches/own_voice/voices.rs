//! Synthetic voices that the recogniser was not trained on.

use super::echo_scene::{RATE, speech};
use audio::decode::decode;
use audio::resample::resample_all;
use std::process::Command;

/// flite's slt and variants of espeak-ng that models/training keeps for tests, by turns.
const VOICES: [&str; 6] = ["slt", "en-gb+Alicia", "en-us+Andy", "en-gb+Jacky", "en-us+Lee", "en-gb+Michael"];

/// A phrase by one of the voices; none where its program is not installed.
pub fn say(turn: usize, phrase: &str) -> Option<Vec<f32>> {
    match *VOICES.get(turn % VOICES.len())? {
        "slt" => {
            let folder = tempfile::tempdir().ok()?;
            let path = folder.path().join("said.wav");
            Command::new("flite").args(["-voice", "slt", "-t", phrase, "-o"]).arg(&path).status().ok()?;
            let sound = decode(&path).ok()?;
            resample_all(&sound.samples, sound.rate_hz, RATE as u32).ok()
        }
        voice => speech(voice, phrase),
    }
}
