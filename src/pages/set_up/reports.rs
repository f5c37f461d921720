//! Reports and exports as files for the browser, made by the same functions as on the command line.

use std::path::PathBuf;

use crate::set_up::fields::Fields;
use crate::set_up::site::{PageError, Shown, Site};
use crate::web::address::encoded;
use export::TABLES;
use export::fhir::BundleKind;
use files::exports::journals::{write_fhir, write_json};
use files::exports::out::Target;
use files::exports::read::Selection;
use files::exports::tables::{CsvExport, write_csv};
use files::pdf;
use files::reports::{self, Format, Page, Wanted};
use report::sheet::Part;
use session::Arg;

/// What can be had, each a message `page-file-NAME`: name, ending, type of its content, and whether it is of one client alone.
const KINDS: [(&str, &str, &str, bool); 10] = [
    ("report-pdf", "pdf", "application/pdf", true),
    ("report-html", "html", "text/html; charset=utf-8", true),
    ("chart", "txt", "text/plain; charset=utf-8", true),
    ("carer-pdf", "pdf", "application/pdf", true),
    ("carer-html", "html", "text/html; charset=utf-8", true),
    ("letter-pdf", "pdf", "application/pdf", true),
    ("letter-html", "html", "text/html; charset=utf-8", true),
    ("csv", "csv", "text/csv; charset=utf-8", false),
    ("json", "jsonl", "application/jsonl", false),
    ("fhir", "json", "application/fhir+json", true),
];

/// Addresses and labels of what can be had.
pub fn links(site: &Site, client: Option<&str>, weeks: Option<u32>) -> Vec<(String, String)> {
    let whose = client.map_or(String::new(), |client| format!("&client={}", encoded(client)));
    let weeks = weeks.map_or(String::new(), |weeks| format!("&weeks={weeks}"));
    let link = |(kind, _, _, of_one): &(&str, &str, &str, bool)| {
        let label = match client {
            Some(client) => site.with_texts(|texts| texts.with(&format!("page-file-{kind}"), vec![("name", Arg::Text(client.to_owned()))])),
            None if *of_one => return None,
            None => site.s(&format!("page-file-{kind}-all")),
        };
        Some((format!("/file?kind={kind}{whose}{weeks}"), label))
    };
    // What a letter tells is ticked in a form of its own.
    let linked = |kind: &str, ending: &str| (pdf::MADE || ending != "pdf") && !kind.starts_with("letter");
    KINDS.iter().filter(|(kind, ending, ..)| linked(kind, ending)).filter_map(link).collect()
}

/// What can be ticked for a letter: name and label.
pub fn letter_parts(site: &Site) -> Vec<(&'static str, String)> {
    Part::ALL.into_iter().map(|part| (part.name(), site.s(&format!("report-letter-{}-shown", part.name())))).collect()
}

/// `GET /file?kind=&client=&weeks=`
pub fn file(site: &Site, query: &Fields) -> Result<Shown, PageError> {
    let asked = query.text("kind");
    let Some((kind, ending, content, _)) = KINDS.iter().find(|(kind, ..)| *kind == asked) else {
        return Err(PageError::none(site.s("page-no-such-file")));
    };
    if *ending == "pdf" && !pdf::MADE {
        return Err(PageError::none(site.s("page-no-pdf")));
    }
    let client = query.get("client").filter(|client| !client.is_empty()).map(str::to_owned);
    let name = format!("{}-{}.{ending}", client.as_deref().unwrap_or("practices"), site.today());
    let bytes = match *kind {
        "report-pdf" => report(site, client, query, Page::Whole, Format::Pdf)?,
        "report-html" => report(site, client, query, Page::Whole, Format::Html)?,
        "chart" => report(site, client, query, Page::Whole, Format::Chart)?,
        "carer-pdf" => report(site, client, query, Page::Carer, Format::Pdf)?,
        "carer-html" => report(site, client, query, Page::Carer, Format::Html)?,
        "letter-pdf" => report(site, client, query, ticked(query), Format::Pdf)?,
        "letter-html" => report(site, client, query, ticked(query), Format::Html)?,
        kind => export(site, client, kind)?,
    };
    Ok(Shown::File { kind: content, name, bytes })
}

/// A letter with what was ticked, and nothing else.
fn ticked(query: &Fields) -> Page {
    Page::Letter(Part::ALL.into_iter().filter(|part| query.get(&format!("part-{}", part.name())).is_some()).collect())
}

fn report(site: &Site, client: Option<String>, query: &Fields, page: Page, format: Format) -> Result<Vec<u8>, PageError> {
    let weeks = query.text("weeks").parse::<u32>().ok().filter(|weeks| (1..=106).contains(weeks)).unwrap_or(12);
    let wanted = Wanted { client, weeks, format, page, data: site.place.data.clone() };
    Ok(reports::make(&wanted, site.today(), &site.words)?.1)
}

/// Removes the file that an export was written to.
struct Passing(PathBuf);

impl Drop for Passing {
    fn drop(&mut self) {
        let _ = std::fs::remove_file(&self.0);
    }
}

/// An export writes files; this one lies beside the record, which nobody else may read, for as long as it is read.
fn export(site: &Site, client: Option<String>, kind: &str) -> Result<Vec<u8>, PageError> {
    let passing = Passing(site.place.data.join(format!(
        ".page-{}-{}.{}",
        std::process::id(),
        site.guard.once(),
        if kind == "csv" { "csv" } else { "json" }
    )));
    let selection = Selection { client, from: None, to: None, source: None, data: site.place.data.clone() };
    let target = Target { out: Some(passing.0.clone()), force: false };
    let trials = TABLES.into_iter().find(|table| table.name == "trials");
    match (kind, trials) {
        ("csv", Some(table)) => write_csv(&CsvExport { selection, target, table })?,
        ("fhir", _) => write_fhir(&selection, BundleKind::Collection, &target)?,
        _ => write_json(&selection, &target)?,
    }
    std::fs::read(&passing.0).map_err(|why| PageError::bad(format!("{}: {why}", passing.0.display())))
}
