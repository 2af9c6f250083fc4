//! A count that is worked out and held to nothing, beside the one count given that had no part in it: that is what is needed.

use super::asked::Asked;
use super::say;
use crate::figure::Fig;
use crate::grammar::ask::Mood;
use crate::quantity::{Enough, Kind, RowId};
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::solve::Solved;
use std::cmp::Ordering;

/// What it comes to, and what is needed.
pub(super) struct Needed {
    row: RowId,
    worked: Fig,
    /// The row whose count is needed.
    pub of: RowId,
    needed: Fig,
}

impl Needed {
    /// `None` where none or several counts had no part, or more of the row is no better.
    pub fn of(asked: &Asked, row: RowId, own: &Solved) -> Option<Needed> {
        let counts = |row: &RowId| row.row().kind == Kind::Count;
        if row.row().enough != Enough::Reached || !counts(&row) || asked.given.get(row).is_some() {
            return None;
        }
        let mut idle = asked.given.rows().filter(counts).filter(|given| !own.used.contains(given));
        let (of, None) = (idle.next()?, idle.next()) else { return None };
        Some(Needed { row, worked: own.fig.clone(), of, needed: asked.given.get(of)?.clone() })
    }

    pub fn is_enough(&self) -> bool {
        self.worked.as_q() >= self.needed.as_q()
    }

    /// "Yes: 12 pieces the sticks give, 11 needed."
    pub fn answer(&self, mood: Mood, reply: &mut Reply) {
        let mut spans = vec![Span::Say(say::opens(mood, self.is_enough()))];
        spans.extend(say::sentence(self.row, &self.worked, false));
        match self.worked.as_q().cmp(&self.needed.as_q()) {
            Ordering::Equal => spans.push(Span::Say(", just what is needed.")),
            _ => spans.extend([Span::Say(", "), say::fig(&self.needed), Span::Say(" needed.")]),
        }
        reply.lines.push(Line::new(Role::Answer, spans));
        reply.lines.extend(say::working(&self.worked));
        reply.status = Status::Answered;
        reply.values.result = reply.values.result.take().or_else(|| Some(self.worked.clone()));
        reply.values.more.push(("needed", self.needed.clone()));
    }
}
