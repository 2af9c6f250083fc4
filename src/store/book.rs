//! The lines of a job file in memory, and what of them the disk does not hold yet. Pure.
//!
//! A told line is one unit of undo, a paste is one unit of several; the units here and the
//! told lines of the session go in step.

use super::line::{Entry, Kind, head};

/// The most lines a job file may have.
pub(super) const MOST_LINES: usize = 20_000;
/// The most bytes a job file may have.
pub(super) const MOST_BYTES: usize = 4 * 1024 * 1024;

/// The lines of a job file.
#[derive(Clone, Debug, Default)]
pub(super) struct Book {
    entries: Vec<Entry>,
    /// How many told lines each undo takes back.
    units: Vec<usize>,
    /// Units taken back, the newest last.
    undone: Vec<Vec<Entry>>,
    /// How many units stood when the paste that is going on began.
    paste: Option<usize>,
    /// How many of the entries, from the first on, the disk holds.
    saved: usize,
    /// True where the disk holds something that must not be there.
    stale: bool,
    /// The edition of the defaults the file is written under.
    defaults: u32,
}

/// What the disk wants to be given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Save {
    /// Nothing: it holds everything.
    Nothing,
    /// These lines more.
    Append(String),
    /// A whole file in place of the old one.
    Replace(String),
}

impl Book {
    /// The lines of a file as read. `stale` where the file is to be written anew, because
    /// some of its lines did not come out as they stand in it.
    pub(super) fn read(entries: Vec<Entry>, units: Vec<usize>, stale: bool, defaults: u32) -> Book {
        Book { saved: entries.len(), entries, units, stale, defaults, ..Book::default() }
    }

    /// The lines of a file that is not there yet, or empty.
    pub(super) fn fresh(defaults: u32) -> Book {
        Book { stale: true, defaults, ..Book::default() }
    }

    /// A told phrase and the words it was told in.
    pub(super) fn tell(&mut self, phrase: &str, said: &str) {
        let joined = self.paste.is_some_and(|before| self.units.len() > before);
        self.undone.clear();
        self.put([Entry::told(phrase, said, joined)]);
    }

    /// A told line for which nothing can be written: a unit all the same.
    pub(super) fn tell_nothing(&mut self) {
        self.undone.clear();
        self.units.push(0);
    }

    /// Words set aside; `open` while the question about them is.
    pub(super) fn set_aside(&mut self, words: &str, open: bool) {
        self.entries.push(Entry::aside(words, open));
    }

    /// The open question was answered: its words are no longer set aside. Gives them.
    pub(super) fn answered(&mut self) -> Vec<String> {
        let open = |e: &Entry| e.kind == Kind::Aside && e.open;
        let words = self.entries.iter().filter(|e| open(e)).map(|e| e.words().to_owned()).collect();
        self.remove(open);
        words
    }

    /// The open question was let go: its words stay set aside.
    pub(super) fn let_go(&mut self) {
        self.entries.iter_mut().for_each(|e| e.open = false);
    }

    /// Takes the last unit back.
    pub(super) fn undo(&mut self) {
        let Some(lines) = self.units.pop() else { return };
        let told = self.entries.iter().enumerate().rev().filter(|(_, e)| e.kind == Kind::Told);
        let from = told.take(lines).map(|(at, _)| at).last().unwrap_or(self.entries.len());
        let mut at = 0;
        let taken = self.remove(|e| {
            at += 1;
            at > from && e.kind == Kind::Told
        });
        self.undone.push(taken);
        self.paste = self.paste.map(|before| before.min(self.units.len()));
    }

    /// Puts the last unit taken back in again.
    pub(super) fn redo(&mut self) {
        if let Some(lines) = self.undone.pop() {
            self.put(lines);
        }
    }

    /// What is told from here on came in one paste.
    pub(super) fn begin_paste(&mut self) {
        self.paste = Some(self.units.len());
    }

    /// The paste has ended: what is left of it is one unit. Gives how many units stood before it.
    pub(super) fn end_paste(&mut self) -> Option<usize> {
        let before = self.paste.take()?;
        let lines: usize = self.units[before..].iter().sum();
        if self.units.len() > before + 1 {
            self.units.truncate(before);
            self.units.push(lines);
            self.mark_joined(lines);
        }
        Some(before)
    }

    /// What the disk wants to be given; `None` where the file would grow too large.
    pub(super) fn to_save(&self) -> Option<Save> {
        if self.entries.len() >= MOST_LINES {
            return None;
        }
        if head(self.defaults).len() + 1 + self.entries.iter().map(Entry::size).sum::<usize>() > MOST_BYTES {
            return None;
        }
        Some(match (self.stale, self.saved == self.entries.len()) {
            (true, _) => Save::Replace(self.whole()),
            (false, true) => Save::Nothing,
            (false, false) => Save::Append(self.text(self.saved)),
        })
    }

    /// The disk holds everything now.
    pub(super) fn was_saved(&mut self) {
        self.saved = self.entries.len();
        self.stale = false;
    }

    /// The disk may hold something torn: it wants a whole file.
    pub(super) fn must_replace(&mut self) {
        self.stale = true;
    }

    /// True where the disk holds everything.
    #[cfg(test)]
    pub(super) fn is_saved(&self) -> bool {
        !self.stale && self.saved == self.entries.len()
    }

    /// How many lines are told, and how many set aside.
    pub(super) fn counts(&self) -> (usize, usize) {
        let of = |kind| self.entries.iter().filter(|e| e.kind == kind).count();
        (of(Kind::Told), of(Kind::Aside))
    }

    fn put(&mut self, lines: impl IntoIterator<Item = Entry>) {
        let before = self.entries.len();
        self.entries.extend(lines);
        self.units.push(self.entries.len() - before);
    }

    fn remove(&mut self, mut gone: impl FnMut(&Entry) -> bool) -> Vec<Entry> {
        let (mut kept, mut taken, mut saved) = (Vec::new(), Vec::new(), self.saved);
        for (at, entry) in std::mem::take(&mut self.entries).into_iter().enumerate() {
            if gone(&entry) {
                saved -= usize::from(at < self.saved);
                taken.push(entry);
            } else {
                kept.push(entry);
            }
        }
        self.stale |= saved < self.saved;
        (self.entries, self.saved) = (kept, saved);
        taken
    }

    /// Marks the last told lines as one group.
    fn mark_joined(&mut self, lines: usize) {
        let saved = self.saved;
        let told = self.entries.iter_mut().enumerate().rev().filter(|(_, e)| e.kind == Kind::Told);
        for (n, (at, entry)) in told.take(lines).enumerate() {
            let joined = n + 1 < lines;
            self.stale |= entry.joined != joined && at < saved;
            entry.joined = joined;
        }
    }

    fn whole(&self) -> String {
        head(self.defaults) + "\n" + &self.text(0)
    }

    fn text(&self, from: usize) -> String {
        let mut out = String::new();
        self.entries[from..].iter().for_each(|e| e.write_to(&mut out));
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn append(book: &Book) -> String {
        match book.to_save() {
            Some(Save::Append(text)) => text,
            other => panic!("nothing to append: {other:?}"),
        }
    }

    fn whole(book: &Book) -> String {
        book.text(0)
    }

    fn saved(lines: &[&str]) -> Book {
        let mut book = Book::read(Vec::new(), Vec::new(), false, 1);
        lines.iter().for_each(|l| book.tell(l, l));
        book.was_saved();
        book
    }

    #[test]
    fn the_head_is_written_once() {
        let mut book = Book::fresh(1);
        let Some(Save::Replace(text)) = book.to_save() else { panic!("a fresh file wants its head") };
        assert_eq!(text, head(1) + "\n");
        book.was_saved();
        book.tell("drop run 1", "");
        assert_eq!(append(&book), "drop run 1\n");
    }

    #[test]
    fn a_told_line_is_appended_and_an_undo_replaces() {
        let mut book = saved(&["drop run 1"]);
        assert_eq!(book.to_save(), Some(Save::Nothing));
        book.tell("drop run 2", "lose two");
        assert_eq!(append(&book), "drop run 2  // lose two\n");
        book.undo();
        assert_eq!(book.to_save(), Some(Save::Nothing), "it never reached the disk");
        book.undo();
        assert!(matches!(book.to_save(), Some(Save::Replace(_))));
        assert_eq!(whole(&book), "");
        book.redo();
        assert_eq!(whole(&book), "drop run 1\n");
        book.redo();
        assert_eq!(whole(&book), "drop run 1\ndrop run 2  // lose two\n");
    }

    #[test]
    fn a_paste_is_one_unit_and_marked_so() {
        let mut book = saved(&["drop run 1"]);
        book.begin_paste();
        book.tell("drop run 2", "");
        book.set_aside("wibble", false);
        book.tell("drop run 3", "");
        assert_eq!(book.end_paste(), Some(1));
        assert_eq!(append(&book), "drop run 2\n? wibble\n  drop run 3\n");
        book.undo();
        assert_eq!(whole(&book), "drop run 1\n? wibble\n");
        book.redo();
        assert_eq!(whole(&book), "drop run 1\n? wibble\ndrop run 2\n  drop run 3\n");
    }

    /// Inside a paste an undo takes one line back, as where the same lines are typed.
    #[test]
    fn an_undo_inside_a_paste_takes_one_line() {
        let mut book = saved(&["drop run 1"]);
        book.begin_paste();
        book.tell("drop run 2", "");
        book.tell("drop run 3", "");
        book.undo();
        book.undo();
        book.undo();
        book.tell("drop run 4", "");
        book.tell("drop run 5", "");
        assert_eq!(book.end_paste(), Some(0));
        assert_eq!(whole(&book), "drop run 4\n  drop run 5\n");
    }

    #[test]
    fn words_of_an_answered_question_go_and_those_of_one_let_go_stay() {
        let mut book = saved(&[]);
        book.set_aside("run 12 or 13", true);
        book.let_go();
        book.set_aside("notch 12", true);
        assert_eq!(book.answered(), ["notch 12"]);
        assert_eq!(whole(&book), "? run 12 or 13\n");
    }

    #[test]
    fn a_file_that_would_grow_too_large_is_not_written() {
        let mut book = saved(&[]);
        (0..MOST_LINES - 1).for_each(|_| book.set_aside("", false));
        assert!(book.to_save().is_some());
        book.set_aside("", false);
        assert_eq!(book.to_save(), None);
        let mut book = saved(&[]);
        (0..MOST_BYTES / 3_000).for_each(|_| book.set_aside(&"x".repeat(3_000), false));
        assert_eq!(book.to_save(), None);
    }
}
