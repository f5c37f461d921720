//! Before a class begins: who is there. The tool calls one after the other, and the clinician or whoever is called answers.
//!
//! It can be left at any time: "here we go" or the forward key ends it, and whoever was not called by then counts as not asked.

use super::next::{Ask, NextAction};
use super::opening;
use super::outlet::count;
use super::practice::Practice;
use super::state::Move;
use model::{Command, Effect};

/// A breath between two things said, s.
const BREATH_S: f64 = 0.4;

/// Calls the next; behind the last, or where it was left, says how many are there and goes on.
pub(super) fn go_on(practice: &mut Practice) -> Move {
    let all = practice.context.participants.len();
    while practice.roll.present.contains_key(&practice.roll.next) {
        practice.roll.next += 1;
    }
    if practice.roll.over || all == 0 {
        return opening::safety_of_class(practice).into();
    }
    if practice.roll.next < all {
        if !std::mem::replace(&mut practice.roll.announced, true) {
            let last = practice.say("class-roll", &[]);
            return practice.after(last, BREATH_S, NextAction::Ask(Ask::Attendance(practice.roll.next))).into();
        }
        return Move::Go(NextAction::Ask(Ask::Attendance(practice.roll.next)));
    }
    close(practice)
}

/// How many are there, said once.
fn close(practice: &mut Practice) -> Move {
    practice.roll.over = true;
    let present = practice.roll.present.values().filter(|present| **present).count();
    let last = practice.say("class-roll-over", &[("present", count(present))]);
    practice.after(last, BREATH_S, NextAction::RollCall).into()
}

/// What was answered of one; none: passed over.
pub(super) fn marked(practice: &mut Practice, index: usize, present: Option<bool>) -> Move {
    mark(practice, index, present);
    practice.roll.next = index + 1;
    Move::Go(NextAction::RollCall)
}

fn mark(practice: &mut Practice, index: usize, present: Option<bool>) {
    let before = practice.roll.present.get(&index).copied();
    match present {
        Some(present) => practice.roll.present.insert(index, present),
        None => practice.roll.present.remove(&index),
    };
    if before != present
        && let Some(participant) = practice.context.participants.get(index)
    {
        practice.effect(Effect::Attended { participant: participant.called.to_string(), present });
    }
}

/// Commands that mean something else in a roll call; none: they mean what they always do.
pub(super) fn obey(practice: &mut Practice, index: usize, command: Command) -> Option<Move> {
    // Whoever answers before the name is out need not hear the rest.
    if matches!(command, Command::NotSure | Command::Skip | Command::GoBack | Command::Ready | Command::Done | Command::GoOn) {
        practice.hush();
    }
    Some(match command {
        Command::NotSure | Command::Skip => marked(practice, index, None),
        Command::GoBack => {
            let before = index.saturating_sub(1);
            mark(practice, before, None);
            practice.roll.next = before;
            Move::Go(NextAction::Ask(Ask::Attendance(before)))
        }
        Command::Ready | Command::Done | Command::GoOn => close(practice),
        _ => return None,
    })
}

/// "Plum is here": whoever is meant need not have been called.
pub(super) fn answered(practice: &mut Practice, text: &str) -> Move {
    let heard = practice.context.participants.iter().map(|participant| participant.heard.as_ref());
    let meant = heard.enumerate().find_map(|(index, heard)| {
        let heard = heard?;
        (heard.here == text).then_some((index, true)).or_else(|| (heard.not_here == text).then_some((index, false)))
    });
    let Some((index, present)) = meant else { return Move::Stay };
    practice.hush();
    mark(practice, index, Some(present));
    Move::Go(NextAction::RollCall)
}
