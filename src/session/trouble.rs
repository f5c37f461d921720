//! What makes hearing or measuring doubtful: kept at once, told once, when nothing is being timed.

use super::engine::{Engine, State};
use super::{Fact, Line, Trouble};

/// Most answers have come by then, s (trade notes 5.5: 2 to 3 s to begin an answer).
const ANSWER_COMES_S: f64 = 4.0;

impl Engine {
    /// Keeps it, the first time.
    pub(super) fn troubled(&mut self, trouble: Trouble) {
        if self.troubles_known.insert(trouble) {
            self.record(Fact::Troubled { trouble });
            self.troubles_to_tell.push(trouble);
        }
    }

    /// Tells of what is waiting to be told, where nobody is in the middle of something.
    pub(super) fn tell_troubles(&mut self) {
        let calm = match &self.state {
            // Whoever is just about to answer is not talked over.
            State::Asking { patience, .. } => patience.quiet_for_s(self.now_s) >= ANSWER_COMES_S,
            State::Repeated(run) => run.patience.quiet_for_s(self.now_s) >= ANSWER_COMES_S,
            State::Resting { .. } => true,
            State::Halted { told, .. } => *told,
            _ => false,
        };
        // A class is not bothered with them: they stand on the screen.
        if !calm || self.is_speaking() || self.start.class {
            return;
        }
        if let Some(trouble) = self.troubles_to_tell.pop() {
            // "Again" repeats what was announced before, not this.
            let announced = self.last_said.take();
            self.say_line(Line { key: trouble.key().into(), args: Vec::new() }, None);
            self.last_said = announced;
        }
    }
}
