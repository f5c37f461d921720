//! Recordings in the place of devices.

use super::decode::SoundReader;
use super::resample::StreamResampler;
use super::{AudioError, Captured, MicSource, SpeakerSink};
use std::fs::File;
use std::io::BufWriter;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// Blocks after which the WAV header is brought up to date, so that a killed run leaves a readable file.
const FLUSH_BLOCKS: u32 = 100;
/// A header that names another rate is damaged or holds no voice; changing from such a rate can take all the memory there is.
const RATES_READ_HZ: std::ops::RangeInclusive<u32> = 4_000..=768_000;
/// Rates a recording is brought to if its own cannot be cut into blocks of 10 ms or lies outside 8 to 48 kHz.
const RATES_HZ: [u32; 6] = [8_000, 16_000, 24_000, 32_000, 44_100, 48_000];

/// True for a name that is meant as a file: ends in `.wav` or `.flac`, or exists.
#[must_use]
pub fn names_file(name: &str) -> bool {
    let lower = name.to_lowercase();
    lower.ends_with(".wav") || lower.ends_with(".flac") || Path::new(name).is_file()
}

/// True if both names lead to one file.
pub(super) fn same_file(a: &str, b: &str) -> bool {
    match (std::fs::canonicalize(a), std::fs::canonicalize(b)) {
        (Ok(a), Ok(b)) => a == b,
        _ => false,
    }
}

/// A recording as microphone, read piece by piece: an hour takes no more memory than a minute. After its end come blocks
/// of silence for ever, marked as ended.
pub struct FileMic {
    rate_hz: u32,
    /// None once it is read out.
    reader: Option<SoundReader>,
    resampler: StreamResampler,
    /// Read and not given out yet, from `at` on.
    waiting: Vec<f32>,
    at: usize,
    pace: Option<Pace>,
}

/// Keeps blocks to the clock on the wall.
struct Pace {
    began: Option<Instant>,
    blocks: u32,
}

impl FileMic {
    /// Opens the recording. `fast`: blocks come at once instead of every 10 ms.
    ///
    /// # Errors
    /// The file cannot be read as sound.
    pub fn open(path: &Path, fast: bool) -> Result<Self, AudioError> {
        let reader = SoundReader::open(path)?;
        if !RATES_READ_HZ.contains(&reader.rate_hz()) {
            let (name, rate_hz) = (path.display(), reader.rate_hz());
            return Err(AudioError::File(format!("{name}: its header names {rate_hz} samples a second. Record it at 8000 to 48000.")));
        }
        let rate_hz = usable_rate_hz(reader.rate_hz());
        let resampler = StreamResampler::new(reader.rate_hz(), rate_hz)
            .map_err(|error| AudioError::File(format!("{}: {error}. Convert it to 8 to 48 kHz.", path.display())))?;
        let pace = (!fast).then_some(Pace { began: None, blocks: 0 });
        Ok(Self { rate_hz, reader: Some(reader), resampler, waiting: Vec::new(), at: 0, pace })
    }

    /// Reads on until so many frames wait, or the end is reached.
    fn fill(&mut self, frames: usize) {
        if self.waiting.len() - self.at >= frames {
            return;
        }
        self.waiting.drain(..self.at);
        self.at = 0;
        while let Some(reader) = &mut self.reader
            && self.waiting.len() < frames
        {
            match reader.read() {
                Some(samples) => self.resampler.push(samples, &mut self.waiting),
                None => {
                    self.resampler.finish(&mut self.waiting);
                    self.reader = None;
                }
            }
        }
    }
}

fn usable_rate_hz(rate_hz: u32) -> u32 {
    if rate_hz.is_multiple_of(100) && (8_000..=48_000).contains(&rate_hz) {
        return rate_hz;
    }
    RATES_HZ.into_iter().find(|r| *r >= rate_hz).unwrap_or(48_000)
}

impl MicSource for FileMic {
    fn rate_hz(&self) -> u32 {
        self.rate_hz
    }

    fn read(&mut self, mic: &mut [f32]) -> Result<Captured, AudioError> {
        if let Some(pace) = &mut self.pace {
            let began = *pace.began.get_or_insert_with(Instant::now);
            pace.blocks = pace.blocks.saturating_add(1);
            let due = Duration::from_millis(10) * pace.blocks;
            std::thread::sleep(due.saturating_sub(began.elapsed()));
        }
        self.fill(mic.len());
        let left = self.waiting.get(self.at..).unwrap_or_default();
        let n = left.len().min(mic.len());
        let (sound, silence) = mic.split_at_mut(n);
        sound.copy_from_slice(left.get(..n).unwrap_or_default());
        silence.fill(0.0);
        self.at += n;
        Ok(Captured { ended: !silence.is_empty(), ..Captured::default() })
    }
}

/// A 16-bit mono WAV file as loudspeaker.
pub struct WavSpeaker {
    path: PathBuf,
    rate_hz: u32,
    /// None after [`SpeakerSink::finish`].
    writer: Option<hound::WavWriter<BufWriter<File>>>,
    blocks: u32,
}

impl WavSpeaker {
    /// Creates or replaces the file.
    ///
    /// # Errors
    /// It cannot be created.
    pub fn create(path: &Path, rate_hz: u32) -> Result<Self, AudioError> {
        if !path.extension().is_some_and(|e| e.eq_ignore_ascii_case("wav")) {
            return Err(AudioError::File(format!("{}: sound is written as WAV only; give a name that ends in .wav", path.display())));
        }
        let spec = hound::WavSpec { channels: 1, sample_rate: rate_hz, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
        let file = disk::private::create(path).map_err(|e| cannot_write(path, &e.into()))?;
        let mut writer = hound::WavWriter::new(BufWriter::new(file), spec).map_err(|e| cannot_write(path, &e))?;
        writer.flush().map_err(|e| cannot_write(path, &e))?;
        Ok(Self { path: path.to_owned(), rate_hz, writer: Some(writer), blocks: 0 })
    }

    fn push(&mut self, samples: impl Iterator<Item = f32>) -> Result<(), AudioError> {
        let Some(writer) = &mut self.writer else {
            return Err(AudioError::File(format!("{}: the file is closed already", self.path.display())));
        };
        for s in samples {
            let value = (s.clamp(-1.0, 1.0) * 32_767.0).round() as i16;
            writer.write_sample(value).map_err(|e| cannot_write(&self.path, &e))?;
        }
        self.blocks += 1;
        if self.blocks.is_multiple_of(FLUSH_BLOCKS) {
            writer.flush().map_err(|e| cannot_write(&self.path, &e))?;
        }
        Ok(())
    }
}

fn cannot_write(path: &Path, why: &hound::Error) -> AudioError {
    AudioError::File(format!("{}: cannot be written: {why}; check that the folder exists, is yours and has room", path.display()))
}

impl SpeakerSink for WavSpeaker {
    fn rate_hz(&self) -> u32 {
        self.rate_hz
    }
    fn write(&mut self, speaker: &[f32]) -> Result<(), AudioError> {
        self.push(speaker.iter().copied())
    }
    fn delay_s(&self) -> f64 {
        0.0
    }
    fn skip(&mut self, lost_s: f64) -> Result<(), AudioError> {
        let frames = (lost_s * f64::from(self.rate_hz)).round() as usize;
        self.push(std::iter::repeat_n(0.0, frames))
    }
    fn finish(&mut self) -> Result<(), AudioError> {
        match self.writer.take() {
            Some(writer) => writer.finalize().map_err(|e| cannot_write(&self.path, &e)),
            None => Ok(()),
        }
    }
}

/// A WAV file in memory, 16 bit, one channel, of samples from -1 to 1.
///
/// # Errors
/// The sound is longer than such a file may be.
pub fn wav_bytes(samples: &[f32], rate_hz: u32) -> Result<Vec<u8>, AudioError> {
    let failed = |why: hound::Error| AudioError::File(format!("the sound cannot be written as a WAV file: {why}"));
    let spec = hound::WavSpec { channels: 1, sample_rate: rate_hz, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut file = std::io::Cursor::new(Vec::new());
    let mut writer = hound::WavWriter::new(&mut file, spec).map_err(failed)?;
    for sample in samples {
        writer.write_sample((sample * 32_768.0).round().clamp(-32_768.0, 32_767.0) as i16).map_err(failed)?;
    }
    writer.finalize().map_err(failed)?;
    Ok(file.into_inner())
}

#[cfg(test)]
mod tests {
    use super::super::open;
    use super::*;

    fn write_wav(path: &Path, rate_hz: u32, samples: &[i16]) {
        let spec = hound::WavSpec { channels: 1, sample_rate: rate_hz, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
        let mut w = hound::WavWriter::create(path, spec).unwrap();
        samples.iter().for_each(|s| w.write_sample(*s).unwrap());
        w.finalize().unwrap();
    }

    #[test]
    fn every_sample_comes_once_and_then_silence_for_ever() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("in.wav");
        let samples: Vec<i16> = (0..1_000).map(|n| n - 500).collect();
        write_wav(&path, 16_000, &samples);
        let out = dir.path().join("out.wav");
        let mut io = open(path.to_str().unwrap(), out.to_str().unwrap(), true).unwrap();
        assert_eq!((io.mic_rate_hz(), io.speaker_rate_hz(), io.is_offline()), (16_000, 16_000, true));
        let mut got = Vec::new();
        let mut ended = Vec::new();
        let mut block = vec![0.0; 160];
        for _ in 0..10 {
            ended.push(io.read(&mut block).unwrap().ended);
            io.write(&block).unwrap();
            got.extend_from_slice(&block);
        }
        io.finish().unwrap();
        // 1,000 frames are six blocks and a quarter.
        assert_eq!(ended, [false, false, false, false, false, false, true, true, true, true]);
        for (n, s) in samples.iter().enumerate() {
            assert_eq!(got[n], f32::from(*s) / 32_768.0);
        }
        assert!(got[1_000..].iter().all(|s| *s == 0.0));
        let written: Vec<i16> = hound::WavReader::open(&out).unwrap().into_samples().map(Result::unwrap).collect();
        assert_eq!(written.len(), 1_600);
        assert!(samples.iter().zip(&written).all(|(a, b)| a.abs_diff(*b) <= 1));
    }

    #[test]
    fn a_run_that_is_killed_leaves_a_readable_file() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("out.wav");
        let mut speaker = WavSpeaker::create(&path, 16_000).unwrap();
        assert_eq!(hound::WavReader::open(&path).unwrap().duration(), 0, "valid before the first block");
        for _ in 0..250 {
            speaker.write(&[0.25; 160]).unwrap();
        }
        // As a kill does: neither finish nor drop.
        std::mem::forget(speaker);
        let reader = hound::WavReader::open(&path).unwrap();
        assert!(reader.duration() >= 200 * 160, "{} frames", reader.duration());
        assert!(reader.into_samples::<i16>().all(|s| s.is_ok_and(|s| s == 8_192)));
    }

    #[test]
    fn rates_that_do_not_fit_are_changed_on_loading() {
        let dir = tempfile::tempdir().unwrap();
        for (rate_hz, becomes) in [(22_050, 24_000), (11_025, 16_000), (4_000, 8_000), (96_000, 48_000), (44_100, 44_100)] {
            let path = dir.path().join(format!("{rate_hz}.wav"));
            write_wav(&path, rate_hz, &vec![1_000; rate_hz as usize]);
            let mut mic = FileMic::open(&path, true).unwrap();
            assert_eq!(mic.rate_hz(), becomes);
            let mut block = vec![0.0; becomes as usize / 100];
            let blocks = (0..200).take_while(|_| !mic.read(&mut block).unwrap().ended).count();
            assert!((99..=100).contains(&blocks), "{rate_hz}: {blocks} blocks for a second");
        }
    }

    #[test]
    fn an_empty_recording_and_one_of_a_single_sample_are_silence() {
        let dir = tempfile::tempdir().unwrap();
        for (name, samples) in [("none.wav", vec![]), ("one.wav", vec![5_i16])] {
            let path = dir.path().join(name);
            write_wav(&path, 8_000, &samples);
            let mut mic = FileMic::open(&path, true).unwrap();
            let mut block = [1.0; 80];
            assert!(mic.read(&mut block).unwrap().ended);
            assert!(block[1..].iter().all(|s| *s == 0.0));
        }
    }

    #[test]
    fn wrong_names_say_what_to_do() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("in.wav");
        write_wav(&path, 8_000, &[1, 2, 3]);
        let name = path.to_str().unwrap();
        let says = |mic: &str, speaker: &str, fast| open(mic, speaker, fast).err().map(|e| e.to_string()).unwrap_or_default();
        assert!(says(name, name, true).contains("another name"));
        assert!(says("missing.wav", "none", true).contains("missing.wav"));
        assert!(says(name, "/no/such/folder/out.wav", true).contains("folder exists"));
        assert!(says(name, "out.flac", true).contains("WAV only"));
        assert!(says("default", "none", true).contains("--fast"));
        assert!(says(name, "default", true).contains("--fast"));
    }
}
