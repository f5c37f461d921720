//! `tidecount history --classes`: classes that were led from a list, who was there and what was led.

use std::path::Path;

use serde_json::{Value, json};

use crate::rounded::thousandths;
use export::{ATTENDANCE, ClassHead, Writer, attendance_row};
use files::error::Failure;
use model::visible_line;
use record::{LedClass, LedStep, Source};

/// The classes as text, as a JSON object a line, or as a table of who was there.
///
/// # Errors
/// The table cannot be written.
pub fn written(classes: &[LedClass], json: bool, csv: bool, folder: &Path) -> Result<String, Failure> {
    if csv {
        return table(classes).map_err(|why| Failure::Output(format!("the table cannot be written: {why}")));
    }
    if json {
        return Ok(classes.iter().map(|class| format!("{}\n", as_json(class))).collect());
    }
    if classes.is_empty() {
        return Ok(format!("No class was led from a list yet in {}.\n", folder.display()));
    }
    Ok(classes.iter().map(as_text).collect())
}

fn as_text(class: &LedClass) -> String {
    let source = if class.source == Source::Live { String::new() } else { format!(" ({})", class.source.as_str()) };
    let mut text = format!(
        "{:>5}  {}  {}, {}{source}\n",
        class.id.0,
        class.started_at.strftime("%a %Y-%m-%d %H:%M"),
        visible_line(&class.title),
        visible_line(&class.routine)
    );
    for (label, present) in [("here", Some(true)), ("not here", Some(false)), ("not asked", None)] {
        let names: Vec<String> = class.attendance.iter().filter(|one| one.1 == present).map(|one| visible_line(&one.0)).collect();
        if !names.is_empty() {
            text += &format!("       {label}: {} ({})\n", names.join(", "), names.len());
        }
    }
    for step in &class.led {
        text += &format!("       {}\n", led(step));
    }
    text
}

/// "neck-turns: 5 of 5, 1.2 min"; with several sets "10 of 10 in 2 sets".
fn led(step: &LedStep) -> String {
    let sets = if step.sets > 1 { format!(" in {} sets", step.sets) } else { String::new() };
    let minutes = (step.until_s - step.from_s).max(0.0) / 60.0;
    format!("{}: {} of {}{sets}, {minutes:.1} min", visible_line(&step.exercise), step.repetitions_done, step.repetitions_planned)
}

fn as_json(class: &LedClass) -> Value {
    let attendance: Vec<Value> =
        class.attendance.iter().map(|(participant, present)| json!({"participant": participant, "present": present})).collect();
    let led: Vec<Value> = class
        .led
        .iter()
        .map(|step| {
            json!({
                "exercise": step.exercise,
                "sets": step.sets,
                "repetitions_done": step.repetitions_done,
                "repetitions_planned": step.repetitions_planned,
                "duration_s": thousandths(step.until_s - step.from_s),
            })
        })
        .collect();
    json!({
        "class": class.id.0,
        "started_at": class.started_at.to_string(),
        "title": class.title,
        "routine": class.routine,
        "source": class.source.as_str(),
        "attendance": attendance,
        "led": led,
    })
}

fn table(classes: &[LedClass]) -> Result<String, Box<dyn std::error::Error>> {
    let mut bytes = Vec::new();
    let mut writer = Writer::new(&ATTENDANCE, &mut bytes)?;
    for class in classes {
        let head = ClassHead {
            number: class.id.0,
            started_at: &class.started_at,
            title: &class.title,
            routine: &class.routine,
            source: class.source,
        };
        for (participant, present) in &class.attendance {
            writer.row(&attendance_row(&head, participant, *present))?;
        }
    }
    writer.finish()?;
    Ok(String::from_utf8(bytes)?)
}

#[cfg(test)]
#[path = "tests/class_history.rs"]
mod tests;
