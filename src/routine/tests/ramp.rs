use jiff::civil::{Date, date};

use super::*;
use crate::check_text;

/// Head lift from 3 × 10 s, as a programme that grows step by step (Easterling et al. 2005, seen): stages by hand.
fn ramp(days: u32) -> Ramp {
    let stages = (1..=6).map(|n| format!("{{ hold_s = {} }}", n * 10)).collect::<Vec<_>>().join(", ");
    let text = format!(
        "title = \"x\"\n[[step]]\nexercise = \"rest\"\n[[step]]\nexercise = \"head-lift-sustained\"\ncautions_acknowledged = true\nramp = {{ days = {days}, stages = [{stages}] }}\n"
    );
    let mut read = check_text("x", &text, Hearing { commands: &[], knows_word: None, ..Hearing::default() })
        .unwrap_or_else(|faults| panic!("{faults}"));
    read.ramps.remove(0)
}

fn on(day: i8) -> Date {
    date(2026, 11, day)
}

fn done(stage: u32, day: i8, whole: bool) -> StageDone {
    StageDone { stage, day: on(day), whole }
}

/// By hand: three whole days (2, 3, 5 November; the 4th was broken off, the 3rd counted once) take stage 1 to 2 on the 6th.
#[test]
fn three_whole_days_and_then_the_next() {
    let ramp = ramp(3);
    assert_eq!(ramp.stage_on(on(1), &[]), 1);
    let history = [done(1, 2, true), done(1, 3, true), done(1, 3, true), done(1, 4, false), done(1, 5, true)];
    assert_eq!(ramp.stage_on(on(4), &history[..3]), 1, "two days, one of them twice");
    assert_eq!(ramp.stage_on(on(5), &history), 1, "the third day is not over");
    assert_eq!(ramp.stage_on(on(6), &history), 2);
    assert_eq!(ramp.stage_on(on(30), &history), 2, "a pause of weeks takes nothing away");
}

#[test]
fn never_down_and_never_two_up_in_a_day() {
    let ramp = ramp(1);
    let mut history = vec![done(1, 1, true), done(1, 2, true), done(1, 3, true)];
    assert_eq!(ramp.stage_on(on(4), &history), 2, "one up, however many days were done");
    history.push(done(2, 4, true));
    assert_eq!(ramp.stage_on(on(4), &history), 2, "not again on the same day");
    assert_eq!(ramp.stage_on(on(5), &history), 3);
    history.push(done(3, 5, false));
    assert_eq!(ramp.stage_on(on(20), &history), 3, "failing takes nothing away");
    history.push(done(6, 21, true));
    assert_eq!(ramp.stage_on(on(22), &history), 6, "the last is the last");
}

#[test]
fn stages_are_the_step_with_their_own_dose() {
    let ramp = ramp(3);
    assert_eq!((ramp.step, ramp.days, ramp.stages.len()), (2, 3, 6));
    for (n, stage) in ramp.stages.iter().enumerate() {
        let Work::Timed { phases, .. } = &stage.work else { panic!("timed") };
        assert_eq!((phases[0].name.as_str(), phases[0].length_s), ("lift", 10.0 * (n + 1) as f64));
        assert_eq!((stage.repetitions, stage.rest_s, stage.ramp_stage), (3, 60.0, Some(n as u32 + 1)));
        assert_eq!(ramp.stage_of(stage), Some(n as u32 + 1));
    }
}
