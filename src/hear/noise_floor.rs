//! The level of the room while nobody makes a sound.

use std::collections::VecDeque;

/// Frames remembered: 2 s.
const MEMORY: usize = 200;
/// Frames needed before there is an opinion.
const ENOUGH: usize = 10;

/// Follows the room from frames that are neither voiced nor masked. A long hold brings no such frames, so it cannot be
/// taken for the room; a louder room is believed once it fills most of the last 2 s.
#[derive(Debug, Clone)]
pub(crate) struct NoiseFloor {
    levels: VecDeque<f32>,
    sorted: Vec<f32>,
}

impl Default for NoiseFloor {
    fn default() -> Self {
        Self { levels: VecDeque::with_capacity(MEMORY), sorted: Vec::with_capacity(MEMORY) }
    }
}

impl NoiseFloor {
    pub fn push(&mut self, level_db: f64) {
        if self.levels.len() == MEMORY
            && let Some(old) = self.levels.pop_front()
        {
            let at = self.sorted.partition_point(|l| *l < old);
            if at < self.sorted.len() {
                self.sorted.remove(at);
            }
        }
        let level = level_db as f32;
        self.levels.push_back(level);
        let at = self.sorted.partition_point(|l| *l < level);
        self.sorted.insert(at, level);
    }

    /// The lower third of what was heard, dB; nothing until a tenth of a second was.
    pub fn level_db(&self) -> Option<f64> {
        if self.sorted.len() < ENOUGH {
            return None;
        }
        self.sorted.get(self.sorted.len() / 3).map(|l| f64::from(*l))
    }
}
