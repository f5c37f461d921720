use super::*;
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};

const RATE: usize = 48_000;

fn noise(rng: &mut StdRng, level_db: f64, seconds: f64) -> Vec<f32> {
    let amplitude = (10f64.powf(level_db / 20.0) * 3f64.sqrt()) as f32;
    (0..(seconds * RATE as f64) as usize).map(|_| rng.random_range(-amplitude..amplitude)).collect()
}

/// A buzz of 120 Hz with formant-like roll-off, a fraction breathy.
fn voice(rng: &mut StdRng, level_db: f64, seconds: f64, breath: f32) -> Vec<f32> {
    let mut sound = noise(rng, level_db, seconds);
    let amplitude = 10f64.powf(level_db / 20.0) * 2f64.sqrt();
    for (n, sample) in sound.iter_mut().enumerate() {
        let t = n as f64 / RATE as f64;
        let buzz: f64 = (1..12).map(|k| (std::f64::consts::TAU * 120.0 * f64::from(k) * t).sin() / f64::from(k)).sum::<f64>() / 1.25;
        *sample = breath * *sample + (amplitude * buzz) as f32;
    }
    sound
}

/// Share of the blocks for which the gate was open.
fn share(gate: &mut SpeechGate, sound: &[f32]) -> f64 {
    let blocks: Vec<_> = sound.chunks(RATE / 100).collect();
    blocks.iter().filter(|block| gate.push(block)).count() as f64 / blocks.len() as f64
}

#[test]
fn a_quiet_or_steadily_loud_room_costs_nothing() {
    for floor_db in [-75.0, -60.0, -48.0] {
        let mut gate = SpeechGate::default();
        assert_eq!(share(&mut gate, &noise(&mut StdRng::seed_from_u64(1), floor_db, 20.0)), 0.0, "{floor_db}");
    }
    let mut gate = SpeechGate::default();
    let mut rng = StdRng::seed_from_u64(2);
    share(&mut gate, &noise(&mut rng, -60.0, 3.0));
    assert_eq!(share(&mut gate, &noise(&mut rng, -30.0, 20.0)), 0.0, "water that runs is not voiced");
}

#[test]
fn a_ticking_clock_and_knocks_cost_nothing() {
    let mut rng = StdRng::seed_from_u64(3);
    let mut sound = noise(&mut rng, -65.0, 20.0);
    for second in 0..20 {
        for n in 0..RATE / 25 {
            // A struck plate: 40 ms of a decaying 900 Hz, voiced for the autocorrelation but short.
            let t = n as f64 / RATE as f64;
            sound[second * RATE + n] += (0.5 * (-t * 120.0).exp() * (std::f64::consts::TAU * 900.0 * t).sin()) as f32;
        }
    }
    assert_eq!(share(&mut SpeechGate::default(), &sound), 0.0);
}

#[test]
fn a_voice_opens_it_soon_also_a_soft_breathy_one_and_it_closes_after_a_second() {
    for (level_db, breath) in [(-30.0, 0.1), (-50.0, 0.1), (-50.0, 0.7)] {
        let mut gate = SpeechGate::default();
        let mut rng = StdRng::seed_from_u64(4);
        assert_eq!(share(&mut gate, &noise(&mut rng, -62.0, 5.0)), 0.0);
        assert!(share(&mut gate, &voice(&mut rng, level_db, 0.5, breath)) > 0.7, "{level_db} {breath}: open within 0.15 s");
        assert!(gate.talks());
        let after = share(&mut gate, &noise(&mut rng, -62.0, 3.0));
        assert!((after * 3.0 - CLOSES_S).abs() < 0.1, "{after}");
        assert!(!gate.talks());
    }
}

#[test]
fn what_is_no_number_does_no_harm() {
    let mut gate = SpeechGate::default();
    let mut rng = StdRng::seed_from_u64(5);
    for bad in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY, 1e30] {
        gate.push(&[bad; 480]);
    }
    gate.push(&[]);
    share(&mut gate, &noise(&mut rng, -62.0, 40.0));
    assert!(share(&mut gate, &voice(&mut rng, -40.0, 0.5, 0.1)) > 0.7);
}
