//! A programme while it is being written, and the routine file that a person can read.

use std::fmt::Write;

use super::catalogue::CatalogueEntry;
use super::clinician::ClinicianWord;
use super::plan::{PlannedTime, Weekday};
use super::prescribed::Timing;

/// Comments are broken at this column.
const WIDTH: usize = 100;

/// Looks up a message of the catalogue of words by its key.
pub type Lookup<'a> = &'a dyn Fn(&str) -> Option<String>;

/// A whole programme.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Draft {
    pub title: String,
    /// A short name, no real one.
    pub client: Option<String>,
    pub cue_words: Option<String>,
    pub feedback_every: u32,
    pub plan: Vec<PlannedTime>,
    /// What the clinician has said about the practice as a whole.
    pub word: Option<ClinicianWord>,
    pub steps: Vec<DraftStep>,
}

/// One exercise with its dose.
#[derive(Debug, Clone)]
pub struct DraftStep {
    pub entry: &'static CatalogueEntry,
    /// Fields with their values, in the order in which they are written; `hold_s` stands for the length of the longest phases.
    pub numbers: Vec<(&'static str, f64)>,
    /// Phases that were each given a length, s; empty: those of the catalogue, or `hold_s`.
    pub phases: Vec<(String, f64)>,
    pub phrases: Vec<String>,
    /// What the clinician has set, for what is never done without.
    pub setting: Option<String>,
    /// Names of word packs.
    pub packs: Vec<String>,
    /// Only where the client's clinician has enabled sips.
    pub sip_every: Option<u32>,
    pub ramp: Option<DraftRamp>,
    /// What the clinician has said about this dose.
    pub word: Option<ClinicianWord>,
    /// Where the dose comes from, for the comment.
    pub source: String,
    /// The cautions were read and agreed to.
    pub acknowledged: bool,
}

impl PartialEq for DraftStep {
    fn eq(&self, other: &Self) -> bool {
        self.entry.id == other.entry.id
            && (&self.numbers, &self.phases, &self.phrases, &self.packs, &self.setting)
                == (&other.numbers, &other.phases, &other.phrases, &other.packs, &other.setting)
            && (self.sip_every, &self.ramp, &self.word, &self.source, self.acknowledged)
                == (other.sip_every, &other.ramp, &other.word, &other.source, other.acknowledged)
    }
}

/// A dose that grows.
#[derive(Debug, Clone, PartialEq)]
pub struct DraftRamp {
    pub days: u32,
    /// The numbers of each stage.
    pub stages: Vec<Vec<(&'static str, f64)>>,
}

impl DraftStep {
    /// The exercise with nothing said about its dose.
    #[must_use]
    pub fn new(entry: &'static CatalogueEntry) -> Self {
        Self {
            entry,
            numbers: Vec::new(),
            phases: Vec::new(),
            phrases: Vec::new(),
            setting: None,
            packs: Vec::new(),
            sip_every: None,
            ramp: None,
            word: None,
            source: String::new(),
            acknowledged: false,
        }
    }

    /// The number of a field, if it was given.
    #[must_use]
    pub fn number(&self, field: &str) -> Option<f64> {
        self.numbers.iter().find(|(name, _)| *name == field).map(|(_, value)| *value)
    }
}

impl Draft {
    /// The routine file, with the sources of the doses and the cautions as comments.
    #[must_use]
    pub fn to_toml(&self, words: Lookup<'_>) -> String {
        let mut text = String::new();
        comment(&mut text, "A routine for tidecount. Change it with any editor of plain text; `tidecount routine check` finds its faults.");
        comment(&mut text, "Nothing here is medical advice: each dose is the clinician's to set.");
        let mut line = |line: String| text.push_str(&(line + "\n"));
        line(format!("title = {}", quoted(&self.title)));
        if let Some(client) = &self.client {
            line(format!("client = {}", quoted(client)));
        }
        if let Some(cue) = &self.cue_words {
            line(format!("cue_words = {}", quoted(cue)));
        }
        line(format!("feedback_every = {}   # the number is told after so many trials; 0: only when asked", self.feedback_every));
        if !self.plan.is_empty() {
            line("plan = [".to_owned());
            for planned in &self.plan {
                line(format!("    {},", planned_toml(planned)));
            }
            line("]".to_owned());
        }
        if let Some(word) = &self.word {
            text += &word_toml(word);
        }
        for step in &self.steps {
            text.push('\n');
            step.write(&mut text, words);
        }
        text
    }
}

impl DraftStep {
    fn write(&self, text: &mut String, words: Lookup<'_>) {
        let id = &self.entry.id;
        let say = |key: String| words(&key).unwrap_or(key);
        comment(text, &format!("{}. {}", say(format!("ex-{id}-name")), say(format!("ex-{id}-purpose"))));
        if !self.source.is_empty() {
            comment(text, &format!("Dose: {}.", self.source.trim_end_matches('.')));
        }
        for key in &self.entry.cautions {
            comment(text, &format!("Caution: {}", say(format!("caution-{key}"))));
        }
        for key in &self.entry.not_for {
            comment(text, &format!("Not for, unless their own clinician says otherwise: {}", say(format!("notfor-{key}"))));
        }
        let mut line = |line: String| text.push_str(&(line + "\n"));
        line("[[step]]".to_owned());
        line(format!("exercise = {}", quoted(id)));
        if self.acknowledged && !self.entry.cautions.is_empty() {
            line("cautions_acknowledged = true".to_owned());
        }
        if let Some(word) = &self.word {
            line(word_toml(word).trim_end().to_owned());
        }
        for (field, value) in self.numbers.iter().filter(|(field, _)| *field != "hold_s") {
            line(format!("{field} = {value}"));
        }
        if let Some(phases) = self.phases_toml(self.number("hold_s")) {
            line(format!("phases = {phases}"));
        }
        if !self.phrases.is_empty() {
            line("phrases = [".to_owned());
            for phrase in &self.phrases {
                line(format!("    {},", quoted(phrase)));
            }
            line("]".to_owned());
        }
        if let Some(setting) = &self.setting {
            line(format!("setting = {}", quoted(setting)));
        }
        if !self.packs.is_empty() {
            line(format!("packs = [{}]", self.packs.iter().map(|pack| quoted(pack)).collect::<Vec<_>>().join(", ")));
        }
        if let Some(every) = self.sip_every {
            line("sips_enabled_by_clinician = true".to_owned());
            line(format!("sip_every = {every}"));
        }
        if let Some(ramp) = &self.ramp {
            line(format!("# Goes up a stage when all of it was done on {} different days; it never goes down by itself.", ramp.days));
            line(format!("[step.ramp]\ndays = {}", ramp.days));
            line("stages = [".to_owned());
            for stage in &ramp.stages {
                line(format!("    {{ {} }},", self.stage_toml(stage)));
            }
            line("]".to_owned());
        }
    }

    fn stage_toml(&self, stage: &[(&'static str, f64)]) -> String {
        let one_phase = self.entry.phase_lengths().len() == 1;
        let fields = stage.iter().filter_map(|(field, value)| {
            if *field == "hold_s" && !one_phase {
                return self.phases_toml(Some(*value)).map(|phases| format!("phases = {phases}"));
            }
            Some(format!("{field} = {value}"))
        });
        fields.collect::<Vec<_>>().join(", ")
    }

    /// The phases with their lengths; none where the catalogue's are meant.
    fn phases_toml(&self, hold_s: Option<f64>) -> Option<String> {
        let usual = self.entry.phase_lengths();
        let longest = usual.iter().map(|(_, length_s)| *length_s).fold(0.0, f64::max);
        let all: Vec<(String, f64)> = match hold_s {
            Some(hold_s) if self.entry.timing == Timing::Timed => {
                usual.iter().map(|(name, length_s)| ((*name).to_owned(), if *length_s >= longest { hold_s } else { *length_s })).collect()
            }
            _ => self.phases.clone(),
        };
        let phases = all.iter().map(|(name, length_s)| format!("{{ name = {}, length_s = {length_s} }}", quoted(name)));
        (!all.is_empty()).then(|| format!("[{}]", phases.collect::<Vec<_>>().join(", ")))
    }
}

fn word_toml(word: &ClinicianWord) -> String {
    format!("clinician_word = {{ who = {}, why = {} }}\n", quoted(&word.who), quoted(&word.why))
}

fn planned_toml(planned: &PlannedTime) -> String {
    let at = planned.at_text();
    if planned.days.len() == Weekday::ALL.len() {
        return format!("{{ at = {} }}", quoted(&at));
    }
    let days = planned.days.iter().map(|day| quoted(day.name())).collect::<Vec<_>>().join(", ");
    format!("{{ days = [{days}], at = {} }}", quoted(&at))
}

/// A TOML string on one line.
fn quoted(text: &str) -> String {
    let mut quoted = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => quoted.extend(['\\', c]),
            // Nothing else may stand raw in a basic string; written like this it is at least named by the check.
            c if c.is_control() => {
                let _ = write!(quoted, "\\u{:04X}", u32::from(c));
            }
            c => quoted.push(c),
        }
    }
    quoted + "\""
}

fn comment(text: &mut String, words: &str) {
    for line in textwrap::wrap(words, WIDTH - 2) {
        text.push_str("# ");
        text.push_str(line.trim_end());
        text.push('\n');
    }
}

#[cfg(test)]
mod tests {
    use super::quoted;

    #[test]
    fn any_text_is_a_string_that_reads_back() {
        for text in ["strong voice", "she said \"ah\"", "a\\b", "tab\there", "€ “ah”"] {
            let read: toml::Table = toml::from_str(&format!("x = {}", quoted(text))).expect("TOML");
            assert_eq!(read["x"].as_str(), Some(text));
        }
    }
}
