//! The attendant as a party to the loop: what was heard and how well becomes its events, and its effects are carried out.

use jiff::{SignedDuration, ZonedDateTime};

use crate::attend::devices::Devices;
use crate::attend::ear::Ear;
use crate::attend::grammar::{grammar, meaning, offer_name};
use crate::attend::record::{keep_notice, moment};
use crate::machine::Machine;
use crate::observe::Asked;
use crate::party::{Block, Party};
use crate::silence::Silence;
use crate::stage::Stage;
use attend::{Attendant, Effect, Event, Hearing, Household, Said, View};
use audio::{AudioError, AudioIo, Captured};
use command_ear::{CommandEvent, Grammar, HeardPhrase, Path};
use files::error::Failure;
use files::households::wordings;
use hear::VoiceTask;
use screen::{Offer, ShownView};
use session::{Line, LineId, Listening};

/// Blocks between two ticks of the attendant.
const TICK_BLOCKS: u64 = 10;
/// The loudspeaker stays open for so long after the last word, s.
const LINGER_S: f64 = 2.0;
/// A recogniser that cannot be started is tried again after, s.
const RECOGNISER_AGAIN_S: f64 = 60.0;
/// A microphone that lets nothing through while nobody speaks is silent through a night and through an empty house, s.
const GATED_DEAD_S: f64 = 12.0 * 3600.0;
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

/// An attendant, its ears and its devices.
pub struct AttendParty {
    attendant: Attendant,
    pub(super) household: Household,
    pub(super) machine: Machine,
    /// The time of day at the first sample; none: the clock on the wall.
    begins_at: Option<ZonedDateTime>,
    pub(super) devices: Devices,
    ear: Ear,
    /// Rates of the microphone and the loudspeaker that the command path was built for.
    path_rates_hz: (u32, u32),
    /// The recogniser could not be used, and is not tried before.
    no_path_until_s: f64,
    may_be_said: Vec<Said>,
    shown: ShownView,
    /// Somebody other than ourselves speaks now.
    talks: bool,
    silence: Silence,
    ended_s: Option<f64>,
    /// The last word was given out, s.
    quiet_since_s: f64,
    start: Option<(usize, usize)>,
    interrupted: bool,
}

impl AttendParty {
    pub fn new(household: Household, machine: Machine, begins_at: Option<ZonedDateTime>, devices: Devices) -> Self {
        Self {
            attendant: Attendant::new(household.clone()),
            household,
            machine,
            begins_at,
            devices,
            ear: Ear::default(),
            path_rates_hz: (0, 0),
            no_path_until_s: 0.0,
            may_be_said: Vec::new(),
            shown: ShownView::default(),
            talks: false,
            silence: Silence::new(GATED_DEAD_S),
            ended_s: None,
            quiet_since_s: 0.0,
            start: None,
            interrupted: false,
        }
    }

    /// The time of day, `now_s` after the first sample.
    pub fn time_of_day(&self, now_s: f64) -> ZonedDateTime {
        match &self.begins_at {
            None => ZonedDateTime::now(),
            Some(begin) => {
                let passed = SignedDuration::try_from_secs_f64(now_s).unwrap_or(SignedDuration::ZERO);
                begin.checked_add(passed).unwrap_or_else(|_| begin.clone())
            }
        }
    }

    /// A stretch of waiting begins: new observers are shown how it stands.
    ///
    /// # Errors
    /// The recogniser cannot be started at the very beginning.
    pub fn open(&mut self, stage: &mut Stage) -> Result<(), Failure> {
        self.interrupted = false;
        stage.show_words(None, &self.shown);
        self.tell_what_may_be_said(stage);
        if stage.blocks == 0 {
            self.build_path(stage)?;
        }
        Ok(())
    }

    /// Its microphone was found to let nothing through while nobody speaks.
    #[must_use]
    pub fn mic_gates(&self) -> bool {
        self.silence.gates()
    }

    /// The stretch is over. A practice has ears of its own; its recogniser needs the memory of this one.
    pub fn close_ears(&mut self, stage: &mut Stage) -> Waited {
        stage.path = None;
        self.no_path_until_s = 0.0;
        self.devices.drain_speaker();
        match self.start.take() {
            Some((person, routine)) if !self.interrupted => Waited::Start { person, routine },
            _ => Waited::Over,
        }
    }

    /// Tells the attendant something, and does what it asks for.
    pub fn let_attendant_act(&mut self, stage: &mut Stage, event: Event) {
        let effects = self.attendant.on(event);
        self.carry_out(stage, effects);
    }

    fn carry_out(&mut self, stage: &mut Stage, effects: Vec<Effect>) {
        for effect in effects {
            match effect {
                Effect::Say { id, line } => self.say(stage, id, line),
                Effect::Hush => stage.hush(),
                Effect::Listen(may_be_said) => self.listen(stage, may_be_said),
                Effect::Show(view) => self.show(stage, &view),
                Effect::Start { person, routine } => self.start = Some((person, routine)),
                Effect::Keep { person, line, keeping } => {
                    let text = stage.text(&line);
                    let name = person.and_then(|person| self.household.persons.get(person)).map(|person| person.name.as_str());
                    let now = self.time_of_day(stage.now_s());
                    if let Err(why) = keep_notice(&self.machine.data, &now, name, (&line.key, &text), keeping) {
                        stage.warn(&why);
                    }
                }
            }
        }
    }

    fn build_path(&mut self, stage: &mut Stage) -> Result<(), Failure> {
        let recogniser = self.machine.recogniser(Grammar::default())?;
        self.path_rates_hz = (self.devices.mic_rate_hz(), stage.speech.rate_hz());
        let mut path = self.machine.command_path(recogniser, self.path_rates_hz.0, self.path_rates_hz.1)?;
        if !self.may_be_said.is_empty() {
            path.listen_for(&grammar(&stage.words, &self.household, &self.may_be_said))?;
        }
        (stage.path, self.ear) = (Some(path), Ear::default());
        Ok(())
    }

    /// Builds the path anew where there is none or a rate has changed.
    fn see_to_path(&mut self, stage: &mut Stage) {
        let fits = (self.devices.mic_rate_hz(), stage.speech.rate_hz()) == self.path_rates_hz;
        if (stage.path.is_some() && fits) || stage.now_s() < self.no_path_until_s {
            return;
        }
        if let Err(why) = self.build_path(stage) {
            self.recogniser_failed(stage, &why.to_string());
        }
    }

    fn say(&mut self, stage: &mut Stage, id: LineId, line: Line) {
        self.devices.wake_speaker();
        self.follow_speaker(stage);
        let first = stage.speech.is_idle();
        if !stage.say(id, line, None) {
            let at_s = stage.now_s();
            return self.let_attendant_act(stage, Event::LineEnded { at_s, line: id });
        }
        self.devices.set_busy(true);
        if first {
            self.listen_for_stop(stage, true);
        }
    }

    /// A loudspeaker that was opened anew may have another rate.
    fn follow_speaker(&mut self, stage: &mut Stage) {
        let rate_hz = self.devices.speaker_rate_hz();
        if rate_hz == stage.speech.rate_hz() || !stage.speech.is_idle() {
            return;
        }
        match self.machine.talker(rate_hz, Vec::new()) {
            Ok(talker) => stage.speech.replace(talker, rate_hz, stage.clock.now_s()),
            Err(why) => stage.warn(&why.to_string()),
        }
    }

    /// "Stop" is heard over our own voice, and costs a second recogniser only then.
    fn listen_for_stop(&self, stage: &mut Stage, listens: bool) {
        let choices = if listens { grammar(&stage.words, &self.household, &[Said::Stop]) } else { Grammar::default() };
        stage.listen_for_fast(&choices);
    }

    fn listen(&mut self, stage: &mut Stage, may_be_said: Vec<Said>) {
        if stage.path.is_some() {
            stage.listen_for(&grammar(&stage.words, &self.household, &may_be_said));
        }
        self.may_be_said = may_be_said;
        self.tell_what_may_be_said(stage);
    }

    /// Everything, for whoever wants more than the few that are shown.
    fn tell_what_may_be_said(&self, stage: &mut Stage) {
        let offers = self.may_be_said.iter().filter(|said| said.is_offered()).map(|said| self.offer(stage, said));
        let offers: Vec<Offer> = offers.filter(|offer| !offer.label.is_empty()).collect();
        let answers = offers.iter().map(|offer| offer.label.clone()).collect();
        let listening =
            Listening { commands: Vec::new(), answers, worded: Vec::new(), voice: VoiceTask::Idle, list: false, multiword_only: false };
        stage.notify(|observer, at_s| observer.listens(at_s, &listening, &offers));
    }

    /// As a button offers it, in the first of its wordings.
    fn offer(&self, stage: &Stage, said: &Said) -> Offer {
        let label = wordings(&stage.words, &self.household, said).into_iter().next().unwrap_or_default();
        Offer { name: offer_name(said), label }
    }

    fn show(&mut self, stage: &mut Stage, view: &View) {
        self.shown = ShownView {
            heading: view.heading.as_ref().map(|line| stage.text(line)).unwrap_or_default(),
            prompt: stage.text(&view.prompt),
            figure: String::new(),
            aside: String::new(),
            can_say: view.can_say.iter().map(|said| self.offer(stage, said)).collect(),
        };
        stage.show_words(None, &self.shown);
    }

    /// What is pressed on a page is as sure as can be.
    fn take_asked(&mut self, stage: &mut Stage) {
        while let Some(asked) = stage.observers.iter_mut().find_map(|observer| observer.asked()) {
            let Asked::Command(name) = asked else { continue };
            let Some(said) = self.may_be_said.iter().chain([&Said::Stop]).find(|said| offer_name(said) == name).cloned() else { continue };
            let label = self.offer(stage, &said).label;
            stage.notify(|observer, at_s| observer.heard(at_s, &label));
            let at_s = stage.now_s();
            self.let_attendant_act(stage, Event::Heard { at_s, said, confidence: 1.0 });
        }
    }

    /// How well it hears, and what time it is.
    fn tell_time(&mut self, stage: &mut Stage) {
        let at_s = stage.now_s();
        let hearing = if self.devices.is_mic_gone() {
            Hearing::Gone
        } else if self.silence.is_dead() {
            Hearing::Silent
        } else if stage.path.is_none() && self.no_path_until_s > 0.0 {
            Hearing::NoWords
        } else {
            Hearing::Well
        };
        self.let_attendant_act(stage, Event::Hearing { at_s, hearing });
        let now = moment(&self.time_of_day(at_s));
        self.let_attendant_act(stage, Event::Tick { at_s, now });
        for complaint in std::mem::take(&mut self.devices.complaints) {
            stage.warn(&complaint);
        }
        if stage.speech.is_idle() && at_s > self.quiet_since_s + LINGER_S {
            self.devices.rest_speaker();
        }
    }
}

impl Party for AttendParty {
    fn devices(&mut self) -> &mut dyn AudioIo {
        &mut self.devices
    }

    fn interrupt(&mut self, _stage: &mut Stage) {
        self.interrupted = true;
    }

    fn captured(&mut self, stage: &mut Stage, mic: &[f32], captured: Captured) {
        if captured.lost_frames > 0 {
            self.ear.skip();
        }
        if captured.ended {
            self.ended_s.get_or_insert(stage.now_s());
        }
        // The silence after a recording's end says nothing of its microphone.
        if self.ended_s.is_some() {
            return;
        }
        if captured.away && !self.devices.is_mic_gone() {
            return;
        }
        if self.devices.is_mic_gone() {
            // It may be another one when it comes back.
            self.silence = Silence::new(GATED_DEAD_S);
        } else {
            self.silence.take(mic);
        }
    }

    fn hear(&mut self, stage: &mut Stage, block: Block<'_>) -> Result<Vec<CommandEvent>, AudioError> {
        self.see_to_path(stage);
        self.talks = false;
        let Some(path) = &mut stage.path else { return Ok(Vec::new()) };
        let heard = self.ear.hear(path, &stage.speech.playback, block, self.attendant.expects_answer())?;
        self.talks = self.ear.talks();
        Ok(heard)
    }

    fn phrase(&mut self, stage: &mut Stage, heard: &HeardPhrase) {
        let said = if heard.path == Path::Fast { Some(Said::Stop) } else { meaning(&self.may_be_said, &heard.tag).cloned() };
        let Some(said) = said else { return };
        stage.notify(|observer, at_s| observer.heard(at_s, &heard.text));
        let at_s = stage.now_s();
        self.let_attendant_act(stage, Event::Heard { at_s, said, confidence: heard.confidence });
    }

    fn recogniser_failed(&mut self, stage: &mut Stage, message: &str) {
        stage.warn(message);
        stage.path = None;
        self.no_path_until_s = stage.now_s() + RECOGNISER_AGAIN_S;
    }

    fn tick(&mut self, stage: &mut Stage) {
        if std::mem::take(&mut self.talks) {
            let at_s = stage.now_s();
            self.let_attendant_act(stage, Event::Talk { at_s });
        }
        self.take_asked(stage);
        if (stage.blocks + 1).is_multiple_of(TICK_BLOCKS) {
            self.tell_time(stage);
        }
    }

    fn line_ended(&mut self, stage: &mut Stage, id: LineId, _at_s: f64) {
        self.quiet_since_s = stage.now_s();
        if stage.speech.is_idle() {
            self.devices.set_busy(false);
            self.listen_for_stop(stage, false);
        }
        let at_s = stage.now_s();
        self.let_attendant_act(stage, Event::LineEnded { at_s, line: id });
    }

    fn is_over(&self, stage: &Stage) -> bool {
        let recording_over = self.ended_s.is_some_and(|ended_s| stage.now_s() > ended_s + AFTER_END_S);
        self.interrupted || self.start.is_some() || (recording_over && stage.speech.is_idle() && !self.attendant.is_busy())
    }
}
