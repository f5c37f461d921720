//! The bodies of the device callbacks. They touch a ring and atomics: no allocation, lock, log or system call.

use cpal::{FromSample, Sample};
use ringbuf::traits::{Consumer, Producer};
use std::sync::atomic::{AtomicBool, AtomicU32, AtomicU64, Ordering::Relaxed, Ordering::SeqCst};

/// No frame is missing in the ring.
const NO_GAP: u64 = u64::MAX;

/// What the callbacks of one stream tell the sound thread.
#[derive(Debug)]
pub(super) struct Shared {
    /// Frames that the device delivered or took.
    pub frames: AtomicU64,
    pub callbacks: AtomicU64,
    pub smallest: AtomicU32,
    pub largest: AtomicU32,
    /// Microphone: frames before the gap in the ring, or [`NO_GAP`].
    gap_after: AtomicU64,
    gap_frames: AtomicU64,
    /// Loudspeaker: frames played as silence for want of better.
    pub starved: AtomicU64,
    /// Loudspeaker: from the callback to the sounding of its first frame, µs, as the sound system says.
    pub latency_us: AtomicU32,
    pub xruns: AtomicU64,
    pub errors: AtomicU64,
    /// The stream is dead and must be built anew.
    pub dead: AtomicBool,
}

impl Default for Shared {
    fn default() -> Self {
        Self {
            frames: AtomicU64::new(0),
            callbacks: AtomicU64::new(0),
            smallest: AtomicU32::new(u32::MAX),
            largest: AtomicU32::new(0),
            gap_after: AtomicU64::new(NO_GAP),
            gap_frames: AtomicU64::new(0),
            starved: AtomicU64::new(0),
            latency_us: AtomicU32::new(0),
            xruns: AtomicU64::new(0),
            errors: AtomicU64::new(0),
            dead: AtomicBool::new(false),
        }
    }
}

impl Shared {
    fn count(&self, frames: usize) {
        let size = u32::try_from(frames).unwrap_or(u32::MAX);
        self.smallest.fetch_min(size, Relaxed);
        self.largest.fetch_max(size, Relaxed);
        self.callbacks.fetch_add(1, Relaxed);
        self.frames.fetch_add(frames as u64, Relaxed);
    }

    /// Frames that found no room in the ring right after the first `popped` ones; 0 where none are missing there.
    /// The gap is closed by this call.
    pub fn take_gap(&self, popped: u64) -> u64 {
        let at = self.gap_after.load(SeqCst);
        if at != NO_GAP && at > popped {
            return 0;
        }
        self.gap_after.store(NO_GAP, SeqCst);
        self.gap_frames.swap(0, SeqCst)
    }

    /// Files an error under its kind. May be called from the audio thread.
    pub fn error(&self, kind: cpal::ErrorKind) {
        use cpal::ErrorKind::{DeviceChanged, DeviceNotAvailable, HostUnavailable, RealtimeDenied, StreamInvalidated, Xrun};
        match kind {
            Xrun => {
                self.xruns.fetch_add(1, Relaxed);
            }
            DeviceNotAvailable | StreamInvalidated | HostUnavailable => self.dead.store(true, SeqCst),
            // The stream goes on as before.
            DeviceChanged | RealtimeDenied => {}
            _ => {
                self.errors.fetch_add(1, Relaxed);
            }
        }
    }
}

/// Body of the microphone's callback: channels are averaged into the ring.
///
/// Once a frame found no room, all are left out until the sound thread has reached the gap, so that the ring holds at
/// most one gap and its place is known.
pub(super) fn capture<T>(data: &[T], channels: usize, pushed: &mut u64, ring: &mut impl Producer<Item = f32>, shared: &Shared)
where
    T: Sample,
    f32: FromSample<T>,
{
    let channels = channels.max(1);
    let frames = data.len() / channels;
    shared.count(frames);
    if shared.gap_after.load(SeqCst) != NO_GAP {
        shared.gap_frames.fetch_add(frames as u64, SeqCst);
        return;
    }
    let scale = 1.0 / channels as f32;
    let taken = ring.push_iter(data.chunks_exact(channels).map(|frame| frame.iter().map(|s| f32::from_sample(*s)).sum::<f32>() * scale));
    *pushed += taken as u64;
    if taken < frames {
        shared.gap_frames.fetch_add((frames - taken) as u64, SeqCst);
        shared.gap_after.store(*pushed, SeqCst);
    }
}

/// Body of the loudspeaker's callback: one frame of the ring to all channels, silence where the ring is empty.
pub(super) fn play<T>(data: &mut [T], channels: usize, ring: &mut impl Consumer<Item = f32>, shared: &Shared)
where
    T: Sample + FromSample<f32>,
{
    let channels = channels.max(1);
    let frames = data.len() / channels;
    shared.count(frames);
    let mut next = ring.pop_iter();
    let mut starved = 0;
    for frame in data.chunks_mut(channels) {
        let value = next.next().map_or_else(
            || {
                starved += 1;
                T::EQUILIBRIUM
            },
            T::from_sample,
        );
        frame.fill(value);
    }
    if starved > 0 {
        shared.starved.fetch_add(starved, Relaxed);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use foreign::counting::heap_calls;
    use ringbuf::HeapRb;
    use ringbuf::traits::{Observer, Split};

    #[test]
    fn callbacks_allocate_nothing() {
        let (mut tx, mut rx) = HeapRb::<f32>::new(4_000).split();
        let shared = Shared::default();
        let mut pushed = 0;
        let input = vec![1_000_i16; 2 * 960];
        let mut output = vec![0_i16; 2 * 960];
        let n = heap_calls(|| {
            for _ in 0..100 {
                capture(&input, 2, &mut pushed, &mut tx, &shared);
                play(&mut output, 2, &mut rx, &shared);
                shared.error(cpal::ErrorKind::Xrun);
            }
            // Overflow and starvation too.
            for _ in 0..10 {
                capture(&input, 2, &mut pushed, &mut tx, &shared);
            }
            for _ in 0..10 {
                play(&mut output, 2, &mut rx, &shared);
            }
        });
        assert_eq!(n, 0);
        assert!(shared.starved.load(Relaxed) > 0 && shared.xruns.load(Relaxed) == 100);
    }

    #[test]
    fn channels_are_averaged_and_spread() {
        let (mut tx, mut rx) = HeapRb::<f32>::new(100).split();
        let shared = Shared::default();
        capture(&[0.5_f32, -0.1, 1.0, 0.0], 2, &mut 0, &mut tx, &shared);
        let mut out = [9.0_f32; 6];
        play(&mut out, 2, &mut rx, &shared);
        assert_eq!(out, [0.2, 0.2, 0.5, 0.5, 0.0, 0.0]);
        assert_eq!(shared.starved.load(Relaxed), 1);
    }

    #[test]
    fn an_overflow_is_one_gap_at_a_known_place() {
        let (mut tx, mut rx) = HeapRb::<f32>::new(100).split();
        let shared = Shared::default();
        let mut pushed = 0;
        capture(&[0.1_f32; 80], 1, &mut pushed, &mut tx, &shared);
        capture(&[0.2_f32; 80], 1, &mut pushed, &mut tx, &shared);
        let mut block = [0.0; 50];
        rx.pop_slice(&mut block);
        assert_eq!(shared.take_gap(50), 0, "the gap is further on");
        // Room again, but the gap has not been reached.
        capture(&[0.3_f32; 10], 1, &mut pushed, &mut tx, &shared);
        assert_eq!(rx.occupied_len(), 50);
        rx.pop_slice(&mut block);
        assert_eq!(shared.take_gap(100), 60 + 10);
        assert_eq!(shared.take_gap(100), 0, "told once");
        capture(&[0.4_f32; 10], 1, &mut pushed, &mut tx, &shared);
        assert_eq!((rx.occupied_len(), pushed), (10, 110));
    }
}
