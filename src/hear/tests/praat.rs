//! Against Praat on recorded voices, and against recordings whose vowel begins and ends at known instants. The values of
//! Praat are stored with the script that made them (`tests/checks/praat/`); the recordings are not part of the project.

use crate::{Held, VoiceFrame, analyse_voice};
use audio::decode::decode;
use figures::{figure, figure_of, share};
use std::path::{Path, PathBuf};

const REFERENCE: &str = include_str!("../../../tests/checks/praat/reference.tsv");

fn data() -> Option<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data");
    if folder.join("known-duration.tsv").exists() {
        return Some(folder);
    }
    skipping::skip(skipping::Missing::Data, "no shared data");
    None
}

fn hear(path: &Path) -> (Vec<VoiceFrame>, Vec<Held>) {
    let sound = decode(path).unwrap();
    analyse_voice(&sound.samples, sound.rate_hz)
}

fn quantile(values: &mut [f64], share: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    values[((values.len() - 1) as f64 * share).round() as usize]
}

fn median(values: &mut [f64]) -> f64 {
    quantile(values, 0.5)
}

#[test]
fn pitch_and_voicing_agree_with_praat() {
    let Some(data) = data() else { return };
    let (mut cells, mut voiced, mut medians) = (Vec::new(), Vec::new(), Vec::new());
    for line in REFERENCE.lines().skip(2) {
        let fields: Vec<&str> = line.split('\t').collect();
        let (frames, _) = hear(&data.join(fields[0]));
        let ours = frames.iter().filter(|f| f.voiced).count() as f64 / 100.0;
        let theirs: f64 = fields[1].parse().unwrap();
        voiced.push((ours - theirs).abs());
        let (onset_s, offset_s): (f64, f64) = (fields[2].parse().unwrap(), fields[3].parse().unwrap());
        let mut inside: Vec<f64> = frames.iter().filter(|f| f.voiced && f.t_s >= onset_s && f.t_s <= offset_s).map(|f| f.f0_hz).collect();
        let theirs: f64 = fields[4].parse().unwrap();
        if theirs > 0.0 && !inside.is_empty() {
            medians.push((1200.0 * (median(&mut inside) / theirs).log2()).abs());
        }
        for (k, cell) in fields[5].split(' ').enumerate() {
            let theirs: f64 = cell.parse().unwrap();
            let from_s = k as f64 * 0.5;
            let mut ours: Vec<f64> =
                frames.iter().filter(|f| f.voiced && f.t_s >= from_s && f.t_s < from_s + 0.5).map(|f| f.f0_hz).collect();
            if theirs > 0.0 && ours.len() > 25 {
                cells.push((1200.0 * (median(&mut ours) / theirs).log2()).abs());
            }
        }
    }
    assert!(medians.len() > 50 && cells.len() > 400);
    // Asked for: under 20 cents in the median, Praat-like voicing.
    let gross = cells.iter().filter(|c| **c > 50.0).count() as f64 / cells.len() as f64;
    figure_of("praat.f0.median", median(&mut medians), medians.len());
    figure_of("praat.f0.p90", quantile(&mut medians, 0.9), medians.len());
    figure_of("praat.half_seconds.median", median(&mut cells), cells.len());
    figure_of("praat.half_seconds.gross", 100.0 * gross, cells.len());
    figure_of("praat.voiced", median(&mut voiced), voiced.len());
    assert!(median(&mut medians) < 3.0 && quantile(&mut medians, 0.9) < 20.0);
    // In one half second of 25 the two methods take different octaves of voices whose every second period differs.
    assert!(median(&mut cells) < 3.0 && gross < 0.05);
    assert!(median(&mut voiced) < 0.12);
}

#[test]
fn known_onsets_and_offsets_are_found() {
    let Some(data) = data() else { return };
    let table = std::fs::read_to_string(data.join("known-duration.tsv")).unwrap();
    // Noise level, share of files, least share of files within the limit of both ends, limit.
    for (snr, id, limit_s, least) in [("", "quiet", 0.02, 1.0), ("20", "20db", 0.05, 0.93), ("10", "10db", 0.12, 0.9)] {
        let (mut ends, mut within, mut files) = (Vec::new(), 0, 0);
        for fields in table.lines().skip(1).map(|l| l.split('\t').collect::<Vec<_>>()).filter(|f| f[6] == snr).step_by(2) {
            let (onset_s, offset_s): (f64, f64) = (fields[1].parse().unwrap(), fields[2].parse().unwrap());
            let (_, holds) = hear(&data.join(fields[0]));
            files += 1;
            let longest = holds.iter().max_by(|a, b| a.duration_s.total_cmp(&b.duration_s));
            let Some(hold) = longest else { continue };
            let (on, off) = ((hold.onset_s - onset_s).abs(), (hold.offset_s - offset_s).abs());
            ends.extend([on, off]);
            within += usize::from(on < limit_s && off < limit_s);
        }
        figure(&format!("known.{id}.median"), 1000.0 * median(&mut ends));
        share(&format!("known.{id}.within"), within, files);
        assert!(median(&mut ends) < 0.015);
        assert!(within as f64 / files as f64 >= least, "SNR {snr}: {within} of {files}");
    }
}

#[test]
fn coughs_breathing_and_spoken_words_are_no_holds() {
    let Some(data) = data() else { return };
    let (mut files, mut false_holds) = (0, 0);
    for (folder, start, step) in [
        ("coswara", "breathing", 5),
        ("coswara", "cough", 8),
        ("coswara", "counting", 5),
        ("an4-test", "", 8),
        ("speech-commands", "", 40),
        ("other-words", "", 40),
    ] {
        let mut names: Vec<PathBuf> = std::fs::read_dir(data.join(folder)).unwrap().map(|e| e.unwrap().path()).collect();
        names.retain(|p| p.file_name().and_then(|n| n.to_str()).is_some_and(|n| n.starts_with(start)));
        names.sort();
        for name in names.iter().step_by(step) {
            files += 1;
            let (_, holds) = hear(name);
            if !holds.is_empty() {
                println!("{}: {holds:?}", name.display());
                false_holds += 1;
            }
        }
    }
    figure_of("praat.false_holds", f64::from(false_holds), files);
    assert!(files > 80 && false_holds <= 2);
}
