//! A record of the form before today's, brought to today's when it is opened.

use super::program::{Place, tidecount};
use super::{STARTED, check, killed_evenly, rested};
use record::DATABASE_NAME;
use rusqlite::{Connection, params};
use std::path::Path;

/// All changes of form but the last, which gives every entry its checksum.
const BEFORE: [&str; 8] = [
    include_str!("../../../src/record/migration_1.sql"),
    include_str!("../../../src/record/migration_2.sql"),
    include_str!("../../../src/record/migration_3.sql"),
    include_str!("../../../src/record/migration_4.sql"),
    include_str!("../../../src/record/migration_5.sql"),
    include_str!("../../../src/record/migration_6.sql"),
    include_str!("../../../src/record/migration_7.sql"),
    include_str!("../../../src/record/migration_8.sql"),
];
/// "TIDE", as every record has it.
const APPLICATION_ID: i64 = 0x5449_4445;
/// Entries of a year or so.
const ENTRIES: u32 = 20_000;

fn older(folder: &Path) {
    std::fs::create_dir(folder).expect("makes");
    let mut db = Connection::open(folder.join(DATABASE_NAME)).expect("makes");
    BEFORE.iter().try_for_each(|sql| db.execute_batch(sql)).expect("the form of then");
    db.pragma_update(None, "application_id", APPLICATION_ID).expect("sets");
    db.pragma_update(None, "user_version", BEFORE.len() as i64).expect("sets");
    let fill = db.transaction().expect("begins");
    fill.execute("INSERT INTO client VALUES (1, 'grandpa')", []).expect("fills");
    fill.execute("INSERT INTO session VALUES (1, 1, 'Evening', 'x', 'live', 'tidecount', ?1, NULL, NULL)", [STARTED]).expect("fills");
    fill.execute("INSERT INTO part VALUES (1, 1, ?1)", [STARTED]).expect("fills");
    for number in 1..=ENTRIES {
        let json = serde_json::to_string(&rested(number)).expect("writes");
        fill.execute("INSERT INTO entry VALUES (1, ?1, 1, ?1, 'rested', NULL, NULL, NULL, ?2)", params![number, json]).expect("fills");
    }
    fill.commit().expect("keeps");
}

#[test]
fn a_change_of_form_killed_at_any_moment_is_done_or_not_begun() {
    let place = Place::new();
    let original = place.path("original");
    older(&original);
    killed_evenly(
        "older form",
        &original,
        |data, _| {
            let mut command = tidecount(["record", "check", "--data"]);
            command.arg(data);
            command
        },
        |data, _| {
            let version = || -> i64 {
                let db = Connection::open(data.join(DATABASE_NAME)).expect("opens");
                db.pragma_query_value(None, "user_version", |row| row.get(0)).expect("reads")
            };
            let left = version();
            assert!([BEFORE.len() as i64, BEFORE.len() as i64 + 1].contains(&left), "form {left}");
            check(data, u64::from(ENTRIES));
            assert_eq!(version(), BEFORE.len() as i64 + 1, "opening it again goes on");
        },
    );
}
