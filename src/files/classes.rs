//! Class files, read and checked.

use std::path::Path;

use crate::error::Failure;
use crate::load;
use crate::routine_files::read_limited;
use crate::spoken::spoken_form;
use command_ear::{Choice, Grammar, Lexicon};
use routine::{Called, ClassList, Faults, HeardAs, Hearing, check_class};
use session::{Arg, Line};
use speak::Words;

/// Reads and checks the file of a class.
///
/// # Errors
/// All faults at once, or why the file cannot be read.
pub fn read_class(path: &Path, words: &Words, lexicon: &Lexicon) -> Result<ClassList, Failure> {
    let name = path.display().to_string();
    let bytes = read_limited(path).map_err(|why| {
        let remedy = "Write one as docs/leading.md shows, or lead without --class.";
        Faults::of_file(&name, format!("the class cannot be read: {why}"), remedy)
    })?;
    class_of(&name, &bytes, words, lexicon)
}

/// A class that was read already; `name` stands for it in a fault.
///
/// # Errors
/// All faults at once.
pub fn class_of(name: &str, bytes: &[u8], words: &Words, lexicon: &Lexicon) -> Result<ClassList, Failure> {
    let commands = load::command_words(words);
    let mut list = check_class(name, bytes, Hearing { commands: &commands, ..Hearing::default() })?;
    for participant in &mut list.participants {
        participant.heard = heard_as(&participant.called, words, lexicon);
    }
    Ok(list)
}

/// What is listened for; none where the recogniser does not know the name. The roll call asks for them all the same.
fn heard_as(called: &Called, words: &Words, lexicon: &Lexicon) -> Option<HeardAs> {
    let said = |of_name: &str, of_number: &str| {
        let (key, arg) = match called {
            Called::Name(name) => (of_name, ("name", Arg::Text(spoken_form(name)))),
            Called::Number(number) => (of_number, ("n", Arg::Number(f64::from(*number)))),
        };
        let text = words.text(&Line { key: key.to_owned(), args: vec![arg] }).ok()?;
        Some(text.split('|').map(spoken_form).collect::<Vec<_>>().join("|"))
    };
    let heard =
        HeardAs { here: said("class-name-here", "class-number-here")?, not_here: said("class-name-not-here", "class-number-not-here")? };
    let wordings = heard.here.split('|').chain(heard.not_here.split('|')).map(str::to_owned).collect();
    let choices = vec![Choice { tag: called.to_string(), wordings }];
    lexicon.validate(&Grammar { choices, ..Grammar::default() }).is_ok().then_some(heard)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_that_the_recogniser_knows_is_listened_for_and_another_is_only_called() {
        let words = Words::english().expect("the catalogue");
        let lexicon = Lexicon::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/en")).expect("the lexicon");
        let heard = |called| heard_as(&called, &words, &lexicon);
        let plum = heard(Called::Name("Plum".into())).expect("known");
        assert_eq!((plum.here.as_str(), plum.not_here.as_str()), ("plum is here", "plum is not here|plum isn't here"));
        assert_eq!(heard(Called::Number(27)).expect("known").here, "number twenty seven is here");
        assert_eq!(heard(Called::Name("Qwrtzly".into())), None);
    }
}
