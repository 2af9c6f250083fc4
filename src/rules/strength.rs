//! Checks on strength, by arithmetic: held only to what the job itself tells of the rail, the
//! wood and the bolts. What is merely taken is judged where it is asked about.

use super::say::fig;
use crate::figure::{Fig, Why};
use crate::job::{Fixing, Job, Lie, Member, PostRole, PostSize};
use crate::layout::Layout;
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::reply::Span;
use crate::strength::post::bending;
use crate::strength::rail::{Piece, Way, bent, made_up};
use crate::strength::section::Push;
use crate::strength::tie::{Tie, hold_down};
use crate::strength::{Judged, Leg, Refused, Wood};

/// The guard's height, as told or as taken.
fn height(job: &Job) -> Fig {
    let taken = || Fig::length(limits::GUARD_HEIGHT.length(), Why::Default(&limits::GUARD_HEIGHT));
    job.settings.height_top.map_or_else(taken, |l| Fig::told(l, "the guard's height"))
}

/// The top rail's pieces, where anything of it was told.
fn rail_told(job: &Job) -> Option<Vec<Piece>> {
    let order = &job.order;
    let (rail, lie) = (order.rail(Member::Top).flatten(), order.lay(Member::Top));
    let told = rail.is_some() || lie.is_some();
    told.then(|| made_up(rail, lie, order.rail(Member::Cap).flatten()))
}

/// A rail told that sags over the published figure in the longest bay.
pub(super) fn rail_sags(job: &Job, layout: &Layout) -> Vec<Vec<Span>> {
    let placed = layout.runs.iter().filter_map(|r| r.result.as_ref().ok());
    let longest = placed.flat_map(|p| p.rail_bays().map(|b| &b.clear)).max_by_key(|f| f.as_length());
    let (Some(pieces), Some(span)) = (rail_told(job), longest) else { return Vec::new() };
    let wood = Wood::taken(&job.settings.timber);
    match bent(&pieces, &wood, span, &height(job), Way::Down) {
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

/// The job's square line posts: the lumber, and its side; `None` where only a width was told.
fn square_post(job: &Job) -> Option<(Lumber, Fig)> {
    let nominal = u16::try_from(limits::POST_SIZE.value).ok()?;
    let size = match job.settings.post(PostRole::Line) {
        Some(PostSize::Lumber(l)) => l,
        Some(PostSize::Width(_)) => return None,
        None => Lumber::by(nominal, nominal),
    };
    let (thick, _) = size.dressed().filter(|_| size.is_square())?;
    Some((size, Fig::length(thick, Why::Table("dressed dry size of the post", size.table()))))
}

/// A leg's bending under 200 lb at the guard's top, where the wood was told.
fn bends(job: &Job, leg: &Leg, size: Lumber, side: &Fig) -> Option<Judged> {
    job.settings.timber.species?;
    let section = leg.section(side).ok()?;
    let allowed = Wood::taken(&job.settings.timber).bending(size, Lie::Edge).ok()?;
    Judged::of(bending(&section, Push::Held, &height(job)).ok()?, allowed).ok()
}

fn over(judged: Option<Judged>, lead: &'static str) -> Vec<Vec<Span>> {
    let tail = " times what the wood told is allowed, by arithmetic for the load duration told or ten years'.";
    let says = |j: Judged| vec![Span::Say(lead), fig(&j.ratio), Span::Say(tail)];
    judged.filter(|j| !j.holds()).map(says).into_iter().collect()
}

/// A whole post that bends past what the wood told is allowed, at a height told.
pub(super) fn post_bends(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let whole = || {
        job.settings.height_top?;
        let (size, side) = square_post(job)?;
        bends(job, &Leg::Whole, size, &side)
    };
    over(whole(), "200 lb at the guard's top bends a whole post at the deck ")
}

/// What a notch told leaves of a post along a straight edge, bent past what its wood is allowed.
pub(super) fn leg_bends(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let leg = || {
        let deep = super::notch::deep(job)?;
        let (size, side) = square_post(job)?;
        let from = vec![("post", side.clone()), ("notch", Fig::told(deep, "the notch"))];
        let left = Fig::length(side.as_length()? - deep, Why::Formula("the post less the notch", from));
        bends(job, &Leg::Across(left), size, &side)
    };
    over(leg(), "200 lb at the guard's top bends the leg the notch leaves along a straight edge ")
}

/// Through bolts told under a guard the published hold-down does not cover.
pub(super) fn pull_over(job: &Job, _: &Layout) -> Vec<Vec<Span>> {
    let high = job.settings.height_top.is_some_and(|h| h > Length::inches(36));
    let bolted = job.settings.fixing == Some(Fixing::ThroughBolts);
    let pull = Tie::as_drawn(height(job)).pull().ok();
    let over = pull.filter(|p| high && bolted && p.as_q() > hold_down().as_q());
    let says = |pull: Fig| {
        let lead = [Span::Say("by arithmetic the upper bolt is pulled "), fig(&pull), Span::Say(", over the ")];
        let tail = " of the published hold-down, which is for guards up to 36 in.: ask an engineer.";
        lead.into_iter().chain([fig(&hold_down()), Span::Say(tail)]).collect()
    };
    over.map(says).into_iter().collect()
}
