//! Who of a class is there, and what that means for the exercise under way.

use super::outlet::names_of;
use super::practice::Practice;
use model::{Arg, Line};
use routine::Participant;
use std::collections::BTreeMap;

/// The roll of a class.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Roll {
    /// It was announced.
    pub announced: bool,
    /// Nobody else is called.
    pub over: bool,
    /// Who is called next, or later, by index from 0.
    pub next: usize,
    /// Who was said to be there or not, by index from 0.
    pub present: BTreeMap<usize, bool>,
}

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
