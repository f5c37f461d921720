//! A beat to read to: counted in aloud, then only shown, for a sound would lie over the voice that is to be measured.

use super::beat::{LOOK_AHEAD_S, UPBEAT_S};
use super::practice::Practice;
use model::Arg;
use routine::Work;

/// Beats counted aloud before the client begins.
const COUNT_IN: u32 = 4;
/// The part of each beat for which its mark is shown.
const SHOWN: f64 = 0.4;
/// The mark of a beat.
const MARK: &str = "●";

/// The beat of one phrase.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct PacingBeat {
    /// The first count, s.
    begins_s: f64,
    beat_s: f64,
    /// Counts handed over so far.
    counted: u32,
}

impl PacingBeat {
    /// The beat of the present step, from now on; none where it has none, and in a class, whose clinician beats it.
    pub fn begin(practice: &Practice) -> Option<Self> {
        let Work::ReadAloud { beat_s: Some(beat_s), .. } = practice.step()?.work else { return None };
        (!practice.context.class).then_some(Self { begins_s: practice.now_s + UPBEAT_S, beat_s: beat_s * practice.pace, counted: 0 })
    }

    /// When the client's own first beat is, s.
    pub fn counted_in_s(&self) -> f64 {
        self.begins_s + f64::from(COUNT_IN) * self.beat_s
    }

    /// Counts in, then shows the beat. True while it still counts.
    pub fn tick(&mut self, practice: &mut Practice) -> bool {
        let now_s = practice.now_s;
        let at_s = self.begins_s + f64::from(self.counted) * self.beat_s;
        if self.counted < COUNT_IN && now_s + LOOK_AHEAD_S >= at_s {
            self.counted += 1;
            practice.say_on_beat("count", &[("n", Arg::Number(f64::from(self.counted)))], at_s);
        }
        if now_s >= self.begins_s {
            let within = ((now_s - self.begins_s) / self.beat_s).fract();
            practice.show_figure(if within < SHOWN { MARK } else { "" });
        }
        now_s < self.counted_in_s()
    }
}
