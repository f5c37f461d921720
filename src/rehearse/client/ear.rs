//! How loud the client hears the tool.

use crate::signal::gain;

/// Blocks softer than this are pauses of what the tool says, dB re full scale.
const SILENT_DB: f64 = -45.0;

/// How loud the line under way is: energy of its sounding frames.
#[derive(Default)]
pub(super) struct Ear {
    energy: f64,
    frames: u64,
}

impl Ear {
    pub fn listen(&mut self, played: &[f32]) {
        let energy: f64 = played.iter().map(|v| f64::from(*v) * f64::from(*v)).sum();
        if energy > gain(SILENT_DB).powi(2) * played.len() as f64 {
            self.energy += energy;
            self.frames += played.len() as u64;
        }
    }

    /// dB re full scale; none before anything was heard.
    pub fn level_db(&self) -> Option<f64> {
        (self.frames > 0).then(|| 10.0 * (self.energy / self.frames as f64).max(1e-20).log10())
    }
}
