//! What a process and its children cost, from `/proc` (Linux; proc(5)).

use std::error::Error;
use std::fs;
use std::io::Read;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Clock ticks of `/proc/PID/stat` per second: 100 on every Linux that is met (sysconf(_SC_CLK_TCK)).
const TICKS_PER_S: f64 = 100.0;
const LOOK_EVERY: Duration = Duration::from_millis(20);

/// What a finished process has cost, its children included.
#[derive(Debug, Clone)]
pub struct Cost {
    pub wall_s: f64,
    /// User and system, of it and of all its children (recogniser, voice).
    pub cpu_s: f64,
    /// The recogniser's share of `cpu_s`.
    pub recogniser_cpu_s: f64,
    /// Greatest resident memory, MB (10⁶ bytes): the program, and the recogniser. Pages that both share count twice.
    pub program_mb: f64,
    pub recogniser_mb: f64,
}

/// Runs to the end.
///
/// # Errors
/// It cannot be started, or fails.
pub fn run(command: &mut Command) -> Result<Cost, Box<dyn Error>> {
    let before_s = reaped_cpu_s();
    let began = Instant::now();
    let mut child = command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::inherit()).spawn()?;
    let mut stdout = child.stdout.take().ok_or("no output")?;
    let reader = std::thread::spawn(move || {
        let mut text = String::new();
        let _ = stdout.read_to_string(&mut text);
        text
    });
    let (mut program_mb, mut recogniser_mb, mut recogniser_cpu_s) = (0.0_f64, 0.0_f64, 0.0_f64);
    let status = loop {
        if let Some(status) = child.try_wait()? {
            break status;
        }
        program_mb = program_mb.max(peak_mb(child.id()));
        if let Some(recogniser) = recogniser_of(child.id()) {
            recogniser_mb = recogniser_mb.max(peak_mb(recogniser));
            recogniser_cpu_s = recogniser_cpu_s.max(cpu_s(&format!("/proc/{recogniser}/stat"), 13..15));
        }
        std::thread::sleep(LOOK_EVERY);
    };
    let wall_s = began.elapsed().as_secs_f64();
    let output = reader.join().unwrap_or_default();
    if !status.success() {
        return Err(format!("{command:?} ended with {status}\n{output}").into());
    }
    Ok(Cost { wall_s, cpu_s: reaped_cpu_s() - before_s, recogniser_cpu_s, program_mb, recogniser_mb })
}

/// A command that runs the program, on the first core alone where `one_core`.
pub fn program(one_core: bool) -> Command {
    let own = env!("CARGO_BIN_EXE_tidecount");
    if !one_core {
        return Command::new(own);
    }
    let mut command = Command::new("taskset");
    command.args(["-c", "0", own]);
    command
}

/// CPU time of all children that have ended and were waited for, with theirs.
fn reaped_cpu_s() -> f64 {
    cpu_s("/proc/self/stat", 15..17)
}

/// Sum of fields of a `stat` file, numbered from 0.
fn cpu_s(stat: &str, fields: std::ops::Range<usize>) -> f64 {
    let text = fs::read_to_string(stat).unwrap_or_default();
    // The name stands in brackets and may hold blanks; two fields end with it.
    let rest = text.rsplit_once(')').map_or("", |parts| parts.1);
    let ticks: f64 = rest.split_whitespace().skip(fields.start - 2).take(fields.len()).filter_map(|t| t.parse::<f64>().ok()).sum();
    ticks / TICKS_PER_S
}

/// `VmHWM`, the greatest resident set so far.
fn peak_mb(pid: u32) -> f64 {
    let text = fs::read_to_string(format!("/proc/{pid}/status")).unwrap_or_default();
    let line = text.lines().find_map(|line| line.strip_prefix("VmHWM:")).unwrap_or_default();
    line.trim().trim_end_matches(" kB").parse::<f64>().unwrap_or(0.0) * 1024.0 / 1e6
}

/// The child whose command line names the recogniser.
fn recogniser_of(pid: u32) -> Option<u32> {
    let threads = fs::read_dir(format!("/proc/{pid}/task")).ok()?;
    let children = threads.flatten().filter_map(|thread| fs::read_to_string(thread.path().join("children")).ok());
    let pids: Vec<u32> = children.flat_map(|list| list.split_whitespace().filter_map(|p| p.parse().ok()).collect::<Vec<_>>()).collect();
    pids.into_iter().find(|pid| fs::read(format!("/proc/{pid}/cmdline")).is_ok_and(|line| line.windows(12).any(|w| w == b"__recogniser")))
}
