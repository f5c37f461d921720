use super::*;
use rand::{Rng, SeedableRng, rngs::StdRng};

/// A quiet room of so many seconds with bursts of a buzzing tone: begin s, end s, peak.
fn room(length_s: f64, bursts: &[(f64, f64, f32)], noise: f32) -> Vec<f32> {
    let mut rng = StdRng::seed_from_u64(4);
    (0..(length_s * 16_000.0) as usize)
        .map(|i| {
            let t_s = i as f64 / 16_000.0;
            let buzz = (std::f64::consts::TAU * 300.0 * t_s).sin() as f32;
            let peak = bursts.iter().find(|b| (b.0..b.1).contains(&t_s)).map_or(0.0, |b| b.2);
            (buzz * peak + rng.random_range(-noise..noise)).clamp(-1.0, 1.0)
        })
        .collect()
}

fn found(sound: &[f32], from_s: f64) -> Vec<Found> {
    let mut finder = TakeFinder::default();
    let blocks = sound.chunks(160).enumerate();
    blocks.filter_map(|(i, block)| finder.push(i as f64 * 0.01, block, i as f64 * 0.01 >= from_s)).collect()
}

fn fault(found: &Found, wording: &str) -> Option<TakeFault> {
    found.said.as_ref().map_or_else(|fault| Some(*fault), |cut| cut.fault(wording, found.floor_db))
}

#[test]
fn a_word_is_found_where_it_was() {
    let all = found(&room(4.0, &[(1.5, 2.0, 0.2)], 0.001), 0.0);
    let [one] = &all[..] else { panic!("{} found", all.len()) };
    assert!((one.start_s - 1.5).abs() < 0.05 && (one.end_s - 2.0).abs() < 0.05, "{} {}", one.start_s, one.end_s);
    assert_eq!(fault(one, "stop"), None);
    let cut = one.said.as_ref().unwrap();
    assert!((cut.take.length_s() - 0.66).abs() < 0.08, "{}", cut.take.length_s());
}

#[test]
fn useless_sayings_are_told_apart() {
    for (bursts, noise, from_s, wanted) in [
        (&[(1.5, 2.0, 0.003)][..], 0.001, 0.0, TakeFault::TooSoft),
        (&[(1.5, 2.0, 0.03)], 0.011, 0.0, TakeFault::TooNoisy),
        (&[(1.5, 2.0, 1.5)], 0.001, 0.0, TakeFault::Clipped),
        (&[(1.5, 1.8, 0.2), (2.3, 2.6, 0.2)], 0.001, 0.0, TakeFault::InTwo),
        (&[(1.0, 4.0, 0.2)], 0.001, 0.0, TakeFault::TooLong),
        (&[(0.6, 7.0, 0.2)], 0.001, 0.0, TakeFault::TooLong),
        (&[(1.5, 2.0, 0.2)], 0.001, 1.6, TakeFault::TooEarly),
        (&[(1.5, 1.565, 0.2)], 0.001, 0.0, TakeFault::TooShort),
    ] {
        let all = found(&room(8.0, bursts, noise), from_s);
        assert_eq!(all.first().and_then(|f| fault(f, "stop")), Some(wanted), "{bursts:?}");
    }
    let two = found(&room(5.0, &[(1.5, 1.8, 0.2), (2.2, 2.5, 0.2)], 0.001), 0.0);
    assert_eq!(fault(&two[0], "go on"), None, "a phrase of two words may have a pause");
}

#[test]
fn clicks_and_what_is_said_while_nobody_listens_are_nothing() {
    assert_eq!(found(&room(3.0, &[(1.0, 1.01, 0.5)], 0.001), 0.0), []);
    assert_eq!(found(&room(3.0, &[(1.0, 1.5, 0.2)], 0.001), 2.0), []);
}
