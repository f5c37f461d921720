//! An invented client's practices, with every kind of trial and condition.

use jiff::ZonedDateTime;

use model::VoiceQuality;
use model::{KeptEntry, KeptHead, KeptPart, KeptPractice, SessionId, Source, journal_text};
use session::{Command, Entry, Fact, LevelCalibration, LevelTerms, Position, Trouble};

pub const ROUTINE: &str = r#"
title = "Evening & voice"
client = "grandpa"
plan = [{ days = ["monday", "thursday"], at = "18:30" }]

[[step]]
exercise = "long-ah"
repetitions = 3
target_s = 8

[[step]]
exercise = "glide-up"
repetitions = 2

[[step]]
exercise = "functional-phrases"
phrases = ["Good evening."]

[[step]]
exercise = "shoulder-rolls"
repetitions = 2

[[step]]
exercise = "rest"
"#;

pub fn time(text: &str) -> ZonedDateTime {
    text.parse().expect("a time")
}

pub fn at(step: u32, repetition: u32) -> Option<Position> {
    Some(Position { step, set: 1, repetition })
}

pub fn hold(exercise: &str, position: Option<Position>, onset_s: f64, duration_s: f64, terms: LevelTerms, complete: bool) -> Entry {
    let fact = Fact::HoldMeasured {
        exercise: exercise.into(),
        onset_s,
        offset_s: onset_s + duration_s,
        duration_s,
        f0_median_hz: 142.5,
        f0_span_st: 1.25,
        level_mean_db: if terms.calibration == LevelCalibration::Meter { 74.2 } else { -24.5 },
        level_fall_db: 2.5,
        level_weighting: "A".into(),
        level_calibrated: terms.calibration == LevelCalibration::Meter,
        f0_sd_st: Some(0.31),
        level_slope_db_per_s: Some(-0.4),
        level_terms: Some(terms),
        quality: Some(VoiceQuality {
            from_s: onset_s + 0.5,
            to_s: onset_s + 3.5,
            cpps_db: 14.25,
            jitter_local_pct: 0.6,
            jitter_rap_pct: 0.3,
            jitter_ppq5_pct: 0.3,
            shimmer_local_pct: 4.1,
            shimmer_local_db: 0.36,
            shimmer_apq3_pct: 2.1,
            shimmer_apq11_pct: f64::NAN,
            hnr_db: 19.5,
        }),
        climb: None,
        breaks: 1,
        masked_s: 0.0,
        complete,
    };
    Entry { at_s: onset_s + duration_s + 0.3, fact, position }
}

pub fn meter() -> LevelTerms {
    LevelTerms { distance_cm: Some(30.0), calibration: LevelCalibration::Meter, ..LevelTerms::default() }
}

fn plain(at_s: f64, fact: Fact) -> Entry {
    Entry { at_s, fact, position: None }
}

fn placed(at_s: f64, step: u32, repetition: u32, fact: Fact) -> Entry {
    Entry { at_s, fact, position: at(step, repetition) }
}

fn begun(at_s: f64, step: u32, exercise: &str) -> Entry {
    placed(at_s, step, 1, Fact::StepBegun { exercise: exercise.into(), ramp_stage: None })
}

/// Three holds, of which one in noise, and one cut off; a glide; a phrase; then dizzy.
pub fn entries() -> Vec<Entry> {
    vec![
        plain(0.0, Fact::SessionBegun { routine: "Evening & voice".into(), steps: 5, software: "tidecount 0.1.0".into() }),
        plain(
            0.01,
            Fact::MicrophoneUsed { system: "PulseAudio".into(), name: "Desk microphone".into(), rate_hz: 48_000, gain: "70 %".into() },
        ),
        plain(0.02, Fact::MicrophoneNoted { what: "calibration".into(), text: "Desk microphone: by sound level meter".into() }),
        plain(4.0, Fact::CommandHeard { command: Command::Ready, text: "ready".into(), confidence: 0.9 }),
        begun(5.0, 1, "long-ah"),
        hold("long-ah", at(1, 1), 20.0, 8.25, meter(), true),
        hold("long-ah", at(1, 2), 40.0, 9.5, meter(), true),
        placed(49.8, 1, 2, Fact::HoldInNoise { exercise: "long-ah".into(), over_room_db: 5.5 }),
        hold("long-ah", at(1, 3), 60.0, 3.0, meter(), false),
        hold("long-ah", at(1, 3), 80.0, 8.75, LevelTerms { auto_gain: true, ..meter() }, true),
        placed(90.0, 1, 3, Fact::StepDone { exercise: "long-ah".into(), repetitions_done: 3, repetitions_prescribed: 3 }),
        begun(91.0, 2, "glide-up"),
        hold("glide-up", at(2, 1), 100.0, 4.0, LevelTerms::default(), true),
        placed(
            105.0,
            2,
            2,
            Fact::StepStopped { exercise: "glide-up".into(), reason: "skipped".into(), repetitions_done: 1, repetitions_prescribed: 2 },
        ),
        begun(106.0, 3, "functional-phrases"),
        placed(
            120.0,
            3,
            1,
            Fact::PhraseRead {
                exercise: "functional-phrases".into(),
                phrase: "=Good <evening>, \"dear\"".into(),
                duration_s: 1.5,
                level_mean_db: -23.0,
                f0_median_hz: f64::NAN,
                level_weighting: "A".into(),
                level_calibrated: false,
                level_terms: Some(LevelTerms { clipped_s: 0.2, ..LevelTerms::default() }),
                prosody: None,
            },
        ),
        placed(121.0, 3, 1, Fact::StepDone { exercise: "functional-phrases".into(), repetitions_done: 1, repetitions_prescribed: 1 }),
        begun(122.0, 4, "shoulder-rolls"),
        placed(
            130.0,
            4,
            1,
            Fact::RepetitionDone { exercise: "shoulder-rolls".into(), duration_s: 4.0, ended_by: "done".into(), asked: None },
        ),
        placed(131.0, 4, 1, Fact::Troubled { trouble: Trouble::RoomTalks }),
        placed(132.0, 4, 2, Fact::SafetyStop { exercise_before: None, exercise: Some("shoulder-rolls".into()), reason: "dizzy".into() }),
        placed(
            132.1,
            4,
            2,
            Fact::StepStopped { exercise: "shoulder-rolls".into(), reason: "dizzy".into(), repetitions_done: 1, repetitions_prescribed: 2 },
        ),
        plain(140.0, Fact::SessionEnded { reason: "finished".into(), steps_done: 2, steps_prescribed: 5, duration_s: 140.0 }),
    ]
}

pub fn kept(number: i64, started: &str, entries: Vec<Entry>) -> KeptPractice {
    let started_at = time(started);
    let end = entries.iter().find_map(|entry| match &entry.fact {
        Fact::SessionEnded { reason, .. } => {
            Some((time(started).checked_add(jiff::SignedDuration::from_secs(140)).expect("a time"), reason.to_string()))
        }
        _ => None,
    });
    let head = KeptHead {
        id: SessionId(number),
        number,
        client: "grandpa".into(),
        started_at: started_at.clone(),
        end,
        routine_title: "Evening & voice".into(),
        routine_text: ROUTINE.into(),
        source: Source::Live,
        software: "tidecount 0.1.0".into(),
        received: false,
        under_way: false,
    };
    let entries = (1..).zip(entries).map(|(number, entry)| KeptEntry {
        number,
        line: journal_text(std::slice::from_ref(&entry)).expect("a line").trim_end().to_owned(),
        entry,
    });
    KeptPractice { head, parts: vec![KeptPart { started_at, entries: entries.collect() }] }
}

/// The evening before daylight saving ends, and the next one, broken off.
pub fn two_evenings() -> Vec<KeptPractice> {
    let broken_off = entries().into_iter().take(6).collect();
    vec![kept(7, "2026-10-22T18:30:05.25+02:00[Europe/Berlin]", entries()), kept(8, "2026-10-26T18:31:00+01:00[Europe/Berlin]", broken_off)]
}

/// A goal that is measured, and one of daily life whose words a spreadsheet would take for a formula.
pub fn goals() -> Vec<progress::GoalState> {
    use jiff::civil::date;
    use progress::{Aim, Direction, Goal, GoalState, Mark, MarkKind, NotMet, Standing};
    let goal = |id, words: &str, aim, marks| Goal {
        id,
        words: words.to_owned(),
        aim,
        set_on: date(2026, 10, 1),
        due: date(2027, 1, 31),
        set_by: "the therapist".to_owned(),
        marks,
    };
    let aim = Aim { exercise: "long-ah".to_owned(), measure: model::Measure::HoldS, direction: Direction::AtLeast, target: 12.0 };
    let mark = Mark { kind: MarkKind::Met, on: date(2026, 11, 20), by: "the therapist".to_owned() };
    vec![
        GoalState {
            goal: goal(1, "I want the breath for a whole verse.", Some(aim), Vec::new()),
            standing: Standing::NotMet(NotMet::Short),
            typical: Some(10.5),
        },
        GoalState { goal: goal(2, "=SUM(1)", None, vec![mark]), standing: Standing::Met, typical: None },
    ]
}
