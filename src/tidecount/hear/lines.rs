//! What `tidecount hear` found, as JSON lines and as rows of a table.

use crate::hear::considered::ConsideredLine;
use crate::hear::rounded::rounded;
use command_ear::{Considered, HeardPhrase};
use hear::time_weighting::SoundLevelMeter;
use hear::weighting::Weighting;
use hear::{Hold, VoiceFrame, VoiceQuality};
use serde::Serialize;
use std::io::Write;

/// A hold as it stands in a line of output; units are in the names.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HoldLine {
    pub kind: &'static str,
    /// The recording as it was named; live, the microphone.
    pub file: String,
    pub onset_s: f64,
    pub offset_s: f64,
    pub duration_s: f64,
    pub f0_median_hz: f64,
    pub f0_span_st: f64,
    pub f0_sd_st: f64,
    pub level_mean_db: f64,
    pub level_fall_db: f64,
    pub level_slope_db_per_s: f64,
    /// "A": A-weighted after IEC 61672-1.
    pub level_weighting: &'static str,
    /// False: dB re full scale (root mean square 1 is 0 dB), not sound pressure level.
    pub level_calibrated: bool,
    pub breaks: u32,
    pub clipped_s: f64,
    /// "energy-mean": over the voiced frames, without Fast or Slow.
    pub level_time_weighting: &'static str,
    /// Nobody said how far the microphone stood.
    pub level_distance_cm: Option<f64>,
    /// "none": see `level_calibrated`.
    pub level_calibration: &'static str,
    /// There is evidence that the microphone changes its own volume: in the whole recording; live, so far.
    pub auto_gain: bool,
    /// With `--voice`: figures of voice quality of the steady part.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quality: Option<VoiceQuality>,
}

/// A spoken command as it stands in a line of output.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CommandLine {
    pub kind: &'static str,
    pub file: String,
    /// The phrase as it was asked for.
    pub text: String,
    pub start_s: f64,
    pub end_s: f64,
    /// 0 to 1; a session acts from 0.8 on and asks back from 0.5 on.
    pub confidence: f64,
}

/// What a sound level meter would read of a whole recording, dB re full scale.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LevelLine {
    pub kind: &'static str,
    pub file: String,
    /// "A", "C" or "Z".
    pub level_weighting: &'static str,
    /// Energy mean (equivalent continuous level).
    pub equivalent_db: f64,
    pub fast_max_db: f64,
    pub slow_max_db: f64,
    pub level_calibrated: bool,
}

impl LevelLine {
    /// A meter for each weighting.
    pub fn meters(rate_hz: u32) -> Vec<(Weighting, SoundLevelMeter)> {
        [Weighting::A, Weighting::C, Weighting::Z].map(|w| (w, SoundLevelMeter::new(w, f64::from(rate_hz)))).into()
    }
}

/// One thing found.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Found {
    Hold(HoldLine),
    Command(CommandLine),
    Considered(ConsideredLine),
    Level(LevelLine),
}

impl Found {
    /// The line for a hold heard in `file`.
    pub fn hold(file: &str, hold: &Hold, auto_gain: bool) -> Self {
        Self::Hold(HoldLine {
            kind: "voiced",
            file: file.to_owned(),
            onset_s: rounded(hold.onset_s, 4),
            offset_s: rounded(hold.offset_s, 4),
            duration_s: rounded(hold.duration_s, 4),
            f0_median_hz: rounded(hold.f0_median_hz, 2),
            f0_span_st: rounded(hold.f0_span_st, 3),
            f0_sd_st: rounded(hold.f0_sd_st, 3),
            level_mean_db: rounded(hold.level_mean_db, 2),
            level_fall_db: rounded(hold.level_fall_db, 2),
            level_slope_db_per_s: rounded(hold.level_slope_db_per_s, 3),
            level_weighting: "A",
            level_calibrated: false,
            breaks: hold.breaks,
            clipped_s: rounded(hold.clipped_s, 2),
            level_time_weighting: "energy-mean",
            level_distance_cm: None,
            level_calibration: "none",
            auto_gain,
            quality: hold.quality,
        })
    }

    /// The line for what a meter read of `file`; nothing where it heard nothing.
    pub fn level(file: &str, weighting: Weighting, meter: &SoundLevelMeter) -> Option<Self> {
        let reading = meter.reading()?;
        Some(Self::Level(LevelLine {
            kind: "level",
            file: file.to_owned(),
            level_weighting: weighting.letter(),
            equivalent_db: rounded(reading.equivalent_db, 2),
            fast_max_db: rounded(reading.fast_max_db, 2),
            slow_max_db: rounded(reading.slow_max_db, 2),
            level_calibrated: false,
        }))
    }

    /// The line for a phrase heard in `file`.
    pub fn command(file: &str, phrase: &HeardPhrase) -> Self {
        Self::Command(CommandLine {
            kind: "command",
            file: file.to_owned(),
            text: phrase.tag.clone(),
            start_s: rounded(phrase.start_s, 3),
            end_s: rounded(phrase.end_s, 3),
            confidence: rounded(phrase.confidence.clamp(0.0, 1.0), 3),
        })
    }

    /// The line for what was considered in `file`.
    pub fn considered(file: &str, considered: Considered) -> Self {
        Self::Considered(ConsideredLine::new(file, considered))
    }

    /// Where it begins, s.
    pub fn start_s(&self) -> f64 {
        match self {
            Self::Hold(hold) => hold.onset_s,
            Self::Command(command) => command.start_s,
            Self::Considered(line) => line.considered.start_s,
            Self::Level(_) => 0.0,
        }
    }

    /// Writes it as one JSON object on a line.
    ///
    /// # Errors
    /// `out` refuses.
    pub fn write_json(&self, out: &mut impl Write) -> std::io::Result<()> {
        serde_json::to_writer(&mut *out, self)?;
        writeln!(out)
    }

    /// Its row under [`TABLE_HEAD`].
    pub fn row(&self) -> String {
        match self {
            Self::Hold(hold) => format!(
                "  hold     {:>8.2} {:>8.2} {:>9.2} {:>6.0} {:>8.1} {:>11.1} {:>8.1} {:>7}{}",
                hold.onset_s,
                hold.offset_s,
                hold.duration_s,
                hold.f0_median_hz,
                hold.f0_span_st,
                rounded(hold.level_mean_db, 1),
                rounded(hold.level_fall_db, 1),
                hold.breaks,
                hold.notes()
            ),
            Self::Considered(line) => line.row(),
            Self::Level(level) => format!(
                "  level    dB({}) re full scale: mean {:.1}, highest Fast {:.1}, highest Slow {:.1}",
                level.level_weighting, level.equivalent_db, level.fast_max_db, level.slow_max_db
            ),
            Self::Command(command) => format!(
                "  command  {:>8.2} {:>8.2} {:>9.2}  \"{}\", confidence {:.2}",
                command.start_s,
                command.end_s,
                command.end_s - command.start_s,
                command.text,
                command.confidence
            ),
        }
    }
}

impl HoldLine {
    /// What else is to be said of it: further rows.
    fn notes(&self) -> String {
        let mut notes = String::new();
        if self.clipped_s > 0.0 {
            notes += &format!("\n           clipped for {:.2} s: the true level is higher", self.clipped_s);
        }
        if self.auto_gain {
            notes += "\n           the microphone changes its own volume; levels are not comparable";
        }
        if let Some(q) = &self.quality {
            let figure = |value: f64, unit: &str| if value.is_finite() { format!("{value:.2} {unit}") } else { "-".to_owned() };
            notes += &format!(
                "\n           F0 SD {:.2} st, level {:+.2} dB/s; CPPS {}, HNR {}; jitter local {}, rap {}, ppq5 {};\n           shimmer local {} ({}), apq3 {}, apq11 {} ({:.2} to {:.2} s)",
                self.f0_sd_st,
                self.level_slope_db_per_s,
                figure(q.cpps_db, "dB"),
                figure(q.hnr_db, "dB"),
                figure(q.jitter_local_pct, "%"),
                figure(q.jitter_rap_pct, "%"),
                figure(q.jitter_ppq5_pct, "%"),
                figure(q.shimmer_local_pct, "%"),
                figure(q.shimmer_local_db, "dB"),
                figure(q.shimmer_apq3_pct, "%"),
                figure(q.shimmer_apq11_pct, "%"),
                q.from_s,
                q.to_s
            );
        }
        notes
    }
}

/// Head of the table; levels are A-weighted, relative to full scale.
pub const TABLE_HEAD: &str = "  heard      from s     to s  length s  F0 Hz  span st  level dB(A)  fall dB  breaks";

/// Head of the frames' table.
pub const FRAMES_HEAD: &str = "t_s,f0_hz,level_db,voiced";

/// A frame's row: F0 is 0 where unvoiced.
pub fn frame_row(frame: &VoiceFrame) -> String {
    let level_db = rounded(frame.level_db, 2);
    format!("{:.2},{:.2},{level_db:.2},{}", frame.t_s, frame.f0_hz, u8::from(frame.voiced))
}

/// A name for a line of text: control characters, which would break the line, are written as escapes.
pub fn shown(name: &str) -> String {
    name.chars().map(|c| if c.is_control() { c.escape_default().to_string() } else { c.to_string() }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use command_ear::Path;

    #[test]
    fn a_command_has_the_fields_of_the_contract() {
        let phrase = HeardPhrase {
            tag: "go back".into(),
            text: "go back".into(),
            start_s: 1.23456,
            end_s: 2.0,
            decided_s: 2.3,
            confidence: 0.91234,
            path: Path::Main,
        };
        let mut out = Vec::new();
        let found = Found::command("a\n\"b\".wav", &phrase);
        found.write_json(&mut out).unwrap();
        assert_eq!(
            String::from_utf8(out).unwrap(),
            "{\"kind\":\"command\",\"file\":\"a\\n\\\"b\\\".wav\",\"text\":\"go back\",\"start_s\":1.235,\"end_s\":2.0,\"confidence\":0.912}\n"
        );
        assert!(found.row().contains("\"go back\", confidence 0.91"));
        assert_eq!(shown("a\nb\u{1b}.wav"), "a\\nb\\u{1b}.wav");
    }
}
