//! Distances and noise corrections against computed tables of the trade (20 lg of the ratio; 10 lg(1 - 10^(-d/10))).

use super::*;

fn readings(parts: &[(f64, usize)]) -> Vec<LevelReading> {
    parts.iter().flat_map(|(level_db, count)| vec![LevelReading { level_db: *level_db, clipped: false }; *count]).collect()
}

#[test]
fn distance_takes_20_lg_of_the_ratio() {
    // From, to, change: free field, inverse distance law.
    for (from, to, change) in [
        (30.0, 100.0, -10.46),
        (30.0, 50.0, -4.44),
        (30.0, 200.0, -16.48),
        (10.0, 30.0, -9.54),
        (5.0, 30.0, -15.56),
        (15.0, 30.0, -6.02),
        (100.0, 30.0, 10.46),
    ] {
        assert!((at_distance(70.0, from, to) - 70.0 - change).abs() < 0.005, "{from} {to}");
    }
}

#[test]
fn the_room_is_taken_out() {
    for (over_db, change) in [(3.0, -3.02), (4.0, -2.20), (5.0, -1.65), (6.0, -1.26), (8.0, -0.75), (10.0, -0.46), (15.0, -0.14)] {
        assert!((without_room(60.0 + over_db, 60.0) - 60.0 - over_db - change).abs() < 0.005, "{over_db}");
    }
}

#[test]
fn a_steady_sound_gives_the_offset() {
    let heard = evaluate(&readings(&[(-70.0, 30), (-30.0, 60), (-70.0, 10)]), true).unwrap();
    assert!((heard.level_db + 30.0).abs() < 0.01 && heard.spread_db < 0.01 && (heard.room_db + 70.0).abs() < 0.01, "{heard:?}");
    let meter = Known { method: Method::Meter, level_db: 78.4, weighting: Weighting::A, at_cm: None };
    // The meter stood beside the microphone.
    assert!((offset_db(&meter, 60.0, &heard) - 108.4).abs() < 0.01);
    // At 60 cm the voice is 6.02 dB weaker than at 30 cm, where it is reported.
    assert!((reported_offset_db(108.4, 60.0) - 114.42).abs() < 0.01);
    // The meter stood at 30 cm and the microphone at 60: the level there was 6.02 dB less.
    let near = Known { at_cm: Some(30.0), ..meter };
    assert!((offset_db(&near, 60.0, &heard) - 102.38).abs() < 0.01);
    // Measured where it is reported: the meter's number comes out again.
    assert!((heard.level_db + reported_offset_db(offset_db(&near, 60.0, &heard), 60.0) - 78.4).abs() < 0.01);
}

#[test]
fn what_cannot_calibrate_is_refused_with_its_reason() {
    assert_eq!(evaluate(&readings(&[(-70.0, 60)]), true), Err(Unfit::NoQuiet));
    assert_eq!(evaluate(&readings(&[(-70.0, 30), (-30.0, 15)]), true), Err(Unfit::NoSound));
    assert_eq!(evaluate(&[], true), Err(Unfit::NoSound));
    assert!(matches!(evaluate(&readings(&[(-40.0, 30), (-32.0, 60)]), true), Err(Unfit::RoomTooLoud(db)) if (db - 8.0).abs() < 0.01));
    assert!(matches!(evaluate(&readings(&[(-70.0, 30), (-30.0, 20), (-38.0, 20)]), true), Err(Unfit::Unsteady(db)) if db > 7.0));
    let mut clipped = readings(&[(-70.0, 30), (-5.0, 60)]);
    clipped[60].clipped = true;
    assert_eq!(evaluate(&clipped, true), Err(Unfit::Clipped));
}

#[test]
fn a_source_in_a_coupler_may_sound_throughout() {
    let heard = evaluate(&readings(&[(-26.0, 60)]), false).unwrap();
    assert!((heard.level_db + 26.0).abs() < 0.01 && heard.over_room_db() > 90.0, "{heard:?}");
    assert_eq!(evaluate(&readings(&[(-70.0, 60)]), false), Err(Unfit::NoQuiet));
}
