//! The program's own codes: for exercises, measures and conditions no standard terminology has codes (for maximum phonation time and
//! the level of a voice LOINC has none; trade facts 7.3).

use std::collections::BTreeMap;

use serde_json::{Value, json};

use super::build::concept;
use model::Measure;
use routine::find;

/// The code system: a UUID drawn once by lot, for no registered name space is ours.
pub const SYSTEM: &str = "urn:uuid:2b7f3a54-9c1e-4d0b-8a6f-5e43d1c8b790";

/// Code, display, definition.
type Known = (&'static str, &'static str, &'static str);

/// The term of a measure, as it is declared.
const fn of(measure: Measure) -> Known {
    let term = measure.declared().term;
    (term.code, term.display, term.definition)
}

const KNOWN: &[Known] = &[
    ("practice", "Guided practice", "A practice of voice, breathing, swallowing or word exercises, led by a program"),
    ("program", "Practice program", "The program that led the practice and measured what it heard"),
    ("microphone", "Microphone", "The microphone through which the practice was heard"),
    ("level-metric", "Level of the voice", "What the program measures of the level of the voice through a microphone"),
    ("exercise", "Exercise", "The exercise of the catalogue that the observation belongs to"),
    of(Measure::HoldS),
    (
        "best-of-three",
        "Best of three trials",
        "The longest held sound (of a glide the widest span of fundamental frequency) among the first three trials of one step that count, with these as members; maximum phonation time where the exercise asks for it",
    ),
    ("trials-made", "Trials made", "How many trials were made, also those that do not count"),
    ("trials-counted", "Trials counted", "How many trials count"),
    of(Measure::PostureS),
    of(Measure::RoundS),
    of(Measure::RepetitionS),
    of(Measure::PhraseS),
    of(Measure::TalkS),
    of(Measure::SpeakingS),
    of(Measure::Pauses),
    of(Measure::PauseSharePct),
    of(Measure::SyllableRateHz),
    ("question-answered", "Word question answered", "An accepted answer to a word question was heard"),
    of(Measure::NamedCount),
    ("symptom-reported", "Symptom reported", "What the client reported to be wrong during the practice"),
    of(Measure::SyllablesS),
    of(Measure::PrescribedS),
    of(Measure::BeatS),
    ("ended-by", "Ended by", "What ended the repetition"),
    ("phrase", "Phrase", "The phrase that was read"),
    ("prompt", "Prompt", "What was to be talked about"),
    of(Measure::SyllableCount),
    of(Measure::SyllableIrregularityPct),
    of(Measure::ThinkingS),
    ("clue", "Clue", "The clue of the word question"),
    ("answer", "Answer", "The accepted answer that was heard"),
    ("hint-given", "Hint given", "The hint was given"),
    ("category", "Category", "The category of which members were to be named"),
    ("named", "Named", "The members that were heard"),
    of(Measure::F0MedianHz),
    of(Measure::F0SpanSt),
    of(Measure::F0SdSt),
    of(Measure::LevelDb),
    (
        "relative-level",
        "Mean level, relative",
        "Mean level re full scale by a microphone that is not calibrated: no sound pressure level, comparable only with the same microphone as it stood",
    ),
    of(Measure::LevelFallDb),
    of(Measure::LevelSlopeDbPerS),
    of(Measure::StepDb),
    of(Measure::StepSt),
    of(Measure::PhraseFinalSt),
    of(Measure::PhraseRateHz),
    ("level-weighting", "Frequency weighting", "Frequency weighting of the level, IEC 61672-1"),
    ("weighting-a", "A", "Frequency weighting A"),
    ("weighting-c", "C", "Frequency weighting C"),
    ("weighting-z", "Z", "No frequency weighting"),
    ("level-time-weighting", "Time weighting", "Time weighting or mean of the level"),
    ("microphone-distance", "Distance from the mouth", "Distance from the mouth for which the level holds"),
    ("level-calibration", "Calibration", "What gives the level its scale"),
    ("calibration-none", "Not calibrated", "The microphone is not calibrated: levels are relative"),
    ("calibration-void", "Calibration no longer valid", "The microphone's calibration no longer holds: levels are relative"),
    ("calibration-meter", "Calibrated by sound level meter", "Calibrated against a sound level meter"),
    ("calibration-source", "Calibrated by known source", "Calibrated against a source of known level"),
    ("calibration-rough", "Roughly calibrated", "Calibrated against a phone's number: rough"),
    ("clipped-time", "Time overloaded", "Time of the trial in which the microphone was overloaded"),
    of(Measure::MaskedS),
    of(Measure::Breaks),
    ("over-room", "Level over the room", "How far the trial stood over the noise of the room"),
    ("discarded-for", "Discarded for", "Why the trial does not count"),
    ("level-discarded-for", "Level discarded for", "Why the level of the trial does not count although the trial does"),
    ("discard-cut-off", "Cut off", "A command or the end of the practice cut the trial off"),
    ("discard-in-noise", "In noise", "The trial hardly stood out from the noise of the room"),
    ("discard-masked", "Masked", "The program's own voice lay over much of the trial"),
    ("discard-auto-gain", "Automatic gain", "The microphone changed its own volume: the level can be compared with no other"),
    ("discard-clipped", "Overloaded", "The microphone was overloaded: the true level is higher"),
    ("discard-misdated", "Misdated", "The clock of the computer was wrong: nobody knows when the trial was made"),
    ("set", "Set", "The set within the step, from 1"),
    ("repetition", "Repetition", "The repetition within the set, from 1"),
    of(Measure::CppsDb),
    of(Measure::JitterPct),
    of(Measure::JitterRapPct),
    of(Measure::JitterPpq5Pct),
    of(Measure::ShimmerPct),
    of(Measure::ShimmerDb),
    of(Measure::ShimmerApq3Pct),
    of(Measure::ShimmerApq11Pct),
    of(Measure::HnrDb),
    ("symptom-dizzy", "Dizzy", "The client reported to be dizzy"),
    ("symptom-pain", "Pain", "The client reported pain"),
    ("symptom-chest-pain", "Chest pain", "The client reported chest pain"),
    ("symptom-can-t-breathe", "Cannot breathe", "The client reported not to be able to breathe"),
    ("symptom-choking", "Choking", "The client reported that something went down the wrong way"),
    ("symptom-feels-sick", "Sick", "The client reported to feel sick"),
    ("symptom-help", "Help", "The client asked for help"),
    ("dose", "Dose", "How often and how long the exercise is to be done"),
];

/// The known codes.
#[cfg(test)]
pub(crate) fn known() -> Vec<&'static str> {
    KNOWN.iter().map(|(code, ..)| *code).collect()
}

/// The codes that an export uses: the known ones, and those of its exercises and reasons.
#[derive(Debug, Default)]
pub struct Codes {
    more: BTreeMap<String, (String, String)>,
}

impl Codes {
    /// One of the known codes as a CodeableConcept.
    pub fn own(&self, code: &str) -> Value {
        let display = KNOWN.iter().find(|(known, ..)| *known == code).map(|(_, display, _)| *display);
        debug_assert!(display.is_some(), "no code {code}");
        concept(SYSTEM, code, display.unwrap_or(code), None)
    }

    /// An exercise. `name` and `purpose` are the catalogue's words, where it knows the exercise.
    pub fn exercise(&mut self, id: &str, say: super::build::Say<'_>) -> Value {
        let code = format!("exercise-{}", slug(id));
        let known = find(id).is_some();
        let words =
            |part: &str, or: String| Some(say(&format!("ex-{id}-{part}"), &[])).filter(|text| known && !text.is_empty()).unwrap_or(or);
        let (display, definition) = (words("name", id.to_owned()), words("purpose", format!("The exercise {id}")));
        let entry = self.more.entry(code.clone()).or_insert((display, definition));
        concept(SYSTEM, &code, &entry.0, None)
    }

    /// Why something ended, was stopped or left out: the journal's words.
    pub fn reason(&mut self, reason: &str) -> Value {
        let code = format!("reason-{}", slug(reason));
        let display = reason.replace('-', " ");
        let entry = self
            .more
            .entry(code.clone())
            .or_insert_with(|| (display.clone(), format!("Why a practice or exercise ended or was left out: {display}")));
        concept(SYSTEM, &code, &entry.0, Some(reason))
    }

    /// What the client reported.
    pub fn symptom(&mut self, reason: &str) -> Value {
        let code = format!("symptom-{}", slug(reason));
        if KNOWN.iter().any(|(known, ..)| *known == code) {
            return self.own(&code);
        }
        let entry = self.more.entry(code.clone()).or_insert_with(|| (reason.to_owned(), format!("The client reported: {reason}")));
        concept(SYSTEM, &code, &entry.0, None)
    }

    /// The CodeSystem resource with all of them.
    pub fn resource(&self, id: &str) -> Value {
        let known = KNOWN.iter().map(|(code, display, definition)| json!({"code": code, "display": display, "definition": definition}));
        let more =
            self.more.iter().map(|(code, (display, definition))| json!({"code": code, "display": display, "definition": definition}));
        let concepts: Vec<Value> = known.chain(more).collect();
        json!({
            "resourceType": "CodeSystem",
            "id": id,
            "text": super::build::narrative("The codes of tidecount for exercises, measures and conditions."),
            "url": SYSTEM,
            "version": env!("CARGO_PKG_VERSION"),
            "name": "TidecountPractice",
            "title": "Codes of tidecount",
            "status": "active",
            "experimental": false,
            "publisher": "tidecount",
            "description": "Exercises, measures and conditions of practices of voice, breathing, swallowing and words, for which no standard terminology has codes.",
            "caseSensitive": true,
            "content": "complete",
            "count": concepts.len(),
            "concept": concepts,
        })
    }
}

/// Lower case letters, digits and hyphens, as a code may have; other signs by their number, so that no two become one.
fn slug(text: &str) -> String {
    let mut slug = String::new();
    for c in text.chars() {
        match c {
            'a'..='z' | '0'..='9' | '-' => slug.push(c),
            'A'..='Z' => slug.push(c.to_ascii_lowercase()),
            ' ' | '_' => slug.push('-'),
            other => slug.push_str(&format!("u{:x}", u32::from(other))),
        }
    }
    slug
}
