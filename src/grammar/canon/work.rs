//! Questions about the work itself: "untold", "order of work", "inspection", "changed", "kept notes", "help with notches", and "?".

use super::Read;
use super::words::{Table, one_of, words_of};
use crate::grammar::ask::{Task, WorkAsk};
use nom::Parser;
use nom::branch::alt;
use nom::bytes::complete::tag;
use nom::combinator::map;
use nom::sequence::preceded;

const WORK: &Table<WorkAsk> = &[
    (WorkAsk::Untold, "untold"),
    (WorkAsk::Order, "order of work"),
    (WorkAsk::Inspector, "inspection"),
    (WorkAsk::Changed, "changed"),
    (WorkAsk::Notes, "kept notes"),
];

/// The plain phrase of a question, its "?" aside.
pub(super) fn write_work(ask: WorkAsk) -> String {
    match ask {
        WorkAsk::Help(task) => format!("help with {}", task.name()),
        ask => words_of(WORK, ask).to_owned(),
    }
}

/// Reads what [`write_work`] writes.
pub(super) fn read_work(i: &str) -> Read<'_, WorkAsk> {
    let task = |i| one_of(&Task::ALL.map(|t| (t, t.name())))(i);
    alt((map(preceded(tag("help with "), task), WorkAsk::Help), one_of(WORK))).parse(i)
}
