//! Small wishes that leave what runs alone: louder, slower, how long, what for.

use super::outlet::tenth;
use super::practice::Practice;
use super::state::{Move, State};
use model::{Arg, Effect};
use routine::Work;

/// How much "louder" and "softer" change the voice, dB.
const VOLUME_STEP_DB: f64 = 4.0;
/// How much "slower" and "faster" change the beat: design's example goes from 1.0 s to 1.2 s.
const PACE_STEP: f64 = 1.2;
/// The beat stays within these factors of what the routine says, and within what a breath of its counts may take (`limits`).
const PACE_RANGE: (f64, f64) = (0.6, 2.0);
/// A smaller change of the beat, as a factor, cannot be noticed.
const LEAST_CHANGE: f64 = 0.01;

pub(super) fn louder(practice: &mut Practice, state: &State) {
    change_volume(practice, state, VOLUME_STEP_DB);
}

pub(super) fn softer(practice: &mut Practice, state: &State) {
    change_volume(practice, state, -VOLUME_STEP_DB);
}

fn change_volume(practice: &mut Practice, state: &State, change_db: f64) {
    practice.effect(Effect::Volume { change_db });
    acknowledge(practice, state, "volume-changed");
}

pub(super) fn slower(practice: &mut Practice, state: &State) {
    change_pace(practice, state, PACE_STEP);
}

pub(super) fn faster(practice: &mut Practice, state: &State) {
    change_pace(practice, state, 1.0 / PACE_STEP);
}

fn change_pace(practice: &mut Practice, state: &State, factor: f64) {
    // A posture's seconds are real ones.
    if matches!(state, State::Posture(_)) {
        acknowledge(practice, state, "pace-stays");
        return;
    }
    if !(practice.in_step && matches!(practice.step().map(|step| &step.work), Some(Work::Paced { .. }))) {
        practice.effect(Effect::SpeechRate { factor });
        acknowledge(practice, state, "speech-rate-changed");
        return;
    }
    let Some(step) = practice.step() else { return };
    let (before, (least, most)) = (practice.pace_of(step), practice.pace_range(step));
    let pace = (before * factor).clamp(PACE_RANGE.0, PACE_RANGE.1).max(least).min(most);
    practice.pace = pace;
    if (pace - before).abs() < LEAST_CHANGE {
        // The counts go on as they were, so that must be said, also while they run.
        let key = if factor > 1.0 { "pace-slowest" } else { "pace-fastest" };
        if !matches!(state, State::Speaking(_)) {
            practice.say(key, &[]);
        }
        return;
    }
    // The counts themselves are the answer: the next round comes on the new beat.
    acknowledge(practice, state, "pace-changed");
}

/// Answers at once where the body is not busy with our counts.
fn acknowledge(practice: &mut Practice, state: &State, key: &str) {
    if !matches!(state, State::Posture(_) | State::Paced(_) | State::Speaking(_)) {
        practice.say(key, &[]);
    }
}

/// "I'm all right", after something that was not: it says how to go on.
pub(super) fn all_right(practice: &mut Practice, state: &State) {
    if matches!(state, State::Halted(_)) {
        practice.say("all-right", &[]);
    }
}

pub(super) fn how_long(practice: &mut Practice, state: &State) {
    match state {
        State::Posture(run) => {
            let left_s = (run.ends_s() - practice.now_s).max(0.0).round();
            practice.say("seconds-to-go", &[("seconds", Arg::Number(left_s))]);
        }
        State::Paced(_) => {
            let rounds = practice.step().map_or(0, |step| step.repetitions.saturating_sub(practice.here.repetition));
            practice.say("rounds-to-go", &[("rounds", Arg::Number(f64::from(rounds)))]);
        }
        _ => match practice.trials.last_s() {
            Some(held_s) if practice.in_step => {
                practice.say("held", &[("seconds", Arg::Number(tenth(held_s)))]);
            }
            _ => {
                let left = minutes_left(practice);
                practice.say("minutes-left", &[("minutes", Arg::Number(left))]);
            }
        },
    }
}

fn minutes_left(practice: &Practice) -> f64 {
    let left_s: f64 = practice
        .routine
        .steps
        .iter()
        .enumerate()
        .skip(practice.step_index())
        .filter(|(index, _)| !practice.left_out.contains(index))
        .map(|(_, step)| step.planned_duration_s())
        .sum();
    (left_s / 60.0).round().max(1.0)
}

/// What the present exercise is for; then it goes on where it was.
pub(super) fn tell_why(practice: &mut Practice, state: &State) -> Move {
    if !practice.in_step {
        practice.say("why-practice", &[]);
        return Move::Stay;
    }
    let purpose = practice.exercise_key("purpose");
    if let State::Speaking(speaking) = state {
        practice.hush();
        let last = practice.say(&purpose, &[]);
        return practice.after(last, 0.4, speaking.then).into();
    }
    practice.say(&purpose, &[]);
    Move::Stay
}
