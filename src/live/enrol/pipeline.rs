//! An enrolment block by block, as `pipeline` is for a practice: 10 ms of the microphone in, 10 ms for the loudspeaker out.

use std::collections::BTreeMap;

use crate::enrol::dialogue::Dialogue;
use crate::enrol::event::{EnrolEffect, EnrolEvent};
use crate::grammar::{self, Meaning};
use crate::observe::{Observer, in_words};
use crate::talk::{TalkEvent, Talker};
use audio::gate::{DEFAULT_TAIL_S, Gate};
use audio::resample::Resampler;
use audio::{AudioError, AudioIo, ECHO_RATE_HZ, EchoCanceller};
use command_ear::templates::{Take, TakeFinder};
use command_ear::{ACT_CONFIDENCE, ChildRecogniser, CommandEvent, CommandRecogniser, HeardPhrase, OwnVoice, Path};
use hear::VoiceTask;
use session::{Command, Line, LineId, Listening, listening};
use speak::words::{Words, live_words};

const BLOCK_S: f64 = 0.01;
/// The tone: a soft fifth of a second that hearing loss of old age spares, Hz and peak (common practice, no source).
const TONE_HZ: f64 = 660.0;
const TONE_S: f64 = 0.18;
const TONE_PEAK: f64 = 0.1;
/// A recording is over and nothing more can be said: so long it is waited for what is under way, s.
const AFTER_END_S: f64 = 30.0;

/// Keeps what was learnt and gives all that is known of the client's voice now.
pub type Keep = Box<dyn FnMut(Command, &[Take]) -> Result<OwnVoice, String> + Send>;

/// What an enrolment is joined from.
pub struct EnrolParts {
    pub dialogue: Dialogue,
    pub words: Words,
    pub talker: Box<dyn Talker>,
    pub commands: ChildRecogniser,
    pub echo: Box<dyn EchoCanceller>,
    pub observers: Vec<Box<dyn Observer>>,
    pub keep: Keep,
}

struct Under {
    line: Line,
    text: String,
    names_live_word: bool,
    began: bool,
    hushed: bool,
}

/// An enrolment under way.
pub struct EnrolPipeline {
    parts: EnrolParts,
    finder: TakeFinder,
    gate: Gate,
    mic_to_command: Resampler,
    speaker_to_command: Resampler,
    /// What was handed to the loudspeaker last, at the command path's rate.
    played: Vec<f32>,
    mic_rate_hz: f64,
    speaker_rate_hz: f64,
    frames: u64,
    commands: Vec<Command>,
    takes: bool,
    live_words: Vec<String>,
    under: BTreeMap<LineId, Under>,
    deaf_until_s: f64,
    /// Frames of the tone that were played; none when it is silent.
    tone: Option<u64>,
    ended_s: Option<f64>,
    finished: bool,
}

impl EnrolPipeline {
    /// # Errors
    /// A rate that cannot be resampled to the command path's.
    pub fn new(parts: EnrolParts, mic_rate_hz: u32, speaker_rate_hz: u32) -> Result<Self, AudioError> {
        Ok(Self {
            finder: TakeFinder::default(),
            gate: Gate::default(),
            mic_to_command: Resampler::new(mic_rate_hz, ECHO_RATE_HZ)?,
            speaker_to_command: Resampler::new(speaker_rate_hz, ECHO_RATE_HZ)?,
            played: vec![0.0; (ECHO_RATE_HZ / 100) as usize],
            mic_rate_hz: f64::from(mic_rate_hz),
            speaker_rate_hz: f64::from(speaker_rate_hz),
            frames: 0,
            commands: Vec::new(),
            takes: false,
            live_words: listening::ALWAYS.iter().flat_map(|&command| parts.words.wordings(command)).collect(),
            under: BTreeMap::new(),
            deaf_until_s: 0.0,
            tone: None,
            ended_s: None,
            finished: false,
            parts,
        })
    }

    /// Leads it to its end; gives the dialogue back. `interrupted` is asked once a block.
    ///
    /// # Errors
    /// Microphone or loudspeaker failed for good; what was learnt is kept.
    pub fn run(&mut self, io: &mut dyn AudioIo, interrupted: impl Fn() -> bool) -> Result<(), AudioError> {
        let mut mic = vec![0.0; (io.mic_rate_hz() / 100) as usize];
        let mut speaker = vec![0.0; (io.speaker_rate_hz() / 100) as usize];
        let mut sound = vec![0.0; (ECHO_RATE_HZ / 100) as usize];
        let first = self.parts.dialogue.begin();
        self.carry_out(first);
        while !self.finished {
            let captured = io.read(&mut mic)?;
            if captured.lost_frames > 0 {
                self.frames += captured.lost_frames;
                self.parts.talker.skip(captured.lost_frames as f64 / self.mic_rate_hz);
            }
            let (block_s, delay_s) = (self.now_s(), io.playback_delay_s());
            self.frames += mic.len() as u64;
            self.hear(&mic, &mut sound, block_s, delay_s)?;
            let over = captured.ended && block_s - *self.ended_s.get_or_insert(block_s) > AFTER_END_S;
            let at_s = self.now_s();
            self.tell(if interrupted() || over {
                EnrolEvent::Interrupt { at_s }
            } else {
                EnrolEvent::Tick { at_s, speaking: self.finder.is_open() }
            });
            self.talk(&mut speaker, block_s, delay_s);
            self.speaker_to_command.process(&speaker, &mut self.played)?;
            io.write(&speaker)?;
            if self.frames / mic.len() as u64 % 10 == 0 {
                self.parts.observers.iter_mut().for_each(|observer| observer.tick());
            }
        }
        io.finish()
    }

    /// How the words stand.
    #[must_use]
    pub fn dialogue(&self) -> &Dialogue {
        &self.parts.dialogue
    }

    fn now_s(&self) -> f64 {
        self.frames as f64 / self.mic_rate_hz
    }

    fn hear(&mut self, mic: &[f32], sound: &mut [f32], block_s: f64, delay_s: f64) -> Result<(), AudioError> {
        self.mic_to_command.process(mic, sound)?;
        let sound_s = (block_s - self.mic_to_command.delay_s()).max(0.0);
        let open = self.gate.is_open(block_s) && self.tone.is_none();
        // A take is of the raw microphone: what an echo canceller did to it would not come again.
        let found = self.finder.push(sound_s, sound, open && self.takes);
        self.parts.echo.hint_delay(delay_s);
        self.parts.echo.cancel(&self.played, sound);
        self.parts.commands.push(sound_s, sound, open && !self.commands.is_empty());
        for event in self.parts.commands.poll() {
            match event {
                CommandEvent::Heard(heard) => self.heard(&heard),
                CommandEvent::Restarted { lost_s } => self.warn(&format!("the recogniser was restarted; {lost_s:.1} s went unheard")),
                CommandEvent::Failed { message } => self.warn(&message),
            }
        }
        if let Some(found) = found {
            self.tell(EnrolEvent::Found { at_s: self.now_s(), found });
        }
        Ok(())
    }

    fn heard(&mut self, heard: &HeardPhrase) {
        if heard.path == Path::Fast && heard.start_s < self.deaf_until_s {
            return;
        }
        let Some(Meaning::Command(command)) = grammar::meaning(&heard.tag) else { return };
        let over_us = self.gate.masks(heard.end_s);
        if command == Command::Pause && over_us && heard.confidence < ACT_CONFIDENCE {
            return;
        }
        let at_s = self.now_s();
        self.parts.observers.iter_mut().for_each(|observer| observer.heard(at_s, &heard.text));
        self.tell(EnrolEvent::Command { at_s, command, confidence: heard.confidence });
    }

    fn tell(&mut self, event: EnrolEvent) {
        let effects = self.parts.dialogue.on(event);
        self.carry_out(effects);
    }

    fn carry_out(&mut self, effects: Vec<EnrolEffect>) {
        for effect in effects {
            match effect {
                EnrolEffect::Say { id, line } => self.say(id, line),
                EnrolEffect::Hush => {
                    self.under.values_mut().for_each(|under| under.hushed = true);
                    self.parts.talker.hush();
                }
                EnrolEffect::Tone => self.tone = Some(0),
                EnrolEffect::Listen { commands, takes } => self.listen(commands, takes),
                EnrolEffect::Show(view) => {
                    let words = &self.parts.words;
                    let text = |line: &Line| words.text(line).unwrap_or_else(|_| line.key.clone());
                    let shown = in_words(&view, text, |command| text(&Line { key: command.name_key(), args: Vec::new() }));
                    let at_s = self.now_s();
                    self.parts.observers.iter_mut().for_each(|observer| observer.shown(at_s, &shown));
                }
                // The time of agreement is noted with each word that is kept.
                EnrolEffect::Agreed => {}
                EnrolEffect::Keep { command, takes } => match (self.parts.keep)(command, &takes) {
                    Ok(own) => self.parts.commands.weigh_in(&own),
                    Err(why) => self.warn(&why),
                },
                EnrolEffect::Finish => self.finished = true,
            }
        }
    }

    fn listen(&mut self, commands: Vec<Command>, takes: bool) {
        let listening = Listening { commands: commands.clone(), answers: Vec::new(), voice: VoiceTask::Idle, list: false, firm: false };
        if !commands.is_empty()
            && let Err(error) = self.parts.commands.listen_for(&grammar::main_grammar(&self.parts.words, &listening))
        {
            self.warn(&error.to_string());
        }
        (self.commands, self.takes) = (commands, takes);
    }

    fn say(&mut self, id: LineId, line: Line) {
        match self.parts.words.text_variant(&line, id.0) {
            Ok(text) => {
                let phrases: Vec<&str> = self.live_words.iter().map(String::as_str).collect();
                let names_live_word = live_words(&text, &phrases).is_some();
                self.parts.talker.say(id, &text, None);
                self.under.insert(id, Under { line, text, names_live_word, began: false, hushed: false });
            }
            Err(error) => {
                self.warn(&error.to_string());
                self.tell(EnrolEvent::LineEnded { at_s: self.now_s(), line: id });
            }
        }
    }

    fn talk(&mut self, speaker: &mut [f32], block_s: f64, delay_s: f64) {
        let mut talked = Vec::new();
        self.parts.talker.block(speaker, &mut talked);
        let delay_s = delay_s + BLOCK_S;
        for event in talked {
            match event {
                TalkEvent::Began { id, at_s } => self.line_began(id, at_s, block_s, delay_s),
                TalkEvent::Ended { id, at_s } => self.line_ended(id, at_s, block_s, delay_s),
                TalkEvent::Failed { id, why } => {
                    self.warn(&why.to_string());
                    self.line_ended(id, block_s, block_s, delay_s);
                }
            }
        }
        self.sound_tone(speaker, block_s, delay_s);
    }

    fn line_began(&mut self, id: LineId, at_s: f64, block_s: f64, delay_s: f64) {
        let Some(under) = self.under.get_mut(&id) else { return };
        under.began = true;
        self.gate.line_began(block_s, delay_s);
        if under.names_live_word {
            self.deaf_until_s = f64::INFINITY;
        }
        self.parts.observers.iter_mut().for_each(|observer| observer.line_began(at_s, &under.line, &under.text));
    }

    fn line_ended(&mut self, id: LineId, at_s: f64, block_s: f64, delay_s: f64) {
        let Some(under) = self.under.remove(&id) else { return };
        if under.began && !self.under.values().any(|other| other.began) {
            self.gate.line_ended(block_s + BLOCK_S, delay_s);
        }
        if under.names_live_word && self.deaf_until_s.is_infinite() {
            self.deaf_until_s = block_s + delay_s + DEFAULT_TAIL_S;
        }
        if under.began && !under.hushed {
            self.parts.observers.iter_mut().for_each(|observer| observer.line_ended(at_s, &under.line, &under.text));
        }
        self.tell(EnrolEvent::LineEnded { at_s, line: id });
    }

    /// Adds the tone, which is our own sound as a line is.
    fn sound_tone(&mut self, speaker: &mut [f32], block_s: f64, delay_s: f64) {
        let Some(mut frame) = self.tone else { return };
        if frame == 0 {
            self.gate.line_began(block_s, delay_s);
        }
        for sample in speaker.iter_mut() {
            let t_s = frame as f64 / self.speaker_rate_hz;
            let swell = (std::f64::consts::PI * t_s / TONE_S).sin().max(0.0);
            if t_s < TONE_S {
                *sample += (TONE_PEAK * swell * (std::f64::consts::TAU * TONE_HZ * t_s).sin()) as f32;
            }
            frame += 1;
        }
        self.tone = (frame as f64 / self.speaker_rate_hz < TONE_S).then_some(frame);
        if self.tone.is_none() {
            self.gate.line_ended(block_s + BLOCK_S, delay_s);
        }
    }

    fn warn(&mut self, warning: &str) {
        let at_s = self.now_s();
        self.parts.observers.iter_mut().for_each(|observer| observer.told(at_s, warning));
    }
}
