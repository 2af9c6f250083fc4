//! Laws of the job file, over generated talks held with the library: what is reopened is what was told.
//! They hold within the program; no outside source says how its files are written.

use proptest::prelude::*;
use proptest::sample::select;
use railhand::grammar::canon::write;
use railhand::grammar::{Act, Talk};
use railhand::job::{
    Basis, Choice, End, EndOf, Fact, Gate, GateAt, Job, KeepOff, Mount, NotchTold, PostRole, PostSize, RunId, RunPatch,
    Setting, Spot, StairAt, StairOpening, Stairs, Thing, Told,
};
use railhand::measure::{Length, Lumber};
use railhand::session::{Session, step};
use railhand::store::{Kept, Store};
use std::path::{Path, PathBuf};

/// A folder of one test's own, gone with it.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Folder {
        let path = std::env::temp_dir().join(format!("railhand-laws-{}-{name}", std::process::id()));
        let _ = std::fs::remove_dir_all(&path);
        std::fs::create_dir_all(&path).expect("the temporary folder is writable");
        Folder(path)
    }

    fn file(&self) -> PathBuf {
        self.0.join("deck.job")
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

/// A talk kept in a file, as the console holds it.
struct Held {
    session: Session,
    store: Store,
}

impl Held {
    fn open(file: &Path) -> Held {
        let opened = Store::open(file).expect("the file is ours");
        assert!(opened.trouble.is_none() && opened.odd.is_empty(), "{:?} {:?}", opened.trouble, opened.odd);
        Held { session: opened.session, store: opened.store }
    }

    fn say(&mut self, line: &str) {
        let (delta, reply) = step(&self.session, line);
        let kept = self.store.take(&self.session, &delta, &reply, line);
        assert!(matches!(kept, Kept::AsAlways), "{line}: {kept:?}");
        self.session.apply(delta);
    }

    fn paste(&mut self, lines: &[String]) {
        self.store.begin_paste();
        lines.iter().for_each(|l| self.say(l));
        let before = self.store.end_paste().expect("a paste was begun");
        self.session.join_after(before);
    }

    fn reopened(self, file: &Path) -> Held {
        drop(self.store);
        Held::open(file)
    }
}

fn length() -> impl Strategy<Value = Length> {
    (32_i64..5_000).prop_map(Length::sixteenths)
}

fn choice() -> impl Strategy<Value = Choice> {
    let spot = (16_i64..800, select(vec![EndOf::From, EndOf::To]))
        .prop_map(|(n, end)| Spot { at: Length::sixteenths(n), end });
    prop_oneof![
        3 => spot.clone().prop_map(Choice::Post),
        1 => spot.prop_map(Choice::NoPost),
        1 => Just(Choice::NoPosts),
        1 => any::<bool>().prop_map(Choice::Mirrored),
        2 => (16_i64..800, select(vec![Thing::Stairs, Thing::Gate, Thing::End(EndOf::From)]))
            .prop_map(|(by, of)| Choice::KeepOff(KeepOff { by: Length::sixteenths(by), of })),
        1 => Just(Choice::NoKeepOff),
    ]
}

fn patch() -> impl Strategy<Value = RunPatch> {
    let end = || proptest::option::of(select(End::ALL.to_vec()));
    let gate = select(vec![None, Some(None), Some(Some(Gate::new(GateAt::To, None)))]);
    let stairs = (length(), length()).prop_map(|(width, off)| StairOpening::new(width, StairAt::FromLeft(off)));
    let name = proptest::option::of(select(vec!["front".to_owned(), "left".to_owned()]));
    let basis = proptest::option::of(select(vec![Basis::Overall, Basis::Clear, Basis::Centre]));
    let choices = prop::collection::vec(choice(), 0..3);
    let parts =
        (name, proptest::option::of(length()), basis, end(), end(), gate, proptest::option::of(stairs), choices);
    parts.prop_map(|(name, l, basis, from, to, gate, stairs, choices)| RunPatch {
        name,
        length: l.map(Told::plain),
        basis,
        from,
        to,
        gate,
        stairs: stairs.map(Stairs::from),
        choices,
        ..RunPatch::default()
    })
}

fn fact() -> impl Strategy<Value = Fact> {
    let id = || (1_u32..5).prop_map(RunId);
    let post = PostSize::Lumber(Lumber { thick_quarters: 16, wide: 4 });
    let setting = prop_oneof![
        Just(Setting::Post(PostRole::Corner, post)),
        length().prop_map(Setting::CentreMax),
        Just(Setting::Mount(Mount::Inside)),
        Just(Setting::Notch(NotchTold::None)),
    ];
    prop_oneof![
        6 => (id(), patch()).prop_map(|(id, patch)| Fact::Run(id, patch)),
        1 => id().prop_map(Fact::DropRun),
        2 => setting.prop_map(Fact::Set),
        1 => length().prop_map(Fact::DeckAlong),
        2 => "[a-z/?]{1,6}( [a-z/?#]{1,6}){0,3}".prop_map(Fact::Note),
        1 => (1_u32..4).prop_map(Fact::DropNote),
    ]
}

/// A line of a talk: told facts, words nobody reads, a question, an undo or a redo.
fn line() -> impl Strategy<Value = String> {
    let facts = prop::collection::vec(fact(), 1..3);
    prop_oneof![
        8 => facts.prop_map(|facts| write(&Act::Tell(facts))),
        1 => select(vec!["wibble the wobble 12".to_owned(), "half of 9-7 1/4".into(), "why?".into(), "12".into()]),
        1 => Just(write(&Act::Talk(Talk::Undo))),
        1 => Just(write(&Act::Talk(Talk::Redo))),
    ]
}

/// Lines entered at once: one is typed, several are a paste.
fn talk() -> impl Strategy<Value = Vec<Vec<String>>> {
    prop::collection::vec(
        prop_oneof![4 => prop::collection::vec(line(), 1..2), 1 => prop::collection::vec(line(), 2..5)],
        1..12,
    )
}

fn hold(held: &mut Held, entered: &[String]) {
    match entered {
        [line] => held.say(line),
        lines => held.paste(lines),
    }
}

/// The job without the run numbers given out and taken back by an undo: a file does not know them.
fn told(job: &Job) -> Job {
    Job { last_run: 0, ..job.clone() }
}

/// Found by thinking, not by chance: a note's number is not written in the file.
#[test]
fn a_note_told_after_one_undone_is_dropped_by_its_number() {
    let folder = Folder::new("notes");
    let mut held = Held::open(&folder.file());
    ["note: a", "undo", "note: b", "drop note 1", "undo", "redo", "note: c"].iter().for_each(|l| held.say(l));
    let job = held.session.job().clone();
    assert_eq!(job.notes.iter().map(|n| n.text.as_str()).collect::<Vec<_>>(), ["c"]);
    assert_eq!(held.reopened(&folder.file()).session.job(), &job);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn what_is_reopened_is_what_was_told(talk in talk()) {
        let folder = Folder::new("replay");
        let mut held = Held::open(&folder.file());
        talk.iter().for_each(|entered| hold(&mut held, entered));
        let undone = talk.iter().flatten().any(|l| l == "undo");
        let job = held.session.job().clone();
        let again = held.reopened(&folder.file());
        if undone {
            prop_assert_eq!(told(again.session.job()), told(&job));
        } else {
            prop_assert_eq!(again.session.job(), &job);
        }
    }

    /// The talk may be broken off anywhere: undo goes on through what an earlier day told.
    #[test]
    fn undo_goes_on_across_reopening(talk in talk(), more in 1_usize..6) {
        let folder = Folder::new("undo");
        let mut held = Held::open(&folder.file());
        let mut jobs = vec![told(held.session.job())];
        for entered in &talk {
            let before = held.session.told_count();
            // An undo or redo inside the talk is another test's business.
            if entered.iter().any(|l| l == "undo" || l == "redo") {
                continue;
            }
            hold(&mut held, entered);
            if held.session.told_count() > before {
                jobs.push(told(held.session.job()));
            }
        }
        for n in 0..more.min(jobs.len() - 1) {
            held = held.reopened(&folder.file());
            held.say("undo");
            let want = &jobs[jobs.len() - 2 - n];
            prop_assert_eq!(&told(held.session.job()), want);
        }
        held = held.reopened(&folder.file());
        let want = &jobs[jobs.len() - 1 - more.min(jobs.len() - 1)];
        prop_assert_eq!(&told(held.session.job()), want);
    }

    #[test]
    fn undo_then_redo_is_nothing(talk in talk()) {
        let folder = Folder::new("redo");
        let mut held = Held::open(&folder.file());
        talk.iter().for_each(|entered| hold(&mut held, entered));
        held = held.reopened(&folder.file());
        let job = held.session.job().clone();
        let file = std::fs::read(folder.file()).expect("the file is there");
        let units = held.session.told_count();
        (0..units).for_each(|_| held.say("undo"));
        prop_assert_eq!(&told(held.session.job()), &Job::default());
        (0..units).for_each(|_| held.say("redo"));
        prop_assert_eq!(held.session.job(), &job);
        prop_assert_eq!(told_lines(&std::fs::read(folder.file()).expect("it is there")), told_lines(&file));
        let again = held.reopened(&folder.file());
        prop_assert_eq!(again.session.job(), &job);
    }

    /// Whatever a file holds, it opens or is refused: no panic, and a refused one is left as it is.
    #[test]
    fn any_bytes_open_or_are_refused(
        lines in prop::collection::vec(prop_oneof![line(), "\\PC{0,30}", any::<String>()], 0..8),
        raw in any::<Vec<u8>>(), ours in any::<bool>(),
    ) {
        let folder = Folder::new("bytes");
        let head = if ours { "railhand job, version 1, defaults 1\n" } else { "" };
        let mut bytes = format!("{head}{}\n", lines.join("\n")).into_bytes();
        bytes.extend(raw);
        std::fs::write(folder.file(), &bytes).expect("the folder is writable");
        match Store::open(&folder.file()) {
            Ok(opened) => prop_assert!(ours, "{:?}", opened.odd),
            Err(refused) => prop_assert!(!ours, "{refused}"),
        }
        prop_assert_eq!(std::fs::read(folder.file()).expect("it is there"), bytes, "opening changes nothing");
    }
}

/// The told lines of a file; those set aside may stand in another place after an undo and a redo.
fn told_lines(bytes: &[u8]) -> Vec<String> {
    let text = String::from_utf8(bytes.to_vec()).expect("it is text");
    text.lines().filter(|l| !l.starts_with("? ")).map(str::to_owned).collect()
}

/// Broken off in the middle, a talk goes on as if it had not been: a bare correction means the same
/// thing, in the same unit. Left to the inch, "eleven and a half" would be a run of 11 1/2 in.
#[test]
fn a_correction_after_reopening_is_read_as_before_it() {
    let rows = [
        ("run 10 ft between house and corner", "no, make it eleven and a half"),
        ("run 14-3 between house and corner", "make it 13"),
        ("guard height 36", "no, 42"),
        ("gap under 3", "make it 2 1/2"),
        ("deck is 16 along the house and 12 out", "note: b"),
        ("run 10 ft between house and corner, 3 bays", "make it 4"),
    ];
    for (n, (first, then)) in rows.into_iter().enumerate() {
        let folder = Folder::new(&format!("correct-{n}"));
        let mut straight = Held::open(&folder.0.join("a.job"));
        let mut broken = Held::open(&folder.file());
        for held in [&mut straight, &mut broken] {
            held.say("run 9 ft between house and corner");
            held.say(first);
        }
        broken = broken.reopened(&folder.file());
        straight.say(then);
        broken.say(then);
        assert_eq!(broken.session.job(), straight.session.job(), "{first} | {then}");
    }
}
