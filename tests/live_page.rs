//! Promise: the live page shows what matters now, readable at two metres and by everybody, follows whatever happens to the
//! connection, and takes presses, keys and touches.
//!
//! In real Chromium; what stands on the page is put there by the test. A whole practice on the page: `live_page_practice.rs`.

#[path = "support/browser.rs"]
mod browser;
#[path = "support/live_scenes.rs"]
mod live_scenes;

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use axum::extract::{Request, State};
use axum::http::StatusCode;
use axum::middleware::{Next, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use browser::{ALL, Browser, FULL_HD, NARROW, PHONE, Rect, SMALL_PHONE, TABLET, Viewport, ZOOMED};
use live_scenes::{BY_PAGE, SCENES, Scene, offers, rows, said};
use pages::follow;
use pages::web::Server;
use pages::web::live_page::{Asked, Figure, LiveHub, Picture, Section, Who};
use serde_json::json;
use speak::Words;

/// A page with a switch that cuts it off, as a computer that sleeps does.
struct Served {
    hub: LiveHub,
    server: Server,
    away: Arc<AtomicBool>,
}

fn serve(hub: &LiveHub, port: u16) -> Served {
    let away = Arc::new(AtomicBool::new(false));
    let words = Words::english().expect("the catalogue");
    let server = Server::start(port, |guard| follow::server::routes(guard, hub, &words).layer(from_fn_with_state(away.clone(), cut)));
    Served { hub: hub.clone(), server: server.expect("serves"), away }
}

async fn cut(State(away): State<Arc<AtomicBool>>, request: Request, next: Next) -> Response {
    use tokio_stream::StreamExt as _;
    if away.load(Ordering::Relaxed) {
        return StatusCode::SERVICE_UNAVAILABLE.into_response();
    }
    let (head, body) = next.run(request).await.into_parts();
    let body = body.into_data_stream().take_while(move |_| !away.load(Ordering::Relaxed));
    Response::from_parts(head, axum::body::Body::from_stream(body))
}

/// A page that shows a scene, in the browser.
fn opened(scene: Scene) -> Option<(Served, Browser)> {
    let browser = Browser::start()?;
    let served = serve(&LiveHub::new(), 0);
    (scene.put)(&served.hub);
    browser.open(&served.server.address());
    follows(&browser);
    Some((served, browser))
}

fn follows(browser: &Browser) {
    browser.wait_until("a connection", "document.documentElement.dataset.link === 'open' && document.documentElement.dataset.seq > 0");
}

fn scene(name: &str) -> Scene {
    SCENES.into_iter().find(|scene| scene.name == name).expect("a scene")
}

fn put_figure(hub: &LiveHub, text: &str) {
    hub.set(Section::Figure, &Figure { text: text.into(), ..Figure::default() });
}

/// The next thing that a page asks for.
fn asked(hub: &LiveHub) -> Asked {
    for _ in 0..4000 {
        if let Some(asked) = hub.take_asked() {
            return asked;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    panic!("nothing was asked for");
}

fn command(name: &str) -> Asked {
    Asked::Command(name.into())
}

// What it looks like.

/// Regions that stand beside or under each other.
const APART: [&[&str]; 3] = [
    &["top", "stage", "captions", "say"],
    &["always", "heading", "doing"],
    &["picture", "sentence", "prompt", "aside", "figure", "bar", "summary"],
];

fn check_places(browser: &Browser, scene: &str, viewport: Viewport) {
    let regions = browser.regions();
    let name = format!("{scene} at {}", viewport.name);
    let (width, height) = (f64::from(viewport.width), f64::from(viewport.height));
    for (region, place) in &regions {
        assert!(place.left >= -0.5 && place.right() <= width + 0.5 && place.top >= -0.5, "{name}: {region} runs out: {place:?}");
        // Nothing that matters now needs scrolling; a long list of what was done may.
        assert!(scene == "over" || place.bottom() <= height + 0.5, "{name}: {region} is out of sight: {place:?}");
    }
    for group in APART {
        let places: Vec<_> = group.iter().filter_map(|region| Some((region, regions.get(*region)?))).collect();
        for (index, (one, place)) in places.iter().enumerate() {
            for (other, there) in &places[index + 1..] {
                assert!(!place.overlaps(there), "{name}: {one} lies over {other}: {place:?}, {there:?}");
            }
        }
    }
    for region in ["top", "heading", "stage", "captions", "say"] {
        assert!(regions.contains_key(region), "{name}: there is no {region}: {regions:?}");
    }
}

#[test]
fn every_scene_looks_as_intended_and_has_no_fault() {
    let Some(browser) = Browser::start() else { return };
    for scene in BY_PAGE.into_iter().chain(SCENES) {
        let served = serve(&LiveHub::new(), 0);
        (scene.put)(&served.hub);
        browser.open(&served.server.address());
        follows(&browser);
        browser.script("return document.fonts.ready.then(() => true)");
        // Whoever is led by the page alone may have no other screen than a telephone.
        let by_page = scene.name.starts_with("by-page");
        for viewport in ALL.into_iter().chain(by_page.then_some(PHONE)) {
            browser.view(viewport);
            browser.script_with("const done = arguments[0]; return new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(then, 250))))", vec![]);
            check_places(&browser, scene.name, viewport);
            browser.picture().assert_looks_like(&format!("live-{}-{}", scene.name, viewport.name));
            browser.assert_accessible(&format!("{} at {}", scene.name, viewport.name));
        }
        // On a small telephone it is read from the hand: everything that matters now is there, and nothing lies over anything.
        browser.view(SMALL_PHONE);
        check_places(&browser, scene.name, SMALL_PHONE);
        let faults = browser.layout_faults(44);
        assert!(faults.is_empty(), "{} at {}: {faults:?}", scene.name, SMALL_PHONE.name);
    }
}

/// Angles of capitals in minutes of arc at two metres, on a screen of 24 inches and 1920 × 1080 (0.2767 mm a pixel):
/// 2·atan(h / 2D). At least 16′, better 20 to 22′ (ISO 9241-3); 30′ for older eyes, 40′ for a counter (trade notes 7.2).
#[test]
fn type_is_large_enough_for_two_metres() {
    const MM_A_PIXEL: f64 = 0.2767;
    let Some((served, browser)) = opened(scene("hold")) else { return };
    let angle = |css: &str| {
        let capital = "const style = getComputedStyle(document.querySelector(arguments[0])); const pen = document.createElement('canvas').getContext('2d'); \
                       pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`; return pen.measureText('H').actualBoundingBoxAscent";
        let height_mm = browser.script_with(capital, vec![json!(css)]).as_f64().expect("a height") * MM_A_PIXEL;
        2.0 * (height_mm / 2.0 / 2000.0).atan().to_degrees() * 60.0
    };
    for (css, least) in [
        ("#figure", 40.0),
        ("#prompt", 30.0),
        ("#heading", 20.0),
        ("#part", 20.0),
        ("#row-2", 20.0),
        ("#stop", 20.0),
        ("#now button", 20.0),
        ("#gauge-words", 20.0),
        ("#goal-label", 20.0),
        ("#of", 20.0),
        ("#mood", 20.0),
    ] {
        assert!(angle(css) >= least, "{css}: {:.1}′, not {least}′", angle(css));
    }
    drop(served);
}

/// The beat is seen without motion: one disc is filled, then the other; and where motion is unwanted nothing glides.
#[test]
fn where_the_page_alone_leads_each_beat_is_seen_and_needs_no_motion() {
    let browser = Browser::start();
    let Some(browser) = browser else { return };
    browser.media("prefers-reduced-motion", "reduce");
    let served = serve(&LiveHub::new(), 0);
    let of = BY_PAGE.into_iter().find(|scene| scene.name == "by-page-breathe").expect("a scene");
    (of.put)(&served.hub);
    browser.open(&served.server.address());
    follows(&browser);
    let filled =
        "[...document.querySelectorAll('#beat span')].map((disc) => getComputedStyle(disc).backgroundColor !== 'rgba(0, 0, 0, 0)')";
    let mut seen = Vec::new();
    for count in ["6", "7", "8"] {
        put_figure(&served.hub, count);
        browser.wait_until("the count", &format!("document.querySelector('#figure').textContent === '{count}'"));
        seen.push(browser.script(&format!("return {filled}")));
    }
    assert!(seen.iter().all(|discs| *discs == json!([true, false]) || *discs == json!([false, true])), "{seen:?}");
    assert!(seen[0] != seen[1] && seen[1] != seen[2], "{seen:?}");
    let glides = browser
        .script("return [...document.querySelectorAll('#beat span, #line-done')].map((part) => getComputedStyle(part).transitionDuration)");
    assert_eq!(glides, json!(["0s", "0s", "0s"]));
    // Without a page that leads, no beat takes room.
    served.hub.set(Section::ByPage, &pages::web::live_page::ByPage::default());
    browser.wait_until("a voice that leads", "!document.body.classList.contains('by-page')");
    assert_eq!(browser.script("return getComputedStyle(document.querySelector('#beat')).display"), "none");
}

/// A picture makes no figure smaller and pushes nothing out of sight, and it is large where there is room.
#[test]
fn a_picture_takes_only_the_room_that_is_left() {
    let Some(browser) = Browser::start() else { return };
    let served = serve(&LiveHub::new(), 0);
    (scene("ask").put)(&served.hub);
    browser.open(&served.server.address());
    follows(&browser);
    for name in ["hold", "pitch", "paced", "told", "posture", "rising"] {
        (scene(name).put)(&served.hub);
        browser.wait_until("the picture", "document.body.classList.contains('pictured')");
        for (viewport, least) in [(FULL_HD, Some(300.0)), (TABLET, None), (ZOOMED, Some(130.0)), (PHONE, None)] {
            browser.view(viewport);
            let with = browser.regions();
            browser.script("document.body.classList.remove('pictured'); document.querySelector('#picture').hidden = true; return true");
            let without = browser.regions();
            browser.script("document.body.classList.add('pictured'); document.querySelector('#picture').hidden = false; return true");
            let what = format!("{name} at {}", viewport.name);
            // Where there is little room, it is away rather than too small to be made out.
            let side = with.get("picture").map(|place| place.width.min(place.height));
            assert!(side.map_or(least.is_none(), |side| side >= least.unwrap_or(80.0)), "{what}: the picture is {side:?} px large");
            for (region, place) in &with {
                let lowest = without.get(region).map_or(0.0, Rect::bottom).max(f64::from(viewport.height));
                assert!(place.bottom() <= lowest + 0.5, "{what}: {region} is pushed down to {}", place.bottom());
                assert!(place.left >= -0.5 && place.right() <= f64::from(viewport.width) + 0.5, "{what}: {region} runs out: {place:?}");
            }
            if let (Some(figure), Some(before)) = (with.get("figure"), without.get("figure")) {
                assert_eq!((figure.width, figure.height), (before.width, before.height), "{what}");
            }
        }
        served.hub.set(Section::Picture, &Picture::default());
        browser.wait_until("no picture", "!document.body.classList.contains('pictured')");
    }
}

/// Each name has its drawing on the page, and what is seen is told in its place.
#[test]
fn every_picture_is_drawn_on_the_page_and_told() {
    let Some((served, browser)) = opened(scene("told")) else { return };
    let shown = "const box = document.querySelector('#drawn').getBBox(); const picture = document.querySelector('#picture'); \
                 return [box.width > 50 && box.height > 20, picture.getAttribute('role'), picture.getAttribute('aria-label')]";
    for picture in pictures::all() {
        served.hub.set(Section::Picture, &Picture { name: picture.name.into(), described: picture.described() });
        let there = format!("document.querySelector('#drawn').getAttribute('href') === '#picture-{}'", picture.name);
        browser.wait_until("the picture", &there);
        assert_eq!(browser.script(shown), json!([true, "img", picture.described()]), "{}", picture.name);
    }
}

/// WCAG 2.2: 1.4.10 (no scrolling sideways at 320 px), 1.4.12 (spacing of text), 1.4.4 (letters twice as large).
#[test]
fn nothing_is_lost_when_narrow_spaced_or_enlarged() {
    let Some((served, browser)) = opened(scene("hold")) else { return };
    browser.view(NARROW);
    browser.assert_accessible("narrow");
    browser.view(FULL_HD);
    let style = |css: &str| {
        let add = "const sheet = new CSSStyleSheet(); sheet.replaceSync(arguments[0]); document.adoptedStyleSheets = [sheet]; return true";
        browser.script_with(add, vec![json!(css)]);
    };
    style(
        "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }",
    );
    assert_eq!(browser.layout_faults(44), [""; 0], "with wide spacing");
    style("html { font-size: 200% }");
    assert_eq!(browser.layout_faults(44), [""; 0], "with letters twice as large");
    browser.script("document.querySelector('#stop').scrollIntoView(); return true");
    browser.click("#stop");
    assert_eq!(asked(&served.hub), command("stop"));
}

#[test]
fn nothing_moves_where_motion_is_not_wanted() {
    let Some((_served, browser)) = opened(scene("hold")) else { return };
    let moving = "return [...document.querySelectorAll('*')].filter((e) => [null, '::after'].some((p) => parseFloat(getComputedStyle(e, p).transitionDuration) > 0 || getComputedStyle(e, p).animationName !== 'none')).map((e) => e.id)";
    assert_ne!(browser.script(moving), json!([]), "the bar glides where motion is no matter");
    browser.media("prefers-reduced-motion", "reduce");
    assert_eq!(browser.script(moving), json!([]));
}

// What is pressed.

#[test]
fn stop_is_first_and_works_by_mouse_keyboard_and_touch() {
    let Some((served, browser)) = opened(scene("hold")) else { return };
    let hub = &served.hub;
    browser.click("#stop");
    assert_eq!(asked(hub), command("stop"));
    browser.reload();
    follows(&browser);
    browser.keys(&fantoccini::key::Key::Tab.to_string());
    assert_eq!(browser.script("return document.activeElement.id"), "stop");
    browser.keys(&fantoccini::key::Key::Enter.to_string());
    assert_eq!(asked(hub), command("stop"));
    browser.keys(&fantoccini::key::Key::Escape.to_string());
    assert_eq!(asked(hub), command("stop"));
    browser.click("#now button[data-command=skip]");
    assert_eq!(asked(hub), command("skip"));
    browser.view(TABLET);
    browser.touch("#pause");
    assert_eq!(asked(hub), command("pause"));
    browser.touch("#stop");
    assert_eq!(asked(hub), command("stop"));
    // Many presses, one after the other: each needs a number of its own.
    for _ in 0..12 {
        browser.click("#stop");
        assert_eq!(asked(hub), command("stop"));
    }
    browser.view(ZOOMED);
    browser.script("scrollTo(0, document.body.scrollHeight); return true");
    browser.click("#stop");
    assert_eq!(asked(hub), command("stop"));
}

#[test]
fn letters_mean_nothing_until_keys_are_switched_on() {
    let Some((served, browser)) = opened(scene("hold")) else { return };
    let hub = &served.hub;
    let press = |key: &str| browser.type_into("body", key);
    press("s");
    press(" ");
    press(&fantoccini::key::Key::PageDown.to_string());
    browser.click("#more");
    browser.click("label:has(#keys)");
    assert_eq!(hub.take_asked(), None, "letters are off");
    browser.script("document.activeElement.blur(); return true");
    press("s");
    assert_eq!(asked(hub), Asked::Key("skip".into()));
    press(&fantoccini::key::Key::PageDown.to_string());
    assert_eq!(asked(hub), Asked::Key("done".into()));
    browser.reload();
    follows(&browser);
    press("p");
    assert_eq!(asked(hub), Asked::Key("pause".into()), "the choice is kept");
}

#[test]
fn what_can_be_said_changes_under_the_fingers_and_nothing_false_is_pressed() {
    let Some((served, browser)) = opened(scene("ask")) else { return };
    let hub = &served.hub;
    browser.script("document.querySelector('#now button').focus(); return true");
    browser.keys(&fantoccini::key::Key::Enter.to_string());
    assert_eq!(asked(hub), command("yes"));
    hub.offer(&offers(&["ready"], &[]));
    browser.wait_until("the new words", "document.querySelector('#now button').dataset.command === 'ready'");
    assert_eq!(browser.script("return document.activeElement.id"), "now", "the focus stays near, on nothing that can be pressed");
    browser.keys(&fantoccini::key::Key::Enter.to_string());
    browser.keys(&fantoccini::key::Key::Tab.to_string());
    browser.keys(&fantoccini::key::Key::Enter.to_string());
    assert_eq!(asked(hub), command("ready"));
    // A page that is a moment behind: what it presses is no longer offered, and it says so.
    browser.script("const late = document.createElement('button'); late.id = 'late'; late.dataset.command = 'yes'; late.textContent = 'yes'; document.querySelector('#now').append(late); return true");
    browser.click("#late");
    browser.wait_until("a word about it", "document.querySelector('#link').textContent.includes(`You can't say that right now`)");
    assert_eq!(hub.take_asked(), None);
}

// Who watches.

#[test]
fn it_survives_a_reload_and_more_pages_than_a_browser_has_connections() {
    let Some((served, browser)) = opened(scene("hold")) else { return };
    let hub = &served.hub;
    put_figure(hub, "8");
    browser.wait_until("the figure", "document.querySelector('#figure').textContent === '8'");
    browser.reload();
    browser.wait_until(
        "the same after a reload",
        "document.querySelector('#figure').textContent === '8' && document.querySelector('#prompt').textContent === 'Strong voice'",
    );
    let first = browser.tab();
    let address = browser.address();
    let tabs: Vec<_> = (0..8).map(|_| browser.another_tab(&address)).collect();
    put_figure(hub, "9");
    for tab in tabs.iter().chain([&first]) {
        browser.look_at(tab);
        browser.wait_until("the figure on every page", "document.querySelector('#figure').textContent === '9'");
    }
    browser.click("#stop");
    assert_eq!(asked(hub), command("stop"));
    browser.look_at(&tabs[7]);
    browser.click("#pause");
    assert_eq!(asked(hub), command("pause"));
}

#[test]
fn it_says_so_when_it_is_cut_off_and_comes_back_by_itself() {
    let Some((served, browser)) = opened(scene("hold")) else { return };
    served.away.store(true, Ordering::Relaxed);
    put_figure(&served.hub, "20");
    browser
        .wait_until("words about it", "document.querySelector('#link').textContent === 'The practice goes on. This page is reconnecting.'");
    assert_eq!(browser.text("#prompt"), "Strong voice", "what stood there stays");
    browser.assert_accessible("while it is cut off");
    served.away.store(false, Ordering::Relaxed);
    browser.wait_until(
        "the newest after that",
        "document.querySelector('#figure').textContent === '20' && document.querySelector('#link').textContent === ''",
    );
    browser.click("#stop");
    assert_eq!(asked(&served.hub), command("stop"));
}

#[test]
fn a_program_that_was_started_anew_is_told_from_one_that_is_away() {
    let Some((served, browser)) = opened(scene("hold")) else { return };
    let (hub, port) = (served.hub.clone(), served.server.port());
    drop(served);
    browser.wait_until("words about it", "document.querySelector('#link').textContent.includes('reconnecting')");
    let anew = serve(&hub, port);
    browser.wait_until("words about the new start", "document.querySelector('#link').textContent.includes('restarted')");
    browser.open(&anew.server.address());
    follows(&browser);
    browser.click("#stop");
    assert_eq!(asked(&hub), command("stop"));
}

#[test]
fn after_the_end_it_does_not_pretend_that_the_practice_goes_on() {
    let Some((served, browser)) = opened(scene("over")) else { return };
    drop(served);
    browser.wait_until(
        "words about it",
        "document.querySelector('#link').textContent === 'The practice program has ended. You can close this page.'",
    );
    assert!(browser.visible().contains("Nasal breathing"), "the summary stays");
}

// Who listens.

#[test]
fn a_screen_reader_hears_whole_lines_and_no_counts() {
    let Some((served, browser)) = opened(scene("hold")) else { return };
    let hub = &served.hub;
    let log = || browser.script("return [...document.querySelectorAll('#log p')].map((p) => p.textContent)");
    assert_eq!(log(), json!([]), "what was said before is not read out");
    hub.set(Section::Said, &said(&["Number two.", "Breathe in… and ah."]));
    hub.set(Section::Rows, &rows(&[(Who::Tool, "Number two.")]));
    for n in 10..20 {
        put_figure(hub, &n.to_string());
    }
    browser.wait_until("the lines", "document.querySelectorAll('#log p').length > 0");
    browser.wait_until("the figure", "document.querySelector('#figure').textContent === '19'");
    let live = browser
        .script("return [...document.querySelectorAll('[aria-live]:not([aria-live=off]), [role=log], [role=status]')].map((e) => e.id)");
    assert_eq!(live, json!(["log", "link"]), "nothing else speaks");
    assert_eq!(browser.script("return document.querySelector('#log').getAttribute('aria-live')"), "polite");
    assert!(!log().to_string().contains("19"), "{}", log());
    browser.click("#more");
    browser.click("#more");
    browser.click("#more");
    browser.click("label:has(#aloud)");
    assert_eq!(browser.script("return document.querySelector('#log').getAttribute('aria-live')"), "off");
    browser.assert_accessible("with everything open");
}
