//! The live meter of `tidecount hear`: what is shown of the microphone, as text. Knows no device and no terminal.

use hear::VoiceFrame;

/// The bar reaches from here to full scale, dB.
const BAR_FROM_DB: f64 = -80.0;
const BAR_CELLS: usize = 32;
/// A microphone that delivers no more than this, sample for sample, is muted or not there (common practice, no source).
const DEAD_PEAK: f32 = 1e-5;
/// For so long, s.
const DEAD_FOR_S: f64 = 2.0;
/// A room this loud leaves soft voices no place under full scale, dB(A) re full scale (common practice, no source).
const LOUD_ROOM_DB: f64 = -40.0;
/// A voice less than this over the room is timed badly, dB: the project's aims end at 10 dB.
const LEAST_OVER_ROOM_DB: f64 = 10.0;
/// A warning of clipping stays this long, s.
const CLIP_SHOWN_S: f64 = 3.0;
/// The level shown falls this fast, so that the eye can follow, dB a second.
const FALL_DB_PER_S: f64 = 30.0;

/// What the meter knows now.
#[derive(Debug, Clone)]
pub struct Meter {
    heard_s: f64,
    level_db: f64,
    room_db: Option<f64>,
    f0_hz: f64,
    voiced: bool,
    hold_since_s: Option<f64>,
    /// Level of the voice lately: a mean over voiced frames.
    voice_db: Option<f64>,
    clipped_s: Option<f64>,
    /// Sound above [`DEAD_PEAK`] was last heard then, s.
    alive_s: f64,
    lost: u64,
}

impl Default for Meter {
    fn default() -> Self {
        Self {
            heard_s: 0.0,
            level_db: BAR_FROM_DB,
            room_db: None,
            f0_hz: 0.0,
            voiced: false,
            hold_since_s: None,
            voice_db: None,
            clipped_s: None,
            alive_s: 0.0,
            lost: 0,
        }
    }
}

impl Meter {
    /// Samples that came up to `now_s`, and how many before them were lost.
    pub fn samples(&mut self, now_s: f64, samples: &[f32], lost: u64) {
        self.heard_s = now_s;
        self.lost += lost;
        let peak = samples.iter().fold(0f32, |peak, x| peak.max(x.abs()));
        if peak >= 0.99 {
            self.clipped_s = Some(now_s);
        }
        if peak > DEAD_PEAK {
            self.alive_s = now_s;
        }
    }

    /// A frame of the voice ear, and the room it knows.
    pub fn frame(&mut self, frame: &VoiceFrame, room_db: Option<f64>) {
        self.level_db = frame.level_db.max(self.level_db - FALL_DB_PER_S / 100.0);
        self.room_db = room_db;
        self.f0_hz = frame.f0_hz;
        self.voiced = frame.voiced;
        if frame.voiced {
            let before = self.voice_db.unwrap_or(frame.level_db);
            self.voice_db = Some(before + 0.02 * (frame.level_db - before));
        }
    }

    /// A hold has begun or ended.
    pub fn hold(&mut self, since_s: Option<f64>) {
        self.hold_since_s = since_s;
    }

    /// Seconds heard.
    pub fn heard_s(&self) -> f64 {
        self.heard_s
    }

    /// The bar for a terminal: `full` and `empty` are its cells, `mark` shows the room.
    pub fn bar(&self, full: char, empty: char, mark: char) -> String {
        let cell = |db: f64| ((db - BAR_FROM_DB) / -BAR_FROM_DB * BAR_CELLS as f64).round().clamp(0.0, BAR_CELLS as f64) as usize;
        let (level, room) = (cell(self.level_db), self.room_db.map(cell));
        (0..BAR_CELLS)
            .map(|k| {
                if room == Some(k) {
                    mark
                } else if k < level {
                    full
                } else {
                    empty
                }
            })
            .collect()
    }

    /// Level, pitch, voicing, room and hold in one line of words.
    pub fn line(&self) -> String {
        let mut line = format!("{:>4.0} dB(A)", self.level_db);
        line += &self.room_db.map_or_else(|| "  room ...".to_owned(), |room| format!("  room {room:>4.0}"));
        line += &if self.voiced { format!("  voiced {:>3.0} Hz", self.f0_hz) } else { "  no voice     ".to_owned() };
        if let Some(since_s) = self.hold_since_s {
            line += &format!("  hold {:.1} s", (self.heard_s - since_s).max(0.0));
        }
        line
    }

    /// What is wrong with the sound, and what to do; nothing where all is well. The worst first.
    pub fn hint(&self) -> Option<String> {
        if self.heard_s - self.alive_s >= DEAD_FOR_S {
            return Some("no signal: is the microphone muted, or the wrong one? `tidecount devices` lists them".to_owned());
        }
        if self.clipped_s.is_some_and(|at_s| self.heard_s - at_s < CLIP_SHOWN_S) {
            return Some("too loud: the sound is clipped; turn the microphone down or sit further away".to_owned());
        }
        if let Some(room_db) = self.room_db {
            if room_db > LOUD_ROOM_DB {
                return Some(format!(
                    "the room is loud ({room_db:.0} dB(A) re full scale): soft voices may be missed; close the window, turn off what hums, or turn the microphone down"
                ));
            }
            if let Some(over_db) = self.voice_db.map(|voice_db| voice_db - room_db).filter(|over_db| *over_db < LEAST_OVER_ROOM_DB) {
                return Some(format!(
                    "the voice stands only {over_db:.0} dB over the room: come closer to the microphone or make the room quieter"
                ));
            }
        }
        (self.lost > 0).then(|| format!("{} samples were lost: the machine is too busy, or the device came loose", self.lost))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn frame(t_s: f64, level_db: f64, f0_hz: f64) -> VoiceFrame {
        VoiceFrame { t_s, level_db, f0_hz, periodicity: 0.9, voiced: f0_hz > 0.0, masked: false }
    }

    /// A meter after 3 s of sound of this peak, with these frames.
    fn after(peak: f32, level_db: f64, f0_hz: f64, room_db: f64) -> Meter {
        let mut meter = Meter::default();
        for k in 1..=300 {
            let t_s = f64::from(k) / 100.0;
            meter.samples(t_s, &[0.0, peak, -peak], 0);
            meter.frame(&frame(t_s, level_db, f0_hz), Some(room_db));
        }
        meter
    }

    #[test]
    fn the_line_says_what_is_heard() {
        let mut meter = after(0.1, -31.7, 142.4, -62.0);
        assert_eq!(meter.line(), " -32 dB(A)  room  -62  voiced 142 Hz");
        assert_eq!(meter.hint(), None);
        meter.hold(Some(0.6));
        assert!(meter.line().ends_with("  hold 2.4 s"), "{}", meter.line());
        // 80 dB over 32 cells: -32 dB is cell 19, -62 dB cell 7.
        assert_eq!(meter.bar('#', '.', '|'), "#######|###########.............");
    }

    #[test]
    fn each_trouble_has_its_remedy() {
        for (meter, hint) in [
            (after(0.0, -120.0, 0.0, -120.0), "no signal"),
            (after(1.0, -10.0, 140.0, -60.0), "clipped"),
            (after(0.3, -20.0, 140.0, -30.0), "the room is loud (-30 dB(A)"),
            (after(0.1, -45.0, 140.0, -52.0), "only 7 dB over the room"),
        ] {
            assert!(meter.hint().is_some_and(|found| found.contains(hint)), "{hint}: {:?}", meter.hint());
        }
    }
}
