//! What is told of a moment when the voice did what was wanted: how much of it there is, and when it is over.

use model::{Fact, Utterance};

/// Less than this may be a word that was not understood, s; common practice, no source.
const ENOUGH_S: f64 = 1.5;
/// It is over when it has been quiet for so long, s: people think between two sentences. Common practice, no source.
const OVER_S: f64 = 4.0;
/// Nobody is listened to for longer than this, s.
const LONGEST_S: f64 = 90.0;

/// What has been told so far.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Told {
    /// From the first word to the last, s.
    span: Option<(f64, f64)>,
    spoken_s: f64,
    /// Somebody is speaking since, s.
    speaks_since_s: Option<f64>,
}

/// How it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum HowFar {
    /// Nothing was said.
    Nothing,
    /// It is being told, or the next sentence is thought about.
    UnderWay,
    /// It is over, and so short that it may be no answer.
    Short,
    Over,
}

impl Told {
    pub fn speech_began(&mut self, onset_s: f64) {
        self.speaks_since_s = Some(onset_s);
    }

    pub fn spoken(&mut self, utterance: &Utterance) {
        self.speaks_since_s = None;
        let from_s = self.span.map_or(utterance.onset_s, |(from_s, _)| from_s);
        self.span = Some((from_s, utterance.offset_s));
        self.spoken_s += utterance.duration_s;
    }

    pub fn is_enough(&self) -> bool {
        self.spoken_s >= ENOUGH_S
    }

    pub fn how_far(&self, now_s: f64) -> HowFar {
        let Some(from_s) = self.span.map(|(from_s, _)| from_s).or(self.speaks_since_s) else { return HowFar::Nothing };
        let until_s = self.span.map(|(_, until_s)| until_s).filter(|_| self.speaks_since_s.is_none());
        match until_s {
            _ if now_s - from_s >= LONGEST_S && self.span.is_some() => HowFar::Over,
            Some(until_s) if now_s - until_s >= OVER_S => {
                if self.is_enough() {
                    HowFar::Over
                } else {
                    HowFar::Short
                }
            }
            _ => HowFar::UnderWay,
        }
    }

    pub fn fact(&self) -> Fact {
        let (from_s, until_s) = self.span.unzip();
        Fact::MomentTold { from_s, until_s, text: None }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn utterance(onset_s: f64, duration_s: f64) -> Utterance {
        Utterance {
            f0_span_st: f64::NAN,
            f0_final_st: f64::NAN,
            onset_s,
            offset_s: onset_s + duration_s,
            duration_s,
            level_mean_db: -30.0,
            f0_median_hz: 120.0,
            syllables: 4,
            syllable_rate_hz: 4.0,
            syllable_irregularity_pct: 20.0,
        }
    }

    #[test]
    fn a_tale_ends_in_the_quiet_and_a_word_is_none() {
        let mut told = Told::default();
        assert_eq!(told.how_far(100.0), HowFar::Nothing);
        told.speech_began(10.0);
        assert_eq!(told.how_far(13.0), HowFar::UnderWay);
        told.spoken(&utterance(10.0, 0.5));
        assert_eq!((told.how_far(14.4), told.how_far(14.6)), (HowFar::UnderWay, HowFar::Short));
        told.speech_began(15.0);
        assert_eq!(told.how_far(30.0), HowFar::UnderWay, "the second sentence is long");
        told.spoken(&utterance(15.0, 2.0));
        assert_eq!(told.how_far(21.5), HowFar::Over);
        assert_eq!(told.fact(), Fact::MomentTold { from_s: Some(10.0), until_s: Some(17.0), text: None });
    }

    #[test]
    fn nobody_is_listened_to_for_ever() {
        let mut told = Told::default();
        told.speech_began(0.0);
        told.spoken(&utterance(0.0, 50.0));
        told.speech_began(51.0);
        assert_eq!((told.how_far(89.0), told.how_far(91.0)), (HowFar::UnderWay, HowFar::Over));
    }
}
