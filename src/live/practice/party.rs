//! The engine as a party to the loop: what was heard becomes its events, and its effects are carried out.

use std::collections::VecDeque;

use crate::clock::BLOCK_S;
use crate::command_path::CommandPath;
use crate::grammar::{self, Meaning};
use crate::levels::Levels;
use crate::note_writer::NoteWriter;
use crate::observe::Asked;
use crate::party::{Block, Party};
use crate::practice::measures::Measures;
use crate::silence::{Silence, SoundChange};
use crate::stage::Stage;
use audio::{AudioError, AudioIo, Captured};
use command_ear::{ACT_CONFIDENCE, CommandEvent, HeardPhrase};
use hear::VoiceTask;
use screen::{Keys, Offer};
use session::{Command, Effect, Engine, Entry, Event, Fact, Line, LineId, Listening, Trouble, listening};
use speak::Words;

/// The microphone is asked about its scale after so many blocks: a second.
const LOOK_BLOCKS: u64 = 100;

/// A microphone that lets nothing through while nobody speaks is taken for dead after so long, s: in a practice somebody does, again
/// and again.
const GATED_DEAD_S: f64 = 180.0;

/// A device that is away for so long, blocks, is told of; what is shorter stands in the record alone.
pub(crate) const AWAY_TOLD_BLOCKS: u64 = 50;

/// A practice or a class.
pub struct PracticeParty {
    devices: Box<dyn AudioIo>,
    engine: Engine,
    /// Somebody speaks over our own voice.
    spoken_over: bool,
    measures: Measures,
    /// Keys beside the voice, where there are any.
    keys: Option<Keys>,
    /// What the engine has not heard of yet.
    events: VecDeque<Event>,
    /// Somebody holds a vowel, so nobody gives commands.
    holding: bool,
    listening: Listening,
    /// What can be answered now, as a button offers it.
    answers: Vec<Offer>,
    /// Every command by the name that stands on its button.
    names: Vec<(String, Command)>,
    loudspeaker_reported: bool,
    silence: Silence,
    /// A recording is over: the silence after it says nothing of its microphone.
    recording_over: bool,
    /// Blocks that the microphone, and the loudspeaker, have not been there.
    mic_away: u64,
    speaker_away: u64,
    finished: bool,
}

impl PracticeParty {
    pub fn new(mut devices: Box<dyn AudioIo>, engine: Engine, levels: Levels, keys: Option<Keys>, words: &Words) -> Self {
        let in_class = engine.leads_class();
        devices.outlast();
        Self {
            measures: Measures::new(devices.mic_rate_hz(), levels, devices.is_offline()),
            names: Command::ALL.iter().map(|&command| (words.name_of(command, in_class), command)).collect(),
            answers: Vec::new(),
            devices,
            engine,
            spoken_over: false,
            keys,
            events: VecDeque::new(),
            holding: false,
            listening: Listening {
                commands: Vec::new(),
                answers: Vec::new(),
                worded: Vec::new(),
                voice: VoiceTask::Idle,
                list: false,
                multiword_only: false,
            },
            loudspeaker_reported: false,
            silence: Silence::new(GATED_DEAD_S),
            recording_over: false,
            mic_away: 0,
            speaker_away: 0,
            finished: false,
        }
    }

    /// The microphone is known to let nothing through while nobody speaks.
    pub fn expect_gate(&mut self) {
        self.silence.expect_gate();
    }

    /// What the client tells is written down.
    pub fn write_down(&mut self, writer: NoteWriter) {
        self.measures.write_down(writer);
    }

    /// A microphone that gives nothing at all is told of, and so is its return.
    fn follow_sound(&mut self, stage: &mut Stage, mic: &[f32], captured: Captured) {
        self.recording_over |= captured.ended;
        if self.recording_over {
            return;
        }
        match self.silence.take(mic) {
            Some(SoundChange::Gone) => self.trouble(stage, Trouble::MicrophoneSilent),
            Some(SoundChange::Back) => self.sound_is_back(stage),
            None => {}
        }
    }

    fn sound_is_back(&mut self, stage: &mut Stage) {
        warn_of(stage, "trouble-microphone-back");
        self.events.push_back(Event::SoundIsBack { at_s: stage.now_s() });
    }

    /// Time passes without a microphone: nothing is measured, and nothing is judged by the silence in its place.
    fn pass_without_microphone(&mut self, stage: &mut Stage, mic: &[f32]) {
        self.mic_away += 1;
        self.measures.skip(mic.len() as u64, &mut self.events);
        // One that gave nothing before has been told of.
        if self.mic_away == AWAY_TOLD_BLOCKS && !self.silence.is_dead() {
            self.trouble(stage, Trouble::MicrophoneSilent);
        }
    }

    /// Seconds that the microphone was away, where it is back with this block.
    fn microphone_came_back(&mut self, stage: &mut Stage) -> f64 {
        let away = std::mem::take(&mut self.mic_away);
        if away >= AWAY_TOLD_BLOCKS || (away > 0 && self.silence.is_dead()) {
            self.sound_is_back(stage);
        }
        if away > 0 {
            if let Some(name) = self.devices.microphone() {
                self.measures.hears_with(name);
            }
            // It may be another one, but what is known of this one costs only patience.
            let gates = self.silence.gates();
            self.silence = Silence::new(GATED_DEAD_S);
            if gates {
                self.silence.expect_gate();
            }
        }
        away as f64 * BLOCK_S
    }

    /// A loudspeaker that goes and comes back is told of where it can be seen.
    fn follow_loudspeaker(&mut self, stage: &mut Stage) {
        if self.devices.is_speaker_away() {
            self.speaker_away += 1;
            if self.speaker_away == AWAY_TOLD_BLOCKS {
                self.trouble(stage, Trouble::LoudspeakerGone);
            }
        } else if std::mem::take(&mut self.speaker_away) >= AWAY_TOLD_BLOCKS {
            warn_of(stage, "loudspeaker-back-shown");
            self.events.push_back(Event::VoiceIsBack { at_s: stage.now_s() });
        }
    }

    fn hear_voice(&mut self, stage: &mut Stage, block: Block<'_>) {
        let playback = &stage.speech.playback;
        let masked = playback.masks(block.start_s) || playback.masks(block.start_s + BLOCK_S);
        let now_s = stage.now_s();
        self.measures.hear(block.mic, masked, now_s, &mut stage.observers, &mut self.events);
        for trouble in self.measures.new_troubles(&self.events) {
            self.trouble(stage, trouble);
        }
        if stage.blocks > 0 && stage.blocks.is_multiple_of(LOOK_BLOCKS) {
            if let Some(fact) = self.measures.microphone_used() {
                self.keep(stage, fact);
            }
            for (what, text) in self.measures.notes() {
                stage.warn(&text);
                self.keep(stage, Fact::MicrophoneNoted { what: what.into(), text });
            }
        }
        self.measures.deliver(false, &mut stage.observers);
    }

    /// Shown at once; the engine keeps it, and says it when nothing is timed.
    fn trouble(&mut self, stage: &mut Stage, trouble: Trouble) {
        if let Ok(text) = stage.words.text(&Line { key: trouble.key().to_owned(), args: Vec::new() }) {
            stage.warn(&text);
        }
        self.events.push_back(Event::Trouble { at_s: stage.now_s(), trouble });
    }

    /// A key is as sure as can be, and so is what is pressed on a page.
    fn take_keys(&mut self, stage: &mut Stage) {
        let at_s = stage.now_s();
        while let Some(command) = self.keys.as_mut().and_then(Keys::take) {
            self.events.push_back(Event::Command { at_s, command, confidence: 1.0, text: "key".into() });
        }
        while let Some(asked) = stage.observers.iter_mut().find_map(|observer| observer.asked()) {
            let (Asked::Command(name) | Asked::Key(name)) = &asked;
            if let Some(answer) = self.listening.worded.iter().find(|key| *key == name) {
                let label = self.answers.iter().find(|offer| offer.name == *name).map_or_else(String::new, |offer| offer.label.clone());
                stage.notify(|observer, at_s| observer.heard(at_s, &label));
                self.events.push_back(Event::Answer { at_s, text: answer.clone(), confidence: 1.0 });
                continue;
            }
            let Some((label, command)) = self.names.iter().find(|(_, command)| command.name() == name) else { continue };
            stage.notify(|observer, at_s| observer.heard(at_s, label));
            self.events.push_back(Event::Command { at_s, command: *command, confidence: 1.0, text: "page".into() });
        }
    }

    fn may_be_said(&self, command: Command) -> bool {
        self.listening.commands.contains(&command) || listening::ALWAYS.contains(&command)
    }

    /// Lets the engine take everything that has happened, and does what it asks for.
    fn let_engine_act(&mut self, stage: &mut Stage) {
        while let Some(event) = self.events.pop_front() {
            match &event {
                Event::Onset { .. } => self.holding = true,
                Event::Offset { .. } => self.holding = false,
                _ => {}
            }
            for effect in self.engine.on(event) {
                self.carry_out(stage, effect);
            }
        }
    }

    fn carry_out(&mut self, stage: &mut Stage, effect: Effect) {
        match effect {
            Effect::Record(entry) => self.measures.take(entry, &mut stage.observers),
            Effect::Say { id, line, on_beat_s } => {
                if !stage.say(id, line, on_beat_s) {
                    self.events.push_back(Event::LineEnded { at_s: stage.now_s(), line: id });
                }
            }
            Effect::Hush => stage.hush(),
            Effect::Listen(listening) => self.listen(stage, listening),
            Effect::Volume { change_db } => stage.speech.change_volume(change_db),
            Effect::SpeechRate { factor } => stage.speech.change_rate(factor),
            Effect::Show(view) => {
                let in_class = self.engine.leads_class();
                stage.show(&view, |words, command| words.name_of(command, in_class));
            }
            Effect::Finish => self.finished = true,
            Effect::Attended { participant, present } => {
                stage.notify(|observer, at_s| observer.attended(at_s, &participant, present));
            }
            Effect::Resume(go_on) => stage.notify(|observer, _| observer.resumed(go_on)),
        }
    }

    fn listen(&mut self, stage: &mut Stage, listening: Listening) {
        self.measures.set_task(listening.voice);
        if !matches!(listening.voice, VoiceTask::Hold(_)) {
            self.holding = false;
        }
        let grammar = grammar::main_grammar(&stage.words, &listening);
        if !grammar.choices.is_empty() {
            stage.listen_for(&grammar);
        }
        let offer = |command: &Command| {
            let (label, _) = self.names.iter().find(|(_, own)| own == command)?;
            Some(Offer { name: command.name().to_owned(), label: label.clone() })
        };
        let mut may_say: Vec<Offer> = listening.commands.iter().filter_map(offer).collect();
        self.answers = listening.worded.iter().map(|key| answer(&stage.words, key)).collect();
        may_say.extend(self.answers.iter().cloned());
        stage.notify(|observer, at_s| observer.listens(at_s, &listening, &may_say));
        self.listening = listening;
    }

    fn keep(&mut self, stage: &mut Stage, fact: Fact) {
        let entry = Entry { at_s: stage.now_s(), fact, position: None };
        self.measures.take(entry, &mut stage.observers);
    }
}

fn warn_of(stage: &mut Stage, key: &str) {
    let text = stage.text(&Line { key: key.to_owned(), args: Vec::new() });
    stage.warn(&text);
}

/// An answer on a button: a number as a figure, anything else by its first wording.
fn answer(words: &Words, key: &str) -> Offer {
    let number = key.rsplit('-').next().filter(|last| last.parse::<u8>().is_ok()).map(str::to_owned);
    let label = number.or_else(|| words.wordings_of(key).into_iter().next()).unwrap_or_default();
    Offer { name: key.to_owned(), label }
}

impl Party for PracticeParty {
    fn devices(&mut self) -> &mut dyn AudioIo {
        self.devices.as_mut()
    }

    fn interrupt(&mut self, stage: &mut Stage) {
        self.events.push_back(Event::Interrupt { at_s: stage.now_s() });
    }

    fn captured(&mut self, stage: &mut Stage, mic: &[f32], captured: Captured) {
        self.follow_loudspeaker(stage);
        let frames = captured.lost_frames;
        if captured.away {
            self.pass_without_microphone(stage, mic);
            return stage.notify(|observer, _| observer.sound(frames, mic));
        }
        let lost_s = self.microphone_came_back(stage) + frames as f64 / f64::from(self.devices.mic_rate_hz());
        if lost_s > 0.0 {
            self.measures.skip(frames, &mut self.events);
            self.keep(stage, Fact::SoundLost { lost_s });
        }
        stage.notify(|observer, _| observer.sound(frames, mic));
        self.follow_sound(stage, mic, captured);
    }

    fn hear(&mut self, stage: &mut Stage, block: Block<'_>) -> Result<Vec<CommandEvent>, AudioError> {
        if self.mic_away == 0 {
            self.hear_voice(stage, block);
        }
        let wanted = !(self.listening.commands.is_empty() && self.listening.answers.is_empty() && self.listening.worded.is_empty());
        // Over our own voice, too, where it can be taken out: what cannot wait counts there.
        let open = stage.speech.playback.main_path_is_open(block.start_s) || stage.speech.gives_samples();
        let main = open && !self.holding && wanted;
        let heard = stage.hear_commands(block.mic, block.start_s, block.delay_s, main)?;
        let spoken_over = stage.path.as_ref().is_some_and(CommandPath::somebody_speaks);
        if spoken_over && !std::mem::replace(&mut self.spoken_over, spoken_over) {
            self.events.push_back(Event::SpokenOver { at_s: stage.now_s() });
        }
        self.spoken_over = spoken_over;
        if stage.path.as_ref().is_some_and(CommandPath::something_stirs) {
            self.events.push_back(Event::Stirred { at_s: stage.now_s() });
        }
        if stage.follow_echo_canceller().drowns && !std::mem::replace(&mut self.loudspeaker_reported, true) {
            self.trouble(stage, Trouble::LoudspeakerTooLoud);
        }
        Ok(heard)
    }

    fn phrase(&mut self, stage: &mut Stage, heard: &HeardPhrase) {
        let at_s = stage.now_s();
        let (confidence, text) = (heard.confidence, heard.text.clone());
        // Before the echo canceller has learnt the room, "a practice aid" can pass for a "pause". Over our own voice
        // only a sure one counts; a "stop" counts as ever, for a needless stop does less harm than a missed one.
        match grammar::meaning(&heard.tag) {
            // A word that was half heard when the state changed may come after it.
            Some(Meaning::Command(command)) if !self.may_be_said(command) => {}
            Some(Meaning::Command(command)) if !stage.counts_where_it_was_said(command, &stage.words.wordings(command), heard) => {}
            // Over a count, too: "five" has passed for it with a loudspeaker as loud as the client. Between counts it is heard as ever.
            Some(Meaning::Command(Command::Stop)) if confidence < ACT_CONFIDENCE && stage.is_over_a_count(heard) => {}
            Some(Meaning::Command(Command::Pause)) if confidence < ACT_CONFIDENCE && stage.speech.playback.masks(heard.end_s) => {}
            Some(Meaning::Command(command)) => {
                stage.notify(|observer, at_s| observer.heard(at_s, &heard.text));
                self.events.push_back(Event::Command { at_s, command, confidence, text });
            }
            Some(Meaning::Answer(_)) if !stage.may_act_at(heard.start_s) => {}
            Some(Meaning::Answer(text)) => {
                stage.notify(|observer, at_s| observer.heard(at_s, &heard.text));
                self.events.push_back(Event::Answer { at_s, text, confidence });
            }
            None => {}
        }
    }

    fn recogniser_restarted(&mut self, stage: &mut Stage, lost_s: f64) {
        self.keep(stage, Fact::RecogniserRestarted { lost_s });
    }

    fn tick(&mut self, stage: &mut Stage) {
        self.take_keys(stage);
        self.events.push_back(Event::Tick { at_s: stage.now_s() });
        self.let_engine_act(stage);
    }

    fn line_began(&mut self, _stage: &mut Stage, id: LineId, at_s: f64) {
        self.events.push_back(Event::LineBegan { at_s, line: id });
    }

    fn line_ended(&mut self, _stage: &mut Stage, id: LineId, at_s: f64) {
        self.events.push_back(Event::LineEnded { at_s, line: id });
    }

    fn settle(&mut self, stage: &mut Stage) {
        self.let_engine_act(stage);
    }

    fn is_over(&self, _stage: &Stage) -> bool {
        self.finished
    }

    fn devices_failed(&mut self, stage: &mut Stage, why: &AudioError) {
        stage.warn(&why.to_string());
        self.interrupt(stage);
        self.let_engine_act(stage);
    }

    fn close(&mut self, stage: &mut Stage) {
        self.measures.deliver(true, &mut stage.observers);
    }
}
