//! What every rehearsal needs besides a practice: the client's room as devices, its ear, and the truth on file.

use std::path::Path;

use crate::observe::{Asked, Observer};
use files::error::Failure;
use rehearse::{Client, Heard, Household, Rehearsal, RehearsedIo, Script};
use session::Line;

/// Rate of the rehearsed room, Hz; the recogniser's own, so that the room costs least.
pub const ROOM_HZ: u32 = 16_000;
/// How late the rehearsed loudspeaker is, s; about what the live path has.
const LOUDSPEAKER_DELAY_S: f64 = 0.06;

/// The client of this script in its room, and those who live there.
///
/// # Errors
/// `flite` or a voice is missing; the room cannot be built.
pub fn devices(script: Script, rate_hz: u32) -> Result<(RehearsedIo, Rehearsal), Failure> {
    let (room, seed) = (script.room.clone(), script.seed);
    let spec = room.spec(rate_hz, if room.is_quiet() { 0 } else { seed });
    let (mut io, rehearsal) = RehearsedIo::new(Client::new(script, rate_hz)?, &spec, LOUDSPEAKER_DELAY_S)?;
    if !room.is_quiet() {
        io.with_household(Household::new(&room, &spec, seed)?);
    }
    Ok((io, rehearsal))
}

/// What the client did, with exact times, to compare the journal with; one JSON object a line.
///
/// # Errors
/// The file cannot be written.
pub fn write_truth(path: &Path, rehearsal: &Rehearsal) -> Result<(), Failure> {
    let lines: Result<Vec<String>, _> = rehearsal.log().iter().map(serde_json::to_string).collect();
    let failed = |why: &dyn std::fmt::Display| Failure::file(path, format!("cannot be written: {why}"));
    let text = lines.map_err(|why| failed(&why))?.join("\n") + "\n";
    disk::private::write(path, text.as_bytes()).map_err(|why| failed(&why))
}

/// The simulated client hears what leaves the loudspeaker, and nothing else of the session.
pub struct ClientsEar(pub Rehearsal);

impl Observer for ClientsEar {
    fn line_began(&mut self, at_s: f64, line: &Line, text: &str) {
        self.0.hears(at_s, Heard::Began { line, text });
    }

    fn line_ended(&mut self, at_s: f64, line: &Line, text: &str) {
        self.0.hears(at_s, Heard::Ended { line, text });
    }

    fn asked(&mut self) -> Option<Asked> {
        self.0.take_pressed().map(Asked::Key)
    }
}
