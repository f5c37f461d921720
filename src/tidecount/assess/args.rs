//! The arguments of `tidecount assess`.

use crate::practise::Leading;
use clap::ValueEnum;

/// Lead a voice baseline or a re-test, hands-free, and show what it gave
///
/// Three longest vowels, a comfortable vowel, glides up and down, a passage read aloud, one minute of talk, and syllables, in this
/// order each time. It is kept apart from practice. Put the microphone in the same place each time, 30 cm from the mouth where that
/// can be done, in a quiet room, and have the passage at hand (`tidecount exercises reading-passage`).
#[derive(Debug, Clone, clap::Args)]
pub struct AssessArgs {
    /// Lead nothing; show the baselines there are, newest first
    #[arg(long)]
    pub show: bool,
    /// Print them as one JSON object a line
    #[arg(long, requires = "show")]
    pub json: bool,
    /// Set published values for people of this age beside the figures; it is not kept
    #[arg(long, value_name = "YEARS", value_parser = clap::value_parser!(u32).range(1..=120))]
    pub age: Option<u32>,
    /// Set published values for women or men beside the figures; it is not kept
    #[arg(long, value_name = "SEX")]
    pub sex: Option<SexArg>,
    #[command(flatten)]
    pub leading: Leading,
}

/// Whose published values.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum SexArg {
    Woman,
    Man,
}

impl From<SexArg> for routine::Sex {
    fn from(sex: SexArg) -> Self {
        match sex {
            SexArg::Woman => Self::Woman,
            SexArg::Man => Self::Man,
        }
    }
}
