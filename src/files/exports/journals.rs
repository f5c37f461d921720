//! Whole practices: each with every entry of its journal, as JSON Lines or as a FHIR bundle.

use jiff::ZonedDateTime;

use crate::error::Failure;
use crate::exports::out::{Target, failed};
use crate::exports::read::{Chosen, Selection};
use crate::number_words::counted;
use export::fhir::{BundleKind, FhirExport};
use export::{GoalOn, iso, write_goal, write_practice};
use session::{Arg, Line};
use speak::Words;

/// Writes JSON Lines: a line for each practice, then one for each entry of its journal; behind all of them a line for each goal.
///
/// # Errors
/// There is nothing to export, or it cannot be read or written.
pub fn write_json(selection: &Selection, target: &Target) -> Result<(), Failure> {
    let chosen = Chosen::find(selection)?;
    target.spare_record(chosen.store())?;
    let practices = chosen.heads().count();
    let (goals, on) = (chosen.goals()?, chosen.judged_on());
    target.write(|to| {
        chosen.each(|practice| write_practice(practice, to).map_err(failed))?;
        let each = goals.iter().flat_map(|(client, states)| states.iter().map(move |state| GoalOn { client, state, on }));
        each.into_iter().try_for_each(|goal| write_goal(&goal, to).map_err(failed))
    })?;
    told(target, practices);
    Ok(())
}

/// Writes one client's plans, practices and trials as a bundle of HL7 FHIR R4.
///
/// # Errors
/// As [`write_json`]; or the practices are of several clients.
pub fn write_fhir(selection: &Selection, kind: BundleKind, target: &Target) -> Result<(), Failure> {
    let chosen = Chosen::find(selection)?;
    let client = match &chosen.clients()[..] {
        [client] => client.clone(),
        several => {
            return Err(Failure::Options(format!(
                "a bundle holds one client, so that nobody's results are mistaken for another's. Name one with --client: {}",
                several.join(", ")
            )));
        }
    };
    target.spare_record(chosen.store())?;
    let words = Words::usual()?;
    let say =
        |key: &str, given: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: given.to_vec() }).unwrap_or_default();
    let practices = chosen.heads().count();
    let heads: Vec<_> = chosen.all_heads().iter().filter(|head| head.client == client).cloned().collect();
    let (goals, on) = (chosen.goals()?, chosen.judged_on());
    target.write(|to| {
        let mut bundle = FhirExport::begin(to, kind, &client, &heads, &iso(&ZonedDateTime::now()), &say).map_err(failed)?;
        chosen.each(|practice| bundle.practice(practice).map_err(failed))?;
        for (client, states) in &goals {
            states.iter().try_for_each(|state| bundle.goal(&GoalOn { client, state, on }).map_err(failed))?;
        }
        bundle.finish().map(drop).map_err(failed)
    })?;
    told(target, practices);
    Ok(())
}

fn told(target: &Target, practices: usize) {
    if let Some(path) = target.file() {
        eprintln!("{}: {}. Anyone who has the file can read it.", path.display(), counted(practices, "practice"));
    }
}
