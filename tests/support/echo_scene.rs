//! A rehearsed room for echo cancellers: a far voice from the loudspeaker, its echo, noise, and a near word.

use audio::EchoCanceller;
use audio::resample::resample_all;
use std::path::Path;
use std::process::Command;

/// Rate of the scene, Hz.
pub const RATE: usize = 16_000;

/// One scene; all signals have the same length.
pub struct Scene {
    pub played: Vec<f32>,
    pub echo: Vec<f32>,
    /// The near word, alone, at its place; else silence.
    pub near: Vec<f32>,
    /// Where the near word lies, in frames.
    pub near_range: std::ops::Range<usize>,
    pub noise: Vec<f32>,
}

/// How the echo comes about.
#[derive(Clone, Copy)]
pub struct EchoPath {
    pub delay_s: f64,
    pub level_db: f64,
    /// Soft clipping of the loudspeaker: gain into a tanh; 0 for none.
    pub clipping: f32,
    /// By how much the microphone's clock runs faster than the loudspeaker's, parts per million.
    pub drift_ppm: f64,
}

/// Uniform noise, −1 to 1, from a seed. Constants of the generator from memory (Numerical Recipes).
pub fn noise(frames: usize, mut seed: u32) -> Vec<f32> {
    (0..frames)
        .map(|_| {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (seed >> 8) as f32 / 8_388_608.0 - 1.0
        })
        .collect()
}

/// Speech of Debian's espeak-ng at 16 kHz; `None`, with a line on standard output, where it is not installed.
pub fn speech(voice: &str, text: &str) -> Option<Vec<f32>> {
    let Ok(output) = Command::new("espeak-ng").args(["-v", voice, "-s", "150", "--stdout", text]).output() else {
        skipping::skip(skipping::Missing::Installed, "espeak-ng is not installed");
        return None;
    };
    // 44 bytes of header with a false length, then 16-bit samples at 22,050 Hz.
    let samples: Vec<f32> =
        output.stdout.get(44..)?.chunks_exact(2).map(|b| f32::from(i16::from_le_bytes([b[0], b[1]])) / 32_768.0).collect();
    resample_all(&samples, 22_050, RATE as u32).ok()
}

pub fn rms_db(samples: &[f32]) -> f64 {
    10.0 * (samples.iter().map(|s| f64::from(*s).powi(2)).sum::<f64>() / samples.len().max(1) as f64 + 1e-20).log10()
}

fn scaled_to(samples: &mut [f32], level_db: f64) {
    let gain = 10_f64.powf((level_db - rms_db(samples)) / 20.0) as f32;
    samples.iter_mut().for_each(|s| *s *= gain);
}

/// Decaying noise, −60 dB after `rt60_s` (the definition of reverberation time in ISO 3382).
pub fn synthetic_room(rt60_s: f64) -> Vec<f32> {
    let frames = (rt60_s * RATE as f64) as usize;
    let mut room = noise(frames, 7);
    for (n, s) in room.iter_mut().enumerate() {
        *s *= 10_f64.powf(-3.0 * n as f64 / frames as f64) as f32;
    }
    room
}

/// A recorded or simulated response from a WAV file at 16 kHz, from its peak on, 0.25 s.
pub fn room_from(path: &Path) -> Option<Vec<f32>> {
    let sound = audio::decode::decode(path).ok()?;
    let room = resample_all(&sound.samples, sound.rate_hz, RATE as u32).ok()?;
    let peak = room.iter().enumerate().max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))?.0;
    Some(room[peak..].iter().take(RATE / 4).copied().collect())
}

pub fn convolve(signal: &[f32], room: &[f32]) -> Vec<f32> {
    let length = (signal.len() + room.len()).next_power_of_two();
    let (forward, inverse) = (transform::forward(length), transform::backward(length));
    let spectrum = |samples: &[f32]| {
        let mut padded = samples.to_vec();
        padded.resize(length, 0.0);
        let mut out = forward.make_output_vec();
        forward.process(&mut padded, &mut out).expect("fitting lengths");
        out
    };
    let mut product: Vec<_> = spectrum(signal).iter().zip(spectrum(room)).map(|(a, b)| a * b / length as f32).collect();
    let mut out = inverse.make_output_vec();
    inverse.process(&mut product, &mut out).expect("fitting lengths");
    out.truncate(signal.len());
    out
}

/// Seconds of silence before the far voice begins.
pub const LEAD_S: usize = 2;

/// Two seconds of silence, then `seconds` of continuous far speech at −18 dBFS, the near word `stop` at −24 dBFS in the last three seconds, noise
/// at −62 dBFS. `None` where espeak-ng is missing.
pub fn scene(seconds: usize, path: EchoPath, room: &[f32]) -> Option<Scene> {
    let text = "Sit upright and rest your feet on the floor. Breathe in gently through the nose, and let the air go. \
                Now hold the note for as long as it is comfortable, and stop before it becomes an effort. \
                That was fourteen seconds, two more than the last time. Take a sip of water, then we go on.";
    let frames = (LEAD_S + seconds) * RATE;
    let mut voice = speech("en-gb", text)?;
    scaled_to(&mut voice, -18.0);
    let mut played = vec![0.0; LEAD_S * RATE];
    played.extend(voice.iter().copied().cycle().take(seconds * RATE));
    let loud: Vec<f32> =
        if path.clipping > 0.0 { played.iter().map(|s| (s * path.clipping).tanh() / path.clipping).collect() } else { played.clone() };
    let wet = convolve(&loud, room);
    let delay = path.delay_s * RATE as f64;
    let mut echo: Vec<f32> = (0..frames)
        .map(|n| {
            let at = n as f64 * (1.0 + path.drift_ppm * 1e-6) - delay;
            if at < 0.0 {
                return 0.0;
            }
            let (i, part) = (at as usize, at.fract() as f32);
            match (wet.get(i), wet.get(i + 1)) {
                (Some(a), Some(b)) => a + (b - a) * part,
                _ => 0.0,
            }
        })
        .collect();
    scaled_to(&mut echo, -18.0 + path.level_db);
    let mut word = speech("en-us+f3", "stop")?;
    scaled_to(&mut word, -24.0);
    let from = frames - 2 * RATE;
    let to = (from + word.len()).min(frames);
    let mut near = vec![0.0; frames];
    near[from..to].copy_from_slice(&word[..to - from]);
    let mut bed = noise(frames, 11);
    scaled_to(&mut bed, -62.0);
    Some(Scene { played, echo, near, near_range: from..to, noise: bed })
}

/// What a canceller made of a scene.
pub struct Outcome {
    /// Reduction of the echo without a near word, dB, from `after_s` on.
    pub erle_db: f64,
    /// Level of the near word's own part in the output against the input, dB.
    pub near_gain_db: f64,
    /// The near word's own part against everything else in the output, while it is said, dB.
    pub near_sdr_db: f64,
}

fn run(canceller: &mut dyn EchoCanceller, played: &[f32], mic: &[f32]) -> Vec<f32> {
    let mut out = mic.to_vec();
    for (p, m) in played.chunks_exact(RATE / 100).zip(out.chunks_exact_mut(RATE / 100)) {
        canceller.cancel(p, m);
    }
    out
}

/// `after_s`: seconds of playback to learn from before the reduction is taken. Runs a fresh canceller twice: without the near word for the reduction, with it for what is left of the word.
pub fn judge<C: EchoCanceller>(scene: &Scene, after_s: usize, new: impl Fn() -> C) -> Outcome {
    let quiet: Vec<f32> = scene.echo.iter().zip(&scene.noise).map(|(e, n)| e + n).collect();
    let talk: Vec<f32> = quiet.iter().zip(&scene.near).map(|(q, n)| q + n).collect();
    let from = (LEAD_S + after_s) * RATE;
    let cleaned = run(&mut new(), &scene.played, &quiet);
    let out = run(&mut new(), &scene.played, &talk);
    let word = &scene.near[scene.near_range.clone()];
    // The canceller may delay the word by some milliseconds: the best place within 20 ms.
    let energy: f64 = word.iter().map(|s| f64::from(*s).powi(2)).sum();
    let (gain, rest) = (0..320)
        .filter_map(|lag| {
            let got = out.get(scene.near_range.start + lag..scene.near_range.end + lag)?;
            let gain = word.iter().zip(got).map(|(w, g)| f64::from(*w) * f64::from(*g)).sum::<f64>() / energy;
            let rest = word.iter().zip(got).map(|(w, g)| (f64::from(*g) - gain * f64::from(*w)).powi(2)).sum::<f64>();
            Some((gain, rest))
        })
        .max_by(|a, b| a.0.abs().total_cmp(&b.0.abs()))
        .unwrap_or((0.0, f64::INFINITY));
    Outcome {
        erle_db: rms_db(&quiet[from..]) - rms_db(&cleaned[from..]),
        near_gain_db: 20.0 * gain.abs().max(1e-9).log10(),
        near_sdr_db: 10.0 * (gain.powi(2) * energy / rest.max(1e-20)).log10(),
    }
}
