use super::*;
use record::ClassId;

fn class() -> LedClass {
    let attendance = [("Plum", Some(true)), ("7", Some(false)), ("=Hazel", None)].map(|(name, present)| (name.to_owned(), present));
    let step = |step, exercise: &str, sets, done| LedStep {
        step,
        exercise: exercise.into(),
        sets,
        repetitions_done: done,
        repetitions_planned: 10,
        from_s: 30.0,
        until_s: 120.0,
    };
    LedClass {
        id: ClassId(3),
        title: "Thursday class".into(),
        routine: "Gentle stretches".into(),
        source: Source::Live,
        started_at: "2026-11-26T10:30:00+01:00[Europe/Berlin]".parse().expect("a time"),
        attendance: attendance.into(),
        led: vec![step(1, "shoulder-rolls", 1, 10), step(2, "neck-turns", 2, 6)],
    }
}

#[test]
fn a_class_is_told_with_who_was_there_and_what_was_led() {
    let text = written(&[class()], false, false, Path::new("data")).expect("writes");
    assert_eq!(
        text,
        "    3  Thu 2026-11-26 10:30  Thursday class, Gentle stretches\n       here: Plum (1)\n       not here: 7 (1)\n       \
         not asked: =Hazel (1)\n       shoulder-rolls: 10 of 10, 1.5 min\n       neck-turns: 6 of 10 in 2 sets, 1.5 min\n"
    );
    assert!(written(&[], false, false, Path::new("data")).expect("writes").contains("No class was led"));
}

#[test]
fn the_table_has_a_row_for_each_and_no_formula() {
    let text = written(&[class()], false, true, Path::new("data")).expect("writes");
    let rows: Vec<&str> = text.lines().collect();
    assert_eq!(rows[0], "class,started_at,title,routine,source,participant,present");
    assert_eq!(rows[1], "3,2026-11-26T10:30:00.000+01:00,Thursday class,Gentle stretches,live,Plum,true");
    assert_eq!((rows[3].split(',').nth(5), rows[3].split(',').nth(6)), (Some("'=Hazel"), Some("")));
    let json: Value = serde_json::from_str(&written(&[class()], true, false, Path::new("data")).expect("writes")).expect("JSON");
    assert_eq!((&json["attendance"][2]["present"], &json["led"][1]["repetitions_done"]), (&Value::Null, &json!(6)));
}
