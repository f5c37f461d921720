//! What was prescribed: the catalogue of exercises, routines with their doses, and clear errors about both.
//!
//! It may not read a file or a clock, nor know of devices or the engine: texts and bytes come in, a checked [`Prescription`] or every
//! [`Fault`] at once goes out. Texts that are spoken live in the message catalogue; here stand only their keys. Start at
//! [`check_text`] (`check`), then read `prescribed` (what a routine is) and `dose` (how a step gets its numbers).

mod amount;
mod bound;
mod bounds;
mod catalogue;
mod caution;
mod check;
mod class;
mod clinician;
mod dose;
mod dose_band;
mod dose_status;
mod draft;
mod duration;
mod effort;
pub mod fault;
mod fields;
pub mod file;
mod limit;
mod limits;
mod looking_back;
mod norm;
mod pack;
mod placed;
mod plan;
mod posture;
mod prescribed;
mod prescription;
mod protocol;
mod ramp;
pub mod read;
mod safe;
mod safe_check;
pub mod schema;
pub mod shape;
mod strain;
mod template;
pub mod text;

pub use amount::{Amount, Breath};
pub use bound::{Bound, Severity};
pub use bounds::LANGUAGES;
pub use catalogue::{CatalogueEntry, Range, UsualDose, catalogue, find, is_soft};
pub use caution::{Caution, Exclusion, cautions, exclusions, origin};
pub use check::{check_bytes, check_text, doses_of};
pub use class::{Called, ClassList, HeardAs, Participant, check_class};
pub use clinician::{ClinicianWord, ClinicianWords};
pub use dose_band::dose_band;
pub use dose_status::DoseStatus;
pub use draft::{Draft, DraftRamp, DraftStep, Lookup};
pub use effort::Efforts;
pub use fault::{Fault, FaultKind, Faults};
pub use limit::Limit;
pub use limits::limit_of;
pub use looking_back::{AFTER_A_PRACTICE, has_swallow_work};
pub use norm::{Norm, Sex, norms, norms_for};
pub use pack::{Pack, built_in_packs, check_pack, fresh_first, packs_with};
pub use placed::Posture;
pub use plan::{PlannedTime, Weekday, minutes_of};
pub use posture::{Rise, rise};
pub use prescribed::{
    CountedPhase, Exercise, Ladder, LookingBack, NamingItem, NoAnswer, PackKind, Phase, QuestionItem, Routine, Step, Timing, Work,
};
pub use prescription::Prescription;
pub use protocol::{Protocol, VOICE};
pub use ramp::{Ramp, StageDone, reaches_goal};
pub use read::MAX_FILE_BYTES;
pub use safe::{GettingUp, Row, SafeDose, SafePractice, getting_up, safe_dose, safe_practice};
pub use schema::schema;
pub use strain::left_out_by;
pub use template::{Disagreement, RampStage, RampTemplate, Template, disagreements, largest_usual, limit_name, ramp_template, templates};
pub use text::{CommandWords, Hearing};
