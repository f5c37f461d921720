//! Counts of the real default voice on the beat, over minutes.

use crate::{EspeakOptions, EspeakVoice, LineCache, MixEvent, Mixer, Pcm, Words, active_level_dbfs};
use session::{Arg, Line, LineId};

const RATE_HZ: u32 = 48_000;

/// What the issue promises: a count is heard within so long of its beat, s.
const BEAT_ERROR_S: f64 = 0.020;
/// A listener's onset, set apart from the trimming's own threshold: -40 dBFS, 20 dB under the level of a line.
const HEARD: f32 = 0.01;

fn counts() -> Vec<Pcm> {
    let words = Words::english().unwrap();
    let mut voice = EspeakVoice::new(EspeakOptions::default()).expect("espeak-ng is a package of ./setup.sh");
    let mut cache = LineCache::new(None, RATE_HZ);
    (1..=60)
        .map(|n| {
            let text = words.text(&Line { key: "count".into(), args: vec![("n", Arg::Number(f64::from(n)))] }).unwrap();
            cache.line(&mut voice, &text).unwrap()
        })
        .collect()
}

#[test]
fn counts_begin_on_the_beat_over_five_minutes_and_are_equally_loud() {
    let counts = counts();
    for beat_s in [1.0, 1.2] {
        let beats: Vec<u64> = (1..)
            .map(|n| f64::from(n) * beat_s)
            .take_while(|at_s| *at_s < 300.0)
            .map(|at_s| (at_s * f64::from(RATE_HZ)).round() as u64)
            .collect();
        let (mut mixer, mut events, mut sound) = (Mixer::new(RATE_HZ), Vec::new(), vec![0.0f32; 301 * RATE_HZ as usize]);
        let mut next = 0;
        for block in sound.chunks_mut(RATE_HZ as usize / 100) {
            // As live: each count is scheduled a little ahead, not all at the start.
            while beats.get(next).is_some_and(|&beat| beat < mixer.frame() + u64::from(RATE_HZ) / 2) {
                mixer.at(LineId(next as u64), counts[next % 60].clone(), beats[next]).unwrap();
                next += 1;
            }
            mixer.next_block(block, &mut events);
        }
        let mut worst_s = 0.0f64;
        for (n, &beat) in beats.iter().enumerate() {
            let began = events.iter().find_map(|event| match event {
                MixEvent::Began { id, frame } if id.0 == n as u64 => Some(*frame),
                _ => None,
            });
            assert_eq!(began, Some(beat));
            // From the end of the count before: nothing is heard until this one begins.
            let from = beat - u64::from(RATE_HZ) / 20;
            let heard = sound[from as usize..].iter().position(|x| x.abs() > HEARD).unwrap() as u64 + from;
            let error_s = (heard as f64 - beat as f64) / f64::from(RATE_HZ);
            worst_s = if error_s.abs() > worst_s.abs() { error_s } else { worst_s };
            assert!(error_s.abs() <= BEAT_ERROR_S, "count {} is heard {error_s:.4} s from its beat", n % 60 + 1);
        }
        println!("beat {beat_s} s: {} counts, worst {worst_s:.4} s", beats.len());
    }
    let mut loudest_dbfs = Vec::new();
    for (n, count) in counts.iter().enumerate() {
        let level = active_level_dbfs(&count.samples, RATE_HZ).unwrap();
        assert!((level - crate::ACTIVE_LEVEL_DBFS).abs() < 0.5, "count {}: {level:.2} dBFS", n + 1);
        // Another measure than the one it is made by: the loudest 100 ms, RMS.
        let window = RATE_HZ as usize / 10;
        let loudest = count
            .samples
            .windows(window.min(count.samples.len()))
            .step_by(window / 10)
            .map(|w| (w.iter().map(|x| f64::from(*x).powi(2)).sum::<f64>() / w.len() as f64).sqrt())
            .fold(0.0, f64::max);
        loudest_dbfs.push(20.0 * loudest.log10());
        let peak = count.samples.iter().fold(0.0f32, |p, x| p.max(x.abs()));
        assert!(20.0 * peak.log10() <= -1.0, "count {}: peak {peak}", n + 1);
    }
    let softest = loudest_dbfs.iter().copied().fold(0.0, f64::min);
    let loudest = loudest_dbfs.iter().copied().fold(-100.0, f64::max);
    println!("loudest 100 ms of each count: {softest:.1} to {loudest:.1} dBFS");
    assert!(loudest - softest < 6.0, "{loudest_dbfs:.1?}");
}
