//! Why something ended, was left out or is as it is: the words of the journal. Where two places have written the same thing in two
//! spellings, each goes on writing its own and reads both.

use crate::words::words;

words! {
    /// Why a step was left out or stopped.
    StepReason {
        /// Nobody said that the clinician had agreed.
        NoSpokenAgreement = "no spoken agreement",
        /// Loud holds had reached the limit of one practice.
        LoudLimit = "loud-time limit",
        /// As much of the exercise was done as one practice may hold.
        PracticeLimit = "practice limit",
        /// As much of the exercise was done as one day may hold.
        DayLimit = "day limit",
        /// The practice had taken as long as one may.
        TimeLimit = "time limit",
        /// The client said *skip*.
        Skipped = "skipped",
        /// The client said *go back*.
        WentBack = "went back",
        /// The client said *finish*.
        FinishedEarly = "finished early",
        /// Nobody was there any more.
        NoAnswer = "no answer" | "no-answer",
        /// Ctrl-C, a closing window.
        Interrupted = "interrupted",
        /// The client said that they were dizzy.
        Dizzy = "dizzy",
        /// The client said that it hurt.
        Pain = "pain",
        /// The client had chest pain.
        ChestPain = "chest pain",
        /// The client couldn't breathe.
        Breathless = "can't breathe",
        /// Something went down the wrong way.
        Choking = "choking",
        /// The client felt sick.
        Sick = "feels sick",
    }
}

words! {
    /// Why a practice ended.
    EndReason {
        /// It was led to its end.
        Completed = "completed",
        /// The client said *finish*.
        Finished = "finished",
        /// Nobody was there any more.
        NoAnswer = "no-answer" | "no answer",
        /// Ctrl-C, a closing window.
        Interrupted = "interrupted",
        /// It had taken as long as a practice may.
        TimeLimit = "time limit",
        /// The client had practised as often as one may in a day.
        DayLimit = "day limit",
        /// Every step asked for an agreement, and there was none.
        NoAgreement = "no-agreement" | "no agreement",
        /// The client had chest pain or couldn't breathe.
        Unwell = "unwell",
    }
}

words! {
    /// What was answered to whether a clinician has said that an exercise is right.
    AgreementAnswer {
        Yes = "yes",
        No = "no",
        NotSure = "not sure",
        NoAnswer = "no answer",
    }
}

words! {
    /// What the client reported to be wrong.
    Symptom {
        Dizzy = "dizzy",
        Pain = "pain",
        Help = "help",
        ChestPain = "chest pain",
        Breathless = "can't breathe",
        Choking = "choking",
        Sick = "feels sick",
    }
}

impl From<Symptom> for StepReason {
    fn from(symptom: Symptom) -> Self {
        Self::from(symptom.as_str())
    }
}

words! {
    /// What ended a self-paced repetition.
    EndedBy {
        /// The client's word.
        Done = "done",
        /// The time for the next one had come.
        NextCue = "next cue" | "next-cue",
    }
}

words! {
    /// What a note about the microphone's scale tells.
    MicrophoneNote {
        /// Which calibration holds.
        Calibration = "calibration",
        /// That one no longer holds, and why.
        CalibrationVoid = "calibration-void",
    }
}

words! {
    /// Frequency weighting of a level (IEC 61672-1).
    FrequencyWeighting {
        A = "A",
        C = "C",
        Z = "Z",
    }
}

words! {
    /// Time weighting of a level, or what stands for it.
    TimeWeighting {
        /// The equivalent level over the voiced frames, without Fast or Slow.
        EnergyMean = "energy-mean",
    }
}

#[cfg(test)]
#[path = "tests/reason.rs"]
mod tests;
