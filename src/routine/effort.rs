//! Rest after effort: what one group of muscles, or one breath, needs before it is asked again.
//!
//! The check follows a routine with it in planned time, the engine a practice in real time, so both go by the same rule.

use std::collections::BTreeMap;

use super::safe::safe_dose;

/// What the groups have done lately.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Efforts {
    groups: BTreeMap<&'static str, Effort>,
}

/// The latest effort of a group.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Effort {
    /// When it ended, s.
    ended_s: f64,
    /// Rest that it needs before the next of its group, s.
    rest_s: f64,
    /// So many one after another.
    in_a_row: u32,
}

impl Efforts {
    /// Seconds to go from `now_s` before this exercise may begin a repetition. `word`: a clinician has spoken for it.
    #[must_use]
    pub fn rest_before_s(&self, exercise: &str, word: bool, now_s: f64) -> f64 {
        let Some(safe) = safe_dose(exercise) else { return 0.0 };
        let Some(last) = safe.group.as_deref().and_then(|group| self.groups.get(group)) else { return 0.0 };
        let row_s = safe.in_a_row.as_ref().filter(|row| f64::from(last.in_a_row) >= row.most.in_force(word)).map_or(0.0, |row| row.rest_s);
        (last.rest_s.max(row_s) - (now_s - last.ended_s)).max(0.0)
    }

    /// A repetition begins.
    pub fn begins(&mut self, exercise: &str, now_s: f64) {
        let Some(safe) = safe_dose(exercise) else { return };
        let (Some(group), Some(row)) = (safe.group.as_deref(), &safe.in_a_row) else { return };
        let last = self.groups.entry(group).or_insert(Effort { ended_s: now_s, rest_s: 0.0, in_a_row: 0 });
        if now_s - last.ended_s >= row.rest_s {
            last.in_a_row = 0;
        }
        last.in_a_row += 1;
        last.ended_s = last.ended_s.max(now_s);
    }

    /// A repetition has ended, or was cut off, after `held_s`.
    pub fn ended(&mut self, exercise: &str, word: bool, held_s: f64, now_s: f64) {
        let Some(safe) = safe_dose(exercise) else { return };
        let Some(group) = safe.group.as_deref() else { return };
        let last = self.groups.entry(group).or_insert(Effort { ended_s: now_s, rest_s: 0.0, in_a_row: 0 });
        last.ended_s = last.ended_s.max(now_s);
        last.rest_s = match (&safe.rest_per_hold, &safe.in_a_row) {
            (Some(share), _) => share.in_force(word) * held_s,
            // A full row wants its rest whatever of its group comes next.
            (None, Some(row)) if f64::from(last.in_a_row) >= row.most.in_force(word) => row.rest_s,
            _ => 0.0,
        };
    }

    /// Nothing is known of the time before `now_s` but that this exercise was done right before it: the careful reading.
    pub fn just_done(&mut self, exercise: &str, word: bool, held_s: f64, now_s: f64) {
        let Some(safe) = safe_dose(exercise) else { return };
        self.ended(exercise, word, held_s, now_s);
        if let (Some(group), Some(row)) = (safe.group.as_deref(), &safe.in_a_row)
            && let Some(last) = self.groups.get_mut(group)
        {
            last.in_a_row = u32::MAX / 2;
            last.rest_s = row.rest_s;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 60 s of head lift need 60 s, 30 with a clinician's word; a cut hold only as long as it was.
    #[test]
    fn a_hold_needs_its_rest_and_the_whole_group_waits() {
        let mut efforts = Efforts::default();
        assert_eq!(efforts.rest_before_s("head-lift-sustained", false, 0.0), 0.0);
        efforts.ended("head-lift-sustained", false, 60.0, 100.0);
        assert_eq!(efforts.rest_before_s("head-lift-sustained", false, 110.0), 50.0);
        assert_eq!(efforts.rest_before_s("chin-tuck-ball-repeated", false, 120.0), 40.0, "the same muscles");
        assert_eq!(efforts.rest_before_s("jaw-opening", false, 100.0), 0.0);
        efforts.ended("head-lift-sustained", true, 60.0, 200.0);
        assert_eq!(efforts.rest_before_s("head-lift-sustained", true, 200.0), 30.0);
        efforts.ended("head-lift-sustained", false, 5.0, 300.0);
        assert_eq!(efforts.rest_before_s("head-lift-sustained", false, 301.0), 4.0);
    }

    /// By hand: five mid-swallow holds, then 60 s; effortful swallows count in the same row, and may be ten.
    #[test]
    fn a_row_ends_with_a_long_enough_break_only() {
        let mut efforts = Efforts::default();
        let mut now_s = 0.0;
        for _ in 0..5 {
            assert_eq!(efforts.rest_before_s("mid-swallow-hold", false, now_s), 0.0);
            efforts.begins("mid-swallow-hold", now_s);
            efforts.ended("mid-swallow-hold", false, 0.0, now_s + 4.0);
            now_s += 14.0;
        }
        assert_eq!(efforts.rest_before_s("mid-swallow-hold", false, now_s), 50.0, "ten seconds between are no rest");
        assert_eq!(efforts.rest_before_s("mid-swallow-hold", false, now_s + 50.0), 0.0);
        assert_eq!(efforts.rest_before_s("effortful-swallow", false, now_s), 50.0, "a full row wants its rest");
        efforts.begins("mid-swallow-hold", now_s + 50.0);
        efforts.ended("mid-swallow-hold", false, 0.0, now_s + 54.0);
        assert_eq!(efforts.rest_before_s("mid-swallow-hold", false, now_s + 54.0), 0.0, "a new row");
    }
}
