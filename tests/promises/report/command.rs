//! The command that writes reports, and what else is made of the same record.

use super::*;

fn run(folder: &Path, arguments: &[&str]) -> Output {
    let mut order = Command::new(env!("CARGO_BIN_EXE_tidecount"));
    order.current_dir(folder).arg("report").args(arguments).args(["--data", "record", "--until", "2026-11-22", "--format", "html"]);
    order.output().expect("runs")
}

#[test]
fn the_command_asks_whose_report_and_never_writes_over_a_file_unasked() {
    let folder = tempfile::tempdir().expect("a folder");
    let here = folder.path();
    let said = |output: &Output| String::from_utf8_lossy(&output.stderr).into_owned();
    let none = run(here, &[]);
    assert!(!none.status.success() && said(&none).contains("there is no record in record"), "{}", said(&none));
    assert!(!here.join("record").exists(), "nothing is made where there is nothing");
    let week = Life { days: 7, first: date(2026, 11, 16), ..Life::weeks(1) };
    keep(&here.join("record"), std::slice::from_ref(&week));
    assert!(run(here, &[]).status.success());
    let file = here.join("report-grandma-2026-11-22.html");
    let first = std::fs::read(&file).expect("written");
    let again = run(here, &[]);
    assert!(!again.status.success() && said(&again).contains("left as it is") && said(&again).contains("--force"), "{}", said(&again));
    assert!(run(here, &["--force"]).status.success() && std::fs::read(&file).expect("written") == first);
    assert_eq!(run(here, &["--out", "-"]).stdout, first);
    keep(&here.join("record"), &[Life { client: "grandpa", ..week }]);
    let several = run(here, &[]);
    assert!(
        !several.status.success() && said(&several).contains("--client NAME:\n  grandma (") && said(&several).contains("\n  grandpa ("),
        "{}",
        said(&several)
    );
    assert!(said(&run(here, &["--client", "nobody"])).contains("has not practised"));
    assert!(run(here, &["--client", "grandpa", "--out", "x.html"]).status.success());
    assert!(said(&run(here, &["--client", "grandpa", "--out", "no/such/x.html"])).contains("Make sure the folder is there"));
    assert_eq!(std::fs::read_dir(here).expect("a folder").count(), 3, "nothing half written is left");
}

/// A letter tells what was ticked and nothing else; the carer's page tells stops first. Both are tagged pages that another reader takes.
#[test]
fn a_letter_and_a_carers_page_are_made_of_the_same_record() {
    let practised = practised(&Life::eventful());
    let picture = Picture::of(&practised, Window::weeks(TODAY, 12));
    let words = words();
    let say =
        |key: &str, given: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: given.to_vec() }).expect("a message");
    let about = About { made: TODAY, last_practice: None, software: "tidecount" };
    let whole = report::sheet::letter(&picture, &about, &report::sheet::Part::ALL, &say);
    let ticked = report::sheet::letter(&picture, &about, &[report::sheet::Part::Practice], &say);
    assert_eq!((whole.sections.len(), ticked.sections.len()), (report::sheet::Part::ALL.len() + 1, 2), "and a place to sign");
    assert_eq!(ticked.sections[0], whole.sections[1]);
    let measures = whole.sections[3].lines.join("\n");
    assert!(measures.contains("(MDC95 ") && measures.contains("\nMDC95: the smallest change"), "{measures}");
    let carer = report::sheet::carer(&picture, &about, &say);
    assert!(!picture.safety_stops.is_empty() && carer.sections[0].lines.len() > 1, "{:?}", carer.sections[0]);
    for letter in [&whole, &ticked, &carer] {
        let pdf = lopdf::Document::load_mem(&print::letter_pdf(letter).expect("a PDF")).expect("an independent reader takes it");
        let all: String = (1..=u32::try_from(pdf.get_pages().len()).expect("few")).map(|number| page(&pdf, number)).collect();
        let html = report::letter_html(letter);
        for line in letter.sections.iter().flat_map(|section| std::iter::once(&section.title).chain(&section.lines)) {
            assert!(all.contains(&squeezed(line)), "{line}\n{all}");
            assert!(html.matches("<li>").count() >= letter.sections.len());
        }
    }
}
