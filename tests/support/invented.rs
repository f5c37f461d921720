//! An invented client's practices over weeks or years, as the record would hold them: seeded, for looking at pages and for timing.
//! Nothing in it is anybody's: trends, scatter and events are made up.

use hear::VoiceQuality;
use jiff::civil::Date;
use jiff::{SignedDuration, ToSpan, ZonedDateTime};
use rand::rngs::StdRng;
use rand::{Rng, SeedableRng};
use record::{Store, WholePart, WholeSession, journal_text};
use session::{Entry, Fact, LevelCalibration, LevelTerms, Position, Trouble};
use std::path::Path;

/// What the life of this client is like.
#[derive(Debug, Clone)]
pub struct Life {
    pub client: &'static str,
    pub first: Date,
    pub days: i64,
    /// Chance of a practice on a planned day.
    pub diligence: f64,
    /// Days from the first on which nothing is practised: from, to (not included).
    pub pause: Option<(i64, i64)>,
    /// From this day on another microphone stands there.
    pub other_microphone: Option<i64>,
    /// From this day to that (not included) the level is calibrated.
    pub calibrated: Option<(i64, i64)>,
    /// From this day on the programme asks for more.
    pub more: Option<i64>,
    /// Change of the long ah over the whole time, s, and of its level, dB.
    pub hold_gain_s: f64,
    pub level_gain_db: f64,
    /// Other exercises that are practised besides.
    pub also: &'static [&'static str],
    pub seed: u64,
}

impl Life {
    /// Twelve weeks of somebody who practises most days.
    pub fn weeks(weeks: i64) -> Self {
        Self {
            client: "grandma",
            first: jiff::civil::date(2026, 11, 22).checked_sub((weeks * 7 - 1).days()).expect("a date"),
            days: weeks * 7,
            diligence: 0.8,
            pause: None,
            other_microphone: None,
            calibrated: Some((0, i64::MAX)),
            more: None,
            hold_gain_s: 1.0,
            level_gain_db: 5.0,
            also: &[],
            seed: 7,
        }
    }

    /// With everything that can happen in twelve weeks.
    pub fn eventful() -> Self {
        Self { pause: Some((40, 52)), other_microphone: Some(66), calibrated: Some((0, 66)), more: Some(28), ..Self::weeks(12) }
    }

    /// What the pictures in the documentation show: a pause, then another microphone, calibrated, and a voice that grows louder.
    pub fn shown() -> Self {
        Self {
            pause: Some((16, 27)),
            other_microphone: Some(33),
            calibrated: Some((33, i64::MAX)),
            more: Some(47),
            level_gain_db: 9.0,
            seed: 11,
            ..Self::weeks(12)
        }
    }
}

/// About normal: the sum of twelve uniform numbers.
fn scatter(rng: &mut StdRng, sd: f64) -> f64 {
    ((0..12).map(|_| rng.random::<f64>()).sum::<f64>() - 6.0) * sd
}

fn quality(onset_s: f64, duration_s: f64, rng: &mut StdRng) -> VoiceQuality {
    VoiceQuality {
        from_s: onset_s + 0.2,
        to_s: onset_s + duration_s - 0.2,
        cpps_db: 14.0 + scatter(rng, 0.6),
        jitter_local_pct: (0.8 + scatter(rng, 0.1)).abs(),
        jitter_rap_pct: 0.4,
        jitter_ppq5_pct: 0.4,
        shimmer_local_pct: (4.0 + scatter(rng, 0.4)).abs(),
        shimmer_local_db: 0.35,
        shimmer_apq3_pct: 2.0,
        shimmer_apq11_pct: 3.0,
        hnr_db: 20.0 + scatter(rng, 1.0),
    }
}

fn routine(life: &Life, more: bool) -> String {
    let mut text = format!(
        "title = \"Voice practice\"\nclient = \"{}\"\nplan = [{{ at = \"18:30\" }}]\n[[step]]\nexercise = \"long-ah\"\nrepetitions = {}\ntarget_s = {}\nrest_s = 10\n[[step]]\nexercise = \"glide-up\"\nrepetitions = 2\n",
        life.client,
        if more { 5 } else { 3 },
        if more { 15 } else { 12 },
    );
    text +=
        "[[step]]\nexercise = \"functional-phrases\"\nphrases = [\"A cup of tea with milk, please.\", \"Could you open the window?\"]\n";
    if more {
        text += "[[step]]\nexercise = \"syllable-repetition\"\nrepetitions = 2\nsyllables = \"pa-ta-ka\"\nlength_s = 5\n";
    }
    for exercise in life.also {
        text += &format!("[[step]]\nexercise = \"{exercise}\"\ncautions_acknowledged = true\n");
    }
    text + "[[step]]\nexercise = \"head-lift-sustained\"\ncautions_acknowledged = true\n"
}

struct Practice<'a> {
    entries: Vec<Entry>,
    at_s: f64,
    step: u32,
    rng: &'a mut StdRng,
}

impl Practice<'_> {
    fn keep(&mut self, lasting_s: f64, repetition: Option<u32>, fact: Fact) {
        self.at_s += lasting_s;
        let position = repetition.map(|repetition| Position { step: self.step, set: 1, repetition });
        self.entries.push(Entry { at_s: self.at_s, fact, position });
    }

    fn step(&mut self, exercise: &str, repetitions: u32, mut each: impl FnMut(&mut Self, u32)) {
        self.step += 1;
        self.keep(5.0, Some(1), Fact::StepBegun { exercise: exercise.to_owned(), ramp_stage: None });
        for repetition in 1..=repetitions {
            each(self, repetition);
        }
        let fact = Fact::StepDone { exercise: exercise.to_owned(), repetitions_done: repetitions, repetitions_prescribed: repetitions };
        self.keep(1.0, Some(repetitions.max(1)), fact);
    }
}

/// The practices of a life, oldest first.
pub fn practices(life: &Life) -> Vec<WholeSession> {
    let mut rng = StdRng::seed_from_u64(life.seed);
    let mut all = Vec::new();
    for day in 0..life.days {
        if life.pause.is_some_and(|(from, to)| (from..to).contains(&day)) || rng.random::<f64>() > life.diligence {
            continue;
        }
        all.push(practice(life, day, i64::try_from(all.len()).expect("few") + 1, &mut rng));
    }
    all
}

fn practice(life: &Life, day: i64, number: i64, rng: &mut StdRng) -> WholeSession {
    let along = day as f64 / life.days.max(1) as f64;
    let more = life.more.is_some_and(|from| day >= from);
    let other = life.other_microphone.is_some_and(|from| day >= from);
    let calibrated = life.calibrated.is_some_and(|(from, to)| (from..to).contains(&day));
    let terms = LevelTerms {
        distance_cm: Some(30.0),
        calibration: if calibrated { LevelCalibration::Meter } else { LevelCalibration::None },
        ..LevelTerms::default()
    };
    let offset_db = if calibrated { 0.0 } else { -103.0 };
    let (day_s, day_db, day_st) = (scatter(rng, 0.9), scatter(rng, 0.8), scatter(rng, 0.9));
    let routine_text = routine(life, more);
    let steps = routine_text.matches("[[step]]").count() as u32;
    let mut p = Practice { entries: Vec::new(), at_s: 0.0, step: 0, rng };
    p.keep(0.0, None, Fact::SessionBegun { routine: "Voice practice".to_owned(), steps, software: "tidecount 0.1.0".to_owned() });
    let name = if other { "Headset microphone" } else { "Desk microphone" };
    p.keep(
        0.0,
        None,
        Fact::MicrophoneUsed { system: "PulseAudio".to_owned(), name: name.to_owned(), rate_hz: 48_000, gain: "60 %".to_owned() },
    );
    if calibrated {
        let text =
            format!("{name} (PulseAudio, 48000 Hz, gain 60 %): calibrated by sound level meter, 74.0 dB(A) at 30 cm; microphone at 30 cm");
        p.keep(0.0, None, Fact::MicrophoneNoted { what: "calibration".to_owned().into(), text });
    }
    p.keep(2.0, None, Fact::StepLeftOut { exercise: "head-lift-sustained".to_owned(), reason: "no spoken agreement".to_owned().into() });
    let hold = |p: &mut Practice<'_>, repetition: u32, exercise: &str, length_s: f64, span_st: f64| {
        let duration_s = (length_s + day_s + scatter(p.rng, 1.0)).max(1.5);
        let level_mean_db = 66.0 + life.level_gain_db * along + day_db + scatter(p.rng, 0.9) + offset_db;
        let (f0, span) = (196.0 + scatter(p.rng, 4.0), (span_st + scatter(p.rng, 0.5)).max(0.2));
        let complete = p.rng.random::<f64>() > 0.02;
        let onset_s = p.at_s + 1.0;
        let fact = Fact::HoldMeasured {
            exercise: exercise.to_owned(),
            onset_s,
            offset_s: onset_s + duration_s,
            duration_s,
            f0_median_hz: f0,
            f0_span_st: span,
            level_mean_db,
            level_fall_db: 1.0,
            level_weighting: "A".to_owned().into(),
            level_calibrated: calibrated,
            f0_sd_st: Some((0.4 + scatter(p.rng, 0.06)).abs()),
            level_slope_db_per_s: Some(-0.2 + scatter(p.rng, 0.05)),
            level_terms: Some(terms.clone()),
            quality: (exercise == "long-ah").then(|| quality(onset_s, duration_s, p.rng)),
            climb: None,
            breaks: 0,
            masked_s: 0.0,
            complete,
        };
        p.keep(duration_s + 12.0, Some(repetition), fact);
        if p.rng.random::<f64>() < 0.01 {
            p.keep(0.1, Some(repetition), Fact::HoldInNoise { exercise: exercise.to_owned(), over_room_db: 6.0 });
        }
    };
    p.step("long-ah", if more { 5 } else { 3 }, |p, n| hold(p, n, "long-ah", 12.0 + life.hold_gain_s * along, 1.0));
    p.step("glide-up", 2, |p, n| hold(p, n, "glide-up", 4.0, 11.0 + 0.5 * along + day_st));
    p.step("functional-phrases", 2, |p, n| {
        let level_mean_db = 62.0 + life.level_gain_db * 0.6 * along + day_db + scatter(p.rng, 1.0) + offset_db;
        let fact = Fact::PhraseRead {
            exercise: "functional-phrases".to_owned(),
            phrase: "A cup of tea with milk, please.".to_owned(),
            duration_s: 2.4,
            level_mean_db,
            f0_median_hz: 190.0 + scatter(p.rng, 5.0),
            level_weighting: "A".to_owned().into(),
            level_calibrated: calibrated,
            level_terms: Some(terms.clone()),
            prosody: None,
        };
        p.keep(6.0, Some(n), fact);
    });
    if more {
        p.step("syllable-repetition", 2, |p, n| {
            let rate_hz = 5.2 + 0.3 * along + scatter(p.rng, 0.25);
            let fact = Fact::SyllablesCounted {
                exercise: "syllable-repetition".to_owned(),
                syllables: (rate_hz * 5.0) as u32,
                duration_s: 5.0,
                rate_hz,
                irregularity_pct: 9.0 + scatter(p.rng, 1.0),
            };
            p.keep(8.0, Some(n), fact);
        });
    }
    for exercise in life.also {
        p.step(exercise, 3, |p, n| {
            let fact =
                Fact::RepetitionDone { exercise: (*exercise).to_owned(), duration_s: 4.0, ended_by: "done".to_owned().into(), asked: None };
            p.keep(6.0, Some(n), fact);
        });
    }
    let chance: f64 = p.rng.random();
    if chance < 0.015 {
        p.keep(
            1.0,
            Some(1),
            Fact::SafetyStop { exercise_before: None, exercise: Some("long-ah".to_owned()), reason: "dizzy".to_owned().into() },
        );
    } else if chance < 0.025 {
        p.keep(1.0, None, Fact::SafetyStop { exercise_before: None, exercise: None, reason: "help".to_owned().into() });
    } else if chance < 0.06 {
        p.keep(1.0, None, Fact::Troubled { trouble: Trouble::RoomTalks });
    }
    let reason = if chance > 0.96 { "finished" } else { "completed" };
    let duration_s = p.at_s;
    p.keep(3.0, None, Fact::SessionEnded { reason: reason.to_owned().into(), steps_done: steps - 1, steps_prescribed: steps, duration_s });
    let began: ZonedDateTime =
        format!("{}T18:31:00[Europe/Berlin]", life.first.checked_add(day.days()).expect("a date")).parse().expect("a time");
    let ended = began.checked_add(SignedDuration::from_secs(p.at_s as i64)).expect("a time");
    let lines = journal_text(&p.entries).expect("finite").lines().map(str::to_owned).collect();
    WholeSession {
        number,
        package: None,
        started_at: began.to_string(),
        end: Some((ended.to_string(), reason.to_owned())),
        routine_title: "Voice practice".to_owned(),
        routine_text,
        software: "tidecount 0.1.0".to_owned(),
        parts: vec![WholePart { started_at: began.to_string(), lines }],
    }
}

/// A record of these lives in a folder.
pub fn keep(folder: &Path, lives: &[Life]) {
    let mut store = Store::open(folder).expect("a record");
    for life in lives {
        store.receive(life.client, &practices(life)).expect("kept");
    }
}
