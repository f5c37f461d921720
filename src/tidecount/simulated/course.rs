//! The weeks of a simulated client: planned days, and how it goes up and down.

use jiff::Span;
use jiff::civil::{Date, Weekday};

/// The routine that is practised, its name and its text.
pub const ROUTINE: (&str, &str) = ("demo/weeks/routine.toml", include_str!("../../../demo/weeks/routine.toml"));
/// The days of the plan.
const DAYS: [Weekday; 3] = [Weekday::Monday, Weekday::Wednesday, Weekday::Friday];

/// Every planned day of so many weeks before today.
pub fn planned(weeks: u32, today: Date) -> Vec<Date> {
    let first = today.saturating_sub(Span::new().weeks(weeks));
    let all = (0..7 * i64::from(weeks)).map(|n| first.saturating_add(Span::new().days(n)));
    all.filter(|day| DAYS.contains(&day.weekday())).collect()
}

/// How the client feels on the practice of this number, -1 to 1: a sum of two waves without a common period, up and down, and the same each
/// time.
pub fn mood(number: usize) -> f64 {
    (number as f64 * 2.4).sin() * 0.6 + (number as f64 * 5.1).sin() * 0.4
}
