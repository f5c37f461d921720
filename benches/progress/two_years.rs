//! An invented client who practises daily for two years: nobody's measurement.
//!
//! Every seventh day or so is missed; there is a holiday of three weeks, another microphone after a year, a calibration half a
//! year later, and a programme that grows each quarter. Holds grow by a fifth of a second a month and scatter by more.

use hear::VoiceQuality;
use jiff::{Span, ZonedDateTime, civil::Date, civil::date};
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};
use record::{RecordError, WholePart, WholeSession, journal_text};
use session::{Command, Entry, Fact, LevelCalibration, LevelTerms, Position, Response};

/// Days of two years.
pub const DAYS: u32 = 730;
/// The client's name in the record.
pub const CLIENT: &str = "client";

const FIRST: Date = date(2024, 1, 1);
const HOLIDAY: std::ops::Range<u32> = 200..221;

/// The practices of so many days, and the day after the last.
///
/// # Errors
/// A time or entry cannot be written.
pub fn sessions(days: u32) -> Result<(Vec<WholeSession>, Date), Box<dyn std::error::Error>> {
    let mut random = StdRng::seed_from_u64(7);
    let mut sessions = Vec::new();
    for day in (0..days).filter(|day| !HOLIDAY.contains(day)) {
        if random.random_bool(0.15) {
            continue;
        }
        let date = FIRST.checked_add(Span::new().days(i64::from(day)))?;
        let began: ZonedDateTime = format!("{date}T18:3{}[Europe/Berlin]", random.random_range(0..10)).parse()?;
        sessions.push(session(i64::from(day) + 1, day, &began, &mut random)?);
    }
    Ok((sessions, FIRST.checked_add(Span::new().days(i64::from(days)))?))
}

/// The routine of a day: a trial more each quarter, up to ten.
fn routine(day: u32) -> String {
    let repetitions = (5 + day / 90).min(10);
    format!(
        r#"title = "Evening routine"
client = "client"
plan = [{{ at = "18:30" }}]
[[step]]
exercise = "long-ah"
repetitions = {repetitions}
[[step]]
exercise = "high-ee"
repetitions = {repetitions}
[[step]]
exercise = "glide-up"
repetitions = 3
[[step]]
exercise = "functional-phrases"
phrases = ["Good morning", "The kettle is on", "I would like some tea", "What is on the table", "See you at noon"]
[[step]]
exercise = "syllable-repetition"
repetitions = 3
"#
    )
}

struct Journal<'a> {
    entries: Vec<Entry>,
    now_s: f64,
    day: u32,
    random: &'a mut StdRng,
}

fn session(number: i64, day: u32, began: &ZonedDateTime, random: &mut StdRng) -> Result<WholeSession, RecordError> {
    let mut journal = Journal { entries: Vec::new(), now_s: 0.0, day, random };
    journal.lead();
    let (end_s, entries) = (journal.now_s, journal.entries);
    let ended = began.checked_add(jiff::SignedDuration::from_secs_f64(end_s)).unwrap_or_else(|_| began.clone());
    Ok(WholeSession {
        number,
        package: None,
        started_at: began.to_string(),
        end: Some((ended.to_string(), "completed".into())),
        routine_title: "Evening routine".into(),
        routine_text: routine(day),
        software: "tidecount 0.1.0".into(),
        parts: vec![WholePart { started_at: began.to_string(), lines: journal_text(&entries)?.lines().map(str::to_owned).collect() }],
    })
}

impl Journal<'_> {
    fn keep(&mut self, fact: Fact, position: Option<Position>) {
        self.entries.push(Entry { at_s: self.now_s, fact, position });
    }

    /// About normal: the sum of three.
    fn scatter(&mut self, sd: f64) -> f64 {
        (0..3).map(|_| self.random.random_range(-1.0..1.0)).sum::<f64>() * sd
    }

    fn terms(&self) -> LevelTerms {
        let calibration = if self.day > 540 { LevelCalibration::Meter } else { LevelCalibration::None };
        LevelTerms { calibration, distance_cm: (calibration == LevelCalibration::Meter).then_some(30.0), ..LevelTerms::default() }
    }

    fn lead(&mut self) {
        self.keep(Fact::SessionBegun { routine: "Evening routine".into(), steps: 5, software: "tidecount 0.1.0".into() }, None);
        let name = if self.day < 365 { "Built-in microphone" } else { "Headset" };
        self.now_s += 1.0;
        self.keep(Fact::MicrophoneUsed { system: "PulseAudio".into(), name: name.into(), rate_hz: 48_000, gain: "60 %".into() }, None);
        self.keep(Fact::CommandHeard { command: Command::Ready, text: "i'm ready".into(), confidence: 0.9 }, None);
        let repetitions = (5 + self.day / 90).min(10);
        for (step, exercise, count) in [
            (1, "long-ah", repetitions),
            (2, "high-ee", repetitions),
            (3, "glide-up", 3),
            (4, "functional-phrases", 5),
            (5, "syllable-repetition", 3),
        ] {
            self.step(step, exercise, count);
        }
        let duration_s = self.now_s;
        self.keep(Fact::SessionEnded { reason: "completed".into(), steps_done: 5, steps_prescribed: 5, duration_s }, None);
    }

    fn step(&mut self, step: u32, exercise: &str, count: u32) {
        let at = |repetition| Some(Position { step, set: 1, repetition });
        let exercise = exercise.to_owned();
        self.keep(Fact::StepBegun { exercise: exercise.clone(), ramp_stage: None }, at(1));
        for repetition in 1..=count {
            self.now_s += 8.0;
            let after_s = 1.0 + self.random.random_range(0.0..1.0);
            self.keep(Fact::ResponseTimed { to: Response::Voice, after_s }, at(repetition));
            self.now_s += 12.0;
            let fact = match step {
                1..=3 => self.hold(&exercise),
                4 => self.phrase(&exercise),
                _ => self.syllables(&exercise),
            };
            self.keep(fact, at(repetition));
            if step <= 3 && self.random.random_bool(0.02) {
                self.keep(Fact::HoldInNoise { exercise: exercise.clone(), over_room_db: 7.0 }, at(repetition));
            }
            self.now_s += 10.0;
            self.keep(Fact::Rested { duration_s: 10.0 }, at(repetition));
        }
        self.keep(Fact::StepDone { exercise, repetitions_done: count, repetitions_prescribed: count }, at(count));
    }

    fn hold(&mut self, exercise: &str) -> Fact {
        let duration_s = (11.0 + f64::from(self.day) * 0.2 / 30.0 + self.scatter(1.2)).max(1.0);
        let f0_median_hz = 120.0 + self.scatter(4.0);
        let f0_span_st = if exercise == "glide-up" { 11.0 + self.scatter(1.0) } else { 0.6 };
        let base_db = if self.day > 540 { 74.0 } else { -27.0 };
        let level_mean_db = base_db + self.scatter(1.5);
        let cpps_db = 13.0 + self.scatter(0.8);
        let quality = VoiceQuality {
            from_s: self.now_s,
            to_s: self.now_s + 3.0,
            cpps_db,
            jitter_local_pct: 0.6,
            jitter_rap_pct: 0.3,
            jitter_ppq5_pct: 0.35,
            shimmer_local_pct: 3.0,
            shimmer_local_db: 0.3,
            shimmer_apq3_pct: 1.5,
            shimmer_apq11_pct: 2.5,
            hnr_db: 18.0 + cpps_db / 10.0,
        };
        Fact::HoldMeasured {
            exercise: exercise.to_owned(),
            onset_s: self.now_s - duration_s,
            offset_s: self.now_s,
            duration_s,
            f0_median_hz,
            f0_span_st,
            level_mean_db,
            level_fall_db: 2.0,
            level_weighting: "A".into(),
            level_calibrated: self.day > 540,
            f0_sd_st: Some(0.25),
            level_slope_db_per_s: Some(-0.2),
            level_terms: Some(self.terms()),
            quality: Some(quality),
            climb: None,
            breaks: 0,
            masked_s: 0.0,
            complete: !self.random.random_bool(0.02),
        }
    }

    fn phrase(&mut self, exercise: &str) -> Fact {
        Fact::PhraseRead {
            exercise: exercise.to_owned(),
            phrase: "Good morning".into(),
            duration_s: 1.4,
            level_mean_db: if self.day > 540 { 68.0 } else { -32.0 } + self.scatter(1.5),
            f0_median_hz: 125.0 + self.scatter(6.0),
            level_weighting: "A".into(),
            level_calibrated: self.day > 540,
            level_terms: Some(self.terms()),
            prosody: None,
        }
    }

    fn syllables(&mut self, exercise: &str) -> Fact {
        let rate_hz = 5.0 + self.scatter(0.3);
        Fact::SyllablesCounted { exercise: exercise.to_owned(), syllables: 25, duration_s: 5.0, rate_hz, irregularity_pct: 12.0 }
    }
}
