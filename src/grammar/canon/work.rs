//! Questions about the work itself: "untold", "order of work", "inspection", "changed", "kept notes", and "?".

use super::Read;
use super::words::{Table, one_of, words_of};
use crate::grammar::ask::WorkAsk;

const WORK: &Table<WorkAsk> = &[
    (WorkAsk::Untold, "untold"),
    (WorkAsk::Order, "order of work"),
    (WorkAsk::Inspector, "inspection"),
    (WorkAsk::Changed, "changed"),
    (WorkAsk::Notes, "kept notes"),
];

/// The plain phrase of a question, its "?" aside.
pub(super) fn write_work(ask: WorkAsk) -> &'static str {
    words_of(WORK, ask)
}

/// Reads what [`write_work`] writes.
pub(super) fn read_work(i: &str) -> Read<'_, WorkAsk> {
    one_of(WORK)(i)
}
