//! Keeps the tool from acting on its own voice: which stretches of the microphone hold what was played.

/// Seconds that a room goes on sounding after the last frame has left; proposed, not from a source: 0.25 to 0.4 s
/// where the frames played are known exactly.
pub const DEFAULT_TAIL_S: f64 = 0.3;

/// Seconds before the computed first frame from which on the microphone is taken to hold it (one block of jitter).
const LEAD_S: f64 = 0.02;
/// Seconds that finished stretches are remembered; longer than any hold.
const MEMORY_S: f64 = 300.0;

/// Which times are free of our own voice. All times are seconds on the sample clock.
///
/// Driven by the frames really handed to the loudspeaker and its delay, never by the length of a text.
#[derive(Debug, Clone)]
pub struct Gate {
    tail_s: f64,
    /// Finished stretches, from the first to the last audible instant, in order.
    played: std::collections::VecDeque<(f64, f64)>,
    /// The line under way: when its first frame was handed over and when that frame is heard.
    running: Option<Running>,
}

#[derive(Debug, Clone, Copy)]
struct Running {
    handed_s: f64,
    heard_s: f64,
}

impl Gate {
    /// `tail_s`: seconds after the last frame has left in which the room may still sound.
    #[must_use]
    pub fn new(tail_s: f64) -> Self {
        Self { tail_s: tail_s.max(0.0), played: std::collections::VecDeque::new(), running: None }
    }

    /// Changes how long the room is taken to sound on, for lines that end from now on.
    pub fn set_tail_s(&mut self, tail_s: f64) {
        self.tail_s = tail_s.max(0.0);
    }

    /// The first frame of a line was handed to the loudspeaker, which plays it `delay_s` later.
    pub fn line_began(&mut self, handed_s: f64, delay_s: f64) {
        // Two lines without an end between them are one stretch.
        if self.running.is_none() {
            self.running = Some(Running { handed_s, heard_s: handed_s + delay_s.max(0.0) });
        }
    }

    /// The last frame of a line was handed over, or the line was hushed; what is under way leaves `delay_s` later.
    pub fn line_ended(&mut self, handed_s: f64, delay_s: f64) {
        let Some(running) = self.running.take() else { return };
        let end_s = handed_s.max(running.handed_s) + delay_s.max(0.0) + self.tail_s;
        self.played.push_back((running.heard_s - LEAD_S, end_s));
        while self.played.front().is_some_and(|(_, end)| *end < handed_s - MEMORY_S) {
            self.played.pop_front();
        }
    }

    /// Whether what the microphone hears at this time may be acted on. Closed from the moment a line is handed over.
    #[must_use]
    pub fn is_open(&self, at_s: f64) -> bool {
        !self.running.is_some_and(|r| at_s >= r.handed_s) && !self.masks(at_s)
    }

    /// Whether the microphone holds our own voice at this time, now or in the last minutes.
    #[must_use]
    pub fn masks(&self, at_s: f64) -> bool {
        self.running.is_some_and(|r| at_s >= r.heard_s - LEAD_S) || self.played.iter().rev().any(|(from, to)| (*from..*to).contains(&at_s))
    }
}

impl Default for Gate {
    fn default() -> Self {
        Self::new(DEFAULT_TAIL_S)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_closes_the_gate_until_its_tail_is_over() {
        let mut gate = Gate::new(0.3);
        assert!(gate.is_open(0.0) && !gate.masks(0.0));
        gate.line_began(1.0, 0.1);
        assert!(gate.is_open(0.99) && !gate.is_open(1.0));
        assert!(!gate.masks(1.05), "handed over but not heard yet");
        assert!(gate.masks(1.1) && gate.masks(500.0), "no end is guessed");
        gate.line_ended(3.0, 0.1);
        assert!(!gate.is_open(3.39) && gate.is_open(3.41));
        assert!(gate.masks(3.39) && !gate.masks(3.41));
        assert!(gate.masks(2.0), "looking back");
    }

    #[test]
    fn it_never_stays_closed_after_an_end() {
        let mut gate = Gate::default();
        gate.line_ended(1.0, 0.1);
        assert!(gate.is_open(1.0), "an end without a beginning");
        gate.line_began(2.0, 0.1);
        gate.line_began(2.5, 0.1);
        gate.line_ended(3.0, 0.1);
        assert!(gate.is_open(4.0), "two beginnings, one end");
        gate.line_began(5.0, 0.1);
        gate.line_ended(4.0, 0.1);
        assert!(gate.is_open(6.0), "an end before its beginning");
    }

    #[test]
    fn long_practices_do_not_pile_up() {
        let mut gate = Gate::default();
        for n in 0..10_000 {
            gate.line_began(f64::from(n), 0.1);
            gate.line_ended(f64::from(n) + 0.5, 0.1);
        }
        assert!(gate.played.len() < 400);
        assert!(gate.masks(9_999.3) && gate.masks(9_800.3));
    }
}
