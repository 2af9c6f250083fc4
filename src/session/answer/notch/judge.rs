//! What a notch costs in strength: what is left beside the whole post.

use super::say::{detail, load, lumber_of};
use crate::figure::Fig;
use crate::job::{Job, Lie};
use crate::measure::Length;
use crate::notch::{Cut, Size, Stack, section_corners, section_of, whole_modulus};
use crate::reply::{Line, Role, Span, Style};
use crate::strength::section::{Push, Section};
use crate::strength::{Refused, Wood, post};

/// A cut judged.
pub(super) struct Judged {
    /// The whole post's section modulus, and that of what is left.
    pub modulus: (Fig, Fig),
    /// The push it may carry at the guard's top, where the wood's values cover it.
    pub carries: Option<Fig>,
    /// The wood it is judged in, and whether its species was told.
    wood: Wood,
    told: bool,
}

/// What is left of a post. It is pushed outward and free to move sideways.
pub(super) fn judged(job: &Job, size: Size, left: &[(Length, Length)], made_of: &Fig) -> Result<Judged, Refused> {
    let section = Section::of(&section_corners(left), vec![("post", made_of.clone())])?;
    judged_section(job, size, &section, made_of)
}

fn judged_section(job: &Job, size: Size, section: &Section, made_of: &Fig) -> Result<Judged, Refused> {
    let modulus = (whole_modulus(size, made_of)?, section.modulus(Push::Free)?);
    let stack = Stack::of(&job.settings);
    let told = &job.settings.timber;
    let wood = Wood::taken(told);
    let allowed = lumber_of(size).and_then(|l| wood.bending(l, Lie::Edge).ok());
    let carries = allowed.and_then(|a| post::carries(section, Push::Free, &stack.height, &a).ok());
    Ok(Judged { modulus, carries, wood, told: told.species.is_some() })
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

/// What is left at one level of a foot, judged.
pub(super) fn of_cut(job: &Job, cut: &Cut, post: &Fig) -> Result<Judged, Refused> {
    judged_section(job, cut.size, &section_of(cut, post)?, post)
}
