use super::*;
use crate::Source;
use crate::samples::{at, hold, keep};
use session::Entry;

fn trial(n: usize, level_db: f64, f0_hz: f64, terms: LevelTerms) -> Entry {
    let mut entry = hold(30.0 * (n + 1) as f64, at(1, 1, n as u32 + 1), "long-ah", 8.0, true);
    if let Fact::HoldMeasured { level_mean_db, f0_median_hz, level_terms, .. } = &mut entry.fact {
        (*level_mean_db, *f0_median_hz, *level_terms) = (level_db, f0_hz, Some(terms));
    }
    entry
}

const DAY: &str = "2026-11-24T19:00:00+01:00[Europe/Berlin]";

#[test]
fn what_is_usual_rests_on_the_newest_live_trials_of_one_scale() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let metered = || LevelTerms { calibration: LevelCalibration::Meter, ..LevelTerms::default() };
    let relative: Vec<Entry> = (0..6).map(|n| trial(n, -30.0, 110.0, LevelTerms::default())).collect();
    keep(&mut store, "Client", Source::Live, DAY, &relative);
    let usual_of = |store: &Store| store.usual_voices("Client", None).expect("asks").get("long-ah").copied().expect("is there");
    assert_eq!(usual_of(&store), UsualVoice { level_db: Some(-30.0), calibration: LevelCalibration::None, f0_hz: Some(110.0) });

    let first: Vec<Entry> = (0..4).map(|n| trial(n, 70.0 + n as f64, 120.0, metered())).collect();
    keep(&mut store, "Client", Source::Live, DAY, &first);
    assert_eq!(usual_of(&store).level_db, None, "four on the new scale are too few, and the old ones do not count");

    let mut more: Vec<Entry> = (0..2).map(|n| trial(n, 74.0 + n as f64, 120.0, metered())).collect();
    more.push(trial(2, 20.0, 120.0, LevelTerms { clipped_s: 0.4, ..metered() }));
    more.push(trial(3, f64::NAN, 120.0, metered()));
    keep(&mut store, "Client", Source::Live, DAY, &more);
    // 70, 71, 72, 73, 74, 75 on this scale; the clipped one and the one without a level do not count.
    assert_eq!(usual_of(&store), UsualVoice { level_db: Some(72.5), calibration: LevelCalibration::Meter, f0_hz: Some(120.0) });
}

#[test]
fn replays_others_and_the_present_session_do_not_count() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut store = Store::open(dir.path()).expect("opens");
    let many: Vec<Entry> = (0..8).map(|n| trial(n, -20.0, 200.0, LevelTerms::default())).collect();
    keep(&mut store, "Client", Source::Replay, DAY, &many);
    keep(&mut store, "Other", Source::Live, DAY, &many);
    let present = keep(&mut store, "Client", Source::Live, DAY, &many);
    assert!(store.usual_voices("Client", Some(present)).expect("asks").is_empty());
    assert_eq!(store.usual_voices("Client", None).expect("asks").len(), 1);
}
