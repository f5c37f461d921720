//! Onset and offset of held vowels against the instants they were made with.

use crate::set::Set;
use figures::{Spread, figure_of};
use hear::voice_file::FILE_SETTINGS;
use hear::{Held, HoldSettings, analyse_voice_as};
use std::collections::BTreeMap;
use std::error::Error;

/// As the practice asks for it: a second of voice, breaks of half a second bridged.
const SETTINGS: HoldSettings = HoldSettings { max_break_s: 0.5, ..FILE_SETTINGS };

#[derive(Default)]
struct Ends {
    onset_s: Vec<f64>,
    offset_s: Vec<f64>,
    files: usize,
    not_one: usize,
    lost: usize,
    sure_s: Vec<f64>,
}

impl Ends {
    fn add(&mut self, holds: &[Held], onset_s: f64, offset_s: f64) {
        self.files += 1;
        self.not_one += usize::from(holds.len() != 1);
        let overlap = |h: &&Held| h.offset_s.min(offset_s) - h.onset_s.max(onset_s);
        let Some(hold) = holds.iter().max_by(|a, b| overlap(a).total_cmp(&overlap(b))).filter(|h| overlap(h) > 0.0) else {
            self.lost += 1;
            self.onset_s.push(9.0);
            self.offset_s.push(9.0);
            return;
        };
        self.onset_s.push(hold.onset_s - onset_s);
        self.offset_s.push(hold.offset_s - offset_s);
        self.sure_s.push(hold.sure_s - onset_s);
    }
}

fn tell(what: &str, ends: &Ends) {
    for (end, values) in [("onset", &ends.onset_s), ("offset", &ends.offset_s)] {
        let sizes = Spread::of_sizes(values);
        let (median, p95) = (1000.0 * sizes.at(0.5), 1000.0 * sizes.at(0.95));
        println!("{end}, {what}: median {median:.1} ms, 95 % {p95:.0} ms ({} files, {} not one hold)", ends.files, ends.not_one);
    }
}

pub fn run(set: &Set) -> Result<(), Box<dyn Error>> {
    let mut by: BTreeMap<String, Ends> = BTreeMap::new();
    let mut one = |file: &str, kinds: &[String], onset_s: f64, offset_s: f64, sound: (Vec<f32>, u32)| {
        let (_, holds) = analyse_voice_as(&sound.0, sound.1, SETTINGS);
        for kind in kinds {
            by.entry(kind.clone()).or_default().add(&holds, onset_s, offset_s);
        }
        let good = holds.len() == 1 && (holds[0].onset_s - onset_s).abs() < 0.05 && (holds[0].offset_s - offset_s).abs() < 0.05;
        if set.verbose && !good {
            let found: Vec<String> = holds.iter().map(|h| format!("{:+.3} {:+.3}", h.onset_s - onset_s, h.offset_s - offset_s)).collect();
            println!("{file}: {onset_s:.2} to {offset_s:.2}: {}", found.join(", "));
        }
    };
    for row in set.rows("scenes/truth.tsv")? {
        let [file, shape, noise, snr, group, onset, offset] = &row[..] else { continue };
        if group != set.group {
            continue;
        }
        let condition = if snr == "0" { noise.clone() } else { format!("{snr} dB") };
        let kinds = [condition.clone(), format!("{shape}, {noise}{}", if snr == "0" { String::new() } else { format!(" {snr} dB") })];
        one(file, &kinds, onset.parse()?, offset.parse()?, set.sound(file)?);
    }
    if let Ok(table) = std::fs::read_to_string(set.data.join("known-duration.tsv")) {
        for (k, line) in table.lines().skip(1).enumerate() {
            let fields: Vec<&str> = line.split('\t').collect();
            if (k / 3 % 2 == 1) != (set.group == "odd") {
                continue;
            }
            let condition = if fields[6].is_empty() { "quiet".to_owned() } else { format!("{} dB", fields[6]) };
            let sound = audio::decode::decode(&set.data.join(fields[0]))?;
            one(
                fields[0],
                &[condition.clone(), format!("known-duration {condition}")],
                fields[1].parse()?,
                fields[2].parse()?,
                (sound.samples, sound.rate_hz),
            );
        }
    }
    for (kind, ends) in &by {
        tell(kind, ends);
    }
    for (kind, id) in [("quiet", "quiet"), ("20 dB", "20db"), ("10 dB", "10db")] {
        let Some(ends) = by.get(kind) else { continue };
        for (end, values) in [("onset", &ends.onset_s), ("offset", &ends.offset_s)] {
            figure_of(&format!("scenes.{id}.{end}"), 1000.0 * Spread::of_sizes(values).at(0.95), ends.files);
        }
        figure_of(&format!("scenes.{id}.lost"), ends.lost as f64, ends.files);
    }
    let sure: Vec<f64> = by.get("quiet").map(|e| e.sure_s.clone()).unwrap_or_default();
    println!("first sure frame after the onset, quiet: median {:.2} s", Spread::of_sizes(&sure).at(0.5));
    Ok(())
}
