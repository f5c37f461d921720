//! Against Praat, over the same stretches of the same recordings. Praat's values are stored with the script that made them
//! (`benches/level/reference/quality.py`); the whole set is in `cargo bench --bench level -- quality`.

use super::SteadyPart;
use crate::analyse_voice;
use crate::tests::synth::Vowel;
use std::path::Path;

const REFERENCE: &str = include_str!("../../../tests/checks/praat/quality.tsv");
/// Sound before and after the stretch that the ear hears as well, s.
const AROUND_S: f64 = 1.0;

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

#[test]
fn figures_agree_with_praat() {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../shared/data");
    if !data.join("coswara").exists() {
        skipping::skip(skipping::Missing::Data, "no shared data");
        return;
    }
    let mut off: Vec<Vec<f64>> = vec![Vec::new(); 9];
    for line in REFERENCE.lines().skip(2) {
        let fields: Vec<&str> = line.split('\t').collect();
        let number = |k: usize| fields[k].parse::<f64>().unwrap();
        let (from_s, to_s) = (number(1), number(2));
        let sound = audio::decode::decode(&data.join(fields[0])).unwrap();
        let rate_hz = f64::from(sound.rate_hz);
        let begin = ((from_s - AROUND_S).max(0.0) * 100.0).floor() / 100.0;
        let end = (((to_s + AROUND_S) * rate_hz) as usize).min(sound.samples.len());
        let (frames, _) = analyse_voice(&sound.samples[(begin * rate_hz).round() as usize..end], sound.rate_hz);
        let track =
            frames.iter().filter(|f| f.voiced).map(|f| (f.t_s + begin, f.f0_hz)).filter(|f| f.0 >= from_s - 0.2 && f.0 <= to_s + 0.2);
        let q = SteadyPart::of_recording(&sound.samples, rate_hz, from_s, to_s, track.collect()).quality();
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
            let theirs = number(3 + k);
            // Jitter and shimmer in percent of Praat's value, the others in dB.
            off[k].push(if k < 7 { 100.0 * ((ours - theirs) / theirs).abs() } else { (ours - theirs).abs() });
        }
    }
    assert!(off[0].len() >= 8);
    let medians: Vec<f64> = off.into_iter().map(median).collect();
    println!("median differences: jitter, shimmer in percent of Praat's; HNR and CPPS in dB: {medians:.3?}");
    assert!(medians[..7].iter().all(|m| *m < 3.0), "{medians:?}");
    assert!(medians[7] < 0.1 && medians[8] < 0.1, "{medians:?}");
}

#[test]
fn more_disturbance_gives_worse_figures() {
    let figures = |jitter: f64, breath: f64| {
        let vowel = Vowel { jitter, breath, onset_s: 0.3, offset_s: 2.3, total_s: 2.6, ..Vowel::default() };
        let (_, holds) = analyse_voice(&vowel.sound(16_000), 16_000);
        holds[0].steady.as_ref().unwrap().quality()
    };
    let (clear, rough, breathy) = (figures(0.003, 0.0), figures(0.03, 0.0), figures(0.003, 0.3));
    assert!(clear.jitter_local_pct < 0.6 && rough.jitter_local_pct > 3.0 * clear.jitter_local_pct, "{clear:?} {rough:?}");
    assert!(clear.hnr_db > breathy.hnr_db + 5.0 && clear.cpps_db > breathy.cpps_db + 2.0, "{clear:?} {breathy:?}");
    assert!(clear.shimmer_local_db < breathy.shimmer_local_db, "{clear:?} {breathy:?}");
}

#[test]
fn the_judged_part_avoids_edges_and_what_is_short_has_none() {
    let vowel = Vowel { onset_s: 0.5, offset_s: 2.5, total_s: 3.0, ..Vowel::default() };
    let (_, holds) = analyse_voice(&vowel.sound(16_000), 16_000);
    let steady = holds[0].steady.as_ref().unwrap();
    assert!(steady.from_s > 0.65 && steady.to_s < 2.35 && steady.to_s - steady.from_s > 1.3, "{} {}", steady.from_s, steady.to_s);
    assert!(!steady.samples.is_empty());
    let short = Vowel { onset_s: 0.5, offset_s: 1.35, total_s: 2.0, ..Vowel::default() };
    let (_, holds) = analyse_voice(&short.sound(16_000), 16_000);
    assert!(holds.iter().all(|hold| hold.steady.is_none()), "{holds:?}");
}
