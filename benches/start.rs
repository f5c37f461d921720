//! From starting the program to its first word at the loudspeaker, over virtual devices: `cargo bench --bench start`.
//!
//! The terminal shows a line of dialogue when its first frame leaves for the loudspeaker, so that line's arrival is what is timed.
//! "first" has an empty data folder, no line rendered before; "later" has the lines of the first.

#[allow(dead_code, reason = "the tests use more of it")]
#[path = "../tests/support/sound_server.rs"]
mod sound_server;

use figures::{Spread, figure_of};
use sound_server::{SoundServer, stop};
use std::error::Error;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, ExitCode, Stdio};
use std::time::Instant;

const TIMES: usize = 5;

fn main() -> ExitCode {
    let Some(server) = SoundServer::start(None) else {
        eprintln!("no private sound server could be started: install pulseaudio");
        return ExitCode::FAILURE;
    };
    for (name, again) in [("first", false), ("later", true)] {
        let times: Result<Vec<f64>, Box<dyn Error>> = (0..TIMES)
            .map(|n| first_word_s(&server, &server.path(&if again { "later".to_owned() } else { format!("first-{n}") })))
            .collect();
        match times.map(Spread::new) {
            Ok(times) => {
                println!("{name}: median {:.2} s", times.at(0.5));
                figure_of(&format!("start.{name}"), times.at(1.0), times.count());
            }
            Err(why) => {
                eprintln!("{why}");
                return ExitCode::FAILURE;
            }
        }
    }
    ExitCode::SUCCESS
}

fn first_word_s(server: &SoundServer, data: &Path) -> Result<f64, Box<dyn Error>> {
    let routine = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo/evening.toml");
    let began = Instant::now();
    let mut child = Command::new(env!("CARGO_BIN_EXE_tidecount"))
        .arg("practise")
        .arg(routine)
        .args(["--voice", "espeak-ng", "--data"])
        .arg(data)
        .envs(server.env())
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()?;
    let lines = BufReader::new(child.stdout.take().ok_or("no output")?).lines();
    let spoken = lines.map_while(Result::ok).find(|line| line.contains("  T  "));
    let passed_s = began.elapsed().as_secs_f64();
    stop(&mut child);
    spoken.map(|_| passed_s).ok_or_else(|| "the program ended without a word".into())
}
