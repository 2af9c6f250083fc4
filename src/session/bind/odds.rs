//! Do, offer or leave: by the odds of a candidate, for each act its own.
//!
//! Set on a third of the bank's meanings read by scores that had not seen them (689 talks): figures over 0.7 were right or asked back in
//! two of three, tellings under 0.8 in one of three.

use crate::grammar::{Act, Query, Talk};
use crate::job::Fact;

/// The least odds at which an act is done without asking.
pub(super) fn sure(act: &Act) -> f32 {
    #[cfg(feature = "fold-weights")]
    if let Some(all) = std::env::var("RAILHAND_SURE").ok().and_then(|s| s.parse().ok()) {
        return all;
    }
    match act {
        // A note kept changes no figure.
        Act::Tell(facts) if matches!(facts[..], [Fact::Note(_)]) => 0.5,
        Act::Tell(_) | Act::TellWith(..) => 0.8,
        Act::Query(Query::Row(_)) => 0.7,
        Act::Query(Query::Given(_)) => 0.8,
        Act::Query(Query::Rule(_)) => 0.7,
        Act::Query(_) | Act::Sum(_) => 0.6,
        // What leaves all as it is can do no harm.
        Act::Talk(Talk::Leave) => 0.5,
        _ => 0.9,
    }
}

/// The least odds at which it is offered.
pub(super) fn worth_offering(act: &Act) -> f32 {
    match act {
        Act::Tell(_) | Act::TellWith(..) | Act::Query(Query::Given(_)) => 0.2,
        Act::Query(Query::Rule(_)) => 0.15,
        Act::Sum(_) => 0.25,
        _ => 0.08,
    }
}

/// The least odds at which a question that still lacks something says what.
pub(super) const WORTH_ASKING: f32 = 0.65;

/// The least odds at which a telling that was offered is taken as meant where the talk goes on without an answer.
pub(super) const TAKEN_AS_MEANT: f32 = 0.4;

/// How many times as likely as the next it must be for that.
pub(super) const AHEAD: f32 = 2.0;

/// A word of another trade makes a line that trade's, unless the odds that it is are under this.
pub(super) const FOREIGN: f32 = 0.03;
