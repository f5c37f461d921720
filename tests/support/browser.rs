//! A real Chromium without a window, driven as a person would.
//!
//! Calls wait until they are answered, so that a test reads from top to bottom. One browser runs at a time.
#![allow(dead_code, reason = "each test takes what it needs")]

#[path = "picture.rs"]
pub mod picture;

use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use axum::http::Method;
use fantoccini::wd::{WebDriverCompatibleCommand, WindowHandle};
use fantoccini::{Client, ClientBuilder, Locator};
use hyper_util::client::legacy::connect::HttpConnector;
use picture::Picture;
use serde_json::{Value, json};
use tokio::runtime::Runtime;

const AXE: &str = include_str!("../browser/axe.min.js");
const CHECKS: &str = include_str!("../browser/checks.js");
/// What is waited for comes sooner or never.
const AT_MOST: Duration = Duration::from_secs(60);

static ONE: Mutex<()> = Mutex::new(());

/// What a page is looked at with: CSS pixels and device pixels for each.
#[derive(Debug, Clone, Copy)]
pub struct Viewport {
    pub name: &'static str,
    pub width: u32,
    pub height: u32,
    pub scale: u32,
    pub touch: bool,
}

pub const FULL_HD: Viewport = Viewport { name: "1080p", width: 1920, height: 1080, scale: 1, touch: false };
pub const TABLET: Viewport = Viewport { name: "tablet", width: 820, height: 1180, scale: 2, touch: true };
/// What 200 % zoom makes of 1920 × 1080: half as many CSS pixels, each twice as large.
pub const ZOOMED: Viewport = Viewport { name: "zoom200", width: 960, height: 540, scale: 2, touch: false };
/// 1280 CSS pixels at 400 % zoom (WCAG 2.2, 1.4.10).
pub const NARROW: Viewport = Viewport { name: "narrow", width: 320, height: 256, scale: 1, touch: false };
pub const PHONE: Viewport = Viewport { name: "phone", width: 390, height: 844, scale: 2, touch: true };
/// The smallest telephone that is common.
pub const SMALL_PHONE: Viewport = Viewport { name: "small-phone", width: 360, height: 640, scale: 2, touch: true };
pub const ALL: [Viewport; 3] = [FULL_HD, TABLET, ZOOMED];

/// A browser with its driver. Dropping it ends both.
pub struct Browser {
    client: Client,
    runtime: Runtime,
    driver: Child,
    _profile: tempfile::TempDir,
    _alone: MutexGuard<'static, ()>,
}

/// A place on the page, CSS pixels.
#[derive(Debug, Clone, Copy, PartialEq, serde::Deserialize)]
pub struct Rect {
    pub left: f64,
    pub top: f64,
    pub width: f64,
    pub height: f64,
}

impl Rect {
    pub fn right(&self) -> f64 {
        self.left + self.width
    }

    pub fn bottom(&self) -> f64 {
        self.top + self.height
    }

    pub fn overlaps(&self, other: &Self) -> bool {
        let apart = self.right() <= other.left + 0.5
            || other.right() <= self.left + 0.5
            || self.bottom() <= other.top + 0.5
            || other.bottom() <= self.top + 0.5;
        !apart
    }
}

impl Browser {
    /// `None`, with a line on standard output, where Chromium or its driver is not installed.
    pub fn start() -> Option<Self> {
        Self::start_with(&[])
    }

    /// As [`Browser::start`], with further switches of Chromium.
    pub fn start_with(switches: &[&str]) -> Option<Self> {
        for program in ["/usr/bin/chromium", "/usr/bin/chromedriver"] {
            if !Path::new(program).exists() {
                skipping::skip(skipping::Missing::Installed, &format!("there is no {program} (apt-get install chromium chromium-driver)"));
                return None;
            }
        }
        let alone = ONE.lock().unwrap_or_else(PoisonError::into_inner);
        let profile = tempfile::tempdir().expect("a folder");
        let mut driver = Command::new("/usr/bin/chromedriver")
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver starts");
        let said = BufReader::new(driver.stdout.take().expect("its output"));
        let port = said.lines().map_while(Result::ok).find_map(|line| {
            let (_, rest) = line.split_once("started successfully on port ")?;
            rest.trim_end_matches('.').parse::<u16>().ok()
        });
        let port = port.expect("chromedriver tells its port");
        let mut args = vec![format!("--user-data-dir={}", profile.path().display())];
        let fixed = [
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--disable-dev-shm-usage",
            "--disable-lcd-text",
            "--hide-scrollbars",
            "--font-render-hinting=none",
            "--force-color-profile=srgb",
        ];
        args.extend(fixed.iter().chain(switches).map(|&switch| switch.to_owned()));
        let wanted = json!({ "browserName": "chrome", "goog:chromeOptions": { "args": args }, "goog:loggingPrefs": { "browser": "ALL" } });
        let Value::Object(wanted) = wanted else { unreachable!("an object") };
        let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(1).enable_all().build().expect("threads");
        let client = runtime.block_on(async {
            ClientBuilder::new(HttpConnector::new())
                .capabilities(wanted.into_iter().collect())
                .connect(&format!("http://127.0.0.1:{port}"))
                .await
        });
        let browser = Self { client: client.expect("Chromium starts"), runtime, driver, _profile: profile, _alone: alone };
        browser.view(FULL_HD);
        Some(browser)
    }

    pub fn open(&self, address: &str) {
        self.runtime.block_on(self.client.goto(address)).expect("opens");
    }

    pub fn reload(&self) {
        self.runtime.block_on(self.client.refresh()).expect("loads again");
    }

    pub fn address(&self) -> String {
        self.runtime.block_on(self.client.current_url()).expect("an address").to_string()
    }

    /// Looks through another window; the page is drawn anew.
    pub fn view(&self, viewport: Viewport) {
        let Viewport { width, height, scale, touch, .. } = viewport;
        self.devtools(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": width, "height": height, "deviceScaleFactor": scale, "mobile": false }),
        );
        self.devtools("Emulation.setTouchEmulationEnabled", json!({ "enabled": touch }));
    }

    /// A media feature as if the system had it, `("prefers-reduced-motion", "reduce")`.
    pub fn media(&self, feature: &str, value: &str) {
        self.devtools("Emulation.setEmulatedMedia", json!({ "features": [{ "name": feature, "value": value }] }));
    }

    /// A command of the DevTools protocol.
    pub fn devtools(&self, command: &str, params: Value) -> Value {
        let order = DevTools { body: json!({ "cmd": command, "params": params }) };
        self.runtime.block_on(self.client.issue_cmd(order)).unwrap_or_else(|why| panic!("{command}: {why}"))
    }

    /// Another tab of the same browser, opened at the address and looked at.
    pub fn another_tab(&self, address: &str) -> WindowHandle {
        let opened = self.runtime.block_on(self.client.new_window(true)).expect("a tab");
        self.look_at(&opened.handle);
        self.view(FULL_HD);
        self.open(address);
        opened.handle
    }

    pub fn tab(&self) -> WindowHandle {
        self.runtime.block_on(self.client.window()).expect("a tab")
    }

    pub fn look_at(&self, tab: &WindowHandle) {
        self.runtime.block_on(self.client.switch_to_window(tab.clone())).expect("looks");
    }

    pub fn close_tab(&self) {
        self.runtime.block_on(self.client.close_window()).expect("closes");
    }

    /// Runs `return …` in the page.
    pub fn script(&self, script: &str) -> Value {
        self.script_with(script, vec![])
    }

    pub fn script_with(&self, script: &str, args: Vec<Value>) -> Value {
        self.runtime.block_on(self.client.execute(script, args)).unwrap_or_else(|why| panic!("{script}: {why}"))
    }

    /// Waits until the expression is true; `what` stands in the message if it never is.
    pub fn wait_until(&self, what: &str, expression: &str) {
        let began = Instant::now();
        while self.script(&format!("return Boolean({expression})")) != json!(true) {
            assert!(began.elapsed() < AT_MOST, "{what} never came; the page shows: {}", self.visible());
            std::thread::sleep(Duration::from_millis(15));
        }
    }

    /// All text that can be seen.
    pub fn visible(&self) -> String {
        self.script("return document.body ? document.body.innerText : ''").as_str().unwrap_or_default().to_owned()
    }

    /// The text of the first element that fits; empty where there is none.
    pub fn text(&self, css: &str) -> String {
        let found =
            self.script_with("const found = document.querySelector(arguments[0]); return found ? found.innerText : ''", vec![json!(css)]);
        found.as_str().unwrap_or_default().trim().to_owned()
    }

    /// Presses it as a mouse does; fails where something lies over it.
    pub fn click(&self, css: &str) {
        let pressed = self.runtime.block_on(async { self.client.find(Locator::Css(css)).await?.click().await });
        pressed.unwrap_or_else(|why| panic!("{css}: {why}; the page shows: {}", self.visible()));
    }

    /// Types into an element, or presses keys there (`fantoccini::key::Key`).
    pub fn type_into(&self, css: &str, text: &str) {
        let typed = self.runtime.block_on(async { self.client.find(Locator::Css(css)).await?.send_keys(text).await });
        typed.unwrap_or_else(|why| panic!("{css}: {why}"));
    }

    /// Presses keys where the focus is.
    pub fn keys(&self, text: &str) {
        let typed = self.runtime.block_on(async { self.client.active_element().await?.send_keys(text).await });
        typed.unwrap_or_else(|why| panic!("{text:?}: {why}"));
    }

    /// Touches the middle of an element with a finger.
    pub fn touch(&self, css: &str) {
        let middle = "const box = document.querySelector(arguments[0]).getBoundingClientRect(); return [box.left + box.width / 2, box.top + box.height / 2]";
        let at = self.script_with(middle, vec![json!(css)]);
        self.devtools("Input.dispatchTouchEvent", json!({ "type": "touchStart", "touchPoints": [{ "x": at[0], "y": at[1] }] }));
        self.devtools("Input.dispatchTouchEvent", json!({ "type": "touchEnd", "touchPoints": [] }));
    }

    /// What the window shows now.
    pub fn picture(&self) -> Picture {
        let png = self.runtime.block_on(self.client.screenshot()).expect("a picture");
        Picture::of_png(&png)
    }

    /// Every fault that axe finds: WCAG 2.0 to 2.2, A and AA, contrast as AAA has it, and good practice.
    pub fn axe(&self) -> Vec<String> {
        self.script(AXE);
        self.script(CHECKS);
        let script = "const done = arguments[0]; tidecountChecks.axe().then(done, (why) => done([String(why)]))";
        faults(&self.runtime.block_on(self.client.execute_async(script, vec![])).expect("axe runs"))
    }

    /// Every text with a contrast of less than 7 to 1, large text included.
    pub fn low_contrast(&self) -> Vec<String> {
        self.script(CHECKS);
        faults(&self.script("return tidecountChecks.contrast(7)"))
    }

    /// What is too small to press (under `least_px`), runs out of the page or is cut off.
    pub fn layout_faults(&self, least_px: u32) -> Vec<String> {
        self.script(CHECKS);
        faults(&self.script(&format!("return tidecountChecks.layout({least_px})")))
    }

    /// Where the parts of the page lie that bear a `data-region`.
    pub fn regions(&self) -> std::collections::BTreeMap<String, Rect> {
        self.script(CHECKS);
        serde_json::from_value(self.script("return tidecountChecks.regions()")).expect("places")
    }

    /// Everything that a page must pass, whatever it shows. `what` names it in the message.
    pub fn assert_accessible(&self, what: &str) {
        let mut all = self.axe();
        all.extend(self.low_contrast());
        all.extend(self.layout_faults(44));
        assert!(all.is_empty(), "{what}:\n{}", all.join("\n"));
    }
}

fn faults(found: &Value) -> Vec<String> {
    found.as_array().expect("a list of faults").iter().map(|fault| fault.as_str().unwrap_or_default().to_owned()).collect()
}

impl Drop for Browser {
    fn drop(&mut self) {
        let _ = self.runtime.block_on(self.client.clone().close());
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

#[derive(Debug)]
struct DevTools {
    body: Value,
}

impl WebDriverCompatibleCommand for DevTools {
    fn endpoint(&self, base: &url::Url, session: Option<&str>) -> Result<url::Url, url::ParseError> {
        base.join(&format!("session/{}/goog/cdp/execute", session.unwrap_or_default()))
    }

    fn method_and_body(&self, _url: &url::Url) -> (Method, Option<String>) {
        (Method::POST, Some(self.body.to_string()))
    }
}
