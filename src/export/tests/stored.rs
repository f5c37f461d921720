//! What is written of every kind of trial, byte for byte what it was when these hashes were taken.

use super::samples::{ROUTINE, entries, kept};
use super::*;
use crate::fhir::{BundleKind, FhirExport};
use model::{Entry, Fact, Fall, LevelCalibration, LevelTerms, Position, VoiceQuality, parse_line};
use sha2::{Digest, Sha256};

fn placed(at_s: f64, repetition: u32, fact: Fact) -> Entry {
    Entry { at_s, fact, position: Some(Position { step: 1, set: 1, repetition }) }
}

/// What the evenings of the samples do not have.
fn further() -> Vec<Entry> {
    let of = |exercise: &str| exercise.to_owned();
    let quality = VoiceQuality {
        from_s: 150.0,
        to_s: 151.5,
        cpps_db: 14.25,
        jitter_local_pct: 0.61,
        jitter_rap_pct: 0.3,
        jitter_ppq5_pct: f64::NAN,
        shimmer_local_pct: 3.1,
        shimmer_local_db: 0.28,
        shimmer_apq3_pct: 1.7,
        shimmer_apq11_pct: 2.6,
        hnr_db: 21.4,
    };
    let hold = |f0_median_hz: f64, f0_sd_st, quality, terms| Fact::HoldMeasured {
        exercise: of("long-ah"),
        onset_s: 150.0,
        offset_s: 152.5,
        duration_s: 2.5,
        f0_median_hz,
        f0_span_st: 0.75,
        level_mean_db: 68.5,
        level_fall_db: f64::NAN,
        level_weighting: "C".into(),
        level_calibrated: true,
        f0_sd_st,
        level_slope_db_per_s: None,
        level_terms: terms,
        quality,
        climb: None,
        breaks: 2,
        masked_s: 1.0,
        complete: true,
    };
    let terms = LevelTerms { calibration: LevelCalibration::Rough, distance_cm: Some(30.0), clipped_s: 0.5, ..LevelTerms::default() };
    vec![
        placed(152.5, 1, hold(181.25, Some(0.21), Some(quality), Some(terms))),
        placed(153.5, 2, hold(0.0, Some(0.21), None, None)),
        placed(154.0, 3, Fact::PostureHeld { exercise: of("chin-tuck"), duration_s: 5.0, prescribed_s: 5.5, complete: false }),
        placed(155.0, 4, Fact::RoundPaced { exercise: of("paced-breathing"), duration_s: 10.0, beat_s: 1.25, complete: true }),
        placed(156.0, 5, Fact::RepetitionDone { exercise: of("sip"), duration_s: 3.0, ended_by: "next cue".into(), asked: None }),
        placed(
            157.0,
            6,
            Fact::SyllablesCounted { exercise: of("rapid-pa"), syllables: 27, duration_s: 5.2, rate_hz: 5.4, irregularity_pct: 0.0 },
        ),
        placed(
            158.0,
            7,
            Fact::QuestionAnswered {
                exercise: of("word-questions"),
                clue: "It barks".into(),
                answer: Some("dog".into()),
                correct: true,
                hint_given: true,
                duration_s: 2.25,
            },
        ),
        placed(
            159.0,
            8,
            Fact::CategoryNamed {
                exercise: of("naming"),
                category: "fruit".into(),
                named: vec!["apple".into(), "pear".into()],
                duration_s: 60.0,
                complete: true,
            },
        ),
        placed(160.0, 8, Fact::FallNoticed { exercise: of("long-ah"), of: Fall::Level, reference: 70.0, latest: 66.125, usual: 1.5 }),
        placed(161.0, 8, Fact::MicrophoneNoted { what: "calibration-void".into(), text: "another gain".into() }),
        placed(162.0, 8, Fact::StepLeftOut { exercise: of("glide-up"), reason: "no spoken agreement".into() }),
        placed(163.0, 8, Fact::NoAnswer { asked: 2 }),
        placed(164.0, 8, Fact::LoudLimitReached { loud_s: 300.5, limit_s: 300.0 }),
        placed(165.0, 8, Fact::SoundLost { lost_s: 0.25 }),
    ]
}

fn hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().take(8).map(|byte| format!("{byte:02x}")).collect()
}

#[test]
fn every_kind_of_trial_is_written_as_it_was() {
    let mut all = entries();
    let last = all.pop().expect("the end");
    // As the journal keeps them: rounded.
    let again = |entry: Entry| parse_line(&model::entry_line(&entry).expect("a line")).expect("an entry");
    all.extend(further().into_iter().map(again));
    all.push(Entry { at_s: 170.0, ..last });
    let kept = kept(9, "2026-10-27T18:31:00+01:00[Europe/Berlin]", all);
    let outline = Outline::of(ROUTINE);
    let practice = Practice::of(&kept, &outline, false);
    let mut tables = Vec::new();
    for table in TABLES {
        let mut writer = Writer::new(table, &mut tables).expect("a header");
        let rows: Vec<Row> = match table.name {
            "trials" => practice.trials.iter().map(|trial| trial_row(&practice, trial)).collect(),
            "steps" => practice.steps.iter().map(|step| step_row(&practice, step)).collect(),
            "practices" => vec![practice_row(&practice)],
            "goals" => Vec::new(),
            _ => practice.entries().filter_map(|(part, kept)| event_row(&practice, part, kept)).collect(),
        };
        rows.iter().for_each(|row| writer.row(row).expect("writes"));
        writer.finish().expect("writes");
    }
    let say = |key: &str, _: &[(&'static str, model::Arg)]| key.to_owned();
    let head = [kept.head.clone()];
    let mut export =
        FhirExport::begin(Vec::new(), BundleKind::Collection, "grandpa", &head, "2026-10-27T19:00:00.000+01:00", &say).expect("begins");
    export.practice(&practice).expect("writes");
    let fhir = export.finish().expect("ends");
    let mut lines = Vec::new();
    write_practice(&practice, &mut lines).expect("writes");
    if let Some(folder) = std::env::var_os("KEEP_EXPORTS") {
        let folder = std::path::PathBuf::from(folder);
        for (name, bytes) in [("tables.csv", &tables), ("fhir.json", &fhir), ("lines.jsonl", &lines)] {
            std::fs::write(folder.join(name), bytes).expect("writes");
        }
    }
    // They change with the version of the program, which stands in the FHIR bundle.
    assert_eq!([hash(&tables), hash(&fhir), hash(&lines)], ["b09ad2f028385220", "41a88540116c04e8", "cab9823d064d5e20"]);
}

/// A new measure has its column and its code, besides its declaration.
#[test]
fn every_measure_has_a_column_and_a_code() {
    let codes = crate::fhir::known_codes();
    for measure in model::Measure::ALL {
        let declared = measure.declared();
        let column = TABLES[0].column(declared.column);
        let unit_told = column.is_some_and(|column| column.unit == declared.unit.ucum());
        assert!(unit_told, "{}: no column {} in {}", declared.id, declared.column, declared.unit.ucum());
        assert!(codes.contains(&declared.term.code), "{}: no code {}", declared.id, declared.term.code);
    }
}
