//! The screen as a follower of the session.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use crate::levels::in_words;
use crate::observe::Observer;
use screen::{Screen, ShownView};
use session::{Arg, Entry, Fact, Line};
use speak::Words;

/// One screen for the sound thread and for whoever reports afterwards.
#[derive(Clone)]
pub struct SharedScreen(Arc<Mutex<Box<dyn Screen>>>);

impl SharedScreen {
    pub fn new(screen: impl Screen + 'static) -> Self {
        Self(Arc::new(Mutex::new(Box::new(screen))))
    }

    fn lock(&self) -> MutexGuard<'_, Box<dyn Screen>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Leaves the terminal as it was found.
    pub fn finish(&self) {
        self.lock().finish();
    }
}

/// Shows what is said, heard and measured.
pub struct ScreenFollower {
    screen: SharedScreen,
    words: Words,
    /// Counts on the beat stand as figures, not as dialogue.
    counting: bool,
}

impl ScreenFollower {
    pub fn new(screen: SharedScreen, words: Words) -> Self {
        Self { screen, words, counting: false }
    }
}

impl Observer for ScreenFollower {
    fn line_began(&mut self, at_s: f64, line: &Line, text: &str) {
        self.counting = line.key == "count";
        if !self.counting {
            self.screen.lock().said(at_s, text);
        }
    }

    fn heard(&mut self, at_s: f64, text: &str) {
        self.screen.lock().heard(at_s, text);
    }

    fn shown(&mut self, at_s: f64, view: &ShownView) {
        self.screen.lock().show(at_s, view);
    }

    fn attended(&mut self, at_s: f64, participant: &str, present: Option<bool>) {
        let key = match present {
            Some(true) => "log-here-shown",
            Some(false) => "log-not-here-shown",
            None => "log-not-asked-shown",
        };
        self.screen.lock().note(at_s, &self.words.shown(key, vec![("name", text(participant))]));
    }

    fn kept(&mut self, entry: &Entry) {
        if let Some(note) = note(&entry.fact, &self.words) {
            self.screen.lock().note(entry.at_s, &note);
        }
    }

    fn tick(&mut self) {
        self.screen.lock().tick();
    }

    fn told(&mut self, at_s: f64, warning: &str) {
        self.screen.lock().note(at_s, warning);
    }
}

/// Results worth a line of their own.
fn note(fact: &Fact, words: &Words) -> Option<String> {
    let (key, args) = match fact {
        Fact::HoldMeasured { duration_s, f0_median_hz, level_mean_db, level_weighting, level_terms, complete, .. } => {
            let key = if *complete { "log-hold-shown" } else { "log-hold-cut-off-shown" };
            let pitch = match *f0_median_hz {
                hz if hz.is_finite() => words.shown("log-hz-shown", vec![("hz", text(&format!("{hz:.0}")))]),
                _ => words.shown("log-no-hz-shown", Vec::new()),
            };
            let level = in_words(words, *level_mean_db, level_weighting, level_terms.as_ref());
            (key, vec![("s", one(*duration_s)), ("pitch", text(&pitch)), ("level", text(&level))])
        }
        Fact::PostureHeld { duration_s, prescribed_s, .. } => {
            ("log-posture-shown", vec![("s", whole(*duration_s)), ("of", whole(*prescribed_s))])
        }
        Fact::PhraseRead { duration_s, level_mean_db, level_weighting, level_terms, .. } => {
            let level = in_words(words, *level_mean_db, level_weighting, level_terms.as_ref());
            ("log-phrase-shown", vec![("s", one(*duration_s)), ("level", text(&level))])
        }
        Fact::Talked { duration_s, pauses, level_mean_db, level_weighting, level_terms, .. } => {
            let level = in_words(words, *level_mean_db, level_weighting, level_terms.as_ref());
            ("log-talk-shown", vec![("s", whole(*duration_s)), ("pauses", text(&pauses.to_string())), ("level", text(&level))])
        }
        Fact::SyllablesCounted { syllables, rate_hz, .. } => {
            ("log-syllables-shown", vec![("n", text(&syllables.to_string())), ("rate", one(*rate_hz))])
        }
        Fact::StepLeftOut { exercise, reason } => {
            let named = words.exercise(exercise);
            ("log-left-out-shown", vec![("name", text(&named)), ("why", text(&words.reason(reason)))])
        }
        Fact::RecogniserRestarted { lost_s } => ("log-recogniser-shown", vec![("s", one(*lost_s))]),
        Fact::RoomLoud { loud: true, room_db } => ("log-room-loud-shown", vec![("db", whole(*room_db))]),
        Fact::RoomLoud { loud: false, .. } => ("log-room-quiet-shown", Vec::new()),
        Fact::HoldInNoise { over_room_db, .. } => ("log-in-noise-shown", vec![("db", whole(*over_room_db))]),
        Fact::SoundLost { lost_s } => ("log-sound-lost-shown", vec![("s", text(&format!("{lost_s:.2}")))]),
        _ => return None,
    };
    Some(words.shown(key, args))
}

fn text(text: &str) -> Arg {
    Arg::Text(text.to_owned())
}

fn one(value: f64) -> Arg {
    Arg::Text(format!("{value:.1}"))
}

fn whole(value: f64) -> Arg {
    Arg::Text(format!("{value:.0}"))
}
