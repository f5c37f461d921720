//! Microphones and loudspeakers, tried.

use std::path::PathBuf;
use std::process::{Command, Stdio};

use audio::devices::{Listed, list};
use files::error::Failure;
use pages::set_up::sound_devices::{Devices, TestLine};

/// A microphone is listened to for so long, blocks of 10 ms.
const LISTENED_BLOCKS: u32 = 300;
/// A line that takes longer has got stuck, blocks of 10 ms.
const LONGEST_BLOCKS: u32 = 3_000;

/// What the steps do with sound.
pub trait Sounds {
    /// Microphones, or why there are none.
    fn microphones(&self) -> Result<Vec<Listed>, String>;
    /// Loudspeakers, or why there are none.
    fn loudspeakers(&self) -> Result<Vec<Listed>, String>;
    /// The highest and the mean level of three seconds, dB re full scale.
    fn listen(&self, name: &str) -> Result<(f64, f64), String>;
    /// Says a line.
    fn play(&self, name: &str) -> Result<(), String>;
    /// Turns the system's volume up or down by a tenth.
    fn turn(&self, louder: bool) -> Result<(), String>;
}

/// Those of this computer.
pub struct OfComputer {
    pub voice: Option<String>,
    /// The data folder, which keeps what was rendered.
    pub data: PathBuf,
    /// What is said.
    pub line: String,
}

impl OfComputer {
    fn heard(name: &str) -> Result<(f64, f64), audio::AudioError> {
        let mut io = audio::open(name, "none", false)?;
        let mut block = vec![0.0_f32; (io.mic_rate_hz() / 100) as usize];
        let nothing = vec![0.0; (io.speaker_rate_hz() / 100) as usize];
        let (mut peak, mut power, mut count) = (0.0_f64, 0.0, 0_u32);
        for _ in 0..LISTENED_BLOCKS {
            io.read(&mut block)?;
            io.write(&nothing)?;
            peak = block.iter().fold(peak, |peak, sample| peak.max(f64::from(sample.abs())));
            power += block.iter().map(|sample| f64::from(*sample).powi(2)).sum::<f64>() / block.len().max(1) as f64;
            count += 1;
        }
        io.finish()?;
        Ok((20.0 * peak.log10(), 10.0 * (power / f64::from(count)).log10()))
    }

    fn said(&self, name: &str) -> Result<(), Failure> {
        let devices = Devices { mic: "none".to_owned(), speaker: name.to_owned(), voice: self.voice.clone(), data: self.data.clone() };
        let mut io = devices.open()?;
        let mut line = TestLine::new(&devices, io.as_ref(), &self.line, None)?;
        let mut mic = vec![0.0; (io.mic_rate_hz() / 100) as usize];
        let mut speaker = vec![0.0; (io.speaker_rate_hz() / 100) as usize];
        for _ in 0..LONGEST_BLOCKS {
            io.read(&mut mic)?;
            line.fill(&mut speaker)?;
            io.write(&speaker)?;
            if line.is_over() {
                break;
            }
        }
        Ok(io.finish()?)
    }
}

impl Sounds for OfComputer {
    fn microphones(&self) -> Result<Vec<Listed>, String> {
        list().map(|devices| devices.microphones).map_err(|why| why.to_string())
    }

    fn loudspeakers(&self) -> Result<Vec<Listed>, String> {
        list().map(|devices| devices.loudspeakers).map_err(|why| why.to_string())
    }

    fn listen(&self, name: &str) -> Result<(f64, f64), String> {
        Self::heard(name).map_err(|why| why.to_string())
    }

    fn play(&self, name: &str) -> Result<(), String> {
        self.said(name).map_err(|why| why.to_string())
    }

    fn turn(&self, louder: bool) -> Result<(), String> {
        let sign = if louder { "+" } else { "-" };
        let ways: [(&str, [String; 3]); 3] = [
            ("wpctl", ["set-volume".into(), "@DEFAULT_AUDIO_SINK@".into(), format!("10%{sign}")]),
            ("pactl", ["set-sink-volume".into(), "@DEFAULT_SINK@".into(), format!("{sign}10%")]),
            ("amixer", ["sset".into(), "Master".into(), format!("10%{sign}")]),
        ];
        let works = |(program, arguments): &(&str, [String; 3])| {
            let run = Command::new(program).args(arguments).stdout(Stdio::null()).stderr(Stdio::null()).status();
            run.is_ok_and(|status| status.success())
        };
        if ways.iter().any(works) { Ok(()) } else { Err("The volume cannot be set from here: turn it at the loudspeaker.".to_owned()) }
    }
}
