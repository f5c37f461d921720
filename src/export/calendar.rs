//! The plan of a routine as an iCalendar file (RFC 5545).
//!
//! Times are floating local times, which stay what they are on the client's clock through daylight saving and travel. Nothing in it
//! tells what is practised or by whom: calendars are copied to other computers and shown on locked screens.

use std::collections::BTreeSet;

use icalendar::{Alarm, Calendar, Component, Event, EventLike};
use jiff::Timestamp;
use jiff::civil::Date;

use super::ids::uuid;
use routine::{PlannedTime, Weekday};

/// What is planned for one person and routine.
#[derive(Debug, Clone, PartialEq)]
pub struct Planned<'a> {
    /// Whose it is and which routine: kept in identifiers alone, and there unreadable.
    pub client: &'a str,
    pub title: &'a str,
    pub plan: &'a [PlannedTime],
    /// How long a practice takes, min.
    pub minutes: u32,
}

/// Over which days, and how it is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Settings {
    /// The first and the last day.
    pub from: Date,
    pub to: Date,
    /// What stands in the calendar, "Practice".
    pub summary: String,
    /// Minutes before the practice at which it rings; none: no alarm.
    pub alarms_min: Vec<u32>,
    /// When the file is made.
    pub made_at: Timestamp,
}

/// The calendar, and how many practices it holds; none where no planned time falls into the days.
#[must_use]
pub fn calendar(planned: &[Planned<'_>], settings: &Settings) -> Option<(String, u32)> {
    let mut calendar = Calendar::empty();
    calendar.append_property(("VERSION", "2.0"));
    calendar.append_property(("PRODID", concat!("-//tidecount//tidecount ", env!("CARGO_PKG_VERSION"), "//EN")));
    calendar.append_property(("CALSCALE", "GREGORIAN"));
    calendar.append_property(("METHOD", "PUBLISH"));
    let mut practices = 0_u32;
    for one in planned {
        for (number, time) in one.plan.iter().enumerate() {
            let Some((first, count)) = occurrences(&time.days, settings.from, settings.to) else { continue };
            practices = practices.saturating_add(count);
            calendar.push(event(one, number, time, first, count, settings));
        }
    }
    (practices > 0).then(|| (without_alarm_stamps(&calendar.to_string()), practices))
}

/// The first day of those days of the week between two days, and how many there are; none where there is none.
fn occurrences(days: &BTreeSet<Weekday>, from: Date, to: Date) -> Option<(Date, u32)> {
    let falls = |date: &Date| days.contains(&weekday(*date));
    let mut dates = from.series(jiff::Span::new().days(1)).take_while(|date| *date <= to).filter(falls);
    let first = dates.next()?;
    Some((first, u32::try_from(dates.count()).unwrap_or(u32::MAX).saturating_add(1)))
}

fn weekday(date: Date) -> Weekday {
    let index = usize::try_from(date.weekday().to_monday_zero_offset()).unwrap_or(0);
    Weekday::ALL.get(index).copied().unwrap_or(Weekday::Monday)
}

fn event(planned: &Planned<'_>, number: usize, time: &PlannedTime, first: Date, count: u32, settings: &Settings) -> Event {
    let mut event = Event::new();
    // By its place in the plan, so that a practice whose time is changed moves instead of standing there twice.
    event.uid(&uuid(&["calendar", planned.client, planned.title, &number.to_string()]));
    event.add_property("DTSTAMP", settings.made_at.strftime("%Y%m%dT%H%M%SZ").to_string());
    event.add_property("DTSTART", format!("{}T{:02}{:02}00", first.strftime("%Y%m%d"), time.at_min / 60, time.at_min % 60));
    event.add_property("DURATION", format!("PT{}M", planned.minutes.max(1)));
    event.add_property("RRULE", rule(&time.days, count));
    event.summary(&settings.summary);
    event.add_property("CLASS", "PRIVATE");
    event.add_property("TRANSP", "OPAQUE");
    for (index, before) in settings.alarms_min.iter().enumerate() {
        let mut alarm = Alarm::display(&settings.summary, -chrono::Duration::minutes(i64::from(*before)));
        // An identifier of its own is RFC 9074's; the library would draw one by lot.
        alarm.uid(&uuid(&["alarm", planned.client, planned.title, &number.to_string(), &index.to_string()]));
        // As it was written: the library would give the same length in seconds.
        alarm.add_property("TRIGGER", format!("-PT{before}M"));
        event.alarm(alarm);
    }
    event.done()
}

fn rule(days: &BTreeSet<Weekday>, count: u32) -> String {
    if days.len() == Weekday::ALL.len() {
        return format!("FREQ=DAILY;COUNT={count}");
    }
    let days: Vec<&str> = days.iter().map(|day| day_code(*day)).collect();
    format!("FREQ=WEEKLY;BYDAY={};COUNT={count}", days.join(","))
}

fn day_code(day: Weekday) -> &'static str {
    match day {
        Weekday::Monday => "MO",
        Weekday::Tuesday => "TU",
        Weekday::Wednesday => "WE",
        Weekday::Thursday => "TH",
        Weekday::Friday => "FR",
        Weekday::Saturday => "SA",
        Weekday::Sunday => "SU",
    }
}

/// The library gives every component a DTSTAMP, but RFC 5545, section 3.6.6, names none in an alarm.
fn without_alarm_stamps(text: &str) -> String {
    let mut in_alarm = false;
    text.split_inclusive("\r\n")
        .filter(|line| {
            in_alarm = match line.trim_end() {
                "BEGIN:VALARM" => true,
                "END:VALARM" => false,
                _ => in_alarm,
            };
            !(in_alarm && line.starts_with("DTSTAMP:"))
        })
        .collect()
}

#[cfg(test)]
#[path = "tests/calendar.rs"]
mod tests;
