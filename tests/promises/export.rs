//! `tidecount export` as a person runs it, read back by other readers.
//!
//! With TIDECOUNT_KEEP_EXPORTS=FOLDER what is written is kept there, for `tests/checks/exports.sh`, which has it read by programs that are no
//! part of the tests: the HAPI validator, pandas, frictionless, csvw, Python's icalendar, Praat.

#[path = "../support/program.rs"]
mod program;

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use jiff::{SignedDuration, ZonedDateTime};
use program::{Place, err, out, output, tidecount};
use record::{NewSession, SessionId, SoundRecorder, Source, Store, read_journal};
use serde_json::Value;

const ROUTINE: &str = r#"
title = "Evening voice"
client = "grandpa"
plan = [{ days = ["monday", "thursday"], at = "18:30" }, { days = ["saturday"], at = "10:00" }]

[[step]]
exercise = "long-ah"
repetitions = 3
target_s = 8

[[step]]
exercise = "shoulder-rolls"
repetitions = 2
"#;

/// A practice as its journal would have it; times on the sample clock.
const JOURNAL: &str = r#"{"at_s":0.0,"kind":"session_begun","routine":"Evening voice","steps":2,"software":"tidecount 0.1.0"}
{"at_s":0.01,"kind":"microphone_used","system":"PulseAudio","name":"=cmd|' /C calc'!A0","rate_hz":48000,"gain":"70 %"}
{"at_s":1.0,"kind":"command_heard","command":"ready","text":"ready","confidence":0.9}
{"at_s":1.5,"kind":"step_begun","step":1,"set":1,"repetition":1,"exercise":"long-ah"}
{"at_s":6.3,"kind":"hold_measured","step":1,"set":1,"repetition":1,"exercise":"long-ah","onset_s":2.0,"offset_s":6.0,"duration_s":4.0,"f0_median_hz":200.0,"f0_span_st":0.5,"level_mean_db":-20.0,"level_fall_db":0.1,"level_weighting":"A","level_calibrated":false,"level_terms":{"time_weighting":"energy-mean","distance_cm":null,"calibration":"none","auto_gain":false,"clipped_s":0.0},"breaks":0,"masked_s":0.0,"complete":true}
{"at_s":9.0,"kind":"command_heard","step":1,"set":1,"repetition":2,"command":"stop","text":"stop","confidence":0.95}
{"at_s":9.1,"kind":"hold_measured","step":1,"set":1,"repetition":2,"exercise":"long-ah","onset_s":8.0,"offset_s":9.0,"duration_s":1.0,"f0_median_hz":200.0,"f0_span_st":0.5,"level_mean_db":-20.0,"level_fall_db":0.1,"level_weighting":"A","level_calibrated":false,"level_terms":{"time_weighting":"energy-mean","distance_cm":null,"calibration":"none","auto_gain":false,"clipped_s":0.0},"breaks":0,"masked_s":0.0,"complete":false}
{"at_s":9.2,"kind":"step_stopped","step":1,"set":1,"repetition":2,"exercise":"long-ah","reason":"finished early","repetitions_done":1,"repetitions_prescribed":3}
{"at_s":10.0,"kind":"session_ended","reason":"finished","steps_done":0,"steps_prescribed":2,"duration_s":10.0}
"#;

/// A line of every kind that an export tells of, with a calibrated microphone.
const EVERY_KIND: &str = r#"{"at_s":0.0,"kind":"session_begun","routine":"All","steps":9,"software":"tidecount 0.1.0"}
{"at_s":0.01,"kind":"microphone_used","system":"PulseAudio","name":"Desk <microphone> & co","rate_hz":48000,"gain":"70 %"}
{"at_s":0.02,"kind":"microphone_noted","what":"calibration","text":"Desk microphone: by sound level meter"}
{"at_s":2.0,"kind":"agreement","given":false,"exercises":["tongue-hold-swallow"]}
{"at_s":2.1,"kind":"sound_consent","given":null,"days":30}
{"at_s":2.1,"kind":"step_left_out","exercise":"tongue-hold-swallow","reason":"no spoken agreement"}
{"at_s":3.0,"kind":"step_begun","step":1,"set":1,"repetition":1,"exercise":"long-ah","ramp_stage":2}
{"at_s":20.0,"kind":"hold_measured","step":1,"set":1,"repetition":1,"exercise":"long-ah","onset_s":5.0,"offset_s":19.6,"duration_s":14.6,"f0_median_hz":142.0,"f0_span_st":1.2,"f0_sd_st":0.31,"level_mean_db":74.2,"level_fall_db":2.0,"level_slope_db_per_s":-0.2,"level_weighting":"C","level_calibrated":true,"level_terms":{"time_weighting":"energy-mean","distance_cm":30.0,"calibration":"meter","auto_gain":false,"clipped_s":0.2},"quality":{"from_s":6.0,"to_s":9.0,"cpps_db":14.2,"jitter_local_pct":0.6,"jitter_rap_pct":0.3,"jitter_ppq5_pct":null,"shimmer_local_pct":4.1,"shimmer_local_db":0.36,"shimmer_apq3_pct":2.1,"shimmer_apq11_pct":3.3,"hnr_db":19.5},"breaks":1,"masked_s":0.5,"complete":true}
{"at_s":20.1,"kind":"hold_in_noise","step":1,"set":1,"repetition":1,"exercise":"long-ah","over_room_db":5.5}
{"at_s":40.0,"kind":"hold_measured","step":1,"set":1,"repetition":2,"exercise":"long-ah","onset_s":30.0,"offset_s":39.0,"duration_s":9.0,"f0_median_hz":null,"f0_span_st":null,"level_mean_db":70.0,"level_fall_db":null,"level_weighting":"A","level_calibrated":true,"level_terms":{"time_weighting":"energy-mean","distance_cm":30.0,"calibration":"rough","auto_gain":true,"clipped_s":0.0},"breaks":0,"masked_s":4.0,"complete":true}
{"at_s":41.0,"kind":"step_done","step":1,"set":1,"repetition":2,"exercise":"long-ah","repetitions_done":2,"repetitions_prescribed":2}
{"at_s":42.0,"kind":"step_begun","step":3,"set":1,"repetition":1,"exercise":"chin-tuck-ball"}
{"at_s":60.0,"kind":"posture_held","step":3,"set":1,"repetition":1,"exercise":"chin-tuck-ball","duration_s":8.0,"prescribed_s":10.0,"complete":false}
{"at_s":61.0,"kind":"safety_stop","step":3,"set":1,"repetition":1,"exercise":"chin-tuck-ball","reason":"pain"}
{"at_s":61.1,"kind":"step_stopped","step":3,"set":1,"repetition":1,"exercise":"chin-tuck-ball","reason":"pain","repetitions_done":0,"repetitions_prescribed":2}
{"at_s":62.0,"kind":"step_begun","step":4,"set":1,"repetition":1,"exercise":"nasal-breathing"}
{"at_s":75.0,"kind":"round_paced","step":4,"set":1,"repetition":1,"exercise":"nasal-breathing","duration_s":8.0,"beat_s":1.0,"complete":true}
{"at_s":75.1,"kind":"step_done","step":4,"set":1,"repetition":1,"exercise":"nasal-breathing","repetitions_done":1,"repetitions_prescribed":1}
{"at_s":76.0,"kind":"step_begun","step":5,"set":1,"repetition":1,"exercise":"shoulder-rolls"}
{"at_s":82.0,"kind":"repetition_done","step":5,"set":1,"repetition":1,"exercise":"shoulder-rolls","duration_s":4.0,"ended_by":"next cue"}
{"at_s":83.0,"kind":"troubled","step":5,"set":1,"repetition":1,"trouble":"microphone-gain"}
{"at_s":84.0,"kind":"step_begun","step":6,"set":1,"repetition":1,"exercise":"functional-phrases"}
{"at_s":90.0,"kind":"phrase_read","step":6,"set":1,"repetition":1,"exercise":"functional-phrases","phrase":"@Good evening, \"dear\"","duration_s":1.5,"level_mean_db":68.0,"f0_median_hz":150.0,"level_weighting":"A","level_calibrated":true,"level_terms":{"time_weighting":"energy-mean","distance_cm":null,"calibration":"void","auto_gain":false,"clipped_s":0.0}}
{"at_s":91.0,"kind":"step_begun","step":7,"set":1,"repetition":1,"exercise":"syllable-repetition"}
{"at_s":97.0,"kind":"syllables_counted","step":7,"set":1,"repetition":1,"exercise":"syllable-repetition","syllables":21,"duration_s":4.0,"rate_hz":5.2,"irregularity_pct":null}
{"at_s":98.0,"kind":"step_begun","step":8,"set":1,"repetition":1,"exercise":"word-questions"}
{"at_s":110.0,"kind":"question_answered","step":8,"set":1,"repetition":1,"exercise":"word-questions","clue":"Opposite of up","answer":null,"correct":false,"hint_given":true,"duration_s":7.0}
{"at_s":111.0,"kind":"step_begun","step":9,"set":1,"repetition":1,"exercise":"of-tomorrow"}
{"at_s":170.0,"kind":"category_named","step":9,"set":1,"repetition":1,"exercise":"of-tomorrow","category":"animals","named":["cat","-dog"],"duration_s":60.0,"complete":true}
{"at_s":171.0,"kind":"sound_lost","lost_s":0.2}
{"at_s":171.5,"kind":"recogniser_restarted","lost_s":0.6}
{"at_s":172.0,"kind":"room_loud","loud":true,"room_db":-30.0}
{"at_s":173.0,"kind":"loud_limit_reached","loud_s":300.0,"limit_s":300.0}
{"at_s":174.0,"kind":"fall_noticed","exercise":"long-ah","of":"level","reference":74.0,"latest":68.0,"usual":1.5}
{"at_s":175.0,"kind":"rest_offered","taken":true}
{"at_s":800.0,"kind":"no_answer","asked":2}
{"at_s":801.0,"kind":"session_ended","reason":"no-answer","steps_done":2,"steps_prescribed":9,"duration_s":801.0}
"#;

/// The holds of the journal, s.
const HOLDS_S: [(f64, f64); 2] = [(2.0, 6.0), (8.0, 9.0)];

fn time(text: &str) -> ZonedDateTime {
    text.parse().expect("a time")
}

fn keep(folder: &Path, client: &str, source: Source, started: &ZonedDateTime) -> SessionId {
    keep_journal(folder, client, source, started, JOURNAL, ROUTINE)
}

fn keep_journal(folder: &Path, client: &str, source: Source, started: &ZonedDateTime, journal: &str, routine_text: &str) -> SessionId {
    let mut store = Store::open(folder).expect("opens");
    let new = NewSession {
        protocol: None,
        client,
        routine_title: "Evening voice",
        routine_text,
        source,
        software: "tidecount 0.1.0",
        started_at: started,
    };
    let session = store.begin(&new).expect("begins");
    for entry in read_journal("a test", journal).expect("a journal").entries {
        store.append(session, &entry).expect("keeps");
    }
    session
}

/// Three evenings of grandpa, over the end of daylight saving, one of grandma, a rehearsal of each.
fn record(place: &Place) -> PathBuf {
    let folder = place.path("record");
    let first = time("2026-10-22T18:30:00+02:00[Europe/Berlin]");
    for evening in 0..3 {
        keep(&folder, "grandpa", Source::Live, &first.checked_add(jiff::Span::new().days(evening * 2)).expect("a day"));
    }
    keep(&folder, "grandma", Source::Live, &first.checked_add(SignedDuration::from_hours(1)).expect("a time"));
    keep(&folder, "grandpa", Source::Rehearsal, &first);
    folder
}

fn export(folder: &Path, args: &[&str]) -> Output {
    let mut command = tidecount(["export"]);
    command.args(args).arg("--data").arg(folder);
    output(&mut command)
}

fn well(done: &Output) -> String {
    assert!(done.status.success(), "{}", err(done));
    out(done)
}

/// Fails, with a text that holds all of these and no panic.
fn refused(done: &Output, parts: &[&str]) {
    let text = err(done);
    assert!(!done.status.success() && !text.contains("panicked"), "{text}");
    for part in parts {
        assert!(text.contains(part), "{part:?} is not in {text:?}");
    }
}

/// What is to be read by other programs afterwards.
fn kept(name: &str, bytes: &[u8]) {
    if let Some(folder) = std::env::var_os("TIDECOUNT_KEEP_EXPORTS") {
        std::fs::create_dir_all(&folder).expect("a folder");
        std::fs::write(Path::new(&folder).join(name), bytes).expect("writes");
    }
}

#[test]
fn csv_goes_to_standard_output_or_to_a_folder_with_its_dictionary() {
    let place = Place::new();
    let folder = record(&place);
    let text = well(&export(&folder, &["csv", "--client", "grandpa"]));
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    assert_eq!(reader.headers().expect("a header").get(0), Some("client"));
    let rows: Vec<csv::StringRecord> = reader.records().map(|row| row.expect("a row")).collect();
    assert_eq!(rows.len(), 3 * 2);
    assert!(rows.iter().all(|row| row.get(0) == Some("grandpa") && row.get(3) == Some("live")));
    assert_eq!(well(&export(&folder, &["csv"])).lines().count(), 1 + 4 * 2, "everybody's");
    assert_eq!(well(&export(&folder, &["csv", "--source", "all"])).lines().count(), 1 + 5 * 2);
    assert_eq!(
        well(&export(&folder, &["csv", "--table", "practices", "--from", "2026-10-23", "--to", "2026-10-24"])).lines().count(),
        1 + 1
    );
    let target = place.path("tables");
    let name = target.to_str().expect("a name");
    well(&export(&folder, &["csv", "--out", name]));
    let files = ["trials.csv", "steps.csv", "practices.csv", "events.csv", "goals.csv", "data-dictionary.csv", "csv-metadata.json"];
    for file in files {
        let bytes = std::fs::read(target.join(file)).expect(file);
        assert!(!bytes.is_empty());
        kept(file, &bytes);
    }
    assert_eq!(std::fs::read_dir(&target).expect("the folder").count(), files.len(), "nothing is left beside");
    let trials = std::fs::read_to_string(target.join("trials.csv")).expect("trials");
    assert!(trials.contains("'=cmd") && !trials.contains(",=cmd"));
    // Not written over unasked.
    std::fs::write(target.join("steps.csv"), "mine").expect("writes");
    refused(&export(&folder, &["csv", "--out", name]), &["trials.csv", "--force"]);
    assert_eq!(std::fs::read_to_string(target.join("steps.csv")).expect("steps"), "mine");
    well(&export(&folder, &["csv", "--out", name, "--force"]));
    assert_ne!(std::fs::read_to_string(target.join("steps.csv")).expect("steps"), "mine");
    assert_eq!(well(&export(&folder, &["csv", "--client", "grandpa"])), text, "the same each time");
}

#[test]
fn json_lines_are_valid_against_the_published_schema() {
    let place = Place::new();
    let folder = record(&place);
    let text = well(&export(&folder, &["json", "--client", "grandpa"]));
    kept("practices.jsonl", text.as_bytes());
    let schema =
        std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("docs/practice-lines.schema.json")).expect("the schema");
    let validator = jsonschema::draft202012::new(&serde_json::from_str(&schema).expect("JSON")).expect("a schema");
    let lines: Vec<Value> = text.lines().map(|line| serde_json::from_str(line).expect("JSON")).collect();
    assert_eq!(lines.len(), 3 * (1 + JOURNAL.lines().count()));
    assert!(lines.iter().all(|line| validator.is_valid(line)));
    let path = place.path("all.jsonl");
    well(&export(&folder, &["jsonl", "--out", path.to_str().expect("a name")]));
    assert_eq!(std::fs::read_to_string(path).expect("lines").lines().count(), 4 * (1 + JOURNAL.lines().count()));
}

#[test]
fn fhir_is_of_one_client_and_valid() {
    let place = Place::new();
    let folder = record(&place);
    refused(&export(&folder, &["fhir"]), &["one client", "grandma", "grandpa"]);
    let path = place.path("bundle.json");
    well(&export(&folder, &["fhir", "--client", "grandpa", "--out", path.to_str().expect("a name")]));
    let text = std::fs::read_to_string(path).expect("a bundle");
    kept("bundle.json", text.as_bytes());
    let transaction = well(&export(&folder, &["fhir", "--client", "grandpa", "--transaction"]));
    kept("transaction.json", transaction.as_bytes());
    kept("rehearsal.json", well(&export(&folder, &["fhir", "--client", "grandpa", "--source", "rehearsal"])).as_bytes());
    let schema: Value =
        serde_json::from_str(include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/checks/fhir/fhir.schema.slice.json"))).expect("JSON");
    let validator = jsonschema::draft6::new(&schema).expect("a schema");
    for text in [&text, &transaction] {
        let bundle: Value = serde_json::from_str(text).expect("JSON");
        assert!(validator.is_valid(&bundle));
    }
    assert!(!text.contains("dB[SPL]"), "nothing was calibrated");
    assert!(!text.contains("grandma"));
}

/// Every kind of trial and event in every format, under a routine that this version can read, and one that it cannot.
#[test]
fn every_kind_of_entry_is_told() {
    let place = Place::new();
    let folder = place.path("record");
    let exercises = [
        "long-ah",
        "tongue-hold-swallow",
        "chin-tuck-ball",
        "nasal-breathing",
        "shoulder-rolls",
        "functional-phrases",
        "syllable-repetition",
        "word-questions",
        "of-tomorrow",
    ];
    let steps: String = exercises.iter().map(|exercise| format!("[[step]]\nexercise = \"{exercise}\"\n")).collect();
    for (day, routine) in [(1, format!("title = \"All\"\n{steps}")), (2, "no routine".to_owned())] {
        let started = time("2026-03-01T18:30:00+01:00[Europe/Berlin]").checked_add(jiff::Span::new().days(day)).expect("a day");
        keep_journal(&folder, "grand\u{e9}", Source::Live, &started, EVERY_KIND, &routine);
    }
    let text = well(&export(&folder, &["fhir"]));
    kept("every-kind.json", text.as_bytes());
    let bundle: Value = serde_json::from_str(&text).expect("JSON");
    let schema: Value =
        serde_json::from_str(include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/checks/fhir/fhir.schema.slice.json"))).expect("JSON");
    let validator = jsonschema::draft6::new(&schema).expect("a schema");
    for entry in bundle["entry"].as_array().expect("entries") {
        assert!(validator.is_valid(&entry["resource"]), "{:#}", entry["resource"]);
    }
    let left_out = bundle["entry"]
        .as_array()
        .expect("entries")
        .iter()
        .map(|entry| &entry["resource"])
        .filter(|one| one["resourceType"] == "Procedure" && one["status"] == "not-done");
    assert_eq!(left_out.filter(|one| one["statusReason"]["text"] == "no spoken agreement").count(), 2);
    let rows = |table: &str| {
        let text = well(&export(&folder, &["csv", "--table", table]));
        csv::Reader::from_reader(text.as_bytes())
            .into_deserialize::<std::collections::BTreeMap<String, String>>()
            .map(|row| row.expect("a row"))
            .collect::<Vec<_>>()
    };
    let trials = rows("trials");
    let kinds: std::collections::BTreeSet<&str> = trials.iter().map(|row| row["kind"].as_str()).collect();
    assert_eq!(kinds.len(), 8, "{kinds:?}");
    let why: Vec<&str> = trials.iter().take(2).map(|row| row["discarded_for"].as_str()).collect();
    assert_eq!(why, ["in-noise", "masked"]);
    let named = trials.iter().find(|row| row["kind"] == "category").expect("a category");
    assert_eq!((named["named"].as_str(), named["named_count"].as_str()), ("cat | -dog", "2"));
    let events: std::collections::BTreeSet<String> = rows("events").into_iter().map(|row| row["event"].clone()).collect();
    assert_eq!(events.len(), 13, "{events:?}");
    let steps = rows("steps");
    assert_eq!(steps.iter().filter(|row| row["status"] == "left-out").count(), 2);
    let schema: Value =
        serde_json::from_str(include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/docs/practice-lines.schema.json"))).expect("JSON");
    let validator = jsonschema::draft202012::new(&schema).expect("a schema");
    assert!(well(&export(&folder, &["json"])).lines().all(|line| validator.is_valid(&serde_json::from_str(line).expect("JSON"))));
}

#[test]
fn the_plan_becomes_a_calendar_with_and_without_a_record() {
    let place = Place::new();
    let routine = place.write("evening.toml", ROUTINE);
    let nowhere = place.path("nowhere");
    let name = routine.to_str().expect("a name");
    let text = well(&export(&nowhere, &["calendar", name, "--from", "2026-10-19", "--weeks", "6"]));
    kept("plan.ics", text.as_bytes());
    assert!(!nowhere.exists(), "no record is made");
    let read = |text: &str| ical::IcalParser::new(text.as_bytes()).next().expect("a calendar").expect("readable");
    let value = |event: &ical::parser::ical::component::IcalEvent, name: &str| {
        event.properties.iter().find(|p| p.name == name).and_then(|p| p.value.clone())
    };
    let calendar = read(&text);
    assert_eq!(calendar.events.len(), 2);
    assert_eq!(value(&calendar.events[0], "RRULE").as_deref(), Some("FREQ=WEEKLY;BYDAY=MO,TH;COUNT=12"));
    assert_eq!(value(&calendar.events[1], "DTSTART").as_deref(), Some("20261024T100000"));
    assert!(calendar.events.iter().all(|event| event.alarms.len() == 1));
    let quiet = read(&well(&export(&nowhere, &["calendar", name, "--from", "2026-10-19", "--no-alarm"])));
    assert!(quiet.events.iter().all(|event| event.alarms.is_empty()));
    // The household's, and out of the record.
    let household = place.write("household.toml", "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\n");
    let of_household = well(&export(&nowhere, &["calendar", "--household", household.to_str().expect("a name"), "--from", "2026-10-19"]));
    let folder = record(&place);
    let of_record = well(&export(&folder, &["calendar", "--client", "grandpa", "--from", "2026-10-19"]));
    let uids = |text: &str| read(text).events.iter().map(|event| value(event, "UID")).collect::<Vec<_>>();
    assert_eq!((uids(&of_household), uids(&of_record)), (uids(&text), uids(&text)), "wherever it comes from, it is the same practice");
    let without = place.write("without.toml", "title = \"No plan\"\n[[step]]\nexercise = \"long-ah\"\n");
    refused(&export(&nowhere, &["calendar", without.to_str().expect("a name")]), &["No plan", "plan = ["]);
    refused(&export(&nowhere, &["calendar"]), &["evening.toml"]);
    refused(&export(&nowhere, &["calendar", name, "--from", "2026-10-20", "--to", "2026-10-20"]), &["no practice on any of these days"]);
    refused(&export(&folder, &["calendar"]), &["--client", "grandma", "grandpa"]);
}

/// A tone during each hold, silence else.
fn sound(rate_hz: u32, length_s: f64, begins_at_s: f64) -> Vec<f32> {
    let rate = f64::from(rate_hz);
    let tone = |k: usize| {
        let at_s = k as f64 / rate + begins_at_s;
        let held = HOLDS_S.iter().any(|(from_s, to_s)| (*from_s..*to_s).contains(&at_s));
        if held { (0.3 * (at_s * 200.0 * std::f64::consts::TAU).sin()) as f32 } else { 0.0 }
    };
    (0..(length_s * rate) as usize).map(tone).collect()
}

/// Has Praat open the pair and look whether the sound is where the intervals say; says "skipped" where praat-parselmouth is not there.
fn praat(grid: &Path, sound: &Path) {
    let there = Command::new("python3").args(["-c", "import parselmouth"]).output().is_ok_and(|done| done.status.success());
    if !there {
        skipping::skip(skipping::Missing::Extra, "python3 with praat-parselmouth is not there");
        return;
    }
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/checks/textgrid/check.py");
    let done = output(Command::new("python3").arg(script).arg(grid).arg(sound).arg("10"));
    println!("{}", out(&done));
    assert!(done.status.success(), "{}{}", out(&done), err(&done));
}

#[test]
fn a_recording_and_its_journal_become_a_text_grid_that_praat_opens() {
    let place = Place::new();
    let (wav, grid) = (place.path("client.wav"), place.path("client.TextGrid"));
    let spec = hound::WavSpec { channels: 1, sample_rate: 16_000, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(&wav, spec).expect("a file");
    sound(16_000, 9.5, 0.0).iter().for_each(|x| writer.write_sample((x * 32_767.0) as i16).expect("writes"));
    writer.finalize().expect("writes");
    let journal = place.write("j.jsonl", JOURNAL);
    let mut command = tidecount(["export", "textgrid", "--journal"]);
    command.arg(&journal).arg("--sound").arg(&wav).arg("--out").arg(&grid);
    well(&output(&mut command));
    let text = std::fs::read_to_string(&grid).expect("a text grid");
    assert!(text.starts_with("File type = \"ooTextFile\"\nObject class = \"TextGrid\"\n") && text.contains("xmax = 9.5 \n"));
    assert!(text.contains("long-ah 1.1.1 4 s") && text.contains("cut off by a command") && text.contains("mark = \"stop\""));
    praat(&grid, &wav);
    refused(&output(&mut command), &["--force"]);
    let mut wrong = tidecount(["export", "textgrid", "--journal"]);
    wrong.arg(&journal).arg("--sound").arg(&journal);
    refused(&output(&mut wrong), &["j.jsonl", "sound file"]);
}

#[test]
fn stored_sound_comes_with_a_text_grid_on_its_own_clock() {
    let place = Place::new();
    let folder = record(&place);
    refused(&export(&folder, &["textgrid", "--client", "grandpa"]), &["no stored sound"]);
    let began = time("2026-10-27T18:30:00+01:00[Europe/Berlin]");
    let mut store = Store::open(&folder).expect("opens");
    let new = NewSession {
        protocol: None,
        client: "grandpa",
        routine_title: "Evening voice",
        routine_text: ROUTINE,
        source: Source::Live,
        software: "tidecount 0.1.0",
        started_at: &began,
    };
    let session = store.begin(&new).expect("begins");
    let mut recorder = SoundRecorder::begin(Store::open(&folder).expect("opens"), session, 1.25, 16_000, 30, &began).expect("begins");
    recorder.push(&sound(16_000, 8.0, 1.25)).expect("stores");
    recorder.finish().expect("stores");
    for entry in read_journal("a test", JOURNAL).expect("a journal").entries {
        store.append(session, &entry).expect("keeps");
    }
    drop(store);
    refused(&export(&folder, &["textgrid", "--client", "grandpa"]), &["--out FOLDER"]);
    let target = place.path("sounds");
    well(&export(&folder, &["textgrid", "--client", "grandpa", "--out", target.to_str().expect("a name")]));
    let mut names: Vec<PathBuf> = std::fs::read_dir(&target).expect("the folder").map(|entry| entry.expect("an entry").path()).collect();
    names.sort();
    assert_eq!(names.len(), 2);
    assert!(names[0].extension().is_some_and(|ending| ending == "TextGrid"));
    // The first hold began 2 s after the first sample of the practice, 0.75 s after that of the sound.
    assert!(std::fs::read_to_string(&names[0]).expect("a text grid").contains("xmin = 0.75 \n"));
    praat(&names[0], &names[1]);
}

#[test]
fn what_cannot_be_done_is_told_with_what_to_do() {
    let place = Place::new();
    let folder = record(&place);
    let path = |name: &str| place.path(name).to_str().expect("a name").to_owned();
    refused(&export(&place.path("nowhere"), &["csv"]), &["no record", "--data"]);
    assert!(!place.path("nowhere").exists());
    refused(&export(&folder, &["csv", "--client", "nobody"]), &["nobody", "grandma, grandpa"]);
    refused(&export(&folder, &["json", "--from", "2027-01-01"]), &["2026-10-22", "2026-10-26"]);
    refused(&export(&folder, &["json", "--from", "2026-10-26", "--to", "2026-10-22"]), &["--from", "--to"]);
    refused(&export(&folder, &["json", "--out", &path("no/such/folder.jsonl")]), &["cannot be written"]);
    refused(&export(&folder, &["json", "--out", folder.to_str().expect("a name")]), &["this is a folder"]);
    let database = folder.join("practice.sqlite");
    refused(&export(&folder, &["json", "--force", "--out", database.to_str().expect("a name")]), &["record itself"]);
    assert_eq!(well(&export(&folder, &["csv", "--table", "practices"])).lines().count(), 1 + 4, "it is still there");
    refused(&export(&folder, &["csv", "--source", "replay"]), &["no practices", "--source all"]);
    // Where there is nothing but rehearsals they are given, marked and said.
    let rehearsed = place.path("rehearsed");
    keep(&rehearsed, "client", Source::Rehearsal, &time("2026-10-22T18:30:00+02:00[Europe/Berlin]"));
    let done = export(&rehearsed, &["csv"]);
    assert!(well(&done).contains(",rehearsal,") && err(&done).contains("marked"));
}

#[test]
fn the_dictionary_needs_no_record() {
    let done = output(&mut tidecount(["export", "dictionary"]));
    assert!(well(&done).starts_with("table,column,meaning,unit,type,allowed,required\r\n"));
    let csvw: Value = serde_json::from_str(&well(&output(&mut tidecount(["export", "dictionary", "--csvw"])))).expect("JSON");
    assert_eq!(csvw["@context"][0], "http://www.w3.org/ns/csvw");
}
