//! Runs `tidecount goal`.

use std::fmt::Write as _;
use std::io::Write as _;
use std::path::Path;
use std::process::ExitCode;

use jiff::ZonedDateTime;
use jiff::civil::Date;

use crate::goal::args::{AddArgs, GoalArgs, GoalOrder, How};
use crate::goal::whose::known;
use crate::record::check::present;
use files::error::{Failure, delivered};
use files::reports::goal_lines;
use model::Measure;
use progress::{Aim, Direction, Mark, MarkKind, goal_measures, goals};
use record::{NewGoal, Store};
use routine::find;
use speak::Words;

/// Longest line of the list, characters.
const WIDTH: usize = 100;

/// Runs the command.
///
/// # Errors
/// There is no such client, exercise, measure or goal, or the record cannot be used; nothing is kept then.
pub fn run(args: &GoalArgs) -> Result<ExitCode, Failure> {
    let text = done(args, &args.data.folder()?, ZonedDateTime::now().date())?;
    delivered(std::io::stdout().write_all(model::visible(&text).as_bytes())).map(|()| ExitCode::SUCCESS)
}

/// What there is to say when it is done.
///
/// # Errors
/// As [`run`].
pub(super) fn done(args: &GoalArgs, folder: &Path, today: Date) -> Result<String, Failure> {
    let named = args.client.as_deref();
    match &args.order {
        GoalOrder::Add(new) => add(new, named, folder, today),
        GoalOrder::List => {
            let store = present(folder)?;
            list(&store, &known(&store.clients()?, named)?, today)
        }
        GoalOrder::Mark { goal, how, by } => {
            let kind = match how {
                How::Met => MarkKind::Met,
                How::NotMet => MarkKind::NotMet,
            };
            mark(named, folder, *goal, Mark { kind, on: today, by: by.clone() })
        }
        GoalOrder::Remove { goal, by } => mark(named, folder, *goal, Mark { kind: MarkKind::Removed, on: today, by: by.clone() }),
    }
}

fn add(new: &AddArgs, named: Option<&str>, folder: &Path, today: Date) -> Result<String, Failure> {
    // Before a record is made.
    let aim = aim(new)?;
    let clients = Store::open_to_read(folder)?.map(|store| store.clients()).transpose()?.unwrap_or_default();
    let client = match named.filter(|_| new.new_client) {
        Some(name) => name.to_owned(),
        None => known(&clients, named)?,
    };
    let mut store = Store::open(folder)?;
    let goal = NewGoal { words: &new.words, aim, set_on: today, due: new.due, set_by: &new.by };
    let id = store.add_goal(&client, &goal)?;
    let mut text = format!("Goal {id} of {client} is kept.\n");
    text += &list(&store, &client, today)?;
    Ok(text)
}

/// What is to be measured; none for an activity.
fn aim(new: &AddArgs) -> Result<Option<Aim>, Failure> {
    let (Some(exercise), Some(measure)) = (&new.exercise, &new.measure) else { return Ok(None) };
    let Some(entry) = find(exercise) else {
        return Err(Failure::Options(format!("there is no exercise {exercise:?}: `tidecount exercises` lists them")));
    };
    let can_be = goal_measures(entry);
    let Some(known) = Measure::of_id(measure).filter(|measure| can_be.contains(measure)) else {
        let list = can_be.iter().map(|measure| measure.id()).collect::<Vec<_>>().join(", ");
        return Err(Failure::Options(if list.is_empty() {
            format!(
                "nothing that a goal can rest on is measured in {exercise}: leave --exercise and --measure out, and mark the goal yourself"
            )
        } else {
            format!("{measure:?} is no measure for a goal in {exercise}: take one of {list}")
        }));
    };
    let (direction, target) = match new.target.map(|target| (target.at_least, target.at_most)) {
        Some((Some(least), _)) => (Direction::AtLeast, least),
        Some((None, Some(most))) => (Direction::AtMost, most),
        _ => return Err(Failure::Options("a measure needs a target: give --at-least N or --at-most N".to_owned())),
    };
    Ok(Some(Aim { exercise: exercise.clone(), measure: known, direction, target }))
}

fn mark(named: Option<&str>, folder: &Path, goal: i64, mark: Mark) -> Result<String, Failure> {
    let mut store = present(folder)?;
    let client = known(&store.clients()?, named)?;
    store.mark_goal(&client, goal, &mark)?;
    let done = match mark.kind {
        MarkKind::Met => "is marked as met",
        MarkKind::NotMet => "is marked as not met",
        MarkKind::Removed => "is removed",
    };
    Ok(format!("Goal {goal} of {client} {done}.\n"))
}

/// Each goal with its number, and how it is judged.
fn list(store: &Store, client: &str, today: Date) -> Result<String, Failure> {
    let states = goals(&store.practised(client, today)?, today);
    if states.is_empty() {
        return Ok(format!("{client} has no goals. Add one with `tidecount goal add`.\n"));
    }
    let told = goal_lines(&states, &Words::usual()?);
    let numbered = states.iter().zip(told.lines).map(|(state, line)| (format!("{:>4}  ", state.goal.id), "      ", line));
    let mut text = String::new();
    for (first, next, line) in numbered.chain([(String::new(), "", told.rule)]) {
        let options = textwrap::Options::new(WIDTH).initial_indent(&first).subsequent_indent(next);
        for line in textwrap::wrap(&line, options) {
            // Writing to a string cannot fail.
            let _ = writeln!(text, "{line}");
        }
    }
    Ok(text)
}
