//! Promise: a power cut at any instant of a practice, a backup, a passphrase change or a forgetting leaves a whole record with every entry that
//! was told as kept. Some cuts here; `tests/endurance/run.sh` makes a thousand.
//!
//! The program runs once under `strace`; from its notes the disk is rebuilt as it may stand after a cut (`volatile_disk.rs`).

#[path = "../support/program.rs"]
mod program;
#[path = "../support/traced.rs"]
mod traced;
#[path = "../support/volatile_disk.rs"]
mod volatile_disk;

use crate::endurance::{ENTRIES, FOLDER, PHRASE, STARTED, check, kills, rested, two_clients};
use program::{Place, tidecount};
use rand::SeedableRng;
use rand::rngs::StdRng;
use record::{DATABASE_NAME, Store};
use skipping::{Missing, skip};
use std::path::Path;
use std::process::Command;
use volatile_disk::{Deed, Survives, VolatileDisk};

/// Cuts the power after evenly spread deeds and has `look` judge what is left; it is told what the program had told by then.
fn cut_evenly(what: &str, command: &Command, data: &Path, look: impl Fn(&Path, &str)) {
    let held: Vec<String> = std::fs::read_dir(data)
        .map(|files| files.map(|file| file.expect("a file").file_name().into_string().expect("a plain name")).collect())
        .unwrap_or_default();
    let mut disk = VolatileDisk::default();
    for (name, file) in held.iter().zip(0..) {
        disk.hold(name, file, std::fs::read(data.join(name)).expect("reads"));
    }
    let Some(deeds) = traced::deeds(command, data, &held) else {
        return skip(Missing::Right, "no program may be traced here");
    };
    assert!(deeds.iter().any(|deed| matches!(deed, Deed::Sync { .. })), "{what}: nothing is made sure of");
    let cuts = kills() as usize;
    let mut dice = StdRng::seed_from_u64(17);
    let (mut done, mut told) = (0, String::new());
    for cut in 0..cuts {
        let until = (2 * cut + 1) * deeds.len() / (2 * cuts);
        for deed in &deeds[done..until] {
            disk.take(deed);
            if let Deed::Told(text) = deed {
                told.push_str(text);
            }
        }
        done = until;
        for survives in [Survives::Nothing, Survives::Some, Survives::Everything] {
            let left = tempfile::tempdir().expect("a folder");
            disk.cut_power(survives, &mut dice, left.path());
            look(left.path(), &told);
        }
    }
    println!(
        "{what}: {cuts} power cuts over {} deeds, each with nothing, some and all of what was unsure left; every record whole",
        deeds.len()
    );
}

#[test]
fn a_practice_keeps_every_entry_that_it_told() {
    let place = Place::new();
    let data = place.path("data");
    let mut child = Command::new(std::env::current_exe().expect("this test"));
    child.args(["--exact", "endurance::child_that_practises", "--ignored", "--nocapture"]).env(FOLDER, &data);
    cut_evenly("practice", &child, &data, |left, told| {
        let told = told.lines().filter_map(|line| line.strip_prefix("kept ")?.parse::<usize>().ok()).next_back().unwrap_or(0);
        let checked = Store::check(left, &STARTED.parse().expect("a time")).expect("checks");
        assert_eq!(checked.map(|checked| checked.faults).unwrap_or_default(), Vec::<String>::new());
        let store = Store::open(left).expect("opens");
        let kept =
            store.history(None, 1).expect("lists").first().map(|latest| store.entries(latest.id).expect("reads")).unwrap_or_default();
        assert!(kept.iter().zip(1..).all(|(kept, number)| *kept == rested(number)));
        assert!(kept.len() == told || kept.len() == told + 1, "told {told}, kept {}", kept.len());
    });
}

/// The command on a record of two clients.
fn cut_a_command(what: &str, args: &[&str], look: impl Fn(&Path)) {
    let place = Place::new();
    let data = place.path("data");
    two_clients(&data);
    std::fs::remove_file(data.join(format!("{DATABASE_NAME}.lock"))).ok();
    let mut command = tidecount(["record"]);
    command.args(args).arg("--data").arg(&data).env("TIDECOUNT_NEW_PASSPHRASE", PHRASE).env_remove("TIDECOUNT_PASSPHRASE");
    cut_evenly(what, &command, &data, |left, _| look(left));
}

#[test]
fn a_passphrase_change_leaves_one_whole_record() {
    cut_a_command("passphrase", &["passphrase", "set"], |left| check(left, u64::from(2 * ENTRIES)));
}

#[test]
fn a_forgetting_is_done_or_not_begun() {
    cut_a_command("forget", &["forget", "grandpa", "--yes"], |left| {
        let store = Store::open(left).expect("opens");
        let of = |client: &str| store.history(Some(client), 9).expect("lists").len();
        assert_eq!(of("grandma"), 1);
        let clients = 1 + of("grandpa") as u64;
        drop(store);
        check(left, u64::from(ENTRIES) * clients);
    });
}

#[test]
fn a_backup_is_whole_or_not_there() {
    let place = Place::new();
    let (data, backups) = (place.path("data"), place.path("backups"));
    two_clients(&data);
    std::fs::create_dir(&backups).expect("makes");
    let mut command = tidecount(["record", "backup"]);
    command.arg(backups.join("all.backup")).arg("--data").arg(&data).env_remove("TIDECOUNT_PASSPHRASE");
    cut_evenly("backup", &command, &backups, |left, told| {
        let backup = left.join("all.backup");
        assert!(backup.exists() || told.is_empty(), "{told:?}, and yet it is not there");
        if backup.exists() {
            let back = tempfile::tempdir().expect("a folder");
            Store::restore(&back.path().join("back"), &backup, false, &STARTED.parse().expect("a time")).expect("is whole");
        }
    });
}
