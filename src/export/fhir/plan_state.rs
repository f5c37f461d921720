//! Since when each routine of a client was followed, and the names of plans and orders.

use std::collections::BTreeMap;
use std::sync::Arc;

use jiff::ZonedDateTime;

use crate::ids::uuid;
use model::KeptHead;

/// Since when a routine was followed, and whether it still is.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanState {
    pub first: ZonedDateTime,
    pub last: ZonedDateTime,
    /// No later practice followed another version of the routine of this title.
    pub current: bool,
}

/// Names the plan of a routine text.
pub(super) fn plan_id(patient: &str, routine_text: &str) -> String {
    uuid(&["plan", patient, routine_text])
}

/// Names the order of one step of a plan.
pub(super) fn request_id(plan: &str, step: u32) -> String {
    uuid(&["request", plan, &step.to_string()])
}

/// The state of every routine that these practices followed, by the plan's identifier. `heads` in the order in which they began.
pub(super) fn states(patient: &str, heads: &[KeptHead]) -> BTreeMap<String, PlanState> {
    let mut states: BTreeMap<String, PlanState> = BTreeMap::new();
    let mut latest: BTreeMap<&str, &Arc<str>> = BTreeMap::new();
    for head in heads {
        latest.insert(&head.routine_title, &head.routine_text);
        let id = plan_id(patient, &head.routine_text);
        let state =
            states.entry(id).or_insert_with(|| PlanState { first: head.started_at.clone(), last: head.started_at.clone(), current: false });
        state.last = head.started_at.clone();
    }
    for text in latest.values() {
        if let Some(state) = states.get_mut(&plan_id(patient, text)) {
            state.current = true;
        }
    }
    states
}
