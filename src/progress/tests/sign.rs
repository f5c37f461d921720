use super::*;
use crate::{DaysMissed, SignAnswered};
use jiff::civil::date;

const WINDOW: Window = Window { from: date(2026, 3, 2), to: date(2026, 3, 31) };

#[test]
fn signs_that_were_affirmed_or_doubted_are_counted_and_no_others() {
    let told = |session, day, sign, answer| SignAnswered { session, day: date(2026, 3, day), sign, answer };
    let signs = vec![
        told(1, 1, SwallowSign::Chest, SignAnswer::Yes),
        told(2, 8, SwallowSign::Cough, SignAnswer::Yes),
        told(2, 8, SwallowSign::WetVoice, SignAnswer::No),
        told(2, 8, SwallowSign::Weight, SignAnswer::PassedOver),
        told(3, 15, SwallowSign::Cough, SignAnswer::NotSure),
        told(3, 15, SwallowSign::WetVoice, SignAnswer::Other("perhaps".into())),
    ];
    let practised = Practised { signs, ..Practised::default() };
    let cough = Sign { sign: SwallowSign::Cough, yes: 1, not_sure: 1, last: date(2026, 3, 15) };
    assert_eq!(super::signs(&practised, WINDOW), [cough]);
}

#[test]
fn missed_days_are_added_up_by_their_reason() {
    let told = |day, days, reason| DaysMissed { session: 1, day: date(2026, 3, day), days, reason };
    let days_missed = vec![
        told(8, 1, Some(MissedReason::Forgot)),
        told(15, 2, Some(MissedReason::Tired)),
        told(22, 3, None),
        told(29, 1, Some(MissedReason::Tired)),
    ];
    let practised = Practised { days_missed, ..Practised::default() };
    let of = |reason, days, day| MissedFor { reason, days, last: date(2026, 3, day) };
    assert_eq!(missed_for(&practised, WINDOW), [of(MissedReason::Tired, 3, 29), of(MissedReason::Forgot, 1, 8)]);
}
