//! What a hold does when another voice may have taken over from it.
//!
//! Where people talked before the hold, as on a television, its end is not the end of all voices: the sound drops, and
//! something goes on that has a period too. From such a drop on, what goes on must prove that it is the voice held, by two of
//! level, pitch and colour for some frames in a row. Where nobody was heard before, a voice may change as it likes.

use super::steadiness::{RunFrame, percentile};
use std::collections::VecDeque;

/// Frames before the hold that are remembered: 10 s.
const MEMORY: usize = 1000;
/// Voiced frames that make a company: 0.15 s.
const LEAST: usize = 15;
/// The level that the others reach: this share of their frames is softer.
const LOUD_SHARE: f64 = 0.9;
/// A drop is looked for over this many frames: a soft release lasts 0.15 s.
const DROP_OVER: usize = 15;
/// The sound has dropped when none of this many newest frames is near what it was.
const DROPPED_FOR: usize = 3;
/// Less is no drop, dB.
const DROP_DB: f64 = 4.0;
/// The drop begins where the sound has lost this much, dB.
const EDGE_DB: f64 = 3.0;
/// Frames in a row that prove the voice: 60 ms.
const PROOF: usize = 6;
/// A release lasts no more frames than this; what falls longer is the room: 0.2 s.
const RELEASE: usize = 20;

/// The voices heard before the hold, and whether one of them may have taken its place.
#[derive(Debug, Clone, Default)]
pub(crate) struct Company {
    /// Levels of the frames before the hold, dB; nothing for those that are not voiced.
    before: VecDeque<Option<f64>>,
    /// What the others reach, dB; nothing where nobody was heard.
    others_db: Option<f64>,
    suspect: Option<Suspect>,
}

#[derive(Debug, Clone, Copy)]
struct Suspect {
    /// Frames of the hold before the drop.
    before: usize,
    /// Frames in a row that were surely the voice since.
    own: usize,
}

impl Company {
    pub fn with_room() -> Self {
        Self { before: VecDeque::with_capacity(MEMORY + 1), ..Self::default() }
    }

    /// A frame while there is no hold.
    pub fn hear(&mut self, frame: &RunFrame) {
        if self.before.len() == MEMORY {
            self.before.pop_front();
        }
        self.before.push_back((frame.f0_hz > 0.0).then_some(frame.level_db));
    }

    /// A hold is there, and the newest `own` frames are its own.
    pub fn hold_begins(&mut self, own: usize) {
        let others = self.before.len().saturating_sub(own);
        let mut levels: Vec<f64> = self.before.iter().take(others).filter_map(|level| *level).collect();
        self.others_db = (levels.len() >= LEAST).then(|| percentile(&mut levels, LOUD_SHARE));
        self.suspect = None;
    }

    pub fn hold_ends(&mut self) {
        self.suspect = None;
    }

    /// Frames of the hold before the drop, while what goes on has not proved to be the voice.
    pub fn suspect_from(&self) -> Option<usize> {
        self.suspect.map(|suspect| suspect.before)
    }

    /// Looks at the newest frame of the hold: `own` says whether it is surely the voice, `voiced_to` how many frames are
    /// known to be.
    pub fn look(&mut self, run: &[RunFrame], own: bool, voiced_to: usize) {
        if let Some(suspect) = &mut self.suspect {
            suspect.own = if own { suspect.own + 1 } else { 0 };
            if suspect.own >= PROOF {
                self.suspect = None;
            }
            return;
        }
        let (Some(others_db), Some(from)) = (self.others_db, run.len().checked_sub(DROP_OVER)) else { return };
        let late = run.get(from..).unwrap_or_default();
        let loudest = |frames: &[RunFrame]| frames.iter().map(|f| f.level_db).fold(f64::MIN, f64::max);
        let was_db = loudest(late);
        let now_db = loudest(late.get(DROP_OVER - DROPPED_FOR..).unwrap_or_default());
        if was_db - now_db < DROP_DB || now_db > others_db {
            return;
        }
        let edge = late.iter().rposition(|f| f.level_db > was_db - EDGE_DB).unwrap_or(0);
        let before = from + edge + 1;
        if before <= voiced_to {
            self.suspect = Some(Suspect { before, own: 0 });
        }
    }

    /// Frames of a hold that ended in suspicion: those before the drop and its own release, in which the sound only falls.
    pub fn own_frames(&self, run: &[RunFrame], is_this: impl Fn(&RunFrame) -> bool) -> Option<usize> {
        let before = self.suspect?.before;
        let mut last_db = run.get(before.checked_sub(1)?)?.level_db;
        let mut falls = 0;
        for frame in run.get(before..)? {
            if frame.f0_hz <= 0.0 || frame.level_db > last_db + 0.5 || !is_this(frame) {
                break;
            }
            last_db = frame.level_db;
            falls += 1;
        }
        Some(if falls <= RELEASE { before + falls } else { before })
    }
}
