//! What was done about choices told on a run, in words.

use super::{Placed, Took};
use crate::figure::Fig;
use crate::job::EndOf;
use crate::reply::{Line, Role, Span, Style};

fn fig(f: &Fig) -> Span {
    Span::Fig(f.clone(), Style::Tape)
}

/// One line for each choice, in the order it was worked in.
pub(super) fn lines(p: &Placed) -> Vec<Line> {
    let told = p.took.iter().map(|took| Line::new(Role::Detail, one(p, took)));
    told.collect()
}

fn one(p: &Placed, took: &Took) -> Vec<Span> {
    let say = |text| vec![Span::Say(text)];
    match took {
        Took::Kept { at, from } => {
            let hook = if *from == EndOf::From { p.origin } else { p.reaches };
            let tail = " to its centre; what is left on each side of it is split evenly.";
            vec![Span::Say("Post kept where told: "), fig(at), Span::Say(" from "), Span::Say(hook), Span::Say(tail)]
        }
        Took::Mirrored => say("Posts mirrored: as far from the middle on one side as on the other."),
        Took::MirroredPart => say(
            "Posts mirrored as far as the shorter side goes; what the longer side has beyond that is split by itself.",
        ),
        Took::SameCount => say(
            "No true mirror image: the two sides differ, by less than a bay. Each has the same number of bays, even in itself.",
        ),
        Took::MoreBays(n) => {
            let tail = " more than the limit asks, so that posts keep off what you told.";
            vec![Span::Say("Bays "), fig(n), Span::Say(tail)]
        }
        Took::Edge(at) => {
            let tail = " stands as near as it may to what it keeps off; no even split keeps off it.";
            vec![Span::Say("The post at "), fig(at), Span::Say(tail)]
        }
    }
}
