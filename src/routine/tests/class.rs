use super::*;

fn faults_of(text: &str) -> Vec<(usize, FaultKind, String)> {
    let stop = [("stop".to_owned(), vec!["stop".to_owned()])];
    let faults = check_class("class.toml", text.as_bytes(), Hearing { commands: &stop, ..Hearing::default() }).expect_err("has faults");
    faults.list.iter().map(|fault| (fault.line, fault.kind, format!("{}. {}", fault.what, fault.remedy))).collect()
}

#[test]
fn a_class_holds_who_belongs_to_it_and_what_each_does_otherwise() {
    let text = r#"
title = "Thursday class"

[[participant]]
name = "Plum"
leaves_out = ["head-lift-sustained", "head-lift-repeated"]
reason = "neck"

[[participant]]
number = 7
seated = ["neck-turns"]
"#;
    let list = check_class("class.toml", text.as_bytes(), Hearing::default()).unwrap_or_else(|faults| panic!("{faults}"));
    let [plum, seven] = &list.participants[..] else { panic!("two: {list:?}") };
    assert_eq!((list.title.as_str(), plum.called.to_string(), seven.called.clone()), ("Thursday class", "Plum".into(), Called::Number(7)));
    assert!(plum.leaves_out.contains("head-lift-sustained") && plum.leaves_out.len() == 2 && plum.seated.is_empty());
    assert!(seven.seated.contains("neck-turns") && plum.reason.as_deref() == Some("neck") && seven.reason.is_none());
}

#[test]
fn every_fault_names_its_line_and_what_to_do() {
    let text = r#"title = "Thursday class"
[[participant]]
name = "Plum"
leaves_out = ["head-lift-sustaind", "neck-turns"]
seated = ["neck-turns"]
[[participant]]
name = "plum"
[[participant]]
leavs_out = ["neck-turns"]
[[participant]]
number = 120
[[participant]]
name = "Stop"
number = 3
[[participant]]
name = "Hazel"
seated = ["head-lift-sustained"]
"#;
    let found = faults_of(text);
    let at = |line: usize, kind: FaultKind, words: &str| {
        assert!(found.iter().any(|(l, k, said)| (*l, *k) == (line, kind) && said.contains(words)), "{line} {kind:?} {words}: {found:#?}");
    };
    at(4, FaultKind::UnknownExercise, "Did you mean `head-lift-sustained`?");
    at(5, FaultKind::Twice, "neck-turns stands under");
    at(7, FaultKind::Twice, "two participants are called plum");
    at(8, FaultKind::Missing, "neither `name` nor `number`");
    at(9, FaultKind::UnknownKey, "leavs_out");
    at(11, FaultKind::OutOfRange, "not 1 to 99");
    at(14, FaultKind::Twice, "a name and a number");
    at(17, FaultKind::NotForThisExercise, "cannot be done on a chair");
}

#[test]
fn a_name_that_is_said_holds_no_command() {
    let found = faults_of("title = \"x\"\n[[participant]]\nname = \"Stop\"\n");
    assert_eq!(found.iter().map(|fault| (fault.0, fault.1)).collect::<Vec<_>>(), [(3, FaultKind::CommandInText)]);
}

#[test]
fn a_class_without_anybody_or_without_a_title_is_none() {
    assert!(faults_of("title = \"Empty\"\n").iter().any(|fault| fault.1 == FaultKind::Missing));
    assert!(faults_of("[[participant]]\nname = \"Plum\"\n").iter().any(|fault| fault.2.contains("title")));
    let many = (1..=41).map(|n| format!("[[participant]]\nnumber = {n}\n")).collect::<String>();
    assert!(faults_of(&format!("title = \"Full\"\n{many}")).iter().any(|fault| fault.1 == FaultKind::OutOfRange));
}
