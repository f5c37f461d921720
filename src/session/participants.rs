//! Those who belong to a class: how they are called, what is listened for, and who of them does the exercise under way otherwise.

use super::outlet::names_of;
use super::practice::Practice;
use model::{Arg, Line};
use routine::{Called, Participant};

/// In a roll call.
impl Practice {
    /// How a participant is called.
    pub fn call(&self, index: usize) -> (&'static str, Vec<(&'static str, Arg)>) {
        match self.context.participants.get(index).map(|participant| participant.called.clone()) {
            Some(Called::Number(number)) => ("class-call-number", vec![("n", Arg::Number(f64::from(number)))]),
            Some(Called::Name(name)) => ("class-call", vec![("name", Arg::Text(name))]),
            None => ("class-call", vec![("name", Arg::Text(String::new()))]),
        }
    }

    /// What is listened for besides the answers to a call.
    pub fn names_to_hear(&self) -> Vec<String> {
        let heard = self.context.participants.iter().filter_map(|participant| participant.heard.as_ref());
        heard.flat_map(|heard| [heard.here.clone(), heard.not_here.clone()]).collect()
    }

    /// "3/8".
    pub fn called_so_far(&self, index: usize) -> String {
        format!("{}/{}", index + 1, self.context.participants.len())
    }
}

/// At an exercise.
impl Practice {
    /// Those who are there, or of whom nobody said that they are not: whoever was passed over may be in the room.
    fn in_the_room(&self) -> impl Iterator<Item = &Participant> {
        let absent = |index: usize| self.roll.present.get(&index) == Some(&false);
        self.context.participants.iter().enumerate().filter(move |(index, _)| !absent(*index)).map(|(_, participant)| participant)
    }

    /// Who leaves the exercise under way out, and who does it seated.
    pub fn aside(&self) -> Vec<Line> {
        if !self.in_step {
            return Vec::new();
        }
        let id = self.exercise_id();
        let leave_out = self.in_the_room().filter(|participant| participant.leaves_out.contains(&id));
        let seated = self.in_the_room().filter(|participant| participant.seated.contains(&id));
        let lines = [("class-leave-out", names_of(leave_out)), ("class-seated", names_of(seated))];
        lines
            .into_iter()
            .filter(|(_, names)| !names.is_empty())
            .map(|(key, names)| Line { key: key.into(), args: vec![("names", Arg::Text(names))] })
            .collect()
    }

    /// The same aloud, where the clinician wants it.
    pub fn name_aside(&mut self) {
        if self.context.names_aloud {
            for line in self.aside() {
                self.say_line(line, None);
            }
        }
    }
}
