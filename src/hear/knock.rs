//! Two knocks, as with a knuckle on a table, told from talk, coughs and things put down.
//!
//! A knock rises at once, is over within a tenth of a second, and has next to no voice. Two of them, at a hand's pace, with quiet
//! before and behind, are meant. The numbers are our own, set on recordings (`tests/knocks.rs`); no source.

use super::VoiceEvent;
use super::steadiness::RunFrame;
use std::collections::VecDeque;

const RATE: f64 = 100.0;
/// A knock stands this far over the room, dB.
const OVER_ROOM_DB: f64 = 18.0;
/// It rises by this within [`RISE`] frames, dB.
const RISE_DB: f64 = 12.0;
const RISE: usize = 5;
/// It has fallen by this within [`FALL`] frames, dB.
const FALL_DB: f64 = 14.0;
const FALL: usize = 14;
/// Frames with voice that a knock may have: wood rings for a moment…
const VOICED: usize = 6;
/// …and so many where it rises and falls by [`HARD_DB`]: no voice does both so fast.
const RINGING: usize = 14;
const HARD_DB: f64 = 28.0;
/// From knock to knock, s.
const APART_S: std::ops::RangeInclusive<f64> = 0.15..=0.65;
/// They are about as strong as each other, dB.
const ALIKE_DB: f64 = 6.0;
/// Three in a row are still a sign; more are somebody at work.
const MOST: usize = 3;
/// Quiet before the first, s, in which at most [`LOUD_BESIDE`] frames are loud.
const QUIET_S: f64 = 0.4;
/// Quiet behind the last, s: a little longer than from knock to knock, so that none is still to come.
const QUIET_BEHIND_S: f64 = 0.9;
const LOUD_BESIDE: usize = 4;
/// A frame this far over the room is loud, dB.
const LOUD_DB: f64 = 10.0;

/// One frame as far as it matters here.
#[derive(Debug, Clone, Copy)]
struct Seen {
    t_s: f64,
    level_db: f64,
    over_room_db: f64,
    voiced: bool,
    masked: bool,
}

/// Looks for knocks in what the voice ear sees.
#[derive(Debug, Clone)]
pub(crate) struct KnockFinder {
    frames: VecDeque<Seen>,
    /// The knocks of the group under way: when, and how strong.
    group: [(f64, f64); MOST + 1],
    knocks: usize,
}

/// Frames that are looked back upon: the quiet before, the knocks, the quiet behind.
const KEPT: usize = 340;

impl Default for KnockFinder {
    fn default() -> Self {
        // All the memory it will need: none is taken beside the sound.
        Self { frames: VecDeque::with_capacity(KEPT + 1), group: [(0.0, 0.0); MOST + 1], knocks: 0 }
    }
}

impl KnockFinder {
    /// The next frame.
    pub fn push(&mut self, frame: &RunFrame, out: &mut impl FnMut(VoiceEvent)) {
        let (t_s, level_db, over_room_db) = (frame.t_s, frame.level_db, frame.over_room_db);
        let masked = frame.masked || frame.lost;
        self.frames.push_back(Seen { t_s, level_db, over_room_db, voiced: frame.f0_hz > 0.0, masked });
        if self.frames.len() > KEPT {
            self.frames.pop_front();
        }
        if let Some((at_s, peak_db)) = self.knock() {
            self.add(at_s, peak_db);
        }
        let Some(&(last_s, _)) = self.knocks.checked_sub(1).and_then(|last| self.group.get(last)) else { return };
        if t_s >= last_s + QUIET_BEHIND_S {
            if (2..=MOST).contains(&self.knocks) && self.is_quiet_around() {
                out(VoiceEvent::Knocked { at_s: t_s });
            }
            self.knocks = 0;
        }
    }

    /// A knock whose fall is just over, with its peak.
    fn knock(&self) -> Option<(f64, f64)> {
        let at = self.frames.len().checked_sub(FALL + 1)?;
        let peak = self.frames[at];
        let before = self.frames[at.checked_sub(RISE)?];
        let (from, to) = (at - RISE, self.frames.len());
        let around = || self.frames.range(from..to);
        let highest = around().all(|frame| frame.level_db <= peak.level_db);
        let fallen = around().skip(RISE).map(|frame| frame.level_db).fold(f64::INFINITY, f64::min);
        let voiced = around().filter(|frame| frame.voiced).count();
        let (rise_db, fall_db) = (peak.level_db - before.level_db, peak.level_db - fallen);
        let may_ring = if rise_db.min(fall_db) >= HARD_DB { RINGING } else { VOICED };
        let is = peak.over_room_db >= OVER_ROOM_DB
            && highest
            && rise_db >= RISE_DB
            && fall_db >= FALL_DB
            && voiced <= may_ring
            && !around().any(|frame| frame.masked);
        is.then_some((peak.t_s, peak.level_db))
    }

    fn add(&mut self, at_s: f64, peak_db: f64) {
        if let Some(&(last_s, last_db)) = self.knocks.checked_sub(1).and_then(|last| self.group.get(last)) {
            let belongs = APART_S.contains(&(at_s - last_s)) && (peak_db - last_db).abs() <= ALIKE_DB;
            if !belongs {
                self.knocks = 0;
            }
        }
        // A fourth is kept, so that a longer row is none.
        let place = self.knocks.min(MOST);
        self.group[place] = (at_s, peak_db);
        self.knocks = place + 1;
    }

    /// Beside the knocks themselves hardly anything was loud, from a moment before the first on.
    fn is_quiet_around(&self) -> bool {
        let knocks = &self.group[..self.knocks];
        let Some(&(first_s, _)) = knocks.first() else { return false };
        let of_a_knock = |t_s: f64| knocks.iter().any(|(at_s, _)| t_s >= at_s - RISE as f64 / RATE && t_s <= at_s + FALL as f64 / RATE);
        let beside = self.frames.iter().filter(|frame| frame.t_s >= first_s - QUIET_S && !of_a_knock(frame.t_s));
        beside.filter(|frame| frame.over_room_db >= LOUD_DB).count() <= LOUD_BESIDE
    }
}
