//! What the odds rest on that the best candidate of a line is what was meant.

use super::pool::Candidate;
use super::readings::Reading;
use super::spare::Spare;
use crate::grammar::scores::Line;
use crate::grammar::{Act, Query};
use crate::job::Fact;

/// What a candidate does, as far as its odds are fitted apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// Facts are told.
    Tell,
    /// Premises are held for the next question.
    Given,
    /// A figure is asked.
    Figure,
    /// A word is asked on a figure.
    Judge,
    /// A sum.
    Sum,
    /// A rule.
    Rule,
    /// Anything else.
    Other,
}

impl Kind {
    /// All of them.
    pub(super) const ALL: [Kind; 7] =
        [Kind::Tell, Kind::Given, Kind::Figure, Kind::Judge, Kind::Sum, Kind::Rule, Kind::Other];

    /// By its name.
    pub(super) fn named(name: &str) -> Option<Kind> {
        Kind::ALL.into_iter().find(|k| k.name() == name)
    }

    /// Of an act.
    pub(super) fn of(act: &Act) -> Kind {
        match act {
            Act::Tell(facts) if matches!(facts[..], [Fact::Note(_)]) => Kind::Other,
            Act::Tell(_) | Act::TellWith(..) => Kind::Tell,
            Act::Query(Query::Given(_)) => Kind::Given,
            Act::Query(Query::Row(ask)) if ask.mood.judges() => Kind::Judge,
            Act::Query(Query::Row(_)) => Kind::Figure,
            Act::Query(Query::Rule(_)) => Kind::Rule,
            Act::Sum(_) => Kind::Sum,
            _ => Kind::Other,
        }
    }

    /// Its name in what is measured.
    pub(super) fn name(self) -> &'static str {
        match self {
            Kind::Tell => "tell",
            Kind::Given => "given",
            Kind::Figure => "figure",
            Kind::Judge => "judge",
            Kind::Sum => "sum",
            Kind::Rule => "rule",
            Kind::Other => "other",
        }
    }
}

/// How many things the odds of a candidate rest on.
pub(super) const FEATURES: usize = 19;

/// What the odds that the best candidate is what was meant rest on.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Evidence {
    /// What it does.
    pub kind: Kind,
    /// In the order of `Evidence::of`.
    pub features: [f32; FEATURES],
}

impl Evidence {
    /// Of the best of a pool.
    pub(super) fn of(
        pool: &[Candidate],
        reading: Option<&Reading<'_>>,
        line: &Line,
        left: &[Spare],
        goes_on: bool,
    ) -> Option<Evidence> {
        let best = pool.first()?;
        let next = pool.get(1).map_or(0.0, |c| c.odds);
        let rest: f32 = pool.iter().skip(1).map(|c| c.odds).sum();
        let words = line.tokens.iter().filter(|t| t.word.is_some()).count() as f32;
        let values = line.values().count() as f32;
        let filled = reading.map_or(0, |r| r.filled.len()) as f32;
        let log = reading.map_or(-20.0, |r| r.log).max(-20.0);
        let (bends, heavy) = (
            left.iter().filter(|s| s.bends).count() as f32,
            left.iter().filter(|s| s.heavy && !s.bends).count() as f32,
        );
        let light = left.len() as f32 - bends - heavy;
        let odds = best.odds.clamp(0.005, 0.995);
        Some(Evidence {
            kind: Kind::of(&best.act),
            features: [
                // The odds of its share, as a logarithm.
                (odds / (1.0 - odds)).ln(),
                // How far it is ahead of the next.
                (best.odds / next.max(0.01)).ln().min(4.0),
                // The share of all others.
                rest,
                // The probability of its likeliest reading.
                log,
                // The same for each item.
                log / (1.0 + filled),
                // The share of its likeliest way.
                (best.best / best.odds.max(1e-6)).min(1.0),
                // Figures without a part.
                best.unbound as f32,
                // Premises without a part.
                best.unused as f32,
                // A figure nobody gave or told.
                f32::from(u8::from(best.by_default)),
                // It comes to a figure.
                f32::from(u8::from(best.fig.is_some())),
                // Words left over: those that bend something.
                bends.min(4.0),
                // Those that count.
                heavy.min(4.0),
                // The others.
                light.min(4.0),
                // How long the line is.
                (1.0 + words).ln(),
                // Figures said.
                values.min(8.0),
                // Items that fill a row.
                filled.min(10.0),
                // A question stands before it.
                f32::from(u8::from(goes_on)),
                // What its way costs.
                best.cost,
                // No figure is said.
                f32::from(u8::from(values == 0.0)),
            ],
        })
    }
}
