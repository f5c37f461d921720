//! What can be typed after `tidecount goal`.

use jiff::civil::Date;

use crate::options::GlobalDataFolder;

/// Keep a client's goals in their own words, and say which are met
#[derive(Debug, clap::Args)]
pub struct GoalArgs {
    #[command(subcommand)]
    pub order: GoalOrder,
    #[command(flatten)]
    pub data: GlobalDataFolder,
    /// Name the client; needed where several people have a record here
    #[arg(long, value_name = "NAME", global = true)]
    pub client: Option<String>,
}

/// What to do with goals.
#[derive(Debug, clap::Subcommand)]
pub enum GoalOrder {
    /// Add a goal: with a measure the figures judge it, without one people mark it
    Add(Box<AddArgs>),
    /// List the goals and how each stands today
    List,
    /// Mark a goal without a measure as met or not met
    Mark {
        /// Number of the goal, as `tidecount goal list` shows it
        goal: i64,
        /// How it went
        #[arg(value_enum)]
        how: How,
        /// Name who says so
        #[arg(long, value_name = "WHO")]
        by: String,
    },
    /// Remove a goal from lists and reports; the record keeps that it was set and removed
    Remove {
        /// Number of the goal, as `tidecount goal list` shows it
        goal: i64,
        /// Name who says so
        #[arg(long, value_name = "WHO")]
        by: String,
    },
}

/// A goal to be added.
#[derive(Debug, Clone, clap::Args)]
pub struct AddArgs {
    /// The goal in the client's own words, up to 200 characters
    pub words: String,
    /// Set the day by which it should be reached
    #[arg(long, value_name = "YYYY-MM-DD")]
    pub due: Date,
    /// Name who set the goal with the client
    #[arg(long, value_name = "WHO")]
    pub by: String,
    /// Take a client's name that the record does not have yet
    #[arg(long)]
    pub new_client: bool,
    /// Take the trials of this exercise, an id from `tidecount exercises`
    #[arg(long, value_name = "ID", requires = "measure")]
    pub exercise: Option<String>,
    /// Take this measure of them, for instance hold-s, phrase-level-db or syllable-rate-hz
    #[arg(long, value_name = "ID", requires = "exercise", requires = "target")]
    pub measure: Option<String>,
    #[command(flatten)]
    pub target: Option<Target>,
}

/// The target, and which side of it is the good one.
#[derive(Debug, Clone, Copy, clap::Args)]
#[group(id = "target", required = false, multiple = false, requires = "measure")]
pub struct Target {
    /// Set the least that the typical value should be, in the measure's unit; levels in dB SPL
    #[arg(long, value_name = "N", allow_negative_numbers = true)]
    pub at_least: Option<f64>,
    /// Set the most that the typical value should be
    #[arg(long, value_name = "N", allow_negative_numbers = true)]
    pub at_most: Option<f64>,
}

/// What can be said of a goal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, clap::ValueEnum)]
pub enum How {
    Met,
    NotMet,
}
