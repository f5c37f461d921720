//! Who the simulated clients are, and how each of their practices goes.

use crate::simulated::course::mood;
use crate::simulated::practice::Client;

/// What becomes of somebody over the weeks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Course {
    /// Holds longer and speaks louder from week to week.
    Grows,
    /// Nothing changes beyond the usual ups and downs.
    Steady,
    /// Holds become shorter and softer towards the end.
    Fades,
    /// No practice in the last two weeks.
    Stops,
    /// Every second planned day is missed.
    Misses,
    /// Became dizzy last week.
    Dizzy,
    /// Coughs at meals, and says so.
    Coughs,
    /// Leaves early, again and again.
    Leaves,
}

/// In this order around the list: a caseload is mostly of people who get on.
const COURSES: [Course; 15] = [
    Course::Grows,
    Course::Steady,
    Course::Grows,
    Course::Fades,
    Course::Steady,
    Course::Grows,
    Course::Misses,
    Course::Steady,
    Course::Dizzy,
    Course::Grows,
    Course::Steady,
    Course::Stops,
    Course::Grows,
    Course::Coughs,
    Course::Leaves,
];

/// One of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Person {
    /// It stands in every file that is made of them.
    pub name: String,
    pub course: Course,
    /// Where they begin: seconds of a held vowel.
    hold_s: f64,
    /// Usual pitch, Hz.
    f0_hz: f64,
    number: usize,
}

impl Person {
    /// The client of this number, from 0.
    pub fn of_clinic(number: usize) -> Self {
        let course = COURSES.get(number % COURSES.len()).copied().unwrap_or(Course::Steady);
        Self::named(&format!("simulated client {:02}", number + 1), course, number)
    }

    pub fn named(name: &str, course: Course, number: usize) -> Self {
        let f0_hz = if number.is_multiple_of(2) { 118.0 } else { 196.0 };
        Self { name: name.to_owned(), course, hold_s: 7.0 + (number * 7 % 11) as f64 * 0.6, f0_hz, number }
    }

    /// Whether this planned day, `back` days ago, is practised.
    pub fn practises(&self, nth: usize, back: i32) -> bool {
        match self.course {
            Course::Stops => back > 14,
            Course::Misses => nth.is_multiple_of(2) || back > 35,
            // Now and then everybody has something else to do.
            _ => (nth + self.number) % 9 != 8,
        }
    }

    /// How the practice of this number goes: `along` the weeks, 0 to 1, `back` days ago.
    pub fn on(&self, nth: usize, along: f64, back: i32) -> Client {
        let mood = mood(nth + 3 * self.number);
        let change = match self.course {
            Course::Grows => along,
            Course::Fades => -1.4 * (along - 0.4).max(0.0),
            _ => 0.0,
        };
        let rating = |value: f64| value.round().clamp(0.0, 10.0) as u32;
        let last_week = back <= 7;
        Client {
            hold_s: (self.hold_s + 4.0 * change + 0.7 * mood).max(2.0),
            vowel_db: -28.0 + 3.0 * change + mood,
            speech_db: -31.0 + 4.0 * change + mood,
            // Most are calibrated, some half-way through, a few never.
            calibrated: match self.number % 11 {
                3 => false,
                5 => along > 0.5,
                _ => true,
            },
            f0_hz: self.f0_hz + 2.0 * mood,
            range_st: 8.0 + 3.0 * change + 0.6 * mood,
            effort: rating(5.0 - 2.0 * change - mood),
            tiredness: rating(4.0 - change - mood),
            voice: rating(5.0 + 2.0 * change + mood),
            coughs: self.course == Course::Coughs && last_week,
            dizzy: self.course == Course::Dizzy && last_week,
            leaves: self.course == Course::Leaves && nth % 2 == 1,
        }
    }
}
