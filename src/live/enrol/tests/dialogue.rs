use super::*;
use Command::{No, Skip, Stop, Yes};
use command_ear::templates::{Cut, Found, Take, TakeFault};

/// A dialogue whose lines end at once, and everything that it asked for.
struct Rig {
    dialogue: Dialogue,
    now_s: f64,
    said: Vec<String>,
    kept: Vec<(Command, usize)>,
    listening: Option<bool>,
    agreed: bool,
    finished: bool,
}

impl Rig {
    fn new() -> Self {
        let words = [(Stop, "stop"), (Yes, "yes"), (No, "no"), (Skip, "skip")];
        let dialogue = Dialogue::new(words.map(|(command, wording)| (command, wording.to_owned())).to_vec());
        let mut rig = Self { dialogue, now_s: 0.0, said: Vec::new(), kept: Vec::new(), listening: None, agreed: false, finished: false };
        let first = rig.dialogue.begin();
        rig.take(first);
        rig
    }

    fn agreed() -> Self {
        let mut rig = Self::new();
        rig.hears(Yes, 0.9);
        rig
    }

    fn take(&mut self, effects: Vec<EnrolEffect>) {
        for effect in effects {
            match effect {
                EnrolEffect::Say { id, line } => {
                    self.said.push(line.key);
                    self.now_s += 1.0;
                    let more = self.dialogue.on(EnrolEvent::LineEnded { at_s: self.now_s, line: id });
                    self.take(more);
                }
                EnrolEffect::Keep { command, takes } => self.kept.push((command, takes.len())),
                EnrolEffect::Listen { takes, .. } => self.listening = Some(takes),
                EnrolEffect::Agreed => self.agreed = true,
                EnrolEffect::Finish => self.finished = true,
                EnrolEffect::Hush | EnrolEffect::Tone | EnrolEffect::Show(_) => {}
            }
        }
    }

    fn hears(&mut self, command: Command, confidence: f64) {
        let effects = self.dialogue.on(EnrolEvent::Command { at_s: self.now_s, command, confidence });
        self.take(effects);
    }

    fn says(&mut self, said: Result<Cut, TakeFault>) {
        self.now_s += 2.0;
        let found = Found { start_s: self.now_s - 1.0, end_s: self.now_s - 0.5, floor_db: -60.0, said };
        let effects = self.dialogue.on(EnrolEvent::Found { at_s: self.now_s, found });
        self.take(effects);
    }

    fn waits(&mut self, length_s: f64) {
        let until_s = self.now_s + length_s;
        while self.now_s < until_s && !self.finished {
            self.now_s += 0.01;
            let effects = self.dialogue.on(EnrolEvent::Tick { at_s: self.now_s, speaking: false });
            self.take(effects);
        }
    }

    fn count(&self, key: &str) -> usize {
        self.said.iter().filter(|said| *said == key).count()
    }
}

/// A made-up word: `kind` moves its energy through the bands one way or another.
fn word(kind: usize, seed: usize) -> Cut {
    let frame = |i: usize| -> Vec<u8> {
        let ridge = match kind % 4 {
            0 => i / 3,
            1 => 20 - i / 3,
            2 => 10 + (i / 8 % 2) * 8,
            _ => i.abs_diff(30) * 2 / 3,
        };
        (0..23).map(|band: usize| 70 + (60_usize.saturating_sub(12 * band.abs_diff(ridge)) + (i * 7 + band * 3 + seed) % 5) as u8).collect()
    };
    let bytes: Vec<u8> = std::iter::repeat_n(70_u8, 23).chain((0..60).flat_map(frame)).collect();
    let take = Take::from_bytes(&bytes).expect("a picture");
    Cut { take, above_db: 30.0, start_s: 0.1, end_s: 0.6, parts: 1, clipped: false }
}

#[test]
fn three_of_each_in_order_and_all_kept() {
    let mut rig = Rig::agreed();
    assert!(rig.agreed && rig.listening == Some(true));
    for kind in 0..4 {
        for seed in 0..3 {
            rig.says(Ok(word(kind, seed)));
        }
    }
    assert_eq!(rig.kept, [(Stop, 3), (Yes, 3), (No, 3), (Skip, 3)]);
    assert_eq!((rig.count("enrol-say"), rig.count("enrol-say-next"), rig.count("enrol-last-time")), (1, 3, 4));
    assert!(rig.finished && rig.dialogue.learnt().iter().all(|learnt| !learnt.doubtful));
}

#[test]
fn nothing_without_a_yes() {
    let mut rig = Rig::new();
    assert_eq!(rig.listening, Some(false));
    rig.says(Ok(word(0, 0)));
    rig.hears(No, 0.9);
    assert!(rig.finished && !rig.agreed && rig.kept.is_empty());
    let mut silent = Rig::new();
    silent.waits(700.0);
    assert!(silent.finished && !silent.agreed);
    assert_eq!((silent.count("enrol-ask-consent-again"), silent.count("enrol-no-answer")), (3, 1));
    // A doubtful yes is asked for once more.
    let mut doubtful = Rig::new();
    doubtful.hears(Yes, 0.6);
    assert!(!doubtful.agreed && doubtful.count("enrol-was-that-yes") == 1);
    doubtful.hears(Yes, 0.6);
    assert!(doubtful.agreed);
}

#[test]
fn stop_ends_with_what_is_done_kept_and_go_on_goes_on() {
    let mut rig = Rig::agreed();
    // While "stop" is learnt, it is a take.
    rig.hears(Stop, 0.95);
    (0..3).for_each(|seed| rig.says(Ok(word(0, seed))));
    (0..2).for_each(|seed| rig.says(Ok(word(1, seed))));
    rig.hears(Stop, 0.6);
    assert_eq!(rig.count("enrol-halted"), 1);
    assert_eq!(rig.kept, [(Stop, 3), (Yes, 2)]);
    rig.hears(Command::GoOn, 0.9);
    assert_eq!(rig.said.last().map(String::as_str), Some("enrol-say"));
    rig.hears(Stop, 0.9);
    rig.waits(HALT_S + 0.1);
    assert!(rig.finished);
    let learnt = rig.dialogue.learnt();
    assert_eq!(learnt.iter().map(|l| (l.command, l.doubtful)).collect::<Vec<_>>(), [(Stop, false), (Yes, true)]);
}

#[test]
fn a_useless_saying_is_asked_for_again_and_four_leave_the_word() {
    let mut rig = Rig::agreed();
    rig.says(Ok(Cut { above_db: 8.0, ..word(0, 0) }));
    assert_eq!(rig.said.last().map(String::as_str), Some("enrol-too-soft"));
    for (fault, key) in [(TakeFault::TooEarly, "enrol-too-early"), (TakeFault::TooLong, "enrol-too-long")] {
        rig.says(Err(fault));
        assert_eq!(rig.said.last().map(String::as_str), Some(key));
    }
    rig.says(Ok(Cut { clipped: true, ..word(0, 0) }));
    assert_eq!(rig.said.iter().rev().take(2).map(String::as_str).collect::<Vec<_>>(), ["enrol-say-next", "enrol-leave-for-now"]);
}

#[test]
fn a_word_taken_for_another_is_told_once_and_skip_twice_leaves_it_out() {
    let mut rig = Rig::agreed();
    rig.hears(No, 0.9);
    rig.says(Ok(word(0, 0)));
    assert_eq!((rig.count("enrol-sounded-like"), rig.dialogue.words[0].takes.len()), (1, 0));
    rig.hears(No, 0.9);
    rig.says(Ok(word(0, 0)));
    assert_eq!((rig.count("enrol-sounded-like"), rig.dialogue.words[0].takes.len()), (1, 1));
    for _ in 0..2 {
        rig.hears(Skip, 0.9);
        rig.says(Ok(word(3, 0)));
    }
    assert_eq!((rig.count("enrol-leave-out"), rig.count("enrol-left-out"), rig.count("enrol-say-next")), (1, 1, 1));
}

#[test]
fn a_doubtful_word_is_asked_for_again_at_once_and_at_the_end() {
    let mut rig = Rig::agreed();
    rig.says(Ok(word(0, 0)));
    rig.says(Ok(word(0, 1)));
    rig.says(Ok(word(2, 0)));
    assert_eq!(rig.count("enrol-unlike"), 1);
    rig.says(Ok(word(2, 1)));
    assert_eq!(rig.kept, [(Stop, 3)], "kept, but doubted");
    for kind in 1..4 {
        (0..3).for_each(|seed| rig.says(Ok(word(kind, seed))));
    }
    assert_eq!(rig.count("enrol-doubtful-again"), 1);
    rig.says(Ok(word(0, 2)));
    assert!(rig.finished);
    assert!(rig.dialogue.learnt().iter().all(|learnt| !learnt.doubtful), "{:?}", rig.dialogue.learnt());
}

#[test]
fn silence_is_taken_kindly() {
    let mut rig = Rig::agreed();
    rig.waits(60.0);
    assert_eq!((rig.count("enrol-say-again"), rig.count("enrol-wait")), (2, 1));
    rig.waits(700.0);
    assert!(rig.finished && rig.kept.is_empty());
}
