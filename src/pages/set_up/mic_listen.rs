//! Trying microphone and loudspeaker: what is played, what is listened to, and how it becomes figures.

use crate::set_up::desk::{Job, Outcome};
use crate::set_up::mic_judge::{HeardLevels, judge};
use audio::echo::AutoCanceller;
use audio::resample::Resampler;
use audio::{self, AudioError, AudioIo, ECHO_RATE_HZ, EchoCanceller};
use hear::clipping::ClipFinder;
use hear::level::{db_power, power_db};
use hear::{VoiceEar, VoiceFrame, VoiceOutput};
use live::talk::{PcmTalker, SystemTalker, TalkEvent, Talker};
use session::LineId;
use speak::{LineCache, Renderer, SYSTEM_VOICE, SystemSpeaker, choose_voice};

/// The room, and then speech, s.
pub const ROOM_S: f64 = 5.0;
pub const SPEECH_S: f64 = 5.0;
/// What is heard meanwhile settles in so long, s: devices click when they open.
const SETTLE_S: f64 = 0.3;
/// A sentence takes no longer than this, s.
const LONGEST_SENTENCE_S: f64 = 15.0;
/// A tone before the sentence, as an enrolment has it (common practice, no source).
const TONE_HZ: f64 = 660.0;
const TONE_S: f64 = 0.5;
const TONE_PEAK: f64 = 0.1;

/// The devices of a try.
#[derive(Debug, Clone)]
pub struct Devices {
    pub mic: String,
    pub speaker: String,
    pub voice: Option<String>,
    pub data: std::path::PathBuf,
}

impl Devices {
    /// Opens them. A recording that nothing is played to is heard as fast as the machine allows.
    pub fn open(&self) -> Result<Box<dyn AudioIo>, AudioError> {
        let silent = self.speaker == "none" || audio::file::names_file(&self.speaker);
        audio::open(&self.mic, &self.speaker, audio::file::names_file(&self.mic) && silent)
    }

    pub fn plays(&self) -> bool {
        self.speaker != "none"
    }

    pub fn talker(&self, rate_hz: u32, offline: bool) -> Result<Box<dyn Talker>, String> {
        if self.voice.as_deref() == Some(SYSTEM_VOICE) {
            return SystemSpeaker::open()
                .map(|speaker| Box::new(SystemTalker::new(speaker)) as Box<dyn Talker>)
                .map_err(|why| why.to_string());
        }
        let voice = choose_voice(self.voice.as_deref()).map_err(|why| why.to_string())?;
        let cache = LineCache::new(Some(self.data.join("voice-cache")), rate_hz);
        let renderer =
            if offline { Renderer::offline(voice, cache) } else { Renderer::live(voice, cache).map_err(|why| why.to_string())? };
        Ok(Box::new(PcmTalker::new(renderer, rate_hz)))
    }
}

/// What a person is told in each part of listening.
#[derive(Debug, Clone, Default)]
pub struct Told {
    pub room: String,
    pub speech: String,
    pub sentence: String,
    /// What the tool says itself.
    pub line: String,
}

/// A tone and a sentence, to be heard.
pub fn play(devices: &Devices, line: &str, job: &Job) -> Outcome {
    match try_play(devices, line, job) {
        Ok(()) if job.stopped() => Outcome::Broken,
        Ok(()) => Outcome::Played,
        Err(why) => Outcome::Failed(why),
    }
}

fn try_play(devices: &Devices, line: &str, job: &Job) -> Result<(), String> {
    // No microphone is opened to play something.
    let mut io = audio::open("none", &devices.speaker, false).map_err(|why| why.to_string())?;
    let mut player = Player::new(devices, io.as_ref(), line, TONE_S)?;
    let (mut mic, mut speaker) = buffers(io.as_ref());
    let blocks = ((TONE_S + LONGEST_SENTENCE_S) * 100.0) as u32;
    for _ in 0..blocks {
        if job.stopped() || player.over {
            break;
        }
        io.read(&mut mic).map_err(|why| why.to_string())?;
        player.block(&mut speaker)?;
        io.write(&speaker).map_err(|why| why.to_string())?;
    }
    io.finish().map_err(|why| why.to_string())
}

fn buffers(io: &dyn AudioIo) -> (Vec<f32>, Vec<f32>) {
    (vec![0.0; (io.mic_rate_hz() / 100) as usize], vec![0.0; (io.speaker_rate_hz() / 100) as usize])
}

/// A tone, and then one line.
struct Player {
    talker: Box<dyn Talker>,
    line: String,
    rate_hz: f64,
    frame: u64,
    tone_s: f64,
    asked: bool,
    over: bool,
}

impl Player {
    fn new(devices: &Devices, io: &dyn AudioIo, line: &str, tone_s: f64) -> Result<Self, String> {
        let talker = devices.talker(io.speaker_rate_hz(), io.is_offline())?;
        Ok(Self { talker, line: line.to_owned(), rate_hz: f64::from(io.speaker_rate_hz()), frame: 0, tone_s, asked: false, over: false })
    }

    fn block(&mut self, speaker: &mut [f32]) -> Result<(), String> {
        if !self.asked && self.frame as f64 / self.rate_hz >= self.tone_s {
            self.asked = true;
            self.talker.say(LineId(1), &self.line, None);
        }
        let mut events = Vec::new();
        self.talker.block(speaker, &mut events);
        for event in events {
            match event {
                TalkEvent::Ended { .. } => self.over = true,
                TalkEvent::Failed { why, .. } => return Err(why.to_string()),
                TalkEvent::Began { .. } => {}
            }
        }
        for sample in speaker.iter_mut() {
            let t_s = self.frame as f64 / self.rate_hz;
            if t_s < self.tone_s {
                let swell = (std::f64::consts::PI * t_s / self.tone_s).sin().max(0.0);
                *sample += (TONE_PEAK * swell * (std::f64::consts::TAU * TONE_HZ * t_s).sin()) as f32;
            }
            self.frame += 1;
        }
        Ok(())
    }
}

/// The room, speech, and our own voice, judged.
pub fn listen(devices: &Devices, told: &Told, job: &Job) -> Outcome {
    match try_listen(devices, told, job) {
        Ok(_) if job.stopped() => Outcome::Broken,
        Ok(levels) => Outcome::Judged(judge(&levels)),
        Err(why) => Outcome::Failed(why),
    }
}

fn try_listen(devices: &Devices, told: &Told, job: &Job) -> Result<HeardLevels, String> {
    let text = |why: AudioError| why.to_string();
    let mut io = devices.open().map_err(text)?;
    let (mut mic, mut speaker) = buffers(io.as_ref());
    let mut ear = Ear::new(io.mic_rate_hz());
    let mut blocks = 0_u32;
    let quiet_s = ROOM_S + SPEECH_S;
    while f64::from(blocks) / 100.0 < quiet_s && !job.stopped() {
        let captured = io.read(&mut mic).map_err(text)?;
        if captured.ended {
            break;
        }
        let at_s = f64::from(blocks) / 100.0;
        ear.push(
            &mic,
            captured.lost_frames,
            if at_s < SETTLE_S {
                Part::None
            } else if at_s < ROOM_S {
                Part::Room
            } else {
                Part::Speech
            },
        );
        io.write(&speaker).map_err(text)?;
        if blocks % 10 == 0 {
            let (said, left_s) = if at_s < ROOM_S { (&told.room, ROOM_S - at_s) } else { (&told.speech, quiet_s - at_s) };
            show(job, said, Some(left_s), &ear);
        }
        blocks += 1;
    }
    if devices.plays() && !job.stopped() {
        show(job, &told.sentence, None, &ear);
        own_voice(devices, &told.line, job, (io.as_mut(), &mut mic, &mut speaker), &mut ear)?;
    }
    io.finish().map_err(text)?;
    Ok(ear.levels())
}

fn show(job: &Job, told: &str, left_s: Option<f64>, ear: &Ear) {
    job.show(|now| {
        if now.told != told {
            told.clone_into(&mut now.told);
        }
        now.figure = left_s.map_or(String::new(), |left_s| format!("{:.0}", left_s.ceil()));
        now.level_db = Some(ear.level_db);
        now.room_db = ear.ear.noise_floor_db();
    });
}

/// Says a sentence and listens to how it comes back.
fn own_voice(
    devices: &Devices,
    line: &str,
    job: &Job,
    (io, mic, speaker): (&mut dyn AudioIo, &mut [f32], &mut [f32]),
    ear: &mut Ear,
) -> Result<(), String> {
    let text = |why: AudioError| why.to_string();
    let mut player = Player::new(devices, io, line, 0.0)?;
    let mut down = Resampler::new(io.mic_rate_hz(), ECHO_RATE_HZ).map_err(text)?;
    let mut own = Resampler::new(io.speaker_rate_hz(), ECHO_RATE_HZ).map_err(text)?;
    let (mut heard, mut played) = (vec![0.0; (ECHO_RATE_HZ / 100) as usize], vec![0.0; (ECHO_RATE_HZ / 100) as usize]);
    let mut canceller = AutoCanceller::new();
    let blocks = (LONGEST_SENTENCE_S * 100.0) as u32;
    for block in 0..blocks {
        if job.stopped() || player.over {
            break;
        }
        let captured = io.read(mic).map_err(text)?;
        if captured.ended {
            break;
        }
        ear.push(mic, captured.lost_frames, Part::Own);
        down.process(mic, &mut heard).map_err(text)?;
        canceller.hint_delay(io.playback_delay_s());
        canceller.cancel(&played, &mut heard);
        ear.drowned |= canceller.echo_state().drowns;
        player.block(speaker)?;
        own.process(speaker, &mut played).map_err(text)?;
        io.write(speaker).map_err(text)?;
        if block % 10 == 0 {
            job.show(|now| now.level_db = Some(ear.level_db));
        }
    }
    speaker.fill(0.0);
    Ok(())
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Part {
    None,
    Room,
    Speech,
    Own,
}

/// Energy means of the parts.
struct Ear {
    ear: VoiceEar,
    clips: ClipFinder,
    rate_hz: f64,
    peak: f32,
    clipped: u64,
    lost: u64,
    level_db: f64,
    /// Levels of its frames: their median, which a cough does not move.
    room: Vec<f64>,
    voice: Mean,
    own: Mean,
    drowned: bool,
}

#[derive(Debug, Clone, Copy, Default)]
struct Mean {
    power: f64,
    count: u32,
}

impl Mean {
    fn add(&mut self, level_db: f64) {
        if level_db.is_finite() {
            self.power += db_power(level_db);
            self.count += 1;
        }
    }

    fn db(&self) -> Option<f64> {
        (self.count > 0).then(|| power_db(self.power / f64::from(self.count)))
    }
}

impl Ear {
    fn new(rate_hz: u32) -> Self {
        Self {
            ear: VoiceEar::new(rate_hz),
            clips: ClipFinder::new(f64::from(rate_hz)),
            rate_hz: f64::from(rate_hz),
            peak: 0.0,
            clipped: 0,
            lost: 0,
            level_db: -120.0,
            room: Vec::new(),
            voice: Mean::default(),
            own: Mean::default(),
            drowned: false,
        }
    }

    fn push(&mut self, mic: &[f32], lost: u64, part: Part) {
        self.lost += lost;
        if part != Part::None {
            self.peak = mic.iter().fold(self.peak, |peak, sample| peak.max(sample.abs()));
        }
        let clipped = mic.iter().filter(|sample| self.clips.push(**sample)).count();
        if part == Part::Speech {
            self.clipped += clipped as u64;
        }
        let mut frames: Vec<VoiceFrame> = Vec::new();
        let mut take = |output| {
            if let VoiceOutput::Frame(frame) = output {
                frames.push(frame);
            }
        };
        if lost > 0 {
            self.ear.skip(lost, &mut take);
        }
        self.ear.push(mic, part == Part::Own, &mut take);
        for frame in frames {
            self.level_db = frame.level_db;
            match part {
                Part::Room => self.room.push(frame.level_db),
                Part::Speech if frame.voiced => self.voice.add(frame.level_db),
                Part::Own => self.own.add(frame.level_db),
                _ => {}
            }
        }
    }

    fn levels(&self) -> HeardLevels {
        HeardLevels {
            room_db: progress::median(&self.room),
            voice_db: self.voice.db(),
            voiced_s: f64::from(self.voice.count) / 100.0,
            clipped_s: self.clipped as f64 / self.rate_hz,
            peak: self.peak,
            auto_gain: self.ear.auto_gain_found(),
            lost_s: self.lost as f64 / self.rate_hz,
            own_voice_db: self.own.db(),
            drowned: self.drowned,
        }
    }
}

#[cfg(test)]
#[path = "tests/mic_listen.rs"]
mod tests;
