//! Speed of a replay against real time on one core, and its memory.

use super::process::{self, Cost};
use super::{ROOT, client};
use figures::{figure, figure_of};
use std::error::Error;
use std::fs;
use std::path::Path;

/// Replays the recorded client of the ten-minute routine, twice: the first run renders every line, the second takes
/// them from its cache. Both journals must be the same.
pub fn run() -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let routine = Path::new(ROOT).join("demo/evening.toml");
    let recording = client::record(&routine, folder.path())?;
    let mut journals = Vec::new();
    let mut costs: Vec<(Cost, f64)> = Vec::new();
    for n in 1..=3 {
        let journal = folder.path().join(format!("journal-{n}.jsonl"));
        let mut command = process::program(true);
        command.arg("practise").arg(&routine).arg("--mic").arg(&recording).args(["--fast", "--voice", "espeak-ng"]);
        command.arg("--data").arg(folder.path().join("data")).arg("--journal").arg(&journal);
        let cost = process::run(&mut command)?;
        let text = fs::read_to_string(&journal)?;
        costs.push((cost, ended_s(&text)?));
        journals.push(text);
    }
    for (n, (cost, length_s)) in costs.iter().enumerate() {
        println!(
            "run {}: {length_s:.1} s of practice in {:.2} s, CPU {:.2} s (recogniser {:.2} s), memory {:.0} + {:.0} MB",
            n + 1,
            cost.wall_s,
            cost.cpu_s,
            cost.recogniser_cpu_s,
            cost.program_mb,
            cost.recogniser_mb
        );
    }
    let last = journals.last().ok_or("no replay")?;
    println!("the replay ended so: {}", last.lines().last().unwrap_or_default());
    // By CPU time: what one core gives that does nothing else. By the clock: as it was now, beside other work.
    let speed = |(cost, length_s): &(Cost, f64)| (length_s / cost.cpu_s, length_s / cost.wall_s);
    let (first, later) = costs.split_first().ok_or("no replay")?;
    let best = later.iter().min_by(|a, b| a.0.cpu_s.total_cmp(&b.0.cpu_s)).ok_or("no second replay")?;
    let ((cold, cold_wall), (warm, warm_wall)) = (speed(first), speed(best));
    figure("replay.cached.cpu", warm);
    figure("replay.cached.clock", warm_wall);
    figure("replay.anew.cpu", cold);
    figure("replay.anew.clock", cold_wall);
    figure("replay.recogniser", 100.0 * best.0.recogniser_cpu_s / best.0.cpu_s);
    figure("replay.memory.program", best.0.program_mb);
    figure("replay.memory.recogniser", best.0.recogniser_mb);
    figure("replay.memory", best.0.program_mb + best.0.recogniser_mb);
    let same = journals.iter().all(|journal| journal == last);
    figure_of("replay.same", f64::from(u8::from(same)), journals.len());
    Ok(())
}

/// When the session ended, s on the sample clock.
fn ended_s(journal: &str) -> Result<f64, Box<dyn Error>> {
    let last: serde_json::Value = serde_json::from_str(journal.lines().last().ok_or("an empty journal")?)?;
    last["at_s"].as_f64().ok_or_else(|| format!("the journal ends with {last}").into())
}
