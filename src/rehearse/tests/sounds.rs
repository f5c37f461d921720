use super::*;
use crate::{Speaker, SyllableSpec, breath, cough};

#[test]
fn syllables_come_at_the_asked_rate() {
    for (rate_hz, irregularity_pct) in [(2.0, 0.0), (5.5, 0.0), (5.0, 15.0)] {
        let spec = SyllableSpec { consonants: "ptk".into(), rate_hz, count: 60, irregularity_pct, f0_hz: 120.0, level_db: -26.0, seed: 4 };
        let train = spec.render(16_000).unwrap();
        let gaps: Vec<f64> = train.vowel_onsets_s.windows(2).map(|w| w[1] - w[0]).collect();
        let mean = gaps.iter().sum::<f64>() / gaps.len() as f64;
        let sd = (gaps.iter().map(|g| (g - mean).powi(2)).sum::<f64>() / gaps.len() as f64).sqrt();
        assert!((mean * rate_hz - 1.0).abs() < 0.06, "{mean}");
        assert!((100.0 * sd / mean - irregularity_pct).abs() < 4.0, "{sd}");
        // Each syllable can be heard: loud in the vowel, 15 dB weaker in the closure before it.
        for t in &train.vowel_onsets_s[1..] {
            let loud = level_db(part(&train.samples, 16_000, *t, t + 0.04));
            let closed = level_db(part(&train.samples, 16_000, t - 0.06, t - 0.052));
            assert!(loud > closed + 15.0 || irregularity_pct > 0.0, "{t}: {loud} over {closed}");
        }
    }
}

#[test]
fn unknown_consonants_are_refused() {
    let spec =
        SyllableSpec { consonants: "b".into(), rate_hz: 5.0, count: 3, irregularity_pct: 0.0, f0_hz: 120.0, level_db: -26.0, seed: 4 };
    assert!(spec.render(16_000).unwrap_err().0.contains("p, t and k"));
}

#[test]
fn coughs_and_breaths_are_short_loud_and_aperiodic() {
    for rate in [8_000, 16_000, 48_000] {
        let loudest = |x: &[f32]| x.chunks(rate as usize / 20).map(level_db).fold(f64::MIN, f64::max);
        let c = cough(rate, -20.0, 3);
        assert!((loudest(&c) + 20.0).abs() < 0.5 && c.len() < rate as usize / 2);
        let b = breath(rate, 1.5, -45.0, 3);
        assert!((loudest(&b) + 45.0).abs() < 0.5 && (b.len() as f64 / f64::from(rate) - 1.5).abs() < 0.01);
        assert_ne!(cough(rate, -20.0, 3), cough(rate, -20.0, 4));
    }
}

#[test]
fn words_are_spoken_at_the_asked_rate_and_trimmed() {
    let mut at16 = Speaker::new("slt", 1.0, 16_000).unwrap();
    let mut at48 = Speaker::new("slt", 1.0, 48_000).unwrap();
    let mut slow = Speaker::new("slt", 0.5, 16_000).unwrap();
    let (a, b, c) = (at16.say("i'm ready").unwrap(), at48.say("i'm ready").unwrap(), slow.say("i'm ready").unwrap());
    let (a_s, b_s, c_s) = (a.len() as f64 / 16e3, b.len() as f64 / 48e3, c.len() as f64 / 16e3);
    assert!((0.3..1.2).contains(&a_s), "{a_s}");
    assert!((a_s - b_s).abs() < 0.03, "{a_s} {b_s}");
    assert!((1.6..2.8).contains(&(c_s / a_s)), "{c_s} {a_s}");
    // Sound within the first and last 60 ms: nothing but a margin is left around the words.
    for edge in [&a[..960], &a[a.len() - 960..]] {
        assert!(level_db(edge) > -65.0);
    }
    assert!(std::sync::Arc::ptr_eq(&a, &at16.say("i'm ready").unwrap()), "cached");
}

#[test]
fn an_unknown_voice_is_refused_with_those_that_exist() {
    let said = Speaker::new("nobody", 1.0, 16_000).err().unwrap().0;
    assert!(said.contains("nobody") && said.contains("slt"), "{said}");
}
