//! The best of three, with all three.

use super::practised::Practised;
use jiff::civil::Date;
use model::Measure;
use routine::Timing;
use serde::Serialize;

/// The first three complete trials of one voiced exercise in one practice. More trials are not looked at: the best of many is
/// larger than the best of three for no other reason than that there were many.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BestOfThree {
    pub session: i64,
    pub day: Date,
    pub exercise: String,
    pub measure: Measure,
    /// In the order in which they were made, 1 to 3 of them.
    pub trials: Vec<f64>,
    /// The entry of each in the practice's journal.
    pub seqs: Vec<i64>,
    /// The largest.
    pub best: f64,
    /// Which it was, from 1.
    pub best_index: u32,
    /// How many complete trials there were, those after the third among them.
    pub of: u32,
}

/// The best of three of each exercise of each practice, by day and practice.
#[must_use]
pub fn best_of_three(practised: &Practised) -> Vec<BestOfThree> {
    let mut bests: Vec<BestOfThree> = Vec::new();
    for trial in &practised.trials {
        let Some((measure, value)) = measure_of(&trial.exercise).and_then(|measure| Some((measure, trial.counted(measure)?))) else {
            continue;
        };
        let of_this = |best: &&mut BestOfThree| best.session == trial.session && best.exercise == trial.exercise;
        match bests.iter_mut().rev().take_while(|best| best.day == trial.day).find(of_this) {
            Some(best) => best.add(value, trial.seq),
            None => bests.push(BestOfThree {
                session: trial.session,
                day: trial.day,
                exercise: trial.exercise.clone(),
                measure,
                trials: vec![value],
                seqs: vec![trial.seq],
                best: value,
                best_index: 1,
                of: 1,
            }),
        }
    }
    bests
}

impl BestOfThree {
    fn add(&mut self, value: f64, seq: i64) {
        self.of += 1;
        if self.trials.len() < 3 {
            self.trials.push(value);
            self.seqs.push(seq);
            if value > self.best {
                self.best = value;
                self.best_index = self.of;
            }
        }
    }
}

/// What is best of an exercise: the length of a hold, the span of a glide, the rate of syllables; none of the others.
fn measure_of(exercise: &str) -> Option<Measure> {
    let entry = routine::find(exercise)?;
    match entry.timing {
        // The larger step is not the better one.
        Timing::Voiced if entry.climbs.is_some() => None,
        Timing::Voiced if entry.glide => Some(Measure::F0SpanSt),
        Timing::Voiced => Some(Measure::HoldS),
        Timing::Rapid => Some(Measure::SyllableRateHz),
        _ => None,
    }
}
