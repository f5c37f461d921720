//! Where a fading voice stops being one.

/// Sound this far under the loudest of its own run of voicing is the room or an echo, dB. Praat's silence threshold
/// (0.03 of the loudest, with the default voicing threshold: -27.7 dB) does the same for a whole file; a stream cannot
/// know what comes, so here it is the loudest so far, and a run, not the file.
const UNDER_LOUDEST_DB: f64 = 29.5;
/// A run ends after this many frames without a period: 0.3 s.
const FORGET: u32 = 30;

/// Follows the loudest moment of each run of voicing.
#[derive(Debug, Clone, Default)]
pub(crate) struct Fade {
    loudest_db: Option<f64>,
    before_db: f64,
    unvoiced: u32,
}

impl Fade {
    /// Whether a frame with a period is still voice, given the power of its sound in dB.
    pub fn is_voice(&mut self, periodic: bool, power_db: f64) -> bool {
        // Two frames in a row must reach a level, so that a click does not set it.
        let held_db = power_db.min(self.before_db);
        self.before_db = power_db;
        if !periodic {
            self.unvoiced += 1;
            if self.unvoiced > FORGET {
                self.loudest_db = None;
            }
            return false;
        }
        self.unvoiced = 0;
        let loudest = self.loudest_db.map_or(held_db, |loudest| loudest.max(held_db));
        self.loudest_db = Some(loudest);
        power_db > loudest - UNDER_LOUDEST_DB
    }
}
