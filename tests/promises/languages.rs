//! Promise: a practice, its pages and its reports come in the language that was chosen, and a pack that lacks something says what.

#[path = "../support/program.rs"]
mod program;

use program::{Place, err, journal, number, of_kind, out, output, tidecount};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The demo in this language is led to its end, closed loop: the client speaks the language, and what was measured is what it did. Gives the
/// journal, what the client did, and what was printed.
fn led_to_its_end(language: &str, end: &str, change: impl Fn(&mut Command)) -> (Vec<Value>, Vec<Value>, String) {
    let place = Place::new();
    let folder = place.path("demo");
    let mut demo = tidecount(["--language", language, "demo", "--out"]);
    change(demo.arg(&folder));
    let done = output(&mut demo);
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
    (entries, truth, out(&done))
}

/// The same by voice: every command that counts was said, and the second ear of the language heard it; no key is pressed.
fn led_to_its_end_by_voice(language: &str, end: &str, commands: &[&str]) {
    let (entries, truth, told) = led_to_its_end(language, end, |_| {});
    let said: Vec<(f64, &str)> =
        truth.iter().filter(|did| did["kind"] == "said").filter_map(|did| Some((number(did, "onset_s"), did["words"].as_str()?))).collect();
    let heard = of_kind(&entries, "command_heard");
    for command in &heard {
        let text = command["text"].as_str().expect("what was heard");
        let just_said = |(at_s, words): &(f64, &str)| *words == text && (*at_s..*at_s + 4.0).contains(&number(command, "at_s"));
        assert!(said.iter().any(just_said), "nobody said {text:?}: {command}");
    }
    for command in commands {
        assert!(heard.iter().any(|heard| heard["command"] == *command), "{command} was not heard: {heard:?}");
    }
    assert!(told.contains("Escape"), "how to stop while it speaks, when it may not hear: {told}");
}

#[test]
fn the_demo_is_led_to_its_end_by_voice_in_german() {
    led_to_its_end_by_voice("de", "Sie haben alle sieben Übungen gemacht.", &["yes", "ready", "done"]);
}

#[test]
fn the_demo_is_led_to_its_end_in_spanish_by_voice() {
    led_to_its_end_by_voice("es", "Ha hecho los siete ejercicios.", &["yes", "ready", "done"]);
}

#[test]
fn where_no_second_ear_hears_keys_lead_the_demo_to_its_end_in_german() {
    let by_key = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo/de/by-key.toml");
    let without_ear = |demo: &mut Command| {
        demo.arg("--client").arg(&by_key).env("TIDECOUNT_SECOND_EAR", "none");
    };
    let (entries, _, told) = led_to_its_end("de", "Sie haben alle sieben Übungen gemacht.", without_ear);
    assert!(told.contains("Escape"), "how to stop where nobody is heard: {told}");
    assert!(of_kind(&entries, "command_heard").iter().all(|command| command["text"] == "page"), "{entries:?}");
}

/// A pack of the user's own brings its second ear in a folder, is told of where it lacks one, and is led by keys then.
#[test]
fn a_pack_may_bring_its_own_second_ear() {
    let place = Place::new();
    let pack = made_up_pack(&place.path("."), |_, text| text);
    let about = std::fs::read_to_string(pack.join("pack.toml")).expect("reads") + "commands = \"second-ear\"\n";
    std::fs::write(pack.join("pack.toml"), about).expect("writes");
    let check = || output(tidecount(["language", "check"]).arg(&pack).env_remove("TIDECOUNT_SECOND_EAR"));
    let without = check();
    assert!(without.status.success() && out(&without).contains("second-ear/network.onnx"), "{}{}", out(&without), err(&without));
    let ear = pack.join("second-ear");
    std::fs::create_dir(&ear).expect("a folder");
    let german = Path::new(env!("CARGO_MANIFEST_DIR")).join("models/second-ear/de");
    std::fs::copy(german.join("network.onnx"), ear.join("network.onnx")).expect("copies");
    let classes = std::fs::read_to_string(german.join("classes.txt")).expect("reads").replacen("bereit\n", "beraten\n", 1);
    std::fs::write(ear.join("classes.txt"), classes).expect("writes");
    let with = check();
    assert!(with.status.success() && out(&with).contains("has not learnt: bereit. They"), "{}{}", out(&with), err(&with));
    let recording = place.path("nobody.wav");
    let spec = hound::WavSpec { channels: 1, sample_rate: 16_000, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(&recording, spec).expect("a file");
    (0..16_000).for_each(|_| writer.write_sample(0_i16).expect("writes"));
    writer.finalize().expect("closes");
    let hear = || output(tidecount(["--language-pack"]).arg(&pack).args(["hear", "--commands", "stopp"]).arg(&recording));
    let heard = hear();
    assert!(heard.status.success(), "its network is loaded: {}", err(&heard));
    std::fs::write(ear.join("network.onnx"), "no network").expect("writes");
    let damaged = hear();
    assert!(!damaged.status.success() && err(&damaged).contains("network.onnx: the second ear is damaged"), "{}", err(&damaged));
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
