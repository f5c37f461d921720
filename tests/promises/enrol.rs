//! Promise: a client enrols by voice alone, what is kept weighs in afterwards, and it can be shown and forgotten.
//!
//! Needs the program `flite`; without it the tests say "skipped".

#[path = "../support/program.rs"]
mod program;

use command_ear::templates::{OwnWord, Take, TakeFinder};
use command_ear::{ChildRecogniser, Choice, CommandEvent, CommandRecogniser, EnrolledVoice, Grammar, Mode, Options};
use live::enrol::enrolment::Enrolment;
use live::enrol::event::Learnt;
use live::follow::SharedScreen;
use live::observe::Observer;
use program::Place;
use record::{Source, Store};
use rehearse::{Client, Heard, Rehearsal, RehearsedIo, RoomSpec, Script};
use screen::NoScreen;
use serde_json::Value;
use session::{Command as Said, Line};
use speak::Words;
use std::path::{Path, PathBuf};
use std::process::Command;

const CLIENT: &str = r#"
seed = 3
reaction_s = [0.9, 1.4]
voice = { name = "rms", speed = 0.9, level_db = -28.0 }

[[rule]]
on = ["enrol-ask-consent*", "enrol-was-that-yes"]
does = [{ say = "yes" }]

# Says something else once, then as asked; breaks off at the fourth word.
[[rule]]
on = "enrol-once-more"
nth = [2]
does = [{ say = "help" }]

[[rule]]
on = "enrol-say-next"
nth = [3]
does = [{ say = "stop" }]

[[rule]]
on = ["enrol-say*", "enrol-once-more", "enrol-last-time", "enrol-sounded-like", "enrol-unlike", "enrol-near", "enrol-too-*", "enrol-doubtful-again"]
does = [{ read = "word" }]
"#;

fn model() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("models/en")
}

fn flite() -> bool {
    let there = Command::new("flite").arg("-lv").output().is_ok_and(|o| o.status.success());
    if !there {
        skipping::skip(skipping::Missing::Installed, "no flite program");
    }
    there
}

struct Ear(Rehearsal, std::sync::Arc<std::sync::Mutex<Vec<String>>>);

impl Observer for Ear {
    fn line_began(&mut self, at_s: f64, line: &Line, text: &str) {
        self.0.hears(at_s, Heard::Began { line, text });
        self.1.lock().expect("the lines").push(line.key.clone());
    }

    fn line_ended(&mut self, at_s: f64, line: &Line, text: &str) {
        self.0.hears(at_s, Heard::Ended { line, text });
    }
}

/// Leads an enrolment in a simulated room: how the words stand, what the client really did, what was said.
fn lead(data: &Path, client: &str) -> (Vec<Learnt>, Vec<Value>, Vec<String>) {
    let client = Client::new(Script::parse("client", client).expect("a script"), 16_000).expect("flite");
    let (io, rehearsal) = RehearsedIo::new(client, &RoomSpec::living_room(16_000), 0.06).expect("a room");
    let enrolment = Enrolment {
        words: Words::english().expect("the catalogue"),
        model: model().into(),
        hears_itself: true,
        voice: None,
        source: Source::Rehearsal,
        client: "client".into(),
        data: data.to_owned(),
        recogniser: Some(env!("CARGO_BIN_EXE_tidecount").into()),
    };
    let lines = std::sync::Arc::default();
    let ear = Ear(rehearsal.clone(), std::sync::Arc::clone(&lines));
    let (learnt, fault) = enrolment.lead(Box::new(io), SharedScreen::new(NoScreen), vec![Box::new(ear)]).expect("is led");
    assert_eq!(fault, None);
    let said = lines.lock().expect("the lines").clone();
    (learnt, rehearsal.log().iter().map(|did| serde_json::to_value(did).expect("JSON")).collect(), said)
}

fn kept(data: &Path) -> Vec<(String, usize)> {
    let words = Store::open(data).expect("opens").own_words("client").expect("reads");
    words.into_iter().map(|word| (word.command, word.takes.len())).collect()
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn a_client_enrols_by_voice_breaks_off_and_everything_done_is_kept_until_forgotten() {
    if !flite() {
        return;
    }
    let place = Place::new();
    let data = place.path("record");
    let (learnt, _, said) = lead(&data, CLIENT);
    let commands: Vec<Said> = learnt.iter().map(|word| word.command).collect();
    assert_eq!(commands, [Said::Stop, Said::Ready, Said::Yes], "{said:?}");
    let three = [("ready".to_owned(), 3), ("stop".to_owned(), 3), ("yes".to_owned(), 3)];
    assert_eq!(kept(&data), three);
    // The wrong word was noticed: by the recogniser, or as unlike the other takes.
    assert!(said.iter().any(|key| key == "enrol-sounded-like" || key == "enrol-unlike"), "{said:?}");
    assert!(said.contains(&"enrol-halted".to_owned()), "{said:?}");
    // No more than the takes asked for: nothing of our own voice was taken for one.
    assert!(said.iter().filter(|key| key.starts_with("enrol-too")).count() <= 1, "{said:?}");
}

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn without_a_yes_nothing_is_kept() {
    if !flite() {
        return;
    }
    let place = Place::new();
    let refusing = CLIENT.replace(r#"[{ say = "yes" }]"#, r#"[{ say = "no" }]"#);
    let (learnt, _, said) = lead(&place.path("record"), &refusing);
    assert!(learnt.is_empty() && said.contains(&"enrol-not-agreed".to_owned()), "{said:?}");
    assert_eq!(kept(&place.path("record")), []);
}

/// The text in a synthetic voice, slower or faster, in a faint noise.
fn say(text: &str, stretch: f64) -> Vec<f32> {
    let file = tempfile::Builder::new().suffix(".wav").tempfile().expect("a file");
    let stretch = format!("duration_stretch={stretch}");
    let done = Command::new("flite").args(["-voice", "rms", "--setf", &stretch, "-t", text, "-o"]).arg(file.path()).status();
    assert!(done.is_ok_and(|s| s.success()));
    let (_, word) = program::read_wav(file.path());
    let mut state = 7u32;
    let mut sound: Vec<f32> = (0..word.len() + 32_000)
        .map(|_| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (f64::from(state >> 8) / f64::from(1 << 24) - 0.5) as f32 * 0.001
        })
        .collect();
    sound.iter_mut().skip(12_000).zip(&word).for_each(|(to, x)| *to += x * 0.5);
    sound
}

fn take(text: &str, stretch: f64) -> Take {
    let mut finder = TakeFinder::default();
    let found = say(text, stretch).chunks(160).enumerate().find_map(|(i, block)| finder.push(i as f64 * 0.01, block, true));
    found.and_then(|found| found.said.ok()).expect("a take").take
}

fn hear(ear: &mut ChildRecogniser, text: &str, stretch: f64) -> Vec<(String, bool)> {
    ear.push(0.0, &say(text, stretch), true);
    let events = ear.finish();
    events.into_iter().filter_map(|e| if let CommandEvent::Heard(h) = e { Some((h.text, h.confidence >= 0.8)) } else { None }).collect()
}

/// This client's "help" and "skip" are nothing that the model knows.
#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn words_said_in_ones_own_way_are_heard_and_other_words_are_not() {
    if !flite() {
        return;
    }
    let own = |wording: &str, said: &str, costly: bool| OwnWord {
        wording: wording.into(),
        costly,
        takes: [0.9, 1.0, 1.15].map(|stretch| take(said, stretch)).to_vec(),
    };
    let voice = EnrolledVoice {
        words: vec![own("help", "yowpa", false), own("skip", "gibber", true), own("yes", "yes", false), own("again", "again", false)],
    };
    let choice = |w: &str| Choice { tag: w.into(), wordings: vec![w.into()] };
    let options = Options {
        model: model().into(),
        program: Some(env!("CARGO_BIN_EXE_tidecount").into()),
        fast: Grammar::default(),
        mode: Mode::Offline,
    };
    let mut ear = ChildRecogniser::start(&options).expect("starts");
    ear.listen_for(&Grammar { choices: ["help", "skip", "yes", "ready"].map(choice).to_vec(), ..Grammar::default() }).expect("known words");
    ear.weigh_in(&voice);
    assert_eq!(hear(&mut ear, "yowpa", 1.05), [("help".to_owned(), true)]);
    // A costly command is asked back, and one that is not listened for is nothing.
    assert_eq!(hear(&mut ear, "gibber", 1.05), [("skip".to_owned(), false)]);
    assert_eq!(hear(&mut ear, "again", 1.05), []);
    for other in ["marmalade", "the window", "slowly", "yowpa yowpa yowpa"] {
        assert_eq!(hear(&mut ear, other, 1.0), [], "{other}");
    }
    // The child that takes a dead one's place knows it, too.
    assert!(Command::new("kill").args(["-KILL", &ear.child_id().to_string()]).status().is_ok_and(|s| s.success()));
    while !ear.poll().iter().any(|e| matches!(e, CommandEvent::Restarted { .. })) {
        std::thread::yield_now();
    }
    assert_eq!(hear(&mut ear, "yowpa", 1.05), [("help".to_owned(), true)]);
}
