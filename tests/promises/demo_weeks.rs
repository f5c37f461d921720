//! Promise: a record of simulated weeks is made by the real program, says of itself that it is simulated, and can be looked at at once.

#[path = "../support/program.rs"]
mod program;

use jiff::ZonedDateTime;
use program::{Place, err, out, output, tidecount};
use record::Store;

#[test]
#[ignore = "leads whole practices; tests/run.sh runs it"]
fn a_week_of_practice_can_be_looked_at_without_a_week_of_use() {
    let place = Place::new();
    let folder = place.path("demo");
    let mut demo = tidecount(["demo", "--weeks", "1", "--out"]);
    let done = output(demo.arg(&folder));
    assert!(done.status.success(), "{}{}", out(&done), err(&done));

    let data = folder.join("weeks");
    let store = Store::open(&data).expect("opens");
    let today = ZonedDateTime::now().date();
    let practised = store.practised("simulated client", today).expect("reads");
    assert_eq!(practised.practices.len(), 3);
    for practice in &practised.practices {
        assert_eq!(practice.end_reason.as_deref(), Some("completed"), "{}: {}", practice.began, out(&done));
    }
    assert!(practised.ratings.iter().any(|rated| rated.value.is_some()), "he rates the practices");
    let baselines = progress::assessments(&store.assessed("simulated client", today).expect("reads"));
    assert_eq!(baselines.iter().map(|one| one.whole).collect::<Vec<_>>(), [true], "before the first practice");
    assert_eq!(store.goals("simulated client").expect("reads").len(), 2);
    let [moment] = &practised.moments[..] else { panic!("asked once a week: {:?}", practised.moments) };
    assert!(moment.heard_until.is_some(), "what was told can be heard: {moment:?}");
    let [class] = &store.classes(20).expect("reads")[..] else { panic!("a class on Thursday") };
    let there = |present| class.attendance.iter().filter(|(_, known)| *known == Some(present)).count();
    assert_eq!((class.title.as_str(), there(true), there(false)), ("Thursday class (simulated)", 4, 1), "{class:?}");
    assert!(class.led.len() == 3 && class.led.iter().all(|step| step.repetitions_done == step.repetitions_planned), "{class:?}");

    let report = std::fs::read_to_string(folder.join("weeks-report.html")).expect("the report");
    assert!(report.contains("simulated client") && report.contains("whole verse"), "his name and his goal");
    assert!(report.contains("Baseline and re-test") && report.contains("When the voice worked"), "beside practice");
    let mut chart = tidecount(["report", "--format", "chart", "--data"]);
    let chart = output(chart.arg(&data));
    assert!(chart.status.success() && out(&chart).contains("order my own coffee"), "{}{}", out(&chart), err(&chart));

    let mut again = tidecount(["demo", "--weeks", "1", "--out"]);
    let again = output(again.arg(&folder));
    assert!(!again.status.success() && err(&again).contains("already"), "nothing is mixed into a record: {}", err(&again));
}
