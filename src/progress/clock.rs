//! Which practices carry a date that can be believed.

use super::practised::ClockJump;
use jiff::{SignedDuration, ZonedDateTime, civil::Date};

/// There was no such program before: a clock that says so has lost its battery.
const EARLIEST: Date = Date::constant(2020, 1, 1);
/// A clock that is put back by less, as by daylight saving or a time server, misplaces no practice.
const SMALL: SignedDuration = SignedDuration::from_hours(24);

/// One practice, in the order in which they were entered in this record.
#[derive(Debug, Clone, PartialEq)]
pub struct Led {
    pub session: i64,
    pub began: ZonedDateTime,
    /// Led on this computer, so that its number tells the true order.
    pub here: bool,
}

/// For each practice whether its date is wrong, and where the clock went back. Wrong is what lies before the program existed or
/// more than a day after `today`, and, of those led here, what falls out of the order in which the others were led by more than a
/// day. Where more than a tenth falls out, it is the order that is wrong, as after two records were joined, and nothing is
/// taken for misdated.
#[must_use]
pub fn misdated(led: &[Led], today: Date) -> (Vec<bool>, Vec<ClockJump>) {
    let tomorrow = today.tomorrow().unwrap_or(today);
    let mut wrong: Vec<bool> = led.iter().map(|one| one.began.date() < EARLIEST || one.began.date() > tomorrow).collect();
    let here: Vec<(usize, &Led)> = led.iter().enumerate().filter(|(_, one)| one.here).collect();
    let jumps = here.iter().zip(here.iter().skip(1)).filter(|((_, before), (_, after))| after.began < before.began);
    let jumps = jumps
        .map(|((_, before), (_, after))| ClockJump { session: after.session, began: after.began.clone(), before: before.began.clone() })
        .collect();
    let sound: Vec<(usize, &Led)> = here.into_iter().filter(|(index, _)| wrong.get(*index) == Some(&false)).collect();
    let fallen = out_of_order(&sound.iter().map(|(_, one)| &one.began).collect::<Vec<_>>());
    if fallen.len() <= (sound.len() / 10).max(1) {
        for (index, _) in fallen.into_iter().filter_map(|place| sound.get(place)) {
            if let Some(wrong) = wrong.get_mut(*index) {
                *wrong = true;
            }
        }
    }
    (wrong, jumps)
}

/// Places of what must be taken out so that the rest is in order, as few as possible, less what is out by less than a day.
fn out_of_order(times: &[&ZonedDateTime]) -> Vec<usize> {
    // Longest non-decreasing subsequence: `ends[k]` is the place of the earliest end of one of length k + 1.
    let mut ends: Vec<usize> = Vec::new();
    let mut before: Vec<Option<usize>> = Vec::with_capacity(times.len());
    let at = |place: usize| times.get(place).map(|time| time.timestamp());
    for place in 0..times.len() {
        let length = ends.partition_point(|end| at(*end) <= at(place));
        before.push(length.checked_sub(1).and_then(|last| ends.get(last)).copied());
        match ends.get_mut(length) {
            Some(end) => *end = place,
            None => ends.push(place),
        }
    }
    let mut kept = vec![false; times.len()];
    let mut next = ends.last().copied();
    while let Some(place) = next {
        if let Some(kept) = kept.get_mut(place) {
            *kept = true;
        }
        next = before.get(place).copied().flatten();
    }
    let in_order = |place: usize| kept.get(place) == Some(&true);
    let far = |place: &usize| {
        let Some(time) = times.get(*place) else { return false };
        let earlier = (0..*place).rev().find(|other| in_order(*other)).and_then(|other| times.get(other));
        let later = (*place..times.len()).find(|other| in_order(*other)).and_then(|other| times.get(other));
        earlier.is_some_and(|earlier| time.duration_until(earlier) > SMALL) || later.is_some_and(|later| later.duration_until(time) > SMALL)
    };
    (0..times.len()).filter(|place| !in_order(*place)).filter(far).collect()
}

#[cfg(test)]
#[path = "tests/clock.rs"]
mod tests;
