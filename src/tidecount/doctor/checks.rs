//! Judges what was found. Pure: facts in, findings out.

use super::facts::{Clock, Facts, Folder, House, Listened, Played, Private, Record, StartPhrase};

/// Less room is too little for a year of practice with a voice cache, bytes. A practice takes some tens of kilobytes.
const LITTLE_ROOM: u64 = 200_000_000;
/// With less it may stop in the middle of a practice, bytes.
const NO_ROOM: u64 = 20_000_000;
/// A peak so near full scale was cut off, dB re full scale.
const CLIPPED_DBFS: f64 = -0.5;
/// A room this loud drowns a voice, or the microphone is turned up far too much, dB re full scale.
const LOUD_DBFS: f64 = -25.0;
/// Below this there is hardly more than the noise of the converter, dB re full scale.
const FAINT_DBFS: f64 = -85.0;
/// No copy of this program is older: a clock that shows an earlier year has lost the time.
const FIRST_YEAR: i16 = 2026;
/// The line that the voice renders lasts at least so long, s.
const SHORTEST_LINE_S: f64 = 0.5;

/// How it stands with one thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    Well,
    /// Nothing is wrong, but somebody may want to know.
    Note,
    Wrong,
}

/// What one check found. `what` and `remedy` hold no personal data; `private` may, and is never reported.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    pub about: &'static str,
    pub standing: Standing,
    pub what: String,
    pub remedy: Option<&'static str>,
    pub private: Option<String>,
}

impl Finding {
    fn well(about: &'static str, what: impl Into<String>) -> Self {
        Self { about, standing: Standing::Well, what: what.into(), remedy: None, private: None }
    }

    fn note(about: &'static str, what: impl Into<String>, remedy: &'static str) -> Self {
        Self { standing: Standing::Note, remedy: Some(remedy), ..Self::well(about, what) }
    }

    fn wrong(about: &'static str, what: impl Into<String>, remedy: &'static str) -> Self {
        Self { standing: Standing::Wrong, remedy: Some(remedy), ..Self::well(about, what) }
    }

    fn with(mut self, private: &Private) -> Self {
        self.private = Some(private.0.clone()).filter(|text| !text.is_empty());
        self
    }
}

/// Every check, in the order in which a practice needs them.
#[must_use]
pub fn findings(facts: &Facts) -> Vec<Finding> {
    vec![
        microphone(&facts.microphone),
        loudspeaker(&facts.loudspeaker),
        voice(&facts.voice),
        model(&facts.model),
        clock(&facts.clock),
        room(&facts.room_bytes),
        folder(&facts.folder),
        record(&facts.record),
        household(&facts.household),
        start_phrase(&facts.household),
    ]
}

/// Nothing is wrong.
#[must_use]
pub fn all_is_well(findings: &[Finding]) -> bool {
    findings.iter().all(|finding| finding.standing != Standing::Wrong)
}

fn microphone(listened: &Result<Listened, Private>) -> Finding {
    let about = "Microphone";
    let heard = match listened {
        Ok(heard) => heard,
        Err(why) => {
            let remedy = "Plug it in or switch it on. `tidecount devices` lists those there are; `tidecount appliance` chooses one.";
            return Finding::wrong(about, "It cannot be used.", remedy).with(why);
        }
    };
    let level = format!("{} Hz, mean level {:.0} dBFS, peak {:.0} dBFS", heard.rate_hz, heard.rms_dbfs, heard.peak_dbfs);
    let finding = if heard.constant {
        let remedy = "Check its switch, its cable, and whether the system has muted it.";
        Finding::wrong(about, "It gives nothing but digital silence: it is muted or switched off.", remedy)
    } else if heard.peak_dbfs > CLIPPED_DBFS {
        let remedy = "Turn its level down, or move it away from the loudspeaker.";
        Finding::wrong(about, format!("It is overdriven ({level})."), remedy)
    } else if heard.lost_frames > 0 {
        let what = format!("It lost {} frames within a second ({level}).", heard.lost_frames);
        Finding::wrong(about, what, "Close other programs, and plug it straight into the computer.")
    } else if heard.rms_dbfs > LOUD_DBFS {
        let what = format!("It is very loud there ({level}).");
        Finding::note(about, what, "If nobody was speaking, switch off what sounds, or turn the microphone's level down.")
    } else if heard.rms_dbfs < FAINT_DBFS {
        Finding::note(about, format!("It gives hardly any sound ({level})."), "Turn its level up. `tidecount hear` shows it as you speak.")
    } else {
        Finding::well(about, format!("It works ({level})."))
    };
    finding.with(&heard.device)
}

fn loudspeaker(played: &Played) -> Finding {
    let about = "Loudspeaker";
    match played {
        Played::Works { device, rate_hz } => {
            Finding::well(about, format!("It opens and takes sound ({rate_hz} Hz). Whether it is heard, only you can tell.")).with(device)
        }
        Played::Fails(why) => {
            let remedy = "Plug it in or switch it on. `tidecount devices` lists those there are; `tidecount appliance` chooses one.";
            Finding::wrong(about, "It cannot be used.", remedy).with(why)
        }
        Played::NotTried => Finding::note(about, "It was not tried.", "Name one with --speaker."),
    }
}

fn voice(voice: &Result<(Private, Option<f64>), Private>) -> Finding {
    let about = "Voice";
    match voice {
        Ok((name, None)) => Finding::well(about, "The system's voice answers. Whether it is heard, only you can tell.").with(name),
        Ok((name, Some(length_s))) if *length_s >= SHORTEST_LINE_S => {
            Finding::well(about, format!("It speaks (a line of {length_s:.1} s).")).with(name)
        }
        Ok((name, _)) => {
            Finding::wrong(about, "It gives no sound.", "Install the package espeak-ng anew, or take another --voice.").with(name)
        }
        Err(why) => Finding::wrong(about, "There is none.", "Install the package espeak-ng.").with(why),
    }
}

fn model(model: &Result<(), Private>) -> Finding {
    let about = "Recogniser";
    match model {
        Ok(()) => Finding::well(about, "Its model loads."),
        Err(why) => Finding::wrong(about, "It cannot be used.", "Install tidecount anew, or take another --model.").with(why),
    }
}

fn clock(clock: &Clock) -> Finding {
    let about = "Clock";
    let remedy = "Set date and time. Connect the computer to a network now and then, or replace its clock battery.";
    if clock.year < FIRST_YEAR {
        Finding::wrong(about, format!("It shows the year {}.", clock.year), remedy)
    } else if clock.record_doubts {
        Finding::wrong(about, "It shows an earlier time than the record has entries for, or a much later one.", remedy)
    } else {
        match clock.synchronised {
            Some(true) => Finding::well(about, "It is set from the network."),
            Some(false) => Finding::note(about, "It is not set from the network.", "Compare it with another clock now and then."),
            None => {
                Finding::note(about, "Whether it is set from the network is not known here.", "Compare it with another clock now and then.")
            }
        }
    }
}

fn room(bytes: &Result<u64, Private>) -> Finding {
    let about = "Disk";
    let remedy = "Delete what nobody needs, or empty the wastebasket.";
    match bytes {
        Ok(bytes) if *bytes < NO_ROOM => Finding::wrong(about, format!("It is full ({} left).", megabytes(*bytes)), remedy),
        Ok(bytes) if *bytes < LITTLE_ROOM => Finding::note(about, format!("There is little room ({} left).", megabytes(*bytes)), remedy),
        Ok(bytes) => Finding::well(about, format!("There is room ({} left).", megabytes(*bytes))),
        Err(why) => Finding::note(about, "How much room there is could not be found out.", "Look at the disk yourself.").with(why),
    }
}

fn megabytes(bytes: u64) -> String {
    if bytes >= 10_000_000_000 { format!("{} GB", bytes / 1_000_000_000) } else { format!("{} MB", bytes / 1_000_000) }
}

fn folder(folder: &Folder) -> Finding {
    let about = "Data folder";
    match folder {
        Folder::Missing(path) => Finding::note(about, "It is not there yet.", "The first practice makes it.").with(path),
        Folder::There { path, writable: false, .. } => {
            Finding::wrong(about, "It cannot be written to.", "Give it to the user who practises: chown and chmod, as its administrator.")
                .with(path)
        }
        Folder::There { path, open_to_others: true, .. } => {
            let what = "Other users of this computer can look into it.";
            Finding::wrong(about, what, "Close it: chmod 700 on the folder.").with(path)
        }
        Folder::There { path, files_open_to_others, .. } if *files_open_to_others > 0 => {
            // The folder itself is closed, so nobody gets there; a copy that keeps the modes would be open.
            let what = format!("It is closed to others, but {files_open_to_others} of its files would be readable in a copy.");
            Finding::note(about, what, "Close them too: chmod 600 on the files.").with(path)
        }
        Folder::There { path, .. } => Finding::well(about, "It can be written to, and nobody else can look into it.").with(path),
        Folder::Unknown(why) => Finding::wrong(about, "It cannot be looked at.", "Name another with --data DIR.").with(why),
    }
}

fn record(record: &Record) -> Finding {
    let about = "Record";
    match record {
        Record::None => Finding::note(about, "There is none yet.", "The first practice makes it."),
        Record::Looked { practices, encrypted, faults } if faults.is_empty() => {
            let kind = if *encrypted { "encrypted" } else { "not encrypted" };
            Finding::well(about, format!("It is whole (practices: {practices}; {kind})."))
        }
        Record::Looked { faults, .. } => {
            let told: Vec<&str> = faults.iter().map(|fault| fault.0.as_str()).collect();
            let remedy = "`tidecount record check` names each. Take a backup back with `tidecount record restore FILE`.";
            Finding::wrong(about, format!("It is damaged (faults: {}).", faults.len()), remedy).with(&Private(told.join("; ")))
        }
        Record::Fails(why) => Finding::wrong(about, "It cannot be opened.", "`tidecount record check` says more.").with(why),
    }
}

fn household(house: &House) -> Finding {
    let about = "Household";
    match house {
        House::None => {
            let remedy = "`tidecount appliance` writes one. Without it `tidecount attend` has nobody to wait for.";
            Finding::note(about, "There is no household file.", remedy)
        }
        House::Read { persons, planned, .. } => {
            Finding::well(about, format!("It is read (persons: {persons}; planned times in a week: {planned})."))
        }
        House::Faults { count, told } => {
            let remedy = "Mend each at its line; `tidecount attend` lists them all.";
            Finding::wrong(about, format!("The household or its routines have faults ({count})."), remedy).with(told)
        }
        House::Unknown(why) => {
            Finding::note(about, "It could not be read without the recogniser's model.", "See the recogniser.").with(why)
        }
    }
}

fn start_phrase(house: &House) -> Finding {
    let about = "Start phrase";
    match house {
        House::Read { start_phrase: StartPhrase::Heard, .. } => {
            Finding::well(about, "The recogniser knows every word that starts a practice.")
        }
        House::Read { start_phrase: StartPhrase::NotInThisLanguage { commands }, .. } => {
            let told = match commands {
                true => "Nothing that starts a practice is heard in this language; the commands of a practice are.",
                false => "No spoken word is heard in this language.",
            };
            Finding::note(about, told, "Start practices on the page, or name a Vosk model of the language with --model DIR.")
        }
        House::Read { start_phrase: StartPhrase::Unknown(why), .. } => {
            let remedy = "Take everyday English words for names, routines and the start phrase.";
            Finding::wrong(about, "The recogniser would not hear all of them.", remedy).with(why)
        }
        House::None | House::Faults { .. } | House::Unknown(_) => {
            Finding::note(about, "It could not be tried without a household.", "See the household.")
        }
    }
}

#[cfg(test)]
#[path = "tests/checks.rs"]
mod tests;
