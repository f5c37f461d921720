//! `tidecount record check`, and the record that the others need.

use std::path::Path;
use std::process::ExitCode;

use jiff::ZonedDateTime;

use files::error::Failure;
use files::number_words::{counted, counted_of};
use record::Store;

fn none_in(folder: &Path) -> Failure {
    Failure::Missing(format!("there is no record in {}: name its folder with --data DIR", folder.display()))
}

/// The record that must be there.
///
/// # Errors
/// There is none, or it cannot be opened.
pub fn present(folder: &Path) -> Result<Store, Failure> {
    Store::open_existing(folder)?.ok_or_else(|| none_in(folder))
}

/// Looks through the whole record and says what is wrong.
///
/// # Errors
/// There is none, or it cannot be read.
pub fn check(folder: &Path, now: &ZonedDateTime, text: &mut String) -> Result<ExitCode, Failure> {
    let Some(checked) = Store::check(folder, now)? else {
        return Err(none_in(folder));
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
