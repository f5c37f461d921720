//! Promise: whoever wants to look through everything in the first hour can, with clients who say of themselves that they are simulated, and
//! gets the same each time.

#[path = "../support/program.rs"]
mod program;

use std::path::Path;

use jiff::civil::date;
use program::{Place, err, out, output, tidecount};
use record::Store;

fn made(place: &Place, name: &str, clients: &str) -> std::path::PathBuf {
    let folder = place.path(name);
    let mut command = tidecount(["try", "--clients", clients, "--on", "2026-03-04", "--out"]);
    let done = output(command.arg(&folder));
    assert!(done.status.success(), "{}{}", out(&done), err(&done));
    assert!(out(&done).contains("Everything here is simulated") && out(&done).contains(&format!("{clients} clients")), "{}", out(&done));
    folder
}

fn shown(folder: &Path, what: &[&str]) -> String {
    let mut command = tidecount([&["clinic"], what, &["--on", "2026-03-04", "--data"]].concat());
    let shown = output(command.arg(folder.join("clinic")));
    assert!(shown.status.success(), "{}", err(&shown));
    // Where it lies is another place each time.
    out(&shown).replace(&folder.display().to_string(), "")
}

#[test]
fn a_sample_household_and_clinic_can_be_looked_through_at_once() {
    let place = Place::new();
    let folder = made(&place, "first", "15");
    let seen = shown(&folder, &["caseload", "--all"]);
    for reason in ["dizzy", "cough at meals", "no results for", "adherence of the 14 days", "fell by more than", "not calibrated"] {
        assert!(seen.contains(reason), "{reason}: {seen}");
    }
    assert!(!seen.contains("15 need attention"), "most of them get on: {seen}");

    let store = Store::open_to_read(&folder.join("household")).expect("opens").expect("a record");
    assert_eq!(store.clients().expect("reads"), ["simulated grandma", "simulated grandpa"]);
    let practised = store.practised("simulated grandpa", date(2026, 3, 4)).expect("reads");
    assert!(practised.practices.len() > 15 && practised.practices.iter().all(|one| one.end_reason.as_deref() == Some("completed")));
    assert!(practised.ratings.iter().any(|rated| rated.value.is_some()), "practices are rated");

    // Each file says what it is.
    let report = std::fs::read_to_string(folder.join("simulated-report.html")).expect("the report");
    assert!(report.contains("simulated client 01") && folder.join("SIMULATED.txt").exists());
    for entry in std::fs::read_dir(folder.join("clinic/simulated-files")).expect("lists").filter_map(Result::ok) {
        assert!(entry.file_name().to_string_lossy().starts_with("simulated-client-"), "{entry:?}");
    }
    let mut again = tidecount(["try", "--clients", "1", "--out"]);
    let again = output(again.arg(&folder));
    assert!(!again.status.success() && err(&again).contains("already"), "nothing is mixed into a folder: {}", err(&again));

    let sheet = |folder: &Path| shown(folder, &["show", "simulated client 01"]);
    assert_eq!(sheet(&made(&place, "second", "1")), sheet(&folder), "the same each time");
}
