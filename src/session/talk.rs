//! Talk in the room: what was said here lately and held no word that is listened for.

use std::collections::VecDeque;

/// Older talk than this means nothing any more, s.
const LATELY_S: f64 = 60.0;
/// Talk that has gone on for so long without a pause is no command of a word or two, s. No source.
const GOES_ON_S: f64 = 4.0;
/// From so many unknown utterances in that time on, a costly command is asked about first. No source.
const DOUBTFUL_FROM: usize = 3;
/// From so many on, it counts as a trouble. No source.
const TALKATIVE_FROM: usize = 6;

/// What was said in the room that was not for us.
#[derive(Debug, Clone, Default)]
pub(super) struct RoomTalk {
    /// When each of the last minute's utterances ended, s.
    ended_s: VecDeque<f64>,
    /// Somebody has been talking since, s.
    pub since_s: Option<f64>,
}

impl RoomTalk {
    /// Somebody said something that was not understood.
    pub fn heard(&mut self, now_s: f64) {
        self.ended_s.push_back(now_s);
        self.forget_old(now_s);
    }

    fn forget_old(&mut self, now_s: f64) {
        while self.ended_s.front().is_some_and(|&at_s| at_s < now_s - LATELY_S) {
            self.ended_s.pop_front();
        }
    }

    /// So much is said here that it is hard to hear the client.
    pub fn is_troubling(&self) -> bool {
        self.ended_s.len() >= TALKATIVE_FROM
    }

    /// So much is said here that a command may be part of somebody's sentence.
    pub fn makes_doubtful(&mut self, now_s: f64) -> bool {
        self.forget_old(now_s);
        self.ended_s.len() >= DOUBTFUL_FROM || self.since_s.is_some_and(|since_s| now_s - since_s >= GOES_ON_S)
    }
}
