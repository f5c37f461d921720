//! A session without sound: lines take a second each, the clock ticks every 10 ms, the test plays the client.

use std::collections::VecDeque;

use crate::*;
use model::{Hold, Utterance, VoiceTask};
use routine::{CountedPhase, Exercise, NoAnswer, Phase, QuestionItem, Routine, Step, Timing, Work};

const LINE_S: f64 = 1.0;
const COUNT_S: f64 = 0.3;

pub struct Rig {
    pub engine: Engine,
    ticks: u64,
    /// Queued lines and when the first of them ends.
    queue: VecDeque<(LineId, f64)>,
    beats: Vec<(LineId, f64)>,
    /// Lines up to here were there before the client's last act.
    mark: usize,
    pub said: Vec<(f64, String, Option<f64>)>,
    pub facts: Vec<Entry>,
    pub listening: Option<Listening>,
    pub view: View,
    pub volume_db: f64,
    pub slower: f64,
    pub resumed: Option<bool>,
    pub attended: Vec<(String, Option<bool>)>,
    pub finished: bool,
}

impl Rig {
    pub fn new(steps: Vec<Step>, context: SessionContext) -> Self {
        let routine = Routine {
            title: "Evening routine".into(),
            steps,
            no_answer: NoAnswer { ask_again_after_s: 12.0, asks: 2, give_up_after_s: 600.0 },
            cue_words: None,
            feedback_every: 5,
            loud_limit_s: 300.0,
            clinician: routine::ClinicianWords::default(),
            looking_back: routine::LookingBack::default(),
        };
        Self {
            engine: Engine::new(routine, context),
            ticks: 0,
            queue: VecDeque::new(),
            beats: Vec::new(),
            mark: 0,
            said: Vec::new(),
            facts: Vec::new(),
            listening: None,
            view: View::default(),
            volume_db: 0.0,
            slower: 1.0,
            resumed: None,
            attended: Vec::new(),
            finished: false,
        }
    }

    pub fn limit_loud_s(&mut self, limit_s: f64) {
        self.engine.practice.routine.loud_limit_s = limit_s;
    }

    /// A clinician has spoken for this exercise.
    pub fn clinician_says(&mut self, exercise: &str) {
        let word = routine::ClinicianWord { who: "the speech therapist".into(), why: "as in the clinic".into() };
        self.engine.practice.routine.clinician.exercises.insert(exercise.into(), word);
    }

    /// A clinician has spoken for the practice as a whole.
    pub fn clinician_says_whole(&mut self) {
        let word = routine::ClinicianWord { who: "the speech therapist".into(), why: "as in the clinic".into() };
        self.engine.practice.routine.clinician.whole = Some(word);
    }

    /// What is asked at the end.
    pub fn asks(&mut self, ratings: &[Rating], weekly: bool) {
        self.engine.practice.routine.looking_back = routine::LookingBack { ratings: ratings.to_vec(), weekly };
    }

    /// One of the answers that are listened for, by its message.
    pub fn answer(&mut self, key: &str) {
        let listening = self.listening.as_ref().expect("listening");
        assert!(listening.worded.iter().any(|worded| worded == key), "{key} cannot be answered now: {:?}", listening.worded);
        self.mark = self.said.len();
        self.event(Event::Answer { at_s: self.now_s(), text: key.into(), confidence: 0.95 });
    }

    pub fn cue_words(&mut self, words: &str) {
        self.engine.practice.routine.cue_words = Some(words.into());
    }

    pub fn may_say(&self, command: Command) -> bool {
        self.listening.as_ref().is_some_and(|listening| listening.commands.contains(&command))
    }

    pub fn now_s(&self) -> f64 {
        self.ticks as f64 * 0.01
    }

    pub fn event(&mut self, event: Event) {
        let effects = self.engine.on(event);
        let now_s = self.now_s();
        for effect in effects {
            match effect {
                Effect::Say { id, line, on_beat_s } => {
                    self.said.push((now_s, line.key, on_beat_s));
                    match on_beat_s {
                        Some(beat_s) => self.beats.push((id, beat_s + COUNT_S)),
                        None => {
                            let free_s = self.queue.back().map_or(now_s, |last| last.1.max(now_s));
                            self.queue.push_back((id, free_s + LINE_S));
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
                Effect::Volume { change_db } => self.volume_db += change_db,
                Effect::SpeechRate { factor } => self.slower *= factor,
                Effect::Record(entry) => self.facts.push(entry),
                Effect::Show(view) => self.view = view,
                Effect::Resume(go_on) => self.resumed = Some(go_on),
                Effect::Attended { participant, present } => self.attended.push((participant, present)),
                Effect::Finish => self.finished = true,
            }
        }
    }

    pub fn tick(&mut self) {
        self.advance(1);
    }

    /// A long time of nothing, in steps of 0.2 s.
    pub fn idle_s(&mut self, seconds: f64) {
        for _ in 0..(seconds * 5.0) as u64 {
            self.advance(20);
        }
    }

    fn advance(&mut self, ticks: u64) {
        self.ticks += ticks;
        let at_s = self.now_s();
        while self.queue.front().is_some_and(|q| q.1 <= at_s) {
            if let Some((line, _)) = self.queue.pop_front() {
                self.event(Event::LineEnded { at_s, line });
            }
        }
        let over: Vec<LineId> = self.beats.iter().filter(|b| b.1 <= at_s).map(|b| b.0).collect();
        self.beats.retain(|b| b.1 > at_s);
        for line in over {
            self.event(Event::LineEnded { at_s, line });
        }
        self.event(Event::Tick { at_s });
    }

    pub fn run_s(&mut self, seconds: f64) {
        for _ in 0..(seconds * 100.0).round() as u64 {
            self.tick();
        }
    }

    /// Runs until something is so, at most `limit_s`.
    pub fn until(&mut self, so: impl Fn(&Self) -> bool, limit_s: f64) {
        for _ in 0..(limit_s * 100.0) as u64 {
            if so(self) {
                return;
            }
            self.tick();
        }
        panic!("not within {limit_s} s; said: {:?}", self.keys());
    }

    /// A line is being said.
    pub fn is_speaking(&self) -> bool {
        !self.queue.is_empty()
    }

    /// What was said since the last command.
    pub fn keys_since_mark(&self) -> Vec<&str> {
        self.said.iter().skip(self.mark).map(|said| said.1.as_str()).collect()
    }

    /// Runs until a line with this key has been said and ended, at most `limit_s`.
    pub fn until_said(&mut self, key: &str, limit_s: f64) {
        for _ in 0..(limit_s * 100.0) as u64 {
            let seen = self.said.iter().skip(self.mark).any(|s| s.1 == key);
            if seen && self.queue.is_empty() {
                self.mark = self.said.len();
                return;
            }
            self.tick();
        }
        panic!("{key} was not said within {limit_s} s; said: {:?}", self.keys());
    }

    pub fn command(&mut self, command: Command) {
        self.unsure(command, 0.95);
    }

    pub fn unsure(&mut self, command: Command, confidence: f64) {
        let listening = self.listening.as_ref().expect("listening");
        assert!(
            listening.commands.contains(&command) || listening::ALWAYS.contains(&command),
            "{command:?} cannot be said now: {:?}",
            listening.commands
        );
        self.mark = self.said.len();
        let at_s = self.now_s();
        self.event(Event::Command { at_s, command, confidence, text: command.name().into() });
    }

    pub fn hold(&mut self, duration_s: f64) {
        let onset_s = self.now_s();
        assert!(matches!(self.listening.as_ref().map(|l| l.voice), Some(VoiceTask::Hold(_))), "no hold is open");
        self.run_s(0.3);
        self.event(Event::Onset { at_s: self.now_s(), onset_s });
        self.run_s(duration_s);
        self.event(Event::Offset { at_s: self.now_s(), hold: hold(onset_s, duration_s) });
    }

    pub fn speak(&mut self, duration_s: f64, syllables: u32) {
        let onset_s = self.now_s();
        self.run_s(0.2);
        self.event(Event::SpeechBegan { at_s: self.now_s(), onset_s });
        self.run_s(duration_s);
        let utterance = Utterance {
            f0_span_st: f64::NAN,
            f0_final_st: f64::NAN,
            onset_s,
            offset_s: onset_s + duration_s,
            duration_s,
            level_mean_db: -30.0,
            f0_median_hz: 120.0,
            syllables,
            syllable_rate_hz: f64::from(syllables) / duration_s,
            syllable_irregularity_pct: 5.0,
        };
        self.event(Event::Spoken { at_s: self.now_s(), utterance });
    }

    pub fn keys(&self) -> Vec<&str> {
        self.said.iter().map(|s| s.1.as_str()).collect()
    }

    pub fn count(&self, key: &str) -> usize {
        self.said.iter().filter(|s| s.1 == key).count()
    }

    pub fn kinds(&self) -> Vec<String> {
        self.facts.iter().map(|entry| serde_json::to_value(entry).expect("json")["kind"].as_str().expect("kind").to_owned()).collect()
    }

    /// To the first cue of the first step, when no agreement is needed.
    pub fn begin(&mut self) {
        self.until_said("ask-ready", 30.0);
        self.run_s(2.0);
        self.command(Command::Ready);
    }
}

pub fn hold(onset_s: f64, duration_s: f64) -> Hold {
    Hold {
        onset_s,
        offset_s: onset_s + duration_s,
        duration_s,
        sure_s: onset_s + 0.3,
        f0_median_hz: 118.0,
        f0_span_st: 0.6,
        f0_sd_st: 0.2,
        level_mean_db: -28.0,
        level_slope_db_per_s: -0.2,
        level_fall_db: 1.4,
        breaks: 0,
        over_room_db: 40.0,
        masked_s: 0.0,
        clipped_s: 0.0,
        quality: None,
    }
}

pub fn step(id: &str, timing: Timing, repetitions: u32, work: Work) -> Step {
    Step {
        exercise: Exercise { id: id.into(), timing, cautions: vec!["dizzy".into()], needs_agreement: false, waits_for_ready: false },
        sets: 1,
        repetitions,
        rest_s: 3.0,
        set_rest_s: 5.0,
        work,
        posture: None,
        ramp_stage: None,
    }
}

pub fn voiced(repetitions: u32) -> Step {
    step(
        "long-ah",
        Timing::Voiced,
        repetitions,
        Work::Voiced { target_s: Some(14.0), max_break_s: 0.3, min_hold_s: 0.5, glide: false, cues_at_s: vec![], ladder: None },
    )
}

pub fn posture() -> Step {
    let phases = [("hold", 50.0), ("tighter", 10.0)].map(|(name, length_s)| Phase { name: name.into(), length_s }).to_vec();
    let mut step = step("lip-press-smile", Timing::Timed, 1, Work::Timed { phases, count_every_s: 10, count_last_s: 5 });
    step.exercise.needs_agreement = true;
    step.exercise.waits_for_ready = true;
    step
}

pub fn paced(rounds: u32) -> Step {
    let phases = [("in", 3), ("out", 8)].map(|(name, counts)| CountedPhase { name: name.into(), counts }).to_vec();
    let mut step = step("nasal-breathing", Timing::Paced, rounds, Work::Paced { phases, beat_s: 1.0 });
    step.rest_s = 0.0;
    step
}

pub fn repeated(repetitions: u32, sip_every: Option<u32>) -> Step {
    step("tongue-hold-swallow", Timing::Repeated, repetitions, Work::Repeated { next_cue_after_s: None, sip_every, setting: None })
}

pub fn reading() -> Step {
    step(
        "functional-phrases",
        Timing::ReadAloud,
        2,
        Work::ReadAloud { phrases: vec!["Good morning.".into(), "A cup of tea.".into()], melody: false, beat_s: None },
    )
}

pub fn rapid() -> Step {
    step("syllable-repetition", Timing::Rapid, 1, Work::Rapid { syllables: "pa-ta-ka".into(), length_s: 5.0 })
}

pub fn question() -> Step {
    let item = QuestionItem {
        kind: None,
        clue: "It holds money and has a river beside it.".into(),
        answers: vec!["bank".into()],
        near: vec!["purse".into()],
        hint: Some("It begins with b.".into()),
        fact: None,
    };
    step("word-questions", Timing::Question, 1, Work::Question { items: vec![item], think_s: 30.0 })
}

pub fn rest(length_s: Option<f64>) -> Step {
    step("rest", Timing::Rest, 1, Work::Rest { length_s })
}

/// One step of every way of timing.
pub fn whole() -> Vec<Step> {
    vec![voiced(2), posture(), paced(2), repeated(2, None), reading(), rapid(), question(), rest(Some(4.0))]
}
