//! Promise: the set-up pages can be opened, driven and read in a real Chromium: by mouse and by keyboard, at 1080p, on a phone and
//! at 200 % zoom, with nothing that axe finds (WCAG 2.2 AA, contrast as AAA has it), looking as they were meant to.
//!
//! The intended pictures lie in `tests/browser/setup_pages/`; `UPDATE_PICTURES=1` makes them anew, to be looked at before they are kept.

#[path = "support/browser.rs"]
mod browser;
#[path = "support/clinic_world.rs"]
mod clinic_world;

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};

use browser::picture::Picture;
use browser::{Browser, FULL_HD, NARROW, PHONE, Viewport, ZOOMED};
use clinic::{Address, Clinic};
use clinic_world::{Home, MIC, Practice, daily, desk_key};
use jiff::ZonedDateTime;
use pages::set_up::alone;
use pages::set_up::site::{Place, Site};
use pages::web::{Guard, Server};
use record::{NewSession, Source, Store};
use session::{Entry, Fact, LevelTerms, Position};
use speak::Words;

const EVENING: &str = r#"# The evening of an invented household.
title = "Evening routine"
client = "grandpa"
cue_words = "strong voice"
feedback_every = 3
plan = [{ days = ["monday", "wednesday", "friday"], at = "18:30" }]

[[step]]
exercise = "long-ah"
repetitions = 3   # three are enough
target_s = 12

[[step]]
exercise = "lip-press-smile"
repetitions = 2

[[step]]
exercise = "effortful-swallow"
repetitions = 3
cautions_acknowledged = true

[[step]]
exercise = "functional-phrases"
phrases = ["Good evening, it is lovely to see you.", "A cup of tea with milk, please."]
"#;

const HOUSEHOLD: &str = "[[person]]\nname = \"grandpa\"\n[[person.routine]]\nfile = \"evening.toml\"\n";

/// The pages of an invented household with some weeks of practice.
struct House {
    server: Server,
    folder: tempfile::TempDir,
}

fn hold(at_s: f64, repetition: u32, duration_s: f64, complete: bool) -> Entry {
    let fact = Fact::HoldMeasured {
        exercise: "long-ah".into(),
        onset_s: at_s - duration_s,
        offset_s: at_s,
        duration_s,
        f0_median_hz: 118.0,
        f0_span_st: 1.2,
        level_mean_db: -27.0,
        level_fall_db: 2.0,
        level_weighting: "A".into(),
        level_calibrated: false,
        f0_sd_st: Some(0.3),
        level_slope_db_per_s: Some(-0.2),
        level_terms: Some(LevelTerms::default()),
        quality: None,
        climb: None,
        breaks: 0,
        masked_s: 0.0,
        complete,
    };
    Entry { at_s, fact, position: Some(Position { step: 1, set: 1, repetition }) }
}

fn practise(store: &mut Store, day: &str, longest_s: f64) {
    let started: ZonedDateTime = format!("{day}T18:31:00+00:00[UTC]").parse().expect("a time");
    let new = NewSession {
        protocol: None,
        client: "grandpa",
        routine_title: "Evening routine",
        routine_text: EVENING,
        source: Source::Live,
        software: "tidecount 0.1.0",
        started_at: &started,
    };
    let session = store.begin(&new).expect("begins");
    let plain = |at_s: f64, fact: Fact| Entry { at_s, fact, position: None };
    let step = |at_s: f64, fact: Fact| Entry { at_s, fact, position: Some(Position { step: 1, set: 1, repetition: 1 }) };
    let entries = [
        plain(0.0, Fact::SessionBegun { routine: "Evening routine".into(), steps: 4, software: "tidecount 0.1.0".into() }),
        step(20.0, Fact::StepBegun { exercise: "long-ah".into(), ramp_stage: None }),
        hold(40.0, 1, longest_s - 1.1, true),
        hold(70.0, 2, longest_s, true),
        hold(95.0, 3, 2.4, false),
        step(110.0, Fact::StepDone { exercise: "long-ah".into(), repetitions_done: 3, repetitions_prescribed: 3 }),
        plain(300.0, Fact::SafetyStop { exercise_before: None, exercise: Some("effortful-swallow".into()), reason: "dizzy".into() }),
        plain(420.0, Fact::SessionEnded { reason: "finished".into(), steps_done: 2, steps_prescribed: 4, duration_s: 420.0 }),
    ];
    entries.iter().for_each(|entry| store.append(session, entry).expect("keeps"));
}

/// A clinic of four: all is well, something was said, holds fell, nothing has come.
fn caseload(path: &Path) {
    let mut clinic = Clinic::open(&Address::File(path.to_path_buf())).expect("opens");
    let homes = ["grandma", "grandpa", "aunt", "uncle"]
        .into_iter()
        .zip(1..)
        .map(|(client, number)| Home::made(number, client, "2026-01-20T08:00:00Z"))
        .collect::<Vec<_>>();
    let packages: Vec<_> = homes.iter().map(Home::desk_package).collect();
    clinic.adopt(&desk_key(1), Some("Room 3"), &packages).expect("adopts");
    let weeks = |base: f64, later: f64| [daily(1, "2026-02-01", 20, 1, base, &MIC), daily(21, "2026-02-21", 11, 1, later, &MIC)].concat();
    let mut dizzy = weeks(14.0, 14.2);
    dizzy.push(
        Practice::on(40, "2026-03-03", 14.0, &MIC)
            .with(Fact::SafetyStop { exercise_before: None, exercise: Some("long-ah".into()), reason: "dizzy".into() })
            .whole(),
    );
    for (home, sessions) in homes.iter().zip([weeks(12.0, 12.2), dizzy, weeks(18.0, 9.0)]) {
        clinic.import(&home.file("2026-03-03", &sessions)).expect("imports");
    }
}

impl House {
    /// A household's, where nobody knows of a clinic.
    fn open(mic: &str) -> (Self, Arc<Guard>) {
        Self::opened(mic, false)
    }

    /// A desk's, with a clinic database.
    fn of_clinic() -> Self {
        Self::opened("none", true).0
    }

    fn opened(mic: &str, with_clinic: bool) -> (Self, Arc<Guard>) {
        let folder = tempfile::tempdir().expect("a folder");
        let data = folder.path().join("record");
        std::fs::write(folder.path().join("evening.toml"), EVENING).expect("writes");
        std::fs::write(folder.path().join("household.toml"), HOUSEHOLD).expect("writes");
        let mut store = Store::open(&data).expect("opens");
        for (day, longest_s) in [
            ("2026-01-05", 9.2),
            ("2026-01-07", 9.9),
            ("2026-01-09", 9.4),
            ("2026-01-12", 10.2),
            ("2026-01-14", 10.0),
            ("2026-01-16", 10.9),
            ("2026-01-19", 10.8),
            ("2026-01-21", 11.4),
            ("2026-02-23", 12.0),
            ("2026-02-25", 12.6),
            ("2026-02-27", 12.2),
            ("2026-03-02", 13.1),
        ] {
            practise(&mut store, day, longest_s);
        }
        drop(store);
        let clinic = folder.path().join("clinic.sqlite");
        if with_clinic {
            caseload(&clinic);
        }
        let place = Place {
            data,
            household: folder.path().join("household.toml"),
            mic: mic.into(),
            speaker: "none".into(),
            voice: None,
            model: None,
            recogniser: None,
            clinic: with_clinic.then_some(Address::File(clinic)),
            today: Some(jiff::civil::date(2026, 3, 4)),
        };
        let own = Arc::new(Mutex::new(None));
        let given = own.clone();
        let server = Server::start(0, move |guard| {
            *given.lock().expect("one") = Some(guard.clone());
            let site = Arc::new(Site::new(place, Words::english().expect("words"), guard));
            // As with `tidecount pages`: a practice can be started here.
            site.starts.open();
            alone(site)
        })
        .expect("starts");
        let guard = own.lock().expect("one").clone().expect("a guard");
        (Self { server, folder }, guard)
    }

    fn at(&self, path: &str) -> String {
        format!("http://127.0.0.1:{}{path}", self.server.port())
    }

    fn file(&self, name: &str) -> String {
        std::fs::read_to_string(self.folder.path().join(name)).expect("reads")
    }
}

/// Five seconds of a quiet room, five of somebody who hums five times, and a while of quiet.
fn recording(folder: &Path) -> PathBuf {
    let path = folder.join("microphone.wav");
    let spec = hound::WavSpec { channels: 1, sample_rate: 16_000, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut file = hound::WavWriter::create(&path, spec).expect("creates");
    let mut noise = 1_u32;
    for n in 0..(16_000 * 12) {
        let t = f64::from(n) / 16_000.0;
        noise = noise.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let room = 20.0 * (f64::from(noise >> 8) / f64::from(1 << 23) - 1.0);
        let voiced = (5.0..10.0).contains(&t) && t.fract() < 0.7;
        // Harmonics of 120 Hz falling by 6 dB an octave.
        let voice: f64 = if voiced {
            (1..=20).map(|k| (std::f64::consts::TAU * 120.0 * f64::from(k) * t).sin() / f64::from(k)).sum::<f64>() * 2500.0
        } else {
            0.0
        };
        file.write_sample((room + voice) as i16).expect("writes");
    }
    file.finalize().expect("closes");
    path
}

fn intended(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/browser/setup_pages").join(format!("{name}.png"))
}

const WINDOWS: [Viewport; 3] = [FULL_HD, PHONE, ZOOMED];

/// Looks at a page through each window, asks axe each time, and compares the picture.
fn look(browser: &Browser, name: &str, faults: &mut Vec<String>) {
    for viewport in WINDOWS {
        browser.view(viewport);
        browser.script("window.scrollTo(0, 0)");
        let what = format!("{name}-{}", viewport.name);
        // What axe looks at besides contrast and layout does not depend on the window.
        let of_axe = if viewport.name == FULL_HD.name { browser.axe() } else { Vec::new() };
        let found = of_axe.into_iter().chain(browser.low_contrast()).chain(browser.layout_faults(44));
        faults.extend(found.map(|fault| format!("{what}: {fault}")));
        // A phone's first screen is content: the heading stands within its upper third.
        if viewport.name == PHONE.name {
            let top = browser.script("return document.querySelector('main h1').getBoundingClientRect().top").as_f64().unwrap_or(f64::MAX);
            if top > f64::from(PHONE.height) / 4.0 {
                faults.push(format!("{what}: the heading begins only at {top} px"));
            }
        }
        let shown = if viewport.scale == 2 { browser.picture().halved() } else { browser.picture() };
        let path = intended(&what);
        if std::env::var_os("UPDATE_PICTURES").is_some() {
            shown.write(&path);
        } else if let Ok(bytes) = std::fs::read(&path) {
            if let Some(differs) = shown.differs_from(&Picture::of_png(&bytes)) {
                let seen = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("{what}.png"));
                shown.write(&seen);
                faults.push(format!("{what} looks otherwise: {differs}; it is kept in {}", seen.display()));
            }
        } else {
            faults.push(format!("{what}: there is no intended picture {}", path.display()));
        }
    }
    browser.view(NARROW);
    faults.extend(browser.layout_faults(44).into_iter().map(|fault| format!("{name}-narrow: {fault}")));
    browser.view(FULL_HD);
}

/// What changes from day to day or from computer to computer is hidden in pictures.
fn still(browser: &Browser) {
    browser.script("document.querySelectorAll('select#mic, select#speaker').forEach((one) => { one.replaceChildren(new Option('The computer’s default')); })");
    browser.script(
        "document.querySelectorAll('.hint').forEach((one) => { if (one.textContent.includes('/tmp/')) one.style.visibility = 'hidden'; })",
    );
}

/// One browser for all: it takes longer to start than any of this.
#[test]
fn the_set_up_pages_work_in_a_browser() {
    let Some(browser) = Browser::start() else { return };
    every_page_is_right_for_everybody(&browser);
    a_routine_is_changed_by_keyboard_alone(&browser);
    the_microphone_check_gives_a_plain_verdict(&browser);
    calibrating_and_agreeing_by_page(&browser);
    a_clinician_looks_through_the_caseload(&browser);
}

fn every_page_is_right_for_everybody(browser: &Browser) {
    let sound = tempfile::tempdir().expect("a folder");
    let mic = recording(sound.path());
    let (house, _guard) = House::open(&mic.display().to_string());
    browser.open(&house.server.address());
    browser.wait_until("the first page", "document.querySelector('ul.today')");
    let mut faults = Vec::new();
    for (name, path) in [
        ("today", "/today"),
        ("results", "/results"),
        ("start", "/setup"),
        ("microphone", "/microphone"),
        ("calibration", "/calibration"),
        ("routines", "/routines"),
        ("routine", "/routines/view?file=evening.toml"),
        ("form", "/routines/edit?file=evening.toml"),
        ("cautions", "/cautions?client=grandpa"),
        ("enrolment", "/own-voice"),
        ("history", "/history"),
        ("practice", "/history/practice?id=1"),
        ("progress", "/progress?client=grandpa&weeks=0"),
        ("sound", "/sound?client=grandpa"),
    ] {
        browser.open(&house.at(path));
        still(browser);
        look(browser, name, &mut faults);
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

fn a_routine_is_changed_by_keyboard_alone(browser: &Browser) {
    use fantoccini::key::Key;
    let (house, _guard) = House::open("none");
    browser.open(&house.server.address());
    browser.open(&house.at("/routines/edit?file=evening.toml"));
    // A number out of its limits: nothing is written, the summary has the focus and leads to the field.
    browser.script("const field = document.getElementById('step-0-repetitions'); field.focus(); field.select();");
    browser.keys("99");
    browser.keys(&char::from(Key::Enter).to_string());
    browser.wait_until("the summary", "document.getElementById('summary')");
    browser.wait_until("its focus", "document.activeElement.id === 'summary'");
    assert_eq!(house.file("evening.toml"), EVENING);
    let mut faults = Vec::new();
    look(browser, "form-faults", &mut faults);
    browser.keys(&char::from(Key::Tab).to_string());
    browser.keys(&char::from(Key::Enter).to_string());
    browser.wait_until("the focus in the field", "document.activeElement.id === 'step-0-repetitions'");
    assert!(browser.script("return document.activeElement.getAttribute('aria-invalid')").as_str() == Some("true"));
    browser.script("document.activeElement.select()");
    browser.keys("4");
    browser.keys(&char::from(Key::Enter).to_string());
    browser.wait_until("the saved routine", "location.pathname === '/routines/view'");
    assert_eq!(house.file("evening.toml"), EVENING.replace("repetitions = 3   # three", "repetitions = 4   # three"));
    assert!(browser.text("[role=status]").contains("Saved"));
    // Steps are moved by buttons, and the page comes back at the step.
    browser.open(&house.at("/routines/edit?file=evening.toml"));
    browser.script("document.querySelector(\"button[value='down.0']\").focus()");
    browser.keys(" ");
    browser.wait_until(
        "the moved step",
        "document.getElementById('step-1') && document.getElementById('step-1').innerText.includes('Long ah')",
    );
    browser.wait_until("the focus at it", "document.activeElement.id === 'step-1'");
    assert!(!house.file("evening.toml").contains("Changed"), "nothing is written before it is saved");
    browser.click("button[value='save']");
    browser.wait_until("the saved routine", "location.pathname === '/routines/view'");
    let text = house.file("evening.toml");
    assert!(text.find("lip-press-smile") < text.find("long-ah") && text.contains("# three are enough"), "{text}");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

fn the_microphone_check_gives_a_plain_verdict(browser: &Browser) {
    let sound = tempfile::tempdir().expect("a folder");
    let mic = recording(sound.path());
    let (house, _guard) = House::open(&mic.display().to_string());
    browser.open(&house.server.address());
    browser.open(&house.at("/microphone"));
    browser.click("button[value='listen']");
    // A recording is heard faster than time, so the page of listening may be over before it is seen.
    browser.wait_until("the verdict", "document.querySelector('.verdict')");
    assert_eq!(browser.text(".verdict h2"), "It works");
    let mut faults = Vec::new();
    still(browser);
    look(browser, "verdict", &mut faults);
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    browser.open(&house.at("/setup"));
    assert!(browser.visible().contains("The microphone and loudspeaker work."));
}

fn calibrating_and_agreeing_by_page(browser: &Browser) {
    let sound = tempfile::tempdir().expect("a folder");
    let mic = calibration_sound(sound.path());
    let (house, _guard) = House::open(&mic.display().to_string());
    browser.open(&house.server.address());
    browser.open(&house.at("/calibration"));
    browser.type_into("#distance_cm", "x");
    browser.click("button[value='listen']");
    browser.wait_until("the fault", "document.getElementById('distance_cm-fault')");
    browser.open(&house.at("/calibration"));
    browser.click("button[value='listen']");
    browser.wait_until("the question for the number", "document.querySelector(\"button[value='keep']\")");
    browser.type_into("#level_db", "78.4");
    browser.click("button[value='keep']");
    browser.wait_until("what was kept", "document.querySelector('.verdict.works')");
    assert!(browser.visible().contains("78.4 dB(A)"));
    browser.open(&house.at("/cautions?client=grandpa"));
    browser.click("label[for='agree-effortful-swallow']");
    browser.type_into("#by", "the clinic");
    browser.click("button[value='agree']");
    browser.wait_until("the agreement", "document.querySelector('.agreed')");
    assert!(browser.text(".agreed").contains("Agreed by the clinic, entered on this page"));
    let store = Store::open(&house.folder.path().join("record")).expect("opens");
    assert!(store.agreements("grandpa").expect("reads").iter().any(|one| one.exercise == "effortful-swallow"));
}

fn a_clinician_looks_through_the_caseload(browser: &Browser) {
    let house = House::of_clinic();
    browser.open(&house.server.address());
    let mut faults = Vec::new();
    for (name, path) in [("caseload", "/caseload"), ("case", "/caseload/client?number=3")] {
        browser.open(&house.at(path));
        still(browser);
        look(browser, name, &mut faults);
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    browser.open(&house.at("/setup"));
    browser.open(&house.at("/results"));
    browser.click("nav.within a[href='/caseload']");
    browser.wait_until("the list", "document.querySelector('ul.cases')");
    let names = |browser: &Browser| {
        browser
            .script("return [...document.querySelectorAll('ul.cases h2 a')].map((one) => one.innerText).join(' ')")
            .as_str()
            .unwrap_or_default()
            .to_owned()
    };
    assert_eq!(names(browser), "grandpa uncle aunt", "the gravest first, and not who is well");
    browser.click("a[href='/caseload?why=decline']");
    browser.wait_until("the choice", "document.querySelector(\"a[href='/caseload?why=decline'][aria-current]\")");
    assert_eq!(names(browser), "aunt");
    let why = browser.text("ul.reasons");
    assert!(why.contains("hold time of Long ah") && !why.contains("long-ah"), "exercises are called the same everywhere: {why}");
    browser.click("a[href='/caseload?all=yes']");
    browser.wait_until("everybody", "document.querySelectorAll('ul.cases > li').length === 4");
    browser.click("ul.cases h2 a");
    browser.wait_until("the sheet", "document.getElementById('note')");
    assert!(browser.visible().contains("said: dizzy (Long ah)"), "{}", browser.visible());
    browser.type_into("#note", "rang, is well");
    // Results that come meanwhile have not been looked at.
    let home = Home::made(2, "grandpa", "2026-01-20T08:00:00Z");
    let later = home.file(
        "2026-03-04",
        &[Practice::on(41, "2026-03-04", 14.0, &MIC)
            .with(Fact::SafetyStop { exercise_before: None, exercise: Some("long-ah".into()), reason: "pain".into() })
            .whole()],
    );
    Clinic::open(&Address::File(house.folder.path().join("clinic.sqlite"))).expect("opens").import(&later).expect("imports");
    browser.click("button[value='seen']");
    browser.wait_until("the summary", "document.getElementById('summary')");
    assert!(browser.visible().contains("New results arrived") && browser.visible().contains("said: pain"), "{}", browser.visible());
    browser.click("button[value='seen']");
    browser.wait_until("the notice", "document.querySelector('[role=status]')");
    assert!(browser.visible().contains("rang, is well") && !browser.text("ul.reasons, h2 + p").contains("dizzy"), "{}", browser.visible());
    browser.open(&house.at("/caseload"));
    assert_eq!(names(browser), "uncle aunt", "what was seen is not told again");
}

/// Four seconds of a quiet room and eight of a tone.
fn calibration_sound(folder: &Path) -> PathBuf {
    let path = folder.join("tone.wav");
    let spec = hound::WavSpec { channels: 1, sample_rate: 16_000, bits_per_sample: 16, sample_format: hound::SampleFormat::Int };
    let mut file = hound::WavWriter::create(&path, spec).expect("creates");
    for n in 0..(16_000 * 12) {
        let t = f64::from(n) / 16_000.0;
        let amplitude = if t < 4.0 { 8.0 } else { 3000.0 };
        file.write_sample((amplitude * (std::f64::consts::TAU * 1000.0 * t).sin()) as i16).expect("writes");
    }
    file.finalize().expect("closes");
    path
}
