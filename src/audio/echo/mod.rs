//! Taking what we played out of what the microphone heard, for the command path.
//!
//! [`AutoCanceller`] is what a practice uses: it finds how late and how fast the microphone hears what is played
//! (`delay`, `track`, `reference`), runs three cancellers behind one trait on the same block and gives out the one that
//! does best by what it measures (`judge`).

mod adaptive;
mod auto;
mod delay;
mod judge;
mod kalman;
mod linear;
mod reference;
mod track;

pub use adaptive::AdaptiveCanceller;
pub use auto::{AutoCanceller, Engine};
pub use kalman::KalmanCanceller;
pub use linear::LinearCanceller;

use super::EchoCanceller;

/// Leaves the microphone as it is: where nothing is played aloud, or the gate alone is wanted.
#[derive(Debug, Clone, Copy, Default)]
pub struct NoCancel;

impl EchoCanceller for NoCancel {
    fn cancel(&mut self, _played: &[f32], _mic: &mut [f32]) {}
}

#[cfg(test)]
mod tests {
    use super::*;
    use foreign::counting::{allocations, growth};
    use rand::{Rng as _, SeedableRng as _, rngs::StdRng};

    /// Three seconds of sound and three of quiet, heard 80 ms later and half as loud, time and again.
    fn scene(seconds: usize) -> Vec<(Vec<f32>, Vec<f32>)> {
        let mut random = StdRng::seed_from_u64(3);
        let played: Vec<f32> =
            (0..seconds * 16_000).map(|n| if n / 48_000 % 2 == 0 { random.random_range(-0.3..0.3) } else { 0.0 }).collect();
        let heard = |n: usize| n.checked_sub(1_280).map_or(0.0, |n| 0.5 * played[n]);
        let mic: Vec<f32> = (0..played.len()).map(|n| heard(n) + random.random_range(-1e-3..1e-3)).collect();
        played.chunks(160).zip(mic.chunks(160)).map(|(p, m)| (p.to_vec(), m.to_vec())).collect()
    }

    /// Whether our own voice is said to drown everyone, over half a minute of playing sound whose echo is `gain` times as loud and
    /// clipped, while somebody else is as loud as `near`.
    fn drowns(gain: f32, near: f32) -> bool {
        let mut random = StdRng::seed_from_u64(4);
        let mut canceller = AutoCanceller::with_adaptive(Box::new(NoCancel));
        let mut late: std::collections::VecDeque<f32> = std::iter::repeat_n(0.0, 1_280).collect();
        for _ in 0..3_000 {
            let played: Vec<f32> = (0..160).map(|_| random.random_range(-0.3..0.3)).collect();
            late.extend(&played);
            let mut mic: Vec<f32> = late.drain(..160).map(|s| (gain * s).clamp(-1.0, 1.0) + random.random_range(-near..near)).collect();
            canceller.cancel(&played, &mut mic);
        }
        canceller.echo_state().drowns
    }

    #[test]
    fn a_loud_person_in_a_room_without_echo_is_not_taken_for_our_voice() {
        assert!(drowns(8.0, 0.001), "a loudspeaker that clips the microphone");
        assert!(!drowns(0.0, 0.2), "no echo at all, and somebody talks");
        assert!(!drowns(0.02, 0.001), "a soft echo");
    }

    /// The second half of the scene after the first: times that memory was taken, and bytes that were kept.
    fn cost(mut canceller: AutoCanceller) -> (u64, i64) {
        let mut scene = scene(30);
        let warm = scene.len() / 2;
        for (played, mic) in &mut scene[..warm] {
            canceller.cancel(played, mic);
        }
        let (mut taken, mut grown) = (0, 0);
        for (n, (played, mic)) in scene[warm..].iter_mut().enumerate() {
            match n % 2 {
                0 => taken += allocations(|| canceller.cancel(played, mic)),
                _ => grown += growth(|| canceller.cancel(played, mic)),
            }
        }
        (taken, grown)
    }

    #[test]
    fn our_part_of_the_cancelling_allocates_nothing_once_it_is_warm() {
        assert_eq!(cost(AutoCanceller::with_adaptive(Box::new(NoCancel))), (0, 0));
    }

    #[test]
    fn cancelling_does_not_grow() {
        // The AEC3 port allocates within each block, and gives all of it back.
        assert_eq!(cost(AutoCanceller::new()).1, 0);
    }
}
