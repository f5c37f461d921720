//! How many repetitions of a step went the way they were meant to.

use model::Rung;

/// What a step has come to so far.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Aims {
    /// The hold before in this set: its step, level and F0.
    pub before: Option<(Rung, f64, f64)>,
    /// How many went the way they were meant to, of how many that could be judged.
    pub reached: u32,
    pub judged: u32,
}

impl Aims {
    /// One more that could be judged, or not.
    pub fn judge(&mut self, reached: Option<bool>) {
        self.judged += u32::from(reached.is_some());
        self.reached += u32::from(reached == Some(true));
    }
}
