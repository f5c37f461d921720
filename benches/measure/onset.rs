//! Error of onset and offset on synthetic vowels whose glottal cycles are known.

use figures::{Spread, figure, figure_of};
use hear::analyse_voice;
use rehearse::{NoiseKind, Room, RoomSpec, Vowel, VowelSpec};
use std::error::Error;

const RATE_HZ: u32 = 16_000;
/// Room alone before and after the vowel, s.
const AROUND_S: f64 = 1.0;
/// Voice this far above the room is the aim's case: below, begin and end lie in the noise, dB.
const CLEAR_DB: f64 = 25.0;

/// A place to practise in.
struct Place {
    name: &'static str,
    noise: NoiseKind,
    noise_db: f64,
    reverberant: bool,
}

const PLACES: [Place; 4] = [
    Place { name: "quiet, no room", noise: NoiseKind::Pink, noise_db: -70.0, reverberant: false },
    Place { name: "living room, T60 0.3 s", noise: NoiseKind::Pink, noise_db: -62.0, reverberant: true },
    Place { name: "kitchen, no room", noise: NoiseKind::Kitchen, noise_db: -55.0, reverberant: false },
    Place { name: "kitchen, T60 0.3 s", noise: NoiseKind::Kitchen, noise_db: -55.0, reverberant: true },
];

#[derive(Default)]
struct Errors {
    onset_s: Vec<f64>,
    offset_s: Vec<f64>,
    made: u32,
    missed: u32,
}

pub fn run() -> Result<(), Box<dyn Error>> {
    let (mut clear_dry, mut clear_room, mut all) = (Errors::default(), Errors::default(), Errors::default());
    println!("place | voice over room | vowels | not heard | onset: median, 95 %, worst | offset: median, 95 %, worst, ms (sizes)");
    for place in &PLACES {
        for level_db in [-20.0, -30.0, -40.0] {
            let mut errors = Errors::default();
            for (n, spec) in vowels(level_db).enumerate() {
                measure(place, spec?, n as u64, &mut errors)?;
            }
            let over_db = level_db - place.noise_db;
            let (onset, offset) = (Spread::of_sizes(&errors.onset_s), Spread::of_sizes(&errors.offset_s));
            let three = |s: &Spread| [0.5, 0.95, 1.0].map(|share| format!("{:.0}", 1e3 * s.at(share))).join(", ");
            println!("{} | {over_db:.0} dB | {} | {} | {} | {}", place.name, errors.made, errors.missed, three(&onset), three(&offset));
            if over_db >= CLEAR_DB {
                if place.reverberant { &mut clear_room } else { &mut clear_dry }.add(&errors);
            }
            all.add(&errors);
        }
    }
    for (room, errors) in [("dry", &clear_dry), ("room", &clear_room)] {
        for (end, values) in [("onset", &errors.onset_s), ("offset", &errors.offset_s)] {
            let sizes = Spread::of_sizes(values);
            figure(&format!("{end}.{room}.median"), 1e3 * sizes.at(0.5));
            figure(&format!("{end}.{room}.p95"), 1e3 * sizes.at(0.95));
        }
    }
    figure_of("onset.not_heard", f64::from(all.missed), all.made as usize);
    Ok(())
}

impl Errors {
    fn add(&mut self, other: &Self) {
        self.onset_s.extend(&other.onset_s);
        self.offset_s.extend(&other.offset_s);
        self.made += other.made;
        self.missed += other.missed;
    }
}

/// Three vowels in voices from low to high, firm and soft at begin and end, steady and shaky.
fn vowels(level_db: f64) -> impl Iterator<Item = Result<VowelSpec, Box<dyn Error>>> {
    let voices = [(95.0, 1.0), (130.0, 1.0), (190.0, 1.15), (250.0, 1.2), (350.0, 1.2)];
    let manners = [(0.03, 0.05, 0.3, 2.0, 0.0), (0.1, 0.15, 0.6, 4.0, 0.0), (0.05, 0.2, 1.2, 6.0, 0.4)];
    let kinds = [Vowel::A, Vowel::I, Vowel::U];
    voices.into_iter().flat_map(move |(f0_hz, tract_scale)| {
        manners.into_iter().flat_map(move |(attack_s, release_s, jitter_pct, shimmer_pct, tremor_st)| {
            kinds.into_iter().enumerate().map(move |(n, vowel)| {
                Ok(VowelSpec {
                    tract_scale,
                    level_db,
                    attack_s,
                    release_s,
                    jitter_pct,
                    shimmer_pct,
                    tremor_st,
                    seed: n as u64 + 1,
                    ..VowelSpec::steady(vowel, f0_hz, 2.0)
                })
            })
        })
    })
}

fn measure(place: &Place, spec: VowelSpec, seed: u64, errors: &mut Errors) -> Result<(), Box<dyn Error>> {
    let made = spec.render(RATE_HZ)?;
    let rate = f64::from(RATE_HZ);
    let around = vec![0.0_f32; (AROUND_S * rate) as usize];
    let mut voice = [&around[..], &made.samples, &around].concat();
    // A room of 0.05 s with the reverberation 60 dB down stands for none.
    let mut room = RoomSpec { echo: None, noise: place.noise, noise_db: place.noise_db, seed: seed + 1, ..RoomSpec::living_room(RATE_HZ) };
    if !place.reverberant {
        (room.rt60_s, room.direct_to_reverberant_db) = (0.05, 60.0);
    }
    let mut room = Room::new(&room)?;
    let block = room.block_frames();
    voice.resize(voice.len().next_multiple_of(block), 0.0);
    let silence = vec![0.0; block];
    let mut mic = vec![0.0; voice.len()];
    for (said, heard) in voice.chunks(block).zip(mic.chunks_mut(block)) {
        room.step(&silence, said, heard);
    }
    errors.made += 1;
    let (_, holds) = analyse_voice(&mic, RATE_HZ);
    let Some(hold) = holds.iter().max_by(|a, b| a.duration_s.total_cmp(&b.duration_s)) else {
        errors.missed += 1;
        return Ok(());
    };
    errors.onset_s.push(hold.onset_s - (AROUND_S + made.onset_s));
    errors.offset_s.push(hold.offset_s - (AROUND_S + made.offset_s));
    Ok(())
}
