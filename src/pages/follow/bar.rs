//! The live bar: what the voice ear hears, put on a scale that means something to this person. Pure.

use crate::web::live_page::{Bar, BarKind, Meter};
use hear::VoiceFrame;
use live::levels::LevelScale;
use record::UsualVoice;
use session::{Arg, Line};

/// Frames (10 ms each) that are taken together: 20 values a second.
const FRAMES: usize = 5;
/// Of them so many must be voiced.
const VOICED: usize = 3;
/// About the usual level, dB either way.
const LEVEL_REACH_DB: f64 = 20.0;
/// Without a usual level: what a voice near a microphone reaches, dB re full scale and dB SPL at 30 cm. For drawing only.
const RELATIVE_DB: (f64, f64) = (-70.0, -10.0);
const SPL_DB: (f64, f64) = (45.0, 100.0);
/// Of a pitch bar, semitones about its base: an octave below to two above.
const PITCH_ST: (f64, f64) = (-12.0, 24.0);
/// Within this it is called the same: level, dB; pitch, semitones. A level changes by so much from one moment to the next.
const SAME_DB: f64 = 1.5;
const SAME_ST: f64 = 0.5;
/// Of a new value so much is taken where it rises, and where it falls, so that the bar does not tremble.
const RISES: f64 = 0.6;
const FALLS: f64 = 0.3;
/// Words change at most so often, s: nobody reads faster, and nothing may flicker.
const WORDS_EVERY_S: f64 = 0.5;
/// A first note has lasted for so many values.
const FIRST_NOTE: usize = 6;

/// One bar through one exercise.
#[derive(Debug, Clone)]
pub struct LiveBar {
    kind: BarKind,
    scale: LevelScale,
    /// The usual level of this exercise, or the usual pitch of it.
    usual: UsualVoice,
    /// The pitch from which semitones are counted, Hz, and whether it is this person's usual voice.
    base_hz: Option<f64>,
    base_is_usual: bool,
    frames: Vec<VoiceFrame>,
    first_note: Vec<f64>,
    /// Smoothed: dB or semitones.
    value: Option<f64>,
    top_st: Option<f64>,
    keeps_top: bool,
    timed: bool,
    words: Option<Line>,
    words_at_s: f64,
}

impl LiveBar {
    /// `voice_hz`: this person's usual pitch of a comfortable vowel; `keeps_top`: the furthest is the point of it (a glide).
    pub fn new(kind: BarKind, usual: UsualVoice, voice_hz: Option<f64>, keeps_top: bool) -> Self {
        Self {
            kind,
            scale: LevelScale::default(),
            usual,
            base_hz: voice_hz,
            base_is_usual: voice_hz.is_some(),
            frames: Vec::new(),
            first_note: Vec::new(),
            value: None,
            top_st: None,
            keeps_top,
            timed: true,
            words: None,
            words_at_s: f64::NEG_INFINITY,
        }
    }

    /// Another trial begins.
    pub fn again(&mut self) {
        self.frames.clear();
        self.first_note.clear();
        (self.value, self.top_st, self.words) = (None, None, None);
        self.words_at_s = f64::NEG_INFINITY;
        if !self.base_is_usual {
            self.base_hz = None;
        }
    }

    /// No hold is timed beside it.
    pub fn without_time(self) -> Self {
        Self { timed: false, ..self }
    }

    /// What levels mean from now on; true where that moves the marks.
    pub fn takes_scale(&mut self, scale: LevelScale) -> bool {
        let before = self.usual_db();
        self.scale = scale;
        before != self.usual_db()
    }

    /// One frame of the voice ear; true where there is a new value. What overlaps our own voice is not the client's.
    pub fn hear(&mut self, frame: &VoiceFrame) -> bool {
        self.frames.push(*frame);
        if self.frames.len() < FRAMES {
            return false;
        }
        let voiced: Vec<VoiceFrame> = self.frames.drain(..).filter(|frame| frame.voiced && !frame.masked).collect();
        let heard = if voiced.len() >= VOICED { self.measure(&voiced) } else { None };
        self.value = match (self.value, heard) {
            (Some(before), Some(now)) => Some(before + (now - before) * if now > before { RISES } else { FALLS }),
            (_, now) => now,
        };
        if let Some(value) = self.value
            && self.keeps_top
        {
            self.top_st = Some(self.top_st.map_or(value, |top| top.max(value)));
        }
        if frame.t_s - self.words_at_s >= WORDS_EVERY_S || (self.value.is_some() != self.words.is_some()) {
            let words = self.in_words();
            if words != self.words {
                self.words_at_s = frame.t_s;
                self.words = words;
            }
        }
        true
    }

    /// dB by energy, or semitones over the base by the median.
    fn measure(&mut self, voiced: &[VoiceFrame]) -> Option<f64> {
        if self.kind == BarKind::Level {
            let energy = voiced.iter().map(|frame| 10f64.powf(frame.level_db / 10.0)).sum::<f64>() / voiced.len() as f64;
            return Some(10.0 * energy.log10() + self.scale.offset_db);
        }
        let mut pitches: Vec<f64> = voiced.iter().map(|frame| frame.f0_hz).filter(|hz| *hz > 0.0).collect();
        let f0_hz = statistics::upper_median(&mut pitches)?;
        if self.base_hz.is_none() {
            self.first_note.push(f0_hz);
            if self.first_note.len() < FIRST_NOTE {
                return Some(0.0);
            }
            self.base_hz = statistics::upper_median(&mut self.first_note);
        }
        self.base_hz.map(|base_hz| 12.0 * (f0_hz / base_hz).log2())
    }

    /// The usual level, where this one can be compared with it.
    fn usual_db(&self) -> Option<f64> {
        self.usual.level_db.filter(|_| self.usual.calibration == self.scale.calibration && !self.scale.auto_gain)
    }

    fn usual_st(&self) -> Option<f64> {
        let base_hz = self.base_hz.filter(|_| self.base_is_usual)?;
        self.usual.f0_hz.map(|hz| 12.0 * (hz / base_hz).log2())
    }

    fn range(&self) -> (f64, f64) {
        match (self.kind, self.usual_db()) {
            (BarKind::Pitch, _) => PITCH_ST,
            (_, Some(usual_db)) => (usual_db - LEVEL_REACH_DB, usual_db + LEVEL_REACH_DB),
            _ if self.scale.is_spl() => SPL_DB,
            _ => RELATIVE_DB,
        }
    }

    fn place(&self, value: f64) -> f64 {
        let (low, high) = self.range();
        // A place is drawn in thousandths; more would only be sent more often.
        (((value - low) / (high - low)).clamp(0.0, 1.0) * 1000.0).round() / 1000.0
    }

    /// What stands beside the bar; `text` puts a message into words.
    pub fn bar(&self, active: bool, text: &dyn Fn(&Line) -> String) -> Bar {
        let named = |key: &str| text(&line(key, None));
        match self.kind {
            BarKind::None => Bar::default(),
            BarKind::Level => Bar {
                kind: self.kind,
                active,
                timed: self.timed,
                label: named("page-loudness-shown"),
                goal: self.usual_db().map(|db| self.place(db)),
                goal_label: self.usual_db().map(|_| named("page-usual-level-shown")).unwrap_or_default(),
                ..Bar::default()
            },
            BarKind::Pitch => Bar {
                kind: self.kind,
                active,
                timed: self.timed,
                label: named("page-pitch-shown"),
                goal: self.usual_st().map(|st| self.place(st)),
                goal_label: self.usual_st().map(|_| named("page-usual-note-shown")).unwrap_or_default(),
                base: Some(self.place(0.0)),
                base_label: named(if self.base_is_usual { "page-usual-voice-shown" } else { "page-first-note-shown" }),
            },
        }
    }

    /// How it stands now.
    pub fn meter(&self, text: &dyn Fn(&Line) -> String) -> Meter {
        Meter {
            at: self.value.map(|value| self.place(value)),
            top: self.top_st.map(|st| self.place(st)),
            words: self.words.as_ref().map(text).unwrap_or_default(),
        }
    }

    fn in_words(&self) -> Option<Line> {
        let value = self.value?;
        Some(match (self.kind, self.usual_db()) {
            (BarKind::Pitch, _) => {
                told(value, SAME_ST, ["page-same-pitch-shown", "page-semitones-higher-shown", "page-semitones-lower-shown"])
            }
            (_, Some(usual_db)) => told(value - usual_db, SAME_DB, ["page-as-usual-shown", "page-louder-shown", "page-softer-shown"]),
            _ if self.scale.is_spl() => line("page-level-shown", Some(value)),
            // A relative number means nothing to anybody.
            _ => line("page-voice-heard-shown", None),
        })
    }
}

/// A difference in words: same, more, less.
fn told(difference: f64, same: f64, [as_ever, more, less]: [&str; 3]) -> Line {
    if difference.abs() < same { line(as_ever, None) } else { line(if difference > 0.0 { more } else { less }, Some(difference.abs())) }
}

fn line(key: &str, number: Option<f64>) -> Line {
    Line { key: key.to_owned(), args: number.map(|n| ("n", Arg::Number(n.round()))).into_iter().collect() }
}

#[cfg(test)]
#[path = "tests/bar.rs"]
mod tests;
