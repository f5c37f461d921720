use super::*;
use session::{Command, LevelTerms};

fn at(step: u32, repetition: u32) -> Option<Position> {
    Some(Position { step, set: 1, repetition })
}

fn hold(onset_s: f64, offset_s: f64, repetition: u32, complete: bool) -> Entry {
    let fact = Fact::HoldMeasured {
        exercise: "long-ah".into(),
        onset_s,
        offset_s,
        duration_s: offset_s - onset_s,
        f0_median_hz: 150.0,
        f0_span_st: 1.0,
        level_mean_db: -20.0,
        level_fall_db: 1.0,
        level_weighting: "A".into(),
        level_calibrated: false,
        f0_sd_st: None,
        level_slope_db_per_s: None,
        level_terms: Some(LevelTerms::default()),
        quality: None,
        climb: None,
        breaks: 0,
        masked_s: 0.0,
        complete,
    };
    Entry { at_s: offset_s + 0.3, fact, position: at(1, repetition) }
}

fn said(at_s: f64, command: Command, text: &str) -> Entry {
    Entry { at_s, fact: Fact::CommandHeard { command, text: text.into(), confidence: 0.9 }, position: None }
}

fn entries() -> Vec<Entry> {
    vec![
        said(3.0, Command::Ready, "ready"),
        Entry { at_s: 3.5, fact: Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None }, position: at(1, 1) },
        hold(10.0, 14.5, 1, true),
        hold(20.0, 23.0, 2, true),
        Entry { at_s: 23.3, fact: Fact::HoldInNoise { exercise: "long-ah".into(), over_room_db: 6.0 }, position: at(1, 2) },
        said(28.0, Command::Stop, "please \"stop\""),
        hold(27.0, 28.25, 3, false),
    ]
}

/// The tier's intervals or points as Praat would read them.
fn tier(text: &str, name: &str) -> Vec<(f64, Option<f64>, String)> {
    let (_, rest) = text.split_once(&format!("name = \"{name}\"")).expect("the tier");
    let body = rest.split("item [").next().expect("a body");
    let value = |line: &str| line.split_once(" = ").map(|(_, value)| value.trim().to_owned()).expect("a value");
    let number = |line: &str| value(line).parse::<f64>().expect("a number");
    let mut found = Vec::new();
    let lines: Vec<&str> = body.lines().collect();
    for window in lines.windows(4) {
        if window[0].trim_start().starts_with("intervals [") {
            found.push((number(window[1]), Some(number(window[2])), value(window[3])));
        } else if window[0].trim_start().starts_with("points [") {
            found.push((number(window[1]), None, value(window[2])));
        }
    }
    found
}

#[test]
fn intervals_follow_each_other_from_end_to_end() {
    let grid = text_grid(&entries(), Sound { length_s: 40.0, begins_at_s: 0.0 });
    assert_eq!(grid.outside, 0);
    for name in ["exercise", "holds", "discarded", "other"] {
        let tier = tier(&grid.text, name);
        assert_eq!(tier.first().expect("one").0, 0.0, "{name}");
        assert_eq!(tier.last().expect("one").1, Some(40.0), "{name}");
        assert!(tier.windows(2).all(|pair| pair[0].1 == Some(pair[1].0)), "{name}: {tier:?}");
        assert!(tier.iter().all(|(from, to, _)| to.is_some_and(|to| to > *from)), "{name}: {tier:?}");
    }
    let holds: Vec<_> = tier(&grid.text, "holds").into_iter().filter(|(.., label)| label != "\"\"").collect();
    assert_eq!(holds, [(10.0, Some(14.5), "\"long-ah 1.1.1 4.5 s\"".to_owned())]);
    let discarded: Vec<_> = tier(&grid.text, "discarded").into_iter().filter(|(.., label)| label != "\"\"").collect();
    assert_eq!(discarded.len(), 2);
    assert!(discarded[0].2.ends_with(": the room was too loud\"") && discarded[1].2.ends_with(": cut off by a command\""), "{discarded:?}");
    assert_eq!(tier(&grid.text, "exercise")[1], (3.5, Some(40.0), "\"long-ah (step 1)\"".to_owned()));
    let commands = tier(&grid.text, "commands");
    assert_eq!(commands, [(3.0, None, "\"ready\"".to_owned()), (28.0, None, "\"stop \"\"please \"\"stop\"\"\"\"\"".to_owned())]);
}

#[test]
fn times_are_those_of_the_sound_and_what_lies_outside_is_told() {
    let grid = text_grid(&entries(), Sound { length_s: 10.0, begins_at_s: 12.0 });
    let holds = tier(&grid.text, "holds");
    assert_eq!(holds[0], (0.0, Some(2.5), "\"long-ah 1.1.1 4.5 s\"".to_owned()), "cut to the sound");
    assert_eq!(tier(&grid.text, "discarded").iter().filter(|(.., label)| label != "\"\"").count(), 1);
    assert_eq!(grid.outside, 3, "two commands and the last hold");
    assert_eq!(tier(&grid.text, "exercise"), [(0.0, Some(10.0), "\"long-ah (step 1)\"".to_owned())]);
}

#[test]
fn overlapping_stretches_and_points_of_one_instant_stay_legal() {
    let entries = [
        hold(1.0, 5.0, 1, true),
        hold(4.0, 6.0, 2, true),
        hold(2.0, 3.0, 3, true),
        said(7.0, Command::Yes, ""),
        said(7.0, Command::No, ""),
    ];
    let grid = text_grid(&entries, Sound { length_s: 8.0, begins_at_s: 0.0 });
    let ends: Vec<(f64, Option<f64>)> = tier(&grid.text, "holds").into_iter().map(|(from, to, _)| (from, to)).collect();
    assert_eq!(ends, [(0.0, Some(1.0)), (1.0, Some(5.0)), (5.0, Some(6.0)), (6.0, Some(8.0))]);
    assert_eq!(tier(&grid.text, "commands"), [(7.0, None, "\"yes; no\"".to_owned())]);
}

#[test]
fn a_journal_of_several_parts_is_parted_where_it_was_gone_on_with() {
    let resumed = Entry { at_s: 0.4, fact: Fact::SessionResumed { from: "long-ah".into() }, position: None };
    let mut journal = entries();
    journal.push(said(0.2, Command::Yes, "yes"));
    journal.push(resumed);
    journal.push(hold(9.0, 12.0, 3, true));
    let lengths: Vec<usize> = parts_of(journal).iter().map(Vec::len).collect();
    assert_eq!(lengths, [7, 3]);
}
