//! `tidecount record forget`: everything of one client goes, in the record and in the other files of the data folder.

use std::fmt::Write;
use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use crate::record::beside::Beside;
use crate::record::household;
use crate::terminal::ask::{Ask, Plain, Terminal};
use files::error::Failure;
use files::number_words::{counted, counted_of};
use files::packages::sealed::package_folder;
use live::attend::record::NOTICES_NAME;
use record::{Forgotten, RecordError, Store, replace_file, wipe_file};

pub fn run(folder: &Path, client: &str, yes: bool, text: &mut String) -> Result<ExitCode, Failure> {
    if !yes && !confirmed(client)? {
        return Err(Failure::Declined("that is not the same name; nothing was deleted".to_owned()));
    }
    let forgotten = match Store::forget(folder, client) {
        Ok(forgotten) => Some(forgotten),
        // Something of theirs may lie beside the record all the same.
        Err(RecordError::NoSuchClient { .. }) => None,
        Err(error) => return Err(error.into()),
    };
    let beside = delete_beside(folder, client, forgotten.is_some())?;
    if forgotten.is_none() && beside == Beside::default() {
        return Err(RecordError::NoSuchClient { client: client.to_owned(), folder: folder.to_owned() }.into());
    }
    tell(client, &forgotten.unwrap_or_default(), &beside, text);
    let whole = beside.left.is_empty();
    Ok(if whole { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn confirmed(client: &str) -> Result<bool, Failure> {
    let question = format!(
        "All that is kept of {client:?} will be deleted for good: practices, agreements, enrolled voice, packages, sound.\nType the name again to delete it"
    );
    let mut terminal = Terminal;
    let mut plain = Plain::new(std::io::stdin().lock(), std::io::stderr());
    let ask: &mut dyn Ask = if std::io::stdin().is_terminal() { &mut terminal } else { &mut plain };
    let typed = ask.ask(&question, None).map_err(|error| {
        Failure::Declined(format!("{}; nothing was deleted. In scripts, use --yes", error.to_string().replace("; nothing was written", "")))
    })?;
    Ok(typed == client)
}

fn tell(client: &str, forgotten: &Forgotten, beside: &Beside, text: &mut String) {
    let _ = writeln!(
        text,
        "Deleted of {client}: {} with {}, {} of agreements, attendance, words and packages, {}.",
        counted(forgotten.practices, "practice"),
        counted(forgotten.entries, "journal line"),
        counted(forgotten.others, "row"),
        counted_of(forgotten.sounds, "file", " of sound")
    );
    for gone in &beside.gone {
        let _ = writeln!(text, "Deleted: {gone}");
    }
    for aside in &forgotten.aside {
        let _ = writeln!(text, "Also deleted in the older record {}.", aside.display());
    }
    for aside in &forgotten.aside_left {
        let _ = writeln!(
            text,
            "Still there: {} could not be opened and may hold data of {client}. Delete it if you do not need it.",
            aside.display()
        );
    }
    for left in &beside.left {
        let _ = writeln!(text, "Still there: {left}");
    }
    let _ = writeln!(
        text,
        "Not reached: backups, exported sound and reports, journals written with --journal, files handed to a clinician, routines outside the data folder."
    );
}

/// Deletes a client's files in the data folder. `known`: the record knew them.
pub fn delete_beside(folder: &Path, client: &str, known: bool) -> Result<Beside, Failure> {
    let mut beside = Beside::default();
    // A name that could lead elsewhere never got a folder.
    if let Some(own) =
        package_folder(folder, client).ok().and_then(|package| package.parent().map(Path::to_owned)).filter(|own| own.exists())
    {
        wipe_folder(&own)?;
        beside.gone.push(shown(folder, &own));
    }
    notices(folder, client, &mut beside)?;
    household::without(folder, client, &mut beside)?;
    routines(folder, client, &mut beside)?;
    // Spoken lines may hold the name; their files do not tell which. They are made anew when they are needed.
    let cache = folder.join("voice-cache");
    let count = files(&cache).len();
    if count > 0 && (known || beside != Beside::default()) {
        wipe_folder(&cache)?;
        beside.gone.push(format!("voice-cache ({count} spoken lines, everyone's; they are made again when needed)"));
    }
    Ok(beside)
}

fn shown(folder: &Path, path: &Path) -> String {
    path.strip_prefix(folder).unwrap_or(path).display().to_string()
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        match entry.file_type() {
            Ok(kind) if kind.is_dir() => found.extend(files(&entry.path())),
            _ => found.push(entry.path()),
        }
    }
    found
}

fn wipe_folder(folder: &Path) -> Result<(), Failure> {
    // A link is removed, never followed.
    files(folder).iter().filter(|file| file.symlink_metadata().is_ok_and(|data| data.is_file())).for_each(|file| wipe_file(file));
    std::fs::remove_dir_all(folder)
        .map_err(|error| Failure::file(folder, format!("cannot be deleted ({error}); make sure the folder is yours, then try again")))
}

/// Lines about the client, and lines for all that name the client.
fn notices(folder: &Path, client: &str, beside: &mut Beside) -> Result<(), Failure> {
    let path = folder.join(NOTICES_NAME);
    let Ok(text) = std::fs::read_to_string(&path) else { return Ok(()) };
    let kept: String = text.split_inclusive('\n').filter(|line| !is_about(line, client)).collect();
    if kept.len() < text.len() {
        replace_file(&path, kept.as_bytes())?;
        beside.gone.push(format!("{} lines of {NOTICES_NAME}", text.lines().count() - kept.lines().count()));
    }
    Ok(())
}

fn is_about(line: &str, client: &str) -> bool {
    let Ok(value) = serde_json::from_str::<serde_json::Value>(line) else { return false };
    let names = |field: &str| value.get(field).and_then(serde_json::Value::as_str).unwrap_or_default();
    names("person") == client || has_word(names("text"), client)
}

/// Whether the name stands in a text as words of its own, in whatever case.
fn has_word(text: &str, name: &str) -> bool {
    let (text, name) = (text.to_lowercase(), name.to_lowercase());
    let inside = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    text.match_indices(&name).any(|(at, found)| {
        let (before, after) = (text.get(..at).unwrap_or_default(), text.get(at + found.len()..).unwrap_or_default());
        !found.is_empty() && !inside(before.chars().next_back()) && !inside(after.chars().next())
    })
}

/// Routines in the data folder that are prescribed for the client.
fn routines(folder: &Path, client: &str, beside: &mut Beside) -> Result<(), Failure> {
    for path in files(folder) {
        let is_toml = path.extension().is_some_and(|ending| ending == "toml");
        let Some(table) =
            is_toml.then(|| std::fs::read_to_string(&path).ok()).flatten().and_then(|text| toml::from_str::<toml::Table>(&text).ok())
        else {
            continue;
        };
        if table.contains_key("step") && table.get("client").and_then(toml::Value::as_str) == Some(client) {
            wipe_file(&path);
            if path.exists() {
                beside.left.push(format!("{} could not be deleted", shown(folder, &path)));
            } else {
                beside.gone.push(shown(folder, &path));
            }
        }
    }
    Ok(())
}

#[cfg(test)]
#[path = "tests/forget.rs"]
mod tests;
