//! What has been put out, so that nothing is put out twice, and what waits for its moment.

use std::collections::BTreeSet;

use model::{Effect, Entry, LineId, Listening, View};

/// The effects of one event, and what the outside has of us already.
#[derive(Debug, Clone, Default)]
pub(super) struct Outbox {
    pub effects: Vec<Effect>,
    /// Number of the last line.
    pub last_line: u64,
    /// Lines of ours queued or playing.
    pub speaking: BTreeSet<LineId>,
    /// The last reminder.
    pub reminder: Option<LineId>,
    pub listening: Option<Listening>,
    pub view: View,
    /// Facts that become true a moment from now, by an end that has been scheduled already.
    pub due: Vec<Entry>,
}
