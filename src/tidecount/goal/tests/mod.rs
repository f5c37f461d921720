use clap::Parser;
use jiff::civil::{Date, date};

use super::args::GoalArgs;
use super::command::done;
use files::error::Failure;

const TODAY: Date = date(2026, 11, 22);

#[derive(Parser)]
struct Typed {
    #[command(flatten)]
    goal: GoalArgs,
}

fn order(folder: &std::path::Path, typed: &[&str]) -> Result<String, String> {
    let typed = Typed::try_parse_from(std::iter::once("goal").chain(typed.iter().copied())).map_err(|error| error.to_string())?;
    done(&typed.goal, folder, TODAY).map_err(|failure: Failure| failure.to_string())
}

#[test]
fn a_goal_is_added_listed_marked_and_removed() {
    let folder = tempfile::tempdir().expect("a folder");
    let go = |typed: &[&str]| order(folder.path(), typed);
    let words = "Order coffee without being asked twice";
    let refused = go(&["add", words, "--client", "ada", "--due", "2027-02-01", "--by", "M."]).expect_err("nobody is here yet");
    assert!(refused.contains("--new-client"), "{refused}");
    assert!(!folder.path().join("practice.sqlite").exists(), "nothing is made where nothing is kept");
    let added = go(&["add", words, "--client", "ada", "--new-client", "--due", "2027-02-01", "--by", "M."]).expect("kept");
    assert!(added.contains("Goal 1 of ada is kept") && added.contains("“Order coffee without being asked twice”"), "{added}");
    let measured = ["add", "Read a page", "--exercise", "long-ah", "--measure", "hold-s", "--at-least", "14.5", "--due", "2027-02-01"];
    let added = go(&[&measured[..], &["--by", "M."]].concat()).expect("kept");
    assert!(added.contains("at least 14.5 s by 1 Feb 2027: too early to say"), "{added}");
    assert_eq!(go(&["mark", "1", "met", "--by", "ada"]).expect("marked"), "Goal 1 of ada is marked as met.\n");
    let refused = go(&["mark", "2", "met", "--by", "ada"]).expect_err("the figures judge it");
    assert!(refused.contains("the figures alone say"), "{refused}");
    let listed = go(&["list"]).expect("listed");
    assert!(listed.contains("met, as marked by ada on 22 Nov 2026") && listed.contains("Met: "), "{listed}");
    assert_eq!(go(&["remove", "1", "--by", "M."]).expect("removed"), "Goal 1 of ada is removed.\n");
    let listed = go(&["list"]).expect("listed");
    assert!(!listed.contains("coffee") && listed.contains("Read a page"), "{listed}");
}

#[test]
fn what_does_not_fit_is_refused_with_what_would() {
    let folder = tempfile::tempdir().expect("a folder");
    let add = |more: &[&str]| {
        let base = ["add", "Read a page", "--client", "ada", "--new-client", "--due", "2027-02-01", "--by", "M."];
        order(folder.path(), &[&base[..], more].concat()).expect_err("refused")
    };
    assert!(add(&["--exercise", "long-ah", "--measure", "cpps-db", "--at-least", "1"]).contains("take one of hold-s, level-db"));
    assert!(add(&["--exercise", "no-such", "--measure", "hold-s", "--at-least", "1"]).contains("`tidecount exercises` lists them"));
    assert!(add(&["--exercise", "effortful-swallow", "--measure", "hold-s", "--at-least", "1"]).contains("mark the goal yourself"));
    assert!(add(&["--exercise", "long-ah", "--measure", "hold-s"]).contains("--at-least"));
    assert!(add(&["--at-least", "3"]).contains("--measure"));
    assert!(add(&["--exercise", "long-ah", "--measure", "hold-s", "--at-least", "1", "--at-most", "2"]).contains("cannot be used with"));
    let past = order(folder.path(), &["add", "x", "--client", "ada", "--new-client", "--due", "2026-11-21", "--by", "M."]);
    assert!(past.expect_err("past").contains("give a later day"));
}
