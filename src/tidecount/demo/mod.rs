//! `tidecount demo`: simulated clients, closed loop, through the real ears.

pub mod command;
mod weeks;
mod weeks_class;
