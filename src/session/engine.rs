//! The one door: an event comes in, effects go out.

use super::commands::{self, Verdict};
use super::context::SessionContext;
use super::practice::Practice;
use super::state::{Move, State};
use super::{closing, flow, hearing, knocking, opening};
use model::{Command, Effect, Event, StepReason, Trouble};
use routine::Routine;

/// Leads one session of one routine.
#[derive(Debug, Clone)]
pub struct Engine {
    pub(super) practice: Practice,
    state: State,
}

impl Engine {
    /// A session about to begin; it greets at the first event.
    #[must_use]
    pub fn new(routine: Routine, context: SessionContext) -> Self {
        Self { practice: Practice::new(routine, context), state: State::Unbegun }
    }

    /// A clinician leads a class.
    #[must_use]
    pub fn leads_class(&self) -> bool {
        self.practice.context.class
    }

    /// True once `Effect::Finish` has been given; later events do nothing.
    #[must_use]
    pub fn is_over(&self) -> bool {
        matches!(self.state, State::Ended)
    }

    /// Takes one event and says what is to be done about it. Total: no order of events can make it fail.
    pub fn on(&mut self, event: Event) -> Vec<Effect> {
        if self.is_over() {
            return Vec::new();
        }
        let passed_s = (event.at_s() - self.practice.now_s).max(0.0);
        self.practice.now_s += passed_s;
        if matches!(self.state, State::Halted(_)) {
            self.practice.still_s += passed_s;
        }
        if matches!(self.state, State::Unbegun) {
            self.practice.began_s = self.practice.now_s;
            self.practice.remember_earlier();
            let greeting = opening::greet(&mut self.practice);
            self.follow(greeting.into());
        }
        self.practice.record_due(false);
        self.take_in(event);
        if self.state.is_calm(self.practice.now_s) {
            self.practice.tell_trouble();
        }
        if self.state.waits_for_client() {
            self.practice.waited(passed_s);
        }
        std::mem::take(&mut self.practice.out.effects)
    }

    fn take_in(&mut self, event: Event) {
        let (practice, state) = (&mut self.practice, &mut self.state);
        let leads_to = match event {
            Event::Tick { .. } => state.tick(practice).into(),
            Event::Command { command, confidence, text, .. } => return self.command(command, confidence, text),
            Event::Answer { text, confidence, .. } => hearing::answer(practice, state, &text, confidence),
            Event::Onset { onset_s, .. } => return hearing::voice_began(practice, state, onset_s),
            Event::Offset { hold, .. } => hearing::voice_ended(practice, state, &hold),
            Event::SpokenOver { .. } => return hearing::spoken_over(practice, state),
            Event::Stirred { .. } => return hearing::stirred(practice, state),
            Event::SpeechBegan { onset_s, .. } => return hearing::speech_began(practice, state, onset_s),
            Event::Spoken { utterance, .. } => hearing::spoken(practice, state, &utterance),
            Event::Knocked { .. } => knocking::knocked(practice, state).into(),
            Event::RoomLoud { loud, room_db, .. } => return hearing::room_loud(practice, loud, room_db),
            Event::LineBegan { .. } => return,
            Event::LineEnded { line, .. } => return hearing::line_ended(practice, state, line),
            Event::Trouble { trouble: Trouble::MicrophoneSilent, .. } => return practice.sound_is_gone(),
            Event::Trouble { trouble: Trouble::LoudspeakerGone, .. } => return practice.noted(Trouble::LoudspeakerGone),
            Event::Trouble { trouble, .. } => return practice.troubled(trouble),
            Event::SoundIsBack { .. } => return hearing::sound_is_back(practice, state),
            Event::VoiceIsBack { .. } => hearing::voice_is_back(practice, state),
            Event::Interrupt { .. } => {
                practice.hush();
                closing::cut_short(practice, state, StepReason::Interrupted);
                // What is asked behind the end changes nothing of how it ended.
                let reason = practice.looking_back.as_ref().map_or("interrupted", |questions| questions.reason);
                closing::end(practice, reason)
            }
        };
        self.follow(leads_to);
    }

    fn command(&mut self, command: Command, confidence: f64, text: String) {
        match commands::weigh(&mut self.practice, &self.state, command, confidence) {
            Verdict::Ignore => {}
            Verdict::AskFirst => {
                let asks = commands::ask_first(&mut self.practice, &self.state, command);
                self.follow(asks);
            }
            Verdict::Obey => {
                commands::record_heard(&mut self.practice, command, text, confidence);
                let leads_to = commands::obey(&mut self.practice, &mut self.state, command);
                self.follow(leads_to);
                // Whoever speaks is there: the silence counts anew.
                if let Some(patience) = self.state.patience() {
                    patience.heard(self.practice.now_s);
                }
            }
        }
    }

    /// Makes one move after the other until the session stands again. The only place where the state changes.
    fn follow(&mut self, mut leads_to: Move) {
        loop {
            leads_to = match leads_to {
                Move::Stay => return,
                Move::Become(state) => {
                    self.state = state;
                    return;
                }
                Move::Go(next) => flow::take(&mut self.practice, &mut self.state, next),
            };
        }
    }
}
