//! Puts a run on record: its values, samples and commit go into `benches/figures.toml`, whose comments and order stay.

use crate::declared::File;
use crate::taken::Run;
use toml_edit::{DocumentMut, InlineTable, Value, value};

/// Why a run cannot go on record.
#[derive(Debug, thiserror::Error)]
pub enum KeepError {
    /// The run does not tell its commit or its cores.
    #[error("the run tells neither commit nor cores; take it with benches/run.sh")]
    Unsigned,
    /// Files were changed when it was taken.
    #[error("the run was taken on {0}, with files changed; commit them and take it again")]
    Changed(String),
    /// Another kind of machine.
    #[error("the run is from a machine with {run} cores, the figures on record from one with {file}")]
    OtherMachine {
        /// Cores of the run's machine.
        run: u32,
        /// Cores of the machine on record.
        file: u32,
    },
    /// The file cannot be edited.
    #[error(transparent)]
    Toml(#[from] toml_edit::TomlError),
}

/// The file's text with the run's values. Figures that the run lacks, or found nothing to measure for, keep what they have.
///
/// # Errors
/// The run is not of a clean commit on the kind of machine that the file names.
pub fn keep(text: &str, file: &File, run: &Run) -> Result<String, KeepError> {
    let (Some(commit), Some(cores)) = (&run.commit, run.cores) else { return Err(KeepError::Unsigned) };
    if commit.ends_with('+') {
        return Err(KeepError::Changed(commit.trim_end_matches('+').to_owned()));
    }
    if cores != file.cores {
        return Err(KeepError::OtherMachine { run: cores, file: file.cores });
    }
    let mut document: DocumentMut = text.parse()?;
    let sections = document.get_mut("section").and_then(|item| item.as_array_of_tables_mut());
    let arrays =
        sections.into_iter().flat_map(|sections| sections.iter_mut()).filter_map(|section| section.get_mut("figures")?.as_array_mut());
    for figure in arrays.flat_map(|array| array.iter_mut()).filter_map(Value::as_inline_table_mut) {
        let Some(now) = figure.get("id").and_then(Value::as_str).and_then(|id| run.values.get(id)) else { continue };
        if !now.is_of_nothing() {
            put(figure, "value", value(rounded(now.value)));
            if let Some(sample) = now.sample.and_then(|sample| i64::try_from(sample).ok()) {
                put(figure, "sample", value(sample));
            } else {
                figure.remove("sample");
            }
            put(figure, "commit", value(commit.as_str()));
        }
    }
    Ok(document.to_string())
}

fn put(figure: &mut InlineTable, key: &str, item: toml_edit::Item) {
    if let Ok(new) = item.into_value() {
        figure.insert(key, new);
        figure.fmt();
    }
}

/// Six digits that count: more say nothing and make every change look like one.
fn rounded(value: f64) -> f64 {
    format!("{value:.5e}").parse().unwrap_or(value)
}
