use crate::{Draft, DraftRamp, DraftStep, FaultKind, Hearing, catalogue, check_text, ramp_template, templates};

fn faults(text: &str) -> Vec<(FaultKind, usize, String)> {
    let checked = check_text("x", text, Hearing::default());
    checked.err().map_or(Vec::new(), |faults| {
        faults.list.iter().map(|fault| (fault.kind, fault.line, format!("{}. {}", fault.what, fault.remedy))).collect()
    })
}

fn refused(text: &str) -> bool {
    faults(text).iter().any(|(kind, ..)| *kind == FaultKind::PastLimit)
}

fn needs_word(text: &str) -> bool {
    let found = faults(text);
    found.iter().any(|(kind, ..)| *kind == FaultKind::NeedsClinicianWord)
        && found.iter().all(|(kind, ..)| *kind == FaultKind::NeedsClinicianWord)
}

fn routine(steps: &[&str]) -> String {
    steps.iter().fold("title = \"x\"\n".to_owned(), |text, step| format!("{text}[[step]]\n{step}\n"))
}

const AGREED: &str = "cautions_acknowledged = true\n";
const WORD: &str = "clinician_word = { who = \"the speech therapist\", why = \"as in the clinic\" }\n";

/// The examples that were found: what each asks for was computed by hand.
#[test]
fn the_doses_that_were_called_well_are_refused() {
    let breathing = "exercise = \"nasal-breathing\"\nrepetitions = 30\nin = 8\nout = 15\nbeat_s = 3";
    let lifts = format!(
        "exercise = \"head-lift-sustained\"\n{AGREED}sets = 10\nrepetitions = 5\nrest_s = 0\nset_rest_s = 0\nphases = [{{ name = \"lift\", length_s = 60 }}]"
    );
    let repeated = format!("exercise = \"head-lift-repeated\"\n{AGREED}sets = 10\nrepetitions = 30");
    let swallows = format!("exercise = \"mid-swallow-hold\"\n{AGREED}sets = 10\nrepetitions = 20\nrest_s = 0\nset_rest_s = 0");
    for step in [breathing, &lifts, &repeated, &swallows] {
        assert!(refused(&routine(&[step])), "{step}");
        // A clinician's word lifts none of it.
        assert!(refused(&format!("{WORD}{}", routine(&[&format!("{WORD}{step}")]))), "{step}");
    }
    let found = faults(&routine(&[breathing]));
    let told = |part: &str, line: usize| found.iter().any(|(_, at, what)| what.contains(part) && *at == line);
    assert!(told("a breath in of `nasal-breathing` takes 24 s (8 counts of 3 s), more than 6 s", 5), "{found:#?}");
    assert!(told("a breath out of `nasal-breathing` takes 45 s (15 counts of 3 s), more than 12 s", 6), "{found:#?}");
    assert!(told("adds up to 2070 s in one practice", 4), "{found:#?}");
    let found = faults(&routine(&[&lifts]));
    assert!(found.iter().any(|(_, _, what)| what.contains("3000 s in one practice, more than 300")), "{found:#?}");
    assert!(
        found
            .iter()
            .any(|(_, line, what)| what.contains("is 0 s, less than 0.5 times the hold. Give `rest_s` and `set_rest_s` of 60 or more")
                && *line == 7),
        "{found:#?}"
    );
    let found = faults(&routine(&[&swallows]));
    assert!(found.iter().any(|(_, _, what)| what.contains("more than 10 in a row without a rest of 60 s")), "{found:#?}");
    let all = routine(&[
        breathing,
        &lifts,
        &repeated,
        &swallows,
        &"exercise = \"rest\"\nlength_s = 600\n[[step]]\n".repeat(6),
        "exercise = \"rest\"",
    ]);
    assert!(faults(&all).iter().any(|(_, line, what)| what.contains("the whole practice is planned for") && *line == 1), "{all}");
}

/// Ways round a limit: the same dose cut up otherwise.
#[test]
fn the_same_dose_in_other_pieces_is_refused_too() {
    let lift = |more: &str| format!("exercise = \"head-lift-sustained\"\n{AGREED}{more}");
    let rest = "exercise = \"rest\"\nlength_s = 120";
    // Six steps of one minute each, with rests between: 360 s.
    let minute = lift("repetitions = 1\nphases = [{ name = \"lift\", length_s = 60 }]");
    let many: Vec<&str> = std::iter::repeat_n([minute.as_str(), rest], 6).flatten().collect();
    assert!(refused(&routine(&many)));
    assert!(!refused(&routine(&many[..6])), "three of them are the published dose");
    assert!(faults(&routine(&many[..6])).is_empty());
    // Next to each other without a rest.
    assert!(faults(&routine(&[&minute, &minute])).iter().any(|(_, line, what)| what.contains("too soon after the effort") && *line == 8));
    // The ball trains the same muscles.
    let ball = format!("exercise = \"chin-tuck-ball-repeated\"\n{AGREED}");
    let two_minutes = lift("repetitions = 1\nphases = [{ name = \"lift\", length_s = 40 }]");
    assert!(!faults(&routine(&[&ball, &two_minutes])).iter().any(|(_, _, what)| what.contains("too soon")));
    // Own phases: twelve of 60 s are one hold of twelve minutes.
    let phases = std::iter::repeat_n("{ name = \"lift\", length_s = 60 }", 12).collect::<Vec<_>>().join(", ");
    assert!(refused(&routine(&[&lift(&format!("repetitions = 1\nphases = [{phases}]"))])));
    // A later stage of a ramp.
    assert!(refused(&routine(&[&lift("rest_s = 60\nramp = { stages = [{ hold_s = 10 }, { sets = 2, hold_s = 60 }] }")])));
    let found = faults(&routine(&[&lift("rest_s = 20\nramp = { stages = [\n{ hold_s = 10 },\n{ hold_s = 60 },\n] }")]));
    assert!(found.iter().any(|(kind, _, what)| *kind == FaultKind::PastLimit && what.contains("is 20 s, less than 0.5")), "{found:#?}");
    let found = faults(&routine(&[
        "exercise = \"nasal-breathing\"\nbeat_s = 2\nramp = { stages = [\n{ out = 4, in = 2 },\n{ out = 8, in = 3 },\n] }",
    ]));
    assert!(found.iter().any(|(_, line, what)| what.contains("takes 16 s") && *line == 7), "{found:#?}");
    // Swallows: a row goes on over sets, steps and short rests.
    let swallow = |more: &str| format!("exercise = \"mid-swallow-hold\"\n{AGREED}{more}");
    assert!(refused(&routine(&[&swallow("repetitions = 20\nrest_s = 30")])));
    assert!(refused(&routine(&[&swallow("sets = 4\nrepetitions = 5\nset_rest_s = 10")])));
    assert!(faults(&routine(&[&swallow("sets = 4\nrepetitions = 5\nset_rest_s = 60")])).is_empty());
    let effortful = format!("exercise = \"effortful-swallow\"\n{AGREED}repetitions = 8");
    assert!(refused(&routine(&[&effortful, &swallow("repetitions = 4")])));
    assert!(refused(&routine(&[&effortful, "exercise = \"rest\"\nlength_s = 20", &swallow("repetitions = 4")])));
    assert!(faults(&routine(&[&effortful, "exercise = \"rest\"\nlength_s = 60", &swallow("repetitions = 4")])).is_empty());
    // Lifts: 10 steps of 30.
    let lifts = format!("exercise = \"head-lift-repeated\"\n{AGREED}repetitions = 30");
    let many: Vec<&str> = std::iter::repeat_n([lifts.as_str(), rest], 10).flatten().collect();
    assert!(refused(&routine(&many)));
    // Breathing: too fast, too slow, too much.
    assert!(refused(&routine(&["exercise = \"nasal-breathing\"\nin = 1\nout = 1\nbeat_s = 0.5"])));
    assert!(refused(&routine(&["exercise = \"nasal-breathing\"\nin = 6\nout = 10"])));
    assert!(refused(&routine(&["exercise = \"nasal-breathing\"\nsets = 3\nrepetitions = 30\nin = 3\nout = 8"])));
    // Loud holds without a goal, and over several exercises.
    assert!(refused(&routine(&["exercise = \"long-ah\"\nsets = 10\nrepetitions = 10"])));
    let ah = "exercise = \"long-ah\"\nrepetitions = 10\ntarget_s = 25";
    assert!(refused(&routine(&[ah, ah, ah])));
    // What is soft on purpose is not loud.
    let more = |id: &str| format!("exercise = \"{id}\"\nrepetitions = 10\ntarget_s = 15");
    assert!(needs_word(&routine(&[ah, &more("glide-up")])));
    assert!(faults(&routine(&[ah, &more("easy-hum")])).is_empty() && faults(&routine(&[ah, &more("straw-voicing")])).is_empty());
}

/// What a day adds up to, and how often it is practised.
#[test]
fn a_plan_multiplies_the_dose() {
    let plan = |times: usize, steps: &[&str]| {
        let times = (0..times).map(|n| format!("{{ at = \"{:02}:00\" }}", 6 + n)).collect::<Vec<_>>().join(", ");
        format!("plan = [{times}]\n{}", routine(steps))
    };
    let shoulders = "exercise = \"shoulder-rolls\"";
    assert!(faults(&plan(3, &[shoulders])).is_empty());
    assert!(needs_word(&plan(4, &[shoulders])));
    assert!(refused(&plan(7, &[shoulders])));
    assert!(faults(&format!("{WORD}{}", plan(4, &[shoulders]))).is_empty());
    let lifts = format!("exercise = \"head-lift-repeated\"\n{AGREED}repetitions = 30");
    assert!(faults(&plan(3, &[&lifts])).is_empty(), "30 three times a day are published");
    assert!(refused(&format!("{WORD}{}", plan(5, &[&lifts]))), "150 a day");
    // Days do not add up.
    let week = format!(
        "plan = [{{ days = [\"monday\"], at = \"8:00\" }}, {{ days = [\"tuesday\"], at = \"8:00\" }}, {{ days = [\"friday\"], at = \"8:00\" }}, {{ days = [\"sunday\"], at = \"8:00\" }}]\n{}",
        routine(&[shoulders])
    );
    assert!(faults(&week).is_empty());
}

#[test]
fn what_needs_the_clinicians_word_passes_with_it_and_says_where_it_belongs() {
    let step = format!("exercise = \"effortful-swallow\"\n{AGREED}sets = 4\nrepetitions = 10\n");
    let found = faults(&routine(&[&step]));
    assert!(needs_word(&routine(&[&step])), "{found:#?}");
    assert!(
        found[0].2.contains("in the step: `clinician_word = { who = ") && found[0].2.contains("Why this") || found[0].2.contains("Why: ")
    );
    let read = check_text("x", &routine(&[&format!("{step}{WORD}")]), Hearing::default()).expect("with the word");
    let word = &read.routine.clinician.exercises["effortful-swallow"];
    assert_eq!((word.who.as_str(), word.why.as_str()), ("the speech therapist", "as in the clinic"));
    // A word that says nothing lifts nothing.
    for empty in [
        "clinician_word = { }",
        "clinician_word = { who = \"x\", why = \" \" }",
        "clinician_word = { who = \"x\" }",
        "clinician_word = true",
    ] {
        let found = faults(&routine(&[&format!("{step}{empty}")]));
        assert!(found.iter().any(|(kind, ..)| *kind == FaultKind::NeedsClinicianWord) && found.len() > 1, "{empty}: {found:#?}");
    }
    // The whole practice has its own, at the top.
    let long = routine(&["exercise = \"rest\"\nlength_s = 600"; 5]);
    assert!(needs_word(&long));
    assert!(faults(&long)[0].2.contains("at the top of the file"));
    assert!(faults(&format!("{WORD}{long}")).is_empty());
}

/// Whatever the catalogue itself offers passes: defaults, templates, doses that grow.
#[test]
fn all_that_the_catalogue_offers_passes() {
    let mut tried = 0;
    let mut passes = |step: DraftStep| {
        let naming = step.entry.naming;
        let step = DraftStep {
            acknowledged: true,
            phrases: if step.entry.id == "functional-phrases" { vec!["Good morning".to_owned(); 10] } else { Vec::new() },
            setting: step.entry.needs_setting.then(|| "two turns".to_owned()),
            packs: match step.entry.id.as_str() {
                "word-questions" => vec!["opposites".to_owned()],
                "category-naming" => vec!["categories".to_owned()],
                _ => Vec::new(),
            },
            ..step
        };
        let mut step = step;
        if step.entry.id == "word-questions" || naming {
            step.numbers.push(("repetitions", 4.0));
        }
        tried += 1;
        let text = Draft { title: "x".to_owned(), steps: vec![step], ..Draft::default() }.to_toml(&|_| None);
        assert_eq!(faults(&text), Vec::new(), "{text}");
    };
    for entry in catalogue() {
        passes(DraftStep::new(entry));
        for template in templates(entry).into_iter().filter(|template| template.beyond.is_none() && !template.numbers.is_empty()) {
            passes(DraftStep { numbers: template.numbers, ..DraftStep::new(entry) });
        }
        if let Some(ramp) = ramp_template(&entry.id) {
            let stages = ramp.stages.iter().map(|stage| {
                let times = stage.repetitions.map(|n| ("repetitions", f64::from(n)));
                times.into_iter().chain(stage.hold_s.map(|hold_s| ("hold_s", hold_s))).collect()
            });
            let numbers = ramp.rest_s.map(|rest_s| ("rest_s", rest_s)).into_iter().collect();
            passes(DraftStep { numbers, ramp: Some(DraftRamp { days: ramp.days, stages: stages.collect() }), ..DraftStep::new(entry) });
        }
    }
    assert!(tried > 50, "{tried}");
}
