//! Noticing that a person tires: holds or level that fall over the last trials beyond this person's usual scatter.

use super::past::PastExercise;
use model::Fall;

/// One trial of this step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Trial {
    pub duration_s: f64,
    /// NaN where it could not be measured or says nothing.
    pub level_db: f64,
}

/// A fall that was noticed; `of` says the unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Noticed {
    pub of: Fall,
    /// The mean of the trials before the last two.
    pub reference: f64,
    pub latest: f64,
    /// A fall up to here is usual.
    pub usual: f64,
}

/// Two standard deviations take in 19 of 20 trials where the scatter is normal.
const USUAL_SDS: f64 = 2.0;
/// Where little is known of a person: a fall of a fifth in hold time over the set (design inference from the trade's stop
/// rules, no source).
const SHARE_UNKNOWN: f64 = 0.2;
/// However steady somebody is, a smaller fall than this share is no tiring; no source.
const SHARE_LEAST: f64 = 0.1;
/// The same for the level: people with Parkinson's speak 2 to 4 dB softer than others (Fox & Ramig 1997), so 4 dB is much
/// and 2 dB the least that counts; our own reading.
const LEVEL_UNKNOWN_DB: f64 = 4.0;
const LEVEL_LEAST_DB: f64 = 2.0;

/// The last trial lies below the usual scatter and the one before it was on its way there.
fn fallen(of: Fall, values: &[f64], usual: impl Fn(f64) -> f64) -> Option<Noticed> {
    let [before @ .., previous, latest] = values else { return None };
    if before.is_empty() || values.iter().any(|value| !value.is_finite()) {
        return None;
    }
    let reference = before.iter().sum::<f64>() / before.len() as f64;
    let usual = usual(reference);
    let falling = latest < previous && *previous < reference - usual / 2.0 && *latest < reference - usual;
    falling.then_some(Noticed { of, reference, latest: *latest, usual })
}

fn notice(trials: &[Trial], past: Option<&PastExercise>) -> Option<Noticed> {
    let known = past.filter(|past| past.recent_trials >= PastExercise::ENOUGH_TRIALS);
    let durations: Vec<f64> = trials.iter().map(|trial| trial.duration_s).collect();
    let levels: Vec<f64> = trials.iter().map(|trial| trial.level_db).collect();
    let usual_s = |reference: f64| match known.and_then(|past| past.sd_s) {
        Some(sd_s) => (USUAL_SDS * sd_s).max(SHARE_LEAST * reference),
        None => SHARE_UNKNOWN * reference,
    };
    let usual_db = |_: f64| match known.and_then(|past| past.level_sd_db) {
        Some(sd_db) => (USUAL_SDS * sd_db).max(LEVEL_LEAST_DB),
        None => LEVEL_UNKNOWN_DB,
    };
    fallen(Fall::Duration, &durations, usual_s).or_else(|| fallen(Fall::Level, &levels, usual_db))
}

/// The voiced trials of one step.
#[derive(Debug, Clone, Default)]
pub(super) struct Trials {
    list: Vec<Trial>,
    /// Trials of the practice since a result was last told.
    pub untold: u32,
    /// Holds or level fall: a rest is to be offered behind this trial.
    pub rest_due: bool,
    rest_offered: bool,
}

impl Trials {
    /// A step begins.
    pub fn clear(&mut self) {
        *self = Self { untold: self.untold, ..Self::default() };
    }

    /// Takes a trial into account. A fall is noticed once a step; a rest is then due behind the trial.
    pub fn add(&mut self, trial: Trial, past: Option<&PastExercise>) -> Option<Noticed> {
        self.list.push(trial);
        if self.rest_offered {
            return None;
        }
        let noticed = notice(&self.list, past)?;
        self.rest_offered = true;
        self.rest_due = true;
        Some(noticed)
    }

    pub fn len(&self) -> usize {
        self.list.len()
    }

    /// The duration of the last trial, s.
    pub fn last_s(&self) -> Option<f64> {
        self.list.last().map(|trial| trial.duration_s)
    }

    /// The longest of the step, s; NaN without trials.
    pub fn best_s(&self) -> f64 {
        self.list.iter().map(|trial| trial.duration_s).fold(f64::NAN, f64::max)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn trials(durations_s: &[f64]) -> Vec<Trial> {
        durations_s.iter().map(|&duration_s| Trial { duration_s, level_db: -25.0 }).collect()
    }

    #[test]
    fn a_steady_fall_is_noticed_and_scatter_is_not() {
        let found = notice(&trials(&[12.0, 10.6, 9.3]), None).expect("12 % a trial");
        assert_eq!((found.of, found.reference, found.latest), (Fall::Duration, 12.0, 9.3));
        assert_eq!(notice(&trials(&[12.0, 9.0, 12.5, 9.2]), None), None, "one short trial is no tiring");
        assert_eq!(notice(&trials(&[12.0, 9.0]), None), None, "two trials tell nothing");
        assert_eq!(notice(&trials(&[9.0, 10.0, 12.0]), None), None);
    }

    #[test]
    fn what_is_usual_depends_on_the_person() {
        let past = |sd_s| PastExercise { recent_trials: 10, mean_s: Some(12.0), sd_s: Some(sd_s), ..PastExercise::default() };
        let fall = trials(&[12.0, 10.8, 9.3]);
        assert!(notice(&fall, Some(&past(1.0))).is_some());
        assert_eq!(notice(&fall, Some(&past(2.0))), None, "2.7 s are inside two standard deviations of this person");
        assert_eq!(notice(&trials(&[12.0, 11.7, 11.4]), Some(&past(0.1))), None, "half a second is nothing");
    }

    #[test]
    fn the_level_falls_too() {
        let of = |levels_db: &[f64]| -> Vec<Trial> { levels_db.iter().map(|&level_db| Trial { duration_s: 10.0, level_db }).collect() };
        assert_eq!(notice(&of(&[-24.0, -26.5, -28.5]), None).map(|found| found.of), Some(Fall::Level));
        assert_eq!(notice(&of(&[-24.0, -25.0, -26.0]), None), None);
        assert_eq!(notice(&of(&[f64::NAN, -26.5, -28.5]), None), None);
    }
}
