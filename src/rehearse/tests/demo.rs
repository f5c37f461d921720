//! The client of the demo fits the demo's routine, the message catalogue and the recogniser's words.

use crate::act::OneOrMany;
use crate::{Act, Client, Script};
use std::path::Path;

const CLIENT: &str = include_str!("../../../demo/client.toml");

fn script() -> Script {
    Script::parse("demo/client.toml", CLIENT).unwrap()
}

fn here(path: &str) -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(path)
}

#[test]
fn it_can_be_built() {
    Client::new(script(), 16_000).unwrap();
}

#[test]
fn every_command_and_answer_is_made_of_words_the_recogniser_knows() {
    let lexicon = std::fs::read_to_string(here("models/en/graph/words.txt")).unwrap();
    let known: std::collections::HashSet<&str> = lexicon.lines().filter_map(|l| l.split_whitespace().next()).collect();
    let script = script();
    let said = script.rules.iter().flat_map(|r| &r.get_ref().does).filter_map(|act| match act {
        Act::Say(words) | Act::Mumble(words) | Act::Call(words) => Some(words),
        _ => None,
    });
    for word in said.chain(script.answers.values()).flat_map(|w| w.split_whitespace()) {
        assert!(known.contains(word), "\"{word}\" is not in the lexicon");
    }
}

#[test]
fn every_clue_of_the_routine_is_known_or_left_for_the_hint() {
    let routine = std::fs::read_to_string(here("demo/evening.toml")).expect("demo/evening.toml");
    let routine: toml::Table = routine.parse().unwrap();
    let steps = routine["step"].as_array().unwrap();
    let items: Vec<&toml::Value> = steps.iter().filter_map(|s| s.get("questions")?.as_array()).flatten().collect();
    assert!(!items.is_empty());
    let script = script();
    for item in items {
        let text = |name: &str| item.get(name).and_then(toml::Value::as_str).unwrap_or_default().to_lowercase();
        let hinted = script.rules.iter().filter_map(|r| r.get_ref().hears.as_ref()).any(|part| text("hint").contains(part));
        let accepted: Vec<&str> = item["answers"].as_array().unwrap().iter().filter_map(toml::Value::as_str).collect();
        let answer = script.answers.iter().find(|(clue, _)| clue.to_lowercase() == text("clue")).map(|(_, a)| a.as_str());
        assert!(hinted || answer.is_some_and(|a| accepted.contains(&a)), "no right answer to: {}", text("clue"));
    }
}

#[test]
fn every_rule_waits_for_a_message_that_exists() {
    let folder = std::fs::read_dir(here("src/speak/words/en")).expect("the catalogue of words");
    let all: String = folder.flatten().filter_map(|f| std::fs::read_to_string(f.path()).ok()).collect();
    let keys: Vec<&str> = all.lines().filter(|l| !l.starts_with(['#', ' '])).filter_map(|l| l.split_once(" =")).map(|l| l.0).collect();
    for rule in &script().rules {
        let patterns = match &rule.get_ref().on {
            OneOrMany::One(p) => vec![p.clone()],
            OneOrMany::Many(all) => all.clone(),
        };
        for pattern in patterns {
            assert!(keys.iter().any(|key| OneOrMany::One(pattern.clone()).fits(key)), "no message \"{pattern}\"");
        }
    }
}
