//! Finds what a person says in the microphone's sound, by level alone: the same gate and pauses as the command ear's.

use super::Mel;
use super::take::{Cut, TakeFault};
use crate::batch::Batcher;
use crate::level::Meter;
use crate::path::seconds;

/// Sound kept from before an utterance, s; as the listener's.
const BEFORE_S: f64 = 0.36;
/// Quiet that ends an utterance, s; a little longer than the listener's, for a slow speaker's pauses.
const END_QUIET_S: f64 = 0.75;
/// An utterance that goes on longer is talk, or noise, s.
const LONGEST_S: f64 = 5.0;
/// Sound at once, with less quiet before it, had begun before we listened, s.
const QUIET_FIRST_S: f64 = 0.06;

/// Something was said.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// First and last instant that stands out, s on the caller's clock.
    pub start_s: f64,
    pub end_s: f64,
    /// The room, dB re full scale.
    pub floor_db: f64,
    pub said: Result<Cut, TakeFault>,
}

/// Hears blocks of 16 kHz sound and gives what was said in them.
pub struct TakeFinder {
    batcher: Batcher,
    meter: Meter,
    mel: Mel,
    open: bool,
    /// Sound of the utterance, or of the moment before one.
    sound: Vec<i16>,
    levels: Vec<(f64, f64)>,
    start_s: f64,
    loud_s: f64,
    quiet_s: f64,
    /// Quiet batches since we listen, s.
    heard_quiet_s: f64,
    early: bool,
}

impl Default for TakeFinder {
    fn default() -> Self {
        Self {
            batcher: Batcher::default(),
            meter: Meter::default(),
            mel: Mel::default(),
            open: false,
            sound: Vec::new(),
            levels: Vec::new(),
            start_s: 0.0,
            loud_s: 0.0,
            quiet_s: 0.0,
            heard_quiet_s: 0.0,
            early: false,
        }
    }
}

impl TakeFinder {
    /// Takes a block that begins at `start_s`. `listening`: what is said now counts; else only the room is followed.
    pub fn push(&mut self, start_s: f64, block: &[f32], listening: bool) -> Option<Found> {
        let mut found = None;
        for batch in self.batcher.push(start_s, block, listening, f32::NEG_INFINITY) {
            let level = self.meter.measure(&batch.samples, batch.own_db);
            if !batch.main {
                self.forget();
                continue;
            }
            if self.sound.is_empty() {
                self.start_s = batch.start_s;
            }
            self.sound.extend_from_slice(&batch.samples);
            self.levels.push((seconds(self.sound.len()), level.level_db - level.floor_db));
            let batch_s = seconds(batch.samples.len());
            if level.loud {
                (self.loud_s, self.quiet_s) = (self.loud_s + batch_s, 0.0);
                if !self.open {
                    self.open = true;
                    self.early = self.heard_quiet_s < QUIET_FIRST_S;
                }
            } else {
                self.quiet_s += batch_s;
                self.heard_quiet_s += batch_s;
            }
            if !self.open {
                self.keep_last(BEFORE_S);
            } else if self.quiet_s >= END_QUIET_S || seconds(self.sound.len()) > LONGEST_S {
                found = self.close(level.floor_db).or(found);
            }
        }
        found
    }

    /// Somebody is saying something now.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.open
    }

    fn forget(&mut self) {
        self.open = false;
        self.sound.clear();
        self.levels.clear();
        (self.loud_s, self.quiet_s, self.heard_quiet_s) = (0.0, 0.0, 0.0);
    }

    fn keep_last(&mut self, length_s: f64) {
        while seconds(self.sound.len()) > length_s {
            let Some(&(first_s, _)) = self.levels.first() else { return };
            let samples = (first_s * f64::from(crate::RATE_HZ)).round() as usize;
            self.sound.drain(..samples.min(self.sound.len()));
            self.levels.remove(0);
            self.levels.iter_mut().for_each(|level| level.0 -= first_s);
            self.start_s += first_s;
        }
    }

    /// The utterance is over; None where it was no more than a click.
    fn close(&mut self, floor_db: f64) -> Option<Found> {
        let cut = Cut::of(&self.sound, &self.levels, &mut self.mel);
        let (from_s, early) = (self.start_s, self.early);
        let long = self.quiet_s < END_QUIET_S;
        self.forget();
        let cut = cut?;
        let (start_s, end_s) = (from_s + cut.start_s, from_s + cut.end_s);
        let said = if early {
            Err(TakeFault::TooEarly)
        } else if long {
            Err(TakeFault::TooLong)
        } else {
            Ok(cut)
        };
        Some(Found { start_s, end_s, floor_db, said })
    }
}

#[cfg(test)]
#[path = "tests/finder.rs"]
mod tests;
