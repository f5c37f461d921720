//! One practice, block by block: the microphone's 10 ms in, the loudspeaker's 10 ms out. The same for devices, recordings
//! and rehearsals; only the `AudioIo` around it differs.

use std::collections::{BTreeMap, VecDeque};

use crate::command_path::CommandPath;
use crate::grammar::{self, Meaning};
use crate::levels::Levels;
use crate::observe::Asked;
use crate::observe::{Observer, in_words, pass_on};
use crate::quality_desk::QualityDesk;
use crate::talk::{TalkEvent, Talker};
use audio::gate::{DEFAULT_TAIL_S, Gate};
use audio::{AudioError, AudioIo, Captured, EchoCanceller};
use command_ear::{ACT_CONFIDENCE, CommandEvent, CommandRecogniser, HeardPhrase, Path};
use hear::voice_ear::{VoiceEar, VoiceOutput};
use hear::{VoiceEvent, VoiceTask};
use screen::{Keys, Offer};
use session::{Command, Effect, Engine, Entry, Event, Fact, Line, LineId, Listening, Trouble, listening};
use speak::words::{Words, live_words};

/// A block, s.
const BLOCK_S: f64 = 0.01;
/// A canceller that takes away so much works, dB.
const WORKS_DB: f64 = 10.0;
/// The main path opens so soon after our own voice then, s: an answer may come at once.
const SHORT_TAIL_S: f64 = 0.1;

/// The microphone is asked about its scale after so many blocks: a second.
const LOOK_BLOCKS: u64 = 100;

/// A line that has not ended yet.
struct Under {
    line: Line,
    text: String,
    /// It names what the fast path listens for, so that path is closed while it is said.
    names_live_word: bool,
    began: bool,
    /// It stands on a beat and is no reason to close the gate.
    leaves_open: bool,
    /// It was silenced before its end.
    hushed: bool,
}

/// The parts that a practice is joined from.
pub struct Parts {
    pub engine: Engine,
    pub words: Words,
    pub talker: Box<dyn Talker>,
    pub commands: Box<dyn CommandRecogniser>,
    pub echo: Box<dyn EchoCanceller>,
    pub observers: Vec<Box<dyn Observer>>,
    /// What levels mean.
    pub levels: Levels,
    /// Keys beside the voice, where there are any.
    pub keys: Option<Keys>,
}

/// A practice under way.
pub struct Pipeline {
    engine: Engine,
    words: Words,
    talker: Box<dyn Talker>,
    observers: Vec<Box<dyn Observer>>,
    levels: Levels,
    keys: Option<Keys>,
    ear: VoiceEar,
    /// Everything we play: what the voice ear must mark.
    masks: Gate,
    /// What the main path may not act on. Counts on the beat are short and follow each other without a pause, so they
    /// leave it open where the echo canceller takes them out, or the client could never say "slower".
    gate: Gate,
    path: CommandPath,
    mic_rate_hz: f64,
    /// Microphone frames that passed, lost ones included: the session's clock.
    frames: u64,
    blocks: u64,
    holding: bool,
    listening: Listening,
    live_words: Vec<String>,
    /// Every command by the name that stands on its button.
    names: Vec<(String, Command)>,
    under: BTreeMap<LineId, Under>,
    /// Ends of stretches in which the fast path was closed, s.
    deaf_until_s: f64,
    talk_events: Vec<TalkEvent>,
    events: VecDeque<Event>,
    desk: QualityDesk,
    /// The figures of a hold are waited for, as in a replay.
    waits: bool,
    clipping_told: bool,
    auto_gain_told: bool,
    finished: bool,
    told_of_loudspeaker: bool,
}

impl Pipeline {
    /// # Errors
    /// A rate that cannot be resampled to the command path's.
    pub fn new(parts: Parts, mic_rate_hz: u32, speaker_rate_hz: u32) -> Result<Self, AudioError> {
        let Parts { engine, words, talker, commands, echo, observers, levels, keys } = parts;
        let path = CommandPath::new(echo, commands, mic_rate_hz, speaker_rate_hz)?;
        let in_class = engine.leads_class();
        let names = Command::ALL.iter().map(|&command| (words.name_of(command, in_class), command)).collect();
        let live_words = listening::ALWAYS.iter().flat_map(|&command| words.wordings(command)).collect();
        Ok(Self {
            engine,
            words,
            talker,
            observers,
            levels,
            keys,
            ear: VoiceEar::new(mic_rate_hz),
            masks: Gate::default(),
            gate: Gate::default(),
            path,
            mic_rate_hz: f64::from(mic_rate_hz),
            frames: 0,
            blocks: 0,
            holding: false,
            listening: Listening { commands: Vec::new(), answers: Vec::new(), voice: VoiceTask::Idle, list: false, firm: false },
            live_words,
            names,
            under: BTreeMap::new(),
            deaf_until_s: 0.0,
            talk_events: Vec::new(),
            events: VecDeque::new(),
            desk: QualityDesk::default(),
            waits: true,
            clipping_told: false,
            auto_gain_told: false,
            finished: false,
            told_of_loudspeaker: false,
        })
    }

    /// Leads the practice to its end. `interrupted` is asked once a block.
    ///
    /// # Errors
    /// Microphone or loudspeaker failed for good; what was measured is kept.
    pub fn run(&mut self, io: &mut dyn AudioIo, interrupted: impl Fn() -> bool) -> Result<(), AudioError> {
        self.waits = io.is_offline();
        let mut mic = vec![0.0; (io.mic_rate_hz() / 100) as usize];
        let mut speaker = vec![0.0; (io.speaker_rate_hz() / 100) as usize];
        let outcome = loop {
            let captured = match io.read(&mut mic) {
                Ok(captured) => captured,
                Err(error) => break Err(error),
            };
            if interrupted() {
                self.events.push_back(Event::Interrupt { at_s: self.now_s() });
            }
            self.step(&mic, captured, io.playback_delay_s(), &mut speaker)?;
            if let Err(error) = io.write(&speaker) {
                break Err(error);
            }
            if self.finished {
                break Ok(());
            }
        };
        if let Err(error) = &outcome {
            let at_s = self.now_s();
            self.tell(&error.to_string());
            self.events.push_back(Event::Interrupt { at_s });
            self.settle();
        }
        self.deliver(true);
        io.finish()?;
        outcome
    }

    fn now_s(&self) -> f64 {
        self.frames as f64 / self.mic_rate_hz
    }

    /// Hears one block, lets the engine act on it, and fills the block to play.
    fn step(&mut self, mic: &[f32], captured: Captured, delay_s: f64, speaker: &mut [f32]) -> Result<(), AudioError> {
        if captured.lost_frames > 0 {
            self.pass_lost(captured.lost_frames);
        }
        self.observers.iter_mut().for_each(|observer| observer.sound(captured.lost_frames, mic));
        let block_s = self.now_s();
        self.frames += mic.len() as u64;
        self.hear_voice(mic, block_s);
        self.note_microphone();
        self.deliver(self.waits);
        self.hear_commands(mic, block_s, delay_s)?;
        self.take_keys();
        self.events.push_back(Event::Tick { at_s: self.now_s() });
        self.settle();
        self.talk(block_s, delay_s, speaker);
        self.settle();
        self.blocks += 1;
        if self.blocks.is_multiple_of(10) {
            let now_s = self.now_s();
            for observer in &mut self.observers {
                observer.tick();
                observer.passes(now_s);
            }
            let notices: Vec<String> = self.observers.iter_mut().filter_map(|observer| observer.notice()).collect();
            notices.iter().for_each(|notice| self.tell(notice));
        }
        self.path.play(speaker)
    }

    fn pass_lost(&mut self, frames: u64) {
        let lost_s = frames as f64 / self.mic_rate_hz;
        let (events, desk) = (&mut self.events, &mut self.desk);
        self.ear.skip(frames, &mut |output| events.extend(voice_event(output, 0.0, desk)));
        self.frames += frames;
        self.path.skip();
        self.talker.skip(lost_s);
        self.keep(Fact::SoundLost { lost_s });
    }

    /// The voice ear reads the raw microphone; what we play ourselves is marked, never removed.
    fn hear_voice(&mut self, mic: &[f32], block_s: f64) {
        let masked = self.masks.masks(block_s) || self.masks.masks(block_s + BLOCK_S);
        let now_s = self.now_s();
        let (events, desk, observers, scale) = (&mut self.events, &mut self.desk, &mut self.observers, self.levels.scale());
        self.ear.push(mic, masked, &mut |output| {
            if let VoiceOutput::Frame(frame) = &output {
                observers.iter_mut().for_each(|observer| observer.voice(frame, scale));
            }
            events.extend(voice_event(output, now_s, desk));
        });
    }

    /// Tells what bears on the levels, each once.
    fn note_microphone(&mut self) {
        let clipped = |event: &Event| matches!(event, Event::Offset { hold, .. } if hold.clipped_s > 0.0);
        if self.events.iter().any(clipped) && !std::mem::replace(&mut self.clipping_told, true) {
            self.trouble(Trouble::MicrophoneClips);
        }
        if self.ear.auto_gain_found() && !std::mem::replace(&mut self.auto_gain_told, true) {
            self.levels.set_auto_gain();
            self.trouble(Trouble::MicrophoneGain);
        }
        if self.blocks > 0 && self.blocks.is_multiple_of(LOOK_BLOCKS) {
            if let Some(fact) = self.levels.microphone_used() {
                self.keep(fact);
            }
            for (what, text) in self.levels.notes() {
                self.tell(&text);
                self.keep(Fact::MicrophoneNoted { what: what.into(), text });
            }
        }
    }

    /// Shown at once; the engine keeps it, and says it when nothing is timed.
    fn trouble(&mut self, trouble: Trouble) {
        if let Ok(text) = self.words.text(&Line { key: trouble.key().to_owned(), args: Vec::new() }) {
            self.tell(&text);
        }
        self.events.push_back(Event::Trouble { at_s: self.now_s(), trouble });
    }

    fn hear_commands(&mut self, mic: &[f32], block_s: f64, delay_s: f64) -> Result<(), AudioError> {
        let wanted = !(self.listening.commands.is_empty() && self.listening.answers.is_empty());
        let main = self.gate.is_open(block_s) && !self.holding && wanted;
        let heard = self.path.hear(mic, block_s, delay_s, main)?;
        self.watch_loudspeaker();
        for event in heard {
            match event {
                CommandEvent::Heard(heard) => self.heard(&heard),
                CommandEvent::Restarted { lost_s } => self.keep(Fact::RecogniserRestarted { lost_s }),
                CommandEvent::Failed { message } => self.tell(&message),
            }
        }
        Ok(())
    }

    /// With a canceller that works, little is left of the room's echo; and a loudspeaker that drowns everyone is told of.
    fn watch_loudspeaker(&mut self) {
        let own = self.path.own_voice();
        self.gate.set_tail_s(if own.reduction_db.is_some_and(|db| db >= WORKS_DB) { SHORT_TAIL_S } else { DEFAULT_TAIL_S });
        if own.drowns && !std::mem::replace(&mut self.told_of_loudspeaker, true) {
            self.trouble(Trouble::LoudspeakerTooLoud);
        }
    }

    fn heard(&mut self, heard: &HeardPhrase) {
        if heard.path == Path::Fast && heard.start_s < self.deaf_until_s {
            return;
        }
        let over_own_voice = self.masks.masks(heard.start_s) || self.masks.masks(heard.end_s);
        if over_own_voice && !self.path.stands_out(heard) {
            tracing::debug!(text = heard.text, at_s = heard.start_s, "taken for our own voice");
            return;
        }
        let at_s = self.now_s();
        let (confidence, text) = (heard.confidence, heard.text.clone());
        // Before the echo canceller has learnt the room, "a practice aid" can pass for a "pause". Over our own voice
        // only a sure one counts; a "stop" counts as ever, for a needless stop does less harm than a missed one.
        match grammar::meaning(&heard.tag) {
            // A word that was half heard when the state changed may come after it.
            Some(Meaning::Command(command)) if !self.may_be_said(command) => {}
            Some(Meaning::Command(Command::Pause)) if confidence < ACT_CONFIDENCE && self.masks.masks(heard.end_s) => {}
            Some(Meaning::Command(command)) => {
                self.observers.iter_mut().for_each(|observer| observer.heard(at_s, &heard.text));
                self.events.push_back(Event::Command { at_s, command, confidence, text });
            }
            Some(Meaning::Answer(text)) => {
                self.observers.iter_mut().for_each(|observer| observer.heard(at_s, &heard.text));
                self.events.push_back(Event::Answer { at_s, text, confidence });
            }
            None => {}
        }
    }

    /// A key is as sure as can be, and so is what is pressed on a page.
    fn take_keys(&mut self) {
        let at_s = self.now_s();
        while let Some(command) = self.keys.as_mut().and_then(Keys::take) {
            self.events.push_back(Event::Command { at_s, command, confidence: 1.0, text: "key".into() });
        }
        while let Some(asked) = self.observers.iter_mut().find_map(|observer| observer.asked()) {
            let (Asked::Command(name) | Asked::Key(name)) = &asked;
            let Some((label, command)) = self.names.iter().find(|(_, command)| command.name() == name) else { continue };
            self.observers.iter_mut().for_each(|observer| observer.heard(at_s, label));
            self.events.push_back(Event::Command { at_s, command: *command, confidence: 1.0, text: "page".into() });
        }
    }

    fn may_be_said(&self, command: Command) -> bool {
        self.listening.commands.contains(&command) || listening::ALWAYS.contains(&command)
    }

    /// Lets the engine take everything that has happened, and does what it asks for.
    fn settle(&mut self) {
        while let Some(event) = self.events.pop_front() {
            match &event {
                Event::Onset { .. } => self.holding = true,
                Event::Offset { .. } => self.holding = false,
                _ => {}
            }
            for effect in self.engine.on(event) {
                self.carry_out(effect);
            }
        }
    }

    fn carry_out(&mut self, effect: Effect) {
        pass_on(&effect, &mut self.observers);
        match effect {
            Effect::Record(mut entry) => {
                self.levels.dress(&mut entry.fact);
                self.desk.take(entry);
                self.deliver(self.waits);
            }
            Effect::Say { id, line, on_beat_s } => self.say(id, line, on_beat_s),
            Effect::Hush => {
                self.under.values_mut().for_each(|under| under.hushed = true);
                self.talker.hush();
            }
            Effect::Listen(listening) => self.listen(listening),
            Effect::Volume { change_db } => self.talker.change_volume(change_db),
            Effect::SpeechRate { factor } => self.talker.change_rate(factor),
            Effect::Show(view) => {
                let words = &self.words;
                let text = |line: &Line| words.text(line).unwrap_or_else(|_| line.key.clone());
                let in_class = self.engine.leads_class();
                let shown = in_words(&view, text, |command| words.name_of(command, in_class));
                let at_s = self.now_s();
                for observer in &mut self.observers {
                    observer.viewed(at_s, &view);
                    observer.shown(at_s, &shown);
                }
            }
            Effect::Finish => self.finished = true,
            Effect::Resume(_) => {}
        }
    }

    fn say(&mut self, id: LineId, line: Line, on_beat_s: Option<f64>) {
        let text = match self.words.text_variant(&line, id.0) {
            Ok(text) => text,
            Err(error) => {
                self.tell(&error.to_string());
                self.events.push_back(Event::LineEnded { at_s: self.now_s(), line: id });
                return;
            }
        };
        let phrases: Vec<&str> = self.live_words.iter().map(String::as_str).collect();
        let names_live_word = live_words(&text, &phrases).is_some();
        let leaves_open = on_beat_s.is_some() && self.talker.gives_samples();
        self.talker.say(id, &text, on_beat_s);
        self.under.insert(id, Under { line, text, names_live_word, began: false, leaves_open, hushed: false });
    }

    fn listen(&mut self, listening: Listening) {
        self.ear.set_task(listening.voice);
        if !matches!(listening.voice, VoiceTask::Hold(_)) {
            self.holding = false;
        }
        let grammar = grammar::main_grammar(&self.words, &listening);
        if !grammar.choices.is_empty()
            && let Err(error) = self.path.listen_for(&grammar)
        {
            self.tell(&error.to_string());
        }
        let may_say = listening
            .commands
            .iter()
            .filter_map(|command| self.names.iter().find(|(_, own)| own == command))
            .map(|(label, command)| Offer { name: command.name().to_owned(), label: label.clone() })
            .collect::<Vec<_>>();
        let at_s = self.now_s();
        self.observers.iter_mut().for_each(|observer| observer.listens(at_s, &listening, &may_say));
        self.listening = listening;
    }

    /// Fills the block to play and tells the gate what leaves in it.
    fn talk(&mut self, block_s: f64, delay_s: f64, speaker: &mut [f32]) {
        let mut talked = std::mem::take(&mut self.talk_events);
        self.talker.block(speaker, &mut talked);
        // What is handed over now is heard after this block at the earliest.
        let delay_s = delay_s + BLOCK_S;
        for event in talked.drain(..) {
            match event {
                TalkEvent::Began { id, at_s } => self.line_began(id, at_s, block_s, delay_s),
                TalkEvent::Ended { id, at_s } => self.line_ended(id, at_s, block_s, delay_s),
                TalkEvent::Failed { id, why } => {
                    self.tell(&why.to_string());
                    self.line_ended(id, block_s, block_s, delay_s);
                }
            }
        }
        self.talk_events = talked;
    }

    fn line_began(&mut self, id: LineId, at_s: f64, block_s: f64, delay_s: f64) {
        let Some(under) = self.under.get_mut(&id) else { return };
        under.began = true;
        self.masks.line_began(block_s, delay_s);
        if !under.leaves_open {
            self.gate.line_began(block_s, delay_s);
        }
        if under.names_live_word {
            self.deaf_until_s = f64::INFINITY;
        }
        for observer in &mut self.observers {
            observer.line_began(at_s, &under.line, &under.text);
        }
        self.events.push_back(Event::LineBegan { at_s, line: id });
    }

    fn line_ended(&mut self, id: LineId, at_s: f64, block_s: f64, delay_s: f64) {
        let Some(under) = self.under.remove(&id) else { return };
        if under.began {
            let end_s = block_s + BLOCK_S;
            if !self.under.values().any(|other| other.began) {
                self.masks.line_ended(end_s, delay_s);
            }
            if !self.under.values().any(|other| other.began && !other.leaves_open) {
                self.gate.line_ended(end_s, delay_s);
            }
        }
        if under.names_live_word && self.deaf_until_s.is_infinite() {
            self.deaf_until_s = block_s + delay_s + DEFAULT_TAIL_S;
        }
        if under.began && !under.hushed {
            self.observers.iter_mut().for_each(|observer| observer.line_ended(at_s, &under.line, &under.text));
        }
        self.events.push_back(Event::LineEnded { at_s, line: id });
    }

    fn keep(&mut self, fact: Fact) {
        self.desk.take(Entry { at_s: self.now_s(), fact, position: None });
        self.deliver(self.waits);
    }

    /// Lets the observers have the entries whose figures are there, in order.
    fn deliver(&mut self, wait: bool) {
        while let Some(entry) = self.desk.next(wait) {
            self.observers.iter_mut().for_each(|observer| observer.kept(&entry));
        }
    }

    fn tell(&mut self, warning: &str) {
        let at_s = self.now_s();
        self.observers.iter_mut().for_each(|observer| observer.told(at_s, warning));
    }
}

/// What the engine cares about of what the voice ear gives.
fn voice_event(output: VoiceOutput, now_s: f64, desk: &mut QualityDesk) -> Option<Event> {
    let VoiceOutput::Event(event) = output else { return None };
    Some(match event {
        VoiceEvent::Onset { onset_s, sure_s } => Event::Onset { at_s: now_s.max(sure_s), onset_s },
        VoiceEvent::Offset(mut held) => {
            desk.work_on(&mut held);
            let hold = held.hold;
            Event::Offset { at_s: now_s.max(hold.offset_s), hold }
        }
        VoiceEvent::SpeechBegan { onset_s } => Event::SpeechBegan { at_s: now_s.max(onset_s), onset_s },
        VoiceEvent::RoomLoud { at_s, loud, room_db } => Event::RoomLoud { at_s: now_s.max(at_s), loud, room_db },
        VoiceEvent::Spoken(utterance) => Event::Spoken { at_s: now_s.max(utterance.offset_s), utterance },
    })
}
