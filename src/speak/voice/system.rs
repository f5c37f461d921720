//! The voice the client already knows: the system's speech service, through the `tts` crate.
//!
//! It speaks by itself and gives no samples, so it is no [`Voice`](crate::Voice). What bites, and what is done:
//! the service may hang, so a thread of its own talks to it; its callbacks run while the crate holds a lock, so they push
//! one byte into a channel and do nothing else; an end may never be told, so each line is over after twice its expected
//! length; the crate's `voice()` panics on Linux and is never called.

use crate::{SpeakError, words::without_marks};
use session::LineId;
use std::collections::VecDeque;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::time::{Duration, Instant};

/// What `--voice` calls it.
pub const SYSTEM_VOICE: &str = "system";

/// How long the service may take to answer the first time; it starts its daemon then.
const CONNECT_LIMIT: Duration = Duration::from_secs(8);
/// Expected length of a line: so long for each word and this besides, s. 150 words a minute are 0.4 s for each.
const WORD_S: f64 = 0.4;
const BESIDES_S: f64 = 0.5;

const BEGUN: u8 = b'b';
const ENDED: u8 = b'e';
const STOPPED: u8 = b's';
const REFUSED: u8 = b'r';

/// What the service did with a line. Times are not told: the service gives none that could be trusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SystemEvent {
    Began(LineId),
    /// It was said, stopped, refused, or the service gave no end in time.
    Ended(LineId),
}

enum Order {
    Speak(String),
    Stop,
}

/// Speaks lines one after the other through the system's service.
///
/// Call [`SystemSpeaker::poll`] every few ten milliseconds: it also hands over the next line and is the watchdog.
pub struct SystemSpeaker {
    orders: Sender<Order>,
    heard: Receiver<u8>,
    turns: Turns,
    start: Instant,
}

impl SystemSpeaker {
    /// Connects to the service.
    ///
    /// # Errors
    /// There is none, or it does not answer.
    pub fn open() -> Result<Self, SpeakError> {
        Self::with(Dispatcher::open)
    }

    fn with<S: Service>(open: impl FnOnce(Sender<u8>) -> Result<S, String> + Send + 'static) -> Result<Self, SpeakError> {
        let fault = |why: &str| {
            SpeakError(format!(
                "the system's voice cannot be used: {why}; install the packages speech-dispatcher and \
                 speech-dispatcher-espeak-ng (if they are, end a hanging speech-dispatcher and see that sound works), \
                 or leave out --voice {SYSTEM_VOICE}"
            ))
        };
        let (orders, todo) = channel();
        let (bytes, heard) = channel();
        let (opened, ready) = channel();
        std::thread::Builder::new()
            .name("system voice".into())
            .spawn(move || match open(bytes.clone()) {
                Ok(service) => {
                    if opened.send(Ok(())).is_ok() {
                        attend(service, &todo, &bytes);
                    }
                }
                Err(why) => drop(opened.send(Err(why))),
            })
            .map_err(|why| fault(&why.to_string()))?;
        match ready.recv_timeout(CONNECT_LIMIT) {
            Ok(Ok(())) => Ok(Self { orders, heard, turns: Turns::default(), start: Instant::now() }),
            Ok(Err(why)) => Err(fault(&why)),
            Err(_) => Err(fault("it does not answer")),
        }
    }

    /// Says a line after those already given. It gets one [`SystemEvent::Ended`] in any case, even if the service hangs.
    pub fn speak(&mut self, id: LineId, text: &str) {
        self.turns.queue.push_back((id, without_marks(text)));
        self.turn();
    }

    /// Stops talking and drops every line that waits.
    pub fn stop(&mut self) {
        if self.is_speaking() {
            self.turns.stop();
            self.order(Order::Stop);
        }
    }

    /// True from `speak` on until every line has ended; the microphone is to be gated meanwhile.
    #[must_use]
    pub fn is_speaking(&self) -> bool {
        self.turns.current.is_some() || !self.turns.queue.is_empty()
    }

    /// What happened since the last call, one at a time, never waiting.
    pub fn poll(&mut self) -> Option<SystemEvent> {
        self.turn();
        self.turns.events.pop_front()
    }

    fn turn(&mut self) {
        while let Ok(byte) = self.heard.try_recv() {
            self.turns.heard(byte);
        }
        let now_s = self.start.elapsed().as_secs_f64();
        if self.turns.watch(now_s) {
            tracing::warn!("the system's voice told no end of a line; it is taken as over");
            self.order(Order::Stop);
        }
        if let Some(text) = self.turns.next(now_s) {
            self.order(Order::Speak(text));
        }
    }

    /// If the thread is gone or hangs, the watchdog ends the lines.
    fn order(&self, order: Order) {
        let _ = self.orders.send(order);
    }

    /// Keys of the messages that say what this voice cannot do.
    #[must_use]
    pub fn limits() -> &'static [&'static str] {
        &["voice-system-no-beat", "voice-system-no-interrupting", "voice-system-no-speaker-choice"]
    }
}

/// The part of the `tts` crate that is used.
trait Service {
    fn speak(&mut self, text: &str) -> Result<(), String>;
    fn stop(&mut self) -> Result<(), String>;
}

struct Dispatcher(tts::Tts);

impl Dispatcher {
    fn open(bytes: Sender<u8>) -> Result<Self, String> {
        let service = tts::Tts::default().map_err(|why| why.to_string())?;
        let features = service.supported_features();
        if features.utterance_callbacks {
            let teller = |byte: u8| -> Option<Box<dyn FnMut(tts::UtteranceId)>> {
                let bytes = bytes.clone();
                Some(Box::new(move |_| {
                    // Nobody listens any more only while this speaker is being dropped.
                    let _ = bytes.send(byte);
                }))
            };
            service.on_utterance_begin(teller(BEGUN)).map_err(|why| why.to_string())?;
            service.on_utterance_end(teller(ENDED)).map_err(|why| why.to_string())?;
            service.on_utterance_stop(teller(STOPPED)).map_err(|why| why.to_string())?;
        }
        Ok(Self(service))
    }
}

impl Service for Dispatcher {
    fn speak(&mut self, text: &str) -> Result<(), String> {
        self.0.speak(text, false).map(drop).map_err(|why| why.to_string())
    }

    fn stop(&mut self) -> Result<(), String> {
        self.0.stop().map(drop).map_err(|why| why.to_string())
    }
}

/// Runs until the speaker is dropped. Every call to the service may hang; nobody waits for this thread.
fn attend(mut service: impl Service, todo: &Receiver<Order>, bytes: &Sender<u8>) {
    while let Ok(order) = todo.recv() {
        match order {
            Order::Speak(text) => {
                if let Err(why) = service.speak(&text) {
                    tracing::warn!("the system's voice refused a line: {why}");
                    if bytes.send(REFUSED).is_err() {
                        return;
                    }
                }
            }
            Order::Stop => {
                if let Err(why) = service.stop() {
                    tracing::warn!("the system's voice did not stop: {why}");
                }
            }
        }
    }
    // The speaker is gone: silence, whether it succeeds or not.
    let _ = service.stop();
}

/// Whose turn it is; pure.
#[derive(Default)]
struct Turns {
    queue: VecDeque<(LineId, String)>,
    current: Option<Turn>,
    /// Stops that the service has yet to confirm; until then an end belongs to the stopped line.
    stopping: u32,
    events: VecDeque<SystemEvent>,
}

struct Turn {
    id: LineId,
    begun: bool,
    over_by_s: f64,
}

impl Turns {
    /// The text to hand to the service now, if the last line is over.
    fn next(&mut self, now_s: f64) -> Option<String> {
        if self.current.is_some() {
            return None;
        }
        let (id, text) = self.queue.pop_front()?;
        let expected_s = BESIDES_S + WORD_S * text.split_whitespace().count() as f64;
        self.current = Some(Turn { id, begun: false, over_by_s: now_s + 2.0 * expected_s });
        Some(text)
    }

    fn heard(&mut self, byte: u8) {
        match byte {
            BEGUN => {
                self.stopping = 0;
                if let Some(turn) = self.current.as_mut().filter(|turn| !turn.begun) {
                    turn.begun = true;
                    self.events.push_back(SystemEvent::Began(turn.id));
                }
            }
            STOPPED if self.stopping > 0 => self.stopping -= 1,
            REFUSED => self.end_current(),
            // Before its begin, an end can only be that of a line that was stopped.
            _ if self.current.as_ref().is_some_and(|turn| turn.begun) => self.end_current(),
            _ => {}
        }
    }

    fn end_current(&mut self) {
        if let Some(turn) = self.current.take() {
            self.events.push_back(SystemEvent::Ended(turn.id));
        }
    }

    fn stop(&mut self) {
        if self.current.is_some() {
            self.stopping += 1;
        }
        self.end_current();
        let waiting = self.queue.drain(..).map(|(id, _)| SystemEvent::Ended(id));
        self.events.extend(waiting);
    }

    /// True where the line took too long: it is taken as over, and the service is to be stopped.
    fn watch(&mut self, now_s: f64) -> bool {
        let late = self.current.as_ref().is_some_and(|turn| now_s > turn.over_by_s);
        if late {
            self.stopping += 1;
            self.end_current();
        }
        late
    }
}

#[cfg(test)]
mod tests {
    use super::SystemEvent::{Began, Ended};
    use super::*;

    fn turns(lines: &[(u64, &str)]) -> Turns {
        let queue = lines.iter().map(|(id, text)| (LineId(*id), (*text).to_owned())).collect();
        Turns { queue, ..Turns::default() }
    }

    #[test]
    fn lines_take_turns_and_each_ends_once() {
        let mut turns = turns(&[(1, "one"), (2, "two")]);
        assert_eq!(turns.next(0.0).as_deref(), Some("one"));
        assert_eq!(turns.next(0.0), None, "one at a time");
        for byte in [BEGUN, ENDED, ENDED] {
            turns.heard(byte);
        }
        assert_eq!(turns.next(1.0).as_deref(), Some("two"));
        turns.heard(ENDED);
        turns.heard(BEGUN);
        turns.heard(STOPPED);
        let (one, two) = (LineId(1), LineId(2));
        assert_eq!(turns.events, [Began(one), Ended(one), Began(two), Ended(two)]);
    }

    #[test]
    fn a_line_without_an_end_is_over_after_twice_its_length() {
        let mut turns = turns(&[(1, "five words are two seconds")]);
        turns.next(10.0);
        turns.heard(BEGUN);
        assert!(!turns.watch(14.9));
        assert!(turns.watch(15.1));
        assert_eq!(turns.events, [Began(LineId(1)), Ended(LineId(1))]);
    }

    #[test]
    fn stop_ends_all_and_late_news_of_it_does_not_end_the_next_line() {
        let mut turns = turns(&[(1, "one"), (2, "two")]);
        turns.next(0.0);
        turns.heard(BEGUN);
        turns.stop();
        turns.queue.push_back((LineId(3), "three".into()));
        turns.next(0.1);
        turns.heard(STOPPED);
        turns.heard(ENDED);
        turns.heard(BEGUN);
        turns.heard(ENDED);
        let ids = [Began(LineId(1)), Ended(LineId(1)), Ended(LineId(2)), Began(LineId(3)), Ended(LineId(3))];
        assert_eq!(turns.events, ids);
    }

    /// Answers like the service: begins and ends each line, and refuses one.
    struct Fake(Sender<u8>);

    impl Service for Fake {
        fn speak(&mut self, text: &str) -> Result<(), String> {
            if text == "refuse" {
                return Err("no".into());
            }
            self.0.send(BEGUN).and_then(|()| self.0.send(ENDED)).map_err(|e| e.to_string())
        }
        fn stop(&mut self) -> Result<(), String> {
            self.0.send(STOPPED).map_err(|e| e.to_string())
        }
    }

    #[test]
    fn the_thread_hands_over_and_tells() {
        let mut speaker = SystemSpeaker::with(|bytes| Ok(Fake(bytes))).unwrap();
        for (id, text) in [(1, "one"), (2, "refuse"), (3, "three")] {
            speaker.speak(LineId(id), text);
        }
        assert!(speaker.is_speaking());
        let mut ended = Vec::new();
        for _ in 0..1000 {
            while let Some(event) = speaker.poll() {
                if let Ended(id) = event {
                    ended.push(id.0);
                }
            }
            if ended.len() == 3 {
                break;
            }
            std::thread::sleep(Duration::from_millis(5));
        }
        assert_eq!(ended, [1, 2, 3]);
        assert!(!speaker.is_speaking());
    }

    /// Hangs in every call until the test is over.
    struct Hanging;

    impl Service for Hanging {
        fn speak(&mut self, _: &str) -> Result<(), String> {
            loop {
                std::thread::park();
            }
        }
        fn stop(&mut self) -> Result<(), String> {
            self.speak("")
        }
    }

    #[test]
    fn a_service_that_hangs_holds_up_nothing() {
        let mut speaker = SystemSpeaker::with(|_| Ok(Hanging)).unwrap();
        speaker.speak(LineId(1), "one");
        speaker.stop();
        assert_eq!(speaker.poll(), Some(Ended(LineId(1))));
        speaker.speak(LineId(2), "two");
        assert!(speaker.is_speaking());
        // As if the time had passed.
        speaker.start -= Duration::from_secs(60);
        assert_eq!(speaker.poll(), Some(Ended(LineId(2))));
        assert!(!speaker.is_speaking());
    }

    #[test]
    fn no_service_is_an_error_with_a_remedy() {
        let refused = SystemSpeaker::with(|_| Err::<Fake, _>("connection refused".into())).err().unwrap().0;
        assert!(refused.contains("connection refused") && refused.contains("speech-dispatcher"), "{refused}");
    }
}
