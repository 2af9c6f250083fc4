//! What a notch leaves of a post, judged where it is weakest.
//!
//! Where the deck is told, its own feet are judged as the notch engine overlays them; else the
//! three feet a notch may make, so deep as told or half through.

use super::post::{not_judged, passed_over, post};
use super::rows::row;
use super::section::Bends;
use super::taken::Taken;
use super::{Answered, Figs, detail, fig, inches, say};
use crate::figure::{Fig, Why};
use crate::grammar::ask::StrengthAsk;
use crate::job::{Job, Lie};
use crate::measure::{Length, Lumber};
use crate::notch::{Level, Shape, batches, feet};
use crate::reply::{Finding, Line, Reply, Role, Span, Status};
use crate::session::answer::notch::{judge, say as notching};
use crate::strength::post::carries;
use crate::strength::section::{Push, Section};
use crate::strength::{FootCut, Leg, Refused, left_by};

/// One foot judged.
struct Foot {
    what: &'static str,
    /// Where it stands and what is left, for the middle of a line.
    named: Vec<Span>,
    size: Lumber,
    push: Push,
    bends: Bends,
    carries: Fig,
}

impl Foot {
    fn of(
        (what, named): (&'static str, Vec<Span>),
        size: Lumber,
        section: &Section,
        push: Push,
        taken: &Taken,
    ) -> Result<Foot, Refused> {
        let inputs = &taken.inputs;
        let bends = Bends::of(section, push, &inputs.height, size, &inputs.wood)?;
        let carries = carries(section, push, &inputs.height, &inputs.wood.bending(size, Lie::Edge)?)?;
        Ok(Foot { what, named, size, push, bends, carries })
    }

    /// "at a straight edge, the leg may carry 43 lb, pushed outward; bending 4.65 times".
    fn line(&self, taken: &Taken) -> Line {
        let mut spans = vec![say("A "), Span::Phrase(self.size.to_string()), say(" ")];
        spans.extend(self.named.clone());
        spans.extend([say(" may carry "), fig(&self.carries), say(", "), say(self.push.says())]);
        spans.extend([say("; bending "), fig(&self.bends.long.ratio), say(" times")]);
        spans.extend(self.bends.short_spans(taken));
        spans.push(say("."));
        detail(spans)
    }
}

/// The feet to judge, the weakest first.
fn judged(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Result<Vec<Foot>, Refused> {
    let laid = if ask.post.is_none() { of_deck(job, taken)? } else { Vec::new() };
    let mut all = if laid.is_empty() { of_kinds(taken)? } else { laid };
    all.sort_by_key(|f| std::cmp::Reverse(f.bends.long.ratio.as_q()));
    Ok(all)
}

/// The deck's own feet, each cut once.
fn of_deck(job: &Job, taken: &Taken) -> Result<Vec<Foot>, Refused> {
    let Ok(feet) = feet(job) else { return Ok(Vec::new()) };
    let mut all = Vec::new();
    for batch in batches(&feet) {
        let posts: Vec<_> = batch.posts.iter().map(|k| &feet.posts[*k]).collect();
        let Some((first, foot)) = posts.first().and_then(|p| Some((*p, p.foot.as_ref().ok()?))) else { continue };
        let cut = foot.weakest();
        if matches!(cut.shape, Shape::Whole) {
            return Err(Refused::NothingLeft);
        }
        let (Some(what), Some(size)) = (shape_row(&cut.shape), notching::lumber_of(cut.size)) else { continue };
        let mut named = notching::numbered(&posts);
        named.insert(0, say("as "));
        named.extend(notching::kinds(&posts));
        let at_decking = foot.is_stepped() && foot.weakest_level().0 == Level::Decking;
        named.extend(at_decking.then_some(say(", where it passes the decking,")));
        let section = judge::left_of(cut, &first.width)?;
        all.push(Foot::of((what, named), size, &section, judge::push(&cut.shape), taken)?);
    }
    Ok(all)
}

/// The row a cut is told under; none where nothing comes off.
fn shape_row(shape: &Shape) -> Option<&'static str> {
    match shape {
        Shape::Clear | Shape::Whole => None,
        Shape::Straight { .. } | Shape::Side { .. } => Some(EDGE),
        Shape::Corner { .. } => Some(OUTSIDE),
        Shape::AllButCorner { .. } => Some(INSIDE),
        Shape::Other => Some("leg at an angled corner"),
    }
}

const EDGE: &str = "leg at a straight edge";
const OUTSIDE: &str = "leg at an outside corner";
const INSIDE: &str = "leg at an inside corner";

/// The feet a notch may make of each post there is.
fn of_kinds(taken: &Taken) -> Result<Vec<Foot>, Refused> {
    let mut all = Vec::new();
    for stand in &taken.stands {
        let Some((size, side)) = stand.square() else { continue };
        let left = left_of(&side, &taken.inputs.foot);
        let legs = match stand.is_corner() {
            true => vec![
                (OUTSIDE, "at an outside corner, the L,", Leg::Ell(left.clone())),
                (INSIDE, "at an inside corner, the quarter,", Leg::Quarter(left)),
            ],
            false => vec![(EDGE, "at a straight edge, the leg,", Leg::Across(left))],
        };
        for (what, named, leg) in legs {
            all.push(Foot::of((what, vec![say(named)]), size, &leg.section(&side)?, leg.push(), taken)?);
        }
    }
    Ok(all)
}

/// What is left across the notch: half where its depth is not told.
fn left_of(side: &Fig, foot: &FootCut) -> Fig {
    match foot {
        FootCut::Deep(deep) => left_by(deep, side),
        _ => {
            let wide = side.as_length().unwrap_or(Length::ZERO);
            Fig::length(wide / 2, Why::Formula("half the post", vec![("post", side.clone())]))
        }
    }
}

/// The rule on notching for each size there is, and what is over.
fn findings(feet: &[Foot]) -> Vec<Finding> {
    let worst = feet.first().and_then(|f| {
        let rule = if f.bends.is_far() { "leg-bending-far-over" } else { "leg-bending-over-allowed" };
        f.bends.over(rule, "the bending of what the notch leaves is ", ", at the weakest foot.")
    });
    widths(feet).into_iter().map(notching::finding).chain(worst).collect()
}

/// One width for each side of the notching rule.
fn widths(feet: &[Foot]) -> Vec<Length> {
    let mut all: Vec<Length> = feet.iter().filter_map(|f| f.size.dressed()).map(|(thick, _)| thick).collect();
    all.sort();
    all.dedup_by_key(|w| notching::is_four(*w));
    all
}

/// What is left of a post that is notched at the deck, told so deep or half through.
pub fn left(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Answered {
    match taken.inputs.foot {
        FootCut::Whole => return whole(job, ask, taken, "Nothing comes off, as told: the post stays whole."),
        FootCut::Sleeve => {
            return whole(
                job,
                ask,
                taken,
                "What is notched is a sleeve that carries nothing: the whole post in it is judged.",
            );
        }
        FootCut::Untold | FootCut::Deep(_) => {}
    }
    let feet = judged(job, ask, taken)?;
    let Some(worst) = feet.first() else { return not_judged(&taken.stands) };
    let mut reply = Reply::of(Status::Answered);
    let rule = |w: Length| if notching::is_four(w) { notching::barred() } else { notching::not_barred() };
    reply.lines.extend(widths(&feet).into_iter().map(rule));
    let mut first =
        vec![say(worst.bends.lead()), say("what a notch leaves of a "), Span::Phrase(worst.size.to_string())];
    first.push(say(" "));
    first.extend(worst.named.clone());
    first.extend([say(" may carry "), fig(&worst.carries), say(" of the 200 at "), inches(&taken.inputs.height)]);
    first.push(say(if feet.len() > 1 { ", the weakest foot." } else { "." }));
    reply.lines.push(Line::new(Role::Answer, first));
    reply.lines.extend(feet.iter().map(|f| f.line(taken)));
    reply.lines.extend(passed_over(&taken.stands));
    reply.lines.push(detail([say(told_line(taken))]));
    let tension = "A push outward puts the notched face in tension, next to the square corner the saw leaves: nothing is allowed for that.";
    reply.lines.push(detail([say(tension)]));
    reply.lines.push(taken.line());
    reply.lines.extend(notching::ways_out());
    reply.findings.extend(findings(&feet));
    reply.values.strength = feet.iter().map(|f| row(f.what, &f.bends.long)).collect();
    let thick = taken.stands.iter().filter_map(|s| s.square()).map(|(_, side)| left_of(&side, &taken.inputs.foot));
    reply.values.more.extend(thick.min_by_key(Fig::as_length).map(|l| ("left_thick", l)));
    let figs: Figs = feet.iter().map(|f| (f.what, f.bends.long.demand.clone())).collect();
    Ok((reply, figs))
}

fn told_line(taken: &Taken) -> &'static str {
    match taken.inputs.foot {
        FootCut::Deep(_) => {
            "That is the leg alone carrying the push. A bracket or hold-down on the whole post above it is another case, not judged here."
        }
        _ => {
            "The notch's depth is not told: taken half through, or as the deck told makes it. The leg alone is taken to carry the push; a bracket or hold-down on the whole post above it is another case, not judged here."
        }
    }
}

/// The post judged whole, after why it is.
fn whole(job: &Job, ask: &StrengthAsk, taken: &Taken, why: &'static str) -> Answered {
    let (mut reply, figs) = post(job, ask, taken)?;
    reply.lines.insert(0, Line::say(Role::Answer, why));
    Ok((reply, figs))
}

/// What a notch makes of a post asked about whole: the one told, else one half through.
pub(super) fn beside(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Result<Reply, Refused> {
    let mut reply = Reply::of(Status::Answered);
    let told = match &taken.inputs.foot {
        FootCut::Whole | FootCut::Sleeve => return Ok(reply),
        FootCut::Deep(deep) => Some(deep),
        FootCut::Untold => None,
    };
    let feet = if told.is_some() { judged(job, ask, taken)? } else { of_kinds(taken)? };
    let mut spans = match told {
        Some(deep) => vec![say("Notched "), inches(deep), say(" deep, as told, it keeps less:")],
        None => vec![say("Notched half through it keeps less:")],
    };
    for (k, foot) in feet.iter().enumerate() {
        spans.extend([say(if k == 0 { " " } else { "; " }), say("a "), Span::Phrase(foot.size.to_string()), say(" ")]);
        spans.extend(foot.named.clone());
        spans.extend([say(" may carry "), fig(&foot.carries), say(" of the 200")]);
    }
    spans.push(say("."));
    reply.lines.push(detail(spans));
    if told.is_some() {
        reply.findings = findings(&feet);
        reply.values.strength = feet.iter().map(|f| row(f.what, &f.bends.long)).collect();
    }
    Ok(reply)
}
