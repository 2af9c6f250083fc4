//! A figure told of a row beside the one that follows from the rest. Which way is enough stands in the table.

use super::asked::Asked;
use super::say;
use crate::figure::{Fig, Value, Why};
use crate::grammar::ask::Mood;
use crate::quantity::{Enough, RowId};
use crate::reply::{Line, Role, Span};
use crate::solve::{Lacks, Solved};
use std::cmp::Ordering;

/// What was told, and what it comes to.
pub(super) struct Compared {
    /// The row whose value was told.
    row: RowId,
    /// What was told.
    told: Fig,
    /// What follows from the rest.
    pub worked: Solved,
    /// One less the other.
    apart: Fig,
}

impl Compared {
    /// The two, where the line gives the row a value and it follows from its other premises; what is enough of posts or sticks may follow
    /// from the job alone.
    pub fn of(asked: &Asked, row: RowId) -> Option<Compared> {
        let told = asked.given.get(row)?.clone();
        let needed = needed(row);
        let worked = asked.without(row, needed).ok()?;
        let by_job = needed == row && worked.engines == [row] && row.row().enough != Enough::Just;
        // What it was told to be before is no figure it comes to.
        let by_premises = worked.used.iter().any(|used| *used != needed);
        let apart = apart(&told, &worked.fig)?;
        (by_premises || by_job).then_some(Compared { row, told, worked, apart })
    }

    /// A length that is worked out, and a stick given that had no part in it: that is what it is to come out of.
    pub fn of_stick(asked: &Asked, own: &Solved) -> Option<Compared> {
        let stick = RowId::Stock;
        let told = asked.given.get(stick).filter(|_| !own.used.contains(&stick))?.clone();
        let apart = apart(&told, &own.fig).filter(|_| own.fig.as_length().is_some())?;
        Some(Compared { row: stick, told, worked: own.clone(), apart })
    }

    /// True where it is enough.
    pub fn is_enough(&self) -> bool {
        match (self.order(), self.row.row().enough) {
            (Ordering::Equal, _) => true,
            (order, Enough::Holds(_)) => order == Ordering::Less,
            (order, Enough::Reached) => order == Ordering::Greater,
            (_, Enough::Just) => false,
        }
    }

    /// True where a word on it says more than that it is what was told.
    pub fn says_more(&self) -> bool {
        self.row.row().enough != Enough::Just
    }

    /// What follows from the rest, beside what was told.
    fn order(&self) -> Ordering {
        self.worked.fig.as_q().cmp(&self.told.as_q())
    }

    /// "No: it takes 16'-2" = 194", 2" more than 16'-0" = 192"."
    pub fn line(&self, mood: Mood) -> Line {
        let mut spans = vec![Span::Say(say::opens(mood, self.is_enough()))];
        spans.push(Span::Say(match self.row.row().enough {
            Enough::Holds(_) => "it takes ",
            Enough::Just | Enough::Reached => "it comes to ",
        }));
        let than = match self.order() {
            Ordering::Equal => {
                spans.push(Span::Say("just "));
                None
            }
            Ordering::Less => Some(" less than "),
            Ordering::Greater => Some(" more than "),
        };
        match say::counted(self.row, &self.worked.fig) {
            Some(count) => spans.extend(count),
            None => spans.push(say::fig(&self.worked.fig)),
        }
        if let Some(than) = than {
            spans.extend([Span::Say(", "), say::fig(&self.apart), Span::Say(than), say::fig(&self.told)]);
        }
        spans.push(Span::Say("."));
        Line::new(Role::Answer, spans)
    }

    /// The figures under their names.
    pub fn values(&self) -> [(&'static str, Fig); 2] {
        [("needed", self.worked.fig.clone()), ("apart", self.apart.clone())]
    }
}

/// The row a value told of this one is held beside.
fn needed(row: RowId) -> RowId {
    match row.row().enough {
        Enough::Holds(needed) => needed,
        Enough::Just | Enough::Reached => row,
    }
}

/// What lacks to say whether a value told of the row is enough; `None` where nothing does, or it is no matter of enough.
pub(super) fn lacking(asked: &Asked, row: RowId) -> Option<(RowId, Lacks)> {
    let matters = asked.given.get(row).is_some() && row.row().enough != Enough::Just;
    let lacks = asked.without(row, needed(row)).err().filter(|_| matters)?;
    Some((needed(row), lacks))
}

/// How far two lengths or counts are apart.
pub(super) fn apart(told: &Fig, worked: &Fig) -> Option<Fig> {
    let why = || Why::Formula("one less the other", vec![("given", told.clone()), ("worked out", worked.clone())]);
    let value = match (told.value(), worked.value()) {
        (Value::Length(a), Value::Length(b)) => Value::Length(if a > b { a - b } else { b - a }),
        (Value::Count(a), Value::Count(b)) => Value::Count(a.abs_diff(b)),
        (Value::Money(a), Value::Money(b)) => Value::Money((a - b).abs()),
        _ => return None,
    };
    Some(Fig::new(value, why()))
}
