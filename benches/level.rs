//! Level, clipping, automatic gain and voice quality against standards, Praat and simulated faults.
//!
//! `cargo bench --bench level -- weighting`, `quality`, `clipping`, `auto-gain FOLDER` (sessions made by
//! `benches/level/reference/sessions.py`), `windows` (the steady parts, for `benches/level/reference/quality.py`); without a
//! name the first three, and the fourth where its sessions lie in `target/sessions`.

#[path = "level/clipping.rs"]
mod clipping;
#[path = "level/gain.rs"]
mod gain;
#[path = "level/quality.rs"]
mod quality;
#[path = "level/weighting.rs"]
mod weighting;

use std::error::Error;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// The shared recordings, where they are there.
fn data() -> Option<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/data");
    if folder.join("coswara").exists() {
        return Some(folder);
    }
    println!("skipped: no shared data");
    None
}

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|a| a != "--bench").collect();
    let sessions = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/sessions");
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let done: Result<(), Box<dyn Error>> = match words[..] {
        [] => weighting::run().and_then(|()| quality::run()).and_then(|()| clipping::run()).and_then(|()| gain::run(&sessions)),
        ["weighting"] => weighting::run(),
        ["quality"] => quality::run(),
        ["windows"] => quality::windows(),
        ["clipping"] => clipping::run(),
        ["auto-gain"] => gain::run(&sessions),
        ["auto-gain", folder] => gain::run(Path::new(folder)),
        _ => Err("name weighting, quality, windows, clipping or auto-gain FOLDER".into()),
    };
    if let Err(why) = done {
        eprintln!("{why}");
        return ExitCode::FAILURE;
    }
    ExitCode::SUCCESS
}
