//! Everything that can be typed: the commands, each with its own arguments.

use std::path::PathBuf;
use std::sync::Arc;

use clap::{Parser, Subcommand};
use files::error::Failure;
use speak::Language;

use crate::{
    appliance, assess, attend, calibrate, clinic, demo, doctor, enrol, exercises, export, goal, hand, hear, history, language, lead, pack,
    pages, practise, record, report, routine, try_out,
};

/// Lead a voice, breathing and swallow practice hands-free
#[derive(Parser)]
#[command(version, max_term_width = 100)]
pub struct Arguments {
    #[command(flatten)]
    pub language: LanguageOption,
    #[command(subcommand)]
    pub order: Order,
}

/// The language of everything that is said, shown and printed.
#[derive(Debug, Clone, Default, clap::Args)]
pub struct LanguageOption {
    /// Speak, show and print in this language; `tidecount language list` names those there are [default: the routine's or household's]
    #[arg(long, value_name = "TAG", global = true, conflicts_with = "language_pack")]
    pub language: Option<String>,
    /// Take the language pack of this folder instead of one that is built in
    #[arg(long, value_name = "DIR", global = true)]
    pub language_pack: Option<PathBuf>,
}

impl LanguageOption {
    /// Makes it the language of the whole program.
    ///
    /// # Errors
    /// There is no such language, or the folder is no language pack.
    pub fn choose(&self) -> Result<(), Failure> {
        if let Some(folder) = &self.language_pack {
            Language::choose(Arc::new(Language::open(folder)?));
        } else if let Some(tag) = &self.language {
            Language::choose(Language::find(tag)?);
        }
        Ok(())
    }
}

/// The commands.
#[derive(Subcommand)]
pub enum Order {
    Practise(practise::PractiseArgs),
    Assess(assess::args::AssessArgs),
    Lead(lead::LeadArgs),
    Attend(attend::AttendArgs),
    Enrol(enrol::EnrolArgs),
    Pages(pages::PagesArgs),
    Demo(demo::command::DemoArgs),
    Try(try_out::command::TryArgs),
    Calibrate(calibrate::CalibrateArgs),
    Hear(hear::args::HearArgs),
    /// List past practices, or show one whole
    History(history::HistoryArgs),
    Record(record::args::RecordArgs),
    /// Make the report of a client's practice for the clinician and for the client, as PDF or HTML
    Report(report::ReportArgs),
    /// Keep a client's goals in their own words, and say which are met
    Goal(goal::args::GoalArgs),
    /// Export the record in open standards: CSV, JSON Lines, FHIR, iCalendar, TextGrid
    Export(export::args::ExportArgs),
    /// Hand a client's programme over as one signed file, and the results back
    Hand(hand::args::HandArgs),
    /// Collect the results of many clients in one database, and see who needs attention, and why
    Clinic(clinic::args::ClinicArgs),
    /// Write a routine by answering questions (new), check it, show it as a handout
    Routine(routine::args::RoutineArgs),
    /// List, show and check word packs
    Pack(pack::PackArgs),
    /// Show the catalogue of exercises, or one exercise whole
    Exercises(exercises::ExercisesArgs),
    /// List the languages there are, and check a language pack
    Language(language::LanguageArgs),
    /// List microphones and loudspeakers, and try them
    Devices,
    Doctor(doctor::command::DoctorArgs),
    Appliance(appliance::command::ApplianceArgs),
    /// Write man pages, shell completions and a desktop entry into a folder, for whoever packs the program
    #[command(name = "__papers", hide = true)]
    Papers {
        /// Write them into this folder
        folder: PathBuf,
    },
    /// Run the recogniser's own process; the program starts it itself
    #[command(name = "__recogniser", hide = true)]
    Recogniser {
        /// Use this model folder in the Vosk layout
        #[arg(long)]
        model: Option<PathBuf>,
        /// Use the second ear of this folder
        #[arg(long)]
        second_ear: Option<PathBuf>,
    },
    /// Write down what was told; the program starts it itself
    #[command(name = "__write-down", hide = true)]
    WriteDown {
        /// Use this model folder in the Vosk layout
        #[arg(long)]
        model: PathBuf,
    },
}

#[cfg(test)]
#[path = "tests/command_line.rs"]
mod tests;
