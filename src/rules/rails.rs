//! Checks on the rails as told.

use super::say::held;
use crate::job::{BalustersAt, Job, Member};
use crate::layout::Layout;
use crate::limits;
use crate::reply::Span;
use crate::solve::order;

/// True where a guard without a bottom rail was told.
fn none_below(job: &Job) -> bool {
    order::rail(job, Member::Bottom).is_none()
}

/// No bottom rail: what stands open under the top rail, and what holds the balusters' feet.
pub(super) fn no_bottom_rail(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let says = "with no bottom rail the balusters have to come down to the rim or the decking and be fixed there: \
                an opening left under the top rail or under their feet must stop a ";
    let spans = || vec![Span::Say(says), held(job, &limits::LEVEL_GAP), Span::Say(" ball.")];
    let hang = order::balusters_at(job) == Some(BalustersAt::Between);
    (none_below(job) && !hang).then(spans).into_iter().collect()
}

/// No bottom rail, and balusters told to stand between the rails: nothing holds their feet.
pub(super) fn balusters_hang(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let says = "balusters between the rails have no bottom rail to stand on: they hang from the top rail, give way, \
                and let a ";
    let spans = || vec![Span::Say(says), held(job, &limits::LEVEL_GAP), Span::Say(" ball through under them.")];
    let hang = order::balusters_at(job) == Some(BalustersAt::Between);
    (none_below(job) && hang).then(spans).into_iter().collect()
}
