use super::*;
use crate::callback::capture;
use made_up_device::{Fault, Kind, MadeUp, RATE_HZ, Side, faults, lock};
use ringbuf::HeapProd;

#[path = "made_up_device.rs"]
mod made_up_device;

struct MicSide;

impl Side for MicSide {
    type Ring = HeapCons<f32>;
    type Other = (HeapProd<f32>, u64);

    fn rings() -> (Self::Ring, Self::Other) {
        let (tx, rx) = HeapRb::new((RATE_HZ * RING_S) as usize).split();
        (rx, (tx, 0))
    }

    fn serve((ring, pushed): &mut Self::Other, frames: usize, shared: &crate::callback::Shared) {
        let before = shared.frames.load(Relaxed);
        capture(&vec![0.25_f32; frames], 1, pushed, ring, shared);
        shared.frames.store(before, Relaxed);
    }
}

/// Two hundred faults of all kinds: each is noticed within 2 s, and once; time stays in step; it hears again after each.
#[test]
fn faults_of_a_microphone_are_noticed_in_time_and_heal_by_themselves() {
    for seed in 0..5 {
        let planned = faults(seed, 200);
        let (port, stream, world) = MadeUp::<MicSide>::new(planned.clone());
        let mut mic = Keeper::new("made up", port, stream);
        mic.outlasts = true;
        let end = planned.last().map_or(Duration::ZERO, |last| last.at + last.length) + Duration::from_secs(10);
        let mut block = [0.0; RATE_HZ as usize / 100];
        let (mut noticed, mut heard, mut frames) = (Vec::new(), Vec::new(), 0_u64);
        let mut was_away = false;
        while lock(&world).now < end {
            let captured = mic.read(&mut block).expect("it never gives up");
            let now = lock(&world).now;
            frames += block.len() as u64 + captured.lost_frames;
            if (captured.away || captured.lost_frames > 0) && !was_away {
                noticed.push(now);
            }
            if captured.away {
                assert!(block.iter().all(|x| *x == 0.0), "silence in its place");
            } else {
                assert!(block.iter().all(|x| *x == 0.25), "what it says is its own: {seed}, {now:?}");
                heard.push(now);
            }
            was_away = captured.away;
        }
        for (n, fault) in planned.iter().enumerate() {
            let until = planned.get(n + 1).map_or(end, |next| next.at);
            let notices = noticed.iter().filter(|at| (fault.at..until).contains(at)).count();
            let first = noticed.iter().find(|at| **at >= fault.at).copied().unwrap_or(Duration::MAX);
            // Whoever is suspended notices nothing before it is over.
            let from = if fault.kind == Kind::Suspended { fault.at + fault.length } else { fault.at };
            assert!(first <= from + Duration::from_secs(2), "seed {seed}: {fault:?} was noticed at {first:?}");
            assert_eq!(notices, 1, "seed {seed}: {fault:?} is told once, not at {noticed:?}");
            let healed = fault.at + fault.length + Duration::from_secs(2);
            assert!(heard.iter().any(|at| (healed..until).contains(at)), "seed {seed}: {fault:?} does not heal");
        }
        let off_s = frames as f64 / f64::from(RATE_HZ) - end.as_secs_f64();
        assert!(off_s.abs() < 0.3, "seed {seed}: the sample clock is {off_s} s off after {end:?}");
    }
}

#[test]
fn whoever_cannot_wait_is_told_that_it_does_not_come_back() {
    let pulled = Fault { at: Duration::from_secs(1), length: Duration::from_secs(60), kind: Kind::Pulled };
    let (port, stream, world) = MadeUp::<MicSide>::new(vec![pulled]);
    let mut mic = Keeper::new("made up", port, stream);
    let mut block = [0.0; RATE_HZ as usize / 100];
    let why = loop {
        match mic.read(&mut block) {
            Ok(captured) => assert!(!captured.away),
            Err(why) => break why.to_string(),
        }
    };
    assert!(why.contains("\"made up\"") && why.contains("within 5 s: it is not there"), "{why}");
    let now = lock(&world).now;
    assert!(now > Duration::from_secs(6) && now < Duration::from_secs(8), "{now:?}");
}
