use super::*;
use hear::weighting::Weighting;

fn device(gain: &str) -> Device {
    Device { system: "PulseAudio".into(), name: "mic".into(), rate_hz: 48_000, gain: gain.into() }
}

fn kept(method: Method) -> Calibration {
    Calibration {
        device: device("unknown"),
        method,
        known_db: 78.0,
        weighting: Weighting::A,
        known_at_cm: 60.0,
        distance_cm: 60.0,
        offset_db: 100.0,
        spread_db: 1.0,
        over_room_db: 30.0,
        date: "2026-11-25".into(),
        void: None,
    }
}

fn phrase(levels: &Levels) -> (f64, bool, LevelTerms) {
    let mut fact = Fact::PhraseRead {
        prosody: None,
        exercise: "phrases".into(),
        phrase: String::new(),
        duration_s: 1.0,
        level_mean_db: -30.0,
        f0_median_hz: 120.0,
        level_weighting: "A".into(),
        level_calibrated: false,
        level_terms: None,
    };
    levels.apply_calibration(&mut fact);
    let Fact::PhraseRead { level_mean_db, level_calibrated, level_terms: Some(terms), .. } = fact else { panic!("{fact:?}") };
    (level_mean_db, level_calibrated, terms)
}

#[test]
fn a_calibrated_level_is_given_for_30_cm() {
    let folder = tempfile::tempdir().unwrap();
    CalibrationStore::open(folder.path()).unwrap().keep(kept(Method::Meter)).unwrap();
    let mut levels = Levels::of(folder.path(), &device("unknown"), None).unwrap();
    let (level_db, calibrated, terms) = phrase(&levels);
    // -30 + 100 at 60 cm, and 20 lg(60 / 30) = 6.02 dB more at 30 cm.
    assert!((level_db - 76.02).abs() < 0.01 && calibrated, "{level_db}");
    assert_eq!((terms.calibration, terms.distance_cm), (LevelCalibration::Meter, Some(30.0)));
    let notes = levels.notes();
    assert!(notes.len() == 1 && notes[0].0 == "calibration" && levels.notes().is_empty(), "{notes:?}");
    levels.set_auto_gain();
    assert!(phrase(&levels).2.auto_gain);
}

#[test]
fn the_live_microphone_is_kept_once_and_a_recordings_never() {
    let folder = tempfile::tempdir().unwrap();
    let mut levels = Levels::of(folder.path(), &device("60 %"), None).unwrap();
    let used = Fact::MicrophoneUsed { system: "PulseAudio".into(), name: "mic".into(), rate_hz: 48_000, gain: "60 %".into() };
    assert_eq!((levels.microphone_used(), levels.microphone_used()), (Some(used), None));
    let recording = Device { system: RECORDING.into(), ..device("unknown") };
    assert_eq!(Levels::of(folder.path(), &recording, None).unwrap().microphone_used(), None);
    assert_eq!(Levels::default().microphone_used(), None);
}

/// The first one's calibration is not undone: the next practice has it again.
#[test]
fn a_microphone_that_comes_back_as_another_one_is_kept_and_its_levels_are_relative() {
    let folder = tempfile::tempdir().unwrap();
    CalibrationStore::open(folder.path()).unwrap().keep(kept(Method::Meter)).unwrap();
    let mut levels = Levels::of(folder.path(), &device("unknown"), None).unwrap();
    levels.hears_with("mic");
    assert!(levels.microphone_used().is_some() && levels.microphone_used().is_none());
    assert!(levels.scale().is_spl() && levels.notes().len() == 1, "the same one changes nothing");
    levels.hears_with("headset");
    let used = Fact::MicrophoneUsed { system: "PulseAudio".into(), name: "headset".into(), rate_hz: 48_000, gain: "unknown".into() };
    assert_eq!((levels.microphone_used(), levels.microphone_used()), (Some(used), None));
    let (level_db, calibrated, terms) = phrase(&levels);
    assert_eq!((level_db, calibrated, terms.calibration), (-30.0, false, LevelCalibration::Void));
    let notes = levels.notes();
    assert!(notes.len() == 1 && notes[0].1.contains("this microphone is \"headset\""), "{notes:?}");
    levels.hears_with("mic");
    assert!(levels.microphone_used().is_some() && !levels.scale().is_spl(), "for this practice it stays so");
    assert!(Levels::of(folder.path(), &device("unknown"), None).unwrap().scale().is_spl());
    let recording = Device { system: RECORDING.into(), ..device("unknown") };
    let mut of_recording = Levels::of(folder.path(), &recording, None).unwrap();
    of_recording.hears_with("headset");
    assert_eq!(of_recording.microphone_used(), None);
}

#[test]
fn a_phone_stays_rough_and_nothing_stays_relative() {
    let folder = tempfile::tempdir().unwrap();
    let (level_db, calibrated, terms) = phrase(&Levels::of(folder.path(), &device("unknown"), Some(45.0)).unwrap());
    assert!((level_db + 30.0).abs() < 1e-9 && !calibrated);
    assert_eq!((terms.calibration, terms.distance_cm), (LevelCalibration::None, Some(45.0)));
    CalibrationStore::open(folder.path()).unwrap().keep(kept(Method::Phone)).unwrap();
    let (_, _, terms) = phrase(&Levels::of(folder.path(), &device("unknown"), None).unwrap());
    let words = Words::english().unwrap();
    assert_eq!(in_words(&words, 71.6, "A", Some(&terms)), "72 dB(A) SPL at 30 cm, ROUGH");
    assert_eq!(in_words(&words, -29.4, "A", None), "-29 dB(A) relative");
}

#[test]
fn a_gain_that_cannot_be_read_suspends_it() {
    let folder = tempfile::tempdir().unwrap();
    CalibrationStore::open(folder.path()).unwrap().keep(Calibration { device: device("65536 (100%)"), ..kept(Method::Meter) }).unwrap();
    let mut blind = Levels::of(folder.path(), &device("unknown"), None).unwrap();
    assert_eq!(phrase(&blind).2.calibration, LevelCalibration::Void);
    assert!(blind.notes()[0].1.contains("cannot be read now"));
    assert_eq!(phrase(&Levels::of(folder.path(), &device("65536 (100%)"), None).unwrap()).2.calibration, LevelCalibration::Meter);
}

#[test]
fn a_changed_gain_distance_or_device_voids_it_for_good_and_says_so() {
    for (now, distance_cm, why) in [(device("52428 (80%)"), None, "gain"), (device("unknown"), Some(30.0), "30 cm from the mouth")] {
        let folder = tempfile::tempdir().unwrap();
        CalibrationStore::open(folder.path()).unwrap().keep(kept(Method::Meter)).unwrap();
        let mut levels = Levels::of(folder.path(), &now, distance_cm).unwrap();
        let (level_db, calibrated, terms) = phrase(&levels);
        assert!((level_db + 30.0).abs() < 1e-9 && !calibrated && terms.calibration == LevelCalibration::Void, "{terms:?}");
        let notes = levels.notes();
        assert!(notes.len() == 1 && notes[0].0 == "calibration-void" && notes[0].1.contains(why), "{notes:?}");
        // Turning the gain back does not bring it back: nobody knows what else was moved.
        let later = Levels::of(folder.path(), &device("unknown"), None).unwrap();
        assert_eq!(phrase(&later).2.calibration, LevelCalibration::Void);
    }
    let folder = tempfile::tempdir().unwrap();
    CalibrationStore::open(folder.path()).unwrap().keep(kept(Method::Meter)).unwrap();
    let mut other = Levels::of(folder.path(), &Device { name: "other".into(), ..device("unknown") }, None).unwrap();
    assert_eq!(phrase(&other).2.calibration, LevelCalibration::Void);
    assert!(other.notes()[0].1.contains("this microphone is \"other\""));
    // The first microphone keeps its own.
    assert_eq!(phrase(&Levels::of(folder.path(), &device("unknown"), None).unwrap()).2.calibration, LevelCalibration::Meter);
}
