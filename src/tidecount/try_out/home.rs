//! The sample household: two persons, their routine, and weeks of practice in one record.

use std::path::Path;

use jiff::civil::Date;

use super::led::{prescription, routine_text, weeks};
use super::people::{Course, Person};
use crate::simulated::goals;
use files::error::Failure;
use record::Store;

/// Who lives there.
const PERSONS: [(&str, Course); 2] = [("simulated grandma", Course::Grows), ("simulated grandpa", Course::Steady)];

/// Makes the household's folder; gives how many practices are in its record.
///
/// # Errors
/// It cannot be written.
pub fn make(folder: &Path, today: Date) -> Result<usize, Failure> {
    let write = |name: &str, text: &str| {
        let path = folder.join(name);
        disk::private::write(&path, text.as_bytes()).map_err(|why| Failure::file(&path, format!("cannot be written: {why}")))
    };
    disk::private::folder(folder).map_err(|why| Failure::file(folder, format!("cannot be made: {why}; name another folder with --out")))?;
    let mut household = "# Simulated: nobody real lives here.\n".to_owned();
    let mut count = 0;
    for (number, (name, course)) in PERSONS.into_iter().enumerate() {
        let text = routine_text(name);
        let file = format!("{}.toml", name.replace(' ', "-"));
        write(&file, &text)?;
        household += &format!("\n[[person]]\nname = \"{name}\"\n[[person.routine]]\nfile = \"{file}\"\n");
        let prescription = prescription(&text)?;
        let all = weeks(&Person::named(name, course, number + 4), &prescription, today)?;
        if let Some(first) = all.first() {
            goals::set(folder, name, first.began.date(), today)?;
        }
        // All at once: entry by entry, as they are kept while somebody practises, the disk would be waited for thousands of times.
        let sessions = (1..).zip(&all).map(|(number, led)| led.session(number, None, &prescription.routine.title, &text));
        Store::open(folder)?.receive(name, &sessions.collect::<Result<Vec<_>, _>>()?)?;
        count += all.len();
    }
    write("household.toml", &household)?;
    goals::mark(folder, PERSONS[0].0, today)?;
    Ok(count)
}
