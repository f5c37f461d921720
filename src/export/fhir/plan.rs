//! Routines as CarePlans, their exercises as ServiceRequests.

use std::io::Write;

use serde_json::{Map, Value, json};

use super::build::{narrative, plain, put, quantity, reference};
use super::bundle::FhirExport;
use super::plan_state::{PlanState, request_id};
use crate::{Outline, iso};
use model::KeptHead;
use report::handout;
use routine::{PlannedTime, Prescription, Step, Weekday};

impl<W: Write> FhirExport<'_, W> {
    /// The ServiceRequests and the CarePlan of a routine.
    pub(super) fn plan_resources(&mut self, id: &str, head: &KeptHead, outline: &Outline) -> Vec<Value> {
        let state = self.plans.get(id).cloned();
        let status = if state.as_ref().is_none_or(|state| state.current) { "active" } else { "completed" };
        let page = outline.prescription.as_ref().map(|prescription| handout(prescription, self.say));
        let mut resources = Vec::new();
        let mut activities = Vec::new();
        for (number, exercise) in (1_u32..).zip(&outline.exercises) {
            let index = usize::try_from(number).unwrap_or(usize::MAX) - 1;
            let item = page.as_ref().and_then(|page| page.items.get(index));
            let step = outline.prescription.as_ref().and_then(|known| known.routine.steps.get(index));
            let request = request_id(id, number);
            let code = self.codes.exercise(exercise, self.say);
            let mut order = Map::new();
            order.insert("resourceType".into(), "ServiceRequest".into());
            order.insert("id".into(), request.as_str().into());
            let told = item.map_or_else(|| exercise.clone(), |item| format!("{}: {}", item.name, item.dose));
            order.insert("text".into(), narrative(&told));
            order.insert("status".into(), status.into());
            order.insert("intent".into(), "order".into());
            order.insert("code".into(), code);
            if let Some(item) = item.filter(|item| !item.dose.is_empty()) {
                let mut dose = self.codes.own("dose");
                if let Value::Object(dose) = &mut dose {
                    dose.insert("text".into(), plain(&item.dose).into());
                }
                order.insert("orderDetail".into(), json!([dose]));
            }
            put(&mut order, "quantityQuantity", step.map(repetitions));
            order.insert("subject".into(), reference(&self.patient));
            put(&mut order, "occurrenceTiming", outline.prescription.as_ref().and_then(timing));
            put(&mut order, "patientInstruction", item.filter(|item| !item.how.is_empty()).map(|item| plain(&item.how).into()));
            resources.push(Value::Object(order));
            activities.push(json!({"reference": reference(&request)}));
        }
        let mut plan = Map::new();
        plan.insert("resourceType".into(), "CarePlan".into());
        plan.insert("id".into(), id.into());
        plan.insert("text".into(), narrative(&format!("Routine \"{}\" of {} exercises", head.routine_title, outline.exercises.len())));
        plan.insert("status".into(), status.into());
        plan.insert("intent".into(), "plan".into());
        plan.insert("title".into(), plain(&head.routine_title).into());
        plan.insert("subject".into(), reference(&self.patient));
        put(&mut plan, "period", state.map(|state| period(&state)));
        if !activities.is_empty() {
            plan.insert("activity".into(), activities.into());
        }
        resources.push(Value::Object(plan));
        resources
    }
}

fn period(state: &PlanState) -> Value {
    let mut period = Map::new();
    period.insert("start".into(), iso(&state.first).into());
    if !state.current {
        period.insert("end".into(), iso(&state.last).into());
    }
    Value::Object(period)
}

/// All repetitions of one practice.
fn repetitions(step: &Step) -> Value {
    quantity(f64::from(step.sets.saturating_mul(step.repetitions)), "repetition", "{repetition}")
}

/// When it is meant to be done; none where the client chooses.
fn timing(prescription: &Prescription) -> Option<Value> {
    let plan = prescription.plan.as_slice();
    let first = plan.first()?;
    let same_days = plan.iter().all(|time| time.days == first.days);
    if !same_days {
        // One Timing knows one set of days: here only how often a week, and the rest in words.
        let times: usize = plan.iter().map(|time| time.days.len()).sum();
        return Some(json!({"repeat": {"frequency": times, "period": 1, "periodUnit": "wk"}, "code": {"text": in_words(plan)}}));
    }
    let mut times: Vec<String> = plan.iter().map(|time| format!("{}:00", time.at_text())).collect();
    times.sort();
    let mut repeat = Map::new();
    if first.days.len() == Weekday::ALL.len() {
        repeat.insert("frequency".into(), times.len().into());
        repeat.insert("period".into(), 1.into());
        repeat.insert("periodUnit".into(), "d".into());
    } else {
        repeat.insert("frequency".into(), (times.len() * first.days.len()).into());
        repeat.insert("period".into(), 1.into());
        repeat.insert("periodUnit".into(), "wk".into());
        let days: Vec<&str> = first.days.iter().map(|day| day.name().get(..3).unwrap_or_default()).collect();
        repeat.insert("dayOfWeek".into(), days.into());
    }
    repeat.insert("timeOfDay".into(), times.into());
    Some(json!({"repeat": repeat}))
}

fn in_words(plan: &[PlannedTime]) -> String {
    let one =
        |time: &PlannedTime| format!("{} at {}", time.days.iter().map(|day| day.name()).collect::<Vec<_>>().join(", "), time.at_text());
    plan.iter().map(one).collect::<Vec<_>>().join("; ")
}
