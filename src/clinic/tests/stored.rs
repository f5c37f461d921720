//! What is kept of a month of practice, value for value what it was when the hash was taken.

use super::*;
use crate::engine::Engine;
use handover::{HandedPart, HandedSession};
use jiff::Timestamp;
use serde_json::value::RawValue;
use sha2::{Digest as _, Sha256};

const ROUTINE: &str = "title = \"Evening\"\nplan = [{ days = [\"monday\", \"thursday\"], at = \"18:30\" }]\n[[step]]\nexercise = \"long-ah\"\n\
    repetitions = 3\ntarget_s = 8\n[[step]]\nexercise = \"rapid-pa\"\n";

fn hold(at_s: f64, repetition: u32, duration_s: f64, level_db: f64) -> String {
    format!(
        "{{\"at_s\":{at_s},\"kind\":\"hold_measured\",\"step\":1,\"set\":1,\"repetition\":{repetition},\"exercise\":\"long-ah\",\"onset_s\":{},\
         \"offset_s\":{at_s},\"duration_s\":{duration_s},\"f0_median_hz\":181.25,\"f0_span_st\":0.75,\"level_mean_db\":{level_db},\
         \"level_fall_db\":1.5,\"level_weighting\":\"A\",\"level_calibrated\":true,\"f0_sd_st\":0.21,\"level_slope_db_per_s\":-0.2,\
         \"level_terms\":{{\"time_weighting\":\"energy-mean\",\"distance_cm\":30.0,\"calibration\":\"meter\",\"auto_gain\":false,\"clipped_s\":0.0}},\
         \"quality\":{{\"from_s\":1.0,\"to_s\":2.0,\"cpps_db\":14.25,\"jitter_local_pct\":0.6,\"jitter_rap_pct\":0.3,\"jitter_ppq5_pct\":null,\
         \"shimmer_local_pct\":3.1,\"shimmer_local_db\":0.28,\"shimmer_apq3_pct\":1.7,\"shimmer_apq11_pct\":2.6,\"hnr_db\":21.4}},\
         \"breaks\":1,\"masked_s\":0.5,\"complete\":true}}",
        at_s - duration_s
    )
}

/// Holds and levels fall over the last days; the rest is there once.
fn lines(number: i64) -> Vec<String> {
    let vary = (number % 5) as f64 * 0.25;
    let (duration_s, level_db) = if number > 24 { (6.0 + vary, 62.0 + vary) } else { (12.0 + vary, 72.0 + vary) };
    let mut lines = vec![
        r#"{"at_s":0.0,"kind":"session_begun","routine":"Evening","steps":2,"software":"tidecount 0.1.0"}"#.to_owned(),
        r#"{"at_s":0.1,"kind":"microphone_used","system":"PulseAudio","name":"Desk microphone","rate_hz":48000,"gain":"70 %"}"#.to_owned(),
        r#"{"at_s":0.2,"kind":"microphone_noted","what":"calibration","text":"by sound level meter"}"#.to_owned(),
        r#"{"at_s":1.0,"kind":"step_begun","step":1,"set":1,"repetition":1,"exercise":"long-ah","ramp_stage":2}"#.to_owned(),
    ];
    lines.extend((1..=3).map(|n| hold(20.0 * f64::from(n), n, duration_s - f64::from(n) * 0.5, level_db)));
    lines.push(
        r#"{"at_s":70.0,"kind":"step_done","step":1,"set":1,"repetition":3,"exercise":"long-ah","repetitions_done":3,"repetitions_prescribed":3}"#
            .to_owned(),
    );
    let once = [
        r#"{"at_s":70.1,"kind":"hold_in_noise","step":1,"set":1,"repetition":3,"exercise":"long-ah","over_room_db":5.5}"#,
        r#"{"at_s":71.0,"kind":"posture_held","step":2,"set":1,"repetition":1,"exercise":"chin-tuck","duration_s":5.0,"prescribed_s":5.5,"complete":false}"#,
        r#"{"at_s":72.0,"kind":"round_paced","step":2,"set":1,"repetition":1,"exercise":"paced-breathing","duration_s":10.0,"beat_s":1.25,"complete":true}"#,
        r#"{"at_s":73.0,"kind":"repetition_done","step":2,"set":1,"repetition":1,"exercise":"sip","duration_s":3.0,"ended_by":"next cue"}"#,
        r#"{"at_s":74.0,"kind":"syllables_counted","step":2,"set":1,"repetition":1,"exercise":"rapid-pa","syllables":27,"duration_s":5.2,"rate_hz":5.4,"irregularity_pct":0.0}"#,
        r#"{"at_s":75.0,"kind":"question_answered","step":2,"set":1,"repetition":1,"exercise":"word-questions","clue":"It barks","answer":null,"correct":false,"hint_given":true,"duration_s":2.25}"#,
        r#"{"at_s":76.0,"kind":"category_named","step":2,"set":1,"repetition":1,"exercise":"naming","category":"fruit","named":["apple","pear"],"duration_s":60.0,"complete":true}"#,
        r#"{"at_s":77.0,"kind":"phrase_read","step":2,"set":1,"repetition":1,"exercise":"functional-phrases","phrase":"Good evening","duration_s":1.5,"level_mean_db":-23.0,"f0_median_hz":null,"level_weighting":"C","level_calibrated":false}"#,
        r#"{"at_s":78.0,"kind":"safety_stop","step":2,"set":1,"repetition":1,"exercise":"sip","reason":"dizzy"}"#,
        r#"{"at_s":79.0,"kind":"step_stopped","step":2,"set":1,"repetition":1,"exercise":"sip","reason":"dizzy","repetitions_done":0,"repetitions_prescribed":2}"#,
        r#"{"at_s":80.0,"kind":"step_left_out","exercise":"head-lift","reason":"no spoken agreement"}"#,
        r#"{"at_s":81.0,"kind":"fall_noticed","step":1,"set":1,"repetition":3,"exercise":"long-ah","of":"duration","reference":12.0,"latest":8.0,"usual":1.0}"#,
        r#"{"at_s":82.0,"kind":"troubled","trouble":"room-talks"}"#,
        r#"{"at_s":83.0,"kind":"microphone_noted","what":"calibration-void","text":"another gain"}"#,
    ];
    if number % 7 == 3 {
        lines.extend(once.map(str::to_owned));
    }
    lines.push(
        r#"{"at_s":90.0,"kind":"session_ended","reason":"finished","steps_done":1,"steps_prescribed":2,"duration_s":90.0}"#.to_owned(),
    );
    lines
}

fn session(number: i64) -> ArrivingSession {
    let day = jiff::civil::date(2026, 3, 1).checked_add(jiff::Span::new().days(number)).expect("a day");
    let started_at = format!("{day}T18:30:00+02:00[+02:00]");
    let entries = lines(number).into_iter().map(|line| RawValue::from_string(line).expect("JSON")).collect();
    let handed = HandedSession {
        number,
        package: Some("p1".to_owned()),
        started_at: started_at.clone(),
        ended_at: Some(format!("{day}T18:31:30+02:00[+02:00]")),
        end_reason: Some("finished".to_owned()),
        routine_title: "Evening".to_owned(),
        routine_text: ROUTINE.to_owned(),
        software: "tidecount 0.1.0".to_owned(),
        parts: vec![HandedPart { started_at, entries }],
    };
    arriving(&handed).expect("reads")
}

const TABLES: [&str; 9] = ["session", "condition", "trial", "step", "event", "day", "measure", "digest", "routine"];

fn all(engine: &mut dyn Engine) -> String {
    let mut text = String::new();
    for table in TABLES {
        let mut lines: Vec<String> = Vec::new();
        engine
            .each(&format!("SELECT * FROM {table}"), &[], &mut |row| {
                lines.push(format!("{table}: {:?}\n", row.values()));
                Ok(())
            })
            .expect("reads");
        lines.sort();
        text.extend(lines);
    }
    text
}

#[test]
fn a_month_is_kept_as_it_was() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut clinic = Clinic::open(&Address::File(folder.path().join("clinic.sqlite"))).expect("opens");
    let made_at: Timestamp = "2026-02-27T09:00:00Z".parse().expect("a time");
    let package = DeskPackage { id: "p1".to_owned(), client: "grandpa".to_owned(), made_at, reply_key: "aa".to_owned() };
    clinic.adopt("key", Some("desk"), &[package]).expect("adopts");
    let arriving = Arriving {
        by: "aa".to_owned(),
        package: "p1".to_owned(),
        client: "grandpa".to_owned(),
        made_at: "2026-04-03T09:00:00Z".parse().expect("a time"),
        hash: "hash".to_owned(),
        sessions: (1..=31).map(session).collect(),
    };
    let arrived = clinic.import(&arriving).expect("takes it");
    let client = clinic.client("grandpa").expect("is there");
    let sheet = clinic.sheet(client, jiff::civil::date(2026, 4, 4)).expect("a sheet");
    let reasons: Vec<String> = sheet.attention.reasons.iter().map(reason_text).collect();
    let mut text = format!("{arrived:?}\n{reasons:#?}\n{:?}\n{:?}\n", sheet.digest, sheet.measures);
    text.push_str(&all(clinic.engine()));
    if let Some(file) = std::env::var_os("KEEP_CLINIC") {
        std::fs::write(file, &text).expect("writes");
    }
    let hash: String = Sha256::digest(&text).iter().take(8).map(|byte| format!("{byte:02x}")).collect();
    assert_eq!(hash, "19f844d54b688c59");
}
