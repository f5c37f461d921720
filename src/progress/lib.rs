//! Progress arithmetic that does not flatter: what a client's repeated trials can tell, and what they cannot. Pure: no files, no clock, no
//! devices. What goes in is read out of the record by `record::trials`; what comes out is one [`Picture`] of a client, which pages,
//! report, exports and clinic show. Every figure that cannot be given is absent, never 0. Start at `picture.rs`. Formulas and sources:
//! docs/progress.md; means and quantiles: `statistics`.
//!
//! - `trial`, `conditions`, `discard`: one attempt with its values, what it was made under, and why a value is left out of the figures
//! - `series`: one exercise and measure over time, parted where it may not be joined
//! - `median`, `slope`, `likeness`, `scatter`, `change`: the arithmetic; `baseline`, `weeks`, `best`: what is made of it
//! - `clock`: dates that cannot be believed
//! - `adherence`: done over prescribed, per day and week; `prescribed`, `programme`: what was prescribed when, and what changed
//! - `given`: minutes and repetitions by day and group; `cueing`: help that was given and asked for
//! - `assessment`: baselines and re-tests, kept apart from practice
//! - `rated`: the client's own ratings
//! - `goal`, `standing`: goals in the client's own words, and how they stand
//! - `picture`: all of it for one client

mod adherence;
mod assessment;
mod baseline;
mod best;
mod change;
mod clock;
mod conditions;
mod cueing;
mod day_value;
mod discard;
mod given;
mod goal;
mod likeness;
mod median;
mod picture;
mod practised;
mod prescribed;
mod programme;
mod proposed;
mod rated;
mod scatter;
mod series;
mod sign;
mod slope;
mod spoken_for;
mod standing;
mod trial;
mod weeks;
mod window;

#[cfg(test)]
#[path = "tests/honest.rs"]
mod honest;
#[cfg(test)]
#[path = "tests/samples.rs"]
mod samples;

pub use adherence::{Adherence, DayAdherence, PlanBasis, RoutineDay, WeekAdherence, adherence};
pub use assessment::{Assessment, BaselineFigure, Baselines, Compared, Reading, Taken, assessments, baselines, compared};
pub use baseline::{BASELINE_DAYS, BASELINE_DAYS_LEAST, BASELINE_WITHIN_DAYS, Baseline, baseline};
pub use best::{BestOfThree, best_of_three};
pub use change::{Change, ScatterBasis, change};
pub use clock::{Led, misdated};
pub use conditions::{Conditions, Microphone};
pub use cueing::Cueing;
pub use day_value::DayValue;
pub use discard::Discard;
pub use given::{DayGiven, Given, GroupGiven};
pub use goal::{Aim, Direction, Goal, Mark, MarkKind};
pub use likeness::{Z_95, variance_factor};
pub use median::{Interval, median_interval};
pub use model::Measure;
pub use picture::Picture;
pub use practised::{
    ClockJump, DaysMissed, LeftOutStep, Moment, Note, NoteKind, Practice, Practised, Rated, SafetyStop, SignAnswered, StepResult, StepTime,
};
pub use programme::{ProgrammeChange, ProgrammeItem, changes};
pub use proposed::ProposedDose;
pub use rated::Ratings;
pub use scatter::{Anova, Scatter, between_share, two_way, within};
pub use series::{Break, BreakReason, Segment, Series, series};
pub use sign::{MissedFor, Sign};
pub use slope::{Line, SCATTER_DAYS, SLOPE_DAYS_LEAST, SLOPE_SPAN_LEAST, Slope, sd_about_line, slope, theil_sen};
pub use spoken_for::SpokenFor;
pub use standing::{GoalState, NotMet, Standing, TooEarly, goal_measures, goals};
pub use statistics::median;
pub use trial::{Trial, Value};
pub use weeks::{WeekMedian, week_medians};
pub use window::Window;
