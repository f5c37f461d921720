//! `tidecount routine new [FILE]`: a programme by answering questions, written as a routine file that a person can read.

use std::collections::BTreeSet;
use std::io::{ErrorKind, IsTerminal, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use crate::routine::args::NewArgs;
use crate::routine::new_dose;
use crate::routine::new_plan;
use crate::terminal::Lookup;
use crate::terminal::ask::{Ask, AskError, Plain, Terminal, until, yes_or_no};
use files::error::Failure;
use routine::{CatalogueEntry, ClinicianWord, Draft, DraftStep, FaultKind, Hearing, Timing, built_in_packs, catalogue, check_text};

/// Runs the command on the terminal, or line by line where answers are piped in.
///
/// # Errors
/// The answers end too early, or the file cannot be written.
pub fn run(args: &NewArgs, words: Lookup<'_>, hearing: Hearing<'_>) -> Result<ExitCode, Failure> {
    let at_terminal = std::io::stdin().is_terminal() && std::io::stdout().is_terminal() && !args.plain;
    let mut plain = Plain::new(std::io::stdin().lock(), std::io::stdout());
    let ask: &mut dyn Ask = if at_terminal { &mut Terminal } else { &mut plain };
    write_programme(ask, args.file.as_deref(), words, hearing).map_err(|why| Failure::Declined(why.to_string()))?;
    Ok(ExitCode::SUCCESS)
}

/// Asks everything and writes the file, unless the writer decides against it. Gives the file that was written.
///
/// # Errors
/// The answers end too early, or the file cannot be written.
pub fn write_programme(
    ask: &mut dyn Ask,
    file: Option<&Path>,
    words: Lookup<'_>,
    hearing: Hearing<'_>,
) -> Result<Option<PathBuf>, AskError> {
    let mut draft = compose(ask, words, hearing)?;
    if let Some(asked) = needs_word(&draft, hearing) {
        // Each exercise was settled by itself; this is about the whole.
        ask.say(&asked)?;
        draft.word = clinician_word(ask, hearing)?;
    }
    let text = draft.to_toml(words);
    ask.say(&format!("\n{text}"))?;
    if let Err(faults) = check_text("the new routine", &text, hearing) {
        // Each answer was checked by itself; what is left is a fault of several together.
        ask.say(&format!("This does not pass the check, so nothing was written:\n{faults}"))?;
        return Ok(None);
    }
    let Some(path) = write(ask, file, &draft.title, &text)? else {
        ask.say("Nothing was written.")?;
        return Ok(None);
    };
    let shown = path.display();
    ask.say(&format!("Written to {shown}. To print it for the client: tidecount routine show {shown} --pdf handout.pdf"))?;
    Ok(Some(path))
}

/// Asks everything.
///
/// # Errors
/// The answers end too early.
pub fn compose(ask: &mut dyn Ask, words: Lookup<'_>, hearing: Hearing<'_>) -> Result<Draft, AskError> {
    ask.say("A new programme. Press Enter to take the answer in brackets. Nothing is written until the end.\n")?;
    let title = spoken(ask, "Title, as it is said aloud", Some("Practice"), "title", hearing)?.unwrap_or_else(|| "Practice".to_owned());
    let client = spoken(
        ask,
        "Who is it for? A short name for the record; no real name is needed, and none at all is fine",
        Some(""),
        "client",
        hearing,
    )?;
    let mut steps = Vec::new();
    while steps.is_empty() {
        for entry in exercises(ask, words)? {
            steps.extend(step(ask, entry, words, hearing)?);
        }
        if steps.is_empty() {
            ask.say("No exercise was chosen. A routine needs at least one.")?;
        }
    }
    // Sips are enabled for one client, so that client needs a name.
    let mut client = client;
    while client.is_none() && steps.iter().any(|step: &DraftStep| step.sip_every.is_some()) {
        client = spoken(ask, "Sips are allowed for one client only. A short name for that client", Some("client"), "client", hearing)?;
    }
    let loud = steps.iter().any(|step: &DraftStep| step.entry.timing == Timing::Voiced);
    let (mut cue_words, mut feedback_every) = (None, 5);
    if loud {
        cue_words =
            spoken(ask, "\nCue words before a loud trial, such as \"strong voice\"; empty for none", Some(""), "cue_words", hearing)?;
        let why = "After how many trials is the number told each time? 0: only when asked. \
                   People with Parkinson's remembered more when told fewer numbers (Adams, Page & Jog 2002; Chiviacowsky 2010)";
        feedback_every = until(ask, why, Some("5"), |answer| {
            answer.parse().ok().filter(|every| (0..=100).contains(every)).ok_or_else(|| "Type a whole number from 0 to 100.".to_owned())
        })?;
    }
    let plan = new_plan::plan(ask, &steps)?;
    Ok(Draft { title, client, cue_words, feedback_every, plan, word: None, steps })
}

/// A text that stands in the routine's key; none where nothing was typed. Judged by the routine's own check.
fn spoken(ask: &mut dyn Ask, question: &str, default: Option<&str>, key: &str, hearing: Hearing<'_>) -> Result<Option<String>, AskError> {
    let judge = |answer: &str| {
        if answer.is_empty() {
            return Ok(None);
        }
        let mut draft = Draft { title: "x".to_owned(), steps: vec![DraftStep::new(rest()?)], ..Draft::default() };
        match key {
            "title" => draft.title = answer.to_owned(),
            "client" => draft.client = Some(answer.to_owned()),
            _ => draft.cue_words = Some(answer.to_owned()),
        }
        sound(&draft, hearing).map(|()| Some(answer.to_owned()))
    };
    until(ask, question, default, judge)
}

fn rest() -> Result<&'static CatalogueEntry, String> {
    catalogue().iter().find(|entry| entry.timing == Timing::Rest).ok_or_else(|| "The catalogue has no rest.".to_owned())
}

/// What the check wants a clinician's word for; none where it wants none, or says more against it.
fn needs_word(draft: &Draft, hearing: Hearing<'_>) -> Option<String> {
    let draft = Draft { client: draft.client.clone().or_else(|| Some("client".to_owned())), ..draft.clone() };
    let faults = check_text("x", &draft.to_toml(&|_| None), hearing).err()?.list;
    let lines: Vec<String> = faults.iter().map(|fault| format!("  {}. {}", fault.what, fault.remedy)).collect();
    faults.iter().all(|fault| fault.kind == FaultKind::NeedsClinicianWord).then(|| lines.join("\n"))
}

/// Asks who said so and why; none where nobody did.
fn clinician_word(ask: &mut dyn Ask, hearing: Hearing<'_>) -> Result<Option<ClinicianWord>, AskError> {
    let sound_text = |answer: &str| {
        let word = ClinicianWord { who: answer.to_owned(), why: answer.to_owned() };
        let draft = Draft { title: "x".to_owned(), word: Some(word), steps: vec![DraftStep::new(rest()?)], ..Draft::default() };
        sound(&draft, hearing).map(|()| answer.to_owned())
    };
    let question = "Has the client's own clinician said so? Who, such as \"the speech therapist\"; empty if nobody has";
    let who = until(ask, question, Some(""), |answer| if answer.is_empty() { Ok(String::new()) } else { sound_text(answer) })?;
    if who.is_empty() {
        return Ok(None);
    }
    let why = until(ask, "Why, in a few words; it stands on the report", None, sound_text)?;
    Ok(Some(ClinicianWord { who, why }))
}

/// What the check says against it, a line for each fault.
fn sound(draft: &Draft, hearing: Hearing<'_>) -> Result<(), String> {
    // Whose programme it is may not be settled yet.
    let draft = Draft { client: draft.client.clone().or_else(|| Some("client".to_owned())), ..draft.clone() };
    let faults = check_text("x", &draft.to_toml(&|_| None), hearing).err().map_or(Vec::new(), |faults| faults.list);
    let lines: BTreeSet<String> = faults.iter().map(|fault| format!("{}. {}", fault.what, fault.remedy)).collect();
    if lines.is_empty() { Ok(()) } else { Err(lines.into_iter().collect::<Vec<_>>().join("\n  ")) }
}

fn exercises(ask: &mut dyn Ask, words: Lookup<'_>) -> Result<Vec<&'static CatalogueEntry>, AskError> {
    let mut list = String::from("\nExercises");
    let mut group = "";
    for (n, entry) in catalogue().iter().enumerate() {
        if entry.group != group {
            group = entry.group;
            list += &format!("\n{group}\n");
        }
        let agreement = if entry.needs_agreement { " (only with a clinician's agreement)" } else { "" };
        list += &format!("  {:>2}  {}{agreement}\n", n + 1, words(&format!("ex-{}-name", entry.id)).unwrap_or_else(|| entry.id.clone()));
    }
    ask.say(&list)?;
    let all = catalogue().len();
    until(ask, "Which ones, in their order? Numbers, such as 1 11 20", None, |answer| {
        let numbers = answer.split([' ', ',', ';']).filter(|part| !part.is_empty());
        let chosen = numbers.map(|part| part.parse::<usize>().ok().and_then(|n| catalogue().get(n.checked_sub(1)?)).ok_or(part));
        match chosen.collect::<Result<Vec<_>, _>>() {
            Ok(chosen) if !chosen.is_empty() => Ok(chosen),
            Ok(_) => Err(format!("Type one or more numbers from 1 to {all}.")),
            Err(part) => Err(format!("\"{part}\" is not one of them. Type numbers from 1 to {all}, separated by spaces.")),
        }
    })
}

/// One exercise; none where its cautions were not agreed to.
fn step(ask: &mut dyn Ask, entry: &'static CatalogueEntry, words: Lookup<'_>, hearing: Hearing<'_>) -> Result<Option<DraftStep>, AskError> {
    let say = |key: String| words(&key).unwrap_or(key);
    let name = say(format!("ex-{}-name", entry.id));
    ask.say(&format!("\n{name}. {}", say(format!("ex-{}-purpose", entry.id))))?;
    if !agreed(ask, entry, &name, &say)? {
        return Ok(None);
    }
    if entry.timing == Timing::Question && packs(entry.naming).is_empty() {
        ask.say("There are no word packs here, so it is left out; you can write questions into the file yourself.")?;
        return Ok(None);
    }
    loop {
        let mut step = new_dose::dose(ask, entry)?;
        step.acknowledged = true;
        match entry.timing {
            Timing::ReadAloud => step.phrases = phrases(ask, hearing)?,
            Timing::Question => {
                step.packs = choose_packs(ask, entry.naming)?;
                let (question, usual) =
                    if entry.naming { ("How many categories each time", "1") } else { ("How many questions each time", "5") };
                let count = until(ask, question, Some(usual), |answer| {
                    answer
                        .parse::<u32>()
                        .ok()
                        .filter(|count| (1..=60).contains(count))
                        .ok_or_else(|| "Type a whole number from 1 to 60.".to_owned())
                })?;
                step.numbers.push(("repetitions", f64::from(count)));
            }
            _ => {}
        }
        if entry.needs_setting {
            step.setting = Some(until(ask, "What has the clinician set for it, such as two turns of the dial", None, |answer| {
                let typed = answer.trim();
                if typed.is_empty() {
                    Err("It is done only with what a clinician has set. Type what that is.".to_owned())
                } else {
                    Ok(typed.to_owned())
                }
            })?);
        }
        if entry.sips {
            step.sip_every = sips(ask)?;
        }
        let mut draft = Draft { title: "x".to_owned(), steps: vec![step.clone()], ..Draft::default() };
        if let Some(asked) = needs_word(&draft, hearing) {
            ask.say(&asked)?;
            step.word = clinician_word(ask, hearing)?;
            draft.steps = vec![step.clone()];
        }
        match sound(&draft, hearing) {
            Ok(()) => return Ok(Some(step)),
            Err(faults) => ask.say(&format!("  {faults}\n  Let's try again."))?,
        }
    }
}

fn agreed(ask: &mut dyn Ask, entry: &CatalogueEntry, name: &str, say: &dyn Fn(String) -> String) -> Result<bool, AskError> {
    if entry.cautions.is_empty() {
        return Ok(true);
    }
    let mut text = String::from("Cautions\n");
    for key in &entry.cautions {
        text += &format!("  - {}\n", say(format!("caution-{key}")));
    }
    if !entry.not_for.is_empty() {
        text += "Not for, unless their own clinician says otherwise\n";
        for key in &entry.not_for {
            text += &format!("  - {}\n", say(format!("notfor-{key}")));
        }
    }
    ask.say(text.trim_end())?;
    let question = if entry.needs_agreement {
        "Have you read these, and does the client's own clinician agree to this exercise? Type yes in full"
    } else {
        "Have you read these with this client in mind? Type yes in full"
    };
    let agreed = until(ask, question, None, |answer| match answer.to_lowercase().as_str() {
        "yes" => Ok(true),
        "no" => Ok(false),
        _ => Err("Type yes in full to take the exercise, or no to leave it out.".to_owned()),
    })?;
    if !agreed {
        ask.say(&format!("{name} is left out."))?;
    }
    Ok(agreed)
}

fn phrases(ask: &mut dyn Ask, hearing: Hearing<'_>) -> Result<Vec<String>, AskError> {
    ask.say("Phrases from the client's own day, one at a time; an empty answer ends the list.")?;
    let entry = catalogue().iter().find(|entry| entry.timing == Timing::ReadAloud);
    let mut phrases: Vec<String> = Vec::new();
    loop {
        let first = phrases.is_empty();
        let phrase = until(ask, &format!("Phrase {}", phrases.len() + 1), Some(""), |answer| {
            if answer.is_empty() {
                return if first { Err("Type at least one phrase.".to_owned()) } else { Ok(None) };
            }
            let step = entry.map(|entry| DraftStep { phrases: vec![answer.to_owned()], acknowledged: true, ..DraftStep::new(entry) });
            let draft = Draft { title: "x".to_owned(), steps: step.into_iter().collect(), ..Draft::default() };
            sound(&draft, hearing).map(|()| Some(answer.to_owned()))
        })?;
        match phrase {
            Some(phrase) => phrases.push(phrase),
            None => return Ok(phrases),
        }
    }
}

/// The built-in packs of categories, or all others.
fn packs(categories: bool) -> Vec<String> {
    let is_category = |text: &str| {
        toml::from_str::<toml::Table>(text).is_ok_and(|pack| pack.get("kind").and_then(toml::Value::as_str) == Some("category"))
    };
    built_in_packs().into_iter().filter(|(_, text)| is_category(text) == categories).map(|(name, _)| name).collect()
}

fn choose_packs(ask: &mut dyn Ask, categories: bool) -> Result<Vec<String>, AskError> {
    let names = packs(categories);
    let list = names.iter().enumerate().map(|(n, name)| format!("  {}  {name}", n + 1)).collect::<Vec<_>>().join("\n");
    ask.say(&format!("Word packs\n{list}"))?;
    until(ask, "Which ones? Numbers", Some("1"), |answer| {
        let chosen = answer.split([' ', ',', ';']).filter(|part| !part.is_empty());
        let chosen: Option<BTreeSet<usize>> = chosen.map(|part| part.parse().ok().filter(|n| (1..=names.len()).contains(n))).collect();
        let chosen: Vec<String> = chosen.iter().flatten().filter_map(|n| names.get(n - 1).cloned()).collect();
        if chosen.is_empty() { Err(format!("Type numbers from 1 to {}, separated by spaces.", names.len())) } else { Ok(chosen) }
    })
}

fn sips(ask: &mut dyn Ask) -> Result<Option<u32>, AskError> {
    let question = "Sips of water between the swallows? Only if the client's clinician has enabled sips for this client: water can go down \
                    the wrong way without a cough";
    if !yes_or_no(ask, question, Some(false))? {
        return Ok(None);
    }
    until(ask, "A sip after how many swallows each time", Some("2"), |answer| {
        answer.parse().ok().filter(|every| (1..=20).contains(every)).map(Some).ok_or_else(|| "Type a whole number from 1 to 20.".to_owned())
    })
}

/// Writes the file; never over another one unless that was asked for.
fn write(ask: &mut dyn Ask, file: Option<&Path>, title: &str, text: &str) -> Result<Option<PathBuf>, AskError> {
    let mut name = file.map(Path::to_path_buf);
    loop {
        let path = match name.take() {
            Some(path) => path,
            None => PathBuf::from(until(ask, "Write it to which file? A dash for none", Some(&file_name(title)), |answer| {
                Ok(answer.to_owned())
            })?),
        };
        if path == Path::new("-") {
            return Ok(None);
        }
        match disk::private::create_new(&path).and_then(|mut file| file.write_all(text.as_bytes())) {
            Ok(()) => return Ok(Some(path)),
            Err(why) if why.kind() == ErrorKind::AlreadyExists => {
                if path.is_file() && yes_or_no(ask, &format!("{} already exists. Replace it?", path.display()), None)? {
                    match disk::private::write(&path, text.as_bytes()) {
                        Ok(()) => return Ok(Some(path)),
                        Err(why) => ask.say(&format!("  {} cannot be written: {why}. Name another file.", path.display()))?,
                    }
                }
            }
            Err(why) => ask.say(&format!("  {} cannot be written: {why}. Name another file.", path.display()))?,
        }
    }
}

/// "evening-practice.toml".
fn file_name(title: &str) -> String {
    let words = title.to_lowercase();
    let words: Vec<&str> = words.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    format!("{}.toml", words.join("-"))
}
