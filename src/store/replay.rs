//! A job file's bytes, and the talk they hold. Pure: nothing is read or written here.

use super::book::{Book, MOST_BYTES, MOST_LINES};
use super::editions::{Editions, KeptDefault, phrase};
use super::line::{Entry, Head, Kind, Parts, parts, read_head};
use super::trouble::Why;
use crate::grammar::{Act, canon};
use crate::job::{Fact, Setting, retold};
use crate::reply::{Role, Status, Typed};
use crate::session::{Log, Retelling, Session, step};

/// The most lines that are read though they are no plain phrases: reading them takes the whole
/// engine, and a file with more of them was not written by this program.
const MOST_ODD: usize = 200;

/// Something about a line that a person should hear of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Odd {
    /// The line's number in the file; the head is 1.
    pub line: usize,
    /// What is odd.
    pub what: What,
    /// Its words.
    pub words: Typed,
}

/// What is odd about a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// The last line, cut short: set aside.
    Torn,
    /// Bytes that are no text: set aside.
    NoText,
    /// No one reading without a guess: set aside.
    Unread,
    /// A plain phrase that does not fit what was told before it: set aside.
    DoesNotFit,
    /// Written by hand; read as this phrase.
    ReadAs(String),
}

impl What {
    /// What it means, as half a sentence.
    pub fn says(&self) -> &'static str {
        match self {
            What::Torn => "the last line is cut short, so I set it aside",
            What::NoText => "this is no text, so I set it aside",
            What::Unread => "I can't read this for sure, so I set it aside",
            What::DoesNotFit => "this does not fit what was told before it, so I set it aside",
            What::ReadAs(_) => "I read this as written by hand",
        }
    }
}

/// A talk out of a file.
#[derive(Debug)]
pub(super) struct Read {
    pub(super) book: Book,
    pub(super) session: Session,
    pub(super) odd: Vec<Odd>,
    /// Defaults of an older edition that the file keeps.
    pub(super) kept: Vec<KeptDefault>,
}

/// Reads a file. An empty one is a talk that has not begun.
///
/// # Errors
/// Why it is not taken for a job file; then nothing of it is.
pub(super) fn read(bytes: &[u8], editions: Editions) -> Result<Read, Why> {
    let newest = editions.newest();
    if bytes.is_empty() {
        let book = Book::fresh(newest);
        return Ok(Read { book, session: Session::new(), odd: Vec::new(), kept: Vec::new() });
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let (first, rest) = bytes.iter().position(|b| *b == b'\n').map_or((bytes, None), |n| (&bytes[..n], Some(n + 1)));
    let edition = match std::str::from_utf8(first).map(|line| read_head(line, newest)) {
        Ok(Head::Ours(edition)) => edition,
        Ok(Head::Newer) => return Err(Why::Newer),
        Ok(Head::Foreign) | Err(_) => return Err(Why::Foreign),
    };
    if bytes.len() > MOST_BYTES || bytes.iter().filter(|b| **b == b'\n').count() > MOST_LINES {
        return Err(Why::TooLarge);
    }
    let mut reader = Reader { stale: rest.is_none(), ..Reader::default() };
    let differing = editions.differing(edition);
    reader.keep(edition, &differing);
    reader.lines(rest.map_or(&[], |n| &bytes[n..]))?;
    let Reader { talk, entries, units, odd, stale, .. } = reader;
    let session = talk.done();
    let kept = in_force(&session, &differing);
    Ok(Read { book: Book::read(entries, units, stale, newest), session, odd, kept })
}

/// The defaults kept that nothing told since stands in place of.
fn in_force(session: &Session, differing: &[(Setting, Setting)]) -> Vec<KeptDefault> {
    let stand = retold(session.job());
    let stands = |s: &Setting| stand.contains(&Fact::Set(*s));
    let kept = differing.iter().filter(|(old, _)| stands(old));
    kept.map(|(old, new)| KeptDefault { kept: phrase(*old), newest: phrase(*new) }).collect()
}

#[derive(Default)]
struct Reader {
    talk: Retelling,
    entries: Vec<Entry>,
    units: Vec<usize>,
    odd: Vec<Odd>,
    stale: bool,
}

impl Reader {
    /// What an older edition takes is told first, as lines of the file: whatever is told after
    /// it wins, and an undo comes to it last. A file that tells all of it keeps none.
    fn keep(&mut self, edition: u32, differing: &[(Setting, Setting)]) {
        for (old, _) in differing {
            // A setting on a job of which nothing is told yet: nothing speaks against it.
            if self.talk.tell(vec![Fact::Set(*old)]).is_ok() {
                let said = format!("kept from defaults {edition}");
                let joined = !self.units.is_empty();
                self.told(Entry::told(&phrase(*old), &said, joined));
            }
            self.stale = true;
        }
    }

    fn lines(&mut self, bytes: &[u8]) -> Result<(), Why> {
        let mut number = 1;
        for line in bytes.split_inclusive(|b| *b == b'\n') {
            number += 1;
            let whole = line.strip_suffix(b"\n");
            let line = whole.unwrap_or(line);
            let line = line.strip_suffix(b"\r").unwrap_or(line);
            self.stale |= whole.is_none();
            match std::str::from_utf8(line) {
                Ok(text) => self.line(number, text, whole.is_none()),
                Err(_) => self.set_aside(number, What::NoText, &String::from_utf8_lossy(line)),
            }
            if self.odd.len() > MOST_ODD {
                return Err(Why::Broken);
            }
        }
        Ok(())
    }

    fn line(&mut self, number: usize, text: &str, torn: bool) {
        match parts(text) {
            Parts::Aside => self.entries.push(Entry::other(text.trim(), Kind::Aside)),
            Parts::Other => self.entries.push(Entry::other(text, Kind::Other)),
            Parts::Told { .. } if torn => self.set_aside(number, What::Torn, text),
            Parts::Told { phrase, said, joined } => match canon::read(phrase) {
                Some(Act::Tell(facts)) => match self.talk.tell(facts) {
                    Ok(()) => self.told(Entry { joined, ..Entry::other(text.trim(), Kind::Told) }),
                    Err(_) => self.set_aside(number, What::DoesNotFit, text),
                },
                // Undo, sums and questions are no part of a file.
                Some(_) => self.set_aside(number, What::Unread, text),
                None => self.by_hand(number, text, phrase, said, joined),
            },
        }
    }

    /// A line that is no plain phrase: taken where it has one reading and no word of it is left over.
    fn by_hand(&mut self, number: usize, text: &str, phrase: &str, said: &str, joined: bool) {
        let Some(facts) = one_reading(self.talk.session(), phrase) else {
            return self.set_aside(number, What::Unread, text);
        };
        let act = Act::Tell(facts);
        let plain = canon::write(&act);
        let Act::Tell(facts) = act else { return };
        if self.talk.tell(facts).is_err() {
            return self.set_aside(number, What::DoesNotFit, text);
        }
        let said = if said.is_empty() { phrase } else { said };
        self.told(Entry::told(&plain, said, joined));
        self.stale = true;
        self.odd.push(Odd { line: number, what: What::ReadAs(plain), words: Typed::new(phrase) });
    }

    fn told(&mut self, entry: Entry) {
        match self.units.last_mut() {
            Some(unit) if entry.joined => {
                *unit += 1;
                self.talk.join_after(self.units.len() - 1);
            }
            _ => self.units.push(1),
        }
        self.entries.push(entry);
    }

    fn set_aside(&mut self, number: usize, what: What, words: &str) {
        let entry = Entry::aside(words, false);
        self.odd.push(Odd { line: number, what, words: Typed::new(entry.words()) });
        self.entries.push(entry);
        self.stale = true;
    }
}

/// The facts of a line typed by hand, where it tells something and nothing about it is doubtful.
fn one_reading(session: &Session, line: &str) -> Option<Vec<Fact>> {
    let (delta, reply) = step(session, line);
    let doubt = !reply.unused.is_empty() || reply.lines.iter().any(|l| l.role == Role::Unused);
    match delta.log() {
        Log::Told(facts) if reply.status == Status::Told && !doubt && is_of_its_run(line, facts) => {
            let act = Act::Tell(facts.clone());
            (canon::read(&canon::write(&act)) == Some(act)).then(|| facts.clone())
        }
        _ => None,
    }
}

/// False for a line that names a run by number, as phrases do, and came out as something of
/// another: "run 5: 10 ft lng" is a slip in a phrase, and no run of five feet.
fn is_of_its_run(line: &str, facts: &[Fact]) -> bool {
    let named = line.strip_prefix("run ").or_else(|| line.strip_prefix("drop run "));
    let Some((digits, _)) = named.and_then(|rest| rest.split_once(':').or(Some((rest, "")))) else { return true };
    let Ok(number) = digits.trim().parse::<u32>() else { return true };
    facts.iter().all(|fact| matches!(fact, Fact::Run(id, _) | Fact::DropRun(id) if id.0 == number))
}

#[cfg(test)]
mod tests {
    use super::super::book::Save;
    use super::super::editions::Edition;
    use super::super::line;
    use super::*;
    use crate::job::Mount;

    fn head() -> String {
        line::head(1)
    }

    fn read(bytes: &[u8]) -> Result<Read, Why> {
        super::read(bytes, Editions::default())
    }

    fn of(lines: &str) -> Read {
        read(format!("{}\n{lines}", head()).as_bytes()).expect("the head is ours")
    }

    fn odd(lines: &str) -> Vec<(usize, What)> {
        of(lines).odd.into_iter().map(|o| (o.line, o.what)).collect()
    }

    #[test]
    fn what_is_no_job_file_is_refused() {
        let newer = b"railhand job, version 9\nwho knows\n";
        let huge = format!("{}\n{}", head(), "x".repeat(MOST_BYTES));
        let long = format!("{}\n{}", head(), "\n".repeat(MOST_LINES));
        let broken = format!("{}\n{}", head(), "wibble\n".repeat(MOST_ODD + 1));
        let rows: [(&[u8], &str); 8] = [
            (b"\0\x01\x02", "Foreign"),
            (b"\xff\xfe", "Foreign"),
            (b"dear diary\n", "Foreign"),
            (b"\n", "Foreign"),
            (newer, "Newer"),
            (huge.as_bytes(), "TooLarge"),
            (long.as_bytes(), "TooLarge"),
            (broken.as_bytes(), "Broken"),
        ];
        for (bytes, want) in rows {
            assert_eq!(read(bytes).map(|_| ()).map_err(|w| format!("{w:?}")), Err(want.to_owned()));
        }
        assert_eq!(read(b"").expect("an empty file is a fresh talk").session.told_count(), 0);
    }

    #[test]
    fn odd_lines_are_told_of_with_their_number() {
        let rows = [
            ("run 1: 10'-0\" long\n", vec![]),
            ("\n// by hand\n? wibble\n", vec![]),
            ("run 1: 10'-0\" lo", vec![(2, What::Torn)]),
            ("run 1: 10'-0\" long", vec![(2, What::Torn)]),
            ("? wibb", vec![]),
            ("wibble wobble 12\n", vec![(2, What::Unread)]),
            ("note: a\nundo\n", vec![(3, What::Unread)]),
            ("keep it\n", vec![(2, What::Unread)]),
            ("run 5: 10'-0\" long from house, to corner\n", vec![(2, What::Unread)]),
            ("drop run 7\n", vec![(2, What::DoesNotFit)]),
            ("note: a; drop run 7\nnote: b\n", vec![(2, What::DoesNotFit)]),
        ];
        for (lines, want) in rows {
            assert_eq!(odd(lines), want, "{lines:?}");
        }
    }

    #[test]
    fn a_line_that_fails_leaves_nothing_of_itself() {
        let read = of("note: a\nnote: b; drop run 7\nnote: c\n");
        let notes: Vec<(u32, &str)> = read.session.job().notes.iter().map(|n| (n.id, n.text.as_str())).collect();
        assert_eq!(notes, [(1, "a"), (2, "c")]);
    }

    #[test]
    fn a_line_by_hand_is_written_out_as_a_phrase() {
        let read = of("run 12 ft between house and corner\n");
        let What::ReadAs(phrase) = &read.odd[0].what else { panic!("{:?}", read.odd) };
        assert!(phrase.starts_with("run 1: 12'-0\"") && phrase.contains("from house"), "{phrase}");
        assert_eq!(read.session.job().runs.len(), 1);
        assert!(!read.book.is_saved());
    }

    #[test]
    fn bytes_that_are_no_text_are_set_aside() {
        let mut bytes = format!("{}\n", head()).into_bytes();
        bytes.extend_from_slice(b"run 1: 10\xff'-0\" long\nnote: a\0b\nnote: c\n");
        let read = read(&bytes).expect("the head is ours");
        let odd: Vec<(usize, &What)> = read.odd.iter().map(|o| (o.line, &o.what)).collect();
        assert_eq!(odd[0], (2, &What::NoText));
        assert_eq!(read.session.job().notes.last().map(|n| n.text.as_str()), Some("c"));
        assert!(read.odd.iter().all(|o| !o.words.as_str().contains('\0')));
    }

    #[test]
    fn numbers_of_what_was_dropped_are_not_given_out_again() {
        let read = of("run 4: 10'-0\" long\ndrop run 4\nnote: a\ndrop note 1\n");
        let job = read.session.job();
        assert_eq!((job.last_run, job.last_note, job.next_run().0), (4, 1, 5));
    }

    /// An edition that never was shipped: only its mount and its tape differ.
    const LATER: &[Edition] = &[
        (1, &["posts: 4x4", "mount: over the edge", "tape: 1/16"]),
        (2, &["posts: 4x4", "mount: outside the rim", "tape: 1/8"]),
    ];

    fn under_later(text: &str) -> Read {
        super::read(text.as_bytes(), Editions::of(LATER)).expect("the head is ours")
    }

    fn file(read: &Read) -> String {
        match read.book.to_save() {
            Some(Save::Replace(text)) => text,
            other => panic!("the file is not written anew: {other:?}"),
        }
    }

    #[test]
    fn a_file_of_an_older_edition_keeps_what_it_was_made_under() {
        let made = format!("{}\nrun 1: 10'-0\" long\ntape: 1/32\n", head());
        let opened = under_later(&made);
        // The tape was told, so its default is no longer in force.
        let kept = [KeptDefault { kept: "mount: over the edge".into(), newest: "mount: outside the rim".into() }];
        assert_eq!(opened.kept, kept);
        let settings = &opened.session.job().settings;
        assert_eq!((settings.mount, settings.tape), (Some(Mount::OverEdge), Some(32)));
        let want = "railhand job, version 1, defaults 2\nmount: over the edge  // kept from defaults 1\n  \
                    tape: 1/16  // kept from defaults 1\nrun 1: 10'-0\" long\ntape: 1/32\n";
        assert_eq!(file(&opened), want);
        // Written so, it is a file of the newer edition, and nothing differs any more.
        let again = under_later(want);
        assert!(again.kept.is_empty() && again.book.is_saved());
        assert_eq!(again.session.job(), opened.session.job());
        assert_eq!(again.session.told_count(), 3);
    }

    #[test]
    fn a_file_of_the_newest_edition_keeps_nothing_and_one_of_a_later_is_refused() {
        let made = format!("{}\nrun 1: 10'-0\" long\n", line::head(2));
        let opened = under_later(&made);
        assert!(opened.kept.is_empty() && opened.book.is_saved());
        assert_eq!(opened.session.job().settings.mount, None);
        assert!(matches!(read(made.as_bytes()), Err(Why::Newer)));
        let fresh = super::read(b"", Editions::of(LATER)).expect("an empty file is a fresh talk");
        assert_eq!(file(&fresh), "railhand job, version 1, defaults 2\n");
    }
}
