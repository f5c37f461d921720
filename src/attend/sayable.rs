//! What is said and listened for: it can be spoken, holds no command, and the recogniser knows every word.

use routine::Hearing;
use routine::fault::{FaultKind, Finder};
use routine::file::At;
use routine::text::{self, SaidBy};

/// Notes every fault of a text under `key` that is said by the tool and by people. `spoken_form`: how it is said to the recogniser.
pub(super) fn check_said(
    typed: &At<String>,
    key: &str,
    hearing: Hearing<'_>,
    spoken_form: &dyn Fn(&str) -> String,
    faults: &mut Finder<'_>,
) {
    let before = faults.list.len();
    text::check(typed, key, SaidBy::Tool, hearing, faults);
    let Some(knows) = hearing.knows_word else { return };
    let spoken = spoken_form(&typed.value);
    for word in spoken.split_whitespace().filter(|word| !knows(word)) {
        let what = format!("`{key}`: the recogniser does not know the word \"{word}\" and would never hear it");
        let remedy = match key {
            "start_phrase" => "Take everyday English words.",
            _ => "Take an everyday English word; `called` names a routine otherwise than its title.",
        };
        faults.add(FaultKind::UnknownWord, typed.span.clone(), what, remedy);
    }
    if spoken.is_empty() && faults.list.len() == before {
        faults.add(FaultKind::UnreadableText, typed.span.clone(), format!("`{key}` holds nothing that can be said"), "Write it in words.");
    }
}
