//! What is understood of the client with the files that hear, and the words that go with it.

use command_ear::Models;
use session::Understood;
use speak::Words;

/// What is understood of what is said, with these files.
#[must_use]
pub(super) fn understood(model: &Models) -> Understood {
    match (model.recognises(), model.hears()) {
        (true, _) => Understood::Words,
        (false, true) => Understood::Commands,
        (false, false) => Understood::Nothing,
    }
}

/// The words for somebody of whom these files hear so much: where they miss commands or answers, other lines ask for what can be given.
#[must_use]
pub fn said_to(words: Words, model: &Models) -> Words {
    match understood(model) {
        Understood::Words => words,
        Understood::Commands => words.by_command(),
        Understood::Nothing => words.by_key(),
    }
}
