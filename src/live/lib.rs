//! Leads people through sound: the one loop from a block of the microphone to a block for the loudspeaker, and who takes part in it. It
//! may open no page, read no argument and decide nothing that the engine, the attendant or the enrolment's dialogue decides. Start at
//! `conductor.rs`, the loop; `party.rs` says what a party does, `practice/party.rs` is the first of them.

pub mod attend;
pub mod calibrate;
pub mod capture;
pub mod clock;
pub mod command_path;
pub mod conductor;
pub mod enrol;
pub mod follow;
pub mod give_way;
pub mod grammar;
pub mod interrupt;
pub mod journal_keeper;
pub mod levels;
pub mod machine;
pub mod meter;
pub mod mic_gain;
pub mod near_voice;
mod note_writer;
pub mod observe;
pub mod over_own_voice;
pub mod page_talker;
pub mod party;
pub mod playback;
mod played_stream;
pub mod practice;
pub mod quality_worker;
pub mod rehearsal;
pub mod residual_echo_log;
pub mod residual_suppressor;
pub mod service_manager;
pub mod silence;
pub mod sound;
pub mod speech;
pub mod stage;
pub mod stirring;
pub mod summary;
pub mod talk;
pub mod tone;
