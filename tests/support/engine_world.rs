//! The engine in a world without sound: lines take their time, the clock moves, and every law is watched at every step.

#[path = "heard.rs"]
mod heard;

pub use heard::{hold, utterance};

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use hear::VoiceTask;
use routine::{CountedPhase, Exercise, Ladder, NamingItem, NoAnswer, Phase, QuestionItem, Routine, Step, Timing, Work};
use session::{Climbs, Command, Effect, Engine, Entry, Event, Fact, LineId, Listening, Position, Rung, SessionContext, listening};

/// Nothing may be said for so long after "stop", s (design: "silent at once; then after a second").
const STOP_SILENCE_S: f64 = 0.99;

#[derive(Clone)]
pub struct World {
    pub engine: Engine,
    routine: Routine,
    agreed: BTreeSet<String>,
    pub now_s: f64,
    /// Queued lines with their keys, and when the first of them ends.
    queue: VecDeque<(LineId, String, f64)>,
    beats: Vec<(LineId, f64)>,
    pub facts: Vec<Entry>,
    pub listening: Option<Listening>,
    /// Keys of lines that have ended since the client last looked.
    pub ended: Vec<String>,
    /// Keys of the last lines.
    pub said: VecDeque<String>,
    pub finished: bool,
    silent_until_s: f64,
    done_before: BTreeMap<u32, u32>,
    pub steps: u64,
    kept_beats: Option<Vec<(String, f64)>>,
}

impl World {
    pub fn new(routine: &Routine, context: SessionContext) -> Self {
        Self {
            agreed: context.agreed.clone(),
            done_before: context.resume_counts.clone(),
            engine: Engine::new(routine.clone(), context),
            routine: routine.clone(),
            now_s: 0.0,
            queue: VecDeque::new(),
            beats: Vec::new(),
            facts: Vec::new(),
            listening: None,
            ended: Vec::new(),
            said: VecDeque::new(),
            finished: false,
            silent_until_s: 0.0,
            steps: 0,
            kept_beats: None,
        }
    }

    /// One event, and every law.
    pub fn event(&mut self, event: Event) {
        self.steps += 1;
        let was_over = self.engine.is_over();
        let clear = |confidence: f64| confidence >= 0.5;
        let stops = matches!(&event, Event::Command { command: Command::Stop, confidence, .. } if clear(*confidence)) && !was_over;
        // Any other clear wish ends the silence.
        if matches!(&event, Event::Command { confidence, .. } if clear(*confidence)) || matches!(event, Event::Interrupt { .. }) {
            self.silent_until_s = 0.0;
        }
        let told_s = event.at_s();
        let effects = self.engine.on(event);
        self.now_s = self.now_s.max(told_s);
        assert!(!was_over || effects.is_empty(), "something happened after the end: {effects:?}");
        if stops {
            assert!(effects.contains(&Effect::Hush), "stop did not silence: {effects:?}");
            let after = effects.iter().rev().take_while(|effect| **effect != Effect::Hush);
            assert!(!after.into_iter().any(|effect| matches!(effect, Effect::Say { .. })), "spoke on stop: {effects:?}");
        }
        for effect in effects {
            self.effect(effect);
        }
        if stops {
            self.silent_until_s = self.now_s + STOP_SILENCE_S;
            assert!(self.is_halted(), "stop did not end what was under way: {:?}", self.listening);
        }
    }

    pub fn is_halted(&self) -> bool {
        // After chest pain or without breath it stands still in its own way.
        let still = [listening::HALTED, listening::EMERGENCY].map(listening::with_safety);
        self.listening.as_ref().is_some_and(|l| still.contains(&l.commands) && !matches!(l.voice, VoiceTask::Hold(_)))
    }

    /// It calls for help.
    pub fn is_emergency(&self) -> bool {
        self.listening.as_ref().is_some_and(|l| l.commands == listening::with_safety(listening::EMERGENCY))
    }

    fn effect(&mut self, effect: Effect) {
        let now_s = self.now_s;
        match effect {
            Effect::Say { id, line, on_beat_s } => {
                let silent = now_s < self.silent_until_s;
                assert!(!silent, "{} was said {:.2} s before the silence after stop was over", line.key, self.silent_until_s - now_s);
                self.said.push_back(line.key.clone());
                if self.said.len() > 12 {
                    self.said.pop_front();
                }
                match on_beat_s {
                    Some(beat_s) => {
                        assert!(beat_s >= now_s - 0.11, "the beat of {} lies behind: {beat_s} at {now_s}", line.key);
                        if let Some(kept) = &mut self.kept_beats {
                            kept.push((line.key.clone(), beat_s));
                        }
                        self.beats.push((id, beat_s + 0.3));
                    }
                    None => {
                        let free_s = self.queue.back().map_or(now_s, |last| last.2.max(now_s));
                        self.queue.push_back((id, line.key, free_s + 1.0));
                    }
                }
            }
            Effect::Hush => {
                let dropped: Vec<LineId> = self.queue.drain(..).map(|q| q.0).chain(self.beats.drain(..).map(|b| b.0)).collect();
                for line in dropped {
                    self.event(Event::LineEnded { at_s: now_s, line });
                }
            }
            Effect::Listen(listening) => self.listening = Some(listening),
            Effect::Record(entry) => self.keep(entry),
            Effect::Finish => self.finished = true,
            Effect::Volume { change_db } => assert!(change_db.is_finite()),
            Effect::SpeechRate { factor } => assert!(factor.is_finite() && factor > 0.0),
            // What was done before counts for a practice that is gone on with, and for no other.
            Effect::Resume(goes_on) => self.done_before.retain(|_, _| goes_on),
            Effect::Show(_) | Effect::Attended { .. } => {}
        }
    }

    fn keep(&mut self, entry: Entry) {
        assert!(entry.at_s.is_finite() && entry.at_s <= self.now_s, "a fact of the future: {entry:?} at {}", self.now_s);
        if let Some(last) = self.facts.last() {
            assert!(entry.at_s >= last.at_s, "time ran back: {last:?}, {entry:?}");
        }
        if let Fact::Agreement { given: true, exercises, .. } = &entry.fact {
            self.agreed.extend(exercises.iter().cloned());
        }
        let step = entry.position.and_then(|at| self.routine.steps.get((at.step - 1) as usize));
        if let (Fact::StepBegun { .. }, Some(step)) = (&entry.fact, step) {
            let allowed = !step.exercise.needs_agreement || self.agreed.contains(&step.exercise.id);
            assert!(allowed, "began {} without agreement", step.exercise.id);
        }
        self.facts.push(entry.clone());
        if let Some(at) = entry.position {
            let step = step.unwrap_or_else(|| panic!("a place outside the routine: {entry:?}"));
            assert!((1..=step.sets).contains(&at.set) && (1..=step.repetitions).contains(&at.repetition), "{entry:?}");
            let prescribed = step.sets * step.repetitions;
            let done = completed(&self.facts, at.step) + self.done_before.get(&at.step).copied().unwrap_or(0);
            assert!(done <= prescribed, "step {} was done {done} times, prescribed {prescribed}", at.step);
        }
        if let Fact::StepDone { .. } = &entry.fact {
            let times = self
                .facts
                .iter()
                .filter(|e| matches!(e.fact, Fact::StepDone { .. }) && e.position.map(|p| p.step) == entry.position.map(|p| p.step))
                .count();
            assert_eq!(times, 1, "counted twice: {entry:?}");
        }
        if let Fact::StepDone { repetitions_done, repetitions_prescribed, .. }
        | Fact::StepStopped { repetitions_done, repetitions_prescribed, .. } = &entry.fact
        {
            assert!(repetitions_done <= repetitions_prescribed, "{entry:?}");
        }
    }

    /// Puts a fact through the laws, as if the engine had given it.
    pub fn replay(&mut self, entry: Entry) {
        self.keep(entry);
    }

    pub fn keep_beats(&mut self) {
        self.kept_beats = Some(Vec::new());
    }

    /// Keys and beats of what was said on a beat, s.
    pub fn beats_kept(&self) -> &[(String, f64)] {
        self.kept_beats.as_deref().unwrap_or_default()
    }

    /// The clock moves in steps of 0.1 s; lines end on their way.
    pub fn run_s(&mut self, seconds: f64) {
        for _ in 0..(seconds * 10.0).round() as u64 {
            let at_s = self.now_s + 0.1;
            while self.queue.front().is_some_and(|line| line.2 <= at_s) {
                if let Some((line, key, _)) = self.queue.pop_front() {
                    self.ended.push(key);
                    self.event(Event::LineEnded { at_s, line });
                }
            }
            let over: Vec<LineId> = self.beats.iter().filter(|beat| beat.1 <= at_s).map(|beat| beat.0).collect();
            self.beats.retain(|beat| beat.1 > at_s);
            for line in over {
                self.event(Event::LineEnded { at_s, line });
            }
            self.event(Event::Tick { at_s });
        }
    }

    pub fn command(&mut self, command: Command, confidence: f64) {
        self.event(Event::Command { at_s: self.now_s, command, confidence, text: command.name().into() });
    }

    pub fn is_speaking(&self) -> bool {
        !self.queue.is_empty()
    }

    pub fn count(&self, wanted: impl Fn(&Fact) -> bool) -> usize {
        self.facts.iter().filter(|entry| wanted(&entry.fact)).count()
    }
}

/// A repetition that was made whole.
pub fn is_whole(fact: &Fact) -> bool {
    match fact {
        Fact::HoldMeasured { complete, .. }
        | Fact::PostureHeld { complete, .. }
        | Fact::RoundPaced { complete, .. }
        | Fact::Talked { complete, .. }
        | Fact::CategoryNamed { complete, .. } => *complete,
        Fact::RepetitionDone { .. } | Fact::PhraseRead { .. } | Fact::SyllablesCounted { .. } | Fact::QuestionAnswered { .. } => true,
        _ => false,
    }
}

fn completed(facts: &[Entry], step: u32) -> u32 {
    facts.iter().filter(|entry| entry.position.is_some_and(|at: Position| at.step == step) && is_whole(&entry.fact)).count() as u32
}

/// A step of each way of timing, by number; `sets` and `repetitions` as given.
pub fn step(kind: u8, sets: u32, repetitions: u32, rest_s: f64) -> Step {
    let (id, timing, work) = match kind % 16 {
        0 => (
            "long-ah",
            Timing::Voiced,
            Work::Voiced { target_s: Some(14.0), max_break_s: 0.3, min_hold_s: 0.5, glide: false, cues_at_s: vec![2.0, 4.0], ladder: None },
        ),
        1 => {
            let phases = [("hold", 5.5), ("tighter", 3.0)].map(|(name, length_s)| Phase { name: name.into(), length_s }).to_vec();
            ("lip-press-smile", Timing::Timed, Work::Timed { phases, count_every_s: 10, count_last_s: 5 })
        }
        2 => {
            let phases = [("in", 3), ("out", 5)].map(|(name, counts)| CountedPhase { name: name.into(), counts }).to_vec();
            ("nasal-breathing", Timing::Paced, Work::Paced { phases, beat_s: 1.0 })
        }
        3 => ("tongue-hold-swallow", Timing::Repeated, Work::Repeated { next_cue_after_s: None, sip_every: None, setting: None }),
        4 => ("mid-swallow-hold", Timing::Repeated, Work::Repeated { next_cue_after_s: None, sip_every: Some(1), setting: None }),
        5 => ("shoulder-rolls", Timing::Repeated, Work::Repeated { next_cue_after_s: Some(4.0), sip_every: None, setting: None }),
        6 => (
            "functional-phrases",
            Timing::ReadAloud,
            Work::ReadAloud { phrases: vec!["Good morning.".into(), "A cup of tea.".into()], melody: false, beat_s: None },
        ),
        13 => {
            ("paced-phrases", Timing::ReadAloud, Work::ReadAloud { phrases: vec!["You're here?".into()], melody: true, beat_s: Some(0.7) })
        }
        14 => {
            let rungs = vec![Rung::Low, Rung::Middle, Rung::High];
            let ladder = Some(Ladder { climbs: Climbs::Level, rungs, goal: 3.0 });
            let work = Work::Voiced { target_s: Some(3.0), max_break_s: 0.3, min_hold_s: 0.5, glide: false, cues_at_s: vec![], ladder };
            ("loudness-steps", Timing::Voiced, work)
        }
        15 => {
            let work = Work::Repeated { next_cue_after_s: None, sip_every: None, setting: Some("two turns".into()) };
            ("voluntary-cough", Timing::Repeated, work)
        }
        11 => ("talk-on-a-prompt", Timing::Talk, Work::Talk { passage: None, prompts: vec!["Your day?".into()], length_s: 20.0 }),
        12 => (
            "reading-passage",
            Timing::Talk,
            Work::Talk { passage: Some("A short story. ".repeat(8)), prompts: Vec::new(), length_s: 60.0 },
        ),
        7 => ("syllable-repetition", Timing::Rapid, Work::Rapid { syllables: "pa-ta-ka".into(), length_s: 5.0 }),
        8 => {
            let item = QuestionItem {
                kind: None,
                clue: "It holds money.".into(),
                answers: vec!["bank".into()],
                near: vec!["purse".into()],
                hint: Some("By a river.".into()),
                fact: None,
            };
            ("word-questions", Timing::Question, Work::Question { items: vec![item], think_s: 15.0 })
        }
        9 => {
            let item = NamingItem {
                clue: "Name animals.".into(),
                category: "animals".into(),
                members: vec!["dog | dogs".into(), "cat".into()],
                fact: None,
            };
            ("category-naming", Timing::Question, Work::Naming { items: vec![item], length_s: 20.0 })
        }
        _ => ("rest", Timing::Rest, Work::Rest { length_s: repetitions.is_multiple_of(2).then_some(4.0) }),
    };
    let rest = matches!(work, Work::Rest { .. });
    let guarded = matches!(kind % 13, 1 | 3 | 4);
    Step {
        exercise: Exercise {
            id: id.into(),
            timing,
            cautions: vec!["dizzy".into()],
            needs_agreement: guarded,
            waits_for_ready: kind % 13 == 1,
        },
        sets: if rest { 1 } else { sets },
        repetitions: if rest { 1 } else { repetitions },
        rest_s,
        set_rest_s: rest_s * 2.0,
        work,
        posture: None,
        ramp_stage: None,
    }
}

pub fn routine(steps: Vec<Step>, loud_limit_s: f64) -> Routine {
    Routine {
        title: "Evening routine".into(),
        steps,
        no_answer: NoAnswer { ask_again_after_s: 12.0, asks: 2, give_up_after_s: 120.0 },
        cue_words: Some("strong voice".into()),
        feedback_every: 2,
        loud_limit_s,
        clinician: routine::ClinicianWords::default(),
        looking_back: routine::LookingBack::default(),
    }
}

/// Answers everything as a diligent client would; call after each run.
pub fn diligent(world: &mut World) {
    for key in std::mem::take(&mut world.ended) {
        if world.is_speaking() {
            continue;
        }
        let at_s = world.now_s;
        match key.as_str() {
            "ask-resume" | "ask-agreement" | "ask-confirm" => world.command(Command::Yes, 0.95),
            "offer-rest" => world.command(Command::No, 0.95),
            "ask-ready" | "ask-ready-first" | "ask-position" | "ask-rest-over" => world.command(Command::Ready, 0.95),
            "ask-sip" => world.command(Command::Done, 0.95),
            // A ladder has a line for each rung in place of a cue.
            key if key == "ex-long-ah-cue" || key.contains("-rung-") => {
                world.run_s(0.3);
                world.event(Event::Onset { at_s: world.now_s, onset_s: at_s });
                world.run_s(6.0);
                world.event(Event::Offset { at_s: world.now_s, hold: hold(at_s, 6.0) });
            }
            "ex-tongue-hold-swallow-cue" | "ex-mid-swallow-hold-cue" | "ex-voluntary-cough-cue" => {
                world.run_s(2.0);
                world.command(Command::Done, 0.95);
            }
            "talk-prompt" | "ex-reading-passage-cue" => {
                world.event(Event::SpeechBegan { at_s, onset_s: at_s });
                world.run_s(12.0);
                world.event(Event::Spoken { at_s: world.now_s, utterance: utterance(at_s, 12.0, 50) });
                world.command(Command::Done, 0.95);
            }
            "read-phrase" | "ex-syllable-repetition-cue" => {
                world.event(Event::SpeechBegan { at_s, onset_s: at_s });
                world.run_s(2.0);
                world.event(Event::Spoken { at_s: world.now_s, utterance: utterance(at_s, 2.0, 9) });
            }
            key if key.starts_with("ask-sign-") => world.command(Command::No, 0.95),
            "ask-missed" => world.event(Event::Answer { at_s, text: "answer-forgot".into(), confidence: 0.9 }),
            "ask-effort" | "ask-tiredness" | "ask-pain" | "ask-voice" => {
                world.event(Event::Answer { at_s, text: "answer-4".into(), confidence: 0.9 });
            }
            "question-clue" => {
                world.run_s(1.0);
                world.event(Event::Answer { at_s: world.now_s, text: "bank".into(), confidence: 0.9 });
            }
            _ => {}
        }
    }
}
