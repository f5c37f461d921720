//! Promise: a real practice stands on the live page from its begin to its end, and can be led from there.
//!
//! The finished program, in real time, with a recording as microphone: somebody who holds a vowel every few seconds and never says a
//! word. Everything else is pressed on the page in real Chromium.

#[path = "support/browser.rs"]
mod browser;
#[path = "support/program.rs"]
mod program;

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;

use browser::{Browser, FULL_HD, SMALL_PHONE};
use program::{Place, Tape, journal, number, of_kind, tidecount};
use serde_json::{Value, json};

const RATE_HZ: u32 = 16_000;

/// The program under way, with what it has printed so far.
struct Running {
    child: Child,
    printed: Arc<Mutex<Vec<String>>>,
    reader: Option<JoinHandle<()>>,
}

impl Running {
    fn start(command: &mut Command) -> Self {
        Self::start_as_it_is(command.args(["--screen", "--voice", "espeak-ng"]))
    }

    fn start_as_it_is(command: &mut Command) -> Self {
        let mut child = command.arg("--no-open").stdout(Stdio::piped()).spawn().expect("starts");
        let printed = Arc::new(Mutex::new(Vec::new()));
        let (lines, out) = (printed.clone(), BufReader::new(child.stdout.take().expect("its output")));
        let reader = std::thread::spawn(move || out.lines().map_while(Result::ok).for_each(|line| lines.lock().expect("lines").push(line)));
        Self { child, printed, reader: Some(reader) }
    }

    fn printed(&self) -> Vec<String> {
        self.printed.lock().expect("lines").clone()
    }

    /// The address that it prints.
    fn address(&mut self) -> String {
        loop {
            if let Some(address) = self.printed().iter().find_map(|line| Some(line[line.find("http://127.0.0.1:")?..].to_owned())) {
                return address;
            }
            assert_eq!(self.child.try_wait().expect("the child"), None, "it ended before it printed an address: {:?}", self.printed());
            std::thread::sleep(std::time::Duration::from_millis(5));
        }
    }

    /// Waits for its end.
    fn ended(mut self) -> Vec<String> {
        assert!(self.child.wait().expect("the child").success(), "{:?}", self.printed());
        self.reader.take().expect("a reader").join().expect("reads");
        self.printed()
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Somebody who holds a vowel for four seconds out of six, all the time.
fn vowels(path: &Path, length_s: f64) -> std::path::PathBuf {
    let mut tape = Tape::new(RATE_HZ, length_s);
    let mut at_s = 2.0;
    while at_s < length_s - 6.0 {
        tape.hold(at_s, 120.0, 4.0);
        at_s += 6.0;
    }
    tape.write(path, 1)
}

/// Keeps everything that this page shows from now on.
fn watch(browser: &Browser) {
    browser.script(
        "window.seen = { said: [], rows: [], figures: [], meters: [], moods: [], prompts: [] };
         const keep = (list, text) => { if (text && list[list.length - 1] !== text) list.push(text); };
         const look = () => {
           for (const line of document.querySelectorAll('#log p:not([data-seen])')) { line.dataset.seen = 'yes'; seen.said.push(line.textContent); }
           for (const id of ['row-1', 'row-2']) keep(seen.rows, document.getElementById(id).textContent);
           keep(seen.figures, document.querySelector('#figure').textContent);
           keep(seen.moods, document.querySelector('#mood').dataset.mood);
           keep(seen.prompts, document.querySelector('#prompt').textContent);
           const meter = Number(document.querySelector('#track').getAttribute('aria-valuenow'));
           if (!document.querySelector('#gauge').hidden && meter > 0) seen.meters.push(meter);
         };
         new MutationObserver(look).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
         return true;",
    );
}

fn seen(browser: &Browser, what: &str) -> Vec<String> {
    let found = browser.script(&format!("return seen.{what}"));
    found.as_array().expect("a list").iter().map(|one| one.as_str().map_or_else(|| one.to_string(), str::to_owned)).collect()
}

fn offered(command: &str) -> String {
    format!("document.querySelector('#now button[data-command=\"{command}\"]')")
}

const ROUTINE: &str = r#"
title = "Short practice"
cue_words = "strong voice"
[[step]]
exercise = "long-ah"
repetitions = 6
target_s = 3
rest_s = 6
[[step]]
exercise = "shoulder-rolls"
repetitions = 3
next_cue_after_s = 9
"#;

#[test]
fn a_practice_is_followed_and_led_on_the_page() {
    let Some(browser) = Browser::start() else { return };
    let place = Place::new();
    let (routine, lines) = (place.write("short.toml", ROUTINE), place.path("journal.jsonl"));
    let wav = vowels(&place.path("client.wav"), 240.0);
    let mut command = tidecount(["practise"]);
    command.arg(&routine).arg("--mic").arg(&wav).arg("--data").arg(place.path("data")).arg("--journal").arg(&lines);
    let mut program = Running::start(&mut command);
    let address = program.address();
    // One page only watches; the other is reloaded and pressed on.
    browser.open(&address);
    browser.wait_until("the greeting", "document.body.dataset.phase === 'practice'");
    watch(&browser);
    let watching = browser.tab();
    let pressing = browser.another_tab(&address);

    browser.wait_until("ready", &offered("ready"));
    browser.assert_accessible("before the first exercise");
    browser.click("#now button[data-command=ready]");
    browser.wait_until(
        "a hold",
        "document.querySelector('#mood').dataset.mood === 'holding' && Number(document.querySelector('#figure').textContent) >= 1",
    );
    assert_eq!((browser.text("#heading"), browser.text("#part")), ("Long ah".into(), "1 of 6".into()));
    assert_eq!(browser.text("#of"), "of 3 seconds");
    browser.reload();
    browser.wait_until(
        "the same after a reload",
        "document.querySelector('#heading').textContent === 'Long ah' && document.querySelector('#part').textContent.endsWith('of 6')",
    );
    browser.wait_until("a later trial", "document.querySelector('#part').textContent !== '1 of 6'");
    browser.keys(&fantoccini::key::Key::Escape.to_string());
    browser.wait_until("it stands still", "document.querySelector('#prompt').textContent === 'Stopped'");
    browser.wait_until("the way on", &offered("go-on"));
    browser.click("#now button[data-command=go-on]");
    browser.wait_until("the way past it", &offered("skip"));
    browser.click("#now button[data-command=skip]");
    browser.wait_until("the second exercise", "document.querySelector('#heading').textContent === 'Shoulder rolls'");
    assert!(
        browser.script("return document.querySelector('#gauge').hidden").as_bool().expect("yes or no"),
        "no bar where nothing is voiced"
    );
    browser.click("#more");
    browser.wait_until(
        "all that can be said",
        "document.querySelector('#all button[data-command=\"hurts\"]') || document.querySelector('#all button[data-command=\"rest\"]')",
    );
    browser.click("#more");
    browser.click("#stop");
    browser.wait_until("finish", &offered("finish"));
    browser.click("#now button[data-command=finish]");
    browser.wait_until("the end", "document.body.dataset.phase === 'over' && document.querySelectorAll('#done li').length > 0");
    assert!(browser.text("#done").contains("Long ah") && browser.text("#done").contains("of 6"), "{}", browser.text("#done"));
    browser.wait_until("words about the end", "document.querySelector('#link').textContent.includes('has ended')");
    browser.look_at(&watching);
    assert_eq!(browser.script("return document.body.dataset.phase"), "over", "the last state reached the other page, too");

    // Everything that was said after the page came stands on it, word for word and in order.
    let printed = program.ended();
    let spoken: Vec<String> = printed.iter().filter_map(|line| line.split_once("  T  ").map(|(_, text)| text.to_owned())).collect();
    let said: Vec<String> = seen(&browser, "said").into_iter().filter(|line| spoken.contains(line)).collect();
    let first = spoken.iter().position(|line| Some(line) == said.first()).expect("something was said");
    assert!(first <= 2 && spoken[first..] == said[..], "spoken: {spoken:#?}\nshown: {said:#?}");
    let rows = seen(&browser, "rows").join(" ");
    // A line that was cut short by a press is not shown to its end either.
    let cut: Vec<&str> =
        printed.windows(2).filter(|two| two[1].contains("  C  ")).filter_map(|two| Some(two[0].split_once("  T  ")?.1)).collect();
    for line in spoken[first + 1..].iter().filter(|line| !cut.contains(&line.as_str())) {
        let missing: Vec<&str> = line.split_whitespace().filter(|word| !rows.contains(word)).collect();
        assert!(missing.is_empty(), "captions lack {missing:?} of {line:?}");
    }
    let moods = seen(&browser, "moods");
    assert!(["speaking", "listening", "holding"].iter().all(|mood| moods.iter().any(|seen| seen == mood)), "{moods:?}");
    assert!(seen(&browser, "meters").len() > 20, "the bar moved: {:?}", seen(&browser, "meters"));

    // What was pressed and held is in the journal.
    let entries = journal(&lines);
    let pressed: Vec<&str> = of_kind(&entries, "command_heard")
        .iter()
        .filter(|heard| heard["text"] == "page")
        .filter_map(|heard| heard["command"].as_str())
        .collect();
    assert_eq!(pressed, ["ready", "stop", "go-on", "skip", "stop", "finish"]);
    let holds = of_kind(&entries, "hold_measured");
    assert!(holds.iter().any(|hold| hold["complete"] == true), "{holds:#?}");
    let figures = seen(&browser, "figures");
    for hold in holds.iter().filter(|hold| hold["complete"] == true) {
        let shown = format!("{:.1}", number(hold, "duration_s"));
        assert!(figures.contains(&shown), "{shown} was never shown: {figures:?}");
    }
    let ended: Vec<&Value> = of_kind(&entries, "session_ended");
    assert_eq!(ended[0]["reason"], "finished");
    let _ = pressing;
}

/// Keeps what the page alone leads with: what is to be done with its sentence, and every side of the beat.
fn watch_page_lead(browser: &Browser) {
    browser.script(
        "window.led = { steps: [], sentences: [], beats: 0, side: '' };
         const look = () => {
           const doing = document.body.dataset.doing, sentence = document.querySelector('#sentence').textContent;
           if (doing && led.steps[led.steps.length - 1] !== doing) led.steps.push(doing);
           if (sentence && led.sentences[led.sentences.length - 1] !== sentence) led.sentences.push(sentence);
           const side = document.querySelector('#beat').dataset.side || '';
           if (document.body.dataset.doing === 'go' && side !== led.side) led.beats += 1;
           led.side = side;
         };
         new MutationObserver(look).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
         look();
         return true;",
    );
}

const FOR_THE_EYE: &str = r#"
title = "Short practice"
ratings = ["effort", "tiredness", "pain"]
[[step]]
exercise = "long-ah"
repetitions = 2
target_s = 3
rest_s = 5
[[step]]
exercise = "nasal-breathing"
repetitions = 2
in = 2
out = 3
[[step]]
exercise = "shoulder-rolls"
repetitions = 2
rest_s = 3
"#;

#[test]
fn somebody_who_hears_nothing_is_led_to_the_end_by_the_page_alone() {
    let Some(browser) = Browser::start() else { return };
    let place = Place::new();
    let (routine, lines) = (place.write("short.toml", FOR_THE_EYE), place.path("journal.jsonl"));
    let wav = vowels(&place.path("client.wav"), 600.0);
    let of = |by_page: bool| {
        let mut command = tidecount(["practise"]);
        command.arg(&routine).arg("--mic").arg(&wav).arg("--data").arg(place.path("data"));
        // On this computer there is neither a voice nor a loudspeaker.
        command.env("PATH", "").env("PULSE_SERVER", "unix:/nowhere").env("XDG_DATA_HOME", place.path("nothing"));
        command.args(if by_page { ["--by-page"] } else { ["--screen"] });
        command
    };
    let aloud = of(false).arg("--no-open").output().expect("starts");
    assert!(!aloud.status.success(), "without a voice nobody is led by one, or this test shows nothing");
    let mut program = Running::start_as_it_is(of(true).arg("--journal").arg(&lines));
    browser.open(&program.address());
    browser.wait_until("the greeting", "document.body.dataset.phase === 'practice'");
    watch(&browser);
    watch_page_lead(&browser);

    let waits = |what: &str, expression: &str| browser.wait_until(what, expression);
    waits("a sentence to read", "document.body.dataset.doing === 'read' && document.querySelector('#sentence').textContent.length > 20");
    browser.assert_accessible("a sentence");
    waits("the start", &format!("document.body.dataset.doing === 'turn' && {}", offered("ready")));
    browser.click("#now button[data-command=ready]");
    waits(
        "a hold",
        "document.querySelector('#heading').textContent === 'Long ah' && Number(document.querySelector('#figure').textContent) >= 1",
    );
    assert_eq!(browser.text("#doing"), "Now");
    waits("the rest behind it", "document.body.dataset.doing === 'rest' && !document.querySelector('#line').hidden");
    browser.assert_accessible("a rest");
    waits("the second trial", "document.querySelector('#part').textContent === '2 of 2' && document.body.dataset.doing === 'go'");
    waits("the next exercise", "document.querySelector('#heading').textContent === 'Nasal breathing'");
    waits("the breathing", "document.body.dataset.doing === 'go' && Number(document.querySelector('#figure').textContent) >= 1");
    waits("its end", "document.querySelector('#heading').textContent === 'Shoulder rolls'");
    waits("the shoulders", &format!("document.querySelector('#heading').textContent === 'Shoulder rolls' && {}", offered("done")));
    browser.click("#now button[data-command=done]");
    waits("the second time", &format!("document.querySelector('#part').textContent.startsWith('2 of 2') && {}", offered("done")));
    browser.click("#now button[data-command=done]");

    // Numbers are answered by their buttons, and by the figure keys once keys are switched on: a ten is no one.
    let asks =
        |what: &str| waits(what, &format!("document.querySelector('#prompt').textContent.includes('{what}') && {}", offered("answer-7")));
    asks("How hard was that");
    browser.assert_accessible("a question answered by a number");
    browser.view(SMALL_PHONE);
    assert_eq!(browser.layout_faults(44), [""; 0], "the numbers on a small telephone");
    browser.view(FULL_HD);
    browser.click("#now button[data-command=answer-7]");
    waits("the answer said back", "document.querySelector('#figure').textContent === '7'");
    browser.click("#more");
    browser.click("label:has(#keys)");
    browser.click("#more");
    asks("How tired are you");
    browser.keys("10");
    waits("a ten", "document.querySelector('#figure').textContent === '10'");
    asks("How much pain");
    browser.keys("1");
    waits("a one", "document.querySelector('#figure').textContent === '1'");
    browser.keys("0");
    waits("none, as it was corrected", "document.querySelector('#figure').textContent === '0'");
    waits("the end", "document.body.dataset.phase === 'over' && document.querySelectorAll('#done li').length > 0");

    // Every line stood there whole, in order, and what to do was told without a sound.
    let printed = program.ended();
    let lines_given: Vec<String> = printed.iter().filter_map(|line| line.split_once("  T  ").map(|(_, text)| text.to_owned())).collect();
    let list = |what: &str| -> Vec<String> { serde_json::from_value(browser.script(&format!("return led.{what}"))).expect("texts") };
    let sentences = list("sentences");
    let first = lines_given.iter().position(|line| Some(line) == sentences.first()).expect("a sentence");
    let mut once: Vec<String> = lines_given[first..].to_vec();
    once.dedup();
    assert!(first <= 2 && once == sentences, "given: {once:#?}\nshown: {sentences:#?}");
    let steps = list("steps");
    for doing in ["read", "turn", "go", "rest"] {
        assert!(steps.iter().any(|step| step == doing), "{doing}: {steps:?}");
    }
    let beats = browser.script("return led.beats").as_u64().expect("a number");
    assert!(beats >= 12, "two rounds of five counts, and two holds of three seconds: {beats}");

    let entries = journal(&lines);
    let ended = of_kind(&entries, "session_ended");
    assert_eq!((&ended[0]["reason"], &ended[0]["steps_done"]), (&json!("completed"), &json!(3)), "{entries:#?}");
    let rated: Vec<(&Value, &Value)> = of_kind(&entries, "rated").iter().map(|entry| (&entry["what"], &entry["value"])).collect();
    let answers = [(json!("effort"), json!(7)), (json!("tiredness"), json!(10)), (json!("pain"), json!(1)), (json!("pain"), json!(0))];
    assert_eq!(rated, answers.iter().map(|(what, value)| (what, value)).collect::<Vec<_>>(), "the last of each counts");
    // What was held while a sentence stood there counts like any other: nothing of ours was in the microphone.
    assert!(of_kind(&entries, "hold_measured").iter().all(|hold| number(hold, "masked_s") == 0.0));
}

const HOUSEHOLD: &str = r#"
[[person]]
name = "grandpa"
pronoun = "he"
[[person.routine]]
file = "rest.toml"
called = ["evening routine"]
"#;

#[test]
fn one_page_stays_through_waiting_and_practice() {
    let Some(browser) = Browser::start() else { return };
    let place = Place::new();
    place.write("household.toml", HOUSEHOLD);
    place.write("rest.toml", "title = \"Evening\"\nplan = [{ days = [\"wednesday\"], at = \"18:30\" }]\n[[step]]\nexercise = \"shoulder-rolls\"\nrepetitions = 4\nnext_cue_after_s = 8\n");
    let wav = Tape::new(RATE_HZ, 120.0).write(&place.path("quiet.wav"), 1);
    let mut command = tidecount(["attend"]);
    command
        .arg(place.path("household.toml"))
        .arg("--mic")
        .arg(&wav)
        .args(["--at", "2026-11-25 12:00"])
        .arg("--data")
        .arg(place.path("data"));
    let mut program = Running::start(&mut command);
    browser.open(&program.address());
    browser.wait_until(
        "what comes next",
        "document.body.dataset.phase === 'waiting' && document.querySelector('#heading').textContent.includes('18:30')",
    );
    browser.assert_accessible("while it waits");
    browser.wait_until("the way to begin", &offered("start-mine"));
    browser.click("#now button[data-command=start-mine]");
    browser.wait_until("the practice", "document.body.dataset.phase === 'practice'");
    browser.wait_until("ready", &offered("ready"));
    browser.click("#now button[data-command=ready]");
    browser.wait_until("the exercise", "document.querySelector('#heading').textContent === 'Shoulder rolls'");
    browser.click("#stop");
    browser.wait_until("finish", &offered("finish"));
    browser.click("#now button[data-command=finish]");
    browser.wait_until("it waits again", "document.body.dataset.phase === 'waiting'");
    assert!(browser.text("#done").contains("Shoulder rolls"), "what was done stays: {}", browser.visible());
    assert_ne!(browser.text("#heading"), "Shoulder rolls");
    assert_eq!(browser.script("return document.documentElement.dataset.link"), json!("open"), "it is the same page all along");
}

const AT_HOME: &str = r#"
[[person]]
name = "grandpa"
by_page = true
[[person.routine]]
file = "rest.toml"
called = ["evening routine"]
"#;

/// From the button on *today* to the last word, and back to *today*: nobody touches a terminal.
#[test]
fn a_practice_is_started_by_its_button_led_to_its_end_and_stands_in_the_results() {
    let Some(browser) = Browser::start() else { return };
    let place = Place::new();
    let household = place.write("household.toml", AT_HOME);
    place.write("rest.toml", "title = \"Evening\"\n[[step]]\nexercise = \"shoulder-rolls\"\nrepetitions = 2\n");
    let wav = Tape::new(RATE_HZ, 300.0).write(&place.path("quiet.wav"), 1);
    let mut command = tidecount(["pages"]);
    command.arg(&household).arg("--mic").arg(&wav).args(["--speaker", "none"]).arg("--data").arg(place.path("data"));
    let mut program = Running::start_as_it_is(&mut command);
    browser.open(&program.address());
    let start = "form[action^='/start'] button";
    browser.wait_until("the button", &format!("document.querySelector(\"{start}\")"));
    browser.click(start);
    browser.wait_until("the practice", "document.body.dataset.phase === 'practice'");
    browser.wait_until("ready", &offered("ready"));
    browser.click("#now button[data-command=ready]");
    for part in ["1 of 2", "2 of 2"] {
        let there = format!("document.querySelector('#part').textContent.startsWith('{part}') && {}", offered("done"));
        browser.wait_until("a repetition", &there);
        browser.click("#now button[data-command=done]");
    }
    browser.wait_until("the end", "document.body.dataset.phase === 'over' && document.querySelectorAll('#done li').length > 0");
    assert!(browser.text("#done").contains("Shoulder rolls") && browser.text("#done").contains("2 of 2"), "{}", browser.visible());
    let origin = browser.script("return location.origin").as_str().expect("an origin").to_owned();
    browser.open(&format!("{origin}/today"));
    browser.wait_until("the way to the next one", &format!("document.querySelector(\"{start}\")"));
}
