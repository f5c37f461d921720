//! The comparer on made-up figures, and the project's own file and page.

use crate::compare::{Comparison, Outcome, compare};
use crate::declared::{File, FileError, number};
use crate::keep::{KeepError, keep};
use crate::page::page;
use crate::taken::{self, Run};

const FILE: &str = r#"
machine = "a machine"
cores = 2
before_split = ["aaa"]
[[section]]
id = "one"
command = "measure one"
figures = [
    { id = "delay.median", what = "delay", unit = "ms", better = "less", limit = 30, tolerance = 2, value = 20, commit = "aaa" }, # kept
    { id = "delay.worst", what = "worst delay", unit = "ms", better = "less", limit = 30, tolerance = 2, value = 40, commit = "aaa" },
    { id = "hits", what = "words heard", unit = "%", better = "more", tolerance = 1, value = 95, sample = 200, commit = "bbb" },
]
[[section]]
id = "two"
command = "measure two"
figures = [{ id = "memory", what = "memory", unit = "MB", better = "less", limit = 100, tolerance = 5, command = "measure memory" }]
"#;

fn file() -> File {
    File::read(FILE).expect("a good file")
}

fn outcomes(run: &str) -> Vec<Outcome> {
    let file = file();
    let compared = compare(&file, &Run::read(run).expect("a run"), &[]);
    compared.figures.iter().map(|figure| figure.outcome).collect()
}

fn compared<'a>(file: &'a File, run: &str, only: &[&str]) -> Comparison<'a> {
    let only: Vec<String> = only.iter().map(|word| (*word).to_owned()).collect();
    compare(file, &Run::read(run).expect("a run"), &only)
}

/// All as it was, but for the limit that was missed before.
const SAME: &str = "delay.median\t20\ndelay.worst\t40\nhits\t95\t200\nmemory\t90\n";

#[test]
fn a_figure_that_got_worse_is_found() {
    let file = file();
    let worse = SAME.replace("hits\t95", "hits\t93.5");
    let found = compared(&file, &worse, &[]);
    assert!(found.fails(true));
    let text = found.text();
    assert!(text.contains("worse: hits (words heard): 93.5 % (of 200; 89.2 to 96.2), was 95 % (of 200; 91 to 97.3) on bbb"), "{text}");
    assert!(text.contains("`measure one`"), "{text}");
    assert_eq!(outcomes(&SAME.replace("delay.median\t20", "delay.median\t22.1"))[0], Outcome::Worse);
}

#[test]
fn a_figure_within_its_tolerance_is_as_before() {
    assert_eq!(outcomes(SAME), [Outcome::Good, Outcome::StillMisses, Outcome::Good, Outcome::First]);
    assert_eq!(outcomes(&SAME.replace("hits\t95", "hits\t94"))[2], Outcome::Good);
    assert_eq!(outcomes(&SAME.replace("delay.median\t20", "delay.median\t22"))[0], Outcome::Good);
    assert_eq!(outcomes(&SAME.replace("hits\t95", "hits\t96.1"))[2], Outcome::Better);
}

#[test]
fn a_missing_figure_is_told_as_missing_not_as_passed() {
    let file = file();
    let without = SAME.replace("hits\t95\t200\n", "");
    let found = compared(&file, &without, &[]);
    assert_eq!(found.figures[2].outcome, Outcome::Missing);
    assert!(found.fails(true));
    assert!(found.text().contains("missing: hits (words heard): not measured"), "{}", found.text());
    // A bench that found nothing to measure puts down no number.
    assert_eq!(outcomes(&SAME.replace("hits\t95", "hits\tNaN"))[2], Outcome::Missing);
    assert_eq!(outcomes(&SAME.replace("memory\t90", "memory\t0\t0"))[3], Outcome::Missing);
    assert!(compared(&file, "", &[]).fails(true));
}

#[test]
fn a_limit_that_is_missed_fails_unless_it_was_known() {
    let file = file();
    let known = compared(&file, SAME, &[]);
    assert!(known.fails(false));
    assert!(!known.fails(true));
    // Of a figure with no value on record, the limit alone counts.
    let first = SAME.replace("memory\t90", "memory\t101");
    assert_eq!(outcomes(&first)[3], Outcome::Misses);
    assert!(compared(&file, &first, &[]).fails(true));
    // Within its tolerance, but over the limit that it kept before.
    let near = FILE.replace("tolerance = 2, value = 20", "tolerance = 20, value = 20");
    let near = File::read(&near).expect("a good file");
    let over = compared(&near, &SAME.replace("delay.median\t20", "delay.median\t31"), &[]);
    assert_eq!(over.figures[0].outcome, Outcome::Misses);
    assert!(over.fails(true));
}

#[test]
fn unlike_things_are_not_compared() {
    let file = file();
    let fewer = compared(&file, &SAME.replace("95\t200", "95\t100"), &[]);
    assert_eq!(fewer.figures[2].outcome, Outcome::OtherSample);
    assert!(fewer.fails(true));
    let strange = compared(&file, &format!("{SAME}speed\t3\n"), &[]);
    assert_eq!(strange.unknown, ["speed"]);
    assert!(strange.fails(true));
    assert!(compared(&file, &format!("# cores\t16\n{SAME}"), &[]).text().contains("another number of cores (16)"));
}

#[test]
fn a_part_can_be_compared_alone() {
    let file = file();
    let part = compared(&file, "delay.median\t19\ndelay.worst\t41\n", &["delay"]);
    assert_eq!(part.figures.len(), 2);
    assert!(!part.fails(true));
    // "delay" is no beginning of "delayed".
    assert!(compared(&file, "delayed.median\t19\n", &["delay"]).unknown.is_empty());
}

#[test]
fn a_run_is_read_as_it_was_put_down() {
    let folder = std::env::temp_dir().join(format!("figures-{}", std::process::id()));
    std::fs::create_dir_all(&folder).expect("a folder");
    let path = folder.join("run.tsv");
    taken::add(&path, "hits", 200.0 / 3.0, Some(3)).expect("written");
    taken::add(&path, "memory", f64::NAN, None).expect("written");
    let run = Run::read(&std::fs::read_to_string(&path).expect("read")).expect("a run");
    std::fs::remove_dir_all(&folder).expect("removed");
    assert_eq!(run.values["hits"], taken::Value { value: 200.0 / 3.0, sample: Some(3) });
    assert!(run.values["memory"].value.is_nan());
    assert!(Run::read("hits\tmany\n").is_err());
    assert!(Run::read("hits\n").is_err());
}

#[test]
fn keeping_a_run_changes_values_and_nothing_else() {
    let run = Run::read("# commit\tccc\n# cores\t2\ndelay.median\t18.04\nhits\tNaN\nmemory\t80\t4\n").expect("a run");
    let kept = keep(FILE, &file(), &run).expect("kept");
    let new = File::read(&kept).expect("a good file");
    let of = |id: &str| new.figure(id).map(|f| (f.value, f.sample, f.commit.clone())).expect("there");
    assert_eq!(of("delay.median"), (Some(18.04), None, Some("ccc".into())));
    assert_eq!(of("memory"), (Some(80.0), Some(4), Some("ccc".into())));
    assert_eq!(of("hits"), (Some(95.0), Some(200), Some("bbb".into())));
    assert_eq!(of("delay.worst"), (Some(40.0), None, Some("aaa".into())));
    assert!(kept.contains("# kept"), "{kept}");
}

#[test]
fn only_a_clean_run_on_the_same_kind_of_machine_is_kept() {
    let kept = |head: &str| keep(FILE, &file(), &Run::read(&format!("{head}memory\t80\n")).expect("a run"));
    assert!(matches!(kept(""), Err(KeepError::Unsigned)));
    assert!(matches!(kept("# commit\tccc+\n# cores\t2\n"), Err(KeepError::Changed(_))));
    assert!(matches!(kept("# commit\tccc\n# cores\t16\n"), Err(KeepError::OtherMachine { run: 16, file: 2 })));
}

#[test]
fn a_file_that_contradicts_itself_is_refused() {
    assert!(matches!(File::read(&FILE.replace("\"hits\"", "\"memory\"")), Err(FileError::Twice(_))));
    assert!(matches!(File::read(&FILE.replace(", commit = \"bbb\"", "")), Err(FileError::NoCommit(_))));
    assert!(matches!(File::read(&FILE.replace("tolerance = 1,", "tolerance = -1,")), Err(FileError::Tolerance(_))));
    assert!(matches!(File::read(&FILE.replace("limit = 100", "limits = 100")), Err(FileError::Toml(_))));
}

#[test]
fn the_page_tells_what_is_missed_not_taken_or_old() {
    let old =
        "Before.\n<!-- figures: one -->\nold\n<!-- end of figures -->\nBetween.\n<!-- figures: two -->\n<!-- end of figures -->\nAfter.\n";
    let new = page(old, &file()).expect("a page");
    assert!(new.contains("| worst delay | 40 ms: **missed** | ≤ 30 ms | aaa, before the split: retake | `measure one` |"), "{new}");
    assert!(new.contains("| words heard | 95 % (of 200; 91 to 97.3) |  | bbb | `measure one` |"), "{new}");
    assert!(new.contains("| memory | not taken yet | ≤ 100 MB |  | `measure memory` |"), "{new}");
    assert!(new.starts_with("Before.\n") && new.contains("\nBetween.\n") && new.ends_with("After.\n") && !new.contains("old\n"));
    assert_eq!(page(&new, &file()).expect("a page"), new);
    assert!(page("Nothing.", &file()).is_err());
}

#[test]
fn numbers_keep_three_digits_that_count() {
    let shown = [0.0, 43.0, 58_186.0, 0.001_234, 96.551, 1234.5, -3.0, 0.3, 99.96].map(number);
    assert_eq!(shown, ["0", "43", "58186", "0.00123", "96.6", "1234", "-3", "0.3", "100"]);
}

/// The project's own file is in order, and `docs/performance.md` shows what it holds.
#[test]
fn the_projects_page_agrees_with_its_file() {
    let file = File::read(crate::FIGURES).expect("benches/figures.toml");
    let old = include_str!("../../docs/performance.md");
    assert!(page(old, &file).expect("a place for every section") == old, "run `cargo run -p figures -- page`");
}
