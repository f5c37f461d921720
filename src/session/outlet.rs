//! How effects are put out: said, listened for, kept, shown.

use super::listening;
use super::practice::Practice;
use model::{Arg, Command, Effect, Entry, Fact, Line, LineId, Listening, Position, Symptom, Trouble, View, VoiceTask};
use routine::{Participant, Work};

/// A message without arguments.
pub(super) fn line(key: impl Into<String>) -> Line {
    Line { key: key.into(), args: Vec::new() }
}

/// A count as a message argument.
pub(super) fn count(n: usize) -> Arg {
    Arg::Number(f64::from(u32::try_from(n).unwrap_or(u32::MAX)))
}

/// How these are called, one after the other.
pub(super) fn names_of<'a>(participants: impl Iterator<Item = &'a Participant>) -> String {
    participants.map(|participant| participant.called.to_string()).collect::<Vec<_>>().join(", ")
}

/// Seconds to one decimal, as they are said.
pub(super) fn tenth(seconds: f64) -> f64 {
    (seconds * 10.0).round() / 10.0
}

/// Whether the number of a repetition is said before it: the first ones, while the person gets going, and then every fifth. Counting every
/// few seconds only fills the silence.
fn is_counted_aloud(repetition: u32) -> bool {
    matches!(repetition, 2 | 3) || (repetition > 1 && repetition.is_multiple_of(5))
}

/// Saying.
impl Practice {
    /// True while a line of ours is queued or playing.
    pub fn is_speaking(&self) -> bool {
        !self.out.speaking.is_empty()
    }

    /// Queues a line behind those under way.
    pub fn say(&mut self, key: &str, args: &[(&'static str, Arg)]) -> LineId {
        self.say_line(Line { key: key.to_owned(), args: args.to_vec() }, None)
    }

    /// Says a line that begins exactly on a beat.
    pub fn say_on_beat(&mut self, key: &str, args: &[(&'static str, Arg)], beat_s: f64) -> LineId {
        self.say_line(Line { key: key.to_owned(), args: args.to_vec() }, Some(beat_s))
    }

    pub fn say_line(&mut self, line: Line, on_beat_s: Option<f64>) -> LineId {
        self.out.last_line += 1;
        let id = LineId(self.out.last_line);
        self.out.speaking.insert(id);
        if on_beat_s.is_none() {
            self.last_said = Some(line.clone());
        }
        self.effect(Effect::Say { id, line, on_beat_s });
        id
    }

    /// Says which repetition comes, from the second on, and then its cue; returns the last line.
    pub fn say_cue(&mut self) -> LineId {
        let Some(step) = self.step() else { return LineId(0) };
        let (repetition, repetitions) = (self.here.repetition, step.repetitions);
        if repetitions > 1 && repetition == repetitions {
            self.say("repetition-last", &[]);
        } else if is_counted_aloud(repetition) {
            self.say("repetition-number", &[("n", Arg::Number(f64::from(repetition)))]);
        }
        // An explicit cue before each trial: people with Parkinson's raise their voice when told to (Ho et al. 1999). The
        // first one follows the step's own words directly.
        if repetition > 1
            && self.is_loud()
            && let Some(words) = self.routine.cue_words.clone()
        {
            self.say("cue-words-again", &[("words", Arg::Text(words))]);
        }
        let cue = self.exercise_key("cue");
        self.say(&cue, &[])
    }

    /// Silence, at once.
    pub fn hush(&mut self) {
        self.effect(Effect::Hush);
    }

    pub fn effect(&mut self, effect: Effect) {
        self.out.effects.push(effect);
    }
}

/// Listening.
impl Practice {
    /// Where commands are heard and nothing is measured, the voice ear reports speech.
    pub fn listen(&mut self, commands: &[Command], voice: VoiceTask) {
        let voice = if voice == VoiceTask::Idle && !commands.is_empty() { listening::FOR_SPEECH } else { voice };
        self.listen_with(commands, Vec::new(), voice);
    }

    /// The same, and answers by the messages that hold their wordings. Nothing is measured.
    pub fn listen_for_worded(&mut self, commands: &[Command], worded: Vec<String>) {
        let voice = if commands.is_empty() { VoiceTask::Idle } else { listening::FOR_SPEECH };
        let commands = listening::with_safety(commands);
        self.listen_to(Listening { commands, answers: Vec::new(), worded, voice, list: false, multiword_only: false });
    }

    pub fn listen_with(&mut self, commands: &[Command], answers: Vec<String>, voice: VoiceTask) {
        let listening = if self.context.class {
            // Answers to questions are the class's; only those to a roll call are taken.
            let commands = listening::of_class(commands);
            let answers = if commands == listening::CLASS_ROLL_CALL { answers } else { Vec::new() };
            let commands = listening::with_safety(commands);
            Listening { commands, answers, worded: Vec::new(), voice: VoiceTask::Idle, list: false, multiword_only: true }
        } else {
            // Where a category is named, and nowhere else: a command is never part of a list.
            let list = !answers.is_empty() && matches!(self.step().map(|step| &step.work), Some(Work::Naming { .. }));
            Listening { commands: listening::with_safety(commands), answers, worded: Vec::new(), voice, list, multiword_only: false }
        };
        self.listen_to(listening);
    }

    fn listen_to(&mut self, listening: Listening) {
        if self.out.listening.as_ref() != Some(&listening) {
            // Another task begins a new stretch.
            if self.out.listening.as_ref().is_some_and(|before| before.voice != listening.voice) {
                self.talk.since_s = None;
            }
            self.out.listening = Some(listening.clone());
            self.effect(Effect::Listen(listening));
        }
    }
}

/// Keeping.
impl Practice {
    pub fn record(&mut self, fact: Fact) {
        self.record_due(true);
        self.unwell |= matches!(&fact, Fact::SafetyStop { reason, .. } if *reason != Symptom::Help);
        let position = self.place();
        self.effect(Effect::Record(Entry { at_s: self.now_s, fact, position }));
    }

    /// Keeps a fact that belongs to another place than the present one.
    pub fn record_of(&mut self, position: Option<Position>, fact: Fact) {
        self.effect(Effect::Record(Entry { at_s: self.now_s, fact, position }));
    }

    /// Keeps a fact that is true from `at_s` on, at most a look-ahead from now.
    pub fn record_at(&mut self, at_s: f64, fact: Fact) {
        let position = self.place();
        self.out.due.push(Entry { at_s, fact, position });
    }

    /// Facts whose time has come; all of them where something else is written, so that the journal's order holds.
    pub fn record_due(&mut self, all: bool) {
        let now_s = self.now_s;
        for mut entry in self.out.due.extract_if(.., |entry| all || entry.at_s <= now_s) {
            entry.at_s = entry.at_s.min(now_s);
            self.out.effects.push(Effect::Record(entry));
        }
    }

    fn place(&self) -> Option<Position> {
        self.in_step.then_some(self.here)
    }

    /// Keeps what makes hearing or measuring doubtful, the first time.
    pub fn troubled(&mut self, trouble: Trouble) {
        if self.troubles.is_new(trouble) {
            self.record(Fact::Troubled { trouble });
            self.troubles.tell_later(trouble);
        }
    }

    /// Reports one trouble that waits to be told. A class is not bothered with them: they stand on the screen.
    pub fn tell_trouble(&mut self) {
        if self.is_speaking() || self.context.class {
            return;
        }
        if let Some(trouble) = self.troubles.next_to_tell() {
            self.say_aside(trouble.key());
        }
    }

    /// Kept the first time, and not told aloud.
    pub fn noted(&mut self, trouble: Trouble) {
        if self.troubles.is_new(trouble) {
            self.record(Fact::Troubled { trouble });
        }
    }

    /// The microphone gives nothing at all: kept the first time, told whenever somebody is waited for in vain.
    pub fn sound_is_gone(&mut self) {
        self.noted(Trouble::MicrophoneSilent);
        self.troubles.sound_is_gone();
    }

    /// The client was waited for during `passed_s`: says in time that nothing at all is heard.
    pub fn waited(&mut self, passed_s: f64) {
        if !self.is_speaking() && !self.context.class && self.troubles.waited(passed_s) {
            self.say_aside(Trouble::MicrophoneSilent.key());
        }
    }

    /// Something is heard; it is told where it had been told that nothing is.
    pub fn sound_is_back(&mut self) {
        if self.troubles.sound_is_back() {
            self.say_aside("trouble-microphone-back");
        }
    }

    /// "Again" repeats what was announced before, not this.
    pub fn say_aside(&mut self, key: &str) {
        let announced = self.last_said.take();
        self.say_line(line(key), None);
        self.last_said = announced;
    }
}

/// Showing.
impl Practice {
    /// Shows a view if it differs from what stands there.
    pub fn show(&mut self, view: View) {
        if self.out.view != view {
            self.out.view = view.clone();
            self.effect(Effect::Show(view));
        }
    }

    /// Changes the large figure alone.
    pub fn show_figure(&mut self, figure: &str) {
        if self.out.view.figure != figure {
            let view = View { figure: figure.to_owned(), ..self.out.view.clone() };
            self.show(view);
        }
    }

    /// Changes the prompt and what can be said; the figure goes.
    pub fn show_prompt(&mut self, prompt: Line, can_say: &[Command]) {
        self.show_prompt_with(prompt, can_say, "");
    }

    pub fn show_prompt_with(&mut self, prompt: Line, can_say: &[Command], figure: &str) {
        let can_say = if self.context.class { listening::shown_to_class(can_say) } else { can_say.to_vec() };
        let view = View { heading: self.heading(), prompt: Some(prompt), figure: figure.to_owned(), can_say, aside: self.aside() };
        self.show(view);
    }

    fn heading(&self) -> Option<Line> {
        let step = self.step()?;
        let name = Arg::Message(format!("ex-{}-name", step.exercise.id));
        if !self.in_step {
            return Some(Line { key: "heading-session".into(), args: vec![("title", Arg::Text(self.routine.title.clone()))] });
        }
        Some(Line {
            key: if step.sets > 1 { "heading-set" } else { "heading-step" }.into(),
            args: vec![
                ("name", name),
                ("repetition", Arg::Number(f64::from(self.here.repetition))),
                ("repetitions", Arg::Number(f64::from(step.repetitions))),
                ("set", Arg::Number(f64::from(self.here.set))),
                ("sets", Arg::Number(f64::from(step.sets))),
            ],
        })
    }
}
