//! The tables of an export: trials, steps, practices, events, goals, and what stands in their columns.

use std::io::Write;
use std::path::Path;

use crate::error::Failure;
use crate::exports::out::{NewFile, Target, failed, free};
use crate::exports::read::{Chosen, Selection};
use crate::number_words::counted;
use export::{GoalOn, TABLES, Table, Writer, as_csvw, as_table, event_row, goal_row, practice_row, step_row, trial_row};
use jiff::civil::Date;
use progress::GoalState;
use record::create_folder;

/// Which tables, and where they go.
#[derive(Debug, Clone)]
pub struct CsvExport {
    pub selection: Selection,
    /// A file that ends in .csv or standard output gets one table; any other path is a folder, which gets all of them with their
    /// data dictionary.
    pub target: Target,
    /// The one table.
    pub table: &'static Table,
}

impl CsvExport {
    /// The folder for all tables; none where one table is asked for.
    fn folder(&self) -> Option<&Path> {
        self.target.file().filter(|path| path.extension().is_none_or(|ending| !ending.eq_ignore_ascii_case("csv")))
    }
}

/// Writes tables.
///
/// # Errors
/// There is nothing to export, or it cannot be read or written.
pub fn write_csv(asked: &CsvExport) -> Result<(), Failure> {
    if let Some(folder) = asked.folder() {
        return csv_folder(asked, folder);
    }
    let chosen = Chosen::find(&asked.selection)?;
    asked.target.spare_record(chosen.store())?;
    asked.target.write(|to| {
        let mut tables = Tables { writers: vec![(asked.table, Writer::new(asked.table, to).map_err(failed)?)] };
        let (goals, on) = (chosen.goals()?, chosen.judged_on());
        chosen.each(|practice| tables.take(practice))?;
        tables.take_goals(&goals, on)?;
        tables.finish()
    })
}

/// The tables that are being written.
struct Tables<W: Write> {
    writers: Vec<(&'static Table, Writer<W>)>,
}

impl<W: Write> Tables<W> {
    fn take(&mut self, practice: &export::Practice<'_>) -> Result<(), Failure> {
        for (table, writer) in &mut self.writers {
            let mut put = |row| writer.row(&row).map_err(failed);
            match table.name {
                "trials" => practice.trials.iter().try_for_each(|trial| put(trial_row(practice, trial)))?,
                "steps" => practice.steps.iter().try_for_each(|step| put(step_row(practice, step)))?,
                "practices" => put(practice_row(practice))?,
                "goals" => {}
                _ => practice.entries().filter_map(|(part, kept)| event_row(practice, part, kept)).try_for_each(put)?,
            }
        }
        Ok(())
    }

    fn take_goals(&mut self, goals: &[(String, Vec<GoalState>)], on: Date) -> Result<(), Failure> {
        for (_, writer) in self.writers.iter_mut().filter(|(table, _)| table.name == "goals") {
            let all = goals.iter().flat_map(|(client, states)| states.iter().map(move |state| GoalOn { client, state, on }));
            all.into_iter().try_for_each(|goal| writer.row(&goal_row(&goal)).map_err(failed))?;
        }
        Ok(())
    }

    fn finish(self) -> Result<(), Failure> {
        self.writers.into_iter().try_for_each(|(_, writer)| writer.finish().map_err(failed))
    }
}

fn csv_folder(asked: &CsvExport, folder: &Path) -> Result<(), Failure> {
    if folder.is_file() {
        return Err(Failure::file(folder, "this is a file; name a folder, or a file that ends in .csv"));
    }
    let dictionary =
        [("data-dictionary.csv", as_table().map_err(failed)?), ("csv-metadata.json", format!("{:#}\n", as_csvw()).into_bytes())];
    let names = TABLES.iter().map(|table| table.file()).chain(dictionary.iter().map(|(name, _)| (*name).to_owned()));
    for name in names {
        free(&folder.join(name), asked.target.force)?;
    }
    let chosen = Chosen::find(&asked.selection)?;
    create_folder(folder)?;
    let mut files =
        TABLES.iter().map(|table| NewFile::begin(&folder.join(table.file()), asked.target.force)).collect::<Result<Vec<_>, _>>()?;
    let writers =
        TABLES.into_iter().zip(&mut files).map(|(table, file)| Ok((table, Writer::new(table, &mut file.writer).map_err(failed)?)));
    let mut tables = Tables { writers: writers.collect::<Result<Vec<_>, Failure>>()? };
    let practices = chosen.heads().count();
    let (goals, on) = (chosen.goals()?, chosen.judged_on());
    chosen.each(|practice| tables.take(practice))?;
    tables.take_goals(&goals, on)?;
    tables.finish()?;
    for (name, bytes) in &dictionary {
        let mut file = NewFile::begin(&folder.join(name), asked.target.force)?;
        file.writer.write_all(bytes).map_err(failed)?;
        files.push(file);
    }
    files.into_iter().try_for_each(NewFile::finish)?;
    eprintln!(
        "{}: {} in {} tables, with data-dictionary.csv and csv-metadata.json.",
        folder.display(),
        counted(practices, "practice"),
        TABLES.len()
    );
    Ok(())
}

/// Writes what stands in each column, as a table or as metadata for programs (W3C "CSV on the Web").
///
/// # Errors
/// It cannot be written.
pub fn write_dictionary(csvw: bool, target: &Target) -> Result<(), Failure> {
    let bytes = if csvw { format!("{:#}\n", as_csvw()).into_bytes() } else { as_table().map_err(failed)? };
    target.write(|to| to.write_all(&bytes).map_err(failed))
}
