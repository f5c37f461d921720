//! Trying microphone and loudspeaker: what is played, and what is listened to.

use std::ops::ControlFlow;

use crate::set_up::desk::{Job, Outcome};
use crate::set_up::mic_judge::{HeardLevels, judge};
use crate::set_up::mic_levels::{Part, PartLevels};
use crate::set_up::sound_devices::{Devices, TestLine};
use audio::echo::AutoCanceller;
use audio::resample::Resampler;
use audio::{self, AudioIo, ECHO_RATE_HZ, EchoCanceller};
use files::error::Failure;
use live::capture::exchange;
use live::tone::Tone;

/// The room, and then speech, s.
pub const ROOM_S: f64 = 5.0;
pub const SPEECH_S: f64 = 5.0;
/// What is heard meanwhile settles in so long, s: devices click when they open.
const SETTLE_S: f64 = 0.3;
/// A sentence takes no longer than this, s.
const LONGEST_SENTENCE_S: f64 = 15.0;
/// A tone before the sentence, s (common practice, no source).
const TONE_S: f64 = 0.5;
/// Blocks in a second, and blocks from one look of the page to the next.
const BLOCKS_PER_S: f64 = 100.0;
const SHOWN_BLOCKS: u32 = 10;

/// What a person is told in each part of listening.
#[derive(Debug, Clone, Default)]
pub struct Told {
    pub room: String,
    pub speech: String,
    pub sentence: String,
    /// What the tool says itself.
    pub line: String,
}

/// A tone and a sentence, to be heard.
pub fn play(devices: &Devices, line: &str, job: &Job) -> Outcome {
    match try_play(devices, line, job) {
        Ok(()) if job.stopped() => Outcome::Broken,
        Ok(()) => Outcome::Played,
        Err(why) => Outcome::Failed(why.to_string()),
    }
}

fn try_play(devices: &Devices, line: &str, job: &Job) -> Result<(), Failure> {
    // No microphone is opened to play something.
    let mut io = audio::open("none", &devices.speaker, false)?;
    let mut test = TestLine::new(devices, io.as_ref(), line, Some(Tone::new(TONE_S)))?;
    let mut left = blocks(TONE_S + LONGEST_SENTENCE_S);
    exchange(io.as_mut(), |_, speaker| {
        if job.stopped() || test.is_over() || left == 0 {
            return Ok::<_, Failure>(ControlFlow::Break(()));
        }
        left -= 1;
        test.fill(speaker)?;
        Ok(ControlFlow::Continue(()))
    })?;
    Ok(io.finish()?)
}

fn blocks(length_s: f64) -> u32 {
    (length_s * BLOCKS_PER_S) as u32
}

/// The room, speech, and our own voice, judged.
pub fn listen(devices: &Devices, told: &Told, job: &Job) -> Outcome {
    match try_listen(devices, told, job) {
        Ok(_) if job.stopped() => Outcome::Broken,
        Ok(levels) => Outcome::Judged(judge(&levels)),
        Err(why) => Outcome::Failed(why.to_string()),
    }
}

fn try_listen(devices: &Devices, told: &Told, job: &Job) -> Result<HeardLevels, Failure> {
    let mut io = devices.open()?;
    let mut heard = PartLevels::new(io.mic_rate_hz());
    quiet_and_speech(io.as_mut(), told, job, &mut heard)?;
    if devices.plays() && !job.stopped() {
        show(job, &told.sentence, None, &heard);
        own_voice(devices, &told.line, job, io.as_mut(), &mut heard)?;
    }
    io.finish()?;
    Ok(heard.levels())
}

/// Listens while nothing is played.
fn quiet_and_speech(io: &mut dyn AudioIo, told: &Told, job: &Job, heard: &mut PartLevels) -> Result<(), Failure> {
    let quiet_s = ROOM_S + SPEECH_S;
    let mut block = 0_u32;
    exchange(io, |now, _| {
        let at_s = f64::from(block) / BLOCKS_PER_S;
        if at_s >= quiet_s || job.stopped() {
            return Ok(ControlFlow::Break(()));
        }
        let part = match at_s {
            settling if settling < SETTLE_S => Part::None,
            room if room < ROOM_S => Part::Room,
            _ => Part::Speech,
        };
        heard.push(now.mic, now.captured.lost_frames, part);
        if block.is_multiple_of(SHOWN_BLOCKS) {
            let (said, left_s) = if at_s < ROOM_S { (&told.room, ROOM_S - at_s) } else { (&told.speech, quiet_s - at_s) };
            show(job, said, Some(left_s), heard);
        }
        block += 1;
        Ok(ControlFlow::Continue(()))
    })
}

fn show(job: &Job, told: &str, left_s: Option<f64>, heard: &PartLevels) {
    job.show(|now| {
        if now.told != told {
            told.clone_into(&mut now.told);
        }
        now.figure = left_s.map_or(String::new(), |left_s| format!("{:.0}", left_s.ceil()));
        now.level_db = Some(heard.level_db);
        now.room_db = heard.room_db();
    });
}

/// Says a sentence and listens to how it comes back.
fn own_voice(devices: &Devices, line: &str, job: &Job, io: &mut dyn AudioIo, heard: &mut PartLevels) -> Result<(), Failure> {
    let mut test = TestLine::new(devices, io, line, None)?;
    let mut down = Resampler::new(io.mic_rate_hz(), ECHO_RATE_HZ)?;
    let mut own = Resampler::new(io.speaker_rate_hz(), ECHO_RATE_HZ)?;
    let (mut near, mut played) = (vec![0.0; (ECHO_RATE_HZ / 100) as usize], vec![0.0; (ECHO_RATE_HZ / 100) as usize]);
    let mut canceller = AutoCanceller::new();
    let mut block = 0_u32;
    exchange(io, |now, speaker| {
        if job.stopped() || test.is_over() || block >= blocks(LONGEST_SENTENCE_S) {
            return Ok(ControlFlow::Break(()));
        }
        heard.push(now.mic, now.captured.lost_frames, Part::Own);
        down.process(now.mic, &mut near)?;
        canceller.hint_delay(now.delay_s);
        canceller.cancel(&played, &mut near);
        heard.drowned |= canceller.echo_state().drowns;
        test.fill(speaker)?;
        own.process(speaker, &mut played)?;
        if block.is_multiple_of(SHOWN_BLOCKS) {
            job.show(|now| now.level_db = Some(heard.level_db));
        }
        block += 1;
        Ok(ControlFlow::Continue(()))
    })
}

#[cfg(test)]
#[path = "tests/mic_listen.rs"]
mod tests;
