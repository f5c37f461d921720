//! Habits of a client: what no single rule can say.

use crate::{Client, Did, Heard, LogEntry, Script};
use session::Line;

const RATE: u32 = 16_000;
const HEAD: &str = "seed = 5\nreaction_s = [0.2, 0.3]\n";
const VOICE: &str = "voice = { name = \"slt\", speed = 1.0, level_db = -30.0 }\n";
const HOLD: &str = "[[rule]]\non = \"cue\"\ndoes = [{ hold = { f0_hz = 120.0, length_s = 1.0 } }]\n";

fn line(key: &str) -> Line {
    Line { key: key.into(), args: vec![] }
}

/// Says the keys, one each `each_s`, with the tool's voice at this level; gives what the client did.
fn lead(script: &str, keys: &[&str], each_s: f64, tool_db: f64) -> Vec<LogEntry> {
    let mut client = Client::new(Script::parse("c.toml", script).unwrap(), RATE).unwrap();
    let tool = crate::signal::gain(tool_db) as f32;
    let mut block = [0.0; 160];
    let per_line = (each_s * 100.0) as usize;
    for n in 0..keys.len() * per_line {
        let (at_s, within) = (n as f64 / 100.0, n % per_line);
        let line = line(keys[n / per_line]);
        match within {
            0 => client.hears(at_s, Heard::Began { line: &line, text: "" }),
            20 => client.hears(at_s, Heard::Ended { line: &line, text: "" }),
            _ => {}
        }
        client.listens(&[if within < 20 { tool } else { 0.0 }; 160]);
        client.next_block(at_s, &mut block).unwrap();
    }
    client.log().to_vec()
}

#[test]
fn a_rule_of_chance_fits_as_often_as_it_says_and_the_same_each_time() {
    let script = format!(
        "{HEAD}{VOICE}[[rule]]\non = \"ask\"\nchance = 0.33\ndoes = [\"nothing\"]\n[[rule]]\non = \"ask\"\ndoes = [{{ swallow = 0.1 }}]"
    );
    let log = lead(&script, &["ask"; 300], 0.6, -20.0);
    let missed = log.iter().filter(|did| did.kind == Did::Nothing).count();
    // 99 of 300 are to be expected, SD 8.
    assert_eq!(log.len(), 300);
    assert!((75..=123).contains(&missed), "{missed}");
    assert_eq!(log, lead(&script, &["ask"; 300], 0.6, -20.0));
}

#[test]
fn every_second_line_and_only_under_this_cue() {
    let script = format!("{HEAD}{VOICE}[[rule]]\non = \"ask\"\nevery = 2\ncue = \"ex-a-*\"\ndoes = [{{ swallow = 0.1 }}]");
    let keys = ["ask", "ask", "ex-a-cue", "ask", "ask", "ask", "ask", "ex-b-cue", "ask", "ask"];
    let log = lead(&script, &keys, 1.0, -20.0);
    let at: Vec<usize> = log.iter().map(|did| did.onset_s as usize).collect();
    assert_eq!(at, [4, 6]);
}

#[test]
fn what_was_meant_can_stand_when_it_is_reminded() {
    let script = format!("{VOICE}seed = 5\nreaction_s = [2.0, 2.0]\n").replace(VOICE, "");
    let script =
        format!("{script}{VOICE}[[rule]]\non = \"ask\"\ndoes = [{{ swallow = 0.5 }}]\n[[rule]]\non = \"again\"\ndoes = [\"as-meant\"]");
    let log = lead(&script, &["ask", "again", "x", "x"], 1.0, -20.0);
    // The line ended at 0.2 s.
    assert_eq!(log.len(), 1);
    assert!((log[0].onset_s - 2.2).abs() < 0.011, "{}", log[0].onset_s);
}

#[test]
fn everything_is_said_twice_with_a_pause_and_marked() {
    let voice = VOICE.replace(" }", ", repeat = 2, repeat_gap_s = [0.5, 0.9] }");
    let script = format!("{HEAD}{voice}[[rule]]\non = \"ask\"\ndoes = [{{ say = \"done\" }}, {{ swallow = 0.2 }}]");
    let log = lead(&script, &["ask", "x", "x", "x", "x"], 1.0, -20.0);
    let done: Vec<(Did, bool)> = log.iter().map(|did| (did.kind, did.again)).collect();
    assert_eq!(done, [(Did::Said, false), (Did::Said, true), (Did::Swallowed, false)]);
    let gap_s = log[1].onset_s - log[0].offset_s;
    assert!((0.49..=0.91).contains(&gap_s), "{gap_s}");
}

#[test]
fn pauses_stand_between_the_words() {
    let pauses = VOICE.replace(" }", ", pauses = { chance = 1.0, length_s = [0.8, 0.8] } }");
    let rule = "[[rule]]\non = \"ask\"\ndoes = [{ say = \"i am ready\" }]";
    let length = |voice: &str| {
        let log = lead(&format!("{HEAD}{voice}{rule}"), &["ask", "x", "x", "x", "x", "x"], 1.0, -20.0);
        log[0].offset_s - log[0].onset_s
    };
    let more_s = length(&pauses) - length(VOICE);
    // Two pauses; words spoken alone are longer than in a phrase.
    assert!((1.5..=3.2).contains(&more_s), "{more_s}");
}

#[test]
fn a_soft_line_is_not_understood_and_only_its_own_rules_fit() {
    let script = format!(
        "{HEAD}{VOICE}hearing = {{ needs_level_db = -16.0 }}\n[[rule]]\non = \"*\"\nunheard = true\nevery = 2\ndoes = [{{ say = \"louder\" }}]\n[[rule]]\non = \"ask\"\ndoes = [{{ swallow = 0.2 }}]"
    );
    let soft = lead(&script, &["ask"; 4], 1.5, -20.0);
    assert_eq!(soft.iter().map(|did| did.kind).collect::<Vec<_>>(), [Did::Said, Did::Said]);
    assert_eq!(soft[0].words.as_deref(), Some("louder"));
    assert!((1.5..3.0).contains(&soft[0].onset_s), "after the second line, not the first: {}", soft[0].onset_s);
    let loud = lead(&script, &["ask"; 4], 1.5, -14.0);
    assert_eq!(loud.iter().map(|did| did.kind).collect::<Vec<_>>(), [Did::Swallowed; 4]);
}

#[test]
fn trials_shrink_and_soften_and_a_rest_makes_up_for_some() {
    let script =
        format!("{HEAD}{VOICE}tires = {{ per_trial = 0.88, level_db_per_trial = -0.8, rest_on = \"resting\", rest_trials = 2 }}\n{HOLD}");
    let log = lead(&script, &["cue", "cue", "cue", "resting", "cue"], 2.0, -20.0);
    let lengths: Vec<f64> = log.iter().map(|did| did.offset_s - did.onset_s).collect();
    // Three trials are behind; the rest takes off two.
    for (length_s, trials) in lengths.iter().zip([0, 1, 2, 1]) {
        assert!((length_s - 0.88f64.powi(trials)).abs() < 0.03, "{lengths:?}");
    }
    assert_eq!(lengths.len(), 4);
}

#[test]
fn a_client_is_like_another_but_for_what_it_says_itself() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str| folder.path().join(name);
    std::fs::write(file("plain.toml"), format!("{HEAD}{VOICE}{HOLD}[answers]\n\"a\" = \"x\"\n\"b\" = \"y\"")).unwrap();
    std::fs::write(
        file("slow.toml"),
        "like = \"plain.toml\"\nreaction_s = [8.0, 20.0]\n[answers]\n\"a\" = \"z\"\n[[rule]]\non = \"ask\"\ndoes = [\"nothing\"]",
    )
    .unwrap();
    let slow = Script::open(&file("slow.toml")).unwrap();
    assert_eq!((slow.seed, slow.reaction_s, slow.rules.len()), (5, [8.0, 20.0], 2));
    assert!(slow.rules[0].get_ref().on.fits("ask") && slow.rules[1].get_ref().on.fits("cue"));
    assert_eq!((slow.answers["a"].as_str(), slow.answers["b"].as_str()), ("z", "y"));

    std::fs::write(file("ring.toml"), "like = \"ring.toml\"").unwrap();
    let said = Script::open(&file("ring.toml")).unwrap_err().0;
    assert!(said.contains("ring"), "{said}");
    let said = Script::open(&file("none.toml")).unwrap_err().0;
    assert!(said.contains("none.toml"), "{said}");
    let said = Script::parse("c.toml", "like = \"plain.toml\"").unwrap_err().0;
    assert!(said.contains("like"), "{said}");
    let said = Script::parse("c.toml", HEAD).unwrap_err().0;
    assert!(said.contains("[[rule]]"), "{said}");
}

#[test]
fn habits_out_of_range_are_named() {
    for (habit, named) in [
        ("hearing = { needs_level_db = 3.0 }", "hearing"),
        ("tires = { per_trial = 1.2 }", "tires"),
        ("room = { noise_db = 3.0 }", "room"),
        ("room = { television = { music_db = -40.0, music_s = [9.0, 1.0], gap_s = [1.0, 2.0] } }", "room.television"),
        ("room = { talk = [{ voice = \"awb\", speed = 1.0, level_db = -40.0, gap_s = [1.0, 2.0], sentences = [] }] }", "room.talk"),
    ] {
        let said = Script::parse("c.toml", &format!("{HEAD}{VOICE}{habit}\n{HOLD}")).unwrap_err().0;
        assert!(said.contains(named), "{habit}: {said}");
    }
    let said =
        Script::parse("c.toml", &format!("{HEAD}{VOICE}[[rule]]\non = \"x\"\nchance = 2.0\nevery = 0\ndoes = [\"nothing\", \"as-meant\"]"))
            .unwrap_err()
            .0;
    assert_eq!(said.lines().count(), 3, "{said}");
}

#[test]
fn the_clients_of_the_demo_week_can_be_read() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo/week/clients");
    let mut read = 0;
    for file in std::fs::read_dir(folder).unwrap().flatten() {
        Script::open(&file.path()).unwrap();
        read += 1;
    }
    assert_eq!(read, 9);
}
