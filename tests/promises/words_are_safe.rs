//! Promise: the tool's words trigger nothing, are all there, and can be heard where they are to be said.

#[path = "../support/heard.rs"]
mod heard;

use command_ear::{Choice, Grammar, Lexicon};
use files::load;
use hear::VoiceTask;
use heard::{hold, utterance};
use routine::{Prescription, Timing, Work, catalogue};
use session::{Arg, Command, Effect, Engine, Event, Line, LineId, Listening, SessionContext, View, WeekToAsk, listening};
use speak::{Words, WordsError, live_words};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn words() -> Words {
    Words::english().expect("the catalogue")
}

fn line(key: &str, args: &[(&'static str, Arg)]) -> Line {
    Line { key: key.into(), args: args.to_vec() }
}

/// Every wording of a message with this number for each argument that it asks for.
fn texts(words: &Words, key: &str, value: f64) -> Vec<String> {
    let mut args: Vec<(&'static str, Arg)> = Vec::new();
    let variants = words.variants(key).max(1) as u64;
    loop {
        let all: Result<Vec<String>, WordsError> = (0..variants).map(|seed| words.text_variant(&line(key, &args), seed)).collect();
        match all {
            Ok(texts) => return texts,
            // A telephone number is a text of figures.
            Err(WordsError::NoArgument { argument, .. }) if key.starts_with("emergency-") => {
                args.push((argument.leak(), Arg::Text("112".to_owned())));
            }
            Err(WordsError::NoArgument { argument, .. }) => args.push((argument.leak(), Arg::Number(value))),
            Err(other) => panic!("{other}"),
        }
    }
}

/// Wordings that are heard while the tool talks.
fn live(words: &Words) -> Vec<String> {
    listening::ALWAYS.iter().flat_map(|&command| words.wordings(command)).collect()
}

/// Shown, or the client's to say: not said by the tool.
fn only_shown(key: &str) -> bool {
    let of_pages = key.starts_with("page-") && key != "page-spoken-test";
    of_pages
        || key.ends_with("-shown")
        || key.starts_with("cmd-")
        || key.starts_with("heading-")
        || ["say-stop", "say-pause"].contains(&key)
}

#[test]
fn nothing_that_can_be_said_holds_a_word_that_is_heard_meanwhile() {
    let words = words();
    let live = live(&words);
    let live: Vec<&str> = live.iter().map(String::as_str).collect();
    assert!(live.contains(&"stop") && live.contains(&"pause"));
    let mut seen = 0;
    for key in words.keys().filter(|key| !only_shown(key)) {
        for value in [0.0, 1.0, 2.0, 12.4] {
            for text in texts(&words, key, value) {
                seen += 1;
                let found = live_words(&text, &live);
                assert_eq!(found.is_some(), key == "you-can-stop", "{key}: {text}");
            }
        }
    }
    assert!(seen > 500, "{seen}");
}

#[test]
fn every_sentence_begins_with_a_capital() {
    let words = words();
    for key in words.keys() {
        for text in [0.0, 1.0, 2.0, 12.4].into_iter().flat_map(|value| texts(&words, key, value)) {
            if !text.ends_with(['.', '!', '?']) {
                continue;
            }
            for sentence in text.split_inclusive(['.', '!', '?']).map(str::trim) {
                let first = sentence.chars().find(|c| c.is_alphanumeric());
                assert!(first.is_none_or(|c| !c.is_lowercase()), "{key}: {text}");
            }
        }
    }
    let three = [("repetitions", Arg::Number(3.0)), ("sets", Arg::Number(1.0))];
    assert_eq!(words.text(&line("dose-times", &three)).expect("words"), "Three times.");
}

#[test]
fn every_exercise_has_all_its_messages() {
    let words = words();
    let mut missing = Vec::new();
    for entry in catalogue() {
        let of = |part: &str| format!("ex-{}-{part}", entry.id);
        let mut keys = ["name", "purpose", "instruction", "short"].map(of).to_vec();
        keys.extend(entry.cautions.iter().map(|key| format!("caution-{key}")));
        keys.extend(entry.not_for.iter().map(|key| format!("notfor-{key}")));
        keys.extend(entry.phase_names().map(|name| of(&format!("phase-{name}"))));
        missing.extend(keys.into_iter().filter(|key| !words.has(key)));
    }
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn everything_that_is_listened_for_is_in_the_lexicon() {
    let (words, lexicon) = (words(), Lexicon::open(&root().join("models/en")).expect("the lexicon"));
    let choices = |commands: &[Command]| {
        commands.iter().map(|&command| Choice { tag: command.name().into(), wordings: words.wordings(command) }).collect::<Vec<_>>()
    };
    for (state, commands) in listening::ALL.iter().chain([&("always", listening::ALWAYS)]) {
        if !commands.is_empty() {
            let commands = listening::with_safety(commands);
            lexicon.validate(&Grammar { choices: choices(&commands), ..Grammar::default() }).unwrap_or_else(|why| panic!("{state}: {why}"));
        }
    }
    for (list, worded) in [(listening::LOOKING_BACK, listening::numbers()), (listening::CORRECTION, listening::missed_reasons())] {
        let answers = worded.iter().map(|key| Choice { tag: key.clone(), wordings: words.wordings_of(key) });
        assert!(answers.clone().all(|answer| !answer.wordings.is_empty()));
        let all = choices(&listening::with_safety(list)).into_iter().chain(answers).collect();
        lexicon.validate(&Grammar { choices: all, ..Grammar::default() }).unwrap_or_else(|why| panic!("{why}"));
    }
    let mut answers = 0;
    for (name, prescription) in routines() {
        for step in &prescription.routine.steps {
            let Work::Question { items, .. } = &step.work else { continue };
            for answer in items.iter().flat_map(|item| &item.answers) {
                answers += 1;
                let choice = Choice { tag: answer.clone(), wordings: vec![answer.to_lowercase()] };
                let both = choices(listening::QUESTION).into_iter().chain([choice]).collect();
                lexicon.validate(&Grammar { choices: both, ..Grammar::default() }).unwrap_or_else(|why| panic!("{name}: {why}"));
            }
        }
    }
    assert!(answers > 0);
    let unknown = Choice { tag: "x".into(), wordings: vec!["qwrtzly".into()] };
    assert!(lexicon.validate(&Grammar { choices: vec![unknown], ..Grammar::default() }).is_err(), "the lexicon takes anything");
}

/// The demo routines, and one that holds every exercise of the catalogue in sets.
fn routines() -> Vec<(String, Prescription)> {
    let (words, lexicon) = (words(), Lexicon::open(&root().join("models/en")).expect("the lexicon"));
    let mut files: Vec<PathBuf> = std::fs::read_dir(root().join("demo"))
        .expect("demo")
        .map(|file| file.expect("a file").path())
        .filter(|path| {
            path.extension().is_some_and(|ext| ext == "toml")
                && !["client.toml", "household.toml"].iter().any(|other| path.ends_with(other))
        })
        .collect();
    files.sort();
    let dir = tempfile::tempdir().expect("a folder");
    let all = dir.path().join("all.toml");
    std::fs::write(&all, everything()).expect("writes");
    files.push(all);
    let load = |path: &Path| load::routine(path, &words, &lexicon).unwrap_or_else(|faults| panic!("{}: {faults:#?}", path.display())).0;
    files.iter().map(|path| (path.display().to_string(), load(path))).collect()
}

fn everything() -> String {
    let mut text = "title = \"Everything\"\ncue_words = \"strong voice\"\nfeedback_every = 2\nratings = [\"effort\", \"tiredness\", \"pain\"]\nweekly_questions = true\nclinician_word = { who = \"the clinician\", why = \"a test of the words\" }\n".to_owned();
    for entry in catalogue() {
        // Efforts of one group need a rest between them.
        if entry.timing != Timing::Rest {
            text += "[[step]]\nexercise = \"rest\"\nlength_s = 15\n";
        }
        text += &format!("[[step]]\nexercise = \"{}\"\n", entry.id);
        let fields = entry.dose_fields();
        if entry.naming {
            text += "packs = [\"categories\"]\n";
        }
        let mut put = |field: &str, value: &str| {
            if fields.contains(&field) {
                text += &format!("{field} = {value}\n");
            }
        };
        put("repetitions", if fields.contains(&"rungs") { "3" } else { "2" });
        put("setting", "\"two turns of the dial\"");
        put("phrases", "[\"A cup of tea, please.\", \"Good evening.\"]");
        put(
            "questions",
            "[{ clue = \"It has a river beside it.\", answers = [\"bank\"], hint = \"Boats tie up there.\", fact = \"It also keeps money.\" }, { clue = \"A season full of flowers.\", answers = [\"spring\"] }]",
        );
        if !entry.cautions.is_empty() {
            text += "cautions_acknowledged = true\n";
        }
    }
    text
}

/// How a client behaves whom nobody hears.
#[derive(Clone, Copy)]
struct Manner {
    /// Does what is asked; else is silent throughout.
    willing: bool,
    /// Says this every so often.
    also: Option<Command>,
    yes: bool,
}

/// Leads one session without sound and gives every line and view of it.
fn lead(prescription: &Prescription, manner: Manner, start: SessionContext) -> (Vec<Line>, Vec<View>, bool) {
    let mut engine = Engine::new(prescription.routine.clone(), start);
    let (mut lines, mut views, mut ends): (Vec<Line>, Vec<View>, Vec<(f64, LineId)>) = (Vec::new(), Vec::new(), Vec::new());
    let mut hears = Listening {
        commands: Vec::new(),
        answers: Vec::new(),
        worded: Vec::new(),
        voice: VoiceTask::Idle,
        list: false,
        multiword_only: false,
    };
    let (mut now_s, mut quiet_s, mut also_s) = (0.0_f64, 0.0_f64, 0.0_f64);
    // Nobody says it for ever: a long repetition could never be done then.
    let mut also_left = 3;
    let mut finished = false;
    while !finished && now_s < 20_000.0 {
        now_s += 0.1;
        let mut events: Vec<Event> = Vec::new();
        ends.retain(|(at_s, line)| {
            let over = *at_s <= now_s;
            if over {
                events.push(Event::LineEnded { at_s: now_s, line: *line });
            }
            !over
        });
        quiet_s = if ends.is_empty() { quiet_s + 0.1 } else { 0.0 };
        also_s += 0.1;
        if let Some(command) = manner.also.filter(|command| also_left > 0 && also_s > 47.0 && hears.commands.contains(command)) {
            also_s = 0.0;
            also_left -= 1;
            events.push(Event::Command { at_s: now_s, command, confidence: 0.95, text: command.name().into() });
        } else if manner.willing && quiet_s > 2.0 {
            quiet_s = 0.0;
            events.extend(reaction(&hears, manner.yes, now_s));
        }
        events.push(Event::Tick { at_s: now_s });
        for event in events {
            for effect in engine.on(event) {
                match effect {
                    Effect::Say { id, line, on_beat_s } => {
                        ends.push((on_beat_s.unwrap_or(now_s) + 0.5, id));
                        lines.push(line);
                    }
                    Effect::Hush => ends.iter_mut().for_each(|end| end.0 = now_s),
                    Effect::Listen(listening) => hears = listening,
                    Effect::Show(view) => views.push(view),
                    Effect::Finish => finished = true,
                    Effect::Attended { .. } | Effect::Resume(_) | Effect::Volume { .. } | Effect::SpeechRate { .. } | Effect::Record(_) => {
                    }
                }
            }
        }
    }
    (lines, views, finished)
}

fn reaction(hears: &Listening, yes: bool, now_s: f64) -> Vec<Event> {
    let said = |command: Command| vec![Event::Command { at_s: now_s, command, confidence: 0.95, text: command.name().into() }];
    let onset_s = now_s - 1.5;
    if let Some(answer) = hears.worded.get(4) {
        return vec![Event::Answer { at_s: now_s, text: answer.clone(), confidence: 0.95 }];
    }
    match hears.voice {
        VoiceTask::Hold(_) => {
            let hold = hold(onset_s, 1.5);
            return vec![Event::Onset { at_s: now_s, onset_s }, Event::Offset { at_s: now_s, hold }];
        }
        VoiceTask::Speech { .. } => {
            let utterance = utterance(onset_s, 1.5, 6);
            return vec![Event::SpeechBegan { at_s: now_s, onset_s }, Event::Spoken { at_s: now_s, utterance }];
        }
        VoiceTask::Idle => {}
    }
    if let Some(answer) = hears.answers.first() {
        return vec![Event::Answer { at_s: now_s, text: answer.clone(), confidence: 0.95 }];
    }
    let wish = if yes { Command::Yes } else { Command::No };
    let wishes = [wish, Command::Done, Command::GoOn, Command::Ready];
    wishes.into_iter().find(|command| hears.commands.contains(command)).map_or_else(Vec::new, said)
}

#[test]
fn every_line_and_view_of_any_session_has_its_words() {
    let words = words();
    let live = live(&words);
    let live: Vec<&str> = live.iter().map(String::as_str).collect();
    let mut keys: BTreeSet<String> = BTreeSet::new();
    let mut manners = vec![Manner { willing: true, also: None, yes: true }, Manner { willing: true, also: None, yes: false }];
    manners.push(Manner { willing: false, also: None, yes: true });
    manners.extend(Command::ALL.map(|command| Manner { willing: true, also: Some(command), yes: true }));
    for (name, prescription) in routines() {
        for (index, manner) in manners.iter().enumerate() {
            let week_to_ask = Some(WeekToAsk { days_missed: 2 });
            let start = SessionContext { first_session: index % 2 == 0, week_to_ask, ..SessionContext::default() };
            let (lines, views, finished) = lead(&prescription, *manner, start);
            assert!(finished, "{name}, {:?}: no end", manner.also);
            for (seed, line) in lines.iter().enumerate() {
                let text = words.text_variant(line, seed as u64).unwrap_or_else(|why| panic!("{name}: {why}"));
                assert!(
                    !text.is_empty() && (line.key == "you-can-stop" || live_words(&text, &live).is_none()),
                    "{name}: {}: {text}",
                    line.key
                );
                keys.insert(line.key.clone());
            }
            for view in &views {
                for line in view.heading.iter().chain(&view.prompt) {
                    words.text(line).unwrap_or_else(|why| panic!("{name}: {why}"));
                }
                for command in &view.can_say {
                    words.text(&self::line(&command.name_key(), &[])).unwrap_or_else(|why| panic!("{name}: {why}"));
                    assert!(!words.wordings(*command).is_empty());
                }
            }
        }
    }
    // The net is worth its name only if it was wide.
    assert!(keys.len() > 100, "only {} different lines were said", keys.len());
}
