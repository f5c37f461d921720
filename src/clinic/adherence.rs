//! Done over prescribed, in the bands of the literature. Pure.

/// Repetitions done of those prescribed; no more are counted of a routine on a day than were prescribed for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Share {
    pub counted: u32,
    pub prescribed: u32,
}

/// Bands of adherence, % of the repetitions prescribed: high 76 and more, moderate 51 to 75, low under 50 (a randomised trial of a
/// swallowing programme in South India, abstract, PubMed 42036465, seen). The source leaves 50 to 51 without a band, and so does this.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Band {
    Low,
    /// 50 %: between low and moderate, unnamed by the source.
    Between,
    Moderate,
    High,
}

impl Band {
    /// In words.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Low => "low",
            Self::Between => "between low and moderate",
            Self::Moderate => "moderate",
            Self::High => "high",
        }
    }
}

impl Share {
    /// In whole percent, rounded; none where nothing was prescribed.
    #[must_use]
    pub fn percent(self) -> Option<u32> {
        let (counted, prescribed) = (u64::from(self.counted), u64::from(self.prescribed));
        (prescribed > 0).then(|| u32::try_from((200 * counted + prescribed) / (2 * prescribed)).unwrap_or(u32::MAX))
    }

    /// The band of the whole percent; none where nothing was prescribed.
    #[must_use]
    pub fn band(self) -> Option<Band> {
        self.percent().map(|percent| match percent {
            76.. => Band::High,
            51..=75 => Band::Moderate,
            50 => Band::Between,
            _ => Band::Low,
        })
    }

    /// Fell to a lower band than `before`.
    #[must_use]
    pub fn fell_from(self, before: Self) -> bool {
        self.band().zip(before.band()).is_some_and(|(now, then)| now < then)
    }
}

impl std::ops::Add for Share {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self { counted: self.counted.saturating_add(other.counted), prescribed: self.prescribed.saturating_add(other.prescribed) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn share(counted: u32, prescribed: u32) -> Share {
        Share { counted, prescribed }
    }

    /// The bands are those of the trial named above: high at 76 and above, moderate 51 to 75, low below 50.
    #[test]
    fn bands_are_those_of_the_source_and_its_gap_is_left_open() {
        let band = |percent| share(percent, 100).band();
        assert_eq!(
            [0, 49, 50, 51, 75, 76, 100].map(band),
            [Band::Low, Band::Low, Band::Between, Band::Moderate, Band::Moderate, Band::High, Band::High].map(Some)
        );
        assert_eq!(share(0, 0).band(), None);
        // 87.7 % and 61.6 % of 10,800 repetitions (computed in the trade notes): high and moderate.
        assert_eq!((share(9472, 10_800).percent(), share(9472, 10_800).band()), (Some(88), Some(Band::High)));
        assert_eq!((share(6653, 10_800).percent(), share(6653, 10_800).band()), (Some(62), Some(Band::Moderate)));
        // Halves are rounded up.
        assert_eq!((share(151, 200).percent(), share(99, 200).percent(), share(1, 3).percent()), (Some(76), Some(50), Some(33)));
    }

    #[test]
    fn it_fell_where_the_band_is_lower() {
        assert!(share(60, 100).fell_from(share(80, 100)));
        assert!(share(50, 100).fell_from(share(51, 100)));
        assert!(!share(51, 100).fell_from(share(75, 100)));
        assert!(!share(0, 100).fell_from(share(0, 0)), "nothing was prescribed before");
        assert!(!share(0, 0).fell_from(share(80, 100)));
    }
}
