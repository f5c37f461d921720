//! Promise: the short questions at the end are answered by voice, through the real ears; what is skipped stands as passed over, and
//! "finish" ends them at once.

#[path = "../support/rehearsal.rs"]
mod rehearsal;

use record::{Source, Store};
use rehearsal::{Led, RATE_HZ, Scene, lead};
use rehearse::RoomSpec;
use serde_json::{Value, json};
use std::path::Path;

const ROUTINE: &str = r#"
title = "Short evening"
client = "client"
ratings = ["effort", "tiredness", "pain"]
weekly_questions = true
[[step]]
exercise = "nasal-breathing"
repetitions = 1
in = 2
out = 3
[[step]]
exercise = "effortful-swallow"
repetitions = 1
cautions_acknowledged = true
"#;

/// A client who does what is asked; `rules` say what is answered at the end.
fn client(voice: &str, seed: u32, rules: &str) -> String {
    format!(
        r#"
seed = {seed}
reaction_s = [0.8, 2.0]
voice = {{ name = "{voice}", speed = 0.9, level_db = -26.0 }}
{rules}
[[rule]]
on = ["ask-agreement", "ask-agreement-again", "ask-confirm"]
does = [{{ say = "yes" }}]
[[rule]]
on = ["ask-ready*", "ask-position", "wait-for-ready", "ready-not-understood"]
does = [{{ say = "i'm ready" }}]
[[rule]]
on = ["ex-effortful-swallow-cue", "done-again", "done-once-more"]
does = [{{ say = "i'm done" }}]
"#
    )
}

fn answers(rules: &[(&str, &str)]) -> String {
    rules.iter().map(|(on, words)| format!("[[rule]]\non = \"{on}\"\ndoes = [{{ say = \"{words}\" }}]\n")).collect()
}

fn led(name: &str, client: &str, source: Source) -> Led {
    let dir = tempfile::tempdir().expect("a folder");
    led_in(dir.path(), name, client, source)
}

fn led_in(folder: &Path, name: &str, client: &str, source: Source) -> Led {
    lead(&Scene { routine: ROUTINE, client, room: RoomSpec::living_room(RATE_HZ), source, folder, name })
}

/// Kind and answer of everything that was asked at the end.
fn told(led: &Led) -> Vec<(String, Value)> {
    let of = |entry: &Value| match entry["kind"].as_str()? {
        "rated" => Some((entry["what"].as_str()?.to_owned(), entry["value"].clone())),
        "swallow_sign" => Some((entry["sign"].as_str()?.to_owned(), entry["answer"].clone())),
        "days_missed" => Some(("days missed".to_owned(), entry["reason"].clone())),
        _ => None,
    };
    led.journal.iter().filter_map(of).collect()
}

/// The first live practice of a client: what is asked once a week is due, and no planned day was missed. The sound of practices may be
/// kept: what is told of the week can be heard, and is gone when the client is forgotten.
#[test]
fn a_client_answers_by_voice_and_skips_one() {
    let rules = answers(&[
        ("ask-effort", "four"),
        ("ask-tiredness", "next"),
        ("ask-pain", "zero"),
        ("ask-voice", "seven"),
        ("ask-moment", "on tuesday i rang my sister and she heard every word"),
        ("ask-sign-cough-at-meals", "yes"),
        ("ask-sign-wet-voice", "no"),
        ("ask-sign-weight-loss", "i'm not sure"),
        ("ask-sign-chest-infection", "next"),
        ("ask-rating-again", "four"),
        ("ask-sign-again", "no"),
    ]);
    let dir = tempfile::tempdir().expect("a folder");
    let data = dir.path().join("record");
    let now = jiff::ZonedDateTime::now();
    let mut store = Store::open(&data).expect("opens");
    store.sound_wish("client", 30, &now).expect("wishes");
    store.sound_consent_by_voice("client", true, 30, &now).expect("agrees");
    drop(store);
    // The commands' own model knows no whole vocabulary: put in the place of one that does, it writes nothing rather than something wrong.
    #[cfg(unix)]
    std::os::unix::fs::symlink(concat!(env!("CARGO_MANIFEST_DIR"), "/models/en"), data.join("writing-model")).expect("a link");
    let led = led_in(dir.path(), "answers", &client("rms", 3, &rules), Source::Live);
    let expected = [
        ("effort", json!(4)),
        ("tiredness", Value::Null),
        ("pain", json!(0)),
        ("voice", json!(7)),
        ("cough at meals", json!("yes")),
        ("wet voice", json!("no")),
        ("weight loss", json!("not sure")),
        ("chest infection", json!("passed over")),
    ];
    assert_eq!(told(&led), expected.map(|(what, answer)| (what.to_owned(), answer)), "{:#?}", led.said);
    assert_eq!(led.said("rating-taken"), 3, "each number is said back");
    let ended = led.journal.last().expect("entries");
    assert_eq!((&ended["kind"], &ended["reason"]), (&json!("session_ended"), &json!("completed")));

    assert_eq!((led.said("ask-moment"), led.said("moment-taken")), (1, 1), "{:#?}", led.said);
    let store = Store::open(&data).expect("opens");
    let practised = store.practised("client", now.date()).expect("reads");
    let [moment] = &practised.moments[..] else { panic!("one moment: {:?}", practised.moments) };
    let spoken = led.truth.iter().find(|did| did.to_string().contains("rang my sister")).expect("told");
    let (from_s, until_s) = (spoken["onset_s"].as_f64().expect("s"), spoken["offset_s"].as_f64().expect("s"));
    assert!((moment.from_s - from_s).abs() < 0.6 && (moment.until_s - until_s).abs() < 0.6, "{moment:?} {spoken}");
    assert_eq!(moment.text, None, "{moment:?}");
    assert!(moment.heard_until.is_some(), "kept as sound: {moment:?}");
    let sound = store.sound_of_moment("client", moment).expect("reads").expect("its sound");
    let file = store.sound_folder().join(&sound.file);
    assert!(file.exists());
    drop(store);
    Store::forget(&data, "client").expect("forgets");
    assert!(!file.exists());
    let gone = Store::open(&data).expect("opens").practised("client", now.date()).expect("reads");
    assert!(gone.moments.is_empty());
}

/// A number that was misheard, or thought better of, is corrected; "finish" ends the questions, and the practice stands as completed.
#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn a_number_is_corrected_and_finish_ends_the_questions() {
    let first = "[[rule]]\non = \"ask-effort\"\nnth = [1]\ndoes = [{ say = \"eight\" }]\n\
                 [[rule]]\non = \"rating-taken\"\nnth = [1]\nreaction_s = [0.3, 0.8]\ndoes = [{ say = \"no\" }]\n";
    let rules = format!("{first}{}", answers(&[("ask-effort", "six"), ("ask-tiredness", "finish for today")]));
    let led = led("corrected", &client("rms", 4, &rules), Source::Rehearsal);
    let effort: Vec<Value> = told(&led).into_iter().map(|(_, value)| value).collect();
    assert_eq!(effort, [json!(8), json!(6)], "{:#?}", led.said);
    assert_eq!((led.said("ask-pain"), led.said("questions-left")), (0, 1));
    assert_eq!(led.journal.last().expect("entries")["reason"], "completed");
}

/// Every number in several voices, none of them known to the ears from training alone: how many are heard at once is printed; none ends
/// the questions ("five" is near to "stop"), and what is said back is what stands in the journal.
#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn no_number_ends_the_questions() {
    const NUMBERS: [&str; 11] = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
    let (mut right, mut wrong, mut missed) = (0, Vec::new(), Vec::new());
    for (voice, seed) in [("rms", 11_u32), ("slt", 12), ("awb", 13)] {
        for three in NUMBERS.chunks(3) {
            let said: Vec<&str> = three.iter().copied().chain(["five", "five"]).take(3).collect();
            let rules = answers(&[("ask-effort", said[0]), ("ask-tiredness", said[1]), ("ask-pain", said[2])]);
            let led = led("numbers", &client(voice, seed, &rules), Source::Rehearsal);
            let ended = led.journal.iter().any(|entry| entry["kind"] == "command_heard" && entry["command"] == "stop");
            assert!(!ended, "{voice}: {said:?}: a number passed for stop");
            assert!(led.said("ask-effort") > 0, "{voice}");
            for ((what, heard), meant) in told(&led).into_iter().zip(&said) {
                let value = NUMBERS.iter().position(|number| number == meant).expect("a number");
                match heard.as_u64() {
                    Some(heard) if heard == value as u64 => right += 1,
                    Some(heard) => wrong.push(format!("{voice}: {meant} as {heard} ({what})")),
                    None => missed.push(format!("{voice}: {meant}")),
                }
            }
        }
    }
    println!("right {right}, wrong {wrong:?}, missed {missed:?}");
    assert!(right >= 24, "right {right} of 36; wrong {wrong:?}, missed {missed:?}");
}
