//! The attendant's devices: a microphone that may go and come back, and a loudspeaker that is open only while something is said.

use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use crate::attend::lent::{LentMic, LentSpeaker, Shared, lock};
use audio::file::{FileMic, WavSpeaker, names_file};
use audio::{AudioError, AudioIo, Captured, Joined, LiveMic, LiveSpeaker, MicSource, Sent, SpeakerSink};

/// Between two tries to get the microphone back.
const RETRY: Duration = Duration::from_secs(2);
/// A device that is away for so long, blocks, is told of.
const AWAY_TOLD_BLOCKS: u32 = 50;
/// Block length while there is no microphone to keep time.
const BLOCK: Duration = Duration::from_millis(10);
/// Rate of the silence in place of a microphone, Hz.
const SILENCE_HZ: u32 = 48_000;

/// Opens a microphone anew.
pub type OpenMic = Box<dyn FnMut() -> Result<Box<dyn MicSource>, AudioError> + Send>;

enum Mic {
    /// Opened anew when it was lost or lent.
    Device(Option<Box<dyn MicSource>>),
    /// Goes on where it was, whoever reads it.
    Recording(Shared<FileMic>),
}

enum Speaker {
    None,
    /// Opened when something is to be said.
    Device(String, Option<Box<LiveSpeaker>>),
    /// Takes everything, in step with the recording.
    File(Shared<WavSpeaker>),
}

/// Both devices.
pub struct Devices {
    mic: Mic,
    open_mic: OpenMic,
    mic_name: String,
    mic_rate_hz: u32,
    /// Frames that a practice read of a recording.
    read_elsewhere: Arc<AtomicU64>,
    speaker: Speaker,
    speaker_rate_hz: u32,
    fast: bool,
    next_try: Instant,
    next_block: Instant,
    /// Something is being said, so this is no time to look for a microphone.
    busy: bool,
    /// The last block was silence in a microphone's place.
    mic_gone: bool,
    /// Blocks that the microphone, and the open loudspeaker, have been away.
    mic_away: u32,
    speaker_away: u32,
    /// What went wrong, for the terminal.
    pub complaints: Vec<String>,
    /// Why the microphone could not be had the last time: told once, not at each try.
    mic_complaint: Option<String>,
    /// The same of the loudspeaker.
    speaker_complaint: Option<String>,
}

impl Devices {
    /// As [`audio::open`] names them. A microphone that is not there now is waited for.
    ///
    /// # Errors
    /// A recording that cannot be read, a file that cannot be written, or `fast` with a device.
    pub fn open(mic: &str, speaker: &str, fast: bool) -> Result<Self, AudioError> {
        let recording = names_file(mic);
        let name = mic.to_owned();
        let open_mic: OpenMic = Box::new(move || LiveMic::open(&name).map(|mic| Box::new(mic) as Box<dyn MicSource>));
        if recording
            && names_file(speaker)
            && std::fs::canonicalize(mic).ok().is_some_and(|mic| std::fs::canonicalize(speaker).is_ok_and(|to| to == mic))
        {
            return Err(AudioError::File(format!("{speaker} is the recording that is being read: give --speaker another name")));
        }
        let mut devices = if recording {
            let file = FileMic::open(mic.as_ref(), fast)?;
            let rate_hz = file.rate_hz();
            Self::with(Mic::Recording(Arc::new(Mutex::new(file))), mic, rate_hz, open_mic)
        } else {
            let mut devices = Self::with(Mic::Device(None), mic, SILENCE_HZ, open_mic);
            devices.try_mic();
            devices
        };
        devices.fast = fast;
        if names_file(speaker) {
            let file = WavSpeaker::create(speaker.as_ref(), devices.mic_rate_hz)?;
            devices.speaker_rate_hz = devices.mic_rate_hz;
            devices.speaker = Speaker::File(Arc::new(Mutex::new(file)));
        } else if speaker != "none" {
            devices.speaker = Speaker::Device(speaker.to_owned(), None);
            // Once now: whoever starts it should see at once that nothing can be heard.
            devices.wake_speaker();
            devices.rest_speaker();
        }
        Ok(devices)
    }

    /// A microphone that is opened, and opened anew, by `open_mic`; no loudspeaker.
    #[cfg(test)]
    pub fn of(open_mic: OpenMic, wav: WavSpeaker, rate_hz: u32) -> Self {
        let mut devices = Self::with(Mic::Device(None), "test", rate_hz, open_mic);
        (devices.speaker, devices.speaker_rate_hz) = (Speaker::File(Arc::new(Mutex::new(wav))), rate_hz);
        devices.try_mic();
        devices
    }

    fn with(mic: Mic, name: &str, rate_hz: u32, open_mic: OpenMic) -> Self {
        let now = Instant::now();
        Self {
            mic,
            open_mic,
            mic_name: name.to_owned(),
            mic_rate_hz: rate_hz,
            read_elsewhere: Arc::default(),
            speaker: Speaker::None,
            speaker_rate_hz: rate_hz,
            fast: false,
            next_try: now,
            next_block: now,
            busy: false,
            mic_gone: false,
            mic_away: 0,
            speaker_away: 0,
            complaints: Vec::new(),
            mic_complaint: None,
            speaker_complaint: None,
        }
    }

    /// Whether something is being said; then no microphone is looked for.
    pub fn set_busy(&mut self, busy: bool) {
        self.busy = busy;
    }

    /// There is no microphone now: what is read is silence, and time passes by the clock on the wall.
    pub fn is_mic_gone(&self) -> bool {
        self.mic_gone
    }

    /// What we play may come back through the microphone.
    pub fn hears_itself(&self) -> bool {
        matches!(self.mic, Mic::Device(_)) && matches!(self.speaker, Speaker::Device(..))
    }

    /// Frames that a practice took of the recording since the last call.
    pub fn take_read_elsewhere(&self) -> u64 {
        self.read_elsewhere.swap(0, Ordering::Relaxed)
    }

    fn try_mic(&mut self) {
        self.next_try = Instant::now() + RETRY;
        let Mic::Device(mic) = &mut self.mic else { return };
        match (self.open_mic)() {
            Ok(mut found) => {
                found.outlast();
                self.mic_rate_hz = found.rate_hz();
                self.mic_complaint = None;
                *mic = Some(found);
            }
            Err(why) => {
                self.next_block = Instant::now();
                let why = why.to_string();
                if self.mic_complaint.as_ref() != Some(&why) {
                    self.complaints.push(why.clone());
                    self.mic_complaint = Some(why);
                }
            }
        }
    }

    /// Keeps time in the microphone's place.
    fn silence(&mut self, block: &mut [f32]) -> Captured {
        self.mic_gone = true;
        block.fill(0.0);
        self.next_block += BLOCK;
        std::thread::sleep(self.next_block.saturating_duration_since(Instant::now()));
        Captured::default()
    }

    /// Something will be said: opens the loudspeaker, if it is not.
    pub fn wake_speaker(&mut self) {
        let Speaker::Device(name, live) = &mut self.speaker else { return };
        if live.is_some() {
            return;
        }
        match LiveSpeaker::open(name) {
            Ok(found) => {
                self.speaker_rate_hz = found.rate_hz();
                (self.speaker_away, self.speaker_complaint) = (0, None);
                *live = Some(Box::new(found));
            }
            Err(why) => self.speaker_is_gone(&why.to_string()),
        }
    }

    /// Told once, not at each line.
    fn speaker_is_gone(&mut self, why: &str) {
        if self.speaker_complaint.as_deref() != Some(why) {
            self.complaints.push(format!("{why}. What I would say stands here."));
            self.speaker_complaint = Some(why.to_owned());
        }
        self.rest_speaker();
    }

    /// Nothing more is said for now.
    pub fn rest_speaker(&mut self) {
        if let Speaker::Device(_, live) = &mut self.speaker {
            *live = None;
        }
    }

    /// As [`Devices::rest_speaker`], once everything handed over has been heard.
    pub fn drain_speaker(&mut self) {
        if let Speaker::Device(_, live) = &mut self.speaker
            && let Some(mut live) = live.take()
            && let Err(why) = live.finish()
        {
            self.complaints.push(why.to_string());
        }
    }

    /// Both for a practice: devices are opened anew, a recording and a written file go on where they are.
    ///
    /// # Errors
    /// A device is not there or refuses.
    pub fn lend(&mut self) -> Result<Box<dyn AudioIo>, AudioError> {
        let offline = self.is_offline();
        let mic: Box<dyn MicSource> = match &mut self.mic {
            Mic::Recording(file) => Box::new(LentMic { file: file.clone(), read: self.read_elsewhere.clone() }),
            Mic::Device(mic) => {
                *mic = None;
                self.mic_away = 0;
                (self.open_mic)()?
            }
        };
        let speaker: Box<dyn SpeakerSink> = match &mut self.speaker {
            Speaker::None => Box::new(LentSpeaker { file: None, rate_hz: mic.rate_hz() }),
            Speaker::File(file) => Box::new(LentSpeaker { rate_hz: lock(file).rate_hz(), file: Some(file.clone()) }),
            Speaker::Device(name, live) => {
                *live = None;
                Box::new(LiveSpeaker::open(name)?)
            }
        };
        Ok(Box::new(Joined::new(mic, speaker, offline)))
    }

    /// The practice is over: the microphone is looked for at once.
    pub fn take_back(&mut self) {
        if matches!(self.mic, Mic::Device(None)) {
            self.try_mic();
        }
    }

    /// The microphone's name as it was given.
    pub fn mic_name(&self) -> &str {
        &self.mic_name
    }
}

/// Nothing here fails: what goes wrong is a complaint, and is tried again.
impl AudioIo for Devices {
    fn mic_rate_hz(&self) -> u32 {
        self.mic_rate_hz
    }

    fn speaker_rate_hz(&self) -> u32 {
        self.speaker_rate_hz
    }

    fn read(&mut self, block: &mut [f32]) -> Result<Captured, AudioError> {
        let read = match &mut self.mic {
            Mic::Recording(file) => lock(file).read(block),
            Mic::Device(Some(mic)) => mic.read(block),
            Mic::Device(None) => {
                if !self.busy && Instant::now() >= self.next_try {
                    self.try_mic();
                }
                return Ok(self.silence(block));
            }
        };
        match read {
            Ok(captured) => {
                self.mic_away = if captured.away { self.mic_away + 1 } else { 0 };
                self.mic_gone = self.mic_away >= AWAY_TOLD_BLOCKS;
                Ok(captured)
            }
            Err(why) => {
                self.complaints.push(why.to_string());
                if let Mic::Device(mic) = &mut self.mic {
                    *mic = None;
                }
                (self.next_try, self.next_block) = (Instant::now() + RETRY, Instant::now());
                Ok(self.silence(block))
            }
        }
    }

    /// Without an open loudspeaker the block is dropped.
    fn write(&mut self, block: &[f32]) -> Result<(), AudioError> {
        let written = match &mut self.speaker {
            Speaker::None | Speaker::Device(_, None) => Ok(()),
            Speaker::File(file) => lock(file).write(block),
            Speaker::Device(_, Some(live)) if block.len() == (live.rate_hz() / 100) as usize => live.write(block),
            // It came back with another rate; the voice follows with the next line.
            Speaker::Device(_, Some(_)) => Ok(()),
        };
        if let Err(why) = written {
            self.speaker_is_gone(&why.to_string());
        }
        if let Speaker::Device(name, Some(live)) = &self.speaker {
            self.speaker_away = if live.is_away() { self.speaker_away + 1 } else { 0 };
            if self.speaker_away >= AWAY_TOLD_BLOCKS {
                let why = format!("the loudspeaker \"{name}\" went away");
                self.speaker_is_gone(&why);
            }
        }
        Ok(())
    }

    fn sent(&self) -> Option<Sent> {
        match &self.speaker {
            Speaker::File(_) => None,
            Speaker::Device(_, Some(live)) => live.sent(),
            Speaker::None | Speaker::Device(_, None) => Some(Sent::nothing()),
        }
    }

    fn playback_delay_s(&self) -> f64 {
        match &self.speaker {
            Speaker::Device(_, Some(live)) => live.delay_s(),
            _ => 0.0,
        }
    }

    fn is_offline(&self) -> bool {
        matches!(self.mic, Mic::Recording(_)) && !matches!(self.speaker, Speaker::Device(..))
    }

    /// Closes a written file.
    fn finish(&mut self) -> Result<(), AudioError> {
        if let Speaker::File(file) = &self.speaker
            && let Err(why) = lock(file).finish()
        {
            self.complaints.push(why.to_string());
        }
        Ok(())
    }
}
