//! Which of a person's own commands an utterance is like, if any.
//!
//! A distance alone says nothing: one person's takes lie closer together than another's, and long words closer than short ones. So each
//! word has a scale of its own, from the enrolment itself: 0 is as far as its takes lie from each other, 1 as far as the nearest
//! of the person's other commands. What counts is where on that scale an utterance stands, and how far before the second best.

use super::own_voice::OwnVoice;
use super::pattern::{Point, Transform, Warp, common_floor, floor_of};
use super::mel::BANDS;
use super::take::Take;

/// Share of the person's other commands that may lie under the scale's 1: the nearest tenth.
const NEAREST_OTHERS: f32 = 0.1;
/// The scale's 1 is at least and at most so many times its 0. The upper bound matters where few commands are known yet: other speech
/// is not as far away as the few other words happen to be.
const LEAST_STEP: f32 = 1.12;
const WIDEST_STEP: f32 = 1.45;
/// With a single take, or before there are two, the distance of like takes, from the median of simulated and real people's.
const USUAL_WITHIN: f32 = 6.0;

/// The likeness of an utterance to one word.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Likeness {
    /// Number of the word in [`OwnVoice::words`].
    pub word: usize,
    /// On the word's scale: 0 as its own takes, 1 as the nearest other command, more for what is farther.
    pub score: f32,
}

/// A person's words, ready to be compared with.
pub struct Matcher {
    transform: Transform,
    warp: Warp,
    words: Vec<Known>,
}

struct Known {
    takes: Vec<(Take, [f32; BANDS])>,
    /// Mean distance of its takes from each other.
    within: f32,
    /// Distance at which other commands begin.
    other: f32,
}

impl Matcher {
    /// Measures how the takes lie among each other.
    #[must_use]
    pub fn new(own: &OwnVoice) -> Self {
        let known = |takes: &Vec<Take>| Known {
            takes: takes.iter().map(|take| (take.clone(), floor_of(take))).collect(),
            within: USUAL_WITHIN,
            other: USUAL_WITHIN * WIDEST_STEP,
        };
        let words: Vec<Known> = own.words.iter().map(|word| known(&word.takes)).collect();
        let mut matcher = Self { transform: Transform::new(), warp: Warp::default(), words };
        matcher.scale();
        matcher
    }

    fn scale(&mut self) {
        let mut within: Vec<Option<f32>> = Vec::new();
        let mut others: Vec<Vec<f32>> = Vec::new();
        for word in 0..self.words.len() {
            let takes: Vec<Take> = self.words.iter().enumerate().filter(|(w, _)| *w == word).flat_map(|(_, k)| k.takes.iter().map(|t| t.0.clone())).collect();
            let own: Vec<f32> = takes.iter().enumerate().filter_map(|(i, take)| self.distance(take, word, Some(i))).collect();
            within.push(mean(&own));
            let foreign: Vec<Take> = self.words.iter().enumerate().filter(|(w, _)| *w != word).flat_map(|(_, k)| k.takes.iter().map(|t| t.0.clone())).collect();
            others.push(foreign.iter().filter_map(|take| self.distance(take, word, None)).filter(|d| d.is_finite()).collect());
        }
        let usual = median(within.iter().flatten().copied().collect()).unwrap_or(USUAL_WITHIN);
        for ((known, within), mut others) in self.words.iter_mut().zip(within).zip(others) {
            // Three takes are few: half of what is believed comes from the person's other words.
            known.within = 0.5 * (within.unwrap_or(usual) + usual);
            others.sort_by(f32::total_cmp);
            let nearest = others.get((others.len() as f32 * NEAREST_OTHERS) as usize).copied().unwrap_or(f32::INFINITY);
            known.other = nearest.clamp(LEAST_STEP * known.within, WIDEST_STEP * known.within);
        }
    }

    /// Mean of the two least distances from a word's takes, one of them left out on demand; None where none is left.
    fn distance(&mut self, take: &Take, word: usize, without: Option<usize>) -> Option<f32> {
        let floor = floor_of(take);
        let known = self.words.get(word)?;
        let (mut first, mut second) = (f32::INFINITY, f32::INFINITY);
        let mut seen = 0;
        for (i, (other, other_floor)) in known.takes.iter().enumerate() {
            if without == Some(i) {
                continue;
            }
            seen += 1;
            let common = common_floor(&floor, other_floor);
            let (a, b): (Vec<Point>, Vec<Point>) = (self.transform.pattern(take, &common), self.transform.pattern(other, &common));
            let d = self.warp.distance(&a, &b);
            if d < first {
                second = first;
                first = d;
            } else {
                second = second.min(d);
            }
        }
        match seen {
            0 => None,
            1 => Some(first),
            _ => Some(if second.is_finite() { 0.5 * (first + second) } else { 1.2 * first }),
        }
    }

    /// The likenesses to all words, the greatest first.
    pub fn likenesses(&mut self, take: &Take) -> Vec<Likeness> {
        let mut found = Vec::new();
        for word in 0..self.words.len() {
            let Some(distance) = self.distance(take, word, None) else { continue };
            let Some(known) = self.words.get(word) else { continue };
            found.push(Likeness { word, score: (distance - known.within) / (known.other - known.within) });
        }
        found.sort_by(|a, b| a.score.total_cmp(&b.score));
        found
    }

    /// Distances of a word's takes from each other, mean, and from the nearest other command; for the enrolment's own judgement.
    #[must_use]
    pub fn scale_of(&self, word: usize) -> Option<(f32, f32)> {
        self.words.get(word).map(|known| (known.within, known.other))
    }
}

fn mean(values: &[f32]) -> Option<f32> {
    let finite: Vec<f32> = values.iter().copied().filter(|v| v.is_finite()).collect();
    (!finite.is_empty()).then(|| finite.iter().sum::<f32>() / finite.len() as f32)
}

fn median(mut values: Vec<f32>) -> Option<f32> {
    values.sort_by(f32::total_cmp);
    values.get(values.len() / 2).copied()
}
