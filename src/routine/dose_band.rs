//! How much of an exercise an agreement covers: a coarse band, so that a dose may grow a little without being asked about.

use super::prescribed::Step;
use super::safe::safe_dose;

/// Bands up to what needs no clinician's word; one more lies beyond. Thirds: common practice, no source.
const BANDS: f64 = 3.0;

/// The band of what this step asks for in one practice, all sets together: thirds of what the catalogue allows without a clinician's
/// word (`safe-doses.toml`), by times, by seconds and by the length of one hold, whichever is the highest; 1 to 4, and 4 is more
/// than that. 1 where the catalogue has no limit.
#[must_use]
pub fn dose_band(step: &Step) -> u32 {
    let Some(safe) = safe_dose(&step.exercise.id) else { return 1 };
    let one = step.one();
    let rounds = f64::from(step.sets.saturating_mul(step.repetitions));
    let shares = [(&safe.times, f64::from(one.times) * rounds), (&safe.seconds, one.seconds * rounds), (&safe.hold_s, one.seconds)];
    let share = shares
        .into_iter()
        .filter_map(|(bound, amount)| Some(amount / bound.as_ref()?.in_force(false)).filter(|share| share.is_finite()))
        .fold(0.0, f64::max);
    // A hair over a border is rounding.
    ((share * BANDS - 1e-9).ceil().clamp(1.0, BANDS + 1.0)) as u32
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::check_text;

    fn band(repetitions: u32) -> u32 {
        let text = "title = \"x\"\n[[step]]\nexercise = \"effortful-swallow\"\ncautions_acknowledged = true\n";
        let mut read = check_text("x.toml", text, crate::Hearing::default()).expect("in order");
        let step = &mut read.routine.steps[0];
        (step.sets, step.repetitions) = (1, repetitions);
        dose_band(step)
    }

    /// By hand from the limit in force: a third of it and less is band 1, all of it band 3.
    #[test]
    fn thirds_of_what_needs_no_word() {
        let most = safe_dose("effortful-swallow").and_then(|safe| safe.times.clone()).expect("limited").in_force(false);
        let third = (most / 3.0).floor() as u32;
        assert_eq!((band(third), band(third + 1), band(most as u32)), (1, 2, 3));
        assert_eq!(band(most as u32 + 1), 4);
    }
}
