use super::*;
use routine::{Hearing, Timing, check_text, ramp_template, templates};

const EVENING: &str = r#"# The evening of an invented household.
title = "Evening routine"   # said aloud
client = "household"
feedback_every = 3

[no_answer]
asks = 2 # patient

# Loud first.
[[step]]
exercise = "long-ah"
repetitions = 3 # three are enough
target_s = 12

# Then the face.
[[step]]
exercise = "lip-press-smile"
rest_s = 10
phases = [
    { name = "press", length_s = 20 }, # hold on
    { name = "smile", length_s = 3 },
]

[[step]]
exercise = "functional-phrases"
phrases = [
    "Good evening.", # first
    "A cup of tea, please.",
]

[[step]]
exercise = "word-questions"
[[step.questions]]
clue = "It ticks."
answers = ["watch", "a watch"]
# The end.
"#;

fn draft() -> RoutineDraft {
    RoutineDraft::parse(EVENING).expect("TOML")
}

fn form(pairs: &[(&str, &str)]) -> Fields {
    Fields(pairs.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect())
}

fn words(_key: &str) -> Option<String> {
    None
}

#[test]
fn what_is_asked_at_the_end_is_checked_and_unchecked_and_keeps_its_order() {
    let text = EVENING.replace("feedback_every = 3", "ratings = [\"pain\", \"effort\"] # in this order\nfeedback_every = 3");
    let mut same = RoutineDraft::parse(&text).expect("TOML");
    same.take(&form(&[("title", "Evening routine"), ("ratings-effort", "on"), ("ratings-pain", "on")]));
    assert_eq!(same.text(), text);
    let mut more = RoutineDraft::parse(&text).expect("TOML");
    more.take(&form(&[("title", "Evening routine"), ("ratings-tiredness", "on"), ("weekly_questions", "on")]));
    let read = check_text("x", &more.text(), Hearing::default()).expect("a routine").routine.looking_back;
    assert_eq!(read, routine::LookingBack { ratings: vec![session::Rating::Tiredness], weekly: true });
    more.take(&form(&[("title", "Evening routine")]));
    assert!(!more.text().contains("ratings") && !more.text().contains("weekly_questions"), "{}", more.text());
    // A button of another part of the form sends nothing of this.
    let mut untouched = RoutineDraft::parse(&text).expect("TOML");
    untouched.take(&form(&[("no_answer-asks", "2")]));
    assert_eq!(untouched.text(), text);
}

#[test]
fn a_form_that_changes_nothing_leaves_every_byte() {
    let mut draft = draft();
    draft.take(&form(&[
        ("title", "Evening routine"),
        ("client", "household"),
        ("cue_words", ""),
        ("feedback_every", "3"),
        ("no_answer-asks", "2"),
        ("no_answer-give_up_after_s", ""),
        ("step-0-here", "1"),
        ("step-0-repetitions", "3"),
        ("step-0-target_s", "12.0"),
        ("step-0-rest_s", ""),
        ("step-1-here", "1"),
        ("step-1-phase-0-name", "press"),
        ("step-1-phase-0-length_s", "20"),
        ("step-1-phase-1-name", "smile"),
        ("step-1-phase-1-length_s", "3"),
        ("step-2-here", "1"),
        ("step-2-phrases", "Good evening.\r\nA cup of tea, please.\r\n"),
        ("step-3-here", "1"),
        ("step-3-packs-other", ""),
        ("step-3-question-0-clue", "It ticks."),
        ("step-3-question-0-answers", "watch\na watch"),
        ("step-3-question-0-near", ""),
    ]));
    assert_eq!(draft.text(), EVENING);
}

#[test]
fn what_is_changed_is_changed_and_comments_stay() {
    let mut draft = draft();
    draft.take(&form(&[
        ("title", "Night routine"),
        ("cue_words", "strong voice"),
        ("no_answer-asks", "4"),
        ("step-0-here", "1"),
        ("step-0-repetitions", "5"),
        ("step-0-target_s", ""),
        ("step-1-here", "1"),
        ("step-1-phase-0-name", "press"),
        ("step-1-phase-0-length_s", "15"),
        ("step-1-phase-1-name", "smile"),
        ("step-1-phase-1-length_s", "3"),
        ("step-2-here", "1"),
        ("step-2-phrases", "Good evening.\nSoup, please.\nGood night."),
        ("step-3-here", "1"),
        ("step-3-question-0-answers", "watch"),
        ("step-3-packs-other", ""),
        ("step-3-pack-opposites", "on"),
        ("step-3-repetitions", "3"),
    ]));
    let text = draft.text();
    for kept in [
        "# The evening of an invented household.",
        "# said aloud",
        "asks = 4 # patient",
        "# Loud first.",
        "repetitions = 5 # three are enough",
        "# hold on",
        "# first",
        "# The end.",
    ] {
        assert!(text.contains(kept), "{kept}\n{text}");
    }
    for changed in [
        "title = \"Night routine\"",
        "cue_words = \"strong voice\"",
        "length_s = 15",
        "\"Soup, please.\"",
        "\"Good night.\"",
        "packs = [\"opposites\"]",
        "answers = [\"watch\"]",
    ] {
        assert!(text.contains(changed), "{changed}\n{text}");
    }
    assert!(!text.contains("target_s") && !text.contains("A cup of tea"), "{text}");
    check_text("x", &text, Hearing::default()).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
}

#[test]
fn what_is_typed_wrong_is_kept_as_it_is_typed_for_the_check_to_name() {
    let mut draft = draft();
    draft.take(&form(&[("step-0-here", "1"), ("step-0-repetitions", "three"), ("step-0-target_s", "1,5")]));
    let faults = check_text("x", &draft.text(), Hearing::default()).expect_err("faults").to_string();
    assert!(faults.contains("`repetitions` is a text") && faults.contains("`target_s` is a text"), "{faults}");
}

#[test]
fn steps_are_moved_added_and_taken_out_with_their_comments() {
    let mut draft = draft();
    assert!(draft.act("down.0", &Fields::default(), &words));
    let order = |draft: &RoutineDraft| {
        draft.steps().iter().map(|step| step.get("exercise").and_then(Item::as_str).unwrap_or_default().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(order(&draft), ["lip-press-smile", "long-ah", "functional-phrases", "word-questions"]);
    let text = draft.text();
    let at = |what: &str| text.find(what).unwrap_or_else(|| panic!("{what}\n{text}"));
    assert!(
        at("# Then the face.") < at("lip-press-smile")
            && at("lip-press-smile") < at("# Loud first.")
            && at("# Loud first.") < at("long-ah"),
        "{text}"
    );
    assert_eq!(order(&RoutineDraft::parse(&text).expect("TOML")), order(&draft), "as it is written, so it is read");
    assert!(draft.act("up.3", &Fields::default(), &words));
    assert!(draft.act("remove.3", &Fields::default(), &words));
    assert!(draft.text().contains("[[step.questions]]"), "{}", draft.text());
    assert!(draft.act("add-step", &form(&[("add", "glide-up")]), &words));
    assert_eq!(order(&draft).last().map(String::as_str), Some("glide-up"));
    let reread = RoutineDraft::parse(&draft.text()).expect("TOML");
    assert_eq!(order(&reread), order(&draft));
    // At the ends, out of range, nonsense: nothing happens.
    let before = draft.text();
    for action in ["up.0", "down.99", "remove.99", "move.1", "add-phase.99", "", "dose.0.999", "remove-question.0.7"] {
        draft.act(action, &Fields::default(), &words);
    }
    assert_eq!(draft.text(), before);
}

#[test]
fn a_new_routine_grows_from_nothing() {
    let mut draft = RoutineDraft::parse("title = \"New\"\n").expect("TOML");
    draft.act("add-step", &form(&[("add", "effortful-swallow")]), &words);
    draft.act("grow.0", &Fields::default(), &words);
    draft.act("add-stage.0", &Fields::default(), &words);
    draft.take(&form(&[
        ("step-0-here", "1"),
        ("step-0-cautions_acknowledged", "on"),
        ("step-0-ramp-days", "4"),
        ("step-0-stage-2-repetitions", "9"),
    ]));
    draft.act("add-plan", &Fields::default(), &words);
    draft.take(&form(&[("plan-0-at", "8:05"), ("plan-0-monday", "on"), ("plan-0-friday", "on")]));
    let text = draft.text();
    let checked = check_text("x", &text, Hearing::default()).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
    assert_eq!(checked.ramps.first().map(|ramp| (ramp.days, ramp.stages.len())), Some((4, 3)));
    assert_eq!(checked.plan.first().map(|planned| (planned.at_min, planned.days.len())), Some((485, 2)));
    // A tick that is taken away is taken away, and what the form did not hold stays.
    draft.take(&form(&[("step-0-here", "1"), ("step-0-stage-0-repetitions", "2")]));
    assert!(!draft.text().contains("cautions_acknowledged") && draft.text().contains("days = 4"));
    draft.act("no-grow.0", &Fields::default(), &words);
    draft.act("remove-plan.0", &Fields::default(), &words);
    assert!(!draft.text().contains("ramp") && !draft.text().contains("plan"), "{}", draft.text());
}

#[test]
fn published_doses_are_taken_over_and_pass_the_check() {
    // Phrases and questions are the writer's own.
    for entry in routine::catalogue().iter().filter(|entry| !matches!(entry.timing, Timing::ReadAloud | Timing::Question)) {
        for (number, template) in
            templates(entry).iter().enumerate().filter(|(_, template)| template.beyond.is_none() && !template.numbers.is_empty())
        {
            let mut draft = RoutineDraft::parse("title = \"New\"\n").expect("TOML");
            draft.act("add-step", &form(&[("add", &entry.id)]), &words);
            draft.act(&format!("dose.0.{number}"), &Fields::default(), &words);
            let mut typed = vec![("step-0-here", "1"), ("step-0-cautions_acknowledged", "on")];
            if entry.needs_setting {
                typed.push(("step-0-setting", "two turns"));
            }
            draft.take(&form(&typed));
            let text = draft.text();
            let checked = check_text("x", &text, Hearing::default()).unwrap_or_else(|faults| panic!("{}: {faults}\n{text}", entry.id));
            let repetitions = template.numbers.iter().find(|(field, _)| *field == "repetitions").map(|(_, value)| *value);
            assert!(repetitions.is_none_or(|n| f64::from(checked.routine.steps[0].repetitions) == n), "{text}");
        }
        if ramp_template(&entry.id).is_some() {
            let mut draft = RoutineDraft::parse("title = \"New\"\n").expect("TOML");
            draft.act("add-step", &form(&[("add", &entry.id)]), &words);
            draft.act("ramp.0", &Fields::default(), &words);
            draft.take(&form(&[("step-0-here", "1"), ("step-0-cautions_acknowledged", "on")]));
            check_text("x", &draft.text(), Hearing::default()).unwrap_or_else(|faults| panic!("{faults}\n{}", draft.text()));
        }
    }
}

#[test]
fn steps_in_a_list_of_inline_tables_can_be_moved_as_well() {
    let mut draft = RoutineDraft::parse(
        "title = \"x\"\nstep = [{ exercise = \"long-ah\" }, { exercise = \"rest\", length_s = 5 }]\n[no_answer]\nasks = 1\n",
    )
    .expect("TOML");
    draft.act("up.1", &Fields::default(), &words);
    let checked = check_text("x", &draft.text(), Hearing::default()).unwrap_or_else(|faults| panic!("{faults}\n{}", draft.text()));
    assert_eq!(checked.routine.steps[0].exercise.id, "rest");
    assert_eq!(checked.routine.no_answer.asks, 1);
}
