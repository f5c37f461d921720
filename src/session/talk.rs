//! Talk in the room: somebody who answers is not talked over, whoever is not understood is told so, and a room full of talk makes
//! costly commands doubtful.

use super::Trouble;
use super::engine::{Engine, State};
use model::{Utterance, VoiceTask};

/// The quiet after which something said is over, s. Not that of reading or a question: so what was begun before their turn is no part of
/// the answer, for another task begins a new stretch.
const END_PAUSE_S: f64 = 1.0;
/// While it waits for a word, the voice ear tells when somebody speaks.
pub(super) const FOR_SPEECH: VoiceTask = VoiceTask::Speech { end_pause_s: END_PAUSE_S };
/// Talk of so long ago says nothing any more, s.
const LATELY_S: f64 = 60.0;
/// Talk that has gone on for so long without a pause is no command of a word or two, s. No source.
const GOES_ON_S: f64 = 4.0;
/// From so many unknown utterances in that time on, a costly command is asked about first. No source.
const DOUBTFUL_FROM: usize = 3;
/// From so many on, the room is told of. No source.
const TALKATIVE_FROM: usize = 6;

impl Engine {
    /// Somebody begins to speak while a word is waited for.
    pub(super) fn somebody_speaks(&mut self, onset_s: f64) {
        let now_s = self.now_s;
        self.talk_since_s = Some(onset_s);
        if matches!(self.state, State::Asking { .. } | State::Repeated(_))
            && let Some(patience) = self.patience()
        {
            patience.speaks(now_s);
        }
    }

    /// What somebody said is over.
    pub(super) fn somebody_spoke(&mut self, utterance: &Utterance) {
        self.talk_since_s = None;
        let ours = self.is_speaking() || utterance.onset_s < self.last_spoke_s;
        if ours || self.command_at_s >= utterance.onset_s {
            return;
        }
        let now_s = self.now_s;
        self.talk_s.push_back(now_s);
        self.forget_old_talk();
        if let Some(patience) = self.patience() {
            patience.not_understood(now_s);
        }
        if self.talk_s.len() >= TALKATIVE_FROM {
            self.troubled(Trouble::RoomTalks);
        }
    }

    fn forget_old_talk(&mut self) {
        let now_s = self.now_s;
        while self.talk_s.front().is_some_and(|&at_s| at_s < now_s - LATELY_S) {
            self.talk_s.pop_front();
        }
    }

    /// So much is said here that a command may be part of somebody's sentence.
    pub(super) fn is_talkative(&mut self) -> bool {
        self.forget_old_talk();
        self.talk_s.len() >= DOUBTFUL_FROM || self.talk_since_s.is_some_and(|since_s| self.now_s - since_s >= GOES_ON_S)
    }

    /// Somebody spoke since the question and was not understood.
    pub(super) fn was_unclear(&mut self) -> bool {
        self.patience().is_some_and(|patience| patience.unclear() > 0)
    }
}
