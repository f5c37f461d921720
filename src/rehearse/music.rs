//! Simple music without end: a tune over slow chords, from a seed. It holds steady pitches as voices do, which is what makes
//! music hard on an ear that waits for a held vowel.

use super::noise::Gauss;
use super::signal::gain;
use std::f64::consts::PI;

/// Steps of the scale over its root, semitones (major pentatonic, so that any two go together).
const SCALE: [f64; 8] = [0.0, 2.0, 4.0, 7.0, 9.0, 12.0, 14.0, 16.0];
/// Roots of the chords, Hz.
const ROOTS_HZ: [f64; 4] = [130.8, 110.0, 174.6, 196.0];
/// Length of a chord, s.
const CHORD_S: f64 = 2.4;
/// Lengths of notes, s.
const NOTES_S: [f64; 4] = [0.3, 0.6, 0.6, 1.2];
/// RMS of chord and tune before scaling, measured over three minutes by the same formulas in another language.
const RAW_RMS: f64 = 0.351;

/// A source of music at one level.
pub(super) struct Music {
    rate_hz: f64,
    gauss: Gauss,
    scale: f64,
    root_hz: f64,
    chord_left_s: f64,
    note_hz: f64,
    note_s: f64,
    note_left_s: f64,
    phases: [f64; 4],
}

impl Music {
    /// `level_db`: RMS, dB re full scale.
    pub(super) fn new(level_db: f64, rate_hz: u32, seed: u64) -> Self {
        Self {
            rate_hz: f64::from(rate_hz),
            gauss: Gauss::new(seed),
            scale: gain(level_db) / RAW_RMS,
            root_hz: ROOTS_HZ[0],
            chord_left_s: 0.0,
            note_hz: 262.0,
            note_s: 0.6,
            note_left_s: 0.0,
            phases: [0.0; 4],
        }
    }

    fn one_of(&mut self, values: &[f64]) -> f64 {
        let at = self.gauss.between(0.0, values.len() as f64) as usize;
        values.get(at).copied().unwrap_or(1.0)
    }

    /// The next sample.
    pub(super) fn next(&mut self) -> f32 {
        let step_s = 1.0 / self.rate_hz;
        if self.chord_left_s <= 0.0 {
            self.root_hz = self.one_of(&ROOTS_HZ);
            self.chord_left_s = CHORD_S;
        }
        if self.note_left_s <= 0.0 {
            self.note_hz = 262.0 * 2f64.powf(self.one_of(&SCALE) / 12.0);
            self.note_s = self.one_of(&NOTES_S);
            self.note_left_s = self.note_s;
        }
        self.chord_left_s -= step_s;
        self.note_left_s -= step_s;
        // Root, fifth and octave of the chord; the tune with two overtones.
        let frequencies = [self.root_hz, 1.5 * self.root_hz, 2.0 * self.root_hz, self.note_hz];
        for (phase, f_hz) in self.phases.iter_mut().zip(frequencies) {
            *phase = (*phase + f_hz * step_s).fract();
        }
        let wave = |phase: f64| (2.0 * PI * phase).sin();
        let [a, b, c, d] = self.phases;
        let swell = ramp(CHORD_S - self.chord_left_s, self.chord_left_s, 0.3);
        let struck = ramp(self.note_s - self.note_left_s, self.note_left_s, 0.02) * (-(self.note_s - self.note_left_s)).exp();
        let chord = 0.25 * (wave(a) + 0.8 * wave(b) + 0.6 * wave(c));
        let tune = 0.5 * (wave(d) + 0.4 * wave(2.0 * d) + 0.2 * wave(3.0 * d));
        ((swell * chord + struck * tune) * self.scale) as f32
    }
}

/// Rises and falls over `over_s` at both ends.
fn ramp(since_s: f64, left_s: f64, over_s: f64) -> f64 {
    (since_s.min(left_s) / over_s).clamp(0.0, 1.0)
}
