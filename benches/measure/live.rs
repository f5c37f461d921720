//! CPU share and memory of a live practice, on a private sound server.

use super::sound_server::{Echo, SoundServer, stop};
use super::{ROOT, client, process};
use figures::figure;
use std::error::Error;
use std::fs;
use std::path::Path;

/// Leads the two-minute routine live. The client is a recording, begun with the program; a client who does not react is
/// enough here, because what is heard and worked out costs the same.
pub fn run() -> Result<(), Box<dyn Error>> {
    let Some(server) = SoundServer::start(Some(Echo { level_db: -20.0, delay_ms: 60 })) else { return Ok(()) };
    let routine = Path::new(ROOT).join("demo/voice-short.toml");
    let recording = client::record(&routine, &server.path(""))?;
    let journal = server.path("journal.jsonl");
    let mut command = process::program(false);
    command.arg("practise").arg(&routine).args(["--mic", "default", "--speaker", "default", "--voice", "espeak-ng"]);
    command.arg("--data").arg(server.path("data")).arg("--journal").arg(&journal).envs(server.env());
    let mut playing = server.play(&recording);
    let cost = process::run(&mut command);
    stop(&mut playing);
    let cost = cost?;
    let text = fs::read_to_string(&journal)?;
    for fact in text.lines().filter(|line| ["sound_lost", "recogniser_restarted", "session_ended"].iter().any(|kind| line.contains(kind))) {
        println!("{fact}");
    }
    println!(
        "{:.1} s live, CPU {:.2} s in all, start and rendering of the lines included (recogniser {:.2} s)",
        cost.wall_s, cost.cpu_s, cost.recogniser_cpu_s
    );
    figure("live.cpu", 100.0 * cost.cpu_s / cost.wall_s);
    println!("memory, peak: program {:.0} MB, recogniser {:.0} MB", cost.program_mb, cost.recogniser_mb);
    figure("live.memory", cost.program_mb + cost.recogniser_mb);
    Ok(())
}
