//! What a client tells of the last week: warning signs about swallowing, and why planned days were missed.

use crate::words::words;

words! {
    /// What a clinician wants to know of soon where somebody does swallow work. Swallowing services name these four among the signs of a
    /// swallowing problem (docs/routines.md); which of them to ask after is common practice, no source.
    SwallowSign {
        Cough = "cough at meals",
        WetVoice = "wet voice",
        Weight = "weight loss",
        Chest = "chest infection",
    }
}

impl SwallowSign {
    /// Every one, in the order in which they are asked.
    pub const ALL: [Self; 4] = [Self::Cough, Self::WetVoice, Self::Weight, Self::Chest];

    /// The message that asks for it, `ask-sign-wet-voice`.
    #[must_use]
    pub fn ask_key(&self) -> String {
        format!("ask-sign-{}", self.replace(' ', "-"))
    }
}

words! {
    /// What was answered to whether there was a warning sign.
    SignAnswer {
        Yes = "yes",
        No = "no",
        NotSure = "not sure",
        PassedOver = "passed over",
    }
}

impl SignAnswer {
    /// A clinician is to look at it: "not sure" is no "no".
    #[must_use]
    pub fn is_warning(&self) -> bool {
        matches!(self, Self::Yes | Self::NotSure)
    }
}

words! {
    /// Why a planned day went by without practice, in the choices that are offered aloud.
    MissedReason {
        Unwell = "not well",
        Tired = "too tired",
        NoTime = "no time",
        Forgot = "forgot",
        SomethingElse = "something else",
    }
}

impl MissedReason {
    /// Every one, in the order in which they are offered.
    pub const ALL: [Self; 5] = [Self::Unwell, Self::Tired, Self::NoTime, Self::Forgot, Self::SomethingElse];

    /// The message with its wordings, `answer-too-tired`.
    #[must_use]
    pub fn wordings_key(&self) -> String {
        format!("answer-{}", self.replace(' ', "-"))
    }
}
