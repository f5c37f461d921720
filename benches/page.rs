//! How fast the live page follows: updates a second, and the time from the engine's effect to the change on the page, in Chromium.
//!
//! `cargo bench --bench page [-- SECONDS]`. The page's clock and ours are the same computer's. Twenty values of the bar a second and
//! ten figures a second are put down, ten times what a practice has, as the sound thread does it.

#[path = "../tests/support/browser.rs"]
mod browser;

use std::collections::BTreeMap;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

use browser::Browser;
use figures::figure;
use hear::{HoldSettings, VoiceFrame, VoiceTask};
use live::observe::{Beginning, Observer};
use pages::follow;
use pages::follow::follower::WebFollower;
use pages::web::Server;
use pages::web::live_page::LiveHub;
use routine::{Hearing, check_text};
use screen::ShownView;
use session::{Arg, Line, Listening, View};
use speak::Words;

/// Pages that watch at one time.
const PAGES: [usize; 3] = [1, 4, 8];

fn now_ms() -> f64 {
    SystemTime::now().duration_since(UNIX_EPOCH).map_or(0.0, |since| since.as_secs_f64() * 1000.0)
}

fn main() {
    let seconds: u64 = std::env::args().skip(1).find_map(|argument| argument.parse().ok()).unwrap_or(20);
    let Some(browser) = Browser::start() else { return };
    for pages in PAGES {
        measure(&browser, pages, seconds);
    }
}

fn measure(browser: &Browser, pages: usize, seconds: u64) {
    let hub = LiveHub::new();
    let words = Words::english().expect("the catalogue");
    let server = Server::start(0, |guard| follow::server::routes(guard, &hub, &words)).expect("serves");
    let mut follower = holding(&hub, words);
    let home = browser.tab();
    let tabs: Vec<_> = (0..pages).map(|_| browser.another_tab(&server.address())).collect();
    for tab in &tabs {
        browser.look_at(tab);
        browser.wait_until("a connection", "document.documentElement.dataset.link === 'open'");
        browser.script(
            "window.times = []; window.frames = []; window.updates = 0;
             const now = () => performance.timeOrigin + performance.now();
             new MutationObserver(() => {
               const text = document.querySelector('#figure').textContent;
               times.push([text, now()]);
               requestAnimationFrame(() => frames.push([text, now()]));
             }).observe(document.querySelector('#figure'), { childList: true, characterData: true, subtree: true });
             new MutationObserver(() => updates++).observe(document.documentElement, { attributes: true, attributeFilter: ['data-seq'] });
             return true;",
        );
    }
    let sent = hold(&mut follower, Duration::from_secs(seconds));
    std::thread::sleep(Duration::from_millis(500));
    let (mut delays, mut drawn, mut updates) = (Vec::new(), Vec::new(), 0.0);
    for tab in &tabs {
        browser.look_at(tab);
        let late = |list: &str| -> Vec<f64> {
            let found = browser.script(&format!("return {list}"));
            let times = found.as_array().expect("a list").iter().filter_map(|pair| Some(pair[1].as_f64()? - sent.get(pair[0].as_str()?)?));
            times.collect()
        };
        delays.extend(late("times"));
        // A tab that is not in sight is not drawn.
        if Some(tab) == tabs.last() {
            drawn = late("frames");
        }
        updates += browser.script("return updates").as_f64().expect("a number");
    }
    let missed = sent.len() * pages - delays.len();
    let per_s = updates / pages as f64 / seconds as f64;
    figure(&format!("page.{pages}.updates"), per_s);
    figure(&format!("page.{pages}.median"), at(&mut delays, 0.5));
    figure(&format!("page.{pages}.p95"), at(&mut delays, 0.95));
    figure(&format!("page.{pages}.longest"), at(&mut delays, 1.0));
    figure(&format!("page.{pages}.drawn"), at(&mut drawn, 0.95));
    if missed > 0 {
        println!("{missed} of {} figures came together with the next one", sent.len() * pages);
    }
    for tab in &tabs {
        browser.look_at(tab);
        browser.close_tab();
    }
    browser.look_at(&home);
}

/// A follower in the middle of a hold.
fn holding(hub: &LiveHub, words: Words) -> WebFollower {
    let mut follower = WebFollower::new(hub.clone(), words);
    let routine = check_text("routine", "title = \"Evening\"\n[[step]]\nexercise = \"long-ah\"\ntarget_s = 12\n", Hearing::default())
        .expect("a routine")
        .routine;
    follower.begins(&Beginning { routine: &routine, usual: &BTreeMap::new(), class: false, by_page: false });
    let name = vec![("name", Arg::Message("ex-long-ah-name".into()))];
    follower.viewed(0.0, &View { heading: Some(Line { key: "heading-step".into(), args: name }), ..View::default() });
    let voice = VoiceTask::Hold(HoldSettings { min_s: 1.0, max_break_s: 0.3, glide: false });
    follower.listens(
        0.0,
        &Listening { commands: Vec::new(), answers: Vec::new(), worded: Vec::new(), list: false, multiword_only: false, voice },
        &[],
    );
    follower
}

/// Frames every 10 ms, a figure every 100 ms; when each figure was given, ms.
fn hold(follower: &mut WebFollower, length: Duration) -> BTreeMap<String, f64> {
    let mut sent = BTreeMap::new();
    let began = Instant::now();
    for n in 0u32.. {
        let due = Duration::from_millis(u64::from(n) * 10);
        if due >= length {
            break;
        }
        std::thread::sleep(due.saturating_sub(began.elapsed()));
        let level_db = -30.0 + 8.0 * (f64::from(n) * 0.05).sin();
        follower.voice(
            &VoiceFrame { t_s: f64::from(n) * 0.01, level_db, f0_hz: 120.0, periodicity: 0.9, voiced: true, masked: false },
            Default::default(),
        );
        if n.is_multiple_of(10) {
            let text = (n / 10 + 1).to_string();
            sent.insert(text.clone(), now_ms());
            follower.shown(
                due.as_secs_f64(),
                &ShownView {
                    heading: "Long ah · 1 of 1".into(),
                    prompt: "Strong voice".into(),
                    figure: text,
                    aside: String::new(),
                    can_say: Vec::new(),
                },
            );
        }
    }
    sent
}

fn at(values: &mut [f64], share: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let last = values.len().saturating_sub(1);
    values.get((share * last as f64).round() as usize).copied().unwrap_or(f64::NAN)
}
