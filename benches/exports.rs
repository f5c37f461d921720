//! What it costs to export two years of daily practice, and what a passphrase adds to the start of a command.
//!
//! `cargo bench --bench exports`; a number of days after `--` makes the record longer or shorter.

#[allow(dead_code, reason = "`measure` uses more of it")]
#[path = "measure/process.rs"]
mod process;
#[path = "progress/two_years.rs"]
mod two_years;

use figures::{Spread, figure_of};
use process::Cost;
use record::Store;
use std::error::Error;
use std::path::Path;

/// Starts of a command, plain and with a passphrase; the middle ones are compared.
const STARTS: usize = 7;
/// Protects nothing: an invented record in a temporary folder.
const PASSPHRASE: &str = "two herons by the weir";

fn main() -> Result<(), Box<dyn Error>> {
    let days = std::env::args().skip(1).find_map(|argument| argument.parse().ok()).unwrap_or(two_years::DAYS);
    let folder = tempfile::tempdir()?;
    let data = folder.path().join("data");
    std::fs::create_dir(&data)?;
    let (sessions, _) = two_years::sessions(days)?;
    Store::open(&data)?.receive(two_years::CLIENT, &sessions)?;
    for (id, format, out) in [("csv", "csv", "tables"), ("jsonl", "json", "lines.jsonl"), ("fhir", "fhir", "bundle.json")] {
        let mut command = process::program(false);
        command.args(["export", format, "--client", two_years::CLIENT, "--out"]).arg(folder.path().join(out)).arg("--data").arg(&data);
        let cost = process::run(&mut command)?;
        println!("{format}: {:.1} s by the clock", cost.wall_s);
        figure_of(&format!("exports.{id}.cpu"), cost.cpu_s, sessions.len());
        figure_of(&format!("exports.{id}.memory"), cost.program_mb, sessions.len());
    }
    let plain_s = history_s(&data)?;
    let mut set = process::program(false);
    process::run(set.args(["record", "passphrase", "set", "--data"]).arg(&data).env("TIDECOUNT_NEW_PASSPHRASE", PASSPHRASE))?;
    figure_of("exports.passphrase", history_s(&data)? - plain_s, STARTS);
    Ok(())
}

/// A command that reads one practice, by the clock, s.
fn history_s(data: &Path) -> Result<f64, Box<dyn Error>> {
    let once = || -> Result<Cost, Box<dyn Error>> {
        let mut command = process::program(false);
        process::run(command.args(["history", "--last", "1", "--data"]).arg(data).env("TIDECOUNT_PASSPHRASE", PASSPHRASE))
    };
    let costs = (0..STARTS).map(|_| once()).collect::<Result<Vec<_>, _>>()?;
    Ok(Spread::new(costs.iter().map(|cost| cost.wall_s).collect()).at(0.5))
}
