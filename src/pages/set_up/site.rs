//! What all set-up pages share, and how an answer is made.

use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use maud::Markup;

use crate::set_up::desk::Desk;
use crate::set_up::fields::Fields;
use crate::set_up::files::RoutineFolder;
use crate::set_up::starting::Starts;
use crate::web::pages::{Texts, framed, places, practising, trouble};
use crate::web::{Guard, NavItem};
use clinic::Address;
use command_ear::Lexicon;
use files::error::Failure;
use files::load;
use files::spoken::spoken_form;
use record::{RecordError, Store};
use routine::{Hearing, MAX_FILE_BYTES};
use session::Line;
use speak::Words;

/// What the pages are about.
#[derive(Debug, Clone)]
pub struct Place {
    /// The folder of the record.
    pub data: PathBuf,
    /// The household file; routines lie beside it.
    pub household: PathBuf,
    pub mic: String,
    pub speaker: String,
    pub voice: Option<String>,
    pub model: Option<PathBuf>,
    /// The program that runs as the recogniser's process; none for the running one, which a test is not.
    pub recogniser: Option<PathBuf>,
    /// The clinic database, where this desk has one.
    pub clinic: Option<Address>,
    /// As if it were this day; none: the computer's own.
    pub today: Option<jiff::civil::Date>,
}

/// Everything behind the pages.
pub struct Site {
    pub place: Place,
    pub routines: RoutineFolder,
    pub words: Words,
    pub guard: Arc<Guard>,
    pub desk: Desk,
    /// Practices that are asked for on a page.
    pub starts: Starts,
    /// The microphone and loudspeaker that were chosen last on a page.
    picked: Mutex<Option<(String, String)>>,
    /// A practice is under way.
    practising: AtomicBool,
    lexicon: OnceLock<Option<Lexicon>>,
    commands: Vec<(String, Vec<String>)>,
}

impl std::fmt::Debug for Site {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Site").field("place", &self.place).finish_non_exhaustive()
    }
}

impl Site {
    #[must_use]
    pub fn new(place: Place, words: Words, guard: Arc<Guard>) -> Self {
        let folder = place.household.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or_else(|| Path::new(".")).to_owned();
        let commands = load::command_words(&words);
        Self {
            place,
            routines: RoutineFolder::new(folder),
            words,
            guard,
            desk: Desk::default(),
            starts: Starts::default(),
            picked: Mutex::new(None),
            practising: AtomicBool::new(false),
            lexicon: OnceLock::new(),
            commands,
        }
    }

    /// A practice begins, or is over. What uses the devices ends first.
    pub fn practise(&self, now: bool) {
        self.practising.store(now, Ordering::Relaxed);
        if now {
            self.desk.stop();
        }
    }

    /// The words of the pages; a message that is missing shows its key.
    pub fn say(&self, line: &Line) -> String {
        self.words.text(line).unwrap_or_else(|why| {
            tracing::error!("{why}");
            line.key.clone()
        })
    }

    /// Runs something with the words at hand.
    pub fn with_texts<T>(&self, work: impl FnOnce(Texts<'_>) -> T) -> T {
        work(Texts(&|line: &Line| self.say(line)))
    }

    /// The three places.
    pub fn nav(&self) -> Vec<NavItem> {
        self.with_texts(places)
    }

    /// A whole page.
    fn framed(&self, here: &str, title: &str, main: &Markup) -> String {
        self.with_texts(|texts| framed(texts, self.place.clinic.is_some(), here, title, main)).into_string()
    }

    /// The microphone and loudspeaker to begin with.
    pub fn devices(&self) -> (String, String) {
        let picked = self.picked.lock().unwrap_or_else(PoisonError::into_inner).clone();
        picked.unwrap_or_else(|| (self.place.mic.clone(), self.place.speaker.clone()))
    }

    /// These were chosen on a page: the other pages begin with them.
    pub fn pick(&self, mic: &str, speaker: &str) {
        *self.picked.lock().unwrap_or_else(PoisonError::into_inner) = Some((mic.to_owned(), speaker.to_owned()));
    }

    /// The client's civil day.
    pub fn today(&self) -> jiff::civil::Date {
        self.place.today.unwrap_or_else(|| jiff::ZonedDateTime::now().date())
    }

    /// A message that takes nothing.
    pub fn s(&self, key: &str) -> String {
        self.with_texts(|texts| texts.s(key))
    }

    /// The record, where there is one. Nothing is created.
    ///
    /// # Errors
    /// It is there and cannot be read.
    pub fn store(&self) -> Result<Option<Store>, RecordError> {
        Store::open_existing(&self.place.data)
    }

    /// What the recogniser knows; none where there is no model.
    pub fn lexicon(&self) -> Option<&Lexicon> {
        self.lexicon
            .get_or_init(|| {
                load::models(self.place.model.as_deref(), self.words.language()).ok().and_then(|model| Lexicon::of(&model).ok())
            })
            .as_ref()
    }

    /// Runs a check with what the ears listen for at hand. Word packs are read from the routines' folder alone.
    pub fn with_hearing<T>(&self, check: impl FnOnce(Hearing<'_>) -> T) -> T {
        let knows = |word: &str| self.lexicon().and_then(|lexicon| lexicon.knows(&spoken_form(word))).unwrap_or(true);
        let pack = |name: &str| {
            let plain = Path::new(name).file_name().is_some_and(|file| file == name);
            if !plain {
                return Err("a word pack lies beside the routine: give its file's name alone".to_owned());
            }
            let bytes = files::routine_files::read_limited(&self.routines.path().join(name)).map_err(|error| error.to_string())?;
            if bytes.len() > MAX_FILE_BYTES { Err("it is too large".to_owned()) } else { Ok(bytes) }
        };
        check(Hearing {
            commands: &self.commands,
            knows_word: Some(&knows),
            pack_file: Some(&pack),
            language: Some(&self.words.language().tag),
            games: &self.words.language().games,
        })
    }

    /// An address for a form, with its number that is good once.
    pub fn to(&self, path: &str) -> String {
        format!("{path}?once={}", self.guard.once())
    }
}

/// What is answered.
pub enum Shown {
    /// A page: the entry of the list of pages that it belongs to, its title, what stands on it.
    Page { here: &'static str, title: String, main: Markup },
    /// Look there.
    To(String),
    /// A file for the browser: its type, its name, its bytes.
    File { kind: &'static str, name: String, bytes: Vec<u8> },
    /// Data for a script.
    Json(serde_json::Value),
}

/// Why a page cannot be shown, in words for a person.
#[derive(Debug)]
pub struct PageError {
    pub status: StatusCode,
    pub what: String,
}

impl PageError {
    /// There is nothing of the kind that was asked for.
    #[must_use]
    pub fn none(what: String) -> Self {
        Self { status: StatusCode::NOT_FOUND, what }
    }

    /// The request makes no sense.
    #[must_use]
    pub fn bad(what: String) -> Self {
        Self { status: StatusCode::BAD_REQUEST, what }
    }
}

impl From<Failure> for PageError {
    fn from(error: Failure) -> Self {
        Self { status: StatusCode::INTERNAL_SERVER_ERROR, what: error.to_string() }
    }
}

impl From<RecordError> for PageError {
    fn from(error: RecordError) -> Self {
        let status =
            if matches!(error, RecordError::NoSuchSession { .. }) { StatusCode::NOT_FOUND } else { StatusCode::INTERNAL_SERVER_ERROR };
        Self { status, what: error.to_string() }
    }
}

/// Makes an answer on a thread of its own: files and the record are slow, and the server is one thread.
pub async fn answer(
    site: Arc<Site>,
    here: &'static str,
    make: impl FnOnce(&Site) -> Result<Shown, PageError> + Send + 'static,
) -> Response {
    if site.practising.load(Ordering::Relaxed) {
        let html = site.framed(here, &site.s("page-practising-title"), &site.with_texts(practising));
        return (StatusCode::CONFLICT, [(header::CONTENT_TYPE, "text/html; charset=utf-8")], html).into_response();
    }
    let own = site.clone();
    let made = tokio::task::spawn_blocking(move || make(&own)).await;
    let (status, shown) = match made {
        Ok(Ok(shown)) => (StatusCode::OK, shown),
        Ok(Err(error)) => (error.status, broken(&site, here, &error.what)),
        Err(_) => (StatusCode::INTERNAL_SERVER_ERROR, broken(&site, here, &site.s("page-trouble-own"))),
    };
    match shown {
        Shown::Page { here, title, main } => {
            let html = site.framed(here, &title, &main);
            (status, [(header::CONTENT_TYPE, "text/html; charset=utf-8")], html).into_response()
        }
        Shown::To(path) => Redirect::to(&path).into_response(),
        Shown::File { kind, name, bytes } => {
            let disposition =
                format!("attachment; filename=\"{}\"", name.replace(|c: char| !c.is_ascii_alphanumeric() && !"-_.".contains(c), "-"));
            ([(header::CONTENT_TYPE, kind.to_owned()), (header::CONTENT_DISPOSITION, disposition)], bytes).into_response()
        }
        Shown::Json(value) => ([(header::CONTENT_TYPE, "application/json")], value.to_string()).into_response(),
    }
}

fn broken(site: &Site, here: &'static str, what: &str) -> Shown {
    Shown::Page { here, title: site.s("page-trouble-title"), main: site.with_texts(|texts| trouble(texts, what)) }
}

/// The fields of a request, of its address or its body.
#[must_use]
pub fn fields(form: axum::Form<Vec<(String, String)>>) -> Fields {
    Fields(form.0)
}
