//! What makes hearing or measuring doubtful: kept at once, told once, when nothing is being timed.

use std::collections::BTreeSet;

use model::Trouble;

/// The troubles of one session.
#[derive(Debug, Clone, Default)]
pub(super) struct Troubles {
    /// Those that stand in the journal.
    known: BTreeSet<Trouble>,
    /// Those of them that are still to be told.
    to_tell: Vec<Trouble>,
}

impl Troubles {
    /// True the first time.
    pub fn is_new(&mut self, trouble: Trouble) -> bool {
        self.known.insert(trouble)
    }

    pub fn tell_later(&mut self, trouble: Trouble) {
        self.to_tell.push(trouble);
    }

    /// The one to tell now; each comes once.
    pub fn next_to_tell(&mut self) -> Option<Trouble> {
        self.to_tell.pop()
    }

    /// Levels of this practice can be compared with each other.
    pub fn levels_compare(&self) -> bool {
        !self.known.contains(&Trouble::MicrophoneGain) && !self.known.contains(&Trouble::RoomTooLoud)
    }
}
