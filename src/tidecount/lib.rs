//! The program: its commands, a module each. Only here arguments are read and exit codes given.

pub mod attend;
pub mod calibrate;
pub mod clinic;
pub mod demo;
pub mod devices;
pub mod enrol;
pub mod export;
pub mod hand;
pub mod hear;
pub mod history;
pub mod lead;
pub mod options;
pub mod pages;
pub mod practise;
pub mod record;
pub mod report;
pub mod routine;
pub mod texts;
