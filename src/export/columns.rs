//! The tables of the CSV export.

use super::goal::GOALS;
use super::table::Holds::{Boolean, Decimal, Integer, One, Text, Texts, Time, Uuid};
use super::table::{Column, Table};
use model::Measure;

const KINDS: &[&str] = &["hold", "posture", "round", "repetition", "phrase", "talk", "syllables", "question", "category"];
const SOURCES: &[&str] = &["live", "replay", "rehearsal"];
const DISCARDS: &[&str] = &["cut-off", "in-noise", "masked", "misdated"];
const LEVEL_DISCARDS: &[&str] = &["cut-off", "in-noise", "masked", "misdated", "auto-gain", "clipped"];
const CALIBRATIONS: &[&str] = &["none", "void", "meter", "source", "rough"];
const STEP_STATES: &[&str] = &["done", "stopped", "left-out", "not-reached"];
const EVENTS: &[&str] = &[
    "safety-stop",
    "trouble",
    "microphone",
    "calibration",
    "calibration-void",
    "room-loud",
    "room-quiet",
    "sound-lost",
    "recogniser-restarted",
    "loud-limit",
    "fall",
    "rest-offered",
    "rated",
    "swallow-sign",
    "moment-told",
    "days-missed",
    "no-answer",
    "agreement",
    "sound-consent",
    "resumed",
];

const CLIENT: Column = Column::required("client", Text, "Short name of the client");
const PRACTICE: Column = Column::required("practice", Uuid, "Identifier of the practice, the same at each export");
const NUMBER: Column = Column::required("practice_number", Integer, "Number of the practice in the record where it was led");
const SOURCE: Column =
    Column::required("source", One(SOURCES), "Where the sound came from: a person at a microphone, a recording, or a simulated client");
const EXERCISE: Column = Column::required("exercise", Text, "The exercise, its name in the catalogue");

/// One row a trial or repetition.
pub static TRIALS: Table = Table {
    name: "trials",
    meaning: "One row for each trial or repetition, also those that do not count, with the conditions under which it was measured",
    key: &["practice", "entry"],
    columns: &[
        CLIENT,
        PRACTICE,
        NUMBER,
        SOURCE,
        Column::required("entry", Integer, "Number of the journal entry within the practice"),
        Column::required("part", Integer, "Part of the practice, from 1; a practice that was interrupted and gone on with has several"),
        Column::new("step", Integer, "1", "Step of the routine, from 1"),
        Column::new("set", Integer, "1", "Set within the step, from 1"),
        Column::new("repetition", Integer, "1", "Repetition within the set, from 1"),
        EXERCISE,
        Column::required("kind", One(KINDS), "What kind of attempt it was"),
        Column::new(
            "started_at",
            Time,
            "",
            "Local time at which it began; empty for phrase, talk, syllables and question, of which only the end is kept",
        ),
        Column::required(
            "ended_at",
            Time,
            "Local time at which it ended; for phrase, talk, syllables and question: at which it was kept, after the pause that ended it",
        ),
        Column::new("onset_s", Decimal, "s", "Its beginning on the sample clock of its part"),
        Column::new("offset_s", Decimal, "s", "Its end on the sample clock of its part"),
        Column::new("duration_s", Decimal, "s", "Its duration; of a hold from voice onset to offset; of a question the time of thinking"),
        Column::of(Measure::PrescribedS),
        Column::required("complete", Boolean, "False where a command or the end of the practice cut it off"),
        Column::required("counts", Boolean, "False where the trial is discarded; discarded_for tells why"),
        Column::new(
            "discarded_for",
            One(DISCARDS),
            "",
            "Why the trial is discarded: cut off before its end, too little over the noise of the room, masked by the tool's own voice for more than a quarter, or dated by a clock that was wrong",
        ),
        Column::of(Measure::F0MedianHz),
        Column::of(Measure::F0SpanSt),
        Column::of(Measure::F0SdSt),
        Column::new(
            "level_mean_db_spl",
            Decimal,
            "dB[SPL]",
            "Mean level at level_distance_cm, where the microphone is calibrated; weightings in level_weighting and level_time_weighting",
        ),
        Column::new(
            "level_mean_db_fs",
            Decimal,
            "dB",
            "Mean level re full scale, where it is not calibrated: relative, comparable only with the same microphone as it stood",
        ),
        Column::of(Measure::LevelFallDb),
        Column::of(Measure::LevelSlopeDbPerS),
        Column::of(Measure::StepDb),
        Column::of(Measure::StepSt),
        Column::of(Measure::PhraseFinalSt),
        Column::of(Measure::PhraseRateHz),
        Column::new("level_weighting", One(&["A", "C", "Z"]), "", "Frequency weighting of the level (IEC 61672-1)"),
        Column::new(
            "level_time_weighting",
            Text,
            "",
            "Time weighting of the level; energy-mean: equivalent level over the voiced frames, without Fast or Slow",
        ),
        Column::new("level_distance_cm", Decimal, "cm", "Distance from the mouth for which the level holds; empty where nobody said"),
        Column::new(
            "level_calibration",
            One(CALIBRATIONS),
            "",
            "What gives the level its scale: nothing, a calibration that no longer holds, a sound level meter, a source of known level, or a phone's number (rough)",
        ),
        Column::new("level_clipped_s", Decimal, "s", "Time of the trial in which the microphone was overloaded"),
        Column::new(
            "level_auto_gain",
            Boolean,
            "",
            "The microphone changed its own volume: its level can be compared with nothing, and one in dB SPL is left out",
        ),
        Column::new(
            "level_discarded_for",
            One(LEVEL_DISCARDS),
            "",
            "Why the level counts in no result: as discarded_for, or the microphone changed its own volume, or was overloaded",
        ),
        Column::of(Measure::Breaks),
        Column::of(Measure::MaskedS),
        Column::new("over_room_db", Decimal, "dB", "How far it stood over the noise of the room, where that was too little"),
        Column::new("quality_from_s", Decimal, "s", "Beginning of the stretch whose voice quality was measured, on the sample clock"),
        Column::new("quality_to_s", Decimal, "s", "End of that stretch"),
        Column::of(Measure::CppsDb),
        Column::of(Measure::JitterPct),
        Column::of(Measure::JitterRapPct),
        Column::of(Measure::JitterPpq5Pct),
        Column::of(Measure::ShimmerPct),
        Column::of(Measure::ShimmerDb),
        Column::of(Measure::ShimmerApq3Pct),
        Column::of(Measure::ShimmerApq11Pct),
        Column::of(Measure::HnrDb),
        Column::of(Measure::BeatS),
        Column::new("ended_by", One(&["done", "next cue"]), "", "What ended a self-paced repetition: the client's word or the next cue"),
        Column::new("phrase", Text, "", "The phrase that was read"),
        Column::new("prompt", Text, "", "What was to be talked about"),
        Column::of(Measure::SpeakingS),
        Column::of(Measure::Pauses),
        Column::of(Measure::PauseSharePct),
        Column::of(Measure::SyllableCount),
        Column::of(Measure::SyllableRateHz),
        Column::of(Measure::SyllableIrregularityPct),
        Column::new("clue", Text, "", "The clue of a word question"),
        Column::new("answer", Text, "", "The accepted answer that was heard; empty where none was"),
        Column::new("correct", Boolean, "", "An accepted answer was heard"),
        Column::new("hint_given", Boolean, "", "The hint was given"),
        Column::new("category", Text, "", "The category of which members were to be named"),
        Column::new("named", Texts, "", "Members of it that were heard, each once, in order"),
        Column::of(Measure::NamedCount),
        Column::new(
            "microphone_name",
            Text,
            "",
            "The microphone, as the sound system names it; empty for recordings and in practices before it was kept",
        ),
        Column::new("microphone_system", Text, "", "The sound system"),
        Column::new("microphone_rate_hz", Integer, "Hz", "Samples a second"),
        Column::new("microphone_gain", Text, "", "Its gain, as the sound system tells it"),
        Column::new("calibration_note", Text, "", "Its calibration in words, or why it no longer holds"),
    ],
};

/// One row a prescribed step.
pub static STEPS: Table = Table {
    name: "steps",
    meaning: "One row for each prescribed step of each practice: done, stopped, left out or not reached, and why",
    key: &["practice", "step", "exercise"],
    columns: &[
        CLIENT,
        PRACTICE,
        NUMBER,
        SOURCE,
        Column::new("step", Integer, "1", "Step of the routine, from 1; empty where its place is not known"),
        EXERCISE,
        Column::required("status", One(STEP_STATES), "What became of it"),
        Column::new("reason", Text, "", "Why it was stopped, left out or not reached"),
        Column::new("repetitions_done", Integer, "1", "Repetitions that were done, over all sets"),
        Column::new("repetitions_prescribed", Integer, "1", "Repetitions that were prescribed, over all sets"),
        Column::new("ramp_stage", Integer, "1", "Stage of a dose that grows over the weeks, from 1"),
        Column::new("started_at", Time, "", "Local time at which it was begun"),
        Column::new("ended_at", Time, "", "Local time at which it was done or stopped"),
        Column::new(
            "best_of_three_s",
            Decimal,
            "s",
            "The longest of its first three holds that count, but for glides; all of them stand in trials",
        ),
    ],
};

/// One row a practice.
pub static PRACTICES: Table = Table {
    name: "practices",
    meaning: "One row for each practice, also those without any trial",
    key: &["practice"],
    columns: &[
        CLIENT,
        PRACTICE,
        NUMBER,
        SOURCE,
        Column::required("misdated", Boolean, "True where the clock was wrong: nobody knows when it was"),
        Column::required("received", Boolean, "True where it was led on another computer and came from there"),
        Column::required("routine", Text, "Title of the routine"),
        Column::required("started_at", Time, "Local time at which it began"),
        Column::new("ended_at", Time, "", "Local time at which it ended; empty where it was interrupted"),
        Column::new("time_zone", Text, "", "Time zone of the computer, IANA name"),
        Column::required("end_reason", Text, "Why it ended; interrupted where nobody ended it"),
        Column::required("duration_s", Decimal, "Time practised, s, all parts together"),
        Column::required("parts", Integer, "Parts; more than one where it was interrupted and gone on with"),
        Column::required("steps_done", Integer, "Steps done whole"),
        Column::new("steps_prescribed", Integer, "1", "Steps of the routine; empty where the routine can no longer be read"),
        Column::required("trials", Integer, "Trials and repetitions, also those that do not count"),
        Column::required("trials_discarded", Integer, "Those among them that do not count"),
        Column::required("safety_stops", Integer, "Times the client said that something was wrong"),
        Column::required("software", Text, "Name and version of the program that led it"),
    ],
};

/// One row a thing that bore on a practice or its figures.
pub static EVENTS_TABLE: Table = Table {
    name: "events",
    meaning: "One row for each thing that bore on a practice or its figures: what the client reported, and troubles of room, microphone and computer",
    key: &["practice", "entry"],
    columns: &[
        CLIENT,
        PRACTICE,
        NUMBER,
        SOURCE,
        Column::required("entry", Integer, "Number of the journal entry within the practice"),
        Column::required("part", Integer, "Part of the practice, from 1"),
        Column::required("at", Time, "Local time"),
        Column::required("at_s", Decimal, "The same on the sample clock of the part, s"),
        Column::required("event", One(EVENTS), "What happened"),
        Column::new("exercise", Text, "", "The exercise under way, where the entry names it"),
        Column::new("what", Text, "", "Which: the symptom, the trouble, the note, what fell, the answer"),
        Column::new("value", Decimal, "", "Its figure, in the unit of the column unit"),
        Column::new("unit", One(&["s", "dB", "1", "d"]), "", "Unit of value, UCUM"),
    ],
};

/// Every table, the one of the trials first.
pub static TABLES: [&Table; 5] = [&TRIALS, &STEPS, &PRACTICES, &EVENTS_TABLE, &GOALS];
