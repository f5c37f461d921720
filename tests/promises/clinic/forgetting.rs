//! Who is forgotten stays so.

use super::clinic_world::{Home, MIC, daily, desk_key};
use super::{Engine, adopt};

pub(super) fn suite(engine: &Engine) {
    who_is_forgotten_stays_so(engine);
}

fn who_is_forgotten_stays_so(engine: &Engine) {
    let mut clinic = engine.clinic("forgotten");
    let (one, two) = (Home::new(1, "grandpa"), Home::new(2, "grandma"));
    adopt(&mut clinic, 1, &[&two]);
    let of_two = two.file("2026-03-05", &daily(1, "2026-03-02", 3, 1, 12.0, &MIC));
    clinic.import(&of_two).expect("imports");
    let without = clinic.content().expect("reads");
    adopt(&mut clinic, 1, &[&one, &two]);
    let of_one = one.file("2026-03-05", &daily(1, "2026-03-02", 3, 1, 12.0, &MIC));
    let client = clinic.import(&of_one).expect("imports").client;
    clinic.seen(client, &"2026-03-11T09:00:00+01:00[Europe/Berlin]".parse().expect("a time"), Some("a note")).expect("notes");
    clinic.forget(client).expect("forgets");
    let left = clinic.content().expect("reads");
    let forgotten = |line: &&str| line.starts_with("forgotten:");
    assert_eq!(left.lines().filter(|line| !forgotten(line)).collect::<Vec<_>>(), without.lines().collect::<Vec<_>>());
    assert!(!left.contains("grandpa") && left.lines().filter(forgotten).count() == 1, "{left}");
    assert!(clinic.import(&of_one).expect_err("forgotten").to_string().contains("forgotten"));
    let again = clinic.adopt(&desk_key(1), None, &[one.desk_package(), two.desk_package()]).expect("adopts");
    assert_eq!((again.forgotten, again.packages), (1, 0));
    assert_eq!(clinic.content().expect("reads"), left);
    assert!(clinic.forget(client).is_err());
    // A new package begins anew.
    let new = Home::made(3, "grandpa", "2026-04-01T08:00:00Z");
    adopt(&mut clinic, 1, &[&one, &two, &new]);
    assert_eq!(clinic.import(&new.file("2026-04-03", &daily(9, "2026-04-02", 1, 1, 9.0, &MIC))).expect("imports").new, 1);
}
