//! How long the report of two years of daily practice takes: `cargo bench --bench report`. `-- --keep DIR` leaves a record of
//! invented clients in DIR instead, to look at: `tidecount report --data DIR --client grandma --until 2026-11-22`.

#[path = "../tests/support/invented.rs"]
#[allow(dead_code, reason = "the tests use more of it")]
mod invented;

use figures::figure_of;
use files::reports::{Format, Wanted, make};
use invented::{Life, keep};
use speak::Words;
use std::path::{Path, PathBuf};
use std::time::Instant;

/// Every day for two years, but for one pause; the microphone is changed once, the programme once.
fn two_years() -> Life {
    Life {
        client: "grandpa",
        first: jiff::civil::date(2024, 11, 25),
        days: 728,
        diligence: 1.0,
        pause: Some((300, 325)),
        other_microphone: Some(500),
        calibrated: Some((0, 500)),
        more: Some(120),
        ..Life::weeks(1)
    }
}

/// Runs of each; the middle one counts.
const RUNS: usize = 7;

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|argument| argument != "--bench").collect();
    if let [order, folder] = &arguments[..]
        && order == "--keep"
    {
        keep(Path::new(folder), &[Life::shown(), two_years()]);
        return;
    }
    let folder = tempfile::tempdir().expect("a folder");
    keep(folder.path(), &[two_years()]);
    for (weeks, format, id) in [(104, Format::Pdf, "report.pdf"), (104, Format::Html, "report.html"), (12, Format::Pdf, "report.weeks")] {
        figure_of(id, middle(folder.path(), weeks, format), RUNS);
    }
}

/// The middle of several runs, s: words, record, arithmetic, drawings, setting.
fn middle(folder: &Path, weeks: u32, format: Format) -> f64 {
    let wanted = Wanted { client: None, weeks, page: files::reports::Page::Whole, format, data: PathBuf::from(folder) };
    let mut took: Vec<f64> = (0..RUNS)
        .map(|_| {
            let began = Instant::now();
            let words = Words::english().expect("words");
            let (_, bytes) = make(&wanted, jiff::civil::date(2026, 11, 22), &words).expect("a report");
            assert!(bytes.len() > 10_000);
            began.elapsed().as_secs_f64()
        })
        .collect();
    took.sort_by(f64::total_cmp);
    took[RUNS / 2]
}
