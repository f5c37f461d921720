//! The pages asked over a real socket, as a browser asks.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::sync::{Arc, Mutex};

use crate::set_up::site::{Place, Site};
use crate::web::address::encoded;
use crate::web::pages::{CASELOAD, PlaceName};
use crate::web::{Guard, Server};
use record::{SoundConsent, Store};
use speak::Words;

const ROUTINE: &str = "# By hand.\ntitle = \"Evening routine\"\nclient = \"grandpa\"\n[[step]]\nexercise = \"long-ah\"\n# Three.\nrepetitions = 3\n[[step]]\nexercise = \"effortful-swallow\"\ncautions_acknowledged = true\n";

pub(super) struct Pages {
    server: Server,
    site: Arc<Site>,
    guard: Arc<Guard>,
    cookie: String,
    folder: tempfile::TempDir,
}

pub(super) fn ask(port: u16, request: &[u8]) -> (u16, String) {
    let mut stream = TcpStream::connect(("127.0.0.1", port)).expect("connects");
    // A request that is none may be hung up on before all of it is sent; then there is no answer.
    let _ = stream.write_all(request);
    let mut answer = Vec::new();
    let _ = stream.read_to_end(&mut answer);
    let answer = String::from_utf8_lossy(&answer).into_owned();
    (answer.split_whitespace().nth(1).and_then(|code| code.parse().ok()).unwrap_or(0), answer)
}

impl Pages {
    pub(super) fn open() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        std::fs::write(folder.path().join("evening.toml"), ROUTINE).expect("writes");
        let place = Place {
            data: folder.path().join("record"),
            household: folder.path().join("household.toml"),
            mic: "none".into(),
            speaker: "none".into(),
            voice: None,
            model: None,
            recogniser: None,
            clinic: None,
            today: None,
        };
        let own = Arc::new(Mutex::new(None));
        let given = own.clone();
        let site = Arc::new(Mutex::new(None));
        let made = site.clone();
        let server = Server::start(0, move |guard| {
            *given.lock().expect("one") = Some(guard.clone());
            let site = Arc::new(Site::new(place, Words::english().expect("words"), guard));
            *made.lock().expect("one") = Some(site.clone());
            super::alone(site)
        })
        .expect("starts");
        let site = site.lock().expect("one").clone().expect("a site");
        let guard = own.lock().expect("one").clone().expect("a guard");
        let path = server.address().split_once(&server.port().to_string()).expect("a port").1.to_owned();
        let (_, answer) =
            ask(server.port(), format!("GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n\r\n", server.port()).as_bytes());
        let cookie = answer.lines().find_map(|line| {
            line.to_lowercase().starts_with("set-cookie:").then(|| line[11..].trim().split(';').next().unwrap_or_default().to_owned())
        });
        Self { server, site, guard, cookie: cookie.expect("a cookie"), folder }
    }

    fn head(&self) -> String {
        let port = self.server.port();
        format!("Host: 127.0.0.1:{port}\r\nOrigin: http://127.0.0.1:{port}\r\nCookie: {}\r\nConnection: close\r\n", self.cookie)
    }

    pub(super) fn port(&self) -> u16 {
        self.server.port()
    }

    pub(super) fn get(&self, path: &str) -> (u16, String) {
        ask(self.server.port(), format!("GET {path} HTTP/1.1\r\n{}\r\n", self.head()).as_bytes())
    }

    /// What stands before the body of a form.
    pub(super) fn post_head(&self, path: &str, length: usize) -> String {
        let (head, once) = (self.head(), self.guard.once());
        format!(
            "POST {path}?once={once} HTTP/1.1\r\n{head}Content-Type: application/x-www-form-urlencoded\r\nContent-Length: {length}\r\n\r\n"
        )
    }

    pub(super) fn post(&self, path: &str, fields: &[(&str, &str)]) -> (u16, String) {
        let body: Vec<String> = fields.iter().map(|(name, value)| format!("{}={}", encoded(name), encoded(value))).collect();
        let body = body.join("&");
        ask(self.server.port(), (self.post_head(path, body.len()) + &body).as_bytes())
    }

    fn file(&self, name: &str) -> String {
        std::fs::read_to_string(self.folder.path().join(name)).expect("reads")
    }
}

/// The value of a hidden field.
fn hidden(page: &str, name: &str) -> String {
    let (_, rest) = page.split_once(&format!("name=\"{name}\" value=\"")).unwrap_or_else(|| panic!("{name}: {page}"));
    rest.split('"').next().unwrap_or_default().replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
}

#[test]
fn every_page_opens_on_an_empty_household_too() {
    let pages = Pages::open();
    std::fs::remove_file(pages.folder.path().join("evening.toml")).expect("removes");
    for (path, _) in PlaceName::ALL.into_iter().flat_map(PlaceName::pages).filter(|page| **page != CASELOAD) {
        let (status, answer) = pages.get(path);
        assert_eq!(status, 200, "{path}: {answer}");
        let places: Vec<&str> = PlaceName::ALL.map(|place| place.entry().0).to_vec();
        let header = answer.split("<header>").nth(1).and_then(|rest| rest.split("</header>").next()).unwrap_or_default();
        let linked: Vec<&str> = header.split("href=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        assert_eq!(linked, places, "three places and no more");
        assert!(header.contains("aria-current"), "{path} belongs to one of them");
        assert!(!answer.contains("page-nav") && !answer.contains("style="), "{path}");
    }
    // Looking at them creates nothing.
    assert!(!pages.folder.path().join("record").exists());
    for path in [
        "/history/practice?id=1",
        "/history/practice?id=x",
        "/routines/view?file=none.toml",
        "/routines/edit?file=..%2Fx.toml",
        "/routines/view",
    ] {
        assert_eq!(pages.get(path).0, 404, "{path}");
    }
}

#[test]
fn a_practice_is_started_from_today_and_from_its_routine() {
    let pages = Pages::open();
    let start = |client: &str, file: &str| pages.post("/start", &[("client", client), ("file", file), ("do", "start")]);
    let (_, closed) = pages.get("/today");
    assert!(closed.contains("Evening routine") && !closed.contains("action=\"/start"), "nobody leads: {closed}");
    assert_eq!(start("grandpa", "evening.toml").0, 400, "nobody leads");
    pages.site.starts.open();
    for path in ["/today", "/routines/view?file=evening.toml"] {
        let (status, page) = pages.get(path);
        assert!(status == 200 && page.contains("action=\"/start?once=") && page.contains("value=\"grandpa\""), "{path}: {page}");
    }
    for (client, file, status) in [("grandpa", "../evening.toml", 404), ("grandpa", "none.toml", 404), ("", "evening.toml", 400)] {
        assert_eq!(start(client, file).0, status, "{client} {file}");
    }
    for (answer, status, shown) in
        [(Err("There is no microphone.".to_owned()), 400, "There is no microphone."), (Ok(()), 303, "location: /\r\n")]
    {
        let (told, page) = std::thread::scope(|scope| {
            let asking = scope.spawn(|| start("grandpa", "evening.toml"));
            let wish = pages.site.starts.take_within(std::time::Duration::from_secs(60)).expect("asked");
            assert_eq!((wish.client.as_str(), wish.file.as_str()), ("grandpa", "evening.toml"));
            pages.site.starts.answer(answer);
            asking.join().expect("answered")
        });
        assert!(told == status && page.contains(shown), "{page}");
    }
    // While it goes on, the other pages lead to it.
    pages.site.practise(true);
    let (status, page) = pages.get("/today");
    assert!(status == 409 && page.contains("href=\"/\""), "{page}");
}

#[test]
fn without_a_clinic_there_is_no_caseload() {
    let pages = Pages::open();
    for path in ["/caseload", "/caseload/client?number=1", "/caseload/client?number=x"] {
        let (status, answer) = pages.get(path);
        assert!(status == 404 && answer.contains("clinic import") != path.ends_with('x'), "{path}: {answer}");
    }
    for path in ["/today", "/results", "/setup"] {
        assert!(!pages.get(path).1.contains("/caseload"), "{path}");
    }
}

#[test]
fn a_routine_is_changed_by_form_and_its_comments_stay() {
    let pages = Pages::open();
    let (status, form) = pages.get("/routines/edit?file=evening.toml");
    assert_eq!(status, 200, "{form}");
    let (base, draft) = (hidden(&form, "base"), hidden(&form, "draft"));
    let send = |action: &str, repetitions: &str, base: &str| {
        let fields = [
            ("file", "evening.toml"),
            ("base", base),
            ("draft", draft.as_str()),
            ("do", action),
            ("title", "Evening routine"),
            ("client", "grandpa"),
            ("step-0-here", "1"),
            ("step-0-repetitions", repetitions),
            ("step-1-here", "1"),
            ("step-1-cautions_acknowledged", "on"),
        ];
        pages.post("/routines/edit", &fields)
    };
    let (status, answer) = send("save", "99", &base);
    assert!(status == 200 && answer.contains("href=\"#step-0-repetitions\"") && answer.contains("aria-invalid=\"true\""), "{answer}");
    assert_eq!(pages.file("evening.toml"), ROUTINE, "a fault writes nothing");
    let (status, answer) = send("check", "4", &base);
    assert!(status == 200 && answer.contains("No faults."), "{answer}");
    assert_eq!(pages.file("evening.toml"), ROUTINE);
    let (status, answer) = send("save", "4", &base);
    assert_eq!(status, 303, "{answer}");
    assert_eq!(pages.file("evening.toml"), ROUTINE.replace("repetitions = 3", "repetitions = 4"));
    assert_eq!(pages.file("evening.toml.before"), ROUTINE);
    // The form was made for the file as it was.
    let (status, answer) = send("save", "5", &base);
    assert!(status == 200 && answer.contains("Someone else changed the file"), "{answer}");
    assert!(pages.file("evening.toml").contains("repetitions = 4"));
    assert!(answer.contains("value=\"5\""), "what was typed is still there");
}

#[test]
fn the_text_is_checked_as_the_form_is() {
    let pages = Pages::open();
    let (_, form) = pages.get("/routines/edit?file=evening.toml");
    let base = hidden(&form, "base");
    let (status, answer) =
        pages.post("/routines/edit", &[("file", "evening.toml"), ("base", &base), ("text", "title = \"x\nstep"), ("do", "save-text")]);
    assert!(status == 200 && answer.contains("this is not TOML"), "{answer}");
    let (status, _) = pages.post(
        "/routines/edit",
        &[
            ("file", "evening.toml"),
            ("base", &base),
            ("text", "title = \"By text\"\r\n[[step]]\r\nexercise = \"rest\"\r\n"),
            ("do", "save-text"),
        ],
    );
    assert_eq!(status, 303);
    assert_eq!(pages.file("evening.toml"), "title = \"By text\"\n[[step]]\nexercise = \"rest\"\n");
    // A file that somebody broke can still be mended here.
    std::fs::write(pages.folder.path().join("broken.toml"), "title = ").expect("writes");
    let (status, answer) = pages.get("/routines/edit?file=broken.toml");
    assert!(status == 200 && answer.contains("<textarea"), "{answer}");
}

#[test]
fn a_new_routine_is_made_and_chosen_for_somebody() {
    let pages = Pages::open();
    let (status, answer) = pages.post("/routines/new", &[("name", "../up"), ("like", "")]);
    assert!(status == 200 && answer.contains("id=\"name-fault\""), "{answer}");
    let (status, form) = pages.post("/routines/new", &[("name", "morning"), ("like", "")]);
    assert_eq!(status, 200, "{form}");
    let draft = hidden(&form, "draft");
    let common = [("file", "morning.toml"), ("base", ""), ("draft", draft.as_str())];
    let (_, form) = pages.post("/routines/edit", &[&common[..], &[("do", "add-step"), ("add", "long-ah")]].concat());
    let draft = hidden(&form, "draft");
    let (status, answer) =
        pages.post("/routines/edit", &[("file", "morning.toml"), ("base", ""), ("draft", &draft), ("do", "save"), ("title", "Morning")]);
    assert_eq!(status, 303, "{answer}");
    assert!(pages.file("morning.toml").contains("title = \"Morning\"") && pages.file("morning.toml").contains("# Caution: "));
    let (status, answer) = pages.post("/routines/choose", &[("file", "morning.toml"), ("person", "grandma"), ("do", "choose")]);
    assert_eq!(status, 303, "{answer}");
    assert!(
        pages.file("household.toml").contains("name = \"grandma\"") && pages.file("household.toml").contains("file = \"morning.toml\"")
    );
    let (status, answer) = pages.post("/routines/choose", &[("file", "morning.toml"), ("person", "grandma"), ("do", "unchoose")]);
    assert!(status == 400 && answer.contains("Someone must have a routine"), "{answer}");
    let (status, answer) = pages.get("/routines/handout.pdf?file=morning.toml");
    let (_, view) = pages.get("/routines/view?file=morning.toml");
    assert_eq!(view.contains("/routines/handout.pdf"), files::pdf::MADE);
    if files::pdf::MADE {
        assert!(status == 200 && answer.contains("application/pdf"), "{answer}");
    } else {
        assert!(status == 404 && answer.contains("built without PDF"), "{answer}");
        let (status, answer) = pages.get("/file?kind=report-pdf&client=grandpa");
        assert!(status == 404 && answer.contains("built without PDF"), "{answer}");
    }
}

#[test]
fn an_agreement_is_kept_with_who_and_can_be_withdrawn() {
    let pages = Pages::open();
    let (status, answer) = pages.get("/cautions?client=grandpa");
    assert!(
        status == 200 && answer.contains("The clinician of grandpa has agreed to it for them") && answer.contains("irregular heartbeat"),
        "{answer}"
    );
    let agree = |fields: &[(&str, &str)]| pages.post("/cautions", &[&[("client", "grandpa"), ("do", "agree")], fields].concat());
    assert_eq!(agree(&[]).0, 200, "nothing ticked");
    assert_eq!(agree(&[("agree-effortful-swallow", "on")]).0, 200, "nobody named");
    assert!(!pages.folder.path().join("record").exists());
    assert_eq!(agree(&[("agree-effortful-swallow", "on"), ("by", "the clinic")]).0, 303);
    let agreed = |folder: &Path| Store::open(&folder.join("record")).expect("opens").agreements("grandpa").expect("reads").len();
    assert_eq!(agreed(pages.folder.path()), 1);
    let (_, answer) = pages.get("/cautions?client=grandpa");
    assert!(answer.contains("Agreed by the clinic, entered on this page"), "{answer}");
    assert_eq!(pages.post("/cautions", &[("client", "grandpa"), ("do", "withdraw.effortful-swallow")]).0, 303);
    assert_eq!(agreed(pages.folder.path()), 0);
    assert_eq!(pages.post("/cautions", &[("client", "nobody"), ("do", "agree")]).0, 400);
}

#[test]
fn sound_is_wanted_on_the_page_and_not_kept_before_the_voice_says_yes() {
    let pages = Pages::open();
    assert_eq!(pages.post("/sound", &[("client", "grandpa"), ("do", "on"), ("days", "0")]).0, 200);
    assert_eq!(pages.post("/sound", &[("client", "grandpa"), ("do", "on"), ("days", "14")]).0, 303);
    let store = Store::open(&pages.folder.path().join("record")).expect("opens");
    assert!(matches!(store.sound_consent("grandpa").expect("reads"), SoundConsent::Asked { days: 14, .. }));
    assert_eq!(store.sound_allowed("grandpa").expect("reads"), None);
    drop(store);
    let (_, answer) = pages.get("/sound?client=grandpa");
    assert!(answer.contains("will be asked aloud"), "{answer}");
    assert_eq!(pages.post("/sound", &[("client", "grandpa"), ("do", "off"), ("days", "14")]).0, 303);
    let store = Store::open(&pages.folder.path().join("record")).expect("opens");
    assert!(matches!(store.sound_consent("grandpa").expect("reads"), SoundConsent::Withdrawn { .. }));
}

#[test]
fn only_devices_that_were_offered_are_opened() {
    let pages = Pages::open();
    let (status, answer) = pages.post("/microphone", &[("mic", "/etc/passwd"), ("speaker", "none"), ("do", "listen")]);
    assert!(status == 400 && answer.contains("no longer connected"), "{answer}");
    assert_eq!(pages.post("/microphone", &[("mic", "none"), ("speaker", "/tmp/x.wav"), ("do", "play")]).0, 400);
}

/// Every key that stands in the sources of the pages has its words.
#[test]
fn no_words_are_missing() {
    let words = Words::english().expect("words");
    let root = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."));
    let mut seen = 0;
    for folder in ["src/pages/set_up", "src/pages/web/pages"] {
        for file in std::fs::read_dir(root.join(folder)).expect("lists").filter_map(Result::ok).filter(|file| file.path().is_file()) {
            let text = std::fs::read_to_string(file.path()).expect("reads");
            let keys = text.split('"').skip(1).step_by(2).filter(|part| part.starts_with("page-") && part.len() > 5);
            for key in keys.filter(|key| key.chars().all(|c| c.is_ascii_alphanumeric() || "-_".contains(c)) && !key.ends_with('-')) {
                seen += 1;
                assert!(words.has(key), "{key} in {:?}", file.path());
            }
        }
    }
    assert!(seen > 350, "{seen}");
    for measure in progress::Measure::FOLLOWED.iter().filter(|measure| !measure.is_quality()) {
        assert!(words.has(&format!("page-measure-{}", measure.id())), "{}", measure.id());
    }
    for reason in ["completed", "finished", "interrupted", "abandoned", "no-answer", "time-limit", "day-limit"] {
        assert!(words.has(&format!("page-end-{reason}")), "{reason}");
    }
}

#[test]
fn goals_stand_on_the_page_of_progress_with_their_rule() {
    let pages = Pages::open();
    let day = |text: &str| text.parse().expect("a day");
    let mut store = Store::open(&pages.folder.path().join("record")).expect("a record");
    let words = "Order coffee <b>without</b> being asked twice.";
    let goal = record::NewGoal { words, aim: None, set_on: day("2026-11-01"), due: day("2126-02-01"), set_by: "M." };
    store.add_goal("grandpa", &goal).expect("kept");
    let (status, answer) = pages.get("/progress?client=grandpa");
    assert!(status == 200 && answer.contains("Order coffee &lt;b&gt;without&lt;/b&gt; being asked twice."), "{answer}");
    assert!(answer.contains("too early to say") && answer.contains("marked by people, never by the program"), "{answer}");
}

#[test]
fn what_was_told_of_the_week_can_be_played_as_long_as_its_sound_is_kept() {
    use session::{Entry, Fact};
    let pages = Pages::open();
    let data = pages.folder.path().join("record");
    let began = jiff::ZonedDateTime::now().checked_sub(jiff::Span::new().hours(1)).expect("an hour ago");
    let new = record::NewSession {
        protocol: None,
        client: "grandpa",
        routine_title: "Evening",
        routine_text: ROUTINE,
        source: record::Source::Live,
        software: "tidecount",
        started_at: &began,
    };
    let mut journal = record::Journal::begin(Store::open(&data).expect("opens"), &new, None).expect("begins");
    let told = Fact::MomentTold { from_s: Some(2.0), until_s: Some(3.0), text: Some("i <b>sang</b>".into()) };
    for (at_s, fact) in [(0.0, Fact::SessionBegun { routine: "Evening".into(), steps: 2, software: "test".into() }), (4.0, told)] {
        journal.append(&Entry { at_s, position: None, fact }).expect("keeps");
    }
    drop(journal);
    let (_, page) = pages.get("/history/practice?id=1");
    assert!(page.contains("told in 1") && page.contains("i &lt;b&gt;sang") && !page.contains("<audio"), "no sound was kept: {page}");
    assert_eq!(pages.get("/history/moment?id=1").0, 404);

    let store = Store::open(&data).expect("opens");
    let mut recorder = record::SoundRecorder::begin(store, record::SessionId(1), 0.0, 8000, 30, &began).expect("begins");
    let second = |level: f32| vec![level; 8000];
    for level in [0.0, 0.0, 0.25, 0.0, 0.0] {
        recorder.push(&second(level)).expect("stores");
    }
    drop(recorder.finish().expect("ends"));
    let (_, page) = pages.get("/history/practice?id=1");
    assert!(page.contains("<audio controls preload=\"none\" src=\"/history/moment?id=1\""), "{page}");
    let port = pages.server.port();
    let mut stream = TcpStream::connect(("127.0.0.1", port)).expect("connects");
    stream.write_all(format!("GET /history/moment?id=1 HTTP/1.1\r\n{}\r\n", pages.head()).as_bytes()).expect("sends");
    let mut answer = Vec::new();
    let _ = stream.read_to_end(&mut answer);
    let body = answer.windows(4).position(|at| at == b"RIFF").expect("a WAV");
    let mut wav = hound::WavReader::new(&answer[body..]).expect("reads");
    let samples: Vec<i16> = wav.samples().map(|sample| sample.expect("a sample")).collect();
    assert_eq!((wav.spec().sample_rate, samples.len()), (8000, 8000 + 2 * 2400), "a breath before and behind");
    assert_eq!((samples[0], samples[2400 + 4000], samples[samples.len() - 1]), (0, 8192, 0));
}
