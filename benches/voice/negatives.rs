//! Sounds in which nobody holds a vowel, and held vowels that must not be lost for it.

use crate::set::Set;
use audio::decode::decode;
use figures::{figure_of, share};
use hear::analyse_voice;
use std::collections::BTreeMap;
use std::error::Error;
use std::path::PathBuf;

pub fn run(set: &Set) -> Result<(), Box<dyn Error>> {
    let mut files: Vec<(String, PathBuf)> = Vec::new();
    for row in set.rows("negatives/list.tsv")? {
        if row[2] == set.group {
            files.push((row[1].clone(), set.folder.join(&row[0])));
        }
    }
    let odd = usize::from(set.group == "odd");
    let mut vowels = Vec::new();
    for (folder, step) in [
        ("coswara", 2),
        ("noise/esc10", 2),
        ("noise/long", 1),
        ("noise/babble", 1),
        ("an4-test", 4),
        ("other-words", 10),
        ("speech-commands", 20),
    ] {
        let Ok(entries) = std::fs::read_dir(set.data.join(folder)) else { continue };
        let mut paths: Vec<PathBuf> = entries.filter_map(|e| Some(e.ok()?.path())).collect();
        paths.sort();
        for path in paths.into_iter().skip(odd % step).step_by(step) {
            let name = path.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
            let kind = name.split('_').next().unwrap_or_default().to_lowercase();
            match folder {
                "coswara" if kind.starts_with("vowel") => vowels.push(path),
                "coswara" => files.push((kind.split('-').next().unwrap_or_default().to_owned(), path)),
                "noise/esc10" => files
                    .push((name.split('_').take(2).take_while(|w| !w.contains('-')).collect::<Vec<_>>().join(" ").to_lowercase(), path)),
                _ => files.push((folder.to_owned(), path)),
            }
        }
    }
    let mut by: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    for (kind, path) in files {
        let sound = decode(&path)?;
        let (_, holds) = analyse_voice(&sound.samples, sound.rate_hz);
        let count = by.entry(kind).or_default();
        count.0 += 1;
        count.1 += usize::from(!holds.is_empty());
        if set.verbose
            && let Some(h) = holds.first()
        {
            println!(
                "{}: {} holds, first {:.2} to {:.2} s, {:.1} Hz, sd {:.3} st, span {:.2}",
                path.display(),
                holds.len(),
                h.onset_s,
                h.offset_s,
                h.f0_median_hz,
                h.f0_sd_st,
                h.f0_span_st
            );
        }
    }
    let (mut all, mut all_wrong) = (0, 0);
    for (kind, (count, wrong)) in &by {
        println!("false holds: {kind}: {wrong} of {count} files");
        (all, all_wrong) = (all + count, all_wrong + wrong);
    }
    figure_of("negatives.false", all_wrong as f64, all);
    let (mut none, mut parted) = (0, 0);
    for path in &vowels {
        let sound = decode(path)?;
        let (frames, holds) = analyse_voice(&sound.samples, sound.rate_hz);
        let voiced = frames.iter().filter(|f| f.voiced).count() as f64 / 100.0;
        let held: f64 = holds.iter().map(|h| h.duration_s).sum();
        if voiced > 1.2 && held < 0.6 * voiced {
            none += 1;
            if set.verbose {
                println!("{}: voiced {voiced:.2} s, held {held:.2} s", path.display());
            }
        }
        parted += usize::from(holds.len() > 1);
    }
    share("negatives.vowels", vowels.len() - none, vowels.len());
    println!("recorded held vowels heard in several pieces: {parted} of {}", vowels.len());
    Ok(())
}
