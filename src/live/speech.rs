//! What is said: the lines under way, and what they keep the ears from.

use std::collections::{BTreeMap, VecDeque};

use crate::over_own_voice::OwnLine;
use crate::playback::{Handed, Playback};
use crate::talk::{TalkEvent, Talker};
use crate::tone::Tone;
use audio::gate::DEFAULT_TAIL_S;
use session::{Line, LineId};
use speak::words::{live_words, spoken_length};

/// A line that has not ended yet.
pub struct ActiveUtterance {
    pub line: Line,
    pub text: String,
    /// It names what the fast path listens for, so that path is closed while it is said.
    names_live_word: bool,
    began: bool,
    /// It stands on a beat and is no reason to close the main path.
    leaves_open: bool,
    /// It was silenced before its end.
    hushed: bool,
}

impl ActiveUtterance {
    /// It was said to its end.
    #[must_use]
    pub fn is_complete(&self) -> bool {
        self.began && !self.hushed
    }
}

/// The voice and its lines.
pub struct Speech {
    talker: Box<dyn Talker>,
    rate_hz: u32,
    active: BTreeMap<LineId, ActiveUtterance>,
    /// What the fast path listens for.
    live_phrases: Vec<String>,
    /// What was begun of late, the oldest first.
    said: VecDeque<Said>,
    /// How fast the last line was said.
    letters_per_s: Option<f64>,
    tone: Option<Tone>,
    pub playback: Playback,
}

/// A line as the microphone has it, s on the sample clock.
struct Said {
    id: LineId,
    text: String,
    from_s: f64,
    /// How much later the microphone has it.
    delay_s: f64,
    /// Infinite while it is given out.
    until_s: f64,
    /// How long it took, once it is given out whole.
    lasts_s: Option<f64>,
}

impl Said {
    /// Its length in letters; none where it has too few to tell anything of how fast we speak.
    fn length(&self) -> Option<f64> {
        const LETTERS: f64 = 20.0;
        Some(spoken_length(&self.text)).filter(|letters| *letters >= LETTERS)
    }
}

/// Lines are remembered for longer than a phrase takes and is decided on, s.
const REMEMBERED_S: f64 = 10.0;

impl Speech {
    /// A voice for a loudspeaker of this rate. `live_phrases`: what the fast path listens for, whatever is said.
    #[must_use]
    pub fn new(talker: Box<dyn Talker>, rate_hz: u32, live_phrases: Vec<String>) -> Self {
        Self {
            talker,
            rate_hz,
            active: BTreeMap::new(),
            live_phrases,
            said: VecDeque::new(),
            letters_per_s: None,
            tone: None,
            playback: Playback::default(),
        }
    }

    /// Frames per second of the blocks that it fills.
    #[must_use]
    pub fn rate_hz(&self) -> u32 {
        self.rate_hz
    }

    /// Another voice, for a loudspeaker of another rate; `now_s` has passed.
    pub fn replace(&mut self, talker: Box<dyn Talker>, rate_hz: u32, now_s: f64) {
        (self.talker, self.rate_hz) = (talker, rate_hz);
        self.talker.skip(now_s);
    }

    /// No line is under way or waits.
    #[must_use]
    pub fn is_idle(&self) -> bool {
        self.active.is_empty()
    }

    /// The lines that the microphone had some of between two instants.
    #[must_use]
    pub fn said_between(&self, from_s: f64, to_s: f64) -> Vec<OwnLine<'_>> {
        let there = self.said.iter().filter(|said| said.from_s < to_s && said.until_s > from_s);
        there
            .map(|said| OwnLine {
                text: &said.text,
                from_s: said.from_s + said.delay_s,
                lasts_s: said.lasts_s.or_else(|| Some(said.length()? / self.letters_per_s?)),
            })
            .collect()
    }

    /// What is said is handed over as samples, so that an echo canceller can take it out.
    #[must_use]
    pub fn gives_samples(&self) -> bool {
        self.talker.gives_samples()
    }

    /// A tone is given out.
    #[must_use]
    pub fn sounds_tone(&self) -> bool {
        self.tone.is_some()
    }

    /// Speaks a line; on a beat it begins exactly then.
    pub fn say(&mut self, id: LineId, line: Line, text: String, on_beat_s: Option<f64>) {
        let phrases: Vec<&str> = self.live_phrases.iter().map(String::as_str).collect();
        let names_live_word = live_words(&text, &phrases).is_some();
        let leaves_open = on_beat_s.is_some() && self.talker.gives_samples();
        self.talker.say(id, &text, on_beat_s);
        self.active.insert(id, ActiveUtterance { line, text, names_live_word, began: false, leaves_open, hushed: false });
    }

    /// Silence at once; each line still gets its end.
    pub fn hush(&mut self) {
        self.active.values_mut().for_each(|line| line.hushed = true);
        self.talker.hush();
    }

    /// The tone begins with the next block.
    pub fn sound_tone(&mut self, tone: Tone) {
        self.tone = Some(tone);
    }

    /// Louder or softer, dB.
    pub fn change_volume(&mut self, change_db: f64) {
        self.talker.change_volume(change_db);
    }

    /// Somebody speaks over us, or no longer: we get softer meanwhile.
    pub fn give_way(&mut self, spoken_over: bool) {
        self.talker.give_way(spoken_over);
    }

    /// Slower (above 1) or faster (below 1), from the next line on.
    pub fn change_rate(&mut self, factor: f64) {
        self.talker.change_rate(factor);
    }

    /// Time passed that no block stands for, s.
    pub fn skip(&mut self, lost_s: f64) {
        self.talker.skip(lost_s);
    }

    /// Fills the next block with the voice.
    pub fn fill(&mut self, speaker: &mut [f32], events: &mut Vec<TalkEvent>) {
        self.talker.block(speaker, events);
    }

    /// Adds the tone, which is our own sound as a line is.
    pub fn add_tone(&mut self, speaker: &mut [f32], at: Handed) {
        let Some(mut tone) = self.tone else { return };
        if tone.begins() {
            self.playback.began(at, false);
        }
        self.tone = tone.add_to(speaker, f64::from(self.rate_hz)).then_some(tone);
        if self.tone.is_none() {
            self.playback.fell_silent(at);
            self.playback.main_path_may_open(at);
        }
    }

    /// The first frame of a line is in this block.
    pub fn began(&mut self, id: LineId, at: Handed) -> Option<&ActiveUtterance> {
        let heard = self.talker.is_heard();
        let line = self.active.get_mut(&id)?;
        line.began = true;
        // What only stands on the page keeps no ear from anything.
        if !heard {
            return Some(line);
        }
        self.said.retain(|said| said.until_s > at.block_s - REMEMBERED_S);
        self.said.push_back(Said {
            id,
            text: line.text.clone(),
            from_s: at.block_s,
            delay_s: at.delay_s,
            until_s: f64::INFINITY,
            lasts_s: None,
        });
        self.playback.began(at, line.leaves_open);
        if line.names_live_word {
            self.playback.close_fast_path();
        }
        Some(line)
    }

    /// The last frame of a line is in this block, or it was hushed or could not be spoken.
    pub fn ended(&mut self, id: LineId, at: Handed) -> Option<ActiveUtterance> {
        let line = self.active.remove(&id)?;
        if !self.talker.is_heard() {
            return Some(line);
        }
        if line.began {
            if let Some(said) = self.said.iter_mut().rfind(|said| said.id == id) {
                said.until_s = at.block_s + at.delay_s + DEFAULT_TAIL_S;
                let lasts_s = at.block_s - said.from_s;
                if line.is_complete() && lasts_s > 0.0 {
                    said.lasts_s = Some(lasts_s);
                    self.letters_per_s = said.length().map(|letters| letters / lasts_s).or(self.letters_per_s);
                }
            }
            if !self.active.values().any(|other| other.began) {
                self.playback.fell_silent(at);
            }
            if !self.active.values().any(|other| other.began && !other.leaves_open) {
                self.playback.main_path_may_open(at);
            }
        }
        if line.names_live_word {
            self.playback.fast_path_may_open(at);
        }
        Some(line)
    }
}
