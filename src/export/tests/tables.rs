//! The tables, their dictionary, and the JSON Lines.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use super::samples::{ROUTINE, two_evenings};
use super::*;
use model::KeptPractice;

type Rows = Vec<BTreeMap<String, String>>;

fn practised<T>(take: impl Fn(&Practice<'_>) -> T) -> Vec<T> {
    let outline = Outline::of(ROUTINE);
    two_evenings().iter().map(|kept: &KeptPractice| take(&Practice::of(kept, &outline, false))).collect()
}

/// Written and read back.
fn rows(table: &'static Table) -> Rows {
    let mut bytes = Vec::new();
    let mut writer = Writer::new(table, &mut bytes).expect("a header");
    practised(|practice| {
        let rows: Vec<Row> = match table.name {
            "trials" => practice.trials.iter().map(|trial| trial_row(practice, trial)).collect(),
            "steps" => practice.steps.iter().map(|step| step_row(practice, step)).collect(),
            "practices" => vec![practice_row(practice)],
            "goals" => Vec::new(),
            _ => practice.entries().filter_map(|(part, kept)| event_row(practice, part, kept)).collect(),
        };
        rows.into_iter().map(|row| row.cells().to_vec()).collect::<Vec<_>>()
    });
    let all = practised(|practice| match table.name {
        "trials" => practice.trials.iter().map(|trial| trial_row(practice, trial).cells().to_vec()).collect::<Vec<_>>(),
        "steps" => practice.steps.iter().map(|step| step_row(practice, step).cells().to_vec()).collect(),
        "practices" => vec![practice_row(practice).cells().to_vec()],
        "goals" => Vec::new(),
        _ => practice.entries().filter_map(|(part, kept)| event_row(practice, part, kept)).map(|row| row.cells().to_vec()).collect(),
    });
    let goals = crate::samples::goals();
    let on = jiff::civil::date(2026, 11, 30);
    let goals = goals.iter().map(|state| goal_row(&GoalOn { client: "grandpa", state, on }).cells().to_vec());
    for cells in all.iter().flatten().cloned().chain(goals.filter(|_| table.name == "goals")) {
        let mut row = Row::of(table);
        table.columns.iter().zip(&cells).for_each(|(column, cell)| row.word(column.name, cell));
        writer.row(&row).expect("writes");
    }
    writer.finish().expect("writes");
    let text = String::from_utf8(bytes).expect("UTF-8");
    assert_eq!(text.matches("\r\n").count(), text.matches('\n').count(), "RFC 4180: lines end with CRLF");
    csv::Reader::from_reader(text.as_bytes()).deserialize().map(|row| row.expect("a row")).collect()
}

#[test]
fn a_trial_is_a_row_with_its_conditions() {
    let trials = rows(TABLES[0]);
    assert_eq!(trials.len(), 7 + 1);
    let first = &trials[0];
    let cell = |name: &str| first[name].as_str();
    assert_eq!(
        (cell("client"), cell("exercise"), cell("kind"), cell("step"), cell("repetition")),
        ("grandpa", "long-ah", "hold", "1", "1")
    );
    assert_eq!((cell("started_at"), cell("ended_at")), ("2026-10-22T18:30:25.250+02:00", "2026-10-22T18:30:33.500+02:00"));
    assert_eq!((cell("duration_s"), cell("level_mean_db_spl"), cell("level_mean_db_fs")), ("8.25", "74.2", ""));
    assert_eq!((cell("level_distance_cm"), cell("level_calibration"), cell("level_weighting")), ("30", "meter", "A"));
    assert_eq!((cell("microphone_name"), cell("microphone_rate_hz"), cell("shimmer_apq11_pct")), ("Desk microphone", "48000", ""));
    assert_eq!((cell("counts"), cell("discarded_for"), cell("level_discarded_for")), ("true", "", ""));
    let why = |index: usize| {
        (trials[index]["counts"].as_str(), trials[index]["discarded_for"].as_str(), trials[index]["level_discarded_for"].as_str())
    };
    assert_eq!(why(1), ("false", "in-noise", "in-noise"));
    assert_eq!(trials[1]["over_room_db"], "5.5");
    assert_eq!(why(2), ("false", "cut-off", "cut-off"));
    assert_eq!(why(3), ("true", "", "auto-gain"));
    assert_eq!((trials[3]["level_mean_db_spl"].as_str(), trials[3]["level_mean_db_fs"].as_str()), ("", ""), "a level on no scale is none");
    // Not calibrated: relative, and never under the name of SPL.
    assert_eq!((trials[4]["level_mean_db_spl"].as_str(), trials[4]["level_mean_db_fs"].as_str()), ("", "-24.5"));
    assert_eq!((trials[5]["kind"].as_str(), trials[5]["f0_median_hz"].as_str(), trials[5]["started_at"].as_str()), ("phrase", "", ""));
    // The next evening lies behind the end of daylight saving.
    assert_eq!(trials[7]["started_at"], "2026-10-26T18:31:20.000+01:00");
}

#[test]
fn steps_practices_and_events_tell_what_became_of_it() {
    let steps = rows(TABLES[1]);
    let told: Vec<(&str, &str, &str)> =
        steps.iter().map(|step| (step["exercise"].as_str(), step["status"].as_str(), step["reason"].as_str())).collect();
    assert_eq!(
        told[..5],
        [
            ("long-ah", "done", ""),
            ("glide-up", "stopped", "skipped"),
            ("functional-phrases", "done", ""),
            ("shoulder-rolls", "stopped", "dizzy"),
            ("rest", "not-reached", "finished")
        ]
    );
    assert_eq!(steps[0]["best_of_three_s"], "8.75", "those in noise and cut off do not count");
    assert_eq!(told[5], ("long-ah", "stopped", "interrupted"));
    // Nobody ended it: its trials tell what was done, and the routine what was prescribed.
    let complete = rows(TABLES[0]).iter().filter(|trial| trial["practice_number"] == "8" && trial["complete"] == "true").count();
    assert_eq!((steps[5]["repetitions_done"].clone(), steps[5]["repetitions_prescribed"].as_str()), (complete.to_string(), "3"));
    let practices = rows(TABLES[2]);
    let cell = |index: usize, name: &str| practices[index][name].clone();
    assert_eq!(
        (cell(0, "end_reason"), cell(0, "steps_done"), cell(0, "steps_prescribed"), cell(0, "time_zone")),
        ("finished".into(), "2".into(), "5".into(), "Europe/Berlin".into())
    );
    assert_eq!((cell(0, "trials"), cell(0, "trials_discarded"), cell(0, "safety_stops")), ("7".into(), "2".into(), "1".into()));
    assert_eq!((cell(1, "end_reason"), cell(1, "ended_at")), ("interrupted".into(), String::new()));
    let events = rows(TABLES[3]);
    let of = |name: &str| events.iter().filter(|event| event["event"] == name).count();
    assert_eq!((of("safety-stop"), of("trouble"), of("microphone"), of("calibration")), (1, 1, 2, 2));
}

/// The lists of OWASP's "CSV Injection", from memory.
#[test]
fn what_a_spreadsheet_would_take_for_a_formula_is_made_harmless() {
    let trials = rows(TABLES[0]);
    assert_eq!(trials[5]["phrase"], "'=Good <evening>, \"dear\"");
    for (text, cell) in [
        ("=1+1", "'=1+1"),
        ("+1", "'+1"),
        ("-1", "'-1"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("\t=1", "' =1"),
        ("\r=1", "' =1"),
        ("＝1", "'＝1"),
        ("a=1", "a=1"),
        ("", ""),
    ] {
        assert_eq!(harmless(text), cell);
    }
    // Numbers stay numbers.
    assert_eq!(trials[4]["level_slope_db_per_s"], "-0.4");
}

#[test]
fn a_goal_stands_with_its_target_and_how_it_stands() {
    let goals = rows(TABLES[4]);
    assert_eq!(goals.len(), 2);
    let of = |row: usize, names: &[&str]| names.iter().map(|name| goals[row][*name].clone()).collect::<Vec<_>>();
    let measured = of(0, &["words", "exercise", "measure", "direction", "target", "now", "unit", "due", "state", "why"]);
    assert_eq!(
        measured,
        ["I want the breath for a whole verse.", "long-ah", "hold-s", "at-least", "12", "10.5", "s", "2027-01-31", "not-met", "short"]
    );
    let daily = of(1, &["words", "exercise", "target", "state", "why", "marked", "marked_on", "marked_by"]);
    assert_eq!(daily, ["'=SUM(1)", "", "", "met", "", "met", "2026-11-20", "the therapist"], "a formula is none");
    let mut line = Vec::new();
    for state in crate::samples::goals() {
        write_goal(&GoalOn { client: "grandpa", state: &state, on: jiff::civil::date(2026, 11, 30) }, &mut line).expect("writes");
    }
    let validator = jsonschema::draft202012::new(&lines_schema()).expect("a schema");
    for line in String::from_utf8(line).expect("UTF-8").lines() {
        assert!(validator.is_valid(&serde_json::from_str(line).expect("JSON")), "{line}");
    }
}

#[test]
fn the_dictionary_knows_every_column_and_no_other() {
    let bytes = as_table().expect("a table");
    let dictionary: Rows = csv::Reader::from_reader(&bytes[..]).deserialize().map(|row| row.expect("a row")).collect();
    let csvw = as_csvw();
    for table in TABLES {
        let header: BTreeSet<&str> = rows(table)[0].keys().map(|name| name.to_owned().leak() as &str).collect();
        assert_eq!(header.len(), table.columns.len(), "a name stands twice");
        let told: BTreeSet<&str> = dictionary.iter().filter(|row| row["table"] == table.name).map(|row| row["column"].as_str()).collect();
        assert_eq!(told, header);
        let metadata =
            csvw["tables"].as_array().and_then(|tables| tables.iter().find(|one| one["url"] == table.file())).expect("the table");
        let told: Vec<&str> = metadata["tableSchema"]["columns"]
            .as_array()
            .expect("columns")
            .iter()
            .map(|column| column["name"].as_str().expect("a name"))
            .collect();
        assert_eq!(told, table.columns.iter().map(|column| column.name).collect::<Vec<_>>());
        assert!(table.key.iter().all(|key| table.column(key).is_some()));
    }
    assert!(dictionary.iter().all(|row| row["meaning"].len() > 5));
}

/// What the dictionary says of a cell is true of every cell that is written.
#[test]
fn every_cell_holds_what_the_dictionary_says() {
    for table in TABLES {
        for row in rows(table) {
            for column in table.columns {
                let cell = row[column.name].as_str();
                let fits = match column.holds {
                    _ if cell.is_empty() => !column.required,
                    Holds::Text | Holds::Texts => true,
                    Holds::Uuid => cell.len() == 36,
                    Holds::Integer => cell.parse::<i64>().is_ok(),
                    Holds::Decimal => cell.parse::<f64>().is_ok_and(f64::is_finite),
                    Holds::Boolean => cell == "true" || cell == "false",
                    Holds::Date => cell.parse::<jiff::civil::Date>().is_ok(),
                    Holds::Time => cell.parse::<jiff::Timestamp>().is_ok(),
                    Holds::One(words) => words.contains(&cell),
                };
                assert!(fits, "{}.{}: {cell:?}", table.name, column.name);
            }
        }
    }
}

#[test]
fn the_words_of_the_dictionary_are_those_that_are_written() {
    let words = |name: &str| match TABLES.iter().find_map(|table| table.column(name)).map(|column| column.holds) {
        Some(Holds::One(words)) => words,
        _ => panic!("{name} has no words"),
    };
    assert_eq!(words("kind"), TrialKind::ALL.map(TrialKind::name));
    assert_eq!(words("status"), StepStatus::ALL.map(StepStatus::name));
    let discards = progress::Discard::ALL.map(progress::Discard::name);
    assert!(discards.iter().all(|name| words("level_discarded_for").contains(name)));
}

#[test]
fn the_published_dictionary_and_schema_are_the_generated_ones() {
    let generated = [
        ("docs/data-dictionary.csv", as_table().expect("a table")),
        ("docs/practice-lines.schema.json", format!("{:#}\n", lines_schema()).into_bytes()),
    ];
    for (name, bytes) in generated {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(name);
        if std::env::var_os("UPDATE_SCHEMAS").is_some() {
            std::fs::write(&path, &bytes).expect("writes");
        }
        assert!(
            std::fs::read(&path).is_ok_and(|stored| stored == bytes),
            "{name} is not the generated one: run the tests once with UPDATE_SCHEMAS=1"
        );
    }
}

#[test]
fn every_line_is_valid_against_the_published_schema() {
    let schema = lines_schema();
    let validator = jsonschema::draft202012::new(&schema).expect("a valid schema");
    let mut bytes = Vec::new();
    let outline = Outline::of(ROUTINE);
    for kept in &two_evenings() {
        write_practice(&Practice::of(kept, &outline, false), &mut bytes).expect("writes");
    }
    let lines: Vec<Value> =
        String::from_utf8(bytes).expect("UTF-8").lines().map(|line| serde_json::from_str(line).expect("JSON")).collect();
    assert_eq!(lines.len(), 2 + 23 + 6);
    for line in &lines {
        let faults: Vec<String> = validator.iter_errors(line).map(|fault| fault.to_string()).collect();
        assert!(faults.is_empty(), "{line}: {faults:?}");
    }
    assert_eq!(
        (lines[0]["line"].as_str(), lines[0]["client"].as_str(), lines[0]["ended_at"].as_str()),
        (Some("practice"), Some("grandpa"), Some("2026-10-22T18:32:25.250+02:00"))
    );
    assert_eq!(
        (lines[6]["kind"].as_str(), lines[6]["at"].as_str(), lines[6]["entry"].as_i64()),
        (Some("hold_measured"), Some("2026-10-22T18:30:33.800+02:00"), Some(6))
    );
    assert_eq!(lines[6]["practice"], lines[0]["practice"]);
    // It can fail.
    let mut bad = lines[6].clone();
    bad["duration_s"] = "long".into();
    assert!(!validator.is_valid(&bad));
    let mut bad = lines[0].clone();
    bad["name"] = "x".into();
    assert!(!validator.is_valid(&bad));
}
