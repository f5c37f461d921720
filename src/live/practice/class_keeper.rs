//! Keeps the record of a class that is led from a list: who is there and what is led. What anybody did is not in it.

use std::path::Path;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread::JoinHandle;

use crate::observe::{Beginning, Observer};
use files::error::Failure;
use jiff::ZonedDateTime;
use record::{ClassId, LedStep, NewClass, RecordError, Source, Store};
use routine::ClassList;
use session::{Entry, Fact};

/// What is to be kept.
enum Note {
    Attended { participant: String, present: Option<bool>, at_s: f64 },
    Led(LedStep),
}

/// An observer that keeps a class. The disk is waited for on a thread of its own; dropping it waits until all is kept.
pub struct ClassKeeper {
    /// Sets of each step.
    sets: Vec<u32>,
    /// When each step was begun, s.
    begun_s: Vec<Option<f64>>,
    notes: Option<Sender<Note>>,
    failures: Receiver<RecordError>,
    thread: Option<JoinHandle<()>>,
}

impl ClassKeeper {
    /// Keeps a class whose record was begun.
    ///
    /// # Errors
    /// The system gives no thread.
    pub fn new(mut store: Store, class: ClassId) -> Result<Self, Failure> {
        let (notes, inbox) = channel::<Note>();
        let (failed, failures) = channel();
        let keep = move || {
            for note in inbox {
                let kept = match &note {
                    Note::Attended { participant, present, at_s } => store.note_attendance(class, participant, *present, *at_s),
                    Note::Led(led) => store.note_led(class, led),
                };
                if let Err(error) = kept {
                    // Nobody listens any more when the class is over; then it is logged alone.
                    tracing::error!(%error, "the class was not kept");
                    let _ = failed.send(error);
                }
            }
        };
        let thread = std::thread::Builder::new()
            .name("class".to_owned())
            .spawn(keep)
            .map_err(|why| Failure::Again(format!("the record of the class cannot be kept: {why}")))?;
        Ok(Self { sets: Vec::new(), begun_s: Vec::new(), notes: Some(notes), failures, thread: Some(thread) })
    }

    /// Begins the record of a class in the folder `data`, and keeps it.
    ///
    /// # Errors
    /// The record cannot be written, or the system gives no thread.
    pub fn begin(list: &ClassList, routine_title: &str, source: Source, data: &Path, started_at: &ZonedDateTime) -> Result<Self, Failure> {
        let participants: Vec<String> = list.participants.iter().map(|participant| participant.called.to_string()).collect();
        let mut store = Store::open(data)?;
        let class = store.begin_class(&NewClass {
            title: &list.title,
            routine_title,
            source,
            software: concat!("tidecount ", env!("CARGO_PKG_VERSION")),
            started_at,
            participants: &participants,
        })?;
        Self::new(store, class)
    }

    fn keep(&self, note: Note) {
        if let Some(notes) = &self.notes {
            let _ = notes.send(note);
        }
    }

    fn led(&self, entry: &Entry, exercise: &str, repetitions_done: u32, repetitions_planned: u32) {
        let step = entry.position.map_or(1, |at| at.step);
        let index = step.saturating_sub(1) as usize;
        let from_s = self.begun_s.get(index).copied().flatten().unwrap_or(entry.at_s);
        let sets = self.sets.get(index).copied().unwrap_or(1);
        let exercise = exercise.to_owned();
        self.keep(Note::Led(LedStep { step, exercise, sets, repetitions_done, repetitions_planned, from_s, until_s: entry.at_s }));
    }
}

impl Observer for ClassKeeper {
    fn begins(&mut self, beginning: &Beginning<'_>) {
        self.sets = beginning.routine.steps.iter().map(|step| step.sets).collect();
        self.begun_s = vec![None; self.sets.len()];
    }

    fn attended(&mut self, at_s: f64, participant: &str, present: Option<bool>) {
        self.keep(Note::Attended { participant: participant.to_owned(), present, at_s });
    }

    fn kept(&mut self, entry: &Entry) {
        match &entry.fact {
            Fact::StepBegun { .. } => {
                let index = entry.position.map_or(0, |at| at.step.saturating_sub(1) as usize);
                if let Some(begun) = self.begun_s.get_mut(index) {
                    // Somebody who came back to it had begun it before.
                    begun.get_or_insert(entry.at_s);
                }
            }
            Fact::StepDone { exercise, repetitions_done, repetitions_prescribed }
            | Fact::StepStopped { exercise, repetitions_done, repetitions_prescribed, .. } => {
                self.led(entry, exercise, *repetitions_done, *repetitions_prescribed);
            }
            _ => {}
        }
    }

    fn notice(&mut self) -> Option<String> {
        self.failures.try_recv().ok().map(|error| format!("The record of the class has a gap: {error}"))
    }
}

impl Drop for ClassKeeper {
    fn drop(&mut self) {
        drop(self.notes.take());
        if let Some(thread) = self.thread.take() {
            // A panic of the thread was reported by the panic hook.
            let _ = thread.join();
        }
    }
}
