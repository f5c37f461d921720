//! Waiting, block by block: the microphone's 10 ms through the ear to the attendant, and what it says to the loudspeaker.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::time::Instant;

use jiff::{SignedDuration, ZonedDateTime};

use crate::attend::devices::{Block, Devices};
use crate::attend::ear::Ear;
use crate::attend::grammar::{grammar, meaning, offer_name};
use crate::attend::record::{keep_notice, moment};
use crate::command_path::CommandPath;
use crate::follow::{ScreenFollower, SharedScreen};
use crate::observe::Asked;
use crate::observe::Observer;
use crate::talk::{PcmTalker, SystemTalker, TalkEvent, Talker};
use attend::{Attendant, Effect, Event, Hearing, Household, Said, View};
use audio::EchoCanceller;
use audio::echo::{AutoCanceller, NoCancel};
use command_ear::{ChildRecogniser, CommandEvent, Grammar, HeardPhrase, Mode, Options};
use files::error::Failure;
use files::households::wordings;
use hear::VoiceTask;
use screen::{Offer, ShownView, TerminalScreen};
use session::{Line, LineId, Listening};
use speak::{LineCache, Renderer, SYSTEM_VOICE, SystemSpeaker, Words, choose_voice};

const BLOCK_S: f64 = 0.01;
/// Blocks between two ticks of the attendant.
const TICK_BLOCKS: u64 = 10;
/// So long nothing but digital silence: the microphone is switched off, s.
const SILENT_S: f64 = 10.0;
/// The loudspeaker stays open for so long after the last word, s.
const LINGER_S: f64 = 2.0;
/// A recogniser that cannot be started is tried again after, s.
const RECOGNISER_AGAIN_S: f64 = 60.0;
/// After a recording's end what is half heard is waited for so long, s.
const AFTER_END_S: f64 = 3.0;

/// What a run of waiting ends with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Waited {
    Start {
        person: usize,
        routine: usize,
    },
    /// Ctrl-C, or the recording is over.
    Over,
}

/// What does not change while it waits.
pub struct House {
    pub household: Household,
    pub words: Words,
    pub model: PathBuf,
    pub voice: Option<String>,
    pub data: PathBuf,
    /// The program that runs as the recogniser's process; none for the running one, which a test is not.
    pub recogniser: Option<PathBuf>,
    /// The time of day at the first sample; none: the clock on the wall.
    pub begins_at: Option<ZonedDateTime>,
}

struct Under {
    line: Line,
    text: String,
    began: bool,
    hushed: bool,
}

/// An attendant with ears and a voice.
/// Makes a follower of one stretch of waiting.
pub type MakeFollower = Box<dyn Fn() -> Result<Box<dyn Observer>, Failure> + Send>;

pub struct AttendPipeline {
    pub house: House,
    pub devices: Devices,
    attendant: Attendant,
    ear: Option<Ear>,
    rates: (u32, u32),
    no_ear_until_s: f64,
    talker: Box<dyn Talker>,
    observers: Vec<Box<dyn Observer>>,
    /// The page that it is shown on.
    page: Option<MakeFollower>,
    may_be_said: Vec<Said>,
    shown: ShownView,
    talker_rate_hz: u32,
    under: BTreeMap<LineId, Under>,
    /// Seconds that passed, those of practices included.
    now_s: f64,
    blocks: u64,
    silent_s: f64,
    gone: bool,
    ended_s: Option<f64>,
    /// The last word was given out, s.
    quiet_since_s: f64,
    start: Option<(usize, usize)>,
}

impl AttendPipeline {
    /// # Errors
    /// The voice cannot be used.
    pub fn new(house: House, devices: Devices) -> Result<Self, Failure> {
        let talker = talker(&house, devices.speaker_rate_hz(), devices.is_offline())?;
        Ok(Self {
            attendant: Attendant::new(house.household.clone()),
            rates: (0, 0),
            house,
            ear: None,
            no_ear_until_s: 0.0,
            talker,
            observers: Vec::new(),
            page: None,
            may_be_said: Vec::new(),
            shown: ShownView::default(),
            talker_rate_hz: devices.speaker_rate_hz(),
            under: BTreeMap::new(),
            now_s: 0.0,
            blocks: 0,
            silent_s: 0.0,
            gone: false,
            ended_s: None,
            quiet_since_s: 0.0,
            start: None,
            devices,
        })
    }

    /// The time of day now.
    pub fn now(&self) -> ZonedDateTime {
        match &self.house.begins_at {
            None => ZonedDateTime::now(),
            Some(begin) => {
                let passed = SignedDuration::try_from_secs_f64(self.now_s).unwrap_or(SignedDuration::ZERO);
                begin.checked_add(passed).unwrap_or_else(|_| begin.clone())
            }
        }
    }

    /// Shows the waiting elsewhere, too: `page` makes a follower for each stretch of waiting.
    pub fn show_on(&mut self, page: MakeFollower) {
        self.page = Some(page);
    }

    /// Seconds since the beginning, on the clock of events.
    pub fn now_s(&self) -> f64 {
        self.now_s
    }

    /// Time that passed without a block, s.
    pub fn pass(&mut self, passed_s: f64) {
        self.now_s += passed_s;
        self.talker.skip(passed_s);
    }

    /// Tells the attendant something from outside.
    pub fn tell(&mut self, event: Event) {
        let effects = self.attendant.on(event);
        self.carry_out(effects);
    }

    /// Waits until a practice is asked for or it is over. `interrupted` is asked once a block.
    ///
    /// # Errors
    /// The recogniser cannot be started at the very beginning.
    pub fn wait(&mut self, screen: SharedScreen, interrupted: impl Fn() -> bool) -> Result<Waited, Failure> {
        self.observers = vec![Box::new(ScreenFollower::new(screen))];
        if let Some(page) = &self.page {
            self.observers.push(page()?);
        }
        let (at_s, shown) = (self.now_s, self.shown.clone());
        self.observers.iter_mut().for_each(|observer| observer.shown(at_s, &shown));
        self.tell_what_may_be_said();
        if self.blocks == 0 {
            self.ear = Some(self.new_ear()?);
        }
        let waited = loop {
            if interrupted() {
                break Waited::Over;
            }
            self.step();
            if let Some((person, routine)) = self.start.take() {
                break Waited::Start { person, routine };
            }
            if self.ended_s.is_some_and(|ended_s| self.now_s > ended_s + AFTER_END_S) && self.under.is_empty() && !self.attendant.is_busy()
            {
                break Waited::Over;
            }
        };
        // A practice has ears of its own; its recogniser needs the memory of this one.
        self.ear = None;
        self.no_ear_until_s = 0.0;
        self.devices.drain_speaker();
        self.observers.clear();
        Ok(waited)
    }

    fn step(&mut self) {
        let mut mic = vec![0.0; (self.devices.mic_rate_hz() / 100) as usize];
        let block = self.devices.read(&mut mic, !self.under.is_empty());
        if let Block::Sound(captured) = block {
            if captured.lost_frames > 0 {
                let lost_s = captured.lost_frames as f64 / f64::from(self.devices.mic_rate_hz());
                self.pass(lost_s);
                if let Some(ear) = &mut self.ear {
                    ear.skip();
                }
            }
            if captured.ended {
                self.ended_s.get_or_insert(self.now_s);
            }
        }
        let block_s = self.now_s;
        self.now_s += BLOCK_S;
        self.blocks += 1;
        self.look_at(&mic, &block);
        // A microphone that came back may have another rate; then its block is heard from the next one on.
        if mic.len() == (self.devices.mic_rate_hz() / 100) as usize {
            self.hear(&mic, block_s);
        }
        self.take_asked();
        if self.blocks.is_multiple_of(TICK_BLOCKS) {
            self.tick();
        }
        self.talk(block_s);
    }

    /// What is pressed on a page is as sure as can be.
    fn take_asked(&mut self) {
        while let Some(asked) = self.observers.iter_mut().find_map(|observer| observer.asked()) {
            let Asked::Command(name) = asked else { continue };
            let Some(said) = self.may_be_said.iter().chain([&Said::Stop]).find(|said| offer_name(said) == name).cloned() else { continue };
            let (at_s, label) = (self.now_s, self.offer(&said).label);
            self.observers.iter_mut().for_each(|observer| observer.heard(at_s, &label));
            self.tell(Event::Heard { at_s, said, confidence: 1.0 });
        }
    }

    /// Whether there is sound at all.
    fn look_at(&mut self, mic: &[f32], block: &Block) {
        self.gone = matches!(block, Block::Gone);
        // The silence after a recording's end says nothing of its microphone.
        if self.ended_s.is_some() {
            return;
        }
        let first = mic.first().copied().unwrap_or_default();
        let dead = mic.iter().all(|sample| sample.to_bits() == first.to_bits());
        self.silent_s = if dead { self.silent_s + BLOCK_S } else { 0.0 };
    }

    fn hear(&mut self, mic: &[f32], block_s: f64) {
        let rates = (self.devices.mic_rate_hz(), self.talker_rate_hz);
        if self.ear.is_none() || rates != self.rates {
            self.build_ear();
        }
        let (delay_s, attentive) = (self.devices.delay_s(), self.attendant.expects_answer());
        let Some(ear) = &mut self.ear else { return };
        let heard = match ear.hear(mic, block_s, delay_s, attentive) {
            Ok(heard) => heard,
            Err(why) => return self.warn(&why.to_string()),
        };
        let talks = ear.talks();
        for event in heard {
            match event {
                CommandEvent::Heard(heard) => self.heard(&heard),
                CommandEvent::Restarted { lost_s } => self.warn(&format!("the recogniser was restarted; {lost_s:.1} s went unheard")),
                CommandEvent::Failed { message } => {
                    self.warn(&message);
                    self.ear = None;
                    self.no_ear_until_s = self.now_s + RECOGNISER_AGAIN_S;
                }
            }
        }
        if talks {
            self.tell(Event::Talk { at_s: self.now_s });
        }
    }

    fn build_ear(&mut self) {
        if self.now_s < self.no_ear_until_s {
            return;
        }
        match self.new_ear() {
            Ok(ear) => self.ear = Some(ear),
            Err(why) => {
                self.warn(&why.to_string());
                self.ear = None;
                self.no_ear_until_s = self.now_s + RECOGNISER_AGAIN_S;
            }
        }
    }

    fn new_ear(&mut self) -> Result<Ear, Failure> {
        let mode = if self.devices.is_offline() { Mode::Offline } else { Mode::Live };
        let options = Options { model: self.house.model.clone(), program: self.house.recogniser.clone(), fast: Grammar::default(), mode };
        let recogniser = ChildRecogniser::start(&options)?;
        let echo: Box<dyn EchoCanceller> = if self.devices.hears_itself() { Box::new(AutoCanceller::new()) } else { Box::new(NoCancel) };
        self.rates = (self.devices.mic_rate_hz(), self.talker_rate_hz);
        let mut path = CommandPath::new(echo, Box::new(recogniser), self.rates.0, self.rates.1)?;
        if !self.may_be_said.is_empty() {
            path.listen_for(&grammar(&self.house.words, &self.house.household, &self.may_be_said))?;
        }
        Ok(Ear::new(path))
    }

    fn heard(&mut self, heard: &HeardPhrase) {
        let fast = heard.path == command_ear::Path::Fast;
        let said = if fast { Some(Said::Stop) } else { meaning(&self.may_be_said, &heard.tag).cloned() };
        let (Some(said), Some(ear)) = (said, &self.ear) else { return };
        if !ear.is_not_ours(heard) {
            return;
        }
        let at_s = self.now_s;
        self.observers.iter_mut().for_each(|observer| observer.heard(at_s, &heard.text));
        self.tell(Event::Heard { at_s, said, confidence: heard.confidence });
    }

    fn tick(&mut self) {
        let at_s = self.now_s;
        let hearing = if self.gone {
            Hearing::Gone
        } else if self.silent_s >= SILENT_S {
            Hearing::Silent
        } else if self.ear.is_none() && self.no_ear_until_s > 0.0 {
            Hearing::NoWords
        } else {
            Hearing::Well
        };
        self.tell(Event::Hearing { at_s, hearing });
        let now = moment(&self.now());
        self.tell(Event::Tick { at_s, now });
        for complaint in std::mem::take(&mut self.devices.complaints) {
            self.warn(&complaint);
        }
        for observer in &mut self.observers {
            observer.tick();
            observer.passes(at_s);
        }
        if self.under.is_empty() && at_s > self.quiet_since_s + LINGER_S {
            self.devices.rest_speaker();
        }
    }

    fn carry_out(&mut self, effects: Vec<Effect>) {
        for effect in effects {
            match effect {
                Effect::Say { id, line } => self.say(id, line),
                Effect::Hush => {
                    self.observers.iter_mut().for_each(|observer| observer.hushed());
                    self.under.values_mut().for_each(|under| under.hushed = true);
                    self.talker.hush();
                }
                Effect::Listen(may_be_said) => self.listen(may_be_said),
                Effect::Show(view) => self.show(&view),
                Effect::Start { person, routine } => self.start = Some((person, routine)),
                Effect::Keep { person, line, keeping } => {
                    let text = self.text(&line);
                    let name = person.and_then(|person| self.house.household.persons.get(person)).map(|person| person.name.as_str());
                    if let Err(why) = keep_notice(&self.house.data, &self.now(), name, (&line.key, &text), keeping) {
                        self.warn(&why);
                    }
                }
            }
        }
    }

    fn text(&self, line: &Line) -> String {
        self.house.words.text(line).unwrap_or_else(|_| line.key.clone())
    }

    fn listen(&mut self, may_be_said: Vec<Said>) {
        if let Some(ear) = &mut self.ear
            && let Err(why) = ear.path.listen_for(&grammar(&self.house.words, &self.house.household, &may_be_said))
        {
            self.warn(&why.to_string());
        }
        self.may_be_said = may_be_said;
        self.tell_what_may_be_said();
    }

    /// Everything, for whoever wants more than the few that are shown.
    fn tell_what_may_be_said(&mut self) {
        let offers: Vec<Offer> = self.may_be_said.iter().map(|said| self.offer(said)).filter(|offer| !offer.label.is_empty()).collect();
        let answers = offers.iter().map(|offer| offer.label.clone()).collect();
        let listening = Listening { commands: Vec::new(), answers, voice: VoiceTask::Idle, list: false, firm: false };
        let at_s = self.now_s;
        self.observers.iter_mut().for_each(|observer| observer.listens(at_s, &listening, &offers));
    }

    /// As a button offers it, in the first of its wordings.
    fn offer(&self, said: &Said) -> Offer {
        let label = wordings(&self.house.words, &self.house.household, said).into_iter().next().unwrap_or_default();
        Offer { name: offer_name(said), label }
    }

    fn show(&mut self, view: &View) {
        let shown = ShownView {
            heading: view.heading.as_ref().map(|line| self.text(line)).unwrap_or_default(),
            prompt: self.text(&view.prompt),
            figure: String::new(),
            can_say: view.can_say.iter().map(|said| self.offer(said)).collect(),
        };
        let at_s = self.now_s;
        self.observers.iter_mut().for_each(|observer| observer.shown(at_s, &shown));
        self.shown = shown;
    }

    fn say(&mut self, id: LineId, line: Line) {
        self.devices.wake_speaker();
        self.follow_speaker();
        match self.house.words.text_variant(&line, id.0) {
            Ok(text) => {
                if self.under.is_empty() {
                    self.listen_for_stop(true);
                }
                self.talker.say(id, &text, None);
                self.under.insert(id, Under { line, text, began: false, hushed: false });
            }
            Err(why) => {
                self.warn(&why.to_string());
                self.tell(Event::LineEnded { at_s: self.now_s, line: id });
            }
        }
    }

    /// A loudspeaker that was opened anew may have another rate.
    fn follow_speaker(&mut self) {
        let rate_hz = self.devices.speaker_rate_hz();
        if rate_hz == self.talker_rate_hz || !self.under.is_empty() {
            return;
        }
        match talker(&self.house, rate_hz, self.devices.is_offline()) {
            Ok(talker) => {
                (self.talker, self.talker_rate_hz) = (talker, rate_hz);
                self.talker.skip(self.now_s);
            }
            Err(why) => self.warn(&why.to_string()),
        }
    }

    /// "Stop" is heard over our own voice, and costs a second recogniser only then.
    fn listen_for_stop(&mut self, listens: bool) {
        let choices = if listens { grammar(&self.house.words, &self.house.household, &[Said::Stop]) } else { Grammar::default() };
        if let Some(ear) = &mut self.ear
            && let Err(why) = ear.path.listen_for_fast(&choices)
        {
            self.warn(&why.to_string());
        }
    }

    fn talk(&mut self, block_s: f64) {
        let mut speaker = vec![0.0; (self.talker_rate_hz / 100) as usize];
        let mut talked = Vec::new();
        self.talker.block(&mut speaker, &mut talked);
        let delay_s = self.devices.delay_s() + BLOCK_S;
        self.devices.write(&speaker);
        if self.rates.1 == self.talker_rate_hz
            && let Some(ear) = &mut self.ear
            && let Err(why) = ear.path.play(&speaker)
        {
            self.warn(&why.to_string());
        }
        for event in talked {
            match event {
                TalkEvent::Began { id, at_s } => self.line_began(id, at_s, block_s, delay_s),
                TalkEvent::Ended { id, .. } => self.line_ended(id, block_s, delay_s),
                TalkEvent::Failed { id, why } => {
                    self.warn(&why.to_string());
                    self.line_ended(id, block_s, delay_s);
                }
            }
        }
    }

    fn line_began(&mut self, id: LineId, at_s: f64, block_s: f64, delay_s: f64) {
        let Some(under) = self.under.get_mut(&id) else { return };
        under.began = true;
        if let Some(ear) = &mut self.ear {
            ear.line_began(block_s, delay_s);
        }
        self.observers.iter_mut().for_each(|observer| observer.line_began(at_s, &under.line, &under.text));
    }

    fn line_ended(&mut self, id: LineId, block_s: f64, delay_s: f64) {
        let Some(under) = self.under.remove(&id) else { return };
        if under.began
            && !self.under.values().any(|other| other.began)
            && let Some(ear) = &mut self.ear
        {
            ear.line_ended(block_s + BLOCK_S, delay_s);
        }
        if under.began && !under.hushed {
            self.observers.iter_mut().for_each(|observer| observer.line_ended(block_s, &under.line, &under.text));
        }
        self.quiet_since_s = self.now_s;
        if self.under.is_empty() {
            self.listen_for_stop(false);
        }
        self.tell(Event::LineEnded { at_s: self.now_s, line: id });
    }

    fn warn(&mut self, warning: &str) {
        let at_s = self.now_s;
        self.observers.iter_mut().for_each(|observer| observer.told(at_s, warning));
    }
}

/// The screen of one stretch of waiting.
pub fn new_screen() -> SharedScreen {
    SharedScreen::new(TerminalScreen::stdout())
}

/// How long something took on the clock on the wall, s.
pub fn since_s(began: Instant) -> f64 {
    began.elapsed().as_secs_f64()
}

fn talker(house: &House, rate_hz: u32, offline: bool) -> Result<Box<dyn Talker>, Failure> {
    if house.voice.as_deref() == Some(SYSTEM_VOICE) {
        if offline {
            return Err(Failure::Options("--voice system cannot be written to a file or hurried; use --voice espeak-ng here".into()));
        }
        return Ok(Box::new(SystemTalker::new(SystemSpeaker::open()?)));
    }
    let voice = choose_voice(house.voice.as_deref())?;
    let cache = LineCache::new(Some(house.data.join("voice-cache")), rate_hz);
    let renderer = if offline { Renderer::offline(voice, cache) } else { Renderer::live(voice, cache)? };
    Ok(Box::new(PcmTalker::new(renderer, rate_hz)))
}

#[cfg(test)]
#[path = "tests/pipeline.rs"]
mod tests;
