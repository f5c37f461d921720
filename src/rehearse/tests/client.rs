use super::*;
use crate::{Client, Did, Heard, Script};
use session::{Arg, Line};

const RATE: u32 = 16_000;

fn client(rules: &str) -> Client {
    let head = "seed = 3\nreaction_s = [1.0, 2.0]\nvoice = { name = \"slt\", speed = 1.0, level_db = -30.0 }\n";
    Client::new(Script::parse("test.toml", &format!("{head}{rules}")).unwrap(), RATE).unwrap()
}

fn line(key: &str) -> Line {
    Line { key: key.into(), args: vec![] }
}

/// Runs the client through lines that begin and end at given times; gives its voice.
fn run(client: &mut Client, length_s: f64, lines: &[(f64, f64, Line)], block: usize) -> Vec<f32> {
    let mut voice = vec![0.0; (length_s * f64::from(RATE)) as usize];
    for (n, out) in voice.chunks_mut(block).enumerate() {
        let (from, to) = ((n * block) as f64 / f64::from(RATE), ((n + 1) * block) as f64 / f64::from(RATE));
        for (began, ended, line) in lines {
            if (from..to).contains(began) {
                client.hears(*began, Heard::Began { line, text: "" });
            }
            if (from..to).contains(ended) {
                client.hears(*ended, Heard::Ended { line, text: "" });
            }
        }
        client.next_block(from, out).unwrap();
    }
    voice
}

#[test]
fn it_answers_after_its_reaction_time_and_the_log_tells_when() {
    let mut c = client("[[rule]]\non = \"ask-ready*\"\ndoes = [{ say = \"i'm ready\" }]");
    let voice = run(&mut c, 6.0, &[(0.0, 1.0, line("ask-ready"))], 160);
    let [entry] = c.log() else { panic!("{:?}", c.log()) };
    assert_eq!((entry.kind, entry.words.as_deref(), entry.on.as_str()), (Did::Said, Some("i'm ready"), "ask-ready"));
    assert!((2.0..=3.0).contains(&entry.onset_s), "{}", entry.onset_s);
    assert!(part(&voice, RATE, 0.0, entry.onset_s).iter().all(|v| *v == 0.0));
    assert!(part(&voice, RATE, entry.offset_s, 6.0).iter().all(|v| *v == 0.0));
    let level = level_db(part(&voice, RATE, entry.onset_s, entry.offset_s));
    assert!((-34.0..-28.0).contains(&level), "{level}");
}

#[test]
fn the_nth_time_counts_and_the_count_starts_anew() {
    let rules =
        "[[rule]]\non = \"ask*\"\nnth = [1]\nsince = \"step\"\ndoes = [\"nothing\"]\n[[rule]]\non = \"ask*\"\ndoes = [{ say = \"yes\" }]";
    let mut c = client(rules);
    let times = [
        (0.0, 0.5, line("ask-a")),
        (4.0, 4.5, line("ask-b")),
        (8.0, 8.5, line("step")),
        (9.0, 9.5, line("ask-a")),
        (13.0, 13.5, line("ask-a")),
    ];
    run(&mut c, 17.0, &times, 160);
    let kinds: Vec<Did> = c.log().iter().map(|e| e.kind).collect();
    assert_eq!(kinds, [Did::Nothing, Did::Said, Did::Nothing, Did::Said]);
}

#[test]
fn it_can_talk_over_a_line() {
    let mut c = client("[[rule]]\non = \"ex-*\"\nover = true\nreaction_s = [0.5, 0.6]\ndoes = [{ say = \"stop\" }]");
    run(&mut c, 6.0, &[(1.0, 5.0, line("ex-long-ah-instruction"))], 160);
    assert!((1.5..=1.6).contains(&c.log()[0].onset_s));
}

#[test]
fn one_star_stands_for_anything_in_a_key() {
    let fits = |pattern: &str, key: &str| crate::act::OneOrMany::One(pattern.to_owned()).fits(key);
    assert!(fits("ex-*-cue", "ex-long-ah-cue") && fits("ask-*", "ask-ready") && fits("*-cue", "ex-long-ah-cue") && fits("a", "a"));
    assert!(!fits("ex-*-cue", "ex-long-ah-instruction") && !fits("ex-*-cue", "ex-cue") && !fits("ask-*", "asks") && !fits("a", "b"));
}

#[test]
fn a_new_line_replaces_what_had_not_begun_and_waits_for_what_had() {
    let rules = "[[rule]]\non = \"a\"\ndoes = [{ say = \"yes\" }]\n[[rule]]\non = \"b\"\nreaction_s = [0.0, 0.0]\ndoes = [{ hold = { f0_hz = 120.0, length_s = 3.0 } }]\n[[rule]]\non = \"c\"\nreaction_s = [0.0, 0.0]\ndoes = [{ say = \"no\" }]";
    let mut c = client(rules);
    run(&mut c, 8.0, &[(0.0, 0.5, line("a")), (0.6, 1.0, line("b")), (1.2, 2.0, line("c"))], 160);
    let log = c.log();
    assert_eq!(log.iter().map(|e| e.kind).collect::<Vec<_>>(), [Did::Held, Did::Said]);
    assert_eq!(log[1].words.as_deref(), Some("no"));
    assert!(log[1].onset_s > log[0].offset_s);
}

#[test]
fn the_log_holds_the_truth_about_a_hold_after_a_cough() {
    let rules = "[[rule]]\non = \"cue\"\ndoes = [\"cough\", { hold = { f0_hz = 130.0, length_s = 3.0, fade_db_per_s = -1.0, level_db = -28.0, break = [1.5, 0.15] } }]";
    let mut c = client(rules);
    let voice = run(&mut c, 8.0, &[(0.0, 0.5, line("cue"))], 160);
    let [coughed, held] = c.log() else { panic!("{:?}", c.log()) };
    assert_eq!((coughed.kind, held.kind), (Did::Coughed, Did::Held));
    assert!((held.offset_s - held.onset_s - 3.0).abs() < 0.01);
    assert!((held.f0_hz.unwrap() / 130.0 - 1.0).abs() < 0.01);
    let (first, last) = sounding(part(&voice, RATE, held.onset_s - 0.1, 8.0), RATE, -55.0);
    assert!((first - 0.1).abs() < 0.005 && (last - 0.1 - (held.offset_s - held.onset_s)).abs() < 0.03, "{first} {last}");
}

#[test]
fn it_reads_and_answers_from_the_line_it_heard() {
    let rules = "[answers]\n\"a clue\" = \"bank\"\n[[rule]]\non = \"read-phrase\"\ndoes = [{ read = \"phrase\" }]\n[[rule]]\non = \"question-clue\"\ndoes = [{ answer = \"clue\" }]";
    let mut c = client(rules);
    let read = Line { key: "read-phrase".into(), args: vec![("phrase", Arg::Text("good morning".into()))] };
    let clue = Line { key: "question-clue".into(), args: vec![("clue", Arg::Text("a clue".into()))] };
    let other = Line { key: "question-clue".into(), args: vec![("clue", Arg::Text("another".into()))] };
    run(&mut c, 15.0, &[(0.0, 0.5, read), (5.0, 5.5, clue), (10.0, 10.5, other)], 160);
    let words: Vec<Option<&str>> = c.log().iter().map(|e| e.words.as_deref()).collect();
    assert_eq!(words, [Some("good morning"), Some("bank"), None]);
}

#[test]
fn it_can_go_by_what_was_said_and_raise_its_voice() {
    let mut c = client(
        "[[rule]]\non = \"hint\"\nhears = \"ticks\"\nreaction_s = [0.0, 0.0]\ndoes = [{ call = \"watch\" }, { mumble = \"watch\" }]",
    );
    for (at_s, text) in [(0.0, "It flows."), (3.0, "It TICKS.")] {
        c.hears(at_s, Heard::Ended { line: &line("hint"), text });
        let mut voice = vec![0.0; 3 * RATE as usize];
        c.next_block(at_s, &mut voice).unwrap();
        assert_eq!(voice.iter().all(|v| *v == 0.0), at_s == 0.0);
        if let [loud, soft] = c.log() {
            assert_eq!((loud.kind, soft.kind), (Did::Called, Did::Mumbled));
            let level = |e: &crate::LogEntry| level_db(part(&voice, RATE, e.onset_s - at_s, e.offset_s - at_s));
            assert!((level(loud) - level(soft) - 31.0).abs() < 0.5);
        }
    }
    assert_eq!(c.log().len(), 2);
}

#[test]
fn a_missing_argument_is_an_error_that_names_it() {
    let mut c = client("[[rule]]\non = \"x\"\nreaction_s = [0.0, 0.0]\ndoes = [{ read = \"phrase\" }]");
    c.hears(0.0, Heard::Ended { line: &line("x"), text: "" });
    let said = c.next_block(0.0, &mut [0.0; 160]).unwrap_err().0;
    assert!(said.contains("\"phrase\"") && said.contains("\"x\""), "{said}");
}

#[test]
fn the_size_of_the_blocks_changes_nothing() {
    let rules = "[[rule]]\non = \"cue\"\ndoes = [{ wait = 0.2 }, { hold = { f0_hz = 130.0, length_s = 1.0 } }, { say = \"done\" }]";
    let lines = [(0.0, 0.5, line("cue"))];
    let (mut a, mut b) = (client(rules), client(rules));
    assert_eq!(run(&mut a, 6.0, &lines, 160), run(&mut b, 6.0, &lines, 1_000));
    assert_eq!(a.log(), b.log());
}

#[test]
fn faults_in_a_script_come_with_file_line_and_remedy() {
    let head = "reaction_s = [1.0, 2.0]\nvoice = { name = \"slt\", speed = 1.0, level_db = -30.0 }\n";
    let said = |rules: &str| Script::parse("c.toml", &format!("{head}{rules}")).unwrap_err().0;
    let unknown = said("[[rule]]\non = \"x\"\ndoes = [{ sing = \"la\" }]");
    assert!(unknown.starts_with("c.toml:5:") && unknown.contains("sing"), "{unknown}");
    let many =
        said("[[rule]]\non = \"x\"\ndoes = [{ hold = { f0_hz = 20.0, length_s = 1.0 } }]\n[[rule]]\non = \"y\"\nnth = [0]\ndoes = []");
    assert_eq!(many.lines().count(), 3, "{many}");
    assert!(many.contains("c.toml:3:") && many.contains("60 to 800") && many.contains("c.toml:6:"), "{many}");
}
