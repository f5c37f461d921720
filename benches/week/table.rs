//! What happened to each, as markdown.

use super::compare::{Cause, Evening, Finding};
use super::lead::Week;
use super::{Habit, PLAIN};
use figures::{figure_of, share};
use std::collections::BTreeMap;
use std::fmt::Write;

const HEAD: &str = "practices finished | steps done | words said | heard | missed (over the tool's voice) | holds made | measured | holds and phrases measured wrongly | false actions | reminders | minutes | lost";
const RULE: &str = "--- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | ---";

/// One table of all habits, then one for each with its evenings and what is worth a look.
pub fn tables(habits: &[Habit], week: &Week) -> String {
    let plain = habits.iter().find(|habit| habit.name == PLAIN);
    let mut text = format!("| habit | {HEAD} | ended |\n| --- | {RULE} | --- |\n");
    for habit in habits {
        let all: Vec<(usize, &Evening)> = led(habit).collect();
        let row = row(&all, plain, habit.evenings.len());
        let _ = writeln!(text, "| {} | {row} | {} |", habit.name.replace('-', " "), ends(habit));
    }
    for habit in habits {
        let _ = write!(text, "\n## {}\n\n| evening | {HEAD} | ended |\n| --- | {RULE} | --- |\n", habit.name.replace('-', " "));
        for (n, (evening, day)) in habit.evenings.iter().zip(&week.evenings).enumerate() {
            match evening {
                Ok(evening) => {
                    let _ = writeln!(text, "| {} | {} | {} |", day.day, row(&[(n, evening)], plain, 1), evening.ended);
                }
                Err(why) => {
                    let _ = writeln!(text, "| {} | could not be led: {why} |", day.day);
                }
            }
        }
        text.push('\n');
        for (n, evening) in led(habit) {
            let day = week.evenings.get(n).map(|evening| evening.day.as_str()).unwrap_or_default();
            list(&mut text, day, "missed", evening.missed.iter());
            list(&mut text, day, "hold not measured", evening.holds_missed.iter());
            list(&mut text, day, "measured wrongly", evening.wrong.iter());
            for (cause, finding) in &evening.false_actions {
                let _ = writeln!(text, "- {day} {:.1} s, false ({}): {}", finding.at_s, cause.name(), finding.what);
            }
        }
    }
    text
}

/// What all practices of all clients came to.
pub fn figures(habits: &[Habit]) {
    let all: usize = habits.iter().map(|habit| habit.evenings.len()).sum();
    let evenings: Vec<&Evening> = habits.iter().flat_map(led).map(|(_, evening)| evening).collect();
    let sum = |of: &dyn Fn(&Evening) -> usize| evenings.iter().map(|evening| of(evening)).sum::<usize>();
    let count = |number: u64| usize::try_from(number).unwrap_or_default();
    let words = sum(&|e| e.words);
    share("week.finished", sum(&|e| usize::from(e.finished())), all);
    share("week.steps", sum(&|e| count(e.steps_done)), sum(&|e| count(e.steps)));
    share("week.heard", words - sum(&|e| e.missed.len()), words);
    figure_of("week.false", sum(&|e| e.false_actions.len()) as f64, all);
}

fn led(habit: &Habit) -> impl Iterator<Item = (usize, &Evening)> {
    habit.evenings.iter().enumerate().filter_map(|(n, evening)| Some((n, evening.as_ref().ok()?)))
}

fn list<'a>(text: &mut String, day: &str, what: &str, findings: impl Iterator<Item = &'a Finding>) {
    for finding in findings {
        let _ = writeln!(text, "- {day} {:.1} s, {what}: {}", finding.at_s, finding.what);
    }
}

fn row(evenings: &[(usize, &Evening)], plain: Option<&Habit>, all: usize) -> String {
    let sum = |of: &dyn Fn(&Evening) -> usize| evenings.iter().map(|(_, evening)| of(evening)).sum::<usize>();
    let (words, missed) = (sum(&|e| e.words), sum(&|e| e.missed.len()));
    let (holds, holds_missed) = (sum(&|e| e.holds), sum(&|e| e.holds_missed.len()));
    let mut causes: BTreeMap<Cause, usize> = BTreeMap::new();
    for (cause, _) in evenings.iter().flat_map(|(_, evening)| &evening.false_actions) {
        *causes.entry(*cause).or_default() += 1;
    }
    let by_cause: Vec<String> = causes.iter().map(|(cause, count)| format!("{count} {}", cause.name())).collect();
    let false_actions = if by_cause.is_empty() { "0".to_owned() } else { by_cause.join(", ") };
    // Only where both came to the end does the difference say anything.
    let usual_s = |n: usize| {
        plain.and_then(|plain| plain.evenings.get(n)?.as_ref().ok()).filter(|evening| evening.finished()).map(|evening| evening.duration_s)
    };
    let lost: Vec<f64> = evenings.iter().filter(|(_, e)| e.finished()).filter_map(|(n, e)| Some(e.duration_s - usual_s(*n)?)).collect();
    let lost = if lost.is_empty() { "–".to_owned() } else { format!("{:+.0} s", lost.iter().sum::<f64>()) };
    format!(
        "{} of {all} | {} of {} | {words} | {} | {missed} ({}) | {holds} | {} | {} | {false_actions} | {} | {:.1} | {lost}",
        sum(&|e| usize::from(e.finished())),
        sum(&|e| usize::try_from(e.steps_done).unwrap_or_default()),
        sum(&|e| usize::try_from(e.steps).unwrap_or_default()),
        words - missed,
        sum(&|e| e.missed_over_tool),
        holds - holds_missed,
        sum(&|e| e.wrong.len()),
        sum(&|e| e.repeated),
        evenings.iter().map(|(_, evening)| evening.duration_s).sum::<f64>() / 60.0,
    )
}

fn ends(habit: &Habit) -> String {
    let mut ends: BTreeMap<String, usize> = BTreeMap::new();
    for evening in &habit.evenings {
        *ends.entry(evening.as_ref().map_or("not led", |evening| evening.ended.as_str()).to_owned()).or_default() += 1;
    }
    ends.iter().map(|(end, count)| format!("{count} {end}")).collect::<Vec<_>>().join(", ")
}
