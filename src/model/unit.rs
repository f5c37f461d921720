//! Units of what is measured.

/// The unit of a figure. Names of fields end with it: `_s`, `_hz`, `_db`, `_st`, `_pct`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    Second,
    Hertz,
    Decibel,
    DecibelPerSecond,
    Semitone,
    Percent,
    SyllablePerSecond,
    Count,
}

impl Unit {
    /// The unit at the end of a field's name; none where the name tells none of these.
    #[must_use]
    pub fn of_name(name: &str) -> Option<Self> {
        match name.rsplit('_').next() {
            _ if name.ends_with("_db_per_s") => Some(Self::DecibelPerSecond),
            Some("s") => Some(Self::Second),
            Some("hz") => Some(Self::Hertz),
            Some("db") => Some(Self::Decibel),
            Some("st") => Some(Self::Semitone),
            Some("pct") => Some(Self::Percent),
            _ => None,
        }
    }

    /// Its UCUM code.
    #[must_use]
    pub const fn ucum(self) -> &'static str {
        match self {
            Self::Second => "s",
            Self::Hertz => "Hz",
            Self::Decibel => "dB",
            Self::DecibelPerSecond => "dB/s",
            Self::Semitone => "{semitone}",
            Self::Percent => "%",
            Self::SyllablePerSecond => "{syllable}/s",
            Self::Count => "1",
        }
    }

    /// As it is printed behind a figure; empty for a count.
    #[must_use]
    pub const fn printed(self) -> &'static str {
        match self {
            Self::Semitone => "st",
            Self::SyllablePerSecond => "/s",
            Self::Count => "",
            other => other.ucum(),
        }
    }

    /// As it is written out.
    #[must_use]
    pub const fn written(self) -> &'static str {
        match self {
            Self::Semitone => "semitone",
            Self::SyllablePerSecond => "syllable/s",
            other => other.ucum(),
        }
    }

    /// Decimals kept of it in the journal: what the measurement can tell, and no more. Milliseconds are finer than the 10 ms of a
    /// frame; hundredths of Hz, dB and semitones finer than any ear.
    #[must_use]
    pub const fn kept_decimals(self) -> i32 {
        match self {
            Self::Hertz | Self::Decibel | Self::Semitone | Self::SyllablePerSecond => 2,
            Self::Percent => 1,
            Self::Second | Self::DecibelPerSecond | Self::Count => 3,
        }
    }
}
