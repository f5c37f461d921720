//! Chest pain, or no breath: the practice is over, and it helps to get help.
//!
//! It says whom to call, again and again with longer and longer silences, and listens for "help" and "I'm all right".

use super::listening;
use super::next::{NextAction, Speaking, Turn};
use super::outlet::line;
use super::practice::Practice;
use super::safety_stop::{CameFrom, record_safety_stop, symptom_of};
use model::{Arg, Command, Line, LineId, Symptom, VoiceTask};
use routine::Posture;

/// Silence before what to do is said again, s: the first times soon, for it may not have been taken in; common practice, no source.
const AGAIN_S: [f64; 3] = [15.0, 30.0, 60.0];
/// After so long without an answer the practice ends, s; whoever waits in the house is told then.
const ENDS_AFTER_S: f64 = 600.0;
/// Silence after "stop", s, whatever comes.
const STOP_SILENCE_S: f64 = 1.0;
/// A breath between two things said, s.
const BREATH_S: f64 = 0.4;

/// The practice has ended for a reason that may need help.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Emergency {
    symptom: Symptom,
    /// The exercise that it began in, or after which.
    came_from: CameFrom,
    /// What else was said to be wrong since, each once.
    also: Vec<Symptom>,
    began_s: f64,
    /// Since we last spoke, s.
    quiet_since_s: f64,
    /// It has said again what to do, so often.
    again: usize,
    /// It was told to be quiet.
    hushed: bool,
    /// When, s.
    hushed_s: f64,
}

impl Emergency {
    /// Says at once what to do. What was under way has been ended before.
    pub fn new(practice: &mut Practice, symptom: Symptom, came_from: CameFrom) -> Self {
        practice.listen(listening::EMERGENCY, VoiceTask::Idle);
        let emergency = Self {
            symptom,
            came_from,
            also: Vec::new(),
            began_s: practice.now_s,
            quiet_since_s: practice.now_s,
            again: 0,
            hushed: false,
            hushed_s: f64::NEG_INFINITY,
        };
        let shown = with_number(practice, "emergency-shown");
        practice.show_prompt(shown, &[Command::Help, Command::AllRight]);
        practice.say(emergency.advice(), &[]);
        say_number(practice);
        emergency
    }

    /// Our last line ended.
    pub fn spoke(&mut self, now_s: f64) {
        self.quiet_since_s = now_s;
    }

    pub fn tick(&mut self, practice: &mut Practice) -> Turn {
        if practice.is_speaking() {
            return Turn::Stay;
        }
        // Whoever has just silenced it is not spoken to at once.
        if practice.now_s - self.hushed_s < STOP_SILENCE_S {
            return Turn::Stay;
        }
        if practice.now_s - self.began_s >= ENDS_AFTER_S {
            practice.listen(&[], VoiceTask::Idle);
            let last = practice.say("emergency-ends", &[]);
            return practice.after(last, BREATH_S, NextAction::End("unwell")).into();
        }
        let wait_s = AGAIN_S.get(self.again).or(AGAIN_S.last()).copied().unwrap_or(ENDS_AFTER_S);
        if !self.hushed && practice.now_s - self.quiet_since_s >= wait_s {
            self.again += 1;
            practice.say("emergency-anybody", &[]);
            say_number(practice);
            practice.say("emergency-or-fine", &[]);
        }
        Turn::Stay
    }

    /// What is said now: for help it says the number again, "I'm all right" ends the practice, and all else changes nothing.
    pub fn obey(&mut self, practice: &mut Practice, command: Command) -> Turn {
        if let Some(symptom) = symptom_of(command)
            && symptom != self.symptom
            && !self.also.contains(&symptom)
        {
            record_safety_stop(practice, &symptom, &self.came_from);
            self.also.push(symptom);
        }
        match command {
            Command::AllRight | Command::Finish => return over(practice).into(),
            Command::Stop | Command::Pause => {
                practice.hush();
                (self.hushed, self.hushed_s) = (true, practice.now_s);
            }
            Command::Help | Command::Again | Command::ChestPain | Command::CantBreathe | Command::Choking => {
                practice.hush();
                (self.again, self.hushed) = (0, false);
                say_number(practice);
            }
            _ => {}
        }
        Turn::Stay
    }

    fn advice(&self) -> &'static str {
        if self.symptom == Symptom::Breathless { "emergency-cant-breathe" } else { "emergency-chest-pain" }
    }
}

fn over(practice: &mut Practice) -> Speaking {
    practice.hush();
    practice.listen(&[], VoiceTask::Idle);
    let mut last = practice.say("emergency-passed", &[]);
    if practice.posture == Some(Posture::Lying) {
        last = practice.say("rise-at-end", &[]);
    }
    practice.show_prompt(line("emergency-passed-shown"), &[]);
    practice.after(last, BREATH_S, NextAction::End("unwell"))
}

/// Whom to call: the number twice, figure by figure.
pub(super) fn say_number(practice: &mut Practice) -> LineId {
    let call = with_number(practice, "emergency-call");
    practice.say_line(call, None)
}

fn with_number(practice: &Practice, key: &str) -> Line {
    match &practice.context.emergency_number {
        Some(number) => Line { key: key.into(), args: vec![("number", Arg::Text(number.clone()))] },
        None => line(format!("{key}-unknown")),
    }
}
