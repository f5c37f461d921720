//! The dialogue of an enrolment as a party to the loop. Commands come by the same path as in a practice; a take is of the raw microphone.

use crate::enrol::dialogue::Dialogue;
use crate::enrol::event::{EnrolEffect, EnrolEvent, Learnt};
use crate::grammar::{self, Meaning};
use crate::party::{Block, Party};
use crate::stage::Stage;
use crate::tone::Tone;
use audio::resample::Resampler;
use audio::{AudioError, AudioIo, Captured, ECHO_RATE_HZ};
use command_ear::templates::{Found, Take, TakeFinder};
use command_ear::{ACT_CONFIDENCE, CommandEvent, EnrolledVoice, HeardPhrase};
use hear::VoiceTask;
use session::{Command, Line, LineId, Listening};

/// Length of the tone, s (common practice, no source).
const TONE_S: f64 = 0.18;
/// A recording is over and nothing more can be said: so long it is waited for what is under way, s.
const AFTER_END_S: f64 = 30.0;

/// Keeps what was learnt and gives all that is known of the client's voice now.
pub type Keep = Box<dyn FnMut(Command, &[Take]) -> Result<EnrolledVoice, String> + Send>;

/// An enrolment.
pub struct EnrolParty {
    devices: Box<dyn AudioIo>,
    dialogue: Dialogue,
    keep: Keep,
    finder: TakeFinder,
    from_mic: Resampler,
    /// The block at the finder's rate.
    sound: Vec<f32>,
    found: Option<Found>,
    /// What is listened for besides "stop" and "pause".
    commands: Vec<Command>,
    /// What is said counts as a take.
    takes: bool,
    /// When a recording was over, s.
    ended_s: Option<f64>,
    interrupted: bool,
    finished: bool,
}

impl EnrolParty {
    /// # Errors
    /// A rate that cannot be resampled to the finder's.
    pub fn new(devices: Box<dyn AudioIo>, dialogue: Dialogue, keep: Keep) -> Result<Self, AudioError> {
        Ok(Self {
            from_mic: Resampler::new(devices.mic_rate_hz(), ECHO_RATE_HZ)?,
            devices,
            dialogue,
            keep,
            finder: TakeFinder::default(),
            sound: vec![0.0; (ECHO_RATE_HZ / 100) as usize],
            found: None,
            commands: Vec::new(),
            takes: false,
            ended_s: None,
            interrupted: false,
            finished: false,
        })
    }

    /// How the words stand.
    #[must_use]
    pub fn learnt(&self) -> Vec<Learnt> {
        self.dialogue.learnt()
    }

    fn let_dialogue_act(&mut self, stage: &mut Stage, event: EnrolEvent) {
        let effects = self.dialogue.on(event);
        self.carry_out(stage, effects);
    }

    fn carry_out(&mut self, stage: &mut Stage, effects: Vec<EnrolEffect>) {
        for effect in effects {
            match effect {
                EnrolEffect::Say { id, line } => {
                    if !stage.say(id, line, None) {
                        let at_s = stage.now_s();
                        self.let_dialogue_act(stage, EnrolEvent::LineEnded { at_s, line: id });
                    }
                }
                EnrolEffect::Hush => stage.hush(),
                EnrolEffect::Tone => stage.speech.sound_tone(Tone::new(TONE_S)),
                EnrolEffect::Listen { commands, takes } => self.listen(stage, commands, takes),
                EnrolEffect::Show(view) => stage.show(&view, |words, command| {
                    let name = Line { key: command.name_key(), args: Vec::new() };
                    words.text(&name).unwrap_or(name.key)
                }),
                // The time of agreement is noted with each word that is kept.
                EnrolEffect::Agreed => {}
                EnrolEffect::Keep { command, takes } => match ((self.keep)(command, &takes), &mut stage.path) {
                    (Ok(own), Some(path)) => path.weigh_in(&own),
                    (Ok(_), None) => {}
                    (Err(why), _) => stage.warn(&why),
                },
                EnrolEffect::Finish => self.finished = true,
            }
        }
    }

    fn listen(&mut self, stage: &mut Stage, commands: Vec<Command>, takes: bool) {
        let listening =
            Listening { commands, answers: Vec::new(), worded: Vec::new(), voice: VoiceTask::Idle, list: false, multiword_only: false };
        if !listening.commands.is_empty() {
            stage.listen_for(&grammar::main_grammar(&stage.words, &listening));
        }
        (self.commands, self.takes) = (listening.commands, takes);
    }
}

impl Party for EnrolParty {
    fn devices(&mut self) -> &mut dyn AudioIo {
        self.devices.as_mut()
    }

    fn begin(&mut self, stage: &mut Stage) {
        let first = self.dialogue.begin();
        self.carry_out(stage, first);
    }

    fn interrupt(&mut self, _stage: &mut Stage) {
        self.interrupted = true;
    }

    fn captured(&mut self, stage: &mut Stage, _mic: &[f32], captured: Captured) {
        let now_s = stage.now_s();
        self.interrupted |= captured.ended && now_s - *self.ended_s.get_or_insert(now_s) > AFTER_END_S;
    }

    fn hear(&mut self, stage: &mut Stage, block: Block<'_>) -> Result<Vec<CommandEvent>, AudioError> {
        self.from_mic.process(block.mic, &mut self.sound)?;
        let sound_s = (block.start_s - self.from_mic.delay_s()).max(0.0);
        let (playback, tone) = (&stage.speech.playback, stage.speech.sounds_tone());
        // What an echo canceller does to a take would not come again, and nothing of our own voice may be left in it: so the raw
        // microphone, and only where the room has fallen silent, too.
        let takes = self.takes && playback.is_silent(block.start_s) && !tone;
        self.found = self.finder.push(sound_s, &self.sound, takes);
        let main = playback.main_path_is_open(block.start_s) && !tone && !self.commands.is_empty();
        let heard = stage.hear_commands(block.mic, block.start_s, block.delay_s, main)?;
        stage.follow_echo_canceller();
        Ok(heard)
    }

    fn phrase(&mut self, stage: &mut Stage, heard: &HeardPhrase) {
        let Some(Meaning::Command(command)) = grammar::meaning(&heard.tag) else { return };
        let over_us = stage.speech.playback.masks(heard.end_s);
        if command == Command::Pause && over_us && heard.confidence < ACT_CONFIDENCE {
            return;
        }
        stage.notify(|observer, at_s| observer.heard(at_s, &heard.text));
        let at_s = stage.now_s();
        self.let_dialogue_act(stage, EnrolEvent::Command { at_s, command, confidence: heard.confidence });
    }

    fn tick(&mut self, stage: &mut Stage) {
        let at_s = stage.now_s();
        if let Some(found) = self.found.take() {
            self.let_dialogue_act(stage, EnrolEvent::Found { at_s, found });
        }
        let event =
            if self.interrupted { EnrolEvent::Interrupt { at_s } } else { EnrolEvent::Tick { at_s, speaking: self.finder.is_open() } };
        self.let_dialogue_act(stage, event);
    }

    fn line_ended(&mut self, stage: &mut Stage, id: LineId, at_s: f64) {
        self.let_dialogue_act(stage, EnrolEvent::LineEnded { at_s, line: id });
    }

    fn is_over(&self, _stage: &Stage) -> bool {
        self.finished
    }
}
