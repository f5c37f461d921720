//! Warning signs about swallowing, and why planned days were missed, over some weeks: counted and no more.

use super::practised::Practised;
use super::window::Window;
use jiff::civil::Date;
use model::{MissedReason, SignAnswer, SwallowSign};
use serde::Serialize;

/// A sign to which the client said yes or was not sure.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Sign {
    pub sign: SwallowSign,
    pub yes: u32,
    pub not_sure: u32,
    /// When it was last answered so.
    pub last: Date,
}

/// A reason for missed days.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct MissedFor {
    pub reason: MissedReason,
    /// Planned days, all weeks together.
    pub days: u32,
    pub last: Date,
}

/// Those of a window, the latest first; a sign that was only denied or passed over is none.
pub(super) fn signs(practised: &Practised, window: Window) -> Vec<Sign> {
    let mut signs: Vec<Sign> = Vec::new();
    for told in practised.signs.iter().filter(|told| window.has(told.day) && told.answer.is_warning()) {
        let known = signs.iter().position(|known| known.sign == told.sign);
        let at = known.unwrap_or_else(|| {
            signs.push(Sign { sign: told.sign.clone(), yes: 0, not_sure: 0, last: told.day });
            signs.len() - 1
        });
        if let Some(sign) = signs.get_mut(at) {
            *(if told.answer == SignAnswer::Yes { &mut sign.yes } else { &mut sign.not_sure }) += 1;
            sign.last = sign.last.max(told.day);
        }
    }
    signs.sort_by_key(|sign| std::cmp::Reverse(sign.last));
    signs
}

/// Those of a window, the most days first.
pub(super) fn missed_for(practised: &Practised, window: Window) -> Vec<MissedFor> {
    let mut all: Vec<MissedFor> = Vec::new();
    for told in practised.days_missed.iter().filter(|told| window.has(told.day)) {
        let Some(reason) = &told.reason else { continue };
        match all.iter_mut().find(|known| known.reason == *reason) {
            Some(known) => (known.days, known.last) = (known.days.saturating_add(told.days), known.last.max(told.day)),
            None => all.push(MissedFor { reason: reason.clone(), days: told.days, last: told.day }),
        }
    }
    all.sort_by_key(|missed| std::cmp::Reverse(missed.days));
    all
}

#[cfg(test)]
#[path = "tests/sign.rs"]
mod tests;
