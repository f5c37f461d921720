//! The server is asked over a real socket, as a stranger would.

use super::super::Server;
use axum::Router;
use axum::routing::{get, post};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::sync::Arc;

fn server() -> (Server, Arc<super::Guard>) {
    let mut own = None;
    let server = Server::start(0, |guard| {
        own = Some(guard);
        Router::new().route("/", get(|| async { "inside" })).route("/do", post(|body: String| async move { body }))
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
    format!("Host: 127.0.0.1:{}\r\nCookie: {}={}\r\n", server.port(), guard.cookie(), guard.key())
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
    let (status, answer) = get_with(&server, "/", &inside(&server, &guard));
    assert_eq!(status, 200, "{answer}");
    assert!(answer.contains("default-src 'none'") && answer.contains("inside"), "{answer}");
    assert_eq!(get_with(&server, "/elsewhere", &inside(&server, &guard)).0, 404);
}

#[test]
fn another_host_or_origin_is_refused_even_with_the_key() {
    let (server, guard) = server();
    let cookie = format!("Cookie: {}={}\r\n", guard.cookie(), guard.key());
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
