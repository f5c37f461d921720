//! The mixer on made-up lines: every frame is known beforehand.

use crate::{MixEvent, Mixer, Pcm};
use MixEvent::{Began, Ended};
use proptest::prelude::*;
use session::LineId;

const RATE_HZ: u32 = 48_000;
const BLOCK: usize = 480;

fn line(frames: usize, value: f32) -> Pcm {
    Pcm { rate_hz: RATE_HZ, samples: vec![value; frames].into() }
}

/// A sine, so that a jump in it is a click and its own slope is known.
fn tone(frames: usize) -> Pcm {
    let samples = (0..frames).map(|i| 0.5 * (i as f32 * 0.02).sin()).collect();
    Pcm { rate_hz: RATE_HZ, samples }
}

fn play(mixer: &mut Mixer, blocks: usize) -> (Vec<f32>, Vec<MixEvent>) {
    let (mut sound, mut events) = (vec![0.0; blocks * BLOCK], Vec::new());
    for block in sound.chunks_mut(BLOCK) {
        mixer.next_block(block, &mut events);
    }
    (sound, events)
}

fn id(n: u64) -> LineId {
    LineId(n)
}

/// Largest step from sample to sample.
fn largest_step(sound: &[f32]) -> f32 {
    sound.windows(2).map(|pair| (pair[1] - pair[0]).abs()).fold(0.0, f32::max)
}

#[test]
fn a_line_is_played_sample_for_sample_from_exactly_its_frame() {
    for start in [0usize, 1, 479, 480, 12_345] {
        let (mut mixer, pcm) = (Mixer::new(RATE_HZ), tone(5000));
        mixer.at(id(1), pcm.clone(), start as u64).unwrap();
        let (sound, events) = play(&mut mixer, 40);
        assert_eq!(sound[start..start + 5000], pcm.samples[..]);
        assert!(sound[..start].iter().chain(&sound[start + 5000..]).all(|&x| x == 0.0));
        let (start, end) = (start as u64, start as u64 + 5000);
        assert_eq!(events, [Began { id: id(1), frame: start }, Ended { id: id(1), frame: end }]);
        assert!(mixer.is_idle());
    }
}

#[test]
fn queued_lines_follow_each_other_after_a_gap() {
    let mut mixer = Mixer::new(RATE_HZ);
    for n in 1..=3 {
        mixer.queue(id(n), line(1000, 0.1)).unwrap();
    }
    let (_, events) = play(&mut mixer, 60);
    let gap = 9600;
    let expected: Vec<MixEvent> = (0..3)
        .flat_map(|n| {
            let frame = n * (1000 + gap);
            [Began { id: id(n + 1), frame }, Ended { id: id(n + 1), frame: frame + 1000 }]
        })
        .collect();
    assert_eq!(events, expected);
}

#[test]
fn a_line_scheduled_in_the_past_begins_at_once_and_shows_it() {
    let mut mixer = Mixer::new(RATE_HZ);
    play(&mut mixer, 10);
    mixer.at(id(1), line(100, 0.1), 17).unwrap();
    assert_eq!(play(&mut mixer, 1).1.first(), Some(&Began { id: id(1), frame: 4800 }));
}

#[test]
fn the_beat_wins_over_a_queued_line_which_is_silent_by_then() {
    let mut mixer = Mixer::new(RATE_HZ);
    mixer.queue(id(1), tone(100_000)).unwrap();
    mixer.queue(id(2), line(1000, 0.1)).unwrap();
    mixer.at(id(3), line(2000, 0.1), 48_000).unwrap();
    let (sound, events) = play(&mut mixer, 200);
    assert_eq!(
        events,
        [
            Began { id: id(1), frame: 0 },
            Ended { id: id(1), frame: 48_000 },
            Began { id: id(3), frame: 48_000 },
            Ended { id: id(3), frame: 50_000 },
            Began { id: id(2), frame: 59_600 },
            Ended { id: id(2), frame: 60_600 },
        ]
    );
    assert!(sound[48_000..50_000].iter().all(|&x| x == 0.1), "nothing of the cut line is under the count");
    // The slope of the tone itself is 0.01; a cut without a fade would step by up to 0.5.
    assert!(largest_step(&sound[..48_000]) < 0.012, "{}", largest_step(&sound[..48_000]));
}

#[test]
fn a_queued_line_does_not_begin_just_before_a_beat_unless_it_fits() {
    let mut mixer = Mixer::new(RATE_HZ);
    mixer.at(id(1), line(1000, 0.1), 8000).unwrap();
    mixer.queue(id(2), line(50_000, 0.1)).unwrap();
    let (_, events) = play(&mut mixer, 200);
    assert_eq!(events[0], Began { id: id(1), frame: 8000 });
    assert_eq!(events[2], Began { id: id(2), frame: 9000 + 9600 });

    let mut mixer = Mixer::new(RATE_HZ);
    mixer.at(id(1), line(1000, 0.1), 8000).unwrap();
    mixer.queue(id(2), line(7000, 0.1)).unwrap();
    let (_, events) = play(&mut mixer, 50);
    assert_eq!(events[..2], [Began { id: id(2), frame: 0 }, Ended { id: id(2), frame: 7000 }]);
}

#[test]
fn a_late_beat_still_cuts_and_a_second_count_cuts_the_first() {
    let mut mixer = Mixer::new(RATE_HZ);
    mixer.queue(id(1), line(50_000, 0.1)).unwrap();
    play(&mut mixer, 10);
    mixer.at(id(2), line(20_000, 0.1), 4800).unwrap();
    mixer.at(id(3), line(2_000, 0.1), 9600).unwrap();
    let (_, events) = play(&mut mixer, 100);
    assert_eq!(
        events,
        [
            Began { id: id(2), frame: 4800 },
            Ended { id: id(1), frame: 4800 + 720 },
            Ended { id: id(2), frame: 9600 },
            Began { id: id(3), frame: 9600 },
            Ended { id: id(3), frame: 11_600 },
        ]
    );
}

#[test]
fn hush_is_silent_within_10_ms_without_a_click_and_drops_all() {
    for hushed_after in [1usize, 3, 17] {
        let mut mixer = Mixer::new(RATE_HZ);
        mixer.queue(id(1), tone(100_000)).unwrap();
        mixer.queue(id(2), tone(1000)).unwrap();
        mixer.at(id(3), tone(1000), 90_000).unwrap();
        let (mut sound, _) = play(&mut mixer, hushed_after);
        mixer.hush();
        let (after, events) = play(&mut mixer, 300);
        assert!(after[480..].iter().all(|&x| x == 0.0), "10 ms after a hush there is sound");
        let loudest = after[..480].iter().fold(0.0f32, |most, x| most.max(x.abs()));
        assert!(loudest > 0.0, "cut off hard");
        sound.extend(after);
        assert!(largest_step(&sound) < 0.012, "{}", largest_step(&sound));
        let ended: Vec<LineId> = events.iter().map(|e| if let Ended { id, .. } = e { *id } else { panic!("{e:?}") }).collect();
        assert_eq!(ended, [id(2), id(3), id(1)]);
        assert!(mixer.is_idle());
    }
}

#[test]
fn after_a_hush_the_next_line_is_whole() {
    let mut mixer = Mixer::new(RATE_HZ);
    mixer.queue(id(1), tone(10_000)).unwrap();
    play(&mut mixer, 2);
    mixer.hush();
    let pcm = tone(4000);
    mixer.queue(id(2), pcm.clone()).unwrap();
    let (sound, events) = play(&mut mixer, 40);
    let begin = events.iter().find_map(|e| if let Began { id: LineId(2), frame } = e { Some(*frame) } else { None }).unwrap();
    let begin = (begin - 960) as usize;
    assert_eq!(sound[begin..begin + 4000], pcm.samples[..]);
}

#[test]
fn volume_changes_without_a_click_and_nothing_ever_clips() {
    let mut mixer = Mixer::new(RATE_HZ);
    mixer.queue(id(1), tone(48_000)).unwrap();
    let (mut sound, _) = play(&mut mixer, 20);
    mixer.set_gain_db(-12.0);
    let (after, _) = play(&mut mixer, 50);
    let loudest = after[9600..].iter().fold(0.0f32, |most, x| most.max(x.abs()));
    assert!((20.0 * (loudest / 0.5).log10() + 12.0).abs() < 0.1, "-12 dB is a quarter: {loudest}");
    sound.extend(after);
    assert!(largest_step(&sound) < 0.012);

    for (gain, level) in [(12.0, 0.9), (400.0, 1.0), (f64::NAN, 1.0)] {
        mixer.set_gain_db(gain);
        assert!(mixer.gain_db() <= 12.0);
        for n in 0..4 {
            mixer.at(id(n), line(2000, level), mixer.frame()).unwrap();
        }
        let (loud, _) = play(&mut mixer, 20);
        assert!(loud.iter().all(|x| x.abs() < 0.9), "clipped");
    }
}

#[test]
fn a_line_of_another_rate_or_without_samples_does_no_harm() {
    let mut mixer = Mixer::new(RATE_HZ);
    let other = Pcm { rate_hz: 22_050, samples: vec![0.1; 10].into() };
    assert!(mixer.queue(id(1), other.clone()).unwrap_err().0.contains("22050"));
    assert!(mixer.at(id(1), other, 5).is_err());
    mixer.queue(id(2), line(0, 0.0)).unwrap();
    mixer.at(id(3), line(0, 0.0), 100).unwrap();
    let (_, events) = play(&mut mixer, 2);
    assert_eq!(events.len(), 4);
}

proptest! {
    /// Whatever is asked for in whatever order: each line ends once, after it began; blocks of any size give the same.
    #[test]
    fn every_line_ends_once_and_block_size_does_not_matter(
        asks in proptest::collection::vec((0u8..8, 1usize..4000, 0u64..30_000), 1..25),
    ) {
        let run = |block: usize| {
            let mut mixer = Mixer::new(8_000);
            let (mut events, mut sound) = (Vec::new(), Vec::new());
            for (n, &(what, frames, start)) in asks.iter().enumerate() {
                let samples = (0..frames).map(|i| (i as f32 * 0.05).sin() * 0.3).collect();
                let pcm = Pcm { rate_hz: 8_000, samples };
                match what {
                    0..=2 => mixer.queue(LineId(n as u64), pcm).unwrap(),
                    3..=5 => mixer.at(LineId(n as u64), pcm, start).unwrap(),
                    6 => mixer.hush(),
                    _ => mixer.set_gain_db(start as f64 / 3000.0 - 5.0),
                }
                // The same 800 frames between two asks, whatever the block.
                let mut part = vec![0.0; 800];
                part.chunks_mut(block).for_each(|b| mixer.next_block(b, &mut events));
                sound.extend(part);
            }
            for _ in 0..400 {
                let mut part = vec![0.0; 800];
                part.chunks_mut(block).for_each(|b| mixer.next_block(b, &mut events));
                sound.extend(part);
            }
            (events, sound, mixer.is_idle())
        };
        let (events, sound, idle) = run(80);
        prop_assert!(idle);
        prop_assert!(sound.iter().all(|x| x.abs() < 0.9));
        for (n, &(what, ..)) in asks.iter().enumerate() {
            let of = |e: &&MixEvent| matches!(e, Began { id, .. } | Ended { id, .. } if id.0 == n as u64);
            let mine: Vec<&MixEvent> = events.iter().filter(of).collect();
            let ended = mine.iter().filter(|e| matches!(e, Ended { .. })).count();
            let ends_last = mine.last().is_none_or(|e| matches!(e, Ended { .. }));
            prop_assert_eq!(ended, usize::from(what <= 5));
            prop_assert!(mine.len() <= 2 && ends_last);
        }
        let frames: Vec<u64> = events.iter().map(|e| match e { Began { frame, .. } | Ended { frame, .. } => *frame }).collect();
        prop_assert!(frames.is_sorted());
        let other = run(7);
        prop_assert_eq!(events, other.0);
        prop_assert!(sound.iter().zip(&other.1).all(|(a, b)| (a - b).abs() < 1e-6));
    }
}

#[test]
fn whoever_speaks_over_a_line_makes_it_12_db_softer_within_60_ms_and_a_line_on_a_beat_stays() {
    let mut mixer = Mixer::new(RATE_HZ);
    mixer.queue(id(1), tone(5 * RATE_HZ as usize)).unwrap();
    let level_db = |sound: &[f32]| 10.0 * (sound.iter().map(|x| x * x).sum::<f32>() / sound.len() as f32).log10();
    let (before, _) = play(&mut mixer, 20);
    mixer.duck(true);
    let (falls, _) = play(&mut mixer, 6);
    let (ducked, _) = play(&mut mixer, 20);
    mixer.duck(false);
    let (rises, _) = play(&mut mixer, 70);
    let (after, events) = play(&mut mixer, 20);
    assert!((level_db(&before) - level_db(&ducked) - 12.0).abs() < 0.2, "{} {}", level_db(&before), level_db(&ducked));
    let fallen_db = level_db(&before) - level_db(&falls[5 * BLOCK..]);
    assert!(fallen_db > 9.0, "{fallen_db}");
    assert!((level_db(&after) - level_db(&before)).abs() < 0.2 && events.is_empty());
    let slope = largest_step(&before);
    assert!(largest_step(&falls) <= slope * 1.01 && largest_step(&rises) <= slope * 1.01, "no click");

    let (mut mixer, pcm) = (Mixer::new(RATE_HZ), tone(5000));
    mixer.at(id(1), pcm.clone(), 0).unwrap();
    mixer.duck(true);
    assert_eq!(play(&mut mixer, 20).0[..5000], pcm.samples[..], "a count stays clear");
}
