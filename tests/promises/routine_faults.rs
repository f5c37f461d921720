//! Promise: a faulty routine is refused with every fault at once, each with file, line and remedy; nothing panics.

use std::path::Path;

use files::routine_files::load_routine;
use proptest::prelude::*;
use routine::{Fault, FaultKind, Faults, Hearing, MAX_FILE_BYTES, Prescription, check_bytes, check_text};
use tidecount::routine::check::check as check_files;

fn commands() -> Vec<(String, Vec<String>)> {
    [
        ("stop", &["stop", "stop now"][..]),
        ("pause", &["pause", "wait a moment"]),
        ("yes", &["yes"]),
        ("no", &["no"]),
        ("help", &["help", "help me"]),
        ("skip", &["skip", "next"]),
    ]
    .iter()
    .map(|(tag, wordings)| ((*tag).to_owned(), wordings.iter().map(|&wording| wording.to_owned()).collect()))
    .collect()
}

fn check(text: &str) -> Result<Prescription, Faults> {
    let knows = |word: &str| word != "quinquereme";
    check_text("evening.toml", text, Hearing { commands: &commands(), knows_word: Some(&knows), ..Hearing::default() })
}

fn faults(text: &str) -> Vec<Fault> {
    check(text).err().map_or(Vec::new(), |faults| faults.list)
}

/// The text has exactly this one fault.
#[track_caller]
fn only(text: &str, kind: FaultKind, line: usize, what: &str, remedy: &str) {
    let found = faults(text);
    assert_eq!(found.len(), 1, "{found:#?}");
    let fault = &found[0];
    assert_eq!((fault.kind, fault.line), (kind, line), "{fault:#?}");
    assert!(fault.what.contains(what), "{}", fault.what);
    assert!(fault.remedy.contains(remedy), "{}", fault.remedy);
}

/// A routine of one step, whose lines begin at line 3.
fn step(lines: &str) -> String {
    format!("title = \"Evening\"\n[[step]]\n{lines}\n")
}

#[test]
fn a_sound_routine_gets_every_default_filled_in() {
    let read = check(&step("exercise = \"long-ah\"")).expect("sound");
    assert_eq!(read.routine.no_answer.ask_again_after_s, 12.0);
    assert_eq!((read.routine.no_answer.asks, read.routine.no_answer.give_up_after_s), (2, 600.0));
    assert_eq!((read.routine.steps[0].sets, read.routine.steps[0].repetitions), (1, 3));
    assert_eq!(read.language, "en");
}

#[test]
fn unknown_exercise_with_a_near_name() {
    only(&step("exercise = \"long-a\""), FaultKind::UnknownExercise, 3, "unknown exercise \"long-a\"", "Did you mean `long-ah`?");
    only(&step("exercise = \"yodel\""), FaultKind::UnknownExercise, 3, "yodel", "Choose one of: long-ah, comfortable-ah, high-ee");
}

#[test]
fn doses_out_of_range_name_the_limit_and_its_source() {
    let head_lift = "exercise = \"head-lift-sustained\"\ncautions_acknowledged = true\n";
    only(&step(&format!("{head_lift}repetitions = 6")), FaultKind::OutOfRange, 5, "is 6, outside 1 to 5", "Shaker 1997, from memory");
    only(
        &step(&format!("{head_lift}phases = [{{ name = \"lift\", length_s = 61 }}]")),
        FaultKind::OutOfRange,
        5,
        "`length_s` of `head-lift-sustained` is 61, outside 2 to 60",
        "Easterling",
    );
    for bad in ["nan", "inf", "-inf", "0", "-1", "3.5"] {
        only(
            &step(&format!("exercise = \"nasal-breathing\"\nbeat_s = {bad}")),
            FaultKind::OutOfRange,
            4,
            "outside 0.5 to 3",
            "cannot be spoken",
        );
    }
    for bad in ["0", "-3", "61", "9223372036854775807"] {
        only(
            &step(&format!("exercise = \"shoulder-rolls\"\nsets = {bad}")),
            FaultKind::OutOfRange,
            4,
            "outside 1 to 10",
            "Give a value between them",
        );
    }
    only(&step("exercise = \"shoulder-rolls\"\nsets = 99999999999999999999"), FaultKind::OutOfRange, 4, "too large", "smaller");
    only(&step("exercise = \"long-ah\"\ntarget_s = 30\nrepetitions = 20"), FaultKind::OutOfRange, 5, "add up to 600 s", "vocal fatigue");
    only(&step("exercise = \"long-ah\"\ntarget_s = 2\nmin_hold_s = 3"), FaultKind::OutOfRange, 5, "longer than the goal", "shorter");
    only(
        &step("exercise = \"functional-phrases\"\nrepetitions = 3\nphrases = [\"Good morning\"]"),
        FaultKind::OutOfRange,
        4,
        "3 phrases, but there are 1",
        "at most 1",
    );
    only(&format!("feedback_every = -1\n{}", step("exercise = \"rest\"")), FaultKind::OutOfRange, 1, "outside 0 to 100", "Give");
    only(&step("exercise = \"rest\"\n[no_answer]\nasks = 11"), FaultKind::OutOfRange, 5, "outside 0 to 10", "adds pressure");
    only(
        &step("exercise = \"rest\"\n[no_answer]\nask_again_after_s = 60\ngive_up_after_s = 90"),
        FaultKind::OutOfRange,
        6,
        "takes 180 s",
        "longer time",
    );
}

#[test]
fn cautions_must_be_acknowledged() {
    for extra in ["", "\ncautions_acknowledged = false"] {
        let line = if extra.is_empty() { 3 } else { 4 };
        let text = step(&format!("exercise = \"mid-swallow-hold\"{extra}"));
        only(&text, FaultKind::MissingAcknowledgement, line, "missing caution acknowledgement", "`cautions_acknowledged = true`");
    }
}

#[test]
fn sips_need_a_clinician_and_an_exercise_that_bears_them() {
    let swallow = "exercise = \"mid-swallow-hold\"\ncautions_acknowledged = true\nsip_every = 2";
    let of_client = |text: &str| format!("client = \"grandpa\"\n{}", step(text));
    only(&of_client(swallow), FaultKind::NotAllowed, 6, "`sip_every`", "`sips_enabled_by_clinician = true`");
    assert!(check(&of_client(&format!("{swallow}\nsips_enabled_by_clinician = true"))).is_ok());
    // Enabled for whom?
    only(&step(&format!("{swallow}\nsips_enabled_by_clinician = true")), FaultKind::NotAllowed, 5, "does not say to whom", "`client");
    let saliva = "exercise = \"tongue-hold-swallow\"\ncautions_acknowledged = true\nsip_every = 2";
    only(&step(saliva), FaultKind::NotForThisExercise, 5, "`sip_every`", "without anything in the mouth");
}

#[test]
fn fields_of_another_way_of_timing() {
    only(
        &step("exercise = \"nasal-breathing\"\ntarget_s = 5"),
        FaultKind::NotForThisExercise,
        4,
        "`target_s` does not belong to `nasal-breathing`",
        "in, out, beat_s",
    );
    only(&step("exercise = \"rest\"\nsets = 2"), FaultKind::NotForThisExercise, 4, "`sets`", "length_s");
}

#[test]
fn unknown_keys_with_a_near_name() {
    only(&step("exercise = \"long-ah\"\nrepetition = 3"), FaultKind::UnknownKey, 4, "`repetition`", "Did you mean `repetitions`?");
    only(&format!("tilte = \"x\"\n{}", step("exercise = \"long-ah\"")), FaultKind::UnknownKey, 1, "`tilte`", "Did you mean `title`?");
    let question = "exercise = \"word-questions\"\nquestions = [{ clue = \"It barks\", answers = [\"dog\"], hnit = \"x\" }]";
    only(&step(question), FaultKind::UnknownKey, 4, "`hnit`", "Did you mean `hint`?");
}

#[test]
fn wrong_types() {
    only(
        &step("exercise = \"long-ah\"\nrepetitions = \"three\""),
        FaultKind::WrongType,
        4,
        "is a text, but must be a whole number",
        "`repetitions = 3`",
    );
    only(&step("exercise = \"long-ah\"\nrepetitions = 2.5"), FaultKind::WrongType, 4, "a number with a point", "3");
    only(&step("exercise = \"long-ah\"\ncues_at_s = 5"), FaultKind::WrongType, 4, "must be a list", "[");
    only(&step("exercise = \"long-ah\"\ncues_at_s = [5, \"six\"]"), FaultKind::WrongType, 4, "`cues_at_s` is a text", "10");
    only("title = 1\n[[step]]\nexercise = \"rest\"", FaultKind::WrongType, 1, "`title` is a whole number", "\"text\"");
    only("title = \"x\"\nstep = 3", FaultKind::WrongType, 2, "`step`", "{ … }");
    only(&step("exercise = \"rest\"\nlength_s = 1979-05-27"), FaultKind::WrongType, 4, "a date", "10");
}

#[test]
fn what_must_be_there() {
    only("[[step]]\nexercise = \"rest\"", FaultKind::Missing, 1, "the routine has no `title`", "title = \"text\"");
    only("title = \"x\"", FaultKind::Missing, 1, "no `step`", "step");
    only("title = \"x\"\nstep = []", FaultKind::Missing, 2, "no steps", "[[step]]");
    only("title = \"x\"\n\n[[step]]\nsets = 1", FaultKind::Missing, 3, "no `exercise`", "exercise = ");
    only(&step("exercise = \"functional-phrases\""), FaultKind::Missing, 3, "no `phrases`", "phrases = [");
    only(&step("exercise = \"word-questions\"\nquestions = []"), FaultKind::Missing, 4, "`questions` is empty", "at least one");
    only(
        &step("exercise = \"word-questions\"\nquestions = [{ clue = \"It barks\", answers = [] }]"),
        FaultKind::Missing,
        4,
        "`answers` is empty",
        "at least one",
    );
    only(&step("exercise = \"cheek-puff\"\nphases = []"), FaultKind::Missing, 4, "`phases` is empty", "at least one");
}

#[test]
fn names_that_do_not_exist() {
    let phases = "exercise = \"lip-press-smile\"\nphases = [{ name = \"pres\", length_s = 5 }]";
    only(&step(phases), FaultKind::UnknownName, 4, "no phase \"pres\"", "Did you mean `press`?");
    only(&format!("language = \"xx\"\n{}", step("exercise = \"rest\"")), FaultKind::UnknownName, 1, "\"xx\"", "en");
}

#[test]
fn unreadable_texts() {
    for (phrase, what) in [
        ("", "an empty text"),
        ("   ", "an empty text"),
        ("…!", "nothing that can be spoken"),
        ("a\\u0007b", "U+0007"),
        ("a\\nb", "U+000A"),
        ("a\\u202Eb", "U+202E"),
    ] {
        let text = step(&format!("exercise = \"functional-phrases\"\nphrases = [\n  \"Good morning\",\n  \"{phrase}\",\n]"));
        let found = faults(&text);
        assert_eq!((found.len(), found[0].kind, found[0].line), (1, FaultKind::UnreadableText, 6), "{found:#?}");
        assert!(found[0].what.contains(what), "{}", found[0].what);
        assert!(found[0].remedy.contains("Write"), "{}", found[0].remedy);
    }
    let long = step(&format!("exercise = \"functional-phrases\"\nphrases = [\"{}\"]", "la ".repeat(101)));
    only(&long, FaultKind::UnreadableText, 4, "303 characters", "Shorten");
}

#[test]
fn bytes_that_are_no_text() {
    let commands = commands();
    let hearing = Hearing { commands: &commands, knows_word: None, ..Hearing::default() };
    let found = check_bytes("a.toml", b"title = \"x\"\n[[step]]\nexercise = \"lo\xFFng\"\nsets = 0\n", hearing).expect_err("faults").list;
    let kinds: Vec<_> = found.iter().map(|fault| (fault.kind, fault.line)).collect();
    assert!(kinds.contains(&(FaultKind::UnreadableText, 3)), "{found:#?}");
    assert!(found.iter().any(|fault| fault.what.contains("byte 36") && fault.remedy.contains("UTF-8")), "{found:#?}");
    // UTF-16, as some editors save it.
    let utf16: Vec<u8> = [0xFF, 0xFE].into_iter().chain("title = \"x\"".encode_utf16().flat_map(u16::to_le_bytes)).collect();
    let found = check_bytes("a.toml", &utf16, hearing).expect_err("faults").list;
    assert!(
        found.iter().any(|fault| fault.kind == FaultKind::UnreadableText && fault.line == 1 && fault.remedy.contains("UTF-8")),
        "{found:#?}"
    );
}

#[test]
fn byte_order_mark_and_windows_line_ends_are_let_pass() {
    let text = step("exercise = \"long-ah\"\nsets = 2").replace('\n', "\r\n");
    assert!(check(&format!("\u{FEFF}{text}")).is_ok());
    only(&format!("\u{FEFF}{}", text.replace("sets = 2", "sets = 0")), FaultKind::OutOfRange, 4, "outside 1 to 10", "Give");
}

#[test]
fn syntax_errors_do_not_hide_other_faults() {
    let found = faults("title = \"Evening\n[[step]]\nexercise = \"long-ah\"\nsets = 0\n[[step]]\nexercise = \"yodel\"\n");
    let kinds: Vec<_> = found.iter().map(|fault| (fault.kind, fault.line)).collect();
    assert_eq!(kinds, [(FaultKind::Syntax, 1), (FaultKind::OutOfRange, 4), (FaultKind::UnknownExercise, 6)], "{found:#?}");
    assert!(found[0].remedy.contains("quotes"), "{}", found[0].remedy);
    only(&step("exercise = \"rest\"\nlength_s = 5\nlength_s = 6"), FaultKind::Syntax, 5, "duplicate key", "Keep one");
    only(&step("exercise = \"rest\"\nlength_s 5"), FaultKind::Syntax, 4, "not TOML", "key = value");
}

#[test]
fn spoken_texts_must_not_hold_a_command_that_is_live_then() {
    let rest = step("exercise = \"rest\"");
    only(&rest.replace("Evening", "Stop now, dear"), FaultKind::CommandInText, 1, "\"stop now\"", "other words");
    // "help" is not listened for while the tool talks, but while the client reads.
    assert!(check(&rest.replace("Evening", "Help yourself")).is_ok());
    only(
        &step("exercise = \"functional-phrases\"\nphrases = [\"Please help me up\"]"),
        FaultKind::CommandInText,
        4,
        "\"help me\"",
        "other words",
    );
    assert!(check(&step("exercise = \"functional-phrases\"\nphrases = [\"Yes, with milk\"]")).is_ok());
    let question = |clue: &str, answer: &str| {
        step(&format!("exercise = \"word-questions\"\nquestions = [{{ clue = \"{clue}\", answers = [\"{answer}\"] }}]"))
    };
    only(&question("A bus does it: stop", "dog"), FaultKind::CommandInText, 4, "`clue`", "other words");
    only(&question("What comes after this?", "next"), FaultKind::CommandInText, 4, "`answers`", "other words");
    only(&question("An old ship", "quinquereme"), FaultKind::UnknownWord, 4, "\"quinquereme\"", "another word");
    only(&format!("cue_words = \"don't pause\"\n{rest}"), FaultKind::CommandInText, 1, "`cue_words`", "other words");
}

#[test]
fn files_that_cannot_be_read_or_are_too_large() {
    let commands = commands();
    let hearing = Hearing { commands: &commands, knows_word: None, ..Hearing::default() };
    let missing = load_routine(Path::new("no such file.toml"), hearing).expect_err("missing");
    assert_eq!((missing.list[0].kind, missing.list.len()), (FaultKind::File, 1));
    assert!(missing.to_string().starts_with("no such file.toml:1: cannot be read"), "{missing}");
    let folder = tempfile::tempdir().expect("folder");
    assert!(load_routine(folder.path(), hearing).is_err());
    let large = folder.path().join("large.toml");
    std::fs::write(&large, vec![b'#'; MAX_FILE_BYTES + 1]).expect("written");
    let large = load_routine(&large, hearing).expect_err("too large");
    assert!(large.list[0].what.contains("larger than 1000000 bytes"), "{large}");
}

#[test]
fn too_much_of_anything() {
    let many = |n: usize, item: &str| vec![item; n].join(", ");
    only(
        &step(&format!("exercise = \"functional-phrases\"\nphrases = [{}]", many(61, "\"Good morning\""))),
        FaultKind::OutOfRange,
        4,
        "61, outside 1 to 60",
        "Give",
    );
    let question = format!(
        "exercise = \"word-questions\"\nquestions = [{{ clue = \"It barks\", answers = [{}] }}]",
        (0..9).map(|n| format!("\"dog{}\"", " now".repeat(n))).collect::<Vec<_>>().join(", ")
    );
    only(&step(&question), FaultKind::OutOfRange, 4, "9 answers", "likely ones");
    let phases = format!("exercise = \"cheek-puff\"\nphases = [{}]", many(13, "{ name = \"puff\", length_s = 5 }"));
    only(&step(&phases), FaultKind::OutOfRange, 4, "13 phases", "repetitions");
    let steps = "[[step]]\nexercise = \"rest\"\n".repeat(101);
    only(&format!("title = \"x\"\n{steps}"), FaultKind::OutOfRange, 2, "101 steps", "Split it");
    // A megabyte of nonsense neither panics nor drowns anybody in faults.
    for line in ["[[step]]\nx = 1\n", "= \n", "[", "\"", "a.", "x = [[[[\n"] {
        let found = faults(&line.repeat(MAX_FILE_BYTES / line.len()));
        assert!((1..=100).contains(&found.len()), "{line:?}: {}", found.len());
    }
}

/// The whole of `tests/routines/bad.toml`, plain, as it is printed where there is no terminal.
#[test]
fn every_fault_of_a_file_is_printed_at_once() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/routines/bad.toml");
    let commands = commands();
    let files = [path.clone(), path.clone()];
    let print = |fancy| {
        let mut out = Vec::new();
        assert!(
            !check_files(&files, Hearing { commands: &commands, knows_word: None, ..Hearing::default() }, fancy, &mut out)
                .expect("printed")
        );
        String::from_utf8(out).expect("text")
    };
    let plain = print(false);
    let lines: Vec<_> = plain.lines().map(|line| line.replace(&path.display().to_string(), "bad.toml")).collect();
    assert_eq!(lines.len() % 2, 0, "each file once");
    insta::assert_snapshot!(lines[..lines.len() / 2].join("\n"));
    let fancy = print(true);
    assert!(fancy.contains("titel") && fancy.contains("bad.toml") && fancy.contains("Did you mean"), "{fancy}");
}

proptest! {
    #[test]
    fn arbitrary_text_never_panics(text in ".{0,400}") {
        let _ = check(&text);
    }

    #[test]
    fn arbitrary_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let commands = commands();
        let _ = check_bytes("x", &bytes, Hearing { commands: &commands, knows_word: None, ..Hearing::default() });
    }

    /// Routine-like text: lines of known keys with odd values, in odd order; faults stay inside the text.
    #[test]
    fn shuffled_routines_never_panic(lines in prop::collection::vec(prop::sample::select(PIECES), 0..30)) {
        let text = lines.join("\n");
        if let Err(found) = check(&text) {
            prop_assert!(!found.list.is_empty());
            for fault in &found.list {
                prop_assert!(fault.line >= 1 && fault.line <= text.matches('\n').count() + 1);
                prop_assert!(fault.span.end <= text.len());
                prop_assert!(!fault.remedy.is_empty());
            }
        }
    }
}

const PIECES: &[&str] = &[
    "title = \"Abend ü\"",
    "[[step]]",
    "[step]",
    "[no_answer]",
    "exercise = \"long-ah\"",
    "exercise = \"word-questions\"",
    "exercise = \"lip-press-smile\"",
    "exercise = \"functional-phrases\"",
    "exercise = \"rest\"",
    "sets = 0",
    "sets = 3",
    "rest_s = nan",
    "rest_s = 1e400",
    "repetitions = 0x7fffffffffffffff",
    "phases = [{}]",
    "phases = [{ name = \"press\", length_s = 5 }]",
    "phases = [[]]",
    "questions = [{ clue = 1, answers = [2] }]",
    "[[step.questions]]",
    "clue = \"…\"",
    "answers = [\"bank\", \"\"]",
    "phrases = [\"ü\", 3]",
    "length_s = -5",
    "in = 3",
    "\"\" = 1",
    "'a.b'.c = 2",
    "x = '''",
    "cautions_acknowledged = true",
    "sip_every = 1",
    "= = =",
    "step = 1",
    "\u{7}",
];
