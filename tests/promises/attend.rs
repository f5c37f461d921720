//! Promise: `tidecount attend` starts the right person's practice by voice, invites at the agreed time, and tells a carer what needs a person.

#[path = "../support/program.rs"]
mod program;

use program::{Place, Tape, err, of_kind, out, output, read_wav, tidecount};
use record::{Source, Store};
use serde_json::Value;
use session::Fact;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

const RATE_HZ: u32 = 16_000;

const HOUSEHOLD: &str = r#"
[[person]]
name = "grandpa"
pronoun = "he"
[[person.routine]]
file = "his.toml"
called = ["evening routine"]

[[person]]
name = "grandma"
pronoun = "she"
[[person.routine]]
file = "hers.toml"
called = ["evening routine"]
"#;

const HIS: &str = "title = \"His evening\"\nplan = [{ days = [\"wednesday\"], at = \"18:30\" }]\n[no_answer]\nask_again_after_s = 8\nasks = 1\ngive_up_after_s = 60\n\
    [[step]]\nexercise = \"shoulder-rolls\"\nrepetitions = 3\nnext_cue_after_s = 6\n";
const HERS: &str = "title = \"Her evening\"\n[[step]]\nexercise = \"rest\"\nlength_s = 2\n";

fn house() -> Place {
    let place = Place::new();
    place.write("household.toml", HOUSEHOLD);
    place.write("his.toml", HIS);
    place.write("hers.toml", HERS);
    place
}

/// The program with a recording, on a Wednesday at this time.
fn attend(place: &Place, wav: &Path, at: &str) -> Command {
    let mut command = tidecount(["attend"]);
    command.arg(place.path("household.toml")).arg("--mic").arg(wav).arg("--fast").arg("--at").arg(format!("2026-11-25 {at}"));
    command.args(["--voice", "espeak-ng"]).arg("--data").arg(place.path("data"));
    command
}

fn run(place: &Place, tape: &Tape, at: &str) -> Output {
    let wav = tape.write(&place.path("house.wav"), 1);
    let done = output(attend(place, &wav, at).arg("--speaker").arg(place.path("said.wav")));
    println!("{}{}", out(&done), err(&done));
    assert!(done.status.success());
    done
}

/// Client and routine of every practice in the record, oldest first, and how it ended.
fn practices(place: &Place) -> Vec<(String, String, Option<String>)> {
    let Some(store) = Store::open_existing(&place.path("data")).expect("a record") else { return Vec::new() };
    let mut all: Vec<_> = store.history(None, 50).expect("reads").into_iter().collect();
    all.reverse();
    assert!(all.iter().all(|practice| practice.source == Source::Replay));
    all.into_iter().map(|practice| (practice.client, practice.routine, practice.end_reason)).collect()
}

fn notices(place: &Place) -> Vec<Value> {
    let text = std::fs::read_to_string(place.path("data/notices.jsonl")).unwrap_or_default();
    text.lines().map(|line| serde_json::from_str(line).expect("JSON")).collect()
}

#[test]
fn start_for_a_person_leads_that_person_s_practice_and_leaves_the_other_s_alone() {
    let place = house();
    let mut tape = Tape::new(RATE_HZ, 70.0);
    tape.say(3.0, "start for grandma");
    tape.say_every(12.0, 60.0, 4.3, "ready");
    let done = run(&place, &tape, "12:00");
    let her = |reason: &str| ("grandma".to_owned(), "Her evening".to_owned(), Some(reason.to_owned()));
    assert_eq!(practices(&place), [her("completed")], "{}", out(&done));
    assert!(out(&done).contains("For Grandma. One moment."));
    let store = Store::open(&place.path("data")).expect("a record");
    assert!(store.history(Some("grandpa"), 10).expect("reads").is_empty());
    let started = store.history(Some("grandma"), 1).expect("reads")[0].started_at.to_string();
    assert!(started.starts_with("2026-11-25T12:00:"), "the recording's clock: {started}");
    // Everything said is in the loudspeaker's file: the attendant's words and the practice's.
    let (rate_hz, said) = read_wav(&place.path("said.wav"));
    let loud = |from_s: f64, to_s: f64| {
        said[(from_s * f64::from(rate_hz)) as usize..(to_s * f64::from(rate_hz)) as usize].iter().any(|x| x.abs() > 0.05)
    };
    assert!(!loud(0.0, 4.0) && loud(4.0, 8.0) && loud(8.0, 20.0));
    assert!(said.len() as f64 / f64::from(rate_hz) > 70.0);
}

#[test]
fn the_household_s_own_phrase_starts_a_practice_and_the_service_manager_is_told_that_it_lives() {
    let place = house();
    let grandma = "[[person]]\nname = \"grandma\"\n[[person.routine]]\nfile = \"hers.toml\"\n";
    place.write("household.toml", &format!("{grandma}[home]\nstart_phrase = \"begin our work\"\n"));
    let manager = std::os::unix::net::UnixDatagram::bind(place.path("notify")).expect("a socket");
    manager.set_nonblocking(true).expect("a socket");
    let mut tape = Tape::new(RATE_HZ, 40.0);
    tape.say(3.0, "begin our work");
    tape.say_every(12.0, 36.0, 4.3, "ready");
    let wav = tape.write(&place.path("house.wav"), 1);
    let done = output(attend(&place, &wav, "12:00").env("NOTIFY_SOCKET", place.path("notify")).args(["--speaker", "none"]));
    println!("{}{}", out(&done), err(&done));
    assert_eq!(practices(&place).first().map(|practice| practice.1.as_str()), Some("Her evening"));
    let mut sign = [0; 64];
    let mut next = || manager.recv(&mut sign).ok().map(|length| String::from_utf8_lossy(&sign[..length]).into_owned());
    assert_eq!(next().as_deref(), Some("READY=1\nWATCHDOG=1"));
    assert!(next().is_some_and(|sign| sign.starts_with("WATCHDOG=1")));
}

#[test]
fn one_name_for_two_routines_is_asked_about_and_it_goes_on_waiting_after_a_practice() {
    let place = house();
    let mut tape = Tape::new(RATE_HZ, 130.0);
    tape.say(3.0, "start the evening routine");
    tape.say(10.0, "grandma");
    tape.say_every(18.0, 74.0, 4.3, "ready");
    tape.say(80.0, "how did it go");
    tape.say(95.0, "start for grandpa please");
    let done = run(&place, &tape, "12:00");
    let text = out(&done);
    assert!(text.contains("Who is it for? Grandpa, or Grandma?"), "{text}");
    assert!(text.contains("Grandma did the one exercise."), "{text}");
    let found: Vec<_> = practices(&place).into_iter().map(|practice| (practice.0, practice.1)).collect();
    assert_eq!(found, [("grandma".into(), "Her evening".into()), ("grandpa".into(), "His evening".into())], "{text}");
}

#[test]
fn it_invites_at_the_agreed_time_and_a_talk_about_something_else_starts_nothing() {
    let place = house();
    let mut tape = Tape::new(RATE_HZ, 100.0);
    for (n, words) in [
        "the practice of the doctor was closed",
        "we could start with the soup",
        "he went for a walk this evening",
        "what is for dinner today",
    ]
    .iter()
    .enumerate()
    {
        tape.say(4.0 + 6.0 * n as f64, words);
    }
    let done = run(&place, &tape, "18:29");
    let text = out(&done);
    assert!(
        text.contains("It's half past six. Grandpa, it's time for the evening routine. Say start for Grandpa when you like."),
        "{text}"
    );
    assert!(practices(&place).is_empty(), "{text}");
    // Done today: it is not invited to again.
    let mut tape = Tape::new(RATE_HZ, 100.0);
    tape.say(3.0, "start my practice");
    tape.say_every(14.0, 60.0, 4.3, "ready");
    let text = out(&run(&place, &tape, "18:20"));
    assert_eq!(practices(&place).first().map(|practice| practice.0.clone()), Some("grandpa".into()), "his is due: {text}");
    let text = out(&run(&place, &Tape::new(RATE_HZ, 90.0), "18:29"));
    assert!(!text.contains("half past six"), "{text}");
}

#[test]
fn where_no_start_is_heard_nobody_is_invited_to_say_one() {
    let place = house();
    let household = |language: &str, name: &str, called: &str| {
        format!(
            "language = \"{language}\"\n[[person]]\nname = \"{name}\"\n[[person.routine]]\nfile = \"his.toml\"\ncalled = [\"{called}\"]\n"
        )
    };
    let german = household("de", "opa", "abendübung");
    let spanish = household("es", "abuelo", "ejercicios de la tarde");
    let on_the_page = ["Starten Sie auf der Seite, wann Sie möchten.", "Empiece en la página cuando quiera."];
    // With the language's second ear, which knows no start phrase, and with no ear at all.
    for (house, ear, invited) in
        [(&german, None, on_the_page[0]), (&german, Some("none"), on_the_page[0]), (&spanish, None, on_the_page[1])]
    {
        place.write("household.toml", house);
        let wav = Tape::new(RATE_HZ, 75.0).write(&place.path("house.wav"), 1);
        let mut command = attend(&place, &wav, "18:29");
        command.envs(ear.map(|ear| ("TIDECOUNT_SECOND_EAR", ear))).arg("--speaker").arg(place.path("said.wav"));
        let done = output(&mut command);
        let text = out(&done);
        assert!(done.status.success(), "{text}{}", err(&done));
        assert!(text.contains(invited), "{text}");
        assert!(!text.contains("Sagen Sie") && !text.contains("Diga"), "{text}");
    }
}

#[test]
fn where_no_start_is_heard_the_page_opens_by_itself() {
    let place = house();
    let opa = "language = \"de\"\n[[person]]\nname = \"opa\"\n[[person.routine]]\nfile = \"his.toml\"\ncalled = [\"abendübung\"]\n";
    place.write("household.toml", opa);
    place.write("alsa.conf", "");
    // Live, but without any device: no recording may open a page.
    let mut command = tidecount(["attend"]);
    command.arg(place.path("household.toml")).args(["--no-open", "--voice", "espeak-ng"]).arg("--data").arg(place.path("data"));
    command.env("PULSE_SERVER", format!("unix:{}", place.path("none").display())).env("XDG_RUNTIME_DIR", place.path("run"));
    command.env("ALSA_CONFIG_PATH", place.path("alsa.conf"));
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("starts");
    let mut lines = std::io::BufRead::lines(std::io::BufReader::new(child.stdout.take().expect("its output"))).map_while(Result::ok);
    let address = lines.find(|line| line.contains("http://127.0.0.1:"));
    if address.is_some() {
        assert!(Command::new("kill").args(["-INT", &child.id().to_string()]).status().expect("kill").success());
    }
    lines.for_each(drop);
    let done = child.wait_with_output().expect("ends");
    assert!(address.is_some() && done.status.success(), "{}", err(&done));
}

#[test]
fn what_hurts_and_what_is_not_answered_is_told_aloud_and_kept() {
    let place = house();
    let mut tape = Tape::new(RATE_HZ, 200.0);
    tape.say(3.0, "start for grandpa");
    tape.say_every(14.0, 38.0, 4.3, "ready");
    tape.say(46.0, "it hurts");
    tape.say(52.3, "it hurts");
    let done = run(&place, &tape, "12:00");
    let text = out(&done);
    let store = Store::open(&place.path("data")).expect("a record");
    let practice = store.history(Some("grandpa"), 1).expect("reads").remove(0);
    let entries = store.entries(practice.id).expect("reads");
    assert!(entries.iter().any(|entry| matches!(&entry.fact, Fact::SafetyStop { reason, .. } if reason == "pain")), "{text}");
    assert!(text.contains("Grandpa said it hurts"), "{text}");
    let kept = notices(&place);
    assert!(
        kept.iter().any(|notice| notice["person"] == "grandpa"
            && notice["what"] == "said"
            && notice["text"].as_str().is_some_and(|text| text.contains("it hurts"))),
        "{kept:?}"
    );
}

#[test]
fn a_microphone_without_sound_is_told() {
    let place = house();
    let wav = place.path("zeros.wav");
    let spec = hound::WavSpec { channels: 1, sample_rate: RATE_HZ, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut writer = hound::WavWriter::create(&wav, spec).expect("a WAV file");
    (0..90 * RATE_HZ).for_each(|_| writer.write_sample(0i16).expect("writes"));
    writer.finalize().expect("writes");
    let done = output(attend(&place, &wav, "12:00").arg("--speaker").arg(place.path("said.wav")));
    let text = out(&done);
    assert_eq!(
        text.matches("I can't hear anybody: I'm getting no sound from my microphone.").count(),
        2,
        "at once and after a minute: {text}"
    );
    let said: Vec<_> = notices(&place).iter().map(|notice| notice["time"].as_u64()).collect();
    assert_eq!(said, [Some(1), Some(2)]);
}

#[test]
fn a_microphone_that_is_silent_between_words_hears_a_start_and_is_not_taken_for_dead() {
    let place = house();
    let mut tape = Tape::new(RATE_HZ, 150.0);
    for (at_s, words) in [(3.0, "good morning"), (30.0, "what is for dinner today"), (58.0, "he went for a walk this evening")] {
        tape.say(at_s, words);
    }
    tape.say(80.0, "start for grandma");
    tape.say_every(88.0, 140.0, 4.3, "ready");
    tape.gate();
    let text = out(&run(&place, &tape, "12:00"));
    assert!(!text.contains("no sound") && !text.contains("hear nothing"), "{text}");
    assert_eq!(notices(&place).len(), 0);
    let found: Vec<_> = practices(&place).into_iter().map(|practice| (practice.0, practice.2)).collect();
    assert_eq!(found, [("grandma".to_owned(), Some("completed".to_owned()))], "{text}");
}

#[test]
fn two_names_are_asked_about_and_an_unknown_one_is_answered() {
    let place = house();
    let mut tape = Tape::new(RATE_HZ, 90.0);
    tape.say(3.0, "start for granny");
    tape.say(20.0, "never mind");
    tape.say(30.0, "start for grandma and grandpa");
    tape.say(42.0, "grandma");
    tape.say_every(50.0, 85.0, 4.3, "ready");
    let text = out(&run(&place, &tape, "12:00"));
    assert!(text.contains("I don't know that name. I know Grandpa and Grandma."), "{text}");
    assert!(text.contains("Who goes first? Grandpa, or Grandma?"), "{text}");
    let found: Vec<_> = practices(&place).into_iter().map(|practice| practice.0).collect();
    assert_eq!(found, ["grandma"], "{text}");
}

#[test]
fn a_household_full_of_faults_prints_them_all() {
    let place = Place::new();
    place.write("his.toml", "title = \"His\"\n[[step]]\nexercise = \"hovering\"\n");
    place.write(
        "household.toml",
        "[[person]]\nname = \"xyzzy\"\npronoun = \"it\"\n[[person.routine]]\nfile = \"his.toml\"\n[[person]]\nnam = \"grandma\"\n[[person.routine]]\nfile = \"gone.toml\"\n",
    );
    let mut command = tidecount(["attend"]);
    let done = output(command.arg(place.path("household.toml")).arg("--data").arg(place.path("data")));
    assert!(!done.status.success());
    let text = err(&done);
    for expected in [
        ":2: `name`: the recogniser does not know the word \"xyzzy\"",
        ":3: `pronoun`",
        ":5: ",
        "hovering",
        ":7: `person` knows no key `nam`",
        ":9: ",
        "cannot be read",
    ] {
        assert!(text.contains(expected), "{expected} is not in\n{text}");
    }
    let mut command = tidecount(["attend"]);
    let none = err(&output(command.arg("--data").arg(place.path("empty"))));
    assert!(none.contains("household.toml") && none.contains("docs/attending.md"), "{none}");
}

/// The recogniser's process of a running program.
fn recogniser_of(pid: u32) -> Option<u32> {
    let threads = std::fs::read_dir(format!("/proc/{pid}/task")).ok()?;
    let children = threads.flatten().filter_map(|thread| std::fs::read_to_string(thread.path().join("children")).ok());
    let pids: Vec<u32> = children.flat_map(|list| list.split_whitespace().filter_map(|pid| pid.parse().ok()).collect::<Vec<_>>()).collect();
    pids.into_iter()
        .find(|pid| std::fs::read(format!("/proc/{pid}/cmdline")).is_ok_and(|line| line.windows(12).any(|part| part == b"__recogniser")))
}

#[test]
fn it_survives_the_recogniser_s_death_and_ends_cleanly_on_ctrl_c() {
    let place = house();
    let mut tape = Tape::new(RATE_HZ, 60.0);
    tape.say_every(6.0, 50.0, 6.0, "what is left today");
    let wav: PathBuf = tape.write(&place.path("house.wav"), 1);
    // In real time: the recogniser has to be killed while it waits.
    let mut command = tidecount(["attend"]);
    command.arg(place.path("household.toml")).arg("--mic").arg(&wav).args(["--at", "2026-11-25 12:00", "--voice", "espeak-ng"]);
    command.arg("--data").arg(place.path("data")).arg("--speaker").arg(place.path("said.wav"));
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().expect("starts");
    let recogniser = loop {
        match recogniser_of(child.id()) {
            Some(pid) => break pid,
            None => assert!(child.try_wait().expect("the child").is_none(), "it ended"),
        }
        std::thread::sleep(std::time::Duration::from_millis(20));
    };
    let signal = |what: &str, pid: u32| assert!(Command::new("kill").arg(what).arg(pid.to_string()).status().expect("kill").success());
    signal("-KILL", recogniser);
    let mut text = String::new();
    let mut lines = std::io::BufRead::lines(std::io::BufReader::new(child.stdout.take().expect("its output")));
    while let Some(Ok(line)) = lines.next() {
        text += &line;
        text.push('\n');
        if line.contains("Still to do") {
            break;
        }
    }
    assert!(text.contains("Still to do: the evening routine for Grandpa, at half past six."), "{text}");
    assert_ne!(recogniser_of(child.id()), Some(recogniser));
    signal("-INT", child.id());
    lines.for_each(drop);
    let done = child.wait_with_output().expect("ends");
    assert_eq!(done.status.code(), Some(0), "{text}{}", err(&done));
    let (rate_hz, said) = read_wav(&place.path("said.wav"));
    assert!(said.len() > rate_hz as usize * 5, "the file is whole");
    assert!(of_kind(&notices(&place), "x").is_empty());
}
