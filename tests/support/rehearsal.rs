//! Leads a practice in-process with a simulated client, in any room and as if live.
#![allow(dead_code, reason = "each test takes what it needs")]

use command_ear::Lexicon;
use files::load;
use live::follow::SharedScreen;
use live::observe::Observer;
use live::practice::{ClassGiven, Practice};
use record::Source;
use rehearse::{Client, Heard, Rehearsal, RehearsedIo, RoomSpec, Script};
use screen::NoScreen;
use serde_json::Value;
use session::Line;
use speak::Words;
use std::path::{Path, PathBuf};

pub const RATE_HZ: u32 = 16_000;

/// One practice to lead.
pub struct Scene<'a> {
    pub routine: &'a str,
    pub client: &'a str,
    pub room: RoomSpec,
    pub source: Source,
    /// Holds the record; several practices may share it.
    pub folder: &'a Path,
    pub name: &'a str,
}

/// What became of it.
pub struct Led {
    pub journal: Vec<Value>,
    /// What the client really did.
    pub truth: Vec<Value>,
    /// Key and text of every line that was begun, with its time, s.
    pub said: Vec<(f64, String, String)>,
}

impl Led {
    pub fn said(&self, key: &str) -> usize {
        self.said.iter().filter(|line| line.1 == key).count()
    }
}

#[derive(Clone, Default)]
struct Ear(std::sync::Arc<std::sync::Mutex<Vec<(f64, String, String)>>>);

/// Ticks of a tenth of a second after which a practice has got stuck: an hour.
const STUCK: u32 = 36_000;

struct Follower(Rehearsal, Ear, u32);

impl Observer for Follower {
    fn line_began(&mut self, at_s: f64, line: &Line, text: &str) {
        self.0.hears(at_s, Heard::Began { line, text });
        self.1.0.lock().expect("the ear").push((at_s, line.key.clone(), text.to_owned()));
    }

    fn tick(&mut self) {
        self.2 += 1;
        assert!(self.2 < STUCK, "it does not come to an end; said: {:?}", self.1.0.lock().expect("the ear"));
    }

    fn line_ended(&mut self, at_s: f64, line: &Line, text: &str) {
        self.0.hears(at_s, Heard::Ended { line, text });
    }
}

/// Leads a class: what was said and what was done; there is no journal.
pub fn lead_class(scene: &Scene<'_>) -> Led {
    lead_class_with(scene, ClassGiven::default(), Vec::new())
}

/// The same with a list, and whoever keeps the class.
pub fn lead_class_with(scene: &Scene<'_>, class: ClassGiven, mut observers: Vec<Box<dyn Observer>>) -> Led {
    let (practice, io, rehearsal, _) = set_up(scene);
    let ear = Ear::default();
    observers.push(Box::new(Follower(rehearsal.clone(), ear.clone(), 0)));
    let fault = practice.lead_class(class, Box::new(io), SharedScreen::new(NoScreen), observers).unwrap_or_else(|why| panic!("{why}"));
    assert_eq!(fault, None);
    ended(Vec::new(), &rehearsal, &ear)
}

pub fn lead(scene: &Scene<'_>) -> Led {
    lead_protocol(scene, None)
}

/// Leads a practice, or a baseline of this name.
pub fn lead_protocol(scene: &Scene<'_>, protocol: Option<&str>) -> Led {
    let (practice, io, rehearsal, journal) = set_up(scene);
    let practice = Practice { protocol: protocol.map(str::to_owned), ..practice };
    let ear = Ear::default();
    let follower = Follower(rehearsal.clone(), ear.clone(), 0);
    // Dropping the outcome is the end: the journal has been written by then.
    drop(practice.lead(Box::new(io), SharedScreen::new(NoScreen), vec![Box::new(follower)]).unwrap_or_else(|why| panic!("{why}")));
    let text = std::fs::read_to_string(&journal).expect("the journal");
    let parse = |line: &str| serde_json::from_str(line).expect("JSON");
    ended(text.lines().map(parse).collect(), &rehearsal, &ear)
}

fn ended(journal: Vec<Value>, rehearsal: &Rehearsal, ear: &Ear) -> Led {
    let said = std::mem::take(&mut *ear.0.lock().expect("the ear"));
    Led { journal, truth: rehearsal.log().iter().map(|did| serde_json::to_value(did).expect("JSON")).collect(), said }
}

fn set_up(scene: &Scene<'_>) -> (Practice, RehearsedIo, Rehearsal, PathBuf) {
    let words = Words::english().expect("the catalogue");
    let model = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("models/en");
    let lexicon = Lexicon::open(&model).expect("the lexicon");
    let routine = scene.folder.join(format!("{}.toml", scene.name));
    std::fs::write(&routine, scene.routine).expect("writes");
    let (prescription, routine_text) = load::routine(&routine, &words, &lexicon).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let client = Client::new(Script::parse("client", scene.client).expect("a script"), RATE_HZ).expect("flite");
    let (io, rehearsal) = RehearsedIo::new(client, &scene.room, 0.06).expect("a room");
    let journal = scene.folder.join(format!("{}.jsonl", scene.name));
    let practice = Practice {
        prescription,
        routine_text,
        words,
        model: model.into(),
        lexicon,
        hears_itself: true,
        voice: None,
        source: scene.source,
        client: "client".into(),
        data: scene.folder.join("record"),
        journal: Some(journal.clone()),
        levels: live::levels::Levels::default(),
        by_page: false,
        recogniser: Some(env!("CARGO_BIN_EXE_tidecount").into()),
        mic_gates: false,
        emergency_number: None,
        protocol: None,
    };
    (practice, io, rehearsal, journal)
}
