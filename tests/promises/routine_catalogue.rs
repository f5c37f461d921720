//! Promise: the catalogue says what its sources say, in words that trigger nothing; the demo routines are sound; the
//! published schema is the one the program reads by.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use files::routine_files::load_routine;
use fluent_bundle::{FluentBundle, FluentResource};
use routine::{DoseStatus, Hearing, Prescription, Range, Timing, Work, catalogue, check_text, find, schema};
use tidecount::exercises;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn read(path: &str) -> String {
    std::fs::read_to_string(root().join(path)).unwrap_or_else(|error| panic!("{path}: {error}"))
}

fn words() -> FluentBundle<FluentResource> {
    let resource = FluentResource::try_new(read("src/speak/words/en/exercises.ftl")).map_err(|(_, errors)| errors).expect("exercises.ftl");
    let mut bundle = FluentBundle::new(vec!["en".parse().expect("language")]);
    bundle.add_resource(resource).expect("no message twice");
    bundle
}

fn message(words: &FluentBundle<FluentResource>, key: &str) -> Option<String> {
    let pattern = words.get_message(key)?.value()?;
    let mut errors = Vec::new();
    let text = words.format_pattern(pattern, None, &mut errors).into_owned();
    errors.is_empty().then_some(text)
}

/// A few wordings that must never be missing, and those in use, "cmd-stop = stop | stop now".
fn commands() -> Vec<(String, Vec<String>)> {
    let of = |tag: &str, wordings: &[&str]| (tag.to_owned(), wordings.iter().map(|wording| wording.trim().to_owned()).collect());
    let mut all = vec![
        of("stop", &["stop"]),
        of("pause", &["pause", "wait please", "wait a moment"]),
        of("again", &["again", "once more"]),
        of("skip", &["skip", "next"]),
        of("help", &["help"]),
        of("done", &["done"]),
        of("ready", &["ready"]),
        of("rest", &["rest"]),
        of("finish", &["finish", "enough for today"]),
    ];
    let in_use = std::fs::read_to_string(root().join("src/speak/words/en/commands.ftl")).unwrap_or_default();
    for line in in_use.lines() {
        if let Some((tag, wordings)) = line.strip_prefix("cmd-").and_then(|line| line.split_once('=')) {
            all.push(of(tag.trim(), &wordings.split('|').collect::<Vec<_>>()));
        }
    }
    all
}

fn lexicon() -> BTreeSet<String> {
    read("models/en/graph/words.txt").lines().filter_map(|line| line.split(' ').next()).map(str::to_owned).collect()
}

fn demo(name: &str) -> Prescription {
    let (commands, lexicon) = (commands(), lexicon());
    let knows = |word: &str| lexicon.contains(word);
    let hearing = Hearing { commands: &commands, knows_word: Some(&knows), ..Hearing::default() };
    load_routine(&root().join("demo").join(name), hearing).unwrap_or_else(|faults| panic!("{faults}"))
}

/// One step, without its title.
fn duration_s(step: &str) -> f64 {
    let text = format!("title = \"x\"\n[[step]]\n{step}");
    let checked = check_text("x", &text, Hearing { commands: &[], knows_word: None, ..Hearing::default() })
        .unwrap_or_else(|faults| panic!("{faults}"));
    checked.routine.steps[0].planned_duration_s()
}

/// Source: `tests/checks/doses.tsv`.
#[test]
fn usual_doses_are_those_of_the_table_of_sources() {
    let table = read("tests/checks/doses.tsv");
    let mut rows = table.lines().filter(|line| !line.starts_with('#')).map(|line| line.split('\t').collect::<Vec<_>>());
    let header = rows.next().expect("header");
    let mut compared = 0;
    for row in rows {
        let cell: BTreeMap<_, _> = header.iter().copied().zip(row.iter().copied()).collect();
        assert_eq!(cell.len(), 9, "{row:?}");
        let entry = find(cell["exercise"]).unwrap_or_else(|| panic!("{row:?}"));
        let doses = entry.usual_doses.iter().filter(|dose| dose.source.contains(cell["source"]));
        let same = doses.filter(|dose| {
            let numbers = [
                ("repetitions", dose.repetitions),
                ("hold_s", dose.hold_s),
                ("rest_s", dose.rest_s),
                ("sets_per_day", dose.sets_per_day),
                ("days_per_week", dose.days_per_week),
                ("weeks", dose.weeks),
            ];
            numbers.iter().all(|(column, value)| as_cell(*value) == cell[column]) && status(dose.status) == cell["status"]
        });
        assert_eq!(same.count(), 1, "{row:?}: {:#?}", entry.usual_doses);
        compared += 1;
    }
    assert!(compared >= 40, "{compared}");
}

fn as_cell(value: Option<Range>) -> String {
    match value {
        None => "-".to_owned(),
        Some(Range::One(value)) => value.to_string(),
        Some(Range::FromTo([from, to])) => format!("{from}..{to}"),
    }
}

fn status(status: DoseStatus) -> &'static str {
    match status {
        DoseStatus::Seen => "seen",
        DoseStatus::SeenSecondHand => "seen-2nd",
        DoseStatus::FromMemory => "memory",
        DoseStatus::CommonPractice => "common practice, no source",
    }
}

/// The list of the issue that asked for the catalogue: what it must at least hold.
#[test]
fn the_catalogue_holds_what_was_asked_for() {
    let asked = [
        "long-ah",
        "comfortable-ah",
        "reading-passage",
        "talk-on-a-prompt",
        "loudness-steps",
        "pitch-steps",
        "sentence-melody",
        "sentence-stress",
        "paced-phrases",
        "tongue-against-spoon",
        "lips-around-spoon",
        "breath-out-resistance",
        "voluntary-cough",
        "high-ee",
        "glide-up",
        "glide-down",
        "functional-phrases",
        "easy-hum",
        "straw-voicing",
        "tongue-hold-swallow",
        "mid-swallow-hold",
        "effortful-swallow",
        "head-lift-sustained",
        "head-lift-repeated",
        "chin-tuck-ball",
        "chin-tuck-ball-repeated",
        "lip-press-smile",
        "cheek-puff",
        "tongue-press",
        "tongue-side-to-side",
        "tongue-reach",
        "jaw-opening",
        "nasal-breathing",
        "neck-turns",
        "neck-tilts",
        "shoulder-rolls",
        "syllable-repetition",
        "word-questions",
        "rest",
    ];
    for id in asked {
        assert!(find(id).is_some(), "{id}");
    }
    let timings: BTreeSet<Timing> = catalogue().iter().map(|entry| entry.timing).collect();
    assert_eq!(timings.len(), 9, "every way of timing has an exercise");
}

/// Check values computed by hand from the published doses: 3 × 60 s head lift with 60 s rest between (Shaker 1997, from
/// memory); 5 × 10 s with 10 s rest (Wada et al. 2012, seen); in 4 out 6 is 6 breaths a minute.
#[test]
fn planned_durations_of_published_doses() {
    let head_lift = "exercise = \"head-lift-sustained\"\ncautions_acknowledged = true\nrepetitions = 3\nrest_s = 60\nphases = [{ name = \"lift\", length_s = 60 }]";
    assert_eq!(duration_s(head_lift), 300.0);
    assert_eq!(duration_s("exercise = \"jaw-opening\"\ncautions_acknowledged = true"), 90.0);
    assert_eq!(duration_s("exercise = \"tongue-press\"\ncautions_acknowledged = true"), 90.0);
    assert_eq!(duration_s("exercise = \"nasal-breathing\"\nin = 4\nout = 6\nrepetitions = 10"), 100.0);
    assert_eq!(duration_s("exercise = \"rest\"\nlength_s = 30"), 30.0);
    // Two sets of the jaw opening with 60 s between: 90 + 60 + 90.
    assert_eq!(duration_s("exercise = \"jaw-opening\"\ncautions_acknowledged = true\nsets = 2\nset_rest_s = 60"), 240.0);
}

/// The smallest published numbers: in 2, out 4 (public health leaflets, seen); lips closed for 10 s (Hägg & Anniko 2008, seen). What
/// everyday practice does, in 3 and out 8, lips for 60 s, stays within the limits.
#[test]
fn defaults_follow_the_source_with_the_smaller_numbers() {
    let of = |lips: &str, breathing: &str| {
        let text = format!(
            "title = \"x\"\n[[step]]\nexercise = \"nasal-breathing\"\n{breathing}\n[[step]]\nexercise = \"lip-press-smile\"\n{lips}"
        );
        let checked = check_text("x", &text, Hearing { commands: &[], knows_word: None, ..Hearing::default() });
        let steps = checked.unwrap_or_else(|faults| panic!("{faults}")).routine.steps;
        let [breathing, lips] = &steps[..] else { panic!("two steps") };
        let (Work::Paced { phases: breath, beat_s }, Work::Timed { phases, .. }) = (&breathing.work, &lips.work) else {
            panic!("{steps:?}")
        };
        assert_eq!(phases.last().map(|phase| phase.name.as_str()), Some("smile"));
        ((breath[0].counts, breath[1].counts, *beat_s), (phases[0].length_s + phases[1].length_s))
    };
    assert_eq!(of("", ""), ((2, 4, 1.0), 10.0));
    let everyday =
        "phases = [{ name = \"press\", length_s = 50 }, { name = \"tighter\", length_s = 10 }, { name = \"smile\", length_s = 3 }]";
    assert_eq!(of(&format!("rest_s = 20\n{everyday}"), "in = 3\nout = 8"), ((3, 8, 1.0), 60.0));
}

#[test]
fn every_exercise_has_all_its_words() {
    let words = words();
    let mut needed = vec!["paced-in".to_owned(), "paced-out".to_owned()];
    for entry in catalogue() {
        needed.extend(["name", "purpose", "instruction", "short", "cue"].map(|part| format!("ex-{}-{part}", entry.id)));
        needed.extend(entry.phase_names().map(|name| format!("ex-{}-phase-{name}", entry.id)));
        let rungs = ["low", "middle", "high"].into_iter().filter(|_| entry.climbs.is_some());
        needed.extend(rungs.map(|rung| format!("ex-{}-rung-{rung}", entry.id)));
        if entry.postures.len() > 1 {
            needed.extend([format!("ex-{}-standing", entry.id), "caution-stand-safely".to_owned()]);
        }
        needed.extend(entry.needs_agreement.then(|| format!("ex-{}-before", entry.id)));
        needed.extend(entry.has_care().then(|| format!("ex-{}-care", entry.id)));
        needed.extend(entry.cautions.iter().map(|key| format!("caution-{key}")));
        needed.extend(entry.not_for.iter().map(|key| format!("notfor-{key}")));
    }
    for key in &needed {
        assert!(message(&words, key).is_some_and(|text| !text.trim().is_empty()), "{key}");
    }
    // And none that nobody uses.
    let needed: BTreeSet<_> = needed.iter().map(String::as_str).collect();
    let text = read("src/speak/words/en/exercises.ftl");
    for key in text.lines().filter(|line| !line.starts_with('#')).filter_map(|line| line.split_once(" = ")).map(|(key, _)| key) {
        assert!(needed.contains(key), "{key} is used by no exercise");
    }
}

/// "stop" and "pause" are listened for while the tool talks; the others soon after. "rest" is the name of an exercise.
#[test]
fn no_word_of_an_exercise_sounds_like_a_command() {
    const COMMANDS: [&str; 24] = [
        "stop",
        "pause",
        "wait",
        "halt",
        "ready",
        "done",
        "yes",
        "no",
        "again",
        "once more",
        "skip",
        "next",
        "help",
        "slower",
        "faster",
        "louder",
        "softer",
        "go on",
        "go back",
        "continue",
        "finish",
        "dizzy",
        "hurts",
        "how long",
    ];
    let live = commands().into_iter().filter(|(tag, _)| tag == "stop" || tag == "pause").flat_map(|(_, wordings)| wordings);
    let commands: Vec<String> = COMMANDS.iter().map(|&command| command.to_owned()).chain(live).collect();
    let text = read("src/speak/words/en/exercises.ftl");
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        let Some((key, said)) = line.split_once(" = ") else { continue };
        let said: String = said.to_lowercase().chars().map(|c| if c.is_alphanumeric() { c } else { ' ' }).collect();
        let said = format!(" {} ", said.split_whitespace().collect::<Vec<_>>().join(" "));
        for command in &commands {
            assert!(!said.contains(&format!(" {command} ")), "{key} holds \"{command}\"");
        }
    }
}

/// What can harm is behind a clinician's agreement and carries the cautions the safety notes name for it.
#[test]
fn risky_exercises_carry_their_cautions() {
    const LIFT: &[&str] = &[
        "neck-unstable",
        "tracheostomy",
        "head-pressure",
        "flat-lying",
        "eye-pressure",
        "fragile-bones",
        "late-pregnancy",
        "hernia",
        "belly-recent",
        "floor-unsafe",
    ];
    const BALL: &[&str] = &["neck-unstable", "jaw-joint", "tracheostomy", "neck-bones"];
    const NECK: &[&str] =
        &["neck-unstable", "neck-bones", "neck-arteries", "recent-stroke", "neck-dystonia", "neck-implant", "tracheostomy"];
    const BREATH: &[&str] = &["heart-rhythm", "breathless", "recent-stroke", "blood-pressure"];
    let guarded: [(&str, &[&str], &[&str]); 14] = [
        ("breath-out-resistance", &["set-by-clinician", "static-effort", "light-headed"], &["lung-disease", "blood-pressure", "hernia"]),
        ("voluntary-cough", &["set-by-clinician", "clear-mouth"], &["recent-stroke", "hernia", "fragile-bones", "pressure-recent"]),
        ("tongue-against-spoon", &["keep-breathing", "static-effort"], &["mouth-recent"]),
        ("tongue-hold-swallow", &["swallow-assessed", "saliva-only", "gentle-bite"], &["poor-clearing"]),
        ("mid-swallow-hold", &["swallow-assessed", "breath-break-heart", "clear-mouth"], BREATH),
        ("effortful-swallow", &["swallow-assessed", "breath-break-heart", "clear-mouth"], BREATH),
        ("head-lift-sustained", &["keep-breathing", "lie-flat", "static-effort", "rise-slowly"], LIFT),
        ("head-lift-repeated", &["keep-breathing", "lie-flat", "static-effort", "rise-slowly"], LIFT),
        ("neck-turns", &["neck-signs", "neck-range"], NECK),
        ("neck-tilts", &["neck-signs", "neck-range"], NECK),
        ("chin-tuck-ball", &["keep-breathing", "jaw-pain", "static-effort"], BALL),
        ("chin-tuck-ball-repeated", &["keep-breathing", "jaw-pain"], BALL),
        ("jaw-opening", &["jaw-pain", "static-effort", "dentures"], &["jaw-joint"]),
        ("tongue-press", &["keep-breathing", "static-effort"], &["mouth-recent"]),
    ];
    let free: [(&str, &[&str], &[&str]); 8] = [
        ("long-ah", &["light-headed", "bearing-down"], &["voice-acute"]),
        ("high-ee", &["light-headed", "voice-no-force"], &["voice-acute"]),
        ("glide-up", &["light-headed", "voice-no-force"], &["voice-acute"]),
        ("glide-down", &["light-headed", "voice-no-force"], &["voice-acute"]),
        ("syllable-repetition", &["light-headed"], &[]),
        ("cheek-puff", &["breathe-through-nose"], &["face-recent", "face-palsy", "pressure-recent"]),
        ("lip-press-smile", &["breathe-through-nose"], &["face-recent", "face-palsy"]),
        ("nasal-breathing", &["light-headed", "no-forcing"], &["breathing-illness", "lung-disease"]),
    ];
    assert_eq!(guarded.len(), catalogue().iter().filter(|entry| entry.needs_agreement).count());
    for (needs_agreement, (id, cautions, not_for)) in guarded.map(|one| (true, one)).into_iter().chain(free.map(|one| (false, one))) {
        let entry = find(id).unwrap_or_else(|| panic!("{id}"));
        assert_eq!(entry.needs_agreement, needs_agreement, "{id}");
        for key in cautions {
            assert!(entry.cautions.iter().any(|have| have == key), "{id}: {key}");
        }
        for key in not_for {
            assert!(entry.not_for.iter().any(|have| have == key), "{id}: {key}");
        }
    }
}

/// What is said before the first practice can be taken in by ear, names its exercise, and has a plain word for each exclusion.
#[test]
fn what_is_said_before_the_first_practice_covers_every_exclusion_briefly() {
    // For each exclusion a word that a listener knows it by.
    let plain = BTreeMap::from([
        ("mouth-recent", "mouth"),
        ("breathing-illness", "lung"),
        ("lung-disease", "lung"),
        ("pressure-recent", "teeth"),
        ("voice-acute", "throat infection"),
        ("jaw-joint", "jaw"),
        ("neck-unstable", "neck"),
        ("neck-bones", "neck bones"),
        ("neck-arteries", "neck arteries"),
        ("neck-dystonia", "twisting"),
        ("neck-implant", "implant's wire"),
        ("tracheostomy", "opening in"),
        ("head-pressure", "head"),
        ("eye-pressure", "eyes"),
        ("flat-lying", "lie flat"),
        ("fragile-bones", "fragile bones"),
        ("late-pregnancy", "pregnancy"),
        ("hernia", "hernia"),
        ("belly-recent", "belly"),
        ("floor-unsafe", "get up safely"),
        ("heart-rhythm", "irregular heartbeat"),
        ("breathless", "shortness of breath"),
        ("recent-stroke", "recent stroke"),
        ("blood-pressure", "high blood pressure"),
        ("poor-clearing", "throat doesn't clear"),
    ]);
    let words = words();
    for entry in catalogue().iter().filter(|entry| entry.needs_agreement) {
        let of = |part: &str| message(&words, &format!("ex-{}-{part}", entry.id)).unwrap_or_else(|| panic!("{}: {part}", entry.id));
        let (name, before) = (of("name"), of("before"));
        assert!(before.starts_with(&format!("{name}. ")), "{before}");
        assert!(before.split_whitespace().count() <= 45, "{before}");
        assert!(before.contains("Don't do"), "{before}");
        for key in &entry.not_for {
            assert!(before.contains(plain[key.as_str()]), "{}: {key}: {before}", entry.id);
        }
        let asks_first = entry.cautions.iter().any(|key| key == "static-effort");
        assert!(!asks_first || before.contains("blood pressure"), "{before}");
    }
}

/// What matters each time is one short sentence.
#[test]
fn what_is_said_every_time_is_one_short_sentence() {
    let words = words();
    let mut seen = 0;
    for entry in catalogue().iter().filter(|entry| entry.has_care()) {
        let care = message(&words, &format!("ex-{}-care", entry.id)).unwrap_or_else(|| panic!("{}", entry.id));
        assert!(care.split_whitespace().count() <= 14, "{care}");
        assert_eq!(care.matches(['.', '!', '?', ';']).count(), 1, "{care}");
        seen += 1;
    }
    assert!(seen > 15, "{seen}");
}

/// "Stop it" has been heard in these through the loudspeaker.
#[test]
fn nothing_said_sounds_like_stop_it() {
    let text = read("src/speak/words/en/exercises.ftl").to_lowercase();
    for near in ["set it", "until it", "stop it", "till it", "top it"] {
        for line in text.lines().filter(|line| !line.starts_with('#')) {
            assert!(!line.contains(near), "{line}");
        }
    }
}

/// The demos have an order of their own: none goes from the long vowel over glides to own phrases.
#[test]
fn the_demos_have_an_order_of_their_own() {
    let folders = ["demo", "demo/week"].map(|folder| std::fs::read_dir(root().join(folder)).expect("a folder"));
    let mut seen = 0;
    for path in folders.into_iter().flatten().map(|file| file.expect("a file").path()) {
        let Some(text) = path.extension().filter(|ext| *ext == "toml").and_then(|_| std::fs::read_to_string(&path).ok()) else { continue };
        let table: toml::Table = text.parse().expect("TOML");
        let steps = table.get("step").and_then(toml::Value::as_array).map_or(&[][..], Vec::as_slice);
        let ids: Vec<&str> = steps.iter().filter_map(|step| step.get("exercise")?.as_str()).collect();
        seen += usize::from(!ids.is_empty());
        let mut rest = ids.iter();
        let in_order = ["long-ah", "glide", "functional-phrases"].iter().all(|part| rest.any(|id| id.starts_with(part)));
        assert!(!in_order, "{}: {ids:?}", path.display());
    }
    assert!(seen >= 7, "{seen}");
}

/// Purposes tell what is hoped for, not what happens.
#[test]
fn purposes_say_what_an_exercise_is_meant_to_do() {
    let words = words();
    for entry in catalogue() {
        let purpose = message(&words, &format!("ex-{}-purpose", entry.id)).expect("a purpose");
        assert!(purpose.starts_with("It's meant to "), "{}: {purpose}", entry.id);
    }
}

/// One focus at a time: what asks for a strong voice does not ask for an easy one as well.
#[test]
fn no_instruction_asks_for_strong_and_easy_at_once() {
    let words = words();
    // A ladder has one step after the other, never two at once.
    for entry in catalogue().iter().filter(|entry| entry.climbs.is_none()) {
        for part in ["instruction", "short", "cue"] {
            let said = message(&words, &format!("ex-{}-{part}", entry.id)).expect("words").to_lowercase();
            let holds = |parts: &[&str]| parts.iter().any(|part| said.contains(part));
            assert!(!holds(&["big voice", "full voice"]), "{said}");
            assert!(!(holds(&["strong", "loud"]) && holds(&["easy", "comfortable", "gentle", "soft", "light"])), "{said}");
        }
    }
}

#[test]
fn demo_routines_are_sound() {
    let evening = demo("evening.toml").routine;
    let minutes = evening.planned_duration_s() / 60.0;
    assert!((8.0..12.0).contains(&minutes), "about ten minutes: {minutes}");
    let timings: BTreeSet<Timing> = evening.steps.iter().map(|step| step.exercise.timing).collect();
    assert_eq!(timings.len(), 8, "every way of timing once");
    let short = demo("voice-short.toml").routine.planned_duration_s() / 60.0;
    assert!((1.0..2.5).contains(&short), "about two minutes: {short}");
    demo("swallow.toml");
    demo("stretch.toml");
}

/// The demo's accepted answers can be heard by the model that comes with the program.
#[test]
fn answers_of_the_demo_are_in_the_models_lexicon() {
    let lexicon = lexicon();
    let evening = demo("evening.toml").routine;
    let items: Vec<_> = evening
        .steps
        .iter()
        .filter_map(|step| if let Work::Question { items, .. } = &step.work { Some(items) } else { None })
        .flatten()
        .collect();
    assert!(items.len() >= 3);
    for word in items.iter().flat_map(|item| &item.answers).flat_map(|answer| answer.split(' ')) {
        assert!(lexicon.contains(word), "{word}");
    }
}

#[test]
fn the_published_schema_is_the_programs() {
    let stored: serde_json::Value = serde_json::from_str(&read("docs/routine.schema.json")).expect("JSON");
    assert!(stored == schema(), "write it anew: tidecount routine schema > docs/routine.schema.json");
}

/// Judged by an independent validator, not by our reader.
#[test]
fn the_schema_takes_sound_routines_and_refuses_faulty_ones() {
    let schema = schema();
    assert!(jsonschema::meta::is_valid(&schema));
    let validator = jsonschema::validator_for(&schema).expect("a schema");
    let json =
        |text: &str| -> serde_json::Value { serde_json::to_value(toml::from_str::<toml::Table>(text).expect("TOML")).expect("JSON") };
    let mut demos: Vec<PathBuf> =
        std::fs::read_dir(root().join("demo")).expect("demo").filter_map(|file| Some(file.ok()?.path())).collect();
    // `client.toml` is the simulated client's script, no routine.
    demos.retain(|path| {
        path.extension().is_some_and(|extension| extension == "toml") && !path.ends_with("client.toml") && !path.ends_with("household.toml")
    });
    assert!(demos.len() >= 4);
    for path in demos {
        let value = json(&std::fs::read_to_string(&path).expect("text"));
        let errors: Vec<_> = validator.iter_errors(&value).map(|error| error.to_string()).collect();
        assert!(errors.is_empty(), "{}: {errors:?}", path.display());
    }
    let step = |lines: &str| format!("title = \"x\"\n[[step]]\n{lines}\n");
    let bad = [
        "title = \"x\"\n".to_owned(),
        "title = \"x\"\nstep = []\n".to_owned(),
        "[[step]]\nexercise = \"rest\"\n".to_owned(),
        step("sets = 1"),
        step("exercise = \"yodel\""),
        step("exercise = \"long-ah\"\nrepetition = 3"),
        step("exercise = \"long-ah\"\nrepetitions = \"three\""),
        step("exercise = \"long-ah\"\nrepetitions = 0"),
        step("exercise = \"long-ah\"\nbeat_s = 1"),
        step("exercise = \"head-lift-sustained\""),
        step("exercise = \"head-lift-sustained\"\ncautions_acknowledged = false"),
        step("exercise = \"head-lift-sustained\"\ncautions_acknowledged = true\nrepetitions = 6"),
        step("exercise = \"cheek-puff\"\nphases = [{ name = \"puff\", length_s = 21 }]"),
        step("exercise = \"cheek-puff\"\nphases = [{ name = \"huff\", length_s = 5 }]"),
        step("exercise = \"functional-phrases\""),
        step("exercise = \"mid-swallow-hold\"\ncautions_acknowledged = true\nsip_every = 2"),
        step("exercise = \"tongue-hold-swallow\"\ncautions_acknowledged = true\nsip_every = 2\nsips_enabled_by_clinician = true"),
    ];
    for text in bad {
        assert!(!validator.is_valid(&json(&text)), "{text}");
        assert!(check_text("x", &text, Hearing { commands: &[], knows_word: None, ..Hearing::default() }).is_err(), "{text}");
    }
    assert!(!validator.is_valid(&json(&read("tests/routines/bad.toml"))));
}

#[test]
fn an_exercise_is_shown_whole() {
    let words = words();
    let show = |id: Option<&str>| {
        let mut out = Vec::new();
        let found = exercises::show(id, &|key| message(&words, key), &mut out).expect("written");
        (found, String::from_utf8(out).expect("text"))
    };
    let (found, all) = show(None);
    assert!(found && all.lines().count() == catalogue().len(), "{all}");
    let (found, one) = show(Some("jaw-opening"));
    for part in [
        "Said once    Jaw opening. Don't do it",
        "Every time   Keep breathing",
        "People with jaw joint trouble, or whose jaw has been dislocated.\n    a therapy page on jaw opening [seen at second hand]",
        "Jaw opening",
        "5 × 10 s",
        "Wada et al. 2012",
        "[seen]",
        "phases = open 10 s    each 1 to 15: 10 s in the published set",
        "End the exercise at once if your jaw",
        "People with jaw joint trouble",
        "agreed",
    ] {
        assert!(one.contains(part), "{part}: {one}");
    }
    assert!(found);
    assert!(!show(Some("yodel")).0);
}
