//! Sound that the client wants kept, while it is written.

use super::program::Place;
use super::{ENTRIES, FOLDER, STARTED, killed_at, kills, new, rested, whole};
use audio::decode::SoundReader;
use record::{NewSession, SoundRecorder, Source, Store};
use std::io::Write;
use std::path::PathBuf;

const RATE_HZ: u32 = 16_000;

/// Sound that comes with each entry, s.
const EACH_S: f64 = 0.25;

/// The sound of one entry: its number, audible as a level.
fn sound_of(number: u32) -> Vec<f32> {
    let level = 0.1 + 0.8 * number as f32 / ENTRIES as f32;
    (0..RATE_HZ / 4).map(|n| level * (n as f32 * 0.05).sin()).collect()
}

/// Runs in the child alone: keeps sound with each entry until it is killed.
#[test]
#[ignore = "the child of the test below"]
fn child_that_keeps_sound() {
    let folder = PathBuf::from(std::env::var_os(FOLDER).expect("set by the parent"));
    let started_at = STARTED.parse().expect("a time");
    let mut store = Store::open(&folder).expect("opens");
    let session = store.begin(&NewSession { source: Source::Live, ..new("grandpa", &started_at) }).expect("begins");
    let mut recorder = SoundRecorder::begin(Store::open(&folder).expect("opens"), session, 0.0, RATE_HZ, 30, &started_at).expect("begins");
    for number in 1..=ENTRIES {
        recorder.push(&sound_of(number)).expect("keeps");
        store.append(session, &rested(number)).expect("keeps");
        println!("\nkept {number}");
        std::io::stdout().flush().expect("tells");
    }
}

#[test]
fn sound_that_is_kept_when_the_program_is_killed_can_be_heard_and_the_record_is_whole() {
    let kills = kills();
    let place = Place::new();
    let data = place.path("data");
    let mut seconds = 0.0;
    for kill in 0..kills {
        let entry = 1 + kill * (ENTRIES - 1) / kills;
        let told = killed_at("endurance::sound::child_that_keeps_sound", &data, entry);
        whole(&data);
        let store = Store::open(&data).expect("opens");
        let latest = store.history(None, 1).expect("lists")[0].id;
        let kept = store.entries(latest).expect("reads").len() as u32;
        assert!(kept == told || kept == told + 1, "kill {kill} at entry {entry}: told {told}, kept {kept}");
        let sounds = store.all_sounds().expect("lists");
        let sound = sounds.iter().find(|sound| sound.session == latest).expect("it was begun");
        let told_s = f64::from(told) * EACH_S;
        if sound.samples == 0 {
            assert!(told_s < 30.0, "kill {kill} after {told_s} s, and nothing was written");
            assert!(store.stored_sounds("grandpa").expect("lists").iter().all(|told| told.session != latest), "nothing is offered");
            continue;
        }
        let flac = place.path("heard.flac");
        std::fs::write(&flac, store.sound_flac(sound).expect("is whole")).expect("writes");
        let mut reader = SoundReader::open(&flac).unwrap_or_else(|why| panic!("kill {kill}: {why}"));
        let mut heard = Vec::new();
        while let Some(part) = reader.read() {
            heard.extend_from_slice(part);
        }
        assert_eq!(heard.len() as u64, sound.samples, "kill {kill}");
        let truth: Vec<f32> = (1..=ENTRIES).flat_map(sound_of).take(heard.len()).collect();
        let off = heard.iter().zip(&truth).map(|(heard, truth)| (heard - truth).abs()).fold(0.0, f32::max);
        assert!(off < 1e-3, "kill {kill}: what is heard differs by {off}");
        seconds += told_s - heard.len() as f64 / f64::from(RATE_HZ);
    }
    println!("sound: {kills} kills, every file can be heard, {:.1} s of sound not yet written in the mean", seconds / f64::from(kills));
}
