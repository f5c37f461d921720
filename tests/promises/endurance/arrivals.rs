//! What arrives: results at a clinic, a package at home.

use super::clinic_world::{Home, MIC, daily, desk_key};
use super::program::{Place, err, out, output, tidecount};
use super::{check, killed_evenly};
use clinic::{Address, Clinic};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Files of results, one of each client.
const FILES: u8 = 8;
/// Practices in a file, one a day.
const PRACTICES: i64 = 20;

fn database(data: &Path) -> Clinic {
    Clinic::open(&Address::File(data.join("clinic.sqlite"))).expect("opens")
}

#[test]
fn an_import_killed_at_any_moment_has_each_file_whole_or_not_at_all() {
    let place = Place::new();
    let original = place.path("original");
    std::fs::create_dir(&original).expect("makes");
    let homes: Vec<Home> = (1..=FILES).map(|number| Home::new(number, &format!("client {number}"))).collect();
    let packages: Vec<_> = homes.iter().map(Home::desk_package).collect();
    database(&original).adopt(&desk_key(100), Some("desk"), &packages).expect("adopts");
    let results: Vec<PathBuf> = homes
        .iter()
        .map(|home| {
            let sealed = home.sealed("2026-03-31", &daily(1, "2026-03-02", PRACTICES, 1, 12.0, &MIC));
            place.write(&format!("{}.tideback", home.client.replace(' ', "-")), &sealed)
        })
        .collect();
    let import = |data: &Path, _| {
        let mut command = tidecount(["clinic", "import"]);
        command.args(&results).arg("--data").arg(data);
        command
    };
    let trials = |data: &Path| {
        let mut of: BTreeMap<String, usize> = BTreeMap::new();
        let content = database(data).content().expect("reads");
        for line in content.lines().filter(|line| line.starts_with("trial:")) {
            let client = homes.iter().find(|home| line.contains(&home.client) || line.contains(&home.package));
            *of.entry(client.map_or_else(String::new, |home| home.client.clone())).or_default() += 1;
        }
        of
    };
    let whole = place.path("whole");
    super::copy(&original, &whole);
    assert!(output(&mut import(&whole, 0)).status.success());
    let all = trials(&whole);
    let total = all.values().sum::<usize>();
    assert_eq!(total, 3 * PRACTICES as usize * usize::from(FILES));
    let content = database(&whole).content().expect("reads");
    killed_evenly("import", &original, import, |data, kill| {
        let left: usize = trials(data).values().sum();
        assert_eq!(left % (3 * PRACTICES as usize), 0, "kill {kill}: {left} trials, so a file came in part");
        let again = output(&mut import(data, kill));
        assert!(again.status.success(), "{}{}", out(&again), err(&again));
        assert_eq!(sorted(&database(data).content().expect("reads")), sorted(&content), "kill {kill}: the rest comes, nothing twice");
    });
}

/// Lines in an order of their own: what came first differs.
fn sorted(content: &str) -> Vec<String> {
    let mut lines: Vec<String> = content.lines().map(str::to_owned).collect();
    lines.sort();
    lines
}

const EVENING: &str = "title = \"Evening\"\n[[step]]\nexercise = \"long-ah\"\nrepetitions = 2\n[[step]]\nexercise = \"effortful-swallow\"\ncautions_acknowledged = true\n";

/// The files of a package at home and what they hold.
fn files(data: &Path) -> BTreeMap<String, Vec<u8>> {
    let folder = data.join("clients/grandpa/package");
    let Ok(found) = std::fs::read_dir(folder) else { return BTreeMap::new() };
    found
        .map(|file| {
            let file = file.expect("a file");
            (file.file_name().to_string_lossy().into_owned(), std::fs::read(file.path()).expect("reads"))
        })
        .collect()
}

#[test]
fn a_package_whose_taking_is_killed_is_in_force_whole_or_not_at_all() {
    let place = Place::new();
    let routine = place.write("evening.toml", EVENING);
    let (desk, pack, home) = (place.path("desk"), place.path("one.tidepack"), place.path("home"));
    let well = |command: &mut Command| {
        let done = output(command);
        assert!(done.status.success(), "{}{}", out(&done), err(&done));
        out(&done)
    };
    well(tidecount(["hand", "make", "--client", "grandpa"]).arg(routine).arg("-o").arg(&pack).arg("--data").arg(&desk));
    let key = well(tidecount(["hand", "key", "--data"]).arg(&desk));
    let print = key.lines().find(|line| line.starts_with("    ")).expect("a fingerprint").trim().to_owned();
    let take = |data: &Path, _| {
        let mut command = tidecount(["hand", "take"]);
        command.arg(&pack).args(["--accept", &print]).arg("--data").arg(data);
        command
    };
    // Another client's record is there already.
    super::two_clients(&home);
    let whole = place.path("whole");
    super::copy(&home, &whole);
    well(&mut take(&whole, 0));
    let all = files(&whole);
    assert!(all.contains_key("evening.toml"), "{all:?}");
    killed_evenly("package", &home, take, |data, kill| {
        check(data, u64::from(2 * super::ENTRIES));
        let in_force = record::Store::open(data).expect("opens").packages_in_force().expect("reads").len();
        if in_force > 0 {
            assert_eq!(files(data), all, "kill {kill}: in force, so its files are there");
        }
        well(&mut take(data, kill));
        assert_eq!(files(data), all, "kill {kill}");
        assert_eq!(record::Store::open(data).expect("opens").packages_in_force().expect("reads").len(), 1);
    });
}
