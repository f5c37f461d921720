//! Promise: a practice, its pages and its reports come in the language that was chosen, and a pack that lacks something says what.

#[path = "../support/program.rs"]
mod program;

use program::{Place, err, journal, number, of_kind, out, output, tidecount};
use std::path::{Path, PathBuf};

/// The demo in this language is led to its end, closed loop: the client speaks the language, gives commands by key, and what was measured
/// is what it did.
fn led_to_its_end(language: &str, end: &str) {
    let place = Place::new();
    let folder = place.path("demo");
    let done = output(tidecount(["--language", language, "demo", "--out"]).arg(&folder));
    assert!(done.status.success(), "{}{}", out(&done), err(&done));
    let (entries, truth) = (journal(&folder.join("journal.jsonl")), journal(&folder.join("client.jsonl")));
    let ended = entries.last().expect("entries");
    assert_eq!((ended["reason"].as_str(), ended["steps_done"].as_u64()), (Some("completed"), Some(7)), "{ended}");
    let held: Vec<f64> = truth.iter().filter(|did| did["kind"] == "held").map(|did| number(did, "onset_s")).collect();
    let measured: Vec<f64> = of_kind(&entries, "hold_measured").iter().map(|hold| number(hold, "onset_s")).collect();
    assert!(held.len() == 2 && measured.len() == 2, "{held:?} {measured:?}");
    assert!(held.iter().zip(&measured).all(|(held, measured)| (held - measured).abs() < 0.05), "{held:?} {measured:?}");
    assert_eq!(of_kind(&entries, "phrase_read").len(), 2, "the client read both phrases aloud");
    assert!(out(&done).contains(end), "{}", out(&done));
    assert!(out(&done).contains("Escape"), "how to stop where nobody is heard: {}", out(&done));
}

#[test]
fn the_demo_is_led_to_its_end_in_german() {
    led_to_its_end("de", "Sie haben alle sieben Übungen gemacht.");
}

#[test]
fn the_demo_is_led_to_its_end_in_spanish() {
    led_to_its_end("es", "Ha hecho los siete ejercicios.");
}

/// The German words as a language of their own.
fn made_up_pack(folder: &Path, change: impl Fn(&str, String) -> String) -> PathBuf {
    let pack = folder.join("pack");
    std::fs::create_dir(&pack).expect("a folder");
    let words = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/speak/words/de");
    for file in std::fs::read_dir(words).expect("the German pack") {
        let path = file.expect("a file").path();
        // Its word games are its own affair: this pack has none.
        if path.is_dir() {
            continue;
        }
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        let text = std::fs::read_to_string(&path).expect("text");
        std::fs::write(pack.join(&name), change(&name, text)).expect("writes");
    }
    let about = "tag = \"he\"\nname = \"Made up\"\ndecimal = \",\"\nvoices = [\"he\"]\n";
    std::fs::write(pack.join("pack.toml"), about).expect("writes");
    pack
}

#[test]
fn a_pack_is_checked_and_a_routine_may_name_its_language() {
    let place = Place::new();
    let pack = made_up_pack(&place.path("."), |_, text| text);
    let checked = output(tidecount(["language", "check"]).arg(&pack));
    assert!(checked.status.success() && out(&checked).contains("the pack is whole"), "{}{}", out(&checked), err(&checked));
    let listed = output(&mut tidecount(["language", "list"]));
    assert!(["en", "de", "es", "Deutsch", "Español"].iter().all(|part| out(&listed).contains(part)), "{}", out(&listed));

    // A routine may name the pack's language where the pack is given, and is told of it where it is not.
    let routine = place.write("r.toml", "title = \"X\"\nlanguage = \"he\"\n[[step]]\nexercise = \"rest\"\nlength_s = 5\n");
    let with_pack = output(tidecount(["--language-pack"]).arg(&pack).args(["routine", "check"]).arg(&routine));
    assert!(with_pack.status.success(), "{}{}", out(&with_pack), err(&with_pack));
    let without = output(tidecount(["routine", "check"]).arg(&routine));
    let told = out(&without) + &err(&without);
    assert!(!without.status.success() && told.contains("no words in the language"), "{told}");
}

#[test]
fn what_a_pack_lacks_is_told_with_file_line_and_remedy() {
    let place = Place::new();
    let pack = made_up_pack(&place.path("."), |name, text| match name {
        "commands.ftl" => text.replace("cmd-skip =", "cmd-skp ="),
        "session.ftl" => text.replace("went-back = Zurück zu: { $name }.", "went-back = Zurück zu: { $exercise }."),
        _ => text,
    });
    let checked = output(tidecount(["language", "check"]).arg(&pack));
    assert!(!checked.status.success());
    let told = out(&checked);
    for part in
        ["commands.ftl: the message cmd-skip is missing", "commands.ftl, line ", "asks for $exercise", "It is given $name.", "faults."]
    {
        assert!(told.contains(part), "{part}: {told}");
    }
    let nothing = output(tidecount(["language", "check"]).arg(place.path("nowhere")));
    assert!(!nothing.status.success() && err(&nothing).contains("docs/languages.md"), "{}", err(&nothing));
    let no_language = output(&mut tidecount(["--language", "xx", "language", "list"]));
    assert!(!no_language.status.success() && err(&no_language).contains("--language-pack"), "{}", err(&no_language));
}
