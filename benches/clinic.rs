//! The clinic database at the size of a large clinic: import rate, time of each view, size and memory.
//!
//! `cargo bench --bench clinic -- [clients=10000] [trials=5000000] [files=300] [at=FILE|postgres|postgres://…] [plans]`
//!
//! The clients come in through the import itself, behind the check of the seal; then as many signed files as `files` says come in
//! whole, seal and all, and once more. `at` names a new file or an empty database, which is left there; `at=postgres` starts Debian's
//! PostgreSQL with its own settings in a temporary folder. Nothing named: a file in a temporary folder.

#[path = "../tests/support/clinic_world.rs"]
mod clinic_world;
#[path = "../tests/support/postgres_server.rs"]
mod postgres_server;

use clinic::{Address, Arriving, ArrivingSession, Clinic, ReasonKind};
use clinic_world::{Home, MIC, Practice, desk_key, hold};
use figures::figure_of;
use handover::{HandedSession, Kind, SecretKey, open};
use jiff::ToSpan;
use jiff::civil::{Date, date};
use session::Fact;
use std::error::Error;
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// Trials of one practice, and different clients from which all others are made.
const TRIALS: u64 = 20;
const MODELS: u64 = 40;
const FIRST: Date = date(2026, 1, 5);
const TODAY: Date = date(2026, 4, 1);
const ROUTINE: &str = "title = \"Evening\"\nplan = [{ at = \"18:30\" }]\n[[step]]\nexercise = \"long-ah\"\nrepetitions = 20\n";

struct Options {
    clients: u64,
    trials: u64,
    files: u64,
    at: Option<String>,
    plans: bool,
}

fn options() -> Result<Options, Box<dyn Error>> {
    let mut options = Options { clients: 10_000, trials: 5_000_000, files: 300, at: None, plans: false };
    for argument in std::env::args().skip(1).filter(|argument| argument != "--bench") {
        match argument.split_once('=') {
            Some(("clients", number)) => options.clients = number.parse()?,
            Some(("trials", number)) => options.trials = number.parse()?,
            Some(("files", number)) => options.files = number.parse()?,
            Some(("at", place)) => options.at = Some(place.to_owned()),
            None if argument == "plans" => options.plans = true,
            _ => return Err(format!("{argument:?}: give clients=N trials=N files=N at=FILE|URL plans").into()),
        }
    }
    Ok(options)
}

fn main() -> ExitCode {
    match options().and_then(|options| run(&options)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn home(number: u64) -> Home {
    let mut key = [7; 32];
    key[..8].copy_from_slice(&number.to_be_bytes());
    Home {
        package: format!("{:016x}", number + 1),
        client: format!("client {number}"),
        key: SecretKey::from_bytes(&key),
        made_at: "2026-01-01T08:00:00Z".parse().expect("a time"),
    }
}

/// One practice of a model client: every other day or so, with what clinicians want to be told of now and then.
fn practice(model: u64, number: u64) -> HandedSession {
    let step = 1 + model % 3;
    let day = FIRST.checked_add(i64::try_from(number * step).unwrap_or(0).days()).unwrap_or(FIRST);
    let base = 20.0 - if model.is_multiple_of(7) && number > 10 { 9.0 } else { 0.0 };
    let mut practice = Practice::on(i64::try_from(number).unwrap_or(0) + 1, &day.to_string(), base, &MIC);
    practice.routine = ROUTINE;
    let last = practice.entries.len() - 2;
    let more: Vec<_> = (4..=TRIALS as u32)
        .map(|repetition| {
            hold(
                f64::from(repetition) * 30.0,
                repetition,
                base + f64::from((repetition * 7) % 11) / 10.0,
                70.0 + f64::from(repetition % 5),
                &MIC,
            )
        })
        .collect();
    practice.entries.splice(last..last, more);
    for entry in &mut practice.entries {
        if let Fact::StepDone { repetitions_done, repetitions_prescribed, .. } = &mut entry.fact {
            (*repetitions_done, *repetitions_prescribed) = (TRIALS as u32, TRIALS as u32);
        }
        entry.at_s = entry.at_s.min(600.0);
    }
    if (model + number).is_multiple_of(29) {
        practice = practice.with(Fact::SafetyStop {
            exercise_before: None,
            exercise: Some("long-ah".into()),
            reason: if number.is_multiple_of(2) { "dizzy" } else { "pain" }.into(),
        });
    }
    practice.whole()
}

fn models(practices: u64) -> Result<Vec<Vec<ArrivingSession>>, Box<dyn Error>> {
    (0..MODELS).map(|model| (0..practices).map(|number| clinic::arriving(&practice(model, number)).map_err(Into::into)).collect()).collect()
}

/// Greatest resident memory of this process so far, MB (10⁶ bytes); NaN where the system does not tell.
fn peak_mb() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|line| line.trim().split(' ').next()?.parse::<f64>().ok()).map_or(f64::NAN, |kib| kib * 1024.0 / 1e6)
}

/// Puts down the figures of one engine at one size.
struct Put {
    engine: &'static str,
    trials: usize,
}

impl Put {
    fn figure(&self, name: &str, value: f64) {
        figure_of(&format!("clinic.{}.{name}", self.engine), value, self.trials);
    }
}

fn timed<T>(work: impl FnOnce() -> T) -> (T, Duration) {
    let since = Instant::now();
    (work(), since.elapsed())
}

fn run(options: &Options) -> Result<(), Box<dyn Error>> {
    let dir = tempfile::tempdir()?;
    let server = if options.at.as_deref() == Some("postgres") {
        Some(postgres_server::Server::start_safe().ok_or("no PostgreSQL is installed")?)
    } else {
        None
    };
    let address = match (&server, &options.at) {
        (Some(server), _) => Address::of(&server.database("clinic"))?,
        (None, Some(at)) => Address::of(at)?,
        (None, None) => Address::File(dir.path().join("clinic.sqlite")),
    };
    let engine = if matches!(address, Address::File(_)) { "sqlite" } else { "postgresql" };
    println!("\n## clinic: {} clients, {} trials, {engine}", options.clients, options.trials);
    let mut clinic = Clinic::open(&address)?;
    let practices = (options.trials / options.clients / TRIALS).max(1);
    let all = Put { engine, trials: usize::try_from(options.clients * practices * TRIALS)? };
    fill(&mut clinic, options, practices)?;
    println!("memory, peak, to the end of the import: {:.0} MB", peak_mb());
    views(&mut clinic, options, &all)?;
    all.figure("memory", peak_mb());
    signed(&mut clinic, options, practices, &all)?;
    let bytes = clinic.engine().size_bytes()?;
    println!("size of the database: {} MB", bytes / 1_000_000);
    all.figure("trial", bytes as f64 / all.trials as f64);
    if options.plans {
        for (view, plan) in clinic.plans()? {
            println!("\n{view}:\n{plan}");
        }
    }
    Ok(())
}

fn fill(clinic: &mut Clinic, options: &Options, practices: u64) -> Result<(), Box<dyn Error>> {
    let models = models(practices)?;
    let packages: Vec<_> = (0..options.clients).map(|number| home(number).desk_package()).collect();
    let (adopted, took) = timed(|| clinic.adopt(&desk_key(1), Some("desk one"), &packages));
    adopted?;
    println!("packages made known: {:.0} a second", options.clients as f64 / took.as_secs_f64());
    let since = Instant::now();
    for number in 0..options.clients {
        let home = home(number);
        let model = usize::try_from(number % MODELS)?;
        let sessions = models.get(model).cloned().unwrap_or_default();
        let shift = (number / MODELS) as f64 * 0.01;
        let mut file = Arriving {
            by: home.key.public().to_hex(),
            package: home.package.clone(),
            client: home.client.clone(),
            made_at: format!("{TODAY}T08:00:00Z").parse()?,
            hash: format!("{number:064x}"),
            sessions,
        };
        for trial in file.sessions.iter_mut().flat_map(|session| &mut session.trials) {
            trial.values.iter_mut().filter(|(of, _)| *of == model::Measure::LevelDb).for_each(|(_, level)| *level += shift);
        }
        clinic.import(&file)?;
        if number % 1000 == 999 {
            eprintln!("{} clients after {:.0} s", number + 1, since.elapsed().as_secs_f64());
        }
    }
    let trials = (options.clients * practices * TRIALS) as f64;
    let took = since.elapsed().as_secs_f64();
    println!(
        "a client's whole history at once, behind the check of the seal: {:.0} clients, {:.0} trials a second ({took:.0} s)",
        options.clients as f64 / took,
        trials / took
    );
    Ok(())
}

fn views(clinic: &mut Clinic, options: &Options, all: &Put) -> Result<(), Box<dyn Error>> {
    /// The longest of so many times, s.
    fn longest_s(
        clinic: &mut Clinic,
        times: u32,
        view: &dyn Fn(&mut Clinic, u32) -> Result<usize, Box<dyn Error>>,
    ) -> Result<f64, Box<dyn Error>> {
        let mut longest = Duration::ZERO;
        for time in 0..times {
            let (done, took) = timed(|| view(clinic, time));
            done?;
            longest = longest.max(took);
        }
        Ok(longest.as_secs_f64())
    }
    all.figure("caseload", longest_s(clinic, 10, &|clinic, _| Ok(clinic.caseload(TODAY, None)?.len()))?);
    let mut longest_why_s = 0.0_f64;
    for why in ReasonKind::ALL {
        let took_s = longest_s(clinic, 3, &|clinic, _| Ok(clinic.caseload(TODAY, Some(why))?.len()))?;
        println!("caseload --why {}, longest of 3: {took_s:.3} s", why.word());
        longest_why_s = longest_why_s.max(took_s);
    }
    all.figure("why", longest_why_s);
    let clients = options.clients;
    let sheet = longest_s(clinic, 100, &|clinic, time| {
        let client = clinic.client(&format!("client {}", u64::from(time) * 97 % clients))?;
        Ok(clinic.sheet(client, TODAY)?.sessions.len())
    });
    all.figure("sheet", sheet?);
    let now = format!("{TODAY}T09:00:00+00:00[UTC]").parse()?;
    let forget = longest_s(clinic, 3, &|clinic, time| {
        // The last ones, which nothing else asks for.
        let client = clinic.client(&format!("client {}", clients - 1 - u64::from(time)))?;
        clinic.forget(client)?;
        Ok(1)
    });
    all.figure("forget", forget?);
    let seen = longest_s(clinic, 20, &|clinic, time| {
        let client = clinic.client(&format!("client {}", u64::from(time) * 89 % clients))?;
        Ok(clinic.seen(client, &now, None)?.len())
    });
    all.figure("seen", seen?);
    Ok(())
}

/// Real files: a week's practices, sealed, read, checked and taken in; then all of them again.
fn signed(clinic: &mut Clinic, options: &Options, practices: u64, put: &Put) -> Result<(), Box<dyn Error>> {
    let files: Vec<String> = (0..options.files)
        .map(|number| {
            let number = number % options.clients;
            let sessions: Vec<_> = (practices..practices + 7).map(|n| practice(number % MODELS, n)).collect();
            home(number).sealed("2026-04-01", &sessions)
        })
        .collect();
    let bytes: usize = files.iter().map(String::len).sum();
    let all = |clinic: &mut Clinic| -> Result<f64, Box<dyn Error>> {
        let since = Instant::now();
        for file in &files {
            clinic.import(&Arriving::read(&open(Kind::Results, file.as_bytes())?)?)?;
        }
        Ok(since.elapsed().as_secs_f64())
    };
    let (first, again) = (all(clinic)?, all(clinic)?);
    let count = files.len() as f64;
    println!("{:.1} MB of signed files a second", bytes as f64 / 1e6 / first);
    put.figure("import", count / first);
    put.figure("again", count / again);
    Ok(())
}
