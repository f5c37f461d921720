//! The one place where a page uses microphone or loudspeaker. One thing at a time; the devices are open only while it lasts.

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;

use crate::set_up::mic_judge::Judged;
use files::calibrations::Device;
use hear::calibration::{Heard, Method};
use hear::weighting::Weighting;
use live::enrol::event::Learnt;

/// What is being done with the devices.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Task {
    Play,
    Listen,
    Calibrate,
    Enrol,
}

impl Task {
    /// The page that shows it.
    pub fn page(self) -> &'static str {
        match self {
            Self::Play | Self::Listen => "/microphone",
            Self::Calibrate => "/calibration",
            Self::Enrol => "/own-voice",
        }
    }
}

/// What a person sees of it now.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Now {
    pub told: String,
    pub figure: String,
    pub level_db: Option<f64>,
    pub room_db: Option<f64>,
    pub can_say: Vec<String>,
}

/// What a calibration still needs.
#[derive(Debug, Clone, PartialEq)]
pub struct HeardSound {
    pub heard: Heard,
    pub device: Device,
    pub method: Method,
    pub weighting: Weighting,
    pub distance_cm: f64,
    pub reference_cm: Option<f64>,
    /// The level, dB, where it was known before.
    pub given_db: Option<f64>,
}

/// What came of it.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    Played,
    Judged(Judged),
    Heard(Box<HeardSound>),
    Learnt {
        client: String,
        words: Vec<Learnt>,
    },
    /// Broken off by a button.
    Broken,
    /// In words for a person.
    Failed(String),
}

/// Something under way.
#[derive(Debug)]
pub struct Job {
    pub task: Task,
    stop: AtomicBool,
    now: Mutex<Now>,
}

impl Job {
    /// It shall end.
    pub fn stopped(&self) -> bool {
        self.stop.load(Ordering::Relaxed)
    }

    /// What a person sees from now on.
    pub fn show(&self, change: impl FnOnce(&mut Now)) {
        change(&mut lock(&self.now));
    }

    /// What a person sees.
    pub fn shown(&self) -> Now {
        lock(&self.now).clone()
    }
}

#[derive(Default)]
struct Inside {
    job: Option<Arc<Job>>,
    thread: Option<JoinHandle<()>>,
    /// What came of the last one of each page, until it is fetched or begun anew.
    done: Vec<(Task, Outcome)>,
}

/// Runs one thing at a time.
#[derive(Default)]
pub struct Desk {
    inside: Arc<Mutex<Inside>>,
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Desk {
    /// What is under way.
    pub fn job(&self) -> Option<Arc<Job>> {
        lock(&self.inside).job.clone()
    }

    /// Begins something on a thread of its own. False: something else is under way, or the system gives no thread.
    pub fn begin(&self, task: Task, now: Now, work: impl FnOnce(&Job) -> Outcome + Send + 'static) -> bool {
        self.begin_shared(task, now, move |job| work(&job))
    }

    /// As [`Desk::begin`], for work that hands the job on.
    pub fn begin_shared(&self, task: Task, now: Now, work: impl FnOnce(Arc<Job>) -> Outcome + Send + 'static) -> bool {
        let mut inside = lock(&self.inside);
        if inside.job.is_some() {
            return false;
        }
        let job = Arc::new(Job { task, stop: AtomicBool::new(false), now: Mutex::new(now) });
        let (own, shared) = (job.clone(), self.inside.clone());
        let run = move || {
            let outcome = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| work(own)));
            // The devices are closed by now: they were the work's own.
            let outcome = outcome.unwrap_or_else(|_| Outcome::Failed("the sound thread broke off; begin again".to_owned()));
            let mut inside = lock(&shared);
            inside.job = None;
            inside.done.retain(|(done, _)| done.page() != task.page());
            inside.done.push((task, outcome));
        };
        match std::thread::Builder::new().name("sound of the pages".to_owned()).spawn(run) {
            Ok(thread) => {
                inside.job = Some(job);
                inside.thread = Some(thread);
                inside.done.retain(|(done, _)| done.page() != task.page());
                true
            }
            Err(_) => false,
        }
    }

    /// What came of the last thing that this page began.
    pub fn outcome(&self, page: &str) -> Option<Outcome> {
        lock(&self.inside).done.iter().find(|(task, _)| task.page() == page).map(|(_, outcome)| outcome.clone())
    }

    /// Forgets what came of it.
    pub fn forget(&self, page: &str) {
        lock(&self.inside).done.retain(|(task, _)| task.page() != page);
    }

    /// Lets what is under way end, and waits until its devices are closed.
    pub fn stop(&self) {
        let thread = {
            let mut inside = lock(&self.inside);
            if let Some(job) = &inside.job {
                job.stop.store(true, Ordering::Relaxed);
            }
            inside.thread.take()
        };
        if let Some(thread) = thread {
            let _ = thread.join();
        }
    }
}

impl Drop for Desk {
    fn drop(&mut self) {
        self.stop();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_thing_at_a_time_and_it_can_be_broken_off() {
        let desk = Desk::default();
        let wait = |job: &Job| {
            while !job.stopped() {
                std::thread::yield_now();
            }
            Outcome::Broken
        };
        assert!(desk.begin(Task::Listen, Now::default(), wait));
        assert!(!desk.begin(Task::Play, Now::default(), |_| Outcome::Played));
        assert_eq!(desk.job().map(|job| job.task), Some(Task::Listen));
        desk.stop();
        assert!(desk.job().is_none());
        assert_eq!(desk.outcome("/microphone"), Some(Outcome::Broken));
        assert!(desk.begin(Task::Play, Now::default(), |_| panic!("broken")));
        desk.stop();
        assert!(matches!(desk.outcome("/microphone"), Some(Outcome::Failed(_))));
        desk.forget("/microphone");
        assert_eq!(desk.outcome("/microphone"), None);
    }
}
