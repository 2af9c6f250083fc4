//! The weakest foot of the posts laid out, under the push at their top.

use super::post::{Section, left_to_engineer, no_values, over};
use super::rows::row;
use super::taken::Taken;
use super::{Answered, Figs, detail, fig, inches, say};
use crate::figure::{Fig, Why};
use crate::job::Lie;
use crate::measure::Lumber;
use crate::notch::{Level, Weakest};
use crate::reply::{Line, Reply, Role, Span, Status};
use crate::strength::post::carries;
use crate::strength::section::Push;

/// What is left of the weakest foot of the job, by the section its notch leaves. A cut foot
/// is lopsided, and is taken as free to move sideways.
pub(super) fn left(weakest: &Weakest, taken: &Taken) -> Answered {
    let Some(size) = weakest.post.size.lumber() else { return no_values() };
    if !size.is_square() {
        return left_to_engineer();
    }
    let (section, arm) = (&weakest.left, &taken.height);
    let judged = Section::judged(section, Push::Free, arm, size, &taken.wood, taken)?;
    let load = carries(section, Push::Free, arm, &taken.wood.bending(size, Lie::Edge)?)?;
    let area = section.area()?;
    let mut reply = Reply::of(Status::Answered);
    reply.lines.push(Line::new(Role::Answer, first(weakest, size, judged.lead(), &load, arm)));
    reply.lines.push(detail([
        say("Left "),
        say(level(weakest.level)),
        say(": "),
        fig(&area),
        say(", section modulus "),
        fig(&weakest.modulus),
        say("; bending "),
        fig(&judged.long.ratio),
        say(" times, as a load of ten minutes "),
        fig(&judged.short.ratio),
        say(" times. The other posts keep as much or more."),
    ]));
    if !weakest.nosing_told {
        let says =
            "The nosing is taken as cut back at the posts: left whole, the foot is stepped and less is left of it.";
        reply.lines.push(detail([say(says)]));
    }
    let alone = "That is the leg alone carrying the push, free to move sideways. A bracket or hold-down on the whole post above it is another case, not judged here.";
    reply.lines.push(detail([say(alone)]));
    let tension = "A push outward puts the notched face in tension, next to the square corner the saw leaves: nothing is allowed for that.";
    reply.lines.push(detail([say(tension)]));
    reply.lines.push(taken.line());
    reply.values.strength.push(row("leg of the weakest foot", &judged.long));
    reply.values.more.extend([("left_area", area), ("left_modulus", weakest.modulus.clone())]);
    reply.findings.extend(over(&judged.long, "leg-bending-over-allowed", "the leg's bending is "));
    let figs: Figs =
        vec![("bending of the leg", judged.long.demand.clone()), ("allowed", judged.long.capacity.clone())];
    Ok((reply, figs))
}

/// "Over, by arithmetic: what the notch leaves of post 4 (inside corner), a 4x4, may carry ..."
fn first(weakest: &Weakest, size: Lumber, lead: &'static str, load: &Fig, arm: &Fig) -> Vec<Span> {
    let why = Why::Formula("the post's number, counted along the runs as told", Vec::new());
    let number = Fig::count(weakest.post.number as u64, why);
    vec![
        say(lead),
        say("the weakest foot is post "),
        fig(&number),
        say("'s ("),
        say(weakest.post.kind.name()),
        say("): what its notch leaves of the "),
        Span::Phrase(size.to_string()),
        say(" may carry "),
        fig(load),
        say(" of the 200 at "),
        inches(arm),
        say("."),
    ]
}

fn level(level: Level) -> &'static str {
    match level {
        Level::Decking => "where it passes the decking",
        Level::Rim => "at the rim",
    }
}
