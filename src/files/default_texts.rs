//! What is read and said after the tool where a routine brings no words of its own, in the language that it is led in.

use routine::{Prescription, Work, find};
use session::Line;
use speak::Words;

/// Puts the language's own phrases and passage where those of the catalogue, which are English, stand.
pub(crate) fn put_into(prescription: &mut Prescription, words: &Words) {
    for step in &mut prescription.routine.steps {
        let Some(entry) = find(&step.exercise.id) else { continue };
        let key = |part: &str| Some(format!("ex-{}-{part}", entry.id)).filter(|key| words.has(key));
        match &mut step.work {
            Work::ReadAloud { phrases, .. } if *phrases == entry.phrases() => {
                let own = key("phrases").map(|key| words.wordings_of(&key)).filter(|own| own.len() == phrases.len());
                if let Some(own) = own {
                    *phrases = own;
                }
            }
            Work::Talk { passage: Some(passage), .. } if Some(passage.as_str()) == entry.passage() => {
                if let Some(own) = key("passage").and_then(|key| words.text(&Line { key, args: Vec::new() }).ok()) {
                    *passage = own;
                }
            }
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use routine::{Hearing, check_text};
    use speak::Language;

    const ROUTINE: &str = "title = \"x\"\n[[step]]\nexercise = \"days-on-a-breath\"\n[[step]]\nexercise = \"reading-passage\"\n[[step]]\n\
                           exercise = \"functional-phrases\"\nphrases = [\"Own words.\"]\n";

    fn led_in(language: &str) -> Vec<String> {
        let mut prescription = check_text("x", ROUTINE, Hearing::default()).unwrap_or_else(|faults| panic!("{faults}"));
        put_into(&mut prescription, &Words::of(Language::find(language).unwrap()).unwrap());
        let first = |work: &Work| match work {
            Work::ReadAloud { phrases, .. } => phrases[0].clone(),
            Work::Talk { passage, .. } => passage.clone().unwrap_or_default().chars().take(14).collect(),
            _ => String::new(),
        };
        prescription.routine.steps.iter().map(|step| first(&step.work)).collect()
    }

    #[test]
    fn what_a_routine_leaves_to_the_catalogue_comes_in_its_language_and_its_own_words_stay() {
        assert_eq!(led_in("en"), ["Monday, Tuesday, Wednesday", "A dispute aros", "Own words."]);
        assert_eq!(led_in("de"), ["Montag, Dienstag, Mittwoch", "Der Nordwind u", "Own words."]);
        assert_eq!(led_in("es"), ["lunes, martes, miércoles", "El viento del ", "Own words."]);
    }
}
