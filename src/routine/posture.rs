//! Lying, sitting, standing: in which posture a step is done, and what it takes to get from one to the next.

use super::catalogue::CatalogueEntry;
use super::fault::{FaultKind, Finder, suggestion};
use super::file::StepFile;
use super::placed::Posture;
use super::safe::getting_up;
use super::shape::printable;

/// A part of getting up, in its order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rise {
    /// From the back onto the side.
    Side,
    /// From the side to sitting.
    Sit,
    /// From sitting to standing.
    Stand,
}

/// The parts of getting from one posture to another that take their time, each with its length, s. Getting down takes none: whoever
/// lies down says when they are ready.
#[must_use]
pub fn rise(from: Option<Posture>, to: Option<Posture>) -> Vec<(Rise, f64)> {
    let Some(lengths) = getting_up() else { return Vec::new() };
    match (from, to) {
        (Some(Posture::Lying), Some(Posture::Sitting)) => vec![(Rise::Side, lengths.side_s), (Rise::Sit, lengths.sit_s)],
        (Some(Posture::Lying), Some(Posture::Standing)) => {
            vec![(Rise::Side, lengths.side_s), (Rise::Sit, lengths.sit_before_standing_s), (Rise::Stand, lengths.stand_s)]
        }
        (Some(Posture::Sitting), Some(Posture::Standing)) => vec![(Rise::Stand, lengths.stand_s)],
        _ => Vec::new(),
    }
}

/// How long getting up takes, s.
pub(super) fn rise_s(from: Option<Posture>, to: Option<Posture>) -> f64 {
    rise(from, to).iter().map(|(_, length_s)| length_s).sum()
}

/// The posture of a step: the one that was typed, else the first that the exercise allows; none where any will do.
pub(super) fn of_step(step: &StepFile, entry: &CatalogueEntry, faults: &mut Finder<'_>) -> Option<Posture> {
    let usual = entry.postures.first().copied();
    let Some(typed) = &step.posture else { return usual };
    let allowed = || entry.postures.iter().map(|posture| posture.name());
    if entry.postures.len() < 2 {
        let only = usual.map_or("in any posture".to_owned(), |posture| posture.name().to_owned());
        faults.add(
            FaultKind::NotForThisExercise,
            typed.span.clone(),
            format!("`posture` cannot be chosen for `{}`", entry.id),
            format!("Take it out; it is done {only}."),
        );
        return usual;
    }
    let known = Posture::ALL.into_iter().find(|posture| posture.name() == typed.value && entry.postures.contains(posture));
    if known.is_none() {
        let what = format!("`{}` is not done \"{}\"", entry.id, printable(&typed.value));
        faults.add(FaultKind::UnknownName, typed.span.clone(), what, suggestion(&typed.value, allowed()));
    }
    known.or(usual)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Hearing, catalogue, check_text};

    #[test]
    fn getting_up_goes_by_the_side_and_waits_longer_before_standing() {
        use Posture::*;
        let parts = |from, to| rise(from, Some(to)).into_iter().map(|(part, _)| part).collect::<Vec<_>>();
        assert_eq!(parts(Some(Lying), Sitting), [Rise::Side, Rise::Sit]);
        assert_eq!(parts(Some(Lying), Standing), [Rise::Side, Rise::Sit, Rise::Stand]);
        assert_eq!(parts(Some(Sitting), Standing), [Rise::Stand]);
        assert!(parts(Some(Standing), Lying).is_empty() && parts(None, Sitting).is_empty() && parts(Some(Lying), Lying).is_empty());
        assert!(rise_s(Some(Lying), Some(Standing)) > rise_s(Some(Lying), Some(Sitting)));
        assert!(rise(None, None).is_empty());
    }

    #[test]
    fn what_is_done_lying_says_so_and_neck_and_shoulders_may_be_done_standing() {
        for entry in catalogue() {
            assert_eq!(
                entry.postures.contains(&Posture::Lying),
                entry.cautions.iter().any(|key| key == "lie-flat") || entry.id.starts_with("head-lift")
            );
            let either = ["neck-turns", "neck-tilts", "shoulder-rolls"].contains(&entry.id.as_str());
            assert!(!either || entry.postures == [Posture::Sitting, Posture::Standing], "{}", entry.id);
        }
        let posture = |step: &str| {
            check_text("x", &format!("title = \"x\"\n[[step]]\n{step}"), Hearing::default()).map(|read| read.routine.steps[0].clone())
        };
        assert_eq!(posture("exercise = \"shoulder-rolls\"").expect("sound").posture, Some(Posture::Sitting));
        let standing = posture("exercise = \"shoulder-rolls\"\nposture = \"standing\"").expect("sound");
        assert_eq!(standing.posture, Some(Posture::Standing));
        assert!(
            standing.exercise.cautions.contains(&"stand-safely".to_owned())
                && !standing.exercise.cautions.contains(&"sit-upright".to_owned())
        );
        assert_eq!(posture("exercise = \"word-questions\"\npacks = [\"opposites\"]\nrepetitions = 2").expect("sound").posture, None);
        for (step, part) in [
            ("exercise = \"shoulder-rolls\"\nposture = \"lying\"", "is not done \"lying\""),
            ("exercise = \"shoulder-rolls\"\nposture = \"standin\"", "Did you mean `standing`?"),
            ("exercise = \"long-ah\"\nposture = \"standing\"", "cannot be chosen"),
        ] {
            let found = posture(step).expect_err("a fault");
            assert!(found.to_string().contains(part) && found.list[0].line == 4, "{found}");
        }
    }
}
