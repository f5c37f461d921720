//! The pages of a place until they are closed, and the practices that are started there. What `pages`, `demo` and `try` have in common.

use std::path::Path;
use std::process::ExitCode;
use std::sync::atomic::Ordering;
use std::time::Duration;

use crate::options::SoundPath;
use crate::terminal::ending::watch_for_its_end;
use ::clinic::Address;
use ::pages::follow::server::{self, Pages, Wanted};
use ::pages::set_up::site::Place;
use ::pages::set_up::starting::{Starts, Wish};
use audio::AudioIo;
use audio::file::names_file;
use command_ear::Lexicon;
use files::error::Failure;
use files::households::{by_page, emergency_number, read_household};
use files::load;
use live::follow::SharedScreen;
use live::levels::{self, Levels};
use live::practice::Practice;
use record::Source;
use screen::TerminalScreen;
use speak::{Language, Words};

/// Whether it is to end is looked at so often.
const LOOKS: Duration = Duration::from_millis(200);

/// A record with nothing else named: the household file in it, the usual devices, the clinic database in it where there is one.
pub fn usual_place(data: &Path) -> Place {
    let clinic = data.join("clinic.sqlite");
    Place {
        household: data.join("household.toml"),
        data: data.to_owned(),
        mic: "default".into(),
        speaker: "default".into(),
        voice: None,
        model: None,
        recogniser: None,
        clinic: clinic.exists().then_some(Address::File(clinic)),
        today: None,
    }
}

/// Serves the pages, and leads what is started there, until it is asked to end.
///
/// # Errors
/// The port is taken, or words cannot be had. What keeps one practice from beginning is told on its page.
pub fn until_ended(place: Place, wanted: Wanted) -> Result<ExitCode, Failure> {
    let ended = watch_for_its_end()?;
    let words = Words::of(Language::of_tag(load::language_of(&place.household).as_deref())?)?;
    let pages = server::open_home(wanted, place.clone(), &words)?;
    let Some(starts) = pages.starts() else { return Ok(ExitCode::SUCCESS) };
    starts.open();
    while !ended.load(Ordering::Relaxed) {
        if let Some(wish) = starts.take_within(LOOKS) {
            lead(&place, &pages, starts, &wish);
        }
    }
    pages.finish();
    Ok(ExitCode::SUCCESS)
}

/// Leads one practice; whoever asked is told whether it begins.
fn lead(place: &Place, pages: &Pages, starts: &Starts, wish: &Wish) {
    // What tries the devices on a page lets go of them first.
    pages.practising(true);
    match ready(place, pages, wish) {
        Ok((practice, io)) => {
            starts.answer(Ok(()));
            let screen = SharedScreen::new(TerminalScreen::stdout());
            match practice.lead(io, screen.clone(), server::followers(Some(pages))) {
                Ok(outcome) => outcome.report(&screen),
                Err(why) => {
                    why.report();
                    pages.tell(&why.to_string());
                }
            }
        }
        Err(why) => starts.answer(Err(why.to_string())),
    }
    pages.practising(false);
}

/// Everything that a practice needs.
fn ready(place: &Place, pages: &Pages, wish: &Wish) -> Result<(Practice, Box<dyn AudioIo>), Failure> {
    let folder = place.household.parent().unwrap_or_else(|| Path::new("."));
    let mut loaded = load::all(&folder.join(&wish.file), place.model.as_deref())?;
    let by_page = by_page(&place.household, &wish.client);
    let mut sound = sound(place, pages, &loaded.words, &loaded.lexicon);
    if by_page {
        sound.play_nowhere();
    }
    let io = audio::open(&sound.mic, &sound.speaker, false)?;
    let settings = files::packages::settings::of(&place.data, &wish.client);
    if let Some(every) = settings.feedback_every {
        loaded.prescription.routine.feedback_every = every;
    }
    let device = levels::device(&sound.mic, io.mic_rate_hz(), None)?;
    let source = if sound.recording { Source::Replay } else { Source::Live };
    let practice = Practice {
        hears_itself: sound.hears_itself,
        voice: sound.voice.or(settings.voice),
        levels: Levels::of(&place.data, &device, None)?,
        by_page,
        emergency_number: emergency_number(&place.household),
        ..Practice::of(loaded, source, wish.client.clone(), place.data.clone())
    };
    Ok((practice, io))
}

/// The devices that were chosen on a page, else those of the command line, else those of the household.
fn sound(place: &Place, pages: &Pages, words: &Words, lexicon: &Lexicon) -> SoundPath {
    let (mic, speaker) = pages.devices().unwrap_or_else(|| (place.mic.clone(), place.speaker.clone()));
    let recording = names_file(&mic);
    let path = SoundPath {
        hears_itself: !recording && mic != "none" && !names_file(&speaker) && speaker != "none",
        recording,
        mic,
        speaker,
        voice: place.voice.clone(),
        model: place.model.clone(),
    };
    let household = read_household(&place.household, words, lexicon).ok();
    path.at_home(household.as_ref().map(|household| &household.home))
}
