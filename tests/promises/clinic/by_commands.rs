//! The same by the commands alone.

use super::clinic_world::{DAILY, MIC, Practice};
use super::postgres_server::{PASSWORD, Server};
use super::program::{Place, err, out, output, tidecount};
use session::Fact;
use std::collections::BTreeSet;

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
            protocol: None,
            client: "grandpa",
            routine_title: "Evening",
            routine_text: DAILY,
            source: record::Source::Live,
            software: "tidecount",
            started_at: &now,
        };
        let session = store.begin(&new).expect("begins");
        for entry in Practice::on(1, "2026-03-02", 12.0, &MIC)
            .with(Fact::SafetyStop { exercise_before: None, exercise: None, reason: "dizzy".into() })
            .entries
        {
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
