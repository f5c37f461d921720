//! The record: the journal, written as it happens, and all that is kept of clients (SQLite, encrypted where there is a passphrase). It
//! alone opens the database, and it changes no entry that is kept. Each fact is one committed transaction, so a process that is killed at
//! any instant loses at most the fact under way. It leads nothing and prints nothing. Start at [`Store`] (`store.rs`), then `journal.rs`
//! (one practice being written) and `trials.rs` (what `progress` is made from).

mod agreement;
mod backup;
mod beside;
mod browse;
mod chain;
mod check;
mod classes;
mod clients;
mod clock;
mod copy;
mod database;
mod encrypt;
mod error;
mod exchange;
mod flac;
mod folder;
mod forget;
mod goals;
mod guard;
mod habits;
mod history;
mod journal;
mod json_lines;
mod kept;
mod moments;
mod own_voice;
mod packages;
mod passphrase;
mod past;
mod ramp;
mod restore;
mod resume;
mod running;
mod sound;
mod sound_answer;
mod sound_consent;
mod sound_file;
mod store;
mod time;
mod today;
mod trial_lines;
mod trials;
mod usual;
mod waiting;
mod week;
mod writer;

#[cfg(test)]
#[path = "tests/samples.rs"]
mod samples;

pub use agreement::{AgreedHow, Agreement};
pub use backup::{Backup, Stored};
pub use beside::KeptLike;
pub use browse::PartStart;
pub use chain::{Damage, Damaged};
pub use check::Checked;
pub use classes::{ClassId, LedClass, LedStep, NewClass};
pub use copy::{replace_file, wipe as wipe_file};
pub use encrypt::Rekeyed;
pub use error::RecordError;
pub use exchange::{Received, WholePart, WholeSession};
pub use folder::{DATABASE_NAME, SOUND_FOLDER, create as create_folder, data_folder};
pub use forget::Forgotten;
pub use goals::{MOST_GOAL_CHARS, NewGoal};
pub use history::{BestHold, SessionSummary};
pub use journal::Journal;
pub use json_lines::JsonLines;
pub use model::{JournalText, KeptEntry, KeptHead, KeptPart, KeptPractice, SessionId, Source, journal_schema, journal_text, read_journal};
pub use own_voice::StoredWord;
pub use packages::{MadePackage, PackageAgreement, TakenPackage};
pub use passphrase::{
    FILE_VARIABLE as PASSPHRASE_FILE_VARIABLE, NEW_FILE_VARIABLE as NEW_PASSPHRASE_FILE_VARIABLE, NEW_VARIABLE as NEW_PASSPHRASE_VARIABLE,
    Passphrase, VARIABLE as PASSPHRASE_VARIABLE,
};
pub use restore::Restored;
pub use resume::{Unfinished, counts_in, next_position};
pub use sound::{Expired, SoundRecorder, StoredSound};
pub use sound_consent::{MOST_SOUND_DAYS, SOUND_DAYS, SoundConsent, SoundQuestion, SoundSide};
pub use store::{NewSession, Store};
pub use today::{amounts_in, led_in};
pub use usual::UsualVoice;
pub use writer::JournalWriter;
