//! `tidecount history`: past practices, or one of them entry by entry.

use std::io::Write;
use std::path::Path;
use std::process::ExitCode;

use serde_json::{Map, Value, json};

use crate::class_history;
use crate::options::DataFolder;
use crate::rounded::thousandths;
use files::error::{Failure, delivered};
use model::visible_line;
use record::{RecordError, SessionId, SessionSummary, Store, journal_text};
use session::{EndReason, Entry};

/// Arguments of `tidecount history`.
#[derive(Debug, clap::Args)]
pub struct HistoryArgs {
    /// Practice to show entry by entry, by its number
    pub id: Option<i64>,
    /// Show only practices of this client
    #[arg(long, value_name = "NAME", conflicts_with = "id")]
    pub client: Option<String>,
    /// Show at most this many, newest first
    #[arg(long, value_name = "N", default_value_t = 20, value_parser = clap::value_parser!(u32).range(1..))]
    pub last: u32,
    /// Print one JSON object a line
    #[arg(long)]
    pub json: bool,
    /// Show classes that were led from a list instead: who was there and what was led
    #[arg(long, conflicts_with_all = ["id", "client"])]
    pub classes: bool,
    /// Print who was there as a table, CSV
    #[arg(long, requires = "classes", conflicts_with = "json")]
    pub csv: bool,
    #[command(flatten)]
    pub data: DataFolder,
}

/// Runs the command.
///
/// # Errors
/// As [`list`].
pub fn run(args: &HistoryArgs) -> Result<ExitCode, Failure> {
    list(args, &mut std::io::stdout().lock()).map(|()| ExitCode::SUCCESS)
}

/// Lists practices, or shows one. Where there is no record yet, none is made.
///
/// # Errors
/// The record cannot be read, or there is no practice with that number. A reader that went away is none.
fn list(args: &HistoryArgs, out: &mut dyn Write) -> Result<(), Failure> {
    let folder = args.data.folder()?;
    if args.classes {
        let classes = Store::open_to_read(&folder)?.map(|store| store.classes(args.last)).transpose()?.unwrap_or_default();
        let text = class_history::written(&classes, args.json, args.csv, &folder)?;
        return delivered(out.write_all(text.as_bytes()).and_then(|()| out.flush()));
    }
    let text = match (Store::open_to_read(&folder)?, args.id) {
        (None, Some(id)) => return Err(RecordError::NoSuchSession { id }.into()),
        (None, None) if args.json => String::new(),
        (None, None) => none_yet(&folder),
        (Some(store), Some(id)) => one(&store, SessionId(id), args.json)?,
        (Some(store), None) => {
            let practices = store.history(args.client.as_deref(), args.last)?;
            match (args.json, practices.is_empty()) {
                (true, _) => practices.iter().map(|summary| format!("{}\n", as_json(summary))).collect(),
                (false, true) => none_yet(&folder),
                (false, false) => practices.iter().map(as_text).collect(),
            }
        }
    };
    delivered(out.write_all(text.as_bytes()).and_then(|()| out.flush()))
}

fn none_yet(folder: &Path) -> String {
    format!("There are no practices yet in {}.\n", folder.display())
}

fn as_text(summary: &SessionSummary) -> String {
    let holds: Vec<String> = summary.best_holds.iter().map(|hold| format!("{} {:.1} s", hold.exercise, hold.duration_s)).collect();
    let holds = if holds.is_empty() { String::new() } else { format!("\n       best holds: {}", holds.join(", ")) };
    format!(
        "{:>5}  {}  {}, {}{}\n       {} of {} exercises, {:.1} min, {}{holds}\n",
        summary.id.0,
        summary.started_at.strftime("%a %Y-%m-%d %H:%M"),
        visible_line(&summary.client),
        visible_line(&summary.routine),
        if summary.source == record::Source::Live { String::new() } else { format!(" ({})", summary.source.as_str()) },
        summary.steps_done,
        summary.steps_prescribed,
        summary.minutes,
        how_ended(summary),
    )
}

/// Nobody ended it: it was interrupted, unless somebody practises now.
fn how_ended(summary: &SessionSummary) -> String {
    match &summary.end_reason {
        Some(reason) => format!("ended: {}", visible_line(reason)),
        None if summary.under_way => "under way".to_owned(),
        None => format!("ended: {}", EndReason::Interrupted.as_str()),
    }
}

fn as_json(summary: &SessionSummary) -> Value {
    let holds: Map<String, Value> =
        summary.best_holds.iter().map(|hold| (hold.exercise.clone(), json!(thousandths(hold.duration_s)))).collect();
    json!({
        "id": summary.id.0,
        "client": summary.client,
        "started_at": summary.started_at.to_string(),
        "routine": summary.routine,
        "source": summary.source.as_str(),
        "steps_done": summary.steps_done,
        "steps_prescribed": summary.steps_prescribed,
        "duration_s": thousandths(summary.minutes * 60.0),
        "best_hold_s": holds,
        "end_reason": summary.end_reason.as_deref().or((!summary.under_way).then_some(EndReason::Interrupted.as_str())),
        "software": summary.software,
    })
}

fn one(store: &Store, id: SessionId, json: bool) -> Result<String, Failure> {
    let entries = store.entries(id)?;
    if json {
        return Ok(journal_text(&entries)?);
    }
    let mut text = as_text(&store.history_of(id)?);
    for entry in &entries {
        text.push_str(&entry_text(entry)?);
    }
    Ok(text)
}

/// "   40.3  1.1.2  hold measured  exercise long-ah, duration_s 12.4, …"
fn entry_text(entry: &Entry) -> Result<String, Failure> {
    let line = journal_text(std::slice::from_ref(entry))?;
    let values: Map<String, Value> = serde_json::from_str(&line).unwrap_or_default();
    let place = entry.position.map_or_else(String::new, |at| format!("{}.{}.{}", at.step, at.set, at.repetition));
    let mut kind = String::new();
    let mut rest = Vec::new();
    for (key, value) in &values {
        match key.as_str() {
            "kind" => kind = value.as_str().unwrap_or_default().replace('_', " "),
            "at_s" | "step" | "set" | "repetition" => {}
            _ => rest.push(format!("{key} {}", value_text(value))),
        }
    }
    Ok(format!("{:>8.1}  {place:<7} {kind:<20} {}", entry.at_s, rest.join(", ")).trim_end().to_owned() + "\n")
}

fn value_text(value: &Value) -> String {
    match value {
        Value::String(text) => visible_line(text),
        Value::Null => "not known".to_owned(),
        Value::Bool(yes) => if *yes { "yes" } else { "no" }.to_owned(),
        Value::Array(values) => values.iter().map(value_text).collect::<Vec<_>>().join(" "),
        other => other.to_string(),
    }
}

#[cfg(test)]
#[path = "tests/history.rs"]
mod tests;
