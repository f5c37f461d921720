//! What years, many people and long recordings cost: five years of daily practice, a home with a thousand residents, three hours of sound.
//! Eight pages open: `cargo bench --bench page`; a clinic's database: `cargo bench --bench clinic`.
//!
//! `cargo bench --bench load -- years`, `residents` or `recording`; all when none is named.

#[allow(dead_code, reason = "`measure` uses more of it")]
#[path = "measure/process.rs"]
mod process;
#[allow(dead_code, reason = "the others use more of it")]
#[path = "progress/two_years.rs"]
mod two_years;

use figures::{Spread, figure, figure_of};
use progress::{Picture, Window};
use record::Store;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Instant;

type Done = Result<(), Box<dyn Error>>;

const YEARS_DAYS: u32 = 5 * 365;
const RESIDENTS: usize = 1_000;
/// Practised by each resident.
const RESIDENTS_DAYS: u32 = 14;
const RATE_HZ: u32 = 16_000;
/// The start of the program is left out by taking the difference of a short and a long recording, s.
const SHORT_S: u32 = 600;
const LONG_S: u32 = 3 * 3600;
/// Starts of a command; the middle one counts.
const STARTS: usize = 7;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).filter(|a| a != "--bench").collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    for name in if words.is_empty() { vec!["years", "residents", "recording"] } else { words } {
        println!("\n## load {name}");
        let done: Done = match name {
            "years" => years(),
            "residents" => residents(),
            "recording" => recording(),
            _ => Err(format!("\"{name}\" cannot be measured; name years, residents or recording").into()),
        };
        if let Err(why) = done {
            eprintln!("{name}: {why}");
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

/// A command that reads one practice of a client, by the clock, s.
fn start_s(data: &Path, client: &str) -> Result<f64, Box<dyn Error>> {
    let once = || -> Result<f64, Box<dyn Error>> {
        let mut command = process::program(false);
        Ok(process::run(command.args(["history", "--last", "1", "--client", client, "--data"]).arg(data))?.wall_s)
    };
    Ok(Spread::new((0..STARTS).map(|_| once()).collect::<Result<Vec<_>, _>>()?).at(0.5))
}

fn years() -> Done {
    let folder = tempfile::tempdir()?;
    let (sessions, today) = two_years::sessions(YEARS_DAYS)?;
    let entries: usize = sessions.iter().flat_map(|session| &session.parts).map(|part| part.lines.len()).sum();
    let mut store = Store::open(folder.path())?;
    store.receive(two_years::CLIENT, &sessions)?;
    figure_of("load.years.entry", std::fs::metadata(store.path())?.len() as f64 / entries as f64, entries);
    drop(store);
    figure_of("load.years.start", start_s(folder.path(), two_years::CLIENT)?, sessions.len());
    let began = Instant::now();
    let practised = Store::open(folder.path())?.practised(two_years::CLIENT, today)?;
    let whole = Picture::of(&practised, Window::all(&practised, today));
    println!("{} trials", whole.trials.len());
    figure_of("load.years.progress", began.elapsed().as_secs_f64(), sessions.len());
    let mut command = process::program(false);
    command.args(["export", "csv", "--client", two_years::CLIENT, "--out"]).arg(folder.path().join("tables"));
    let cost = process::run(command.arg("--data").arg(folder.path()))?;
    figure_of("load.years.csv.memory", cost.program_mb, sessions.len());
    let mut command = process::program(false);
    figure_of("load.years.check", process::run(command.args(["record", "check", "--data"]).arg(folder.path()))?.wall_s, entries);
    Ok(())
}

fn residents() -> Done {
    let folder = tempfile::tempdir()?;
    let (sessions, _) = two_years::sessions(RESIDENTS_DAYS)?;
    let mut store = Store::open(folder.path())?;
    for resident in 0..RESIDENTS {
        store.receive(&format!("resident-{resident}"), &sessions)?;
    }
    drop(store);
    figure_of("load.residents.start", start_s(folder.path(), "resident-500")?, RESIDENTS);
    let mut command = process::program(false);
    let cost = process::run(command.args(["history", "--last", "20", "--data"]).arg(folder.path()))?;
    figure_of("load.residents.history", cost.wall_s, RESIDENTS);
    figure_of("load.residents.memory", cost.program_mb, RESIDENTS);
    Ok(())
}

/// A voice and pauses in turn, for so many seconds.
fn sound(folder: &Path, seconds: u32) -> Result<PathBuf, Box<dyn Error>> {
    let path = folder.join(format!("sound-{seconds}.wav"));
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE_HZ, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(&path, spec)?;
    let voice = rehearse::VowelSpec::steady(rehearse::Vowel::A, 140.0, 8.0).render(RATE_HZ)?.samples;
    let pause = 4 * RATE_HZ as usize;
    for x in voice.iter().copied().chain(std::iter::repeat_n(0.0, pause)).cycle().take((seconds * RATE_HZ) as usize) {
        writer.write_sample((x * 32_767.0) as i16)?;
    }
    writer.finalize()?;
    Ok(path)
}

fn recording() -> Done {
    let folder = tempfile::tempdir()?;
    let heard = |seconds: u32| -> Result<process::Cost, Box<dyn Error>> {
        let mut command = process::program(false);
        process::run(command.args(["hear", "--json", "--voice"]).arg(sound(folder.path(), seconds)?))
    };
    let (short, long) = (heard(SHORT_S)?, heard(LONG_S)?);
    figure("load.recording.memory", long.program_mb);
    figure("load.recording.growth", long.program_mb - short.program_mb);
    figure("load.recording.speed", f64::from(LONG_S - SHORT_S) / (long.cpu_s - short.cpu_s));
    Ok(())
}
