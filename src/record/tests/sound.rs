use super::*;
use crate::flac::tests::decoded;
use crate::samples::{begin, begun, ended, time};
use crate::{Passphrase, Source};

const START: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";

pub(crate) fn ramp(samples: usize) -> Vec<f32> {
    (0..samples).map(|n| ((n % 2000) as f32 - 1000.0) / 32_768.0).collect()
}

fn wanted(samples: usize) -> Vec<i16> {
    (0..samples).map(|n| (n % 2000) as i16 - 1000).collect()
}

/// Records so much sound of a new practice and gives its row.
pub(crate) fn record(folder: &Path, client: &str, samples: usize) -> StoredSound {
    let mut store = Store::open(folder).expect("opens");
    let session = begin(&mut store, client, Source::Live, START).expect("begins");
    store.append(session, &begun()).expect("keeps");
    let mut recorder = SoundRecorder::begin(Store::open(folder).expect("opens"), session, 2.5, 16_000, 30, &time(START)).expect("begins");
    for block in ramp(samples).chunks(1_600) {
        recorder.push(block).expect("keeps");
    }
    recorder.finish().expect("ends");
    store.append(session, &ended(60.0)).expect("keeps");
    store.stored_sounds(client).expect("reads").pop().expect("a sound")
}

#[test]
fn a_practice_is_stored_as_a_flac_file_beside_the_record_with_its_times() {
    let dir = tempfile::tempdir().expect("a folder");
    let sound = record(dir.path(), "Client", 40_000);
    assert_eq!((sound.part, sound.from_s, sound.to_s(), sound.samples, sound.rate_hz), (1, 2.5, 5.0, 40_000, 16_000));
    assert_eq!(sound.expires_at, "2026-12-24T19:00:00+01:00[Europe/Berlin]");
    let store = Store::open(dir.path()).expect("opens");
    let path = dir.path().join("sound").join(&sound.file);
    assert!(sound.file.ends_with(".flac"));
    assert_eq!(decoded(std::fs::read(&path).expect("is there")), (16_000, wanted(40_000)), "the file by itself is whole");
    assert_eq!(decoded(store.sound_flac(&sound).expect("reads")).1, wanted(40_000));
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        assert_eq!(std::fs::metadata(&path).expect("is there").permissions().mode() & 0o777, 0o600);
    }
    assert_eq!(store.stored_sounds("Somebody").expect("reads"), []);
}

#[test]
fn what_a_killed_practice_had_stored_can_be_read_and_what_is_cut_off_is_told() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let session = begin(&mut store, "Client", Source::Live, START).expect("begins");
    let mut recorder =
        SoundRecorder::begin(Store::open(dir.path()).expect("opens"), session, 0.0, 16_000, 30, &time(START)).expect("begins");
    let samples = ramp(400_000);
    recorder.push(&samples).expect("keeps");
    recorder.push(&samples).expect("keeps");
    // Killed: nothing is finished. What stands behind the last whole piece is a piece that a kill cut.
    drop(recorder);
    let sound = store.stored_sounds("Client").expect("reads").pop().expect("a sound");
    let path = dir.path().join("sound").join(&sound.file);
    let mut file = std::fs::OpenOptions::new().append(true).open(&path).expect("opens");
    std::io::Write::write_all(&mut file, &[0xFF, 0xF8, 1, 2, 3]).expect("writes");
    let kept = decoded(store.sound_flac(&sound).expect("reads")).1;
    assert!(kept.len() as u64 == sound.samples && kept.len() >= 400_000, "{} of {}", kept.len(), sound.samples);
    let all: Vec<i16> = samples.iter().chain(&samples).map(|x| (x * 32_768.0) as i16).collect();
    assert!(all.starts_with(&kept));
    file.set_len(sound.bytes / 2).expect("cuts");
    let text = store.sound_flac(&sound).expect_err("is cut").to_string();
    assert!(text.contains(&sound.file) && text.contains("backup"), "{text}");
}

/// A practice killed in its first seconds: nothing is offered, nothing is a fault, and forgetting leaves no file.
#[test]
fn what_a_kill_cut_off_before_anything_was_written_is_no_damage() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let session = begin(&mut store, "Client", Source::Live, START).expect("begins");
    drop(SoundRecorder::begin(Store::open(dir.path()).expect("opens"), session, 0.0, 16_000, 30, &time(START)).expect("begins"));
    assert_eq!(store.stored_sounds("Client").expect("reads"), []);
    let path = dir.path().join("sound").join(&store.all_sounds().expect("reads").pop().expect("its row").file);
    assert!(path.exists());
    let checked = Store::check(dir.path(), &time(START)).expect("checks").expect("a record");
    assert_eq!(checked.faults, Vec::<String>::new());
    assert_eq!(store.delete_sounds("Client").expect("deletes"), 1);
    assert!(!path.exists());
}

#[test]
fn sound_expires_but_not_by_a_clock_that_ran_away() {
    let dir = tempfile::tempdir().expect("a folder");
    let sound = record(dir.path(), "Client", 10_000);
    let path = dir.path().join("sound").join(&sound.file);
    let mut store = Store::open(dir.path()).expect("opens");
    let mut expire = |now: &str| store.expire_sounds(&time(now)).expect("asks");
    assert_eq!(expire("2026-12-24T18:59:00+01:00[Europe/Berlin]"), Expired::default());
    assert_eq!(expire("2099-01-01T00:00:00+00:00[UTC]"), Expired { deleted: 0, held_back: 1 });
    assert!(path.exists());
    assert_eq!(expire("2026-12-24T19:00:00+01:00[Europe/Berlin]"), Expired { deleted: 1, held_back: 0 });
    assert!(!path.exists());
    assert_eq!(store.all_sounds().expect("reads"), []);
}

#[test]
fn an_encrypted_record_encrypts_its_sound_and_one_that_is_encrypted_later_what_is_there() {
    let dir = tempfile::tempdir().expect("a folder");
    let plain = record(dir.path(), "Client", 40_000);
    let plain_path = dir.path().join("sound").join(&plain.file);
    assert!(plain_path.exists());
    let done = Store::set_passphrase(dir.path(), Some(&Passphrase::new("four words of sound").expect("long enough"))).expect("encrypts");
    assert_eq!((done.sounds, plain_path.exists()), (1, false));
    let later = record(dir.path(), "Client", 30_000);
    let store = Store::open(dir.path()).expect("opens");
    let sounds = store.stored_sounds("Client").expect("reads");
    assert_eq!(sounds.len(), 2);
    for (sound, samples) in sounds.iter().zip([40_000, 30_000]) {
        let bytes = std::fs::read(dir.path().join("sound").join(&sound.file)).expect("is there");
        assert!(sound.file.ends_with(".flac.sealed") && !bytes.windows(4).any(|at| at == b"fLaC"), "{}", sound.file);
        assert_eq!(decoded(store.sound_flac(sound).expect("reads")).1, wanted(samples));
    }
    assert_eq!(sounds.last().map(|sound| sound.id), Some(later.id));
    drop(store);
    // Without the passphrase what is stored stays encrypted, and can be read all the same.
    Store::set_passphrase(dir.path(), None).expect("decrypts");
    let store = Store::open(dir.path()).expect("opens");
    for sound in store.stored_sounds("Client").expect("reads") {
        assert!(sound.file.ends_with(".sealed"));
        decoded(store.sound_flac(&sound).expect("reads"));
    }
}

#[test]
fn a_name_in_the_record_leads_nowhere_else() {
    let dir = tempfile::tempdir().expect("a folder");
    let store = Store::open(dir.path()).expect("opens");
    for name in ["../practice.sqlite", "/etc/hosts", "a/b.flac", "", ".."] {
        assert!(store.sound_path(name).is_err(), "{name}");
    }
}
