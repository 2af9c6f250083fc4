//! The room that touches the outside: the prompt, the pipe, the one-shot command.
//!
//! `talk` holds one conversation and turns a line into what is shown; `lines` reads
//! lines of any length in bounded memory; `out` is the one writer; `prompt` is the
//! only module that knows the line editor.

mod lines;
mod out;
mod paths;
mod prompt;
mod screen;
mod talk;

pub use out::Trouble;

use crate::reply::wrap;
use lines::{Lines, split};
use out::Out;
use screen::Screen;
use std::io::{self, IsTerminal as _, Write};
use talk::{Form, Talk};

/// The mark a line is typed behind.
const PROMPT: &str = "> ";

/// What a first-time user is told before the first prompt.
const WELCOME: [&str; 3] = [
    "Tell me a run as you would say it: run 14-3 between house and corner",
    "Do a sum: half of 9-7 1/4. Put it right: make it 13-9. Ask: why?",
    "Ctrl-C clears the line, Ctrl-D or quit leaves. Your building department decides.",
];

/// The welcome, wrapped to the screen.
fn welcome() -> String {
    let width = Screen::of_stdout().width;
    WELCOME.iter().map(|row| wrap("", row, 2, width) + "\n").collect()
}

/// Opens the console where a person sits at a terminal; else answers standard input line by line.
///
/// # Errors
/// What could not be read or written. A reader that went away is not an error.
pub fn open(json: bool) -> Result<(), Trouble> {
    let person = io::stdin().is_terminal() && io::stdout().is_terminal();
    match (person && !json, Screen::is_dumb()) {
        (false, _) => pipe(json),
        (true, true) => dumb(),
        (true, false) => prompt::converse(),
    }
}

/// Answers lines in order, as one conversation. A line break inside one starts the next.
///
/// # Errors
/// What could not be written.
pub fn say(said: &[String], json: bool) -> Result<(), Trouble> {
    let mut talk = Talk::new(Form::of(json));
    let mut out = Out::new(io::stdout().lock());
    for line in said.iter().flat_map(|s| split(s)) {
        out.answer(&talk.answer(&line, Screen::of_stdout()), talk.form())?;
    }
    out.flush()
}

/// Answers standard input line by line.
fn pipe(json: bool) -> Result<(), Trouble> {
    let mut talk = Talk::new(Form::of(json));
    let mut out = Out::new(io::stdout().lock());
    let mut lines = Lines::new(io::stdin().lock());
    loop {
        // Whoever waits for an answer before the next line gets it; a file is not flushed line by line.
        if !lines.holds_a_line() {
            out.flush()?;
        }
        let Some(line) = lines.next_line().map_err(Trouble::Read)? else { return out.flush() };
        out.answer(&talk.answer(&line, Screen::of_stdout()), talk.form())?;
    }
}

/// A terminal that can do nothing: no editing, no escape sequences.
fn dumb() -> Result<(), Trouble> {
    let mut talk = Talk::new(Form::Text);
    let mut out = Out::new(io::stdout().lock());
    let mut lines = Lines::new(io::stdin().lock());
    out.write(&welcome())?;
    loop {
        out.write(PROMPT)?;
        out.flush()?;
        let Some(line) = lines.next_line().map_err(Trouble::Read)? else {
            return out.write("\n").and_then(|()| out.flush());
        };
        match Talk::turn(&line) {
            talk::Turn::Leave => return Ok(()),
            talk::Turn::Nothing => {}
            talk::Turn::Answer => out.answer(&talk.answer(&line, Screen::of_stdout()), talk.form())?,
        }
    }
}

/// Says on standard error what went wrong. Where that is closed too, nobody is left to tell.
pub fn complain(trouble: &Trouble) {
    let _ = writeln!(io::stderr(), "railhand: {trouble}");
}
