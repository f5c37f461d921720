//! What is asked at the end of a practice: which questions, and how far they have got. Plain data; `looking_back` asks.

use super::context::SessionContext;
use model::{RatedOver, Rating, SwallowSign};
use routine::{Routine, has_swallow_work};

/// One question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Question {
    /// 0 to 10.
    Rating(Rating, RatedOver),
    /// A moment of the last week when the voice did what was wanted, in the client's own words.
    Moment,
    /// Why planned days of the last week were missed.
    Missed,
    /// Was there this warning sign in the last week?
    Sign(SwallowSign),
}

/// The questions of a practice that is over.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Questions {
    /// How the practice ended: nothing that is answered changes that.
    pub reason: &'static str,
    all: Vec<Question>,
    at: usize,
    /// They have been announced.
    pub announced: bool,
    /// So many were met with silence, one after the other.
    pub unanswered: u32,
}

impl Questions {
    /// Those of a routine; none where nothing is asked. Once a week come those about the week, but not to somebody who broke off.
    pub fn of(routine: &Routine, context: &SessionContext, reason: &'static str) -> Option<Self> {
        let ask = &routine.looking_back;
        let mut all: Vec<Question> = ask.ratings.iter().map(|&what| Question::Rating(what, RatedOver::Practice)).collect();
        if let Some(week) = context.week_to_ask.filter(|_| ask.weekly && reason == "completed") {
            all.push(Question::Rating(Rating::Voice, RatedOver::Week));
            // Nobody is asked to tell what cannot be kept.
            if context.keeps_sound || context.writes_down {
                all.push(Question::Moment);
            }
            if week.days_missed > 0 {
                all.push(Question::Missed);
            }
            if has_swallow_work(routine) {
                all.extend(SwallowSign::ALL.map(Question::Sign));
            }
        }
        (!all.is_empty()).then_some(Self { reason, all, at: 0, announced: false, unanswered: 0 })
    }

    /// How many they are.
    pub fn len(&self) -> usize {
        self.all.len()
    }

    /// The one that stands open; none behind the last.
    pub fn now(&self) -> Option<Question> {
        self.all.get(self.at).cloned()
    }

    pub fn next(&mut self) {
        self.at += 1;
    }

    /// To the one before; the first stays.
    pub fn back(&mut self) {
        self.at = self.at.saturating_sub(1);
    }
}
