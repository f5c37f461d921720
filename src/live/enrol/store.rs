//! A client's own voice between the record and the command ear.

use command_ear::templates::{EnrolledVoice, OwnWord, Take};
use record::{RecordError, Source, Store, StoredWord};
use session::Command;

/// What is kept of a client's voice, ready to weigh in. A picture or a command that this version cannot read is left out.
///
/// # Errors
/// The record cannot be read.
pub fn own_voice(store: &Store, client: &str) -> Result<EnrolledVoice, RecordError> {
    let words = store.own_words(client)?.into_iter().filter_map(|word| {
        let command = Command::ALL.into_iter().find(|command| command.name() == word.command)?;
        let takes: Vec<Take> = word.takes.iter().filter_map(|bytes| Take::from_bytes(bytes)).collect();
        (!takes.is_empty()).then_some(OwnWord { wording: word.wording, costly: command.is_costly(), takes })
    });
    Ok(EnrolledVoice { words: words.collect() })
}

/// Keeps the takes of one word.
///
/// # Errors
/// The record refuses.
pub fn keep(
    store: &mut Store,
    client: &str,
    command: Command,
    wording: &str,
    takes: &[Take],
    agreed_at: &str,
    source: Source,
) -> Result<(), RecordError> {
    let word = StoredWord {
        command: command.name().to_owned(),
        wording: wording.to_owned(),
        agreed_at: agreed_at.to_owned(),
        said_at: jiff::ZonedDateTime::now().to_string(),
        takes: takes.iter().map(Take::to_bytes).collect(),
    };
    store.keep_own_word(client, &word, source)
}
