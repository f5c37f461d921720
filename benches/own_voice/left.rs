//! What the command ear is given while we talk, as WAV files for training (models/training): our voice alone, as noise, and words said over
//! it. Rooms and clocks are others than those of [`PATHS`](super::scene::PATHS).

use super::scene::{EchoPath, Mix, Talk, sound};
use audio::ECHO_RATE_HZ;
use audio::echo::AutoCanceller;
use command_ear::{CommandEarError, CommandEvent, CommandRecogniser, Grammar};
use live::command_path::CommandPath;
use std::path::Path;
use std::sync::{Arc, Mutex};

const PLAIN: EchoPath = EchoPath {
    name: "bedroom",
    group: "training",
    delay_s: 0.06,
    hint_s: 0.05,
    level_db: -8.0,
    drive: 0.0,
    drift_ppm: 0.0,
    leap_s: 0.0,
    room: "bedroom_1m_1.wav",
};

const TRAINING: [EchoPath; 15] = [
    PLAIN,
    EchoPath { name: "bedroom, far", delay_s: 0.15, level_db: -14.0, room: "bedroom_2m_0.wav", ..PLAIN },
    EchoPath { name: "kitchen", delay_s: 0.25, hint_s: 0.1, level_db: -6.0, room: "kitchen_1m_0.wav", ..PLAIN },
    EchoPath { name: "day room", delay_s: 0.04, level_db: -10.0, room: "dayroom_large_1m_0.wav", ..PLAIN },
    EchoPath { name: "bathroom", level_db: -6.0, room: "bathroom_tiled_0.4m_1.wav", ..PLAIN },
    EchoPath { name: "kitchen, 50 ppm", drift_ppm: 50.0, room: "kitchen_2m_1.wav", ..PLAIN },
    EchoPath { name: "bedroom, -150 ppm", drift_ppm: -150.0, level_db: -12.0, ..PLAIN },
    EchoPath { name: "day room, 300 ppm", drift_ppm: 300.0, delay_s: 0.12, room: "dayroom_large_2m_1.wav", ..PLAIN },
    EchoPath { name: "kitchen, -700 ppm", drift_ppm: -700.0, room: "kitchen_0.4m_1.wav", ..PLAIN },
    EchoPath { name: "bedroom, distorting", drive: 3.0, room: "bedroom_0.4m_0.wav", ..PLAIN },
    EchoPath { name: "kitchen, distorting more", drive: 6.0, level_db: -12.0, room: "kitchen_1m_1.wav", ..PLAIN },
    EchoPath { name: "a cable", delay_s: 0.13, level_db: -18.0, room: "", ..PLAIN },
    EchoPath { name: "a cable, 15 ppm", delay_s: 0.2, drift_ppm: 15.0, level_db: -24.0, room: "", ..PLAIN },
    EchoPath { name: "a cable that leaps", delay_s: 0.09, leap_s: 0.012, level_db: -16.0, room: "", ..PLAIN },
    EchoPath { name: "day room, distorting, 80 ppm", drive: 4.0, drift_ppm: 80.0, room: "dayroom_large_0.4m_0.wav", ..PLAIN },
];

const SECONDS: f64 = 300.0;
/// Clips of a scene, and by how much they are louder than the echo, dB.
const AT_ONCE: usize = 40;
const OVER_DB: [f64; 4] = [4.0, 0.0, 9.0, -3.0];
/// Kept before and after a clip, s.
const MARGIN_S: f64 = 0.3;
const BLOCK: usize = ECHO_RATE_HZ as usize / 100;

/// Keeps what it is given in place of hearing it.
struct Keeps(Arc<Mutex<Vec<f32>>>);

impl CommandRecogniser for Keeps {
    fn listen_for(&mut self, _: &Grammar) -> Result<(), CommandEarError> {
        Ok(())
    }
    fn push(&mut self, _: f64, block: &[f32], _: bool) {
        self.0.lock().expect("one thread").extend_from_slice(block);
    }
    fn poll(&mut self) -> Vec<CommandEvent> {
        Vec::new()
    }
}

/// What the ear is given of a scene.
fn given(mix: &Mix) -> Vec<f32> {
    let kept = Arc::new(Mutex::new(Vec::new()));
    let ear = Box::new(Keeps(kept.clone()));
    let mut path = CommandPath::new(Box::new(AutoCanceller::new()), ear, ECHO_RATE_HZ, ECHO_RATE_HZ).expect("rates");
    for (n, (mic, played)) in mix.mic.chunks_exact(BLOCK).zip(mix.played.chunks_exact(BLOCK)).enumerate() {
        path.hear(mic, n as f64 * 0.01, mix.hint_s, true).expect("blocks of 10 ms");
        path.play(played, audio::Sent::whole(played.len()));
    }
    std::mem::take(&mut *kept.lock().expect("one thread"))
}

fn save(file: &Path, samples: &[f32]) {
    let spec = hound::WavSpec { channels: 1, sample_rate: ECHO_RATE_HZ, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut out = hound::WavWriter::create(file, spec).expect("a folder that can be written");
    for sample in samples {
        out.write_sample((sample * 32_767.0).clamp(-32_768.0, 32_767.0) as i16).expect("room on the disk");
    }
    out.finalize().expect("room on the disk");
}

/// Writes a file for each room of [`TRAINING`] into `folder`, ours alone.
pub fn write(talk: &Talk, folder: &Path) {
    std::fs::create_dir_all(folder).expect("a folder that can be written");
    for (n, echo) in TRAINING.iter().enumerate() {
        let mix = Mix::alone(&talk.from(n * 17), echo, SECONDS);
        save(&folder.join(format!("own_{n:02}.wav")), &given(&mix));
        println!("{}", echo.name);
    }
}

/// Of clips said over our talk, `list`: lines of path, speaker, text. Writes each as the ear is given it, and `list.tsv` with name,
/// speaker, text.
pub fn write_over(talk: &Talk, list: &Path, folder: &Path) {
    std::fs::create_dir_all(folder).expect("a folder that can be written");
    let list = std::fs::read_to_string(list).unwrap_or_else(|why| panic!("{}: {why}", list.display()));
    let lines = list.lines().enumerate().map(|(n, line)| match line.split('\t').collect::<Vec<_>>()[..] {
        [path, speaker, text] => (path, speaker, text),
        _ => panic!("line {} of the list: path, speaker and text are wanted, parted by tabs", n + 1),
    });
    let lines: Vec<(&str, &str, &str)> = lines.collect();
    let mut index = String::new();
    for (n, part) in lines.chunks(AT_ONCE).enumerate() {
        let clips: Vec<Vec<f32>> =
            part.iter().map(|line| sound(Path::new(line.0)).unwrap_or_else(|| panic!("{}: no sound", line.0))).collect();
        let (echo, over_db) = (&TRAINING[n % TRAINING.len()], OVER_DB[(n + n / TRAINING.len()) % OVER_DB.len()]);
        let mix = Mix::over(&talk.from(n * 17), echo, &clips, over_db);
        let heard = given(&mix);
        for (m, (line, (from_s, to_s))) in part.iter().zip(&mix.words).enumerate() {
            let at = |s: f64| ((s.max(0.0) * f64::from(ECHO_RATE_HZ)) as usize).min(heard.len());
            let name = format!("{:05}.wav", n * AT_ONCE + m);
            save(&folder.join(&name), &heard[at(from_s - MARGIN_S)..at(to_s + MARGIN_S)]);
            index += &format!("{name}\t{}\t{}\n", line.1, line.2);
        }
        println!("{}, {over_db} dB: {} clips", echo.name, part.len());
    }
    std::fs::write(folder.join("list.tsv"), index).expect("room on the disk");
}
