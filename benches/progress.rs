//! What it costs to work out a client's progress from two years of daily practice in a SQLite record.
//!
//! `cargo bench --bench progress`; a number of days after `--` makes it longer or shorter.

#[path = "progress/two_years.rs"]
mod two_years;

use std::error::Error;
use std::time::Instant;

use figures::{figure, figure_of};
use progress::{Picture, Window};
use record::Store;

/// Best of so many runs.
const RUNS: usize = 5;

fn main() -> Result<(), Box<dyn Error>> {
    let days = std::env::args().skip(1).find_map(|argument| argument.parse().ok()).unwrap_or(two_years::DAYS);
    let folder = tempfile::tempdir()?;
    let mut store = Store::open(folder.path())?;
    let (sessions, today) = two_years::sessions(days)?;
    let entries: usize = sessions.iter().flat_map(|session| &session.parts).map(|part| part.lines.len()).sum();
    store.receive(two_years::CLIENT, &sessions)?;
    let size = std::fs::metadata(store.path())?.len();
    println!("{} practices in {days} days, {entries} entries, {:.1} MB", sessions.len(), size as f64 / 1e6);
    drop(store);

    let mut best = [f64::INFINITY; 4];
    let mut shown = String::new();
    for _ in 0..RUNS {
        let mut times = Vec::new();
        let began = Instant::now();
        let store = Store::open(folder.path())?;
        let practised = store.practised(two_years::CLIENT, today)?;
        times.push(began.elapsed());
        let all = Instant::now();
        let whole = Picture::of(&practised, Window::all(&practised, today));
        times.push(all.elapsed());
        let part = Instant::now();
        let weeks = Picture::of(&practised, Window::weeks(today, 12));
        times.push(part.elapsed());
        times.push(began.elapsed());
        for (best, time) in best.iter_mut().zip(times) {
            *best = best.min(time.as_secs_f64());
        }
        let segments = whole.series.iter().map(|series| series.segments.len()).sum::<usize>();
        shown = format!(
            "{} trials, {} series in {segments} segments, {} weeks; adherence {:.0} %; in the last 12 weeks {} trials",
            whole.trials.len(),
            whole.series.len(),
            whole.adherence.weeks.len(),
            100.0 * whole.adherence.share().unwrap_or(0.0),
            weeks.trials.len()
        );
    }
    println!("{shown}");
    let [read, all, weeks, both] = best;
    figure("progress.read", read);
    figure("progress.whole", all);
    figure("progress.weeks", weeks);
    figure_of("progress.both", both, sessions.len());
    Ok(())
}
