//! Where a session stands. Each state owns its data, and only one is ever there.

use super::asking::Asking;
use super::emergency::Emergency;
use super::halted::Halted;
use super::looking_back::LookingBack;
use super::naming::NamingRun;
use super::next::{NextAction, Speaking, Turn};
use super::paced::PacedRun;
use super::patience::Patience;
use super::posture::PostureRun;
use super::practice::Practice;
use super::question::QuestionRun;
use super::rapid::RapidRun;
use super::reading::ReadingRun;
use super::repeated::RepeatedRun;
use super::resting::Resting;
use super::talking::TalkRun;
use super::voiced::VoicedRun;

/// Most answers have come by then, s (trade notes 5.5: 2 to 3 s to begin an answer).
const ANSWER_COMES_S: f64 = 4.0;

/// Where the session stands.
#[derive(Debug, Clone)]
pub(super) enum State {
    /// Nothing has happened yet.
    Unbegun,
    Speaking(Speaking),
    Asking(Asking),
    Resting(Resting),
    Halted(Halted),
    Emergency(Emergency),
    LookingBack(LookingBack),
    Voiced(VoicedRun),
    Posture(PostureRun),
    Paced(PacedRun),
    Repeated(RepeatedRun),
    Reading(ReadingRun),
    Talking(TalkRun),
    Rapid(RapidRun),
    Question(QuestionRun),
    Naming(NamingRun),
    Ended,
}

/// Where a move leads.
#[derive(Debug)]
pub(super) enum Move {
    /// The state goes on.
    Stay,
    /// This is the state from now on.
    Become(State),
    /// This is to be done first.
    Go(NextAction),
}

impl From<Turn> for Move {
    fn from(turn: Turn) -> Self {
        match turn {
            Turn::Stay => Self::Stay,
            Turn::Speak(speaking) => speaking.into(),
            Turn::Go(next) => Self::Go(next),
        }
    }
}

impl From<Speaking> for Move {
    fn from(speaking: Speaking) -> Self {
        Self::Become(State::Speaking(speaking))
    }
}

impl From<Asking> for Move {
    fn from(asking: Asking) -> Self {
        Self::Become(State::Asking(asking))
    }
}

impl From<Resting> for Move {
    fn from(resting: Resting) -> Self {
        Self::Become(State::Resting(resting))
    }
}

impl From<Halted> for Move {
    fn from(halted: Halted) -> Self {
        Self::Become(State::Halted(halted))
    }
}

impl From<Emergency> for Move {
    fn from(emergency: Emergency) -> Self {
        Self::Become(State::Emergency(emergency))
    }
}

impl From<LookingBack> for Move {
    fn from(run: LookingBack) -> Self {
        Self::Become(State::LookingBack(run))
    }
}

impl State {
    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        match self {
            Self::Unbegun | Self::Ended => Turn::Stay,
            Self::Speaking(speaking) => speaking.tick(practice.now_s),
            Self::Asking(asking) => asking.tick(practice),
            Self::Resting(resting) => resting.tick(practice),
            Self::Halted(halted) => halted.tick(practice),
            Self::Emergency(emergency) => emergency.tick(practice),
            Self::LookingBack(run) => run.tick(practice),
            Self::Voiced(run) => run.tick(practice),
            Self::Posture(run) => run.tick(practice),
            Self::Paced(run) => run.tick(practice),
            Self::Repeated(run) => run.tick(practice),
            Self::Reading(run) => run.tick(practice),
            Self::Talking(run) => run.tick(practice),
            Self::Rapid(run) => run.tick(practice),
            Self::Question(run) => run.tick(practice),
            Self::Naming(run) => run.tick(practice),
        }
    }

    /// The patience of this state, where it has one.
    pub fn patience(&mut self) -> Option<&mut Patience> {
        match self {
            Self::Asking(asking) => Some(&mut asking.patience),
            Self::Halted(halted) => Some(&mut halted.patience),
            Self::LookingBack(run) => Some(&mut run.patience),
            Self::Voiced(run) => Some(&mut run.patience),
            Self::Repeated(run) => Some(&mut run.patience),
            Self::Reading(run) => Some(&mut run.patience),
            Self::Talking(run) => Some(&mut run.patience),
            Self::Rapid(run) => Some(&mut run.patience),
            _ => None,
        }
    }

    /// A repetition is under way.
    pub fn is_in_repetition(&self) -> bool {
        !matches!(
            self,
            Self::Unbegun
                | Self::Speaking(_)
                | Self::Asking(_)
                | Self::Resting(_)
                | Self::Halted(_)
                | Self::Emergency(_)
                | Self::LookingBack(_)
                | Self::Ended
        )
    }

    /// Writes down what a command cuts off, so that nothing measured is lost; the repetition is then to be made again.
    pub fn cut_repetition(&self, practice: &mut Practice) {
        match self {
            Self::Voiced(run) => run.cut(practice),
            Self::Posture(run) => run.cut(practice),
            Self::Paced(run) => run.cut(practice),
            Self::Naming(run) => run.cut(practice),
            Self::Repeated(run) => run.cut(practice),
            Self::Talking(run) => run.cut(practice),
            _ => {}
        }
        if self.is_in_repetition() {
            practice.resume_target = NextAction::BeginRepetition;
        }
    }

    /// It is the client's turn to speak or to do something.
    pub fn waits_for_client(&mut self) -> bool {
        self.patience().is_some() || matches!(self, Self::Resting(_) | Self::Question(_) | Self::Naming(_))
    }

    /// Nobody is in the middle of something: a trouble may be told.
    pub fn is_calm(&self, now_s: f64) -> bool {
        match self {
            // Whoever is just about to answer is not talked over.
            Self::Asking(asking) => asking.patience.quiet_for_s(now_s) >= ANSWER_COMES_S,
            Self::Repeated(run) => run.patience.quiet_for_s(now_s) >= ANSWER_COMES_S,
            Self::Resting(_) => true,
            Self::Halted(halted) => halted.told,
            _ => false,
        }
    }
}
