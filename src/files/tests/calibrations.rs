use super::*;

fn device(name: &str) -> Device {
    Device { system: "PulseAudio".into(), name: name.into(), rate_hz: 48_000, gain: "65536 (100%)".into() }
}

fn calibration(name: &str) -> Calibration {
    Calibration {
        device: device(name),
        method: Method::Meter,
        known_db: 78.4,
        weighting: Weighting::A,
        known_at_cm: 30.0,
        distance_cm: 60.0,
        offset_db: 100.0,
        spread_db: 1.0,
        over_room_db: 30.0,
        date: "2026-11-25".into(),
        void: None,
    }
}

#[test]
fn what_is_kept_is_read_again_and_replaces_the_earlier_one() {
    let dir = tempfile::tempdir().unwrap();
    let folder = dir.path().join("new/folder");
    let mut store = CalibrationStore::open(&folder).unwrap();
    assert!(store.all().is_empty());
    store.keep(calibration("mic")).unwrap();
    store.keep(calibration("other \"quoted\" mic")).unwrap();
    store.keep(Calibration { offset_db: 101.0, ..calibration("mic") }).unwrap();
    let read = CalibrationStore::open(&folder).unwrap();
    assert_eq!(read.all().len(), 2);
    assert_eq!(read.of("PulseAudio", "mic"), Some(&Calibration { offset_db: 101.0, ..calibration("mic") }));
    assert_eq!(read.of("ALSA", "mic"), None);
    store.void("PulseAudio", "mic", "its gain changed").unwrap();
    let mut read = CalibrationStore::open(&folder).unwrap();
    assert_eq!(read.of("PulseAudio", "mic").unwrap().void.as_deref(), Some("its gain changed"));
    assert_eq!((read.forget("mic").unwrap(), read.forget("mic").unwrap()), (1, 0));
    assert_eq!(CalibrationStore::open(&folder).unwrap().all().len(), 1);
}

#[test]
fn a_change_of_rate_gain_or_distance_breaks_it() {
    let kept = calibration("mic");
    assert_eq!(kept.broken_by(&device("mic"), None), None);
    assert_eq!(kept.broken_by(&device("mic"), Some(60.0)), None);
    let broken = |device: Device, cm| kept.broken_by(&device, cm).unwrap();
    assert!(broken(Device { gain: "52428 (80%)".into(), ..device("mic") }, None).contains("gain is 52428 (80%), and was 65536 (100%)"));
    assert!(broken(Device { gain: "unknown".into(), ..device("mic") }, None).contains("gain is unknown"));
    assert!(broken(Device { rate_hz: 44_100, ..device("mic") }, None).contains("44100 Hz"));
    assert!(broken(device("mic"), Some(30.0)).contains("30 cm from the mouth, and stood at 60 cm"));
}

#[test]
fn the_reported_level_is_for_30_cm() {
    assert!((calibration("mic").reported_offset_db() - 106.02).abs() < 0.01);
}

#[test]
fn a_damaged_file_is_named_and_left_alone() {
    let dir = tempfile::tempdir().unwrap();
    std::fs::write(dir.path().join(FILE_NAME), "calibration = 3").unwrap();
    let text = CalibrationStore::open(dir.path()).unwrap_err().to_string();
    assert!(text.contains(FILE_NAME) && text.contains("calibrate again"), "{text}");
    assert_eq!(std::fs::read_to_string(dir.path().join(FILE_NAME)).unwrap(), "calibration = 3");
}
