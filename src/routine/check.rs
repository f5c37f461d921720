//! Reads a routine file and says everything that is wrong with it at once.

use super::bounds::{LANGUAGES, MAX_STEPS};
use super::catalogue::{catalogue, find};
use super::clinician;
use super::dose;
use super::fault::{FaultKind, Faults, Finder, suggestion};
use super::file::{NoAnswerFile, RoutineFile};
use super::looking_back;
use super::plan;
use super::prescribed::{NoAnswer, Routine, Step};
use super::prescription::Prescription;
use super::ramp::{self, Ramp};
use super::read::{self, MAX_FILE_BYTES};
use super::safe_check::{self, PlacedStep};
use super::shape::printable;
use super::text::{self, Hearing, SaidBy};

/// The number is told after every fifth trial: feedback on part of the trials is kept better than on each
/// (Adams, Page & Jog 2002; Chiviacowsky 2010, both seen).
const FEEDBACK_EVERY: u32 = 5;
/// A spoken agreement holds for so many months where the routine says nothing else; common practice, no source.
const AGREEMENT_MONTHS: u32 = 6;

/// Checks the bytes of a file; `name` stands for the file's name in faults. A byte-order mark is let pass.
///
/// # Errors
/// All faults of the file.
pub fn check_bytes(name: &str, bytes: &[u8], hearing: Hearing<'_>) -> Result<Prescription, Faults> {
    if bytes.len() > MAX_FILE_BYTES {
        return Err(too_large(name));
    }
    let (text, broken) = read::text_of(bytes);
    let mut faults = Finder::new(&text);
    if let Some((line, byte)) = broken {
        // A lossy reading keeps the lines, so what else is wrong can still be said.
        let span = text.find(char::REPLACEMENT_CHARACTER).map_or(0..0, |at| at..at);
        let what = format!("this is not UTF-8 text: byte {} of the file, in line {line}, belongs to no character", byte + 1);
        faults.add(FaultKind::UnreadableText, span, what, "Save the file as UTF-8.");
    }
    check(name, &text, hearing, faults)
}

/// Checks a text; `name` stands for the file's name in faults.
///
/// # Errors
/// All faults of the text.
pub fn check_text(name: &str, text: &str, hearing: Hearing<'_>) -> Result<Prescription, Faults> {
    check_bytes(name, text.as_bytes(), hearing)
}

/// What a routine prescribed that was checked once, whatever has become of its word packs and of the commands since. None
/// where its steps cannot be made out.
#[must_use]
pub fn doses_of(text: &str) -> Option<Prescription> {
    let mut faults = Finder::new(text);
    let file = read::routine_file(text, &mut faults);
    build(&file, Hearing::default(), &mut faults)
}

fn too_large(name: &str) -> Faults {
    let what = format!("the file is larger than {MAX_FILE_BYTES} bytes");
    Faults::of_file(name, what, "Check that it is a routine; split a long one in two.")
}

fn check(name: &str, text: &str, hearing: Hearing<'_>, mut faults: Finder<'_>) -> Result<Prescription, Faults> {
    let file = read::routine_file(text, &mut faults);
    let prescription = build(&file, hearing, &mut faults);
    match prescription {
        Some(prescription) if faults.list.is_empty() => Ok(prescription),
        _ => {
            if faults.list.is_empty() {
                faults.add(
                    FaultKind::Missing,
                    0..0,
                    "the routine is not complete",
                    "Compare it with the schema, `tidecount routine schema`.",
                );
            }
            Err(Faults::new(name, text, faults.list))
        }
    }
}

fn build(file: &RoutineFile, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> Option<Prescription> {
    let texts =
        [("title", &file.title, SaidBy::Tool), ("cue_words", &file.cue_words, SaidBy::Tool), ("client", &file.client, SaidBy::Nobody)];
    for (name, text, said_by) in texts {
        if let Some(text) = text {
            text::check(text, name, said_by, hearing, faults);
        }
    }
    if let Some(language) = file.language.as_ref().filter(|language| !hearing.speaks(&language.value)) {
        faults.add(
            FaultKind::UnknownName,
            language.span.clone(),
            format!("there are no words in the language \"{}\"", printable(&language.value)),
            suggestion(&language.value, LANGUAGES.iter().copied()),
        );
    }
    let feedback_every = match &file.feedback_every {
        Some(every) => {
            #[allow(clippy::cast_precision_loss, reason = "only compared with a small limit")]
            dose::check_number("feedback_every", every.value as f64, every.span.clone(), None, faults);
            u32::try_from(every.value).unwrap_or(FEEDBACK_EVERY)
        }
        None => FEEDBACK_EVERY,
    };
    let loud_limit_s = match &file.loud_limit_s {
        Some(limit) => {
            dose::check_number("loud_limit_s", limit.value, limit.span.clone(), None, faults);
            limit.value
        }
        None => super::limit_of(None, "voice_total_s").map_or(f64::INFINITY, |limit| limit.max),
    };
    let agreement_months = match &file.agreement_months {
        Some(months) => {
            #[allow(clippy::cast_precision_loss, reason = "only compared with a small limit")]
            dose::check_number("agreement_months", months.value as f64, months.span.clone(), None, faults);
            u32::try_from(months.value).unwrap_or(AGREEMENT_MONTHS)
        }
        None => AGREEMENT_MONTHS,
    };
    let no_answer = no_answer(file.no_answer.as_ref().map(|at| &at.value), faults);
    let (steps, ramps, placed) = steps(file, hearing, faults);
    check_sips(file, faults);
    let (clinician, plan) = (clinician::read(file, hearing, faults), plan::read(file, faults));
    safe_check::check(file, &placed, &clinician, &plan, faults);
    Some(Prescription {
        client: file.client.as_ref().map(|client| client.value.clone()),
        language: file.language.as_ref().map_or_else(|| "en".to_owned(), |language| language.value.clone()),
        routine: Routine {
            title: file.title.as_ref()?.value.clone(),
            steps,
            no_answer,
            cue_words: file.cue_words.as_ref().map(|words| words.value.clone()),
            feedback_every,
            loud_limit_s,
            clinician,
            looking_back: looking_back::read(file, faults),
        },
        ramps,
        plan,
        agreement_months,
    })
}

/// Sips are enabled for one client, never for whoever uses the file.
fn check_sips(file: &RoutineFile, faults: &mut Finder<'_>) {
    let steps = file.step.as_ref().map_or(&[][..], |steps| &steps.value);
    let enabled = steps.iter().filter(|step| step.value.sips_enabled_by_clinician.as_ref().is_some_and(|at| at.value));
    if let (None, Some(sips)) = (&file.client, enabled.filter_map(|step| step.value.sip_every.as_ref()).next()) {
        faults.add(
            FaultKind::NotAllowed,
            sips.span.clone(),
            "`sip_every` offers water, but the routine does not say to whom",
            "Add `client = \"…\"` at the top: a clinician enables sips for one client, by the name under which that client practises.",
        );
    }
}

fn steps<'f>(file: &'f RoutineFile, hearing: Hearing<'_>, faults: &mut Finder<'_>) -> (Vec<Step>, Vec<Ramp>, Vec<PlacedStep<'f>>) {
    let Some(typed) = &file.step else { return (Vec::new(), Vec::new(), Vec::new()) };
    if typed.value.is_empty() {
        faults.add(FaultKind::Missing, typed.span.clone(), "the routine has no steps", "Add at least one `[[step]]` with an `exercise`.");
    }
    if typed.value.len() > MAX_STEPS {
        let what = format!("the routine has {} steps, more than {MAX_STEPS}", typed.value.len());
        faults.add(
            FaultKind::OutOfRange,
            typed.span.clone(),
            what,
            "Split it in two files; use `sets` and `repetitions` for what comes back.",
        );
        return (Vec::new(), Vec::new(), Vec::new());
    }
    let (mut steps, mut ramps, mut placed) = (Vec::new(), Vec::new(), Vec::new());
    for step in &typed.value {
        let Some(id) = &step.value.exercise else { continue };
        let Some(entry) = find(&id.value) else {
            faults.add(
                FaultKind::UnknownExercise,
                id.span.clone(),
                format!("unknown exercise \"{}\"", printable(&id.value)),
                suggestion(&id.value, catalogue().iter().map(|entry| entry.id.as_str())),
            );
            continue;
        };
        let before = faults.list.len();
        let built = dose::build(step, entry, hearing, faults);
        let ramp = ramp::read(step, steps.len() + 1, entry, hearing, faults);
        // What is out of its own limits was named; what it adds up to would only repeat that.
        let sound = faults.list.iter().skip(before).all(|fault| fault.kind != FaultKind::OutOfRange);
        if sound && let Some(built) = &built {
            placed.push(PlacedStep::new(step, built, ramp.as_ref()));
        }
        steps.extend(ramp.as_ref().and_then(|ramp| ramp.stages.first().cloned()).or(built));
        ramps.extend(ramp);
    }
    (steps, ramps, placed)
}

fn no_answer(file: Option<&NoAnswerFile>, faults: &mut Finder<'_>) -> NoAnswer {
    // Defaults of the contract: a time that suits a slow speaker, asked twice, ten minutes.
    let mut patience = NoAnswer { ask_again_after_s: 12.0, asks: 2, give_up_after_s: 600.0 };
    let Some(file) = file else { return patience };
    if let Some(after) = &file.ask_again_after_s {
        dose::check_number("ask_again_after_s", after.value, after.span.clone(), None, faults);
        patience.ask_again_after_s = after.value;
    }
    if let Some(asks) = &file.asks {
        #[allow(clippy::cast_precision_loss, reason = "only compared with a small limit")]
        dose::check_number("asks", asks.value as f64, asks.span.clone(), None, faults);
        patience.asks = u32::try_from(asks.value).unwrap_or(patience.asks);
    }
    if let Some(give_up) = &file.give_up_after_s {
        dose::check_number("give_up_after_s", give_up.value, give_up.span.clone(), None, faults);
        patience.give_up_after_s = give_up.value;
        let asking_s = patience.ask_again_after_s * f64::from(patience.asks.saturating_add(1));
        if give_up.value < asking_s {
            faults.add(
                FaultKind::OutOfRange,
                give_up.span.clone(),
                format!("`give_up_after_s` is {}, but asking again alone takes {asking_s} s", give_up.value),
                "Give a longer time, or ask less often.",
            );
        }
    }
    patience
}
