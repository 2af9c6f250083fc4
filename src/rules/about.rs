//! What a rule is about, and the stops that stand on what an answer is about.
//!
//! A rule is about what its limit is of, so the table goes by limits: an answer looks up the stops on its own matters
//! before it says that something passes.

use super::{RULES, Rule};
use crate::job::Job;
use crate::layout::lay_out;
use crate::limits::{self, Limit};
use crate::reply::{Finding, Level};

/// What an answer or a rule is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Matter {
    /// How far apart posts stand.
    Spacing,
    /// How high a level guard is.
    Height,
    /// What the ball may pass.
    Gaps,
    /// The posts' feet.
    Notch,
    /// The flight: width, risers, treads, landing.
    Stairs,
    /// The guard down the stairs.
    StairGuard,
    /// The gate.
    Gate,
    /// What the posts, their feet and their bolts carry.
    Strength,
    /// Anything else.
    Other,
}

impl Matter {
    /// Every matter.
    pub const ALL: &[Matter] = &[
        Matter::Spacing,
        Matter::Height,
        Matter::Gaps,
        Matter::Notch,
        Matter::Stairs,
        Matter::StairGuard,
        Matter::Gate,
        Matter::Strength,
        Matter::Other,
    ];
}

/// What each limit is of.
static OF: &[(Matter, &[&Limit])] = &[
    (Matter::Spacing, &[&limits::POST_SPACING, &limits::TOLD_SPACING, &limits::SHORT_BAY]),
    (Matter::Height, &[&limits::GUARD_HEIGHT, &limits::POOL_TOP]),
    (Matter::Gaps, &[&limits::LEVEL_GAP, &limits::POOL_TIGHT_GAP]),
    (Matter::Notch, &[&limits::NOTCHED_POST, &limits::NOTCH_HALF]),
    (
        Matter::Stairs,
        &[
            &limits::STAIR_WIDTH,
            &limits::RISER_MOST,
            &limits::TREAD_LEAST,
            &limits::LANDING,
            &limits::OPEN_RISER,
            &limits::FLIGHT_RISE,
            &limits::NOSING_LEAST,
        ],
    ),
    (Matter::StairGuard, &[&limits::STAIR_GUARD_LOW, &limits::HANDRAIL_HIGH]),
    (Matter::Strength, &[&limits::FAR_OVER, &limits::HOLD_DOWN]),
    (Matter::Gate, &[&limits::POOL_GATE, &limits::POOL_LATCH, &limits::GATE_LEAF, &limits::GATE_SWING]),
];

/// What a rule is about.
pub fn matter(rule: &Rule) -> Matter {
    matter_of(rule.limit)
}

/// What a limit is of.
pub fn matter_of(limit: &Limit) -> Matter {
    let of = |(_, held): &&(Matter, &[&Limit])| held.iter().any(|l| l.id == limit.id);
    OF.iter().find(of).map_or(Matter::Other, |(matter, _)| *matter)
}

/// The stops that stand in the job on these matters, the gravest first.
pub fn stops_on(job: &Job, matters: &[Matter]) -> Vec<Finding> {
    if matters.is_empty() {
        return Vec::new();
    }
    let layout = lay_out(job);
    let stops = RULES.iter().filter(|r| r.level == Level::Stop && matters.contains(&matter(r)));
    stops.flat_map(|r| r.findings(job, &layout)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stop_is_about_something_an_answer_can_ask_for() {
        let unplaced = RULES.iter().filter(|r| r.level == Level::Stop && matter(r) == Matter::Other);
        assert_eq!(unplaced.map(|r| r.id).collect::<Vec<_>>(), [""; 0]);
    }

    #[test]
    fn a_stop_is_found_by_what_it_is_about_and_by_nothing_else() {
        for rule in RULES.iter().filter(|r| r.level == Level::Stop) {
            let job = Job::default().with_all(&(rule.trips)()).expect("an example is a possible job");
            let found = |matters: &[Matter]| stops_on(&job, matters).iter().any(|f| f.rule == rule.id);
            assert!(found(&[matter(rule)]), "{}", rule.id);
            let others: Vec<Matter> = Matter::ALL.iter().copied().filter(|m| *m != matter(rule)).collect();
            assert!(!found(&others), "{}", rule.id);
        }
    }
}
