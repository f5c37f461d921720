//! Word packs: questions and categories as data, built in or written by a clinician.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use schemars::JsonSchema;
use serde::Deserialize;
use serde_json::Value;

use super::bounds::LANGUAGES;
use super::fault::{FaultKind, Faults, Finder, suggestion};
use super::file::{At, QuestionFile};
use super::prescribed::{NamingItem, PackKind, QuestionItem};
use super::read::{self, MAX_FILE_BYTES};
use super::schema;
use super::shape::printable;
use super::text::{self, Hearing, SaidBy};

#[derive(rust_embed::RustEmbed)]
#[folder = "packs"]
struct BuiltIn;

/// Answers and near ones of one question that can be told apart at once beside the commands; "about ten phrases at most at a
/// time" (trade notes 5.4).
const MAX_ANSWERS: usize = 6;
const MAX_NEAR: usize = 5;
/// Categories are listened for without commands beside them; more members than this are a slip or a hostile file.
const MAX_MEMBERS: usize = 120;
/// A guard against slips and hostile files.
const MAX_ITEMS: usize = 2_000;

/// A pack as it stands in its file.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PackFile {
    /// What it is called.
    #[schemars(required)]
    title: Option<At<String>>,
    /// What sort of game it is.
    #[schemars(required)]
    kind: Option<At<String>>,
    /// The language it is asked in. Default "en".
    language: Option<At<String>>,
    #[schemars(required)]
    item: Option<At<Vec<At<ItemFile>>>>,
}

/// One question, or one category.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ItemFile {
    /// What is asked.
    #[schemars(required)]
    clue: Option<At<String>>,
    /// Accepted answers; the first is the one that is told.
    answers: Option<At<Vec<At<String>>>>,
    /// Plausible answers that come near; they bring the hint.
    near: Option<At<Vec<At<String>>>>,
    /// Told when an answer was near, when half the time is over, or when the client asks.
    hint: Option<At<String>>,
    /// Told after the answer.
    fact: Option<At<String>>,
    /// Category: what it is called in "you named nine animals".
    category: Option<At<String>>,
    /// Category: what counts; wordings of one member parted by `|`.
    members: Option<At<Vec<At<String>>>>,
}

static SCHEMA: LazyLock<Value> = LazyLock::new(schema::of_type::<PackFile>);

/// A word pack, checked.
#[derive(Debug, Clone, PartialEq)]
pub struct Pack {
    pub title: String,
    pub kind: PackKind,
    /// Empty for categories.
    pub questions: Vec<QuestionItem>,
    /// Empty for all other kinds.
    pub categories: Vec<NamingItem>,
}

/// The packs that come with the program: name and text, sorted by name.
#[must_use]
pub fn built_in_packs() -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> = BuiltIn::iter()
        .filter_map(|file| {
            let text = String::from_utf8(BuiltIn::get(&file)?.data.into_owned()).ok()?;
            Some((file.strip_suffix(".toml")?.to_owned(), text))
        })
        .collect();
    all.sort();
    all
}

/// The same with a language's own packs, each in the place of the built-in one of its name; sorted by name.
#[must_use]
pub fn packs_with(games: &[(String, String)]) -> Vec<(String, String)> {
    let mut all: BTreeMap<String, String> = built_in_packs().into_iter().collect();
    all.extend(games.iter().cloned());
    all.into_iter().collect()
}

/// Checks the bytes of a pack; `name` stands for the file's name in faults.
///
/// # Errors
/// All faults of the file.
pub fn check_pack(name: &str, bytes: &[u8], hearing: Hearing<'_>) -> Result<Pack, Faults> {
    if bytes.len() > MAX_FILE_BYTES {
        return Err(Faults::of_file(name, format!("the file is larger than {MAX_FILE_BYTES} bytes"), "Split it in two packs."));
    }
    let (text, broken) = read::text_of(bytes);
    let mut faults = Finder::new(&text);
    if let Some((line, byte)) = broken {
        let span = text.find(char::REPLACEMENT_CHARACTER).map_or(0..0, |at| at..at);
        let what = format!("this is not UTF-8 text: byte {} of the file, in line {line}, belongs to no character", byte + 1);
        faults.add(FaultKind::UnreadableText, span, what, "Save the file as UTF-8.");
    }
    let file: PackFile = read::typed_file(&text, &SCHEMA, ("the pack", "item"), &mut faults);
    let pack = build(&file, hearing, &mut faults);
    match pack {
        Some(pack) if faults.list.is_empty() => Ok(pack),
        _ => {
            if faults.list.is_empty() {
                faults.add(FaultKind::Missing, 0..0, "the pack is not complete", "Compare it with docs/word-packs.md.");
            }
            Err(Faults::new(name, &text, faults.list))
        }
    }
}

fn build(file: &PackFile, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<Pack> {
    if let Some(title) = &file.title {
        text::check(title, "title", SaidBy::Tool, hearing, faults);
    }
    if let Some(language) = file.language.as_ref().filter(|language| !hearing.speaks(&language.value)) {
        let what = format!("there are no words in the language \"{}\"", printable(&language.value));
        faults.add(FaultKind::UnknownName, language.span.clone(), what, suggestion(&language.value, LANGUAGES.iter().copied()));
    }
    let typed = file.kind.as_ref()?;
    let Some(kind) = PackKind::NAMES.iter().find(|(name, _)| *name == typed.value).map(|(_, kind)| *kind) else {
        let what = format!("there is no kind of pack called \"{}\"", printable(&typed.value));
        faults.add(
            FaultKind::UnknownName,
            typed.span.clone(),
            what,
            suggestion(&typed.value, PackKind::NAMES.iter().map(|(name, _)| *name)),
        );
        return None;
    };
    let items = file.item.as_ref()?;
    if items.value.is_empty() || items.value.len() > MAX_ITEMS {
        let what = format!("the pack has {} items, but must have 1 to {MAX_ITEMS}", items.value.len());
        faults.add(FaultKind::OutOfRange, items.span.clone(), what, "Add a `[[item]]`, or split the pack.");
        return None;
    }
    let mut pack = Pack { title: file.title.as_ref()?.value.clone(), kind, questions: Vec::new(), categories: Vec::new() };
    let mut clues = BTreeMap::new();
    for item in &items.value {
        suits(item, kind, faults);
        if let Some(clue) = &item.value.clue
            && clues.insert(clue.value.to_lowercase(), ()).is_some()
        {
            faults.add(FaultKind::NotAllowed, clue.span.clone(), "this clue stands twice", "Take one of the two out.");
        }
        if kind == PackKind::Category {
            pack.categories.extend(category(&item.value, hearing, faults));
        } else {
            let item = QuestionFile {
                clue: item.value.clue.clone(),
                answers: item.value.answers.clone(),
                near: item.value.near.clone(),
                hint: item.value.hint.clone(),
                fact: item.value.fact.clone(),
            };
            tells_nothing(&item, kind, faults);
            pack.questions.extend(question(&item, hearing, faults).map(|item| QuestionItem { kind: Some(kind), ..item }));
        }
    }
    Some(pack)
}

/// What the kind needs is there, and nothing else.
fn suits(item: &At<ItemFile>, kind: PackKind, faults: &mut Finder<'_>) {
    let has = |name: &str| match name {
        "answers" => item.value.answers.is_some(),
        "near" => item.value.near.is_some(),
        "hint" => item.value.hint.is_some(),
        "category" => item.value.category.is_some(),
        _ => item.value.members.is_some(),
    };
    let (needed, strange): (&[&str], &[&str]) = match kind {
        PackKind::Category => (&["category", "members"], &["answers", "near", "hint"]),
        _ => (&["answers", "hint"], &["category", "members"]),
    };
    for name in needed.iter().filter(|name| !has(name)) {
        faults.add(FaultKind::Missing, item.span.clone(), format!("the item has no `{name}`"), format!("Add a line `{name} = …`."));
    }
    for name in strange.iter().filter(|name| has(name)) {
        faults.add(
            FaultKind::NotForThisExercise,
            item.span.clone(),
            format!("`{name}` does not belong to this kind of pack"),
            "Take it out.",
        );
    }
}

/// The clue and the hint do not tell the answer; the things to choose from among do stand in the clue.
fn tells_nothing(item: &QuestionFile, kind: PackKind, faults: &mut Finder<'_>) {
    let answers = item.answers.as_ref().map_or(&[][..], |answers| &answers.value);
    let chosen_from = kind == PackKind::OddOneOut;
    for (name, told) in [("clue", &item.clue), ("hint", &item.hint)] {
        let Some(told) = told else { continue };
        let held = answers.iter().find(|answer| text::holds_words(&told.value, &answer.value));
        if let Some(answer) = held.filter(|_| name == "hint" || !chosen_from) {
            let what = format!("the {name} holds the answer \"{}\"", printable(&answer.value));
            faults.add(FaultKind::NotAllowed, told.span.clone(), what, "Say it in other words.");
        } else if chosen_from && name == "clue" && held.is_none() {
            faults.add(
                FaultKind::Missing,
                told.span.clone(),
                "the clue does not name the answer among the others",
                "Name the things to choose from.",
            );
        }
    }
}

/// One question of a pack or a routine; every fault is noted.
pub(super) fn question(file: &QuestionFile, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<QuestionItem> {
    for (name, text) in [("clue", &file.clue), ("hint", &file.hint), ("fact", &file.fact)] {
        if let Some(text) = text {
            text::check(text, name, SaidBy::Tool, hearing, faults);
        }
    }
    let answers = file.answers.as_ref()?;
    if answers.value.is_empty() {
        faults.add(FaultKind::Missing, answers.span.clone(), "`answers` is empty", "Give at least one answer.");
    }
    let near = file.near.as_ref().map_or(&[][..], |near| &near.value);
    for (name, number, most, span) in [
        ("answers", answers.value.len(), MAX_ANSWERS, answers.span.clone()),
        ("near answers", near.len(), MAX_NEAR, file.near.as_ref().map_or(0..0, |near| near.span.clone())),
    ] {
        if number > most {
            let what = format!("there are {number} {name} to one question, more than {most}");
            faults.add(
                FaultKind::OutOfRange,
                span,
                what,
                "Keep the likely ones: the more is listened for at once, the less surely it is heard.",
            );
        }
    }
    let mut known = Vec::new();
    for answer in answers.value.iter().chain(near) {
        text::check(answer, "answers", SaidBy::Both, hearing, faults);
        text::check_known(answer, hearing, faults);
        let spoken = text::spoken(&answer.value);
        if known.contains(&spoken) {
            let what = format!("\"{}\" stands twice among the answers and near answers", printable(&answer.value));
            faults.add(FaultKind::NotAllowed, answer.span.clone(), what, "Keep it once: an answer is either right or near.");
        }
        known.push(spoken);
    }
    Some(QuestionItem {
        kind: None,
        clue: file.clue.as_ref()?.value.clone(),
        answers: answers.value.iter().map(|answer| answer.value.clone()).collect(),
        near: near.iter().map(|answer| answer.value.clone()).collect(),
        hint: file.hint.as_ref().map(|hint| hint.value.clone()),
        fact: file.fact.as_ref().map(|fact| fact.value.clone()),
    })
}

fn category(file: &ItemFile, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<NamingItem> {
    for (name, text) in [("clue", &file.clue), ("category", &file.category), ("fact", &file.fact)] {
        if let Some(text) = text {
            text::check(text, name, SaidBy::Tool, hearing, faults);
        }
    }
    let members = file.members.as_ref()?;
    if members.value.is_empty() || members.value.len() > MAX_MEMBERS {
        let what = format!("there are {} members, but must be 1 to {MAX_MEMBERS}", members.value.len());
        faults.add(FaultKind::OutOfRange, members.span.clone(), what, "Name what people are likely to say.");
    }
    let mut known = Vec::new();
    for member in &members.value {
        for wording in member.value.split('|') {
            let wording = At { value: wording.trim().to_owned(), span: member.span.clone() };
            text::check(&wording, "members", SaidBy::Both, hearing, faults);
            text::check_known(&wording, hearing, faults);
            let spoken = text::spoken(&wording.value);
            if known.contains(&spoken) {
                let what = format!("\"{}\" stands twice among the members", printable(&wording.value));
                faults.add(FaultKind::NotAllowed, member.span.clone(), what, "Keep it once, or it would count twice.");
            }
            known.push(spoken);
        }
    }
    Some(NamingItem {
        clue: file.clue.as_ref()?.value.clone(),
        category: file.category.as_ref()?.value.clone(),
        members: members.value.iter().map(|member| member.value.clone()).collect(),
        fact: file.fact.as_ref().map(|fact| fact.value.clone()),
    })
}

/// The items of all packs that a step names, taken from the packs in turn.
pub(super) fn of_step(
    packs: Option<&At<Vec<At<String>>>>,
    hearing: Hearing<'_>,
    faults: &mut Finder<'_>,
) -> (Vec<QuestionItem>, Vec<NamingItem>) {
    let mut questions = Vec::new();
    let mut categories = Vec::new();
    for name in packs.map_or(&[][..], |packs| &packs.value) {
        if let Some(pack) = find(name, hearing, faults) {
            questions.push(pack.questions);
            categories.push(pack.categories);
        }
    }
    (in_turn(questions), in_turn(categories))
}

fn find(name: &At<String>, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<Pack> {
    let built_in = packs_with(hearing.games);
    let bytes = match built_in.iter().find(|(known, _)| *known == name.value) {
        Some((_, text)) => Ok(text.as_bytes().to_vec()),
        None if name.value.ends_with(".toml") => match hearing.pack_file {
            Some(read) => read(&name.value),
            None => Err("it can only be read where the routine itself is a file".to_owned()),
        },
        None => {
            let what = format!("there is no word pack called \"{}\"", printable(&name.value));
            let names = built_in.iter().map(|(name, _)| name.as_str());
            let remedy =
                format!("{} Your own pack is named by its file, as in `packs = [\"garden.toml\"]`.", suggestion(&name.value, names));
            faults.add(FaultKind::UnknownName, name.span.clone(), what, remedy);
            return None;
        }
    };
    let checked = match bytes {
        Ok(bytes) => check_pack(&name.value, &bytes, hearing),
        Err(why) => {
            let what = format!("the word pack \"{}\" cannot be read: {why}", printable(&name.value));
            faults.add(FaultKind::File, name.span.clone(), what, "Put it beside the routine, or name a built-in pack.");
            return None;
        }
    };
    match checked {
        Ok(pack) => Some(pack),
        Err(found) => {
            for fault in &found.list {
                let what = format!("{}:{}: {}", printable(&name.value), fault.line, fault.what);
                faults.add(fault.kind, name.span.clone(), what, fault.remedy.clone());
            }
            None
        }
    }
}

/// The first of each list, then the second of each, and so on.
fn in_turn<T>(lists: Vec<Vec<T>>) -> Vec<T> {
    let mut lists: Vec<_> = lists.into_iter().map(Vec::into_iter).collect();
    let mut all = Vec::new();
    loop {
        let before = all.len();
        all.extend(lists.iter_mut().filter_map(Iterator::next));
        if all.len() == before {
            return all;
        }
    }
}

/// Puts what was asked least often first, so that nothing comes back before everything was there; `asked` tells how often, by
/// `key`. What was asked equally often keeps its order.
pub fn fresh_first<T>(items: &mut [T], asked: &BTreeMap<String, u32>, key: impl Fn(&T) -> &str) {
    items.sort_by_key(|item| asked.get(key(item)).copied().unwrap_or(0));
}

#[cfg(test)]
#[path = "tests/pack.rs"]
mod tests;
