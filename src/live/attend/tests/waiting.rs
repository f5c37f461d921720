use super::*;
use attend::{HouseRoutine, Person, Pronoun};
use audio::file::WavSpeaker;
use audio::{AudioError, Captured, MicSource};
use session::Line;
use std::sync::Arc;
use std::sync::Mutex;

const RATE_HZ: u32 = 16_000;

/// A microphone that is unplugged after so many blocks.
struct Unplugged(u32);

impl MicSource for Unplugged {
    fn rate_hz(&self) -> u32 {
        RATE_HZ
    }
    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        self.0 = self.0.checked_sub(1).ok_or_else(|| AudioError::Device("the microphone went away".into()))?;
        std::thread::sleep(std::time::Duration::from_millis(2));
        mic.iter_mut().enumerate().for_each(|(n, x)| *x = if n % 2 == 0 { 1e-4 } else { -1e-4 });
        Ok(Captured::default())
    }
}

#[derive(Clone, Default)]
struct Said(Arc<Mutex<Vec<String>>>);

impl Observer for Said {
    fn line_began(&mut self, _at_s: f64, line: &Line, _text: &str) {
        self.0.lock().unwrap().push(line.key.clone());
    }
    fn told(&mut self, _at_s: f64, warning: &str) {
        self.0.lock().unwrap().push(warning.to_owned());
    }
}

/// The program beside the test, which plays the recogniser's part; none where only the library was built.
fn program() -> Option<PathBuf> {
    let own = std::env::current_exe().ok()?;
    let program = own.parent()?.parent()?.join("tidecount");
    if !program.exists() {
        skipping::skip(skipping::Missing::Installed, &format!("{} is not built", program.display()));
    }
    program.exists().then_some(program)
}

#[test]
fn a_microphone_that_goes_is_told_aloud_and_kept_and_so_is_its_return() {
    let Some(program) = program() else { return };
    let folder = tempfile::tempdir().unwrap();
    let routine = HouseRoutine { file: String::new(), title: "Evening".into(), called: vec!["evening routine".into()], plan: Vec::new() };
    let person = Person { name: "grandpa".into(), pronoun: Pronoun::He, summary_after: false, by_page: false, routines: vec![routine] };
    let house = House {
        household: Household { persons: vec![person], ..Household::default() },
        words: Words::english().unwrap(),
        model: PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../models/en").into(),
        voice: Some("espeak-ng".into()),
        data: folder.path().to_owned(),
        recogniser: Some(program),
        begins_at: None,
    };
    // It is there for 30 blocks, then gone for one look, then there for good.
    let mut opened = 0;
    let open_mic = Box::new(move || {
        opened += 1;
        match opened {
            1 => Ok(Box::new(Unplugged(30)) as Box<dyn MicSource>),
            2 => Err(AudioError::NoDevice("there is no microphone".into())),
            _ => Ok(Box::new(Unplugged(u32::MAX)) as Box<dyn MicSource>),
        }
    });
    let wav = WavSpeaker::create(&folder.path().join("said.wav"), RATE_HZ).unwrap();
    let mut waiting = Waiting::new(house, Devices::of(open_mic, wav, RATE_HZ)).unwrap();
    let said = Said::default();
    waiting.conductor.stage.observers = vec![Box::new(said.clone())];
    let heard = |what: &str| said.0.lock().unwrap().iter().any(|line| line.contains(what));
    // However slow the machine: until it has happened. The notice itself takes some seconds, two looks for a microphone lie 2 s apart.
    for _ in 0..20_000 {
        waiting.conductor.step(|| false).unwrap();
        if heard("attend-hears-again") {
            break;
        }
    }
    let lines = said.0.lock().unwrap().clone();
    let at = |what: &str| lines.iter().position(|line| line.contains(what)).unwrap_or_else(|| panic!("{what} is not in {lines:?}"));
    assert!(at("the microphone went away") <= at("attend-deaf-gone") && at("attend-deaf-gone") < at("attend-hears-again"), "{lines:?}");
    assert!(at("there is no microphone") < at("attend-hears-again"));
    let kept = std::fs::read_to_string(folder.path().join("notices.jsonl")).unwrap();
    let what: Vec<_> =
        kept.lines().map(|line| serde_json::from_str::<serde_json::Value>(line).unwrap()["what"].as_str().unwrap().to_owned()).collect();
    assert_eq!(what, ["said", "over"], "{kept}");
}
