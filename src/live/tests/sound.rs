use super::*;
use record::{NewSession, StoredSound};

const START: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";
const RATE_HZ: u32 = 16_000;

struct Scene {
    data: tempfile::TempDir,
    kept: SharedKept,
    store: Store,
    facts: SessionFacts,
}

fn scene(source: Source) -> Scene {
    let data = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(data.path()).expect("opens");
    let started_at: ZonedDateTime = START.parse().expect("a time");
    let new = NewSession {
        protocol: None,
        client: "grandpa",
        routine_title: "Evening",
        routine_text: "x",
        source,
        software: "tidecount",
        started_at: &started_at,
    };
    let session = store.begin(&new).expect("begins");
    let kept = SharedKept::default();
    lock(&kept).session = Some(session);
    let facts = SessionFacts {
        protocol: None,
        client: "grandpa".into(),
        routine_title: "Evening".into(),
        routine_text: "x".into(),
        source,
        started_at,
        lines: None,
    };
    Scene { data, kept, store, facts }
}

impl Scene {
    fn wish(&mut self, answer: Option<bool>) {
        self.store.sound_wish("grandpa", 30, &self.facts.started_at).expect("wishes");
        if let Some(yes) = answer {
            self.store.sound_consent_by_voice("grandpa", yes, 30, &self.facts.started_at).expect("answers");
        }
    }

    fn keeper(&self) -> Option<Box<dyn Observer>> {
        SoundWish::of(&self.store, &self.facts)
            .expect("asks")
            .map(|wish| wish.keeper(self.data.path(), RATE_HZ, self.kept.clone(), true, speak::Words::english().expect("words")))
    }

    fn sounds(&self) -> Vec<StoredSound> {
        self.store.stored_sounds("grandpa").expect("reads")
    }
}

fn play(keeper: &mut dyn Observer, seconds: u32, level: f32) {
    for _ in 0..seconds * 100 {
        keeper.sound(0, &[level; 160]);
    }
}

#[test]
fn without_both_consents_nothing_follows() {
    let mut scene = scene(Source::Live);
    assert!(scene.keeper().is_none());
    scene.wish(Some(false));
    assert!(scene.keeper().is_none(), "the voice said no");
    for source in [Source::Replay, Source::Rehearsal] {
        let mut other = self::scene(source);
        other.wish(Some(true));
        assert!(other.keeper().is_none(), "{source:?}");
    }
}

#[test]
fn sound_begins_with_the_spoken_yes_and_stays_on_the_clock_over_gaps() {
    let mut scene = scene(Source::Live);
    scene.wish(None);
    let mut keeper = scene.keeper().expect("follows");
    play(keeper.as_mut(), 3, 0.1);
    assert!(scene.sounds().is_empty(), "nobody has said yes");
    keeper.kept(&Entry { at_s: 3.0, fact: Fact::SoundConsent { given: Some(true), days: 30 }, position: None });
    play(keeper.as_mut(), 2, 0.25);
    // Half a second was lost: silence in its place.
    keeper.sound(8_000, &[0.25; 160]);
    play(keeper.as_mut(), 1, 0.25);
    // Two minutes: a new file.
    keeper.sound(u64::from(RATE_HZ) * 120, &[0.5; 160]);
    play(keeper.as_mut(), 1, 0.5);
    drop(keeper);
    let sounds = scene.sounds();
    assert_eq!(sounds.len(), 2);
    let [first, second] = sounds.as_slice() else { panic!("two files") };
    assert!((first.from_s - 3.0).abs() < 1e-9 && (first.to_s() - 6.51).abs() < 1e-9, "{first:?}");
    assert!((second.from_s - 126.51).abs() < 1e-9 && (second.to_s() - 127.52).abs() < 1e-9, "{second:?}");
    assert_eq!(first.expires_at, "2026-12-24T19:00:00+01:00[Europe/Berlin]");
    let path = scene.data.path().join("first.flac");
    std::fs::write(&path, scene.store.sound_flac(first).expect("reads")).expect("writes");
    let mut source = audio::decode::SoundReader::open(&path).expect("opens");
    let mut samples = Vec::new();
    while let Some(part) = source.read() {
        samples.extend_from_slice(part);
    }
    assert!(samples.iter().take(32_000).all(|x| (x - 0.25).abs() < 1e-4) && samples.iter().skip(32_000).take(8_000).all(|x| *x == 0.0));
    assert!(samples.iter().skip(40_000).all(|x| (x - 0.25).abs() < 1e-4) && samples.len() == 56_160);
}

#[test]
fn the_screen_says_so_while_it_is_on_and_again_with_each_exercise() {
    let mut scene = scene(Source::Live);
    scene.wish(Some(true));
    let mut keeper = scene.keeper().expect("follows");
    play(keeper.as_mut(), 1, 0.1);
    let notice = |keeper: &mut dyn Observer| {
        (0..500).find_map(|_| {
            keeper.notice().or_else(|| {
                std::thread::sleep(std::time::Duration::from_millis(10));
                None
            })
        })
    };
    let said = notice(keeper.as_mut()).expect("is told");
    assert!(said.contains("2026-12-24"), "{said}");
    assert_eq!(keeper.notice(), None);
    keeper.kept(&Entry { at_s: 5.0, fact: Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None }, position: None });
    assert_eq!(keeper.notice(), Some(said));
}

#[test]
fn taking_the_consent_back_on_the_page_ends_it_within_the_practice() {
    let mut scene = scene(Source::Live);
    scene.wish(Some(true));
    let mut keeper = scene.keeper().expect("follows");
    play(keeper.as_mut(), 12, 0.1);
    let now = scene.facts.started_at.clone();
    scene.store.withdraw_sound("grandpa", record::SoundSide::Page, &now).expect("withdraws");
    play(keeper.as_mut(), 25, 0.1);
    drop(keeper);
    let sounds = scene.sounds();
    assert!(sounds.len() == 1 && sounds.iter().all(|sound| sound.to_s() <= 25.0), "{sounds:?}");
    assert!(lock(&scene.kept).notes.iter().any(|note| note.contains("withdrawn")), "{:?}", lock(&scene.kept).notes);
}

#[test]
fn a_spoken_no_ends_it_at_once() {
    let mut scene = scene(Source::Live);
    scene.wish(Some(true));
    let mut keeper = scene.keeper().expect("follows");
    play(keeper.as_mut(), 2, 0.1);
    keeper.kept(&Entry { at_s: 2.0, fact: Fact::SoundConsent { given: Some(false), days: 30 }, position: None });
    play(keeper.as_mut(), 5, 0.1);
    drop(keeper);
    let sounds = scene.sounds();
    assert!(sounds.len() == 1 && sounds.iter().all(|sound| (sound.to_s() - 2.0).abs() < 1e-9), "{sounds:?}");
}

#[test]
fn a_folder_that_cannot_be_written_ends_the_sound_and_not_the_practice() {
    let mut scene = scene(Source::Live);
    scene.wish(Some(true));
    std::fs::write(scene.data.path().join("sound"), "a file is in the way").expect("writes");
    let mut keeper = scene.keeper().expect("follows");
    play(keeper.as_mut(), 5, 0.1);
    drop(keeper);
    assert!(scene.sounds().is_empty());
    assert!(lock(&scene.kept).notes.iter().any(|note| note.contains("sound")), "{:?}", lock(&scene.kept).notes);
}
