use super::*;
use attend::{HouseRoutine, Person, Pronoun};
use std::collections::{BTreeMap, BTreeSet};

fn household() -> Household {
    let routine = |called: &str| HouseRoutine { file: String::new(), title: called.into(), called: vec![called.into()], plan: Vec::new() };
    let person = |name: &str, routines: Vec<HouseRoutine>| Person {
        name: name.into(),
        pronoun: Pronoun::They,
        summary_after: false,
        by_page: false,
        routines,
    };
    Household {
        persons: vec![
            person("grandpa", vec![routine("evening routine"), routine("my voice practice")]),
            person("Grandma", vec![routine("morning exercises")]),
        ],
        ..Household::default()
    }
}

/// The words of the recognition model are the outer measure here, as for the commands.
#[test]
fn everything_that_can_be_said_is_known_to_the_model_and_nothing_begins_anything_else() {
    let lexicon = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../models/en/graph/words.txt")).unwrap();
    let lexicon: BTreeSet<&str> = lexicon.lines().filter_map(|line| line.split_whitespace().next()).collect();
    let (words, household) = (Words::english().unwrap(), household());
    let mut meanings: BTreeMap<String, Said> = BTreeMap::new();
    for said in household.everything() {
        let wordings = wordings(&words, &household, &said);
        assert!((1..=5).contains(&wordings.len()), "{said:?}: {wordings:?}");
        for wording in wordings {
            assert!(wording.split(' ').all(|word| lexicon.contains(word)), "not in the lexicon: {wording}");
            assert_eq!(meanings.insert(wording.clone(), said.clone()), None, "{wording} stands twice");
        }
    }
    assert!(meanings.len() > 25);
    for (long, meaning) in &meanings {
        for (short, other) in &meanings {
            let begins = long.strip_prefix(short.as_str()).is_some_and(|rest| rest.starts_with(' '));
            // "Start for grandma" waits for an "and".
            let waits = matches!(other, Said::StartFor(_)) && !meaning.is_offered();
            assert!(meaning == other || waits || !begins, "{long:?} ({meaning:?}) begins with {short:?} ({other:?})");
        }
    }
}

#[test]
fn names_and_call_names_are_put_in() {
    let (words, household) = (Words::english().unwrap(), household());
    let first = |said| wordings(&words, &household, &said).into_iter().next().unwrap();
    assert_eq!(first(Said::StartMine), "start my practice");
    assert_eq!(first(Said::StartFor(1)), "start for grandma");
    assert_eq!(first(Said::StartCalled("evening routine".into())), "start the evening routine");
    assert_eq!(first(Said::StartCalled("my voice practice".into())), "start my voice practice");
}

#[test]
fn several_are_named_in_either_order_and_an_unknown_name_behind_any_beginning() {
    let (words, household) = (Words::english().unwrap(), household());
    let all = |said| wordings(&words, &household, &said);
    let several = all(Said::StartForSeveral(vec![0, 1]));
    assert!(several.contains(&"start for grandma and grandpa".to_owned()) && several.contains(&"start for both".to_owned()), "{several:?}");
    assert_eq!(all(Said::StartForUnknown), ["start for [unk]", "start for grandpa and [unk]", "start for grandma and [unk]"]);
    let one = Household { persons: household.persons.iter().take(1).cloned().collect(), ..Household::default() };
    assert_eq!(wordings(&words, &one, &Said::StartForUnknown), ["start for [unk]"]);
}

#[test]
fn a_tag_leads_back_to_what_was_said() {
    let (words, household) = (Words::english().unwrap(), household());
    let all = household.everything();
    for choice in grammar(&words, &household, &all).choices {
        let said = meaning(&all, &choice.tag).unwrap();
        assert_eq!(choice.wordings, wordings(&words, &household, said));
    }
    assert_eq!(meaning(&all, "999"), None);
    assert_eq!(meaning(&all, "stop"), None);
}

#[test]
fn every_button_names_one_thing_whatever_else_may_be_said() {
    let all = household().everything();
    let names: BTreeSet<String> = all.iter().map(offer_name).collect();
    assert_eq!(names.len(), all.len(), "{names:?}");
    assert_eq!(offer_name(&Said::StartFor(1)), "start-for 1");
    assert_ne!(offer_name(&Said::StartCalled("evening routine".into())), offer_name(&Said::Called("evening routine".into())));
}
