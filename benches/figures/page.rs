//! The tables of `docs/performance.md`, each between `<!-- figures: SECTION -->` and `<!-- end of figures -->`.

use crate::declared::{Declared, File, Section};
use std::fmt::Write;

const END: &str = "<!-- end of figures -->";

/// What is wrong with the page.
#[derive(Debug, thiserror::Error)]
pub enum PageError {
    /// The page lacks a section's table.
    #[error("the page has no place for the figures of {0:?}: a line `<!-- figures: {0} -->`, and further down `{END}`")]
    NoPlace(String),
}

/// The page with its tables as the file has them; what stands between the tables stays.
///
/// # Errors
/// A section has no place on the page.
pub fn page(old: &str, file: &File) -> Result<String, PageError> {
    let mut text = old.to_owned();
    for section in &file.section {
        let start = format!("<!-- figures: {} -->\n", section.id);
        let missing = || PageError::NoPlace(section.id.clone());
        let from = text.find(&start).ok_or_else(missing)? + start.len();
        let to = from + text.get(from..).and_then(|rest| rest.find(END)).ok_or_else(missing)?;
        text.replace_range(from..to, &table(file, section));
    }
    Ok(text)
}

/// A row for each figure.
fn table(file: &File, section: &Section) -> String {
    let mut text = String::from("\n| what | figure | limit | taken on | command |\n| --- | --- | --- | --- | --- |\n");
    for figure in &section.figures {
        let command = figure.command.as_ref().unwrap_or(&section.command);
        let _ =
            writeln!(text, "| {} | {} | {} | {} | `{command}` |", figure.what, value(figure), figure.shown_limit(), taken_on(file, figure));
    }
    text.push('\n');
    text
}

fn value(figure: &Declared) -> String {
    let Some(value) = figure.value else { return "not taken yet".to_owned() };
    let missed = if figure.keeps_limit(value) == Some(false) { ": **missed**" } else { "" };
    format!("{}{missed}", figure.shown(value, figure.sample))
}

fn taken_on(file: &File, figure: &Declared) -> String {
    match &figure.commit {
        None => String::new(),
        Some(commit) if file.is_before_split(commit) => format!("{commit}, before the split: retake"),
        Some(commit) => commit.clone(),
    }
}
