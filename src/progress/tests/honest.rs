//! Persons who do not change, and persons who do: how often a change is told. Simulated, with a fixed seed.

use super::samples::{after, day, practised, trial};
use super::{Conditions, Measure, Trial, Window, series};

/// Normal numbers from a linear congruential generator (Knuth's MMIX constants) and Box–Muller.
struct Normal(u64);

impl Normal {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    fn next(&mut self) -> f64 {
        (-2.0 * self.uniform().ln()).sqrt() * (std::f64::consts::TAU * self.uniform()).cos()
    }
}

/// How a person's holds scatter, s.
#[derive(Clone, Copy)]
struct Person {
    within: f64,
    between: f64,
    /// How much of a day's deviation is left the day after.
    carry: f64,
    per_week: f64,
}

struct Told {
    change: u32,
    slope: u32,
}

/// Of so many persons alike, of how many a change from baseline is told, and a slope whose interval leaves out none. Eight weeks
/// of daily practice, three trials a day.
fn told(person: Person, persons: u32, seed: u64) -> Told {
    let mut normal = Normal(seed);
    let first = day("2026-03-02");
    let mut told = Told { change: 0, slope: 0 };
    for _ in 0..persons {
        let mut drift = normal.next() * person.between;
        let mut trials: Vec<Trial> = Vec::new();
        for days in 0..56 {
            drift = person.carry * drift + (1.0 - person.carry.powi(2)).sqrt() * person.between * normal.next();
            for seq in 0..3 {
                let value = 12.0 + drift + days as f64 / 7.0 * person.per_week + person.within * normal.next();
                trials.push(trial(after(first, days), days, seq, "long-ah", &[(Measure::HoldS, value)], Conditions::default()));
            }
        }
        let all = series(&practised(Vec::new(), trials), Window { from: first, to: after(first, 55) });
        let segment = &all[0].segments[0];
        told.change += u32::from(segment.change.and_then(|change| change.exceeds_95) == Some(true));
        told.slope += u32::from(segment.slope.is_some_and(|slope| !slope.includes_none()));
    }
    told
}

/// The figures of `docs/performance.md`; `carry_pct` stands in their ids.
fn put_down(carry_pct: &str, found: &Told) {
    figures::figure_of(&format!("honest.change.{carry_pct}"), f64::from(found.change), 300);
    figures::figure_of(&format!("honest.slope.{carry_pct}"), f64::from(found.slope), 300);
}

const STEADY: Person = Person { within: 1.0, between: 1.2, carry: 0.0, per_week: 0.0 };

#[test]
fn a_person_who_does_not_change_is_hardly_ever_told_to() {
    let found = told(STEADY, 300, 1);
    put_down("0", &found);
    assert!(found.change <= 3, "{} of 300", found.change);
    assert!(found.slope <= 24, "5 % would be 15: {} of 300", found.slope);
}

/// Good and bad weeks: days that resemble their neighbours, a little, much and very much.
#[test]
fn good_and_bad_weeks_are_no_trend() {
    for (carry, seed) in [(0.5, 2), (0.7, 2), (0.85, 5)] {
        let found = told(Person { carry, ..STEADY }, 300, seed);
        put_down(&format!("{:.0}", 100.0 * carry), &found);
        assert!(found.change <= 24, "{carry}: 5 % would be 15: {} of 300", found.change);
        assert!(found.slope <= 27, "{carry}: 5 % would be 15: {} of 300", found.slope);
    }
}

#[test]
fn a_person_who_changes_much_is_told() {
    let found = told(Person { per_week: 0.8, ..STEADY }, 100, 3);
    assert!(found.change >= 90 && found.slope >= 98, "{} and {} of 100", found.change, found.slope);
    let down = told(Person { per_week: -0.8, ..STEADY }, 100, 4);
    assert!(down.change >= 90 && down.slope >= 98, "either way: {} and {} of 100", down.change, down.slope);
}
