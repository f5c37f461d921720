//! The others in the room: they talk among themselves, or a television is on. None of it is meant for the tool.

use super::error::RehearseError;
use super::habit::{ScriptRoom, Talk, Television};
use super::music::Music;
use super::noise::Gauss;
use super::room::RoomSpec;
use super::room::response;
use super::signal::gain;
use super::speech::SPEECH_LEVEL_DB;
use super::truth::{Did, LogEntry};
use audio::convolve::Convolver;
use std::sync::Arc;

/// Direct over reverberant sound of somebody across the room, dB (common practice, no source).
const ACROSS_THE_ROOM_DB: f64 = 0.0;
/// Whoever waits for the tool to be silent begins this long after it, shortest and longest, s.
const TURN_S: (f64, f64) = (0.3, 1.5);

/// All sounds of the household, in blocks, and the truth about them.
pub struct Household {
    rate_hz: f64,
    chance: Gauss,
    talkers: Vec<Talker>,
    television: Option<Screen>,
    across: Convolver,
    dry: Vec<f32>,
    frame: u64,
    quiet_since: u64,
    log: Vec<LogEntry>,
}

struct Talker {
    spec: Talk,
    sentences: Vec<(String, Arc<[f32]>)>,
    gain: f32,
    /// The next sentence begins at this frame or later.
    from: u64,
    /// Which sentence, and how much of it is out.
    saying: Option<(usize, usize)>,
    last: usize,
}

struct Screen {
    spec: Television,
    music: Music,
    plays: bool,
    /// It changes at this frame.
    until: u64,
}

impl Household {
    /// Renders all sentences.
    ///
    /// # Errors
    /// `flite` or a voice is missing.
    pub fn new(room: &ScriptRoom, spec: &RoomSpec, seed: u64) -> Result<Self, RehearseError> {
        let rate = f64::from(spec.rate_hz);
        let mut chance = Gauss::new(seed ^ 0x7a1c);
        let mut talkers = Vec::new();
        for talk in &room.talk {
            let mut speaker = talk.speaker(spec.rate_hz)?;
            let sentences: Result<Vec<_>, RehearseError> =
                talk.sentences.iter().map(|text| Ok((text.clone(), speaker.say(text)?))).collect();
            talkers.push(Talker {
                sentences: sentences?,
                gain: gain(talk.level_db - SPEECH_LEVEL_DB) as f32,
                from: frames(chance.between(talk.gap_s[0], talk.gap_s[1]), rate),
                saying: None,
                last: usize::MAX,
                spec: talk.clone(),
            });
        }
        let television = room.television.map(|spec_tv| Screen {
            music: Music::new(spec_tv.music_db, spec.rate_hz, seed ^ 0x7e1e),
            plays: false,
            until: frames(chance.between(spec_tv.gap_s[0], spec_tv.gap_s[1]), rate),
            spec: spec_tv,
        });
        let block = (spec.rate_hz / 100) as usize;
        let path = response(spec.rt60_s, ACROSS_THE_ROOM_DB, rate, &mut Gauss::new(seed ^ 0xacc0));
        Ok(Self {
            rate_hz: rate,
            chance,
            talkers,
            television,
            across: Convolver::new(&path, block),
            dry: vec![0.0; block],
            frame: 0,
            quiet_since: 0,
            log: Vec::new(),
        })
    }

    /// Adds the next 10 ms to what the microphone hears. `tool_speaks`: the loudspeaker sounds just now.
    pub fn add_to(&mut self, mic: &mut [f32], tool_speaks: bool) {
        if mic.len() != self.dry.len() {
            debug_assert!(false, "blocks must have {} frames", self.dry.len());
            return;
        }
        self.dry.fill(0.0);
        if tool_speaks {
            self.quiet_since = self.frame + frames(self.chance.between(TURN_S.0, TURN_S.1), self.rate_hz);
        }
        for talker in &mut self.talkers {
            let free = talker.spec.over || self.frame >= self.quiet_since;
            if let Some(entry) = talker.step(&mut self.dry, self.frame, self.rate_hz, free, &mut self.chance) {
                self.log.push(entry);
            }
        }
        if let Some(screen) = &mut self.television
            && let Some(entry) = screen.step(&mut self.dry, self.frame, self.rate_hz, &mut self.chance)
        {
            self.log.push(entry);
        }
        self.frame += self.dry.len() as u64;
        self.across.add(&self.dry, mic);
    }

    /// What was said and played so far; what is under way stands there with its coming end.
    #[must_use]
    pub fn log(&self) -> &[LogEntry] {
        &self.log
    }
}

impl Talker {
    fn step(&mut self, out: &mut [f32], now: u64, rate_hz: f64, free: bool, chance: &mut Gauss) -> Option<LogEntry> {
        let mut begun = None;
        if self.saying.is_none() && now >= self.from && free {
            let n = self.choose(chance);
            self.saying = Some((n, 0));
            self.last = n;
            begun = self
                .sentences
                .get(n)
                .map(|(words, sound)| overheard(Did::Overheard, now, sound.len() as u64, rate_hz, Some(words.clone())));
        }
        let (n, done) = self.saying?;
        let sound = self.sentences.get(n).map(|(_, sound)| sound.clone()).unwrap_or_default();
        let rest = sound.get(done..).unwrap_or_default();
        out.iter_mut().zip(rest).for_each(|(o, v)| *o += v * self.gain);
        if rest.len() <= out.len() {
            self.saying = None;
            self.from = now + out.len() as u64 + frames(chance.between(self.spec.gap_s[0], self.spec.gap_s[1]), rate_hz);
        } else {
            self.saying = Some((n, done + out.len()));
        }
        begun
    }

    fn choose(&self, chance: &mut Gauss) -> usize {
        let count = self.sentences.len();
        let n = (chance.between(0.0, count as f64) as usize).min(count.saturating_sub(1));
        if n == self.last { (n + 1) % count.max(1) } else { n }
    }
}

impl Screen {
    fn step(&mut self, out: &mut [f32], now: u64, rate_hz: f64, chance: &mut Gauss) -> Option<LogEntry> {
        let mut begun = None;
        if now >= self.until {
            self.plays = !self.plays;
            let [low, high] = if self.plays { self.spec.music_s } else { self.spec.gap_s };
            let length = frames(chance.between(low, high), rate_hz);
            self.until = now + length;
            begun = self.plays.then(|| overheard(Did::Music, now, length, rate_hz, None));
        }
        if self.plays {
            out.iter_mut().for_each(|o| *o += self.music.next());
        }
        begun
    }
}

fn frames(length_s: f64, rate_hz: f64) -> u64 {
    (length_s * rate_hz).round().max(0.0) as u64
}

fn overheard(kind: Did, from: u64, length: u64, rate_hz: f64, words: Option<String>) -> LogEntry {
    let at_s = |frame: u64| frame as f64 / rate_hz;
    LogEntry {
        kind,
        onset_s: at_s(from),
        offset_s: at_s(from + length),
        f0_hz: None,
        syllables: None,
        words,
        on: "household".into(),
        again: false,
    }
}
