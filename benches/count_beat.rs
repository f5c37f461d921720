//! How far counts begin from their beat, and how long lines take to render. Run: `cargo bench --bench count_beat`.
//!
//! Counts of the default voice, "one" to "sixty" over and over for five minutes at several beats, through the mixer in
//! blocks of 10 ms. "Begin" is the first frame of the line, "heard" the first sample above -40 dBFS (20 dB under the
//! level of a line), both against the beat on the sample clock.

use figures::figure;
use session::{Arg, Line, LineId};
use speak::{LineCache, MixEvent, Mixer, Pcm, SpeakError, Words, choose_voice};
use std::time::Instant;

const RATE_HZ: u32 = 48_000;
const LENGTH_S: f64 = 300.0;
const HEARD: f32 = 0.01;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let words = Words::english()?;
    let texts: Vec<String> = (1..=60)
        .map(|n| words.text(&Line { key: "count".into(), args: vec![("n", Arg::Number(f64::from(n)))] }))
        .collect::<Result<_, _>>()?;
    let mut voice = choose_voice(None)?;
    println!("voice: {}", voice.id());

    let mut cache = LineCache::new(None, RATE_HZ);
    let mut took_ms = Vec::new();
    let mut counts = Vec::new();
    for text in &texts {
        let start = Instant::now();
        counts.push(cache.line(voice.as_mut(), text)?);
        took_ms.push(start.elapsed().as_secs_f64() * 1e3);
    }
    took_ms.sort_by(f64::total_cmp);
    println!(
        "rendering a count: median {:.0} ms, longest {:.0} ms, all sixty {:.1} s",
        took_ms[took_ms.len() / 2],
        took_ms[took_ms.len() - 1],
        took_ms.iter().sum::<f64>() / 1e3
    );
    let longest_s = counts.iter().map(Pcm::duration_s).fold(0.0, f64::max);
    println!("longest count: {longest_s:.2} s; at a shorter beat its end is faded out");
    let long = "Breathe in through the nose for three, then out through the mouth for eight. Keep the shoulders low.";
    let start = Instant::now();
    let line = cache.line(voice.as_mut(), long)?;
    println!("rendering a line of {:.1} s: {:.0} ms", line.duration_s(), start.elapsed().as_secs_f64() * 1e3);
    let start = Instant::now();
    cache.line(voice.as_mut(), long)?;
    println!("the same from memory: {:.3} ms", start.elapsed().as_secs_f64() * 1e3);
    let folder = tempfile::tempdir()?;
    LineCache::new(Some(folder.path().into()), RATE_HZ).line(voice.as_mut(), long)?;
    let start = Instant::now();
    LineCache::new(Some(folder.path().into()), RATE_HZ).line(voice.as_mut(), long)?;
    println!("the same from disk: {:.1} ms", start.elapsed().as_secs_f64() * 1e3);

    println!("beat, s | counts | begin, worst frames | heard, mean ms | heard, worst ms | mixing, times real time");
    let mut worst = Off::default();
    for beat_s in [0.8, 1.0, 1.2] {
        let off = measure(&counts, beat_s)?;
        worst = Off {
            begin_frames: worst.begin_frames.max(off.begin_frames),
            heard_mean_ms: worst.heard_mean_ms.max(off.heard_mean_ms),
            heard_worst_ms: worst.heard_worst_ms.max(off.heard_worst_ms),
        };
    }
    figure("beat.begin", worst.begin_frames);
    figure("beat.heard.mean", worst.heard_mean_ms);
    figure("beat.heard.worst", worst.heard_worst_ms);
    Ok(())
}

/// How far counts are from their beat, in sizes.
#[derive(Default)]
struct Off {
    /// First frame, worst.
    begin_frames: f64,
    /// First sound.
    heard_mean_ms: f64,
    heard_worst_ms: f64,
}

/// Prints a row.
fn measure(counts: &[Pcm], beat_s: f64) -> Result<Off, SpeakError> {
    let beats: Vec<u64> = (1..)
        .map(|n| f64::from(n) * beat_s)
        .take_while(|at_s| *at_s < LENGTH_S)
        .map(|at_s| (at_s * f64::from(RATE_HZ)).round() as u64)
        .collect();
    let mut mixer = Mixer::new(RATE_HZ);
    let mut events = Vec::with_capacity(4 * beats.len());
    let mut sound = vec![0.0f32; (LENGTH_S + 1.0) as usize * RATE_HZ as usize];
    let mut next = 0;
    let start = Instant::now();
    for block in sound.chunks_mut(RATE_HZ as usize / 100) {
        while next < beats.len() && beats[next] < mixer.frame() + u64::from(RATE_HZ) / 2 {
            mixer.at(LineId(next as u64), counts[next % counts.len()].clone(), beats[next])?;
            next += 1;
        }
        mixer.next_block(block, &mut events);
    }
    let speed = (LENGTH_S + 1.0) / start.elapsed().as_secs_f64();

    let mut worst_begin = 0i64;
    for event in &events {
        if let MixEvent::Began { id, frame } = event {
            let error = *frame as i64 - beats[id.0 as usize] as i64;
            worst_begin = if error.abs() > worst_begin.abs() { error } else { worst_begin };
        }
    }
    // What is heard before the end of the count before is that one.
    let mut ends = vec![0u64; beats.len()];
    for event in &events {
        if let MixEvent::Ended { id, frame } = event {
            ends[id.0 as usize] = *frame;
        }
    }
    let heard_ms: Vec<f64> = beats
        .iter()
        .enumerate()
        .map(|(n, &beat)| {
            let from = if n == 0 { 0 } else { ends[n - 1] as usize };
            let heard = sound[from..].iter().position(|x| x.abs() > HEARD).map_or(f64::INFINITY, |i| (from + i) as f64);
            (heard - beat as f64) / f64::from(RATE_HZ) * 1e3
        })
        .collect();
    let mean = heard_ms.iter().sum::<f64>() / heard_ms.len() as f64;
    let worst = heard_ms.iter().copied().fold(0.0, |w: f64, e| if e.abs() > w.abs() { e } else { w });
    println!("{beat_s} | {} | {worst_begin} | {mean:.2} | {worst:.2} | {speed:.0}", beats.len());
    Ok(Off { begin_frames: worst_begin.unsigned_abs() as f64, heard_mean_ms: mean.abs(), heard_worst_ms: worst.abs() })
}
