//! What every state of a session shares: the routine, how far it has got, and what was noticed on the way.
//!
//! The lowest floor of the engine: it knows nothing of the states above it. What it puts out stands in `outlet`.

use std::collections::{BTreeMap, BTreeSet};

use super::aims::Aims;
use super::context::SessionContext;
use super::next::{NextAction, Speaking};
use super::outbox::Outbox;
use super::questions::Questions;
use super::roll::Roll;
use super::talk::RoomTalk;
use super::tiring::Trials;
use super::trouble::Troubles;
use model::{Line, LineId, Position};
use routine::{Amount, Efforts, PackKind, Posture, Rise, Routine, Step, Work, is_soft};

/// One session of one routine, apart from the state it is in.
#[derive(Debug, Clone)]
pub(super) struct Practice {
    pub routine: Routine,
    pub context: SessionContext,
    pub now_s: f64,
    pub began_s: f64,
    /// The session stands in the journal.
    pub begun: bool,
    /// Words on safety have been announced.
    pub safety_announced: bool,
    /// Exercises whose cautions were heard in this practice, and which need no answer.
    pub cautioned: BTreeSet<String>,
    /// The client has said "ready" to the first step: the cautions lie behind, and "skip" and "go back" work.
    pub started: bool,
    pub here: Position,
    /// True while `here` lies inside a step that has begun.
    pub in_step: bool,
    /// Where "go on" leads.
    pub resume_target: NextAction,
    /// Steps left out, for want of agreement or because of the loud-time limit, by index from 0.
    pub left_out: BTreeSet<usize>,
    /// Completed steps, by index from 0.
    pub steps_done: BTreeSet<usize>,
    /// Repetitions completed, by index of the step from 0. A step that is come back to continues where it was: the dose is
    /// never exceeded.
    pub counts: BTreeMap<usize, u32>,
    /// What was really done in this practice, cut-off repetitions among it, by exercise.
    pub done: BTreeMap<String, Amount>,
    /// What muscles and breath have done lately.
    pub efforts: Efforts,
    /// Seconds in which it stood still.
    pub still_s: f64,
    /// How the client is placed, as far as the steps tell.
    pub posture: Option<Posture>,
    /// They have rolled onto their side on the way up.
    pub on_side: bool,
    /// The part of getting up that is under way, and its length, s.
    pub rising: Option<(Rise, f64)>,
    /// Voiced trials of this step.
    pub trials: Trials,
    /// Loud holds of this practice together, s.
    pub loud_s: f64,
    /// A hold that a command cut off: the voice ear gives its figures a moment later, when the state has moved on.
    pub cut_hold: Option<(String, Position)>,
    /// Factor on the routine's count interval, by "slower" and "faster".
    pub pace: f64,
    /// When our last line ended, s.
    pub last_spoke_s: f64,
    /// When the last command was heard, s.
    pub command_at_s: f64,
    /// When it was the client's turn to read, think or repeat syllables, s.
    pub turn_began_s: f64,
    pub talk: RoomTalk,
    /// The sort of question asked last: a new sort is announced.
    pub kind_asked: Option<PackKind>,
    /// The last thing that was announced, for "again".
    pub last_said: Option<Line>,
    pub troubles: Troubles,
    /// What is still to be said to somebody who is not well, once they had a moment to answer.
    pub rest_to_tell: Vec<Line>,
    /// The client has said in this practice that something was wrong.
    pub unwell: bool,
    /// What is asked at the end, from the summary on; none before, and where nothing is asked.
    pub looking_back: Option<Questions>,
    /// What the present step has come to, where its repetitions are meant to go a certain way.
    pub aims: Aims,
    /// So many exercises were asked about, whether a clinician has agreed to them.
    pub agreements_asked: u32,
    /// Who of the class is there.
    pub roll: Roll,
    pub out: Outbox,
}

/// Voiced, and no soft wind-down.
pub(super) fn is_loud(step: &Step) -> bool {
    matches!(step.work, Work::Voiced { .. }) && !is_soft(&step.exercise.id)
}

impl Practice {
    pub fn new(routine: Routine, context: SessionContext) -> Self {
        Self {
            routine,
            context,
            now_s: 0.0,
            began_s: 0.0,
            begun: false,
            safety_announced: false,
            cautioned: BTreeSet::new(),
            started: false,
            here: Position { step: 1, set: 1, repetition: 1 },
            in_step: false,
            resume_target: NextAction::AskStart,
            left_out: BTreeSet::new(),
            steps_done: BTreeSet::new(),
            counts: BTreeMap::new(),
            done: BTreeMap::new(),
            efforts: Efforts::default(),
            still_s: 0.0,
            posture: None,
            on_side: false,
            rising: None,
            trials: Trials::default(),
            loud_s: 0.0,
            cut_hold: None,
            pace: 1.0,
            last_spoke_s: 0.0,
            command_at_s: f64::NEG_INFINITY,
            turn_began_s: 0.0,
            talk: RoomTalk::default(),
            kind_asked: None,
            last_said: None,
            troubles: Troubles::default(),
            rest_to_tell: Vec::new(),
            unwell: false,
            looking_back: None,
            agreements_asked: 0,
            aims: Aims::default(),
            roll: Roll::default(),
            out: Outbox::default(),
        }
    }

    /// Moves on with `then` when `last` has been said and `pause_s` has passed; "go on" leads there, too.
    pub fn after(&mut self, last: LineId, pause_s: f64, then: NextAction) -> Speaking {
        self.resume_target = match then {
            NextAction::Perform => NextAction::BeginRepetition,
            // Where "go on" leads from there is kept.
            NextAction::Halted(_) => self.resume_target,
            other => other,
        };
        Speaking { last, ended_s: None, pause_s, then }
    }

    /// The step `here` points at; none behind the last.
    pub fn step(&self) -> Option<&Step> {
        self.routine.steps.get(self.step_index())
    }

    /// `here.step` counted from 0.
    pub fn step_index(&self) -> usize {
        (self.here.step.max(1) - 1) as usize
    }

    pub fn exercise_id(&self) -> String {
        self.step().map(|step| step.exercise.id.clone()).unwrap_or_default()
    }

    /// A clinician has enabled sips for this client: in the routine, and nowhere else.
    pub fn sips_enabled(&self) -> bool {
        !self.context.class && self.routine.steps.iter().any(|step| matches!(step.work, Work::Repeated { sip_every: Some(_), .. }))
    }

    /// The exercise that came last before this moment between two steps; none before the first.
    pub fn exercise_before(&self) -> Option<String> {
        let before = self.routine.steps.iter().enumerate().take(self.step_index());
        let mut led = before.filter(|(index, _)| self.counts.contains_key(index) || self.steps_done.contains(index));
        led.next_back().map(|(_, step)| step.exercise.id.clone())
    }

    /// A message of the present exercise: `ex-ID-PART`.
    pub fn exercise_key(&self, part: &str) -> String {
        format!("ex-{}-{part}", self.exercise_id())
    }

    /// How the present exercise is told in full, in the posture of this step.
    pub fn instruction_key(&self) -> String {
        let stands = self.step().is_some_and(|step| step.posture == Some(Posture::Standing));
        self.exercise_key(if stands { "standing" } else { "instruction" })
    }

    /// Repetitions completed in the present step.
    pub fn repetitions_done(&self) -> u32 {
        self.counts.get(&self.step_index()).copied().unwrap_or(0)
    }

    /// Repetitions prescribed in the present step, all sets together.
    pub fn prescribed(&self) -> u32 {
        self.step().map_or(0, |step| step.sets.saturating_mul(step.repetitions))
    }

    /// Which repetition of the step this is, all sets together, from 0.
    pub fn turn(&self) -> usize {
        let repetitions = self.step().map_or(1, |step| step.repetitions);
        (self.here.set.saturating_sub(1) * repetitions + self.here.repetition.saturating_sub(1)) as usize
    }

    /// One repetition is complete: counts it.
    pub fn repetition_complete(&mut self) {
        let most = self.prescribed();
        let done = self.counts.entry(self.step_index()).or_insert(0);
        *done = (*done + 1).min(most);
        // What is held, breathed, swallowed or voiced is counted where it is measured.
        if matches!(
            self.step().map(|step| &step.work),
            Some(Work::ReadAloud { .. } | Work::Talk { .. } | Work::Question { .. } | Work::Naming { .. })
        ) {
            self.did(Amount { times: 1, seconds: 0.0 });
        }
        self.resume_target = NextAction::AfterRepetition;
    }

    /// Points `here` at the repetition that comes after `done` of them in the present step.
    pub fn stand_after(&mut self, done: u32) {
        let repetitions = self.step().map_or(1, |step| step.repetitions.max(1));
        self.here.set = done / repetitions + 1;
        self.here.repetition = done % repetitions + 1;
    }

    /// Points `here` at the first repetition of the next step.
    pub fn stand_before_next_step(&mut self) {
        self.here.step += 1;
        self.here.set = 1;
        self.here.repetition = 1;
    }

    /// The present exercise is a loud one: voiced, and no soft wind-down.
    pub fn is_loud(&self) -> bool {
        self.step().is_some_and(is_loud)
    }

    /// True where one more hold would go past the loud time that the routine allows in one practice.
    pub fn is_loud_enough(&self, target_s: Option<f64>) -> bool {
        !self.context.class && self.is_loud() && self.loud_s > 0.0 && self.loud_s + target_s.unwrap_or(0.0) > self.routine.loud_limit_s
    }
}
