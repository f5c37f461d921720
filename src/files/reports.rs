//! The pages about one client's practice, for the clinician and for the client.

use std::path::{Path, PathBuf};

use jiff::civil::Date;

use crate::error::Failure;
use crate::pdf;
use progress::{GoalState, Picture, Practised, Series, Window};
use record::Store;
use report::sheet::{self, About, Goals, Letter, Part, Sheet, carer, letter};
use report::{letter_html, to_html};
use session::{Arg, Line};
use speak::Words;

/// More weeks than this make no page: two years and a little.
pub const MOST_WEEKS: i64 = 106;

/// Which report.
#[derive(Debug, Clone)]
pub struct Wanted {
    /// Whose practice; none where only one person practises here.
    pub client: Option<String>,
    /// So many weeks up to today, from a Monday on.
    pub weeks: u32,
    pub format: Format,
    pub page: Page,
    /// The folder of the record.
    pub data: PathBuf,
}

/// For whom it is made.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Page {
    /// The whole report: the clinician's page, tables, the client's page.
    #[default]
    Whole,
    /// A letter to another clinician, with these parts.
    Letter(Vec<Part>),
    /// A page for whoever helps at home.
    Carer,
}

/// What can be made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Format {
    /// Pages to print, A4
    Pdf,
    /// One file for a browser
    Html,
    /// The text for the chart
    Chart,
}

impl Format {
    /// The ending of its file.
    #[must_use]
    pub fn extension(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Html => "html",
            Self::Chart => "txt",
        }
    }
}

/// The report's bytes and whose it is.
///
/// # Errors
/// There is no record, nobody or several people practise in it, the client named does not; or the record cannot be read.
pub fn make(wanted: &Wanted, today: Date, words: &Words) -> Result<(String, Vec<u8>), Failure> {
    let folder = &wanted.data;
    let Some(store) = Store::open_existing(folder)? else {
        return Err(Failure::Missing(format!(
            "there is no record in {}, so there is nothing to report: practise first, or name the folder of the record with --data DIR",
            folder.display()
        )));
    };
    let client = choose(&store.live_clients()?, wanted.client.as_deref(), folder)?;
    let practised = store.practised(&client, today)?;
    let bytes = match &wanted.page {
        Page::Whole => {
            let page = gather(&practised, &store.assessed(&client, today)?, wanted.weeks, today, words)?;
            match wanted.format {
                Format::Pdf => pdf::report(&page)?,
                Format::Html => to_html(&page).into_bytes(),
                Format::Chart => page.chart.text.into_bytes(),
            }
        }
        short => {
            let (picture, about) = (Picture::of(&practised, window(&practised, wanted.weeks, today)), about(&practised, today));
            let say = saying(words);
            short_page(
                &if let Page::Letter(parts) = short { letter(&picture, &about, parts, &say) } else { carer(&picture, &about, &say) },
                wanted.format,
            )?
        }
    };
    Ok((client, bytes))
}

/// Everything that stands in the report of what was practised, and of what was measured apart from it (`assessed`).
///
/// # Errors
/// A drawing cannot be made.
pub fn gather(practised: &Practised, assessed: &Practised, weeks: u32, today: Date, words: &Words) -> Result<Sheet, Failure> {
    let picture = Picture::of(practised, window(practised, weeks, today)).with_baselines(assessed, practised);
    sheet::sheet(&picture, &about(practised, today), &saying(words)).map_err(|why| Failure::Fault(why.to_string()))
}

fn about(practised: &Practised, today: Date) -> About<'static> {
    let last_practice = practised.practices.iter().filter(|practice| !practice.misdated).map(|practice| practice.day).max();
    About { made: today, last_practice, software: concat!("tidecount ", env!("CARGO_PKG_VERSION")) }
}

/// A letter, or the page for whoever helps at home, as a file.
fn short_page(page: &Letter, format: Format) -> Result<Vec<u8>, Failure> {
    match format {
        Format::Pdf => Ok(pdf::letter(page)?),
        Format::Html => Ok(letter_html(page).into_bytes()),
        Format::Chart => Err(Failure::Options("the text for the chart is of the whole report: leave --page out".to_owned())),
    }
}

/// What the catalogue says under a key.
fn saying(words: &Words) -> impl Fn(&str, &[(&'static str, Arg)]) -> String {
    |key, given| words.text(&Line { key: key.to_owned(), args: given.to_vec() }).unwrap_or_default()
}

/// A client's goals as they are told, whole.
#[must_use]
pub fn goal_lines(goals: &[GoalState], words: &Words) -> Goals {
    sheet::goal_lines(goals, &saying(words))
}

/// What the units and measures of these series mean, a line each.
#[must_use]
pub fn abbreviation_lines(series: &[&Series], words: &Words) -> Vec<String> {
    sheet::unit_lines(series, &saying(words))
}

/// The weeks asked for; where practice began later, from the week in which it began: empty weeks before it tell nothing.
fn window(practised: &Practised, weeks: u32, today: Date) -> Window {
    let (asked, all) = (Window::weeks(today, weeks), Window::all(practised, today));
    let monday = Window::weeks(all.from, 1).from;
    Window { from: asked.from.max(monday), to: asked.to }
}

/// The client who is named, or the only one.
fn choose(clients: &[(String, u32)], named: Option<&str>, folder: &Path) -> Result<String, Failure> {
    let list = || clients.iter().map(|(name, practices)| format!("\n  {} ({practices} practices)", one_line(name))).collect::<String>();
    match (named, clients) {
        (_, []) => Err(Failure::Missing(format!(
            "nobody has practised live in {} yet, so there is nothing to report: practise first, or name another data folder with --data DIR",
            folder.display()
        ))),
        (Some(name), _) => clients.iter().find(|(known, _)| known == name).map(|(known, _)| known.clone()).ok_or_else(|| {
            Failure::Options(format!("{:?} has not practised live here. Name one of these with --client NAME:{}", one_line(name), list()))
        }),
        (None, [(only, _)]) => Ok(only.clone()),
        (None, _) => {
            Err(Failure::Options(format!("several people practise here. Say whose report you want with --client NAME:{}", list())))
        }
    }
}

/// Names must not steer the terminal.
fn one_line(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}

/// The client's name as part of a file's name: letters and digits, everything else a dash; nothing else about the person.
#[must_use]
pub fn short_name(client: &str) -> String {
    let letters: String = client.chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
    let short: String =
        letters.to_lowercase().split('-').filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-").chars().take(24).collect();
    let short = short.trim_end_matches('-');
    if short.is_empty() { "client".to_owned() } else { short.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn names_of_files_hold_letters_alone() {
        for (client, short) in
            [("grandpa", "grandpa"), ("Ada of the Hill", "ada-of-the-hill"), ("../../etc", "etc"), ("  ", "client"), ("Ägir 2", "ägir-2")]
        {
            assert_eq!(short_name(client), short);
        }
        assert!(short_name(&"x ".repeat(90)).len() <= 24);
    }

    #[test]
    fn the_only_client_needs_no_name_and_of_several_one_is_asked_for() {
        let (ada, ben) = (("ada".to_owned(), 3), ("ben".to_owned(), 1));
        let folder = Path::new("x");
        assert_eq!(choose(std::slice::from_ref(&ada), None, folder).expect("the only one"), "ada");
        assert_eq!(choose(&[ada.clone(), ben.clone()], Some("ben"), folder).expect("named"), "ben");
        let said = |clients: &[(String, u32)], named: Option<&str>| choose(clients, named, folder).expect_err("refused").to_string();
        assert!(said(&[ada.clone(), ben.clone()], None).contains("--client NAME:\n  ada (3 practices)\n  ben (1 practices)"));
        assert!(said(&[ada, ben], Some("cy")).contains("\"cy\" has not practised"));
        assert!(said(&[], Some("cy")).contains("nobody has practised"));
    }

    #[test]
    fn the_weeks_begin_where_practice_began() {
        let practised = Practised::default();
        let today = date(2026, 11, 26);
        assert_eq!(window(&practised, 12, today).from, date(2026, 11, 23));
        assert_eq!(Window::weeks(today, 12).from, date(2026, 9, 7));
    }
}
