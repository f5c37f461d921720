//! The client's spoken words, by the program `flite` (Debian package `flite`), a voice the tool itself does not use; in a language that
//! `flite` has not, by `espeak-ng`.

use super::error::RehearseError;
use super::signal::{RATES_HZ, gain};
use std::collections::HashMap;
use std::process::Command;
use std::sync::Arc;
use transform::InterleavedSlice;

/// Below the peak by this much is silence around an utterance, dB.
const TRIM_DB: f64 = -45.0;
/// Kept before and after what is trimmed, s, so that soft consonants live.
const MARGIN_S: f64 = 0.01;
/// Frames weaker than the peak frame by this much are pauses and do not count for the level, dB.
const PAUSE_DB: f64 = -30.0;

/// How a voice of `espeak-ng` is named: "espeak-ng:de".
const ESPEAK: &str = "espeak-ng:";
/// Words a minute of such a voice at speed 1; the program's own are 175, which nobody of age speaks at (own choice, no source).
const ESPEAK_WPM: f64 = 150.0;

/// Speaks texts at one rate with one voice; each text is rendered once.
pub struct Speaker {
    voice: String,
    stretch: f64,
    rate_hz: u32,
    cache: HashMap<String, Arc<[f32]>>,
}

impl Speaker {
    /// `voice`: one of `flite -lv` (slt, awb, rms, kal…), or one of espeak-ng as "espeak-ng:de+m3". `speed`: 1 is the voice's own, 0.5 to 2; passed on as
    /// `duration_stretch`, which the voices follow roughly (slt at 0.5: 2.6 times as long).
    ///
    /// # Errors
    /// `flite` is missing or has no such voice; `speed` or rate out of range.
    pub fn new(voice: &str, speed: f64, rate_hz: u32) -> Result<Self, RehearseError> {
        if !(0.5..=2.0).contains(&speed) || !RATES_HZ.contains(&rate_hz) {
            return Err(RehearseError(format!(
                "client's voice: speed {speed} must be from 0.5 to 2, rate {rate_hz} from 8000 to 48000 Hz"
            )));
        }
        if voice.starts_with(ESPEAK) {
            return Ok(Self { voice: voice.into(), stretch: 1.0 / speed, rate_hz, cache: HashMap::new() });
        }
        // An unknown name would silently become the default voice, and a path or address would be followed.
        let listed = run("flite", &["-lv"])?;
        let listed = String::from_utf8_lossy(&listed);
        let names: Vec<&str> = listed.split_once(':').map_or("", |l| l.1).split_whitespace().collect();
        if !names.contains(&voice) {
            return Err(RehearseError(format!("client's voice: flite has no voice \"{voice}\"; it has {}", names.join(", "))));
        }
        Ok(Self { voice: voice.into(), stretch: 1.0 / speed, rate_hz, cache: HashMap::new() })
    }

    /// The words at -20 dB re full scale (RMS without pauses), silence around them trimmed.
    ///
    /// # Errors
    /// `flite` fails or gives no sound.
    pub fn say(&mut self, text: &str) -> Result<Arc<[f32]>, RehearseError> {
        if let Some(done) = self.cache.get(text) {
            return Ok(done.clone());
        }
        let wav = match self.voice.strip_prefix(ESPEAK) {
            Some(voice) => {
                let speed = format!("{:.0}", ESPEAK_WPM / self.stretch);
                // "--" ends the options: a text is never one.
                run("espeak-ng", &["-v", voice, "-s", &speed, "-z", "--stdout", "--", text])?
            }
            None => {
                let stretch = format!("duration_stretch={:.3}", self.stretch);
                run("flite", &["-voice", &self.voice, "--setf", &stretch, "-t", text, "-o", "/dev/stdout"])?
            }
        };
        let silent = || RehearseError(format!("client's voice: {} gave no sound for \"{text}\"", self.voice));
        let mut reader = hound::WavReader::new(wav.as_slice()).map_err(|e| RehearseError(format!("client's voice: \"{text}\": {e}")))?;
        let from_hz = reader.spec().sample_rate;
        let raw: Vec<f32> = reader.samples::<i16>().map_while(Result::ok).map(|v| f32::from(v) / 32_768.0).collect();
        let at_rate = resample(&raw, from_hz, self.rate_hz)?;
        let trimmed = trim(&at_rate, self.rate_hz).ok_or_else(silent)?;
        let level = active_rms(trimmed, self.rate_hz);
        let scale = (gain(SPEECH_LEVEL_DB) / level) as f32;
        let done: Arc<[f32]> = trimmed.iter().map(|v| (v * scale).clamp(-1.0, 1.0)).collect();
        self.cache.insert(text.into(), done.clone());
        Ok(done)
    }
}

/// RMS level of what [`Speaker::say`] gives, dB re full scale.
pub const SPEECH_LEVEL_DB: f64 = -20.0;

fn run(program: &str, args: &[&str]) -> Result<Vec<u8>, RehearseError> {
    let output = Command::new(program).args(args).output().map_err(|e| match e.kind() {
        std::io::ErrorKind::NotFound => RehearseError(format!(
            "the simulated client speaks with the program {program}, which is not installed: install the Debian package \"{program}\""
        )),
        _ => RehearseError(format!("{program} cannot be run: {e}")),
    })?;
    if output.status.success() {
        Ok(output.stdout)
    } else {
        Err(RehearseError(format!("{program} failed: {}", String::from_utf8_lossy(&output.stderr).trim())))
    }
}

fn resample(x: &[f32], from_hz: u32, to_hz: u32) -> Result<Vec<f32>, RehearseError> {
    if from_hz == to_hz || x.is_empty() {
        return Ok(x.to_vec());
    }
    let fault = |e: String| RehearseError(format!("client's voice: {from_hz} to {to_hz} Hz: {e}"));
    let mut fft = transform::converter(from_hz, to_hz, 1024).map_err(|e| fault(e.to_string()))?;
    let input = InterleavedSlice::new(x, 1, x.len()).map_err(|e| fault(e.to_string()))?;
    let output = fft.process_all(&input, x.len(), None).map_err(|e| fault(e.to_string()))?;
    Ok(output.take_data())
}

fn trim(x: &[f32], rate_hz: u32) -> Option<&[f32]> {
    let peak = x.iter().fold(0f32, |p, v| p.max(v.abs()));
    let floor = peak * gain(TRIM_DB) as f32;
    let margin = (MARGIN_S * f64::from(rate_hz)) as usize;
    let first = x.iter().position(|v| v.abs() > floor)?.saturating_sub(margin);
    let last = (x.iter().rposition(|v| v.abs() > floor)? + margin).min(x.len());
    x.get(first..last)
}

fn active_rms(x: &[f32], rate_hz: u32) -> f64 {
    let frames: Vec<f64> = x
        .chunks((rate_hz / 50).max(1) as usize)
        .map(|c| c.iter().map(|v| f64::from(*v) * f64::from(*v)).sum::<f64>() / c.len() as f64)
        .collect();
    let floor = frames.iter().copied().fold(0.0, f64::max) * gain(PAUSE_DB).powi(2);
    let active: Vec<f64> = frames.into_iter().filter(|p| *p >= floor).collect();
    (active.iter().sum::<f64>() / active.len().max(1) as f64).sqrt().max(1e-9)
}
