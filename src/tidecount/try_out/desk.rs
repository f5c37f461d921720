//! The sample clinic: packages go out, practices are led, sealed results come back into the desk's record and the clinic database, on the
//! same ways as between real homes and a real desk.

use std::path::Path;

use clinic::{Address, Arriving, Clinic, DeskPackage};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;

use super::led::{prescription, routine_text, weeks};
use super::people::Person;
use files::error::Failure;
use files::packages::practices::{handed, whole};
use files::packages::sealed::{clinician_key, open_sealed, random, random_id, write_new};
use handover::{HandedSession, Kind, Package, Results, SecretKey, TextFile};
use record::{MadePackage, Store, WholeSession};

/// What was made.
pub struct Made {
    pub clients: usize,
    pub practices: usize,
}

/// Makes the clinic's folder with so many clients.
///
/// # Errors
/// It cannot be written.
pub fn make(folder: &Path, clients: usize, today: Date) -> Result<Made, Failure> {
    let files = folder.join("simulated-files");
    disk::private::folder(&files).map_err(|why| Failure::file(&files, format!("cannot be made: {why}; name another folder with --out")))?;
    let key = clinician_key(folder)?;
    let mut store = Store::open(folder)?;
    let mut clinic = Clinic::open(&Address::File(folder.join("clinic.sqlite")))?;
    let made_at = sent(today)?;
    let mut made = Made { clients, practices: 0 };
    for number in 0..clients {
        let person = Person::of_clinic(number);
        let text = routine_text(&person.name);
        let reply = SecretKey::from_bytes(&random()?);
        let mut package = Package::new(&random_id()?, made_at, &person.name, &reply);
        package.note = Some("Simulated: this package is for nobody real.".to_owned());
        package.routines = vec![TextFile { name: "simulated-routine.toml".to_owned(), text: text.clone() }];
        let file = person.name.replace(' ', "-");
        write_new(&files.join(format!("{file}.tidepack")), &package.seal(&key)?)?;
        store.note_made(&MadePackage {
            id: package.id.clone(),
            client: person.name.clone(),
            made_at,
            reply_key: reply.public().to_hex(),
        })?;
        let known = DeskPackage { id: package.id.clone(), client: person.name.clone(), made_at, reply_key: reply.public().to_hex() };
        clinic.adopt(&key.public().to_hex(), Some("Simulated desk"), &[known])?;

        let prescription = prescription(&text)?;
        let led = weeks(&person, &prescription, today)?;
        let sessions =
            (1..).zip(&led).map(|(number, led)| handed(&led.session(number, Some(&package.id), &prescription.routine.title, &text)?));
        let sessions = sessions.collect::<Result<Vec<HandedSession>, Failure>>()?;
        let handed_at = led.last().map_or(made_at, |last| last.ended.timestamp());
        let results = Results { package: package.id.clone(), client: person.name.clone(), made_at: handed_at, sessions, goals: Vec::new() };
        let path = files.join(format!("{file}.tideback"));
        write_new(&path, &results.seal(&reply)?)?;
        // Read again from the file, as at a real desk.
        let (_, opened) = open_sealed(&path, Kind::Results)?;
        clinic.import(&Arriving::read(&opened)?)?;
        let read = Results::read(&opened).map_err(|why| Failure::file(&path, why))?;
        let sessions: Vec<WholeSession> = read.sessions.into_iter().map(whole).collect();
        store.receive(&person.name, &sessions)?;
        made.practices += sessions.len();
    }
    Ok(made)
}

/// When the packages went out: the morning before the first practice.
fn sent(today: Date) -> Result<Timestamp, Failure> {
    let first = crate::simulated::course::planned(super::led::WEEKS, today).first().copied().unwrap_or(today);
    let at = first.at(8, 0, 0, 0).to_zoned_datetime(TimeZone::system());
    at.map(|at| at.timestamp()).map_err(|why| Failure::Again(format!("{first} has no 8 o'clock here: {why}")))
}
