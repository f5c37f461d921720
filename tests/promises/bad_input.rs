//! Promise: what cannot be used is named with a remedy; exit code 1, nothing overwritten, no panic.

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, err, out, output, tidecount};
use std::path::{Path, PathBuf};
use std::process::Command;

struct Scene {
    place: Place,
    routine: PathBuf,
    wav: PathBuf,
}

impl Scene {
    fn new() -> Self {
        let place = Place::new();
        let routine = place.write("routine.toml", "title = \"A rest\"\n[[step]]\nexercise = \"rest\"\nlength_s = 1\n");
        let wav = Tape::new(16_000, 1.0).write(&place.path("client.wav"), 1);
        Self { place, routine, wav }
    }

    fn replay(&self) -> Command {
        self.place.replay(&self.routine, &self.wav, "data")
    }
}

/// It fails, with all these words in its message.
fn refuses(what: &str, command: &mut Command, words: &[&str]) {
    let done = output(command);
    let (out, err) = (out(&done), err(&done));
    assert_eq!(done.status.code(), Some(1), "{what}: {out}{err}");
    for word in words {
        assert!(err.contains(word), "{what}: \"{word}\" is not in: {err}");
    }
    for bad in ["panicked", "RUST_BACKTRACE", "Error {", "thread '"] {
        assert!(!err.contains(bad) && !out.contains(bad), "{what}: {out}{err}");
    }
    assert!(err.lines().count() <= 12, "{what}: {err}");
}

fn name(path: &Path) -> String {
    path.file_name().expect("a name").to_string_lossy().into_owned()
}

#[test]
fn routines() {
    let s = Scene::new();
    let with = |path: &Path| s.place.replay(path, &s.wav, "data");
    refuses("no routine", &mut with(&s.place.path("none.toml")), &["none.toml", "Check the file's name"]);
    let unreadable = s.place.path("bytes.toml");
    std::fs::write(&unreadable, [0xff, 0xfe, 0x00, 0x80]).unwrap();
    refuses("no text", &mut with(&unreadable), &["bytes.toml", "UTF-8"]);
    let broken = s.place.write("broken.toml", "title = \"x\"\n[[step]\n");
    refuses("no TOML", &mut with(&broken), &["broken.toml", "2"]);
    let empty = s.place.write("empty.toml", "");
    refuses("empty", &mut with(&empty), &["empty.toml"]);
    let unknown = s.place.write("unknown.toml", "title = \"x\"\n[[step]]\nexercise = \"long-aah\"\n");
    refuses("unknown exercise", &mut with(&unknown), &["unknown.toml", "long-ah"]);
    refuses("a folder", &mut with(&s.place.path("")), &["cannot be read"]);
    assert!(!s.place.path("data").exists(), "nothing was begun");
}

#[test]
fn recordings() {
    let s = Scene::new();
    let with = |path: &Path| s.place.replay(&s.routine, path, "data");
    refuses("no recording", &mut with(&s.place.path("none.wav")), &["none.wav"]);
    let text = s.place.write("text.wav", "this is no sound");
    refuses("no sound", &mut with(&text), &["text.wav"]);
    let empty = s.place.write("empty.wav", "");
    refuses("empty", &mut with(&empty), &["empty.wav"]);
    refuses("no folder for the sound", s.replay().arg("--speaker").arg(s.place.path("no/such/out.wav")), &["out.wav", "folder"]);
    let bytes = std::fs::read(&s.wav).unwrap();
    refuses("the recording itself", s.replay().arg("--speaker").arg(&s.wav), &[&name(&s.wav), "another name"]);
    assert_eq!(std::fs::read(&s.wav).unwrap(), bytes, "the recording was overwritten");
}

#[test]
fn models() {
    let s = Scene::new();
    refuses("no model", s.replay().arg("--model").arg(s.place.path("none")), &["none", "Vosk"]);
    std::fs::create_dir(s.place.path("hollow")).unwrap();
    refuses("an empty model", s.replay().arg("--model").arg(s.place.path("hollow")), &["hollow"]);
    // All files are there, one is damaged.
    let (good, bad) = (Path::new(env!("CARGO_MANIFEST_DIR")).join("models/en"), s.place.path("damaged"));
    for folder in ["am", "conf", "graph/phones"] {
        std::fs::create_dir_all(bad.join(folder)).unwrap();
    }
    for file in [
        "conf/mfcc.conf",
        "conf/model.conf",
        "graph/Gr.fst",
        "graph/HCLr.fst",
        "graph/disambig_tid.int",
        "graph/phones/word_boundary.int",
        "graph/words.txt",
    ] {
        std::fs::copy(good.join(file), bad.join(file)).unwrap();
    }
    std::fs::write(bad.join("am/final.mdl"), "damaged").unwrap();
    refuses("a damaged model", s.replay().arg("--model").arg(&bad), &["damaged"]);
}

#[test]
fn the_record() {
    let s = Scene::new();
    let file = s.place.write("file", "x");
    let mut under = tidecount(["practise"]);
    under.arg(&s.routine).arg("--mic").arg(&s.wav).args(["--fast", "--data"]).arg(file.join("under"));
    refuses("a data folder under a file", &mut under, &["file/under", "--data DIR"]);

    std::fs::create_dir(s.place.path("data")).unwrap();
    let database = s.place.write("data/practice.sqlite", "this is no database, and somebody may need it still");
    let before = std::fs::read(&database).unwrap();
    refuses("a damaged record", &mut s.replay(), &["practice.sqlite", "rename it"]);
    assert_eq!(std::fs::read(&database).unwrap(), before, "the damaged record was changed");
    let mut history = tidecount(["history", "--data"]);
    refuses("its history", history.arg(s.place.path("data")), &["practice.sqlite", "rename it"]);
    assert_eq!(std::fs::read(&database).unwrap(), before, "the damaged record was changed");
}

#[test]
fn journals() {
    let s = Scene::new();
    let kept = s.place.write("kept.jsonl", "{\"at_s\":1.0,\"kind\":\"session_begun\",\"routine\":\"r\",\"steps\":1,\"software\":\"s\"}\n");
    let before = std::fs::read(&kept).unwrap();
    refuses("a journal of another practice", s.replay().arg("--journal").arg(&kept), &["kept.jsonl", "--journal FILE"]);
    assert_eq!(std::fs::read(&kept).unwrap(), before, "the journal was overwritten");
    refuses("a journal in no folder", s.replay().arg("--journal").arg(s.place.path("no/such.jsonl")), &["such.jsonl", "--journal FILE"]);
}

#[test]
fn voices_and_devices() {
    let s = Scene::new();
    refuses("an unknown voice", s.replay().args(["--voice", "nobody"]), &["nobody", "espeak-ng"]);
    refuses("the system's voice into a file", s.replay().args(["--voice", "system"]), &["--voice espeak-ng"]);
    let mut fast = tidecount(["practise", "--fast", "--data"]);
    refuses("a hurried microphone", fast.arg(s.place.path("data")).arg(&s.routine), &["--fast", "--mic FILE.wav"]);
    refuses("a hurried loudspeaker", s.replay().args(["--speaker", "default"]), &["--fast", "none"]);
    // Where there are devices it names those; a machine without any says so. The sound system's own libraries write, too.
    // What was arranged at home is used, unless another is named.
    let home = s.place.path("home");
    std::fs::create_dir_all(&home).expect("a folder");
    let arranged = s.place.path("arranged.wav");
    std::fs::write(home.join("household.toml"), format!("[home]\nmicrophone = {:?}\n", arranged.display().to_string())).expect("writes");
    let at_home = || {
        let mut command = tidecount(["practise", "--speaker", "none", "--data"]);
        command.arg(&home).arg(&s.routine);
        command
    };
    refuses("the microphone arranged at home", &mut at_home(), &["tidecount: ", "arranged.wav"]);
    refuses("another in its place", at_home().args(["--mic", "named.wav"]), &["tidecount: ", "named.wav"]);
    let mut device = tidecount(["practise", "--mic", "no such microphone", "--speaker", "none", "--data"]);
    refuses("an unknown microphone", device.arg(s.place.path("data")).arg(&s.routine), &["tidecount: ", "microphone"]);
    let mut device = tidecount(["practise", "--speaker", "no such loudspeaker", "--mic"]);
    device.arg(&s.wav).arg("--data").arg(s.place.path("data")).arg(&s.routine);
    refuses("an unknown loudspeaker", &mut device, &["tidecount: ", "loudspeaker"]);
}
