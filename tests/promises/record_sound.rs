//! Promise: no sound is stored unless the client turned it on by page and by voice; then it is FLAC beside the record, on the clock of the
//! journal, with an expiry.

#[path = "../support/program.rs"]
mod program;
#[path = "../support/rehearsal.rs"]
mod rehearsal;

use audio::decode::SoundReader;
use program::of_kind;
use record::{SoundConsent, Source, Store};
use rehearsal::{Led, RATE_HZ, Scene, lead};
use rehearse::RoomSpec;
use std::path::Path;

/// As the rehearsal calls its client.
const CLIENT: &str = "client";

const ROUTINE: &str = r#"
title = "Long ah"
[[step]]
exercise = "long-ah"
repetitions = 1
[[step]]
exercise = "rest"
length_s = 1
"#;

fn client(answer: &str) -> String {
    format!(
        r#"
seed = 4
reaction_s = [1.0, 1.5]
voice = {{ name = "rms", speed = 0.9, level_db = -26.0 }}
[[rule]]
on = ["ask-sound", "ask-yes-no-again"]
does = [{{ say = "{answer}" }}]
[[rule]]
on = "ask-ready*"
does = [{{ say = "ready" }}]
[[rule]]
on = ["ex-long-ah-cue", "voice-again"]
does = [{{ breath = 0.8 }}, {{ hold = {{ f0_hz = 118.0, length_s = 5.0, level_db = -26.0 }} }}]
"#
    )
}

fn practise(folder: &Path, name: &str, source: Source, answer: &str) -> Led {
    lead(&Scene { routine: ROUTINE, client: &client(answer), room: RoomSpec::living_room(RATE_HZ), source, folder, name })
}

fn samples(path: &Path) -> (u32, Vec<f32>) {
    let mut reader = SoundReader::open(path).unwrap_or_else(|why| panic!("{why}"));
    let mut samples = Vec::new();
    while let Some(part) = reader.read() {
        samples.extend_from_slice(part);
    }
    (reader.rate_hz(), samples)
}

fn level_db(samples: &[f32]) -> f64 {
    let power = samples.iter().map(|x| f64::from(*x).powi(2)).sum::<f64>() / samples.len().max(1) as f64;
    10.0 * power.log10()
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn sound_is_stored_after_page_and_voice_said_so_and_lies_on_the_journals_clock() {
    let dir = tempfile::tempdir().unwrap();
    let data = dir.path().join("record");
    let now = "2026-11-24T19:00:00+01:00[Europe/Berlin]".parse().unwrap();
    Store::open(&data).unwrap().sound_wish(CLIENT, 30, &now).unwrap();
    let second = practise(dir.path(), "second", Source::Live, "yes");
    assert_eq!((second.said("ask-sound"), second.said("sound-agreed")), (1, 1));
    let answer = of_kind(&second.journal, "sound_consent");
    assert!(answer.len() == 1 && answer[0]["given"] == true && answer[0]["days"] == 30, "{answer:?}");
    let store = Store::open(&data).unwrap();
    assert!(matches!(store.sound_consent(CLIENT).unwrap(), SoundConsent::Given { days: 30, .. }));
    let sounds = store.stored_sounds(CLIENT).unwrap();
    assert_eq!(sounds.len(), 1);
    let sound = &sounds[0];
    let asked_s = answer[0]["at_s"].as_f64().unwrap();
    assert!((sound.from_s - asked_s).abs() < 0.05, "from {} s, agreed at {asked_s} s", sound.from_s);
    let hold = of_kind(&second.journal, "hold_measured")[0];
    let (onset_s, offset_s) = (hold["onset_s"].as_f64().unwrap(), hold["offset_s"].as_f64().unwrap());
    let ended_s = of_kind(&second.journal, "session_ended")[0]["at_s"].as_f64().unwrap();
    assert!(sound.to_s() >= ended_s - 0.2, "to {} s of {ended_s} s", sound.to_s());
    let path = data.join("sound").join(&sound.file);
    let (rate_hz, all) = samples(&path);
    assert_eq!((rate_hz, all.len() as u64), (sound.rate_hz, sound.samples));
    let at = |s: f64| ((s - sound.from_s) * f64::from(rate_hz)) as usize;
    let (held, before) = (level_db(&all[at(onset_s + 0.1)..at(offset_s - 0.1)]), level_db(&all[at(onset_s - 0.35)..at(onset_s - 0.05)]));
    assert!(held > before + 10.0, "where the journal has the hold the sound must be loud: {held:.1} dB, before it {before:.1} dB");
    assert_eq!(store.sound_to_ask(CLIENT, &now).unwrap(), None);
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn no_is_kept_and_not_asked_again() {
    let dir = tempfile::tempdir().unwrap();
    let data = dir.path().join("record");
    let now = "2026-11-24T19:00:00+01:00[Europe/Berlin]".parse().unwrap();
    Store::open(&data).unwrap().sound_wish(CLIENT, 30, &now).unwrap();
    let refused = practise(dir.path(), "refused", Source::Live, "no");
    assert_eq!((refused.said("ask-sound"), refused.said("sound-not-agreed")), (1, 1));
    let store = Store::open(&data).unwrap();
    assert!(matches!(store.sound_consent(CLIENT).unwrap(), SoundConsent::Refused { .. }));
    assert_eq!(store.sound_to_ask(CLIENT, &now).unwrap(), None);
    assert!(store.all_sounds().unwrap().is_empty() && !data.join("sound").exists());
}
