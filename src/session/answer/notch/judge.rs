//! What a notch costs in strength: what is left beside the whole post.

use super::say::{detail, load, lumber_of};
use crate::figure::Fig;
use crate::job::{Job, Lie};
use crate::measure::Length;
use crate::notch::{Cut, Shape, Size, section_corners};
use crate::reply::{Line, Role, Span, Style};
use crate::strength::section::{Push, Section};
use crate::strength::{Inputs, Refused, Wood, post};

/// A cut judged.
pub(super) struct Judged {
    /// The whole post's section modulus, and that of what is left.
    pub modulus: (Fig, Fig),
    /// The push both are for.
    push: Push,
    /// The push it may carry at the guard's top, where the wood's values cover it.
    pub carries: Option<Fig>,
    /// The wood it is judged in, and whether its species was told.
    wood: Wood,
    told: bool,
}

/// What is left of a post, under the push that counts for it.
pub(super) fn judged(
    job: &Job,
    size: Size,
    left: &[(Length, Length)],
    push: Push,
    made_of: &Fig,
) -> Result<Judged, Refused> {
    let whole = section(&size.corners(), made_of)?;
    let section = section(left, made_of)?;
    let modulus = (whole.modulus(push)?, section.modulus(push)?);
    let Inputs { height, wood, told, .. } = Inputs::of(job);
    let allowed = lumber_of(size).and_then(|l| wood.bending(l, Lie::Edge).ok());
    let carries = allowed.and_then(|a| post::carries(&section, push, &height, &a).ok());
    Ok(Judged { modulus, push, carries, wood, told: told.species.is_some() })
}

/// The push that counts: at a corner any, along an edge outward or along it.
pub(in crate::session::answer) fn push(shape: &Shape) -> Push {
    match shape {
        Shape::Clear | Shape::Whole | Shape::Straight { .. } | Shape::Side { .. } => Push::Free,
        Shape::Corner { .. } | Shape::AllButCorner { .. } | Shape::Other => Push::Any,
    }
}

/// What is left of a post at one level: the largest piece.
///
/// # Errors
/// [`Refused::NothingLeft`].
pub(in crate::session::answer) fn left_of(cut: &Cut, made_of: &Fig) -> Result<Section, Refused> {
    section(cut.left.first().ok_or(Refused::NothingLeft)?, made_of)
}

fn section(ring: &[(Length, Length)], made_of: &Fig) -> Result<Section, Refused> {
    Section::of(&section_corners(ring), vec![("post", made_of.clone())])
}

/// It in words: the numbers of what is left, and what that would carry.
pub(super) fn lines(judged: &Result<Judged, Refused>) -> Vec<Line> {
    let Ok(j) = judged else {
        return vec![Line::say(
            Role::Detail,
            "Its strength I can't judge: ask the building department or an engineer.",
        )];
    };
    let modulus = [
        Span::Say("What is left in bending: section modulus "),
        Span::Fig(j.modulus.1.clone(), Style::Tape),
        Span::Say(" of the whole post's "),
        Span::Fig(j.modulus.0.clone(), Style::Tape),
        Span::Say(", "),
        Span::Say(j.push.says()),
        Span::Say("."),
    ];
    let mut lines = vec![detail(modulus.into())];
    if let Some(carries) = &j.carries {
        let holds = carries.as_q() >= load().as_q();
        let spans = [
            Span::Say("By arithmetic it carries "),
            Span::Fig(carries.clone(), Style::Tape),
            Span::Say(if holds { " at the guard's top, where " } else { " at the guard's top, and " }),
            Span::Fig(load(), Style::Tape),
            Span::Say(" is asked: "),
            Span::Say(j.wood.species.name()),
            Span::Say(" "),
            Span::Say(j.wood.grade.name()),
            Span::Say(if j.wood.wet { ", wet" } else { ", dry" }),
            Span::Say(if j.wood.incised { " and incised" } else { "" }),
            Span::Say(if j.told { ", as told." } else { ", is taken for wood not told." }),
            Span::Say(" Knots, holes and the square corner weaken it further."),
        ];
        lines.push(detail(spans.into()));
    }
    lines
}

/// A cut's level with the least left, judged.
pub(super) fn of_cut(job: &Job, cut: &Cut, post: &Fig) -> Result<Judged, Refused> {
    let ring = cut.left.first().ok_or(Refused::NothingLeft)?;
    judged(job, cut.size, ring, push(&cut.shape), post)
}
