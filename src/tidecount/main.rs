//! Argument parsing and exit codes, nothing else.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};
use files::error::Failure;
use recogniser::child_main;
use tidecount::{
    attend, calibrate, clinic, demo, devices, enrol, export, hand, hear, history, lead, pages, practise, record, report, routine, texts,
};

/// Leads a voice, breathing and swallow practice hands-free.
#[derive(Parser)]
#[command(version, about, max_term_width = 100)]
struct Arguments {
    #[command(subcommand)]
    order: Order,
}

#[derive(Subcommand)]
enum Order {
    Practise(practise::PractiseArgs),
    Lead(lead::LeadArgs),
    Attend(attend::AttendArgs),
    Enrol(enrol::EnrolArgs),
    Pages(pages::PagesArgs),
    Demo(demo::DemoArgs),
    Calibrate(calibrate::CalibrateArgs),
    Hear(hear::command::HearArgs),
    /// Lists past practices, or shows one whole.
    History(history::HistoryArgs),
    /// Backs the record up, checks it, encrypts it, and deletes what is kept of a client.
    Record(record::command::RecordArgs),
    /// Makes the report of a client's practice for the clinician and for the client, as PDF or HTML.
    Report(report::ReportArgs),
    /// Gives what is in the record in open standards: CSV, JSON Lines, FHIR, iCalendar, TextGrid.
    Export(export::args::ExportArgs),
    /// Hands a client's programme over as one signed file, and the results back.
    Hand(hand::command::HandArgs),
    /// Results of many clients in one database: who needs attention, and why.
    Clinic(clinic::command::ClinicArgs),
    /// Checks routines and gives their schema.
    Routine(routine::command::RoutineArgs),
    /// Lists, shows and checks word packs.
    Pack(routine::pack::PackArgs),
    /// Shows the catalogue of exercises, or one exercise whole.
    Exercises(routine::command::ExercisesArgs),
    /// Lists microphones and loudspeakers and tries them.
    Devices,
    /// The recogniser's own process; the program starts it itself.
    #[command(name = "__recogniser", hide = true)]
    Recogniser {
        /// Model folder in the Vosk layout.
        #[arg(long)]
        model: PathBuf,
    },
}

fn main() -> ExitCode {
    let done = match Arguments::parse().order {
        Order::Practise(args) => practise::run(&args),
        Order::Lead(args) => lead::run(&args),
        Order::Attend(args) => attend::run(&args),
        Order::Enrol(args) => enrol::run(&args),
        Order::Pages(args) => pages::run(&args),
        Order::Demo(args) => demo::run(&args),
        Order::Calibrate(args) => calibrate::run(&args),
        Order::Hear(args) => hear::command::run(&args),
        Order::History(args) => texts::history(&args),
        Order::Record(args) => record::command::run(&args),
        Order::Report(args) => report::run(&args),
        Order::Export(args) => export::command::run(&args),
        Order::Hand(args) => hand::command::run(&args),
        Order::Clinic(args) => clinic::command::run(&args),
        Order::Routine(args) => texts::routine(&args),
        Order::Pack(args) => texts::pack(&args),
        Order::Exercises(args) => texts::exercises(&args),
        Order::Devices => Ok(devices::run()),
        Order::Recogniser { model } => return child_main(&model),
    };
    done.unwrap_or_else(|error: Failure| {
        error.report();
        ExitCode::FAILURE
    })
}
