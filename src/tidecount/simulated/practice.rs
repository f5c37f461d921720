//! A practice led by the real engine with a simulated client, without sound: what the ears would report is made up, what the engine asks,
//! says, counts and keeps is real. A practice takes milliseconds.

use std::collections::VecDeque;

use hear::{Hold, Utterance};
use model::{Command, Effect, Entry, Event, Fact, LevelCalibration, LevelTerms, LineId};
use routine::Routine;
use session::{Engine, SessionContext};

/// A line takes so long to say, s: about the mean of the catalogue.
const LINE_S: f64 = 3.0;
/// The clock moves by this, s.
const STEP_S: f64 = 0.1;
/// Whatever happens, a practice is over after this, s.
const LONGEST_S: f64 = 3600.0;
/// The loudest that the simulated microphone takes, dB SPL at 30 cm.
const FULL_SCALE_DB: f64 = 100.0;
/// How sure the ears are of what they hear.
const SURE: f64 = 0.95;

/// A client on one day.
#[derive(Debug, Clone, PartialEq)]
pub struct Client {
    /// How long a vowel is held, s.
    pub hold_s: f64,
    /// Level of held vowels, dB re full scale.
    pub vowel_db: f64,
    /// Level of speech, dB re full scale.
    pub speech_db: f64,
    /// The microphone was calibrated with a sound level meter.
    pub calibrated: bool,
    /// Usual pitch, Hz.
    pub f0_hz: f64,
    /// Range of a glide, semitones.
    pub range_st: f64,
    /// Ratings, 0 to 10.
    pub effort: u32,
    pub tiredness: u32,
    pub voice: u32,
    /// Says yes when asked for coughing at meals.
    pub coughs: bool,
    /// Says "I'm dizzy" at the second held vowel.
    pub dizzy: bool,
    /// Leaves after the first exercise.
    pub leaves: bool,
}

/// Leads one practice from its greeting to its end, and gives what is to be kept.
pub fn lead(routine: &Routine, context: SessionContext, client: &Client) -> Vec<Entry> {
    let mut led = Led {
        engine: Engine::new(routine.clone(), context),
        client,
        now_s: 0.0,
        queue: VecDeque::new(),
        kept: Vec::new(),
        ended: VecDeque::new(),
        holds: 0,
        over: false,
    };
    while !led.over && led.now_s < LONGEST_S {
        led.pass(STEP_S);
        while let Some(key) = led.ended.pop_front() {
            // Nobody answers before the last word.
            if led.queue.is_empty() {
                led.answer(&key);
            }
        }
    }
    led.kept
}

struct Led<'a> {
    engine: Engine,
    client: &'a Client,
    now_s: f64,
    /// Lines that are being said: id, key, when each ends.
    queue: VecDeque<(LineId, String, f64)>,
    kept: Vec<Entry>,
    /// Keys of lines that have ended and were not answered yet.
    ended: VecDeque<String>,
    holds: u32,
    over: bool,
}

impl Led<'_> {
    fn pass(&mut self, seconds: f64) {
        for _ in 0..(seconds / STEP_S).round().max(1.0) as u32 {
            self.now_s += STEP_S;
            let at_s = self.now_s;
            while self.queue.front().is_some_and(|line| line.2 <= at_s) {
                if let Some((line, key, _)) = self.queue.pop_front() {
                    self.ended.push_back(key);
                    self.tell(Event::LineEnded { at_s, line });
                }
            }
            self.tell(Event::Tick { at_s });
        }
    }

    fn tell(&mut self, event: Event) {
        if self.over {
            return;
        }
        for effect in self.engine.on(event) {
            match effect {
                Effect::Say { id, line, on_beat_s } => {
                    let from_s = on_beat_s.unwrap_or_else(|| self.queue.back().map_or(self.now_s, |last| last.2.max(self.now_s)));
                    let length_s = if on_beat_s.is_some() { 0.3 } else { LINE_S };
                    self.queue.push_back((id, line.key, from_s + length_s));
                }
                Effect::Hush => {
                    let dropped: Vec<LineId> = self.queue.drain(..).map(|line| line.0).collect();
                    dropped.into_iter().for_each(|line| self.tell(Event::LineEnded { at_s: self.now_s, line }));
                }
                Effect::Record(entry) => self.keep(entry),
                Effect::Finish => self.over = true,
                Effect::Listen(_)
                | Effect::Resume(_)
                | Effect::Volume { .. }
                | Effect::SpeechRate { .. }
                | Effect::Attended { .. }
                | Effect::Show(_) => {}
            }
        }
    }

    /// Behind the first entry stands the microphone, as in every practice.
    fn keep(&mut self, entry: Entry) {
        let first = self.kept.is_empty();
        let at_s = entry.at_s;
        self.kept.push(self.with_scale(entry));
        if first {
            let fact = Fact::MicrophoneUsed {
                system: "simulated".into(),
                name: "simulated microphone".into(),
                rate_hz: 48_000,
                gain: "100 %".into(),
            };
            self.kept.push(Entry { at_s, fact, position: None });
        }
    }

    /// Levels in dB SPL where the microphone is calibrated.
    fn with_scale(&self, mut entry: Entry) -> Entry {
        let (Fact::HoldMeasured { level_mean_db, level_calibrated, level_terms, .. }
        | Fact::PhraseRead { level_mean_db, level_calibrated, level_terms, .. }
        | Fact::Talked { level_mean_db, level_calibrated, level_terms, .. }) = &mut entry.fact
        else {
            return entry;
        };
        let calibration = if self.client.calibrated { LevelCalibration::Meter } else { LevelCalibration::None };
        *level_terms = Some(LevelTerms { distance_cm: Some(30.0), calibration, ..level_terms.take().unwrap_or_default() });
        if self.client.calibrated {
            *level_calibrated = true;
            *level_mean_db += FULL_SCALE_DB;
        }
        entry
    }

    fn say(&mut self, command: Command) {
        self.tell(Event::Command { at_s: self.now_s, command, confidence: SURE, text: command.name().into() });
    }

    fn choose(&mut self, answer: String) {
        self.tell(Event::Answer { at_s: self.now_s, text: answer, confidence: SURE });
    }

    /// What the client does when a line has been said.
    fn answer(&mut self, key: &str) {
        let client = self.client;
        match key {
            "ask-resume" | "ask-agreement" | "ask-agreement-again" | "ask-confirm" => self.say(Command::Yes),
            "offer-rest" => self.say(Command::No),
            "ask-sign-cough-at-meals" => self.say(if client.coughs { Command::Yes } else { Command::No }),
            key if key.starts_with("ask-sign-") => self.say(Command::No),
            "ask-effort" => self.choose(format!("answer-{}", client.effort)),
            "ask-tiredness" => self.choose(format!("answer-{}", client.tiredness)),
            "ask-pain" => self.choose("answer-0".into()),
            "ask-voice" => self.choose(format!("answer-{}", client.voice)),
            "ask-missed" => self.choose("answer-forgot".into()),
            "ex-long-ah-cue" => self.vowel(),
            "ex-glide-up-cue" => self.hold(3.2, client.range_st, 1.6 * client.f0_hz),
            "ex-effortful-swallow-cue" => {
                self.pass(3.0);
                self.say(Command::Done);
            }
            "read-phrase" => self.speak(2.6, 9),
            "talk-prompt" => self.talk(),
            key if key.starts_with("ask-ready") || key.starts_with("wait-for-ready") || key == "ask-position" || key == "ask-rest-over" => {
                self.say(if client.leaves && self.holds > 0 { Command::Finish } else { Command::Ready });
            }
            _ => {}
        }
    }

    fn vowel(&mut self) {
        self.holds += 1;
        // No two holds are alike, and they are alike each time.
        let scatter = (f64::from(self.holds) * 1.7).sin() * 0.5;
        self.hold((self.client.hold_s + scatter).max(1.0), 0.6, self.client.f0_hz);
        if self.client.dizzy && self.holds == 2 {
            self.say(Command::Dizzy);
        } else if self.client.leaves && self.holds == 3 {
            self.say(Command::Finish);
        }
    }

    fn hold(&mut self, length_s: f64, span_st: f64, f0_hz: f64) {
        self.pass(1.2);
        let onset_s = self.now_s;
        self.pass(0.3);
        self.tell(Event::Onset { at_s: self.now_s, onset_s });
        self.pass(length_s - 0.3);
        let duration_s = (length_s * 10.0).round() / 10.0;
        let hold = Hold {
            onset_s,
            offset_s: onset_s + duration_s,
            duration_s,
            sure_s: onset_s + 0.3,
            f0_median_hz: f0_hz,
            f0_span_st: span_st,
            f0_sd_st: 0.2,
            level_mean_db: self.client.vowel_db,
            level_slope_db_per_s: -0.2,
            level_fall_db: 0.2 * duration_s,
            over_room_db: 38.0,
            breaks: 0,
            masked_s: 0.0,
            clipped_s: 0.0,
            quality: None,
        };
        self.tell(Event::Offset { at_s: self.now_s, hold });
    }

    fn speak(&mut self, length_s: f64, syllables: u32) {
        let onset_s = self.now_s;
        self.tell(Event::SpeechBegan { at_s: onset_s, onset_s });
        self.pass(length_s);
        let utterance = Utterance {
            onset_s,
            offset_s: onset_s + length_s,
            duration_s: length_s,
            level_mean_db: self.client.speech_db,
            f0_median_hz: self.client.f0_hz * 1.05,
            f0_span_st: 4.0,
            f0_final_st: -1.0,
            syllables,
            syllable_rate_hz: f64::from(syllables) / length_s,
            syllable_irregularity_pct: 9.0,
        };
        self.tell(Event::Spoken { at_s: self.now_s, utterance });
    }

    /// Three sentences with a breath between.
    fn talk(&mut self) {
        for _ in 0..3 {
            self.speak(5.0, 21);
            self.pass(0.9);
        }
    }
}
