//! A post under the push at its top: whole, and what a notch leaves of it.

use super::rows::{asked_allowed, row};
use super::taken::{Taken, wood_words};
use super::{Answered, Figs, bolt, detail, fig, inches, say};
use crate::figure::{Fig, Why};
use crate::grammar::ask::StrengthAsk;
use crate::job::{Job, Lie, NotchTold, PostRole, PostSize};
use crate::limits;
use crate::measure::{Length, Lumber};
use crate::notch::weakest_foot;
use crate::reply::{Finding, Level, Line, Reply, Role, Span, Status};
use crate::strength::post::{arm_to_bolt, bending, carries, sway, sway_limit};
use crate::strength::section::Push;
use crate::strength::{Judged, Leg, Refused, Wood};

/// The posts' lumber: asked, told, or the smallest published.
pub(super) fn size(job: &Job, ask: &StrengthAsk) -> Option<Lumber> {
    let told = job.settings.post(PostRole::Line);
    match (ask.post, told) {
        (Some(l), _) | (None, Some(PostSize::Lumber(l))) => Some(l),
        (None, Some(PostSize::Width(_))) => None,
        (None, None) => {
            let nominal = u16::try_from(limits::POST_SIZE.value).unwrap_or(4);
            Some(Lumber::by(nominal, nominal))
        }
    }
}

fn width(size: Lumber) -> Result<Fig, Refused> {
    let (thick, _) = size.dressed().ok_or(Refused::NotLumber(size))?;
    Ok(Fig::length(thick, Why::Table("dressed dry size of the post", size.table())))
}

pub(super) fn no_values() -> Answered {
    let says = "I have design values for sawn lumber only: a sleeve, steel or composite post is its maker's to judge.";
    Ok((Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Refused) }, Vec::new()))
}

/// A section judged under the wood's own load duration and a short one.
pub(super) struct Section {
    pub long: Judged,
    pub short: Judged,
}

impl Section {
    fn of(leg: &Leg, push: Push, arm: &Fig, size: Lumber, wood: &Wood, taken: &Taken) -> Result<Section, Refused> {
        Section::judged(&leg.section(&width(size)?)?, push, arm, size, wood, taken)
    }

    /// A section of any shape, judged.
    pub fn judged(
        section: &crate::strength::section::Section,
        push: Push,
        arm: &Fig,
        size: Lumber,
        wood: &Wood,
        taken: &Taken,
    ) -> Result<Section, Refused> {
        let demand = bending(section, push, arm)?;
        let short = wood.under(taken.short().duration);
        let judged = |w: &Wood| Judged::of(demand.clone(), w.bending(size, Lie::Edge)?);
        Ok(Section { long: judged(wood)?, short: judged(&short)? })
    }

    pub fn lead(&self) -> &'static str {
        match (self.long.holds(), self.short.holds()) {
            (true, _) => "Inside the figures, by arithmetic: ",
            (false, true) => "It turns on how long the push is taken to stand, by arithmetic: ",
            (false, false) => "Over, by arithmetic: ",
        }
    }

    fn spans(&self) -> Vec<Span> {
        let mut spans = asked_allowed(&self.long);
        spans.extend([say("; as a load of ten minutes "), fig(&self.short.ratio), say(" times.")]);
        spans
    }
}

/// Whether a whole post's bending stays inside what its wood is allowed.
pub fn post(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Answered {
    let Some(size) = size(job, ask) else { return no_values() };
    if !size.is_square() {
        return left_to_engineer();
    }
    let arm = &taken.height;
    let whole = Section::of(&Leg::Whole, Push::Held, arm, size, &taken.wood, taken)?;
    let tie = bolt::tie(job, ask, taken)?;
    let to_bolt = arm_to_bolt(arm, &tie.decking, &tie.edge)?;
    let at_bolt = Section::of(&Leg::Whole, Push::Held, &to_bolt, size, &taken.wood, taken)?;
    let mut reply = Reply::of(Status::Answered);
    let name = || Span::Phrase(size.to_string());
    let mut first =
        vec![say(whole.lead()), say("a whole "), name(), say(" "), inches(arm), say(" high, bending at the deck: ")];
    first.extend(whole.spans());
    reply.lines.push(Line::new(Role::Answer, first));
    let mut second = vec![say("Bolted to the rim it bends most at the upper bolt: ")];
    second.extend(at_bolt.spans());
    reply.lines.push(detail(second));
    if let Some(wood) = taken.beside() {
        let other = Section::of(&Leg::Whole, Push::Held, arm, size, &wood, taken)?;
        let mut spans = vec![say("In "), Span::Phrase(wood_words(&wood)), say(", at the deck: ")];
        spans.extend(other.spans());
        reply.lines.push(detail(spans));
    }
    let e = taken.wood.stiffness(size)?;
    let moved = sway(&Leg::Whole.section(&width(size)?)?, arm, &e)?;
    let top = Judged::of(moved, sway_limit(arm)?)?;
    reply.lines.push(detail([
        say("Its top moves "),
        inches(&top.demand),
        say(" of the "),
        inches(&top.capacity),
        say(" published, with its foot held still; on real decks the rim turns and it moves far more."),
    ]));
    reply.lines.push(notched_line(size, taken)?);
    reply.lines.push(bolt::line(&tie)?);
    reply.lines.push(taken.line());
    reply.values.strength = vec![
        row("post bending at the deck", &whole.long),
        row("post bending at the deck, load of ten minutes", &whole.short),
        row("post bending at the upper bolt", &at_bolt.long),
        row("post bending at the upper bolt, load of ten minutes", &at_bolt.short),
        row("movement of the post's top", &top),
        row("pull on the upper bolt", &Judged::of(tie.pull()?, crate::strength::tie::hold_down())?),
    ];
    let figs: Figs = vec![("bending", whole.long.demand.clone()), ("allowed bending", whole.long.capacity.clone())];
    reply.findings.extend(over(&whole.long, "post-bending-over-allowed", "a whole post's bending at the deck is "));
    reply.findings.extend(bolt::finding(&tie)?);
    Ok((reply, figs))
}

pub(super) fn over(judged: &Judged, rule: &'static str, lead: &'static str) -> Option<Finding> {
    let spans = vec![say(lead), fig(&judged.ratio), say(" times what its wood is allowed for ten years' load.")];
    let found = Finding { rule, level: Level::Check, spans, source: limits::TOP_LOAD.source };
    (!judged.holds()).then_some(found)
}

pub(super) fn left_to_engineer() -> Answered {
    let says = "I judge square posts only: which way round this one stands, and what is cut of it, is for an engineer.";
    Ok((Reply { lines: vec![Line::say(Role::Answer, says)], ..Reply::of(Status::Refused) }, Vec::new()))
}

/// What half a post and a quarter of it may carry, in one line.
fn notched_line(size: Lumber, taken: &Taken) -> Result<Line, Refused> {
    let post = width(size)?;
    let half = half(&post);
    let push = |leg: Leg| may_carry(&leg, Push::Held, &post, size, taken);
    Ok(detail([
        say("Notched half through it keeps less: the half leg at a straight edge may carry "),
        fig(&push(Leg::Across(half.clone()))?),
        say(" of the 200, the quarter at an inside corner "),
        fig(&push(Leg::Quarter(half))?),
        say("."),
    ]))
}

fn half(post: &Fig) -> Fig {
    let l = post.as_length().unwrap_or(Length::ZERO) / 2;
    Fig::length(l, Why::Formula("half the post", vec![("post", post.clone())]))
}

fn may_carry(leg: &Leg, push: Push, post: &Fig, size: Lumber, taken: &Taken) -> Result<Fig, Refused> {
    carries(&leg.section(post)?, push, &taken.height, &taken.wood.bending(size, Lie::Edge)?)
}

/// What is left of a post that is notched at the deck, told so deep or half through.
pub fn left(job: &Job, ask: &StrengthAsk, taken: &Taken) -> Answered {
    // Posts laid out have feet of their own: the weakest is judged, as its notch is told.
    if let Some(weakest) = weakest_foot(job)?.filter(|_| ask.post.is_none()) {
        return super::foot::left(&weakest, taken);
    }
    let Some(size) = size(job, ask) else { return no_values() };
    if !size.is_square() {
        return left_to_engineer();
    }
    let post = width(size)?;
    let told = match job.settings.notch {
        Some(NotchTold::Deep(l)) => Some(l),
        _ => None,
    };
    let left = match told.zip(post.as_length()) {
        Some((deep, wide)) => {
            let from = vec![("post", post.clone()), ("notch", Fig::told(deep, "the notch"))];
            Fig::length(wide - deep, Why::Formula("the post less the notch", from))
        }
        None => half(&post),
    };
    let legs: [(&'static str, &'static str, Leg, Push); 3] = [
        ("leg at a straight edge", "At a straight edge, the leg ", Leg::Across(left.clone()), Push::Held),
        ("leg at an outside corner", "At an outside corner, the L ", Leg::Ell(left.clone()), Push::Free),
        ("leg at an inside corner", "At an inside corner, the quarter ", Leg::Quarter(left.clone()), Push::Held),
    ];
    let mut reply = Reply::of(Status::Answered);
    let mut figs: Figs = Vec::new();
    for (i, (what, lead, leg, push)) in legs.into_iter().enumerate() {
        let judged = Section::of(&leg, push, &taken.height, size, &taken.wood, taken)?;
        let load = may_carry(&leg, push, &post, size, taken)?;
        if i == 0 {
            let first = [
                say(judged.lead()),
                say("what a notch leaves of a "),
                Span::Phrase(size.to_string()),
                say(", "),
                inches(&left),
                say(" thick, may carry "),
                fig(&load),
                say(" of the 200 at "),
                inches(&taken.height),
                say("."),
            ];
            reply.lines.push(Line::new(Role::Answer, first));
        }
        let mut spans = vec![say(lead), say("may carry "), fig(&load), say("; bending "), fig(&judged.long.ratio)];
        spans.extend([say(" times, as a load of ten minutes "), fig(&judged.short.ratio), say(" times.")]);
        reply.lines.push(detail(spans));
        reply.values.strength.push(row(what, &judged.long));
        figs.push((what, judged.long.demand.clone()));
        reply.findings.extend(if i == 0 {
            over(&judged.long, "leg-bending-over-allowed", "the leg's bending is ")
        } else {
            None
        });
    }
    let told_line = match told {
        Some(_) => {
            "That is the leg alone carrying the push. A bracket or hold-down on the whole post above it is another case, not judged here."
        }
        None => {
            "The notch's depth is not told: taken half through. The leg alone is taken to carry the push; a bracket or hold-down on the whole post above it is another case, not judged here."
        }
    };
    reply.lines.push(detail([say(told_line)]));
    let tension = "A push outward puts the notched face in tension, next to the square corner the saw leaves: nothing is allowed for that.";
    reply.lines.push(detail([say(tension)]));
    reply.lines.push(taken.line());
    reply.values.more.push(("left_thick", left));
    Ok((reply, figs))
}
