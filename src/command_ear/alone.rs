//! How sure the second ear must be where it hears alone, in a language without a recognition model. Nothing else tells the phrases apart
//! there: the level only says that a phrase stands alone and stands out.
//!
//! All limits are here, and were set by hand.

use super::{ACT_CONFIDENCE, ASK_CONFIDENCE};

/// Where it hears alone a phrase of several words may take so long, s: slow speakers need 2.3 s for "mir wird schwarz vor augen".
pub(crate) const LONGEST_PHRASE_S: f64 = 2.4;

/// Probabilities that the second ear must give a phrase, 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Limits {
    /// From here on it may be acted upon.
    act: f64,
    /// From here on it is asked about: "was that …?".
    ask: f64,
}

impl Limits {
    /// While nothing of us is heard.
    const QUIET: Self = Self { act: 0.85, ask: 0.6 };
    /// What a person in trouble says costs a question or a pause, where a missed one may cost a life.
    const URGENT: Self = Self { act: 0.85, ask: 0.5 };
    /// While our own voice may be in the sound: what the canceller leaves of it is speech, too. Nothing is asked about there.
    const OVER_OWN_VOICE: Self = Self { act: 0.95, ask: 0.95 };

    pub fn of(over_own_voice: bool, urgent: bool) -> Self {
        match (over_own_voice, urgent) {
            (true, _) => Self::OVER_OWN_VOICE,
            (false, true) => Self::URGENT,
            (false, false) => Self::QUIET,
        }
    }

    /// How sure a phrase of this probability is, on the scale that the session acts on ([`ACT_CONFIDENCE`], [`ASK_CONFIDENCE`]).
    pub fn sureness(self, this: f64) -> f64 {
        let Self { act, ask } = self;
        if this >= act {
            this.max(ACT_CONFIDENCE)
        } else if this >= ask {
            ASK_CONFIDENCE + (ACT_CONFIDENCE - ASK_CONFIDENCE) * (this - ask) / (act - ask)
        } else if self == Self::OVER_OWN_VOICE {
            // Our own line may well sound like the same phrase twice.
            0.0
        } else {
            // Less sure it is not asked about either, but may be said twice.
            this / 2.0
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_probability_becomes_acting_asking_or_nothing() {
        let sure = |over, urgent, this| Limits::of(over, urgent).sureness(this);
        assert!(sure(false, false, 0.85) >= ACT_CONFIDENCE && sure(false, false, 0.99) > sure(false, false, 0.9));
        for this in [0.6, 0.7, 0.8499] {
            assert!((ASK_CONFIDENCE..ACT_CONFIDENCE).contains(&sure(false, false, this)), "{this}");
        }
        assert!(sure(false, false, 0.59) < ASK_CONFIDENCE);
        assert!((ASK_CONFIDENCE..ACT_CONFIDENCE).contains(&sure(false, true, 0.5)), "trouble is asked about sooner");
        assert!(sure(false, true, 0.49) < ASK_CONFIDENCE);
        assert!(sure(true, true, 0.95) >= ACT_CONFIDENCE && sure(true, true, 0.94) == 0.0, "over our own voice sure or nothing");
    }
}
