//! Promise: a client's programme goes to the home computer as one signed file and the results come back as one. What is
//! damaged, foreign, older or faulty is refused with a reason and a remedy, and nothing is changed.

#[path = "../support/program.rs"]
mod program;
#[path = "../support/rehearsal.rs"]
mod rehearsal;

use handover::{Kind, Package, SecretKey, TextFile, seal};
use jiff::ZonedDateTime;
use program::{Place, err, of_kind, out, output, tidecount};
use record::{NewSession, SessionId, Source, Store};
use rehearsal::{RATE_HZ, Scene, lead};
use rehearse::RoomSpec;
use session::{Entry, Fact};
use std::collections::BTreeMap;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Output, Stdio};

const EVENING: &str = "title = \"Evening\"\n[[step]]\nexercise = \"long-ah\"\nrepetitions = 2\n[[step]]\nexercise = \"effortful-swallow\"\ncautions_acknowledged = true\n";
const MORNING: &str = "title = \"Morning\"\n[[step]]\nexercise = \"jaw-opening\"\ncautions_acknowledged = true\n";
const PACK: &str = "title = \"Opposites\"\nkind = \"opposite\"\n[[item]]\nclue = \"What is the opposite of narrow?\"\nanswers = [\"wide\"]\nhint = \"As a big river is.\"\n";

/// A clinician's and a household's computer.
struct Two {
    place: Place,
}

impl Two {
    fn new() -> Self {
        let two = Self { place: Place::new() };
        for (name, text) in [("evening.toml", EVENING), ("morning.toml", MORNING), ("opposites.toml", PACK)] {
            two.place.write(name, text);
        }
        two
    }

    fn path(&self, name: &str) -> PathBuf {
        self.place.path(name)
    }

    /// `tidecount hand … --data WHERE`, with what is typed. Arguments that end like a file are files of this place.
    fn hand(&self, at: &str, args: &[&str], typed: &str) -> Output {
        let files = [".toml", ".tidepack", ".tideback"];
        let args =
            args.iter().map(|arg| if files.iter().any(|end| arg.ends_with(end)) { self.path(arg).into_os_string() } else { arg.into() });
        let mut child = tidecount(["hand"])
            .args(args)
            .arg("--data")
            .arg(self.path(at))
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program starts");
        // Where nothing is asked the program may be gone already.
        let _ = child.stdin.take().expect("a pipe").write_all(typed.as_bytes());
        child.wait_with_output().expect("ends")
    }

    fn well(&self, at: &str, args: &[&str], typed: &str) -> String {
        let done = self.hand(at, args, typed);
        assert!(done.status.success(), "{args:?}: {}{}", out(&done), err(&done));
        out(&done)
    }

    /// Refused, with nothing changed in the data folder.
    fn refused(&self, at: &str, args: &[&str], typed: &str) -> String {
        let before = tree(&self.path(at));
        let done = self.hand(at, args, typed);
        assert_eq!(done.status.code(), Some(1), "{args:?}: {}{}", out(&done), err(&done));
        assert_eq!(tree(&self.path(at)), before, "{args:?}");
        let text = err(&done);
        assert!(!text.contains("panicked"), "{text}");
        text
    }

    fn make(&self, at: &str, file: &str) {
        let asked = self.well(
            at,
            &[
                "make",
                "--client",
                "grandpa",
                "evening.toml",
                "morning.toml",
                "--pack",
                "opposites.toml",
                "--feedback-every",
                "3",
                "--note",
                "Twice a day",
                "-o",
                file,
            ],
            "yes\nno\n",
        );
        assert!(asked.contains("effortful-swallow") && asked.contains("Not for") && asked.contains("Not agreed"), "{asked}");
    }

    /// The clinician's fingerprint as it is read out.
    fn fingerprint(&self, at: &str) -> String {
        let text = self.well(at, &["key"], "");
        text.lines().find(|line| line.starts_with("    ")).expect("a fingerprint").trim().to_owned()
    }

    fn package(&self) -> PathBuf {
        self.path("home/clients/grandpa/package")
    }

    fn history(&self, at: &str) -> String {
        let listed = output(tidecount(["history", "--client", "grandpa", "--json", "--data"]).arg(self.path(at)));
        assert!(listed.status.success(), "{}", err(&listed));
        out(&listed)
    }
}

/// Every file below a folder, without the record, which SQLite touches when it is read.
fn tree(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut files = BTreeMap::new();
    let Ok(entries) = std::fs::read_dir(folder) else { return files };
    for entry in entries {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            files.insert(path.clone(), Vec::new());
            files.extend(tree(&path));
        } else if !path.to_string_lossy().contains("practice.sqlite") {
            files.insert(path.clone(), std::fs::read(&path).expect("reads"));
        }
    }
    files
}

fn fact(at_s: f64, fact: Fact) -> Entry {
    Entry { at_s, fact, position: None }
}

/// A live practice in the household's record; one without end is interrupted.
fn practise(two: &Two, started: &str, end: bool) -> SessionId {
    let mut store = Store::open(&two.path("home")).expect("opens");
    let started_at: ZonedDateTime = started.parse().expect("a time");
    let new = NewSession {
        protocol: None,
        client: "grandpa",
        routine_title: "Evening",
        routine_text: EVENING,
        source: Source::Live,
        software: "tidecount 0.1.0",
        started_at: &started_at,
    };
    let session = store.begin(&new).expect("begins");
    store
        .append(session, &fact(0.0, Fact::SessionBegun { routine: "Evening".into(), steps: 2, software: "tidecount 0.1.0".into() }))
        .expect("keeps");
    store.append(session, &fact(1.234, Fact::Rested { duration_s: 1.234 })).expect("keeps");
    if end {
        store.append(session, &ended()).expect("keeps");
    }
    session
}

fn ended() -> Entry {
    fact(9.0, Fact::SessionEnded { reason: "finished".into(), steps_done: 1, steps_prescribed: 2, duration_s: 9.0 })
}

#[test]
fn the_whole_circle() {
    let two = Two::new();
    two.make("clinic", "one.tidepack");
    let print = two.fingerprint("clinic");
    let shown = two.well("home", &["take", "one.tidepack"], "yes\n");
    assert!(shown.contains(&print) && shown.contains("Twice a day") && shown.contains("agreed to: effortful-swallow"), "{shown}");
    assert!(shown.contains("practise") && shown.contains("evening.toml") && shown.contains("--client \"grandpa\""), "{shown}");
    assert_eq!(std::fs::read_to_string(two.package().join("evening.toml")).expect("reads"), EVENING);
    assert_eq!(std::fs::read_to_string(two.package().join("opposites.toml")).expect("reads"), PACK);
    assert_eq!(files::packages::settings::of(&two.path("home"), "grandpa").feedback_every, Some(3));
    let agreed = Store::open(&two.path("home")).expect("opens").agreements("grandpa").expect("reads");
    assert!(agreed.iter().map(|one| one.exercise.as_str()).eq(["effortful-swallow"]), "{agreed:?}");
    assert!(two.well("home", &["take", "one.tidepack"], "").contains("already in force"));
    assert!(two.well("home", &["key"], "").contains(&print));

    let nothing = two.well("home", &["results", "-o", "none.tideback"], "");
    assert!(nothing.contains("nothing new") && !two.path("none.tideback").exists(), "{nothing}");
    practise(&two, "2099-03-02T18:00:00+01:00[Europe/Berlin]", true);
    let open = practise(&two, "2099-03-03T18:00:00+01:00[Europe/Berlin]", false);
    two.well("home", &["results", "-o", "1.tideback"], "");
    assert!(two.well("clinic", &["read", "1.tideback"], "").contains("2 new"));
    let history = two.history("clinic");
    assert_eq!(history.lines().count(), 2, "{history}");
    assert!(two.well("clinic", &["read", "1.tideback"], "").contains("2 already known"));
    assert_eq!(two.history("clinic"), history, "twice adds nothing");

    // The interrupted one is gone on with, and a third comes.
    let mut store = Store::open(&two.path("home")).expect("opens");
    store.resume(open, &ZonedDateTime::now()).expect("goes on");
    store.append(open, &ended()).expect("keeps");
    drop(store);
    practise(&two, "2099-03-04T18:00:00+01:00[Europe/Berlin]", true);
    two.well("home", &["results", "--client", "grandpa", "-o", "2.tideback"], "");
    let read = two.well("clinic", &["read", "2.tideback"], "");
    assert!(read.contains("1 new, 1 continued, 0 already known"), "{read}");
    let without_ids =
        |at: &str| -> Vec<String> { two.history(at).lines().map(|line| line.split_once(',').expect("keys").1.to_owned()).collect() };
    assert_eq!(without_ids("clinic"), without_ids("home"));
    let all = two.well("home", &["results", "--since", "2000-01-01", "-o", "3.tideback"], "");
    assert!(all.contains("3 practices"), "{all}");
    assert!(two.well("clinic", &["read", "3.tideback"], "").contains("0 new, 0 continued, 3 already known"));
    let sent = std::fs::read_to_string(two.path("2.tideback")).expect("reads");
    let package = std::fs::read_to_string(two.path("one.tidepack")).expect("reads");
    let id = package.split("\"id\": \"").nth(1).and_then(|rest| rest.get(..16)).expect("its number");
    assert!(sent.matches(id).count() == 3, "each practice names its package: {sent}");
}

#[cfg(unix)]
#[test]
fn keys_are_for_their_owner_alone_and_the_clinicians_is_in_no_file_that_travels() {
    use std::os::unix::fs::PermissionsExt;
    let two = Two::new();
    two.make("clinic", "one.tidepack");
    two.well("home", &["take", "one.tidepack", "--accept", &two.fingerprint("clinic")], "");
    let key = two.path("clinic/handover/clinician.key");
    let secret = std::fs::read_to_string(&key).expect("reads");
    let secret = secret.lines().nth(1).expect("its second line");
    for path in [key, two.path("one.tidepack"), two.package().join("package.tidepack")] {
        assert_eq!(std::fs::metadata(&path).expect("is there").permissions().mode() & 0o777, 0o600, "{}", path.display());
    }
    for file in tree(&two.path("home")).into_values().chain([std::fs::read(two.path("one.tidepack")).expect("reads")]) {
        assert!(!String::from_utf8_lossy(&file).contains(secret));
    }
}

#[test]
fn what_is_damaged_is_refused_and_nothing_is_changed() {
    let two = Two::new();
    two.make("clinic", "one.tidepack");
    let accept = two.fingerprint("clinic");
    let whole = std::fs::read(two.path("one.tidepack")).expect("reads");
    let lengths = [0, 1, 13, 60, 200, 400, whole.len() / 2, whole.len() - 1];
    let cut = lengths.map(|length| whole[..length].to_vec());
    let flipped = [0, 14, 30, 70, 200, 300, 420, whole.len() / 2, whole.len() - 2].map(|at| {
        let mut bytes = whole.clone();
        bytes[at] ^= 1 << (at % 8);
        bytes
    });
    for (n, bytes) in cut.into_iter().chain(flipped).enumerate() {
        std::fs::write(two.path("bad.tidepack"), bytes).expect("writes");
        let text = two.refused("home", &["take", "bad.tidepack", "--accept", &accept], "");
        assert!(text.contains("bad.tidepack") && text.contains("opy it again"), "{n}: {text}");
    }
    assert!(!two.path("home/clients").exists());
    let text = two.refused("home", &["take", "absent.tidepack"], "");
    assert!(text.contains("absent.tidepack") && text.contains("Check the file's name"), "{text}");

    two.well("home", &["take", "one.tidepack", "--accept", &accept], "");
    practise(&two, "2099-03-02T18:00:00+01:00[Europe/Berlin]", true);
    two.well("home", &["results", "-o", "1.tideback"], "");
    let mut results = std::fs::read(two.path("1.tideback")).expect("reads");
    let at = results.len() - 40;
    results[at] ^= 1;
    std::fs::write(two.path("bad.tideback"), results).expect("writes");
    assert!(two.refused("clinic", &["read", "bad.tideback"], "").contains("damaged"));
    assert!(two.refused("clinic", &["read", "one.tidepack"], "").contains("hand take"));
    assert_eq!(two.history("clinic"), "");
    // A file that is there is never written over.
    assert!(two.refused("home", &["results", "--since", "2000-01-01", "-o", "1.tideback"], "").contains("name another"));
}

#[test]
fn what_is_foreign_or_older_is_refused_until_a_person_says_otherwise() {
    let two = Two::new();
    two.make("clinic", "one.tidepack");
    two.make("clinic", "two.tidepack");
    two.make("elsewhere", "foreign.tidepack");
    let (own, other) = (two.fingerprint("clinic"), two.fingerprint("elsewhere"));
    for typed in ["no\n", "", "y\n"] {
        let text = two.refused("home", &["take", "two.tidepack"], typed);
        assert!(text.contains(&own) && text.contains("--accept"), "{text}");
    }
    assert!(two.refused("home", &["take", "two.tidepack", "--accept", &other], "").contains("not that of the package"));
    assert!(two.refused("home", &["results", "-o", "none.tideback"], "").contains("hand take FILE"));
    two.well("home", &["take", "two.tidepack", "--accept", &own.replace(' ', "-")], "");

    let text = two.refused("home", &["take", "foreign.tidepack"], "yes\n");
    assert!(text.contains(&own) && text.contains(&other) && text.contains("--change-clinician"), "{text}");
    assert!(two.refused("home", &["take", "foreign.tidepack", "--accept", &other], "").contains("foreign"));
    assert!(two.refused("home", &["take", "one.tidepack"], "").contains("--older"));
    two.well("home", &["take", "one.tidepack", "--older"], "");
    let earlier: Vec<_> = std::fs::read_dir(two.path("home/clients/grandpa/earlier")).expect("is kept").collect();
    assert_eq!(earlier.len(), 1);

    practise(&two, "2099-03-02T18:00:00+01:00[Europe/Berlin]", true);
    two.well("home", &["results", "-o", "1.tideback"], "");
    assert!(two.refused("elsewhere", &["read", "1.tideback"], "").contains("foreign"));
    two.well("clinic", &["read", "1.tideback"], "");
    two.well("home", &["take", "foreign.tidepack", "--change-clinician", "--accept", &other], "");
    assert!(two.refused("home", &["take", "two.tidepack"], "").contains("foreign"));
}

/// Packages that this program would not make, well sealed by the clinician whom the household knows.
#[test]
fn path_tricks_and_faulty_routines_inside_are_refused_before_anything_is_written() {
    let two = Two::new();
    two.make("clinic", "one.tidepack");
    let accept = two.fingerprint("clinic");
    two.well("home", &["take", "one.tidepack", "--accept", &accept], "");
    let secret = std::fs::read_to_string(two.path("clinic/handover/clinician.key")).expect("reads");
    let key = SecretKey::from_hex(secret.lines().nth(1).expect("its second line")).expect("a key");
    let made = |files: Vec<TextFile>, client: &str| {
        let now = "2100-01-01T00:00:00Z".parse().expect("a time");
        let mut package = Package::new("00112233445566aa", now, client, &SecretKey::from_bytes(&[9; 32]));
        package.routines = files;
        std::fs::write(two.path("trick.tidepack"), seal(Kind::Package, &serde_json::to_string(&package).expect("JSON"), &key))
            .expect("writes");
    };
    let file = |name: &str, text: &str| TextFile { name: name.into(), text: text.into() };
    for name in ["../../evil.toml", "/tmp/evil.toml", "a/evil.toml", "evil\n.toml", "settings.toml", ".evil.toml", "evil.sh"] {
        made(vec![file("evening.toml", EVENING), file(name, EVENING)], "grandpa");
        let text = two.refused("home", &["take", "trick.tidepack"], "");
        assert!(text.contains("cannot be used") && text.contains("plain name"), "{name}: {text}");
    }
    made(vec![file("evening.toml", EVENING)], "../../grandpa");
    assert!(two.refused("home", &["take", "trick.tidepack", "--accept", &accept], "").contains("short name"));

    let faulty = EVENING.replace("long-ah", "long-uh").replace("repetitions = 2", "repetitions = 2000");
    made(vec![file("morning.toml", MORNING), file("evening.toml", &faulty), file("other.toml", "title = 3\n")], "grandpa");
    let text = two.refused("home", &["take", "trick.tidepack"], "");
    assert!(text.contains("trick.tidepack: evening.toml:3: ") && text.contains("trick.tidepack: other.toml:1: "), "{text}");
    two.place.write("evening.toml", &faulty);
    let text = two.refused("clinic", &["make", "--client", "grandpa", "evening.toml", "-o", "new.tidepack"], "yes\n");
    assert!(text.contains("evening.toml:3: ") && !two.path("new.tidepack").exists(), "{text}");
}

/// A practice that is really led, under the package and its agreement.
#[test]
fn what_the_clinician_agreed_to_is_not_asked_again_but_its_cautions_are_said_and_its_results_come_back() {
    let routine = "title = \"Swallows\"\n[[step]]\nexercise = \"effortful-swallow\"\ncautions_acknowledged = true\nrepetitions = 1\n";
    let client = r#"
seed = 4
reaction_s = [1.0, 1.5]
voice = { name = "rms", speed = 0.9, level_db = -26.0 }
[[rule]]
on = ["ask-agreement", "ask-agreement-again"]
does = [{ say = "no" }]
[[rule]]
on = "ask-ready*"
does = [{ say = "ready" }]
[[rule]]
on = ["ex-effortful-swallow-cue", "done-*"]
does = [{ swallow = 2.0 }, { say = "done" }]
"#;
    let two = Two::new();
    two.place.write("swallows.toml", routine);
    two.well("clinic", &["make", "--client", "client", "swallows.toml", "-o", "one.tidepack"], "yes\n");
    two.well("record", &["take", "one.tidepack", "--accept", &two.fingerprint("clinic")], "");
    let room = RoomSpec::living_room(RATE_HZ);
    let led = lead(&Scene { routine, client, room, source: Source::Live, folder: &two.path(""), name: "swallows" });
    assert_eq!((led.said("ask-agreement"), led.said("cautions-first")), (0, 1), "{:#?}", led.said);
    assert!(led.said("ex-effortful-swallow-before") == 1, "{:#?}", led.said);
    assert_eq!(of_kind(&led.journal, "step_done").len(), 1, "{:#?}", led.journal);
    two.well("record", &["results", "-o", "1.tideback"], "");
    assert!(two.well("clinic", &["read", "1.tideback"], "").contains("1 new"));
    let shown = output(tidecount(["history", "1", "--json", "--data"]).arg(two.path("clinic")));
    assert_eq!(out(&shown), std::fs::read_to_string(two.path("swallows.jsonl")).expect("the journal"));
}
