//! `tidecount demo --weeks`: a record of weeks of practice, each practice led by the real program with a simulated client, so that
//! pages and reports can be looked at without weeks of use.

use std::io::Write as _;
use std::path::{Path, PathBuf};

use jiff::civil::{Date, Weekday};
use jiff::{Span, ZonedDateTime};

use super::weeks_class as class;
use crate::simulated::course::{self, ROUTINE};
use crate::simulated::goals;
use files::error::Failure;
use files::load::{self, Loaded};
use files::reports::{Format, Wanted, make};
use live::follow::SharedScreen;
use live::practice::Practice;
use live::rehearsal::{self, ClientsEar, ROOM_HZ};
use record::{Source, Store};
use rehearse::Script;
use routine::VOICE;
use screen::TerminalScreen;
use speak::Words;

const CLIENT: (&str, &str) = ("demo/weeks/client.toml", include_str!("../../../demo/weeks/client.toml"));
/// It stands in every file that is made of the record.
const NAME: &str = "simulated client";

/// So many practices at the end have their sound kept: what was told of the week can be heard. Sound of all would fill the disk.
const WITH_SOUND: usize = 3;
const SOUND_DAYS: u32 = 30;

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
            goals::set(&data, NAME, *day, now.date())?;
        }
        if number == days.len().saturating_sub(WITH_SOUND) {
            allow_sound(&data, day)?;
        }
        let _ = writeln!(told, "{day}: practice {} of {}", number + 1, days.len());
        led(&data, day, 10, ROUTINE.0, ROUTINE.1, None, &text, model)?;
        if number == last && weeks > 1 {
            led(&data, day, 11, VOICE.name, VOICE.text, Some(VOICE.name), &text, model)?;
        }
    }
    class::lead(&data, weeks, now.date(), model)?;
    goals::mark(&data, NAME, now.date())?;
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
    let _ = writeln!(told, "The classes:   tidecount history --classes --data {}", data.display());
    let _ = writeln!(told, "The pages:     tidecount pages --data {}", data.display());
    Ok(Made { data, report })
}

/// Every planned day of so many weeks before today, but two in the middle, when he was not well.
fn planned(weeks: u32, today: Date) -> Vec<Date> {
    let missed = |day: &Date| {
        weeks >= 4 && day.weekday() != Weekday::Monday && (today.saturating_sub(Span::new().weeks(weeks / 2)) - *day).get_days().abs() < 4
    };
    course::planned(weeks, today).into_iter().filter(|day| !missed(day)).collect()
}

/// The client on one day: `along` the weeks, 0 to 1, he gets a little stronger, and from day to day it goes up and down.
fn client(number: usize, along: f64) -> String {
    let mood = course::mood(number);
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
        .replace("{MOMENT}", "On Tuesday I rang my sister, and she heard every word")
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

/// The page asks for the sound; the client says yes aloud at the next practice.
fn allow_sound(data: &Path, day: &Date) -> Result<(), Failure> {
    let wished = day
        .at(8, 0, 0, 0)
        .to_zoned_datetime(jiff::tz::TimeZone::system())
        .map_err(|why| Failure::Again(format!("{day} has no 8 o'clock here: {why}")))?;
    Store::open(data)?.sound_wish(NAME, SOUND_DAYS, &wished)?;
    Ok(())
}
