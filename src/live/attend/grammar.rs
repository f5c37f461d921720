//! What can be said to the attendant, as phrases for the recogniser.

use attend::{Household, Said};
use command_ear::{Choice, Grammar};
use files::households::wordings;
use speak::Words;

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
