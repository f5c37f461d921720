//! Whether a microphone delivers as many frames as time passes.

/// Seconds over which the smallest lag is taken; longer than any pause between two callbacks under load.
const WINDOW_S: f64 = 0.5;
/// Seconds of lag beyond the usual that count as frames lost.
const TOLERANCE_S: f64 = 0.04;
/// Seconds per second by which the usual lag may grow: clocks of sound cards differ from the computer's by up to
/// this much without a frame being lost.
const DRIFT: f64 = 0.001;

/// Compares frames delivered with time passed, since sound systems do not report every gap.
///
/// The lag swings with the size of the callbacks and the load of the machine, so its minimum over half a second is
/// looked at: that does not move unless frames are missing for good.
#[derive(Debug)]
pub(super) struct ClockCheck {
    rate_hz: f64,
    /// Usual lag, s; none before the first window is over.
    usual_s: Option<f64>,
    window_from_s: f64,
    window_min_s: f64,
    /// Frames already accounted for as lost.
    lost: u64,
}

impl ClockCheck {
    pub fn new(rate_hz: u32) -> Self {
        Self { rate_hz: f64::from(rate_hz), usual_s: None, window_from_s: 0.0, window_min_s: f64::INFINITY, lost: 0 }
    }

    /// `elapsed_s`: monotonic time since any fixed instant; `frames`: all that the device has delivered since then.
    /// Gives the frames that are found to be missing.
    pub fn observe(&mut self, elapsed_s: f64, frames: u64) -> u64 {
        let lag_s = elapsed_s - (frames + self.lost) as f64 / self.rate_hz;
        self.window_min_s = self.window_min_s.min(lag_s);
        if elapsed_s - self.window_from_s < WINDOW_S {
            return 0;
        }
        let min_s = self.window_min_s;
        let spent_s = elapsed_s - self.window_from_s;
        self.window_from_s = elapsed_s;
        self.window_min_s = f64::INFINITY;
        let Some(usual_s) = self.usual_s else {
            self.usual_s = Some(min_s);
            return 0;
        };
        let excess_s = min_s - usual_s;
        if excess_s > TOLERANCE_S {
            return self.lose(excess_s);
        }
        self.usual_s = Some(min_s.min(usual_s + DRIFT * spent_s));
        0
    }

    /// The stream was built anew: everything beyond the usual lag is lost at once.
    pub fn resume(&mut self, elapsed_s: f64, frames: u64) -> u64 {
        let lag_s = elapsed_s - (frames + self.lost) as f64 / self.rate_hz;
        self.window_from_s = elapsed_s;
        self.window_min_s = f64::INFINITY;
        let excess_s = lag_s - self.usual_s.unwrap_or(0.0);
        if excess_s > 0.0 { self.lose(excess_s) } else { 0 }
    }

    fn lose(&mut self, excess_s: f64) -> u64 {
        let frames = (excess_s * self.rate_hz).round() as u64;
        self.lost += frames;
        frames
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Feeds callbacks of 960 frames at 48 kHz; `late(n)`: s by which callback n is late, `gap(n)`: frames lost before it.
    fn run(callbacks: u32, ppm: f64, late: impl Fn(u32) -> f64, gap: impl Fn(u32) -> u64) -> (u64, u64) {
        let mut check = ClockCheck::new(48_000);
        let (mut frames, mut lost, mut found, mut now) = (0, 0, 0, 0.0_f64);
        for n in 0..callbacks {
            lost += gap(n);
            frames += 960;
            let true_s = (frames + lost) as f64 / 48_000.0 * (1.0 + ppm * 1e-6);
            now = now.max(true_s + late(n));
            found += check.observe(now, frames);
        }
        (lost, found)
    }

    #[test]
    fn steady_late_and_drifting_devices_lose_nothing() {
        assert_eq!(run(5_000, 0.0, |_| 0.0, |_| 0).1, 0);
        assert_eq!(run(5_000, 0.0, |n| if n % 40 == 39 { 0.3 } else { 0.005 }, |_| 0).1, 0, "stalls that catch up");
        assert_eq!(run(180_000, 300.0, |n| f64::from(n % 7) * 0.003, |_| 0).1, 0, "an hour at 300 ppm");
        assert_eq!(run(180_000, -300.0, |_| 0.0, |_| 0).1, 0);
    }

    #[test]
    fn missing_frames_are_found_within_a_block_or_two() {
        let (lost, found) = run(2_000, 50.0, |n| f64::from(n % 5) * 0.002, |n| if n == 700 { 9_600 } else { 0 });
        assert_eq!(lost, 9_600);
        assert!(found.abs_diff(lost) < 960, "{found} of {lost}");
        let (lost, found) = run(5_000, 0.0, |_| 0.0, |n| if n % 500 == 250 { 2_400 } else { 0 });
        assert!(found.abs_diff(lost) < 960, "{found} of {lost}");
    }

    #[test]
    fn an_outage_is_lost_time() {
        let mut check = ClockCheck::new(48_000);
        for n in 1..=100_u32 {
            check.observe(f64::from(n) * 0.02, u64::from(n) * 960);
        }
        // Away for three seconds; the first 960 frames have come in again.
        let lost = check.resume(2.0 + 3.0 + 0.02, 101 * 960);
        assert!(lost.abs_diff(3 * 48_000) < 100, "{lost}");
        assert_eq!(check.observe(5.04, 102 * 960), 0);
    }
}
