//! Chooses among the candidates of each frame by the cheapest path through time, with a bounded delay.
//!
//! Costs as in Boersma (1993), with his values for steps of 10 ms where he gives them.

use super::pitch::{CANDIDATES, Candidate, Look, strength};

/// The decision for a frame falls this many frames later: 150 ms.
pub(crate) const LAG: usize = 15;
/// Cost per octave of change between frames (0.35 in Boersma 1993; the flattened spectrum has more peaks to jump to).
const OCTAVE_JUMP: f64 = 0.5;
/// Cost of passing between voiced and unvoiced (0.14 in Boersma 1993).
const TURN: f64 = 0.16;
/// Strength of "unvoiced": a frame must be more periodic than this to count as voiced. Boersma (1993) has 0.45; tuned on
/// spoken sentences against the majority of five other methods, so that voiced and unvoiced slips weigh about the same
/// between Praat's and theirs.
const VOICING: f64 = 0.46;

/// Cost of an octave (or another small ratio) to the pitch in which the voice has been: a voice that holds a note slips by
/// octaves only in the search.
const HABIT: f64 = 0.1;
/// The same of a note held for a second.
const LONG_HABIT: f64 = 0.25;
/// What is further than this from the habit is away from it, octaves.
const HABIT_FROM: f64 = 0.4;
/// The ratios taken for slips, octaves: 2, 3, 4, 5, 6, 8.
const SLIPS: [f64; 6] = [1.0, 1.585, 2.0, 2.322, 2.585, 3.0];
/// Nearer to a slip than this costs all of it, octaves, nothing at twice this.
const SLIP_WITHIN: f64 = 0.1;
/// A sound of more than this many times the power of the habit's is another one: 12 dB.
const ANOTHER: f64 = 16.0;
/// Frames of voice after which the habit has its full weight: 0.3 s.
const HABIT_AFTER: u32 = 30;
/// Frames after which a note is long: 1 s.
const LONG: u32 = 100;
/// Frames without voice, or away from the habit, after which it is forgotten: 0.2 and 0.5 s.
const HABIT_REST: u32 = 20;
const HABIT_AWAY: u32 = 50;

/// State 0 is unvoiced, state k + 1 is candidate k.
const STATES: usize = CANDIDATES + 1;

#[derive(Debug, Clone, Copy)]
struct Column {
    candidates: [Candidate; CANDIDATES],
    count: usize,
    power: f64,
    from: [u8; STATES],
}

/// What was decided about a frame.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(crate) struct Decision {
    /// 0 where unvoiced.
    pub f0_hz: f64,
    /// Of the chosen candidate, or of the strongest where unvoiced.
    pub periodicity: f64,
}

/// Path search over the last [`LAG`] frames.
#[derive(Debug, Clone)]
pub(crate) struct PitchPath {
    columns: std::collections::VecDeque<Column>,
    score: [f64; STATES],
    habit: Habit,
}

/// The pitch of the last part of a second.
#[derive(Debug, Clone, Copy, Default)]
struct Habit {
    /// log2 of F0 in Hz.
    octave: f64,
    /// Mean square of the sound.
    power: f64,
    /// Frames it comes from.
    voiced: u32,
    unvoiced: u32,
    away: u32,
}

impl Habit {
    fn follow(&mut self, f0_hz: f64, power: f64) {
        if f0_hz <= 0.0 {
            self.unvoiced += 1;
            // Between words a note is not long any more.
            self.voiced = self.voiced.min(HABIT_AFTER);
            if self.unvoiced > HABIT_REST {
                self.voiced = 0;
            }
            return;
        }
        self.unvoiced = 0;
        let here = f0_hz.log2();
        if self.voiced > 0 && (here - self.octave).abs() > HABIT_FROM {
            self.away += 1;
            if self.away > HABIT_AWAY {
                self.voiced = 0;
            }
            return;
        }
        self.away = 0;
        let share = if self.voiced == 0 { 1.0 } else { 0.1 };
        self.octave += share * (here - self.octave);
        self.power += share * (power - self.power);
        self.voiced = (self.voiced + 1).min(LONG);
    }

    fn cost(&self, f0_hz: f64, power: f64) -> f64 {
        if self.voiced == 0 || power > ANOTHER * self.power {
            return 0.0;
        }
        let away = (f0_hz.log2() - self.octave).abs();
        let off = SLIPS.iter().map(|slip| (away - slip).abs()).fold(f64::MAX, f64::min);
        let away = (2.0 - off / SLIP_WITHIN).clamp(0.0, 1.0);
        let share = |from: u32, to: u32| f64::from(self.voiced.clamp(from, to) - from) / f64::from(to - from);
        away * (HABIT * share(0, HABIT_AFTER) + (LONG_HABIT - HABIT) * share(HABIT_AFTER, LONG))
    }
}

impl PitchPath {
    pub fn new() -> Self {
        Self { columns: std::collections::VecDeque::with_capacity(LAG + 2), score: [0.0; STATES], habit: Habit::default() }
    }

    /// Adds a frame. `doubt` is 0 where the level is well over the room and rises to 1 and more where it is not.
    /// Gives the decision for the frame [`LAG`] frames back, once there is one.
    pub fn push(&mut self, look: &Look, doubt: f64) -> Option<Decision> {
        let mut score = [f64::NEG_INFINITY; STATES];
        let mut from = [0u8; STATES];
        let previous = self.columns.back().copied();
        for state in 0..=look.count {
            let here = (state > 0).then(|| look.candidates[state - 1]);
            let gain = here.map_or(VOICING + doubt, |c| strength(&c) - self.habit.cost(c.f0_hz, look.power));
            let (origin, best) = match &previous {
                None => (0, 0.0),
                Some(column) => (0..=column.count)
                    .map(|old| {
                        let there = (old > 0).then(|| column.candidates[old - 1]);
                        (old, self.score[old] - step_cost(there, here))
                    })
                    .fold((0, f64::NEG_INFINITY), |a, b| if b.1 > a.1 { b } else { a }),
            };
            score[state] = best + gain;
            from[state] = origin as u8;
        }
        // Only differences matter; without this the sums would grow for ever.
        let top = score.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        self.score = score.map(|s| s - top);
        self.columns.push_back(Column { candidates: look.candidates, count: look.count, power: look.power, from });
        if self.columns.len() <= LAG {
            return None;
        }
        let decision = self.decide_oldest();
        let power = self.columns.pop_front().map_or(0.0, |column| column.power);
        self.habit.follow(decision.map_or(0.0, |d| d.f0_hz), power);
        decision
    }

    /// The decision for the next undecided frame when no more frames come.
    pub fn flush(&mut self) -> Option<Decision> {
        let decision = self.decide_oldest();
        self.columns.pop_front();
        decision
    }

    fn decide_oldest(&self) -> Option<Decision> {
        let mut state = (0..STATES).fold(0, |a, b| if self.score[b] > self.score[a] { b } else { a });
        for column in self.columns.iter().skip(1).rev() {
            state = usize::from(column.from[state]);
        }
        let oldest = self.columns.front()?;
        if state > 0 {
            let chosen = oldest.candidates[state - 1];
            return Some(Decision { f0_hz: chosen.f0_hz, periodicity: chosen.periodicity });
        }
        let strongest = oldest.candidates[..oldest.count].iter().map(|c| c.periodicity).fold(0.0, f64::max);
        Some(Decision { f0_hz: 0.0, periodicity: strongest })
    }
}

fn step_cost(from: Option<Candidate>, to: Option<Candidate>) -> f64 {
    match (from, to) {
        (None, None) => 0.0,
        (Some(a), Some(b)) => OCTAVE_JUMP * (a.f0_hz / b.f0_hz).log2().abs(),
        _ => TURN,
    }
}
