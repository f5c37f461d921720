//! The built-in word packs: enough of them, each item with one clear answer that the recogniser can hear.
//!
//! The outer measures are the recognition model's own word list and the list of commands; the packs are read here as plain TOML,
//! without the program's own reader.

use std::collections::{BTreeMap, BTreeSet};

use routine::{Hearing, PackKind, built_in_packs, check_pack};
use session::Command;
use speak::Words;

fn lexicon() -> BTreeSet<String> {
    let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/models/en/graph/words.txt")).expect("the model's words");
    text.lines().filter_map(|line| line.split_whitespace().next()).map(str::to_owned).collect()
}

fn commands() -> Vec<(String, Vec<String>)> {
    let words = Words::english().expect("words");
    Command::ALL.into_iter().map(|command| (command.name().to_owned(), words.wordings(command))).collect()
}

fn plain(text: &str) -> String {
    let kept: String =
        text.to_lowercase().replace('’', "'").chars().map(|c| if c.is_alphanumeric() || c == '\'' { c } else { ' ' }).collect();
    kept.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn there_are_enough_packs_and_each_is_without_fault() {
    let (lexicon, commands) = (lexicon(), commands());
    let knows = |word: &str| lexicon.contains(word);
    let hearing = Hearing { commands: &commands, knows_word: Some(&knows), pack_file: None, language: None };
    let mut kinds = BTreeMap::new();
    let mut items = 0;
    for (name, text) in built_in_packs() {
        let pack = check_pack(&name, text.as_bytes(), hearing).unwrap_or_else(|faults| panic!("{faults}"));
        items += pack.questions.len() + pack.categories.len();
        kinds.insert(pack.kind.name(), name);
    }
    assert!(kinds.len() >= 6, "{kinds:?}");
    for kind in [PackKind::DoubleMeaning, PackKind::Category, PackKind::Opposite, PackKind::Saying, PackKind::OddOneOut] {
        assert!(kinds.contains_key(kind.name()), "{kind:?}");
    }
    assert!(items >= 200, "{items}");
}

#[test]
fn each_item_has_one_clear_answer_that_can_be_heard() {
    let (lexicon, commands) = (lexicon(), commands());
    let wordings: BTreeSet<String> = commands.iter().flat_map(|(_, wordings)| wordings.iter().cloned()).collect();
    let mut clues = BTreeSet::new();
    for (name, text) in built_in_packs() {
        let pack: toml::Value = toml::from_str(&text).expect("TOML");
        for item in pack["item"].as_array().expect("items") {
            let clue = item["clue"].as_str().expect("clue");
            assert!(clues.insert(plain(clue)), "{name}: asked twice: {clue}");
            let list = |key: &str| -> Vec<String> {
                let list = item.get(key).and_then(toml::Value::as_array).cloned().unwrap_or_default();
                list.iter().filter_map(toml::Value::as_str).flat_map(|text| text.split('|')).map(plain).collect()
            };
            let (answers, near, members) = (list("answers"), list("near"), list("members"));
            for said in answers.iter().chain(&near).chain(&members) {
                assert!(said.split(' ').all(|word| lexicon.contains(word)), "{name}: {clue}: {said} cannot be heard");
                assert!(!wordings.contains(said), "{name}: {clue}: {said} is a command");
            }
            assert!(near.iter().all(|near| !answers.contains(near)), "{name}: {clue}: right and near at once");
            if members.is_empty() {
                assert!(!answers.is_empty() && item.get("hint").is_some(), "{name}: {clue}");
            }
        }
    }
}

/// The check above can fail.
#[test]
fn a_pack_with_a_word_nobody_can_hear_is_refused() {
    let (lexicon, commands) = (lexicon(), commands());
    let knows = |word: &str| lexicon.contains(word);
    let hearing = Hearing { commands: &commands, knows_word: Some(&knows), pack_file: None, language: None };
    let text = "title = \"x\"\nkind = \"opposite\"\n[[item]]\nclue = \"What?\"\nanswers = [\"flumbergast\"]\nhint = \"h\"\n";
    assert!(check_pack("own.toml", text.as_bytes(), hearing).expect_err("unknown word").to_string().contains("own.toml:5"));
}
