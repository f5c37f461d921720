//! What makes hearing or measuring doubtful: kept at once, told once, when nothing is being timed.

use std::collections::BTreeSet;

use model::Trouble;

/// A client is waited for so long, s, before it is told that nothing at all is heard. A microphone that lets nothing through while
/// nobody speaks sounds the same at first, and most people have answered by then (trade notes 5.5: 2 to 3 s to begin an answer).
const WAITED_IN_VAIN_S: f64 = 9.0;

/// The microphone gives nothing at all.
#[derive(Debug, Clone, Copy, Default)]
struct NoSound {
    /// So long the client was waited for since, s.
    waited_s: f64,
    told: bool,
}

/// The troubles of one session.
#[derive(Debug, Clone, Default)]
pub(super) struct Troubles {
    /// Those that stand in the journal.
    known: BTreeSet<Trouble>,
    /// Those of them that are still to be told.
    to_tell: Vec<Trouble>,
    no_sound: Option<NoSound>,
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

    /// From now on nothing at all is heard.
    pub fn sound_is_gone(&mut self) {
        self.no_sound.get_or_insert_default();
    }

    /// Nothing at all is heard, so nobody can answer by voice.
    pub fn has_no_sound(&self) -> bool {
        self.no_sound.is_some()
    }

    /// The client was waited for during `passed_s`. True once: it is time to say that nothing is heard.
    pub fn waited(&mut self, passed_s: f64) -> bool {
        let Some(no_sound) = &mut self.no_sound else { return false };
        no_sound.waited_s += passed_s;
        no_sound.waited_s >= WAITED_IN_VAIN_S && !std::mem::replace(&mut no_sound.told, true)
    }

    /// Something is heard. True where it had been told that nothing is.
    pub fn sound_is_back(&mut self) -> bool {
        self.no_sound.take().is_some_and(|no_sound| no_sound.told)
    }
}
