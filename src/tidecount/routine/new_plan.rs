//! The questions about when a programme is done.

use std::collections::BTreeSet;

use crate::terminal::ask::{Ask, AskError, until, yes_or_no};
use routine::{DraftStep, PlannedTime, Range, UsualDose, Weekday, largest_usual, minutes_of};

/// Asks for days and times; more of them than any source has for one of the exercises are asked about.
///
/// # Errors
/// There is nobody to answer any more.
pub fn plan(ask: &mut dyn Ask, steps: &[DraftStep]) -> Result<Vec<PlannedTime>, AskError> {
    ask.say(
        "\nWhen is it done? A time, after days if it is not every day: 18:30, or monday wednesday 18:30. An empty answer ends the list.",
    )?;
    loop {
        let mut plan: Vec<PlannedTime> = Vec::new();
        while let Some(planned) = until(ask, &format!("Time {}", plan.len() + 1), Some(""), |answer| planned(answer, &plan))? {
            plan.push(planned);
        }
        match beyond_usual(&plan, steps) {
            Some(question) if !yes_or_no(ask, &question, None)? => ask.say("Then please give the times again, from the first.")?,
            _ => return Ok(plan),
        }
    }
}

fn planned(answer: &str, before: &[PlannedTime]) -> Result<Option<PlannedTime>, String> {
    let accepted = "Type days and a 24-hour time, such as 18:30, or monday wednesday 18:30.";
    let lower = answer.to_lowercase();
    let mut parts: Vec<&str> = lower.split([' ', ',']).filter(|part| !part.is_empty()).collect();
    let Some(time) = parts.pop() else { return Ok(None) };
    let at_min = minutes_of(time).ok_or_else(|| format!("\"{time}\" is not a time. {accepted}"))?;
    // "mon" is as good as "monday".
    let day = |part: &str| Weekday::ALL.into_iter().find(|day| part.len() >= 3 && day.name().starts_with(part));
    let days = parts.iter().map(|part| day(part).ok_or_else(|| format!("\"{part}\" is not a day of the week. {accepted}")));
    let mut days = days.collect::<Result<BTreeSet<Weekday>, String>>()?;
    if days.is_empty() {
        days.extend(Weekday::ALL);
    }
    match before.iter().any(|other| other.at_min == at_min && !other.days.is_disjoint(&days)) {
        true => Err("That time is already in the list.".to_owned()),
        false => Ok(Some(PlannedTime { days, at_min })),
    }
}

/// More times a day, or more days a week, than any source has for one of the exercises.
fn beyond_usual(plan: &[PlannedTime], steps: &[DraftStep]) -> Option<String> {
    let times = Weekday::ALL.into_iter().map(|day| plan.iter().filter(|planned| planned.days.contains(&day)).count());
    let a_day = times.clone().max().unwrap_or(0);
    let a_week = times.filter(|&times| times > 0).count();
    let ask = |count: usize, what: &str, number: fn(&UsualDose) -> Option<Range>| {
        steps.iter().find_map(|step| {
            let (dose, most) = largest_usual(step.entry, number).filter(|(_, most)| count as f64 > *most)?;
            Some(format!("Published for {}: {most} {what} ({}; {}). Are {count} meant?", step.entry.id, dose.source, dose.status))
        })
    };
    ask(a_day, "times a day", |dose| dose.sets_per_day).or_else(|| ask(a_week, "days a week", |dose| dose.days_per_week))
}
