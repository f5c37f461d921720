//! The rehearsal as a microphone and a loudspeaker: to the rest of the program it looks like devices.

use super::client::Client;
use super::error::RehearseError;
use super::household::Household;
use super::room::{Room, RoomSpec};
use super::truth::{Heard, LogEntry};
use audio::{AudioError, AudioIo, Captured};
use hound::{SampleFormat, WavSpec, WavWriter};
use std::collections::VecDeque;
use std::fs::File;
use std::io::BufWriter;
use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// A loudspeaker that gives more than this sounds (-50 dB re full scale).
const SOUNDS: f32 = 0.003;

/// The client's ear and memory, for whoever knows which line is played when.
#[derive(Clone)]
pub struct Rehearsal {
    client: Arc<Mutex<Client>>,
    others: Arc<Mutex<Vec<LogEntry>>>,
}

impl Rehearsal {
    fn client(&self) -> MutexGuard<'_, Client> {
        self.client.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// See [`Client::hears`].
    pub fn hears(&self, at_s: f64, heard: Heard<'_>) {
        self.client().hears(at_s, heard);
    }

    /// See [`Client::take_pressed`].
    #[must_use]
    pub fn take_pressed(&self) -> Option<String> {
        self.client().take_pressed()
    }

    /// See [`Client::log`]; with what the household did, in order of time.
    #[must_use]
    pub fn log(&self) -> Vec<LogEntry> {
        let mut log = self.client().log().to_vec();
        log.extend_from_slice(&self.others.lock().unwrap_or_else(PoisonError::into_inner));
        log.sort_by(|a, b| a.onset_s.total_cmp(&b.onset_s));
        log
    }
}

/// A simulated client in a simulated room, behind the same trait as real devices.
pub struct RehearsedIo {
    rate_hz: u32,
    client: Rehearsal,
    room: Room,
    household: Option<Household>,
    /// The whole ends here at the latest, blocks.
    longest: Option<u64>,
    blocks: u64,
    /// Blocks on their way to the loudspeaker, the oldest first: as many as the device is late, and one of silence for the
    /// read before the first write.
    queue: VecDeque<Vec<f32>>,
    late_blocks: usize,
    voice: Vec<f32>,
    playing: Vec<f32>,
    wav: Option<(WavWriter<BufWriter<File>>, String)>,
    aloud: Option<Aloud>,
}

struct Aloud {
    io: Box<dyn AudioIo>,
    unheard: Vec<f32>,
    mixed: Vec<f32>,
}

impl RehearsedIo {
    /// Both rates are `room.rate_hz`. `device_delay_s`: how late the simulated loudspeaker is, whole blocks of 10 ms, up to 0.5 s.
    ///
    /// # Errors
    /// A room or delay out of range.
    pub fn new(client: Client, room: &RoomSpec, device_delay_s: f64) -> Result<(Self, Rehearsal), RehearseError> {
        let rate_hz = room.rate_hz;
        let room = Room::new(room)?;
        if !(0.0..=0.5).contains(&device_delay_s) {
            return Err(RehearseError(format!("the loudspeaker's delay of {device_delay_s} s must be from 0 to 0.5 s")));
        }
        let block = room.block_frames();
        let late_blocks = (device_delay_s * 100.0).round() as usize;
        let client = Rehearsal { client: Arc::new(Mutex::new(client)), others: Arc::default() };
        let io = Self {
            rate_hz,
            client: client.clone(),
            room,
            household: None,
            longest: None,
            blocks: 0,
            queue: std::iter::repeat_with(|| vec![0.0; block]).take(late_blocks + 1).collect(),
            late_blocks,
            voice: vec![0.0; block],
            playing: vec![0.0; block],
            wav: None,
            aloud: None,
        };
        Ok((io, client))
    }

    /// Others make sounds in the room, too.
    pub fn with_household(&mut self, household: Household) {
        self.household = Some(household);
    }

    /// Breaks off after so long, as if the devices failed, s: whoever never comes to an end must not keep a test for ever.
    pub fn ends_after(&mut self, longest_s: f64) {
        self.longest = Some((longest_s * 100.0).round().max(1.0) as u64);
    }

    /// Writes both sides to a WAV file as they happen: left what the microphone hears, right what the loudspeaker gets.
    ///
    /// # Errors
    /// The file cannot be made.
    pub fn write_wav(&mut self, path: &Path) -> Result<(), AudioError> {
        let spec = WavSpec { channels: 2, sample_rate: self.rate_hz, bits_per_sample: 16, sample_format: SampleFormat::Int };
        let name = path.display().to_string();
        let writer = WavWriter::create(path, spec)
            .map_err(|e| AudioError::File(format!("{name}: {e}; name a file in a folder that exists and may be written to")))?;
        self.wav = Some((writer, name));
        Ok(())
    }

    /// Goes in real time and plays both sides on a real loudspeaker; its microphone keeps the pace and is not listened to.
    ///
    /// # Errors
    /// The loudspeaker's rate is not the room's.
    pub fn aloud(&mut self, io: Box<dyn AudioIo>) -> Result<(), AudioError> {
        if io.speaker_rate_hz() != self.rate_hz {
            return Err(AudioError::Device(format!(
                "the loudspeaker runs at {} Hz and the rehearsed room at {} Hz: build the room at the loudspeaker's rate",
                io.speaker_rate_hz(),
                self.rate_hz
            )));
        }
        let unheard = vec![0.0; (io.mic_rate_hz() / 100) as usize];
        self.aloud = Some(Aloud { io, unheard, mixed: vec![0.0; self.voice.len()] });
        Ok(())
    }
}

impl AudioIo for RehearsedIo {
    fn mic_rate_hz(&self) -> u32 {
        self.rate_hz
    }

    fn speaker_rate_hz(&self) -> u32 {
        self.rate_hz
    }

    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        if mic.len() != self.voice.len() {
            return Err(AudioError::Device(format!("rehearsal: a block has {} frames, not {}", self.voice.len(), mic.len())));
        }
        if self.longest.is_some_and(|longest| self.blocks >= longest) {
            return Err(AudioError::Device(format!("the rehearsal has come to no end in {} s and is broken off", self.blocks / 100)));
        }
        let at_s = self.blocks as f64 / 100.0;
        self.blocks += 1;
        match self.queue.pop_front() {
            Some(block) => self.playing = block,
            None => self.playing.fill(0.0),
        }
        {
            let mut client = self.client.client();
            client.listens(&self.playing);
            client.next_block(at_s, &mut self.voice).map_err(|e| AudioError::Device(e.0))?;
        }
        self.room.step(&self.playing, &self.voice, mic);
        if let Some(household) = &mut self.household {
            let speaks = self.playing.iter().any(|v| v.abs() > SOUNDS);
            household.add_to(mic, speaks);
            let mut others = self.client.others.lock().unwrap_or_else(PoisonError::into_inner);
            let new = household.log().get(others.len()..).unwrap_or_default();
            others.extend_from_slice(new);
        }
        if let Some((writer, name)) = &mut self.wav {
            for (left, right) in mic.iter().zip(&self.playing) {
                for v in [left, right] {
                    let v = (v * 32_767.0).round().clamp(-32_768.0, 32_767.0) as i16;
                    writer.write_sample(v).map_err(|e| AudioError::File(format!("{name}: {e}")))?;
                }
            }
        }
        if let Some(aloud) = &mut self.aloud {
            aloud.io.read(&mut aloud.unheard)?;
            let sides = self.voice.iter().zip(&self.playing);
            aloud.mixed.iter_mut().zip(sides).for_each(|(m, (a, b))| *m = (a + b).clamp(-1.0, 1.0));
            aloud.io.write(&aloud.mixed)?;
        }
        Ok(Captured::default())
    }

    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError> {
        if speaker.len() != self.voice.len() {
            return Err(AudioError::Device(format!("rehearsal: a block has {} frames, not {}", self.voice.len(), speaker.len())));
        }
        self.queue.push_back(speaker.to_vec());
        Ok(())
    }

    fn playback_delay_s(&self) -> f64 {
        self.late_blocks as f64 / 100.0
    }

    fn is_offline(&self) -> bool {
        self.aloud.is_none()
    }

    fn finish(&mut self) -> Result<(), AudioError> {
        if let Some((writer, name)) = self.wav.take() {
            writer.finalize().map_err(|e| AudioError::File(format!("{name}: {e}")))?;
        }
        match &mut self.aloud {
            Some(aloud) => aloud.io.finish(),
            None => Ok(()),
        }
    }
}
