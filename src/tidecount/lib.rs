//! The program: its commands, a file or folder each, and what they share on the terminal (`options`, `terminal`). Only here
//! arguments are read and exit codes given; what a command does stands in the rooms below. Start at `command_line.rs`.

pub mod appliance;
pub mod assess;
pub mod attend;
pub mod calibrate;
pub mod class_history;
pub mod clinic;
pub mod command_line;
pub mod demo;
pub mod devices;
pub mod doctor;
pub mod enrol;
pub mod exercises;
pub mod export;
pub mod goal;
pub mod hand;
pub mod hear;
pub mod history;
pub mod language;
pub mod lead;
pub mod options;
pub mod pack;
pub mod pages;
pub mod papers;
pub mod practise;
pub mod record;
pub mod report;
mod rounded;
pub mod routine;
pub mod serving;
pub mod simulated;
pub mod terminal;
pub mod try_out;
