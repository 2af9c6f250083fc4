//! The arguments of the command line.

use clap::{Parser, Subcommand};
use std::ffi::{OsStr, OsString};
use std::path::PathBuf;

/// Talk a deck guard layout through: posts, bays and marks in feet and fractional inches
#[derive(Debug, Parser)]
#[command(version)]
pub(crate) struct Cli {
    /// One JSON object a line, as the README documents it
    #[arg(long, global = true)]
    pub(crate) json: bool,
    /// Tell the prices of a yard's list first: rows of 2x4x8,7.98
    #[arg(long, global = true, value_name = "FILE.csv")]
    pub(crate) prices: Option<PathBuf>,
    /// Keep the talk in this job file, and go on with what it holds; it is made where it is not there
    #[arg(value_name = "FILE.job")]
    pub(crate) file: Option<PathBuf>,
    /// None opens the console.
    #[command(subcommand)]
    pub(crate) command: Option<Command>,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Answer lines, in order, as one conversation, and leave
    Say {
        /// A line, quoted: "run 10 ft between corner and stair head"
        #[arg(required = true, value_name = "LINE")]
        lines: Vec<OsString>,
        /// Go on with the talk in this job file, and keep it there
        #[arg(long, value_name = "FILE.job")]
        job: Option<PathBuf>,
    },
    /// Write a job file's sheet: drawings, cuts, buying list, checks
    Sheet {
        /// The job file
        #[arg(value_name = "FILE.job")]
        job: PathBuf,
        /// Where to: it ends in .html, .pdf, .svg, .png or .md
        #[arg(short, long, value_name = "FILE")]
        out: PathBuf,
        /// The paper it is set on
        #[arg(long, value_name = "PAPER", default_value = "letter", value_parser = ["letter", "a4"])]
        paper: String,
    },
}

/// What is wrong with arguments that parse. A name that ends in no ".job" and is no file yet is
/// a slip of the finger more often than a new job: it is not made.
pub(crate) fn amiss(cli: &Cli) -> Option<&'static str> {
    let file = match &cli.command {
        Some(Command::Say { job, .. }) if cli.file.is_none() => job,
        None => &cli.file,
        Some(Command::Sheet { .. }) if cli.file.is_none() => return None,
        Some(_) => return Some("name the job file behind say: railhand say --job FILE.job LINE"),
    };
    let file = file.as_ref()?;
    let fine = file.extension().is_some_and(|e| e == "job") || file.symlink_metadata().is_ok();
    (!fine).then_some("there is no such job file, and a new one must be named so that it ends in .job")
}

/// Puts the lines of `say` behind its flags and a `--`, so that "-2 ft" is a line and
/// `--json` a flag wherever either stands.
pub(crate) fn lines_last(args: Vec<OsString>) -> Vec<OsString> {
    let behind = |n: usize| FILES.iter().any(|f| args[n - 1] == *f);
    let Some(say) = (1..args.len()).find(|n| !is_flag(&args[*n]) && !behind(*n)) else { return args };
    if args[say] != "say" {
        return args;
    }
    let mut out = args[..=say].to_vec();
    let rest = &args[say + 1..];
    let (before, after) = match rest.iter().position(|a| a == "--") {
        Some(n) => (&rest[..n], &rest[n + 1..]),
        None => (rest, &rest[..0]),
    };
    let mut lines = Vec::new();
    let mut before = before.iter();
    while let Some(arg) = before.next() {
        match is_flag(arg) {
            true if FILES.iter().any(|f| arg == f) => out.extend([arg].into_iter().chain(before.next()).cloned()),
            true => out.push(arg.clone()),
            false => lines.push(arg.clone()),
        }
    }
    out.push("--".into());
    out.extend(lines.iter().chain(after).cloned());
    out
}

/// Flags with a file behind them.
const FILES: [&str; 2] = ["--job", "--prices"];

/// A flag is dashes and a word of letters, nothing else; but whatever a file is named.
fn is_flag(arg: &OsStr) -> bool {
    if FILES
        .iter()
        .any(|f| arg.as_encoded_bytes().strip_prefix(f.as_bytes()).is_some_and(|rest| rest.starts_with(b"=")))
    {
        return true;
    }
    let Some(name) = arg.to_str().and_then(|a| a.strip_prefix('-')) else { return false };
    let name = name.strip_prefix('-').unwrap_or(name);
    name.starts_with(|c: char| c.is_ascii_alphabetic()) && !name.contains(char::is_whitespace)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(args: &[&str]) -> Option<(bool, Vec<OsString>)> {
        let args = std::iter::once("railhand").chain(args.iter().copied()).map(OsString::from).collect();
        let cli = Cli::try_parse_from(lines_last(args)).ok()?;
        let Some(Command::Say { lines, .. }) = cli.command else { return Some((cli.json, Vec::new())) };
        Some((cli.json, lines))
    }

    #[test]
    fn flags_and_lines_may_stand_in_any_order() {
        type Row<'a> = (&'a [&'a str], Option<(bool, &'a [&'a str])>);
        let rows: [Row; 19] = [
            (&[], Some((false, &[]))),
            (&["--json"], Some((true, &[]))),
            (&["say", "a", "b"], Some((false, &["a", "b"]))),
            (&["say", "--json", "a"], Some((true, &["a"]))),
            (&["say", "a", "--json"], Some((true, &["a"]))),
            (&["--json", "say", ""], Some((true, &[""]))),
            (&["say", "-2 ft", "- 3", "-", "-1/2"], Some((false, &["-2 ft", "- 3", "-", "-1/2"]))),
            (&["say", "a", "--", "--json"], Some((false, &["a", "--json"]))),
            (&["say", "say"], Some((false, &["say"]))),
            (&["say"], None),
            (&["say", "--json"], None),
            (&["say", "--sideways", "a"], None),
            (&["shout", "a"], None),
            (&["deck.job"], Some((false, &[]))),
            (&["say", "a", "--job", "d.job", "-2 ft", "--json"], Some((true, &["a", "-2 ft"]))),
            (&["say", "--job=my deck.job", "a"], Some((false, &["a"]))),
            (&["say", "a", "--prices", "yard.csv", "-2 ft"], Some((false, &["a", "-2 ft"]))),
            (&["--prices", "yard.csv", "say", "-2 ft", "--json"], Some((true, &["-2 ft"]))),
            (&["say", "a", "--job"], None),
        ];
        for (args, want) in rows {
            let want = want.map(|(json, lines)| (json, lines.iter().map(OsString::from).collect()));
            assert_eq!(said(args), want, "{args:?}");
        }
    }

    #[test]
    fn a_new_job_file_is_named_as_one_and_in_its_place() {
        let rows: [(&[&str], bool); 7] = [
            (&["deck.job"], true),
            (&["/dev/null"], true),
            (&["shout"], false),
            (&["deck.txt"], false),
            (&["say", "--job", "deck.job", "a"], true),
            (&["say", "--job", "deck", "a"], false),
            (&["deck.job", "say", "a"], false),
        ];
        for (args, fine) in rows {
            let args = std::iter::once("railhand").chain(args.iter().copied()).map(OsString::from).collect();
            let cli = Cli::try_parse_from(lines_last(args)).expect("these parse");
            assert_eq!(amiss(&cli).is_none(), fine, "{cli:?}");
        }
    }
}
