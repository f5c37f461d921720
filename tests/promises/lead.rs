//! Promise: a class is counted for while its clinician demonstrates; the clinician's voice moves it on, other voices do not, and
//! nobody is measured.
//!
//! Through the real ears, in a simulated room; what the clinician says comes from a simulated person.

#[path = "../support/rehearsal.rs"]
mod rehearsal;

use record::Source;
use rehearsal::{Led, RATE_HZ, Scene, lead_class};
use rehearse::RoomSpec;

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
does = [{ say = "a cup of tea with milk please" }, { wait = 1.0 }, { say = "done" }, { wait = 6.0 }, { say = "go on" }]
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
    assert!(at("class-over") - at("read-phrase") > 8.0, "{:?}", led.said);
    let record = folder.path().join("record");
    let kept: Vec<_> = walk(&record).into_iter().filter(|file| !file.contains("voice-cache")).collect();
    assert!(kept.is_empty(), "a class left {kept:?}");
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
