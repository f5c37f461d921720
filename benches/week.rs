//! The demo household's week with clients of stated habits: `cargo bench --bench week [-- HABIT…]`, also with `--profile dev`.
//!
//! Each client of `demo/week/clients` goes through the five evenings of `demo/week/week.toml` in rehearsal, through the real
//! ears and the real engine; its own log, which no ear has touched, tells what it did. The evenings of one client share a
//! record, as if live, so that agreements and earlier results carry over; the clock on the wall is the machine's, so that all
//! five lie on one day. Needs Debian's `flite` and `espeak-ng`; nothing else from outside.
//!
//! Options: `--out FILE.md` writes the tables there too; `--keep DIR` keeps journals, truth and the sound of both sides;
//! `--go-on` leads only what is not kept there yet; `--evenings N` takes only the first N; `--jobs N` clients at once (2). The client without a habit always goes first: time
//! lost is counted against it.

#[path = "week/compare.rs"]
mod compare;
#[path = "week/lead.rs"]
mod lead;
#[path = "week/table.rs"]
mod table;

use compare::Evening;
use lead::{Week, lead, read, was_led};
use rehearse::Script;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::sync::Mutex;

const ROOT: &str = env!("CARGO_MANIFEST_DIR");
/// The client without a habit.
const PLAIN: &str = "plain";

/// What one client's week came to.
pub struct Habit {
    pub name: String,
    /// An evening that could not be led has a reason instead.
    pub evenings: Vec<Result<Evening, String>>,
}

struct Options {
    habits: Vec<String>,
    out: Option<PathBuf>,
    keep: Option<PathBuf>,
    evenings: usize,
    jobs: usize,
    go_on: bool,
}

fn main() -> Result<(), Box<dyn Error>> {
    let options = options(std::env::args().skip(1))?;
    let week = Week::read(&Path::new(ROOT).join("demo/week/week.toml"), options.evenings)?;
    let scratch = tempfile::tempdir()?;
    let folder = options.keep.clone().unwrap_or_else(|| scratch.path().to_owned());
    let queue = Mutex::new(options.habits.iter().rev().cloned().collect::<Vec<_>>());
    let done = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..options.jobs {
            scope.spawn(|| {
                while let Some(name) = queue.lock().ok().and_then(|mut queue| queue.pop()) {
                    let habit = live_through(&name, &week, &folder.join(&name), options.go_on);
                    if let Ok(mut done) = done.lock() {
                        done.push(habit);
                    }
                }
            });
        }
    });
    let mut habits = done.into_inner().map_err(|_| "a client's thread broke off")?;
    habits.sort_by_key(|habit| options.habits.iter().position(|name| *name == habit.name));
    let text = table::tables(&habits, &week);
    println!("{text}");
    table::figures(&habits);
    if let Some(out) = &options.out {
        std::fs::write(out, &text).map_err(|why| format!("{}: {why}", out.display()))?;
    }
    Ok(())
}

/// One client's evenings, one after the other.
fn live_through(name: &str, week: &Week, folder: &Path, go_on: bool) -> Habit {
    let script = Script::open(&Path::new(ROOT).join("demo/week/clients").join(format!("{name}.toml")));
    let mut evenings = Vec::new();
    for (n, evening) in week.evenings.iter().enumerate() {
        let began = std::time::Instant::now();
        let led = match &script {
            Ok(_) if go_on && was_led(n, evening, folder) => Ok(()),
            Ok(script) => lead(script.clone(), n, evening, folder).map_err(|why| why.to_string()),
            Err(why) => Err(why.to_string()),
        };
        let led = led.and_then(|()| read(n, evening, folder).map_err(|why| why.to_string()));
        let told = match &led {
            Ok(led) => led.journal.last().map(ToString::to_string).unwrap_or_default(),
            Err(why) => why.clone(),
        };
        eprintln!("{name}, {}: {:.0} s of machine time: {told}", evening.day, began.elapsed().as_secs_f64());
        evenings.push(led.and_then(|led| Evening::of(&led).map_err(|why| why.to_string())));
    }
    Habit { name: name.to_owned(), evenings }
}

fn options(args: impl Iterator<Item = String>) -> Result<Options, Box<dyn Error>> {
    let mut all: Vec<String> = std::fs::read_dir(Path::new(ROOT).join("demo/week/clients"))?
        .flatten()
        .filter_map(|file| file.file_name().to_str()?.strip_suffix(".toml").map(str::to_owned))
        .filter(|name| name != PLAIN)
        .collect();
    all.sort();
    let mut options = Options { habits: Vec::new(), out: None, keep: None, evenings: usize::MAX, jobs: 2, go_on: false };
    let mut args = args.filter(|arg| arg != "--bench");
    while let Some(arg) = args.next() {
        let mut value = || args.next().ok_or_else(|| format!("{arg} needs a value"));
        match arg.as_str() {
            "--out" => options.out = Some(value()?.into()),
            "--keep" => options.keep = Some(value()?.into()),
            "--go-on" => options.go_on = true,
            "--evenings" => options.evenings = value()?.parse()?,
            "--jobs" => options.jobs = value()?.parse()?,
            name if name == PLAIN || all.iter().any(|known| known == name) => options.habits.push(name.to_owned()),
            other => return Err(format!("\"{other}\" is no habit; there are {PLAIN}, {}", all.join(", ")).into()),
        }
    }
    if options.habits.is_empty() {
        options.habits = all;
    }
    options.habits.retain(|name| name != PLAIN);
    options.habits.insert(0, PLAIN.to_owned());
    Ok(options)
}
