//! `tidecount record backup` and `restore`.

use std::fmt::Write;
use std::path::Path;
use std::process::ExitCode;

use jiff::ZonedDateTime;

use crate::record::check::present;
use files::error::Failure;
use files::number_words::{counted, counted_of, size};
use record::Store;

/// Makes a backup and says what is in it, and what is not.
pub fn backup(folder: &Path, file: &Path, sound: bool, now: &ZonedDateTime, text: &mut String) -> Result<ExitCode, Failure> {
    let store = present(folder)?;
    let named = if file.is_dir() { file.join(format!("tidecount-{}.backup", now.strftime("%Y-%m-%d-%H%M%S"))) } else { file.to_owned() };
    let made = store.backup(&named, sound, now)?;
    let length = std::fs::metadata(&made.path).map_or(0, |data| data.len());
    let _ = writeln!(
        text,
        "{}: {} of {}, {}, {}; {}. It was read back and is complete.",
        made.path.display(),
        counted(made.practices, "practice"),
        counted(made.clients, "client"),
        counted(made.files.files, "other file"),
        counted_of(made.sounds.files, "file", " of sound"),
        size(length)
    );
    for left_out in &made.left_out {
        let _ = writeln!(text, "Not in it: {left_out}.");
    }
    let _ = writeln!(
        text,
        "{}",
        if made.encrypted {
            "It is encrypted with the record's passphrase: without that nobody can read it."
        } else {
            "It is not encrypted: keep it where only you can reach it."
        }
    );
    let _ = writeln!(text, "To bring it back: tidecount record restore {}", made.path.display());
    Ok(told_damage(&made.damaged, "The record was damaged before; the backup holds it as it is. Keep your older backups.", text))
}

/// Names each damaged place. Where there is one, a script must notice.
fn told_damage(damaged: &[String], what: &str, text: &mut String) -> ExitCode {
    for damage in damaged {
        let _ = writeln!(text, "Damaged: {damage}.");
    }
    if damaged.is_empty() {
        return ExitCode::SUCCESS;
    }
    let _ = writeln!(text, "{what}");
    ExitCode::FAILURE
}

/// Brings a backup back and says where what stood there went.
pub fn restore(folder: &Path, file: &Path, replace: bool, now: &ZonedDateTime, text: &mut String) -> Result<ExitCode, Failure> {
    let restored = Store::restore(folder, file, replace, now)?;
    let made = restored.made_at.map_or_else(String::new, |at| format!(" of {}", at.split(['[', '.']).next().unwrap_or_default()));
    let _ = writeln!(
        text,
        "The backup{made} brought {} back into {}, and {}.",
        counted(restored.practices, "practice"),
        folder.display(),
        counted(restored.files.len(), "other file")
    );
    for aside in &restored.aside {
        let _ = writeln!(text, "What was there before is kept in {}.", aside.display());
    }
    if restored.encrypted {
        let _ = writeln!(text, "The record has the passphrase that the backup was made with.");
    }
    Ok(told_damage(&restored.damaged, "The backup was made of a damaged record. Try an older one.", text))
}
