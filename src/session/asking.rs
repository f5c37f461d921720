//! Asking something that needs a word: how it is put, and how kindly it is put again.

use super::listening;
use super::next::{Ask, NextAction, Turn};
use super::patience::{Patience, Silence};
use super::practice::Practice;
use model::{Arg, Command, Line, Response, VoiceTask};

/// Seconds in which an announced end can be taken back.
const TAKE_BACK_S: f64 = 6.0;

/// What is said and shown to ask, what is listened for, what is shown as sayable.
type Wording = (&'static str, Vec<(&'static str, Arg)>, &'static [Command], &'static [Command]);

/// A question that stands open.
#[derive(Debug, Clone)]
pub(super) struct Asking {
    pub ask: Ask,
    pub patience: Patience,
}

fn wording(practice: &Practice, ask: Ask) -> Wording {
    let context = &practice.context;
    match ask {
        Ask::Resume => ("ask-resume", vec![], listening::YES_NO, &[Command::Yes, Command::No]),
        Ask::Agreement(step) => {
            let id = practice.routine.steps.get(step).map(|step| step.exercise.id.as_str()).unwrap_or_default();
            let name = Arg::Message(format!("ex-{id}-name"));
            // What can be answered is said once; it stands on the page each time.
            let asked = Arg::Number(f64::from(practice.agreements_asked));
            ("ask-agreement", vec![("name", name), ("asked", asked)], listening::CONSENT, &[Command::Yes, Command::No, Command::NotSure])
        }
        Ask::Sound => {
            let days = Arg::Number(f64::from(context.sound_days.unwrap_or_default()));
            let key = if context.sound_again { "ask-sound-again" } else { "ask-sound" };
            (key, vec![("days", days)], listening::YES_NO, &[Command::Yes, Command::No])
        }
        Ask::Attendance(index) => {
            let (key, args) = practice.call(index);
            (key, args, listening::CLASS_ROLL_CALL, &[Command::Yes, Command::No, Command::NotSure, Command::Ready])
        }
        Ask::Start => {
            let key = match (context.class, context.first_session) {
                (true, _) => "class-start",
                (false, true) => "ask-ready-first",
                (false, false) => "ask-ready",
            };
            (key, vec![], listening::READY, &[Command::Ready, Command::Stop])
        }
        Ask::Position => {
            let key = if context.class { "class-position" } else { "ask-position" };
            (key, vec![], listening::READY, &[Command::Ready, Command::Skip, Command::Stop])
        }
        Ask::RestOver => {
            let key = if context.class { "class-rest-over" } else { "ask-rest-over" };
            (key, vec![], listening::READY, &[Command::Ready, Command::Stop])
        }
        Ask::Sip => {
            let key = if context.class { "class-sip" } else { "ask-sip" };
            (key, vec![], listening::REPEATED, &[Command::Done, Command::Stop])
        }
        Ask::OfferRest => ("offer-rest", vec![], listening::OFFER, &[Command::Yes, Command::No, Command::Finish]),
        Ask::Confirm(command) => {
            ("ask-confirm", vec![("command", Arg::Message(command.name_key()))], listening::YES_NO, &[Command::Yes, Command::No])
        }
        Ask::FinishUnlessTakenBack => ("finishing", vec![], listening::FINISHING, &[Command::GoOn]),
    }
}

impl Asking {
    /// Asks.
    pub fn new(practice: &mut Practice, ask: Ask) -> Self {
        let (key, args, commands, can_say) = wording(practice, ask);
        let mut figure = String::new();
        if let Ask::Attendance(index) = ask {
            figure = practice.called_so_far(index);
            let names = practice.names_to_hear();
            practice.listen_with(commands, names, VoiceTask::Idle);
        } else {
            practice.listen(commands, VoiceTask::Idle);
        }
        practice.say(key, &args);
        practice.show_prompt_with(Line { key: format!("{key}-shown"), args }, can_say, &figure);
        if !matches!(ask, Ask::Confirm(_) | Ask::FinishUnlessTakenBack | Ask::OfferRest) {
            practice.resume_target = NextAction::Ask(ask);
        }
        Self { ask, patience: Patience::new(practice.now_s) }
    }

    /// What the client is expected to do; none where nothing needs to be said.
    fn response(&self) -> Option<Response> {
        match self.ask {
            Ask::Position | Ask::RestOver => Some(Response::Position),
            Ask::FinishUnlessTakenBack => None,
            Ask::Sip => Some(Response::Done),
            _ => Some(Response::Answer),
        }
    }

    /// The client has just answered: learns how long that took.
    pub fn responded(&self, practice: &mut Practice) {
        if let Some(response) = self.response() {
            practice.responded(response, self.patience.response_s(practice.now_s));
        }
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        if practice.is_speaking() {
            return Turn::Stay;
        }
        if self.ask == Ask::FinishUnlessTakenBack {
            let untaken = self.patience.quiet_for_s(practice.now_s) >= TAKE_BACK_S;
            return if untaken { Turn::Go(NextAction::Finish) } else { Turn::Stay };
        }
        let response = self.response();
        match practice.silence(&mut self.patience, response) {
            Silence::Wait => {}
            Silence::AskAgain(time) => self.ask_again(practice, time),
            Silence::WaitForReady => return Turn::Go(NextAction::Answered(self.ask, None)),
            Silence::StillHere => practice.remind(if self.ask == Ask::Sip { "ask-sip-again" } else { "wait-for-ready" }),
            Silence::GiveUp => return Turn::Go(NextAction::GiveUp),
        }
        Turn::Stay
    }

    /// Nobody answered; asks once more.
    fn ask_again(&self, practice: &mut Practice, time: u32) {
        let key = match (self.ask, time) {
            (Ask::Agreement(_), _) => "ask-agreement-again",
            (Ask::Resume | Ask::Sound | Ask::Confirm(_) | Ask::OfferRest, _) => "ask-yes-no-again",
            // Nothing is said to a person with water in the mouth but once, late.
            (Ask::Sip, 1) => return,
            (Ask::Sip, _) => "ask-sip-again",
            _ if self.patience.unclear() > 0 => "ready-not-understood",
            (_, 1) => "ask-ready-again",
            _ => "ask-ready-once-more",
        };
        practice.remind(key);
    }
}
