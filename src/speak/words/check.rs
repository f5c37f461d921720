//! What is wrong with the words of a language pack, compared with English: missing, unknown or untranslated messages, arguments, commands
//! that collide, and spoken sentences that hold what is listened for.

mod arguments;

use super::{Language, Place, Words, WordsError, live_words};
use arguments::{Arguments, arguments_of};
use session::{Arg, Command, Line, listening};
use std::collections::BTreeMap;
use std::fmt;
use std::sync::Arc;

/// A message of fewer words may be the same in two languages.
const SAME_FROM_WORDS: usize = 4;

/// One fault, with its place and what to do.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct LanguageFault {
    /// File of the pack.
    pub file: String,
    /// Line in it, from 1; 0: the whole file.
    pub line: usize,
    pub what: String,
    pub remedy: String,
}

impl fmt::Display for LanguageFault {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            0 => write!(to, "{}: {}", self.file, self.what)?,
            line => write!(to, "{}, line {line}: {}", self.file, self.what)?,
        }
        write!(to, "\n    {}", self.remedy)
    }
}

/// Every fault of a pack's words, by file and line; none where the pack is whole.
///
/// # Errors
/// The built-in English words, or the pack's own, cannot be read as Fluent at all; the text names file and line.
pub fn faults(language: &Arc<Language>) -> Result<Vec<LanguageFault>, WordsError> {
    let english = Words::english()?;
    let words = Words::of(language.clone())?;
    let pack = Pack { words: &words, english: &english, own: arguments(words.language()), meant: arguments(english.language()) };
    let mut faults = pack.keys();
    faults.extend(pack.arguments());
    // What follows formats messages: first they have to be there.
    if faults.is_empty() {
        faults.extend(pack.untranslated());
        faults.extend(pack.commands());
        faults.extend(pack.sentences());
    }
    faults.sort();
    faults.dedup();
    Ok(faults)
}

fn arguments(language: &Language) -> BTreeMap<String, Arguments> {
    language.files.iter().flat_map(|(_, text)| arguments_of(text)).collect()
}

struct Pack<'a> {
    words: &'a Words,
    english: &'a Words,
    own: BTreeMap<String, Arguments>,
    meant: BTreeMap<String, Arguments>,
}

impl Pack<'_> {
    fn fault(&self, key: &str, what: String, remedy: impl Into<String>) -> LanguageFault {
        let (file, line) = match self.words.place(key) {
            Some(Place { file, line }) => (file.clone(), *line),
            // In which file it should stand.
            None => (self.english.place(key).map_or_else(String::new, |place| place.file.clone()), 0),
        };
        LanguageFault { file, line, what, remedy: remedy.into() }
    }

    /// Missing messages, and those that nobody asks for. A number may have words of its own, a plural or gender as many terms as it needs.
    fn keys(&self) -> Vec<LanguageFault> {
        let missing = self.english.keys().filter(|key| !self.words.has(key)).filter(|key| !is_own_number(key)).map(|key| {
            let english = self.english.place(key).map_or_else(String::new, |place| format!("{}, line {}", place.file, place.line));
            self.fault(key, format!("the message {key} is missing"), format!("Add `{key} = …`; the English one stands in {english}."))
        });
        let optional =
            |key: &str| is_own_number(key) || (key.starts_with("ex-") && (key.ends_with("-passage") || key.ends_with("-phrases")));
        let unknown = self.words.keys().filter(|key| !self.english.has(key) && !optional(key)).map(|key| {
            self.fault(
                key,
                format!("nothing asks for the message {key}"),
                "Delete it, or correct its name; a text that others share is a term, `-name`.",
            )
        });
        missing.chain(unknown).collect()
    }

    fn arguments(&self) -> Vec<LanguageFault> {
        let mut faults = Vec::new();
        for (key, meant) in &self.meant {
            let Some(own) = self.own.get(key) else { continue };
            let also: &[&str] = if key.starts_with("number-hundreds") { &["whole", "hundreds-count"] } else { &[] };
            let named = |names: &[&String]| names.iter().map(|name| format!("${name}")).collect::<Vec<_>>().join(", ");
            let more: Vec<&String> = own.all().filter(|name| !meant.has(name) && !also.contains(&name.as_str())).collect();
            if !more.is_empty() {
                let there_are: Vec<&String> = meant.all().collect();
                let remedy =
                    if there_are.is_empty() { "It is given none.".to_owned() } else { format!("It is given {}.", named(&there_are)) };
                faults.push(self.fault(key, format!("the message {key} asks for {}, which it is not given", named(&more)), remedy));
            }
            let less: Vec<&String> = meant.said().filter(|name| !own.has(name) && also.is_empty()).collect();
            if !less.is_empty() {
                let what = format!("the message {key} leaves out {}", named(&less));
                faults.push(self.fault(key, what, "Put it in where it belongs in this language."));
            }
        }
        faults
    }

    /// Longer messages that are word for word as in English.
    fn untranslated(&self) -> Vec<LanguageFault> {
        if self.words.language().tag.starts_with("en") {
            return Vec::new();
        }
        let same = |key: &&str| {
            let texts = self.texts(self.words, key);
            texts == self.texts(self.english, key) && texts.first().is_some_and(|text| plain_words(text) >= SAME_FROM_WORDS)
        };
        let keys: Vec<&str> = self.words.keys().filter(same).collect();
        keys.into_iter().map(|key| self.fault(key, format!("the message {key} is still English"), "Translate it.")).collect()
    }

    /// A wording stands for one command only, and no command's wording is part of another's: it would be acted on before its end.
    fn commands(&self) -> Vec<LanguageFault> {
        let mut faults = Vec::new();
        let mut all: Vec<(Command, String)> = Vec::new();
        for command in Command::ALL {
            let key = command.wordings_key();
            let wordings = self.words.wordings(command);
            if wordings.is_empty() {
                faults.push(self.fault(&key, format!("nothing can be said for {}", command.name()), "Write its wordings, parted by |."));
            }
            for wording in wordings {
                let plain = |c: char| c == ' ' || c == '\'' || (c.is_alphabetic() && !c.is_uppercase());
                if !wording.chars().all(plain) {
                    let what = format!("the wording \"{wording}\" has signs or capitals that are not spoken");
                    faults.push(self.fault(&key, what, "Write it in small letters, without punctuation, numbers in words."));
                }
                all.push((command, wording));
            }
        }
        for (long, text) in &all {
            for (short, part) in &all {
                if long == short || live_words(text, &[part]).is_none() {
                    continue;
                }
                // What stands for two commands is named once.
                if text == part && long.name() > short.name() {
                    continue;
                }
                let (key, other) = (long.wordings_key(), short.wordings_key());
                let what = match text == part {
                    true => format!("\"{text}\" stands for two commands, {key} and {other}"),
                    false => format!("\"{text}\" holds \"{part}\", which is a wording of {other}"),
                };
                if text == part || !self.is_so_in_english(*long, *short) {
                    faults.push(self.fault(&key, what, "Choose other words for one of the two."));
                }
            }
        }
        faults
    }

    /// English has such a pair, too: the two are never listened for together, or one is told from the other.
    fn is_so_in_english(&self, long: Command, short: Command) -> bool {
        let parts = self.english.wordings(short);
        let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
        self.english.wordings(long).iter().any(|text| live_words(text, &parts).is_some())
    }

    /// Each message can be put together, and none that is spoken holds a word that is heard meanwhile.
    fn sentences(&self) -> Vec<LanguageFault> {
        let live: Vec<String> = listening::ALWAYS.iter().flat_map(|&command| self.words.wordings(command)).collect();
        let live: Vec<&str> = live.iter().map(String::as_str).collect();
        let mut faults = Vec::new();
        for key in self.words.keys() {
            let counts = [self.meant.get(key), self.own.get(key)].into_iter().flatten().any(Arguments::any_number);
            for &sample in if counts { &SAMPLES[..] } else { &SAMPLES[..1] } {
                for text in self.formatted(self.words, key, sample) {
                    match text {
                        Err(why) => faults.push(self.fault(key, why.to_string(), "Compare it with the English message.")),
                        Ok(text) if text.is_empty() => {
                            faults.push(self.fault(key, format!("the message {key} says nothing"), "Write what it says."));
                        }
                        Ok(text) => {
                            let found = live_words(&text, &live).filter(|_| is_spoken(key) && key != "you-can-stop");
                            if let Some(found) = found {
                                let what = format!("the message {key} says \"{found}\", which is listened for while it is said");
                                faults.push(self.fault(key, what, "Say it in other words."));
                            }
                        }
                    }
                }
            }
        }
        faults
    }

    fn texts(&self, words: &Words, key: &str) -> Vec<String> {
        self.formatted(words, key, 2.0).into_iter().map(Result::unwrap_or_default).collect()
    }

    /// Every wording of a message with sample arguments: this number for each number.
    fn formatted(&self, words: &Words, key: &str, number: f64) -> Vec<Result<String, WordsError>> {
        let of = |name: &String, arguments: &Arguments| match () {
            () if arguments.is_digits(name) => Arg::Text("112".into()),
            () if arguments.is_number(name) => Arg::Number(number),
            () => Arg::Text("Xx".into()),
        };
        let mut args = Vec::new();
        for arguments in [self.meant.get(key), self.own.get(key)].into_iter().flatten() {
            for name in arguments.all().filter(|name| !args.iter().any(|(known, _)| known == *name)).collect::<Vec<_>>() {
                args.push((name.clone(), of(name, arguments)));
            }
        }
        let variants = words.variants(key).max(1) as u64;
        (0..variants).map(|seed| words.text_with(key, &args, seed)).collect()
    }
}

/// None, one, two, few and many, a part, and numbers that end like others in some languages.
const SAMPLES: [f64; 8] = [0.0, 1.0, 2.0, 3.0, 5.0, 12.4, 21.0, 101.0];

/// Said by the tool. What is only shown, or the client's to say, is not.
#[must_use]
pub fn is_spoken(key: &str) -> bool {
    let of_pages = key.starts_with("page-") && key != "page-spoken-test";
    let shown = of_pages || key.ends_with("-shown") || key.starts_with("cmd-") || key.starts_with("heading-");
    !shown && !["say-stop", "say-pause"].contains(&key)
}

/// A number's own word, which a language has where it needs it.
fn is_own_number(key: &str) -> bool {
    key.strip_prefix("number-").is_some_and(|number| !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit()))
}

fn plain_words(text: &str) -> usize {
    text.split_whitespace().filter(|word| word.chars().filter(|c| c.is_alphabetic()).count() > 1 && *word != "Xx").count()
}

impl Words {
    /// A message in one of its wordings, its arguments named at run time.
    fn text_with(&self, key: &str, args: &[(String, Arg)], seed: u64) -> Result<String, WordsError> {
        // The names of arguments are static everywhere else; a check runs once and is over.
        let args = args.iter().map(|(name, value)| (&*Box::leak(name.clone().into_boxed_str()), value.clone())).collect();
        self.text_variant(&Line { key: key.to_owned(), args }, seed)
    }
}

#[cfg(test)]
#[path = "check_tests.rs"]
mod tests;
