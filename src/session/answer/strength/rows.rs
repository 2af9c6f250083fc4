//! Demand beside capacity: as a row of values, and in words.

use super::{fig, say};
use crate::figure::{Fig, Why};
use crate::reply::{Span, StrengthFig};
use crate::strength::Judged;

/// A row for the figures of the answer.
pub fn row(what: &'static str, judged: &Judged) -> StrengthFig {
    StrengthFig {
        what,
        demand: judged.demand.clone(),
        capacity: judged.capacity.clone(),
        ratio: judged.ratio.clone(),
        source: source(&judged.capacity),
    }
}

/// Where a figure's first published input is published.
fn source(capacity: &Fig) -> &'static str {
    fn first(f: &Fig) -> Option<&'static str> {
        match f.why() {
            Why::Limit(l) | Why::Default(l) => Some(l.source),
            Why::Table(_, source) => Some(source),
            Why::Formula(_, from) => from.iter().rev().find_map(|(_, f)| first(f)),
            Why::Told(_) => None,
        }
    }
    match capacity.why() {
        // The design value comes first among a stress's inputs; its factors follow.
        Why::Formula(_, from) => from
            .iter()
            .find_map(|(_, f)| if let Why::Table(_, s) = f.why() { Some(*s) } else { None })
            .or_else(|| first(capacity))
            .unwrap_or("arithmetic"),
        _ => first(capacity).unwrap_or("arithmetic"),
    }
}

/// "1,176 psi asked, 867 psi allowed: 1.36 times".
pub fn asked_allowed(judged: &Judged) -> Vec<Span> {
    vec![
        fig(&judged.demand),
        say(" asked, "),
        fig(&judged.capacity),
        say(" allowed: "),
        fig(&judged.ratio),
        say(" times"),
    ]
}
