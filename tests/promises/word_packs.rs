//! The built-in word packs: enough of them, each item with one clear answer that the recogniser can hear.
//!
//! The outer measures are the recognition model's own word list and the list of commands; the packs are read here as plain TOML,
//! without the program's own reader.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use routine::{Hearing, PackKind, Work, built_in_packs, check_pack, check_text};
use session::Command;
use speak::{Language, Words};

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
    let hearing = Hearing { commands: &commands, knows_word: Some(&knows), ..Hearing::default() };
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

/// German and Spanish have games of their own for each of the English packs, and a routine that names one gets that of its language.
#[test]
fn each_language_asks_its_own_games() {
    let english: BTreeMap<String, String> = built_in_packs().into_iter().collect();
    for language in Language::built_in().expect("languages").iter().filter(|language| language.tag != "en") {
        let words = Words::of(Arc::clone(language)).expect("words");
        let commands: Vec<(String, Vec<String>)> =
            Command::ALL.into_iter().map(|command| (command.name().to_owned(), words.wordings(command))).collect();
        let hearing = Hearing { commands: &commands, games: &language.games, language: Some(&language.tag), ..Hearing::default() };
        let names: Vec<&String> = language.games.iter().map(|(name, _)| name).collect();
        assert_eq!(names, english.keys().collect::<Vec<_>>(), "{}", language.tag);
        let english_clues: BTreeSet<String> = english.values().flat_map(|text| clues(text)).collect();
        for (name, text) in &language.games {
            let pack = check_pack(name, text.as_bytes(), hearing).unwrap_or_else(|faults| panic!("{}: {faults}", language.tag));
            let kind = check_pack(name, english[name].as_bytes(), Hearing::default()).expect("English").kind;
            assert_eq!(pack.kind, kind, "{name}");
            let least = if kind == PackKind::Category { 8 } else { 20 };
            assert!(pack.questions.len() + pack.categories.len() >= least, "{} {name}", language.tag);
            assert!(clues(text).iter().all(|clue| !english_clues.contains(clue)), "{} {name}: left in English", language.tag);
            assert_eq!(toml::from_str::<toml::Table>(text).expect("TOML")["language"].as_str(), Some(language.tag.as_str()), "{name}");
        }
        let routine = "title = \"x\"\n[[step]]\nexercise = \"word-questions\"\npacks = [\"opposites\"]\nrepetitions = 4\n";
        let prescription = check_text("x", routine, hearing).unwrap_or_else(|faults| panic!("{faults}"));
        let Work::Question { items, .. } = &prescription.routine.steps[0].work else { panic!("no questions") };
        let own = &language.games.iter().find(|(name, _)| name == "opposites").expect("opposites").1;
        assert_eq!(Some(&items[0].clue), clues(own).first(), "{}", language.tag);
    }
}

fn clues(pack: &str) -> Vec<String> {
    let pack: toml::Value = toml::from_str(pack).expect("TOML");
    pack["item"].as_array().expect("items").iter().map(|item| item["clue"].as_str().expect("clue").to_owned()).collect()
}

/// The check above can fail.
#[test]
fn a_pack_with_a_word_nobody_can_hear_is_refused() {
    let (lexicon, commands) = (lexicon(), commands());
    let knows = |word: &str| lexicon.contains(word);
    let hearing = Hearing { commands: &commands, knows_word: Some(&knows), ..Hearing::default() };
    let text = "title = \"x\"\nkind = \"opposite\"\n[[item]]\nclue = \"What?\"\nanswers = [\"flumbergast\"]\nhint = \"h\"\n";
    assert!(check_pack("own.toml", text.as_bytes(), hearing).expect_err("unknown word").to_string().contains("own.toml:5"));
}
