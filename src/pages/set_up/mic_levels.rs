//! What is heard while microphone and loudspeaker are tried, as the figures that are judged.

use crate::set_up::mic_judge::HeardLevels;
use hear::clipping::ClipFinder;
use hear::level::{db_power, power_db};
use hear::{VoiceEar, VoiceFrame, VoiceOutput};

/// What is listened to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    None,
    Room,
    Speech,
    Own,
}

/// Levels of the parts, as they come.
pub struct PartLevels {
    ear: VoiceEar,
    clips: ClipFinder,
    rate_hz: f64,
    peak: f32,
    clipped: u64,
    lost: u64,
    /// Of the newest frame, dB re full scale.
    pub level_db: f64,
    /// Levels of its frames: their median, which a cough does not move.
    room: Vec<f64>,
    voice: Mean,
    own: Mean,
    /// Our own voice drowned everything.
    pub drowned: bool,
}

#[derive(Debug, Clone, Copy, Default)]
struct Mean {
    power: f64,
    count: u32,
}

impl Mean {
    fn add(&mut self, level_db: f64) {
        if level_db.is_finite() {
            self.power += db_power(level_db);
            self.count += 1;
        }
    }

    fn db(&self) -> Option<f64> {
        (self.count > 0).then(|| power_db(self.power / f64::from(self.count)))
    }
}

impl PartLevels {
    pub fn new(rate_hz: u32) -> Self {
        Self {
            ear: VoiceEar::new(rate_hz),
            clips: ClipFinder::new(f64::from(rate_hz)),
            rate_hz: f64::from(rate_hz),
            peak: 0.0,
            clipped: 0,
            lost: 0,
            level_db: -120.0,
            room: Vec::new(),
            voice: Mean::default(),
            own: Mean::default(),
            drowned: false,
        }
    }

    /// Takes a block, before which `lost` frames did not arrive.
    pub fn push(&mut self, mic: &[f32], lost: u64, part: Part) {
        self.lost += lost;
        if part != Part::None {
            self.peak = mic.iter().fold(self.peak, |peak, sample| peak.max(sample.abs()));
        }
        let clipped = mic.iter().filter(|sample| self.clips.push(**sample)).count();
        if part == Part::Speech {
            self.clipped += clipped as u64;
        }
        let mut frames: Vec<VoiceFrame> = Vec::new();
        let mut take = |output| {
            if let VoiceOutput::Frame(frame) = output {
                frames.push(frame);
            }
        };
        if lost > 0 {
            self.ear.skip(lost, &mut take);
        }
        self.ear.push(mic, part == Part::Own, &mut take);
        for frame in frames {
            self.level_db = frame.level_db;
            match part {
                Part::Room => self.room.push(frame.level_db),
                Part::Speech if frame.voiced => self.voice.add(frame.level_db),
                Part::Own => self.own.add(frame.level_db),
                _ => {}
            }
        }
    }

    /// The floor of the room so far, dB re full scale.
    pub fn room_db(&self) -> Option<f64> {
        self.ear.noise_floor_db()
    }

    /// The figures to judge by.
    pub fn levels(&self) -> HeardLevels {
        HeardLevels {
            room_db: progress::median(&self.room),
            voice_db: self.voice.db(),
            voiced_s: f64::from(self.voice.count) / 100.0,
            clipped_s: self.clipped as f64 / self.rate_hz,
            peak: self.peak,
            auto_gain: self.ear.auto_gain_found(),
            lost_s: self.lost as f64 / self.rate_hz,
            own_voice_db: self.own.db(),
            drowned: self.drowned,
        }
    }
}
