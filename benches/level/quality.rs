//! Voice quality against Praat over the steady parts of recorded vowels.

use crate::data;
use audio::decode::decode;
use figures::{Spread, figure, figure_of};
use hear::{SteadyPart, VoiceFrame, analyse_voice};
use std::collections::BTreeMap;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::time::Instant;

const REFERENCE: &str = include_str!("reference/quality.tsv");

fn vowels(data: &Path) -> Result<Vec<PathBuf>, Box<dyn Error>> {
    let mut files: Vec<PathBuf> = std::fs::read_dir(data.join("coswara"))?.filter_map(|e| Some(e.ok()?.path())).collect();
    files.retain(|f| f.file_name().and_then(|n| n.to_str()).is_some_and(|n| n.starts_with("vowel-")));
    files.sort();
    Ok(files)
}

/// Prints the steady parts, for Praat.
pub fn windows() -> Result<(), Box<dyn Error>> {
    let Some(data) = data() else { return Ok(()) };
    for file in vowels(&data)? {
        let sound = decode(&file)?;
        for steady in analyse_voice(&sound.samples, sound.rate_hz).1.iter().filter_map(|hold| hold.steady.as_ref()) {
            println!("{}\t{:.3}\t{:.3}", file.strip_prefix(&data)?.display(), steady.from_s, steady.to_s);
        }
    }
    Ok(())
}

/// Compares over the stored stretches, whatever the steady parts are now.
pub fn run() -> Result<(), Box<dyn Error>> {
    let Some(data) = data() else { return Ok(()) };
    let mut lines = REFERENCE.lines().skip(1);
    let names: Vec<&str> = lines.next().ok_or("the reference is empty")?.split('\t').skip(3).collect();
    let mut heard: BTreeMap<String, (Vec<f32>, u32, Vec<VoiceFrame>)> = BTreeMap::new();
    let mut off: Vec<Vec<f64>> = vec![Vec::new(); names.len()];
    let (mut work_s, mut voice_s) = (0.0, 0.0);
    for line in lines {
        let fields: Vec<&str> = line.split('\t').collect();
        let (from_s, to_s): (f64, f64) = (fields[1].parse()?, fields[2].parse()?);
        if !heard.contains_key(fields[0]) {
            let sound = decode(&data.join(fields[0]))?;
            let frames = analyse_voice(&sound.samples, sound.rate_hz).0;
            heard.clear();
            heard.insert(fields[0].to_owned(), (sound.samples, sound.rate_hz, frames));
        }
        let Some((samples, rate_hz, frames)) = heard.get(fields[0]) else { continue };
        let near = frames.iter().filter(|f| f.voiced && f.t_s >= from_s - 0.2 && f.t_s <= to_s + 0.2).map(|f| (f.t_s, f.f0_hz));
        let part = SteadyPart::of_recording(samples, f64::from(*rate_hz), from_s, to_s, near.collect());
        let began = Instant::now();
        let q = part.quality();
        work_s += began.elapsed().as_secs_f64();
        voice_s += to_s - from_s;
        let ours = [
            q.jitter_local_pct,
            q.jitter_rap_pct,
            q.jitter_ppq5_pct,
            q.shimmer_local_pct,
            q.shimmer_local_db,
            q.shimmer_apq3_pct,
            q.shimmer_apq11_pct,
            q.hnr_db,
            q.cpps_db,
        ];
        for (k, ours) in ours.into_iter().enumerate() {
            let theirs: f64 = fields[3 + k].parse()?;
            if ours.is_finite() && theirs.is_finite() {
                off[k].push((ours - theirs).abs());
            }
        }
    }
    for (name, off) in names.iter().zip(off) {
        let spread = Spread::new(off);
        figure_of(&format!("quality.{name}.median"), spread.at(0.5), spread.count());
        figure_of(&format!("quality.{name}.p95"), spread.at(0.95), spread.count());
    }
    figure("quality.work", 1e4 * work_s / voice_s);
    Ok(())
}
