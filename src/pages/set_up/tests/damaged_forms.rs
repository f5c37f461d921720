//! Whatever a form brings, and whatever stands where a request should, is answered or refused; nothing panics, and the pages go on.

use super::served::{Pages, ask};
use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

const PATHS: &[&str] = &[
    "/start",
    "/microphone",
    "/calibration",
    "/own-voice",
    "/cautions",
    "/routines/new",
    "/routines/choose",
    "/routines/edit",
    "/sound",
    "/caseload/client",
    "/break-off",
];

/// Names that forms have, and some that none has.
const NAMES: &[&str] = &[
    "do",
    "client",
    "file",
    "text",
    "was",
    "title",
    "step",
    "exercise",
    "index",
    "mic",
    "speaker",
    "days",
    "id",
    "repetitions",
    "name",
    "",
    "step.0.exercise",
    "step.999999.x",
    "\u{202e}",
];

const VALUES: &[&str] = &[
    "",
    "start",
    "save",
    "up",
    "down",
    "remove",
    "add",
    "keep",
    "yes",
    "grandpa",
    "evening.toml",
    "../../x",
    "/etc/hosts",
    "-1",
    "0",
    "1e999",
    "nan",
    "99999999999999999999",
    "title = \"x\"\n[[step]]\nexercise = \"long-ah\"\n",
    "[[step]]",
    "\0",
    "\u{202e}x",
    "ü",
    "{}",
    "%%",
];

#[derive(Debug, Clone)]
enum Sent {
    Form(usize, Vec<(usize, usize)>),
    /// A body that is no form.
    Body(usize, Vec<u8>),
    /// Bytes in place of a request.
    Bytes(Vec<u8>),
}

fn sent() -> impl Strategy<Value = Sent> {
    prop_oneof![
        6 => (0..PATHS.len(), prop::collection::vec((0..NAMES.len(), 0..VALUES.len()), 0..8)).prop_map(|(path, fields)| Sent::Form(path, fields)),
        2 => (0..PATHS.len(), prop::collection::vec(any::<u8>(), 0..200)).prop_map(|(path, body)| Sent::Body(path, body)),
        1 => prop::collection::vec(any::<u8>(), 1..200).prop_map(Sent::Bytes),
    ]
}

#[test]
fn damaged_forms_are_answered_and_the_pages_go_on() {
    let pages = Pages::open();
    let config = Config { failure_persistence: None, ..Config::default() };
    let mut runner = TestRunner::new(config);
    let done = runner.run(&sent(), |sent| {
        let status = match &sent {
            Sent::Form(path, fields) => {
                let fields: Vec<(&str, &str)> = fields.iter().map(|(name, value)| (NAMES[*name], VALUES[*value])).collect();
                pages.post(PATHS[*path], &fields).0
            }
            Sent::Body(path, body) => {
                let mut request = pages.post_head(PATHS[*path], body.len()).into_bytes();
                request.extend(body);
                ask(pages.port(), &request).0
            }
            Sent::Bytes(bytes) => {
                // What is no request may be left without an answer; the line feeds end it.
                ask(pages.port(), &[&bytes[..], b"\r\n\r\n"].concat());
                400
            }
        };
        prop_assert!((200..500).contains(&status), "{status}: {sent:?}");
        Ok(())
    });
    assert!(done.is_ok(), "{done:?}");
    assert_eq!(pages.get("/today").0, 200);
}
