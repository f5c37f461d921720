//! `tidecount demo --weeks`: a record of weeks of practice, each practice led by the real program with a simulated client, so that
//! pages and reports can be looked at without weeks of use.

use std::io::Write as _;
use std::path::{Path, PathBuf};

use jiff::civil::{Date, Weekday};
use jiff::{Span, ZonedDateTime};

use files::error::Failure;
use files::load::{self, Loaded};
use files::reports::{Format, Wanted, make};
use live::follow::SharedScreen;
use live::practice::Practice;
use live::rehearsal::{self, ClientsEar, ROOM_HZ};
use model::Measure;
use progress::{Aim, Direction, Mark, MarkKind};
use record::{NewGoal, Source, Store};
use rehearse::Script;
use routine::VOICE;
use screen::TerminalScreen;
use speak::Words;

const ROUTINE: (&str, &str) = ("demo/weeks/routine.toml", include_str!("../../../demo/weeks/routine.toml"));
const CLIENT: (&str, &str) = ("demo/weeks/client.toml", include_str!("../../../demo/weeks/client.toml"));
/// It stands in every file that is made of the record.
const NAME: &str = "simulated client";
/// The days of the plan.
const DAYS: [Weekday; 3] = [Weekday::Monday, Weekday::Wednesday, Weekday::Friday];

/// What was made.
pub struct Made {
    /// The folder of the record.
    pub data: PathBuf,
    /// An HTML file.
    pub report: PathBuf,
}

/// Leads `weeks` weeks into a new record under `out`, and makes its report.
///
/// # Errors
/// The folder holds a record already, or model, voice or record cannot be used.
pub fn lead(out: &Path, weeks: u32, model: Option<&Path>, now: &ZonedDateTime) -> Result<Made, Failure> {
    let data = out.join("weeks");
    if data.exists() {
        return Err(Failure::file(&data, "is there already: delete it, or name another folder with --out".to_owned()));
    }
    disk::private::folder(&data).map_err(|why| Failure::file(&data, format!("cannot be made: {why}; name another folder with --out")))?;
    let days = planned(weeks, now.date());
    let last = days.len().saturating_sub(1);
    let mut told = std::io::stdout();
    for (number, day) in days.iter().enumerate() {
        let along = if last == 0 { 0.0 } else { number as f64 / last as f64 };
        let text = client(number, along);
        // A baseline stands before the first practice, and after more than a week a re-test behind the last.
        if number == 0 {
            led(&data, day, 9, VOICE.name, VOICE.text, Some(VOICE.name), &text, model)?;
            goals(&data, *day, now.date())?;
        }
        let _ = writeln!(told, "{day}: practice {} of {}", number + 1, days.len());
        led(&data, day, 10, ROUTINE.0, ROUTINE.1, None, &text, model)?;
        if number == last && weeks > 1 {
            led(&data, day, 11, VOICE.name, VOICE.text, Some(VOICE.name), &text, model)?;
        }
    }
    marked(&data, now.date())?;
    let report = out.join("weeks-report.html");
    // Its weeks begin on a Monday: one more, so that the first days stand in it.
    let wanted = Wanted {
        client: Some(NAME.to_owned()),
        weeks: weeks + 1,
        format: Format::Html,
        page: files::reports::Page::Whole,
        data: data.clone(),
    };
    let (_, bytes) = make(&wanted, now.date(), &Words::usual()?)?;
    disk::private::write(&report, &bytes).map_err(|why| Failure::file(&report, format!("cannot be written: {why}")))?;
    let _ = writeln!(told, "\nThe report:    {}", report.display());
    let _ = writeln!(told, "The baselines: tidecount assess --show --data {}", data.display());
    let _ = writeln!(told, "The chart:     tidecount report --format chart --data {}", data.display());
    let _ = writeln!(told, "The pages:     tidecount pages --data {}", data.display());
    Ok(Made { data, report })
}

/// Every planned day of so many weeks before today, but two in the middle, when he was not well.
fn planned(weeks: u32, today: Date) -> Vec<Date> {
    let first = today.saturating_sub(Span::new().weeks(weeks));
    let all = (0..7 * i64::from(weeks)).map(|n| first.saturating_add(Span::new().days(n)));
    let missed = |day: &Date| {
        weeks >= 4 && day.weekday() != Weekday::Monday && (today.saturating_sub(Span::new().weeks(weeks / 2)) - *day).get_days().abs() < 4
    };
    all.filter(|day| DAYS.contains(&day.weekday()) && !missed(day)).collect()
}

/// The client on one day: `along` the weeks, 0 to 1, he gets a little stronger, and from day to day it goes up and down.
fn client(number: usize, along: f64) -> String {
    // A sum of two waves without a common period: up and down, and the same each time.
    let mood = (number as f64 * 2.4).sin() * 0.6 + (number as f64 * 5.1).sin() * 0.4;
    let hold_s = 8.5 + 4.0 * along + 0.9 * mood;
    let number_word = |n: f64| {
        ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"][(n.round().clamp(0.0, 10.0)) as usize]
    };
    CLIENT
        .1
        .replace("{SEED}", &(number + 3).to_string())
        .replace("{HOLD_S}", &format!("{hold_s:.1}"))
        .replace("{SECOND_S}", &format!("{:.1}", hold_s + 0.5 - 0.4 * mood))
        .replace("{VOWEL_DB}", &format!("{:.1}", -28.0 + 3.0 * along + mood))
        .replace("{SPEECH_DB}", &format!("{:.1}", -30.0 + 4.0 * along + mood))
        .replace("{TOP_HZ}", &format!("{:.0}", 190.0 + 40.0 * along + 6.0 * mood))
        .replace("{EFFORT}", number_word(6.0 - 2.0 * along - mood))
        .replace("{VOICE}", number_word(4.0 + 3.0 * along + mood))
        .replace("{COUGH}", if number == 4 { "yes" } else { "no" })
}

/// Leads one session at this hour of the day.
#[expect(clippy::too_many_arguments, reason = "one call each for practice and baseline; a struct would name the same things twice")]
fn led(
    data: &Path,
    day: &Date,
    hour: i8,
    name: &str,
    text: &str,
    protocol: Option<&str>,
    client: &str,
    model: Option<&Path>,
) -> Result<(), Failure> {
    let Loaded { words, model, lexicon, prescription, routine_text } = load::built_in(name, text, model)?;
    let now = day
        .at(hour, 0, 0, 0)
        .to_zoned_datetime(jiff::tz::TimeZone::system())
        .map_err(|why| Failure::Again(format!("{day} has no {hour} o'clock here: {why}")))?;
    let (io, rehearsal) = rehearsal::devices(Script::parse(CLIENT.0, client)?, ROOM_HZ)?;
    let loaded = Loaded { words, model, lexicon, prescription, routine_text };
    let practice = Practice {
        hears_itself: true,
        protocol: protocol.map(str::to_owned),
        ..Practice::of(loaded, Source::Live, NAME.to_owned(), data.to_owned())
    };
    let quiet = SharedScreen::new(TerminalScreen::plain(Box::new(std::io::sink())));
    practice.lead_at(now, Box::new(io), quiet, vec![Box::new(ClientsEar(rehearsal))]).map(drop)
}

/// One goal that is measured, and one of daily life.
fn goals(data: &Path, first: Date, today: Date) -> Result<(), Failure> {
    let mut store = Store::open(data)?;
    let aim = Aim { exercise: "long-ah".to_owned(), measure: Measure::HoldS, direction: Direction::AtLeast, target: 12.0 };
    let by = "the simulated clinician";
    store.add_goal(
        NAME,
        &NewGoal { words: "I want the breath for a whole verse.", aim: Some(aim), set_on: first, due: today, set_by: by },
    )?;
    let daily = NewGoal { words: "I want to order my own coffee.", aim: None, set_on: first, due: today, set_by: by };
    store.add_goal(NAME, &daily)?;
    Ok(())
}

/// The goal of daily life is marked as met.
fn marked(data: &Path, today: Date) -> Result<(), Failure> {
    let mut store = Store::open(data)?;
    if let Some(daily) = store.goals(NAME)?.iter().find(|goal| goal.aim.is_none()) {
        store.mark_goal(NAME, daily.id, &Mark { kind: MarkKind::Met, on: today, by: "the simulated clinician".to_owned() })?;
    }
    Ok(())
}
