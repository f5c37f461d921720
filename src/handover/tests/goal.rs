use super::*;
use jiff::civil::date;

fn goal() -> HandedGoal {
    let aim = HandedAim { exercise: "long-ah".into(), measure: "hold-s".into(), direction: "at-least".into(), target: 14.5 };
    let marks = vec![HandedMark { kind: "removed".into(), on: date(2026, 11, 20), by: "M.".into() }];
    HandedGoal {
        words: "Read a page.".into(),
        aim: Some(aim),
        set_on: date(2026, 11, 1),
        due: date(2027, 2, 1),
        set_by: "M.".into(),
        marks,
    }
}

#[test]
fn a_goal_goes_through_its_text() {
    let text = serde_json::to_string(&goal()).expect("text");
    assert_eq!(serde_json::from_str::<HandedGoal>(&text).expect("reads"), goal());
    assert_eq!(check(&[goal()]), Ok(()));
}

#[test]
fn what_no_record_would_keep_is_refused() {
    let mark = |by: String| HandedMark { kind: "met".into(), on: date(2026, 11, 20), by };
    for bad in [
        HandedGoal { words: String::new(), ..goal() },
        HandedGoal { words: "a".repeat(201), ..goal() },
        HandedGoal { words: "up\u{1b}[2J".into(), ..goal() },
        HandedGoal { set_by: "b".repeat(61), ..goal() },
        HandedGoal { due: date(2026, 10, 31), ..goal() },
        HandedGoal { marks: vec![mark(String::new())], ..goal() },
        HandedGoal { marks: vec![mark("M.".into()); 201], ..goal() },
    ] {
        assert!(check(std::slice::from_ref(&bad)).is_err(), "{bad:?}");
    }
    assert!(check(&vec![goal(); 101]).is_err());
}
