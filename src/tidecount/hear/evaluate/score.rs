//! What came of a set of recordings: hits, substitutions, misses, false actions per hour, delays, and how sure these figures are.

/// Whether a session acts upon what was heard or asks back first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Taken {
    Acted,
    Asked,
}

/// One thing heard in a recording.
#[derive(Debug, Clone, PartialEq)]
pub struct Taking {
    /// Spoken form of the phrase.
    pub phrase: String,
    pub taken: Taken,
    /// From the end of the word to the decision, s.
    pub delay_s: f64,
}

/// Counts over recordings.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Tally {
    /// Recordings in which a phrase of the grammar is said.
    pub said: u64,
    /// Of these, acted upon.
    pub hits: u64,
    /// Of these, heard right but asked back first.
    pub asked: u64,
    /// Of these, another phrase was acted upon (whether or not the right one was too).
    pub substituted: u64,
    /// From the end of the word to the action, of the hits, s.
    pub delays_s: Vec<f64>,
    /// Recordings in which nothing is said that is in the grammar.
    pub other: u64,
    /// Their length, s.
    pub other_s: f64,
    /// Actions in them.
    pub false_actions: u64,
    /// Questions asked back in them.
    pub false_questions: u64,
    /// Recordings with a false action.
    pub other_taken: u64,
}

/// How one recording came out, for the list of details.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    Hit,
    Asked,
    Substituted,
    Missed,
    Quiet,
    FalseQuestion,
    FalseAction,
}

impl Outcome {
    /// Name in lines of output.
    pub fn name(self) -> &'static str {
        match self {
            Self::Hit => "hit",
            Self::Asked => "asked",
            Self::Substituted => "substituted",
            Self::Missed => "missed",
            Self::Quiet => "quiet",
            Self::FalseQuestion => "false question",
            Self::FalseAction => "false action",
        }
    }
}

impl Tally {
    /// Counts one recording: `said` is the phrase of the grammar said in it, if any; `length_s` its length.
    pub fn count(&mut self, said: Option<&str>, heard: &[Taking], length_s: f64) -> Outcome {
        let acted = |taking: &&Taking| taking.taken == Taken::Acted;
        let Some(said) = said else {
            let (actions, questions) = (heard.iter().filter(acted).count(), heard.iter().filter(|t| !acted(t)).count());
            self.other += 1;
            self.other_s += length_s;
            self.false_actions += actions as u64;
            self.false_questions += questions as u64;
            self.other_taken += u64::from(actions > 0);
            return match (actions, questions) {
                (0, 0) => Outcome::Quiet,
                (0, _) => Outcome::FalseQuestion,
                _ => Outcome::FalseAction,
            };
        };
        let right = |taking: &&Taking| taking.phrase == said;
        let wrong = heard.iter().any(|t| t.taken == Taken::Acted && t.phrase != said);
        self.said += 1;
        self.substituted += u64::from(wrong);
        if let Some(hit) = heard.iter().filter(right).find(acted) {
            self.hits += 1;
            self.delays_s.push(hit.delay_s);
            return Outcome::Hit;
        }
        if heard.iter().any(|t| right(&t)) {
            self.asked += 1;
            return Outcome::Asked;
        }
        if wrong { Outcome::Substituted } else { Outcome::Missed }
    }

    /// Adds the counts of another set.
    pub fn add(&mut self, other: &Self) {
        self.said += other.said;
        self.hits += other.hits;
        self.asked += other.asked;
        self.substituted += other.substituted;
        self.delays_s.extend(&other.delays_s);
        self.other += other.other;
        self.other_s += other.other_s;
        self.false_actions += other.false_actions;
        self.false_questions += other.false_questions;
        self.other_taken += other.other_taken;
    }

    /// Neither acted upon nor asked about.
    pub fn missed(&self) -> u64 {
        self.said - self.hits - self.asked
    }

    /// The delay that `share` (0 to 1) of the hits do not pass, s.
    pub fn delay_s(&self, share: f64) -> Option<f64> {
        let mut sorted = self.delays_s.clone();
        sorted.sort_by(f64::total_cmp);
        let last = sorted.len().checked_sub(1)?;
        sorted.get((share * last as f64).round() as usize).copied()
    }
}

/// 95 % interval of a share, after Wilson (1927), without correction for continuity.
pub fn wilson(hits: u64, of: u64) -> Option<(f64, f64)> {
    const Z: f64 = 1.959_964;
    if of == 0 {
        return None;
    }
    let (n, p) = (of as f64, hits as f64 / of as f64);
    let middle = p + Z * Z / (2.0 * n);
    let spread = Z * (p * (1.0 - p) / n + Z * Z / (4.0 * n * n)).sqrt();
    let whole = 1.0 + Z * Z / n;
    Some((((middle - spread) / whole).max(0.0), ((middle + spread) / whole).min(1.0)))
}

/// 95 % interval of the expected number of events where `seen` were seen, after Garwood (1936): exact for events that come independently.
pub fn poisson(seen: u64) -> (f64, f64) {
    // The chance of at most `n` events where `mean` are expected; terms by logarithms, so that large counts do not overflow.
    let at_most = |n: u64, mean: f64| -> f64 {
        let mut log_term = -mean;
        let mut sum = log_term.exp();
        for k in 1..=n {
            log_term += mean.ln() - (k as f64).ln();
            sum += log_term.exp();
        }
        sum
    };
    let solve = |falls_under: &dyn Fn(f64) -> bool| {
        let (mut low, mut high) = (1e-9, seen as f64 + 10.0 * (seen as f64).sqrt() + 20.0);
        for _ in 0..100 {
            let middle = (low + high) / 2.0;
            if falls_under(middle) { high = middle } else { low = middle }
        }
        (low + high) / 2.0
    };
    let low = match seen.checked_sub(1) {
        Some(less) => solve(&|mean| at_most(less, mean) < 0.975),
        None => 0.0,
    };
    (low, solve(&|mean| at_most(seen, mean) < 0.025))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3 (score). From memory.
    #[test]
    fn shares_have_the_published_intervals() {
        for (hits, of, low, high) in [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611), (1, 29, 0.0061, 0.1718)] {
            let (l, h) = wilson(hits, of).unwrap();
            assert!((l - low).abs() < 5e-5 && (h - high).abs() < 5e-5, "{hits}/{of}: {l} {h}");
        }
        assert_eq!(wilson(0, 0), None);
    }

    /// The usual table of exact Poisson limits (as in Pearson and Hartley, Biometrika Tables, table 40). From memory.
    #[test]
    fn counts_have_the_published_intervals() {
        for (seen, low, high) in [(0, 0.0, 3.689), (1, 0.0253, 5.572), (5, 1.623, 11.668), (10, 4.795, 18.390)] {
            let (l, h) = poisson(seen);
            assert!((l - low).abs() < 6e-4 && (h - high).abs() < 6e-4, "{seen}: {l} {h}");
        }
        assert!(poisson(2_000).0 > 1_900.0 && poisson(2_000).1 < 2_100.0);
    }

    fn taking(phrase: &str, taken: Taken, delay_s: f64) -> Taking {
        Taking { phrase: phrase.to_owned(), taken, delay_s }
    }

    #[test]
    fn recordings_with_a_command_are_hit_asked_about_substituted_or_missed() {
        let mut tally = Tally::default();
        let (stop, skip) = (Some("stop"), Some("skip"));
        assert_eq!(tally.count(stop, &[taking("stop", Taken::Acted, 0.2)], 1.0), Outcome::Hit);
        assert_eq!(tally.count(skip, &[taking("skip", Taken::Asked, 0.7)], 1.0), Outcome::Asked);
        assert_eq!(tally.count(stop, &[taking("no", Taken::Acted, 0.3)], 1.0), Outcome::Substituted);
        assert_eq!(tally.count(stop, &[taking("skip", Taken::Asked, 0.3)], 1.0), Outcome::Missed);
        assert_eq!(tally.count(stop, &[taking("no", Taken::Acted, 0.1), taking("stop", Taken::Acted, 0.4)], 1.0), Outcome::Hit);
        assert_eq!((tally.said, tally.hits, tally.asked, tally.substituted, tally.missed()), (5, 2, 1, 2, 2));
        assert_eq!((tally.delay_s(0.0), tally.delay_s(1.0)), (Some(0.2), Some(0.4)));
        assert_eq!((tally.other, tally.other_s, Tally::default().delay_s(0.5)), (0, 0.0, None));
    }

    #[test]
    fn recordings_without_one_give_false_actions_by_the_hour() {
        let mut tally = Tally::default();
        assert_eq!(tally.count(None, &[], 1_800.0), Outcome::Quiet);
        assert_eq!(tally.count(None, &[taking("skip", Taken::Asked, 0.0)], 900.0), Outcome::FalseQuestion);
        let both = [taking("no", Taken::Acted, 0.0), taking("no", Taken::Acted, 0.0), taking("skip", Taken::Asked, 0.0)];
        assert_eq!(tally.count(None, &both, 900.0), Outcome::FalseAction);
        let mut sum = Tally::default();
        sum.add(&tally);
        assert_eq!((sum.other, sum.other_s, sum.false_actions, sum.false_questions, sum.other_taken), (3, 3_600.0, 2, 2, 1));
    }
}
