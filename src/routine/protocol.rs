//! Protocols of baselines and re-tests: routines that come with the program, so that a re-test asks the same as the first.

/// One of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Protocol {
    /// Kept with what it measured.
    pub name: &'static str,
    /// A routine file.
    pub text: &'static str,
}

/// The voice baseline.
pub const VOICE: Protocol = Protocol { name: "voice-1", text: include_str!("protocols/voice.toml") };

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Hearing, check_text};

    #[test]
    fn it_is_a_sound_routine_and_needs_no_agreement() {
        let prescription = check_text(VOICE.name, VOICE.text, Hearing::default()).expect("sound");
        assert!(prescription.routine.steps.iter().all(|step| !step.exercise.needs_agreement));
        assert_eq!(prescription.routine.feedback_every, 0, "nothing is said of a result in between");
    }
}
