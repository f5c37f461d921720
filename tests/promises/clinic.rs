//! Promise: results of many clients come into one clinic database, once and never mixed, on SQLite and on PostgreSQL alike; the
//! caseload says who needs attention and why.

#[path = "../support/clinic_world.rs"]
mod clinic_world;
#[path = "../support/postgres_server.rs"]
mod postgres_server;
#[path = "../support/program.rs"]
mod program;

use clinic::{Address, Arriving, Clinic, ClinicError, Reason, ReasonKind, Standing, reason_text};
use clinic_world::{DAILY, Home, MIC, Mic, Practice, UNPLANNED, arriving, daily, desk_key};
use handover::{HandedSession, Kind, open, seal};
use jiff::civil::{Date, date};
use postgres_server::{PASSWORD, Server};
use program::{Place, err, out, output, tidecount};
use proptest::prelude::*;
use session::{Fact, LevelCalibration};
use std::collections::BTreeSet;
use std::path::Path;

/// New databases of one engine.
enum Engine {
    Sqlite(tempfile::TempDir),
    Postgres(Server),
}

impl Engine {
    fn sqlite() -> Self {
        Self::Sqlite(tempfile::tempdir().expect("a folder"))
    }

    fn address(&self, name: &str) -> Address {
        match self {
            Self::Sqlite(dir) => Address::File(dir.path().join(format!("{name}.sqlite"))),
            Self::Postgres(server) => Address::of(&server.database(name)).expect("an address"),
        }
    }

    fn clinic(&self, name: &str) -> Clinic {
        Clinic::open(&self.address(name)).expect("opens")
    }
}

fn adopt(clinic: &mut Clinic, desk: u8, homes: &[&Home]) {
    let packages: Vec<_> = homes.iter().map(|home| home.desk_package()).collect();
    clinic.adopt(&desk_key(desk), Some(&format!("desk {desk}")), &packages).expect("adopts");
}

fn reasons(clinic: &mut Clinic, today: Date) -> Vec<(String, Vec<ReasonKind>)> {
    let standings = clinic.caseload(today, None).expect("a caseload");
    let kinds = |standing: &Standing| standing.attention.reasons.iter().map(Reason::kind).collect();
    standings.iter().map(|standing| (format!("{}@{}", standing.digest.name, standing.digest.desk), kinds(standing))).collect()
}

/// Everything that must hold for both engines.
fn suite(engine: &Engine) {
    the_same_twice_adds_nothing(engine);
    a_later_file_brings_more_and_an_earlier_one_changes_nothing(engine);
    what_differs_is_refused_whole(engine);
    namesakes_are_kept_apart(engine);
    results_of_others_are_refused(engine);
    the_caseload_says_who_and_why(engine);
    what_was_seen_is_not_told_again(engine);
    who_is_forgotten_stays_so(engine);
    two_desks_at_once(engine);
    hostile_texts_are_kept_as_they_are(engine);
}

#[test]
fn sqlite_keeps_its_promises() {
    suite(&Engine::sqlite());
}

#[test]
fn postgres_keeps_its_promises() {
    let Some(server) = Server::start() else { return };
    let engine = Engine::Postgres(server);
    suite(&engine);
    let Engine::Postgres(server) = engine else { return };
    foreign_and_newer_databases_are_left_alone(&server);
    certificates_are_checked(&server);
    a_server_that_is_gone_loses_nothing(server);
}

fn the_same_twice_adds_nothing(engine: &Engine) {
    let mut clinic = engine.clinic("twice");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let file = home.file("2026-03-05", &daily(1, "2026-03-02", 3, 1, 12.0, &MIC));
    let first = clinic.import(&file).expect("imports");
    assert_eq!((first.new, first.more, first.known, first.trials), (3, 0, 0, 9));
    let content = clinic.content().expect("reads");
    assert!(content.lines().filter(|line| line.starts_with("trial:")).count() == 9, "{content}");
    let again = clinic.import(&file).expect("imports");
    assert_eq!((again.new, again.more, again.known, again.trials), (0, 0, 3, 0));
    // The same practices in another file, made on the same day: only the file is new.
    let overlapping = home.file("2026-03-05", &daily(1, "2026-03-02", 2, 1, 12.0, &MIC));
    assert_eq!(clinic.import(&overlapping).expect("imports").known, 2);
    let without_arrivals = |text: &str| text.lines().filter(|line| !line.starts_with("arrival:")).map(str::to_owned).collect::<Vec<_>>();
    assert_eq!(without_arrivals(&clinic.content().expect("reads")), without_arrivals(&content));
    // Adopting again, too.
    let before = clinic.content().expect("reads");
    adopt(&mut clinic, 1, &[&home]);
    assert_eq!(clinic.content().expect("reads"), before);
}

fn a_later_file_brings_more_and_an_earlier_one_changes_nothing(engine: &Engine) {
    let home = Home::new(1, "grandpa");
    let practice =
        Practice::on(4, "2026-03-02", 12.0, &MIC).with(Fact::SafetyStop { exercise: Some("long-ah".into()), reason: "dizzy".into() });
    let length = practice.entries.len();
    let versions = [
        home.file("2026-03-02", &[practice.cut(&[4])]),
        home.file("2026-03-03", &[practice.cut(&[4, 2])]),
        home.file("2026-03-04", &[practice.cut(&[4, length - 4])]),
    ];
    let mut forwards = engine.clinic("forwards");
    adopt(&mut forwards, 1, &[&home]);
    let came: Vec<_> = versions.iter().map(|file| forwards.import(file).expect("imports")).collect();
    assert_eq!(came.iter().map(|one| (one.new, one.more)).collect::<Vec<_>>(), [(1, 0), (0, 1), (0, 1)]);
    let mut backwards = engine.clinic("backwards");
    adopt(&mut backwards, 1, &[&home]);
    let came: Vec<_> = versions.iter().rev().map(|file| backwards.import(file).expect("imports")).collect();
    assert_eq!(came.iter().map(|one| (one.new, one.known)).collect::<Vec<_>>(), [(1, 0), (0, 1), (0, 1)]);
    assert_eq!(forwards.content().expect("reads"), backwards.content().expect("reads"));
    let sheet = forwards.sheet(1, date(2026, 3, 5)).expect("a sheet");
    assert_eq!(
        (sheet.sessions.len(), sheet.sessions[0].trials, sheet.sessions[0].end_reason.as_deref(), sheet.digest.dizzy),
        (1, 3, Some("completed"), 1)
    );
}

fn what_differs_is_refused_whole(engine: &Engine) {
    let mut clinic = engine.clinic("differs");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let first = Practice::on(1, "2026-03-02", 12.0, &MIC);
    clinic.import(&home.file("2026-03-02", &[first.whole()])).expect("imports");
    let before = clinic.content().expect("reads");
    let new = Practice::on(2, "2026-03-03", 12.0, &MIC).whole();
    let other_entries = Practice::on(1, "2026-03-02", 13.0, &MIC).whole();
    let mut other_routine = first.whole();
    other_routine.routine_text = UNPLANNED.into();
    let mut other_end = first.whole();
    other_end.end_reason = Some("finished".into());
    for (what, other) in [("entries", other_entries), ("routine", other_routine), ("end", other_end)] {
        let error = clinic.import(&home.file("2026-03-04", &[new.clone(), other])).expect_err(what).to_string();
        assert!(
            error.contains(what)
                && error.contains("2026-03-02")
                && error.contains("--since")
                && error.contains("Nothing of the file was added"),
            "{error}"
        );
        assert_eq!(clinic.content().expect("reads"), before, "{what}");
    }
}

fn namesakes_are_kept_apart(engine: &Engine) {
    let mut clinic = engine.clinic("namesakes");
    // Two desks with a client of the same name, one of them with a second package.
    let (one, two, one_later) = (Home::new(1, "grandpa"), Home::new(2, "grandpa"), Home::made(3, "grandpa", "2026-03-10T08:00:00Z"));
    adopt(&mut clinic, 1, &[&one]);
    adopt(&mut clinic, 2, &[&two]);
    adopt(&mut clinic, 1, &[&one, &one_later]);
    let (of_one, of_two, of_later) = (
        clinic.import(&one.file("2026-03-05", &daily(1, "2026-03-02", 3, 1, 12.0, &MIC))).expect("imports"),
        // The very same practices, as it were: numbers and times are no one's own.
        clinic.import(&two.file("2026-03-05", &daily(1, "2026-03-02", 2, 1, 20.0, &MIC))).expect("imports"),
        clinic.import(&one_later.file("2026-03-12", &daily(4, "2026-03-11", 1, 1, 12.0, &MIC))).expect("imports"),
    );
    assert_eq!((of_one.client, &of_one.desk), (of_later.client, &of_later.desk));
    assert_ne!(of_one.client, of_two.client);
    let sheets = [of_one.client, of_two.client].map(|client| clinic.sheet(client, date(2026, 3, 13)).expect("a sheet").digest);
    assert_eq!(sheets.map(|digest| (digest.sessions, digest.trials)), [(4, 12), (2, 6)]);
    let error = clinic.client("grandpa").expect_err("two").to_string();
    assert!(error.contains("desk 1") && error.contains("desk 2") && error.contains('#'), "{error}");
    assert_eq!(clinic.client("grandpa@desk 2").expect("one"), of_two.client);
    assert_eq!(clinic.client(&format!("#{}", of_one.client)).expect("one"), of_one.client);
    // The name was given to somebody else at desk 2: its record knows nothing of the packages before.
    let somebody = Home::made(4, "grandpa", "2026-04-01T08:00:00Z");
    let adopted = clinic.adopt(&desk_key(2), None, &[somebody.desk_package()]).expect("adopts");
    assert_eq!((adopted.clients.len(), adopted.namesakes.len()), (1, 1));
    let new = clinic.import(&somebody.file("2026-04-03", &daily(1, "2026-04-02", 1, 1, 9.0, &MIC))).expect("imports");
    assert!(new.client != of_two.client && new.client != of_one.client);
}

fn results_of_others_are_refused(engine: &Engine) {
    let mut clinic = engine.clinic("others");
    let (one, two, stranger) = (Home::new(1, "grandpa"), Home::new(2, "grandma"), Home::new(9, "grandpa"));
    adopt(&mut clinic, 1, &[&one, &two]);
    clinic.import(&one.file("2026-03-02", &[Practice::on(1, "2026-03-02", 12.0, &MIC).whole()])).expect("imports");
    let before = clinic.content().expect("reads");
    let refused = |clinic: &mut Clinic, file: &Arriving, word: &str| {
        let error = clinic.import(file).expect_err(word).to_string();
        assert!(error.contains(word), "{word}: {error}");
        assert_eq!(clinic.content().expect("reads"), before, "{word}");
    };
    let practice = || vec![Practice::on(2, "2026-03-03", 12.0, &MIC).whole()];
    // A key that nobody knows here.
    refused(&mut clinic, &stranger.file("2026-03-03", &practice()), "clinic adopt");
    // Grandma's key with grandpa's name or package.
    let forged = |package: &str, client: &str| Home { package: package.into(), client: client.into(), ..two.clone() };
    for forged in [
        forged(&two.package, "grandpa"),
        forged(&one.package, "grandma"),
        forged(&one.package, "grandpa"),
        forged("00000000000000ff", "grandma"),
    ] {
        refused(&mut clinic, &forged.file("2026-03-03", &practice()), "another package or client");
    }
    // Grandma's file with a practice that was led under grandpa's package: swapped on the way, or the folder of another.
    let swapped = Practice::on(2, "2026-03-03", 12.0, &MIC).under(&one).whole();
    refused(&mut clinic, &two.file("2026-03-03", &[swapped]), "another client");
    // A practice twice in one file.
    let twice = [practice(), practice()].concat();
    let sealed = one.sealed("2026-03-03", &twice);
    let error = Arriving::read(&open(Kind::Results, sealed.as_bytes()).expect("whole")).expect_err("twice").to_string();
    assert!(error.contains("twice"), "{error}");
    // Packages that share a number or a key.
    for same in [Home { key: stranger.key.clone(), ..one.clone() }, Home { package: stranger.package.clone(), ..one.clone() }] {
        let error = clinic.adopt(&desk_key(2), None, &[same.desk_package()]).expect_err("shared").to_string();
        assert!(error.contains("known already"), "{error}");
    }
    assert_eq!(clinic.content().expect("reads"), before);
}

/// One client for each reason, in an order that is not that of the caseload.
fn the_caseload_says_who_and_why(engine: &Engine) {
    let mut clinic = engine.clinic("caseload");
    let names = ["well", "clock", "mic", "old", "left", "fell", "half", "silent", "away", "dizzy", "new", "helped"];
    let homes: Vec<Home> = (1..)
        .zip(names)
        .map(|(number, name)| Home::made(number, name, if name == "old" { "2025-12-01T08:00:00Z" } else { "2026-03-01T08:00:00Z" }))
        .collect();
    adopt(&mut clinic, 1, &homes.iter().collect::<Vec<_>>());
    let loud = Mic { auto_gain: true, ..MIC };
    let said = |reason: &str| Fact::SafetyStop { exercise: Some("long-ah".into()), reason: reason.into() };
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
        Practice::on(number, day, 12.0, &MIC).with(Fact::SafetyStop { exercise: None, reason: reason.into() }).whole()
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
    assert_eq!((digest.dizzy, digest.pain), (1, 0));
    assert_eq!(kinds(&mut clinic)[0], ReasonKind::Safety);
    // What time alone brings comes again.
    clinic.seen(client, &now, None).expect("notes");
    let later = reasons(&mut clinic, date(2026, 4, 1));
    assert_eq!(later[0].1, [ReasonKind::NoResults]);
    assert!(clinic.seen(client + 100, &now, None).is_err());
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

/// Both desks import everything, in opposite orders and at the same time.
fn two_desks_at_once(engine: &Engine) {
    let homes: Vec<Home> = (1..=4).map(|number| Home::new(number, "client")).collect();
    let mut files: Vec<Arriving> = Vec::new();
    for home in &homes {
        files.push(home.file("2026-03-05", &daily(1, "2026-03-02", 3, 1, 12.0, &MIC)));
        files.push(home.file("2026-03-08", &daily(2, "2026-03-03", 4, 1, 12.0, &MIC)));
    }
    let mut alone = engine.clinic("alone");
    for (desk, home) in (1..).zip(&homes) {
        adopt(&mut alone, desk, &[home]);
    }
    for file in &files {
        // Two of the four days are other practices of the same day and are refused or kept alike in any order.
        alone.import(file).expect("imports");
    }
    let address = engine.address("together");
    let run = |reverse: bool| {
        let (address, homes, mut files) = (address.clone(), homes.clone(), files.clone());
        std::thread::spawn(move || {
            let mut clinic = Clinic::open(&address).expect("opens");
            let mut desks: Vec<(u8, &Home)> = (1..).zip(&homes).collect();
            if reverse {
                desks.reverse();
                files.reverse();
            }
            for (desk, home) in desks {
                adopt(&mut clinic, desk, &[home]);
            }
            for file in &files {
                clinic.import(file).expect("imports");
            }
        })
    };
    for desk in [run(false), run(true), run(false)] {
        desk.join().expect("a desk");
    }
    let mut together = Clinic::open(&address).expect("opens");
    assert_eq!(together.content().expect("reads"), alone.content().expect("reads"));
}

fn hostile_texts_are_kept_as_they_are(engine: &Engine) {
    let mut clinic = engine.clinic("hostile");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let text = "'); DROP TABLE trial; --\u{0}\u{202e}\u{1b}[2J $1 ?1 %s";
    let fact = Fact::SafetyStop { exercise: Some(text.into()), reason: text.into() };
    let mut session = Practice::on(1, "2026-03-02", 12.0, &MIC).with(fact).whole();
    (session.routine_text, session.software) = (text.into(), text.into());
    let file = home.file("2026-03-02", &[session]);
    assert_eq!(clinic.import(&file).expect("imports").new, 1);
    assert_eq!(clinic.import(&file).expect("imports").known, 1);
    let number = clinic.client("grandpa").expect("is there");
    let sheet = clinic.sheet(number, date(2026, 3, 3)).expect("a sheet");
    // What PostgreSQL cannot keep is replaced on both.
    assert_eq!(sheet.events[0].0.exercise.as_deref(), Some(text.replace('\0', "\u{FFFD}").as_str()));
    // Unknown words of a newer version are told as such.
    let mut newer = Practice::on(2, "2026-03-03", 12.0, &MIC).whole();
    newer.parts[0].entries[1] = serde_json::value::RawValue::from_string("{\"at_s\":1.0,\"kind\":\"mind_read\"}".into()).expect("JSON");
    newer.software = "tidecount 9.0.0".into();
    let sealed = home.sealed("2026-03-04", &[newer]);
    let error = Arriving::read(&open(Kind::Results, sealed.as_bytes()).expect("whole")).expect_err("unknown").to_string();
    assert!(error.contains("entry 2") && error.contains("tidecount 9.0.0") && error.contains("2026-03-03"), "{error}");
}

/// Three clients, two of one name, whose practices grow over several files.
fn growing() -> (Vec<(u8, Home)>, Vec<Arriving>) {
    let homes = vec![(1, Home::new(1, "grandpa")), (2, Home::new(2, "grandpa")), (1, Home::new(3, "grandma"))];
    let mut files = Vec::new();
    for (index, (_, home)) in (0_i64..).zip(&homes) {
        let unwell = Fact::SafetyStop { exercise: None, reason: "pain".into() };
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

fn foreign_and_newer_databases_are_left_alone(server: &Server) {
    let open = |name: &str| Clinic::open(&Address::of(&server.url(name)).expect("an address")).map(|_| ());
    server.database("foreign");
    server.plain_in("foreign", "CREATE SCHEMA tidecount_clinic; CREATE TABLE tidecount_clinic.things (a int)").expect("runs");
    assert!(matches!(open("foreign"), Err(ClinicError::Foreign { .. })));
    server.database("newer");
    open("newer").expect("opens");
    server.plain_in("newer", "UPDATE tidecount_clinic.about SET form = 99").expect("runs");
    assert!(matches!(open("newer"), Err(ClinicError::Newer { found: 99, .. })));
    server.plain("CREATE DATABASE latin ENCODING 'LATIN1' TEMPLATE template0").expect("runs");
    let error = open("latin").expect_err("another encoding").to_string();
    assert!(error.contains("UTF8"), "{error}");
    // A database that holds other things besides is used all the same, and they are let be.
    server.database("shared");
    server.plain_in("shared", "CREATE TABLE client (mine int)").expect("runs");
    open("shared").expect("opens");
    server.plain_in("shared", "SELECT mine FROM client").expect("is as it was");
    // Looking makes nothing.
    server.database("empty");
    assert!(matches!(Clinic::open_existing(&Address::of(&server.url("empty")).expect("an address")), Err(ClinicError::Absent { .. })));
    // Over loopback the password counts, and no message holds it.
    let named = |password: &str| Clinic::open(&Address::of(&server.tcp_url(password, "shared")).expect("an address"));
    named(PASSWORD).expect("opens");
    for wrong in [
        named("wr0ng-one").expect_err("wrong"),
        Clinic::open(&Address::of(&server.tcp_url(PASSWORD, "absent")).expect("an address")).expect_err("absent"),
    ] {
        let text = format!("{wrong} {wrong:?}");
        assert!(!text.contains("wr0ng") && !text.contains(PASSWORD) && text.contains("postgres://desk@127.0.0.1"), "{text}");
    }
    // A server without encryption is refused where encryption is asked for.
    let asked = format!("{}?sslmode=require", server.tcp_url(PASSWORD, "shared"));
    assert!(matches!(Clinic::open(&Address::of(&asked).expect("an address")), Err(ClinicError::Lost { .. })));
}

fn certificates_are_checked(server: &Server) {
    let Some(certificate) = server.speak_tls() else {
        skipping::skip(skipping::Missing::Installed, "no openssl to make a certificate");
        return;
    };
    let url = server.tcp_url(PASSWORD, "shared").replace("127.0.0.1", "localhost");
    let open = |options: String| Clinic::open(&Address::of(&format!("{url}?{options}")).expect("an address"));
    let known = certificate.display();
    // The server takes a moment to read its settings again.
    let mut tries = 0;
    let done = loop {
        match open(format!("sslmode=verify-full&sslrootcert={known}")) {
            Err(ClinicError::Lost { .. }) if tries < 50 => std::thread::sleep(std::time::Duration::from_millis(100)),
            done => break done,
        }
        tries += 1;
    };
    let mut clinic = done.expect("the certificate is known");
    let mut encrypted = 0;
    let sql = "SELECT count(*) FROM pg_stat_ssl WHERE pid = pg_backend_pid() AND ssl";
    clinic.engine().each(sql, &[], &mut |row| row.int(0).map(|count| encrypted = count)).expect("reads");
    assert_eq!(encrypted, 1);
    let error = open("sslmode=require".to_owned()).expect_err("nobody knows the certificate").to_string();
    assert!(error.contains("certificate") && !error.contains(PASSWORD), "{error}");
    let error = Clinic::open(
        &Address::of(&format!("{}?sslmode=require&sslrootcert={known}", server.tcp_url(PASSWORD, "shared"))).expect("an address"),
    )
    .expect_err("another name");
    assert!(matches!(error, ClinicError::Lost { .. }), "{error}");
    let error = open("sslmode=require&sslrootcert=%2Fabsent.pem".to_owned()).expect_err("no such file").to_string();
    assert!(error.contains("/absent.pem"), "{error}");
}

fn a_server_that_is_gone_loses_nothing(mut server: Server) {
    let address = Address::of(&server.database("gone")).expect("an address");
    let mut clinic = Clinic::open(&address).expect("opens");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let (first, second) = (
        home.file("2026-03-05", &daily(1, "2026-03-02", 3, 1, 12.0, &MIC)),
        home.file("2026-03-06", &daily(4, "2026-03-05", 1, 1, 12.0, &MIC)),
    );
    clinic.import(&first).expect("imports");
    let before = clinic.content().expect("reads");
    server.kill();
    let error = clinic.import(&second).expect_err("the server is gone");
    assert!(matches!(error, ClinicError::Lost { .. }), "{error}");
    assert!(error.to_string().contains("nothing is lost"), "{error}");
    assert!(matches!(Clinic::open(&address), Err(ClinicError::Lost { .. })));
    server.go_on();
    // The same handle connects anew.
    assert_eq!(clinic.content().expect("reads"), before);
    assert_eq!(clinic.import(&second).expect("imports").new, 1);
}

#[test]
fn a_foreign_newer_damaged_or_locked_file_is_left_alone() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = |name: &str| dir.path().join(name);
    let open = |path: &Path| Clinic::open(&Address::File(path.to_path_buf())).map(|_| ());
    std::fs::write(path("text.sqlite"), "no database, but notes of somebody's own that must not be lost").expect("writes");
    let make = |name: &str, sql: &str| rusqlite::Connection::open(path(name)).and_then(|db| db.execute_batch(sql)).expect("makes");
    make("other.sqlite", "CREATE TABLE things (a)");
    make("record.sqlite", "CREATE TABLE client (a); PRAGMA application_id = 0x54494445; PRAGMA user_version = 3");
    for name in ["text.sqlite", "other.sqlite", "record.sqlite"] {
        let before = std::fs::read(path(name)).expect("reads");
        let error = open(&path(name)).expect_err(name);
        assert!(matches!(error, ClinicError::Foreign { .. }), "{name}: {error:?}");
        assert!(error.to_string().contains("left as it is") && error.to_string().contains("--clinic"), "{error}");
        assert_eq!(std::fs::read(path(name)).expect("reads"), before, "{name}");
    }
    open(&path("newer.sqlite")).expect("opens");
    make("newer.sqlite", "PRAGMA user_version = 99");
    assert!(matches!(open(&path("newer.sqlite")), Err(ClinicError::Newer { found: 99, .. })));
    assert!(matches!(Clinic::open_existing(&Address::File(path("absent.sqlite"))), Err(ClinicError::Absent { .. })));
    assert!(!path("absent.sqlite").exists());
    // Held by another program: told, and undone.
    let held = rusqlite::Connection::open(path("held.sqlite")).expect("opens");
    drop(Clinic::open(&Address::File(path("held.sqlite"))).expect("opens"));
    held.execute_batch("BEGIN EXCLUSIVE").expect("holds it");
    let mut waiting = Clinic::open(&Address::File(path("held.sqlite"))).expect("opens");
    waiting.engine().each("PRAGMA busy_timeout = 10", &[], &mut |_| Ok(())).expect("is impatient");
    let error = waiting.adopt(&desk_key(1), None, &[Home::new(1, "grandpa").desk_package()]).expect_err("held");
    assert!(matches!(error, ClinicError::Busy { .. }) && error.to_string().contains("Try again"), "{error:?}");
    held.execute_batch("COMMIT").expect("lets go");
    waiting.adopt(&desk_key(1), None, &[Home::new(1, "grandpa").desk_package()]).expect("adopts");
    // No room: the whole file is undone and can come again.
    let mut clinic = Clinic::open(&Address::File(path("full.sqlite"))).expect("opens");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let before = clinic.content().expect("reads");
    clinic.engine().each("PRAGMA max_page_count = 1", &[], &mut |_| Ok(())).expect("a small disk");
    let file = home.file("2026-03-31", &daily(1, "2025-12-02", 100, 1, 12.0, &MIC));
    let error = clinic.import(&file).expect_err("full");
    assert!(matches!(error, ClinicError::Unwritable { .. }) && error.to_string().contains("import the same files again"), "{error:?}");
    assert_eq!(clinic.content().expect("reads"), before);
    clinic.engine().each("PRAGMA max_page_count = 1000000", &[], &mut |_| Ok(())).expect("room");
    assert_eq!(clinic.import(&file).expect("imports").new, 100);
    // A copy is whole.
    let copy = path("copy.sqlite");
    clinic.backup(&copy).expect("copies");
    let content = clinic.content().expect("reads");
    assert_eq!(Clinic::open_existing(&Address::File(copy.clone())).expect("opens").content().expect("reads"), content);
    assert!(clinic.backup(&copy).expect_err("is there").to_string().contains("left as it is"));
}

/// Two desks with a record each and one clinic database, by the commands alone.
fn commands(clinic: &str) {
    let place = Place::new();
    place.write("evening.toml", DAILY);
    let hand = |at: &str, args: &[&str]| {
        let files = [".toml", ".tidepack", ".tideback"];
        let args =
            args.iter().map(|arg| if files.iter().any(|end| arg.ends_with(end)) { place.path(arg).into_os_string() } else { arg.into() });
        let done = output(tidecount(["hand"]).args(args).arg("--data").arg(place.path(at)));
        assert!(done.status.success(), "{}{}", out(&done), err(&done));
        out(&done)
    };
    let clinic_of = |at: &str, args: &[&str]| {
        let args = args
            .iter()
            .map(|arg| if arg.ends_with(".tideback") || arg.ends_with(".copy") { place.path(arg).into_os_string() } else { arg.into() });
        let address = if clinic.is_empty() { place.path("shared.sqlite").display().to_string() } else { clinic.to_owned() };
        let done = output(tidecount(["clinic"]).args(args).arg("--data").arg(place.path(at)).env("TIDECOUNT_CLINIC", address));
        (done.status.code(), out(&done), err(&done))
    };
    let fingerprint = |at: &str| hand(at, &["key"]).lines().find(|line| line.starts_with("    ")).expect("a fingerprint").trim().to_owned();
    // Looking at what is not there makes nothing and says what to do.
    let (code, _, text) = clinic_of("one", &["caseload"]);
    assert!(code == Some(1) && text.contains("clinic import"), "{text}");
    // Each desk has a client of the same name.
    for (desk, home, pack) in [("one", "home1", "1.tidepack"), ("two", "home2", "2.tidepack")] {
        hand(desk, &["make", "--client", "grandpa", "evening.toml", "-o", pack]);
        hand(home, &["take", pack, "--accept", &fingerprint(desk)]);
        let mut store = record::Store::open(&place.path(home)).expect("opens");
        let now = jiff::ZonedDateTime::now();
        let new = record::NewSession {
            client: "grandpa",
            routine_title: "Evening",
            routine_text: DAILY,
            source: record::Source::Live,
            software: "tidecount",
            started_at: &now,
        };
        let session = store.begin(&new).expect("begins");
        for entry in Practice::on(1, "2026-03-02", 12.0, &MIC).with(Fact::SafetyStop { exercise: None, reason: "dizzy".into() }).entries {
            store.append(session, &entry).expect("keeps");
        }
        drop(store);
        hand(home, &["results", "-o", &format!("{home}.tideback")]);
    }
    // Desk one imports both: its own goes in, the other's is refused until desk two has made its packages known.
    let broken = std::fs::read_to_string(place.path("home1.tideback")).expect("reads").replace("dizzy", "fuzzy");
    place.write("broken.tideback", &broken);
    let (code, said, text) =
        clinic_of("one", &["import", "broken.tideback", "home2.tideback", "absent.tideback", "home1.tideback", "--desk", "Desk one"]);
    assert_eq!(code, Some(1), "{said}{text}");
    assert!(said.contains("home1.tideback: grandpa of Desk one") && said.contains("Imported 1 of 4 files, refused 3"), "{said}");
    for (file, word) in [("broken.tideback", "damaged"), ("home2.tideback", "clinic adopt"), ("absent.tideback", "cannot be read")] {
        assert!(text.lines().any(|line| line.contains(file) && line.contains(word)), "{file}: {text}");
    }
    let (code, said, text) = clinic_of("two", &["adopt", "--desk", "Desk two"]);
    assert!(code == Some(0) && said.contains("grandpa"), "{said}{text}");
    let (code, said, _) = clinic_of("one", &["import", "home2.tideback", "home1.tideback"]);
    assert!(code == Some(0) && said.contains("of Desk two") && said.contains("1 new") && said.contains("1 already known"), "{said}");
    let (_, said, _) = clinic_of("one", &["caseload"]);
    assert!(said.contains("2 clients, 2 need attention") && said.matches("dizzy once").count() == 2, "{said}");
    let (_, said, _) = clinic_of("two", &["caseload", "--format", "json"]);
    let json: serde_json::Value = serde_json::from_str(&said).expect("JSON");
    let desks: BTreeSet<&str> =
        json["shown"].as_array().expect("clients").iter().map(|client| client["desk"].as_str().expect("a desk")).collect();
    assert_eq!((json["need_attention"].as_u64(), desks), (Some(2), BTreeSet::from(["Desk one", "Desk two"])));
    // A name that two bear must be said more exactly.
    let (code, _, text) = clinic_of("one", &["seen", "grandpa"]);
    assert!(code == Some(1) && text.contains("several"), "{text}");
    let (code, said, _) = clinic_of("one", &["seen", "grandpa@Desk two", "--note", "rang"]);
    assert!(code == Some(0) && said.contains("dizzy"), "{said}");
    let (_, said, _) = clinic_of("one", &["show", "grandpa@Desk two"]);
    assert!(
        said.contains("rang")
            && said.contains("nothing that is known")
            && said.contains("long-ah hold-s")
            && said.contains("long-ah level-db"),
        "{said}"
    );
    let (_, said, _) = clinic_of("one", &["caseload", "--why", "safety"]);
    assert!(said.contains("1 client,") && said.contains("Desk one") && !said.contains("Desk two"), "{said}");
    // Forgetting asks; the end of the input is no yes.
    let (code, _, text) = clinic_of("one", &["forget", "grandpa@Desk one"]);
    assert!(code == Some(1) && text.contains("nothing was removed"), "{text}");
    assert_eq!(clinic_of("one", &["forget", "grandpa@Desk one", "--yes"]).0, Some(0));
    let (code, _, text) = clinic_of("one", &["import", "home1.tideback"]);
    assert!(code == Some(1) && text.contains("forgotten"), "{text}");
    let (code, said, text) = clinic_of("one", &["backup", "clinic.copy"]);
    match clinic.is_empty() {
        true => assert!(code == Some(0) && place.path("clinic.copy").exists(), "{said}{text}"),
        false => assert!(code == Some(1) && text.contains("pg_dump"), "{said}{text}"),
    }
    assert!(!text.contains(PASSWORD), "{text}");
}

#[test]
fn two_desks_share_one_file_by_the_commands() {
    commands("");
}

#[test]
fn two_desks_share_one_server_by_the_commands() {
    let Some(server) = Server::start() else { return };
    server.database("clinic");
    commands(&server.tcp_url(PASSWORD, "clinic"));
}

/// The file is encrypted like the record where a passphrase is given.
#[test]
fn the_file_is_encrypted_with_the_passphrase_of_the_record() {
    let place = Place::new();
    place.write("evening.toml", DAILY);
    let run = |args: &[&str], passphrase: Option<&str>| {
        let mut command = tidecount(args);
        command.arg("--data").arg(place.path("desk")).env_remove("TIDECOUNT_CLINIC").env_remove("TIDECOUNT_PASSPHRASE");
        if let Some(passphrase) = passphrase {
            command.env("TIDECOUNT_PASSPHRASE", passphrase);
        }
        output(&mut command)
    };
    let secret = Some("four words by chance");
    let (routine, pack) = (place.path("evening.toml"), place.path("1.tidepack"));
    let made = run(&["hand", "make", "--client", "grandpa", &routine.display().to_string(), "-o", &pack.display().to_string()], secret);
    assert!(made.status.success(), "{}", err(&made));
    let adopted = run(&["clinic", "adopt"], secret);
    assert!(adopted.status.success(), "{}", err(&adopted));
    let bytes = std::fs::read(place.path("desk/clinic.sqlite")).expect("is there");
    assert!(!bytes.starts_with(b"SQLite format 3") && !bytes.windows(7).any(|window| window == b"grandpa"));
    assert!(out(&run(&["clinic", "caseload", "--all"], secret)).contains("grandpa"));
    for other in [None, Some("other words by chance")] {
        let refused = run(&["clinic", "caseload"], other);
        assert!(refused.status.code() == Some(1) && err(&refused).contains("left as it is"), "{}", err(&refused));
    }
    let copy = place.path("copy.sqlite");
    assert!(run(&["clinic", "backup", &copy.display().to_string()], secret).status.success());
    assert!(!std::fs::read(&copy).expect("is there").starts_with(b"SQLite format 3"));
    let named = copy.display().to_string();
    assert!(out(&run(&["clinic", "caseload", "--all", "--clinic", &named], secret)).contains("grandpa"));
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

/// A seal over something that is no results file.
#[test]
fn a_sealed_file_of_another_content_is_refused() {
    let home = Home::new(1, "grandpa");
    for content in ["{}", "[]", "{\"package\":3}", "nonsense"] {
        let sealed = seal(Kind::Results, content, &home.key);
        let opened = open(Kind::Results, sealed.as_bytes()).expect("a fitting seal");
        assert!(Arriving::read(&opened).expect_err(content).to_string().contains("cannot be used"));
    }
    let arrived = arriving(&home.sealed("2026-03-02", &[]));
    assert!(arrived.sessions.is_empty());
}
