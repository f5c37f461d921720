//! The questions about one exercise: its dose from a template or in one's own numbers, whether it grows, and what belongs
//! to it besides.

use crate::terminal::ask::{Ask, AskError, until, yes_or_no};
use files::dose_words::{meant_question, numbers_in_words};
use routine::{
    CatalogueEntry, DraftRamp, DraftStep, RampTemplate, Template, Timing, disagreements, largest_usual, limit_name, limit_of,
    ramp_template, templates,
};

/// What a dose can be taken from.
enum Choice {
    Template(Template),
    Growing(&'static RampTemplate),
    Default,
    Own,
}

/// Asks for the dose of an exercise; the step is otherwise empty.
///
/// # Errors
/// There is nobody to answer any more.
pub fn dose(ask: &mut dyn Ask, entry: &'static CatalogueEntry) -> Result<DraftStep, AskError> {
    let mut step = DraftStep::new(entry);
    match choose(ask, entry)? {
        Choice::Template(template) => {
            step.source = source(&template.dose.text, &template.dose.source, &template.dose.status.to_string());
            step.numbers = template.numbers;
        }
        Choice::Growing(ramp) => {
            step.source = source(&ramp.text, &ramp.source, &ramp.status.to_string());
            step.numbers.extend(ramp.rest_s.map(|rest_s| ("rest_s", rest_s)));
            let stages = ramp.stages.iter().map(|stage| {
                let repetitions = stage.repetitions.map(|n| ("repetitions", f64::from(n)));
                repetitions.into_iter().chain(stage.hold_s.map(|hold_s| ("hold_s", hold_s))).collect()
            });
            step.ramp = Some(DraftRamp { days: ramp.days, stages: stages.collect() });
        }
        Choice::Default => step.source = "the catalogue's default, which starts low".to_owned(),
        Choice::Own => loop {
            own_numbers(ask, &mut step)?;
            if meant(ask, &step)? {
                step.source = "set by the writer of this routine".to_owned();
                break;
            }
        },
    }
    if step.ramp.is_none() {
        grow(ask, &mut step)?;
    }
    Ok(step)
}

fn source(text: &str, source: &str, status: &str) -> String {
    let source = if source == "common practice" { String::new() } else { format!(" ({source})") };
    format!("{text}{source} [{status}]")
}

fn choose(ask: &mut dyn Ask, entry: &'static CatalogueEntry) -> Result<Choice, AskError> {
    if own_fields(entry).is_empty() {
        return Ok(Choice::Default);
    }
    let mut choices = Vec::new();
    let mut list: Vec<String> = Vec::new();
    for template in templates(entry) {
        let said = source(&template.dose.text, &template.dose.source, &template.dose.status.to_string());
        if template.numbers.is_empty() {
            list.extend([listed("-", &said), listed("", "gives no number to use")]);
        } else if let Some(beyond) = &template.beyond {
            list.extend([listed("-", &said), listed("", &format!("cannot be taken: {beyond}"))]);
        } else {
            choices.push(Choice::Template(template.clone()));
            let taken = format!("{}; taken as: {}", template.dose.who, numbers_in_words(&template.numbers));
            list.extend([listed(&choices.len().to_string(), &said), listed("", &taken)]);
        }
    }
    if let Some(ramp) = ramp_template(&entry.id) {
        choices.push(Choice::Growing(ramp));
        let said = format!("growing: {}", source(&ramp.text, &ramp.source, &ramp.status.to_string()));
        list.extend([listed(&choices.len().to_string(), &said), listed("", &ramp.who), listed("", &ramp.note)]);
    }
    for both in disagreements(&entry.id) {
        list.push(listed("?", &format!("Sources disagree. {}", both.asks)));
        list.push(listed("", &format!("{} ({}; {})", both.one, both.one_source, both.one_status)));
        list.push(listed("", &format!("{} ({}; {})", both.other, both.other_source, both.other_status)));
        list.push(listed("", &both.here));
    }
    list.extend([listed("d", "the catalogue's default, which starts low"), listed("o", "your own numbers")]);
    ask.say(&list.join("\n"))?;
    let count = choices.len();
    let chosen = until(ask, "Dose", Some("d"), |answer| match answer.to_lowercase().as_str() {
        "d" => Ok(None),
        "o" => Ok(Some(count)),
        typed => match typed.parse::<usize>() {
            Ok(n) if (1..=count).contains(&n) => Ok(Some(n - 1)),
            _ if count == 0 => Err("Type d or o.".to_owned()),
            _ => Err(format!("Type a number from 1 to {count}, d or o.")),
        },
    })?;
    Ok(match chosen {
        None => Choice::Default,
        Some(n) if n < count => choices.swap_remove(n),
        Some(_) => Choice::Own,
    })
}

/// One line of a list and its continuation.
fn listed(mark: &str, text: &str) -> String {
    let first = format!("{mark:>3}  ");
    textwrap::fill(text, textwrap::Options::new(100).initial_indent(&first).subsequent_indent("     "))
}

/// The numbers that are asked for: field, question, whole number.
fn own_fields(entry: &CatalogueEntry) -> Vec<(&'static str, &'static str, bool)> {
    let times = [("repetitions", "How many times", true), ("sets", "In how many sets", true)];
    let rest = ("rest_s", "Rest between, seconds", false);
    let mut fields: Vec<_> = match entry.timing {
        Timing::Rest => return vec![("length_s", "Seconds of rest", false)],
        // How many is told by the phrases themselves, or asked with the word packs.
        Timing::ReadAloud | Timing::Question => return Vec::new(),
        _ => times.to_vec(),
    };
    match entry.timing {
        Timing::Voiced => fields.push(("target_s", "Goal in seconds", false)),
        Timing::Timed if entry.has_one_length() => fields.push(("hold_s", "Held for how many seconds", false)),
        Timing::Paced => fields.extend([("in", "Counts in", true), ("out", "Counts out", true)]),
        Timing::Rapid => fields.push(("length_s", "Seconds of syllables", false)),
        Timing::Talk => fields.push(("length_s", "Seconds of talk, at most", false)),
        _ => {}
    }
    fields.push(rest);
    fields
}

fn own_numbers(ask: &mut dyn Ask, step: &mut DraftStep) -> Result<(), AskError> {
    let entry = step.entry;
    step.numbers.clear();
    step.phases.clear();
    let defaults = entry.defaults();
    for (field, question, whole) in own_fields(entry) {
        let longest =
            || entry.phase_lengths().iter().map(|(_, length_s)| *length_s).max_by(f64::total_cmp).map(|length_s| length_s.to_string());
        let default = if field == "hold_s" { longest() } else { defaults.get(field).cloned() };
        let may_be_none = default.is_none() && field == "target_s";
        let question = if may_be_none { format!("{question}, empty for none") } else { question.to_owned() };
        let default = default.or(may_be_none.then(String::new));
        let value = until(ask, &question, default.as_deref(), |answer| {
            if answer.is_empty() && may_be_none { Ok(None) } else { judge_number(entry, field, whole, answer).map(Some) }
        })?;
        step.numbers.extend(value.map(|value| (field, value)));
    }
    if entry.timing == Timing::Timed && !entry.has_one_length() {
        for (name, usual_s) in entry.phase_lengths() {
            let length_s = until(ask, &format!("Seconds of \"{name}\""), Some(&usual_s.to_string()), |answer| {
                judge_number(entry, "hold_s", false, answer)
            })?;
            step.phases.push((name.to_owned(), length_s));
        }
    }
    Ok(())
}

/// The number, or what is accepted, with the reason of the limit.
fn judge_number(entry: &CatalogueEntry, field: &str, whole: bool, answer: &str) -> Result<f64, String> {
    let value = answer.parse::<f64>().ok().filter(|value| value.is_finite() && (!whole || value.fract() == 0.0));
    let kind = if whole { "a whole number" } else { "a number" };
    match limit_of(Some(entry), limit_name(field)) {
        Some(limit) => value
            .filter(|value| limit.allows(*value))
            .ok_or_else(|| format!("Type {kind} from {} to {}. Why this limit: {}.", limit.min, limit.max, limit.why)),
        None => value.ok_or_else(|| format!("Type {kind}.")),
    }
}

/// True unless the dose is beyond the usual ones and the writer says that it is not meant so.
fn meant(ask: &mut dyn Ask, step: &DraftStep) -> Result<bool, AskError> {
    let stages = [&step.numbers].into_iter().chain(step.ramp.iter().flat_map(|ramp| &ramp.stages));
    let mut asked = None;
    for numbers in stages {
        asked = beyond_usual(step, numbers).or(asked);
    }
    match asked {
        Some(question) => yes_or_no(ask, &question, None),
        None => Ok(true),
    }
}

/// The question about the first number that is larger than any usual one; none where the dose is usual.
fn beyond_usual(step: &DraftStep, numbers: &[(&'static str, f64)]) -> Option<String> {
    let of = |field: &str| numbers.iter().find(|(name, _)| *name == field).map(|(_, value)| *value).or_else(|| step.number(field));
    let repetitions = of("repetitions").map(|n| n * of("sets").unwrap_or(1.0));
    let hold = of("hold_s").or_else(|| of("target_s")).or_else(|| step.phases.iter().map(|(_, length_s)| *length_s).reduce(|a, b| a + b));
    let usual = largest_usual(step.entry, |dose| dose.repetitions).filter(|(_, most)| repetitions.is_some_and(|n| n > *most));
    let usual = usual.or_else(|| largest_usual(step.entry, |dose| dose.hold_s).filter(|(_, most)| hold.is_some_and(|s| s > *most)));
    let usual =
        usual.or_else(|| largest_usual(step.entry, |dose| dose.counts_out).filter(|(_, most)| of("out").is_some_and(|n| n > *most)));
    usual.map(|(dose, _)| meant_question(dose, repetitions, hold))
}

/// Asks whether the dose shall grow, from what was chosen to a goal in even stages.
fn grow(ask: &mut dyn Ask, step: &mut DraftStep) -> Result<(), AskError> {
    let entry = step.entry;
    let (field, whole, unit) = match entry.timing {
        Timing::Timed if entry.has_one_length() => ("hold_s", false, "seconds"),
        Timing::Voiced if step.number("target_s").is_some() => ("target_s", false, "seconds"),
        Timing::Voiced | Timing::Timed | Timing::Repeated => ("repetitions", true, "times"),
        Timing::Paced => ("out", true, "counts out"),
        Timing::Rapid => ("length_s", false, "seconds"),
        _ => return Ok(()),
    };
    let default = || match field {
        "hold_s" => entry.phase_lengths().iter().map(|(_, length_s)| *length_s).max_by(f64::total_cmp),
        _ => entry.defaults().get(field).and_then(|value| value.parse().ok()),
    };
    let Some(from) = step.number(field).or_else(default) else { return Ok(()) };
    let room = limit_of(Some(entry), limit_name(field)).is_none_or(|limit| limit.max >= from + 1.0);
    if !room || !yes_or_no(ask, "Should the dose grow over the weeks?", Some(false))? {
        return Ok(());
    }
    loop {
        let goal = until(ask, &format!("It starts at {from} {unit}. Up to how many"), None, |answer| {
            let goal = judge_number(entry, field, whole, answer)?;
            if goal >= from + 1.0 { Ok(goal) } else { Err(format!("Type a number of at least {}.", from + 1.0)) }
        })?;
        // Whole steps, so that no two stages are the same.
        let most = ((goal - from).floor() + 1.0).min(10.0);
        let count = until(ask, &format!("In how many stages, 2 to {most}"), Some(&most.min(5.0).to_string()), |answer| {
            let count = answer.parse::<u32>().ok().filter(|&count| count >= 2 && f64::from(count) <= most);
            count.ok_or_else(|| format!("Type a whole number from 2 to {most}."))
        })?;
        let days = until(ask, "On how many different days must all of it be done before the next stage", Some("3"), |answer| {
            judge_number(entry, "days", true, answer)
        })?;
        let stage = |n: u32| (from + (goal - from) * f64::from(n) / f64::from(count - 1)).round();
        let values = (0..count).map(|n| {
            if n == 0 {
                from
            } else if n + 1 == count {
                goal
            } else {
                stage(n)
            }
        });
        let stages = values.map(|value| vec![(field, value)]).collect();
        // The limit keeps it small.
        step.ramp = Some(DraftRamp { days: days as u32, stages });
        if meant(ask, step)? {
            return Ok(());
        }
    }
}
