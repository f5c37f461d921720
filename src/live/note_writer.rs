//! Holds the last minutes of the microphone's sound, so that what somebody told can be written down when they have told it. Only where
//! there is a model that can.

use std::collections::VecDeque;
use std::path::PathBuf;

use audio::resample::resample_all;
use command_ear::{RATE_HZ, write_down};

/// Nobody is listened to for longer than a minute and a half; the rest is room for what is said in between, s.
const KEPT_S: usize = 120;
/// Sound before the first word and behind the last goes along, s: a word's first sound is soft.
const AROUND_S: f64 = 0.3;

/// The sound, and who writes.
pub struct NoteWriter {
    model: PathBuf,
    /// The program that runs as the writing process; none for the running one.
    program: Option<PathBuf>,
    rate_hz: u32,
    /// Of the last [`KEPT_S`].
    recent: VecDeque<i16>,
    /// Frames that passed, lost ones included.
    frames: u64,
}

impl NoteWriter {
    pub fn new(model: PathBuf, program: Option<PathBuf>, rate_hz: u32) -> Self {
        Self { model, program, rate_hz, recent: VecDeque::new(), frames: 0 }
    }

    pub fn push(&mut self, mic: &[f32]) {
        self.recent.extend(mic.iter().map(|x| (x * 32_768.0).round().clamp(-32_768.0, 32_767.0) as i16));
        self.passed(mic.len());
    }

    /// Frames were lost: silence stands for them.
    pub fn skip(&mut self, frames: u64) {
        let frames = usize::try_from(frames).unwrap_or(usize::MAX);
        self.recent.extend(std::iter::repeat_n(0, frames.min(self.most())));
        self.passed(frames);
    }

    fn most(&self) -> usize {
        KEPT_S * self.rate_hz as usize
    }

    fn passed(&mut self, frames: usize) {
        self.frames += frames as u64;
        let over = self.recent.len().saturating_sub(self.most());
        self.recent.drain(..over);
    }

    /// What writes down the sound of this span of the sample clock, s; to be run on a thread of its own.
    pub fn job(&self, from_s: f64, until_s: f64) -> impl FnOnce() -> Option<String> + Send + 'static {
        let begin = self.frames.saturating_sub(self.recent.len() as u64);
        // Saturates: what is before the beginning is the beginning.
        let place = |at_s: f64| (((at_s * f64::from(self.rate_hz)) as u64).saturating_sub(begin) as usize).min(self.recent.len());
        let (from, until) = (place(from_s - AROUND_S), place(until_s + AROUND_S));
        let sound: Vec<f32> = self.recent.range(from.min(until)..until).map(|&x| f32::from(x)).collect();
        let (model, program, rate_hz) = (self.model.clone(), self.program.clone(), self.rate_hz);
        move || {
            let sound = if rate_hz == RATE_HZ { sound } else { resample_all(&sound, rate_hz, RATE_HZ).ok()? };
            let samples: Vec<i16> = sound.iter().map(|x| x.round().clamp(-32_768.0, 32_767.0) as i16).collect();
            match write_down(&model, program.as_ref(), &samples) {
                Ok(text) => text,
                Err(why) => {
                    tracing::warn!("{why}");
                    None
                }
            }
        }
    }
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;
    use std::os::unix::fs::PermissionsExt as _;

    /// A program that stands for the writing one and tells what it got.
    fn writer(dir: &std::path::Path, script: &str, rate_hz: u32) -> NoteWriter {
        let program = dir.join("writes");
        std::fs::write(&program, format!("#!/bin/sh\n{script}\n")).expect("writes");
        std::fs::set_permissions(&program, std::fs::Permissions::from_mode(0o755)).expect("sets");
        NoteWriter::new(dir.join("model"), Some(program), rate_hz)
    }

    #[test]
    fn what_was_told_goes_to_the_model_with_a_breath_around_it_at_its_rate() {
        let dir = tempfile::tempdir().expect("a folder");
        let mut notes = writer(dir.path(), "echo \"$1 $2 $(wc -c)\"", 8000);
        for second in 0..10 {
            notes.push(&vec![if second == 5 { 0.5 } else { 0.0 }; 8000]);
        }
        notes.skip(8000);
        let told = notes.job(5.0, 6.0)().expect("words");
        let (order, bytes) = told.rsplit_once(' ').expect("both");
        assert_eq!(order, "__write-down --model");
        // 1.6 s at 16 kHz, two bytes each; the resampler may give a few more or less.
        let bytes: i64 = bytes.parse().expect("a number");
        assert!((bytes - 51_200).abs() < 1000, "{bytes}");
    }

    #[test]
    fn the_last_minutes_are_held_and_a_program_that_fails_or_says_nothing_gives_no_words() {
        let dir = tempfile::tempdir().expect("a folder");
        let mut notes = writer(dir.path(), "wc -c", RATE_HZ);
        for _ in 0..200 {
            notes.push(&vec![0.1; RATE_HZ as usize]);
        }
        assert_eq!(notes.recent.len(), KEPT_S * RATE_HZ as usize);
        // 1.5 s, two bytes each, counted from what is held.
        let held = notes.job(150.3, 151.2)().expect("words");
        assert_eq!(held.trim(), "48000");
        let early = notes.job(2.0, 3.0)().expect("words");
        assert_eq!(early.trim(), "0", "gone long ago");
        assert_eq!(writer(dir.path(), "cat > /dev/null; exit 3", RATE_HZ).job(0.0, 1.0)(), None);
        assert_eq!(writer(dir.path(), "cat > /dev/null", RATE_HZ).job(0.0, 1.0)(), None);
    }
}
