//! Promise: a practice over live devices goes from greeting to summary, hands-free, and never takes itself for the client.
//!
//! A private sound server stands in for the sound card; the microphone hears the client and, softer, the loudspeaker.
//! `TIDECOUNT_KEEP_LIVE=FOLDER` keeps what the two gave, and the journal, to look into what was heard.

mod support;

use serde_json::Value;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;
use support::live_client::{Act, Happened, LiveClient, Rule};
use support::sound_server::{Echo, SoundServer, stop};

const HOLD_S: f64 = 4.6;
/// How far a length measured live may be from that of the recording, s: two frames of 10 ms at each end.
const AGREE_S: f64 = 0.04;
const STOP: &str = "stop";
/// A practice that has not ended by itself after so long is ended.
const AT_MOST: Duration = Duration::from_secs(300);

/// What this client does; every prompt that is repeated is answered again.
fn rules() -> Vec<Rule> {
    vec![
        Rule::after("or not sure?", Act::Say("yes i have")),
        Rule::after("Yes, or no?", Act::Say("yes please")),
        Rule::after("and ah.", Act::Hold(HOLD_S)),
        Rule::after("Whenever you're ready.", Act::Hold(HOLD_S)),
        Rule::after("start in your own time", Act::Hold(HOLD_S)),
        // Stops the tool in the middle of a sentence.
        Rule::after("Close your mouth. Breathe in through your nose", Act::Say(STOP)).over(Duration::from_millis(1_500)).once(),
        Rule::after("I'm still here. Say go on", Act::Say("continue please")),
        Rule::after("Say go on", Act::Say("continue")),
        Rule::after("swallow hard.", Act::Say("i'm done")),
        Rule::after("Say done when you are", Act::Say("all done")),
        Rule::after("Say done", Act::Say("i am done")),
        Rule::after("Say ready when you are", Act::Say("i am ready")),
        Rule::after("Say ready", Act::Say("i'm ready")),
    ]
}

#[test]
fn every_prompt_that_is_answered_is_still_said() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/speak/words/en");
    let files = std::fs::read_dir(folder).unwrap().map(|file| std::fs::read_to_string(file.unwrap().path()).unwrap_or_default());
    let all: String = files.collect();
    for rule in rules() {
        assert!(all.contains(rule.to), "nobody says {:?} any more", rule.to);
    }
}

fn practise(server: &SoundServer, data: &Path, journal: &Path) -> Child {
    let routine = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/routines/live.toml");
    Command::new(env!("CARGO_BIN_EXE_tidecount"))
        .arg("practise")
        .arg(routine)
        .args(["--mic", "default", "--speaker", "default", "--voice", "espeak-ng"])
        .args(["--journal".as_ref(), journal.as_os_str(), "--data".as_ref(), data.as_os_str()])
        .envs(server.env())
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

/// What came of one practice.
struct Played {
    code: Option<i32>,
    complaints: String,
    happened: Vec<Happened>,
    entries: Vec<Value>,
    /// How long the vowels were loud that a second listener recorded at the same microphone, and the one that the client plays, s.
    recorded_s: Vec<f64>,
    played_s: f64,
    data: PathBuf,
    /// Keeps the folder until all is checked.
    _server: SoundServer,
}

impl Played {
    fn all(&self, kind: &str) -> Vec<&Value> {
        self.entries.iter().filter(|entry| entry["kind"] == kind).collect()
    }

    fn lost_s(&self) -> f64 {
        self.all("sound_lost").iter().filter_map(|entry| entry["lost_s"].as_f64()).sum()
    }
}

/// `None` where the virtual devices or the client's voice are not installed.
fn play_through() -> Option<Played> {
    let server = SoundServer::start(Some(Echo { level_db: -20.0, delay_ms: 60 }))?;
    let client = LiveClient::new(&server, rules())?;
    let (data, journal) = (server.path("record"), server.path("journal.jsonl"));
    let recording = server.path("second-listener.wav");
    let vowel = client.wav(&Act::Hold(HOLD_S)).to_owned();
    let mut recorders = [server.record_mic(&recording), server.record_speaker(&server.path("speaker.wav"))];
    let mut child = practise(&server, &data, &journal);
    let happened = client.follow(child.stdout.take().unwrap(), AT_MOST);
    std::thread::sleep(Duration::from_secs(2));
    let _ = child.kill();
    let output = child.wait_with_output().unwrap();
    recorders.iter_mut().for_each(stop);
    if let Some(folder) = std::env::var_os("TIDECOUNT_KEEP_LIVE").map(PathBuf::from) {
        std::fs::create_dir_all(&folder).unwrap();
        for file in [&recording, &server.path("speaker.wav"), &journal] {
            std::fs::copy(file, folder.join(file.file_name().unwrap())).unwrap();
        }
    }
    let complaints = String::from_utf8_lossy(&output.stderr).into_owned();
    let entries = std::fs::read_to_string(&journal).unwrap().lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    let recorded_s = vowels(&recording);
    let [played_s] = vowels(&vowel)[..] else { panic!("one vowel is one vowel") };
    Some(Played { code: output.status.code(), complaints, happened, entries, recorded_s, played_s, data, _server: server })
}

/// Lengths of what is loud for longer than any word, s. The client's vowel is at -20 dBFS; our own voice reaches the microphone 20 dB softer
/// than it is played. A hole that the virtual devices leave in a vowel does not part it.
fn vowels(recording: &Path) -> Vec<f64> {
    const FRAME_S: f64 = 0.01;
    const LOUD_DB: f64 = -30.0;
    const HOLE_FRAMES: usize = 25;
    let mut reader = hound::WavReader::open(recording).unwrap();
    let samples: Vec<f64> = reader.samples::<i16>().map(|sample| f64::from(sample.unwrap()) / 32_768.0).collect();
    let loud: Vec<usize> = samples
        .chunks_exact((48_000.0 * FRAME_S) as usize)
        .enumerate()
        .filter(|(_, frame)| 10.0 * (frame.iter().map(|s| s * s).sum::<f64>() / frame.len() as f64).log10() > LOUD_DB)
        .map(|(n, _)| n)
        .collect();
    loud.chunk_by(|a, b| b - a <= HOLE_FRAMES)
        .map(|run| (run[run.len() - 1] + 1 - run[0]) as f64 * FRAME_S)
        .filter(|length_s| *length_s > HOLD_S - 1.0)
        .collect()
}

#[test]
fn a_live_practice_goes_to_its_end() {
    if let Some(played) = play_through() {
        check(&played);
    }
}

fn check(played: &Played) {
    assert_eq!(played.code, Some(0), "{}", played.complaints);
    let ended = played.all("session_ended");
    assert_eq!(ended.len(), 1);
    assert_eq!((&ended[0]["reason"], &ended[0]["steps_done"]), (&"completed".into(), &4.into()), "{:#?}", ended[0]);
    assert!(ended[0]["duration_s"].as_f64().unwrap() > 60.0, "a minute at least");

    // What the client held, and nothing else: as long as the second listener heard it, but for sound that was told as lost.
    let held: Vec<f64> = played.all("hold_measured").iter().map(|entry| entry["duration_s"].as_f64().unwrap()).collect();
    println!("held {held:?}, recorded {:?}, lost {}", played.recorded_s, played.lost_s());
    assert_eq!((held.len(), played.recorded_s.len()), (2, 2));
    for (length_s, recorded_s) in held.iter().zip(&played.recorded_s) {
        // It rises and falls below what counts as loud.
        let held_s = recorded_s + HOLD_S - played.played_s;
        assert!((length_s - held_s).abs() < AGREE_S + played.lost_s(), "{length_s} s measured, {held_s} s recorded");
    }
    assert_eq!(played.all("round_paced").len(), 2);
    assert_eq!(played.all("posture_held").iter().map(|entry| entry["complete"].clone()).collect::<Vec<_>>(), [Value::from(true)]);
    assert_eq!(played.all("repetition_done")[0]["ended_by"], "done");

    // Every command that was heard is one that the client said, in the client's order.
    let mut said = played.happened.iter().filter_map(|event| match event {
        Happened::Client { act: Act::Say(words), .. } => Some(*words),
        _ => None,
    });
    for heard in played.all("command_heard") {
        let text = heard["text"].as_str().unwrap();
        // A part of a wording may be enough: "ready" of "i'm ready".
        assert!(said.any(|words| words.contains(text)), "\"{text}\" was heard at {} s, but not said", heard["at_s"]);
    }

    stopped_in_the_sentence(&played.happened, &played.entries);
    history_lists_it(&played.data);
}

/// "stop" said over a sentence ended it: the next thing said is what is said then, and it came before the sentence's end.
fn stopped_in_the_sentence(happened: &[Happened], entries: &[Value]) {
    let stop = entries.iter().find(|entry| entry["command"] == "stop").expect("stop was heard");
    let at_s = stop["at_s"].as_f64().unwrap();
    let lines: Vec<(f64, &str)> = happened
        .iter()
        .filter_map(|event| match event {
            Happened::Tool { at_s, text } => Some((*at_s, text.as_str())),
            _ => None,
        })
        .collect();
    let (began_s, sentence) = *lines.iter().rfind(|line| line.0 <= at_s).unwrap();
    assert!(sentence.starts_with("Close your mouth."), "stop was heard in \"{sentence}\"");
    let next = lines.iter().find(|line| line.0 > began_s).unwrap();
    assert!(next.1.starts_with("I'll be quiet."), "after stop: \"{}\"", next.1);
    println!("stop at {:.2} s of the sentence", at_s - began_s);
}

fn history_lists_it(data: &Path) {
    let output =
        Command::new(env!("CARGO_BIN_EXE_tidecount")).args(["history".as_ref(), "--data".as_ref(), data.as_os_str()]).output().unwrap();
    let text = String::from_utf8_lossy(&output.stdout);
    assert!(output.status.success() && text.contains("Short practice") && text.contains("completed"), "{text}");
}
