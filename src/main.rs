//! The command line.

#![forbid(unsafe_code)]

mod args;

use args::{Cli, Command};
use clap::{CommandFactory as _, Parser};
use railhand::console::{self, Trouble};
use railhand::paper::Paper;
use std::io::{self, Write as _};
use std::process::ExitCode;
use tracing_subscriber::filter::Targets;
use tracing_subscriber::layer::SubscriberExt as _;
use tracing_subscriber::util::SubscriberInitExt as _;

fn main() -> ExitCode {
    console::at_a_mistake();
    let cli = Cli::parse_from(args::lines_last(std::env::args_os().collect()));
    log();
    match run(cli) {
        Ok(()) | Err(Trouble::Gone) => ExitCode::SUCCESS,
        Err(trouble) => {
            console::complain(&trouble);
            ExitCode::from(1)
        }
    }
}

fn run(cli: Cli) -> Result<(), Trouble> {
    if let Some(amiss) = args::amiss(&cli) {
        Cli::command().error(clap::error::ErrorKind::InvalidValue, amiss).exit();
    }
    let prices = cli.prices.as_deref();
    match cli.command {
        None => console::open(cli.json, cli.file.as_deref(), prices),
        Some(Command::Say { lines, job }) => {
            let lines: Vec<String> = lines.iter().map(|l| l.to_string_lossy().into_owned()).collect();
            console::say(&lines, cli.json, job.as_deref(), prices)
        }
        Some(Command::Sheet { job, out, paper }) => {
            console::sheet(&job, &out, if paper == "a4" { Paper::A4 } else { Paper::Letter })
        }
    }
}

/// Traces the steps of a line to standard error where `RAILHAND_LOG` asks for it.
fn log() {
    let Some(wanted) = std::env::var_os("RAILHAND_LOG").filter(|v| !v.is_empty()) else { return };
    match wanted.to_string_lossy().parse::<Targets>() {
        Ok(wanted) => {
            let log = tracing_subscriber::fmt::layer().with_ansi(false).with_writer(io::stderr);
            // It fails only where a log is set up already, and nothing else sets one up.
            let _ = tracing_subscriber::registry().with(wanted).with(log).try_init();
        }
        Err(_) => {
            let _ = writeln!(io::stderr(), "railhand: RAILHAND_LOG is not understood; try RAILHAND_LOG=debug");
        }
    }
}
