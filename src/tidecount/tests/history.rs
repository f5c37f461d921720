use super::*;
use record::{NewSession, Source};
use session::{Fact, Position};

fn args(folder: &Path) -> HistoryArgs {
    HistoryArgs { id: None, client: None, last: 20, json: false, classes: false, csv: false, data: DataFolder::of(folder.to_path_buf()) }
}

fn output(args: &HistoryArgs) -> Result<String, Failure> {
    let mut out = Vec::new();
    list(args, &mut out)?;
    Ok(String::from_utf8(out).expect("text"))
}

fn practised(folder: &Path) {
    let mut store = Store::open(folder).expect("opens");
    let started_at = "2026-11-24T19:00:00+01:00[Europe/Berlin]".parse().expect("a time");
    let new = NewSession {
        protocol: None,
        client: "Client",
        routine_title: "Evening routine",
        routine_text: "",
        source: Source::Live,
        software: "tidecount 0.1.0",
        started_at: &started_at,
    };
    let session = store.begin(&new).expect("begins");
    let here = Some(Position { step: 1, set: 1, repetition: 2 });
    let hold = Fact::HoldMeasured {
        exercise: "long-ah".into(),
        onset_s: 27.9,
        offset_s: 40.3,
        duration_s: 12.4,
        f0_median_hz: 182.3,
        f0_span_st: f64::NAN,
        level_mean_db: -24.1,
        level_fall_db: 3.4,
        level_weighting: "A".into(),
        level_calibrated: false,
        f0_sd_st: None,
        level_slope_db_per_s: None,
        level_terms: None,
        quality: None,
        climb: None,
        breaks: 1,
        masked_s: 0.0,
        complete: true,
    };
    for (at_s, position, fact) in [
        (0.0, None, Fact::SessionBegun { routine: "Evening routine".into(), steps: 4, software: "tidecount 0.1.0".into() }),
        (40.3, here, hold),
        (600.0, None, Fact::SessionEnded { reason: "completed".into(), steps_done: 2, steps_prescribed: 4, duration_s: 600.0 }),
    ] {
        store.append(session, &Entry { at_s, fact, position }).expect("keeps");
    }
}

#[test]
fn practices_are_listed_and_one_is_read_entry_by_entry() {
    let dir = tempfile::tempdir().expect("a folder");
    practised(dir.path());
    let list = output(&args(dir.path())).expect("lists");
    let one = output(&HistoryArgs { id: Some(1), ..args(dir.path()) }).expect("reads");
    insta::assert_snapshot!(format!("{list}\n{one}"));
    let json = output(&HistoryArgs { json: true, ..args(dir.path()) }).expect("lists");
    let value: Value = serde_json::from_str(&json).expect("one object");
    assert_eq!(value["best_hold_s"]["long-ah"], json!(12.4));
    assert_eq!(value["duration_s"], json!(600.0));
    let lines = output(&HistoryArgs { json: true, id: Some(1), ..args(dir.path()) }).expect("reads");
    assert_eq!(record::read_journal("out", &lines).expect("a journal").entries.len(), 3);
    assert!(output(&HistoryArgs { client: Some("Nobody".into()), ..args(dir.path()) }).expect("lists").contains("no practices yet"));
}

#[test]
fn without_a_record_none_is_made() {
    let dir = tempfile::tempdir().expect("a folder");
    let folder = dir.path().join("data");
    assert!(output(&args(&folder)).expect("lists").contains("no practices yet"));
    assert!(!folder.exists());
    let error = output(&HistoryArgs { id: Some(7), ..args(&folder) }).expect_err("none");
    assert!(error.to_string().contains("number 7"), "{error}");
}
