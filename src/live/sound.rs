//! Keeps the sound of a practice where the client agreed by page and by voice. The sound thread only hands blocks over; a thread of its
//! own encodes and writes, and nothing of the practice waits for it.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, Sender, SyncSender, TrySendError, channel, sync_channel};
use std::thread::JoinHandle;

use jiff::ZonedDateTime;

use crate::journal_keeper::{SessionFacts, SharedKept, lock};
use crate::observe::Observer;
use files::error::Failure;
use record::{SessionId, SoundRecorder, Source, Store};
use session::{Arg, Entry, Fact, Line};
use speak::Words;

/// Blocks that travel together: a tenth of a second.
const TOGETHER: usize = 10;
/// Tenths of a second that may wait for the disk: a minute.
const QUEUE: usize = 600;
/// A longer gap in the sound begins a new file; a shorter one is filled with silence, s.
const LONG_GAP_S: f64 = 60.0;
/// The consent is looked at again after so much sound, s: the page may take it back while the practice runs.
const LOOK_S: f64 = 10.0;

/// What is done at each start: expired sound goes; what is strange about the clock is told.
pub fn tidied(store: &mut Store, source: Source, now: &ZonedDateTime) -> Option<Box<dyn Observer>> {
    let note = match store.tidy(now) {
        Ok(note) => note,
        // No reason to miss a practice.
        Err(error) => Some(error.to_string()),
    };
    // A recording was made at another time anyhow.
    note.filter(|_| source == Source::Live).map(|note| -> Box<dyn Observer> { Box::new(Notice(Some(note))) })
}

/// Tells one thing to everybody who follows.
struct Notice(Option<String>);

impl Observer for Notice {
    fn notice(&mut self) -> Option<String> {
        self.0.take()
    }
}

/// A message that is told once to everybody who follows.
pub fn told_once(words: &Words, key: &str) -> Box<dyn Observer> {
    Box::new(Notice(words.text(&Line { key: key.to_owned(), args: Vec::new() }).ok()))
}

/// What the client wishes when the practice begins.
pub struct SoundWish {
    client: String,
    started_at: ZonedDateTime,
    /// Kept for so many days from the first block on; none where the voice is still to be asked.
    days: Option<u32>,
}

impl SoundWish {
    /// None where no sound may be kept whatever is answered. A recording is a file already, and a rehearsal nobody's voice.
    ///
    /// # Errors
    /// The record cannot be read.
    pub fn of(store: &Store, facts: &SessionFacts) -> Result<Option<Self>, Failure> {
        if facts.source != Source::Live {
            return Ok(None);
        }
        let (days, to_ask) = (store.sound_allowed(&facts.client)?, store.sound_to_ask(&facts.client, &facts.started_at)?);
        let wished = days.is_some() || to_ask.is_some();
        Ok(wished.then(|| Self { client: facts.client.clone(), started_at: facts.started_at.clone(), days }))
    }

    /// The follower that keeps the sound, of a microphone of this rate. `waits`: nothing runs in real time, so it waits for the disk.
    #[must_use]
    pub fn keeper(self, data: &Path, rate_hz: u32, kept: SharedKept, waits: bool, words: Words) -> Box<dyn Observer> {
        Box::new(SoundKeeper {
            wish: self,
            data: data.to_owned(),
            rate_hz,
            kept,
            waits,
            frames: 0,
            waiting: Vec::new(),
            work: None,
            until: None,
            over: false,
            words,
        })
    }
}

enum Order {
    Sound(Vec<f32>),
    Lost(u64),
}

/// What the thread tells.
enum Told {
    Until(String),
    Over(String),
}

struct Work {
    orders: Option<SyncSender<Order>>,
    told: Receiver<Told>,
    thread: Option<JoinHandle<()>>,
}

struct SoundKeeper {
    wish: SoundWish,
    data: PathBuf,
    rate_hz: u32,
    kept: SharedKept,
    waits: bool,
    /// Microphone frames that passed, lost ones included: the session's clock.
    frames: u64,
    waiting: Vec<f32>,
    work: Option<Work>,
    /// What the screen says while sound is kept.
    until: Option<String>,
    over: bool,
    words: Words,
}

impl SoundKeeper {
    fn begin(&mut self) {
        let (Some(days), Some(session), false) = (self.wish.days, lock(&self.kept).session, self.over || self.work.is_some()) else {
            return;
        };
        let (orders, inbox) = sync_channel(QUEUE);
        let (telling, told) = channel();
        let job = Job {
            data: self.data.clone(),
            client: self.wish.client.clone(),
            session,
            from_s: self.frames as f64 / f64::from(self.rate_hz),
            rate_hz: self.rate_hz,
            days,
            started_at: self.wish.started_at.clone(),
            words: self.words.clone(),
        };
        match std::thread::Builder::new().name("sound".to_owned()).spawn(move || job.run(&inbox, &telling)) {
            Ok(thread) => self.work = Some(Work { orders: Some(orders), told, thread: Some(thread) }),
            Err(_) => self.over = true,
        }
    }

    fn hand_over(&mut self, order: Order) {
        let Some(work) = &mut self.work else { return };
        let Some(orders) = &work.orders else { return };
        let sent =
            if self.waits { orders.send(order).map_err(|error| TrySendError::Disconnected(error.0)) } else { orders.try_send(order) };
        match sent {
            Ok(()) => {}
            // A minute behind: a gap would shift everything after it.
            Err(TrySendError::Full(_)) => {
                work.orders = None;
                self.until = Some(over_text(&self.words, "sound-too-slow-shown"));
            }
            // It has told why.
            Err(TrySendError::Disconnected(_)) => work.orders = None,
        }
    }

    fn send_waiting(&mut self) {
        if !self.waiting.is_empty() {
            let together = std::mem::take(&mut self.waiting);
            self.hand_over(Order::Sound(together));
        }
    }
}

impl Observer for SoundKeeper {
    fn sound(&mut self, lost_frames: u64, mic: &[f32]) {
        if self.work.is_none() {
            self.frames += lost_frames;
            self.begin();
        } else if lost_frames > 0 {
            self.send_waiting();
            self.hand_over(Order::Lost(lost_frames));
            self.frames += lost_frames;
        }
        self.frames += mic.len() as u64;
        if self.work.is_some() {
            self.waiting.extend_from_slice(mic);
            if self.waiting.len() >= TOGETHER * mic.len() {
                self.send_waiting();
            }
        }
    }

    fn kept(&mut self, entry: &Entry) {
        match &entry.fact {
            Fact::SoundConsent { given: Some(true), days } => self.wish.days = Some(*days),
            Fact::SoundConsent { given: Some(false), .. } => {
                self.wish.days = None;
                self.send_waiting();
                if let Some(work) = &mut self.work {
                    work.orders = None;
                    self.until = Some(over_text(&self.words, "sound-withdrawn-shown"));
                }
            }
            // Said again with each exercise, so that it is not forgotten.
            Fact::StepBegun { .. } if !self.over => {
                if let (Some(Work { orders: Some(_), .. }), None) = (&self.work, &self.until) {
                    self.until = lock(&self.kept).sound_until.clone();
                }
            }
            _ => {}
        }
    }

    fn notice(&mut self) -> Option<String> {
        if let Some(work) = &self.work {
            match work.told.try_recv() {
                Ok(Told::Until(text)) => {
                    lock(&self.kept).sound_until = Some(text.clone());
                    self.until = Some(text);
                }
                Ok(Told::Over(text)) => {
                    self.over = true;
                    lock(&self.kept).sound_until = None;
                    self.until = Some(text);
                }
                Err(_) => {}
            }
        }
        self.until.take()
    }
}

impl Drop for SoundKeeper {
    /// Waits until the rest is on the disk.
    fn drop(&mut self) {
        self.send_waiting();
        if let Some(work) = &mut self.work {
            work.orders = None;
            if let Some(thread) = work.thread.take() {
                // A panic of the thread was reported by the panic hook.
                let _ = thread.join();
            }
            for told in work.told.try_iter() {
                if let Told::Over(why) = told {
                    lock(&self.kept).notes.push(why);
                }
            }
        }
    }
}

/// What the thread needs.
struct Job {
    data: PathBuf,
    client: String,
    session: SessionId,
    from_s: f64,
    rate_hz: u32,
    days: u32,
    started_at: ZonedDateTime,
    words: Words,
}

impl Job {
    fn run(self, inbox: &Receiver<Order>, told: &Sender<Told>) {
        let words = &self.words;
        // Nobody listens any more where the practice is over: then there is nobody to tell.
        let tell = |what: Told| drop(told.send(what));
        let over = |why: String| tell(Told::Over(line(words, "sound-over-shown", Some(("why", why)))));
        match self.work(inbox, &|date| tell(Told::Until(line(words, "sound-kept-shown", Some(("date", date)))))) {
            Ok(true) => {}
            Ok(false) => over(line(words, "sound-withdrawn-shown", None)),
            Err(error) => over(error.to_string()),
        }
    }

    /// True where the practice was over, false where the consent was taken back.
    fn work(&self, inbox: &Receiver<Order>, begun: &dyn Fn(String)) -> Result<bool, Failure> {
        let mut recorder = self.recorder(Store::open(&self.data)?, self.from_s)?;
        begun(recorder.expires_at.date().to_string());
        let silence = vec![0.0; self.rate_hz as usize];
        let (mut frames, mut looked) = (0_u64, 0_u64);
        let seconds = |frames: u64| frames as f64 / f64::from(self.rate_hz);
        for order in inbox {
            match order {
                Order::Sound(sound) => {
                    frames += sound.len() as u64;
                    recorder.push(&sound)?;
                }
                Order::Lost(lost) if seconds(lost) <= LONG_GAP_S => {
                    frames += lost;
                    let mut left = lost;
                    while left > 0 {
                        let now = left.min(silence.len() as u64);
                        recorder.push(silence.get(..usize::try_from(now).unwrap_or(0)).unwrap_or(&silence))?;
                        left -= now;
                    }
                }
                Order::Lost(lost) => {
                    frames += lost;
                    let store = recorder.finish()?;
                    recorder = self.recorder(store, self.from_s + seconds(frames))?;
                }
            }
            if seconds(frames - looked) >= LOOK_S {
                looked = frames;
                if recorder.is_withdrawn(&self.client)? {
                    recorder.finish()?;
                    return Ok(false);
                }
            }
        }
        recorder.finish()?;
        Ok(true)
    }

    fn recorder(&self, store: Store, from_s: f64) -> Result<SoundRecorder, Failure> {
        Ok(SoundRecorder::begin(store, self.session, from_s, self.rate_hz, self.days, &self.started_at)?)
    }
}

/// That no more is kept, and why.
fn over_text(words: &Words, why: &str) -> String {
    let why = line(words, why, None);
    line(words, "sound-over-shown", Some(("why", why)))
}

fn line(words: &Words, key: &str, arg: Option<(&'static str, String)>) -> String {
    let line = Line { key: key.to_owned(), args: arg.into_iter().map(|(name, text)| (name, Arg::Text(text))).collect() };
    let known = words.text(&line).ok();
    // Without the catalogue at least what matters.
    known.unwrap_or_else(|| line.args.iter().map(|(_, arg)| if let Arg::Text(text) = arg { text.as_str() } else { key }).collect())
}

#[cfg(test)]
#[path = "tests/sound.rs"]
mod tests;
