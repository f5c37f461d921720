//! When a routine is meant to be done.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

/// A day of the week.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Weekday {
    Monday,
    Tuesday,
    Wednesday,
    Thursday,
    Friday,
    Saturday,
    Sunday,
}

impl Weekday {
    /// The message that names the day, `weekday-tuesday`.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Monday => "weekday-monday",
            Self::Tuesday => "weekday-tuesday",
            Self::Wednesday => "weekday-wednesday",
            Self::Thursday => "weekday-thursday",
            Self::Friday => "weekday-friday",
            Self::Saturday => "weekday-saturday",
            Self::Sunday => "weekday-sunday",
        }
    }
}

/// A time of day on some days of the week, as agreed with the client.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlannedTime {
    /// At least one day.
    pub days: BTreeSet<Weekday>,
    /// Local time of day, minutes after midnight, 0 to 1439.
    pub at_min: u16,
}
