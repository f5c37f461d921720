//! Goals as resources of their own.

use std::io::{self, Write};

use serde_json::{Map, Value, json};

use super::build::{concept, narrative, note, plain, reference};
use super::bundle::FhirExport;
use crate::goal::{GoalOn, unit};
use crate::ids::uuid;
use progress::{Direction, Standing};

impl<W: Write> FhirExport<'_, W> {
    /// Writes one goal of the client.
    ///
    /// # Errors
    /// It cannot be written.
    pub fn goal(&mut self, on: &GoalOn<'_>) -> io::Result<()> {
        self.test_data = false;
        let goal = &on.state.goal;
        let (achieved, display) = match on.state.standing {
            Standing::Met => ("achieved", "Achieved"),
            Standing::NotMet(_) => ("not-achieved", "Not Achieved"),
            Standing::TooEarly(_) => ("in-progress", "In Progress"),
        };
        let mut target = Map::new();
        if let Some(aim) = &goal.aim {
            let mut measure = self.codes.own(aim.measure.declared().term.code);
            let name = (self.say)(&format!("ex-{}-name", aim.exercise), &[]);
            if let Value::Object(measure) = &mut measure {
                measure.insert("text".into(), plain(if name.is_empty() { &aim.exercise } else { &name }).into());
            }
            let comparator = match aim.direction {
                Direction::AtLeast => ">=",
                Direction::AtMost => "<=",
            };
            let written = if aim.measure.is_level() { "dB SPL" } else { aim.measure.declared().unit.written() };
            target.insert("measure".into(), measure);
            target.insert(
                "detailQuantity".into(),
                json!({"value": aim.target, "comparator": comparator, "unit": written, "system": "http://unitsofmeasure.org", "code": unit(aim.measure)}),
            );
        }
        target.insert("dueDate".into(), goal.due.to_string().into());
        let mut notes = vec![note(&format!("Set by {}.", goal.set_by))];
        notes.extend(
            on.mark().map(|mark| note(&format!("Marked as {} by {} on {}.", mark.kind.name().replace('-', " "), mark.by, mark.on))),
        );
        // By what does not change when it is exported again, from whatever copy of the record.
        let id = uuid(&["goal", &self.patient, &goal.id.to_string(), &goal.set_on.to_string(), &goal.words]);
        self.write(json!({
            "resourceType": "Goal",
            "id": id,
            "text": narrative(&format!("\u{201c}{}\u{201d}, by {}: {}", goal.words, goal.due, display.to_lowercase())),
            "lifecycleStatus": if on.state.standing == Standing::Met { "completed" } else { "active" },
            "achievementStatus": concept("http://terminology.hl7.org/CodeSystem/goal-achievement", achieved, display, None),
            "description": {"text": plain(&goal.words)},
            "subject": reference(&self.patient),
            "startDate": goal.set_on.to_string(),
            "target": [target],
            "statusDate": on.on.to_string(),
            "note": notes,
        }))
    }
}
