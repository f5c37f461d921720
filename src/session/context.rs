//! What the engine must know besides the routine: who practises, what they have done before, and how this session starts.

use std::collections::{BTreeMap, BTreeSet};

use model::Position;
use routine::{Amount, Participant};

use super::earlier_today::EarlierToday;
use super::habits::Habits;
use super::past::PastResults;

/// What the record says of the week that is asked about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct WeekToAsk {
    /// Planned days of the last seven on which nothing was practised.
    pub days_missed: u32,
}

/// What is understood of what the client says, in the practice's language.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Understood {
    /// Every word that a routine names: commands, and the answers of its word games.
    #[default]
    Words,
    /// Commands, yes and no, and the answers that the program itself asks for; no word of a routine. Word games are led without judging.
    Commands,
    /// Nothing: keys and pages lead.
    Nothing,
}

impl Understood {
    /// The answers of a routine's word games are heard, and can be judged.
    #[must_use]
    pub fn answers(self) -> bool {
        self == Self::Words
    }
}

/// What the engine must know besides the routine.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SessionContext {
    /// No session of this client is on record: the aid notice and all cautions are said.
    pub first_session: bool,
    /// Exercises a clinician has agreed to, by the client's earlier "yes".
    pub agreed: BTreeSet<String>,
    /// Exercises this client has done before: the short instruction will do.
    pub known: BTreeSet<String>,
    /// An interrupted session of this routine can continue from here.
    pub resume_from: Option<Position>,
    /// Steps completed in that session, counted from 1 as in [`Position`].
    pub resume_done: BTreeSet<u32>,
    /// Repetitions completed in that session, by step counted from 1: the dose continues, it does not start over.
    pub resume_counts: BTreeMap<u32, u32>,
    /// Loud holds of that session so far, s.
    pub resume_loud_s: f64,
    /// What was done in that session, cut-off repetitions among it, by exercise.
    pub resume_amounts: BTreeMap<String, Amount>,
    /// Seconds for which that session was led.
    pub resume_led_s: f64,
    /// Since it broke off, s; none where that is not known.
    pub resume_ago_s: Option<f64>,
    /// It was broken off on an earlier day: what it did does not count for this one.
    pub resume_other_day: bool,
    /// What other practices of today have used up.
    pub today: EarlierToday,
    /// The client's own past.
    pub past: PastResults,
    /// How long this person usually takes.
    pub habits: Habits,
    /// Whole weeks since this client's first practice: feedback on results fades with them.
    pub practice_week: u32,
    /// The set-up page asks to keep recordings for so many days, and the client has not answered yet.
    pub sound_days: Option<u32>,
    /// The client agreed to recordings a while ago, and is asked whether that still holds.
    pub sound_again: bool,
    /// The sound of this practice is kept: what is told in it can be heard again.
    pub keeps_sound: bool,
    /// There is a model that writes down what is told.
    pub writes_down: bool,
    /// What is understood of what the client says. Where not every word is, how to stop by hand is said each time.
    pub understood: Understood,
    /// Whom to call in an emergency, digits as they are dialled; none: it says "your emergency number".
    pub emergency_number: Option<String>,
    /// The questions about the week are due; none where they were asked less than a week ago.
    pub week_to_ask: Option<WeekToAsk>,
    /// A clinician leads a class: nobody is measured or hurried, and no voice in the room alone moves it on.
    pub class: bool,
    /// Who belongs to the class; empty: nobody is called, and nothing is shown of anybody.
    pub participants: Vec<Participant>,
    /// Who leaves an exercise out, or does it seated, is said aloud as well as shown.
    pub names_aloud: bool,
}
