//! The household file: who practises here and what.

use super::home::{self, Home, HomeFile};
use super::said::Said;
use super::sayable::check_said;
use routine::fault::{FaultKind, Faults, Finder, suggestion};
use routine::file::At;
use routine::{Hearing, PlannedTime, Prescription, read, schema};
use schemars::JsonSchema;
use serde::Deserialize;
use session::Arg;
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// Who lives here. Never empty.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Household {
    pub persons: Vec<Person>,
    /// Whom to call in an emergency, as it is dialled: digits, spaces, dashes, a plus in front.
    pub emergency_number: Option<String>,
    pub home: Home,
    pub articles: Articles,
}

/// How the language puts a call name into a sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Articles {
    /// A call name that begins with one of these words needs no other: "my evening".
    pub own: Vec<String>,
    /// Before and behind any other: "the ", "".
    pub around: (String, String),
}

impl Default for Articles {
    /// English.
    fn default() -> Self {
        Self { own: ["the", "my", "our"].map(str::to_owned).to_vec(), around: ("the ".into(), String::new()) }
    }
}

impl Articles {
    /// The call name needs no other article.
    #[must_use]
    pub fn stand_in(&self, called: &str) -> bool {
        called.split_once(' ').is_some_and(|(first, _)| self.own.iter().any(|article| article == first))
    }

    /// The call name in a sentence: "the evening routine", "my evening".
    pub(super) fn with(&self, called: &str) -> String {
        if self.stand_in(called) { called.to_owned() } else { format!("{}{called}{}", self.around.0, self.around.1) }
    }
}

/// Somebody who practises.
#[derive(Debug, Clone, PartialEq)]
pub struct Person {
    /// As it stands in the file; the journal's client.
    pub name: String,
    pub pronoun: Pronoun,
    /// How it went is told aloud after each practice, not only when asked.
    pub summary_after: bool,
    /// Cannot hear: the page alone leads.
    pub by_page: bool,
    /// Never empty.
    pub routines: Vec<HouseRoutine>,
}

/// How the carer is told about a person.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Pronoun {
    He,
    She,
    #[default]
    They,
}

/// One routine of one person.
#[derive(Debug, Clone, PartialEq)]
pub struct HouseRoutine {
    /// The file's name as it stands in the household file.
    pub file: String,
    pub title: String,
    /// What it is called when it is asked for, in the recogniser's form; never empty.
    pub called: Vec<String>,
    /// When it is meant to be done.
    pub plan: Vec<PlannedTime>,
}

/// The file as it is typed.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct HouseholdFile {
    /// The language that the household is spoken to in: "en" (default), "de", "es", or the tag of a language pack that is given.
    language: Option<At<String>>,
    /// The persons who practise here.
    #[schemars(required)]
    person: Option<At<Vec<At<PersonFile>>>>,
    /// The emergency number where you live, such as "112". It is said twice, slowly, to whoever has chest pain, can't breathe or is choking.
    emergency_number: Option<At<String>>,
    /// Devices, start phrase, quiet hours and who is told of faults. `tidecount appliance` asks for them and writes them.
    home: Option<At<HomeFile>>,
}

/// Somebody who practises.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PersonFile {
    /// As it is said in "start for grandpa". No real name is needed.
    #[schemars(required)]
    name: Option<At<String>>,
    /// "he", "she" or "they" (default): how the carer is told about this person.
    pronoun: Option<At<String>>,
    /// True: how it went is told aloud after each practice, not only when asked.
    summary_after: Option<At<bool>>,
    /// True: this person cannot hear. The page alone leads their practices, and nothing of them is said aloud.
    by_page: Option<At<bool>>,
    /// This person's routines.
    #[schemars(required)]
    routine: Option<At<Vec<At<RoutineEntry>>>>,
}

/// One routine of this person.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct RoutineEntry {
    /// A routine file beside this file, such as "evening.toml".
    #[schemars(required)]
    file: Option<At<String>>,
    /// What it is called in "start the evening routine". Default: the routine's title.
    called: Option<At<Vec<At<String>>>>,
}

static SCHEMA: LazyLock<serde_json::Value> = LazyLock::new(schema::of_type::<HouseholdFile>);

/// What is needed to check a household.
#[derive(Clone, Copy)]
pub struct Checks<'a> {
    pub hearing: Hearing<'a>,
    /// Reads a routine file by the name that stands in the household file.
    pub load: &'a dyn Fn(&str) -> Result<Prescription, Faults>,
    /// How a text is said to the recogniser: lower case, no marks.
    pub spoken_form: &'a dyn Fn(&str) -> String,
    /// How call names stand in sentences.
    pub articles: &'a Articles,
    /// All wordings of something that can be said.
    pub wordings: &'a dyn Fn(&Household, &Said) -> Vec<String>,
}

/// Persons and routines of one household; a guard against slips, no source.
const MAX_PERSONS: usize = 10;

/// Checks the bytes of a household file; `name` stands for the file's name in faults.
///
/// # Errors
/// All faults of the file and of the routines that it names.
pub fn check_bytes(name: &str, bytes: &[u8], checks: Checks<'_>) -> Result<Household, Faults> {
    if bytes.len() > routine::MAX_FILE_BYTES {
        return Err(Faults::of_file(name, "the file is too large for a household", "Check that it is the right file."));
    }
    let (text, broken) = read::text_of(bytes);
    let mut faults = Finder::new(&text);
    if let Some((line, _)) = broken {
        let what = format!("this is not UTF-8 text, in line {line}");
        let span = text.find(char::REPLACEMENT_CHARACTER).map_or(0..0, |at| at..at);
        faults.add(FaultKind::UnreadableText, span, what, "Save the file as UTF-8.");
    }
    let file: HouseholdFile = read::typed_file(&text, &SCHEMA, ("the household", "person"), &mut faults);
    let household = build(&file, checks, &mut faults);
    if let (Some(household), true) = (household, faults.list.is_empty()) {
        return Ok(household);
    }
    if faults.list.is_empty() {
        faults.add(FaultKind::Missing, 0..0, "the household is not complete", "See docs/attending.md for an example.");
    }
    Err(Faults::new(name, &text, faults.list))
}

fn build(file: &HouseholdFile, checks: Checks<'_>, faults: &mut Finder<'_>) -> Option<Household> {
    let typed = file.person.as_ref()?;
    if typed.value.is_empty() || typed.value.len() > MAX_PERSONS {
        let what = format!("the household has {} persons, not 1 to {MAX_PERSONS}", typed.value.len());
        faults.add(FaultKind::OutOfRange, typed.span.clone(), what, "Write a `[[person]]` for each who practises.");
    }
    if let Some(language) = file.language.as_ref().filter(|language| !checks.hearing.speaks(&language.value)) {
        let what = format!("there are no words in the language \"{}\"", language.value.escape_debug());
        faults.add(FaultKind::UnknownName, language.span.clone(), what, suggestion(&language.value, routine::LANGUAGES.iter().copied()));
    }
    let persons: Vec<Person> = typed.value.iter().filter_map(|person| build_person(&person.value, &person.span, checks, faults)).collect();
    // What is said can only be compared where every person and routine could be read.
    let emergency_number = file.emergency_number.as_ref().and_then(|typed| build_number(typed, faults));
    let home = file.home.as_ref().map(|typed| home::build(&typed.value, (checks.hearing, checks.spoken_form), faults)).unwrap_or_default();
    let household = Household { persons, emergency_number, home, articles: checks.articles.clone() };
    if household.persons.len() == typed.value.len() && !household.persons.is_empty() {
        find_likes(file, &household, checks, faults);
    }
    Some(household)
}

fn build_number(typed: &At<String>, faults: &mut Finder<'_>) -> Option<String> {
    let number = typed.value.trim();
    if is_number(number) {
        return Some(number.to_owned());
    }
    let what = format!("`emergency_number` cannot be \"{}\"", routine::shape::printable(number));
    let remedy = "Write it as it is dialled: 2 to 15 digits, with spaces, dashes or a plus in front, such as \"112\".";
    faults.add(FaultKind::OutOfRange, typed.span.clone(), what, remedy);
    None
}

/// A number that can be dialled: 2 to 15 digits (ITU-T E.164 allows 15), parted by spaces or dashes, a plus in front.
#[must_use]
pub fn is_number(text: &str) -> bool {
    let rest = text.strip_prefix('+').unwrap_or(text);
    let digits = rest.chars().filter(char::is_ascii_digit).count();
    (2..=15).contains(&digits) && rest.chars().all(|c| c.is_ascii_digit() || matches!(c, ' ' | '-'))
}

fn build_person(file: &PersonFile, at: &std::ops::Range<usize>, checks: Checks<'_>, faults: &mut Finder<'_>) -> Option<Person> {
    if let Some(name) = &file.name {
        check_said(name, "name", checks.hearing, checks.spoken_form, faults);
    }
    let pronoun = match file.pronoun.as_ref().map(|at| (at.value.as_str(), at)) {
        None | Some(("they", _)) => Pronoun::They,
        Some(("he", _)) => Pronoun::He,
        Some(("she", _)) => Pronoun::She,
        Some((other, at)) => {
            let what = format!("`pronoun` cannot be \"{}\"", routine::shape::printable(other));
            faults.add(FaultKind::UnknownName, at.span.clone(), what, suggestion(other, ["he", "she", "they"].into_iter()));
            Pronoun::They
        }
    };
    let entries = file.routine.as_ref()?;
    if entries.value.is_empty() {
        faults.add(FaultKind::Missing, at.clone(), "this person has no routine", "Add a `[[person.routine]]` with a `file`.");
    }
    let routines: Vec<HouseRoutine> = entries.value.iter().filter_map(|entry| build_routine(&entry.value, checks, faults)).collect();
    let whole = !routines.is_empty() && routines.len() == entries.value.len();
    let name = file.name.as_ref()?.value.trim().to_owned();
    let is = |typed: &Option<At<bool>>| typed.as_ref().is_some_and(|at| at.value);
    whole.then(|| Person { name, pronoun, summary_after: is(&file.summary_after), by_page: is(&file.by_page), routines })
}

fn build_routine(entry: &RoutineEntry, checks: Checks<'_>, faults: &mut Finder<'_>) -> Option<HouseRoutine> {
    let called = entry.called.as_ref();
    if let Some(called) = called.filter(|called| called.value.is_empty()) {
        faults.add(FaultKind::Missing, called.span.clone(), "`called` is empty", "Write what it is called, or leave the key out.");
    }
    for name in called.iter().flat_map(|called| &called.value) {
        check_said(name, "called", checks.hearing, checks.spoken_form, faults);
    }
    let file = entry.file.as_ref()?;
    let prescription = match (checks.load)(&file.value) {
        Ok(prescription) => prescription,
        Err(of_routine) => {
            for fault in &of_routine.list {
                let what = format!("{}, line {}: {}", of_routine.file, fault.line, fault.what);
                faults.add(fault.kind, file.span.clone(), what, fault.remedy.clone());
            }
            return None;
        }
    };
    let title = prescription.routine.title.clone();
    let called: Vec<String> = match called {
        Some(called) => called.value.iter().map(|name| (checks.spoken_form)(&name.value)).collect(),
        None => {
            // The title was typed elsewhere; a fault of it is shown at the file's name.
            let from_title = At { value: title.clone(), span: file.span.clone() };
            check_said(&from_title, "title", checks.hearing, checks.spoken_form, faults);
            vec![(checks.spoken_form)(&title)]
        }
    };
    (!called.is_empty()).then(|| HouseRoutine { file: file.value.clone(), title, called, plan: prescription.plan })
}

/// Asked for and answered, it comes to the same: in some languages the answer, "für Opa", begins the whole wish, "für Opa starten bitte".
fn come_to_the_same(one: &Said, other: &Said) -> bool {
    match (one, other) {
        (Said::StartFor(p), Said::Name(q)) | (Said::Name(q), Said::StartFor(p)) => p == q,
        (Said::StartCalled(c), Said::Called(d)) | (Said::Called(d), Said::StartCalled(c)) => c == d,
        _ => one == other,
    }
}

/// Nothing that can be said may mean two things or begin another meaning's wording: it is acted on before the pause after it. Only
/// "start for" a person waits for an "and".
fn find_likes(file: &HouseholdFile, household: &Household, checks: Checks<'_>, faults: &mut Finder<'_>) {
    let mut meanings: BTreeMap<String, Said> = BTreeMap::new();
    for said in household.everything().into_iter().filter(Said::is_offered) {
        for wording in (checks.wordings)(household, &said) {
            let clash = meanings
                .iter()
                .find(|(other, meaning)| !come_to_the_same(meaning, &said) && (begins(other, &wording) || begins(&wording, other)));
            if let Some((other, meaning)) = clash {
                let what = format!("\"{wording}\" is too like \"{other}\", which means something else");
                let at = place_of(file, &said).or_else(|| place_of(file, meaning)).unwrap_or(0..0);
                faults.add(FaultKind::CommandInText, at, what, "Give one of them another name.");
            } else {
                meanings.insert(wording, said.clone());
            }
        }
    }
    for (p, person) in household.persons.iter().enumerate() {
        let names: Vec<&String> = person.routines.iter().flat_map(|routine| &routine.called).collect();
        let twice = names.iter().enumerate().find(|(n, name)| names.iter().take(*n).any(|other| other == *name));
        if let Some((_, name)) = twice {
            let what = format!("two routines of {} are called \"{name}\"", person.name);
            let at = place_of(file, &Said::Name(p)).unwrap_or(0..0);
            faults.add(FaultKind::CommandInText, at, what, "Give each a `called` of its own.");
        }
        let same = household.persons.iter().take(p).any(|other| (checks.spoken_form)(&other.name) == (checks.spoken_form)(&person.name));
        if same {
            let what = format!("two persons are called \"{}\"", person.name);
            faults.add(FaultKind::CommandInText, place_of(file, &Said::Name(p)).unwrap_or(0..0), what, "Give each a name of their own.");
        }
    }
}

/// `long` is `short`, or begins with its words.
fn begins(long: &str, short: &str) -> bool {
    long.strip_prefix(short).is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
}

/// Where the name stands that is said.
fn place_of(file: &HouseholdFile, said: &Said) -> Option<std::ops::Range<usize>> {
    let persons = &file.person.as_ref()?.value;
    match said {
        Said::StartFor(p) | Said::Name(p) => persons.get(*p)?.value.name.as_ref().map(|name| name.span.clone()),
        Said::StartCalled(called) | Said::Called(called) => {
            let entries = persons.iter().flat_map(|person| person.value.routine.iter()).flat_map(|list| &list.value);
            let names = entries.clone().flat_map(|entry| entry.value.called.iter()).flat_map(|list| &list.value);
            let named = names.clone().find(|name| name.value.eq_ignore_ascii_case(called)).map(|name| name.span.clone());
            named.or_else(|| entries.clone().find_map(|entry| entry.value.file.as_ref().map(|file| file.span.clone())))
        }
        _ => None,
    }
}

impl Household {
    /// Everything that can ever be said in this household, fixed phrases first.
    #[must_use]
    pub fn everything(&self) -> Vec<Said> {
        let mut all = vec![Said::StartMine, Said::NotNow, Said::NeverMind, Said::WhatIsLeft, Said::HowDidItGo];
        all.extend([Said::Thanks, Said::Yes, Said::No, Said::Stop]);
        let persons = 0..self.persons.len();
        all.extend(persons.clone().map(Said::StartFor));
        all.extend(persons.map(Said::Name));
        all.extend(self.several_at_once());
        all.push(Said::StartForUnknown);
        let names = self.call_names();
        all.extend(names.iter().cloned().map(Said::StartCalled));
        all.extend(names.into_iter().map(Said::Called));
        all
    }

    /// Every two persons, and all of them.
    pub(super) fn several_at_once(&self) -> Vec<Said> {
        let all: Vec<usize> = (0..self.persons.len()).collect();
        let with = |first: &usize| all.iter().skip(first + 1).map(|second| vec![*first, *second]).collect::<Vec<_>>();
        let mut groups: Vec<Vec<usize>> = all.iter().flat_map(with).collect();
        if all.len() > 2 {
            groups.push(all.clone());
        }
        groups.into_iter().map(Said::StartForSeveral).collect()
    }

    /// Every call name once.
    #[must_use]
    pub fn call_names(&self) -> Vec<String> {
        let mut names: Vec<String> = Vec::new();
        for name in self.persons.iter().flat_map(|person| &person.routines).flat_map(|routine| &routine.called) {
            if !names.contains(name) {
                names.push(name.clone());
            }
        }
        names
    }

    /// Every person's routines, as numbers.
    pub fn pairs(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        self.persons.iter().enumerate().flat_map(|(p, person)| (0..person.routines.len()).map(move |r| (p, r)))
    }

    #[must_use]
    pub fn routine(&self, (person, routine): (usize, usize)) -> Option<&HouseRoutine> {
        self.persons.get(person)?.routines.get(routine)
    }

    /// The person's name as it is written in a sentence.
    #[must_use]
    pub fn name(&self, person: usize) -> String {
        let mut letters = self.persons.get(person).map_or("", |person| person.name.as_str()).chars();
        letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
    }

    /// The routine as it is called in a sentence: "the evening routine".
    #[must_use]
    pub fn the(&self, pair: (usize, usize)) -> String {
        self.articles.with(self.routine(pair).and_then(|routine| routine.called.first()).map_or("", String::as_str))
    }

    /// The argument `who`: the name where several live here, else the pronoun.
    pub(super) fn who(&self, person: usize) -> Vec<(&'static str, Arg)> {
        let who = match self.persons.get(person).map(|person| person.pronoun) {
            _ if self.persons.len() > 1 => Arg::Text(self.name(person)),
            Some(Pronoun::He) => Arg::Message("attend-he".into()),
            Some(Pronoun::She) => Arg::Message("attend-she".into()),
            _ => Arg::Message("attend-they".into()),
        };
        vec![("who", who)]
    }
}
