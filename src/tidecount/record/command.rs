//! `tidecount record`: keeps the record safe: backup, check, passphrase, and what is kept of whom.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use jiff::ZonedDateTime;

use crate::record::backup;
use crate::record::forget;
use crate::record::passphrase;
use crate::record::sounds;
use files::error::{Failure, delivered};
use files::number_words::{counted, counted_of};
use record::{Store, data_folder};

/// Keeps the record safe: backs it up, checks it, encrypts it, and deletes what is kept of a client.
#[derive(Debug, clap::Args)]
pub struct RecordArgs {
    /// Where the record is kept. Default: $TIDECOUNT_DATA, else the user's data folder.
    #[arg(long, value_name = "DIR", global = true)]
    pub data: Option<PathBuf>,
    #[command(subcommand)]
    pub order: RecordOrder,
}

/// What to do with the record.
#[derive(Debug, clap::Subcommand)]
pub enum RecordOrder {
    /// Makes one file that brings everything back: record, sound, household, packages, calibrations. A practice may go on meanwhile.
    Backup {
        /// The new file; or a folder, in which a file with today's date is made.
        file: PathBuf,
        /// Leaves stored sound out.
        #[arg(long)]
        without_sound: bool,
    },
    /// Brings a backup back. What stands there now is set aside, never written over.
    Restore {
        /// A file made by `tidecount record backup`, or a copy of a record.
        file: PathBuf,
        /// Also where the present record has something that the backup lacks.
        #[arg(long)]
        replace: bool,
    },
    /// Looks through the whole record; exit code 1 where something is wrong.
    Check,
    /// Encrypts the record, changes the passphrase, or removes it.
    Passphrase {
        #[command(subcommand)]
        order: PassphraseOrder,
    },
    /// Deletes everything of one client, for good. Backups that you made have to be deleted by you.
    Forget {
        /// The client's name as `tidecount history` shows it.
        client: String,
        /// Asks nothing: for scripts.
        #[arg(long)]
        yes: bool,
    },
    /// Stored sound of a client: lists it, writes it out, deletes it, or ends its storing.
    Sound {
        #[command(subcommand)]
        order: SoundOrder,
    },
}

/// What to do with the passphrase.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::Subcommand)]
pub enum PassphraseOrder {
    /// Encrypts a record that is not encrypted.
    Set,
    /// Gives an encrypted record another passphrase.
    Change,
    /// Decrypts the record.
    Remove,
}

/// What to do with stored sound.
#[derive(Debug, Clone, PartialEq, Eq, clap::Subcommand)]
pub enum SoundOrder {
    /// Shows what is stored and whether it may be.
    List { client: String },
    /// Writes what is stored as FLAC files into a folder.
    Export {
        client: String,
        /// Made where it is missing.
        #[arg(long, value_name = "DIR")]
        out: PathBuf,
    },
    /// Takes the consent back: no more sound is stored.
    Off { client: String },
    /// Deletes what is stored; the consent stays.
    Delete { client: String },
}

/// Runs the command.
///
/// # Errors
/// The record cannot be used; the message says what was left as it was.
pub fn run(args: &RecordArgs) -> Result<ExitCode, Failure> {
    let folder = data_folder(args.data.as_deref())?;
    let now = ZonedDateTime::now();
    let mut text = String::new();
    let code = match &args.order {
        RecordOrder::Backup { file, without_sound } => backup::backup(&folder, file, !without_sound, &now, &mut text),
        RecordOrder::Restore { file, replace } => backup::restore(&folder, file, *replace, &now, &mut text),
        RecordOrder::Check => check(&folder, &now, &mut text),
        RecordOrder::Passphrase { order } => passphrase::run(&folder, *order, &mut text),
        RecordOrder::Forget { client, yes } => forget::run(&folder, client, *yes, &mut text),
        RecordOrder::Sound { order } => sounds::run(&folder, order, &now, &mut text),
    }?;
    delivered(std::io::stdout().write_all(text.as_bytes())).map(|()| code)
}

/// The record that must be there.
pub fn present(folder: &Path) -> Result<Store, Failure> {
    Store::open_existing(folder)?
        .ok_or_else(|| Failure::Missing(format!("there is no record in {}: name its folder with --data DIR", folder.display())))
}

fn check(folder: &Path, now: &ZonedDateTime, text: &mut String) -> Result<ExitCode, Failure> {
    let Some(checked) = Store::check(folder, now)? else {
        return Err(Failure::Missing(format!("there is no record in {}: name its folder with --data DIR", folder.display())));
    };
    let line = |text: &mut String, line: String| {
        text.push_str(&line);
        text.push('\n');
    };
    let encrypted = if checked.encrypted { "encrypted" } else { "not encrypted" };
    line(
        text,
        format!(
            "{}, {}, {}, {}; {encrypted}.",
            counted(checked.clients, "client"),
            counted(checked.practices, "practice"),
            counted_of(checked.entries, "journal line", ""),
            counted_of(checked.sounds, "file", " of sound")
        ),
    );
    if checked.expired.deleted > 0 {
        line(text, format!("Expired and deleted: {}.", counted_of(checked.expired.deleted, "file", " of sound")));
    }
    checked.notes.iter().for_each(|note| line(text, note.clone()));
    checked.faults.iter().for_each(|fault| line(text, format!("Fault: {fault}.")));
    line(
        text,
        if checked.faults.is_empty() {
            "The record is whole.".to_owned()
        } else {
            format!("Found: {}; nothing was changed.", counted(checked.faults.len(), "fault"))
        },
    );
    Ok(if checked.faults.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// "1.4 MB".
pub fn size(bytes: u64) -> String {
    let bytes = bytes as f64;
    match bytes {
        _ if bytes >= 1e9 => format!("{:.1} GB", bytes / 1e9),
        _ if bytes >= 1e6 => format!("{:.1} MB", bytes / 1e6),
        _ => format!("{:.0} kB", (bytes / 1e3).ceil()),
    }
}
