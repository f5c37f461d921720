//! The class of the simulated weeks: each Thursday of the last weeks a clinician calls the roll and leads stretches, through the real
//! program.

use std::path::Path;

use jiff::Span;
use jiff::civil::{Date, Weekday};

use files::classes::class_of;
use files::error::Failure;
use files::load::{self, Loaded};
use live::follow::SharedScreen;
use live::practice::{ClassGiven, ClassKeeper, Practice};
use live::rehearsal::{self, ClientsEar, ROOM_HZ};
use record::Source;
use rehearse::Script;
use screen::TerminalScreen;

const ROUTINE: (&str, &str) = ("demo/class/short.toml", include_str!("../../../demo/class/short.toml"));
const CLASS: (&str, &str) = ("demo/class/thursday.toml", include_str!("../../../demo/class/thursday.toml"));
const CLINICIAN: (&str, &str) = ("demo/weeks/clinician.toml", include_str!("../../../demo/weeks/clinician.toml"));
/// Of so many weeks there is a class; more would only take time.
const WEEKS: u32 = 3;

/// Leads the classes of the last weeks before `today` into the record.
///
/// # Errors
/// Model, voice or record cannot be used.
pub fn lead(data: &Path, weeks: u32, today: Date, model: Option<&Path>) -> Result<(), Failure> {
    let first = today.saturating_sub(Span::new().weeks(weeks.min(WEEKS)));
    let days = (0..7 * i64::from(weeks.min(WEEKS))).map(|n| first.saturating_add(Span::new().days(n)));
    for (number, day) in (0..).zip(days.filter(|day| day.weekday() == Weekday::Thursday)) {
        one(data, day, number, model)?;
    }
    Ok(())
}

/// One class. Who is there differs from week to week.
fn one(data: &Path, day: Date, number: usize, model: Option<&Path>) -> Result<(), Failure> {
    let Loaded { words, model, lexicon, prescription, routine_text } = load::built_in(ROUTINE.0, ROUTINE.1, model)?;
    let mut list = class_of(CLASS.0, CLASS.1.as_bytes(), &words, &lexicon)?;
    list.title += " (simulated)";
    let began = day
        .at(10, 30, 0, 0)
        .to_zoned_datetime(jiff::tz::TimeZone::system())
        .map_err(|why| Failure::Again(format!("{day} has no half past ten here: {why}")))?;
    let away = list.participants.len() - 1 - number % list.participants.len();
    let client = CLINICIAN.1.replace("{SEED}", &(number + 5).to_string()).replace("{AWAY}", &(away + 1).to_string());
    let (io, rehearsal) = rehearsal::devices(Script::parse(CLINICIAN.0, &client)?, ROOM_HZ)?;
    let keeper = ClassKeeper::begin(&list, &prescription.routine.title, Source::Live, data, &began)?;
    let loaded = Loaded { words, model, lexicon, prescription, routine_text };
    let practice = Practice { hears_itself: true, ..Practice::of(loaded, Source::Live, "class".to_owned(), data.to_owned()) };
    let given = ClassGiven { participants: list.participants, names_aloud: false };
    let quiet = SharedScreen::new(TerminalScreen::plain(Box::new(std::io::sink())));
    let observers: Vec<Box<dyn live::observe::Observer>> = vec![Box::new(keeper), Box::new(ClientsEar(rehearsal))];
    match practice.lead_class(given, Box::new(io), quiet, observers)? {
        Some(why) => Err(Failure::Again(format!("the simulated class of {day} was broken off: {why}"))),
        None => Ok(()),
    }
}
