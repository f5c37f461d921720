//! How a practice ended, and what is left on the terminal.

use std::io::Write;
use std::process::ExitCode;

use crate::follow::SharedScreen;
use crate::journal_keeper::{SharedKept, lock};
use crate::summary;
use files::error::tell;
use speak::Words;

/// How a practice ended.
pub struct Outcome {
    pub(super) kept: SharedKept,
    /// Why it had to end, where it was not led to its end.
    pub(super) fault: Option<String>,
    /// What the summary is told in.
    pub(super) words: Words,
}

impl Outcome {
    /// The summary table, and what went wrong on the way.
    pub fn report(&self, screen: &SharedScreen) {
        screen.finish();
        let kept = lock(&self.kept);
        // A reader that went away (`| head`) is no reason to break off.
        let _ = writeln!(std::io::stdout(), "\n{}", summary::table(&kept.entries, &self.words));
        for failure in &kept.failures {
            tell(&format!("The journal has a gap: {failure}"));
        }
        kept.notes.iter().chain(&self.fault).for_each(|note| tell(note));
    }

    /// Every fact of the session, an interrupted one's that was gone on with included.
    #[must_use]
    pub fn entries(&self) -> Vec<session::Entry> {
        lock(&self.kept).entries.clone()
    }

    /// Success unless something failed; being ended by Ctrl-C or by the client is no failure.
    pub fn exit_code(&self) -> ExitCode {
        if self.fault.is_none() && lock(&self.kept).failures.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
    }
}
