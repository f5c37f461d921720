//! What the command ear considered, written down for learning how to weigh its cues (`benches/command_ear/learn.py`).

use super::Path;
use super::cues::Candidate;
use serde_json::json;
use std::fs::File;
use std::io::Write;

/// The environment variable that names the file: each phrase considered becomes a line of JSON, and `{"finish":true}` stands where a sound ends.
pub(crate) const TRACE_VARIABLE: &str = "TIDECOUNT_COMMAND_TRACE";

/// The file, if one is asked for.
pub(crate) struct Trace(Option<File>);

impl Trace {
    /// Opens the file that the environment names, at its end; without a name, or where it cannot be opened, nothing is written.
    pub fn from_environment() -> Self {
        let name = std::env::var_os(TRACE_VARIABLE).filter(|name| !name.is_empty());
        Self(name.and_then(|name| File::options().create(true).append(true).open(name).ok()))
    }

    /// Somebody wants to know.
    pub fn is_wanted(&self) -> bool {
        self.0.is_some()
    }

    /// Writes what was considered.
    pub fn write(&mut self, candidates: &[(Path, Candidate)]) {
        for (path, candidate) in candidates.iter().filter(|(_, candidate)| candidate.weighed) {
            let (Candidate { text, start_s, end_s, decided_s, cues, .. }, fast) = (candidate, *path == Path::Fast);
            self.line(&json!({
                "text": text, "fast": fast, "start_s": start_s, "end_s": end_s, "decided_s": decided_s,
                "features": cues.features(), "second_ear": cues.second_ear.map(|o| [o.this, o.rival, o.other]), "sureness": cues.sureness(),
            }));
        }
    }

    /// The sound is over.
    pub fn finish(&mut self) {
        self.line(&json!({ "finish": true }));
    }

    fn line(&mut self, line: &serde_json::Value) {
        if let Some(file) = &mut self.0
            && writeln!(file, "{line}").is_err()
        {
            // Learning is not worth disturbing a session for.
            self.0 = None;
        }
    }
}
