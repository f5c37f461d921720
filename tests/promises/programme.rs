//! Promise: a programme is written by answering questions and says what was answered; plans and ramps are checked and
//! stepped as their rules say; the handout holds all of it.

use std::path::{Path, PathBuf};

use ::routine::{Fault, FaultKind, Hearing, Prescription, Weekday, Work, catalogue, check_text, find, ramp_template, safe_dose, templates};
use files::load;
use files::ramps::{stages_and_unfinished, take_stages};
use record::{NewSession, Source, Store};
use report::{Handout, handout, to_text};
use session::{Arg, Entry, Fact, Line, Position};
use speak::Words;
use tidecount::routine;
use tidecount::routine::new::write_programme;
use tidecount::terminal::ask::{AskError, Plain};

const NOTHING_LISTENED_FOR: Hearing<'_> = Hearing { commands: &[], knows_word: None, pack_file: None, language: None, games: &[] };

fn checked(text: &str) -> Prescription {
    check_text("routine.toml", text, NOTHING_LISTENED_FOR).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

/// The text has exactly this one fault.
#[track_caller]
fn only(text: &str, kind: FaultKind, line: usize, what: &str, remedy: &str) {
    let found: Vec<Fault> = check_text("routine.toml", text, NOTHING_LISTENED_FOR).err().map_or(Vec::new(), |faults| faults.list);
    let [fault] = &found[..] else { panic!("{found:#?}") };
    assert_eq!((fault.kind, fault.line), (kind, line), "{fault:#?}");
    assert!(fault.what.contains(what), "{}", fault.what);
    assert!(fault.remedy.contains(remedy), "{}", fault.remedy);
}

fn planned(plan: &str) -> String {
    format!("title = \"Evening\"\nplan = {plan}\n[[step]]\nexercise = \"rest\"\n")
}

#[test]
fn a_plan_is_days_and_times() {
    let plan = checked(&planned("[{ days = [\"wednesday\", \"monday\"], at = \"18:30\" }, { at = \"8:05\" }]")).plan;
    assert_eq!(plan.len(), 2);
    assert_eq!(plan[0].days.iter().copied().collect::<Vec<_>>(), [Weekday::Monday, Weekday::Wednesday]);
    assert_eq!((plan[0].at_min, plan[0].at_text().as_str()), (1110, "18:30"));
    assert_eq!((plan[1].days.len(), plan[1].at_min), (7, 485));
    // The same day at another time, and the same time on another day.
    checked(&planned(
        "[{ days = [\"monday\"], at = \"18:30\" }, { days = [\"monday\"], at = \"9:00\" }, { days = [\"sunday\"], at = \"18:30\" }]",
    ));
    assert!(checked("title = \"x\"\n[[step]]\nexercise = \"rest\"").plan.is_empty());
}

#[test]
fn bad_plans_are_faults_with_line_and_remedy() {
    for bad in ["24:00", "18:60", "half past six", "18.30", ""] {
        only(&planned(&format!("[{{ at = \"{bad}\" }}]")), FaultKind::OutOfRange, 2, "no time of day", "`at = \"18:30\"`");
    }
    only(&planned("[{ at = 18:30:00 }]"), FaultKind::WrongType, 2, "`at` is a date or time", "at = \"18:30\"");
    only(&planned("[{ days = [\"monday\"] }]"), FaultKind::Missing, 2, "no `at`", "at = \"18:30\"");
    only(&planned("[{ days = [\"mnoday\"], at = \"9:00\" }]"), FaultKind::UnknownName, 2, "\"mnoday\"", "Did you mean `monday`?");
    only(&planned("[{ days = [], at = \"9:00\" }]"), FaultKind::Missing, 2, "`days` is empty", "every day");
    only(&planned("[]"), FaultKind::Missing, 2, "`plan` is empty", "at = ");
    only(&planned("[{ days = [\"monday\", \"monday\"], at = \"9:00\" }]"), FaultKind::Twice, 2, "monday twice", "Keep one");
    let twice = "[\n{ days = [\"monday\"], at = \"9:00\" },\n{ at = \"09:00\" },\n]";
    only(&planned(twice), FaultKind::Twice, 4, "monday at 09:00 stands in the plan twice", "Keep one");
    only(&planned("[{ day = \"monday\", at = \"9:00\" }]"), FaultKind::UnknownKey, 2, "`day`", "Did you mean `days`?");
}

/// The step of a ramp; its `stages` stand in line 5.
fn ramped(exercise: &str, ramp: &str) -> String {
    format!("title = \"x\"\n[[step]]\nexercise = \"{exercise}\"\ncautions_acknowledged = true\nramp = {ramp}\n")
}

#[test]
fn a_ramp_begins_at_its_first_stage_and_is_checked_like_any_dose() {
    let read = checked(&ramped("head-lift-sustained", "{ stages = [{ repetitions = 2, hold_s = 10 }, { hold_s = 20 }] }"));
    let step = &read.routine.steps[0];
    assert_eq!((step.repetitions, step.ramp_stage, read.ramps[0].days), (2, Some(1), 3));
    // What the second stage leaves out is the step's own, here the catalogue's three lifts.
    assert_eq!(read.ramps[0].stages[1].repetitions, 3);
    let voiced = checked(&ramped("long-ah", "{ days = 2, stages = [{ target_s = 6 }, { target_s = 8 }] }"));
    assert!(matches!(voiced.ramps[0].stages[1].work, Work::Voiced { target_s: Some(8.0), .. }));
    let paced = checked(&ramped("nasal-breathing", "{ stages = [{ in = 3, out = 5 }, { out = 6 }] }"));
    assert!(matches!(&paced.ramps[0].stages[1].work, Work::Paced { phases, .. } if phases[1].counts == 6));
}

#[test]
fn bad_ramps_are_faults_with_line_and_remedy() {
    let lift = |ramp: &str| ramped("head-lift-sustained", ramp);
    only(
        &lift("{ stages = [{ hold_s = 10 }, { hold_s = 61 }] }"),
        FaultKind::OutOfRange,
        5,
        "`length_s` of `head-lift-sustained` is 61, outside 2 to 60",
        "Easterling",
    );
    only(
        &lift("{ stages = [{ hold_s = 10 }, { repetitions = 9 }] }"),
        FaultKind::OutOfRange,
        5,
        "`repetitions` of `head-lift-sustained` is 9",
        "Give a value",
    );
    only(&lift("{ stages = [{ hold_s = 10 }] }"), FaultKind::Missing, 5, "has 1 stages", "Add stages");
    only(&lift("{ days = 3 }"), FaultKind::Missing, 5, "no `stages`", "stages = ");
    only(
        &lift("{ days = 0, stages = [{ hold_s = 10 }, { hold_s = 20 }] }"),
        FaultKind::OutOfRange,
        5,
        "`days` is 0, outside 1 to 14",
        "Give",
    );
    only(
        &lift("{ stages = [{ hold_s = 10 }, { hold_s = 10 }] }"),
        FaultKind::Twice,
        5,
        "stage 2 of `head-lift-sustained` asks for the same as stage 1",
        "Change",
    );
    only(&lift("{ stages = [{ hold_s = 20 }, { }] }"), FaultKind::Missing, 5, "says nothing", "hold_s");
    only(
        &lift("{ stages = [{ hold_s = 10 }, { target_s = 20 }] }"),
        FaultKind::NotForThisExercise,
        5,
        "`target_s` does not belong to a stage",
        "hold_s",
    );
    only(
        &lift("{ stages = [{ hold_s = 10 }, { hold = 20, repetitions = 2 }] }"),
        FaultKind::UnknownKey,
        5,
        "`hold`",
        "Did you mean `hold_s`?",
    );
    only(
        &ramped("rest", "{ stages = [{ length_s = 10 }, { length_s = 20 }] }"),
        FaultKind::NotForThisExercise,
        5,
        "`ramp` does not belong to `rest`",
        "length_s",
    );
    let lips = ramped("lip-press-smile", "{ stages = [{ hold_s = 10 }, { repetitions = 4 }] }");
    only(&lips, FaultKind::NotForThisExercise, 5, "which of the 3 phases", "phases = [");
    only(
        &ramped("long-ah", "{ stages = [{ target_s = 10 }, { target_s = 20, repetitions = 30 }] }"),
        FaultKind::OutOfRange,
        5,
        "add up to 600 s",
        "vocal fatigue",
    );
    let many = (1..=31).map(|n| format!("{{ hold_s = {} }}", n + 5)).collect::<Vec<_>>().join(", ");
    only(&lift(&format!("{{ stages = [{many}] }}")), FaultKind::OutOfRange, 5, "31 stages", "larger steps");
}

/// Source: the head-lift rows of `tests/checks/doses.tsv` (goal 3 × 60 s, 60 s rest: hospital leaflet 2022) and the advice to
/// grow (Easterling et al. 2005), as transcribed there; the first stage of 10 s is the issue's own example.
#[test]
fn the_head_lift_template_grows_from_ten_to_sixty_seconds() {
    let ramp = ramp_template("head-lift-sustained").expect("a template");
    let doses: Vec<_> = ramp.stages.iter().map(|stage| (stage.repetitions, stage.hold_s)).collect();
    assert_eq!((doses[0], doses[doses.len() - 1]), ((Some(3), Some(10.0)), (Some(3), Some(60.0))));
    assert_eq!(ramp.rest_s, Some(60.0));
    assert!(ramp.source.contains("Easterling et al. 2005") && ramp.source.contains("hospital leaflet 2022"));
}

/// Source: `tests/checks/doses.tsv`. What a template takes over is within the published numbers, or is not offered.
#[test]
fn templates_take_over_what_the_sources_say() {
    let table = std::fs::read_to_string(root().join("tests/checks/doses.tsv")).expect("the table");
    let mut compared = 0;
    for line in table.lines().filter(|line| !line.starts_with(['#', 'e'])).chain(table.lines().filter(|line| line.starts_with("effortful")))
    {
        let cells: Vec<&str> = line.split('\t').collect();
        let entry = find(cells[0]).unwrap_or_else(|| panic!("{line}"));
        let within = |cell: &str, value: f64| {
            let (low, high) = cell.split_once("..").unwrap_or((cell, cell));
            (low.parse::<f64>().expect(cell)..=high.parse::<f64>().expect(cell)).contains(&value)
        };
        for template in templates(entry).iter().filter(|template| template.dose.source.contains(cells[1])) {
            for (field, cell) in [("repetitions", cells[2]), ("hold_s", cells[3]), ("target_s", cells[3]), ("rest_s", cells[4])] {
                let taken = template.numbers.iter().find(|(name, _)| *name == field).map(|(_, value)| *value);
                // Where a source gives no rest, the shortest that needs no clinician's word is added.
                if let (Some(value), "rest_s", "-") = (taken, field, cell) {
                    let share = safe_dose(&entry.id).and_then(|safe| safe.rest_per_hold.as_ref()).expect("a rest").in_force(false);
                    let hold_s = template.numbers.iter().find(|(name, _)| *name == "hold_s").map(|(_, value)| *value).expect("a hold");
                    assert_eq!(value, (share * hold_s).ceil(), "{line}");
                } else if let Some(value) = taken {
                    assert!(cell != "-" && within(cell, value), "{line}: {field} {value}");
                    compared += 1;
                }
            }
        }
    }
    assert!(compared >= 40, "{compared}");
    let text = print_templates(Some("chin-tuck-ball"));
    let (park, kim) = (text.find("Park JS et al. 2018").expect("one side"), text.find("Kim & Park 2019").expect("the other"));
    assert!(park < kim && text.contains("3 × 60 s") && text.contains("3 × 10 s") && text.contains("Sources disagree"), "{text}");
    let text = print_templates(Some("tongue-hold-swallow"));
    assert!(text.contains("changed nothing in healthy people") && text.contains("pressure in the throat rises"), "{text}");
    let all = print_templates(None);
    for entry in catalogue() {
        assert!(all.contains(&format!("({})", entry.id)), "{}", entry.id);
    }
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn words() -> Words {
    Words::english().expect("the catalogue of words")
}

fn look_up<'a>(words: &'a Words) -> impl Fn(&str) -> Option<String> + 'a {
    |key| words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok()
}

fn print_templates(exercise: Option<&str>) -> String {
    let (words, mut out) = (words(), Vec::new());
    assert!(routine::templates::run(exercise, &look_up(&words), &mut out).expect("printed"));
    String::from_utf8(out).expect("text")
}

/// Answers one a line; gives what was shown, and what came of it.
fn new_routine(answers: &[&str], file: Option<&Path>) -> (String, Result<Option<PathBuf>, AskError>) {
    let words = words();
    let commands = load::command_words(&words);
    let (mut out, typed) = (Vec::new(), answers.join("\n") + "\n");
    let mut ask = Plain::new(typed.as_bytes(), &mut out);
    let hearing = Hearing { commands: &commands, knows_word: None, ..Hearing::default() };
    let written = write_programme(&mut ask, file, &look_up(&words), hearing);
    (String::from_utf8(out).expect("text"), written)
}

/// The number under which an exercise stands in the list, as a reader of the list finds it.
fn number_of(id: &str) -> String {
    (catalogue().iter().position(|entry| entry.id == id).expect("known") + 1).to_string()
}

#[test]
fn a_programme_is_written_from_answers_and_says_what_was_answered() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("evening.toml");
    let which = ["long-ah", "head-lift-sustained", "mid-swallow-hold", "functional-phrases", "jaw-opening"].map(number_of).join(" ");
    let answers = [
        // Title and name; a title that holds a live command, and exercises that are none, are asked for again.
        "Stop and go",
        "Evening voice",
        "grandpa",
        "99",
        "one two",
        &which,
        // Long ah: agreed, own numbers: 4 times, 1 set, goal 8, rest 12; grows to 12 in 3 stages, on 2 days each.
        "yes",
        "o",
        "four",
        "4",
        "1",
        "8",
        "12",
        "yes",
        "12",
        "3",
        "2",
        // Head lift: the growing template is the fourth choice.
        "y",
        "yes",
        "4",
        // Mid-swallow hold: the default, not growing, sips after every third.
        "yes",
        "d",
        "no",
        "yes",
        "3",
        // Phrases.
        "yes",
        "A cup of tea, please.",
        "help me",
        "Good evening.",
        "",
        // The jaw opening is left out.
        "no",
        // Cue words, feedback, times.
        "strong voice",
        "many",
        "3",
        "25:00",
        "mon wed 18:30",
        "monday 18:30",
        "sat 9:00",
        "",
    ];
    let (shown, written) = new_routine(&answers, Some(&file));
    assert_eq!(written.as_ref().map(Option::as_deref).unwrap_or_else(|why| panic!("{why}\n{shown}")), Some(file.as_path()), "{shown}");
    let text = std::fs::read_to_string(&file).expect("written");
    let read = checked(&text);
    assert_eq!((read.routine.title.as_str(), read.client.as_deref()), ("Evening voice", Some("grandpa")));
    assert_eq!((read.routine.cue_words.as_deref(), read.routine.feedback_every), (Some("strong voice"), 3));
    let ids: Vec<_> = read.routine.steps.iter().map(|step| step.exercise.id.as_str()).collect();
    assert_eq!(ids, ["long-ah", "head-lift-sustained", "mid-swallow-hold", "functional-phrases"]);
    let [ah, lift, swallow, phrases] = &read.routine.steps[..] else { panic!("four") };
    assert_eq!((ah.repetitions, ah.rest_s), (4, 12.0));
    let goals: Vec<_> =
        read.ramps[0].stages.iter().map(|stage| if let Work::Voiced { target_s, .. } = stage.work { target_s } else { None }).collect();
    assert_eq!((goals, read.ramps[0].days), (vec![Some(8.0), Some(10.0), Some(12.0)], 2));
    assert_eq!((lift.repetitions, lift.rest_s, read.ramps[1].stages.len(), read.ramps[1].days), (3, 60.0, 6, 3));
    assert!(matches!(swallow.work, Work::Repeated { sip_every: Some(3), .. }));
    assert!(matches!(&phrases.work, Work::ReadAloud { phrases, .. } if phrases == &["A cup of tea, please.", "Good evening."]));
    let plan: Vec<_> = read.plan.iter().map(|planned| (planned.days.len(), planned.at_min)).collect();
    assert_eq!(plan, [(2, 18 * 60 + 30), (1, 9 * 60)]);
    // A person can read it: source, cautions, and who should leave it out stand beside each dose.
    for comment in [
        "# Dose: 3 × 10 s, then 10 s longer",
        "Easterling et al. 2005",
        "# Caution: Lie flat",
        "# Not for, unless",
        "cautions_acknowledged = true",
    ] {
        assert!(text.replace("\n# ", " ").contains(comment.trim_start_matches("# ")), "{comment}\n{text}");
    }
    // What was wrong was said, with what is accepted.
    for said in [
        "\"stop\"",
        "separated by spaces",
        "Type a whole number from 1 to 60",
        "Type yes in full",
        "\"help me\"",
        "from 0 to 100",
        "is not a time",
        "already in the list",
        "is left out",
    ] {
        assert!(shown.contains(said), "{said}\n{shown}");
    }
    assert!(shown.contains("Only if the client's clinician has enabled sips"), "{shown}");
}

/// The limits of the catalogue hold; within them a dose beyond the published one is asked about, not refused.
#[test]
fn a_dose_beyond_the_published_one_is_asked_about_with_its_source() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("lift.toml");
    let which = number_of("head-lift-sustained");
    // 9 lifts are beyond the limit; 5 × 60 s is beyond the published 3 × 60 s: first not meant, then 4 × 60 s, which is meant.
    // 240 s of lifts in one practice need the clinician's word.
    let answers = [
        "Lift",
        "",
        &which,
        "yes",
        "o",
        "9",
        "5",
        "1",
        "60",
        "60",
        "no",
        "4",
        "1",
        "60",
        "60",
        "yes",
        "the speech therapist",
        "used to it",
        "",
    ];
    let (shown, written) = new_routine(&answers, Some(&file));
    assert!(shown.contains("240 s in one practice, more than 180, which needs the clinician's word"), "{shown}");
    assert!(matches!(written, Ok(Some(_))), "{written:?}\n{shown}");
    assert!(shown.contains("Type a whole number from 1 to 5. Why this limit: the published set is 3 lifts"), "{shown}");
    assert!(shown.contains("Published: 3 × 60 s (") && shown.contains("Is 5 × 60 s meant?"), "{shown}");
    assert!(shown.contains("Is 4 × 60 s meant?"), "{shown}");
    let read = checked(&std::fs::read_to_string(&file).expect("written"));
    assert_eq!(read.routine.steps[0].repetitions, 4);
    assert!(read.ramps.is_empty());
    let word = &read.routine.clinician.exercises["head-lift-sustained"];
    assert_eq!((word.who.as_str(), word.why.as_str()), ("the speech therapist", "used to it"));
    // Nobody said so: the dose is asked for again.
    let answers = ["Lift", "", &which, "yes", "o", "4", "1", "60", "60", "yes", "", "d", "no", ""];
    let (shown, written) = new_routine(&answers, Some(&folder.path().join("unsaid.toml")));
    assert!(matches!(written, Ok(Some(_))) && shown.contains("Let's try again."), "{written:?}\n{shown}");
    // Within the published numbers nothing is asked.
    let answers = ["Lift", "", &which, "yes", "o", "3", "1", "30", "60", "no", ""];
    let (shown, written) = new_routine(&answers, Some(&folder.path().join("usual.toml")));
    assert!(matches!(written, Ok(Some(_))), "{shown}");
    assert!(!shown.contains("meant?"), "{shown}");
    // Four times a day: published are 3.
    let answers = ["Lift", "", &which, "yes", "3", "8:00", "12:00", "16:00", "20:00", "", "no", "8:00", ""];
    let (shown, written) = new_routine(&answers, Some(&folder.path().join("often.toml")));
    assert!(matches!(written, Ok(Some(_))), "{written:?} {shown}");
    assert!(shown.contains("3 times a day (") && shown.contains("Are 4 meant?"), "{shown}");
    assert_eq!(checked(&std::fs::read_to_string(folder.path().join("often.toml")).expect("written")).plan.len(), 1);
}

#[test]
fn nothing_is_overwritten_and_nothing_half_is_written() {
    let folder = tempfile::tempdir().expect("a folder");
    let (file, other) = (folder.path().join("x.toml"), folder.path().join("y.toml"));
    std::fs::write(&file, "mine").expect("written");
    let which = number_of("shoulder-rolls");
    let answers = |more: &[&str]| {
        let all = ["Rolls", "", which.as_str(), "yes", "d", "no", ""];
        all.iter().chain(more).map(|answer| (*answer).to_owned()).collect::<Vec<_>>()
    };
    let run = |more: &[&str]| {
        let answers = answers(more);
        new_routine(&answers.iter().map(String::as_str).collect::<Vec<_>>(), Some(&file))
    };
    let (_, written) = run(&["no", &other.display().to_string()]);
    assert_eq!(written.expect("written"), Some(other.clone()));
    assert_eq!(std::fs::read_to_string(&file).expect("kept"), "mine");
    // The answers end at the question whether to write over it.
    let (_, ended) = run(&[]);
    assert!(matches!(ended, Err(AskError::Ended { .. })));
    assert_eq!(std::fs::read_to_string(&file).expect("kept"), "mine");
    let (_, none) = run(&["no", "-"]);
    assert_eq!(none.expect("decided"), None);
    let (_, written) = run(&["yes"]);
    assert_eq!(written.expect("written"), Some(file.clone()));
    checked(&std::fs::read_to_string(&file).expect("written"));
}

fn demo(name: &str) -> Prescription {
    checked(&std::fs::read_to_string(root().join("demo").join(name)).expect("a demo routine"))
}

fn handout_of(prescription: &Prescription) -> Handout {
    let words = words();
    let said = |key: &str, args: &[(&'static str, Arg)]| {
        words.text(&Line { key: key.to_owned(), args: args.to_vec() }).unwrap_or_else(|why| panic!("{why}"))
    };
    handout(prescription, &said)
}

fn pdf_of(prescription: &Prescription) -> lopdf::Document {
    let words = words();
    let said = |key: &str, args: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: args.to_vec() }).unwrap_or_default();
    let bytes = print::handout_pdf(&handout(prescription, &said)).expect("a PDF");
    lopdf::Document::load_mem(&bytes).expect("an independent reader takes it")
}

fn text_of(pdf: &lopdf::Document) -> String {
    let pages: Vec<u32> = pdf.get_pages().keys().copied().collect();
    squeezed(&pdf.extract_text(&pages).expect("text in the PDF is text"))
}

/// Letters and digits alone: lines of a page are broken anywhere.
fn squeezed(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

#[test]
fn the_handout_shows_every_exercise_with_its_dose_and_cautions() {
    let page = to_text(&handout_of(&demo("evening.toml")), 80);
    for said in [
        "Evening routine",
        "For household",
        "Long ah: 3 times, aim for 12 seconds, rest 10\u{a0}s between",
        "Nasal breathing: 5 times, in on 3, out on 8",
        "press 20 s, tighter 10 s, smile 3 s",
        "Rest: 20 seconds",
        "Not for, unless your clinician says otherwise: people with heart disease or an irregular heartbeat; people who are short",
        "say “done” after each",
        "“A cup of tea with milk, please.”",
        "“pa-ta-ka” for 5 seconds",
        "4 questions",
        "“ready” to begin",
        "“stop” at any time",
        "Sit upright",
        "Stop at once",
        "a wet voice",
        "trouble speaking: call your emergency number",
        "It makes no diagnosis",
    ] {
        assert!(squeezed(&page).contains(&squeezed(said)), "{said}\n{page}");
    }
    assert!(page.lines().all(|line| line.chars().count() <= 80));
    let text = "title = \"x\"\nplan = [{ days = [\"monday\", \"wednesday\"], at = \"18:30\" }, { at = \"08:00\" }]\n[[step]]\nexercise = \"head-lift-sustained\"\ncautions_acknowledged = true\n[step.ramp]\nstages = [{ hold_s = 10 }, { hold_s = 60 }]\n";
    let page = to_text(&handout_of(&checked(text)), 80);
    for said in [
        "Monday and Wednesday at 18:30",
        "Every day at 08:00",
        "3 times, held 10 seconds",
        "grows over the weeks to 3 times, held 60 seconds",
    ] {
        assert!(squeezed(&page.to_lowercase()).contains(&squeezed(&said.to_lowercase())), "{said}\n{page}");
    }
    let text = "title = \"x\"\n[[step]]\nexercise = \"neck-turns\"\ncautions_acknowledged = true\nposture = \"standing\"\nrepetitions = 3\n[step.clinician_word]\nwho = \"the speech therapist\"\nwhy = \"shown in the clinic\"\n";
    let page = to_text(&handout_of(&checked(text)), 80);
    for said in ["standing, holding a firm chair", "Neck turns: more than usual. The speech therapist agreed (shown in the clinic)."] {
        assert!(squeezed(&page).contains(&squeezed(said)), "{said}\n{page}");
    }
    assert!(squeezed(&to_text(&handout_of(&demo("swallow.toml")), 80)).contains(&squeezed("lying down")));
    // A caution without its few words would be left out of the line silently.
    let words = words();
    for key in catalogue().iter().flat_map(|entry| &entry.cautions) {
        assert!(words.has(&format!("care-{key}-shown")), "{key}");
    }
}

/// Read by another library than the one that wrote it.
#[test]
fn the_pdf_is_text_on_few_pages_and_holds_every_exercise() {
    let words = words();
    let name = |id: &str| look_up(&words)(&format!("ex-{id}-name")).expect("a name");
    for file in ["evening.toml", "swallow.toml", "voice-short.toml"] {
        let prescription = demo(file);
        let pdf = pdf_of(&prescription);
        // Who must not do an exercise is listed in full, so a routine with many exercises may need a second page.
        let pages = if file == "voice-short.toml" { 1..=1 } else { 1..=2 };
        assert!(pages.contains(&pdf.get_pages().len()), "{file}");
        let text = text_of(&pdf);
        for step in &prescription.routine.steps {
            assert!(text.contains(&squeezed(&name(&step.exercise.id))), "{file}: {}\n{text}", step.exercise.id);
        }
        assert!(text.contains(&squeezed(&prescription.routine.title)) && text.contains("Stopatonce"), "{file}: {text}");
        // Tagged, so that a screen reader finds its way: the title, a heading for each exercise and one for the box.
        let headings = pdf.objects.values().filter_map(|object| object.as_dict().ok()?.get(b"S").ok()?.as_name().ok());
        let count = |name: &[u8]| headings.clone().filter(|tag| *tag == name).count();
        assert_eq!((count(b"H1"), count(b"H2")), (1, prescription.routine.steps.len() + 1), "{file}");
        let page = pdf.get_pages().values().next().and_then(|&id| pdf.get_dictionary(id).ok()).expect("a page");
        let size: Vec<f32> =
            page.get(b"MediaBox").and_then(lopdf::Object::as_array).expect("a size").iter().filter_map(|n| n.as_float().ok()).collect();
        // ISO 216: A4 is 210 × 297 mm; a point is 1/72 inch of 25.4 mm.
        let a4 = [0.0, 0.0, 210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0];
        assert!(size.iter().zip(a4).all(|(got, want)| (got - want).abs() < 0.1), "{size:?}");
    }
}

#[test]
fn a_long_routine_flows_over_numbered_pages_and_loses_nothing() {
    let phrases =
        (0..40).map(|n| format!("\"This is the phrase with the number {n}, as it is said at home.\"")).collect::<Vec<_>>().join(", ");
    // Every exercise there is takes longer than what needs no word.
    let word = "clinician_word = { who = \"the clinician\", why = \"a test of the handout\" }";
    let mut text = format!("title = \"Long\"\n{word}\n[[step]]\nexercise = \"functional-phrases\"\nphrases = [{phrases}]\n");
    for entry in catalogue().iter().filter(|entry| !["functional-phrases", "word-questions"].contains(&entry.id.as_str())) {
        let packs = if entry.naming { "packs = [\"categories\"]\n" } else { "" };
        let setting = if entry.needs_setting { "setting = \"two turns\"\n" } else { "" };
        // One of each, so that all of it stays within an hour.
        let once = if entry.dose_fields().contains(&"repetitions") && entry.passage().is_none() { "repetitions = 1\n" } else { "" };
        text += &format!(
            "[[step]]\nexercise = \"{}\"\n{packs}{setting}{once}{}",
            entry.id,
            if entry.cautions.is_empty() { "" } else { "cautions_acknowledged = true\n" }
        );
    }
    let prescription = checked(&text);
    let pdf = pdf_of(&prescription);
    let pages = pdf.get_pages().len();
    assert!(pages >= 3, "{pages}");
    let set = text_of(&pdf);
    assert!(set.contains(&format!("Page1of{pages}")) && set.contains(&format!("Page{pages}of{pages}")), "{set}");
    for item in &handout_of(&prescription).items {
        let all = [&item.name, &item.how].into_iter().chain(&item.phrases).chain(&item.care).chain(&item.not_for);
        for part in all {
            assert!(set.contains(&squeezed(part)), "{part}\n{set}");
        }
    }
}

/// One live or replayed practice of a head lift of three repetitions, as many of them done as are named.
fn keep_lifts(folder: &Path, routine_text: &str, source: Source, started: &str, stage: u32, done: u32) {
    let mut store = Store::open(folder).expect("opens");
    let started_at = &started.parse().expect("a time");
    let new = NewSession { protocol: None, client: "grandpa", routine_title: "x", routine_text, source, software: "tidecount", started_at };
    let session = store.begin(&new).expect("begins");
    let mut keep = |at_s: f64, repetition: u32, fact: Fact| {
        let position = Some(Position { step: 1, set: 1, repetition });
        store.append(session, &Entry { at_s, fact, position }).expect("keeps");
    };
    let exercise = || "head-lift-sustained".to_owned();
    keep(1.0, 1, Fact::StepBegun { exercise: exercise(), ramp_stage: Some(stage) });
    for repetition in 1..=done {
        let fact = Fact::PostureHeld { exercise: exercise(), duration_s: 10.0, prescribed_s: 10.0, complete: true };
        keep(70.0 * f64::from(repetition), repetition, fact);
    }
}

/// By hand: whole on 2 and 3 November with `days = 2`, so the second stage is due from the 4th.
#[test]
fn a_practice_takes_the_stage_that_is_due_and_an_interrupted_one_keeps_its_own() {
    let folder = tempfile::tempdir().expect("a folder");
    let text = ramped("head-lift-sustained", "{ days = 2, stages = [{ hold_s = 10 }, { hold_s = 20 }] }");
    keep_lifts(folder.path(), &text, Source::Live, "2026-11-02T10:00:00Z[UTC]", 1, 3);
    keep_lifts(folder.path(), &text, Source::Live, "2026-11-03T10:00:00Z[UTC]", 1, 3);
    let stage_at = |source: Source, now: &str| {
        let (store, mut prescription) = (Store::open(folder.path()).expect("opens"), checked(&text));
        take_stages(&mut prescription, &store, "grandpa", source, &now.parse().expect("a time")).expect("reads");
        let Work::Timed { phases, .. } = &prescription.routine.steps[0].work else { panic!("timed") };
        (prescription.routine.steps[0].ramp_stage, phases[0].length_s)
    };
    assert_eq!(stage_at(Source::Live, "2026-11-03T20:00:00Z[UTC]"), (Some(1), 10.0));
    assert_eq!(stage_at(Source::Live, "2026-11-04T08:00:00Z[UTC]"), (Some(2), 20.0));
    assert_eq!(stage_at(Source::Replay, "2026-11-04T08:00:00Z[UTC]"), (Some(1), 10.0));
    assert_eq!(stage_at(Source::Rehearsal, "2026-11-04T08:00:00Z[UTC]"), (Some(1), 10.0));
    // Begun late on the 3rd, broken off after one lift, and gone on with after midnight.
    keep_lifts(folder.path(), &text, Source::Live, "2026-11-03T23:50:00Z[UTC]", 1, 1);
    let (store, mut prescription) = (Store::open(folder.path()).expect("opens"), checked(&text));
    let now = "2026-11-04T00:10:00Z[UTC]".parse().expect("a time");
    let within = jiff::SignedDuration::from_hours(24);
    let found = stages_and_unfinished(&mut prescription, &text, &store, "grandpa", Source::Live, &now, within).expect("reads");
    let position = found.expect("an interrupted practice").position;
    assert_eq!((position.repetition, prescription.routine.steps[0].ramp_stage), (2, Some(1)));
}
