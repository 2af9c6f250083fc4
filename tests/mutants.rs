//! The phrase book with one thing changed in each line: nothing may be lost in silence.
//!
//! Each row of the book that is told or answered has its last line changed by a seeded
//! generator: a word put in, left out, said twice; two words swapped; digits parted or glued;
//! blanks, capitals and marks changed. Each variant is said in the same conversation.
//!
//! # The law
//!
//! A variant is fine when it
//!
//! - is **asked** about or **refused**, and the job is as it was;
//! - is **named**: the word put in is among the words said to have no part;
//! - is **visible**: the read-back is another one, and the word put in is in it by its text, its
//!   number or its sense (for a sense: the words the plain phrase has for it), more often than
//!   before. For a word left out, a swap, or other digits, another read-back is enough;
//! - is **kept**: the read-back is the same, and the change means nothing:
//!   - capitals, marks, another spelling of a unit, blanks around marks;
//!   - a filler or link put in, left out or doubled; an unknown word left out;
//!   - a word said twice in a row. A number, a denial, a qualifier, an operation or an undo never stutters;
//!   - a word put in beside one of the same sense, or that makes a longer term of the same sense
//!     ("house wall"), or the unit or the basis the length was read in, or a word for the run in a run's
//!     phrase, or "use", or an adjective before a place ("far corner"), or "no" in front of a line that was
//!     a correction already;
//!   - a word left out that the reading fills in and the read-back shows: a part, a unit, the basis taken
//!     when none is told, where a gate hangs; a word that only brings a fact in ("make it"); a number taken
//!     back further on. Never a place, a side, another number, a denial, or a word that takes away;
//!   - of a question about a rule, or for a list of the job as it stands, any word left out but a number or a denial: the
//!     answer says in full what it is of;
//!   - of a question about a rule, or about stairs or a gate, any word left out but a number or a denial: the answer
//!     says the rule, the read-back the question, in full;
//!   - a word put in that a question about stairs or a gate says anyway, or a part of the stairs in one about them;
//!   - two words swapped.
//!
//! All else is **silent**. And whatever the change, it is silent when
//!
//! - a whole number typed is neither in the read-back, nor named, nor taken back further on;
//! - "to" or "from" leads straight to a place that the read-back has at the other end;
//! - "no", "not" or "without" stands before a gate, stairs or a notch that the read-back puts up;
//! - a what-if is told, or what was an answer is told for a filler, a number or an unknown word put in;
//! - a word of the line that the read-back had is in neither the new one nor the words named.
//!
//! What a builder means by a line is common practice, no source.
//!
//! `RAILHAND_MUTANTS=n` runs n rounds of other seeds instead of one.

#[path = "common/book.rs"]
mod book;
#[path = "mutants/judge.rs"]
mod judge;
#[path = "mutants/laws.rs"]
mod laws;
#[path = "mutants/lexis.rs"]
mod lexis;
#[path = "mutants/marks.rs"]
mod marks;
#[path = "mutants/vary.rs"]
mod vary;

use book::{Phrase, book};
use judge::{Read, Verdict, judge};
use railhand::job::Job;
use railhand::reply::{Reply, Role, Span, Status};
use railhand::session::{Session, step};
use std::collections::BTreeMap;
use vary::{Variant, variants};

/// How many silent variants are printed.
const SHOWN: usize = 80;
/// One variant in so many may be lost in silence; each is printed. An alarm: a line that is bound by its odds passes over a word now and then,
/// mostly of a question whose read-back says all it was taken for. Nothing told may grow out of it.
const PER_SILENT: usize = 95;

/// Says the lines before the last one.
fn talked(lines: &[String]) -> Session {
    let mut session = Session::new();
    for line in lines {
        let (delta, _) = step(&session, line);
        session.apply(delta);
    }
    session
}

/// Says one more line; also tells what became of it.
fn said(session: &Session, line: &str) -> (Status, Read) {
    let (delta, reply) = step(session, line);
    let mut after = session.clone();
    after.apply(delta);
    let read = Read {
        line: line.to_owned(),
        readback: reply.readback.clone().unwrap_or_default(),
        named: named(&reply),
        told: after.job() != session.job(),
        goes_on: *session.job() != Job::default(),
    };
    (reply.status, read)
}

/// The words a reply names: those with no part, and those taken for others.
fn named(reply: &Reply) -> Vec<String> {
    let lines = reply.lines.iter().filter(|l| l.role == Role::Unused).flat_map(|l| &l.spans);
    let in_lines = lines.filter_map(|s| if let Span::Typed(t) = s { Some(t.as_str()) } else { None });
    let both: Vec<&str> = reply.unused.iter().map(|t| t.as_str()).collect();
    // A word both listed and said in the answer is named once.
    let extra = in_lines.filter(|t| !both.contains(t));
    both.iter().copied().chain(extra).flat_map(lexis::plain).collect()
}

fn verdict(session: &Session, was: &Read, variant: &Variant) -> (Verdict, Read) {
    let (status, now) = said(session, &variant.line);
    let verdict = match status {
        Status::Told => judge(was, variant, &now),
        _ if now.told => Verdict::Silent(format!("the job changed, though it {}", status.name())),
        Status::Answered => judge(was, variant, &now),
        Status::Asks => Verdict::Asked,
        Status::Refused => Verdict::Refused,
    };
    (verdict, now)
}

/// Counts in the order of the printed columns.
#[derive(Default)]
struct Tally {
    rows: BTreeMap<&'static str, [usize; 6]>,
    silent: Vec<String>,
}

const COLUMNS: [&str; 6] = ["kept", "visible", "named", "asked", "refused", "SILENT"];

impl Tally {
    fn add(&mut self, phrase: &Phrase, was: &Read, variant: &Variant, verdict: &Verdict, now: &Read) {
        let column = match verdict {
            Verdict::Kept => 0,
            Verdict::Visible => 1,
            Verdict::Named => 2,
            Verdict::Asked => 3,
            Verdict::Refused => 4,
            Verdict::Silent(_) => 5,
        };
        self.rows.entry(variant.kind).or_default()[column] += 1;
        if let Verdict::Silent(why) = verdict {
            let before = &phrase.say[..phrase.say.len() - 1];
            self.silent.push(format!(
                "[{}] {why}\n    {before:?}\n    {:?} -> {:?}\n    {:?} -> {:?}  named {:?}",
                variant.kind, was.line, was.readback, now.line, now.readback, now.named
            ));
        }
    }

    fn all(&self) -> usize {
        self.rows.values().flatten().sum()
    }

    fn print(&self) {
        println!("{:20} {}", "", COLUMNS.map(|c| format!("{c:>8}")).join(""));
        for (kind, counts) in &self.rows {
            println!("{kind:20} {}", counts.map(|c| format!("{c:>8}")).join(""));
        }
        let sums = (0..6).map(|k| self.rows.values().map(|c| c[k]).sum::<usize>());
        println!("{:20} {}", "all", sums.map(|c| format!("{c:>8}")).collect::<String>());
        println!("{} variants", self.all());
        self.silent.iter().take(SHOWN).for_each(|s| println!("{s}"));
    }
}

/// Runs every row that means something by itself; a row the book has read is judged by what it reads as now.
fn run(rounds: u64) -> Tally {
    let mut tally = Tally::default();
    for phrase in book().values().flatten().filter(|p| p.read.is_some()) {
        let Some((last, before)) = phrase.say.split_last() else { continue };
        let session = talked(before);
        let (status, was) = said(&session, last);
        if !matches!(status, Status::Told | Status::Answered) {
            continue;
        }
        let seeds = (0..rounds).map(|r| seed(&phrase.say).wrapping_add(r));
        for variant in seeds.flat_map(|seed| variants(last, seed)) {
            let (verdict, now) = verdict(&session, &was, &variant);
            tally.add(phrase, &was, &variant, &verdict, &now);
        }
    }
    tally
}

/// A row's own seed (FNV-1a over its words), so that a row put in changes no other's variants.
fn seed(say: &[String]) -> u64 {
    let bytes = say.iter().flat_map(|line| line.bytes().chain([b'\n']));
    bytes.fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

#[test]
fn nothing_is_lost_in_silence() {
    let rounds = std::env::var("RAILHAND_MUTANTS").ok().and_then(|n| n.parse().ok()).unwrap_or(1);
    let tally = run(rounds);
    tally.print();
    assert!(tally.all() > 3_500, "only {} variants", tally.all());
    let most = tally.all() / PER_SILENT;
    assert!(tally.silent.len() <= most, "{} lost in silence, more than {most}: printed above", tally.silent.len());
}

/// The judge on readings made by hand: what it lets pass, and what it must not.
#[test]
fn the_judge_tells_silence_from_sense() {
    use vary::Change::{Digits, Drop, Insert, Marks};
    let read = |line: &str, readback: &str, named: &[&str]| Read {
        line: line.to_owned(),
        readback: readback.to_owned(),
        named: named.iter().map(|w| (*w).to_owned()).collect(),
        told: true,
        goes_on: false,
    };
    let (line, said) = ("12 ft house to corner", "run 1: 12'-0\" out to out, from house, to corner");
    let table: &[(vary::Change, &str, &str, &[&str], bool)] = &[
        (Insert(0, "please"), "please 12 ft house to corner", said, &[], false),
        (Insert(0, "almost"), "almost 12 ft house to corner", said, &[], true),
        (Insert(0, "almost"), "almost 12 ft house to corner", said, &["almost"], false),
        (
            Insert(0, "about"),
            "about 12 ft house to corner",
            "run 1: about 12'-0\" out to out, from house, to corner",
            &[],
            false,
        ),
        (Insert(2, "kumquat"), "12 ft kumquat house to corner", said, &[], true),
        (Insert(3, "wall"), "12 ft house wall to corner", said, &[], false),
        (Insert(0, "7"), "7 12 ft house to corner", said, &[], true),
        (Insert(5, "gate"), "12 ft house to corner gate", said, &[], true),
        (Drop(2), "12 ft to corner", said, &[], true),
        (Drop(1), "12 house to corner", said, &[], false),
        (Drop(2), "12 ft to corner", "run 1: 12'-0\" out to out, to corner", &[], false),
        (Digits, "1 2 ft house to corner", said, &[], true),
        (Marks, "12' house to corner", said, &[], false),
        (Marks, "12' house to corner", "run 1: 12\" out to out, from house, to corner", &[], true),
        (Insert(2, "not"), "12 ft not house to corner", "run 1: 12'-0\" out to out, from corner, to house", &[], true),
    ];
    for (change, typed, readback, named, silent) in table {
        let variant = Variant { kind: "table", change: change.clone(), line: (*typed).to_owned() };
        let verdict = judge(&read(line, said, &[]), &variant, &read(typed, readback, named));
        assert_eq!(matches!(verdict, Verdict::Silent(_)), *silent, "{typed:?} -> {readback:?}: {verdict:?}");
    }
}
