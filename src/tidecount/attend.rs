//! `tidecount attend`: waits for a practice, day in, day out.

use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::atomic::Ordering;
use std::time::Instant;

use jiff::ZonedDateTime;
use jiff::civil::DateTime;

use crate::options::{DataFolder, Fast, Screen, Sound};
use crate::terminal::ending::watch_for_its_end;
use attend::{Event, Practised};
use audio::AudioIo;
use command_ear::Lexicon;
use files::error::{Failure, tell};
use files::households::{check_household, read_household};
use files::load::{self, Loaded};
use files::packages;
use files::packages::household::household_of_packages;
use handover::Settings;
use live::attend::devices::Devices;
use live::attend::record::{exercise_name, moment, today};
use live::attend::waiting::{House, Waited, Waiting};
use live::follow::SharedScreen;
use live::levels::{self, Levels};
use live::practice::{Outcome, Practice};
use pages::follow::follower::WebFollower;
use pages::follow::server::{self, Pages};
use pages::set_up::site::Place;
use pages::set_up::starting::Starts;
use record::Source;
use screen::TerminalScreen;
use session::Line;
use speak::{Language, Words};

/// Wait quietly, invite at the agreed times, and start a practice when asked
#[derive(Debug, Clone, clap::Args)]
pub struct AttendArgs {
    /// Household file: who lives here and what they practise [default: household.toml in the data folder]
    pub household: Option<PathBuf>,
    #[command(flatten)]
    pub sound: Sound,
    #[command(flatten)]
    pub fast: Fast,
    #[command(flatten)]
    pub data: DataFolder,
    /// Let a recording begin at this local time [default: now]
    #[arg(long, value_name = "YYYY-MM-DD HH:MM", value_parser = time_of_day)]
    pub at: Option<ZonedDateTime>,
    #[command(flatten)]
    pub screen: Screen,
}

fn time_of_day(text: &str) -> Result<ZonedDateTime, String> {
    let remedy = |why: jiff::Error| format!("{why}; write it as in --at \"2026-11-25 18:25\"");
    text.parse::<DateTime>().and_then(|civil| civil.to_zoned_datetime(jiff::tz::TimeZone::system())).map_err(remedy)
}

/// Runs the command until it is asked to end, or until a recording is over.
///
/// # Errors
/// The household has faults (all are named), or model, voice, record or a file cannot be used. A microphone or loudspeaker that is
/// not there is no error: it is told, and waited for.
pub fn run(args: &AttendArgs) -> Result<ExitCode, Failure> {
    let sound = args.sound.meant();
    let fast = args.fast.with(&sound)?;
    let recording = sound.recording;
    if args.at.is_some() && !recording {
        return Err(Failure::Options("--at needs a recording: name a file with --mic FILE.wav; a live microphone has its own time".into()));
    }
    let data = args.data.folder()?;
    let path = args.household.clone().unwrap_or_else(|| data.join("household.toml"));
    let words = Words::of(Language::of_tag(load::language_of(&path).as_deref())?)?;
    let model = load::models(sound.model.as_deref(), words.language())?;
    let lexicon = Lexicon::of(&model)?;
    if !model.recognises() {
        let key = if model.hears() { "attend-start-unheard-shown" } else { "ear-none-shown" };
        tell(&words.text(&Line { key: key.into(), args: Vec::new() })?);
    }
    let (starts_heard, page_words) = (model.recognises(), words.clone());
    // Nobody is invited to say what is not heard.
    let words = if starts_heard { words } else { words.by_key() };
    // Whoever wrote no household file is led by the packages that were taken here.
    let packages = if args.household.is_none() && !path.exists() { household_of_packages(&data) } else { None };
    let household = match packages {
        Some(text) => check_household("the packages taken here", &path, text.as_bytes(), &words, &lexicon)?,
        None => read_household(&path, &words, &lexicon)?,
    };
    let sound = sound.at_home(Some(&household.home));
    let folder = path.parent().unwrap_or_else(|| Path::new(".")).to_owned();
    let source = if recording { Source::Replay } else { Source::Live };
    let devices = Devices::open(&sound.mic, &sound.speaker, fast)?;
    let begins_at = recording.then(|| args.at.clone().unwrap_or_else(ZonedDateTime::now));
    let first_now = begins_at.clone().unwrap_or_else(ZonedDateTime::now);
    let record = today(&data, &household, source, &first_now, &words)?;
    let somebody_by_page = household.persons.iter().any(|person| person.by_page);
    let house = House { household, words, model, voice: sound.voice.clone(), data, recogniser: None, begins_at };
    let mut waiting = Waiting::new(house, devices)?;
    waiting.tell(Event::Record { at_s: 0.0, today: record });
    let interrupted = watch_for_its_end()?;
    let set_up = Place {
        data: waiting.machine().data.clone(),
        household: path,
        mic: sound.mic,
        speaker: sound.speaker,
        voice: sound.voice,
        model: sound.model,
        recogniser: None,
        clinic: None,
        today: None,
    };
    // Where no start is heard, a page is the only way to begin.
    let pages = server::open_with(
        args.screen.wanted_or(somebody_by_page || !(starts_heard || recording))?,
        Some(set_up).filter(|_| !recording),
        &page_words,
    )?;
    if let Some(pages) = &pages {
        let (hub, words) = (pages.hub().clone(), waiting.words().clone());
        waiting.show_on(Box::new(move || Ok(Box::new(WebFollower::waiting(hub.clone(), words.clone())))));
    }
    if let Some(starts) = pages.as_ref().and_then(Pages::starts) {
        starts.open();
    }
    let mut starter = Starter { folder, lexicon, source, recording, pages };
    loop {
        let screen = new_screen();
        let asked = || starter.starts().is_some_and(Starts::is_asked);
        let waited = waiting.wait(screen.clone(), || interrupted.load(Ordering::Relaxed) || asked())?;
        screen.finish();
        match waited {
            Waited::Over if !interrupted.load(Ordering::Relaxed) && asked() => starter.lead_wished(&mut waiting),
            Waited::Over => break,
            Waited::Start { person, routine } => starter.lead(&mut waiting, person, routine),
        }
    }
    if let Some(pages) = starter.pages {
        pages.finish();
    }
    waiting.devices().finish()?;
    waiting.devices().complaints.iter().for_each(|complaint| tell(complaint));
    Ok(ExitCode::SUCCESS)
}

/// Hands a start over to a practice.
struct Starter {
    folder: PathBuf,
    lexicon: Lexicon,
    source: Source,
    recording: bool,
    pages: Option<Pages>,
}

impl Starter {
    fn starts(&self) -> Option<&Starts> {
        self.pages.as_ref().and_then(Pages::starts)
    }

    /// Leads what was asked for on a page: the same as what is asked for aloud, and nothing else.
    fn lead_wished(&mut self, waiting: &mut Waiting) {
        let Some(wish) = self.starts().and_then(Starts::take) else { return };
        let persons = &waiting.household().persons;
        let pair = persons.iter().position(|person| person.name == wish.client).and_then(|person| {
            let routines = &persons.get(person)?.routines;
            Some((person, routines.iter().position(|routine| routine.file == wish.file)?))
        });
        let answer = |answer: Result<(), String>| self.starts().into_iter().for_each(|starts| starts.answer(answer.clone()));
        match pair {
            Some((person, routine)) => {
                answer(Ok(()));
                self.lead(waiting, person, routine);
            }
            None => {
                let line = Line { key: "page-start-not-chosen".into(), args: Vec::new() };
                answer(Err(waiting.words().text(&line).unwrap_or(line.key)));
            }
        }
    }

    fn lead(&mut self, waiting: &mut Waiting, person: usize, routine: usize) {
        let now = waiting.now();
        let began = Instant::now();
        let practising = |now: bool| self.pages.iter().for_each(|pages| pages.practising(now));
        practising(true);
        let led = self.practise(waiting, (person, routine), &now);
        practising(false);
        let read = waiting.devices().take_read_elsewhere();
        let passed_s =
            if self.recording { read as f64 / f64::from(waiting.devices().mic_rate_hz()) } else { began.elapsed().as_secs_f64() };
        waiting.pass(passed_s);
        waiting.devices().take_back();
        let at_s = waiting.now_s();
        match led {
            Ok(outcome) => {
                let words = waiting.words();
                let begun_min = moment(&now).minute;
                let outcome = Practised::of(person, routine, begun_min, &outcome.entries(), &|id| exercise_name(words, id));
                waiting.tell(Event::PracticeEnded { at_s, outcome });
            }
            Err(why) => {
                why.report();
                if let Some(pages) = &self.pages {
                    pages.tell(&why.to_string());
                }
                waiting.tell(Event::PracticeFailed { at_s });
            }
        }
    }

    fn practise(&self, waiting: &mut Waiting, pair: (usize, usize), now: &ZonedDateTime) -> Result<Outcome, Failure> {
        let machine = waiting.machine().clone();
        let nobody = || Failure::Fault("there is no such person in the household".into());
        let (client, by_page) =
            waiting.household().persons.get(pair.0).map(|person| (person.name.clone(), person.by_page)).ok_or_else(nobody)?;
        let file = &waiting.household().routine(pair).ok_or_else(nobody)?.file;
        // Read again: it may have been changed since.
        let (mut prescription, routine_text) = load::routine(&self.folder.join(file), waiting.words(), &self.lexicon)?;
        let settings = if self.recording { Settings::default() } else { packages::settings::of(&machine.data, &client) };
        if let Some(every) = settings.feedback_every {
            prescription.routine.feedback_every = every;
        }
        let io = waiting.devices().lend()?;
        let device = levels::device(waiting.devices().mic_name(), io.mic_rate_hz(), None)?;
        let loaded =
            Loaded { words: waiting.words().clone(), model: machine.model, lexicon: self.lexicon.clone(), prescription, routine_text };
        let practice = Practice {
            hears_itself: machine.hears_itself && !by_page,
            by_page,
            voice: machine.voice.or(settings.voice),
            levels: Levels::of(&machine.data, &device, None)?,
            recogniser: machine.recogniser,
            mic_gates: waiting.mic_gates(),
            emergency_number: waiting.household().emergency_number.clone(),
            ..Practice::of(loaded, self.source, client, machine.data)
        };
        let screen = new_screen();
        let outcome = practice.lead_at(now.clone(), io, screen.clone(), server::followers(self.pages.as_ref()))?;
        outcome.report(&screen);
        Ok(outcome)
    }
}

fn new_screen() -> SharedScreen {
    SharedScreen::new(TerminalScreen::stdout())
}
