//! How well the voice ear hears pitch, onsets, offsets and syllables, beside what Praat and pYIN make of the same files.
//!
//! The files are made by `benches/voice/reference/run.sh` from open recordings, outside the repository; without them this
//! says so and measures nothing. `cargo bench --bench voice -- f0 scenes negatives syllables`, all when none is named;
//! `odd` takes the half on which thresholds were tuned instead of the other.

#[path = "voice/f0.rs"]
mod f0;
#[path = "voice/negatives.rs"]
mod negatives;
#[path = "voice/scenes.rs"]
mod scenes;
#[path = "voice/set.rs"]
mod set;
#[path = "voice/syllables.rs"]
mod syllables;

use std::error::Error;
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut words: Vec<String> = std::env::args().skip(1).filter(|a| !a.starts_with('-')).collect();
    let verbose = words.iter().any(|w| w == "verbose");
    let group = if words.iter().any(|w| w == "odd") { "odd" } else { "even" };
    words.retain(|w| !["odd", "even", "verbose"].contains(&w.as_str()));
    if words.is_empty() {
        words = ["f0", "scenes", "negatives", "syllables"].map(str::to_owned).into();
    }
    let set = match set::Set::find(group, verbose) {
        Ok(set) => set,
        Err(why) => {
            println!("skipped: {why}");
            return ExitCode::SUCCESS;
        }
    };
    for word in &words {
        println!("\n## {word}, {group} half");
        let done: Result<(), Box<dyn Error>> = match word.as_str() {
            "f0" => f0::run(&set),
            "scenes" => scenes::run(&set),
            "negatives" => negatives::run(&set),
            "syllables" => syllables::run(&set),
            _ => Err(format!("\"{word}\" cannot be measured; name f0, scenes, negatives or syllables").into()),
        };
        if let Err(why) = done {
            eprintln!("{word}: {why}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}
