//! Practices as an HL7 FHIR R4 (4.0.1) Bundle.
//!
//! What is where: a Patient under the client's short name; a CarePlan for each routine with a ServiceRequest for each exercise; a
//! Procedure for each practice and, as part of it, for each prescribed step; an Observation for each trial, with UCUM units and the
//! conditions as components; a panel for the best of the trials of a step; a Goal for each goal; Devices and DeviceMetrics for program and microphone with
//! its calibration; and the CodeSystem of the codes that no standard has. Identifiers are the same at each export.

mod build;
mod bundle;
mod codes;
mod devices;
mod goal;
mod observation;
mod plan;
mod plan_state;
mod procedure;
mod value;

pub use bundle::{BundleKind, FhirExport};
pub use codes::SYSTEM;

#[cfg(test)]
pub(crate) use codes::known as known_codes;

#[cfg(test)]
#[path = "../tests/fhir.rs"]
mod tests;
