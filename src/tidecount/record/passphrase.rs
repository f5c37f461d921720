//! `tidecount record passphrase`.

use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;

use crate::record::args::PassphraseOrder;
use files::error::Failure;
use files::number_words::counted_of;
use record::{
    NEW_PASSPHRASE_FILE_VARIABLE, NEW_PASSPHRASE_VARIABLE, PASSPHRASE_FILE_VARIABLE, PASSPHRASE_VARIABLE, Passphrase, RecordError, Store,
};

pub fn run(folder: &Path, order: PassphraseOrder, text: &mut String) -> Result<ExitCode, Failure> {
    let encrypted = Store::encrypted(folder)?;
    let usage = |why: &str| Err(Failure::Options(why.to_owned()));
    let new = match (order, encrypted) {
        (PassphraseOrder::Set, Some(true)) => {
            return usage("the record is already encrypted: `tidecount record passphrase change` changes the passphrase");
        }
        (PassphraseOrder::Set, _) => Some(to_set(true)?),
        (_, None | Some(false)) => return usage("the record is not encrypted: `tidecount record passphrase set` encrypts it"),
        (PassphraseOrder::Change, Some(true)) => {
            Store::unlock(folder)?;
            Some(to_set(false)?)
        }
        (PassphraseOrder::Remove, Some(true)) => None,
    };
    let done = Store::set_passphrase(folder, new.as_ref())?;
    let said = match order {
        PassphraseOrder::Set => {
            "The record is encrypted now. Write the passphrase down and keep it where only you can find it: without it nobody can read the record, not even the makers of this program."
        }
        PassphraseOrder::Change => "The record has its new passphrase. Earlier backups keep the old one.",
        PassphraseOrder::Remove => "The record is no longer encrypted.",
    };
    let _ = writeln!(text, "{said}");
    if done.sounds > 0 {
        let _ = writeln!(text, "Also encrypted: {}.", counted_of(done.sounds, "file", " of sound"));
    }
    for aside in &done.aside {
        let _ = writeln!(text, "An older record, set aside by a restore, is still as it was: {}", aside.display());
    }
    if order == PassphraseOrder::Set {
        let _ =
            writeln!(text, "Earlier backups, the household file, routines, notices and spoken lines are not encrypted (docs/record.md).");
    }
    Ok(ExitCode::SUCCESS)
}

/// The passphrase that is to be set: given, or asked twice. `first`: there is none yet, so that the usual variables may mean it, too.
fn to_set(first: bool) -> Result<Passphrase, Failure> {
    let given = match Passphrase::given_new()? {
        None if first => Passphrase::given()?,
        given => given,
    };
    if let Some(given) = given {
        return Ok(given.checked()?);
    }
    let Some(once) = Passphrase::asked("New passphrase") else {
        return Err(RecordError::Passphrase(if first {
            format!("there is no passphrase to set: put it in {PASSPHRASE_VARIABLE}, name a file with {PASSPHRASE_FILE_VARIABLE}, or run this in a terminal, which asks for it")
        } else {
            format!("there is no new passphrase: put it in {NEW_PASSPHRASE_VARIABLE}, name a file with {NEW_PASSPHRASE_FILE_VARIABLE}, or run this in a terminal, which asks for it")
        })
        .into());
    };
    let once = once.checked()?;
    if Passphrase::asked("Type it again").as_ref() != Some(&once) {
        return Err(RecordError::Passphrase("the two passphrases differ; nothing was changed. Try again".to_owned()).into());
    }
    Ok(once)
}
