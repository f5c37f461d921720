//! What is done to each recording before it is heard: slower, in a room, softer, in noise, between pauses.

use crate::hear::evaluate::args::ConditionArgs;
use crate::hear::evaluate::stretch::stretched;
use audio::convolve::Convolver;
use audio::decode::decode;
use audio::resample::resample_all;
use command_ear::RATE_HZ;
use files::error::Failure;
use std::path::Path;

/// Samples per second of all sound here, Hz.
const RATE: f64 = RATE_HZ as f64;

/// A recording made ready.
#[derive(Debug, Clone, PartialEq)]
pub struct Prepared {
    /// At [`RATE_HZ`].
    pub sound: Vec<f32>,
    /// Where the last word ends, s: the last instant of the clean recording within 17 dB of its loudest 20 ms.
    pub word_end_s: f64,
    /// Length of the recording itself, without the pauses around it, s.
    pub length_s: f64,
}

/// The conditions with their sounds loaded.
pub struct Condition {
    args: ConditionArgs,
    noises: Vec<Vec<f32>>,
    rooms: Vec<Vec<f32>>,
    /// Quiet before and after each recording, s.
    pauses_s: (f64, f64),
}

impl Condition {
    /// Loads noise and rooms. `pauses_s`: quiet put before and after each recording.
    ///
    /// # Errors
    /// A factor or ratio makes no sense, or a sound cannot be read; the text names which.
    pub fn load(args: &ConditionArgs, pauses_s: (f64, f64)) -> Result<Self, Failure> {
        let check = |name: &str, value: Option<f64>, from: f64, to: f64| match value {
            Some(v) if !(from..=to).contains(&v) => {
                Err(Failure::Options(format!("--{name} {v}: is outside {from} to {to}; give a value between")))
            }
            _ => Ok(()),
        };
        check("snr", args.snr, -20.0, 60.0)?;
        check("level", args.level, -80.0, 0.0)?;
        check("slow", args.slow, 0.3, 3.0)?;
        let noises = args.noise.as_deref().map_or(Ok(Vec::new()), sounds)?;
        let rooms = args.room.as_deref().map_or(Ok(Vec::new()), sounds)?;
        Ok(Self { args: args.clone(), noises, rooms: rooms.iter().map(|room| without_delay(room)).collect(), pauses_s })
    }

    /// The `number`-th recording under the conditions: the number alone chooses room and noise, so that every run gives the same.
    pub fn prepare(&self, recording: &[f32], number: usize) -> Prepared {
        let spoken = stretched(recording, RATE, self.args.slow.unwrap_or(1.0));
        let word_end_s = self.pauses_s.0 + word_end_s(&spoken);
        let length_s = spoken.len() as f64 / RATE;
        let mut sound = between_pauses(&spoken, self.pauses_s);
        if let Some(room) = self.rooms.get(number % self.rooms.len().max(1)) {
            sound = in_room(&sound, room);
        }
        if let Some(level_db) = self.args.level {
            let gain = 10f64.powf((level_db - active_level_db(&sound)) / 20.0) as f32;
            sound.iter_mut().for_each(|x| *x *= gain);
        }
        if let (Some(snr_db), Some(noise)) = (self.args.snr, self.noises.get(number % self.noises.len().max(1))) {
            let (speech_db, noise_db) = (active_level_db(&sound), mean_level_db(noise));
            let gain = 10f64.powf((speech_db - snr_db - noise_db) / 20.0) as f32;
            // Another stretch of the noise for each recording.
            let from = number.wrapping_mul(7_919 * 16) % noise.len().max(1);
            sound.iter_mut().zip(noise.iter().cycle().skip(from)).for_each(|(x, n)| *x += gain * n);
        }
        Prepared { sound, word_end_s, length_s }
    }
}

/// A recording at [`RATE_HZ`].
pub fn load(path: &Path) -> Result<Vec<f32>, Failure> {
    let sound = decode(path)?;
    Ok(resample_all(&sound.samples, sound.rate_hz, RATE_HZ)?)
}

/// A sound, or those of a folder in order of their names.
fn sounds(path: &Path) -> Result<Vec<Vec<f32>>, Failure> {
    let unread = |why: std::io::Error| Failure::file(path, format!("cannot be read ({why}); name a recording or a folder of them"));
    let mut files = vec![path.to_owned()];
    if path.is_dir() {
        let entries = std::fs::read_dir(path).and_then(Iterator::collect::<Result<Vec<_>, _>>).map_err(unread)?;
        files = entries.into_iter().map(|entry| entry.path()).filter(|file| is_sound(file)).collect();
        files.sort();
    }
    let sounds = files.iter().map(|file| load(file)).collect::<Result<Vec<_>, _>>()?;
    match sounds.iter().position(Vec::is_empty) {
        _ if sounds.is_empty() => Err(Failure::file(path, "holds no WAV, AIFF or FLAC file; name another folder")),
        Some(empty) => Err(Failure::file(files.get(empty).unwrap_or(&path.to_owned()), "is empty; take it out")),
        None => Ok(sounds),
    }
}

fn is_sound(file: &Path) -> bool {
    let extension = file.extension().and_then(|e| e.to_str()).unwrap_or_default().to_lowercase();
    ["wav", "flac", "aiff", "aif"].contains(&extension.as_str())
}

/// The response from 2 ms before its highest peak on, so that a room does not move words in time; that peak is made 1.
fn without_delay(response: &[f32]) -> Vec<f32> {
    let (at, peak) = response.iter().map(|x| x.abs()).enumerate().fold((0, 0.0f32), |best, next| if next.1 > best.1 { next } else { best });
    let from = at.saturating_sub((0.002 * RATE) as usize);
    response.iter().skip(from).map(|x| x / peak.max(1e-9)).collect()
}

fn in_room(sound: &[f32], response: &[f32]) -> Vec<f32> {
    const BLOCK: usize = 1024;
    let mut convolver = Convolver::new(response, BLOCK);
    let mut out = vec![0.0; sound.len().next_multiple_of(BLOCK)];
    let mut block = vec![0.0; BLOCK];
    for (input, output) in sound.chunks(BLOCK).zip(out.chunks_mut(BLOCK)) {
        block.fill(0.0);
        block.iter_mut().zip(input).for_each(|(b, x)| *b = *x);
        convolver.add(&block, output);
    }
    out.truncate(sound.len());
    out
}

/// Mean power of each 20 ms.
fn powers(sound: &[f32]) -> Vec<f64> {
    sound.chunks((0.02 * RATE) as usize).map(|piece| piece.iter().map(|x| f64::from(x * x)).sum::<f64>() / piece.len() as f64).collect()
}

fn to_db(power: f64) -> f64 {
    10.0 * power.max(1e-12).log10()
}

fn mean_level_db(sound: &[f32]) -> f64 {
    let powers = powers(sound);
    to_db(powers.iter().sum::<f64>() / powers.len().max(1) as f64)
}

/// Level of the speech without its pauses, dB re full scale. ITU-T P.56 (method B) counts what lies within 15.9 dB under the level so found; here by
/// pieces of 20 ms in place of its envelope.
fn active_level_db(sound: &[f32]) -> f64 {
    const MARGIN_DB: f64 = 15.9;
    let powers = powers(sound);
    let mut threshold = 0.0;
    // Each turn leaves pauses out that the one before still counted; it settles in a few.
    for _ in 0..20 {
        let active: Vec<f64> = powers.iter().copied().filter(|p| *p >= threshold).collect();
        let next = active.iter().sum::<f64>() / active.len().max(1) as f64 / 10f64.powf(MARGIN_DB / 10.0);
        if next <= threshold {
            break;
        }
        threshold = next;
    }
    to_db(threshold) + MARGIN_DB
}

/// Short-time power over 20 ms around each sample.
fn running_power(sound: &[f32]) -> Vec<f64> {
    const WIDTH: usize = 320;
    let mut sum = 0.0;
    let mut old = std::iter::repeat_n(0.0, WIDTH).chain(sound.iter().map(|x| f64::from(*x).powi(2)));
    sound
        .iter()
        .map(|x| {
            sum += f64::from(*x).powi(2) - old.next().unwrap_or(0.0);
            sum.max(0.0) / WIDTH as f64
        })
        .collect()
}

/// Where the last word of a recording ends, s; see [`Prepared::word_end_s`].
fn word_end_s(sound: &[f32]) -> f64 {
    let power = running_power(sound);
    let peak = power.iter().copied().fold(0.0, f64::max);
    power.iter().rposition(|&p| p > 0.02 * peak).map_or(0.0, |i| (i as f64 - 160.0) / RATE)
}

/// The recording with noise before and after it as loud as its quietest tenth, so that what is said stands between pauses.
fn between_pauses(sound: &[f32], (before_s, after_s): (f64, f64)) -> Vec<f32> {
    let mut sorted = running_power(sound);
    sorted.sort_by(f64::total_cmp);
    let spread = (sorted.get(sorted.len() / 10).copied().unwrap_or(0.0) * 3.0).sqrt().max(2e-5);
    let mut state = 12_345u32;
    let mut noise = |s: f64| -> Vec<f32> {
        (0..(s * RATE) as usize)
            .map(|_| {
                state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                ((f64::from(state >> 8) / f64::from(1 << 23) - 1.0) * spread) as f32
            })
            .collect()
    };
    let mut whole = noise(before_s);
    whole.extend(sound);
    whole.extend(noise(after_s));
    whole
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tone(level_db: f64, s: f64) -> Vec<f32> {
        let amplitude = 10f64.powf(level_db / 20.0) * 2f64.sqrt();
        (0..(s * RATE) as usize).map(|i| (amplitude * (i as f64 / RATE * std::f64::consts::TAU * 400.0).sin()) as f32).collect()
    }

    /// Half a second of tone between two seconds of near silence.
    fn word(level_db: f64) -> Vec<f32> {
        let quiet = tone(-80.0, 1.0);
        [quiet.clone(), tone(level_db, 0.5), quiet].concat()
    }

    fn condition(args: ConditionArgs) -> Condition {
        Condition { args, noises: vec![tone(-20.0, 3.0)], rooms: Vec::new(), pauses_s: (0.5, 1.0) }
    }

    #[test]
    fn the_level_of_speech_leaves_the_pauses_out() {
        assert!((active_level_db(&word(-30.0)) + 30.0).abs() < 0.2, "{}", active_level_db(&word(-30.0)));
        assert!(active_level_db(&[]) < -100.0);
    }

    #[test]
    fn level_and_noise_are_as_asked_for() {
        let soft = condition(ConditionArgs { level: Some(-40.0), ..ConditionArgs::default() }).prepare(&word(-20.0), 0);
        assert!((active_level_db(&soft.sound) + 40.0).abs() < 0.2);
        assert!((soft.length_s - 2.5).abs() < 1e-6 && (soft.sound.len() as f64 / RATE - 4.0).abs() < 1e-3);
        let plain = condition(ConditionArgs::default()).prepare(&word(-20.0), 3);
        let noisy = condition(ConditionArgs { snr: Some(10.0), ..ConditionArgs::default() }).prepare(&word(-20.0), 3);
        let noise: Vec<f32> = noisy.sound.iter().zip(&plain.sound).map(|(a, b)| a - b).collect();
        assert!((mean_level_db(&noise) + 30.0).abs() < 0.3, "{}", mean_level_db(&noise));
    }

    #[test]
    fn the_end_of_the_word_is_found_also_when_slower_and_in_a_room() {
        let prepared = condition(ConditionArgs::default()).prepare(&word(-20.0), 0);
        assert!((prepared.word_end_s - 2.0).abs() < 0.02, "{}", prepared.word_end_s);
        let slow = condition(ConditionArgs { slow: Some(0.75), ..ConditionArgs::default() }).prepare(&word(-20.0), 0);
        assert!((slow.word_end_s - 2.5).abs() < 0.03, "{}", slow.word_end_s);
        // A room that only delays by 0.1 s moves nothing.
        let mut late = vec![0.0; 1_600];
        late.push(0.5);
        let mut room = condition(ConditionArgs::default());
        room.rooms = vec![without_delay(&late)];
        let heard = room.prepare(&word(-20.0), 0);
        assert!(heard.sound.iter().zip(&prepared.sound).skip(32).all(|(a, b)| (a - b).abs() < 0.2));
        // The 20 ms pieces now cut the word at other places.
        assert!((active_level_db(&heard.sound) - active_level_db(&prepared.sound)).abs() < 0.25);
        assert_eq!(heard.word_end_s, prepared.word_end_s);
    }

    #[test]
    fn senseless_conditions_are_refused_by_name() {
        for args in [
            ConditionArgs { slow: Some(0.0), ..ConditionArgs::default() },
            ConditionArgs { level: Some(f64::NAN), ..ConditionArgs::default() },
        ] {
            let error = Condition::load(&args, (1.0, 1.0)).err().map(|e| e.to_string()).unwrap_or_default();
            assert!(error.contains("outside"), "{error}");
        }
        let nowhere = ConditionArgs { room: Some("no/such/room.wav".into()), ..ConditionArgs::default() };
        assert!(Condition::load(&nowhere, (1.0, 1.0)).err().is_some_and(|e| e.to_string().contains("no/such/room.wav")));
    }
}
