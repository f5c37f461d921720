//! `tidecount try`: a sample household and a sample clinic of simulated clients, to be looked through in the first hour. `people` says
//! who they are, `home` and `desk` make their records.

pub mod command;
mod desk;
mod home;
mod led;
mod people;
