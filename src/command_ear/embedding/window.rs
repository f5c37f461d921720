//! The stretch of an utterance that may be a phrase, cut out for the network by the level alone.

use super::mel::{FRAME, HOP};
use crate::RATE_HZ;

/// Frames of the network's picture: 16 steps of the embedding, each 0.08 s after the last and 0.775 s wide.
pub(super) const FRAMES: usize = 196;
/// Samples of a window, 1.98 s.
pub(crate) const WINDOW: usize = FRAME + HOP * (FRAMES - 1);
/// The window ends so long after the sound last stood out, s.
const AFTER_S: f64 = 0.12;
/// No sound is shown from more than this before it first did, s.
const BEFORE_S: f64 = 0.36;
/// Sound so far over the room stands out, dB.
const STANDS_OUT_DB: f64 = 6.0;
/// In lasting noise what is louder than this under the loudest stands out, dB: the floor of a room is known only after a while.
const UNDER_LOUDEST_DB: f64 = 15.0;
/// The loudest is looked for so far around the place asked for, s.
const AROUND_S: f64 = 0.9;
/// A pause up to this is one between the words of a phrase, or before the release of a "p", s.
const PAUSE_S: f64 = 0.3;
/// A longer stretch is talk, s.
const LONGEST_S: f64 = 1.8;
/// A shorter one is a click, s.
const SHORTEST_S: f64 = 0.1;

/// A stretch of sound that stands out; times in s from the start of the utterance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stretch {
    pub start_s: f64,
    pub end_s: f64,
    /// The end of what stands out before it, s; negative where nothing does.
    before_s: f64,
    /// From so much over the room on sound was taken to stand out, dB.
    from_db: f64,
}

impl Stretch {
    /// The stretch with this instant in it or, without one, the last. `levels`: end of each batch in s, and its level less the floor in dB. None where
    /// it is too short or too long for a phrase.
    pub fn of(levels: &[(f64, f64)], at_s: Option<f64>) -> Option<Self> {
        Self::of_any_length(levels, at_s).filter(|stretch| (SHORTEST_S..=LONGEST_S).contains(&stretch.length_s()))
    }

    /// The last stretch, of up to `longest_s`: of a longer one than others the window shows the end.
    pub fn last(levels: &[(f64, f64)], longest_s: f64) -> Option<Self> {
        Self::of_any_length(levels, None).filter(|stretch| (SHORTEST_S..=longest_s).contains(&stretch.length_s()))
    }

    /// Longer than a single word, or a phrase that is said briskly.
    pub fn is_long(&self) -> bool {
        self.length_s() > LONGEST_S
    }

    fn length_s(&self) -> f64 {
        self.end_s - self.start_s
    }

    fn of_any_length(levels: &[(f64, f64)], at_s: Option<f64>) -> Option<Self> {
        let last_loud_s = levels.iter().rev().find(|(_, above_db)| *above_db >= STANDS_OUT_DB)?.0;
        let around_s = at_s.map_or((last_loud_s - 2.0 * AROUND_S, last_loud_s), |at_s| (at_s - AROUND_S, at_s + AROUND_S));
        let near = levels.iter().filter(|(end_s, _)| (around_s.0..=around_s.1 + 1e-9).contains(end_s));
        let from_db = (near.map(|(_, above_db)| *above_db).fold(0.0, f64::max) - UNDER_LOUDEST_DB).max(STANDS_OUT_DB);
        let mut found: Option<Self> = None;
        let mut last_s = 0.0;
        for &(end_s, above_db) in levels {
            if above_db >= from_db {
                match &mut found {
                    Some(stretch) if last_s - stretch.end_s < PAUSE_S - 1e-9 => stretch.end_s = end_s,
                    Some(stretch) if at_s.is_some_and(|at_s| at_s < stretch.end_s + PAUSE_S / 2.0) => break,
                    _ => {
                        let before_s = found.map_or(-1.0, |stretch| stretch.end_s);
                        found = Some(Self { start_s: last_s, end_s, before_s, from_db });
                    }
                }
            }
            last_s = end_s;
        }
        found
    }

    /// Nothing can have stood directly before it: there was a pause, or the utterance began with it and `out_of_quiet`.
    pub fn begins_alone(&self, out_of_quiet: bool) -> bool {
        self.before_s >= 0.0 || out_of_quiet || self.start_s >= PAUSE_S - 1e-9
    }

    /// Its [`WINDOW`] samples out of the utterance's; what lies outside is silence.
    pub fn window(&self, utterance: &[i16]) -> Vec<i16> {
        let sample = |s: f64| (s * f64::from(RATE_HZ)).round() as usize;
        let end = sample(self.end_s + AFTER_S).min(utterance.len());
        let first = sample((self.start_s - BEFORE_S).max(self.before_s).max(0.0)).max(end.saturating_sub(WINDOW));
        let shown = utterance.get(first..end).unwrap_or_default();
        let mut window = vec![0; WINDOW - shown.len()];
        window.extend_from_slice(shown);
        window
    }

    /// How much sound stands out beside it, s.
    pub fn elsewhere_s(&self, levels: &[(f64, f64)]) -> f64 {
        let mut last_s = 0.0;
        let mut elsewhere_s = 0.0;
        for &(end_s, above_db) in levels {
            if above_db >= self.from_db && (end_s <= self.start_s + 1e-9 || last_s >= self.end_s - 1e-9) {
                elsewhere_s += end_s - last_s;
            }
            last_s = end_s;
        }
        elsewhere_s
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::path::seconds;

    /// Batches of 30 ms, loud where a span says.
    fn levels(until_s: f64, loud: &[(f64, f64)]) -> Vec<(f64, f64)> {
        (1..=(until_s / 0.03).round() as usize)
            .map(|i| {
                let end_s = i as f64 * 0.03;
                let inside = loud.iter().any(|&(a, b)| end_s > a + 1e-6 && end_s < b + 1e-6);
                (end_s, if inside { 20.0 } else { 0.0 })
            })
            .collect()
    }

    #[test]
    fn the_last_stretch_is_taken_and_a_pause_within_a_word_bridged() {
        let found = Stretch::of(&levels(3.0, &[(0.3, 0.6), (1.2, 1.5), (1.68, 1.8)]), None).unwrap();
        assert!((found.start_s - 1.2).abs() < 1e-6 && (found.end_s - 1.8).abs() < 1e-6 && (found.before_s - 0.6).abs() < 1e-6, "{found:?}");
        assert!((found.elsewhere_s(&levels(3.0, &[(0.3, 0.6), (1.2, 1.8)])) - 0.3).abs() < 1e-6);
        let asked_for = Stretch::of(&levels(3.0, &[(0.3, 0.6), (1.2, 1.5)]), Some(0.5)).unwrap();
        assert!((asked_for.end_s - 0.6).abs() < 1e-6, "{asked_for:?}");
    }

    #[test]
    fn in_lasting_noise_the_louder_part_is_the_stretch() {
        let noisy: Vec<(f64, f64)> =
            levels(2.0, &[(0.9, 1.2)]).into_iter().map(|(end_s, db)| (end_s, if db > 0.0 { 28.0 } else { 12.0 })).collect();
        let found = Stretch::of(&noisy, None).unwrap();
        assert!((found.start_s - 0.9).abs() < 1e-6 && (found.end_s - 1.2).abs() < 1e-6 && found.begins_alone(false), "{found:?}");
        let at_once = Stretch::of(&levels(1.0, &[(0.0, 0.3)]), None).unwrap();
        assert!(at_once.begins_alone(true) && !at_once.begins_alone(false));
    }

    #[test]
    fn clicks_talk_and_silence_are_none() {
        assert_eq!(Stretch::of(&levels(1.0, &[(0.3, 0.36)]), None), None);
        assert_eq!(Stretch::of(&levels(4.0, &[(0.3, 3.0)]), None), None);
        assert_eq!(Stretch::of(&levels(1.0, &[]), None), None);
        let slow = levels(3.0, &[(0.3, 2.4)]);
        assert_eq!(Stretch::of(&slow, None), None);
        assert!(Stretch::last(&slow, 2.4).is_some_and(|stretch| stretch.is_long()) && Stretch::last(&slow, 2.0).is_none());
        assert_eq!(Stretch::last(&levels(1.0, &[(0.3, 0.36)]), 2.4), None);
    }

    #[test]
    fn the_window_ends_soon_after_it_and_shows_nothing_of_what_was_before() {
        let sound: Vec<i16> = vec![7; (2.0 * f64::from(RATE_HZ)) as usize];
        let stretch = Stretch::of(&levels(2.0, &[(0.3, 0.6), (0.96, 1.5)]), None).unwrap();
        let window = stretch.window(&sound);
        assert_eq!(window.len(), WINDOW);
        let shown = window.iter().filter(|&&x| x == 7).count();
        assert!((seconds(shown) - (1.5 + AFTER_S - 0.6)).abs() < 1e-3, "{}", seconds(shown));
        assert_eq!(window.last(), Some(&7));
        assert_eq!(stretch.window(&sound[..(1.5 * f64::from(RATE_HZ)) as usize]).len(), WINDOW, "it may end before the pause");
    }
}
