//! The job file: the talk itself, in plain text. `line` says how it is written.
//!
//! [`Store::open`] reads a file and gives the conversation it holds. [`Store::take`] is told of
//! every line, after [`step`](crate::session::step) and before its answer is shown, and keeps
//! what was told. `line`, `book` and `replay` are pure; `disk` alone touches the outside.
//!
//! - A told line is added to the end and synced. An undo, or a question answered, puts a whole
//!   file in place of the old one, by a temporary file and a rename: at no moment is a kept line
//!   missing or half written.
//! - What cannot be kept stays in memory and is tried again with the next line.
//! - A file is hostile until read: bounded in size and lines, never shown raw, never run: only
//!   facts are taken from it.

mod book;
mod disk;
mod editions;
mod line;
mod replay;
mod trouble;

pub use editions::{Edition, Editions, KeptDefault};
pub use line::{Pasted, VERSION, pasted};
pub use replay::{Odd, What};
pub use trouble::{NotKept, Refused, Why};

use crate::grammar::{Act, canon};
use crate::job::Fact;
use crate::reply::{Reply, Status};
use crate::session::{Delta, Log, Session};
use book::{Book, Save};
use disk::Disk;
use std::path::Path;

/// The conversation a job file's bytes hold.
///
/// # Errors
/// Why they are not taken for a job file.
pub fn session_of(bytes: &[u8]) -> Result<Session, Why> {
    replay::read(bytes, Editions::default()).map(|read| read.session)
}

/// A whole job file of told lines in plain phrases.
pub fn whole_file(phrases: &[String]) -> String {
    let head = line::head(Editions::default().newest());
    std::iter::once(&head).chain(phrases).map(|line| format!("{line}\n")).collect()
}

/// A job file in use.
#[derive(Debug)]
pub struct Store {
    name: String,
    book: Book,
    disk: Disk,
    /// True while the file does not hold everything told.
    behind: bool,
    /// True once something was told that no phrase says.
    lost: bool,
}

/// A job file as it was found.
#[derive(Debug)]
pub struct Opened {
    /// The file.
    pub store: Store,
    /// The conversation it holds.
    pub session: Session,
    /// Lines a person should hear of.
    pub odd: Vec<Odd>,
    /// Defaults of the older edition it was made under, kept as lines of the file.
    pub kept: Vec<KeptDefault>,
    /// Why nothing can be kept in it now.
    pub trouble: Option<NotKept>,
}

/// What became of a line's change.
#[derive(Debug)]
pub enum Kept {
    /// It changes nothing that is kept, or it is kept, as always.
    AsAlways,
    /// Everything is kept again, after it was not.
    Again,
    /// It is in memory only.
    Not(NotKept),
}

impl Store {
    /// Opens a job file, and makes it where it is not there.
    ///
    /// # Errors
    /// Why it is refused; it is left as it is. One that cannot be written is not refused: the
    /// talk goes on in memory.
    pub fn open(path: &Path) -> Result<Opened, Refused> {
        Store::open_under(path, Editions::default())
    }

    /// As [`open`](Store::open), under a table of default editions.
    ///
    /// # Errors
    /// As there.
    pub fn open_under(path: &Path, editions: Editions) -> Result<Opened, Refused> {
        let (mut disk, bytes) = Disk::open(path).map_err(|why| why.of(path))?;
        let read = replay::read(&bytes, editions).map_err(|why| why.of(path))?;
        let trouble = disk.trouble();
        let mut store =
            Store { name: trouble::shown(path), book: read.book, disk, behind: trouble.is_some(), lost: false };
        // The head of a fresh file; a full disk is told of before the first line.
        let trouble = match trouble {
            None if bytes.is_empty() => store.save().err(),
            known => known,
        };
        store.behind = trouble.is_some();
        Ok(Opened { store, session: read.session, odd: read.odd, kept: read.kept, trouble })
    }

    /// The file's name, safe to show.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// True where the file holds everything told.
    pub fn holds_all(&self) -> bool {
        !self.behind && !self.lost
    }

    /// How many lines are told, and how many set aside.
    pub fn counts(&self) -> (usize, usize) {
        self.book.counts()
    }

    /// Keeps what a line changed. `before` is the conversation before it, `said` the words it
    /// was said in.
    pub fn take(&mut self, before: &Session, delta: &Delta, reply: &Reply, said: &str) -> Kept {
        let noted = self.note(before, delta, reply, said);
        let was_behind = self.behind;
        let saved = self.save();
        self.behind = saved.is_err();
        match (noted, saved) {
            (Noted::Lost, _) => Kept::Not(NotKept::NoPhrase),
            (Noted::Changed, Err(why)) => Kept::Not(why),
            (_, Ok(())) if was_behind => Kept::Again,
            _ => Kept::AsAlways,
        }
    }

    /// What is told from here on comes in one paste: one undo takes it back.
    pub fn begin_paste(&mut self) {
        self.book.begin_paste();
    }

    /// The paste has ended. Gives how many told lines or groups stood before it.
    pub fn end_paste(&mut self) -> Option<usize> {
        let before = self.book.end_paste();
        self.behind |= self.save().is_err();
        before
    }

    /// Tries once more to keep what is not kept yet.
    ///
    /// # Errors
    /// Why not.
    pub fn finish(&mut self) -> Result<(), NotKept> {
        match self.behind {
            true => self.save(),
            false if self.lost => Err(NotKept::NoPhrase),
            false => Ok(()),
        }
    }

    fn note(&mut self, before: &Session, delta: &Delta, reply: &Reply, said: &str) -> Noted {
        let noted = match delta.log() {
            Log::Told(facts) => {
                let mut words = if before.answered_by(delta) { self.book.answered() } else { Vec::new() };
                words.push(said.to_owned());
                self.tell(facts, &words.join(" / "))
            }
            Log::Undo => {
                self.book.undo();
                Noted::Changed
            }
            Log::Redo => {
                self.book.redo();
                Noted::Changed
            }
            Log::Same if is_left_over(reply, said) => {
                self.book.set_aside(said, true);
                Noted::Changed
            }
            Log::Same => Noted::Nothing,
        };
        if !delta.asks() {
            self.book.let_go();
        }
        noted
    }

    /// Writes facts down as the phrase that reads back as exactly these facts.
    fn tell(&mut self, facts: &[Fact], said: &str) -> Noted {
        let act = Act::Tell(facts.to_vec());
        let phrase = canon::write(&act);
        if canon::read(&phrase) != Some(act) {
            self.lost = true;
            self.book.tell_nothing();
            self.book.set_aside(said, false);
            return Noted::Lost;
        }
        self.book.tell(&phrase, said);
        Noted::Changed
    }

    fn save(&mut self) -> Result<(), NotKept> {
        match self.book.to_save().ok_or(NotKept::TooLarge)? {
            Save::Nothing => return Ok(()),
            Save::Replace(text) => self.disk.replace(&text)?,
            Save::Append(text) => self.append(&text)?,
        }
        self.book.was_saved();
        Ok(())
    }

    fn append(&mut self, text: &str) -> Result<(), NotKept> {
        let before = self.disk.len();
        match self.disk.append(text) {
            Err(NotKept::Gone) => {
                self.book.must_replace();
                self.save()
            }
            Err(why) => {
                // Half a line may stand in the file now.
                if before.is_some() && self.disk.len() != before {
                    self.book.must_replace();
                }
                Err(why)
            }
            Ok(()) => Ok(()),
        }
    }
}

/// What a line did to the lines of the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Noted {
    Nothing,
    Changed,
    /// Told, and no phrase says it.
    Lost,
}

/// True for words that were not understood, or led to a question: they are set aside. A question
/// asked, a sum or a bit of talk is not kept, whether it could be answered or not.
fn is_left_over(reply: &Reply, said: &str) -> bool {
    let stuck = matches!(reply.status, Status::Asks | Status::Refused);
    let understood = reply.readback.is_some();
    let talk = matches!(canon::read(said), Some(Act::Query(_) | Act::Sum(_) | Act::Talk(_)));
    stuck && !understood && !talk && !said.trim().is_empty()
}
