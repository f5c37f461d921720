//! Writes the bundle, practice by practice, so that years of them need no more memory than one.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{self, Write};

use serde_json::{Map, Value, json};

use super::build::{Say, narrative, plain, urn};
use super::codes::Codes;
use crate::ids::uuid;
use crate::{Outline, Practice};
use model::{KeptHead, Source};

/// What the bundle is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BundleKind {
    /// A file to hand over and to read.
    Collection,
    /// To be sent to a server: each resource is put under its own identifier, so that a second time updates it.
    Transaction,
}

/// An export under way.
pub struct FhirExport<'a, W: Write> {
    to: W,
    kind: BundleKind,
    pub(super) say: Say<'a>,
    pub(super) codes: Codes,
    pub(super) patient: String,
    /// Marks practices that no person made as test data.
    pub(super) test_data: bool,
    written: BTreeSet<String>,
    first: bool,
    /// The routine that each plan came from, by its identifier.
    pub(super) plans: BTreeMap<String, super::plan_state::PlanState>,
}

impl<'a, W: Write> FhirExport<'a, W> {
    /// Begins the bundle of one client. `heads` are those of all this client's practices in the record, not only of those that will
    /// be written: from them it is known since when a routine was followed and which is followed now. `made_at` is an instant.
    ///
    /// # Errors
    /// It cannot be written.
    pub fn begin(mut to: W, kind: BundleKind, client: &str, heads: &[KeptHead], made_at: &str, say: Say<'a>) -> io::Result<Self> {
        let name = match kind {
            BundleKind::Collection => "collection",
            BundleKind::Transaction => "transaction",
        };
        write!(to, "{{\"resourceType\":\"Bundle\",\"type\":\"{name}\",\"timestamp\":{},\"entry\":[", json!(made_at))?;
        let patient = patient_id(client, heads);
        let plans = super::plan_state::states(&patient, heads);
        let mut export =
            Self { to, kind, say, codes: Codes::default(), patient, test_data: false, written: BTreeSet::new(), first: true, plans };
        let patient = json!({
            "resourceType": "Patient",
            "id": export.patient,
            "text": narrative(&format!("Client \"{client}\": a short name, no more is known.")),
            "name": [{"use": "anonymous", "text": plain(client)}],
        });
        export.write(patient)?;
        Ok(export)
    }

    /// Writes one practice with what it refers to.
    ///
    /// # Errors
    /// It cannot be written.
    pub fn practice(&mut self, practice: &Practice<'_>) -> io::Result<()> {
        self.test_data = practice.kept.head.source != Source::Live;
        self.plan(&practice.kept.head, practice.outline)?;
        self.procedures(practice)?;
        self.observations(practice)
    }

    /// Writes the plan of a routine, once.
    ///
    /// # Errors
    /// It cannot be written.
    pub fn plan(&mut self, head: &KeptHead, outline: &Outline) -> io::Result<()> {
        let id = super::plan_state::plan_id(&self.patient, &head.routine_text);
        if self.knows(&id) {
            return Ok(());
        }
        for resource in self.plan_resources(&id, head, outline) {
            self.write(resource)?;
        }
        Ok(())
    }

    /// Ends the bundle.
    ///
    /// # Errors
    /// It cannot be written.
    pub fn finish(mut self) -> io::Result<W> {
        self.test_data = false;
        let codes = self.codes.resource(&uuid(&["code system"]));
        self.write(codes)?;
        writeln!(self.to, "\n]}}")?;
        self.to.flush()?;
        Ok(self.to)
    }

    /// True where a resource of this identifier has been written.
    pub(super) fn knows(&self, id: &str) -> bool {
        self.written.contains(id)
    }

    /// Writes one resource, one line.
    pub(super) fn write(&mut self, mut resource: Value) -> io::Result<()> {
        let field = |name: &str| resource.get(name).and_then(Value::as_str).unwrap_or_default().to_owned();
        let (id, name) = (field("id"), field("resourceType"));
        if !self.written.insert(id.clone()) {
            return Ok(());
        }
        if self.test_data
            && let Value::Object(map) = &mut resource
        {
            let coding =
                json!({"system": "http://terminology.hl7.org/CodeSystem/v3-ActReason", "code": "HTEST", "display": "test health data"});
            map.insert("meta".into(), json!({"security": [coding]}));
        }
        let mut entry = Map::new();
        entry.insert("fullUrl".into(), urn(&id).into());
        entry.insert("resource".into(), resource);
        if self.kind == BundleKind::Transaction {
            entry.insert("request".into(), json!({"method": "PUT", "url": format!("{name}/{id}")}));
        }
        write!(self.to, "{}\n{}", if self.first { "" } else { "," }, Value::Object(entry))?;
        self.first = false;
        Ok(())
    }
}

/// The client's short name does not tell one household's "grandpa" from another's; the beginning of the first practice does.
fn patient_id(client: &str, heads: &[KeptHead]) -> String {
    let first = heads.iter().min_by_key(|head| (head.number, head.started_at.timestamp()));
    uuid(&["client", client, &first.map_or_else(String::new, |head| head.started_at.to_string())])
}
