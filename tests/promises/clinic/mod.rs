//! Promise: results of many clients come into one clinic database, once and never mixed, on SQLite and on PostgreSQL alike; the
//! caseload says who needs attention and why.

#[path = "../../support/clinic_world.rs"]
mod clinic_world;
#[path = "../../support/postgres_server.rs"]
mod postgres_server;
#[path = "../../support/program.rs"]
mod program;

mod by_commands;
mod databases;
mod forgetting;
mod importing;
mod looking;
mod order;

use clinic::{Address, Clinic};
use clinic_world::{Home, desk_key};
use postgres_server::Server;

/// New databases of one engine.
enum Engine {
    Sqlite(tempfile::TempDir),
    Postgres(Server),
}

impl Engine {
    fn sqlite() -> Self {
        Self::Sqlite(tempfile::tempdir().expect("a folder"))
    }

    fn address(&self, name: &str) -> Address {
        match self {
            Self::Sqlite(dir) => Address::File(dir.path().join(format!("{name}.sqlite"))),
            Self::Postgres(server) => Address::of(&server.database(name)).expect("an address"),
        }
    }

    fn clinic(&self, name: &str) -> Clinic {
        Clinic::open(&self.address(name)).expect("opens")
    }
}

fn adopt(clinic: &mut Clinic, desk: u8, homes: &[&Home]) {
    let packages: Vec<_> = homes.iter().map(|home| home.desk_package()).collect();
    clinic.adopt(&desk_key(desk), Some(&format!("desk {desk}")), &packages).expect("adopts");
}

/// Everything that must hold for both engines.
fn suite(engine: &Engine) {
    importing::suite(engine);
    looking::suite(engine);
    forgetting::suite(engine);
}

#[test]
fn sqlite_keeps_its_promises() {
    suite(&Engine::sqlite());
}

#[test]
fn postgres_keeps_its_promises() {
    let Some(server) = Server::start() else { return };
    let engine = Engine::Postgres(server);
    suite(&engine);
    let Engine::Postgres(server) = engine else { return };
    databases::of_a_server(server);
}
