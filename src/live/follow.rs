//! The screen as a follower of the session.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use crate::levels::in_words;
use crate::observe::Observer;
use screen::{Screen, ShownView};
use session::{Entry, Fact, Line};

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
    /// Counts on the beat stand as figures, not as dialogue.
    counting: bool,
}

impl ScreenFollower {
    pub fn new(screen: SharedScreen) -> Self {
        Self { screen, counting: false }
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
        let there = match present {
            Some(true) => "here",
            Some(false) => "not here",
            None => "not asked",
        };
        self.screen.lock().note(at_s, &format!("{participant}: {there}"));
    }

    fn kept(&mut self, entry: &Entry) {
        if let Some(note) = note(&entry.fact) {
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
fn note(fact: &Fact) -> Option<String> {
    Some(match fact {
        Fact::HoldMeasured { duration_s, f0_median_hz, level_mean_db, level_weighting, level_terms, complete, .. } => {
            let cut = if *complete { "" } else { ", cut off" };
            format!(
                "held {duration_s:.1} s, {}, {}{cut}",
                measured(*f0_median_hz, "Hz"),
                in_words(*level_mean_db, level_weighting, level_terms.as_ref())
            )
        }
        Fact::PostureHeld { duration_s, prescribed_s, .. } => format!("posture {duration_s:.0} of {prescribed_s:.0} s"),
        Fact::PhraseRead { duration_s, level_mean_db, level_weighting, level_terms, .. } => {
            format!("phrase {duration_s:.1} s, {}", in_words(*level_mean_db, level_weighting, level_terms.as_ref()))
        }
        Fact::Talked { duration_s, pauses, level_mean_db, level_weighting, level_terms, .. } => {
            format!("talk {duration_s:.0} s, {pauses} pauses, {}", in_words(*level_mean_db, level_weighting, level_terms.as_ref()))
        }
        Fact::SyllablesCounted { syllables, rate_hz, .. } => format!("{syllables} syllables, {rate_hz:.1} per second"),
        Fact::StepLeftOut { exercise, reason } => format!("{exercise} left out: {reason}"),
        Fact::RecogniserRestarted { lost_s } => format!("the recogniser was restarted; {lost_s:.1} s went unheard"),
        Fact::RoomLoud { loud: true, room_db } => format!("the room is too loud to measure in ({room_db:.0} dB re full scale)"),
        Fact::RoomLoud { loud: false, .. } => "the room is quiet enough again".to_owned(),
        Fact::HoldInNoise { over_room_db, .. } => {
            format!("that hold stood only {over_room_db:.0} dB over the room; its figures are doubtful")
        }
        Fact::SoundLost { lost_s } => format!("{lost_s:.2} s of sound were lost"),
        _ => return None,
    })
}

/// A figure with its unit; what could not be measured says so.
fn measured(value: f64, unit: &str) -> String {
    if value.is_finite() { format!("{value:.0} {unit}") } else { format!("no {unit}") }
}
