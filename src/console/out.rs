//! The one writer: everything shown goes out here, and a reader that went away ends it quietly.

use super::talk::Form;
use crate::store::{NotKept, Refused};
use std::fmt;
use std::io::{self, BufWriter, Write};

/// Why the conversation cannot go on.
#[derive(Debug)]
pub enum Trouble {
    /// Whoever read the answers has gone: no error, just the end.
    Gone,
    /// A line could not be read.
    Read(io::Error),
    /// An answer could not be written.
    Write(io::Error),
    /// The price list of that name could not be read.
    Prices(String, io::Error),
    /// The sheet of that name could not be written, or what it is of not read.
    Sheet(String, io::Error),
    /// The job file was not opened.
    Job(Refused),
    /// The job file of that name does not hold everything that was told.
    NotKept(String, NotKept),
}

impl Trouble {
    fn writing(e: io::Error) -> Trouble {
        if e.kind() == io::ErrorKind::BrokenPipe { Trouble::Gone } else { Trouble::Write(e) }
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Trouble::Gone => write!(f, "nobody reads the answers any more"),
            Trouble::Read(e) => write!(f, "a line could not be read: {e}"),
            Trouble::Write(e) => write!(f, "an answer could not be written: {e}"),
            Trouble::Prices(name, why) => write!(f, "the prices in {name} could not be read: {why}"),
            Trouble::Sheet(name, why) => write!(f, "no sheet: {name}: {why}"),
            Trouble::Job(refused) => write!(f, "{refused}"),
            Trouble::NotKept(name, why) => write!(f, "{name} does not hold everything that was told: {}", why.says()),
        }
    }
}

impl std::error::Error for Trouble {}

/// A buffered writer of answers.
pub(super) struct Out<W: Write> {
    to: BufWriter<W>,
    first: bool,
}

impl<W: Write> Out<W> {
    /// Answers go to `to`.
    pub(super) fn new(to: W) -> Out<W> {
        Out { to: BufWriter::new(to), first: true }
    }

    /// One answer: a JSON object a line, or text with an empty row between answers.
    pub(super) fn answer(&mut self, text: &str, form: Form) -> Result<(), Trouble> {
        if form == Form::Text && !std::mem::take(&mut self.first) {
            self.write("\n")?;
        }
        self.write(text)?;
        self.write("\n")
    }

    /// Text as it is.
    pub(super) fn write(&mut self, text: &str) -> Result<(), Trouble> {
        self.to.write_all(text.as_bytes()).map_err(Trouble::writing)
    }

    /// Sends on what is held back.
    pub(super) fn flush(&mut self) -> Result<(), Trouble> {
        self.to.flush().map_err(Trouble::writing)
    }
}

impl<W: Write> Drop for Out<W> {
    /// Whatever matters was flushed, and its failure told; a drop has nobody to tell.
    fn drop(&mut self) {
        let _ = self.to.flush();
    }
}
