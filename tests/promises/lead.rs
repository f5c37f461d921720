//! Promise: a class is counted for while its clinician demonstrates; the clinician's voice moves it on, other voices do not, and
//! nobody is measured. With a list, who is here is asked and kept, and nobody who leaves an exercise out is forgotten at it.
//!
//! Through the real ears, in a simulated room; what the clinician says comes from a simulated person.

#[path = "../support/rehearsal.rs"]
mod rehearsal;

#[path = "../support/program.rs"]
mod program;

use command_ear::Lexicon;
use files::classes::read_class;
use live::observe::Observer;
use live::practice::{ClassGiven, ClassKeeper};
use program::{Place, output, tidecount};
use record::{NewClass, Source, Store};
use rehearsal::{Led, RATE_HZ, Scene, lead_class, lead_class_with};
use rehearse::RoomSpec;
use screen::ShownView;
use speak::Words;
use std::path::Path;
use std::sync::{Arc, Mutex};

const ROUTINE: &str = r#"
title = "Class"
client = "class"

[[step]]
exercise = "long-ah"
repetitions = 2
target_s = 6
rest_s = 3

[[step]]
exercise = "nasal-breathing"
repetitions = 2
in = 2
out = 3

[[step]]
exercise = "functional-phrases"
phrases = ["A cup of tea with milk, please."]
"#;

/// Demonstrates, holds the vowel with the class, says what to do.
const CLINICIAN: &str = r#"
seed = 3
reaction_s = [0.8, 1.5]
voice = { name = "rms", speed = 1.0, level_db = -26.0 }

[[rule]]
on = ["class-start", "class-position"]
does = [{ say = "here we go" }]

# The vowel of the demonstration is no command, and nothing to measure.
[[rule]]
on = "ex-long-ah-cue"
does = [{ breath = 0.8 }, { hold = { f0_hz = 118.0, length_s = 5.0, level_db = -26.0 } }]

# "Done" of somebody in the class moves nothing on.
[[rule]]
on = "read-phrase"
nth = [1]
does = [{ say = "a cup of tea with milk please" }, { wait = 1.0 }, { say = "done" }, { wait = 6.0 }, { say = "chest pain" }]

# Somebody is not well: the class stands still until the clinician has seen to them.
[[rule]]
on = "read-phrase"
nth = [2]
does = [{ wait = 2.0 }, { say = "i am choking" }]

[[rule]]
on = "read-phrase"
nth = [3]
does = [{ wait = 2.0 }, { say = "help me" }]

[[rule]]
on = "class-halted"
does = [{ wait = 1.0 }, { say = "go on" }]

[[rule]]
on = "read-phrase"
nth = [4]
does = [{ wait = 2.0 }, { say = "go on" }]
"#;

fn class(client: &str, name: &str) -> (Led, tempfile::TempDir) {
    let folder = tempfile::tempdir().expect("a folder");
    let scene =
        Scene { routine: ROUTINE, client, room: RoomSpec::living_room(RATE_HZ), source: Source::Rehearsal, folder: folder.path(), name };
    (lead_class(&scene), folder)
}

#[test]
fn a_class_is_led_to_its_end_by_voice_and_leaves_no_record() {
    let (led, folder) = class(CLINICIAN, "class");
    let keys: Vec<&str> = led.said.iter().map(|line| line.1.as_str()).collect();
    assert_eq!((led.said("class-over"), led.said("ex-long-ah-cue")), (1, 2), "{keys:?}");
    assert!(led.said("count") >= 4, "the holds are counted aloud: {keys:?}");
    // Reading waits for the clinician: "done" of the class and the phrase itself do not move it on.
    let at = |key: &str| led.said.iter().find(|line| line.1 == key).map(|line| line.0).unwrap_or_else(|| panic!("{key}: {keys:?}"));
    assert!(at("class-unwell") - at("read-phrase") > 8.0, "{:?}", led.said);
    // Whoever is unwell is told so much; for "help" it is only quiet, for the clinician is in the room. Nothing is lost behind it.
    assert_eq!((led.said("class-unwell"), led.said("class-halted"), led.said("read-phrase")), (2, 3, 4), "{:?}", led.said);
    let record = folder.path().join("record");
    let kept: Vec<_> = walk(&record).into_iter().filter(|file| !file.contains("voice-cache")).collect();
    assert!(kept.is_empty(), "a class left {kept:?}");
}

const CLASS: &str = r#"
title = "Thursday class"

[[participant]]
name = "Plum"
leaves_out = ["long-ah"]
reason = "a secret of their own"

[[participant]]
number = 7

[[participant]]
name = "Hazel"

[[participant]]
name = "Clover"
leaves_out = ["long-ah"]
"#;

/// Three are called and answer each in their way; Clover has been named before. The roll is over with the last.
const ROLL: &str = r#"
seed = 5
reaction_s = [0.8, 1.5]
voice = { name = "rms", speed = 1.0, level_db = -26.0 }

[[rule]]
on = "class-call"
nth = [1]
does = [{ say = "clover is not here" }]

[[rule]]
on = "class-call"
nth = [2]
does = [{ say = "present" }]

[[rule]]
on = "class-call-number"
does = [{ say = "not here" }]

[[rule]]
on = "class-call"
nth = [3]
does = [{ say = "next person" }]

[[rule]]
on = ["class-start", "class-position"]
does = [{ say = "here we go" }]

[[rule]]
on = "read-phrase"
nth = [1]
does = [{ wait = 2.0 }, { say = "go on" }]
"#;

/// What was shown beside the prompt.
#[derive(Clone, Default)]
struct Aside(Arc<Mutex<Vec<(String, String)>>>);

impl Observer for Aside {
    fn shown(&mut self, _at_s: f64, view: &ShownView) {
        self.0.lock().expect("free").push((view.heading.clone(), view.aside.clone()));
    }
}

#[test]
fn a_roll_is_called_and_answered_by_voice_and_kept_with_what_was_led_and_nothing_else() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("class.toml");
    std::fs::write(&file, CLASS).expect("writes");
    let lexicon = Lexicon::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("models/en")).expect("the lexicon");
    let list = read_class(&file, &Words::english().expect("the catalogue"), &lexicon).unwrap_or_else(|why| panic!("{why}"));
    let record = folder.path().join("record");
    let mut store = Store::open(&record).expect("opens");
    let participants: Vec<String> = list.participants.iter().map(|participant| participant.called.to_string()).collect();
    let started_at = "2026-11-26T10:30:00+01:00[Europe/Berlin]".parse().expect("a time");
    let new = NewClass {
        title: &list.title,
        routine_title: "Class",
        source: Source::Rehearsal,
        software: "tidecount",
        started_at: &started_at,
        participants: &participants,
    };
    let class = store.begin_class(&new).expect("begins");
    let keeper = ClassKeeper::new(store, class).unwrap_or_else(|why| panic!("{why}"));
    let aside = Aside::default();
    let scene = Scene {
        routine: ROUTINE,
        client: ROLL,
        room: RoomSpec::living_room(RATE_HZ),
        source: Source::Rehearsal,
        folder: folder.path(),
        name: "roll",
    };
    let given = ClassGiven { participants: list.participants, names_aloud: false };
    let led = lead_class_with(&scene, given, vec![Box::new(keeper), Box::new(aside.clone())]);
    let keys: Vec<&str> = led.said.iter().map(|line| line.1.as_str()).collect();
    assert_eq!((led.said("class-roll-over"), led.said("class-over")), (1, 1), "{keys:?}");

    let store = Store::open(&record).expect("opens");
    let [kept] = &store.classes(20).expect("reads")[..] else { panic!("one class") };
    let there: Vec<(&str, Option<bool>)> = kept.attendance.iter().map(|(name, present)| (name.as_str(), *present)).collect();
    assert_eq!(there, [("Plum", Some(true)), ("7", Some(false)), ("Hazel", None), ("Clover", Some(false))]);
    let done: Vec<(&str, u32, u32)> =
        kept.led.iter().map(|step| (step.exercise.as_str(), step.repetitions_done, step.repetitions_planned)).collect();
    assert_eq!(done, [("long-ah", 2, 2), ("nasal-breathing", 2, 2), ("functional-phrases", 1, 1)]);
    assert!(kept.led.iter().all(|step| step.until_s > step.from_s), "{:?}", kept.led);
    assert!(store.history(None, 20).expect("reads").is_empty(), "a class is nobody's practice");

    // At the exercise it stands there all the time, and only of who is in the room.
    let shown = aside.0.lock().expect("free").clone();
    let at = |name: &str| shown.iter().filter(|view| view.0.starts_with(name)).map(|view| view.1.as_str()).collect::<Vec<_>>();
    assert!(!at("Long ah").is_empty() && at("Long ah").iter().all(|aside| *aside == "Leaving this one out: Plum."), "{shown:?}");
    assert!(at("Nasal breathing").iter().all(|aside| aside.is_empty()), "{shown:?}");
    // Why is nobody's business but the clinician's.
    let bytes = std::fs::read(record.join("practice.sqlite")).expect("reads");
    assert!(!bytes.windows(8).any(|at| at == b"a secret"));
    assert!(shown.iter().all(|view| !view.1.contains("secret")) && led.said.iter().all(|line| !line.2.contains("secret")));
}

#[test]
fn a_class_file_full_of_faults_prints_them_all_and_nothing_is_led() {
    let place = Place::new();
    let routine = place.write("class-routine.toml", ROUTINE);
    let class =
        place.write("class.toml", "title = \"T\"\n[[participant]]\nname = \"Plum\"\nleaves_out = [\"neck-turn\"]\n[[participant]]\n");
    let mut command = tidecount(["lead"]);
    command.arg(&routine).args(["--mic", "none", "--speaker", "none", "--class"]).arg(&class).arg("--data").arg(place.path("data"));
    let done = output(&mut command);
    let errors = String::from_utf8_lossy(&done.stderr).into_owned();
    assert!(!done.status.success());
    assert!(errors.contains("class.toml:4: ") && errors.contains("Did you mean `neck-turns`?"), "{errors}");
    assert!(errors.contains("class.toml:5: this participant has neither `name` nor `number`"), "{errors}");
    assert!(!place.path("data").join("practice.sqlite").exists());
}

fn walk(folder: &std::path::Path) -> Vec<String> {
    let mut all = Vec::new();
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        if entry.path().is_dir() {
            all.extend(walk(&entry.path()));
        } else {
            all.push(entry.path().display().to_string());
        }
    }
    all
}
