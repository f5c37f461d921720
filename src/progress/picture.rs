//! Everything about one client over some weeks.

use super::adherence::Adherence;
use super::assessment::{Baselines, baselines};
use super::best::{BestOfThree, best_of_three};
use super::cueing::Cueing;
use super::discard::Discard;
use super::given::{Given, given};
use super::practised::{ClockJump, LeftOutStep, Moment, Note, Practice, Practised, SafetyStop};
use super::prescribed::{RoutineLife, routines};
use super::programme::ProgrammeChange;
use super::proposed::{ProposedDose, proposed};
use super::rated::{Ratings, ratings};
use super::series::{Series, series};
use super::sign::{MissedFor, Sign, missed_for, signs};
use super::spoken_for::{SpokenFor, spoken_for};
use super::standing::{GoalState, goals};
use super::trial::Trial;
use super::window::Window;
use jiff::civil::Date;
use model::EndReason;
use serde::Serialize;

/// How a practice ends that was led to its end.
const COMPLETED: &str = "completed";

/// One client over some weeks: all that pages, report, exports and clinic show.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Picture {
    pub client: String,
    pub window: Window,
    /// The day of the first practice of all whose date can be believed.
    pub first_day: Option<Date>,
    pub practices: Vec<Practice>,
    pub adherence: Adherence,
    pub series: Vec<Series>,
    pub best_of_three: Vec<BestOfThree>,
    /// Every trial in the window, also what stands in no figure.
    pub trials: Vec<Trial>,
    /// Trials in the window with a value that stands in no figure, by reason.
    pub discarded: Vec<(Discard, u32)>,
    pub left_out: Vec<LeftOutStep>,
    pub safety_stops: Vec<SafetyStop>,
    pub notes: Vec<Note>,
    pub programme: Vec<ProgrammeChange>,
    /// Doses in force that a clinician has spoken for.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub spoken_for: Vec<SpokenFor>,
    /// Minutes and repetitions, by day and by group of exercises.
    pub given: Given,
    /// Steps of a dose that the clinician may want to take.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub proposed: Vec<ProposedDose>,
    pub cueing: Cueing,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub ratings: Vec<Ratings>,
    /// Warning signs about swallowing to which the client said yes or was not sure, the latest first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub signs: Vec<Sign>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub missed_for: Vec<MissedFor>,
    /// Moments when the voice did what was wanted, oldest first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub moments: Vec<Moment>,
    /// Of the whole record, as [`Picture::with_baselines`] adds them: baseline and re-test, apart from practice.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub baselines: Option<Baselines>,
    /// Those that stand on the window's last day.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub goals: Vec<GoalState>,
    /// Of the whole record: where the clock went back, and how many practices carry a date that cannot be believed. Those stand in no
    /// figure, and their dates in no window.
    pub clock_jumps: Vec<ClockJump>,
    pub misdated: u32,
}

impl Picture {
    /// Works everything out.
    #[must_use]
    pub fn of(practised: &Practised, window: Window) -> Self {
        let trials: Vec<Trial> = practised.trials.iter().filter(|trial| window.has(trial.day)).cloned().collect();
        let discarded = Discard::ALL
            .into_iter()
            .map(|why| {
                let hit = trials.iter().filter(|trial| trial.values.iter().any(|value| value.discard == Some(why)));
                (why, u32::try_from(hit.count()).unwrap_or(u32::MAX))
            })
            .filter(|(_, count)| *count > 0)
            .collect();
        let lives = routines(practised);
        Self {
            client: practised.client.clone(),
            window,
            first_day: practised.practices.iter().filter(|practice| !practice.misdated).map(|practice| practice.day).min(),
            practices: practised.practices.iter().filter(|practice| window.has(practice.day)).cloned().collect(),
            adherence: super::adherence::of_routines(&lives, practised.today, window),
            series: series(practised, window),
            best_of_three: best_of_three(practised).into_iter().filter(|best| window.has(best.day)).collect(),
            trials,
            discarded,
            left_out: left_out(practised, &lives, window),
            safety_stops: practised.safety_stops.iter().filter(|stop| window.has(stop.day)).cloned().collect(),
            notes: practised.notes.iter().filter(|note| window.has(note.day)).cloned().collect(),
            programme: super::programme::of_routines(&lives, window),
            spoken_for: spoken_for(&lives),
            given: given(practised, window),
            proposed: proposed(practised, &lives, window),
            cueing: cueing(practised, window),
            ratings: ratings(practised, window),
            signs: signs(practised, window),
            missed_for: missed_for(practised, window),
            moments: practised.moments.iter().filter(|moment| window.has(moment.day)).cloned().collect(),
            baselines: None,
            goals: goals(practised, window.to),
            clock_jumps: practised.clock_jumps.clone(),
            misdated: u32::try_from(practised.practices.iter().filter(|practice| practice.misdated).count()).unwrap_or(u32::MAX),
        }
    }

    /// With what was measured apart from practice: baseline and re-test of the whole record, set beside the person's own scatter.
    #[must_use]
    pub fn with_baselines(mut self, assessed: &Practised, practised: &Practised) -> Self {
        self.baselines = baselines(assessed, practised, self.window.to);
        self
    }
}

/// Help in the practices of the window; one whose date cannot be believed is in none.
fn cueing(practised: &Practised, window: Window) -> Cueing {
    let shown = |session: i64| {
        practised.practices.iter().any(|practice| practice.session == session && !practice.misdated && window.has(practice.day))
    };
    Cueing::together(practised.cueing.iter().filter(|cueing| shown(cueing.session)))
}

/// What was left out, and what was not reached where a practice ended before its end; by day and practice.
fn left_out(practised: &Practised, lives: &[RoutineLife<'_>], window: Window) -> Vec<LeftOutStep> {
    let mut steps: Vec<LeftOutStep> = practised.left_out.iter().filter(|step| window.has(step.day)).cloned().collect();
    for life in lives {
        let unfinished =
            life.with_versions().filter(|(practice, ..)| window.has(practice.day) && practice.end_reason.as_deref() != Some(COMPLETED));
        for (practice, _, version) in unfinished {
            let Some(version) = version else { continue };
            let end = practice.end_reason.as_deref().unwrap_or(EndReason::Interrupted.as_str());
            for (number, step) in version.practised_steps() {
                let exercise = &step.exercise.id;
                let known = practised.left_out.iter().any(|left| left.session == practice.session && left.exercise == *exercise);
                if !known && !practice.steps.iter().any(|result| result.step == number) {
                    let reason = format!("not reached: {end}").into();
                    steps.push(LeftOutStep { session: practice.session, day: practice.day, exercise: exercise.clone(), reason });
                }
            }
        }
    }
    steps.sort_by_key(|step| (step.day, step.session));
    steps
}
