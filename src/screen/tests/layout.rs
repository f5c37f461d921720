use super::*;
use crate::Offer;
use proptest::prelude::*;

fn offers(labels: impl IntoIterator<Item = impl Into<String>>) -> Vec<Offer> {
    labels.into_iter().map(|label| Offer { name: String::new(), label: label.into() }).collect()
}

fn hold() -> ShownView {
    ShownView {
        heading: "Long ah, 1 of 3".into(),
        prompt: "Goal 14 seconds. Strong voice.".into(),
        figure: "12.4".into(),
        can_say: offers(["stop", "how long", "skip"]),
        ..ShownView::default()
    }
}

fn picture(shown: &ShownView, columns: usize, rows: usize) -> String {
    block(shown, "", Size { columns, rows }, '█').into_iter().map(|row| row.text).collect::<Vec<_>>().join("\n")
}

#[test]
fn a_running_hold() {
    insta::assert_snapshot!(picture(&hold(), 60, 24));
}

#[test]
fn a_narrow_terminal_breaks_the_prompt_and_shows_the_figure_small() {
    insta::assert_snapshot!(picture(&hold(), 24, 24));
}

#[test]
fn a_low_terminal_keeps_heading_prompt_and_figure() {
    insta::assert_snapshot!(picture(&hold(), 60, 5));
}

#[test]
fn a_word_as_figure_is_plain_text() {
    insta::assert_snapshot!(picture(&ShownView { figure: "In".into(), ..hold() }, 60, 24));
}

#[test]
fn who_of_a_class_does_it_otherwise_stands_under_the_prompt() {
    let shown = ShownView {
        heading: "Neck turns · 1 of 5".into(),
        prompt: "\"Here we go\", or the key".into(),
        aside: "Leaving this one out: Plum, 7. Seated for this one: Hazel.".into(),
        figure: String::new(),
        can_say: offers(["here we go", "next exercise", "stop"]),
    };
    insta::assert_snapshot!(picture(&shown, 60, 24));
}

#[test]
fn dialogue_keeps_its_column() {
    let text = "Good evening. Four exercises tonight, about twelve minutes. Say ready when you sit upright.";
    insta::assert_snapshot!(dialogue(0.4, Who::Tool, text, Some(50)).join("\n"));
    assert_eq!(dialogue(19.84, Who::Client, "ready", None), ["   19.8  C  ready"]);
}

/// A terminal breaks a row at its last column, in the middle of a word.
#[test]
fn no_word_is_parted_at_the_edge_whatever_the_width() {
    let cautions = "Tongue-hold swallow\n  - If you cough at it, or your voice sounds wet or gurgly, leave it out and take a rest before you swallow again.\n";
    for columns in 20..120 {
        let printed = fitted(cautions, columns);
        assert!(printed.lines().all(|line| line.width() <= columns), "{columns}: {printed}");
        let words = |text: &str| text.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(words(&printed), words(cautions), "{columns}");
        let said = dialogue(1.0, Who::Tool, cautions, Some(columns - 1));
        let told: Vec<String> = said.iter().flat_map(|row| words(row)).skip(2).collect();
        if columns > 24 {
            assert_eq!(told, words(cautions), "{columns}: {said:?}");
        }
    }
    assert_eq!(fitted("  - one two three four", 14), "  - one two\n    three four");
}

#[test]
fn the_keys_stand_below_all_else_and_give_way_first() {
    let keys = "Keys: space goes on, page up repeats, full stop pauses, escape stops, q ends.";
    let rows = |rows: usize| block(&hold(), keys, Size { columns: 60, rows }, '█').into_iter().map(|row| row.text).collect::<Vec<_>>();
    assert_eq!(rows(24).last().map(String::as_str), Some("escape stops, q ends."));
    assert!(rows(24).iter().any(|row| row.contains("page up")));
    assert!(!rows(6).iter().any(|row| row.contains("page up")), "{:?}", rows(6));
}

#[test]
fn text_cannot_steer_the_terminal() {
    assert_eq!(dialogue(1.0, Who::Tool, "a\x1b[2Jb\r\nc\u{9b}d", None), ["    1.0  T  a [2Jb c d"]);
}

proptest! {
    #[test]
    fn nothing_is_ever_wider_or_higher_than_the_terminal(
        heading in ".{0,40}", prompt in ".{0,200}", figure in "[0-9.:a]{0,8}", words in proptest::collection::vec(".{0,20}", 0..8),
        keys in ".{0,120}",
        columns in 0..200_usize, rows in 0..60_usize,
    ) {
        let shown = ShownView { heading, aside: prompt.chars().rev().collect(), prompt, figure, can_say: offers(words) };
        let block = block(&shown, &keys, Size { columns, rows }, '█');
        prop_assert!(block.len() <= rows.saturating_sub(1).max(1));
        for row in block {
            prop_assert!(row.text.width() <= columns.saturating_sub(1).max(1), "{:?}", row.text);
            prop_assert!(!row.text.chars().any(char::is_control));
        }
    }
}
