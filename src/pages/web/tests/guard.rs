//! The server is asked over a real socket, as a stranger would.

use super::super::{Limits, Server};
use axum::routing::{get, post};
use axum::{Form, Router};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::sync::Arc;
use std::time::Duration;

fn server() -> (Server, Arc<super::Guard>) {
    server_within(Limits::default())
}

fn server_within(limits: Limits) -> (Server, Arc<super::Guard>) {
    let mut own = None;
    let server = Server::start_within(limits, 0, |guard| {
        own = Some(guard);
        Router::new()
            .route("/", get(|| async { "inside" }))
            .route("/echo", get(|form: Form<Vec<(String, String)>>| async move { format!("{} pairs", form.0.len()) }))
            .route("/do", post(|body: String| async move { body }))
    });
    (server.expect("starts"), own.expect("a guard"))
}

fn ask(server: &Server, request: &str) -> (u16, String) {
    let mut stream = TcpStream::connect(("127.0.0.1", server.port())).expect("connects");
    // A request that is never whole would be waited for.
    stream.set_read_timeout(Some(std::time::Duration::from_secs(2))).expect("a limit");
    let _ = stream.write_all(request.as_bytes());
    let mut answer = Vec::new();
    let _ = stream.read_to_end(&mut answer);
    let answer = String::from_utf8_lossy(&answer).into_owned();
    let status = answer.split_whitespace().nth(1).and_then(|code| code.parse().ok()).unwrap_or(0);
    (status, answer)
}

fn get_with(server: &Server, path: &str, headers: &str) -> (u16, String) {
    ask(server, &format!("GET {path} HTTP/1.1\r\nConnection: close\r\n{headers}\r\n"))
}

/// Host and cookie of the browser that was let in.
fn inside(server: &Server, guard: &super::Guard) -> String {
    format!("Host: 127.0.0.1:{}\r\nCookie: {}={}\r\n", server.port(), guard.cookie_name(), guard.cookie)
}

#[test]
fn the_printed_address_lets_in_and_no_other() {
    let (server, guard) = server();
    let host = format!("Host: 127.0.0.1:{}\r\n", server.port());
    assert_eq!(get_with(&server, "/", &host).0, 403);
    assert_eq!(get_with(&server, "/enter?key=00000000000000000000000000000000", &host).0, 403);
    let path = server.address().split_once(&server.port().to_string()).expect("a port").1.to_owned();
    let (status, answer) = get_with(&server, &path, &host);
    assert_eq!(status, 303);
    assert!(answer.to_lowercase().contains("httponly; samesite=strict"), "{answer}");
    assert!(answer.contains(&guard.cookie) && !answer.contains(guard.key()), "the cookie is not the key: {answer}");
    let with_key = format!("{host}Cookie: {}={}\r\n", guard.cookie_name(), guard.key());
    assert_eq!(get_with(&server, "/", &with_key).0, 403, "the key is no cookie");
    let (status, answer) = get_with(&server, "/", &inside(&server, &guard));
    assert_eq!(status, 200, "{answer}");
    assert!(answer.contains("default-src 'none'") && answer.contains("inside"), "{answer}");
    assert_eq!(get_with(&server, "/elsewhere", &inside(&server, &guard)).0, 404);
}

#[test]
fn another_host_or_origin_is_refused_even_with_the_key() {
    let (server, guard) = server();
    let cookie = format!("Cookie: {}={}\r\n", guard.cookie_name(), guard.cookie);
    for host in ["Host: example.test\r\n", "Host: 127.0.0.1\r\n", "", "Host: 127.0.0.1:1\r\n"] {
        let status = get_with(&server, "/", &format!("{host}{cookie}")).0;
        assert!(status == 421 || (host.is_empty() && status == 400), "{host}: {status}");
    }
    let own = inside(&server, &guard);
    for other in ["Origin: http://example.test\r\n", "Origin: null\r\n", "Sec-Fetch-Site: cross-site\r\n", "Sec-Fetch-Site: same-site\r\n"]
    {
        assert_eq!(get_with(&server, "/", &format!("{own}{other}")).0, 403, "{other}");
    }
    assert_eq!(get_with(&server, "/", &format!("{own}Sec-Fetch-Site: none\r\n")).0, 200);
    let twice = format!("{own}Host: example.test\r\n");
    assert_ne!(get_with(&server, "/", &twice).0, 200);
}

#[test]
fn what_changes_something_is_good_once_and_from_our_own_page_alone() {
    let (server, guard) = server();
    let post = |headers: &str, number: &str, body: &str| {
        let own = inside(&server, &guard);
        let length = body.len();
        ask(
            &server,
            &format!("POST /do?once={number} HTTP/1.1\r\nConnection: close\r\n{own}{headers}Content-Length: {length}\r\n\r\n{body}"),
        )
        .0
    };
    let origin = format!("Origin: http://127.0.0.1:{}\r\n", server.port());
    let number = guard.once();
    assert_eq!(post("", &number, "x"), 403, "without an origin");
    assert_eq!(post(&origin, "guessed", "x"), 409);
    assert_eq!(post(&origin, &number, "x"), 200);
    assert_eq!(post(&origin, &number, "x"), 409, "sent a second time");
    let too_much = super::BODY_LIMIT_BYTES + 1;
    let head = format!("POST /do?once={} HTTP/1.1\r\n{}{origin}Content-Length: {too_much}\r\n\r\n", guard.once(), inside(&server, &guard));
    assert_eq!(ask(&server, &head).0, 413);
    // In pieces, without telling how much it will be.
    let head = format!("POST /do?once={} HTTP/1.1\r\n{}{origin}Transfer-Encoding: chunked\r\n\r\n", guard.once(), inside(&server, &guard));
    assert_eq!(ask(&server, &format!("{head}{too_much:x}\r\n{}", "x".repeat(too_much))).0, 413);
}

#[test]
fn what_is_no_request_gets_an_error_and_the_server_lives_on() {
    let (server, guard) = server();
    let own = inside(&server, &guard);
    for odd in ["\r\n\r\n", "GET / HTTP/9.9\r\n\r\n", "\u{0}\u{1}\u{2}\r\n\r\n", "PUT / HTTP/1.1\r\nContent-Length: nine\r\n\r\n"] {
        assert_ne!(ask(&server, odd).0, 200, "{odd:?}");
    }
    assert_eq!(ask(&server, &format!("DELETE / HTTP/1.1\r\nConnection: close\r\n{own}\r\n")).0, 405);
    assert_eq!(get_with(&server, &format!("/?{}", "x".repeat(3000)), &own).0, 414);
    assert_eq!(get_with(&server, "/", &own).0, 200);
}

#[test]
fn nothing_but_loopback_is_bound() {
    let (server, _guard) = server();
    // The kernel's own table: local addresses of listening sockets, hexadecimal, the bytes of 127.0.0.1 in reverse.
    let Ok(table) = std::fs::read_to_string("/proc/net/tcp") else { return };
    let port = format!(":{:04X}", server.port());
    let bound: Vec<&str> = table.lines().filter_map(|line| line.split_whitespace().nth(1)).filter(|local| local.ends_with(&port)).collect();
    assert!(!bound.is_empty() && bound.iter().all(|local| local.starts_with("0100007F:")), "{bound:?}");
    let six = std::fs::read_to_string("/proc/net/tcp6").unwrap_or_default();
    assert!(!six.lines().filter_map(|line| line.split_whitespace().nth(1)).any(|local| local.ends_with(&port)));
}

#[test]
fn a_port_that_is_taken_is_named_with_a_remedy() {
    let (server, _guard) = server();
    let refused = Server::start(server.port(), |_| Router::new()).expect_err("taken").to_string();
    assert!(refused.contains(&server.port().to_string()) && refused.contains("--screen-port"), "{refused}");
}

#[test]
fn a_ticket_holds_no_key_and_lets_in_once() {
    let (server, guard) = server();
    let host = format!("Host: 127.0.0.1:{}\r\n", server.port());
    let path = |address: String| address.split_once(&server.port().to_string()).expect("a port").1.to_owned();
    let (void, good) = (server.address_for_browser(), server.address_for_browser());
    assert!(!good.contains(guard.key()) && !good.contains(&guard.cookie), "{good}");
    assert_eq!(get_with(&server, &path(void), &host).0, 403, "a newer one was given");
    let (status, answer) = get_with(&server, &path(good.clone()), &host);
    assert!(status == 303 && answer.contains(&guard.cookie), "{answer}");
    assert_eq!(get_with(&server, &path(good), &host).0, 403, "a second time");
    assert_eq!(get_with(&server, "/enter?ticket=", &host).0, 403);
}

#[test]
fn two_servers_have_cookies_of_different_names_and_values() {
    let ((_one, one), (_other, other)) = (server(), server());
    assert!(one.cookie_name() != other.cookie_name() && one.cookie != other.cookie);
}

#[test]
fn head_is_answered_as_get_without_a_body() {
    let (server, guard) = server();
    let own = inside(&server, &guard);
    let head_of = |answer: &str| -> Vec<String> {
        let head = answer.split("\r\n\r\n").next().unwrap_or_default();
        let mut lines: Vec<String> = head.lines().filter(|line| !line.to_lowercase().starts_with("date:")).map(str::to_owned).collect();
        // Their order means nothing.
        lines.sort();
        lines
    };
    for path in ["/", "/echo?a=1&b=2", "/nowhere", "/assets/style.css", "/do"] {
        let (_, got) = get_with(&server, path, &own);
        let (_, asked) = ask(&server, &format!("HEAD {path} HTTP/1.1\r\nConnection: close\r\n{own}\r\n"));
        assert_eq!(head_of(&asked), head_of(&got), "{path}");
        assert!(asked.ends_with("\r\n\r\n"), "{path} has a body: {asked}");
    }
}

fn hurried() -> Limits {
    Limits { connections: 4, head: Duration::from_millis(100), body: Duration::from_millis(100) }
}

/// Connects and sends this, and no more.
fn held(server: &Server, sent: &str) -> TcpStream {
    let mut stream = TcpStream::connect(("127.0.0.1", server.port())).expect("connects");
    stream.write_all(sent.as_bytes()).expect("sends");
    // Longer than any test may take: it only keeps a failing one from standing still.
    stream.set_read_timeout(Some(Duration::from_secs(60))).expect("a limit");
    stream
}

/// What comes until the other end closes; none where it never does.
fn until_closed(mut stream: TcpStream) -> Option<String> {
    let mut answer = Vec::new();
    match stream.read_to_end(&mut answer) {
        Ok(_) => {}
        Err(why) if why.kind() == std::io::ErrorKind::ConnectionReset => {}
        Err(_) => return None,
    }
    Some(String::from_utf8_lossy(&answer).into_owned())
}

#[test]
fn connections_that_send_nothing_or_half_a_head_are_closed_and_others_get_their_turn() {
    let (server, guard) = server_within(hurried());
    let slow: Vec<TcpStream> = (0..40).map(|n| held(&server, if n % 2 == 0 { "" } else { "GET / HTTP/1.1\r\nHost: 127" })).collect();
    assert_eq!(get_with_patience(&server, "/", &inside(&server, &guard)), 200, "behind forty that say nothing");
    for (n, stream) in slow.into_iter().enumerate() {
        let answer = until_closed(stream).unwrap_or_else(|| panic!("connection {n} is still open"));
        assert!(!answer.contains("inside"), "{answer}");
    }
}

fn get_with_patience(server: &Server, path: &str, headers: &str) -> u16 {
    let stream = held(server, &format!("GET {path} HTTP/1.1\r\nConnection: close\r\n{headers}\r\n"));
    let answer = until_closed(stream).expect("an answer");
    answer.split_whitespace().nth(1).and_then(|code| code.parse().ok()).unwrap_or(0)
}

#[test]
fn a_body_that_comes_too_slowly_changes_nothing() {
    let (server, guard) = server_within(hurried());
    let origin = format!("Origin: http://127.0.0.1:{}\r\n", server.port());
    let number = guard.once();
    let request = |length: usize| {
        format!(
            "POST /do?once={number} HTTP/1.1\r\nConnection: close\r\n{}{origin}Content-Length: {length}\r\n\r\nx",
            inside(&server, &guard)
        )
    };
    let answer = until_closed(held(&server, &request(50))).expect("is closed");
    assert!(answer.contains("408"), "{answer}");
    // Its number is not used up.
    let answer = until_closed(held(&server, &request(1))).expect("is answered");
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
}

#[test]
fn no_more_connections_are_served_at_once_than_the_limit_says() {
    let long = Limits { connections: 2, head: Duration::from_secs(3600), body: Duration::from_secs(3600) };
    let (server, guard) = server_within(long);
    let own = inside(&server, &guard);
    let keeps = |stream: &mut TcpStream| {
        // A whole answer on a connection that stays open: the server holds it now.
        stream.write_all(format!("GET / HTTP/1.1\r\n{own}\r\n").as_bytes()).expect("sends");
        let mut answer = [0; 4096];
        let read = stream.read(&mut answer).expect("an answer");
        assert!(answer[..read].starts_with(b"HTTP/1.1 200"));
    };
    let (mut one, mut other) = (held(&server, ""), held(&server, ""));
    keeps(&mut one);
    keeps(&mut other);
    let mut third = held(&server, &format!("GET / HTTP/1.1\r\nConnection: close\r\n{own}\r\n"));
    third.set_read_timeout(Some(Duration::from_millis(300))).expect("a limit");
    assert!(third.read(&mut [0; 16]).is_err(), "it waits for its turn");
    drop(one);
    third.set_read_timeout(Some(Duration::from_secs(60))).expect("a limit");
    assert!(until_closed(third).expect("an answer").starts_with("HTTP/1.1 200"));
}
