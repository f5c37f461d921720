//! Promise: whatever is in a file that is not sound, or comes through the recogniser's pipe, is read or refused with a clear error; nothing
//! panics. Valid seeds are damaged at random; those that once broke something are kept in `tests/corpus/` and read first, as they are.
//! `tests/endurance/run.sh fuzz MINUTES` looks longer. (Sound: `fuzz.rs`; arbitrary routines: `routine_faults.rs`; forms of the pages:
//! `src/pages/set_up/tests/damaged_forms.rs`; what is under a good seal: also `src/handover/tests/results.rs`.)

#[path = "../support/program.rs"]
mod program;

use command_ear::{ChildRecogniser, CommandRecogniser, Grammar, Lexicon, Mode, Models, Options};
use files::calibrations::CalibrationStore;
use files::households::check_household;
use handover::{Kind, Opened, Package, Results, SecretKey, Settings, TextFile};
use program::tidecount;
use proptest::prelude::*;
use proptest::sample::Index;
use routine::{Hearing, check_bytes, check_class, check_pack};
use speak::{Language, Words};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::sync::LazyLock;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

static WORDS: LazyLock<Words> = LazyLock::new(|| Words::english().expect("words"));
static LEXICON: LazyLock<Lexicon> = LazyLock::new(|| Lexicon::open(&root().join("models/en")).expect("the lexicon"));

/// A reader of something from outside, and what it reads when all is well.
struct Reader {
    name: &'static str,
    seeds: fn() -> Vec<Vec<u8>>,
    /// The error's text, where it is refused.
    read: fn(&[u8]) -> Option<String>,
}

fn files(paths: &[&str]) -> Vec<Vec<u8>> {
    paths.iter().map(|path| std::fs::read(root().join(path)).unwrap_or_else(|why| panic!("{path}: {why}"))).collect()
}

fn hearing() -> Hearing<'static> {
    Hearing { commands: &[], knows_word: None, ..Hearing::default() }
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

fn key() -> SecretKey {
    SecretKey::from_bytes(&[6; 32])
}

fn package() -> Package {
    let mut package = Package::new("0123456789abcdef", "2026-03-02T18:00:00Z".parse().expect("a time"), "grandpa", &key());
    package.note = Some("Slowly.".into());
    package.routines.push(TextFile { name: "evening.toml".into(), text: text(&files(&["demo/evening.toml"]).concat()) });
    package
}

/// What stands under a seal, as if it were sealed well.
fn under_a_good_seal(content: &[u8]) -> Opened {
    Opened { content: text(content), by: key().public() }
}

/// In a folder of its own, under this name.
fn in_folder<T>(name: &str, bytes: &[u8], others: &[(&str, &str)], read: impl FnOnce(&Path) -> T) -> T {
    let folder = tempfile::tempdir().expect("a folder");
    for (name, path) in others {
        std::fs::create_dir_all(folder.path().join(name).parent().expect("a folder")).expect("makes");
        std::fs::copy(root().join(path), folder.path().join(name)).expect("copies");
    }
    let path = folder.path().join(name);
    std::fs::create_dir_all(path.parent().expect("a folder")).expect("makes");
    std::fs::write(&path, bytes).expect("writes");
    read(folder.path())
}

const JOURNAL: &str = "{\"at_s\":1.1,\"kind\":\"rested\",\"duration_s\":10}\n{\"at_s\":2.0,\"kind\":\"sound_lost\",\"lost_s\":0.3}\n\
    {\"at_s\":3.0,\"kind\":\"troubled\",\"trouble\":\"microphone-silent\"}\n";
const CALIBRATION: &str = "[[calibration]]\nmade_at = \"2026-03-02T18:00:00+01:00[Europe/Berlin]\"\n";

const READERS: &[Reader] = &[
    Reader {
        name: "routine",
        seeds: || files(&["demo/evening.toml", "demo/swallow.toml", "demo/voice-short.toml", "demo/week/words-and-syllables.toml"]),
        read: |bytes| check_bytes("x.toml", bytes, hearing()).err().map(|faults| faults.to_string()),
    },
    Reader {
        name: "pack",
        seeds: || files(&["src/routine/packs/opposites.toml", "src/routine/packs/categories.toml", "src/routine/packs/sayings.toml"]),
        read: |bytes| check_pack("x.toml", bytes, hearing()).err().map(|faults| faults.to_string()),
    },
    Reader {
        name: "class",
        seeds: || files(&["demo/class/thursday.toml"]),
        read: |bytes| check_class("x.toml", bytes, hearing()).err().map(|faults| faults.to_string()),
    },
    Reader {
        name: "household",
        seeds: || files(&["demo/household.toml"]),
        read: |bytes| {
            check_household("x.toml", &root().join("demo/household.toml"), bytes, &WORDS, &LEXICON).err().map(|why| why.to_string())
        },
    },
    Reader {
        name: "package",
        seeds: || vec![package().seal(&key()).expect("seals").into_bytes()],
        read: |bytes| handover::open(Kind::Package, bytes).err().map(|why| why.to_string()),
    },
    Reader {
        name: "package-content",
        seeds: || {
            vec![handover::open(Kind::Package, package().seal(&key()).expect("seals").as_bytes()).expect("opens").content.into_bytes()]
        },
        read: |bytes| Package::read(&under_a_good_seal(bytes)).err().map(|why| why.to_string()),
    },
    Reader {
        name: "results-content",
        seeds: || files(&["tests/corpus/results-content/seed.json"]),
        read: |bytes| Results::read(&under_a_good_seal(bytes)).err().map(|why| why.to_string()),
    },
    Reader {
        name: "settings",
        seeds: || vec![Settings::default().to_toml().into_bytes(), b"feedback_every = 3\nvoice = \"espeak-ng\"\n".to_vec()],
        read: |bytes| Settings::from_toml(&text(bytes)).err().map(|why| why.to_string()),
    },
    Reader {
        name: "journal",
        seeds: || vec![JOURNAL.as_bytes().to_vec()],
        read: |bytes| model::read_journal("x.jsonl", &text(bytes)).err().map(|why| why.to_string()),
    },
    Reader {
        name: "calibration",
        seeds: || vec![CALIBRATION.as_bytes().to_vec()],
        read: |bytes| in_folder("calibration.toml", bytes, &[], |folder| CalibrationStore::open(folder).err().map(|why| why.to_string())),
    },
    Reader {
        name: "language-about",
        seeds: || files(&["src/speak/words/en/pack.toml"]),
        read: |bytes| {
            let others = [("session.ftl", "src/speak/words/en/attend.ftl")];
            in_folder("pack.toml", bytes, &others, |folder| Language::open(folder).err().map(|why| why.to_string()))
        },
    },
    Reader {
        name: "language-words",
        seeds: || files(&["src/speak/words/en/attend.ftl", "src/speak/words/en/enrol.ftl"]),
        read: |bytes| {
            let others = [("pack.toml", "src/speak/words/en/pack.toml")];
            in_folder("session.ftl", bytes, &others, |folder| {
                Language::open(folder).and_then(|language| Words::of(language.into()).map(drop)).err().map(|why| why.to_string())
            })
        },
    },
    Reader {
        name: "model-words",
        seeds: || vec![b"<eps> 0\n[unk] 1\nstop 2\ngo 3\non 4\n".to_vec()],
        read: |bytes| {
            let needed = ["am/final.mdl", "conf/mfcc.conf", "graph/HCLr.fst", "graph/Gr.fst", "graph/disambig_tid.int"];
            // That these are there is all that is read of them here.
            let others = needed.map(|name| (name, "models/second-ear/classes.txt"));
            in_folder("graph/words.txt", bytes, &others, |folder| Lexicon::open(folder).err().map(|why| why.to_string()))
        },
    },
];

/// One thing that befalls a file.
#[derive(Debug, Clone)]
enum Damage {
    Byte(Index, u8),
    Cut(Index),
    /// A piece stands again elsewhere.
    Again(Index, Index, usize),
    Gone(Index, usize),
    Piece(Index, &'static [u8]),
    /// A line in place of another.
    Line(Index, Index),
}

/// What readers stumble over.
const PIECES: &[&[u8]] = &[
    b"\0",
    b"\xff\xfe",
    b"\"",
    b"'''",
    b"\n",
    b"\r",
    b"=",
    b"[[step]]\n",
    b"[",
    b"]",
    b"{",
    b"}",
    b"-",
    b"1e999",
    b"nan",
    b"-0",
    b"99999999999999999999",
    b"0x7fffffffffffffff",
    b"{ $x }",
    b"\xe2\x80\xae",
    b"\xc3\xbc",
    b"../../x",
    b"null",
    b"true",
    b"[[[[[[[[",
];

fn damage() -> impl Strategy<Value = Damage> {
    prop_oneof![
        4 => (any::<Index>(), any::<u8>()).prop_map(|(at, byte)| Damage::Byte(at, byte)),
        1 => any::<Index>().prop_map(Damage::Cut),
        2 => (any::<Index>(), any::<Index>(), 1..80usize).prop_map(|(from, to, length)| Damage::Again(from, to, length)),
        2 => (any::<Index>(), 1..80usize).prop_map(|(at, length)| Damage::Gone(at, length)),
        4 => (any::<Index>(), prop::sample::select(PIECES)).prop_map(|(at, piece)| Damage::Piece(at, piece)),
        2 => (any::<Index>(), any::<Index>()).prop_map(|(from, to)| Damage::Line(from, to)),
    ]
}

fn damaged(mut bytes: Vec<u8>, damages: &[Damage]) -> Vec<u8> {
    for damage in damages {
        let end = bytes.len() + 1;
        match damage {
            Damage::Byte(at, byte) => {
                let at = at.index(end);
                if let Some(there) = bytes.get_mut(at) {
                    *there = *byte;
                }
            }
            Damage::Cut(at) => bytes.truncate(at.index(end)),
            Damage::Again(from, to, length) => {
                let (from, to) = (from.index(end), to.index(end));
                let piece = bytes[from..(from + length).min(bytes.len())].to_vec();
                bytes.splice(to..to, piece);
            }
            Damage::Gone(at, length) => {
                let at = at.index(end);
                bytes.drain(at..(at + length).min(bytes.len()));
            }
            Damage::Piece(at, piece) => {
                let at = at.index(end);
                bytes.splice(at..at, piece.iter().copied());
            }
            Damage::Line(from, to) => {
                let mut lines: Vec<Vec<u8>> = bytes.split_inclusive(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
                if !lines.is_empty() {
                    let (from, to) = (from.index(lines.len()), to.index(lines.len()));
                    lines[to] = lines[from].clone();
                    bytes = lines.concat();
                }
            }
        }
    }
    bytes
}

/// Reads it; what is refused has a reason.
fn reads(reader: &Reader, bytes: &[u8]) -> bool {
    let refused = (reader.read)(bytes);
    assert!(refused.as_ref().is_none_or(|why| why.trim().len() > 5), "{}: no reason is given: {refused:?}", reader.name);
    refused.is_none()
}

#[test]
fn what_is_whole_is_read_and_what_once_broke_something_is_refused() {
    for reader in READERS {
        for (number, seed) in (reader.seeds)().iter().enumerate() {
            // The calibration lacks most of its fields on purpose: a whole one holds a device's name.
            let why = (reader.read)(seed);
            assert!(why.is_none() || reader.name == "calibration", "{} {number}: {why:?}", reader.name);
        }
        let Ok(kept) = std::fs::read_dir(root().join("tests/corpus").join(reader.name)) else { continue };
        for file in kept {
            reads(reader, &std::fs::read(file.expect("a file").path()).expect("reads"));
        }
    }
}

proptest! {
    // Failures are not written beside the tests: what was found is kept in tests/corpus/.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn damaged_text(reader in 0..READERS.len(), seed in any::<Index>(), damages in prop::collection::vec(damage(), 1..8)) {
        let reader = &READERS[reader];
        let mut seeds = (reader.seeds)();
        let seed = seeds.swap_remove(seed.index(seeds.len()));
        reads(reader, &damaged(seed, &damages));
    }
}

/// Frames as the parent of a recogniser sends them: length, kind, body.
fn frames() -> Vec<u8> {
    let mut sound = 1u64.to_le_bytes().to_vec();
    sound.extend(0.5f64.to_le_bytes());
    sound.push(1);
    sound.extend((-40.0f32).to_le_bytes());
    sound.extend([1u8; 640]);
    let grammar = br#"{"fast":false,"generation":1,"choices":[["stop","stop now"],["go on"]],"list_from":null}"#;
    let mut all = Vec::new();
    for (kind, body) in [(b'G', grammar.to_vec()), (b'S', sound.clone()), (b'F', 1u64.to_le_bytes().to_vec()), (b'S', sound)] {
        all.extend((body.len() as u32 + 1).to_le_bytes());
        all.push(kind);
        all.extend(body);
    }
    all
}

proptest! {
    #![proptest_config(ProptestConfig { cases: ProptestConfig::default().cases / 32, failure_persistence: None, ..ProptestConfig::default() })]

    /// The recogniser's side of the pipe: it goes on or ends, and does not panic.
    #[test]
    fn anything_into_the_recogniser(damages in prop::collection::vec(damage(), 0..6)) {
        let mut child = tidecount(["__recogniser"]).stdin(Stdio::piped()).stdout(Stdio::null()).stderr(Stdio::piped()).spawn().expect("starts");
        let mut pipe = child.stdin.take().expect("piped");
        // It may have ended before all is written.
        let _ = pipe.write_all(&damaged(frames(), &damages));
        drop(pipe);
        let done = child.wait_with_output().expect("ends");
        let told = String::from_utf8_lossy(&done.stderr);
        prop_assert!(!told.contains("panicked") && done.status.code().is_some_and(|code| code != 101), "{:?}: {told}", done.status);
    }

    /// The program's side of it: whatever a recogniser sends, it is started anew or told of.
    #[cfg(unix)]
    #[test]
    fn anything_out_of_the_recogniser(bytes in prop::collection::vec(any::<u8>(), 0..200), ready in any::<bool>()) {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().expect("a folder");
        let mut sent = Vec::new();
        if ready {
            sent.extend([1, 0, 0, 0, b'R']);
        }
        sent.extend(bytes);
        std::fs::write(folder.path().join("sent"), sent).expect("writes");
        let program = folder.path().join("recogniser");
        std::fs::write(&program, format!("#!/bin/sh\nexec cat {}\n", folder.path().join("sent").display())).expect("writes");
        std::fs::set_permissions(&program, std::fs::Permissions::from_mode(0o755)).expect("may be run");
        let options = Options { model: Models::from(root().join("models/en")), program: Some(program), fast: Grammar::default(), mode: Mode::Live };
        if let Ok(mut ear) = ChildRecogniser::start(&options) {
            for n in 0..5 {
                ear.push(f64::from(n) * 0.01, &[0.1; 160], true);
                ear.poll();
                std::thread::sleep(std::time::Duration::from_millis(2));
            }
        }
    }
}
