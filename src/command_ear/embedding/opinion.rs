//! What the second ear's probabilities say of the phrases listened for.

use crate::decide::PhraseBook;

/// Which of its phrases belong to which choice of a grammar.
#[derive(Debug, Clone, Default)]
pub(crate) struct Classes {
    /// For each phrase of the ear, in its order: its text, and its choice where it is listened for.
    of: Vec<(String, Option<usize>)>,
}

impl Classes {
    pub fn new(phrases: &[String], book: &PhraseBook) -> Self {
        Self { of: phrases.iter().map(|phrase| (phrase.clone(), book.choice_of(phrase))).collect() }
    }

    /// One of the phrases listened for is known to the ear.
    pub fn any(&self) -> bool {
        self.of.iter().any(|(_, choice)| choice.is_some())
    }

    /// The phrase listened for that the probabilities speak for most: the likeliest wording of the likeliest choice.
    pub fn likeliest(&self, probabilities: &[f64]) -> Option<&str> {
        let listened_for = || self.of.iter().zip(probabilities).filter_map(|((text, choice), p)| Some((text, (*choice)?, *p)));
        let best = listened_for()
            .map(|(_, choice, _)| choice)
            .max_by(|a, b| self.of_choice(*a, probabilities).total_cmp(&self.of_choice(*b, probabilities)))?;
        listened_for().filter(|(_, choice, _)| *choice == best).max_by(|a, b| a.2.total_cmp(&b.2)).map(|(text, ..)| text.as_str())
    }

    /// What they say of a phrase; none where the ear does not know it.
    pub fn opinion(&self, text: &str, probabilities: &[f64]) -> Option<Opinion> {
        let own = self.of.iter().find(|(phrase, _)| phrase == text).and_then(|(_, choice)| *choice)?;
        let mut choices: Vec<usize> = self.of.iter().filter_map(|(_, choice)| *choice).collect();
        choices.sort_unstable();
        choices.dedup();
        let this = self.of_choice(own, probabilities);
        let others: Vec<f64> =
            choices.iter().filter(|&&choice| choice != own).map(|&choice| self.of_choice(choice, probabilities)).collect();
        let other = (1.0 - this - others.iter().sum::<f64>()).clamp(0.0, 1.0);
        Some(Opinion { this, rival: others.into_iter().fold(0.0, f64::max), other })
    }

    fn of_choice(&self, choice: usize, probabilities: &[f64]) -> f64 {
        self.of.iter().zip(probabilities).filter(|((_, c), _)| *c == Some(choice)).map(|(_, p)| p).sum()
    }
}

/// The second ear's opinion of a phrase, probabilities 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Opinion {
    /// The phrase was said, or another wording of its choice.
    pub this: f64,
    /// The likeliest other choice was.
    pub rival: f64,
    /// Nothing that is listened for was.
    pub other: f64,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wordings_of_a_choice_speak_for_each_other_and_what_is_not_listened_for_against_it() {
        let book = PhraseBook::new(&[vec!["ready".into(), "i'm ready".into()], vec!["stop".into()], vec!["bank".into()]]);
        let phrases = ["ready", "i'm ready", "stop", "done"].map(str::to_owned);
        let classes = Classes::new(&phrases, &book);
        let heard = [0.3, 0.35, 0.1, 0.05, 0.2];
        assert_eq!(classes.likeliest(&heard), Some("i'm ready"));
        let opinion = classes.opinion("ready", &heard).unwrap();
        assert!(
            (opinion.this - 0.65).abs() < 1e-9 && (opinion.rival - 0.1).abs() < 1e-9 && (opinion.other - 0.25).abs() < 1e-9,
            "{opinion:?}"
        );
        assert_eq!(classes.opinion("bank", &heard), None, "a word that it never learnt");
        assert!(classes.any() && !Classes::new(&phrases, &PhraseBook::new(&[vec!["bank".into()]])).any());
    }
}
