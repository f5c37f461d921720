//! What can be typed after `tidecount hear --labels`.

use std::path::PathBuf;

/// What is asked for beside the phrases.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct EvaluationArgs {
    /// Count hits and false actions over the recordings of this list: lines of path, tab, what is said (or nothing), tab, group
    #[arg(long, value_name = "LIST.tsv", requires = "commands", conflicts_with_all = ["files", "frames", "mic"])]
    pub labels: Option<PathBuf>,
    #[command(flatten)]
    pub condition: ConditionArgs,
    /// Take only the odd-numbered or the even-numbered recordings of each group and label
    #[arg(long, value_name = "odd|even|all", default_value = "all", requires = "labels", hide_possible_values = true)]
    pub half: Half,
    /// Take only every Nth recording of each group and label: a quick sample
    #[arg(long, value_name = "N", default_value_t = 1, requires = "labels")]
    pub every: usize,
    /// Take the recordings as they are, with no quiet added
    ///
    /// Without this, a second of quiet goes before each recording and 1.5 s after it, as loud as its own quietest tenth: a command
    /// stands between pauses, and a recording cut to the word has none.
    #[arg(long, requires = "labels")]
    pub bare: bool,
    /// Also print how each recording came out, one JSON object a line, before the result
    #[arg(long, requires = "labels")]
    pub details: bool,
}

/// The conditions as they were asked for; none leaves the recordings as they are.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct ConditionArgs {
    /// Mix noise in at this ratio of speech to noise, dB; needs --noise
    #[arg(long, value_name = "DB", requires = "noise", requires = "labels", allow_negative_numbers = true)]
    pub snr: Option<f64>,
    /// Take the noise from a recording, or from the recordings of a folder in turn
    #[arg(long, value_name = "FILE|DIR", requires = "snr")]
    pub noise: Option<PathBuf>,
    /// Set each recording in a room: an impulse response, or those of a folder in turn
    #[arg(long, value_name = "FILE|DIR", requires = "labels")]
    pub room: Option<PathBuf>,
    /// Bring the speech of each recording to this level, dB re full scale: -40 is soft
    #[arg(long, value_name = "DB", requires = "labels", allow_negative_numbers = true)]
    pub level: Option<f64>,
    /// Play the speech at this speed, at the same pitch: 0.75 is slow
    #[arg(long, value_name = "FACTOR", requires = "labels")]
    pub slow: Option<f64>,
}

/// Thresholds are chosen on odd-numbered recordings, figures come from even-numbered ones. Numbers count from 1 within each group and label,
/// in the order of the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, clap::ValueEnum)]
pub enum Half {
    Odd,
    Even,
    #[default]
    All,
}
