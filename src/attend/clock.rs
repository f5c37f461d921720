//! The time of day, as it is compared and as it is said.

use routine::Weekday;
use session::Arg;

/// A local day and time of day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moment {
    /// Numbers the days; only compared.
    pub day: i64,
    pub weekday: Weekday,
    /// Minutes after midnight, 0 to 1439.
    pub minute: u16,
}

/// The arguments that say a time of day to five minutes: `time`, a message that uses `hour` and `past`.
pub(super) fn spoken(minute: u16) -> Vec<(&'static str, Arg)> {
    let minute = (u32::from(minute) + 2) / 5 * 5;
    let (hour, past) = (minute / 60, minute % 60);
    let (key, hour, past) = match past {
        0 => ("attend-time-full", hour, 0),
        15 => ("attend-time-quarter-past", hour, 0),
        30 => ("attend-time-half-past", hour, 0),
        45 => ("attend-time-quarter-to", hour + 1, 0),
        past if past < 30 => ("attend-time-past", hour, past),
        past => ("attend-time-to", hour + 1, 60 - past),
    };
    let hour = (hour + 11) % 12 + 1;
    vec![("time", Arg::Message(key.into())), ("hour", Arg::Number(f64::from(hour))), ("past", Arg::Number(f64::from(past)))]
}
