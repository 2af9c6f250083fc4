//! The guard on each side of an opening that stands off the middle: two figures, so no one figure of the row.

use super::asked::Asked;
use super::{Figs, say};
use crate::figure::Fig;
use crate::grammar::ask::RowAsk;
use crate::job::Job;
use crate::provide::flanks;
use crate::quantity::RowId;
use crate::reply::{Line, Reply, Role, Span, Status};

/// The two lengths, the left one first, where they differ and nothing is given that is not laid into the run.
pub(in crate::session) fn of_both(job: &Job, ask: &RowAsk) -> Option<[Fig; 2]> {
    let asks = ask.wants[..] == [RowId::Flank] && ask.given.is_empty();
    let [left, right] = flanks(job).filter(|_| asks)?.try_into().ok()?;
    (left.as_length() != right.as_length()).then_some([left, right])
}

/// "2'-0" on the left of it, 10'-0" on the right."
pub(super) fn answer(asked: &Asked) -> Option<(Reply, Figs)> {
    let [left, right] = of_both(asked.job, asked.ask)?;
    let spans = vec![
        say::fig(&left),
        Span::Say(" on the left of it, "),
        say::fig(&right),
        Span::Say(" on the right, as seen from the house."),
    ];
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, spans));
    reply.lines.extend(say::working(&left));
    reply.values.result = Some(left.clone());
    reply.values.more.extend([("left", left.clone()), ("right", right.clone())]);
    let name = RowId::Flank.row().name;
    Some((reply, vec![(name, left), (name, right)]))
}
