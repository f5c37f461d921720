//! Promise: whatever is in a file or comes from a microphone, the readers and the frame path answer with a result or a clear
//! error, never a panic and never a figure that is no number. `PROPTEST_CASES=20000 cargo test --test fuzz` looks longer.

use audio::echo::AutoCanceller;
use audio::file::FileMic;
use audio::{EchoCanceller, MicSource, Sent};
use command_ear::{CommandEarError, CommandEvent, CommandRecogniser, Grammar};
use hear::voice_file::FILE_SETTINGS;
use hear::{VoiceEar, VoiceEvent, VoiceOutput, VoiceTask};
use live::command_path::CommandPath;
use proptest::prelude::*;
use std::path::Path;
use tidecount::hear::args::HearArgs;
use tidecount::hear::recordings::run;

/// A third of a second of a buzz, -1 to 1.
fn buzz(frames: usize) -> impl Iterator<Item = f64> {
    (0..frames).map(|n| ((n * 7) % 100) as f64 / 100.0 - 0.5)
}

/// A WAV of one kind: format code, bits, channels, rate; the header as RFC 2361 and the RIFF specification have it.
fn wav(code: u16, bits: u16, channels: u16, rate_hz: u32) -> Vec<u8> {
    let mut data = Vec::new();
    for x in buzz(rate_hz as usize / 3) {
        for _ in 0..channels {
            match (code, bits) {
                (3, 64) => data.extend(x.to_le_bytes()),
                (3, _) => data.extend((x as f32).to_le_bytes()),
                (_, 8) => data.push((x * 127.0 + 128.0) as u8),
                _ => data.extend(&((x * 2_147_483_647.0) as i32).to_le_bytes()[4 - usize::from(bits / 8)..]),
            }
        }
    }
    let frame = channels * bits / 8;
    let mut file = b"RIFF".to_vec();
    file.extend((36 + data.len() as u32).to_le_bytes());
    file.extend(b"WAVEfmt \x10\0\0\0");
    for short in [code, channels] {
        file.extend(short.to_le_bytes());
    }
    file.extend(rate_hz.to_le_bytes());
    file.extend((rate_hz * u32::from(frame)).to_le_bytes());
    for short in [frame, bits] {
        file.extend(short.to_le_bytes());
    }
    file.extend(b"data");
    file.extend((data.len() as u32).to_le_bytes());
    file.extend(data);
    file
}

/// Remainder of a CRC from the highest bit on, as RFC 9639 has both of its own.
fn crc(bytes: &[u8], bits: u32, polynomial: u32) -> u32 {
    bytes.iter().fold(0, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte) << (bits - 8), |crc, _| {
            let shifted = crc << 1;
            (if crc >> (bits - 1) & 1 == 1 { shifted ^ polynomial } else { shifted }) & ((1 << bits) - 1)
        })
    })
}

/// A FLAC of verbatim frames of 192 samples, by hand after RFC 9639.
fn flac() -> Vec<u8> {
    let mut file = b"fLaC\x80\0\0\x22".to_vec();
    file.extend([0, 192, 0, 192, 0, 0, 0, 0, 0, 0]);
    // 16,000 Hz, one channel, 16 bit, 1,920 samples.
    file.extend([0x03, 0xe8, 0x00, 0xf0, 0, 0, 0x07, 0x80]);
    file.extend([0; 16]);
    for number in 0..10 {
        let mut frame = vec![0xff, 0xf8, 0x15, 0x08, number];
        frame.push(crc(&frame, 8, 0x07) as u8);
        frame.push(0x02);
        frame.extend(buzz(192).flat_map(|x| ((x * 32_767.0) as i16).to_be_bytes()));
        frame.extend((crc(&frame, 16, 0x8005) as u16).to_be_bytes());
        file.extend(frame);
    }
    file
}

/// An AIFF, after Apple's specification of 1989: 16 bit, one channel, 8,000 Hz as an 80-bit float.
fn aiff() -> Vec<u8> {
    let data: Vec<u8> = buzz(2_000).flat_map(|x| ((x * 32_767.0) as i16).to_be_bytes()).collect();
    let mut file = b"FORM".to_vec();
    file.extend((46 + data.len() as u32).to_be_bytes());
    file.extend(b"AIFFCOMM\0\0\0\x12\0\x01");
    file.extend(2_000u32.to_be_bytes());
    file.extend([0, 16, 0x40, 0x0b, 0xfa, 0, 0, 0, 0, 0, 0, 0]);
    file.extend(b"SSND");
    file.extend((8 + data.len() as u32).to_be_bytes());
    file.extend([0; 8]);
    file.extend(data);
    file
}

fn kinds() -> Vec<Vec<u8>> {
    vec![
        wav(1, 8, 1, 8_000),
        wav(1, 16, 1, 16_000),
        wav(1, 24, 6, 44_100),
        wav(1, 32, 2, 22_050),
        wav(3, 32, 1, 48_000),
        wav(3, 64, 1, 16_000),
        wav(1, 16, 1, 192_000),
        flac(),
        aiff(),
    ]
}

/// Hears a file both ways, as `hear` and as a practice's microphone do. True if there was sound in it.
fn hear(path: &Path) -> bool {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let args = HearArgs { files: vec![path.to_owned()], json: true, levels: true, voice: true, ..HearArgs::default() };
    let all = run(&args, &mut out, &mut err).expect("a file is no reason to give up");
    for line in String::from_utf8(out).expect("UTF-8").lines() {
        serde_json::from_str::<serde_json::Value>(line).expect("JSON");
    }
    assert_eq!(all, err.is_empty());
    assert!(all || String::from_utf8_lossy(&err).contains(&path.display().to_string()), "an error names its file");
    let Ok(mut mic) = FileMic::open(path, true) else { return false };
    let mut block = vec![0.0; (mic.rate_hz() / 100) as usize];
    for _ in 0..500 {
        let ended = mic.read(&mut block).expect("a file goes on as silence").ended;
        assert!(block.iter().all(|x| x.is_finite()));
        if ended {
            break;
        }
    }
    true
}

#[test]
fn files_that_are_whole_are_heard() {
    let folder = tempfile::tempdir().expect("a folder");
    for (n, bytes) in kinds().iter().enumerate() {
        let path = folder.path().join("sound");
        std::fs::write(&path, bytes).expect("writes");
        assert!(hear(&path), "kind {n}");
    }
}

#[test]
fn a_header_with_too_many_channels_is_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("many.wav");
    let mut bytes = wav(1, 16, 1, 16_000);
    bytes[23] = 128;
    std::fs::write(&path, bytes).expect("writes");
    let error = FileMic::open(&path, true).err().map(|e| e.to_string()).unwrap_or_default();
    assert!(error.contains("many.wav") && error.contains("32769 channels"), "{error}");

    // The name of that chunk in a comment before it is no chunk.
    let mut bytes = wav(1, 16, 1, 16_000);
    bytes.splice(12..12, *b"LIST\x0c\0\0\0fmt 12345678");
    std::fs::write(&path, bytes).expect("writes");
    assert!(hear(&path));
}

proptest! {
    // Failures are not written beside the tests: what was found gets a test of its own.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn damaged_files(
        kind in 0..9usize,
        flips in prop::collection::vec((0..4_000usize, any::<u8>()), 0..12),
        header in prop::collection::vec((0..64usize, prop::sample::select(vec![0u8, 1, 0x7f, 0x80, 0xff])), 0..4),
        keep in prop::option::of(0..3_000usize),
        extra in prop::collection::vec(any::<u8>(), 0..40),
    ) {
        let mut bytes = kinds().swap_remove(kind);
        for (at, value) in flips.into_iter().chain(header) {
            if let Some(byte) = bytes.get_mut(at) {
                *byte = value;
            }
        }
        bytes.truncate(keep.unwrap_or(usize::MAX));
        bytes.extend(extra);
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("damaged.wav");
        std::fs::write(&path, bytes).expect("writes");
        hear(&path);
    }
}

/// What a broken driver may bring.
#[derive(Debug, Clone, Copy)]
enum Block {
    Silence,
    NotANumber,
    Infinite,
    Direct,
    Square,
    Huge,
    Tiny,
    Voice,
    Noise,
}

impl Block {
    fn sample(self, n: usize) -> f32 {
        let sign = if n % 50 < 25 { 1.0 } else { -1.0 };
        match self {
            Self::Silence => 0.0,
            Self::NotANumber => f32::NAN,
            Self::Infinite => f32::INFINITY * sign,
            Self::Direct => 1.0,
            Self::Square => sign,
            Self::Huge => f32::MAX * sign,
            Self::Tiny => f32::MIN_POSITIVE / 4.0 * sign,
            Self::Voice => (1..9).map(|h| (n as f32 * 0.055 * h as f32).sin() * 0.1 / h as f32).sum(),
            Self::Noise => ((n.wrapping_mul(2_654_435_761) >> 8) & 0xffff) as f32 / 65_536.0 - 0.5,
        }
    }
}

fn blocks() -> impl Strategy<Value = Vec<(Block, usize)>> {
    use Block::{Direct, Huge, Infinite, Noise, NotANumber, Silence, Square, Tiny, Voice};
    let kind = prop::sample::select(vec![Silence, NotANumber, Infinite, Direct, Square, Huge, Tiny, Voice, Voice, Noise]);
    prop::collection::vec((kind, 1..120usize), 1..8)
}

/// Takes everything and hears nothing.
struct Deaf {
    finite: bool,
}

impl CommandRecogniser for Deaf {
    fn listen_for(&mut self, _grammar: &Grammar) -> Result<(), CommandEarError> {
        Ok(())
    }
    fn push(&mut self, _start_s: f64, block: &[f32], _main: bool) {
        self.finite &= block.iter().all(|x| x.is_finite());
        assert!(self.finite, "the recogniser was given what is no number");
    }
    fn poll(&mut self) -> Vec<CommandEvent> {
        Vec::new()
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: ProptestConfig::default().cases / 4, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn anything_from_the_microphone(
        pieces in blocks(),
        rate_hz in prop::sample::select(vec![8_000u32, 16_000, 44_100, 48_000]),
        task in prop::sample::select(vec![VoiceTask::Idle, VoiceTask::Hold(FILE_SETTINGS), VoiceTask::Speech { end_pause_s: 0.3 }]),
        lost in prop::option::of(0..2_000_000u64),
    ) {
        let size = rate_hz as usize / 100;
        let mut ear = VoiceEar::new(rate_hz);
        ear.set_task(task);
        let mut last_s = -1.0;
        let mut check = |output| match output {
            VoiceOutput::Frame(f) => {
                assert!(f.t_s > last_s && [f.level_db, f.f0_hz, f.periodicity].iter().all(|x: &f64| x.is_finite()), "{f:?}");
                last_s = f.t_s;
            }
            VoiceOutput::Event(VoiceEvent::Offset(h)) => {
                assert!(h.duration_s >= 0.0 && h.onset_s <= h.offset_s && h.level_mean_db.is_finite() && h.level_fall_db.is_finite());
            }
            VoiceOutput::Event(VoiceEvent::Spoken(u)) => assert!(u.duration_s.is_finite() && u.syllable_rate_hz.is_finite()),
            VoiceOutput::Event(_) => {}
        };
        let mut path = CommandPath::new(Box::new(AutoCanceller::new()), Box::new(Deaf { finite: true }), rate_hz, 48_000).expect("known rates");
        let mut n = 0;
        for (turn, (kind, count)) in pieces.iter().enumerate() {
            for _ in 0..*count {
                let block: Vec<f32> = (n..n + size).map(|k| kind.sample(k)).collect();
                // What we play ourselves may be as broken, and is heard at once.
                let played: Vec<f32> = (n..n + 480).map(|k| if turn % 2 == 0 { kind.sample(k) } else { 0.0 }).collect();
                ear.push(&block, turn % 3 == 1, &mut check);
                path.hear(&block, n as f64 / f64::from(rate_hz), 0.05, true).expect("a block of 10 ms");
                let kept = if turn % 3 == 2 { 0 } else { played.len() };
                path.play(&played, Sent { silence_before: turn * 700, kept, anew: turn % 5 == 4 });
                n += size;
            }
            if let (Some(lost), 1) = (lost, turn) {
                ear.skip(lost, &mut check);
                path.skip(0.3);
            }
        }
        ear.finish(&mut check);
    }

    #[test]
    fn blocks_of_any_length_at_the_canceller(played in 0..400usize, mic in 0..400usize) {
        let mut canceller = AutoCanceller::new();
        let mut mic = vec![0.1; mic];
        canceller.cancel(&vec![0.1; played], &mut mic);
        prop_assert!(mic.iter().all(|x| x.is_finite()));
    }
}
