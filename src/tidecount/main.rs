//! Reads the arguments, runs the command, and gives the exit code: 0 well, 1 not, 2 for arguments that cannot be understood.

use std::process::ExitCode;

use clap::Parser;
use files::error::Failure;
use recogniser::{child_main, write_down_main};
use tidecount::command_line::{Arguments, Order};
use tidecount::{
    appliance, assess, attend, calibrate, clinic, demo, devices, doctor, enrol, exercises, export, goal, hand, hear, history, language,
    lead, pack, pages, papers, practise, record, report, routine, try_out,
};

fn main() -> ExitCode {
    disk::private::from_here_on();
    let arguments = Arguments::parse();
    if let Err(error) = arguments.language.choose() {
        error.report();
        return ExitCode::FAILURE;
    }
    let done = match arguments.order {
        Order::Practise(args) => practise::run(&args),
        Order::Assess(args) => assess::command::run(&args),
        Order::Lead(args) => lead::run(&args),
        Order::Attend(args) => attend::run(&args),
        Order::Enrol(args) => enrol::run(&args),
        Order::Pages(args) => pages::run(&args),
        Order::Demo(args) => demo::command::run(&args),
        Order::Try(args) => try_out::command::run(&args),
        Order::Calibrate(args) => calibrate::run(&args),
        Order::Hear(args) => hear::command::run(&args),
        Order::History(args) => history::run(&args),
        Order::Record(args) => record::command::run(&args),
        Order::Report(args) => report::run(&args),
        Order::Export(args) => export::command::run(&args),
        Order::Goal(args) => goal::command::run(&args),
        Order::Hand(args) => hand::command::run(&args),
        Order::Clinic(args) => clinic::command::run(&args),
        Order::Routine(args) => routine::command::run(&args),
        Order::Pack(args) => pack::run(&args),
        Order::Exercises(args) => exercises::run(&args),
        Order::Language(args) => language::run(&args),
        Order::Devices => Ok(devices::run()),
        Order::Doctor(args) => doctor::command::run(&args),
        Order::Appliance(args) => appliance::command::run(&args),
        Order::Papers { folder } => papers::run(&folder),
        Order::Recogniser { model, second_ear } => return child_main(model.as_deref(), second_ear.as_deref()),
        Order::WriteDown { model } => return write_down_main(&model),
    };
    done.unwrap_or_else(|error: Failure| {
        error.report();
        ExitCode::FAILURE
    })
}
