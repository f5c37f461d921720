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
use files::reports::{self, Format, Wanted};
use session::Arg;

/// What can be had, each a message `page-file-NAME`: name, ending, type of its content, and whether it is of one client alone.
const KINDS: [(&str, &str, &str, bool); 6] = [
    ("report-pdf", "pdf", "application/pdf", true),
    ("report-html", "html", "text/html; charset=utf-8", true),
    ("chart", "txt", "text/plain; charset=utf-8", true),
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
    KINDS.iter().filter(|(kind, ..)| pdf::MADE || *kind != "report-pdf").filter_map(link).collect()
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
        "report-pdf" => report(site, client, query, Format::Pdf)?,
        "report-html" => report(site, client, query, Format::Html)?,
        "chart" => report(site, client, query, Format::Chart)?,
        kind => export(site, client, kind)?,
    };
    Ok(Shown::File { kind: content, name, bytes })
}

fn report(site: &Site, client: Option<String>, query: &Fields, format: Format) -> Result<Vec<u8>, PageError> {
    let weeks = query.text("weeks").parse::<u32>().ok().filter(|weeks| (1..=106).contains(weeks)).unwrap_or(12);
    let wanted = Wanted { client, weeks, format, data: site.place.data.clone() };
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
