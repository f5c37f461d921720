//! F0 and voicing against contours that are known, beside Praat and pYIN.

use crate::set::Set;
use figures::{Spread, figure, figure_of};
use hear::analyse_voice;
use std::collections::BTreeMap;
use std::error::Error;

/// What a method made of some files.
#[derive(Default)]
struct Score {
    frames: f64,
    /// Frames voiced in both.
    both: f64,
    /// Of those, more than 20 % off.
    gross: f64,
    /// Voicing wrong: said voiced, said unvoiced.
    extra: f64,
    missed: f64,
    cents: Vec<f64>,
    files: f64,
    /// Files in which F0 was once half an octave off.
    jumped: f64,
}

impl Score {
    fn add(&mut self, truth: &[f64], found: &[f64]) {
        let mut jumped = false;
        for (truth, found) in truth.iter().zip(found) {
            self.frames += 1.0;
            match (*truth > 0.0, *found > 0.0) {
                (true, true) => {
                    self.both += 1.0;
                    let ratio = found / truth;
                    jumped |= ratio.log2().abs() > 0.5;
                    if (ratio - 1.0).abs() > 0.2 {
                        self.gross += 1.0;
                    } else {
                        self.cents.push(1200.0 * ratio.log2());
                    }
                }
                (false, true) => self.extra += 1.0,
                (true, false) => self.missed += 1.0,
                (false, false) => {}
            }
        }
        self.files += 1.0;
        self.jumped += f64::from(u8::from(jumped));
    }

    fn gross_pct(&self) -> f64 {
        100.0 * self.gross / self.both.max(1.0)
    }

    fn voicing_pct(&self) -> f64 {
        100.0 * (self.extra + self.missed) / self.frames.max(1.0)
    }

    fn cents(&self) -> f64 {
        Spread::of_sizes(&self.cents).at(0.5)
    }

    fn tells(&self) -> String {
        format!(
            "gross {:.2} %, voicing {:.2} % ({:.2} extra, {:.2} missed), median {:.1} cents",
            self.gross_pct(),
            self.voicing_pct(),
            100.0 * self.extra / self.frames.max(1.0),
            100.0 * self.missed / self.frames.max(1.0),
            self.cents()
        )
    }
}

fn contour(text: &str) -> Vec<f64> {
    text.split(' ').map(|v| v.parse().unwrap_or(0.0)).collect()
}

pub fn run(set: &Set) -> Result<(), Box<dyn Error>> {
    let mut references: BTreeMap<&str, BTreeMap<String, Vec<f64>>> = BTreeMap::new();
    for name in ["praat", "pyin"] {
        // Their scripts may not have been run.
        let rows = set.rows(&format!("f0/{name}.tsv")).unwrap_or_default();
        references.insert(name, rows.into_iter().map(|r| (r[0].clone(), contour(&r[1]))).collect());
    }
    let mut scores: BTreeMap<String, BTreeMap<&str, Score>> = BTreeMap::new();
    for row in set.rows("f0/truth.tsv")? {
        let [file, condition, group, truth] = &row[..] else { continue };
        if group != set.group {
            continue;
        }
        let truth = contour(truth);
        let (samples, rate_hz) = set.sound(file)?;
        let found: Vec<f64> = analyse_voice(&samples, rate_hz).0.iter().map(|f| f.f0_hz).collect();
        let of = scores.entry(condition.clone()).or_default();
        let before = of.get("ours").map_or((0.0, 0.0), |s| (s.jumped, s.gross));
        of.entry("ours").or_default().add(&truth, &found);
        if set.verbose {
            let now = &of["ours"];
            if now.gross > before.1 {
                println!("{file}: {} gross, jumped {}", now.gross - before.1, now.jumped - before.0);
            }
        }
        for (name, table) in &references {
            if let Some(found) = table.get(file) {
                of.entry(name).or_default().add(&truth, found);
            }
        }
    }
    let (mut jumped, mut vowels) = (0.0, 0.0);
    for (condition, of) in &scores {
        for name in ["praat", "pyin"] {
            if let Some(score) = of.get(name) {
                let jumps = if is_vowel(condition) { format!(", octave jumps in {}", score.jumped) } else { String::new() };
                println!("F0, {condition}, {} files: {name}: {}{jumps}", score.files, score.tells());
            }
        }
        let ours = &of["ours"];
        println!("F0, {condition}, {} files: ours: {}", ours.files, ours.tells());
        let files = ours.files as usize;
        figure_of(&format!("f0.{condition}.gross"), ours.gross_pct(), files);
        figure_of(&format!("f0.{condition}.voicing"), ours.voicing_pct(), files);
        figure_of(&format!("f0.{condition}.cents"), ours.cents(), files);
        if is_vowel(condition) {
            (jumped, vowels) = (jumped + ours.jumped, vowels + ours.files);
        }
    }
    figure_of("f0.jumps", 100.0 * jumped / vowels, vowels as usize);
    if let (Some(clean), Some(noisy)) = (scores.get("clean"), scores.get("noise10")) {
        figure("f0.noise_times", noisy["ours"].gross_pct() / clean["ours"].gross_pct());
    }
    Ok(())
}

fn is_vowel(condition: &str) -> bool {
    condition.ends_with("vowel") || condition == "hoarse"
}
