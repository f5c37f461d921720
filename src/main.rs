//! Argument parsing and exit codes, nothing else.

use clap::{Parser, Subcommand};
use std::path::PathBuf;
use std::process::ExitCode;

#[derive(Parser)]
#[command(version, about)]
struct Arguments {
    #[command(subcommand)]
    order: Order,
}

#[derive(Subcommand)]
enum Order {
    /// The recogniser's own process; the program starts it itself.
    #[command(name = "__recogniser", hide = true)]
    Recogniser {
        /// Model folder in the Vosk layout.
        #[arg(long)]
        model: PathBuf,
    },
}

fn main() -> ExitCode {
    match Arguments::parse().order {
        Order::Recogniser { model } => tidecount::hear::commands::child::child_main(&model),
    }
}
