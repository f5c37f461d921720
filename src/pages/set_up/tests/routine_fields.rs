use super::*;
use crate::set_up::fault_places::{FIELDS, fields_mut};
use crate::set_up::fields::Fields;
use crate::web::pages::routine_form;
use routine::{Hearing, built_in_packs, catalogue, check_text};
use session::Line;
use speak::Words;

fn with_texts<T>(work: impl FnOnce(Texts<'_>) -> T) -> T {
    let words = Words::english().expect("words");
    work(Texts(&|line: &Line| words.text(line).unwrap_or_else(|why| panic!("{why}"))))
}

fn form(text: &str) -> RoutineForm {
    let draft = RoutineDraft::parse(text).expect("TOML");
    let faults = check_text("x", &draft.text(), Hearing::default()).err();
    with_texts(|texts| form_of(&draft, faults.as_ref(), texts))
}

/// What a browser would send back of a form that was not touched.
fn as_sent(form: &mut RoutineForm) -> Fields {
    let mut pairs: Vec<(String, String)> = (0..form.steps.len()).map(|index| (format!("step-{index}-here"), "1".to_owned())).collect();
    pairs.extend(
        fields_mut(form)
            .filter(|field| field.kind != Kind::Check || field.value == "on")
            .map(|field| (field.id.clone(), field.value.clone())),
    );
    Fields(pairs)
}

#[test]
fn every_exercise_can_be_shown_and_sent_back_without_a_change() {
    for entry in catalogue() {
        let mut draft = RoutineDraft::parse("title = \"x\"\n").expect("TOML");
        draft.act("add-step", &Fields(vec![("add".into(), entry.id.clone())]), &|_| None);
        for action in ["add-phase.0", "add-question.0", "grow.0"] {
            draft.act(action, &Fields::default(), &|_| None);
            let text = draft.text();
            let mut shown = form(&text);
            let markup = with_texts(|texts| routine_form(texts, &shown)).into_string();
            assert!(!markup.contains("page-"), "{}: a key shows: {}", entry.id, &markup[markup.find("page-").unwrap_or(0)..][..60]);
            let mut again = RoutineDraft::parse(&text).expect("TOML");
            again.take(&as_sent(&mut shown));
            assert_eq!(again.text(), text, "{}", entry.id);
        }
    }
}

#[test]
fn faults_stand_beside_their_fields_and_the_summary_links_to_them() {
    let form = form(
        "title = \"\"\n[[step]]\nexercise = \"long-ah\"\nrepetitions = 99\ntarget_s = \"ten\"\n[[step]]\nexercise = \"effortful-swallow\"\n[[step]]\nexercise = \"functional-phrases\"\n",
    );
    let at: Vec<&str> = form.faults.iter().filter_map(|(at, _)| at.as_deref()).collect();
    for field in ["title", "step-0-repetitions", "step-0-target_s", "step-1-cautions_acknowledged", "step-2-phrases"] {
        assert!(at.contains(&field), "{field}: {:?}", form.faults);
    }
    let markup = with_texts(|texts| routine_form(texts, &form)).into_string();
    for field in ["step-0-repetitions", "step-1-cautions_acknowledged"] {
        assert!(markup.contains(&format!("href=\"#{field}\"")) && markup.contains(&format!("id=\"{field}-fault\"")), "{field}");
    }
    // In the words of the form, not those of the file.
    let told = &form.faults.iter().find(|(at, _)| at.as_deref() == Some("step-0-repetitions")).expect("found").1;
    assert!(told.what.contains("“Repetitions”") && told.what.contains("outside 1 to"), "{told:?}");
    assert!(told.why.contains("Why this limit") && !told.what.contains("Why"), "short, and its reason below: {told:?}");
    assert!(!told.what.contains('`') && !told.why.contains('`'), "{told:?}");
}

#[test]
fn every_fault_of_the_catalogue_of_faults_has_a_place_or_stands_in_the_summary() {
    let bad = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/routines/bad.toml")).expect("reads");
    let Ok(draft) = RoutineDraft::parse(&bad) else { return };
    let faults = check_text("bad", &draft.text(), Hearing::default()).expect_err("faults");
    let form = with_texts(|texts| form_of(&draft, Some(&faults), texts));
    assert_eq!(form.faults.len(), faults.list.len());
}

#[test]
fn every_field_of_a_routine_has_a_name_on_the_form() {
    let words = Words::english().expect("words");
    for field in FIELDS {
        assert!(words.has(&format!("page-field-{field}")), "{field}");
    }
    for (name, _) in built_in_packs() {
        assert!(words.has(&format!("page-pack-{name}")), "{name}");
    }
    for entry in catalogue() {
        for field in entry.dose_fields() {
            assert!(FIELDS.contains(&field), "{field}");
        }
    }
}

/// What a form sends back with some fields typed anew.
fn sent(shown: &mut RoutineForm, typed: &[(&str, &str)]) -> Fields {
    let Fields(mut pairs) = as_sent(shown);
    for (name, value) in typed {
        match pairs.iter_mut().find(|(known, _)| known == name) {
            Some((_, old)) => (*value).clone_into(old),
            None => panic!("{name} is no field of the form"),
        }
    }
    Fields(pairs)
}

#[test]
fn posture_and_the_clinicians_word_go_through_the_form_and_back() {
    let text = "title = \"x\"\n[[step]]\nexercise = \"long-ah\"\nrepetitions = 3\n[[step]]\nexercise = \"neck-turns\"\n";
    let mut shown = form(text);
    let mut draft = RoutineDraft::parse(text).expect("TOML");
    draft.take(&as_sent(&mut shown));
    assert_eq!(draft.text(), text, "nothing typed, nothing changed");
    let typed = [
        ("step-1-posture", "standing"),
        ("step-0-clinician_word-who", "the speech therapist"),
        ("step-0-clinician_word-why", "as in the clinic"),
        ("clinician_word-who", "the speech therapist"),
        ("clinician_word-why", "twice a day for a month"),
    ];
    draft.take(&sent(&mut shown, &typed));
    let written = draft.text();
    assert!(written.contains("posture = \"standing\""), "{written}");
    assert!(written.contains("clinician_word = { who = \"the speech therapist\", why = \"as in the clinic\" }"), "{written}");
    let mut again = form(&written);
    for (field, value) in typed {
        assert!(fields_mut(&mut again).any(|shown| shown.id == field && shown.value == value), "{field}");
    }
    let mut same = RoutineDraft::parse(&written).expect("TOML");
    same.take(&as_sent(&mut again));
    assert_eq!(same.text(), written);
    // Taken out again, nothing of it is left.
    let empty = typed.map(|(field, _)| (field, ""));
    draft.take(&sent(&mut again, &empty));
    assert_eq!(draft.text(), text);
}

#[test]
fn faults_of_posture_and_word_stand_at_their_fields_and_a_dose_says_where_the_word_goes() {
    let text = "title = \"x\"\nclinician_word = { who = \"\" }\n[[step]]\nexercise = \"neck-turns\"\ncautions_acknowledged = true\nposture = \"hanging\"\n\
                [[step]]\nexercise = \"long-ah\"\nclinician_word = { who = \"x\\u0007\", why = \"y\" }\n";
    let form = form(text);
    let at: Vec<&str> = form.faults.iter().filter_map(|(at, _)| at.as_deref()).collect();
    for field in ["clinician_word-who", "step-0-posture", "step-1-clinician_word-who"] {
        assert!(at.contains(&field), "{field}: {:?}", form.faults);
    }
    let told = in_words_of(
        "Give fewer counts, or add what the client's own clinician said in the step: `clinician_word = { who = \"…\", why = \"…\" }`. Why: it tires.",
    );
    assert!(told.starts_with("Give fewer counts. Or fill in below") && told.ends_with("Why: it tires.") && !told.contains('{'), "{told}");
}

fn in_words_of(remedy: &str) -> String {
    with_texts(|texts| crate::set_up::fault_places::in_words(remedy, texts))
}
