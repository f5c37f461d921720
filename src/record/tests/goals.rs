use super::*;
use jiff::civil::date;

fn store() -> (tempfile::TempDir, Store) {
    let folder = tempfile::tempdir().expect("a folder");
    let store = Store::open(folder.path()).expect("opens");
    (folder, store)
}

fn new(words: &str, aim: Option<Aim>) -> NewGoal<'_> {
    NewGoal { words, aim, set_on: date(2026, 11, 1), due: date(2027, 2, 1), set_by: "M., clinician" }
}

fn hold() -> Aim {
    Aim { exercise: "long-ah".into(), measure: Measure::HoldS, direction: Direction::AtLeast, target: 14.5 }
}

fn mark(kind: MarkKind) -> Mark {
    Mark { kind, on: date(2026, 11, 20), by: "ada".into() }
}

#[test]
fn a_goal_comes_back_as_it_was_set_and_belongs_to_one_client() {
    let (folder, mut store) = store();
    let id = store.add_goal("ada", &new("  Read a page to my grandson. ", Some(hold()))).expect("kept");
    let activity = store.add_goal("ada", &new("Order coffee without being asked twice.", None)).expect("kept");
    store.add_goal("ben", &new("Sing.", None)).expect("kept");
    store.mark_goal("ada", activity, &mark(MarkKind::Met)).expect("marked");
    drop(store);
    let store = Store::open(folder.path()).expect("opens");
    let goals = store.goals("ada").expect("reads");
    let [first, second] = &goals[..] else { panic!("two: {goals:?}") };
    assert_eq!((first.id, first.words.as_str(), first.aim.clone()), (id, "Read a page to my grandson.", Some(hold())));
    assert_eq!((first.set_on, first.due, first.set_by.as_str()), (date(2026, 11, 1), date(2027, 2, 1), "M., clinician"));
    assert_eq!((second.id, &second.aim, &second.marks[..]), (activity, &None, &[mark(MarkKind::Met)][..]));
    assert!(store.goals("nobody").expect("reads").is_empty());
    let practised = store.practised("ada", date(2026, 11, 30)).expect("reads");
    assert_eq!(practised.goals, goals, "progress sees them");
}

#[test]
fn what_cannot_be_a_goal_is_refused_with_its_remedy() {
    let (_folder, mut store) = store();
    let mut refused = |goal: &NewGoal<'_>| store.add_goal("ada", goal).expect_err("refused").to_string();
    let long = "a".repeat(MOST_GOAL_CHARS + 1);
    assert!(refused(&new(&long, None)).contains("1 to 200 characters on one line; this has 201"));
    assert!(refused(&new(" ", None)).contains("this has 0") && refused(&new("two\nlines", None)).contains("on one line"));
    assert!(refused(&NewGoal { set_by: "", ..new("Sing.", None) }).contains("who set it"));
    assert!(refused(&NewGoal { due: date(2026, 10, 31), ..new("Sing.", None) }).contains("give a later day"));
    assert!(refused(&new("Sing.", Some(Aim { target: f64::NAN, ..hold() }))).contains("no number"));
    assert!(store.goals("ada").expect("reads").is_empty());
}

#[test]
fn a_goal_with_a_measure_is_never_marked_by_hand_and_a_removed_one_is_kept() {
    let (_folder, mut store) = store();
    let id = store.add_goal("ada", &new("Read a page.", Some(hold()))).expect("kept");
    let said = store.mark_goal("ada", id, &mark(MarkKind::Met)).expect_err("refused").to_string();
    assert!(said.contains("the figures alone say"), "{said}");
    assert!(store.mark_goal("ben", id, &mark(MarkKind::Removed)).is_err(), "somebody else's");
    store.mark_goal("ada", id, &mark(MarkKind::Removed)).expect("removed");
    assert!(store.mark_goal("ada", id, &mark(MarkKind::Removed)).is_err(), "only once");
    let goals = store.goals("ada").expect("reads");
    assert!(goals.len() == 1 && goals[0].stands_on(date(2026, 11, 19)) && !goals[0].stands_on(date(2026, 11, 20)));
    for sql in ["UPDATE goal SET words = 'x'", "DELETE FROM goal", "UPDATE goal_mark SET kind = 'met'", "DELETE FROM goal_mark"] {
        assert!(store.connection.execute_batch(sql).is_err(), "{sql}");
    }
}

/// Between a clinician's computer and a home: goals arrive once, marks come back, and what a new package lacks is removed.
#[test]
fn goals_travel_with_packages_and_marks_come_back() {
    let ((_clinic, mut clinic), (_home, mut home)) = (store(), store());
    let first = clinic.add_goal("ada", &new("Order coffee.", None)).expect("kept");
    clinic.add_goal("ada", &new("Read a page.", Some(hold()))).expect("kept");
    home.add_goal("ada", &new("Sing with the choir.", None)).expect("her own");
    let package = |id: &str, taken_at: &str| crate::TakenPackage {
        id: id.into(),
        client: "ada".into(),
        made_at: taken_at.parse().expect("a time"),
        taken_at: taken_at.parse().expect("a time"),
        clinician_key: "00".into(),
    };
    let take = |home: &mut Store, package: &crate::TakenPackage, goals: &[Goal]| {
        home.take_package(package, &[], goals, || Ok::<(), ()>(())).expect("the database").expect("placed");
    };
    for _ in 0..2 {
        take(&mut home, &package("1", "2026-11-10T08:00:00Z"), &clinic.goals("ada").expect("reads"));
    }
    let at_home = home.goals("ada").expect("reads");
    assert_eq!(
        at_home.iter().map(|goal| goal.words.as_str()).collect::<Vec<_>>(),
        ["Sing with the choir.", "Order coffee.", "Read a page."]
    );
    assert_eq!(at_home[2].aim, Some(hold()));
    home.mark_goal("ada", at_home[1].id, &mark(MarkKind::Met)).expect("marked");
    for _ in 0..2 {
        clinic.receive_goals("ada", &home.goals("ada").expect("reads")).expect("received");
    }
    let back = clinic.goals("ada").expect("reads");
    assert_eq!((back.len(), &back[0].marks[..]), (3, &[mark(MarkKind::Met)][..]), "each once, hers too");
    clinic.mark_goal("ada", first, &mark(MarkKind::Removed)).expect("removed");
    let standing: Vec<Goal> = clinic.goals("ada").expect("reads").into_iter().filter(|goal| goal.id == first + 1).collect();
    take(&mut home, &package("2", "2026-11-21T08:00:00Z"), &standing);
    let stand: Vec<String> =
        home.goals("ada").expect("reads").into_iter().filter(|goal| goal.stands_on(date(2026, 11, 21))).map(|goal| goal.words).collect();
    assert_eq!(stand, ["Sing with the choir.", "Read a page."], "her own stays");
}
