//! What the engine wants to hear, as phrases for the recogniser; and what was heard, as what the engine knows.

use command_ear::{Choice, Grammar};
use files::spoken::spoken_form;
use session::{Command, Listening, listening};
use speak::words::Words;

/// What a heard tag means.
#[derive(Debug, Clone, PartialEq)]
pub enum Meaning {
    Command(Command),
    Answer(String),
}

const ANSWER: &str = "answer:";

/// The main path's phrases for one state.
pub fn main_grammar(words: &Words, listening: &Listening) -> Grammar {
    let answers = listening
        .answers
        .iter()
        .map(|answer| Choice { tag: format!("{ANSWER}{answer}"), wordings: answer.split('|').map(spoken_form).collect() });
    let commands = commands(words, &listening.commands).map(|mut choice| {
        if listening.multiword_only {
            choice.wordings = words.firm_wordings(&choice.tag, choice.wordings);
        }
        choice
    });
    let worded = listening.worded.iter().map(|key| Choice { tag: format!("{ANSWER}{key}"), wordings: words.wordings_of(key) });
    let mut choices: Vec<Choice> = commands.filter(|choice| !choice.wordings.is_empty()).collect();
    let list_from = listening.list.then_some(choices.len());
    choices.extend(answers);
    choices.extend(worded);
    // Among the answers of a list a single word may be what somebody names.
    let near = words.near_misses().into_iter().filter(|near| !listening.list || near.contains(' ')).collect();
    let urgent = listening::SAFETY.iter().map(|command| command.name().to_owned()).collect();
    Grammar { choices, list_from, near, urgent }
}

/// What the fast path listens for, always.
pub fn fast_grammar(words: &Words) -> Grammar {
    Grammar { choices: commands(words, listening::ALWAYS).collect(), ..Grammar::default() }
}

fn commands<'a>(words: &'a Words, commands: &'a [Command]) -> impl Iterator<Item = Choice> + 'a {
    commands.iter().map(|&command| Choice { tag: command.name().to_owned(), wordings: words.wordings(command) })
}

/// What a tag of one of these grammars stands for.
pub fn meaning(tag: &str) -> Option<Meaning> {
    match tag.strip_prefix(ANSWER) {
        Some(answer) => Some(Meaning::Answer(answer.to_owned())),
        None => Command::ALL.into_iter().find(|command| command.name() == tag).map(Meaning::Command),
    }
}
