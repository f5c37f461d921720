//! What can be said to the attendant, as phrases for the recogniser.

use attend::{Household, Said};
use command_ear::{Choice, Grammar};
use files::households::wordings;
use speak::Words;

/// A grammar of all that may be said; each tag is the number of its place in the list.
pub fn grammar(words: &Words, household: &Household, may_be_said: &[Said]) -> Grammar {
    let choice = |(n, said): (usize, &Said)| Choice { tag: n.to_string(), wordings: wordings(words, household, said) };
    Grammar {
        choices: may_be_said.iter().enumerate().map(choice).filter(|choice| !choice.wordings.is_empty()).collect(),
        ..Grammar::default()
    }
}

/// What a tag of such a grammar stands for.
pub fn meaning<'a>(may_be_said: &'a [Said], tag: &str) -> Option<&'a Said> {
    may_be_said.get(tag.parse::<usize>().ok()?)
}

/// What a button for it sends. It names the thing itself, not its place in the list: a page that is a moment behind never starts
/// something else than what stood on its button.
pub fn offer_name(said: &Said) -> String {
    match said {
        Said::StartMine => "start-mine".into(),
        Said::StartCalled(name) => format!("start-called {name}"),
        Said::StartFor(person) => format!("start-for {person}"),
        Said::StartForSeveral(persons) => {
            format!("start-for-several {}", persons.iter().map(usize::to_string).collect::<Vec<_>>().join(" "))
        }
        Said::StartForUnknown => "start-for-unknown".into(),
        Said::Name(person) => format!("name {person}"),
        Said::Called(name) => format!("called {name}"),
        Said::NotNow => "not-now".into(),
        Said::NeverMind => "never-mind".into(),
        Said::WhatIsLeft => "what-is-left".into(),
        Said::HowDidItGo => "how-did-it-go".into(),
        Said::Thanks => "thanks".into(),
        Said::Yes => "yes".into(),
        Said::No => "no".into(),
        Said::Stop => "stop".into(),
    }
}

#[cfg(test)]
#[path = "tests/grammar.rs"]
mod tests;
