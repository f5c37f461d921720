//! Sound for the measurements: files, padding, where a word ends.

use std::path::Path;
use symphonia::core::codecs::audio::AudioDecoderOptions;
use symphonia::core::formats::TrackType;
use symphonia::core::formats::probe::Hint;
use symphonia::core::io::MediaSourceStream;

/// Reads a mono file of any rate and gives it at 16 kHz.
pub fn read(file: &Path) -> Result<Vec<f32>, Box<dyn std::error::Error>> {
    let stream = MediaSourceStream::new(Box::new(std::fs::File::open(file)?), Default::default());
    let mut hint = Hint::new();
    if let Some(extension) = file.extension().and_then(|e| e.to_str()) {
        hint.with_extension(extension);
    }
    let mut format = symphonia::default::get_probe().probe(&hint, stream, Default::default(), Default::default())?;
    let track = format.default_track(TrackType::Audio).ok_or("no audio track")?;
    let parameters = track.codec_params.as_ref().and_then(|p| p.audio()).ok_or("no audio")?;
    let rate = parameters.sample_rate.ok_or("no rate")?;
    let mut decoder = symphonia::default::get_codecs().make_audio_decoder(parameters, &AudioDecoderOptions::default())?;
    let (mut sound, mut packet_sound) = (Vec::new(), Vec::new());
    while let Some(packet) = format.next_packet()? {
        decoder.decode(&packet)?.copy_to_vec_interleaved::<f32>(&mut packet_sound);
        sound.append(&mut packet_sound);
    }
    Ok(resample(&sound, f64::from(rate), 16_000.0))
}

/// Windowed-sinc interpolation, enough for speech to listen to.
fn resample(sound: &[f32], from: f64, to: f64) -> Vec<f32> {
    if (from - to).abs() < 0.5 {
        return sound.to_vec();
    }
    let cut = (to / from).min(1.0) * 0.95;
    let half = (24.0 / cut) as isize;
    (0..(sound.len() as f64 * to / from) as usize)
        .map(|i| {
            let at = i as f64 * from / to;
            let middle = at as isize;
            (middle - half..=middle + half)
                .filter_map(|k| {
                    let x = at - k as f64;
                    let arc = std::f64::consts::PI * x * cut;
                    let sinc = if arc.abs() < 1e-9 { 1.0 } else { arc.sin() / arc };
                    let window = 0.5 + 0.5 * (std::f64::consts::PI * x / (half as f64 + 1.0)).cos();
                    Some(f64::from(*sound.get(usize::try_from(k).ok()?)?) * sinc * window * cut)
                })
                .sum::<f64>() as f32
        })
        .collect()
}

/// Short-time power, 20 ms, every sample.
fn power(sound: &[f32]) -> Vec<f64> {
    let mut sum = 0.0;
    (0..sound.len())
        .map(|i| {
            sum += f64::from(sound[i]).powi(2) - if i >= 320 { f64::from(sound[i - 320]).powi(2) } else { 0.0 };
            sum.max(0.0) / 320.0
        })
        .collect()
}

/// Where the word of a clip ends: the last instant within 17 dB of its loudest 20 ms, s.
pub fn word_end_s(sound: &[f32]) -> f64 {
    let power = power(sound);
    let peak = power.iter().copied().fold(0.0, f64::max);
    power.iter().rposition(|&p| p > 0.02 * peak).map_or(0.0, |i| (i as f64 - 160.0) / 16_000.0)
}

/// The clip with a lead and a tail of noise as loud as its quietest tenth, so that a command stands between pauses.
pub fn between_pauses(sound: &[f32], lead_s: f64, tail_s: f64) -> Vec<f32> {
    let mut sorted = power(sound);
    sorted.sort_by(f64::total_cmp);
    let spread = (sorted.get(sorted.len() / 10).copied().unwrap_or(0.0) * 3.0).sqrt().max(2e-5);
    let mut state = 12_345u32;
    let mut noise = |s: f64| -> Vec<f32> {
        (0..(s * 16_000.0) as usize)
            .map(|_| {
                state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                ((f64::from(state >> 8) / f64::from(1 << 23) - 1.0) * spread) as f32
            })
            .collect()
    };
    let mut padded = noise(lead_s);
    padded.extend(sound);
    padded.extend(noise(tail_s));
    padded
}
