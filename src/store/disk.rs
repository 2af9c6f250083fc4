//! The job file on the disk: opened, locked, added to, put in place whole.
//!
//! The lock is on the file itself, so no second file is left lying about. A file put in its
//! place is locked before it gets the name, and who opens one looks again, after the lock, whether
//! the name still leads to it. A temporary file is made new, never opened: a link put at its
//! name is not followed.

use super::book::MOST_BYTES;
use super::trouble::{NotKept, Why};
use std::fs::{self, File, Metadata, OpenOptions, TryLockError};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

/// How often a file that is being replaced just now is opened again.
const TRIES: usize = 20;

/// The job file on the disk.
#[derive(Debug)]
pub(super) struct Disk {
    /// The file itself, links followed.
    path: PathBuf,
    hold: Hold,
}

#[derive(Debug)]
enum Hold {
    /// Open, locked, and as it was left.
    Ours(File, Mark),
    /// Another console's.
    Theirs,
    /// It could not be opened for writing; `seen` is what was read of it, `None` where it was not there.
    Shut { why: Option<io::Error>, seen: Option<Vec<u8>> },
}

/// What tells that a file is as it was left.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Mark {
    inode: (u64, u64),
    len: u64,
    written: Option<SystemTime>,
}

impl Mark {
    fn of(meta: &Metadata) -> Mark {
        Mark { inode: inode(meta), len: meta.len(), written: meta.modified().ok() }
    }
}

#[cfg(unix)]
fn inode(meta: &Metadata) -> (u64, u64) {
    use std::os::unix::fs::MetadataExt as _;
    (meta.dev(), meta.ino())
}

#[cfg(not(unix))]
fn inode(_: &Metadata) -> (u64, u64) {
    (0, 0)
}

impl Disk {
    /// Opens a job file, or makes it where it is not there. Gives what it holds.
    ///
    /// # Errors
    /// Why it is refused. One that cannot be written or made is not refused.
    pub(super) fn open(named: &Path) -> Result<(Disk, Vec<u8>), Why> {
        match fs::metadata(named) {
            Ok(meta) if !meta.is_file() => Err(Why::NotAFile),
            Ok(_) => Disk::existing(fs::canonicalize(named).map_err(Why::Unreadable)?),
            Err(e) if e.kind() != io::ErrorKind::NotFound => Err(Why::Unreadable(e)),
            Err(_) if fs::symlink_metadata(named).is_ok() => Err(Why::DeadLink),
            Err(_) => Disk::fresh(named),
        }
    }

    fn existing(path: PathBuf) -> Result<(Disk, Vec<u8>), Why> {
        match hold(&path, false) {
            Ok(Some(mut file)) => {
                let (bytes, mark) = read(&mut file)?;
                Ok((Disk { path, hold: Hold::Ours(file, mark) }, bytes))
            }
            Ok(None) => {
                let (bytes, _) = read(&mut File::open(&path).map_err(Why::Unreadable)?)?;
                Ok((Disk { path, hold: Hold::Theirs }, bytes))
            }
            Err(why) => {
                let (bytes, _) = read(&mut File::open(&path).map_err(Why::Unreadable)?)?;
                Ok((Disk { path, hold: Hold::Shut { why: Some(why), seen: Some(bytes.clone()) } }, bytes))
            }
        }
    }

    fn fresh(named: &Path) -> Result<(Disk, Vec<u8>), Why> {
        let mut disk = Disk { path: named.to_owned(), hold: Hold::Shut { why: None, seen: None } };
        match disk.take_hold() {
            // Another console made it just now.
            Err(NotKept::Changed) => return Disk::existing(fs::canonicalize(named).map_err(Why::Unreadable)?),
            Err(NotKept::Unwritten(e)) => disk.hold = Hold::Shut { why: Some(e), seen: None },
            _ => {}
        }
        Ok((disk, Vec::new()))
    }

    /// Why nothing can be written, where that is known.
    pub(super) fn trouble(&mut self) -> Option<NotKept> {
        match &mut self.hold {
            Hold::Ours(..) => None,
            Hold::Theirs => Some(NotKept::Held),
            Hold::Shut { why, .. } => why.take().map(NotKept::Unwritten),
        }
    }

    /// Adds lines. Whether they were written whole is known only where it gives no error.
    ///
    /// # Errors
    /// Why they were not. Where [`len`](Disk::len) is not what it was, part of them stands in the file.
    pub(super) fn append(&mut self, lines: &str) -> Result<(), NotKept> {
        self.take_hold()?;
        self.check()?;
        let Hold::Ours(file, mark) = &mut self.hold else { return Err(NotKept::Held) };
        let done = file.write_all(lines.as_bytes()).and_then(|()| file.sync_data());
        if done.is_err() {
            // What was written of a line must not stay as half a line; where it does, the length tells.
            let _ = file.set_len(mark.len).and_then(|()| file.sync_data());
        }
        *mark = Mark::of(&file.metadata()?);
        Ok(done?)
    }

    /// How many bytes the file is taken to have; `None` where it is not ours to write.
    pub(super) fn len(&self) -> Option<u64> {
        if let Hold::Ours(_, mark) = &self.hold { Some(mark.len) } else { None }
    }

    /// Puts a whole file in the place of the old one: whoever looks sees the one or the other.
    ///
    /// # Errors
    /// Why it was not. The old file is as it was.
    pub(super) fn replace(&mut self, text: &str) -> Result<(), NotKept> {
        self.take_hold()?;
        match self.check() {
            // Taken away, it is put back.
            Ok(()) | Err(NotKept::Gone) => {}
            Err(why) => return Err(why),
        }
        let made = beside(&self.path)?;
        match self.fill_and_name(&made, text) {
            Ok(hold) => {
                self.hold = hold;
                Ok(())
            }
            Err(e) => {
                let _ = fs::remove_file(&made);
                Err(e.into())
            }
        }
    }

    fn fill_and_name(&self, made: &Path, text: &str) -> io::Result<Hold> {
        let mut file = make(made)?;
        file.write_all(text.as_bytes())?;
        if let Hold::Ours(old, _) = &self.hold {
            file.set_permissions(old.metadata()?.permissions())?;
        }
        // Nobody else can have it yet; where locks are not known there is none to lose.
        let _ = file.try_lock();
        file.sync_all()?;
        fs::rename(made, &self.path)?;
        // The name is on the disk once its folder is; some systems cannot be asked for that.
        if let Some(folder) = self.path.parent() {
            let _ = File::open(folder).and_then(|f| f.sync_all());
        }
        let mark = Mark::of(&file.metadata()?);
        Ok(Hold::Ours(file, mark))
    }

    /// Opens a file that was shut: it may have become writable since.
    fn take_hold(&mut self) -> Result<(), NotKept> {
        let seen = match &mut self.hold {
            Hold::Ours(..) => return Ok(()),
            Hold::Theirs => return Err(NotKept::Held),
            Hold::Shut { seen, .. } => seen,
        };
        let opened = hold(&self.path, seen.is_none()).map_err(|e| match e.kind() {
            io::ErrorKind::AlreadyExists => NotKept::Changed,
            _ => NotKept::Unwritten(e),
        })?;
        let mut file = opened.ok_or(NotKept::Held)?;
        let (bytes, mark) = read(&mut file).map_err(|_| NotKept::Changed)?;
        if bytes != seen.as_deref().unwrap_or_default() {
            return Err(NotKept::Changed);
        }
        self.path = fs::canonicalize(&self.path)?;
        self.hold = Hold::Ours(file, mark);
        Ok(())
    }

    /// The name must still lead to the file as it was left: what somebody else wrote is not overwritten.
    fn check(&self) -> Result<(), NotKept> {
        let Hold::Ours(_, mark) = &self.hold else { return Err(NotKept::Held) };
        match fs::symlink_metadata(&self.path) {
            Ok(meta) if Mark::of(&meta) == *mark => Ok(()),
            Ok(_) => Err(NotKept::Changed),
            Err(e) if e.kind() == io::ErrorKind::NotFound => Err(NotKept::Gone),
            Err(e) => Err(e.into()),
        }
    }
}

/// Opens a file to read and add to, and locks it; `None` where another has the lock.
fn hold(path: &Path, make_it: bool) -> io::Result<Option<File>> {
    for _ in 0..TRIES {
        let file = if make_it { make(path)? } else { OpenOptions::new().read(true).append(true).open(path)? };
        match file.try_lock() {
            Err(TryLockError::WouldBlock) => return Ok(None),
            // A disk that knows no locks: that nobody else changed the file is seen before each writing.
            Ok(()) | Err(TryLockError::Error(_)) => {}
        }
        if fs::metadata(path).is_ok_and(|now| file.metadata().is_ok_and(|held| inode(&now) == inode(&held))) {
            return Ok(Some(file));
        }
    }
    Ok(None)
}

/// Makes a file that is not there. A link at its name is not followed.
fn make(path: &Path) -> io::Result<File> {
    OpenOptions::new().read(true).append(true).create_new(true).open(path)
}

/// The name of the temporary file beside a job file; one left by a broken-off run is cleared away.
fn beside(path: &Path) -> io::Result<PathBuf> {
    let mut name = std::ffi::OsString::from(".");
    name.push(path.file_name().unwrap_or_default());
    name.push(".railhand-new");
    let made = path.with_file_name(name);
    match fs::remove_file(&made) {
        Err(e) if e.kind() != io::ErrorKind::NotFound => Err(e),
        _ => Ok(made),
    }
}

/// What a file holds, in bounded memory.
fn read(file: &mut File) -> Result<(Vec<u8>, Mark), Why> {
    let meta = file.metadata().map_err(Why::Unreadable)?;
    if !meta.is_file() {
        return Err(Why::NotAFile);
    }
    let most = MOST_BYTES as u64 + 1;
    let mut bytes = Vec::new();
    file.take(most).read_to_end(&mut bytes).map_err(Why::Unreadable)?;
    if bytes.len() > MOST_BYTES {
        return Err(Why::TooLarge);
    }
    let mark = Mark { len: bytes.len() as u64, ..Mark::of(&meta) };
    Ok((bytes, mark))
}
