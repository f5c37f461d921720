//! The handout: every exercise with its dose and cautions, on paper.

use super::*;

fn demo(name: &str) -> Prescription {
    checked(&std::fs::read_to_string(root().join("demo").join(name)).expect("a demo routine"))
}

fn handout_of(prescription: &Prescription) -> Handout {
    let words = words();
    let said = |key: &str, args: &[(&'static str, Arg)]| {
        words.text(&Line { key: key.to_owned(), args: args.to_vec() }).unwrap_or_else(|why| panic!("{why}"))
    };
    handout(prescription, &said)
}

fn pdf_of(prescription: &Prescription) -> lopdf::Document {
    let words = words();
    let said = |key: &str, args: &[(&'static str, Arg)]| words.text(&Line { key: key.to_owned(), args: args.to_vec() }).unwrap_or_default();
    let bytes = print::handout_pdf(&handout(prescription, &said)).expect("a PDF");
    lopdf::Document::load_mem(&bytes).expect("an independent reader takes it")
}

fn text_of(pdf: &lopdf::Document) -> String {
    let pages: Vec<u32> = pdf.get_pages().keys().copied().collect();
    squeezed(&pdf.extract_text(&pages).expect("text in the PDF is text"))
}

/// Letters and digits alone: lines of a page are broken anywhere.
fn squeezed(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

#[test]
fn the_handout_shows_every_exercise_with_its_dose_and_cautions() {
    let page = to_text(&handout_of(&demo("evening.toml")), 80);
    for said in [
        "Evening routine",
        "For household",
        "Long ah: 3 times, aim for 12 seconds, rest 10\u{a0}s between",
        "Nasal breathing: 5 times, in on 3, out on 8",
        "press 20 s, tighter 10 s, smile 3 s",
        "Rest: 20 seconds",
        "Not for, unless your clinician says otherwise: people with heart disease or an irregular heartbeat; people who are short",
        "say “done” after each",
        "“A cup of tea with milk, please.”",
        "“pa-ta-ka” for 5 seconds",
        "4 questions",
        "“ready” to begin",
        "“stop” at any time",
        "Sit upright",
        "Stop at once",
        "a wet voice",
        "trouble speaking: call your emergency number",
        "It makes no diagnosis",
    ] {
        assert!(squeezed(&page).contains(&squeezed(said)), "{said}\n{page}");
    }
    assert!(page.lines().all(|line| line.chars().count() <= 80));
    let text = "title = \"x\"\nplan = [{ days = [\"monday\", \"wednesday\"], at = \"18:30\" }, { at = \"08:00\" }]\n[[step]]\nexercise = \"head-lift-sustained\"\ncautions_acknowledged = true\n[step.ramp]\nstages = [{ hold_s = 10 }, { hold_s = 60 }]\n";
    let page = to_text(&handout_of(&checked(text)), 80);
    for said in [
        "Monday and Wednesday at 18:30",
        "Every day at 08:00",
        "3 times, held 10 seconds",
        "grows over the weeks to 3 times, held 60 seconds",
    ] {
        assert!(squeezed(&page.to_lowercase()).contains(&squeezed(&said.to_lowercase())), "{said}\n{page}");
    }
    let text = "title = \"x\"\n[[step]]\nexercise = \"neck-turns\"\ncautions_acknowledged = true\nposture = \"standing\"\nrepetitions = 3\n[step.clinician_word]\nwho = \"the speech therapist\"\nwhy = \"shown in the clinic\"\n";
    let page = to_text(&handout_of(&checked(text)), 80);
    for said in ["standing, holding a firm chair", "Neck turns: more than usual. The speech therapist agreed (shown in the clinic)."] {
        assert!(squeezed(&page).contains(&squeezed(said)), "{said}\n{page}");
    }
    assert!(squeezed(&to_text(&handout_of(&demo("swallow.toml")), 80)).contains(&squeezed("lying down")));
    // A caution without its few words would be left out of the line silently.
    let words = words();
    for key in catalogue().iter().flat_map(|entry| &entry.cautions) {
        assert!(words.has(&format!("care-{key}-shown")), "{key}");
    }
}

/// Read by another library than the one that wrote it.
#[test]
fn the_pdf_is_text_on_few_pages_and_holds_every_exercise() {
    let words = words();
    let name = |id: &str| look_up(&words)(&format!("ex-{id}-name")).expect("a name");
    for file in ["evening.toml", "swallow.toml", "voice-short.toml"] {
        let prescription = demo(file);
        let pdf = pdf_of(&prescription);
        // Who must not do an exercise is listed in full, so a routine with many exercises may need a second page.
        let pages = if file == "voice-short.toml" { 1..=1 } else { 1..=2 };
        assert!(pages.contains(&pdf.get_pages().len()), "{file}");
        let text = text_of(&pdf);
        for step in &prescription.routine.steps {
            assert!(text.contains(&squeezed(&name(&step.exercise.id))), "{file}: {}\n{text}", step.exercise.id);
        }
        assert!(text.contains(&squeezed(&prescription.routine.title)) && text.contains("Stopatonce"), "{file}: {text}");
        // Tagged, so that a screen reader finds its way: the title, a heading for each exercise and one for the box.
        let headings = pdf.objects.values().filter_map(|object| object.as_dict().ok()?.get(b"S").ok()?.as_name().ok());
        let count = |name: &[u8]| headings.clone().filter(|tag| *tag == name).count();
        assert_eq!((count(b"H1"), count(b"H2")), (1, prescription.routine.steps.len() + 1), "{file}");
        let page = pdf.get_pages().values().next().and_then(|&id| pdf.get_dictionary(id).ok()).expect("a page");
        let size: Vec<f32> =
            page.get(b"MediaBox").and_then(lopdf::Object::as_array).expect("a size").iter().filter_map(|n| n.as_float().ok()).collect();
        // ISO 216: A4 is 210 × 297 mm; a point is 1/72 inch of 25.4 mm.
        let a4 = [0.0, 0.0, 210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0];
        assert!(size.iter().zip(a4).all(|(got, want)| (got - want).abs() < 0.1), "{size:?}");
    }
}

#[test]
fn a_long_routine_flows_over_numbered_pages_and_loses_nothing() {
    let phrases =
        (0..40).map(|n| format!("\"This is the phrase with the number {n}, as it is said at home.\"")).collect::<Vec<_>>().join(", ");
    // Every exercise there is takes longer than what needs no word.
    let word = "clinician_word = { who = \"the clinician\", why = \"a test of the handout\" }";
    let mut text = format!("title = \"Long\"\n{word}\n[[step]]\nexercise = \"functional-phrases\"\nphrases = [{phrases}]\n");
    for entry in catalogue().iter().filter(|entry| !["functional-phrases", "word-questions"].contains(&entry.id.as_str())) {
        let packs = if entry.naming { "packs = [\"categories\"]\n" } else { "" };
        let setting = if entry.needs_setting { "setting = \"two turns\"\n" } else { "" };
        // One of each, so that all of it stays within an hour.
        let once = if entry.dose_fields().contains(&"repetitions") && entry.passage().is_none() { "repetitions = 1\n" } else { "" };
        text += &format!(
            "[[step]]\nexercise = \"{}\"\n{packs}{setting}{once}{}",
            entry.id,
            if entry.cautions.is_empty() { "" } else { "cautions_acknowledged = true\n" }
        );
    }
    let prescription = checked(&text);
    let pdf = pdf_of(&prescription);
    let pages = pdf.get_pages().len();
    assert!(pages >= 3, "{pages}");
    let set = text_of(&pdf);
    assert!(set.contains(&format!("Page1of{pages}")) && set.contains(&format!("Page{pages}of{pages}")), "{set}");
    for item in &handout_of(&prescription).items {
        let all = [&item.name, &item.how].into_iter().chain(&item.phrases).chain(&item.care).chain(&item.not_for);
        for part in all {
            assert!(set.contains(&squeezed(part)), "{part}\n{set}");
        }
    }
}
