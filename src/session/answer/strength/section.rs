//! A section under the push at the guard's top, judged for two load times.

use super::rows::asked_allowed;
use super::taken::Taken;
use super::{fig, say};
use crate::figure::Fig;
use crate::job::{Duration, Lie};
use crate::measure::Lumber;
use crate::reply::{Finding, Span};
use crate::strength::post::bending;
use crate::strength::section::{Push, Section};
use crate::strength::{Judged, Refused, Wood};

/// A section judged under the wood's own load duration and a short one.
pub(super) struct Bends {
    pub long: Judged,
    pub short: Judged,
    duration: Duration,
}

impl Bends {
    pub(super) fn of(section: &Section, push: Push, arm: &Fig, size: Lumber, wood: &Wood) -> Result<Bends, Refused> {
        let demand = bending(section, push, arm)?;
        let judged = |w: &Wood| Judged::of(demand.clone(), w.bending(size, Lie::Edge)?);
        let short = wood.under(Duration::TenMinutes);
        Ok(Bends { long: judged(wood)?, short: judged(&short)?, duration: wood.duration })
    }

    pub(super) fn lead(&self) -> &'static str {
        match (self.long.holds(), self.short.holds()) {
            (true, _) => "Inside the figures, by arithmetic: ",
            (false, true) => "It turns on how long the push is taken to stand, by arithmetic: ",
            (false, false) => "Over, by arithmetic: ",
        }
    }

    /// "1,008 psi asked, 867 psi allowed: 1.16 times; as a load of ten minutes 0.73 times".
    pub(super) fn spans(&self, taken: &Taken) -> Vec<Span> {
        let mut spans = asked_allowed(&self.long);
        spans.extend(self.short_spans(taken));
        spans
    }

    /// The other load time beside, where it is another.
    pub(super) fn short_spans(&self, taken: &Taken) -> Vec<Span> {
        let other = [say("; as a load of ten minutes "), fig(&self.short.ratio), say(" times")];
        if taken.shows_short() { other.into() } else { Vec::new() }
    }

    /// True where it is over whatever the load time.
    pub(super) fn is_far(&self) -> bool {
        self.long.is_far(self.duration)
    }

    /// A finding where it is over; the rule's own level and source.
    pub(super) fn over(&self, rule: &'static str, lead: &'static str, whose: &'static str) -> Option<Finding> {
        let spans = vec![
            say(lead),
            fig(&self.long.ratio),
            say(" times what its wood is allowed for a load of "),
            say(self.duration.name()),
            say(whose),
        ];
        (!self.long.holds()).then(|| of_rule(rule, spans)).flatten()
    }
}

/// What a rule of the registry finds, in an answer's words.
pub(super) fn of_rule(id: &'static str, spans: Vec<Span>) -> Option<Finding> {
    let rule = crate::rules::find(id)?;
    Some(Finding { rule: id, level: rule.level, spans, source: rule.limit.source })
}
