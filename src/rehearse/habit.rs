//! Habits of a client and a household that no single rule can say.

use super::act::{OneOrMany, bad_span};
use super::error::RehearseError;
use super::noise::NoiseKind;
use super::room::RoomSpec;
use super::speech::Speaker;
use serde::Deserialize;

/// A line is understood only where the tool's voice is loud enough.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hearing {
    /// RMS of the line as played, pauses left out, dB re full scale of the loudspeaker.
    pub needs_level_db: f64,
}

/// Each trial (hold, glide, syllables) of a session is weaker than the one before.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tires {
    /// Factor on the length for each trial made before: 0.88 is 12 % shorter each time.
    pub per_trial: f64,
    /// Change of the level for each trial made before, dB.
    #[serde(default)]
    pub level_db_per_trial: f64,
    /// Lines with these keys begin a rest…
    #[serde(default = "no_keys")]
    pub rest_on: OneOrMany,
    /// …that makes up for so many trials.
    #[serde(default)]
    pub rest_trials: u32,
}

fn no_keys() -> OneOrMany {
    OneOrMany::Many(Vec::new())
}

impl Tires {
    /// Factor on the length of the next trial, behind `trials` of this session.
    #[must_use]
    pub fn length(&self, trials: u32) -> f64 {
        self.per_trial.powf(f64::from(trials))
    }

    /// Change of its level, dB.
    #[must_use]
    pub fn level_db(&self, trials: u32) -> f64 {
        self.level_db_per_trial * f64::from(trials)
    }

    pub(super) fn fault(&self) -> Option<String> {
        let good = (0.5..=1.0).contains(&self.per_trial) && (-6.0..=0.0).contains(&self.level_db_per_trial);
        (!good).then(|| "tires: per_trial must be from 0.5 to 1, level_db_per_trial from -6 to 0".into())
    }
}

impl Hearing {
    pub(super) fn fault(&self) -> Option<String> {
        (!(-80.0..=0.0).contains(&self.needs_level_db)).then(|| "hearing: needs_level_db must be from -80 to 0".into())
    }
}

/// What differs from [`RoomSpec::living_room`], and who else makes sounds there.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScriptRoom {
    pub noise: Option<NoiseKind>,
    /// RMS of the noise floor at the microphone, dB re full scale.
    pub noise_db: Option<f64>,
    /// Reverberation time, s.
    pub rt60_s: Option<f64>,
    /// Others who talk.
    #[serde(default)]
    pub talk: Vec<Talk>,
    pub television: Option<Television>,
}

/// Somebody else in the room, who talks and does not mean the tool.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Talk {
    /// A voice of `flite -lv`, its speed as the client's.
    pub voice: String,
    pub speed: f64,
    /// RMS at the microphone without pauses and without the room's tail, dB re full scale.
    pub level_db: f64,
    /// Shortest and longest silence between two sentences, s.
    pub gap_s: [f64; 2],
    /// Talks while the tool does, too; else only begins when it is silent.
    #[serde(default)]
    pub over: bool,
    /// Said in an order left to chance, none twice running.
    pub sentences: Vec<String>,
}

/// Music that comes and goes; the people on the television are [`Talk`] with short gaps, `over = true`.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Television {
    /// RMS of the music at the microphone, dB re full scale.
    pub music_db: f64,
    /// Shortest and longest piece of music, s.
    pub music_s: [f64; 2],
    /// Shortest and longest time without music, s.
    pub gap_s: [f64; 2],
}

impl ScriptRoom {
    /// The room of this client.
    #[must_use]
    pub fn spec(&self, rate_hz: u32, seed: u64) -> RoomSpec {
        let usual = RoomSpec::living_room(rate_hz);
        RoomSpec {
            noise: self.noise.unwrap_or(usual.noise),
            noise_db: self.noise_db.unwrap_or(usual.noise_db),
            rt60_s: self.rt60_s.unwrap_or(usual.rt60_s),
            seed: usual.seed ^ seed,
            ..usual
        }
    }

    /// True where nobody but client and tool makes a sound.
    #[must_use]
    pub fn is_quiet(&self) -> bool {
        self.talk.is_empty() && self.television.is_none()
    }

    pub(super) fn fault(&self) -> Option<String> {
        let level = |db: f64| (-90.0..=-6.0).contains(&db);
        if !self.noise_db.is_none_or(level) || !self.rt60_s.is_none_or(|s| (0.05..=2.0).contains(&s)) {
            return Some("room: noise_db must be from -90 to -6, rt60_s from 0.05 to 2".into());
        }
        if self.talk.iter().any(|t| !level(t.level_db) || bad_span(t.gap_s) || t.sentences.iter().all(|s| s.trim().is_empty())) {
            return Some("room.talk: level_db must be from -90 to -6, gap_s [shortest, longest], sentences at least one".into());
        }
        let bad = self.television.is_some_and(|t| !level(t.music_db) || bad_span(t.music_s) || bad_span(t.gap_s));
        bad.then(|| "room.television: music_db must be from -90 to -6, music_s and gap_s [shortest, longest]".into())
    }
}

impl Talk {
    pub(super) fn speaker(&self, rate_hz: u32) -> Result<Speaker, RehearseError> {
        Speaker::new(&self.voice, self.speed, rate_hz).map_err(|e| RehearseError(format!("room.talk: {e}")))
    }
}
