//! Results come in once, whole and never mixed.

use super::clinic_world::{Home, MIC, Practice, UNPLANNED, arriving, daily, desk_key};
use super::{Engine, adopt};
use clinic::{Arriving, Clinic};
use handover::{Kind, open, seal};
use jiff::civil::date;
use session::Fact;

pub(super) fn suite(engine: &Engine) {
    the_same_twice_adds_nothing(engine);
    a_later_file_brings_more_and_an_earlier_one_changes_nothing(engine);
    what_differs_is_refused_whole(engine);
    namesakes_are_kept_apart(engine);
    results_of_others_are_refused(engine);
    two_desks_at_once(engine);
    hostile_texts_are_kept_as_they_are(engine);
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
    let practice = Practice::on(4, "2026-03-02", 12.0, &MIC).with(Fact::SafetyStop {
        exercise_before: None,
        exercise: Some("long-ah".into()),
        reason: "dizzy".into(),
    });
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
        (sheet.sessions.len(), sheet.sessions[0].trials, sheet.sessions[0].end_reason.as_deref(), sheet.digest.said.dizzy),
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
    let fact = Fact::SafetyStop { exercise_before: None, exercise: Some(text.into()), reason: text.into() };
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
