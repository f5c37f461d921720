//! What the program promises, one file a promise. One binary, so that they are linked once and share the cores; what listens to
//! live devices stands apart, for it needs the machine to itself.

mod agreement_first;
mod assess;
mod attend;
mod bad_input;
mod beats;
mod calibrate;
mod cautions_page;
mod clinic;
mod closed_loop;
mod command_ear;
mod ctrl_c;
mod demo_weeks;
mod echo_cancelling;
mod emergencies;
mod engine_laws;
mod enrol;
mod export;
mod fuzz;
mod hand_over;
mod hear_command;
mod hear_reads_sound_files;
mod killed_and_gone_on;
mod killed_practice;
mod lead;
mod looking_back;
mod programme;
mod record;
mod record_faults;
mod record_sound;
mod replay_is_repeatable;
mod report;
mod routine_catalogue;
mod routine_faults;
mod word_packs;
mod words_are_safe;
