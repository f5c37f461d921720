//! The order in which files come, and how often, changes nothing.

use super::clinic_world::{Home, MIC, Practice};
use super::postgres_server::Server;
use super::{Engine, adopt};
use clinic::{Arriving, Clinic};
use handover::HandedSession;
use proptest::prelude::*;
use session::Fact;

/// Three clients, two of one name, whose practices grow over several files.
fn growing() -> (Vec<(u8, Home)>, Vec<Arriving>) {
    let homes = vec![(1, Home::new(1, "grandpa")), (2, Home::new(2, "grandpa")), (1, Home::new(3, "grandma"))];
    let mut files = Vec::new();
    for (index, (_, home)) in (0_i64..).zip(&homes) {
        let unwell = Fact::SafetyStop { exercise_before: None, exercise: None, reason: "pain".into() };
        let noise = Fact::HoldInNoise { exercise: "long-ah".into(), over_room_db: 2.0 };
        let practices: Vec<Practice> = (1..=4)
            .map(|number| {
                let practice = Practice::on(number, &format!("2026-03-0{}", number + 1), 12.0 + index as f64, &MIC).under(home);
                match number {
                    2 => practice.with(unwell.clone()),
                    3 => practice.with(noise.clone()),
                    _ => practice,
                }
            })
            .collect();
        let length = practices[2].entries.len();
        files.push(home.file("2026-03-03", &[practices[0].whole(), practices[1].cut(&[5])]));
        files.push(home.file("2026-03-04", &[practices[1].whole_after(5), practices[2].cut(&[6])]));
        files.push(home.file("2026-03-05", &[practices[2].cut(&[6, length - 6]), practices[3].whole()]));
        files.push(home.file("2026-03-06", &[practices[0].whole(), practices[2].cut(&[6, 1])]));
    }
    (homes, files)
}

impl Practice {
    /// Interrupted after so many entries and then gone on with to its end.
    fn whole_after(&self, first: usize) -> HandedSession {
        self.cut(&[first, self.entries.len() - first])
    }
}

fn content_of(clinic: &mut Clinic, homes: &[(u8, Home)], files: &[&Arriving]) -> String {
    for desk in [1, 2] {
        let of_desk: Vec<&Home> = homes.iter().filter(|(of, _)| *of == desk).map(|(_, home)| home).collect();
        adopt(clinic, desk, &of_desk);
    }
    for file in files {
        clinic.import(file).expect("imports");
    }
    clinic.content().expect("reads")
}

#[test]
fn any_order_and_repetition_of_files_gives_the_same_database() {
    let (homes, files) = growing();
    let engine = Engine::sqlite();
    let all: Vec<&Arriving> = files.iter().collect();
    let expected = content_of(&mut engine.clinic("expected"), &homes, &all);
    assert!(expected.contains("in-noise") && expected.contains("pain"), "{expected}");
    let number = std::cell::Cell::new(0);
    let orders = (proptest::collection::vec(0..files.len(), 0..8), Just((0..files.len()).collect::<Vec<_>>()).prop_shuffle());
    proptest!(ProptestConfig::with_cases(12), |((again, order) in orders)| {
        let sequence: Vec<&Arriving> = again.iter().chain(&order).map(|index| &files[*index]).collect();
        number.set(number.get() + 1);
        let content = content_of(&mut engine.clinic(&format!("order{}", number.get())), &homes, &sequence);
        prop_assert_eq!(&content, &expected);
    });
    // And on the other engine the very same content.
    let Some(server) = Server::start() else { return };
    let mut reversed = all.clone();
    reversed.reverse();
    let engine = Engine::Postgres(server);
    assert_eq!(content_of(&mut engine.clinic("one"), &homes, &all), expected);
    assert_eq!(content_of(&mut engine.clinic("other"), &homes, &reversed), expected);
}
