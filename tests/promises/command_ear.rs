//! Promise: commands are heard by a child process; whatever happens to it, the session goes on and hears on.
//!
//! The words are spoken by the `flite` program where it is installed; otherwise the tests that need sound say "skipped".

use command_ear::{
    ACT_CONFIDENCE, ChildRecogniser, Choice, CommandEvent, CommandRecogniser, Grammar, HeardPhrase, Mode, Options, Path as Ear,
    recognise_with,
};
use std::path::{Path, PathBuf};
use std::process::Command;

fn model() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("models/en")
}

fn grammar(phrases: &[&str]) -> Grammar {
    let choice = |p: &&str| Choice { tag: p.replace(' ', "-"), wordings: vec![(*p).to_owned()] };
    Grammar { choices: phrases.iter().map(choice).collect(), ..Grammar::default() }
}

fn options(fast: &[&str], mode: Mode) -> Options {
    Options { model: model().into(), program: Some(env!("CARGO_BIN_EXE_tidecount").into()), fast: grammar(fast), mode }
}

fn start(fast: &[&str], mode: Mode) -> ChildRecogniser {
    ChildRecogniser::start(&options(fast, mode)).expect("the ear starts")
}

/// The text in a synthetic voice at 16 kHz; None where flite is not installed.
fn say(text: &str) -> Option<Vec<f32>> {
    say_as("slt", text)
}

fn say_as(voice: &str, text: &str) -> Option<Vec<f32>> {
    let file = tempfile::Builder::new().suffix(".wav").tempfile().expect("a temporary file");
    let done = Command::new("flite").args(["-voice", voice, "-t", text, "-o"]).arg(file.path()).status();
    if !done.is_ok_and(|s| s.success()) {
        skipping::skip(skipping::Missing::Installed, &format!("no flite program with voice {voice}"));
        return None;
    }
    let mut wav = hound::WavReader::open(file.path()).expect("flite writes WAV");
    assert_eq!(wav.spec().sample_rate, 16_000);
    Some(wav.samples::<i16>().map(|s| f32::from(s.expect("a sample")) / 32768.0).collect())
}

/// Words at given instants in a faint even noise.
fn scene(length_s: f64, words: &[(f64, &[f32])]) -> Vec<f32> {
    let mut state = 1u32;
    let mut sound: Vec<f32> = (0..(length_s * 16_000.0) as usize)
        .map(|_| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (f64::from(state >> 8) / f64::from(1 << 24) - 0.5) as f32 * 0.002
        })
        .collect();
    for &(at_s, word) in words {
        for (to, from) in sound.iter_mut().skip((at_s * 16_000.0) as usize).zip(word) {
            *to += from;
        }
    }
    sound
}

/// Feeds a stretch in blocks of 10 ms from `from_s` on, polling after each.
fn feed(ear: &mut ChildRecogniser, sound: &[f32], from_s: f64, to_s: f64, main: bool) -> Vec<CommandEvent> {
    let mut events = Vec::new();
    for i in (from_s * 100.0).round() as usize..(to_s * 100.0).round() as usize {
        let block = &sound[i * 160..(i * 160 + 160).min(sound.len())];
        ear.push(i as f64 / 100.0, block, main);
        events.extend(ear.poll());
    }
    events
}

fn heard(events: &[CommandEvent]) -> Vec<HeardPhrase> {
    events.iter().filter_map(|e| if let CommandEvent::Heard(h) = e { Some(h.clone()) } else { None }).collect()
}

fn texts(events: &[CommandEvent]) -> Vec<String> {
    heard(events).into_iter().map(|h| h.text).collect()
}

#[test]
fn a_command_is_heard_where_it_was_said() {
    let Some(yes) = say("yes") else { return };
    let sound = scene(4.0, &[(1.0, &yes)]);
    let mut ear = start(&["stop"], Mode::Offline);
    ear.listen_for(&grammar(&["yes", "no", "continue"])).unwrap();
    let events = feed(&mut ear, &sound, 0.0, 4.0, true);
    let [yes_heard] = heard(&events).try_into().unwrap_or_else(|h| panic!("{h:?}"));
    assert_eq!((yes_heard.tag.as_str(), yes_heard.text.as_str(), yes_heard.path), ("yes", "yes", Ear::Main));
    assert!(yes_heard.confidence >= ACT_CONFIDENCE);
    let end_s = 1.0 + yes.len() as f64 / 16_000.0;
    assert!(yes_heard.start_s > 0.9 && yes_heard.end_s < end_s + 0.1, "{yes_heard:?}");
    assert!(yes_heard.decided_s > yes_heard.end_s && yes_heard.decided_s < end_s + 0.7, "{yes_heard:?}");
}

/// What sounds like a command and is named as such is not taken for it; what a person in trouble says is heard beside it.
#[test]
fn what_only_sounds_like_a_command_is_none() {
    let [Some(joking), Some(choking)] = ["i'm joking", "i'm choking"].map(|text| say_as("rms", text)) else { return };
    let sound = scene(7.0, &[(1.0, &joking), (4.0, &choking)]);
    let near = ["i'm joking", "i'm qwrtzly", "i'm choking"].map(str::to_owned).to_vec();
    let hear = |near: &[String]| {
        let mut ear = start(&[], Mode::Offline);
        ear.listen_for(&Grammar { near: near.to_vec(), urgent: vec!["i'm-choking".into()], ..grammar(&["i'm choking", "yes"]) }).unwrap();
        let mut events = feed(&mut ear, &sound, 0.0, 7.0, true);
        events.extend(ear.finish());
        heard(&events).into_iter().map(|heard| (heard.text, heard.start_s > 3.0)).collect::<Vec<_>>()
    };
    let [joked, choked] = [false, true].map(|late| ("i'm choking".to_owned(), late));
    assert_eq!(hear(&[]), [joked, choked.clone()], "without it, one passes for the other");
    assert_eq!(hear(&near), [choked]);
}

#[test]
fn stop_is_heard_while_the_main_path_is_closed_and_nothing_else_is() {
    let (Some(stop), Some(yes)) = (say("stop"), say("yes")) else { return };
    let sound = scene(5.0, &[(1.0, &yes), (3.0, &stop)]);
    let mut ear = start(&["stop", "stop please", "please stop"], Mode::Offline);
    ear.listen_for(&grammar(&["yes", "no"])).unwrap();
    let events = feed(&mut ear, &sound, 0.0, 5.0, false);
    assert_eq!(texts(&events), ["stop"]);
    assert!(heard(&events).iter().all(|h| h.path == Ear::Fast));
}

#[test]
fn both_paths_tell_of_one_word_once() {
    let Some(stop) = say("stop") else { return };
    let sound = scene(4.0, &[(1.0, &stop)]);
    let mut ear = start(&["stop"], Mode::Offline);
    ear.listen_for(&grammar(&["stop", "yes"])).unwrap();
    assert_eq!(texts(&feed(&mut ear, &sound, 0.0, 4.0, true)), ["stop"]);
}

#[test]
fn what_was_half_heard_is_dropped_when_the_grammar_changes() {
    let Some(yes) = say("yes") else { return };
    let sound = scene(4.0, &[(1.0, &yes)]);
    let mut ear = start(&[], Mode::Offline);
    ear.listen_for(&grammar(&["no"])).unwrap();
    let mut events = feed(&mut ear, &sound, 0.0, 1.3, true);
    ear.listen_for(&grammar(&["yes"])).unwrap();
    events.extend(feed(&mut ear, &sound, 1.3, 4.0, true));
    assert_eq!(texts(&events), [] as [&str; 0]);
}

#[test]
fn offline_runs_repeat_exactly_and_do_not_depend_on_the_block_size() {
    let (Some(yes), Some(stop)) = (say("yes"), say("stop now, I mean it")) else { return };
    let sound = scene(6.0, &[(1.0, &yes), (2.5, &stop), (4.5, &yes)]);
    let run = |block: usize| {
        let mut ear = start(&["stop"], Mode::Offline);
        ear.listen_for(&grammar(&["yes", "no"])).unwrap();
        let mut events = Vec::new();
        for (i, samples) in sound.chunks(block).enumerate() {
            ear.push((i * block) as f64 / 16_000.0, samples, true);
            events.extend(ear.poll());
        }
        events.extend(ear.finish());
        // Clocks computed by another sum may differ in the last bits.
        heard(&events).into_iter().map(|h| (h.text, (h.start_s * 1e6).round(), (h.decided_s * 1e6).round())).collect::<Vec<_>>()
    };
    let first = run(160);
    assert_eq!(first.iter().filter(|h| h.0 == "yes").count(), 2, "{first:?}");
    for block in [160, 77, 1024, 96_000] {
        assert_eq!(run(block), first, "blocks of {block}");
    }
}

#[cfg(unix)]
fn kill(pid: u32) {
    assert!(Command::new("kill").args(["-KILL", &pid.to_string()]).status().is_ok_and(|s| s.success()));
}

#[cfg(unix)]
#[test]
fn a_killed_child_is_replaced_and_hears_the_next_word() {
    let (Some(yes), Some(stop)) = (say("yes"), say("stop")) else { return };
    let sound = scene(8.0, &[(1.0, &yes), (4.0, &yes), (6.0, &stop)]);
    let mut ear = start(&["stop"], Mode::Offline);
    ear.listen_for(&grammar(&["yes", "no"])).unwrap();
    let mut events = feed(&mut ear, &sound, 0.0, 2.5, true);
    let old = ear.child_id();
    kill(old);
    events.extend(feed(&mut ear, &sound, 2.5, 8.0, true));
    let restarts: Vec<f64> =
        events.iter().filter_map(|e| if let CommandEvent::Restarted { lost_s } = e { Some(*lost_s) } else { None }).collect();
    assert!(matches!(restarts[..], [lost_s] if (0.0..1.5).contains(&lost_s)), "{restarts:?}");
    assert_eq!(texts(&events), ["yes", "yes", "stop"]);
    assert_ne!(ear.child_id(), old);
}

#[cfg(unix)]
#[test]
fn a_killed_child_is_replaced_in_live_mode_too() {
    let Some(yes) = say("yes") else { return };
    let sound = scene(3.0, &[(1.0, &yes)]);
    let mut ear = start(&["stop"], Mode::Live);
    ear.listen_for(&grammar(&["yes", "no"])).unwrap();
    kill(ear.child_id());
    // Nothing is pushed, and still the death is noticed; how soon is not asserted, only that it is.
    let mut events = Vec::new();
    while events.is_empty() {
        events.extend(ear.poll());
        std::thread::yield_now();
    }
    assert_eq!(events, [CommandEvent::Restarted { lost_s: 0.0 }]);
    let mut events = feed(&mut ear, &sound, 0.0, 3.0, true);
    events.extend(ear.finish());
    assert_eq!(texts(&events), ["yes"]);
}

#[cfg(unix)]
#[test]
fn a_child_that_keeps_dying_is_given_up_with_a_clear_error() {
    let mut ear = start(&["stop"], Mode::Offline);
    ear.listen_for(&grammar(&["yes"])).unwrap();
    let silence = [0.0; 160];
    let mut events = Vec::new();
    for i in 0..2_000 {
        if !events.iter().any(|e| matches!(e, CommandEvent::Failed { .. })) {
            // May be gone by itself already: its place is taken by the next.
            let _ = Command::new("kill").args(["-KILL", &ear.child_id().to_string()]).stderr(std::process::Stdio::null()).status();
        }
        ear.push(f64::from(i) / 100.0, &silence, true);
        events.extend(ear.poll());
    }
    let failures: Vec<&String> =
        events.iter().filter_map(|e| if let CommandEvent::Failed { message } = e { Some(message) } else { None }).collect();
    assert_eq!(failures.len(), 1);
    assert!(failures[0].contains("died 5 times") && failures[0].contains("models/en"), "{}", failures[0]);
    let error = ear.listen_for(&grammar(&["no"])).unwrap_err();
    assert_eq!(&error.0, failures[0]);
}

#[test]
fn a_grammar_that_cannot_be_listened_for_is_refused_and_the_old_one_stays() {
    let mut ear = start(&["stop"], Mode::Offline);
    ear.listen_for(&grammar(&["yes"])).unwrap();
    let pid = ear.child_id();
    for (bad, named) in [("stop\",\"go", "no word"), ("", "empty"), ("yes flumbergast", "flumbergast"), ("[unk]", "[unk]")] {
        let error = ear.listen_for(&grammar(&["no", bad])).unwrap_err();
        assert!(error.0.contains(named), "{error}");
    }
    let Some(yes) = say("yes") else { return };
    let sound = scene(3.0, &[(1.0, &yes)]);
    let events = feed(&mut ear, &sound, 0.0, 3.0, true);
    assert_eq!((texts(&events), ear.child_id()), (vec!["yes".to_owned()], pid));
}

#[test]
fn a_phrase_with_an_apostrophe_is_heard() {
    let Some(ready) = say_as("awb", "i'm ready") else { return };
    let sound = scene(3.0, &[(1.0, &ready)]);
    let found = recognise_with(&options(&[], Mode::Offline), &sound, &grammar(&["i'm ready", "how long", "no"])).unwrap();
    assert_eq!(found.iter().map(|h| h.text.as_str()).collect::<Vec<_>>(), ["i'm ready"], "{found:?}");
}

#[test]
fn talk_around_a_command_word_is_no_command() {
    let Some(talk) = say("please don't stop the music before nine in the evening") else { return };
    let sound = scene(6.0, &[(1.0, &talk)]);
    let found = recognise_with(&options(&["stop", "please stop"], Mode::Offline), &sound, &grammar(&["stop", "yes", "no"])).unwrap();
    assert_eq!(found, []);
}

#[test]
fn a_missing_model_and_a_broken_one_are_told_with_the_folder() {
    let mut options = options(&[], Mode::Offline);
    options.model = model().join("nowhere").into();
    let error = ChildRecogniser::start(&options).err().expect("no model, no ear");
    assert!(error.0.contains("nowhere"), "{error}");

    let folder = tempfile::tempdir().unwrap();
    for file in
        ["am/final.mdl", "conf/mfcc.conf", "conf/model.conf", "graph/HCLr.fst", "graph/Gr.fst", "graph/disambig_tid.int", "graph/words.txt"]
    {
        let to = folder.path().join(file);
        std::fs::create_dir_all(to.parent().unwrap()).unwrap();
        std::fs::copy(model().join(file), to).unwrap();
    }
    let cut = std::fs::read(model().join("am/final.mdl")).unwrap();
    std::fs::write(folder.path().join("am/final.mdl"), &cut[..1000]).unwrap();
    options.model = folder.path().to_owned().into();
    let error = ChildRecogniser::start(&options).err().expect("a cut model gives no ear");
    assert!(error.0.contains(&folder.path().display().to_string()), "{error}");
}

#[test]
fn a_program_that_is_not_there_is_told() {
    let mut options = options(&[], Mode::Offline);
    options.program = Some("no/such/program".into());
    let error = ChildRecogniser::start(&options).err().expect("no program, no ear");
    assert!(error.0.contains("no/such/program"), "{error}");
}
