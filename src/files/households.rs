//! Household files, read and checked with the routines that they name.

use std::io::Read;
use std::path::{Path, PathBuf};

use crate::error::Failure;
use crate::load;
use crate::spoken::spoken_form;
use attend::household::{Articles, Checks, check_bytes};
use attend::{Home, Household, Said};
use command_ear::{Lexicon, UNKNOWN};
use routine::{Faults, Hearing, MAX_FILE_BYTES};
use session::{Arg, Command, Line};
use speak::Words;

/// Reads and checks a household file and the routines that it names.
///
/// # Errors
/// All faults at once, or why the file cannot be read.
pub fn read_household(path: &Path, words: &Words, lexicon: &Lexicon) -> Result<Household, Failure> {
    let name = path.display().to_string();
    let mut bytes = Vec::new();
    let limit = u64::try_from(MAX_FILE_BYTES).unwrap_or(u64::MAX).saturating_add(1);
    std::fs::File::open(path).and_then(|file| file.take(limit).read_to_end(&mut bytes)).map_err(|why| {
        Faults::of_file(
            &name,
            format!("the household cannot be read: {why}"),
            "Write one as docs/attending.md shows, or name another: tidecount attend HOUSEHOLD.toml.",
        )
    })?;
    check_household(&name, path, &bytes, words, lexicon)
}

/// The household file that is looked for where none is named.
#[must_use]
pub fn usual(data: &Path) -> PathBuf {
    data.join("household.toml")
}

/// A household file, as far as it can be read: its faults are told where it is looked after.
fn at_home(household: &Path) -> Option<toml::Table> {
    std::fs::read_to_string(household).ok()?.parse().ok()
}

/// The emergency number of this household; none where its file is not there or names none.
#[must_use]
pub fn emergency_number(household: &Path) -> Option<String> {
    let number = at_home(household)?.get("emergency_number")?.as_str()?.trim().to_owned();
    attend::household::is_number(&number).then_some(number)
}

/// The devices that this household has arranged; nothing else of what is arranged there.
#[must_use]
pub fn devices(household: &Path) -> Home {
    let household = at_home(household);
    let home = household.as_ref().and_then(|household| household.get("home"));
    let named = |device: &str| home?.get(device)?.as_str().map(|name| name.trim().to_owned()).filter(|name| !name.is_empty());
    Home { microphone: named("microphone"), loudspeaker: named("loudspeaker"), ..Home::default() }
}

/// Whether this person of the household is led by the page alone.
#[must_use]
pub fn by_page(household: &Path, client: &str) -> bool {
    let Some(household) = at_home(household) else { return false };
    let persons = household.get("person").and_then(toml::Value::as_array).into_iter().flatten();
    let of_client = |person: &&toml::Value| person.get("name").and_then(toml::Value::as_str).is_some_and(|name| name.trim() == client);
    persons.clone().find(of_client).and_then(|person| person.get("by_page")?.as_bool()).unwrap_or(false)
}

/// `name` stands for the file in faults; routines are looked for beside `path`.
pub fn check_household(name: &str, path: &Path, bytes: &[u8], words: &Words, lexicon: &Lexicon) -> Result<Household, Failure> {
    let folder = path.parent().unwrap_or_else(|| Path::new("."));
    let commands = load::command_words(words);
    let knows = |word: &str| lexicon.knows(&spoken_form(word)).unwrap_or(true);
    let load_routine = |file: &str| match load::routine(&folder.join(file), words, lexicon) {
        Ok((prescription, _)) => Ok(prescription),
        Err(Failure::Routine(faults)) => Err(faults),
        Err(other) => Err(Faults::of_file(file, other.to_string(), "Check the file.")),
    };
    let say = |household: &Household, said: &Said| wordings(words, household, said);
    let articles = articles(words);
    let checks = Checks {
        articles: &articles,
        hearing: Hearing {
            commands: &commands,
            knows_word: Some(&knows),
            language: Some(&words.language().tag),
            games: &words.language().games,
            ..Hearing::default()
        },
        load: &load_routine,
        spoken_form: &spoken_form,
        wordings: &say,
    };
    Ok(check_bytes(name, bytes, checks)?)
}

/// How the language puts call names into sentences; English where its pack does not say.
fn articles(words: &Words) -> Articles {
    let own = words.wordings_of("attend-articles");
    const CALLED: &str = "\u{fffc}";
    let line = Line { key: "attend-the-called".into(), args: vec![("called", Arg::Text(CALLED.into()))] };
    let around =
        words.text(&line).ok().and_then(|text| text.split_once(CALLED).map(|(before, behind)| (before.to_owned(), behind.to_owned())));
    match around {
        Some(around) if !own.is_empty() => Articles { own, around },
        _ => Articles::default(),
    }
}

/// Every wording of something that can be said, the one to be shown first. Empty only where the catalogue lacks it.
pub fn wordings(words: &Words, household: &Household, said: &Said) -> Vec<String> {
    let called = |plain: &str, with_the: &str, called: &String| {
        let key = if household.articles.stand_in(called) { plain } else { with_the };
        (key.to_owned(), vec![("called", Arg::Text(called.clone()))])
    };
    let named = |key: &str, person: &usize| {
        let name = household.persons.get(*person).map(|person| spoken_form(&person.name)).unwrap_or_default();
        (key.to_owned(), vec![("name", Arg::Text(name))])
    };
    let fixed = |key: &str| (key.to_owned(), Vec::new());
    let all_of = |(key, args): (String, Vec<(&'static str, Arg)>)| {
        let text = words.text(&Line { key, args }).unwrap_or_default();
        let wordings = text.split('|').map(|wording| wording.split_whitespace().collect::<Vec<_>>().join(" "));
        wordings.filter(|wording| !wording.is_empty()).collect::<Vec<_>>()
    };
    let message = match said {
        Said::StartMine => fixed("attend-say-mine"),
        Said::StartCalled(name) => called("attend-say-called-plain", "attend-say-called", name),
        Said::StartFor(person) => named("attend-say-for", person),
        Said::StartForSeveral(persons) => return several(household, persons, &all_of),
        Said::StartForUnknown => {
            let mut beginnings = all_of(fixed("attend-say-for-unknown"));
            if household.persons.len() > 1 {
                beginnings.extend((0..household.persons.len()).flat_map(|person| all_of(named("attend-say-for-and-unknown", &person))));
            }
            return beginnings.into_iter().map(|beginning| format!("{beginning} {UNKNOWN}")).collect();
        }
        Said::Name(person) => named("attend-say-name", person),
        Said::Called(name) => called("attend-say-which-plain", "attend-say-which", name),
        Said::NotNow => fixed("attend-say-not-now"),
        Said::NeverMind => fixed("attend-say-never-mind"),
        Said::WhatIsLeft => fixed("attend-say-left"),
        Said::HowDidItGo => fixed("attend-say-how"),
        Said::Thanks => fixed("attend-say-thanks"),
        Said::Yes => return words.wordings(Command::Yes),
        Said::No => return words.wordings(Command::No),
        Said::Stop => return words.wordings(Command::Stop),
    };
    let own = household.home.start_phrase.iter().filter(|_| *said == Said::StartMine).cloned();
    all_of(message).into_iter().chain(own).collect()
}

/// Two by their names; two who are all by "both", more who are all by "everyone".
fn several(household: &Household, persons: &[usize], all_of: &dyn Fn((String, Vec<(&'static str, Arg)>)) -> Vec<String>) -> Vec<String> {
    let name = |person: &usize| Arg::Text(household.persons.get(*person).map(|person| spoken_form(&person.name)).unwrap_or_default());
    let mut wordings = Vec::new();
    if let [first, second] = persons {
        wordings.extend(all_of(("attend-say-for-two".into(), vec![("first", name(first)), ("second", name(second))])));
    }
    if persons.len() == household.persons.len() {
        let key = if persons.len() == 2 { "attend-say-for-both" } else { "attend-say-for-all" };
        wordings.extend(all_of((key.into(), Vec::new())));
    }
    wordings
}
