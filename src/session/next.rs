//! What comes next: the moves a session can make, the questions it asks, the reasons it stands still.
//!
//! The ways of timing know only these names; what each one means is decided above them, in `flow`.

use model::{Command, LineId};

/// A move of the session, made at once or after the lines under way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum NextAction {
    AskResume,
    Cautions,
    /// The cautions of the next exercise that needs a clinician's agreement; behind the last, the start.
    CautionOfNext,
    AskAgreement(usize),
    /// The cautions of this step's exercise, by index from 0, were heard; a clinician has agreed in writing.
    CautionHeard(usize),
    AskStart,
    /// In a class: calls the next who has not been called; behind the last, what comes after it.
    RollCall,
    BeginStep,
    /// A part of getting up has been said; its time runs.
    Rise,
    BeginSet,
    BeginRepetition,
    /// The cue of a repetition has been said; what it times begins.
    Perform,
    AfterRepetition,
    /// A sip of water between two repetitions.
    OfferSip,
    /// The step is complete.
    EndStep,
    /// Asks this, again where it was asked before.
    Ask(Ask),
    /// The client said yes or no, or (none) nothing at all in spite of all asking.
    Answered(Ask, Option<bool>),
    /// The client does not know whether a clinician has agreed.
    AnsweredNotSure(usize),
    /// The client confirmed a doubtful command.
    Obey(Command),
    Halted(Halt),
    /// The client wants to finish.
    Finish,
    /// Nobody answers any more.
    GiveUp,
    /// The next of the short questions at the end.
    LookBack,
    /// Words to somebody who was not well, after the practice, have been said.
    UnwellAtEnd,
    End(&'static str),
}

/// What it waits to hear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Ask {
    /// "yes" or "no": continue from where the last session broke off?
    Resume,
    /// "yes", "no" or "not sure": has a clinician said that this step's exercise, by index from 0, is right for the client?
    Agreement(usize),
    /// "yes" or "no": may recordings be kept?
    Sound,
    /// "present", "not here" or "next person": is this participant of the class, by index from 0, there?
    Attendance(usize),
    /// "ready": the session may start.
    Start,
    /// "ready": in position for the next set.
    Position,
    /// "ready": the rest without a length is over.
    RestOver,
    /// "ready" or "done": the sip is swallowed.
    Sip,
    /// "yes", "no" or "finish": holds have become shorter or softer; a rest?
    OfferRest,
    /// "yes" or "no": was that this command?
    Confirm(Command),
    /// Nothing needs to be said: the session ends unless "go on" is heard.
    FinishUnlessTakenBack,
}

/// Why it stands still.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Halt {
    Stopped,
    Paused,
    Resting,
    /// A dry mouth wants a moment, and a sip where sips are allowed.
    Dry,
    Helped,
    /// The exercise is over for today.
    Unwell,
}

/// Lines are being said; after the last one and a pause it moves on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Speaking {
    pub last: LineId,
    pub ended_s: Option<f64>,
    pub pause_s: f64,
    pub then: NextAction,
}

impl Speaking {
    pub fn tick(&self, now_s: f64) -> Turn {
        match self.ended_s {
            Some(ended_s) if now_s >= ended_s + self.pause_s => Turn::Go(self.then),
            _ => Turn::Stay,
        }
    }
}

/// What a state makes of an event.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Turn {
    /// It goes on.
    Stay,
    /// It is over; what is being said leads on.
    Speak(Speaking),
    /// It is over; this comes next, at once.
    Go(NextAction),
}

impl From<Speaking> for Turn {
    fn from(speaking: Speaking) -> Self {
        Self::Speak(speaking)
    }
}
