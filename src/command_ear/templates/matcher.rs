//! Which of a person's own commands an utterance is like, if any.
//!
//! A distance alone says nothing: one person's takes lie closer together than another's. So each word has a scale of its own, from the
//! enrolment itself: 1 is as far as its takes lie from each other. What counts is where on that scale an utterance stands, and how
//! far the second best command is behind: both go into one *likeness*.

use super::mel::BANDS;
use super::own_voice::EnrolledVoice;
use super::pattern::{Point, Transform, Warp, common_floor, floor_of};
use super::take::Take;

/// How far takes of one word usually lie apart, where too few are known; the median of people's (see `pattern`).
const USUAL_WITHIN: f32 = 9.6;
/// So many words must be known before the person's own median is trusted.
const WORDS_FOR_USUAL: usize = 3;
/// How much a lead before the second best counts against the distance, and the greatest lead that counts.
const LEAD_WEIGHT: f32 = 0.6;
const GREATEST_LEAD: f32 = 0.5;
/// A take whose nearest fellow is this much farther than usual is unlike them.
const UNLIKE: f32 = 1.45;
/// Nearer than this takes are alike, however much nearer the person's others are; common practice, no source.
const ALIKE_ENOUGH: f32 = 0.6 * USUAL_WITHIN;
/// A second distance that cannot be had (lengths differ too much) counts as so many times the first.
const SECOND_MISSING: f32 = 1.2;

/// The likeness of an utterance to one word.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Likeness {
    /// Number of the word in [`EnrolledVoice::words`].
    pub word: usize,
    /// Distance on the word's scale: 1 is as far as its takes lie from each other.
    pub apart: f32,
}

/// How well the best word fits: below 0 better than the takes fit each other on average, more is worse. Of distance and lead, see
/// the module.
#[must_use]
pub fn misfit(likenesses: &[Likeness]) -> f32 {
    let Some(best) = likenesses.first() else { return f32::INFINITY };
    // A lead before one or two words says little: the third word may be anything.
    let second = likenesses.get(1).filter(|_| likenesses.len() >= WORDS_FOR_USUAL);
    let lead = second.map_or(0.0, |second| second.apart / best.apart.max(1e-3) - 1.0);
    best.apart - 1.0 - LEAD_WEIGHT * lead.min(GREATEST_LEAD)
}

/// Why a word as it was enrolled is not to be relied on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doubt {
    /// This take, counted from 0, is unlike the others.
    Unlike { take: usize },
    /// This take is as near to another word, by number.
    Near { take: usize, word: usize },
}

/// A person's words, ready to be compared with.
pub struct Matcher {
    transform: Transform,
    warp: Warp,
    words: Vec<Known>,
    /// How far this person's takes of one word usually lie apart.
    usual: f32,
}

struct Known {
    takes: Vec<(Take, [f32; BANDS])>,
    /// How far its takes lie from each other.
    within: f32,
}

impl Matcher {
    /// Measures how the takes lie among each other.
    #[must_use]
    pub fn new(own: &EnrolledVoice) -> Self {
        let known =
            |takes: &[Take]| Known { takes: takes.iter().map(|take| (take.clone(), floor_of(take))).collect(), within: USUAL_WITHIN };
        let words = own.words.iter().map(|word| known(&word.takes)).collect();
        let mut matcher = Self { transform: Transform::new(), warp: Warp::default(), words, usual: USUAL_WITHIN };
        let within: Vec<Option<f32>> = (0..matcher.words.len()).map(|word| mean(&matcher.among(word))).collect();
        let mut all: Vec<f32> = within.iter().flatten().copied().collect();
        all.sort_by(f32::total_cmp);
        if all.len() >= WORDS_FOR_USUAL {
            matcher.usual = all.get(all.len() / 2).copied().unwrap_or(USUAL_WITHIN);
        }
        for (known, within) in matcher.words.iter_mut().zip(within) {
            // Three takes are few: half of what is believed comes from the person's other words.
            known.within = 0.5 * (within.unwrap_or(matcher.usual) + matcher.usual);
        }
        matcher
    }

    /// Distance of each take of a word from its fellows.
    fn among(&mut self, word: usize) -> Vec<f32> {
        let takes: Vec<Take> = self.words.get(word).map(|known| known.takes.iter().map(|t| t.0.clone()).collect()).unwrap_or_default();
        takes.iter().enumerate().filter_map(|(i, take)| self.distance(take, word, Some(i))).collect()
    }

    /// Mean of the two least distances from a word's takes, one of them left out on demand; None where none is left.
    fn distance(&mut self, take: &Take, word: usize, without: Option<usize>) -> Option<f32> {
        let floor = floor_of(take);
        let known = self.words.get(word)?;
        let (mut first, mut second, mut seen) = (f32::INFINITY, f32::INFINITY, 0);
        for (other, other_floor) in known.takes.iter().enumerate().filter(|(i, _)| without != Some(*i)).map(|(_, take)| take) {
            seen += 1;
            let common = common_floor(&floor, other_floor);
            let (a, b): (Vec<Point>, Vec<Point>) = (self.transform.pattern(take, &common), self.transform.pattern(other, &common));
            let d = self.warp.distance(&a, &b);
            second = second.min(d.max(first));
            first = first.min(d);
        }
        match seen {
            0 => None,
            1 => Some(first),
            _ => Some(if second.is_finite() { 0.5 * (first + second) } else { SECOND_MISSING * first }),
        }
    }

    /// The likenesses to all words, the greatest first.
    pub fn likenesses(&mut self, take: &Take) -> Vec<Likeness> {
        let mut found = Vec::new();
        for word in 0..self.words.len() {
            let Some(distance) = self.distance(take, word, None) else { continue };
            let within = self.words.get(word).map_or(USUAL_WITHIN, |known| known.within);
            found.push(Likeness { word, apart: distance / within });
        }
        found.sort_by(|a, b| a.apart.total_cmp(&b.apart));
        found
    }

    /// What is to be doubted in a word as it was enrolled: the take that is least like the others, or the one that is as near to another
    /// word; None where all is well.
    pub fn doubt(&mut self, word: usize) -> Option<Doubt> {
        let among = self.among(word);
        let (take, worst) = among.iter().copied().enumerate().max_by(|a, b| a.1.total_cmp(&b.1))?;
        if worst > UNLIKE * self.usual.max(ALIKE_ENOUGH) {
            return Some(Doubt::Unlike { take });
        }
        let takes: Vec<Take> = self.words.get(word)?.takes.iter().map(|t| t.0.clone()).collect();
        for (take, (picture, own)) in takes.iter().zip(&among).enumerate() {
            for other in (0..self.words.len()).filter(|other| *other != word) {
                if self.distance(picture, other, None).is_some_and(|distance| distance <= *own) {
                    return Some(Doubt::Near { take, word: other });
                }
            }
        }
        None
    }
}

fn mean(values: &[f32]) -> Option<f32> {
    let finite: Vec<f32> = values.iter().copied().filter(|v| v.is_finite()).collect();
    (!finite.is_empty()).then(|| finite.iter().sum::<f32>() / finite.len() as f32)
}

#[cfg(test)]
#[path = "tests/matcher.rs"]
mod tests;
