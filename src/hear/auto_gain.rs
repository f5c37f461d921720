//! Finds a microphone that changes its own volume (automatic gain control).
//!
//! Such a microphone turns itself down while somebody is loud and up again when it grows quiet. So after a voice the room's
//! noise comes up by itself: quiet just after the voice, louder a second or two later, evenly, and of the same colour all the
//! while. A room does the opposite, its echo dies away; a breath or a machine has another colour or comes at once. A voice that
//! fades is no evidence at all, for voices do. It takes several pauses that agree, for a wrong alarm would void good figures.
//!
//! What is not found: gain that recovers within a quarter second, gain that stands still in pauses, and any gain in a room
//! whose noise the microphone does not pick up, and one that lifts the room to the voice's own level. The limits were set
//! beforehand and not tuned on the simulated sessions of `benches/level`.

use super::bands::{BANDS, distance};
use super::steadiness::{RunFrame, percentile};
use std::collections::VecDeque;

/// Frames in a cell: 0.1 s.
const CELL: usize = 10;
/// Loudness of the voice is looked for in so many cells: 20 s.
const MEMORY: usize = 200;
/// A cell within this of the voice's level is sound, dB.
const UNDER_VOICE_DB: f64 = 12.0;
/// Cells after a voice that belong to its end and its echo.
const ECHO: usize = 3;
/// A pause counts from so many further cells on, and is looked at for so many.
const SHORTEST: usize = 9;
const LONGEST: usize = 40;
/// Cells at both ends of a pause that are compared.
const ENDS: usize = 3;
/// The room must rise by this over a pause, dB; its noise alone wanders by less than 1 dB in the mean of three cells.
const RISE_DB: f64 = 3.0;
/// How evenly: rank correlation of level and time.
const EVENLY: f64 = 0.75;
/// Its colour must stay within this, dB.
const SAME_COLOUR_DB: f64 = 3.5;
/// Under this there is no room to be heard, dB re full scale.
const NOTHING_DB: f64 = -95.0;
/// The newest pauses are judged: so many must rise, and this share of all.
const PAUSES: usize = 8;
const LEAST: usize = 3;
const SHARE: f64 = 0.6;

#[derive(Debug, Clone, Copy)]
struct Cell {
    level_db: f64,
    shape: [f32; BANDS],
}

/// Follows the frames of the voice ear.
#[derive(Debug, Clone)]
pub(crate) struct AutoGain {
    /// The cell under way.
    frames: usize,
    sum_db: f64,
    shape: [f32; BANDS],
    masked: bool,
    lost: bool,
    /// Levels of the newest cells that were heard clearly.
    levels: VecDeque<f64>,
    sorted: Vec<f64>,
    /// Cells since the last sound.
    pause: Vec<Cell>,
    /// Whether there was sound before the pause.
    armed: bool,
    /// Of the newest pauses, whether the room rose.
    rose: VecDeque<bool>,
    found: bool,
}

impl Default for AutoGain {
    /// All the memory it will need is taken here: it runs beside the sound.
    fn default() -> Self {
        Self {
            frames: 0,
            sum_db: 0.0,
            shape: [0.0; BANDS],
            masked: false,
            lost: false,
            levels: VecDeque::with_capacity(MEMORY),
            sorted: Vec::with_capacity(MEMORY),
            pause: Vec::with_capacity(ECHO + LONGEST),
            armed: false,
            rose: VecDeque::with_capacity(PAUSES),
            found: false,
        }
    }
}

impl AutoGain {
    /// Takes the next frame.
    pub fn push(&mut self, frame: &RunFrame) {
        self.sum_db += frame.level_db;
        self.shape.iter_mut().zip(&frame.shape).for_each(|(sum, x)| *sum += x / CELL as f32);
        self.masked |= frame.masked;
        self.lost |= frame.lost;
        self.frames += 1;
        if self.frames == CELL {
            let cell = Cell { level_db: self.sum_db / CELL as f64, shape: self.shape };
            let (masked, lost) = (self.masked, self.lost);
            (self.frames, self.sum_db, self.shape, self.masked, self.lost) = (0, 0.0, [0.0; BANDS], false, false);
            self.hear(cell, masked, lost);
        }
    }

    /// True from the moment on in which the evidence sufficed. It stays: levels before and after are in doubt alike.
    pub fn found(&self) -> bool {
        self.found
    }

    fn hear(&mut self, cell: Cell, masked: bool, lost: bool) {
        if lost {
            // Nothing is known of the time between.
            self.pause.clear();
            self.armed = false;
            return;
        }
        if !masked {
            if self.levels.len() == MEMORY {
                self.levels.pop_front();
            }
            self.levels.push_back(cell.level_db);
        }
        // What we play ourselves turns the gain down as a voice does, if the microphone hears it.
        if masked || cell.level_db > self.voice_db() - UNDER_VOICE_DB {
            self.close();
            self.armed = true;
            return;
        }
        if self.armed && self.pause.len() < ECHO + LONGEST {
            self.pause.push(cell);
        }
    }

    /// The level of what is loud lately: the 90th percentile.
    fn voice_db(&mut self) -> f64 {
        self.sorted.clear();
        self.sorted.extend(&self.levels);
        percentile(&mut self.sorted, 0.9)
    }

    /// A pause is over.
    fn close(&mut self) {
        let quiet = self.pause.get(ECHO..).unwrap_or(&[]);
        // The last cell may hold the beginning of what comes.
        let quiet = quiet.get(..quiet.len().saturating_sub(1)).unwrap_or(&[]);
        if quiet.len() >= SHORTEST && quiet.iter().all(|cell| cell.level_db > NOTHING_DB) {
            if self.rose.len() == PAUSES {
                self.rose.pop_front();
            }
            self.rose.push_back(rises(quiet));
            let risen = self.rose.iter().filter(|rose| **rose).count();
            self.found |= risen >= LEAST && risen as f64 >= SHARE * self.rose.len() as f64;
        }
        self.pause.clear();
    }
}

fn rises(cells: &[Cell]) -> bool {
    let mean = |part: &[Cell]| {
        let count = part.len().max(1) as f64;
        let mut shape = [0f32; BANDS];
        for cell in part {
            shape.iter_mut().zip(&cell.shape).for_each(|(sum, x)| *sum += x / count as f32);
        }
        (part.iter().map(|cell| cell.level_db).sum::<f64>() / count, shape)
    };
    let (early_db, early) = mean(cells.get(..ENDS).unwrap_or(cells));
    let (late_db, late) = mean(cells.get(cells.len().saturating_sub(ENDS)..).unwrap_or(cells));
    late_db - early_db >= RISE_DB && distance(&early, &late) < SAME_COLOUR_DB && evenness(cells) >= EVENLY
}

/// Spearman's rank correlation of level and order. A gain that has come back stands still, so what follows the first cell that
/// reaches the last level is left out.
fn evenness(cells: &[Cell]) -> f64 {
    let last_db = cells.iter().rev().take(ENDS).map(|cell| cell.level_db).sum::<f64>() / ENDS as f64;
    let reached = cells.iter().position(|cell| cell.level_db > last_db - 0.5).map_or(cells.len(), |k| (k + 1).max(4));
    let rising = cells.get(..reached.min(cells.len())).unwrap_or(cells);
    let n = rising.len() as f64;
    if n < 4.0 {
        return 0.0;
    }
    let mut order = [0; ECHO + LONGEST];
    let Some(order) = order.get_mut(..rising.len()) else { return 0.0 };
    order.iter_mut().enumerate().for_each(|(k, place)| *place = k);
    order.sort_unstable_by(|a, b| {
        let level = |k: usize| rising.get(k).map_or(0.0, |cell| cell.level_db);
        level(*a).total_cmp(&level(*b)).then(a.cmp(b))
    });
    let squares: f64 = order.iter().enumerate().map(|(rank, place)| (rank as f64 - *place as f64).powi(2)).sum();
    1.0 - 6.0 * squares / (n * (n * n - 1.0))
}

#[cfg(test)]
#[path = "tests/auto_gain.rs"]
mod tests;
