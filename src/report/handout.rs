//! What stands on the handout of a routine.

use serde::Serialize;

use routine::{ClinicianWord, Posture, Prescription, Ramp, Step, Weekday, Work, find};
use session::Arg;

/// The caution that is about sitting.
const SEATED: &str = "sit-upright";

/// Puts a message of the catalogue of words into words, with its arguments; an empty text where it is missing.
pub type Say<'a> = &'a dyn Fn(&str, &[(&'static str, Arg)]) -> String;

/// A drawing and its description in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Figure {
    pub svg: String,
    pub described: String,
}

/// The drawing of this name.
fn figure_of(name: &str, say: Say<'_>) -> Option<Figure> {
    pictures::find(name).map(|picture| Figure { svg: picture.svg(), described: say(&picture.described(), &[]) })
}

/// The page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Handout {
    pub title: String,
    /// Whom it is for, when it is done, how long it takes, and how to sit; a line each.
    pub under_title: Vec<String>,
    /// A line drawing beside the title: how to sit, where an exercise is done seated.
    pub figure: Option<Figure>,
    pub items: Vec<Item>,
    /// "Say", and what.
    pub say_title: String,
    pub say: String,
    /// "Stop at once", and when.
    pub stop_title: String,
    pub stop: Vec<String>,
    pub foot: String,
    /// The language of all of it, "en".
    pub language: String,
    /// "Page {page} of {pages}", for who sets the pages to fill in.
    pub page_of: String,
}

/// One exercise.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Item {
    /// Counted from 1.
    pub number: usize,
    pub name: String,
    /// "3 times, held 10 seconds, 60 seconds rest between".
    pub dose: String,
    /// The short instruction.
    pub how: String,
    /// Its cautions in a few words; none where there are none.
    pub care: Option<String>,
    /// Who must not do it, in full, where a clinician must agree to it.
    pub not_for: Option<String>,
    /// What is read aloud.
    pub phrases: Vec<String>,
    /// A line drawing of what the body does, where it moves or is held.
    pub figure: Option<Figure>,
}

/// The handout of a routine. `done`, `ready` and the like are said as the catalogue of words has them.
#[must_use]
pub fn handout(prescription: &Prescription, say: Say<'_>) -> Handout {
    let routine = &prescription.routine;
    let mut under_title = Vec::new();
    let minutes = ("minutes", Arg::Number((routine.planned_duration_s() / 60.0).ceil()));
    let about = say("handout-about-shown", &[minutes]);
    let when = when(prescription, say);
    let who = prescription.client.as_ref().map(|client| say("handout-for-shown", &[("client", Arg::Text(client.clone()))]));
    under_title.push(capital(&who.into_iter().chain([about]).collect::<Vec<_>>().join(", ")));
    under_title.extend(when.iter().map(|line| capital(line)));
    let ramp_of = |n: usize| prescription.ramps.iter().find(|ramp| usize::try_from(ramp.step).is_ok_and(|step| step == n));
    let items = routine.steps.iter().enumerate().map(|(n, step)| item(n + 1, step, ramp_of(n + 1), say)).collect();
    let needs = |key: &str| routine.steps.iter().any(|step| step.exercise.cautions.iter().any(|caution| caution == key));
    let seated = needs(SEATED);
    if seated {
        under_title.push(say("handout-seated-shown", &[]));
    }
    under_title.extend(asked_at_end(prescription, say));
    under_title.extend(spoken_for(prescription, say));
    let mut stop = vec!["unwell"];
    if needs("swallow-assessed") || needs("saliva-only") {
        stop.push("swallow");
    }
    stop.push("emergency");
    let waits_for_done = routine.steps.iter().any(|step| matches!(step.work, Work::Repeated { next_cue_after_s: None, .. }));
    let words = ["ready", "done", "stop", "pause", "help", "finish"].into_iter().filter(|word| *word != "done" || waits_for_done);
    let words = words.map(|word| say(&format!("handout-say-{word}-shown"), &[("word", Arg::Message(format!("say-{word}")))]));
    Handout {
        title: routine.title.clone(),
        under_title,
        figure: seated.then(|| figure_of(Posture::Sitting.name(), say)).flatten(),
        items,
        say_title: say("handout-say-title-shown", &[]),
        say: words.collect::<Vec<_>>().join(", ") + ".",
        stop_title: say("handout-stop-title-shown", &[]),
        stop: stop.into_iter().map(|part| say(&format!("handout-stop-{part}-shown"), &[])).collect(),
        foot: say("handout-foot-shown", &[]),
        language: say("language-tag", &[]),
        page_of: page_of(say),
    }
}

/// That short questions follow; none where nothing is asked.
fn asked_at_end(prescription: &Prescription, say: Say<'_>) -> Option<String> {
    let asked = &prescription.routine.looking_back;
    let key = match (asked.ratings.is_empty(), asked.weekly) {
        (true, false) => return None,
        (false, false) => "handout-asked-shown",
        (true, true) => "handout-asked-weekly-shown",
        (false, true) => "handout-asked-both-shown",
    };
    Some(say(key, &[]))
}

/// What goes beyond the usual, and who spoke for it; a line each.
fn spoken_for(prescription: &Prescription, say: Say<'_>) -> Vec<String> {
    let word = |key: &str, name: Option<String>, word: &ClinicianWord| {
        let mut args = vec![("who", Arg::Text(word.who.clone())), ("why", Arg::Text(word.why.clone()))];
        args.extend(name.map(|name| ("name", Arg::Text(name))));
        say(key, &args)
    };
    let clinician = &prescription.routine.clinician;
    let whole = clinician.whole.iter().map(|whole| word("handout-word-whole-shown", None, whole));
    let single = clinician.exercises.iter().map(|(id, one)| word("handout-word-shown", Some(say(&format!("ex-{id}-name"), &[])), one));
    whole.chain(single).collect()
}

/// "Page {page} of {pages}": the numbers are known only where the pages are set.
pub(super) fn page_of(say: Say<'_>) -> String {
    let blank = |name: &str| Arg::Text(format!("{{{name}}}"));
    say("handout-page-shown", &[("page", blank("page")), ("pages", blank("pages"))])
}

/// Times of the same days together: "Monday and Wednesday at 18:30".
fn when(prescription: &Prescription, say: Say<'_>) -> Vec<String> {
    let mut groups: Vec<(Vec<Weekday>, Vec<String>)> = Vec::new();
    for planned in &prescription.plan {
        let days: Vec<Weekday> = planned.days.iter().copied().collect();
        match groups.iter_mut().find(|(known, _)| *known == days) {
            Some((_, times)) => times.push(planned.at_text()),
            None => groups.push((days, vec![planned.at_text()])),
        }
    }
    let lines = groups.into_iter().map(|(days, mut times)| {
        times.sort();
        let times = ("times", Arg::Text(and(&times, say)));
        if days.len() == Weekday::ALL.len() {
            return say("handout-every-day-shown", &[times]);
        }
        let days: Vec<String> = days.iter().map(|day| say(day.key(), &[])).collect();
        say("handout-on-days-shown", &[("days", Arg::Text(and(&days, say))), times])
    });
    lines.collect()
}

/// "a, b and c".
fn and(all: &[String], say: Say<'_>) -> String {
    match all.split_last() {
        Some((last, before)) if !before.is_empty() => {
            say("handout-and-shown", &[("before", Arg::Text(before.join(", "))), ("last", Arg::Text(last.clone()))])
        }
        _ => all.concat(),
    }
}

fn item(number: usize, step: &Step, ramp: Option<&Ramp>, say: Say<'_>) -> Item {
    let id = &step.exercise.id;
    // What is voiced, breathed or answered is told by its words, and a page has room for few drawings.
    let moves = matches!(step.work, Work::Timed { .. } | Work::Repeated { .. });
    let sips = matches!(step.work, Work::Repeated { sip_every: Some(_), .. });
    // How to sit is said once, above; without sips their rules only take room.
    let cautions = step.exercise.cautions.iter().filter(|key| *key != SEATED && (sips || *key != "sip-rules"));
    let care: Vec<String> = cautions.map(|key| say(&format!("care-{key}-shown"), &[])).filter(|care| !care.is_empty()).collect();
    let mut dose = dose(step, say);
    // The goal is the last stage, told short: its times and its length.
    if let Some(last) = ramp.and_then(|ramp| ramp.stages.last()).filter(|last| last.ramp_stage != step.ramp_stage) {
        let goal = short_dose(last, say).join(", ");
        dose.push(say("handout-grows-shown", &[("goal", Arg::Text(goal))]));
    }
    Item {
        number,
        name: say(&format!("ex-{id}-name"), &[]),
        dose: dose.join(", "),
        how: say(&format!("ex-{id}-short"), &[]),
        care: (!care.is_empty()).then(|| say("handout-care-shown", &[("list", Arg::Text(care.join("; ")))])),
        not_for: step.exercise.needs_agreement.then(|| not_for(id, say)).flatten(),
        phrases: match &step.work {
            Work::ReadAloud { phrases, .. } => phrases.clone(),
            Work::Talk { passage, prompts, .. } => passage.iter().chain(prompts).cloned().collect(),
            _ => Vec::new(),
        },
        figure: moves.then(|| figure_of(id, say)).flatten(),
    }
}

/// The groups of people who must not do an exercise, each as its sentence says it, in one list.
fn not_for(id: &str, say: Say<'_>) -> Option<String> {
    let nouns_are_capital = say("language-nouns", &[]) == "capital";
    let in_a_list = |text: &str| if nouns_are_capital { text.to_owned() } else { uncapital(text) };
    let groups = find(id)?.not_for.iter().map(|key| in_a_list(say(&format!("notfor-{key}"), &[]).trim_end_matches('.')));
    let list = groups.collect::<Vec<_>>().join("; ");
    (!list.is_empty()).then(|| say("handout-not-for-shown", &[("list", Arg::Text(list))]))
}

/// How often and how long.
fn short_dose(step: &Step, say: Say<'_>) -> Vec<String> {
    let number = |value: f64| Arg::Number(value);
    let times = || {
        let (n, sets) = (f64::from(step.repetitions), f64::from(step.sets));
        say("handout-times-shown", &[("n", number(n)), ("sets", number(sets))])
    };
    let of = |key: &str| say(key, &[("n", number(f64::from(step.repetitions * step.sets)))]);
    match &step.work {
        Work::Voiced { ladder: Some(ladder), .. } => {
            let rungs = ladder.rungs.iter().map(|rung| rung.word(ladder.climbs)).collect::<Vec<_>>().join(", ");
            vec![times(), say("handout-ladder-shown", &[("rungs", Arg::Text(rungs))])]
        }
        Work::Voiced { target_s: Some(s), .. } => vec![times(), say("handout-goal-shown", &[("s", number(*s))])],
        Work::Voiced { target_s: None, .. } => vec![times(), say("handout-no-goal-shown", &[])],
        Work::Timed { phases, .. } => match &phases[..] {
            [only] => vec![times(), say("handout-held-shown", &[("s", number(only.length_s))])],
            all => {
                let name = |name: &str| ("name", Arg::Text(name.to_owned()));
                let all: Vec<String> =
                    all.iter().map(|phase| say("handout-phase-shown", &[name(&phase.name), ("s", number(phase.length_s))])).collect();
                vec![times(), say("handout-phases-shown", &[("phases", Arg::Text(all.join(", ")))])]
            }
        },
        Work::Paced { phases, .. } => {
            let counts = |name: &str| phases.iter().find(|phase| phase.name == name).map_or(0.0, |phase| f64::from(phase.counts));
            vec![times(), say("handout-counts-shown", &[("in", number(counts("in"))), ("out", number(counts("out")))])]
        }
        Work::Repeated { .. } => vec![times()],
        Work::ReadAloud { .. } => vec![of("handout-phrases-shown")],
        Work::Talk { passage: Some(_), .. } => vec![say("handout-passage-shown", &[])],
        Work::Talk { length_s, .. } => vec![times(), say("handout-talk-shown", &[("s", number(*length_s))])],
        Work::Rapid { syllables, length_s } => {
            vec![times(), say("handout-syllables-shown", &[("syllables", Arg::Text(syllables.clone())), ("s", number(*length_s))])]
        }
        Work::Question { .. } => vec![of("handout-questions-shown")],
        Work::Naming { length_s, .. } => vec![of("handout-categories-shown"), say("handout-minute-shown", &[("s", number(*length_s))])],
        Work::Rest { length_s: Some(s) } => vec![say("handout-rest-length-shown", &[("s", number(*s))])],
        Work::Rest { length_s: None } => vec![say("handout-rest-ready-shown", &[("ready", Arg::Message("say-ready".to_owned()))])],
    }
}

/// The whole dose, in parts.
fn dose(step: &Step, say: Say<'_>) -> Vec<String> {
    let mut parts = short_dose(step, say);
    if let Work::Repeated { next_cue_after_s, sip_every, setting } = &step.work {
        parts.extend(setting.clone().map(|setting| say("handout-setting-shown", &[("setting", Arg::Text(setting))])));
        parts.push(match next_cue_after_s {
            Some(_) => say("handout-next-on-cue-shown", &[]),
            None => say("handout-next-on-done-shown", &[("done", Arg::Message("say-done".to_owned()))]),
        });
        parts.extend(sip_every.map(|every| say("handout-sips-shown", &[("every", Arg::Number(f64::from(every)))])));
    }
    // Sitting is said once, above.
    if let Some(posture) = step.posture.filter(|posture| *posture != Posture::Sitting) {
        parts.push(say(&format!("handout-posture-{}-shown", posture.name()), &[]));
    }
    // A pause of a few seconds is led anyway and need not be read.
    if step.repetitions > 1 && step.rest_s >= 10.0 {
        parts.push(say("handout-rest-between-shown", &[("s", Arg::Number(step.rest_s))]));
    }
    parts
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or(String::new(), |first| first.to_uppercase().chain(chars).collect())
}

fn uncapital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or(String::new(), |first| first.to_lowercase().chain(chars).collect())
}
