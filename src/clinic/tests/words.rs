use super::*;

#[test]
fn a_level_is_told_with_what_it_refers_to() {
    let conditions = Conditions { level_weighting: Some("A".into()), time_weighting: Some("energy-mean".into()), ..Conditions::default() };
    assert_eq!(super::conditions(&conditions, Measure::LevelDb), "A-weighted, energy-mean, distance unknown, relative, not calibrated");
    assert_eq!(super::conditions(&conditions, Measure::HoldS), "");
}
