//! Standing still: silent at once, and a moment later it says how to go on.

use super::listening;
use super::next::{Halt, NextAction, Turn};
use super::outlet::line;
use super::patience::{Patience, Silence};
use super::practice::Practice;
use model::{Command, VoiceTask};

/// Seconds of silence after "stop" before it says how to go on (design: "silent at once; then after a second").
const STOP_SILENCE_S: f64 = 1.0;
/// Whoever asked for help or is not well is listened to for so long behind the first sentence, s: most answers have begun by then
/// (trade notes 5.5: 2 to 3 s).
const LISTENS_S: f64 = 3.0;

/// It stands still until the client says how to go on.
#[derive(Debug, Clone)]
pub(super) struct Halted {
    halt: Halt,
    since_s: f64,
    /// It has said how to go on.
    pub told: bool,
    pub patience: Patience,
}

impl Halted {
    pub fn new(practice: &mut Practice, halt: Halt) -> Self {
        practice.listen(listening::HALTED, VoiceTask::Idle);
        practice.show_prompt(line(halt.shown_key()), halt.can_say());
        let now_s = practice.now_s;
        if halt != Halt::Unwell {
            practice.rest_to_tell.clear();
        }
        Self { halt, since_s: now_s, told: false, patience: Patience::new(now_s) }
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        if practice.is_speaking() {
            return Turn::Stay;
        }
        if !self.told {
            let answers = matches!(self.halt, Halt::Helped | Halt::Unwell) && !practice.context.class;
            let (from_s, silence_s) =
                if answers { (self.since_s.max(practice.last_spoke_s), LISTENS_S) } else { (self.since_s, STOP_SILENCE_S) };
            if practice.now_s >= from_s + silence_s {
                self.tell(practice);
            }
            return Turn::Stay;
        }
        match practice.silence(&mut self.patience, None) {
            Silence::Wait => {}
            Silence::AskAgain(_) | Silence::WaitForReady | Silence::StillHere => {
                practice.say("halted-reminder", &[]);
            }
            Silence::GiveUp => return Turn::Go(NextAction::GiveUp),
        }
        Turn::Stay
    }

    fn tell(&mut self, practice: &mut Practice) {
        self.told = true;
        let class = practice.context.class;
        let key = match self.halt {
            Halt::Resting if class => "class-resting",
            _ if class => "class-halted",
            Halt::Stopped => "stopped",
            Halt::Paused => "paused",
            Halt::Resting => "resting",
            Halt::Dry if practice.sips_enabled() => "dry-sip",
            Halt::Dry => "dry-lips",
            Halt::Unwell => {
                for line in std::mem::take(&mut practice.rest_to_tell) {
                    practice.say_line(line, None);
                }
                "unwell-go-on"
            }
            Halt::Helped => {
                practice.say("help-more", &[]);
                if practice.in_step {
                    let instruction = practice.instruction_key();
                    practice.say(&instruction, &[]);
                }
                "help-go-on"
            }
        };
        practice.say(key, &[]);
    }
}

impl Halt {
    fn shown_key(self) -> &'static str {
        match self {
            Halt::Stopped => "stopped-shown",
            Halt::Paused => "paused-shown",
            Halt::Resting | Halt::Dry => "resting-shown",
            Halt::Helped => "help-shown",
            Halt::Unwell => "unwell-shown",
        }
    }

    fn can_say(self) -> &'static [Command] {
        match self {
            Halt::Resting | Halt::Dry => &[Command::Ready, Command::Finish],
            _ => &[Command::GoOn, Command::Skip, Command::Finish],
        }
    }
}
