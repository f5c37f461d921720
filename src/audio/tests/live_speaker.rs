use super::*;
use crate::callback::play;
use made_up_device::{Kind, MadeUp, RATE_HZ, Side, faults, lock};
use ringbuf::HeapCons;

#[path = "made_up_device.rs"]
mod made_up_device;

struct SpeakerSide;

impl Side for SpeakerSide {
    type Ring = HeapProd<f32>;
    type Other = HeapCons<f32>;

    fn rings() -> (Self::Ring, Self::Other) {
        HeapRb::new((RING_S * f64::from(RATE_HZ)) as usize).split()
    }

    fn serve(ring: &mut Self::Other, frames: usize, shared: &Shared) {
        let before = shared.frames.load(Relaxed);
        play(&mut vec![0.0_f32; frames], 1, ring, shared);
        shared.frames.store(before, Relaxed);
    }
}

/// The same of a loudspeaker; one that slept goes on, and nothing is to be told.
#[test]
fn faults_of_a_loudspeaker_are_noticed_in_time_and_heal_by_themselves() {
    for seed in 10..15 {
        let planned = faults(seed, 200);
        let (port, stream, world) = MadeUp::<SpeakerSide>::new(planned.clone());
        let mut speaker = Keeper::new("made up", port, stream);
        speaker.outlasts = true;
        let end = planned.last().map_or(Duration::ZERO, |last| last.at + last.length) + Duration::from_secs(10);
        let mut noticed = Vec::new();
        let mut there = Vec::new();
        let mut was_away = false;
        while lock(&world).now < end {
            lock(&world).pass(Duration::from_millis(10));
            speaker.write(&[0.5; RATE_HZ as usize / 100]).expect("it never gives up");
            let now = lock(&world).now;
            let away = speaker.away.is_some();
            if away && !was_away {
                noticed.push(now);
            }
            if !away {
                there.push(now);
            }
            was_away = away;
        }
        for (n, fault) in planned.iter().enumerate() {
            let until = planned.get(n + 1).map_or(end, |next| next.at);
            let notices: Vec<_> = noticed.iter().filter(|at| (fault.at..until).contains(at)).collect();
            if fault.kind != Kind::Suspended {
                assert_eq!(notices.len(), 1, "seed {seed}: {fault:?}");
                assert!(*notices[0] <= fault.at + Duration::from_secs(2), "seed {seed}: {fault:?} was noticed at {notices:?}");
            }
            let healed = fault.at + fault.length + Duration::from_secs(2);
            assert!(there.iter().any(|at| (healed..until).contains(at)), "seed {seed}: {fault:?} does not heal");
        }
    }
}

/// The program stands still now and then, and catches up at once: what is said of each block adds up to what the device played.
#[test]
fn what_is_sent_is_what_the_device_plays() {
    let (port, stream, world) = MadeUp::<SpeakerSide>::new(Vec::new());
    let shared = Arc::clone(&stream.shared);
    let mut speaker = Keeper::new("made up", port, stream);
    let (mut sent_frames, mut taken_before, mut left_out, mut silence) = (0, 0, 0, 0);
    for n in 0..3_000_u32 {
        lock(&world).pass(Duration::from_millis(10));
        if n % 500 < 40 {
            continue;
        }
        let due = if n % 500 == 40 { 41 } else { 1 };
        // It says something, and then nothing for a while.
        let level = if n % 500 < 250 { 0.5 } else { 0.0 };
        for _ in 0..due {
            let at = shared.frames.load(Relaxed);
            speaker.write(&[level; RATE_HZ as usize / 100]).expect("it is there");
            let sent = speaker.sent;
            if sent.anew {
                assert_eq!(sent_frames, 0, "it began once");
                taken_before = at;
            }
            sent_frames += sent.silence_before + sent.kept;
            left_out += usize::from(sent.kept == 0);
            silence += sent.silence_before;
        }
        let waiting = speaker.stream.as_ref().map_or(0, |stream| stream.ring.occupied_len());
        assert_eq!(sent_frames as u64, shared.frames.load(Relaxed) - taken_before + waiting as u64, "at {n}");
    }
    assert!(left_out > 0 && silence > RATE_HZ as usize / 10, "{left_out} blocks left out, {silence} frames of silence");
}
