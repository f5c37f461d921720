//! Which of the state's commands count although our own voice is heard with them.
//!
//! "Stop" and "pause" have a path of their own. What is said here is heard by the main path on the cancelled sound, and most of it
//! can wait until we are silent; only what cannot is let through.

use audio::EchoState;
use command_ear::{ACT_CONFIDENCE, HeardPhrase};
use session::Command;
use session::listening::SAFETY;
use speak::words::{asks_for, place, telling_words};

/// A canceller that takes away so much knows the room, dB.
const WORKS_DB: f64 = 10.0;
/// A phrase that our own sentence says just then must be so much over what is left of it, dB; …
const SAID_EXCEEDS_DB: f64 = 10.0;
/// … and any other so much. Chosen on rehearsed scenes, see `benches/own_voice.rs`: at 4 dB, which is enough for "stop", "it works the
/// muscles" passed for "it hurts".
const EXCEEDS_DB: f64 = 6.0;

/// We may say a word so much sooner or later than the length of the line makes likely: s, and a share of the line.
const EARLY_S: f64 = 0.2;
const LATE_S: f64 = 0.3;
const UNEVEN: f64 = 0.08;

/// A line of ours of which the microphone had some.
#[derive(Debug, Clone, Copy)]
pub struct OwnLine<'a> {
    pub text: &'a str,
    /// When it began, s on the sample clock.
    pub from_s: f64,
    /// How long it takes, as far as that is known by now.
    pub lasts_s: Option<f64>,
}

impl OwnLine<'_> {
    /// A word of what was heard then can be ours.
    fn says_a_word_of(&self, phrase: &str, start_s: f64, end_s: f64) -> bool {
        telling_words(phrase).iter().any(|word| self.says(word, start_s, end_s))
    }

    /// What was heard from `start_s` to `end_s` can be our own saying of this phrase.
    fn says(&self, phrase: &str, start_s: f64, end_s: f64) -> bool {
        let Some((first, last)) = place(self.text, phrase) else { return false };
        self.lasts_s.is_none_or(|lasts_s| {
            let uneven_s = UNEVEN * lasts_s;
            let begins_s = self.from_s + first * lasts_s - uneven_s - EARLY_S;
            let ends_s = self.from_s + last * lasts_s + uneven_s + LATE_S;
            start_s < ends_s && end_s > begins_s
        })
    }
}

/// What is known of a phrase of the main path that began while our own voice was heard.
#[derive(Debug, Clone, Copy)]
pub struct OverOwnVoice<'a> {
    /// All that we said then.
    pub said: &'a [OwnLine<'a>],
    pub echo: EchoState,
    /// How much louder than what the canceller leaves of us, dB; ∞ where nothing of us is expected.
    pub over_residual_db: f64,
}

impl OverOwnVoice<'_> {
    /// The phrase counts. Safety always may, but for the very words that we say just then; anything else only where the sentence under way
    /// asks for it, by one of its `wordings`.
    #[must_use]
    pub fn counts(&self, command: Command, wordings: &[String], heard: &HeardPhrase) -> bool {
        let asked_for = self.said.iter().any(|line| wordings.iter().any(|wording| asks_for(line.text, wording)));
        if !(SAFETY.contains(&command) || asked_for) || heard.confidence < ACT_CONFIDENCE {
            return false;
        }
        let said_whole = self.said.iter().any(|line| line.says(&heard.text, heard.start_s, heard.end_s));
        if said_whole && SAFETY.contains(&command) {
            return false;
        }
        let shared = self.said.iter().any(|line| line.says_a_word_of(&heard.text, heard.start_s, heard.end_s));
        // Our own sentence may pass for a phrase that has its words, and always may until the canceller knows the room.
        let exceeds_db = if said_whole { SAID_EXCEEDS_DB } else { EXCEEDS_DB };
        self.over_residual_db >= exceeds_db && (self.works() || !(said_whole || shared))
    }

    fn works(&self) -> bool {
        self.echo.aligned && self.echo.reduction_db.is_some_and(|db| db >= WORKS_DB)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use command_ear::Path;

    const WORKS: EchoState = EchoState { left_db: -60.0, raw_db: -30.0, aligned: true, reduction_db: Some(25.0), drowns: false };

    fn heard() -> HeardPhrase {
        HeardPhrase { tag: String::new(), text: String::new(), start_s: 1.0, end_s: 1.5, decided_s: 1.8, confidence: 1.0, path: Path::Main }
    }

    fn counts(command: Command, text: &str, confidence: f64, over_own_voice: OverOwnVoice<'_>) -> bool {
        let heard = HeardPhrase { text: text.into(), confidence, ..heard() };
        over_own_voice.counts(command, &[text.to_owned()], &heard)
    }

    /// A line under way, of which nothing more is known.
    fn line(text: &str) -> OwnLine<'_> {
        OwnLine { text, from_s: 0.0, lasts_s: None }
    }

    #[test]
    fn safety_counts_over_any_sentence_and_the_rest_only_where_it_is_asked_for() {
        let over = OverOwnVoice { said: &[line("Lift your chin and breathe out.")], echo: EchoState::default(), over_residual_db: 12.0 };
        assert!(counts(Command::Dizzy, "i'm dizzy", 0.9, over));
        assert!(!counts(Command::Dizzy, "i'm dizzy", 0.6, over), "too unsure");
        assert!(!counts(Command::Ready, "ready", 0.95, over) && !counts(Command::Skip, "skip", 0.95, over));
        let asks = OverOwnVoice { said: &[line("Sit upright, then say ready.")], echo: WORKS, over_residual_db: 12.0 };
        assert!(counts(Command::Ready, "ready", 0.95, asks) && !counts(Command::Skip, "skip", 0.95, asks));
    }

    #[test]
    fn a_line_that_begins_with_a_wording_asks_for_nothing() {
        let next = HeardPhrase { text: "next".into(), confidence: 0.99, ..heard() };
        let wordings = ["skip", "next"].map(str::to_owned);
        let over = |text| OverOwnVoice { said: &[line(text)], echo: WORKS, over_residual_db: 20.0 }.counts(Command::Skip, &wordings, &next);
        assert!(!over("Next: Nasal breathing."));
        assert!(over("Say go on, skip, or finish.") && over("Tell me about it, or say next."));
    }

    #[test]
    fn a_word_of_our_own_sentence_needs_a_canceller_that_knows_the_room() {
        let said = &[line("Stop if you feel dizzy.")];
        let over = |echo, over_residual_db| OverOwnVoice { said, echo, over_residual_db };
        assert!(counts(Command::Dizzy, "i'm dizzy", 0.9, over(WORKS, 12.0)));
        assert!(!counts(Command::Dizzy, "i'm dizzy", 0.9, over(WORKS, 5.0)));
        let said = &[line("Sit upright, then say ready.")];
        let ready = |over_residual_db| OverOwnVoice { said, echo: WORKS, over_residual_db };
        assert!(counts(Command::Ready, "ready", 0.9, ready(12.0)) && !counts(Command::Ready, "ready", 0.9, ready(8.0)), "we say it, too");
        let said = &[line("Stop if you feel dizzy.")];
        let over = |echo, over_residual_db| OverOwnVoice { said, echo, over_residual_db };
        assert!(!counts(Command::Dizzy, "i'm dizzy", 0.9, over(EchoState::default(), 12.0)));
        assert!(!counts(Command::Dizzy, "i'm dizzy", 0.9, over(EchoState { reduction_db: Some(5.0), ..WORKS }, 12.0)));
        assert!(counts(Command::Hurts, "it hurts", 0.9, over(EchoState::default(), 6.0)), "no word of it is ours");
        let hurts = OverOwnVoice { said: &[line("Stop if it hurts.")], echo: WORKS, over_residual_db: 20.0 };
        assert!(!counts(Command::Hurts, "it hurts", 0.99, hurts) && counts(Command::Hurts, "that hurts", 0.99, hurts), "our own words");
    }

    #[test]
    fn our_own_word_counts_against_a_phrase_only_about_when_we_say_it() {
        // Heard from 1.0 to 1.5 s; of a line of ten seconds our "ready" is at its end.
        let asks = |from_s| OwnLine {
            text: "Sit upright in a chair, with both of your feet flat on the floor, and then say ready.",
            from_s,
            lasts_s: Some(10.0),
        };
        let over =
            |line, over_residual_db| counts(Command::Ready, "ready", 0.9, OverOwnVoice { said: &[line], echo: WORKS, over_residual_db });
        assert!(over(asks(0.5), 6.0), "long before we do");
        assert!(!over(asks(-8.5), 6.0) && over(asks(-8.5), 10.0), "about when we do");
        assert!(over(asks(-12.5), 6.0), "long after");
        let unknown_room =
            |line| counts(Command::Ready, "ready", 0.9, OverOwnVoice { said: &[line], echo: EchoState::default(), over_residual_db: 20.0 });
        assert!(unknown_room(asks(0.5)) && !unknown_room(asks(-8.5)));
        let hurts =
            |from_s| OwnLine { text: "It hurts? Then stop at once, and tell your own clinician about it.", from_s, lasts_s: Some(6.0) };
        let over = |line| counts(Command::Hurts, "it hurts", 0.9, OverOwnVoice { said: &[line], echo: WORKS, over_residual_db: 8.0 });
        assert!(!over(hurts(0.8)) && over(hurts(-3.0)));
    }
}
