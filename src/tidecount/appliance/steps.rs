//! The steps, each of which can be skipped.

use std::path::{Path, PathBuf};

use super::autostart::SwitchedOn;
use super::draft::Draft;
use super::sounds::Sounds;
use crate::terminal::ask::{Ask, AskError, until, yes_or_no};
use audio::devices::Listed;

/// The routine that somebody gets who has none yet, and the name of its file.
const FIRST_ROUTINE: (&str, &str) = ("voice-short.toml", include_str!("../../../demo/voice-short.toml"));
/// A peak so near full scale was cut off, dB re full scale.
const CLIPPED_DBFS: f64 = -0.5;
/// Speech whose mean lies lower is too soft to be heard well, dB re full scale.
const SOFT_DBFS: f64 = -60.0;

/// Says why a household file cannot be used; nothing where it can.
pub type Judge<'a> = &'a dyn Fn(&str) -> Option<String>;

/// What the steps work with.
pub struct Steps<'a> {
    pub ask: &'a mut dyn Ask,
    pub sounds: &'a dyn Sounds,
    pub judge: Judge<'a>,
    /// Where the household file lies; routines are beside it.
    pub folder: PathBuf,
    /// Switches on that it waits at each login; none where that cannot be.
    pub switch_on: Option<&'a dyn Fn() -> SwitchedOn>,
}

impl Steps<'_> {
    /// Goes through all of them. Gives the file as it is to be written.
    ///
    /// # Errors
    /// There is nobody to answer any more.
    pub fn household(&mut self, draft: Draft) -> Result<Draft, AskError> {
        self.ask.say("Each step can be skipped with the return key: what stands in brackets is kept.\n")?;
        let draft = self.microphone(draft)?;
        let draft = self.loudspeaker(draft)?;
        let draft = self.persons(draft)?;
        if draft.persons().is_empty() {
            return Ok(draft);
        }
        let draft = self.value(
            draft,
            "emergency_number",
            "\n4. In an emergency it says the number to call.\nThe emergency number where you live, or none",
        )?;
        let draft = self.value(
            draft,
            "start_phrase",
            "\n5. \"Start my practice\" always starts one.\nAnother phrase that starts one, two words or more, or none",
        )?;
        let draft = self.quiet_hours(draft)?;
        self.value(
            draft,
            "tell_faults_to",
            "\n7. When something does not work, it says so and adds whom to tell.\nWho, as in \"Please tell your daughter\", or none",
        )
    }

    /// The last step, once the file is written.
    ///
    /// # Errors
    /// There is nobody to answer any more.
    pub fn autostart(&mut self) -> Result<(), AskError> {
        let Some(switch_on) = self.switch_on else {
            return self.ask.say("\n8. It starts by itself only with the usual data folder and household file, so this step is skipped.");
        };
        if yes_or_no(self.ask, "\n8. Shall it wait for a practice whenever this user is logged in?", Some(true))? {
            self.ask.say(&switch_on().told())?;
        }
        Ok(())
    }

    fn microphone(&mut self, draft: Draft) -> Result<Draft, AskError> {
        self.ask.say("1. Microphone")?;
        let found = self.sounds.microphones();
        let Some(found) = self.some(found, "microphone")? else { return Ok(draft) };
        loop {
            let chosen = self.choose(&found, draft.get("microphone"))?;
            self.ask.say("Please speak for three seconds, from where you will sit.")?;
            let (told, good) = match self.sounds.listen(&chosen.name) {
                Ok((peak, mean)) => judged(peak, mean),
                Err(why) => (why, false),
            };
            self.ask.say(&told)?;
            if yes_or_no(self.ask, "Take this one?", Some(true))? {
                if !good {
                    self.ask.say("`tidecount doctor` looks at it again.")?;
                }
                return Ok(draft.with("microphone", name_of(chosen)));
            }
        }
    }

    fn loudspeaker(&mut self, draft: Draft) -> Result<Draft, AskError> {
        self.ask.say("\n2. Loudspeaker")?;
        let found = self.sounds.loudspeakers();
        let Some(found) = self.some(found, "loudspeaker")? else { return Ok(draft) };
        let mut chosen = self.choose(&found, draft.get("loudspeaker"))?;
        loop {
            if let Err(why) = self.sounds.play(&chosen.name) {
                self.ask.say(&why)?;
            }
            let heard = until(self.ask, "Did you hear it well? (yes/louder/softer/other)", Some("yes"), |answer| match answer {
                "yes" | "y" => Ok(None),
                "louder" => Ok(Some(Some(true))),
                "softer" => Ok(Some(Some(false))),
                "other" => Ok(Some(None)),
                _ => Err("Please type yes, louder, softer or other.".to_owned()),
            })?;
            match heard {
                None => return Ok(draft.with("loudspeaker", name_of(chosen))),
                Some(Some(louder)) => {
                    if let Err(why) = self.sounds.turn(louder) {
                        self.ask.say(&why)?;
                    }
                }
                Some(None) => chosen = self.choose(&found, Some(&chosen.name.clone()))?,
            }
        }
    }

    /// The devices, where there are any.
    fn some(&mut self, found: Result<Vec<Listed>, String>, noun: &str) -> Result<Option<Vec<Listed>>, AskError> {
        match found {
            Ok(found) if !found.is_empty() => return Ok(Some(found)),
            Ok(_) => self.ask.say(&format!("No {noun} was found, so this step is skipped. Plug one in and run this again."))?,
            Err(why) => self.ask.say(&format!("{why}. This step is skipped."))?,
        }
        Ok(None)
    }

    fn choose<'l>(&mut self, found: &'l [Listed], stands: Option<&str>) -> Result<&'l Listed, AskError> {
        for (n, device) in found.iter().enumerate() {
            let usual = if device.is_default { " (the usual one)" } else { "" };
            self.ask.say(&format!("  {}  {}{usual}", n + 1, device.description))?;
        }
        let at = found.iter().position(|device| stands == Some(&device.name)).unwrap_or(0);
        until(self.ask, "Which one? Its number", Some(&(at + 1).to_string()), |answer| {
            let chosen = answer.parse::<usize>().ok().and_then(|n| found.get(n.checked_sub(1)?));
            chosen.ok_or_else(|| format!("Please type a number from 1 to {}.", found.len()))
        })
    }

    fn persons(&mut self, mut draft: Draft) -> Result<Draft, AskError> {
        self.ask.say("\n3. Who practises here")?;
        loop {
            let known = draft.persons();
            if !known.is_empty() {
                self.ask.say(&format!("So far: {}.", known.join(", ")))?;
            }
            let name = self.ask.ask("Somebody's name as it is said aloud, such as grandpa; or nothing to go on", Some(""))?;
            if name.is_empty() {
                return Ok(draft);
            }
            let file = self.ask.ask("Their routine, a file; or nothing for two minutes of voice and breath", Some(""))?;
            match self.routine(&file).and_then(|file| self.judged(draft.clone().with_person(&name, &file))) {
                Ok(more) => draft = more,
                Err(why) => self.ask.say(&why)?,
            }
        }
    }

    /// How the household file names a routine.
    fn routine(&self, typed: &str) -> Result<String, String> {
        if typed.is_empty() {
            let path = self.folder.join(FIRST_ROUTINE.0);
            if !path.exists() {
                record::create_folder(&self.folder).map_err(|why| why.to_string())?;
                record::replace_file(&path, FIRST_ROUTINE.1.as_bytes()).map_err(|why| why.to_string())?;
            }
            return Ok(FIRST_ROUTINE.0.to_owned());
        }
        // From where it was typed; beside the household file only its name is needed.
        let path = std::path::absolute(typed).map_err(|why| format!("{typed}: {why}"))?;
        let beside = std::path::absolute(&self.folder).ok().and_then(|folder| path.strip_prefix(folder).map(Path::to_owned).ok());
        Ok(beside.unwrap_or(path).display().to_string())
    }

    fn judged(&self, draft: Draft) -> Result<Draft, String> {
        match (self.judge)(&draft.text()) {
            Some(why) => Err(why),
            None => Ok(draft),
        }
    }

    /// Asks until the household can be used with the answer.
    fn value(&mut self, draft: Draft, key: &str, question: &str) -> Result<Draft, AskError> {
        loop {
            let stands = draft.get(key).unwrap_or("none").to_owned();
            let answer = self.ask.ask(question, Some(&stands))?;
            let text = Some(answer.as_str()).filter(|answer| !["none", ""].contains(answer));
            match self.judged(draft.clone().with(key, text)) {
                Ok(draft) => return Ok(draft),
                // What stood there before is not this step's to mend.
                Err(why) if answer == stands => {
                    self.ask.say(&why)?;
                    return Ok(draft);
                }
                Err(why) => self.ask.say(&why)?,
            }
        }
    }

    fn quiet_hours(&mut self, draft: Draft) -> Result<Draft, AskError> {
        let stands = match (draft.get("quiet_from"), draft.get("quiet_to")) {
            (Some(from), Some(to)) => format!("{from}-{to}"),
            _ => "none".to_owned(),
        };
        loop {
            let question =
                "\n6. In quiet hours it says nothing by itself, unless a person needs somebody.\nFrom and to, such as 21:30-07:00, or none";
            let answer = self.ask.ask(question, Some(&stands))?;
            let hours = match answer.split_once('-') {
                Some((from, to)) => Some((from.trim(), to.trim())),
                None if answer == "none" => None,
                None => {
                    self.ask.say("Please type two times with a dash between them, or none.")?;
                    continue;
                }
            };
            let changed = draft.clone().with("quiet_from", hours.map(|hours| hours.0)).with("quiet_to", hours.map(|hours| hours.1));
            match self.judged(changed) {
                Ok(draft) => return Ok(draft),
                Err(why) if answer == stands => {
                    self.ask.say(&why)?;
                    return Ok(draft);
                }
                Err(why) => self.ask.say(&why)?,
            }
        }
    }
}

/// The usual device is not named: whichever is the usual one later is taken then.
fn name_of(device: &Listed) -> Option<&str> {
    (!device.is_default).then_some(device.name.as_str())
}

/// What a level of speech means, and whether it will do.
fn judged(peak_dbfs: f64, mean_dbfs: f64) -> (String, bool) {
    if peak_dbfs == f64::NEG_INFINITY {
        return ("It gives nothing but silence: it is muted or switched off.".to_owned(), false);
    }
    let level = format!("Mean level {mean_dbfs:.0} dBFS, peak {peak_dbfs:.0} dBFS");
    if peak_dbfs > CLIPPED_DBFS {
        (format!("{level}: too loud. Turn the microphone's level down."), false)
    } else if mean_dbfs < SOFT_DBFS {
        (format!("{level}: too soft. Bring the microphone nearer, or turn its level up."), false)
    } else {
        (format!("{level}: good."), true)
    }
}

#[cfg(test)]
#[path = "tests/steps.rs"]
mod tests;
