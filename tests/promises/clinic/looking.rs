//! The caseload says who needs attention and why, and nothing twice.

use super::clinic_world::{Home, MIC, Mic, Practice, daily};
use super::{Engine, adopt};
use clinic::{Clinic, Reason, ReasonKind, Standing, reason_text};
use handover::HandedSession;
use jiff::civil::{Date, date};
use session::{Fact, LevelCalibration};

pub(super) fn suite(engine: &Engine) {
    the_caseload_says_who_and_why(engine);
    what_was_seen_is_not_told_again(engine);
}

fn reasons(clinic: &mut Clinic, today: Date) -> Vec<(String, Vec<ReasonKind>)> {
    let standings = clinic.caseload(today, None).expect("a caseload");
    let kinds = |standing: &Standing| standing.attention.reasons.iter().map(Reason::kind).collect();
    standings.iter().map(|standing| (format!("{}@{}", standing.digest.name, standing.digest.desk), kinds(standing))).collect()
}

/// One client for each reason, in an order that is not that of the caseload.
fn the_caseload_says_who_and_why(engine: &Engine) {
    let mut clinic = engine.clinic("caseload");
    let names = ["well", "clock", "mic", "old", "left", "fell", "half", "silent", "away", "dizzy", "new", "helped", "chest"];
    let homes: Vec<Home> = (1..)
        .zip(names)
        .map(|(number, name)| Home::made(number, name, if name == "old" { "2025-12-01T08:00:00Z" } else { "2026-03-01T08:00:00Z" }))
        .collect();
    adopt(&mut clinic, 1, &homes.iter().collect::<Vec<_>>());
    let loud = Mic { auto_gain: true, ..MIC };
    let said = |reason: &str| Fact::SafetyStop { exercise_before: None, exercise: Some("long-ah".into()), reason: reason.into() };
    let left_out = Fact::StepLeftOut { exercise: "head-lift".into(), reason: "no spoken agreement".into() };
    let one_more = |fact: Fact| {
        [daily(1, "2026-03-09", 6, 1, 12.0, &MIC), vec![Practice::on(7, "2026-03-15", 12.0, &MIC).with(fact).whole()]].concat()
    };
    for home in &homes {
        let (made, sessions): (&str, Vec<HandedSession>) = match home.client.as_str() {
            "clock" => ("2026-03-15", [daily(1, "2026-03-09", 7, 1, 12.0, &MIC), daily(8, "2031-01-01", 1, 1, 12.0, &MIC)].concat()),
            "mic" => ("2026-03-15", daily(1, "2026-03-09", 7, 1, 12.0, &loud)),
            "left" => ("2026-03-15", one_more(left_out.clone())),
            "fell" => ("2026-03-15", [daily(1, "2026-03-02", 6, 1, 20.0, &MIC), daily(7, "2026-03-08", 8, 1, 8.0, &MIC)].concat()),
            "half" => ("2026-03-15", daily(1, "2026-03-02", 5, 3, 12.0, &MIC)),
            "silent" => ("2026-02-20", daily(1, "2026-02-10", 11, 1, 12.0, &MIC)),
            "away" => ("2026-03-15", daily(1, "2026-03-02", 5, 1, 12.0, &MIC)),
            "dizzy" => ("2026-03-15", one_more(said("dizzy"))),
            "chest" => ("2026-03-15", one_more(said("chest pain"))),
            "helped" => ("2026-03-15", one_more(said("help"))),
            "new" => continue,
            _ => ("2026-03-15", daily(1, "2026-03-09", 7, 1, 12.0, &MIC)),
        };
        clinic.import(&home.file(made, &sessions)).expect(&home.client);
    }
    use ReasonKind::{Adherence, Clock, Decline, LeftOut, Microphone, NoPractice, NoResults, Programme, Safety};
    let today = date(2026, 3, 16);
    let found = reasons(&mut clinic, today);
    let expected = [
        ("chest", vec![Safety]),
        ("dizzy", vec![Safety]),
        ("helped", vec![Safety]),
        ("away", vec![NoPractice, Adherence]),
        ("silent", vec![NoResults]),
        ("new", vec![NoResults]),
        ("half", vec![Adherence]),
        ("fell", vec![Decline]),
        ("left", vec![LeftOut]),
        ("old", vec![Programme]),
        ("mic", vec![Microphone]),
        ("clock", vec![Clock]),
        ("well", vec![]),
    ];
    assert_eq!(found, expected.map(|(name, kinds)| (format!("{name}@desk 1"), kinds)));
    let all = clinic.caseload(today, None).expect("a caseload");
    let text = |name: &str| {
        all.iter()
            .find(|standing| standing.digest.name == name)
            .map(|standing| standing.attention.reasons.iter().map(reason_text).collect::<Vec<_>>().join("\n"))
            .expect(name)
    };
    // Each figure with what it rests on.
    for (name, words) in [
        ("chest", vec!["since the last look: chest pain once", "2026-03-15"]),
        ("dizzy", vec!["dizzy once", "2026-03-15"]),
        ("away", vec!["9 days", "2026-03-15", "planned every day", "2026-03-06", "38 % (low; 15 of 39 repetitions)"]),
        ("silent", vec!["24 days", "2026-02-20"]),
        ("new", vec!["no results yet", "15 days", "2026-03-01"]),
        ("half", vec!["(low;", "days with a plan count"]),
        ("fell", vec!["hold time of long-ah from 20", "own scatter ±", " s"]),
        ("left", vec!["head-lift", "once"]),
        ("old", vec!["15 weeks", "2025-12-01"]),
        ("mic", vec!["changes its own volume"]),
        ("clock", vec!["1 practice"]),
    ] {
        for word in words {
            assert!(text(name).contains(word), "{name}: {word}: {}", text(name));
        }
    }
    let of_decline = clinic.caseload(today, Some(Decline)).expect("a caseload");
    assert_eq!(of_decline.iter().map(|standing| standing.digest.name.as_str()).collect::<Vec<_>>(), ["fell"]);
    // The figures of the sheet say what they refer to.
    let client = clinic.client("fell").expect("is there");
    let sheet = clinic.sheet(client, today).expect("a sheet");
    let level = sheet.measures.iter().find(|measure| measure.measure == "level-db").expect("levels");
    assert_eq!(level.label, "A-weighted, energy-mean, 30 cm, SPL, calibrated by sound level meter");
    assert_eq!(sheet.days.len(), 14);
}

fn what_was_seen_is_not_told_again(engine: &Engine) {
    let mut clinic = engine.clinic("seen");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let said = |number, day: &str, reason: &str| {
        Practice::on(number, day, 12.0, &MIC)
            .with(Fact::SafetyStop { exercise_before: None, exercise: None, reason: reason.into() })
            .whole()
    };
    clinic.import(&home.file("2026-03-10", &[said(1, "2026-03-02", "pain")])).expect("imports");
    let (client, today) = (clinic.client("grandpa").expect("is there"), date(2026, 3, 11));
    let kinds = |clinic: &mut Clinic| reasons(clinic, today)[0].1.clone();
    assert_eq!(kinds(&mut clinic), [ReasonKind::Safety, ReasonKind::NoPractice, ReasonKind::Adherence]);
    let now = "2026-03-11T09:00:00+01:00[Europe/Berlin]".parse().expect("a time");
    let seen = clinic.seen(client, &now, Some("rang, is well")).expect("notes");
    assert_eq!(seen.iter().map(|event| event.what.as_str()).collect::<Vec<_>>(), ["pain"]);
    assert!(kinds(&mut clinic).is_empty(), "{:?}", kinds(&mut clinic));
    let digest = clinic.sheet(client, today).expect("a sheet").digest;
    assert_eq!((digest.seen_day, digest.seen_note.as_deref()), (Some(today), Some("rang, is well")));
    // The same again changes nothing; an earlier practice that comes late is news.
    clinic.import(&home.file("2026-03-10", &[said(1, "2026-03-02", "pain")])).expect("imports");
    assert!(kinds(&mut clinic).is_empty());
    clinic.import(&home.file("2026-03-10", &[said(2, "2026-03-03", "dizzy")])).expect("imports");
    let digest = clinic.sheet(client, today).expect("a sheet").digest;
    assert_eq!((digest.said.dizzy, digest.said.pain), (1, 0));
    assert_eq!(kinds(&mut clinic)[0], ReasonKind::Safety);
    // What time alone brings comes again.
    clinic.seen(client, &now, None).expect("notes");
    let later = reasons(&mut clinic, date(2026, 4, 1));
    assert_eq!(later[0].1, [ReasonKind::NoResults]);
    assert!(clinic.seen(client + 100, &now, None).is_err());
}

/// A calibrated microphone that is exchanged for another is told, and its levels are not compared.
#[test]
fn another_microphone_is_told_and_not_compared() {
    let engine = Engine::sqlite();
    let mut clinic = engine.clinic("mic");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let other = Mic { name: "Another microphone", calibration: LevelCalibration::None, auto_gain: false };
    let sessions = [daily(1, "2026-03-02", 6, 1, 12.0, &MIC), daily(7, "2026-03-08", 6, 1, 12.0, &other)].concat();
    clinic.import(&home.file("2026-03-13", &sessions)).expect("imports");
    let sheet = clinic.sheet(1, date(2026, 3, 13)).expect("a sheet");
    assert_eq!((sheet.digest.microphone.word(), sheet.digest.microphone_since), ("changed", Some(date(2026, 3, 8))));
    let level = sheet.measures.iter().find(|measure| measure.measure == "level-db").expect("levels");
    assert_eq!((level.since, level.trials), (date(2026, 3, 8), 18));
    assert!(level.label.contains("relative"), "{}", level.label);
}
