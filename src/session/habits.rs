//! How long this person usually takes, and how long to wait accordingly.
use model::Response;

use std::collections::BTreeMap;

/// How long a person took, by what was waited for; from the end of our line to the response.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Habits {
    /// The newest last, s; at most [`Habits::RECENT`] of each.
    taken_s: BTreeMap<Response, Vec<f64>>,
}

impl Habits {
    /// The newest responses that tell what is usual now. Common practice, no source.
    pub const RECENT: usize = 20;
    /// Fewer tell nothing. Common practice, no source.
    const ENOUGH: usize = 3;
    /// Share of responses that the usual time covers: nine in ten. Common practice, no source.
    const COVERS: f64 = 0.9;
    /// The wait is this much longer than the usual time. Ten times the average may be accepted (Irish IT accessibility
    /// guidelines 2.1); half as long again is our own choice, so that nobody sits before a dumb tool.
    const MARGIN: f64 = 1.5;
    /// Longest wait before it asks again, s: whoever forgot the question is helped by hearing it. No source.
    pub const LONGEST_S: f64 = 60.0;

    /// Adds a response. What is no time is left out.
    pub fn add(&mut self, to: Response, after_s: f64) {
        if !after_s.is_finite() || after_s < 0.0 {
            return;
        }
        let taken = self.taken_s.entry(to).or_default();
        taken.push(after_s);
        if taken.len() > Self::RECENT {
            taken.remove(0);
        }
    }

    /// What nine of ten recent responses of this kind took at most, s; of all kinds while too few are known; none where even those
    /// are too few.
    #[must_use]
    pub fn usual_s(&self, to: Response) -> Option<f64> {
        // Whoever is slow to answer is slow to begin, too: until enough is known of one kind, all kinds but thinking tell.
        let all =
            || self.taken_s.iter().filter(|(kind, _)| **kind != Response::Question).flat_map(|(_, taken)| taken.iter().copied()).collect();
        let own = self.taken_s.get(&to).filter(|taken| taken.len() >= Self::ENOUGH);
        let mut taken: Vec<f64> = match own {
            Some(own) => own.clone(),
            None if to == Response::Question => return None,
            None => all(),
        };
        if taken.len() < Self::ENOUGH {
            return None;
        }
        taken.sort_by(f64::total_cmp);
        statistics::nearest_rank(&taken, Self::COVERS)
    }

    /// How long to wait in silence before asking again, s: never shorter than the routine's `least_s`.
    #[must_use]
    pub fn wait_s(&self, to: Response, least_s: f64) -> f64 {
        let wanted_s = self.usual_s(to).map_or(0.0, |usual_s| usual_s * Self::MARGIN);
        wanted_s.min(Self::LONGEST_S).max(least_s)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The design's example: this client usually takes 9 s, so the tool waits about 14.
    #[test]
    fn a_slow_person_is_given_time_and_a_quick_one_is_not_rushed() {
        let mut habits = Habits::default();
        for _ in 0..5 {
            habits.add(Response::Answer, 9.0);
        }
        assert!((habits.wait_s(Response::Answer, 12.0) - 13.5).abs() < 1e-9);
        for _ in 0..20 {
            habits.add(Response::Answer, 1.0);
        }
        assert_eq!(habits.wait_s(Response::Answer, 12.0), 12.0);
        assert_eq!(habits.wait_s(Response::Done, 12.0), 12.0, "a quick person, whatever is waited for");
    }

    #[test]
    fn one_long_silence_among_ten_does_not_count_and_two_do() {
        let mut habits = Habits::default();
        for taken_s in [4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 50.0] {
            habits.add(Response::Done, taken_s);
        }
        assert_eq!(habits.usual_s(Response::Done), Some(4.0));
        habits.add(Response::Done, 50.0);
        assert_eq!(habits.usual_s(Response::Done), Some(50.0));
        assert_eq!(habits.wait_s(Response::Done, 12.0), Habits::LONGEST_S);
        habits.add(Response::Done, f64::NAN);
    }
}
