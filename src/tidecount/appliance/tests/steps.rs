use std::cell::RefCell;

use super::*;
use crate::terminal::ask::Plain;

/// Two microphones and two loudspeakers; keeps what was played and turned.
#[derive(Default)]
struct Invented {
    log: RefCell<Vec<String>>,
    silent: bool,
    none: bool,
}

fn listed(name: &str, is_default: bool) -> Listed {
    Listed { name: name.to_owned(), description: format!("the {name}"), is_default }
}

impl Sounds for Invented {
    fn microphones(&self) -> Result<Vec<Listed>, String> {
        Ok(if self.none { Vec::new() } else { vec![listed("built-in", true), listed("desk", false)] })
    }
    fn loudspeakers(&self) -> Result<Vec<Listed>, String> {
        if self.none { Err("the sound system does not answer".to_owned()) } else { Ok(vec![listed("case", true), listed("shelf", false)]) }
    }
    fn listen(&self, name: &str) -> Result<(f64, f64), String> {
        self.log.borrow_mut().push(format!("listen {name}"));
        Ok(if self.silent { (f64::NEG_INFINITY, f64::NEG_INFINITY) } else { (-20.0, -38.0) })
    }
    fn play(&self, name: &str) -> Result<(), String> {
        self.log.borrow_mut().push(format!("play {name}"));
        Ok(())
    }
    fn turn(&self, louder: bool) -> Result<(), String> {
        self.log.borrow_mut().push(format!("louder {louder}"));
        Ok(())
    }
}

const FILE: &str = "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\n";

/// Refuses what a real check refuses for its own reasons.
fn judge(text: &str) -> Option<String> {
    (text.contains("25:00") || text.contains("one-word") || text.contains("gone.toml")).then(|| "That cannot be used.".to_owned())
}

/// What is written at the end, and all that was shown.
fn answered(file: &str, sounds: &Invented, answers: &str) -> (Draft, String) {
    let dir = tempfile::tempdir().expect("a folder");
    let mut out = Vec::new();
    let mut ask = Plain::new(answers.as_bytes(), &mut out);
    let mut steps =
        Steps { ask: &mut ask, sounds, judge: &judge, folder: dir.path().to_owned(), switch_on: Some(&|| SwitchedOn::NoManager) };
    let draft = steps.household(Draft::of(file).expect("TOML")).expect("answers");
    steps.autostart().expect("answers");
    (draft, String::from_utf8(out).expect("text"))
}

#[test]
fn the_return_key_alone_keeps_what_stands() {
    let file = format!("{FILE}[home]\nmicrophone = \"desk\"\nquiet_from = \"21:00\"\nquiet_to = \"06:00\"\n");
    let sounds = Invented::default();
    let (draft, shown) = answered(&file, &sounds, &"\n".repeat(20));
    assert_eq!(draft.text(), file);
    assert_eq!(*sounds.log.borrow(), ["listen desk", "play case"]);
    assert!(shown.contains("Mean level -38 dBFS, peak -20 dBFS: good.") && shown.contains("[21:00-06:00]"), "{shown}");
    assert!(shown.contains("not run by systemd") && shown.contains("systemctl --user enable --now tidecount-attend"), "{shown}");
}

#[test]
fn everything_that_is_answered_stands_in_the_file() {
    let answers = "2\nyes\n2\nlouder\nother\n1\nyes\n\n112\nbegin our work\n21:30-07:00\nyour daughter\nno\n";
    let sounds = Invented::default();
    let (draft, shown) = answered(FILE, &sounds, answers);
    let expected = [
        ("microphone", Some("desk")),
        ("loudspeaker", None),
        ("emergency_number", Some("112")),
        ("start_phrase", Some("begin our work")),
        ("quiet_from", Some("21:30")),
        ("quiet_to", Some("07:00")),
        ("tell_faults_to", Some("your daughter")),
    ];
    for (key, value) in expected {
        assert_eq!(draft.get(key), value, "{key}");
    }
    assert_eq!(*sounds.log.borrow(), ["listen desk", "play shelf", "louder true", "play shelf", "play case"]);
    assert!(!shown.contains("systemd"), "{shown}");
}

#[test]
fn somebody_without_a_routine_gets_a_short_one_and_a_fault_is_told_and_asked_again() {
    let answers = "\n\n\n\ngranny\ngone.toml\ngranny\n\n\nnone\none-word\nbegin our work\n25:00-07:00\nsoon\nnone\nnone\nno\n";
    let (draft, shown) = answered("", &Invented::default(), answers);
    assert_eq!(draft.persons(), ["granny"]);
    assert!(draft.text().contains("file = \"voice-short.toml\""), "{}", draft.text());
    assert_eq!((draft.get("start_phrase"), draft.get("quiet_from")), (Some("begin our work"), None));
    assert_eq!(shown.matches("That cannot be used.").count(), 3, "{shown}");
    assert!(shown.contains("two times with a dash"), "{shown}");
}

#[test]
fn without_devices_the_other_steps_are_still_asked() {
    let (draft, shown) = answered(FILE, &Invented { none: true, ..Invented::default() }, "\n112\n\n\n\nno\n");
    assert_eq!(draft.get("emergency_number"), Some("112"));
    assert!(shown.contains("No microphone was found") && shown.contains("does not answer"), "{shown}");
}

#[test]
fn a_silent_microphone_is_told_and_another_can_be_taken() {
    let sounds = Invented { silent: true, ..Invented::default() };
    let (_, shown) = answered(FILE, &sounds, &format!("1\nno\n2\nyes\n{}no\n", "\n".repeat(7)));
    assert_eq!(*sounds.log.borrow(), ["listen built-in", "listen desk", "play case"]);
    assert!(shown.contains("muted or switched off") && shown.contains("tidecount doctor"), "{shown}");
    assert!(judged(0.0, -10.0).0.contains("too loud") && judged(-50.0, -70.0).0.contains("too soft"));
}

#[test]
fn where_nobody_practises_only_the_first_steps_are_asked() {
    let mut out = Vec::new();
    let mut ask = Plain::new("\n\n\n\n\n".as_bytes(), &mut out);
    let sounds = Invented::default();
    let mut steps = Steps { ask: &mut ask, sounds: &sounds, judge: &judge, folder: PathBuf::from("."), switch_on: None };
    assert!(steps.household(Draft::of("").expect("TOML")).expect("answers").persons().is_empty());
    steps.autostart().expect("says so");
    assert!(String::from_utf8(out).expect("text").contains("usual data folder"));
}
