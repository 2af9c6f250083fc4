//! Checks on strength, by arithmetic: held only to what the job itself tells of the rail, the
//! wood and the bolts. What is merely taken is judged where it is asked about.

use super::say::fig;
use crate::figure::Fig;
use crate::job::{Fixing, Job, PostRole};
use crate::layout::Layout;
use crate::limits;
use crate::measure::Length;
use crate::quantity::RowId;
use crate::reply::{Span, Style};
use crate::solve::{choice, limit_length};
use crate::strength::rail::{Way, bent};
use crate::strength::tie::hold_down;
use crate::strength::{FootCut, Inputs, Judged, Leg, Refused, Stand, left_by};

/// A rail told that sags over the published figure in the longest bay.
pub(super) fn rail_sags(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let inputs = Inputs::of(job);
    let told = inputs.make.rail.is_some() || inputs.make.lie.is_some();
    let Some(span) = layout.longest_bay().filter(|_| told) else { return Vec::new() };
    match bent(&inputs.pieces, &inputs.wood, span, &inputs.height, Way::Down) {
        Ok(down) if !down.sag.holds() => vec![sag_spans(span, &down.sag)],
        Err(Refused::SagPast) => {
            vec![vec![Span::Say("over "), fig(span), Span::Say(" the rail told sags far past the published figure.")]]
        }
        _ => Vec::new(),
    }
}

fn sag_spans(span: &Fig, sag: &Judged) -> Vec<Span> {
    let tail = " published for guards; the figure was written for metal ones, and the IRC gives none.";
    let lead = [Span::Say("over "), fig(span), Span::Say(" the rail told sags "), fig(&sag.demand)];
    let over = [Span::Say(", "), fig(&sag.ratio), Span::Say(" times the "), fig(&sag.capacity), Span::Say(tail)];
    lead.into_iter().chain(over).collect()
}

/// The posts of the layout; where nothing is laid out line posts, and those told by role.
fn stands(job: &Job, layout: &Layout, inputs: &Inputs) -> Vec<Stand> {
    let mut roles = layout.roles();
    if roles.is_empty() {
        roles.push(PostRole::Line);
        roles.extend(crate::solve::told_sizes(job).iter().map(|(role, _)| *role));
    }
    inputs.stands(&roles)
}

/// The foot that is asked most of what its wood is allowed, and whose it is.
fn worst(job: &Job, layout: &Layout, leg: impl Fn(&Stand, &Fig) -> Leg) -> Option<(Judged, Stand)> {
    choice::timber(job).species?;
    let inputs = Inputs::of(job);
    let judged = |stand: &Stand| {
        let leg = leg(stand, &stand.square()?.1);
        Some((stand.bent(&leg, &inputs.height, &inputs.wood)?, *stand))
    };
    let all = stands(job, layout, &inputs);
    all.iter().filter_map(judged).max_by_key(|(j, _)| j.ratio.as_q())
}

fn said(found: Option<(Judged, Stand)>, lead: &'static str) -> Vec<Vec<Span>> {
    let tail = " times what the wood told is allowed, by arithmetic for the load duration told or ten years': the ";
    let says = |(j, stand): (Judged, Stand)| {
        vec![Span::Say(lead), fig(&j.ratio), Span::Say(tail), Span::Say(stand.name()), Span::Say(".")]
    };
    found.map(says).into_iter().collect()
}

/// True where the job itself, its place or its building department says how high the guard is.
fn height_told(job: &Job) -> bool {
    let law = &job.settings.law;
    let of_place = law.place.is_some_and(|p| p.limit(&limits::GUARD_HEIGHT).is_some());
    job.told(RowId::HeightTop).is_some() || law.asked(&limits::GUARD_HEIGHT).is_some() || of_place
}

/// A whole post that bends past what the wood told is allowed, at a height told.
pub(super) fn post_bends(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let found = height_told(job).then(|| worst(job, layout, |_, _| Leg::Whole)).flatten();
    said(found.filter(|(j, _)| !j.holds()), "200 lb at the guard's top bends a whole post at the deck ")
}

/// The leg a notch told leaves of each post: an L at a corner, else a leg along a straight edge.
fn leg_left(job: &Job, layout: &Layout) -> Option<(Judged, Stand)> {
    let FootCut::Deep(deep) = Inputs::of(job).foot else { return None };
    worst(job, layout, |stand, side| {
        let left = left_by(&deep, side);
        if stand.is_corner() { Leg::Ell(left) } else { Leg::Across(left) }
    })
}

const LEG: &str = "200 lb at the guard's top bends the leg the notch leaves ";

/// What a notch told leaves of a post, bent past what its wood is allowed.
pub(super) fn leg_bends(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    said(leg_left(job, layout).filter(|(j, _)| !j.holds() && !is_far(job, j)), LEG)
}

/// The same, bent past it for every load time treated wood may be figured with.
pub(super) fn leg_bends_far(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    said(leg_left(job, layout).filter(|(j, _)| is_far(job, j)), LEG)
}

/// True where not even a load of ten minutes brings it inside.
fn is_far(job: &Job, judged: &Judged) -> bool {
    let taken = Inputs::of(job).wood.duration;
    judged.is_far(taken)
}

/// Through bolts told that pull past the published hold-down, or under a guard it does not cover.
pub(super) fn pull_over(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    pulled(job, |over, far, high| !far && (over || high))
}

/// Through bolts told that pull far past it.
pub(super) fn pull_far_over(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    pulled(job, |_, far, _| far)
}

fn pulled(job: &Job, fires: impl Fn(bool, bool, bool) -> bool) -> Vec<Vec<Span>> {
    let inputs = Inputs::of(job);
    let bolted = choice::fixing(job) == Some(Fixing::ThroughBolts) && !on_decking(job);
    let Some(tie) = inputs.tie().ok().filter(|_| bolted) else { return Vec::new() };
    let high = inputs.height.as_length().is_some_and(|h| h > Length::inches(36));
    let judged = tie.pull().and_then(|pull| Judged::of(pull, hold_down())).ok();
    let found = judged.filter(|j| fires(!j.holds(), tie.is_far(j), high));
    let says = |j: Judged| {
        let lead = [Span::Say("by arithmetic bolts "), fig(&tie.apart), Span::Say(" apart pull the upper one ")];
        let beside = if j.holds() { ", inside the " } else { ", over the " };
        let tail = " of the published hold-down, which is for guards up to 36 in.: ask an engineer.";
        lead.into_iter().chain([fig(&j.demand), Span::Say(beside), fig(&j.capacity), Span::Say(tail)]).collect()
    };
    found.map(says).into_iter().collect()
}

fn on_decking(job: &Job) -> bool {
    choice::mount(job) == Some(crate::job::Mount::Surface)
}

/// Posts told to be held by something else than through bolts.
pub(super) fn no_through_bolts(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let says = match choice::fixing(job) {
        Some(Fixing::Lags) => {
            "lag screws hold the posts: the published guide shows two through bolts with washers; in tests lagged posts came off under less than 200 lb."
        }
        Some(Fixing::Screws) => {
            "structural screws hold the posts: the published guide shows two through bolts with washers, so go by the screws' listing for guard posts."
        }
        Some(Fixing::ThroughBolts) | None => return Vec::new(),
    };
    vec![vec![Span::Say(says)]]
}

/// Bolts told thinner than the guide's.
pub(super) fn bolts_thin(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let thin = job.told(RowId::Bolt).filter(|f| f.as_length() < Some(limit_length(job, &limits::BOLT_SIZE)));
    let says = |f: Fig| {
        let (told, least) = (Span::Fig(f, Style::Inches), super::say::limit(&limits::BOLT_SIZE));
        vec![Span::Say("bolts of "), told, Span::Say(" are thinner than the "), least, Span::Say(" the guide shows.")]
    };
    thin.map(says).into_iter().collect()
}

/// Posts told to stand on the decking.
pub(super) fn posts_on_decking(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let says = "posts on the decking are held by what is under it: hardware listed for guard posts, into framing or solid blocking, its load brought into the joists.";
    if on_decking(job) { vec![vec![Span::Say(says)]] } else { Vec::new() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Q;

    /// NDS Table 2.3.2: 1.6 is the most for treated wood, and what the limit's tenths come to.
    #[test]
    fn far_over_is_the_greatest_duration_factor() {
        let most = crate::strength::values::load_time(crate::job::Duration::TenMinutes).expect("a row").factor;
        assert_eq!(most, Q::new(i128::from(limits::FAR_OVER.value), 10));
    }
}
