//! Clipping put on recordings, and recordings as they are: every second file of the sorted list. No limit was tuned on them.

use crate::data;
use audio::decode::decode;
use figures::share;
use hear::clipping::ClipFinder;
use std::error::Error;
use std::path::PathBuf;

/// Stretches of 10 ms in which clipping was found.
fn found(samples: impl Iterator<Item = f32>, rate_hz: u32) -> usize {
    let mut finder = ClipFinder::new(f64::from(rate_hz));
    let marks: Vec<bool> = samples.map(|x| finder.push((x * 32_767.0).round() / 32_768.0)).collect();
    marks.chunks((rate_hz / 100).max(1) as usize).filter(|c| c.contains(&true)).count()
}

pub fn run() -> Result<(), Box<dyn Error>> {
    let Some(data) = data() else { return Ok(()) };
    let mut files: Vec<PathBuf> = Vec::new();
    for folder in ["coswara", "an4-test"] {
        files.extend(std::fs::read_dir(data.join(folder))?.filter_map(|e| Some(e.ok()?.path())));
    }
    let name = |f: &PathBuf| f.file_name().and_then(|n| n.to_str()).unwrap_or_default().to_owned();
    files.retain(|f| ["vowel-", "counting", "test_"].iter().any(|start| name(f).starts_with(start)));
    files.sort();
    let (mut count, mut as_is, mut loud) = (0, 0, 0);
    // Over the peak, dB; cut at this share of full scale.
    let cuts = [(3.0, 1.0), (6.0, 1.0), (12.0, 1.0), (3.0, 0.4), (6.0, 0.4), (12.0, 0.4)];
    let mut hits = [0; 6];
    for file in files.iter().skip(1).step_by(2) {
        let sound = decode(file)?;
        let peak = sound.samples.iter().fold(1e-6f32, |p, x| p.max(x.abs()));
        count += 1;
        as_is += usize::from(found(sound.samples.iter().copied(), sound.rate_hz) > 0);
        loud += usize::from(found(sound.samples.iter().map(|x| x / peak), sound.rate_hz) > 0);
        for ((over_db, ceiling), hit) in cuts.into_iter().zip(&mut hits) {
            let gain = 10f32.powf(over_db / 20.0) / peak;
            *hit += usize::from(found(sound.samples.iter().map(|x| ceiling * (x * gain).clamp(-1.0, 1.0)), sound.rate_hz) > 0);
        }
    }
    share("level.clipping.false", as_is, count);
    share("level.clipping.false_loud", loud, count);
    for ((over_db, ceiling), hit) in cuts.into_iter().zip(hits) {
        let low = if ceiling < 1.0 { ".low" } else { "" };
        share(&format!("level.clipping.{over_db}db{low}"), hit, count);
    }
    Ok(())
}
