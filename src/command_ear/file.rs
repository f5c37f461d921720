//! Commands in a recording.

use super::{ChildRecogniser, CommandEarError, CommandEvent, CommandRecogniser, Grammar, HeardPhrase, Mode, Options, RATE_HZ};
use std::path::Path;

/// Hears the commands of `grammar` in a whole recording, mono, 16 kHz, -1 to 1. The main path alone listens, as it does in a session; times
/// are s from the first sample. Phrases of [`super::ASK_CONFIDENCE`] and more are given; a session acts from [`super::ACT_CONFIDENCE`] on.
///
/// # Errors
/// Model or grammar are not usable, or the recogniser keeps dying on this sound. The text names what and what to do.
pub fn recognise_file(samples: &[f32], grammar: &Grammar, model: &Path) -> Result<Vec<HeardPhrase>, CommandEarError> {
    let options = Options { model: model.to_owned().into(), program: None, fast: Grammar::default(), mode: Mode::Offline };
    recognise_with(&options, samples, grammar)
}

/// As [`recognise_file`], with the fast path and the child's program as `options` say.
///
/// # Errors
/// As [`recognise_file`].
pub fn recognise_with(options: &Options, samples: &[f32], grammar: &Grammar) -> Result<Vec<HeardPhrase>, CommandEarError> {
    let mut ear = ChildRecogniser::start(options)?;
    ear.listen_for(grammar)?;
    let mut events = Vec::new();
    // A minute at a time, so that the sound is not held twice.
    let minute = RATE_HZ as usize * 60;
    for (i, block) in samples.chunks(minute).enumerate() {
        ear.push(i as f64 * 60.0, block, true);
        events.extend(ear.poll());
    }
    events.extend(ear.finish());
    let mut heard = Vec::new();
    for event in events {
        match event {
            CommandEvent::Heard(phrase) => heard.push(phrase),
            CommandEvent::Restarted { lost_s } => {
                return Err(CommandEarError(format!(
                    "the recogniser died on this recording and missed {lost_s:.1} s of it; try again, or cut the recording there"
                )));
            }
            CommandEvent::Failed { message } => return Err(CommandEarError(message)),
        }
    }
    Ok(heard)
}
