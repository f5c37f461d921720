//! Runs `tidecount assess`.

use std::io::Write as _;
use std::path::Path;
use std::process::ExitCode;

use jiff::ZonedDateTime;
use jiff::civil::Date;

use crate::assess::args::AssessArgs;
use crate::assess::sheet::{Beside, sheet};
use crate::goal::whose::known;
use crate::practise;
use crate::record::check::present;
use files::error::{Failure, delivered};
use files::load;
use progress::{Assessment, assessments};
use record::Store;
use routine::VOICE;
use speak::Words;

/// Runs the command.
///
/// # Errors
/// Devices, model, voice or record cannot be used, or there is nothing to show.
pub fn run(args: &AssessArgs) -> Result<ExitCode, Failure> {
    let code = if args.show {
        ExitCode::SUCCESS
    } else {
        let sound = args.leading.sound.meant();
        let loaded = load::built_in(VOICE.name, VOICE.text, sound.model.as_deref())?;
        let code = practise::lead(&args.leading, loaded, Some(VOICE.name))?;
        // A recording is nobody's baseline.
        if sound.recording {
            return Ok(code);
        }
        code
    };
    let text = shown(args, &args.leading.data.folder()?, ZonedDateTime::now().date())?;
    delivered(std::io::stdout().write_all(model::visible(&text).as_bytes())).map(|()| code)
}

/// The newest baseline behind one that was led, else all of them.
///
/// # Errors
/// There is none, or the record cannot be read.
pub(super) fn shown(args: &AssessArgs, folder: &Path, today: Date) -> Result<String, Failure> {
    let store = present(folder)?;
    let client = whose(args, &store)?;
    let all = assessments(&store.assessed(&client, today)?);
    let Some(first) = all.iter().find(|one| !one.misdated && !one.readings.is_empty()) else {
        return Err(Failure::Options(format!("there is no baseline of {client} yet: lead one with `tidecount assess --client {client}`")));
    };
    if args.json {
        return all.iter().rev().map(json_line).collect();
    }
    let practised = store.practised(&client, today)?;
    let words = Words::usual()?;
    let beside = Beside { first, practised: &practised, today, age: args.age, sex: args.sex.map(Into::into) };
    let told = all.iter().rev().take(if args.show { usize::MAX } else { 1 });
    let sheets: Vec<String> = told.map(|one| sheet(&client, one, &beside, &words)).collect();
    Ok(sheets.join("\n"))
}

/// The client who is named, else the one whom a baseline without a name is kept under, else the only one.
fn whose(args: &AssessArgs, store: &Store) -> Result<String, Failure> {
    match &args.leading.client {
        None if !args.show => Ok("client".to_owned()),
        named => known(&store.clients()?, named.as_deref()),
    }
}

fn json_line(one: &Assessment) -> Result<String, Failure> {
    let line = serde_json::to_string(one).map_err(|why| Failure::Options(format!("a baseline cannot be written as JSON: {why}")))?;
    Ok(line + "\n")
}

#[cfg(test)]
#[path = "tests/command.rs"]
mod tests;
