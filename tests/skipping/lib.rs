//! Tells that a test, or a part of one, could not run. Rust's own test runner knows only passed, failed and ignored, so a test that
//! returns early would count as passed; what is told here is counted as skipped in the closing line of `tests/run.sh`.

use std::fs::OpenOptions;
use std::io::Write;

/// Names the file that [`skip`] adds a line to.
pub const VARIABLE: &str = "TIDECOUNT_SKIPS";

/// What was missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Missing {
    /// A program or library that `./setup.sh --tests` installs. On a build server nothing of this kind may be missing.
    Installed,
    /// Recordings or tables that do not come with the project.
    Data,
    /// A program that nobody needs to have, such as Praat.
    Extra,
    /// A right that this system does not give, such as making a file system.
    Right,
}

impl Missing {
    fn word(self) -> &'static str {
        match self {
            Self::Installed => "installed",
            Self::Data => "data",
            Self::Extra => "extra",
            Self::Right => "right",
        }
    }
}

/// Says on standard output, and in the file of [`VARIABLE`], that the running test could not run: the kind of what is missing, the
/// test's name and why, parted by tabs.
///
/// # Panics
/// The file cannot be written: a skipped test would count as passed.
pub fn skip(missing: Missing, why: &str) {
    println!("skipped: {why}");
    let Some(path) = std::env::var_os(VARIABLE) else { return };
    let thread = std::thread::current();
    let line = format!("{}\t{}\t{}\n", missing.word(), thread.name().unwrap_or("?"), why.replace(['\n', '\t'], " "));
    let written = OpenOptions::new().create(true).append(true).open(&path).and_then(|mut file| file.write_all(line.as_bytes()));
    assert!(written.is_ok(), "{}: cannot be written", path.display());
}
