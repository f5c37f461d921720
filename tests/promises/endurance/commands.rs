//! Commands that write a whole record anew or take from it.

use super::program::{Place, tidecount};
use super::{ENTRIES, PHRASE, STARTED, check, killed_evenly, two_clients, whole};
use record::Store;
use std::path::Path;
use std::process::Command;

fn record(data: &Path, args: &[&str]) -> Command {
    let mut command = tidecount(["record"]);
    command.args(args).arg("--data").arg(data).env("TIDECOUNT_NEW_PASSPHRASE", PHRASE).env_remove("TIDECOUNT_PASSPHRASE");
    command
}

#[test]
fn a_backup_killed_at_any_moment_is_whole_or_not_there() {
    let place = Place::new();
    let original = place.path("original");
    two_clients(&original);
    let name = |number: u32| place.path(&format!("{number}.backup"));
    killed_evenly(
        "backup",
        &original,
        |data, number| record(data, &["backup", &name(number).display().to_string()]),
        |data, number| {
            check(data, u64::from(2 * ENTRIES));
            let backup = name(number);
            if backup.exists() {
                let back = place.path(&format!("back-{number}"));
                Store::restore(&back, &backup, false, &STARTED.parse().expect("a time")).expect("is whole");
                assert_eq!(whole(&back), u64::from(2 * ENTRIES));
            }
        },
    );
}

#[test]
fn a_passphrase_change_killed_at_any_moment_leaves_one_whole_record() {
    let place = Place::new();
    let original = place.path("original");
    two_clients(&original);
    let set = |data: &Path, _| record(data, &["passphrase", "set"]);
    killed_evenly("passphrase", &original, set, |data, _| check(data, u64::from(2 * ENTRIES)));
}

#[test]
fn a_forgetting_killed_at_any_moment_is_done_or_not_begun() {
    let place = Place::new();
    let original = place.path("original");
    two_clients(&original);
    let forget = |data: &Path, _| record(data, &["forget", "grandpa", "--yes"]);
    killed_evenly("forget", &original, forget, |data, _| {
        let store = Store::open(data).expect("opens");
        let of = |client: &str| store.history(Some(client), 9).expect("lists").len();
        assert_eq!(of("grandma"), 1);
        let left = of("grandpa") as u64;
        drop(store);
        check(data, u64::from(ENTRIES) * (1 + left));
    });
}
