//! A routine is written from answers.

use super::*;

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
