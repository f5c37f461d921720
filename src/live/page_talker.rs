//! The voice of a practice that is led by the page alone: nothing sounds, and each line lasts as long as it takes to be read.

use std::collections::VecDeque;

use crate::clock::BLOCK_S;
use crate::talk::{TalkEvent, Talker};
use session::LineId;

/// A new sentence is found by the eye and begun to be read, s; common practice, no source.
const FOUND_S: f64 = 1.0;
/// For each word, s: 130 words a minute. Adults read 238 words of English non-fiction a minute to themselves, most of them 175 to 300,
/// older people fewer (Brysbaert 2019, 190 studies); subtitles give 160 to 180 (BBC subtitle guidelines). Slower than both: whoever
/// reads here does exercises meanwhile.
const WORD_S: f64 = 0.46;
/// What stands on a beat is a word or two, and the next beat follows, s a word.
const BEAT_WORD_S: f64 = 0.3;

/// Gives lines their time and no sound.
#[derive(Debug)]
pub struct PageTalker {
    blocks: u64,
    skipped_s: f64,
    /// Factor on the time to read, by "slower" and "faster".
    pace: f64,
    /// Lines that wait, with the time that each takes, s.
    queue: VecDeque<(LineId, f64)>,
    /// The line that is being read, and until when, s.
    read: Option<(LineId, f64)>,
    /// Lines on a beat: when it is, s, and how long it stands.
    beats: Vec<Beat>,
    dropped: Vec<LineId>,
}

#[derive(Debug, Clone, Copy)]
struct Beat {
    id: LineId,
    at_s: f64,
    length_s: f64,
    began: bool,
}

impl Default for PageTalker {
    fn default() -> Self {
        Self { blocks: 0, skipped_s: 0.0, pace: 1.0, queue: VecDeque::new(), read: None, beats: Vec::new(), dropped: Vec::new() }
    }
}

/// How long a line must stand to be read, s.
#[must_use]
pub fn reading_s(text: &str) -> f64 {
    FOUND_S + WORD_S * words(text)
}

fn words(text: &str) -> f64 {
    f64::from(u32::try_from(text.split_whitespace().count()).unwrap_or(u32::MAX))
}

impl Talker for PageTalker {
    fn gives_samples(&self) -> bool {
        true
    }

    fn is_heard(&self) -> bool {
        false
    }

    fn say(&mut self, id: LineId, text: &str, on_beat_s: Option<f64>) {
        match on_beat_s {
            Some(at_s) => self.beats.push(Beat { id, at_s, length_s: BEAT_WORD_S * words(text).max(1.0), began: false }),
            None => self.queue.push_back((id, reading_s(text) * self.pace)),
        }
    }

    fn hush(&mut self) {
        let waiting = self.queue.drain(..).map(|line| line.0);
        self.dropped.extend(self.read.take().map(|line| line.0).into_iter().chain(waiting).chain(self.beats.drain(..).map(|beat| beat.id)));
    }

    fn change_volume(&mut self, _change_db: f64) {}

    fn give_way(&mut self, _spoken_over: bool) {}

    fn change_rate(&mut self, factor: f64) {
        self.pace *= factor;
    }

    fn skip(&mut self, lost_s: f64) {
        self.skipped_s += lost_s;
    }

    fn block(&mut self, speaker: &mut [f32], events: &mut Vec<TalkEvent>) {
        speaker.fill(0.0);
        let at_s = self.blocks as f64 * BLOCK_S + self.skipped_s;
        self.blocks += 1;
        events.extend(self.dropped.drain(..).map(|id| TalkEvent::Ended { id, at_s }));
        for beat in &mut self.beats {
            if !beat.began && beat.at_s <= at_s {
                beat.began = true;
                events.push(TalkEvent::Began { id: beat.id, at_s });
            }
        }
        let over = |beat: &mut Beat| beat.began && beat.at_s + beat.length_s <= at_s;
        events.extend(self.beats.extract_if(.., over).map(|beat| TalkEvent::Ended { id: beat.id, at_s }));
        if let Some((id, until_s)) = self.read
            && until_s <= at_s
        {
            self.read = None;
            events.push(TalkEvent::Ended { id, at_s });
        }
        if self.read.is_none()
            && let Some((id, length_s)) = self.queue.pop_front()
        {
            self.read = Some((id, at_s + length_s));
            events.push(TalkEvent::Began { id, at_s });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Begins and ends by line, s, over `seconds`.
    fn run(talker: &mut PageTalker, seconds: f64) -> Vec<(u64, bool, f64)> {
        let (mut speaker, mut all) = ([1.0; 160], Vec::new());
        for _ in 0..(seconds / BLOCK_S).round() as u64 {
            let mut events = Vec::new();
            talker.block(&mut speaker, &mut events);
            assert!(speaker.iter().all(|sample| *sample == 0.0), "nothing sounds");
            all.extend(events.iter().map(|event| match event {
                TalkEvent::Began { id, at_s } => (id.0, true, (at_s * 100.0).round() / 100.0),
                TalkEvent::Ended { id, at_s } => (id.0, false, (at_s * 100.0).round() / 100.0),
                TalkEvent::Failed { .. } => unreachable!("nothing is rendered"),
            }));
        }
        all
    }

    #[test]
    fn one_line_follows_the_other_when_it_has_been_read() {
        let mut talker = PageTalker::default();
        talker.say(LineId(1), "Sit upright with both feet on the floor.", None);
        talker.say(LineId(2), "Relax.", None);
        // Eight words, then one.
        assert_eq!(run(&mut talker, 8.0), [(1, true, 0.0), (1, false, 4.68), (2, true, 4.68), (2, false, 6.14)]);
        talker.change_rate(2.0);
        talker.say(LineId(3), "Relax.", None);
        assert_eq!(run(&mut talker, 4.0), [(3, true, 8.0), (3, false, 10.92)]);
    }

    #[test]
    fn what_stands_on_a_beat_comes_exactly_then_and_holds_nothing_up() {
        let mut talker = PageTalker::default();
        talker.say(LineId(1), "Hold your head there.", None);
        talker.say(LineId(2), "seven", Some(1.5));
        assert_eq!(run(&mut talker, 4.0), [(1, true, 0.0), (2, true, 1.5), (2, false, 1.8), (1, false, 2.84)]);
    }

    #[test]
    fn silence_ends_every_line_once() {
        let mut talker = PageTalker::default();
        talker.say(LineId(1), "A long line that nobody reads to its end.", None);
        talker.say(LineId(2), "Another.", None);
        talker.say(LineId(3), "nine", Some(3.0));
        run(&mut talker, 0.5);
        talker.hush();
        let mut ended: Vec<u64> = run(&mut talker, 6.0).iter().map(|event| event.0).collect();
        ended.sort_unstable();
        assert_eq!(ended, [1, 2, 3]);
    }
}
