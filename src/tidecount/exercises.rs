//! `tidecount exercises [ID]`: the catalogue of exercises.

use std::io::{self, Write};
use std::process::ExitCode;

use crate::terminal::{Lookup, told};
use files::error::Failure;
use routine::{CatalogueEntry, UsualDose, catalogue, cautions, exclusions, find, limit_of, origin, safe_dose};
use session::Line;
use speak::Words;

/// Arguments of `tidecount exercises`.
#[derive(Debug, clap::Args)]
pub struct ExercisesArgs {
    /// Show this exercise whole: purpose, instruction, doses with their sources, cautions
    pub id: Option<String>,
}

/// Runs the command.
///
/// # Errors
/// The output cannot be written.
pub fn run(args: &ExercisesArgs) -> Result<ExitCode, Failure> {
    let words = Words::usual()?;
    let look_up = |key: &str| words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok();
    told(show(args.id.as_deref(), &look_up, &mut std::io::stdout().lock()))
}

/// Lists the catalogue, or shows one exercise whole. False: there is no such exercise, which was written to `out`.
///
/// # Errors
/// `out` cannot be written.
pub fn show(id: Option<&str>, words: Lookup<'_>, out: &mut dyn Write) -> io::Result<bool> {
    let Some(id) = id else {
        for entry in catalogue() {
            let agreement = if entry.needs_agreement { "  (only with a clinician's agreement)" } else { "" };
            writeln!(out, "{:<26}{}{agreement}", entry.id, say(words, &format!("ex-{}-name", entry.id)))?;
        }
        return Ok(true);
    };
    let Some(entry) = find(id) else {
        writeln!(out, "There is no exercise \"{}\". `tidecount exercises` lists them all.", id.escape_debug())?;
        return Ok(false);
    };
    write_entry(entry, words, out)?;
    Ok(true)
}

fn write_entry(entry: &CatalogueEntry, words: Lookup<'_>, out: &mut dyn Write) -> io::Result<()> {
    let message = |part: &str| say(words, &format!("ex-{}-{part}", entry.id));
    writeln!(out, "{}  ({})\n", message("name"), entry.id)?;
    writeln!(out, "Purpose      {}", message("purpose"))?;
    writeln!(out, "Instruction  {}", message("instruction"))?;
    writeln!(out, "Timing       {}", timing_name(entry))?;
    if entry.soft {
        writeln!(out, "Loudness     soft to medium; the check of a routine counts none of it as loud voice")?;
    }
    if entry.needs_agreement {
        writeln!(out, "Agreement    only where the client's own clinician has agreed")?;
        writeln!(out, "Said once    {}", message("before"))?;
    }
    if entry.has_care() {
        writeln!(out, "Every time   {}", message("care"))?;
    }
    if let Some(passage) = entry.passage() {
        writeln!(out, "\n{}", textwrap::fill(passage, textwrap::Options::new(80).initial_indent("    ").subsequent_indent("    ")))?;
    }
    writeln!(out, "\nUsual doses")?;
    for dose in &entry.usual_doses {
        write_dose(dose, out)?;
    }
    writeln!(out, "\nFields of a step, with their defaults and limits")?;
    let defaults = entry.defaults();
    for field in entry.dose_fields() {
        let default = defaults.get(field).map_or("-", String::as_str);
        write!(out, "  {field} = {default}")?;
        let (limited, each) = if field == "phases" { ("phase_s", "each ") } else { (field, "") };
        match limit_of(Some(entry), limited) {
            Some(limit) => writeln!(out, "    {each}{} to {}: {}", limit.min, limit.max, limit.why)?,
            None => writeln!(out)?,
        }
    }
    if let Some(safe) = safe_dose(&entry.id) {
        writeln!(out, "\nWhat it may add up to")?;
        for (name, bound) in safe.bounds() {
            let least = name.contains("at least");
            let (up_to, beyond) = if least { ("from", "refused under") } else { ("up to", "refused over") };
            let word = bound.word.map_or(String::new(), |word| format!("{up_to} {word} without a clinician's word, "));
            writeln!(out, "  {name}: {word}{beyond} {}: {}", bound.refused, bound.reason())?;
        }
        if let Some(row) = &safe.in_a_row {
            writeln!(out, "  a rest of {} s ends a row", row.rest_s)?;
        }
    }
    if entry.postures.len() > 1 {
        let names: Vec<&str> = entry.postures.iter().map(|posture| posture.name()).collect();
        let usual = names.first().copied().unwrap_or_default();
        writeln!(out, "\nPosture      {}: `posture` in the step says which; left out: {usual}", names.join(" or "))?;
    }
    if !entry.cautions.is_empty() {
        writeln!(out, "\nCautions")?;
        for key in &entry.cautions {
            writeln!(out, "  - {}", say(words, &format!("caution-{key}")))?;
            if let Some(caution) = cautions().iter().find(|caution| caution.key == *key) {
                writeln!(out, "    {}", origin(caution.source.as_deref(), caution.status))?;
            }
        }
    }
    if !entry.not_for.is_empty() {
        writeln!(out, "\nNot for, unless their own clinician says otherwise")?;
        for key in &entry.not_for {
            writeln!(out, "  - {}", say(words, &format!("notfor-{key}")))?;
            if let Some(exclusion) = exclusions().iter().find(|exclusion| exclusion.key == *key) {
                writeln!(out, "    {}", origin(exclusion.source.as_deref(), exclusion.status))?;
            }
        }
    }
    Ok(())
}

fn write_dose(dose: &UsualDose, out: &mut dyn Write) -> io::Result<()> {
    writeln!(out, "  - {}", dose.text)?;
    let source = if dose.source == "common practice" { String::new() } else { format!("; {}", dose.source) };
    writeln!(out, "    {}{source} [{}]", dose.who, dose.status)?;
    match &dose.note {
        Some(note) => writeln!(out, "    {note}"),
        None => Ok(()),
    }
}

/// The timing as it is written in the catalogue, "read-aloud".
fn timing_name(entry: &CatalogueEntry) -> String {
    serde_json::to_value(entry.timing).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default()
}

/// A message, or its key where it is missing.
fn say(words: Lookup<'_>, key: &str) -> String {
    words(key).unwrap_or_else(|| key.to_owned())
}
