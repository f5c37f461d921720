//! Databases that are foreign, newer, damaged, locked, full or gone.

use super::adopt;
use super::clinic_world::{Home, MIC, daily, desk_key};
use super::postgres_server::{PASSWORD, Server};
use clinic::{Address, Clinic, ClinicError};
use std::path::Path;

/// What only a server can do. The last part stops it.
pub(super) fn of_a_server(server: Server) {
    foreign_and_newer_databases_are_left_alone(&server);
    certificates_are_checked(&server);
    a_server_that_is_gone_loses_nothing(server);
}

fn foreign_and_newer_databases_are_left_alone(server: &Server) {
    let open = |name: &str| Clinic::open(&Address::of(&server.url(name)).expect("an address")).map(|_| ());
    server.database("foreign");
    server.plain_in("foreign", "CREATE SCHEMA tidecount_clinic; CREATE TABLE tidecount_clinic.things (a int)").expect("runs");
    assert!(matches!(open("foreign"), Err(ClinicError::Foreign { .. })));
    server.database("newer");
    open("newer").expect("opens");
    server.plain_in("newer", "UPDATE tidecount_clinic.about SET form = 99").expect("runs");
    assert!(matches!(open("newer"), Err(ClinicError::Newer { found: 99, .. })));
    server.plain("CREATE DATABASE latin ENCODING 'LATIN1' TEMPLATE template0").expect("runs");
    let error = open("latin").expect_err("another encoding").to_string();
    assert!(error.contains("UTF8"), "{error}");
    // A database that holds other things besides is used all the same, and they are let be.
    server.database("shared");
    server.plain_in("shared", "CREATE TABLE client (mine int)").expect("runs");
    open("shared").expect("opens");
    server.plain_in("shared", "SELECT mine FROM client").expect("is as it was");
    // Looking makes nothing.
    server.database("empty");
    assert!(matches!(Clinic::open_existing(&Address::of(&server.url("empty")).expect("an address")), Err(ClinicError::Absent { .. })));
    // Over loopback the password counts, and no message holds it.
    let named = |password: &str| Clinic::open(&Address::of(&server.tcp_url(password, "shared")).expect("an address"));
    named(PASSWORD).expect("opens");
    for wrong in [
        named("wr0ng-one").expect_err("wrong"),
        Clinic::open(&Address::of(&server.tcp_url(PASSWORD, "absent")).expect("an address")).expect_err("absent"),
    ] {
        let text = format!("{wrong} {wrong:?}");
        assert!(!text.contains("wr0ng") && !text.contains(PASSWORD) && text.contains("postgres://desk@127.0.0.1"), "{text}");
    }
    // A server without encryption is refused where encryption is asked for.
    let asked = format!("{}?sslmode=require", server.tcp_url(PASSWORD, "shared"));
    assert!(matches!(Clinic::open(&Address::of(&asked).expect("an address")), Err(ClinicError::Lost { .. })));
}

fn certificates_are_checked(server: &Server) {
    let Some(certificate) = server.speak_tls() else {
        skipping::skip(skipping::Missing::Installed, "no openssl to make a certificate");
        return;
    };
    let url = server.tcp_url(PASSWORD, "shared").replace("127.0.0.1", "localhost");
    let open = |options: String| Clinic::open(&Address::of(&format!("{url}?{options}")).expect("an address"));
    let known = certificate.display();
    // The server takes a moment to read its settings again.
    let mut tries = 0;
    let done = loop {
        match open(format!("sslmode=verify-full&sslrootcert={known}")) {
            Err(ClinicError::Lost { .. }) if tries < 50 => std::thread::sleep(std::time::Duration::from_millis(100)),
            done => break done,
        }
        tries += 1;
    };
    let mut clinic = done.expect("the certificate is known");
    let mut encrypted = 0;
    let sql = "SELECT count(*) FROM pg_stat_ssl WHERE pid = pg_backend_pid() AND ssl";
    clinic.engine().each(sql, &[], &mut |row| row.int(0).map(|count| encrypted = count)).expect("reads");
    assert_eq!(encrypted, 1);
    let error = open("sslmode=require".to_owned()).expect_err("nobody knows the certificate").to_string();
    assert!(error.contains("certificate") && !error.contains(PASSWORD), "{error}");
    let error = Clinic::open(
        &Address::of(&format!("{}?sslmode=require&sslrootcert={known}", server.tcp_url(PASSWORD, "shared"))).expect("an address"),
    )
    .expect_err("another name");
    assert!(matches!(error, ClinicError::Lost { .. }), "{error}");
    let error = open("sslmode=require&sslrootcert=%2Fabsent.pem".to_owned()).expect_err("no such file").to_string();
    assert!(error.contains("/absent.pem"), "{error}");
}

fn a_server_that_is_gone_loses_nothing(mut server: Server) {
    let address = Address::of(&server.database("gone")).expect("an address");
    let mut clinic = Clinic::open(&address).expect("opens");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let (first, second) = (
        home.file("2026-03-05", &daily(1, "2026-03-02", 3, 1, 12.0, &MIC)),
        home.file("2026-03-06", &daily(4, "2026-03-05", 1, 1, 12.0, &MIC)),
    );
    clinic.import(&first).expect("imports");
    let before = clinic.content().expect("reads");
    server.kill();
    let error = clinic.import(&second).expect_err("the server is gone");
    assert!(matches!(error, ClinicError::Lost { .. }), "{error}");
    assert!(error.to_string().contains("nothing is lost"), "{error}");
    assert!(matches!(Clinic::open(&address), Err(ClinicError::Lost { .. })));
    server.go_on();
    // The same handle connects anew.
    assert_eq!(clinic.content().expect("reads"), before);
    assert_eq!(clinic.import(&second).expect("imports").new, 1);
}

#[test]
fn a_foreign_newer_damaged_or_locked_file_is_left_alone() {
    let dir = tempfile::tempdir().expect("a folder");
    let path = |name: &str| dir.path().join(name);
    let open = |path: &Path| Clinic::open(&Address::File(path.to_path_buf())).map(|_| ());
    std::fs::write(path("text.sqlite"), "no database, but notes of somebody's own that must not be lost").expect("writes");
    let make = |name: &str, sql: &str| rusqlite::Connection::open(path(name)).and_then(|db| db.execute_batch(sql)).expect("makes");
    make("other.sqlite", "CREATE TABLE things (a)");
    make("record.sqlite", "CREATE TABLE client (a); PRAGMA application_id = 0x54494445; PRAGMA user_version = 3");
    for name in ["text.sqlite", "other.sqlite", "record.sqlite"] {
        let before = std::fs::read(path(name)).expect("reads");
        let error = open(&path(name)).expect_err(name);
        assert!(matches!(error, ClinicError::Foreign { .. }), "{name}: {error:?}");
        assert!(error.to_string().contains("left as it is") && error.to_string().contains("--clinic"), "{error}");
        assert_eq!(std::fs::read(path(name)).expect("reads"), before, "{name}");
    }
    open(&path("newer.sqlite")).expect("opens");
    make("newer.sqlite", "PRAGMA user_version = 99");
    assert!(matches!(open(&path("newer.sqlite")), Err(ClinicError::Newer { found: 99, .. })));
    assert!(matches!(Clinic::open_existing(&Address::File(path("absent.sqlite"))), Err(ClinicError::Absent { .. })));
    assert!(!path("absent.sqlite").exists());
    // Held by another program: told, and undone.
    let held = rusqlite::Connection::open(path("held.sqlite")).expect("opens");
    drop(Clinic::open(&Address::File(path("held.sqlite"))).expect("opens"));
    held.execute_batch("BEGIN EXCLUSIVE").expect("holds it");
    let mut waiting = Clinic::open(&Address::File(path("held.sqlite"))).expect("opens");
    waiting.engine().each("PRAGMA busy_timeout = 10", &[], &mut |_| Ok(())).expect("is impatient");
    let error = waiting.adopt(&desk_key(1), None, &[Home::new(1, "grandpa").desk_package()]).expect_err("held");
    assert!(matches!(error, ClinicError::Busy { .. }) && error.to_string().contains("Try again"), "{error:?}");
    held.execute_batch("COMMIT").expect("lets go");
    waiting.adopt(&desk_key(1), None, &[Home::new(1, "grandpa").desk_package()]).expect("adopts");
    // No room: the whole file is undone and can come again.
    let mut clinic = Clinic::open(&Address::File(path("full.sqlite"))).expect("opens");
    let home = Home::new(1, "grandpa");
    adopt(&mut clinic, 1, &[&home]);
    let before = clinic.content().expect("reads");
    clinic.engine().each("PRAGMA max_page_count = 1", &[], &mut |_| Ok(())).expect("a small disk");
    let file = home.file("2026-03-31", &daily(1, "2025-12-02", 100, 1, 12.0, &MIC));
    let error = clinic.import(&file).expect_err("full");
    assert!(matches!(error, ClinicError::Unwritable { .. }) && error.to_string().contains("import the same files again"), "{error:?}");
    assert_eq!(clinic.content().expect("reads"), before);
    clinic.engine().each("PRAGMA max_page_count = 1000000", &[], &mut |_| Ok(())).expect("room");
    assert_eq!(clinic.import(&file).expect("imports").new, 100);
    // A copy is whole.
    let copy = path("copy.sqlite");
    clinic.backup(&copy).expect("copies");
    let content = clinic.content().expect("reads");
    assert_eq!(Clinic::open_existing(&Address::File(copy.clone())).expect("opens").content().expect("reads"), content);
    assert!(clinic.backup(&copy).expect_err("is there").to_string().contains("left as it is"));
}
