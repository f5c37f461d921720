//! `tidecount routine templates [EXERCISE]`: published doses beside each other, with their sources.

use std::io::{self, Write};

use crate::terminal::Lookup;
use routine::{CatalogueEntry, Range, catalogue, disagreements, find, ramp_template, templates};

/// Width of the lines below a row.
const WIDTH: usize = 100;

/// Prints the templates of one exercise or of all. False: there is no such exercise, which was written to `out`.
///
/// # Errors
/// `out` cannot be written.
pub fn run(exercise: Option<&str>, words: Lookup<'_>, out: &mut dyn Write) -> io::Result<bool> {
    let entries: Vec<&'static CatalogueEntry> = match exercise {
        None => catalogue().iter().collect(),
        Some(id) => find(id).into_iter().collect(),
    };
    if entries.is_empty() {
        writeln!(out, "There is no exercise \"{}\". `tidecount exercises` lists them all.", exercise.unwrap_or_default().escape_debug())?;
        return Ok(false);
    }
    for (n, entry) in entries.into_iter().enumerate() {
        if n > 0 {
            writeln!(out)?;
        }
        table(entry, words, out)?;
    }
    Ok(true)
}

fn table(entry: &'static CatalogueEntry, words: Lookup<'_>, out: &mut dyn Write) -> io::Result<()> {
    let name = words(&format!("ex-{}-name", entry.id)).unwrap_or_else(|| entry.id.clone());
    writeln!(out, "{name}  ({})", entry.id)?;
    row(out, ["", "times", "held s", "rest s", "in-out", "a day", "days/week", "weeks", "status"])?;
    for (n, template) in templates(entry).iter().enumerate() {
        let dose = template.dose;
        let counts = match (dose.counts_in, dose.counts_out) {
            (Some(counts_in), Some(counts_out)) => format!("{counts_in}-{counts_out}"),
            _ => "-".to_owned(),
        };
        let (number, cell) = ((n + 1).to_string(), |range: Option<Range>| range.map_or("-".to_owned(), |range| range.to_string()));
        let [times, held, rest] = [dose.repetitions, dose.hold_s, dose.rest_s].map(cell);
        let [day, week, weeks] = [dose.sets_per_day, dose.days_per_week, dose.weeks].map(cell);
        row(out, [&number, &times, &held, &rest, &counts, &day, &week, &weeks, &dose.status.to_string()])?;
        below(out, &dose.text)?;
        below(out, &if dose.source == "common practice" { dose.who.clone() } else { format!("{}; {}", dose.who, dose.source) })?;
        if let Some(note) = &dose.note {
            below(out, note)?;
        }
        if let Some(beyond) = &template.beyond {
            below(out, &format!("Cannot be used in a routine: {beyond}."))?;
        }
    }
    if let Some(ramp) = ramp_template(&entry.id) {
        writeln!(out, "  Growing [{}], a stage up once all of it was done on {} different days", ramp.status, ramp.days)?;
        for text in [&ramp.text, &format!("{}; {}", ramp.who, ramp.source), &ramp.note] {
            below(out, text)?;
        }
    }
    for both in disagreements(&entry.id) {
        writeln!(out, "  Sources disagree: {}", both.asks)?;
        below(out, &format!("one: {} [{}; {}]", both.one, both.one_source, both.one_status))?;
        below(out, &format!("other: {} [{}; {}]", both.other, both.other_source, both.other_status))?;
        below(out, &format!("here: {}", both.here))?;
    }
    Ok(())
}

fn row(out: &mut dyn Write, cells: [&str; 9]) -> io::Result<()> {
    let [number, times, held, rest, counts, day, week, weeks, status] = cells;
    let line = format!("  {number:>2}  {times:>6}  {held:>7}  {rest:>6}  {counts:>6}  {day:>5}  {week:>9}  {weeks:>5}  {status}");
    writeln!(out, "{}", line.trim_end())
}

fn below(out: &mut dyn Write, text: &str) -> io::Result<()> {
    for line in textwrap::wrap(text, textwrap::Options::new(WIDTH).initial_indent("      ").subsequent_indent("      ")) {
        writeln!(out, "{line}")?;
    }
    Ok(())
}
