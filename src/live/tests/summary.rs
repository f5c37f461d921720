use super::*;
use session::Position;

fn entry(step: u32, fact: Fact) -> Entry {
    Entry { at_s: 1.0, fact, position: Some(Position { step, set: 1, repetition: 1 }) }
}

fn hold(step: u32, duration_s: f64, f0_median_hz: f64, level_mean_db: f64, complete: bool) -> Entry {
    entry(
        step,
        Fact::HoldMeasured {
            exercise: "long-ah".into(),
            onset_s: 0.0,
            offset_s: duration_s,
            duration_s,
            f0_median_hz,
            f0_span_st: 0.4,
            level_mean_db,
            level_fall_db: 2.0,
            level_weighting: "A".into(),
            level_calibrated: false,
            f0_sd_st: None,
            level_slope_db_per_s: None,
            level_terms: None,
            quality: None,
            climb: None,
            breaks: 0,
            masked_s: if duration_s > 13.0 { 0.3 } else { 0.0 },
            complete,
        },
    )
}

fn begun(step: u32, exercise: &str) -> Entry {
    entry(step, Fact::StepBegun { exercise: exercise.into(), ramp_stage: None })
}

fn evening() -> Vec<Entry> {
    let outside = |fact| Entry { at_s: 600.0, fact, position: None };
    vec![
        outside(Fact::SessionBegun { routine: "Evening routine".into(), steps: 4, software: "tidecount 0.1.0".into() }),
        outside(Fact::StepLeftOut { exercise: "head-lift".into(), reason: "no spoken agreement".into() }),
        begun(1, "long-ah"),
        hold(1, 12.0, 180.0, -20.0, true),
        hold(1, 30.0, 300.0, -1.0, false),
        hold(1, 14.0, 184.0, f64::NEG_INFINITY, true),
        hold(1, 13.0, 190.0, -20.0, true),
        entry(1, Fact::StepDone { exercise: "long-ah".into(), repetitions_done: 3, repetitions_prescribed: 3 }),
        begun(2, "breath"),
        entry(2, Fact::StepStopped { exercise: "breath".into(), reason: "dizzy".into(), repetitions_done: 4, repetitions_prescribed: 9 }),
        begun(4, "words"),
        entry(
            4,
            Fact::QuestionAnswered {
                exercise: "words".into(),
                clue: "It holds money and has a river beside it".into(),
                answer: Some("bank".into()),
                correct: true,
                hint_given: false,
                duration_s: 4.0,
            },
        ),
        entry(4, Fact::StepDone { exercise: "words".into(), repetitions_done: 1, repetitions_prescribed: 1 }),
        outside(Fact::SessionEnded { reason: "completed".into(), steps_done: 2, steps_prescribed: 4, duration_s: 600.0 }),
    ]
}

fn english() -> Words {
    Words::english().expect("words")
}

#[test]
fn the_table_tells_what_was_done() {
    insta::assert_snapshot!(table(&evening(), &english()));
}

#[test]
fn what_was_answered_at_the_end_stands_below_as_it_was_given_last() {
    use session::{RatedOver, Rating, SignAnswer, SwallowSign};
    let rated = |what, value| Fact::Rated { what, over: RatedOver::Practice, value };
    let told = [
        rated(Rating::Effort, Some(9)),
        rated(Rating::Effort, Some(4)),
        rated(Rating::Pain, None),
        Fact::SwallowSign { sign: SwallowSign::Cough, answer: SignAnswer::NotSure },
        Fact::SwallowSign { sign: SwallowSign::WetVoice, answer: SignAnswer::Yes },
        Fact::SwallowSign { sign: SwallowSign::WetVoice, answer: SignAnswer::No },
    ];
    let entries: Vec<Entry> = told.into_iter().map(|fact| Entry { at_s: 1.0, fact, position: None }).collect();
    let table = table(&entries, &english());
    assert!(table.contains("\nOwn ratings, 0 to 10: Effort 4\nTell the clinician: coughing or choking at meals (not sure)\n"), "{table}");
}

#[test]
fn no_row_is_wider_than_eighty_cells() {
    let mut entries = evening();
    let reason = "a reason so long that nobody would ever say it but a test must, and then some more of it".into();
    entries.push(entry(4, Fact::StepStopped { exercise: "words".into(), reason, repetitions_done: 1, repetitions_prescribed: 1 }));
    // A name that nobody gave, as an id of a later version may be.
    entries.push(begun(9, &"later-".repeat(20)));
    let table = table(&entries, &english());
    assert!(table.contains("later-later-later-later-l…"), "a name is cut: {table}");
    for row in table.lines() {
        assert!(row.width() <= WIDTH, "{row:?}");
    }
    let words = table.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("some more of it"), "notes are broken, not cut");
}

/// In every language its heads fit their columns, and no word is left in English.
#[test]
fn the_table_is_told_in_the_clients_language() {
    let told = |tag: &str| {
        let words = Words::of(speak::Language::find(tag).expect("a language")).expect("words");
        let table = table(&evening(), &words);
        assert!(table.lines().all(|row| row.width() <= WIDTH), "{table}");
        for (head, most) in [("done", 5), ("best", 6), ("mean", 6), ("f0", 5), ("level", 6)] {
            assert!(words.shown(&format!("table-{head}-shown"), Vec::new()).width() <= most, "{tag} {head}");
        }
        // Notes are broken over rows.
        table.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let german = told("de");
    assert!(german.contains("ausgelassen: ") && german.contains("13,0") && german.contains("abgebrochen: "), "{german}");
    let spanish = told("es");
    assert!(spanish.contains("dejado fuera: ") && spanish.contains("ejercicios hechos"), "{spanish}");
    for english in ["left out", "stopped", "Exercise", "ended", "completed", "relative"] {
        assert!(!german.contains(english) && !spanish.contains(english), "{english}");
    }
}

#[test]
fn levels_add_by_energy_and_the_median_is_the_middle() {
    // Two equal sources of energy: 60 and 70 dB have the mean 10·log10((10^6 + 10^7)/2) = 67.40 dB.
    assert!((energy_mean(&[60.0, 70.0]).expect("a mean") - 67.404).abs() < 0.001);
    assert_eq!(statistics::median(&[3.0, 1.0, 2.0]), Some(2.0));
    assert_eq!(statistics::median(&[4.0, 1.0, 2.0, 3.0]), Some(2.5));
    assert_eq!(statistics::median(&[]), None);
}
