//! The arguments of the command line.

use clap::{Parser, Subcommand};
use std::ffi::{OsStr, OsString};

/// Talk a deck guard layout through: posts, bays and marks in feet and fractional inches
#[derive(Debug, Parser)]
#[command(version)]
pub(crate) struct Cli {
    /// One JSON object a line, as the README documents it
    #[arg(long, global = true)]
    pub(crate) json: bool,
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
    },
}

/// Puts the lines of `say` behind its flags and a `--`, so that "-2 ft" is a line and
/// `--json` a flag wherever either stands.
pub(crate) fn lines_last(args: Vec<OsString>) -> Vec<OsString> {
    let Some(say) = args.iter().skip(1).position(|a| !is_flag(a)).map(|n| n + 1) else { return args };
    if args[say] != "say" {
        return args;
    }
    let mut out = args[..=say].to_vec();
    let rest = &args[say + 1..];
    let (before, after) = match rest.iter().position(|a| a == "--") {
        Some(n) => (&rest[..n], &rest[n + 1..]),
        None => (rest, &rest[..0]),
    };
    out.extend(before.iter().filter(|a| is_flag(a)).cloned());
    out.push("--".into());
    out.extend(before.iter().filter(|a| !is_flag(a)).chain(after).cloned());
    out
}

/// A flag is dashes and a word of letters, nothing else.
fn is_flag(arg: &OsStr) -> bool {
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
        let Some(Command::Say { lines }) = cli.command else { return Some((cli.json, Vec::new())) };
        Some((cli.json, lines))
    }

    #[test]
    fn flags_and_lines_may_stand_in_any_order() {
        type Row<'a> = (&'a [&'a str], Option<(bool, &'a [&'a str])>);
        let rows: [Row; 13] = [
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
        ];
        for (args, want) in rows {
            let want = want.map(|(json, lines)| (json, lines.iter().map(OsString::from).collect()));
            assert_eq!(said(args), want, "{args:?}");
        }
    }
}
