//! Stretches of speech between pauses.

use super::Utterance;
use super::VoiceEvent;
use super::level::{db_power, power_db};
use super::steadiness::{RunFrame, percentile};
use super::syllables::{nuclei_s, rate_and_irregularity};

/// Speech stands this far over the room, dB (common practice, no source).
const OVER_ROOM_DB: f64 = 8.0;
/// Where nothing is known of the room yet, speech is louder than this, dB.
const UNKNOWN_ROOM_DB: f64 = -65.0;
/// Less voicing than this in all is a knock, a breath or a cough, not speech, s.
const LEAST_VOICED_S: f64 = 0.08;
/// Sound must last this long to begin a stretch, s.
const LEAST_ONSET_S: f64 = 0.03;
/// A stretch that goes on so long without a pause is ended, s: a television, or a room that has grown louder. Nobody speaks for
/// two minutes without drawing breath.
const LONGEST_S: f64 = 120.0;

/// Less voice than this tells no melody, frames: two fifths of a second, so that its last fifth is longer than one period of the
/// lowest voice by far.
const LEAST_MELODY: usize = 40;
/// The part of the voice that its end is, as one to so many.
const END: usize = 5;

const RATE: f64 = 100.0;

/// Follows speech by its level over the room.
#[derive(Debug, Clone)]
pub(crate) struct UtteranceTracker {
    end_pause_s: f64,
    from_s: f64,
    frames: Vec<RunFrame>,
    /// Number of frames up to and with the last loud one.
    loud_to: usize,
    /// The room as it was when the stretch began; speech itself must not raise it.
    room_db: f64,
    /// Frames with voice in this stretch.
    voiced: usize,
    /// It has been told that this stretch began.
    told: bool,
}

impl UtteranceTracker {
    pub fn new(end_pause_s: f64, from_s: f64) -> Self {
        let end_pause_s = if end_pause_s.is_finite() { end_pause_s.max(0.05) } else { 1.0 };
        // All the memory a stretch can need: none is taken beside the sound.
        let frames = Vec::with_capacity((LONGEST_S * RATE) as usize + 1);
        Self { end_pause_s, from_s, frames, loud_to: 0, room_db: 0.0, voiced: 0, told: false }
    }

    /// The next frame.
    pub fn push(&mut self, frame: RunFrame, floor_db: Option<f64>, out: &mut impl FnMut(VoiceEvent)) {
        if frame.t_s < self.from_s {
            return;
        }
        let room_db = floor_db.unwrap_or(UNKNOWN_ROOM_DB - OVER_ROOM_DB);
        self.room_db = if self.frames.is_empty() { room_db } else { self.room_db.min(room_db) };
        let loud = !frame.masked && frame.level_db > self.room_db + OVER_ROOM_DB;
        if self.frames.is_empty() && !loud {
            return;
        }
        self.voiced += usize::from(frame.f0_hz > 0.0 && !frame.masked);
        self.frames.push(frame);
        if loud {
            self.loud_to = self.frames.len();
            self.tell_begun(out);
            if self.frames.len() as f64 >= LONGEST_S * RATE {
                self.end(out);
            }
            return;
        }
        let pause = self.frames[self.loud_to..].iter().filter(|f| !f.masked).count() as f64 / RATE;
        let begun = self.loud_to as f64 / RATE >= LEAST_ONSET_S;
        if pause >= self.end_pause_s || (!begun && pause > LEAST_ONSET_S) {
            self.end(out);
        }
    }

    /// Tells once that speech has begun, as soon as it is sure to be speech.
    fn tell_begun(&mut self, out: &mut impl FnMut(VoiceEvent)) {
        let sure = self.voiced as f64 / RATE >= LEAST_VOICED_S && self.loud_to as f64 / RATE >= LEAST_ONSET_S;
        if let Some(first) = self.frames.first().filter(|_| sure && !self.told) {
            self.told = true;
            out(VoiceEvent::SpeechBegan { onset_s: first.t_s });
        }
    }

    /// Ends the stretch under way, if any.
    pub fn end(&mut self, out: &mut impl FnMut(VoiceEvent)) {
        self.frames.truncate(self.loud_to);
        if self.voiced_s() >= LEAST_VOICED_S
            && let (Some(first), Some(last)) = (self.frames.first(), self.frames.last())
        {
            let (onset_s, offset_s) = (first.t_s, last.t_s + 1.0 / RATE);
            out(VoiceEvent::Spoken(measure(onset_s, offset_s, &self.frames)));
        }
        self.frames.clear();
        self.loud_to = 0;
        self.voiced = 0;
        self.told = false;
    }

    fn voiced_s(&self) -> f64 {
        self.frames.iter().filter(|f| f.f0_hz > 0.0 && !f.masked).count() as f64 / RATE
    }
}

fn measure(onset_s: f64, offset_s: f64, frames: &[RunFrame]) -> Utterance {
    let clear: Vec<&RunFrame> = frames.iter().filter(|f| !f.masked).collect();
    let power = clear.iter().map(|f| db_power(f.level_db)).sum::<f64>() / clear.len().max(1) as f64;
    let mut pitch: Vec<f64> = clear.iter().filter(|f| f.f0_hz > 0.0).map(|f| f.f0_hz).collect();
    let nuclei = nuclei_s(frames);
    let (rate, irregularity) = rate_and_irregularity(&nuclei);
    Utterance {
        onset_s,
        offset_s,
        duration_s: offset_s - onset_s,
        level_mean_db: power_db(power),
        f0_span_st: span_st(&pitch),
        f0_final_st: final_st(&pitch),
        f0_median_hz: percentile(&mut pitch, 0.5),
        syllables: u32::try_from(nuclei.len()).unwrap_or(u32::MAX),
        syllable_rate_hz: rate,
        syllable_irregularity_pct: irregularity,
    }
}

/// 5th to 95th percentile, semitones.
fn span_st(pitch_hz: &[f64]) -> f64 {
    if pitch_hz.len() < LEAST_MELODY {
        return f64::NAN;
    }
    let mut sorted = pitch_hz.to_vec();
    let (low, high) = (percentile(&mut sorted, 0.05), percentile(&mut sorted, 0.95));
    12.0 * (high / low).log2()
}

/// The median of the last fifth over that of the rest, semitones. A median, for the last periods of a falling voice often creak, and
/// are then found an octave off.
fn final_st(pitch_hz: &[f64]) -> f64 {
    if pitch_hz.len() < LEAST_MELODY {
        return f64::NAN;
    }
    let (body, end) = pitch_hz.split_at(pitch_hz.len() - pitch_hz.len() / END);
    let median = |part: &[f64]| percentile(&mut part.to_vec(), 0.5);
    12.0 * (median(end) / median(body)).log2()
}
