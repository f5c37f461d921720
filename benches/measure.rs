//! What the program costs and how exact it is.
//!
//! `cargo bench --bench measure -- speed`, `dense`, `lasting`, `live`, `delay` or `onset`; several at once, or all when none is named.
//! `benches/run.sh` runs these and the other benches and prints one table.

#[path = "measure/client.rs"]
mod client;
#[path = "measure/delay.rs"]
mod delay;
#[path = "measure/dense.rs"]
mod dense;
#[path = "measure/lasting.rs"]
mod lasting;
#[path = "measure/live.rs"]
mod live;
#[path = "measure/onset.rs"]
mod onset;
#[path = "measure/process.rs"]
mod process;
#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../tests/support/sound_server.rs"]
mod sound_server;
#[path = "measure/speed.rs"]
mod speed;

use std::error::Error;
use std::path::Path;
use std::process::ExitCode;

/// The folder of the project.
const ROOT: &str = env!("CARGO_MANIFEST_DIR");

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|a| a != "--bench").collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    // The rehearsed practices in this process start their recogniser from this program.
    if let ["__recogniser", "--model", model] = words[..] {
        return recogniser::child_main(Some(Path::new(model)), None);
    }
    let names = if words.is_empty() { vec!["speed", "dense", "lasting", "live", "delay", "onset"] } else { words };
    for name in names {
        println!("\n## {name}");
        let done: Result<(), Box<dyn Error>> = match name {
            "speed" => speed::run(),
            "dense" => dense::run(),
            "lasting" => lasting::run(),
            "live" => live::run(),
            "delay" => delay::run(),
            "onset" => onset::run(),
            _ => Err(format!("\"{name}\" cannot be measured; name speed, dense, lasting, live, delay or onset").into()),
        };
        if let Err(why) = done {
            eprintln!("{name}: {why}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}
