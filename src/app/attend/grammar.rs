//! What can be said to the attendant, as phrases for the recogniser.

use crate::app::grammar::spoken_form;
use attend::household::has_article;
use attend::{Household, Said};
use command_ear::{Choice, Grammar};
use session::{Arg, Command, Line};
use speak::Words;

/// Every wording of something that can be said, the one to be shown first. Empty only where the catalogue lacks it.
pub fn wordings(words: &Words, household: &Household, said: &Said) -> Vec<String> {
    let called = |plain: &str, with_the: &str, called: &String| {
        let key = if has_article(called) { plain } else { with_the };
        (key.to_owned(), vec![("called", Arg::Text(called.clone()))])
    };
    let named = |key: &str, person: &usize| {
        let name = household.persons.get(*person).map(|person| spoken_form(&person.name)).unwrap_or_default();
        (key.to_owned(), vec![("name", Arg::Text(name))])
    };
    let fixed = |key: &str| (key.to_owned(), Vec::new());
    let (key, args) = match said {
        Said::StartMine => fixed("attend-say-mine"),
        Said::StartCalled(name) => called("attend-say-called-plain", "attend-say-called", name),
        Said::StartFor(person) => named("attend-say-for", person),
        Said::Name(person) => named("attend-say-name", person),
        Said::Called(name) => called("attend-say-which-plain", "attend-say-which", name),
        Said::NotNow => fixed("attend-say-not-now"),
        Said::WhatIsLeft => fixed("attend-say-left"),
        Said::HowDidItGo => fixed("attend-say-how"),
        Said::Thanks => fixed("attend-say-thanks"),
        Said::Yes => return words.wordings(Command::Yes),
        Said::No => return words.wordings(Command::No),
        Said::Stop => return words.wordings(Command::Stop),
    };
    let text = words.text(&Line { key, args }).unwrap_or_default();
    text.split('|').map(|wording| wording.split_whitespace().collect::<Vec<_>>().join(" ")).filter(|wording| !wording.is_empty()).collect()
}

/// A grammar of all that may be said; each tag is the number of its place in the list.
pub fn grammar(words: &Words, household: &Household, may_be_said: &[Said]) -> Grammar {
    let choice = |(n, said): (usize, &Said)| Choice { tag: n.to_string(), wordings: wordings(words, household, said) };
    Grammar { choices: may_be_said.iter().enumerate().map(choice).filter(|choice| !choice.wordings.is_empty()).collect(), list_from: None }
}

/// What a tag of such a grammar stands for.
pub fn meaning<'a>(may_be_said: &'a [Said], tag: &str) -> Option<&'a Said> {
    may_be_said.get(tag.parse::<usize>().ok()?)
}

#[cfg(test)]
#[path = "tests/grammar.rs"]
mod tests;
