//! A recording of a client who goes through a routine: made closed loop, in a room whose loudspeaker is not heard
//! (headphones), so that the same practice can be led again from the recording alone.

use super::ROOT;
use command_ear::Lexicon;
use files::load;
use live::follow::SharedScreen;
use live::observe::Observer;
use live::practice::Practice;
use record::Source;
use rehearse::{Client, Heard, Rehearsal, RehearsedIo, RoomSpec, Script};
use screen::NoScreen;
use session::Line;
use speak::Words;
use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};

/// Rate of the recording, Hz.
const RATE_HZ: u32 = 16_000;

/// Leads `routine` with the invented client; gives the recording of what the microphone heard.
pub fn record(routine: &Path, folder: &Path) -> Result<PathBuf, Box<dyn Error>> {
    let words = Words::english()?;
    let model = load::model_folder(None)?;
    let lexicon = Lexicon::open(&model)?;
    let (prescription, routine_text) = load::routine(routine, &words, &lexicon)?;
    let script_path = Path::new(ROOT).join("demo/client.toml");
    let script = Script::parse(&script_path.display().to_string(), &fs::read_to_string(&script_path)?)?;
    let headphones = RoomSpec { echo: None, ..RoomSpec::living_room(RATE_HZ) };
    let (mut io, rehearsal) = RehearsedIo::new(Client::new(script, RATE_HZ)?, &headphones, 0.0)?;
    let both = folder.join("both-sides.wav");
    io.write_wav(&both)?;
    let practice = Practice {
        mic_gates: false,
        prescription,
        routine_text,
        words,
        model: model.into(),
        lexicon,
        hears_itself: false,
        voice: Some("espeak-ng".into()),
        source: Source::Rehearsal,
        client: "household".into(),
        data: folder.join("rehearsal"),
        journal: None,
        emergency_number: None,
        levels: live::levels::Levels::default(),
        by_page: false,
        protocol: None,
        recogniser: Some(env!("CARGO_BIN_EXE_tidecount").into()),
    };
    practice.lead(Box::new(io), SharedScreen::new(NoScreen), vec![Box::new(Ear(rehearsal))])?;
    left_of(&both, &folder.join("client.wav"))
}

/// The client hears what leaves the loudspeaker.
struct Ear(Rehearsal);

impl Observer for Ear {
    fn line_began(&mut self, at_s: f64, line: &Line, text: &str) {
        self.0.hears(at_s, Heard::Began { line, text });
    }

    fn line_ended(&mut self, at_s: f64, line: &Line, text: &str) {
        self.0.hears(at_s, Heard::Ended { line, text });
    }
}

/// Writes the left side of a recording alone.
fn left_of(both: &Path, to: &Path) -> Result<PathBuf, Box<dyn Error>> {
    let mut reader = hound::WavReader::open(both)?;
    let mut writer = hound::WavWriter::create(to, hound::WavSpec { channels: 1, ..reader.spec() })?;
    for sample in reader.samples::<i16>().step_by(2) {
        writer.write_sample(sample?)?;
    }
    writer.finalize()?;
    Ok(to.to_owned())
}
