//! Why a job file cannot be opened, or does not hold what was told. Words only.

use crate::reply::safe;
use std::fmt;
use std::io;
use std::path::Path;

/// A file's name, safe to show.
pub(super) fn shown(path: &Path) -> String {
    safe(&path.to_string_lossy()).replace('\n', "\u{fffd}")
}

/// A job file that is not opened; it is left as it is.
#[derive(Debug)]
pub struct Refused {
    /// The file's name, safe to show.
    pub name: String,
    /// Why.
    pub why: Why,
}

/// Why a job file is not opened.
#[derive(Debug)]
pub enum Why {
    /// It is not a plain file: a folder, a device, a pipe.
    NotAFile,
    /// It is a link to nothing.
    DeadLink,
    /// It does not begin as a job file does.
    Foreign,
    /// It was written by a later version.
    Newer,
    /// It is larger than is read.
    TooLarge,
    /// Too many of its lines are not as this program writes them.
    Broken,
    /// It cannot be read.
    Unreadable(io::Error),
}

impl Why {
    pub(super) fn of(self, path: &Path) -> Refused {
        Refused { name: shown(path), why: self }
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = &self.name;
        match &self.why {
            Why::NotAFile => write!(f, "{name} is a folder or a device, not a file"),
            Why::DeadLink => write!(f, "{name} is a link to a file that is not there"),
            Why::Foreign => write!(f, "{name} is not a job file of railhand; it was left as it is"),
            Why::Newer => {
                write!(f, "{name} was written by a later railhand; it was left as it is, open it with that one")
            }
            Why::TooLarge => write!(f, "{name} is larger than a job file may be (4 MiB, 20,000 lines)"),
            Why::Broken => {
                write!(f, "{name} has more than 200 lines that are not as I write them; it was left as it is")
            }
            Why::Unreadable(e) => write!(f, "{name} cannot be read: {}", reason(e)),
        }
    }
}

impl std::error::Error for Refused {}

/// Why a job file does not hold what was told. The talk goes on in memory.
#[derive(Debug)]
pub enum NotKept {
    /// Another console has the file.
    Held,
    /// Something else changed it since it was read.
    Changed,
    /// It was taken away.
    Gone,
    /// It would grow larger than is read.
    TooLarge,
    /// No phrase reads back as what was told.
    NoPhrase,
    /// It cannot be written.
    Unwritten(io::Error),
}

impl NotKept {
    /// Why, as half a sentence.
    pub fn says(&self) -> &'static str {
        match self {
            NotKept::Held => "another railhand has it open, so it is only read here",
            NotKept::Changed => "something else changed it since I read it; open it again to go on from there",
            NotKept::Gone => "it was taken away",
            NotKept::TooLarge => "it would be larger than a job file may be (4 MiB, 20,000 lines)",
            NotKept::NoPhrase => "I have no phrase that says this exactly",
            NotKept::Unwritten(e) => reason(e),
        }
    }
}

impl From<io::Error> for NotKept {
    fn from(e: io::Error) -> NotKept {
        NotKept::Unwritten(e)
    }
}

/// An error of the system in a carpenter's words. The kinds are those of `std::io::ErrorKind`.
fn reason(e: &io::Error) -> &'static str {
    use io::ErrorKind as Kind;
    match e.kind() {
        Kind::StorageFull | Kind::QuotaExceeded | Kind::FileTooLarge => "the disk is full",
        Kind::PermissionDenied => "permission denied",
        Kind::ReadOnlyFilesystem => "the disk is read-only",
        Kind::NotFound | Kind::NotADirectory => "there is no such folder",
        Kind::IsADirectory => "it is a folder",
        _ => "the system gave an error",
    }
}
