use super::*;
use std::collections::{BTreeMap, BTreeSet};

const ALL: [Command; 30] = Command::ALL;

fn line(key: &str, args: &[(&'static str, Arg)]) -> Line {
    Line { key: key.into(), args: args.to_vec() }
}

fn catalogue(text: &str) -> Words {
    let english = Language::find("en").unwrap();
    let numbers = english.files.iter().find(|(name, _)| name == NUMBERS_FILE).unwrap().1.clone();
    Words::from_files(&[(NUMBERS_FILE.into(), numbers), ("test.ftl".into(), text.into())]).unwrap()
}

#[test]
fn a_telephone_number_is_said_figure_by_figure() {
    let words = Words::english().unwrap();
    let call = |number: &str| words.text(&Line { key: "emergency-call".into(), args: vec![("number", Arg::Text(number.into()))] });
    assert_eq!(call("112").unwrap(), "Call one. One. Two. I'll say it again: one. One. Two.");
    assert!(call("+01 23").unwrap().starts_with("Call plus. Zero. One. Two. Three."));
    assert!(call("my doctor").is_err() && call("").is_err());
}

#[test]
fn the_built_in_catalogue_is_whole() {
    let words = Words::english().unwrap();
    assert!(words.keys().count() > ALL.len() + 30);
    assert!(words.keys().all(|key| words.has(key)));
    for key in crate::SystemSpeaker::limits() {
        assert!(!words.text(&line(key, &[])).unwrap().is_empty());
    }
}

/// Where no command is heard, nothing asks for one: keys are named instead.
#[test]
fn whoever_is_not_heard_is_told_the_key() {
    for tag in ["en", "de", "es"] {
        let heard = Words::of(Language::find(tag).unwrap()).unwrap();
        let unheard = heard.clone().by_key();
        let text = |words: &Words, key: &str| {
            let texts = ["name", "time", "the"].map(|name| (name, Arg::Text("X".into())));
            let args = [&[("n", Arg::Number(3.0))], &texts[..]].concat();
            words.text(&line(key, &args)).unwrap_or_else(|why| panic!("{why}"))
        };
        let keyed: Vec<&str> = heard.keys().filter_map(|key| key.strip_suffix("-by-key")).collect();
        assert!(keyed.len() > 25, "{keyed:?}");
        for key in keyed {
            assert!(heard.has(key), "{tag}: nothing is said by {key}");
            let (aloud, by_key) = (text(&heard, key), text(&unheard, key));
            assert_ne!(aloud, by_key, "{tag}: {key}");
            assert!(!["Say ", " say ", "sagen Sie", "Sagen Sie", "Diga ", "diga "].iter().any(|ask| by_key.contains(ask)), "{by_key}");
        }
        assert_eq!(text(&unheard, "going-on"), text(&heard, "going-on"), "what asks for nothing stays");
    }
    // No line of a practice is left that asks for a command; a class has its clinician's keys beside the words.
    let words = Words::english().unwrap().by_key();
    let commands: Vec<String> =
        ["ready", "done", "all done", "go on", "next", "go back", "skip", "finish", "i'm fine"].map(str::to_owned).into();
    for key in words.keys().filter(|key| words.place(key).is_some_and(|place| place.file.contains("session.ftl"))) {
        let args = [("n", Arg::Number(3.0)), ("name", Arg::Text("X".into()))];
        let Ok(text) = words.text(&line(key, &args)) else { continue };
        let text = text.to_lowercase();
        let asks = commands.iter().any(|command| text.contains(&format!("say {command}")));
        assert!(!asks || key.starts_with("class-"), "{key}: {text}");
    }
}

/// Where commands alone are heard, an answer ends with a command, and how to stop by hand is said; everything else is asked for as ever.
#[test]
fn whoever_is_heard_by_command_alone_is_told_the_command() {
    for tag in ["en", "de", "es"] {
        let heard = Words::of(Language::find(tag).unwrap()).unwrap();
        let by_command = heard.clone().by_command();
        let text = |words: &Words, key: &str| words.text(&line(key, &[])).unwrap_or_else(|why| panic!("{why}"));
        let own: Vec<&str> = heard.keys().filter_map(|key| key.strip_suffix("-by-command")).collect();
        assert_eq!(own.len(), 4, "{own:?}");
        assert!(own.iter().all(|key| heard.has(key) && text(&heard, key) != text(&by_command, key)), "{tag}: {own:?}");
        let done = &heard.wordings(Command::Done)[0];
        assert!(text(&by_command, "ex-word-questions-short").contains(done.as_str()), "{tag}");
        assert_eq!(text(&by_command, "ask-ready"), text(&heard, "ask-ready"));
    }
}

/// The words of the recognition model are the outer measure here: what is not among them cannot be heard.
#[test]
fn every_command_can_be_said_in_words_the_model_knows() {
    let lexicon = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../models/en/graph/words.txt")).unwrap();
    let lexicon: BTreeSet<&str> = lexicon.lines().filter_map(|line| line.split_whitespace().next()).collect();
    assert!(lexicon.len() > 10_000);
    let words = Words::english().unwrap();
    let mut meaning: BTreeMap<String, Command> = BTreeMap::new();
    for command in ALL {
        let wordings = words.wordings(command);
        // A person in trouble has no time for a second try.
        let most = if session::listening::SAFETY.contains(&command) { 7 } else { 5 };
        assert!(wordings.len() >= 2 && wordings.len() <= most, "{command:?}: {wordings:?}");
        assert!(wordings.iter().any(|w| w.contains(' ')), "{command:?} has no wording of two words");
        for wording in wordings {
            assert!(wording.split(' ').all(|word| lexicon.contains(word)), "not in the lexicon: {wording}");
            assert!(!["go", "on"].contains(&wording.as_str()));
            assert_eq!(meaning.insert(wording.clone(), command), None, "{wording} stands twice");
        }
    }
    for near in words.near_misses() {
        assert!(near.contains(' ') && near.split(' ').all(|word| lexicon.contains(word)), "{near}");
        assert!(!meaning.contains_key(&near), "{near} is a command");
    }
    assert!(!words.near_misses().is_empty());
    for (long, command) in &meaning {
        for (short, other) in &meaning {
            let begins = long.strip_prefix(short.as_str()).is_some_and(|rest| rest.starts_with(' '));
            assert!(command == other || !begins, "{long:?} ({command:?}) begins with {short:?} ({other:?})");
        }
    }
}

/// What a class is shown that it can say must count when it is said.
#[test]
fn a_class_is_told_only_words_that_count_there() {
    let words = Words::english().unwrap();
    for command in session::listening::ALL.iter().filter(|(state, _)| state.starts_with("class")).flat_map(|(_, list)| *list) {
        let name = words.name_of(*command, true).to_lowercase();
        assert!(words.firm_wordings(command.name(), words.wordings(*command)).contains(&name), "{name:?}");
    }
    assert_eq!((words.name_of(Command::Ready, false), words.name_of(Command::Stop, true)), ("ready".into(), "stop".into()));
}

#[test]
fn no_message_is_named_like_a_command_that_is_none() {
    let words = Words::english().unwrap();
    let known: BTreeSet<String> = ALL.into_iter().map(Command::wordings_key).collect();
    let stray: Vec<&str> = words.keys().filter(|key| key.starts_with("cmd-") && !known.contains(*key)).collect();
    assert!(stray.is_empty(), "{stray:?}");
}

#[test]
fn arguments_numbers_and_messages_are_put_in() {
    let words = catalogue(
        "goal = { $name }: { $n -> \n    [one] one trial\n   *[other] { $n } trials\n}.\nah = long ah\nbest-of = best of { $n }\n",
    );
    let message = |key: &str| Arg::Message(key.into());
    let say = |n: f64| words.text(&line("goal", &[("name", message("ah")), ("n", Arg::Number(n))])).unwrap();
    assert_eq!(say(1.0), "Long ah: one trial.");
    assert_eq!(say(3.0), "Long ah: 3 trials.");
    // A message that is put in takes its arguments from the same line.
    let nested = words.text(&line("goal", &[("n", Arg::Number(2.0)), ("name", message("best-of"))])).unwrap();
    assert_eq!(nested, "Best of 2: 2 trials.");
}

#[test]
fn faults_name_the_message_and_the_argument() {
    let words = catalogue("a = { $x } and { $y }\nb = { a-missing-one }\nc = { SECONDS($x) }\nd = { SPOKEN($x) }\n");
    let x = ("x", Arg::Text("text".into()));
    let fault = |key: &str, args: &[(&'static str, Arg)]| words.text(&line(key, args)).unwrap_err();
    assert_eq!(fault("none", &[]), WordsError::NoMessage { key: "none".into() });
    assert_eq!(fault("a", std::slice::from_ref(&x)), WordsError::NoArgument { key: "a".into(), argument: "y".into() });
    let inner = [x.clone(), ("y", Arg::Message("gone".into()))];
    assert_eq!(fault("a", &inner), WordsError::NoMessage { key: "gone".into() });
    assert!(matches!(fault("b", &[]), WordsError::Broken { .. }));
    assert!(matches!(fault("c", &[x]), WordsError::Broken { .. }), "text where seconds are said");
    assert_eq!(fault("d", &[]), WordsError::NoArgument { key: "d".into(), argument: "x".into() });
    assert!(matches!(fault("d", &[("x", Arg::Number(f64::NAN))]), WordsError::Broken { .. }));
}

#[test]
fn a_key_that_stands_twice_and_a_text_that_is_none_are_errors_with_their_place() {
    let files = |texts: &[&str]| -> Vec<(String, String)> {
        texts.iter().enumerate().map(|(i, text)| (format!("{i}.ftl"), (*text).to_owned())).collect()
    };
    let twice = Words::from_files(&files(&["a = one\n", "# again\n\na = two\n"])).err().unwrap();
    assert_eq!(twice.to_string(), "1.ftl, line 3: the message a stands already in 0.ftl, line 1; rename or delete one");
    assert!(matches!(Words::from_files(&files(&["a = one\nb = two\na = 3\n"])), Err(WordsError::Twice { line: 3, .. })));
    let bad = Words::from_files(&files(&["a = one\nb = { $x\n"])).err().unwrap();
    assert!(matches!(&bad, WordsError::Unreadable { file, line: 2..=3, .. } if file == "0.ftl"), "{bad}");
}

#[test]
fn variants_are_picked_by_the_seed_and_all_are_used() {
    let words = catalogue("well = Good work.\n    .v1 = Good { $n }.\n    .v2 = Steady.\n    .note = not said\n");
    let well = line("well", &[("n", Arg::Number(3.0))]);
    assert_eq!(words.variants("well"), 3);
    assert_eq!(words.text(&well).unwrap(), "Good work.");
    let said: Vec<String> = (0..6).map(|seed| words.text_variant(&well, seed).unwrap()).collect();
    assert_eq!(said[..3], said[3..]);
    let distinct: BTreeSet<&String> = said.iter().collect();
    assert_eq!(distinct, BTreeSet::from([&"Good work.".into(), &"Good 3.".into(), &"Steady.".into()]));
    let missing: Vec<_> = (0..3).filter_map(|seed| words.text_variant(&line("well", &[]), seed).err()).collect();
    assert_eq!(missing, [WordsError::NoArgument { key: "well".into(), argument: "n".into() }]);
    assert!(words.text_variant(&line("none", &[]), 1).is_err());
}

/// English number words as any grammar gives them (common practice, no source); the tool's own tables are not consulted.
#[test]
fn numbers_are_said_as_people_say_them() {
    let words = catalogue("s = { SECONDS($n) }\nn = { SPOKEN($n) }\nd = { DURATION($n) }\n");
    let say = |key: &str, n: f64| words.text(&line(key, &[("n", Arg::Number(n))])).unwrap();
    for (n, said) in [
        (0.0, "zero"),
        (7.0, "seven"),
        (20.0, "twenty"),
        (21.0, "twenty-one"),
        (60.0, "sixty"),
        (99.96, "one hundred"),
        (105.5, "one hundred and five point five"),
        (200.0, "two hundred"),
        (999.0, "nine hundred and ninety-nine"),
        (1234.0, "1234"),
        (-3.0, "minus three"),
        (-0.01, "zero"),
    ] {
        assert_eq!(say("n", n), said);
    }
    for (s, said) in [
        (12.4, "twelve point four seconds"),
        (14.0, "fourteen seconds"),
        (14.04, "fourteen seconds"),
        (0.96, "one second"),
        (0.5, "zero point five seconds"),
        (72.3, "seventy-two point three seconds"),
    ] {
        assert_eq!(say("s", s), said);
    }
    for (s, said) in [
        (50.2, "fifty seconds"),
        (60.0, "one minute"),
        (61.0, "one minute and one second"),
        (130.0, "two minutes and ten seconds"),
        (599.6, "ten minutes"),
        (718.0, "twelve minutes"),
    ] {
        assert_eq!(say("d", s), said);
    }
    assert_eq!(say("count", 42.0), "forty-two");
}

/// German and Spanish number words as any grammar gives them (common practice, no source); the packs' own tables are not consulted.
#[test]
fn numbers_plurals_and_times_are_said_as_in_german_and_spanish() {
    let say = |language: &str, key: &str, n: f64| {
        let words = Words::of(Language::find(language).unwrap()).unwrap();
        words
            .text(&line(key, &["n", "seconds", "steps", "minutes", "hour", "repetitions", "sets"].map(|name| (name, Arg::Number(n)))))
            .unwrap()
    };
    for (n, german, spanish) in [
        (1.0, "eins", "uno"),
        (16.0, "sechzehn", "dieciséis"),
        (21.0, "einundzwanzig", "veintiuno"),
        (37.0, "siebenunddreißig", "treinta y siete"),
        (70.0, "siebzig", "setenta"),
        (100.0, "hundert", "cien"),
        (101.0, "hunderteins", "ciento uno"),
        (216.5, "zweihundertsechzehn Komma fünf", "doscientos dieciséis coma cinco"),
        (-3.0, "minus drei", "menos tres"),
    ] {
        assert_eq!((say("de", "count", n).as_str(), say("es", "count", n).as_str()), (german, spanish));
    }
    for (s, german, spanish) in [
        (1.0, "Eine Sekunde.", "Un segundo."),
        (12.4, "Zwölf Komma vier Sekunden.", "Doce coma cuatro segundos."),
        (21.0, "Einundzwanzig Sekunden.", "Veintiún segundos."),
    ] {
        assert_eq!((say("de", "held", s).as_str(), say("es", "held", s).as_str()), (german, spanish));
    }
    assert_eq!(say("de", "attend-time-half-past", 7.0), "halb acht");
    assert_eq!(say("es", "attend-time-half-past", 1.0), "la una y media");
    assert_eq!((say("de", "greeting-shown", 1.0), say("de", "greeting-shown", 3.0)), ("Eine Übung".into(), "drei Übungen".into()));
    // A figure has the decimal mark of its language, as a number and as a text.
    let figure = |language: &str, value: Arg| {
        Words::of(Language::find(language).unwrap()).unwrap().text(&line("report-figure-shown", &[("value", value)])).unwrap()
    };
    assert_eq!(figure("de", Arg::Number(12.4)), "12,4");
    assert_eq!(figure("es", Arg::Text("\u{2212}0.5".into())), "\u{2212}0,5");
    assert_eq!(figure("en", Arg::Number(12.4)), "12.4");
}

#[test]
fn keys_are_found_in_all_forms_of_a_file() {
    let text = "# c = no\na = x\n    .v1 = y\nb =\n    more = text\n-term = z\nc-1={ $n ->\n   *[other] x\n}\n";
    let keys: Vec<_> = keys_of(text).collect();
    assert_eq!(keys, [(2, "a"), (4, "b"), (6, "-term"), (7, "c-1")]);
    let words = Words::from_files(&[("t.ftl".into(), text.into())]).unwrap();
    assert_eq!(words.keys().collect::<Vec<_>>(), ["a", "b", "c-1"]);
}
