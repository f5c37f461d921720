//! Whoever shows a session to the eye.

use crate::shown::ShownView;

/// Shows a session to the eye. Times are seconds on the sample clock.
pub trait Screen: Send {
    /// What stands on the screen from now on.
    fn show(&mut self, at_s: f64, view: &ShownView);
    /// The tool says this.
    fn said(&mut self, at_s: f64, text: &str);
    /// The client was heard to say this.
    fn heard(&mut self, at_s: f64, text: &str);
    /// Something that happened: a result, a repair.
    fn note(&mut self, at_s: f64, text: &str);
    /// Called now and then (each block is fine), so that the newest view appears also when no other follows.
    fn tick(&mut self) {}
    /// The session is over: leaves the terminal as it was found.
    fn finish(&mut self);
}

/// Shows nothing.
#[derive(Debug, Clone, Copy, Default)]
pub struct NoScreen;

impl Screen for NoScreen {
    fn show(&mut self, _at_s: f64, _view: &ShownView) {}
    fn said(&mut self, _at_s: f64, _text: &str) {}
    fn heard(&mut self, _at_s: f64, _text: &str) {}
    fn note(&mut self, _at_s: f64, _text: &str) {}
    fn finish(&mut self) {}
}
