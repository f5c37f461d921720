//! What can be typed after `tidecount record`.

use std::path::PathBuf;

use crate::options::GlobalDataFolder;

/// Keep the record safe: back it up, check it, encrypt it, and delete what is kept of a client
#[derive(Debug, clap::Args)]
pub struct RecordArgs {
    #[command(flatten)]
    pub data: GlobalDataFolder,
    #[command(subcommand)]
    pub order: RecordOrder,
}

/// What to do with the record.
#[derive(Debug, clap::Subcommand)]
pub enum RecordOrder {
    /// Back everything up in one file: record, sound, household, packages, calibrations; a practice may go on meanwhile
    Backup {
        /// New file, or a folder in which a file with today's date is made
        file: PathBuf,
        /// Leave stored sound out
        #[arg(long)]
        without_sound: bool,
    },
    /// Bring a backup back; what stands there now is set aside, never written over
    Restore {
        /// File made by `tidecount record backup`, or a copy of a record
        file: PathBuf,
        /// Replace the present record even if it has something that the backup lacks
        #[arg(long)]
        replace: bool,
    },
    /// Check the whole record; exit with code 1 if something is wrong
    Check,
    /// Encrypt the record, change the passphrase, or remove it
    Passphrase {
        #[command(subcommand)]
        order: PassphraseOrder,
    },
    /// Forget a client: delete everything of theirs, for good; your backups you have to delete yourself
    Forget {
        /// Client's name, as `tidecount history` shows it
        client: String,
        /// Do not ask first: for scripts
        #[arg(long)]
        yes: bool,
    },
    /// List, export or delete a client's stored sound, or stop storing it
    Sound {
        #[command(subcommand)]
        order: SoundOrder,
    },
}

/// What to do with the passphrase.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::Subcommand)]
pub enum PassphraseOrder {
    /// Set a passphrase and encrypt the record
    Set,
    /// Change the passphrase of an encrypted record
    Change,
    /// Remove the passphrase and decrypt the record
    Remove,
}

/// What to do with stored sound.
#[derive(Debug, Clone, PartialEq, Eq, clap::Subcommand)]
pub enum SoundOrder {
    /// List what is stored, and say whether it may be
    List { client: String },
    /// Export what is stored as FLAC files into a folder
    Export {
        client: String,
        /// Write to this folder; it is made if it is missing
        #[arg(long, value_name = "DIR")]
        out: PathBuf,
    },
    /// Withdraw the consent: no more sound is stored
    Off { client: String },
    /// Delete what is stored; the consent stays
    Delete { client: String },
}
