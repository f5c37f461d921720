//! What is a hold and what is none.

use super::rates::only_hold;
use super::synth::{AH, EE, Noise, OO, Vowel};
use crate::voice_file::FILE_SETTINGS;
use crate::{HoldSettings, VoiceEar, VoiceEvent, VoiceOutput, VoiceTask, analyse_voice};

const RATE: u32 = 16_000;

fn seconds(s: f64) -> usize {
    (s * f64::from(RATE)) as usize
}

/// Holds found in portions with or without our own playback over them.
fn heard(portions: &[(&[f32], bool)], settings: HoldSettings) -> Vec<VoiceEvent> {
    let mut ear = VoiceEar::new(RATE);
    ear.set_task(VoiceTask::Hold(settings));
    let mut events = Vec::new();
    let mut keep = |output| {
        if let VoiceOutput::Event(event) = output {
            events.push(event);
        }
    };
    for (samples, masked) in portions {
        ear.push(samples, *masked, &mut keep);
    }
    ear.finish(&mut keep);
    events
}

fn offsets(events: &[VoiceEvent]) -> Vec<crate::Held> {
    events.iter().filter_map(|e| if let VoiceEvent::Offset(h) = e { Some(h.clone()) } else { None }).collect()
}

#[test]
fn soft_breathy_noisy_and_fading_vowels_are_timed() {
    // Aims of the project: 30 ms in quiet, 120 ms at 10 dB signal to noise.
    let cases = [
        ("soft", Vowel { level_db: -50.0, room_db: -75.0, ..Vowel::default() }, 0.03),
        ("breathy", Vowel { breath: 0.5, ..Vowel::default() }, 0.03),
        ("at 20 dB", Vowel { room_db: -46.0, ..Vowel::default() }, 0.03),
        ("at 10 dB", Vowel { room_db: -36.0, ..Vowel::default() }, 0.12),
        ("high ee", Vowel { formants: EE, f0_hz: |_| 700.0, ..Vowel::default() }, 0.03),
        ("vibrato", Vowel { f0_hz: |t| 200.0 * 2f64.powf((t * 5.5 * std::f64::consts::TAU).sin() / 24.0), ..Vowel::default() }, 0.03),
        ("from the first sample", Vowel { onset_s: 0.0, offset_s: 2.0, total_s: 3.0, ..Vowel::default() }, 0.03),
        ("to the last sample", Vowel { onset_s: 1.0, offset_s: 3.6, ..Vowel::default() }, 0.03),
    ];
    for (what, vowel, limit_s) in cases {
        let hold = only_hold(&vowel, RATE, what);
        assert!((hold.onset_s - vowel.onset_s).abs() < limit_s, "{what}: {hold:?}");
        assert!((hold.offset_s - vowel.offset_s).abs() < limit_s, "{what}: {hold:?}");
        assert!((1200.0 * (hold.f0_median_hz / (vowel.f0_hz)(0.0)).log2()).abs() < 20.0, "{what}: {hold:?}");
    }
}

#[test]
fn a_minute_is_not_swallowed_by_the_room() {
    let vowel = Vowel { offset_s: 60.7, total_s: 61.5, level_db: -45.0, room_db: -65.0, ..Vowel::default() };
    let hold = only_hold(&vowel, RATE, "a minute");
    assert!((hold.duration_s - 60.0).abs() < 0.03, "{hold:?}");
}

#[test]
fn fall_and_span_are_measured() {
    let steady = Vowel { offset_s: 4.7, total_s: 5.5, ..Vowel::default() };
    let mut sound = steady.sound(RATE);
    for (k, x) in sound.iter_mut().enumerate() {
        // 3 dB a second from the onset on.
        *x *= 10f32.powf(-(k as f32 / RATE as f32 - 0.7).max(0.0) * 3.0 / 20.0);
    }
    let (_, holds) = analyse_voice(&sound, RATE);
    assert_eq!(holds.len(), 1);
    assert!((holds[0].level_slope_db_per_s + 3.0).abs() < 0.2, "{:?}", holds[0]);
    assert!((holds[0].level_fall_db - 12.0).abs() < 0.8, "{:?}", holds[0]);
    // An octave up in three seconds, evenly in semitones: 5 % to 95 % of it are 10.8 semitones.
    let glide = Vowel { offset_s: 3.7, total_s: 4.5, f0_hz: |t| 110.0 * 2f64.powf(t / 3.0), jitter: 0.0, ..Vowel::default() };
    let events = heard(&[(&glide.sound(RATE), false)], HoldSettings { glide: true, ..FILE_SETTINGS });
    let holds = offsets(&events);
    assert_eq!(holds.len(), 1);
    assert!((holds[0].f0_span_st - 10.8).abs() < 0.4, "{:?}", holds[0]);
}

#[test]
fn short_breaks_are_bridged_and_long_ones_end() {
    let mut sound = Vowel { offset_s: 4.7, total_s: 5.5, ..Vowel::default() }.sound(RATE);
    sound[seconds(2.5)..seconds(2.7)].fill(0.0);
    let (_, holds) = analyse_voice(&sound, RATE);
    assert_eq!(holds.len(), 1, "{holds:?}");
    assert_eq!(holds[0].breaks, 1);
    assert!((holds[0].duration_s - 4.0).abs() < 0.03);
    sound[seconds(2.5)..seconds(3.0)].fill(0.0);
    let (_, holds) = analyse_voice(&sound, RATE);
    assert_eq!(holds.len(), 2, "{holds:?}");
    assert!((holds[0].offset_s - 2.5).abs() < 0.03 && (holds[1].onset_s - 3.0).abs() < 0.03, "{holds:?}");
}

#[test]
fn coughs_breath_words_and_silence_start_nothing() {
    let mut noise = Noise(7);
    // Breath: noise that swells and ebbs.
    let breath: Vec<f32> =
        (0..seconds(3.0)).map(|k| (0.1 * noise.next() * (k as f64 / f64::from(RATE) * 1.05).sin().abs()) as f32).collect();
    // Coughs: bursts of 0.25 s with a short voiced end.
    let mut cough = vec![0f32; seconds(4.0)];
    let voice = Vowel { onset_s: 0.0, offset_s: 0.3, total_s: 0.3, f0_hz: |t| 300.0 - 400.0 * t, ..Vowel::default() }.sound(RATE);
    for start_s in [0.5, 1.2, 1.9, 2.6] {
        let from = seconds(start_s);
        for k in 0..seconds(0.2) {
            cough[from + k] += (0.3 * noise.next() * (-(k as f64) / 1500.0).exp()) as f32;
        }
        cough[from + seconds(0.1)..][..voice.len()].iter_mut().zip(&voice).for_each(|(c, v)| *c += v);
    }
    // A sentence voiced throughout: the vowel changes every 0.18 s.
    let mut sentence = Vec::new();
    for k in 0..14 {
        let formants = [AH, EE, OO][k % 3];
        let part = Vowel { formants, onset_s: 0.0, offset_s: 0.18, total_s: 0.18, f0_hz: |_| 130.0, ..Vowel::default() };
        sentence.extend(part.sound(RATE));
    }
    let word = Vowel { offset_s: 1.2, ..Vowel::default() }.sound(RATE);
    for (what, sound) in
        [("breath", breath), ("cough", cough), ("sentence", sentence), ("word", word), ("silence", vec![0.0; seconds(3.0)])]
    {
        let (frames, holds) = analyse_voice(&sound, RATE);
        assert!(holds.is_empty(), "{what}: {holds:?}");
        assert!(frames.iter().all(|f| f.level_db.is_finite() && f.f0_hz.is_finite()), "{what}");
    }
}

#[test]
fn our_own_playback_starts_no_hold_and_ends_none() {
    let sound = Vowel { offset_s: 4.7, total_s: 5.5, ..Vowel::default() }.sound(RATE);
    // All of it under our own playback: nothing.
    assert!(heard(&[(&sound, true)], FILE_SETTINGS).is_empty());
    // Masked at first, the voice goes on after: a hold from its beginning, and what was under ours is told.
    let at = seconds(2.0);
    let holds = offsets(&heard(&[(&sound[..at], true), (&sound[at..], false)], FILE_SETTINGS));
    assert_eq!(holds.len(), 1);
    assert!((holds[0].onset_s - 0.7).abs() < 0.05 && (holds[0].masked_s - 1.3).abs() < 0.06, "{:?}", holds[0]);
    assert!((holds[0].offset_s - 4.7).abs() < 0.03 && holds[0].breaks == 0, "{:?}", holds[0]);
    // A cue in the middle of a hold: one hold, the cue counted as masked.
    let (a, b) = (seconds(2.0), seconds(3.0));
    let holds = offsets(&heard(&[(&sound[..a], false), (&sound[a..b], true), (&sound[b..], false)], FILE_SETTINGS));
    assert_eq!(holds.len(), 1);
    assert!((holds[0].masked_s - 1.0).abs() < 0.06 && (holds[0].duration_s - 4.0).abs() < 0.03, "{:?}", holds[0]);
}

/// The client's vowel, our own talk as the microphone has it until 2.2 s, and the mask that goes on for as long as the room sounds.
fn over_a_reminder(onset_s: f64, ours_db: f64) -> crate::Hold {
    let mut sound = Vowel { onset_s, offset_s: 7.0, total_s: 8.0, f0_hz: |_| 118.0, level_db: -26.0, ..Vowel::default() }.sound(RATE);
    // Words of another voice that passes through the client's pitch.
    for (from_s, to_s, formants) in [(0.5, 0.9, AH), (1.0, 1.3, EE), (1.4, 1.7, OO), (1.8, 2.2, EE)] {
        let word = Vowel {
            onset_s: from_s,
            offset_s: to_s,
            total_s: 8.0,
            f0_hz: |t| 135.0 - 70.0 * t,
            formants,
            level_db: ours_db,
            room_db: -120.0,
            ..Vowel::default()
        };
        sound.iter_mut().zip(word.sound(RATE)).for_each(|(x, ours)| *x += ours);
    }
    let (a, b) = (seconds(0.45), seconds(2.5));
    let holds = offsets(&heard(&[(&sound[..a], false), (&sound[a..b], true), (&sound[b..], false)], FILE_SETTINGS));
    assert_eq!(holds.len(), 1);
    holds[0].hold.clone()
}

#[test]
fn a_vowel_that_begins_under_our_reminder_is_timed_from_its_beginning() {
    for (onset_s, ours_db) in [(0.95, -40.0), (1.35, -34.0), (1.75, -40.0), (2.3, -30.0)] {
        let hold = over_a_reminder(onset_s, ours_db);
        assert!((hold.onset_s - onset_s).abs() < 0.12, "begun at {onset_s} s: {hold:?}");
        assert!((hold.masked_s - (2.5 - onset_s)).abs() < 0.15, "begun at {onset_s} s: {hold:?}");
    }
}

#[test]
fn our_own_words_before_a_vowel_are_no_part_of_it() {
    for ours_db in [-40.0, -26.0] {
        let hold = over_a_reminder(3.0, ours_db);
        assert!((hold.onset_s - 3.0).abs() < 0.03 && hold.masked_s == 0.0, "{hold:?}");
    }
}

#[test]
fn clipping_is_counted() {
    let mut sound = Vowel { level_db: -3.0, ..Vowel::default() }.sound(RATE);
    sound.iter_mut().for_each(|x| *x = x.clamp(-1.0, 1.0));
    let (_, holds) = analyse_voice(&sound, RATE);
    assert_eq!(holds.len(), 1);
    assert!(holds[0].clipped_s > 1.5, "{:?}", holds[0]);
    assert!((holds[0].duration_s - 2.2).abs() < 0.03);
}

#[test]
fn a_sound_that_goes_on_for_ever_is_ended_and_takes_no_more_memory() {
    let rate_hz = 8_000;
    let sound = Vowel { onset_s: 0.5, offset_s: 150.0, total_s: 151.0, ..Vowel::default() }.sound(rate_hz);
    let holds = analyse_voice(&sound, rate_hz).1;
    assert!(holds.len() == 2 && (holds[0].duration_s - 120.0).abs() < 1.0, "{:?}", holds.iter().map(|h| h.duration_s).collect::<Vec<_>>());
}

#[test]
fn a_rough_voice_that_slips_to_its_subharmonic_is_held_still() {
    // Every third period is weaker, then every second: rough voices repeat after two or three periods as well as after one.
    let sound = |every: usize| {
        let period = (f64::from(RATE) / 156.0) as usize;
        let mut sound = vec![0f32; seconds(5.0)];
        let mut noise = Noise(4);
        sound.iter_mut().for_each(|x| *x = 3e-4 * noise.next() as f32);
        for (n, at) in (seconds(1.0)..seconds(4.0)).step_by(period).enumerate() {
            let weight = if n % every == 0 { 0.7 } else { 1.0 };
            for k in 0..4 * period {
                let t_s = k as f64 / f64::from(RATE);
                let ring = [(730.0, 1.0), (1090.0, 0.5), (2440.0, 0.2)]
                    .iter()
                    .map(|(f, a)| a * (f * t_s * std::f64::consts::TAU).sin())
                    .sum::<f64>();
                if let Some(x) = sound.get_mut(at + k) {
                    *x += (0.1 * weight * ring * (-t_s * 300.0).exp()) as f32;
                }
            }
        }
        sound
    };
    for every in [2, 3] {
        let holds = analyse_voice(&sound(every), RATE).1;
        let [hold] = &holds[..] else { panic!("{every}: {} holds", holds.len()) };
        assert!((hold.onset_s - 1.0).abs() < 0.05 && (hold.duration_s - 3.0).abs() < 0.08, "{every}: {} {}", hold.onset_s, hold.duration_s);
    }
}
