//! The room that touches the outside: the prompt, the pipe, the one-shot command.
//!
//! `talk` holds one conversation and turns a line into what is shown; `lines` reads
//! lines of any length in bounded memory; `found` words what a job file was found like; `out`
//! is the one writer; `colours` paints, `deaf` finds out a terminal that says nothing, `offers` is what Tab offers; `copy` is what leaves the talk, `sheet` what is built from; `prices` tells a yard's price list; `prompt` is the
//! only module that knows the line editor; `rescue` is for mistakes of the program's own.

mod colours;
mod copy;
mod deaf;
mod found;
mod lines;
mod offers;
mod out;
mod paths;
mod prices;
mod prompt;
mod rescue;
mod screen;
mod sheet;
mod talk;
mod weighed;

pub use out::Trouble;
pub use rescue::at_a_mistake;
pub use sheet::sheet;

use crate::reply::wrap;
use crate::store::{Opened, Store};
use lines::{Lines, split};
use out::Out;
use screen::Screen;
use std::io::{self, IsTerminal as _, Write};
use std::path::Path;
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
/// Where a job file is named, the talk is the one it holds, and is kept in it; where a price
/// list is, its prices are told first.
///
/// # Errors
/// What could not be read or written. A reader that went away is not an error.
pub fn open(json: bool, job: Option<&Path>, prices: Option<&Path>) -> Result<(), Trouble> {
    let job = opened(job)?;
    let person = io::stdin().is_terminal() && io::stdout().is_terminal() && !json;
    let found = job.as_ref().map(|o| found::says(o, person, Screen::of_stdout().width)).unwrap_or_default();
    let mut talk = Talk::new(Form::of(json), job);
    let found = found + &priced(&mut talk, prices)?;
    let held = match (person, Screen::is_dumb()) {
        (false, _) => {
            aside(&found);
            pipe(&mut talk)
        }
        (true, true) => dumb(&mut talk, &found, io::empty()),
        (true, false) => match deaf::typed_at_a_deaf_terminal() {
            None => prompt::converse(&mut talk, &found),
            Some(typed) => dumb(&mut talk, &found, typed.as_bytes()),
        },
    };
    finished(talk, held)
}

/// Answers lines in order, as one conversation. A line break inside one starts the next.
/// Where a job file is named, the talk goes on from what it holds, and is kept in it; where a
/// price list is, its prices are told first.
///
/// # Errors
/// What could not be read or written.
pub fn say(said: &[String], json: bool, job: Option<&Path>, prices: Option<&Path>) -> Result<(), Trouble> {
    let job = opened(job)?;
    aside(&job.as_ref().map(|o| found::says(o, false, Screen::of_stdout().width)).unwrap_or_default());
    let mut talk = Talk::new(Form::of(json), job);
    aside(&priced(&mut talk, prices)?);
    let held = said_all(&mut talk, said);
    finished(talk, held)
}

/// Tells the talk the prices of a list, where one is named; what there is to say of it.
fn priced(talk: &mut Talk, prices: Option<&Path>) -> Result<String, Trouble> {
    let width = Screen::of_stdout().width;
    prices.map(|list| prices::tell(talk, list, width)).transpose().map(Option::unwrap_or_default)
}

fn opened(job: Option<&Path>) -> Result<Option<Opened>, Trouble> {
    job.map(|path| Store::open(path).map_err(Trouble::Job)).transpose()
}

/// The end of a talk: that the job file does not hold it all is told last, and is told even
/// where nobody reads the answers any more.
fn finished(mut talk: Talk, held: Result<(), Trouble>) -> Result<(), Trouble> {
    match (held, talk.finish()) {
        (Ok(()) | Err(Trouble::Gone), Err((name, why))) => Err(Trouble::NotKept(name, why)),
        (held, _) => held,
    }
}

fn said_all(talk: &mut Talk, said: &[String]) -> Result<(), Trouble> {
    let mut out = Out::new(io::stdout().lock());
    for said in said {
        for line in talk.pasted(split(said).collect()) {
            out.answer(&talk.answer(&line, Screen::of_stdout()), talk.form())?;
        }
    }
    out.flush()
}

/// Answers standard input line by line.
fn pipe(talk: &mut Talk) -> Result<(), Trouble> {
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

/// A terminal that can do nothing: no editing, no escape sequences. `typed` was typed already.
fn dumb(talk: &mut Talk, found: &str, typed: impl io::Read) -> Result<(), Trouble> {
    let mut out = Out::new(io::stdout().lock());
    let mut lines = Lines::new(typed.chain(io::stdin().lock()));
    out.write(&welcome())?;
    out.write(found)?;
    loop {
        out.write(PROMPT)?;
        out.flush()?;
        let Some(line) = lines.next_line().map_err(Trouble::Read)? else {
            return out.write("\n").and_then(|()| out.flush());
        };
        match Talk::turn(&line) {
            talk::Turn::Leave => return Ok(()),
            talk::Turn::Nothing => {}
            talk::Turn::More => out.answer(&talk.more(Screen::of_stdout()), talk.form())?,
            talk::Turn::Answer => out.answer(&talk.answer(&line, Screen::of_stdout()), talk.form())?,
        }
    }
}

/// Says on standard error what is no answer. Where that is closed, nobody is left to tell.
fn aside(text: &str) {
    let _ = io::stderr().write_all(text.as_bytes());
}

/// Says on standard error what went wrong. Where that is closed too, nobody is left to tell.
pub fn complain(trouble: &Trouble) {
    let _ = writeln!(io::stderr(), "railhand: {trouble}");
}
