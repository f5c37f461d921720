use super::*;
use crate::{Echo, NoiseKind, NoiseSource, Room, RoomSpec};

fn silent_room(rate_hz: u32) -> RoomSpec {
    RoomSpec { noise_db: -200.0, ..RoomSpec::living_room(rate_hz) }
}

/// Runs both sides through the room.
fn hear(spec: &RoomSpec, loudspeaker: &[f32], client: &[f32]) -> Vec<f32> {
    let mut room = Room::new(spec).unwrap();
    let n = room.block_frames();
    let mut mic = vec![0.0; loudspeaker.len()];
    for (m, (l, c)) in mic.chunks_mut(n).zip(loudspeaker.chunks(n).zip(client.chunks(n))) {
        room.step(l, c, m);
    }
    mic
}

fn impulse(len: usize) -> Vec<f32> {
    let mut x = vec![0.0; len];
    x[0] = 0.5;
    x
}

/// T20 after ISO 3382-1: backward-integrated energy (Schroeder 1965), slope from -5 to -25 dB, extrapolated to 60 dB; s.
fn t20(x: &[f32], rate_hz: u32) -> f64 {
    let mut left = 0.0;
    let mut curve: Vec<f64> = x
        .iter()
        .rev()
        .map(|v| {
            left += f64::from(*v) * f64::from(*v);
            left
        })
        .collect();
    curve.reverse();
    let start = curve[0];
    let points: Vec<(f64, f64)> = curve
        .iter()
        .enumerate()
        .map(|(i, e)| (i as f64 / f64::from(rate_hz), 10.0 * (e / start).max(1e-12).log10()))
        .filter(|p| (-25.0..=-5.0).contains(&p.1))
        .collect();
    let n = points.len() as f64;
    let (mt, ml) = (points.iter().map(|p| p.0).sum::<f64>() / n, points.iter().map(|p| p.1).sum::<f64>() / n);
    let slope = points.iter().map(|p| (p.0 - mt) * (p.1 - ml)).sum::<f64>() / points.iter().map(|p| (p.0 - mt).powi(2)).sum::<f64>();
    -60.0 / slope
}

#[test]
fn reverberation_time_is_as_asked() {
    for (rate, rt60_s) in [(8_000, 0.3), (16_000, 0.5), (48_000, 0.2)] {
        let spec = RoomSpec { rt60_s, ..silent_room(rate) };
        let len = rate as usize;
        let heard = hear(&spec, &vec![0.0; len], &impulse(len));
        let got = t20(&heard[(rate / 200) as usize..], rate);
        assert!((got / rt60_s - 1.0).abs() < 0.2, "{rate}: {got} for {rt60_s}");
    }
}

#[test]
fn the_client_is_heard_at_once_and_over_its_own_echo_as_asked() {
    let spec = silent_room(16_000);
    let heard = hear(&spec, &vec![0.0; 16_000], &impulse(16_000));
    assert!((heard[0] - 0.5).abs() < 1e-4, "{}", heard[0]);
    let tail: f64 = heard[1..].iter().map(|v| f64::from(*v) * f64::from(*v)).sum();
    let ratio = 10.0 * (0.25 / tail).log10();
    assert!((ratio - spec.direct_to_reverberant_db).abs() < 0.3, "{ratio}");
}

#[test]
fn echo_comes_when_and_as_loud_as_asked() {
    for (rate, delay_s, level) in [(16_000, 0.03, -12.0), (48_000, 0.12, -20.0)] {
        let echo = Echo { delay_s, level_db: level, low_hz: 200.0, high_hz: 7_000.0, drive: 0.0 };
        let spec = RoomSpec { echo: Some(echo), ..silent_room(rate) };
        let len = 2 * rate as usize;
        let click = hear(&spec, &impulse(len), &vec![0.0; len]);
        let peak = click.iter().fold(0f32, |p, v| p.max(v.abs()));
        let first = click.iter().position(|v| v.abs() > 0.3 * peak).unwrap() as f64 / f64::from(rate);
        assert!((first - delay_s).abs() < 0.0015, "{first} for {delay_s}");
        // Many tones inside the band, so that single resonances of the room average out.
        let tones: Vec<f32> = (0..len)
            .map(|i| {
                let t = i as f64 / f64::from(rate);
                (0..60).map(|k| (2.0 * std::f64::consts::PI * (600.0 + 61.7 * f64::from(k)) * t + f64::from(k * k)).sin()).sum::<f64>()
                    as f32
                    * 0.005
            })
            .collect();
        let heard = hear(&spec, &tones, &vec![0.0; len]);
        let got = level_db(part(&heard, rate, 1.0, 2.0)) - level_db(part(&tones, rate, 1.0, 2.0));
        assert!((got - level).abs() < 1.5, "{got} for {level}");
    }
}

#[test]
fn a_small_loudspeaker_is_thin_and_gives_in_when_driven_hard() {
    let tone = |f: f64, a: f64| -> Vec<f32> {
        (0..16_000).map(|i| (a * (2.0 * std::f64::consts::PI * f * f64::from(i) / 16_000.0).sin()) as f32).collect()
    };
    let echo = Echo { delay_s: 0.01, level_db: 0.0, low_hz: 300.0, high_hz: 7_000.0, drive: 1.0 };
    let heard = |x: &[f32]| {
        let y = hear(
            &RoomSpec { echo: Some(echo), rt60_s: 0.05, direct_to_reverberant_db: 40.0, ..silent_room(16_000) },
            x,
            &vec![0.0; 16_000],
        );
        level_db(part(&y, 16_000, 0.5, 1.0))
    };
    let bass = heard(&tone(75.0, 0.05)) - heard(&tone(1_000.0, 0.05));
    // Two octaves below a second-order corner: 24 dB.
    assert!((bass + 24.0).abs() < 2.0, "{bass}");
    let compressed = heard(&tone(1_000.0, 0.9)) - heard(&tone(1_000.0, 0.009)) - 40.0;
    assert!(compressed < -1.0 && compressed > -6.0, "{compressed}");
}

#[test]
fn noise_has_its_level_and_pink_falls_three_decibels_an_octave() {
    for rate in [8_000u32, 16_000, 48_000] {
        for kind in [NoiseKind::White, NoiseKind::Pink, NoiseKind::Kitchen] {
            let mut x = vec![0.0; rate as usize * 4];
            NoiseSource::new(kind, -50.0, rate, 5).add_to(&mut x);
            // The kitchen's first dish may fall into these seconds.
            let slack = if kind == NoiseKind::Kitchen { 6.0 } else { 1.0 };
            assert!((level_db(&x) + 50.0).abs() < slack, "{kind:?} at {rate}: {}", level_db(&x));
        }
        let mut x = vec![0.0f32; 1 << 16];
        NoiseSource::new(NoiseKind::Pink, -20.0, rate, 9).add_to(&mut x);
        let fft = transform::forward(x.len());
        let mut spectrum = fft.make_output_vec();
        fft.process(&mut x, &mut spectrum).unwrap();
        let bin = f64::from(rate) / f64::from(1 << 16);
        let octave = |f: f64| {
            let bins = &spectrum[(f / bin) as usize..(2.0 * f / bin) as usize];
            10.0 * (bins.iter().map(|c| f64::from(c.norm_sqr())).sum::<f64>() / bins.len() as f64).log10()
        };
        let slope = (octave(1_600.0) - octave(100.0)) / 4.0;
        assert!((slope + 3.0).abs() < 0.5, "{rate}: {slope} dB an octave");
    }
}

#[test]
fn the_room_is_the_same_each_time_and_refuses_what_cannot_be() {
    let x: Vec<f32> = (0..16_000).map(|i| ((i * 7 % 100) as f32 - 50.0) / 500.0).collect();
    let spec = RoomSpec::living_room(16_000);
    assert_eq!(hear(&spec, &x, &x), hear(&spec, &x, &x));
    assert!(Room::new(&RoomSpec::living_room(22_050)).is_err());
    assert!(Room::new(&RoomSpec { rt60_s: f64::NAN, ..spec }).is_err());
}
