//! A client's own ratings, 0 to 10, over some weeks.

use super::practised::{Practised, Rated};
use super::window::Window;
use jiff::civil::Date;
use model::{RatedOver, Rating};
use serde::Serialize;
use statistics::median;

/// All ratings of one kind. They are told as they are: no change is worked out of them.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Ratings {
    pub what: Rating,
    pub over: RatedOver,
    /// How often it was rated, and how often passed over.
    pub given: u32,
    pub passed_over: u32,
    pub median: f64,
    pub low: u8,
    pub high: u8,
    pub latest: u8,
    pub latest_day: Date,
}

/// The kinds that were rated in a window at least once. A rating above 10 is none.
pub(super) fn ratings(practised: &Practised, window: Window) -> Vec<Ratings> {
    let kinds = Rating::ALL.into_iter().flat_map(|what| RatedOver::ALL.map(|over| (what, over)));
    kinds.filter_map(|(what, over)| of_kind(practised, window, what, over)).collect()
}

fn of_kind(practised: &Practised, window: Window, what: Rating, over: RatedOver) -> Option<Ratings> {
    let all: Vec<&Rated> =
        practised.ratings.iter().filter(|rated| (rated.what, rated.over) == (what, over) && window.has(rated.day)).collect();
    let given: Vec<(Date, u8)> =
        all.iter().filter_map(|rated| Some((rated.day, rated.value.filter(|value| *value <= Rating::MOST)?))).collect();
    let (latest_day, latest) = *given.iter().max_by_key(|(day, _)| *day)?;
    let values: Vec<f64> = given.iter().map(|(_, value)| f64::from(*value)).collect();
    Some(Ratings {
        what,
        over,
        given: u32::try_from(given.len()).unwrap_or(u32::MAX),
        passed_over: u32::try_from(all.iter().filter(|rated| rated.value.is_none()).count()).unwrap_or(u32::MAX),
        median: median(&values)?,
        low: given.iter().map(|(_, value)| *value).min()?,
        high: given.iter().map(|(_, value)| *value).max()?,
        latest,
        latest_day,
    })
}

#[cfg(test)]
#[path = "tests/rated.rs"]
mod tests;
