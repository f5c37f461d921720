use super::*;

fn led(days: &[&str]) -> Vec<Led> {
    let began = |day: &str| format!("{day}:00[Europe/Berlin]").parse().expect("a time in a test");
    days.iter().zip(1..).map(|(day, session)| Led { session, began: began(day), here: true }).collect()
}

fn wrong(days: &[&str]) -> (Vec<usize>, usize) {
    let (wrong, jumps) = misdated(&led(days), Date::constant(2026, 3, 20));
    (wrong.iter().enumerate().filter(|(_, wrong)| **wrong).map(|(index, _)| index).collect(), jumps.len())
}

#[test]
fn a_clock_that_jumped_back_or_ahead_is_found() {
    let sound = ["2026-03-02T18:30", "2026-03-03T18:30", "2026-03-04T18:30", "2026-03-05T18:30"];
    assert_eq!(wrong(&sound), (vec![], 0));
    assert_eq!(wrong(&[sound[0], sound[1], "1970-01-01T00:05", sound[2], sound[3]]), (vec![2], 1), "before the program existed");
    assert_eq!(wrong(&[sound[0], sound[1], "2025-06-01T00:05", sound[2], sound[3]]), (vec![2], 1), "out of the order");
    assert_eq!(wrong(&[sound[0], "2027-06-01T00:05", sound[2], sound[3]]), (vec![1], 1), "after today");
    assert_eq!(wrong(&[sound[0], "2026-03-19T00:05", sound[1], sound[2], sound[3]]), (vec![1], 1), "ahead, and no later than today");
    assert_eq!(wrong(&[sound[0], "2026-03-02T17:31", sound[1]]), (vec![], 1), "an hour back is told, and believed");
}

#[test]
fn where_all_is_out_of_order_the_order_is_wrong() {
    assert_eq!(
        wrong(&["2026-03-10T18:30", "2026-03-08T18:30", "2026-03-06T18:30", "2026-03-04T18:30", "2026-03-02T18:30"]).0,
        Vec::<usize>::new()
    );
    let mut received = led(&["2026-03-10T18:30", "2026-03-02T18:30"]);
    received[1].here = false;
    assert_eq!(misdated(&received, Date::constant(2026, 3, 20)), (vec![false, false], vec![]), "received ones come when they come");
}
