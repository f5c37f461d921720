//! Clients at home and the results files that they hand back.
#![allow(dead_code, reason = "each test uses a part")]

use clinic::{Arriving, DeskPackage};
use handover::{HandedPart, HandedSession, Kind, Results, SecretKey, open};
use jiff::civil::Date;
use jiff::{SignedDuration, Timestamp, ToSpan, ZonedDateTime};
use record::journal_text;
use serde_json::value::RawValue;
use session::{Entry, Fact, LevelCalibration, LevelTerms, Position};

/// Public halves of two desks' keys, hexadecimal.
pub fn desk_key(desk: u8) -> String {
    SecretKey::from_bytes(&[desk; 32]).public().to_hex()
}

pub const DAILY: &str = "title = \"Evening\"\nplan = [{ at = \"18:30\" }]\n[[step]]\nexercise = \"long-ah\"\nrepetitions = 3\n";
pub const UNPLANNED: &str = "title = \"Free\"\n[[step]]\nexercise = \"long-ah\"\nrepetitions = 3\n";

/// A client's package: who they are and the key with which their home computer seals.
#[derive(Clone)]
pub struct Home {
    pub package: String,
    pub client: String,
    pub key: SecretKey,
    pub made_at: Timestamp,
}

impl Home {
    pub fn new(number: u8, client: &str) -> Self {
        Self::made(number, client, "2026-03-01T08:00:00Z")
    }

    pub fn made(number: u8, client: &str, at: &str) -> Self {
        Self {
            package: format!("{:016x}", 0xa000 + u64::from(number)),
            client: client.to_owned(),
            key: SecretKey::from_bytes(&[number; 32]),
            made_at: at.parse().expect("a time"),
        }
    }

    pub fn desk_package(&self) -> DeskPackage {
        DeskPackage { id: self.package.clone(), client: self.client.clone(), made_at: self.made_at, reply_key: self.key.public().to_hex() }
    }

    /// The results file of these practices, made in the evening of `day`.
    pub fn sealed(&self, day: &str, sessions: &[HandedSession]) -> String {
        let made_at = format!("{day}T20:00:00Z").parse().expect("a time");
        let results =
            Results { package: self.package.clone(), client: self.client.clone(), made_at, sessions: sessions.to_vec(), goals: Vec::new() };
        results.seal(&self.key).expect("seals")
    }

    pub fn file(&self, day: &str, sessions: &[HandedSession]) -> Arriving {
        arriving(&self.sealed(day, sessions))
    }
}

pub fn arriving(sealed: &str) -> Arriving {
    Arriving::read(&open(Kind::Results, sealed.as_bytes()).expect("a whole file")).expect("results")
}

pub fn at(step: u32, repetition: u32) -> Option<Position> {
    Some(Position { step, set: 1, repetition })
}

pub fn entry(at_s: f64, position: Option<Position>, fact: Fact) -> Entry {
    Entry { at_s, fact, position }
}

/// How levels were taken.
#[derive(Clone)]
pub struct Mic {
    pub name: &'static str,
    pub calibration: LevelCalibration,
    pub auto_gain: bool,
}

pub const MIC: Mic = Mic { name: "Desk microphone", calibration: LevelCalibration::Meter, auto_gain: false };

pub fn hold(at_s: f64, repetition: u32, duration_s: f64, level_db: f64, mic: &Mic) -> Entry {
    let fact = Fact::HoldMeasured {
        exercise: "long-ah".into(),
        onset_s: at_s - duration_s,
        offset_s: at_s,
        duration_s,
        f0_median_hz: 182.34,
        f0_span_st: 0.55,
        level_mean_db: level_db,
        level_fall_db: 3.45,
        level_weighting: "A".into(),
        level_calibrated: mic.calibration == LevelCalibration::Meter,
        f0_sd_st: Some(0.2),
        level_slope_db_per_s: Some(-0.1),
        level_terms: Some(LevelTerms {
            distance_cm: Some(30.0),
            calibration: mic.calibration,
            auto_gain: mic.auto_gain,
            ..LevelTerms::default()
        }),
        quality: None,
        climb: None,
        breaks: 1,
        masked_s: 0.0,
        complete: true,
    };
    entry(at_s, at(1, repetition), fact)
}

/// A practice in the making.
#[derive(Clone)]
pub struct Practice {
    pub number: i64,
    pub day: Date,
    pub routine: &'static str,
    pub package: Option<String>,
    pub entries: Vec<Entry>,
    pub ended: bool,
}

impl Practice {
    /// Three holds of about this length, s, on a day. They scatter a little and always in the same way.
    pub fn on(number: i64, day: &str, hold_s: f64, mic: &Mic) -> Self {
        let begun = Fact::SessionBegun { routine: "Evening".into(), steps: 1, software: "tidecount 0.1.0".into() };
        let used = Fact::MicrophoneUsed { system: "test".into(), name: mic.name.into(), rate_hz: 48_000, gain: "100 %".into() };
        let mut entries = vec![
            entry(0.0, None, begun),
            entry(0.1, None, used),
            entry(2.0, at(1, 1), Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None }),
        ];
        for repetition in 1..=3_u32 {
            let scatter = f64::from((number as u32 * 7 + repetition * 5) % 11) / 10.0 - 0.5;
            entries.push(hold(f64::from(repetition) * 30.0, repetition, hold_s + scatter, 70.0 + scatter, mic));
        }
        entries.push(entry(95.0, at(1, 3), Fact::StepDone { exercise: "long-ah".into(), repetitions_done: 3, repetitions_prescribed: 3 }));
        entries.push(entry(
            99.0,
            None,
            Fact::SessionEnded { reason: "completed".into(), steps_done: 1, steps_prescribed: 1, duration_s: 99.0 },
        ));
        Self { number, day: day.parse().expect("a date"), routine: DAILY, package: None, entries, ended: true }
    }

    /// Something said or noted before the end.
    pub fn with(mut self, fact: Fact) -> Self {
        let place = self.entries.len() - 2;
        self.entries.insert(place, entry(90.0, at(1, 3), fact));
        self
    }

    pub fn under(mut self, home: &Home) -> Self {
        self.package = Some(home.package.clone());
        self
    }

    fn begins(&self, later_h: i64) -> ZonedDateTime {
        let began: ZonedDateTime = format!("{}T18:30:00[Europe/Berlin]", self.day).parse().expect("a time");
        began.checked_add(SignedDuration::from_hours(later_h)).expect("a time")
    }

    /// As it is handed back whole.
    pub fn whole(&self) -> HandedSession {
        self.cut(&[self.entries.len()])
    }

    /// As it is handed back after these many entries of each part; ended where all of them are there.
    pub fn cut(&self, parts: &[usize]) -> HandedSession {
        let mut rest = self.entries.as_slice();
        let mut handed = Vec::new();
        for (hours, length) in (0..).zip(parts) {
            let (now, later) = rest.split_at(*length);
            rest = later;
            let text = journal_text(now).expect("lines");
            let entries = text.lines().map(|line| RawValue::from_string(line.to_owned()).expect("JSON")).collect();
            handed.push(HandedPart { started_at: self.begins(hours).to_string(), entries });
        }
        let ended = self.ended && rest.is_empty();
        HandedSession {
            number: self.number,
            package: self.package.clone(),
            started_at: self.begins(0).to_string(),
            ended_at: ended.then(|| self.begins(parts.len() as i64).to_string()),
            end_reason: ended.then(|| "completed".to_owned()),
            routine_title: "Evening".into(),
            routine_text: self.routine.into(),
            software: "tidecount 0.1.0".into(),
            parts: handed,
        }
    }
}

/// Practices on so many days from one day on, every `step` days.
pub fn daily(first_number: i64, from: &str, count: i64, step: i64, hold_s: f64, mic: &Mic) -> Vec<HandedSession> {
    let from: Date = from.parse().expect("a date");
    (0..count)
        .map(|n| Practice::on(first_number + n, &from.checked_add((n * step).days()).expect("a date").to_string(), hold_s, mic).whole())
        .collect()
}
